//! Finds room for tags on the screen, so that none covers another.

use super::{Tag, TagKind};
use falsewright_core::geometry::Point;

/// A tag with its box on the screen, px, `y` down.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedTag {
    /// What is written.
    pub tag: Tag,
    /// Middle of the box.
    pub centre: (f64, f64),
    /// Width and height of the box.
    pub size: (f64, f64),
    /// The place that it belongs to.
    pub anchor: (f64, f64),
}

impl PlacedTag {
    /// Whether it stands so far off that a line must lead to its place.
    pub fn led(&self) -> bool {
        let (dx, dy) = (self.centre.0 - self.anchor.0, self.centre.1 - self.anchor.1);
        dx.abs() > self.size.0 / 2.0 + 6.0 || dy.abs() > self.size.1 / 2.0 + 6.0
    }
}

/// Places the tags in their order; those that find no room and need not be seen are left out.
pub fn place(tags: &[Tag], to_screen: impl Fn(Point) -> (f64, f64), screen: (f64, f64), letter: f64) -> Vec<PlacedTag> {
    let mut placed: Vec<PlacedTag> = Vec::new();
    for tag in tags {
        let anchor = to_screen(tag.at);
        let off = 40.0;
        if anchor.0 < -off || anchor.1 < -off || anchor.0 > screen.0 + off || anchor.1 > screen.1 + off {
            continue;
        }
        let size = size(tag, letter);
        let free = candidates(size, if tag.kind.always() { 9 } else { 2 })
            .map(|(dx, dy)| (anchor.0 + dx, anchor.1 + dy))
            .find(|&centre| {
                let inside = centre.0 > size.0 / 2.0
                    && centre.1 > size.1 / 2.0
                    && centre.0 < screen.0 - size.0 / 2.0
                    && centre.1 < screen.1 - size.1 / 2.0;
                inside && placed.iter().all(|other| !overlap(centre, size, other.centre, other.size))
            });
        let centre = match free {
            Some(centre) => centre,
            None if tag.kind.always() => (anchor.0, anchor.1 - size.1),
            None => continue,
        };
        placed.push(PlacedTag { tag: tag.clone(), centre, size, anchor });
    }
    placed
}

fn size(tag: &Tag, letter: f64) -> (f64, f64) {
    let height = letter * 1.5;
    match tag.kind {
        TagKind::Ring(_) => (letter * 1.8, letter * 1.8),
        _ => (tag.text.chars().count() as f64 * letter * 0.56 + letter * 0.8, height),
    }
}

/// Offsets of the middle from the place, nearest first: beside and above before below.
fn candidates((width, height): (f64, f64), steps: u32) -> impl Iterator<Item = (f64, f64)> {
    let reach = move |step: f64| (width / 2.0 + 5.0 + 12.0 * step, height * (0.8 + step));
    (0..steps).flat_map(move |step| {
        let (dx, dy) = reach(f64::from(step));
        [(dx, 0.0), (-dx, 0.0), (dx, -dy), (-dx, -dy), (0.0, -dy), (dx, dy), (-dx, dy), (0.0, dy)]
    })
}

fn overlap(a: (f64, f64), a_size: (f64, f64), b: (f64, f64), b_size: (f64, f64)) -> bool {
    const GAP: f64 = 2.0;
    (a.0 - b.0).abs() < (a_size.0 + b_size.0) / 2.0 + GAP && (a.1 - b.1).abs() < (a_size.1 + b_size.1) / 2.0 + GAP
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tag(kind: TagKind) -> Tag {
        Tag {
            key: String::new(),
            kind,
            at: Point::new(5.0, 5.0),
            text: "0.83".into(),
            label: String::new(),
            owner: None,
        }
    }

    fn screen(point: Point) -> (f64, f64) {
        (point.x * 100.0, point.z * 100.0)
    }

    #[test]
    fn tags_of_one_place_do_not_cover_each_other() {
        let tags = vec![tag(TagKind::Governing(0.83)); 20];
        let placed = place(&tags, screen, (1000.0, 1000.0), 12.0);
        assert_eq!(placed.len(), 20);
        for (i, a) in placed.iter().enumerate() {
            assert!(placed[..i].iter().all(|b| !overlap(a.centre, a.size, b.centre, b.size)));
        }
    }

    #[test]
    fn a_finding_is_always_written_and_what_is_off_the_sheet_never() {
        let crowd = vec![tag(TagKind::Ring(0)); 200];
        assert_eq!(place(&crowd, screen, (1000.0, 1000.0), 12.0).len(), 200);
        assert!(place(&crowd, |_| (-500.0, 0.0), (1000.0, 1000.0), 12.0).is_empty());
    }
}
