//! Finds room for tags on the screen, so that none covers another.

use super::{Tag, TagKind};
use falsewright_core::geometry::Point;

/// An upright rectangle on the screen, px, `y` down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Block {
    /// Its middle.
    pub centre: (f64, f64),
    /// Its width and height.
    pub size: (f64, f64),
}

impl Block {
    /// Whether it and another overlap or nearly touch.
    pub fn covers(&self, other: &Self) -> bool {
        const GAP_PX: f64 = 2.0;
        let apart = |a: f64, b: f64, sizes: f64| (a - b).abs() >= sizes / 2.0 + GAP_PX;
        !apart(self.centre.0, other.centre.0, self.size.0 + other.size.0)
            && !apart(self.centre.1, other.centre.1, self.size.1 + other.size.1)
    }

    fn within(&self, screen: (f64, f64)) -> bool {
        let inside = |centre: f64, size: f64, end: f64| centre > size / 2.0 && centre < end - size / 2.0;
        inside(self.centre.0, self.size.0, screen.0) && inside(self.centre.1, self.size.1, screen.1)
    }
}

/// A tag with its box on the screen.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedTag {
    /// What is written.
    pub tag: Tag,
    /// Its box; none where there is no room, or where the place is off the screen.
    pub block: Option<Block>,
    /// The place that it belongs to.
    pub anchor: (f64, f64),
}

impl PlacedTag {
    /// Whether it stands so far off that a line must lead to its place.
    pub fn led(&self) -> bool {
        let far = |centre: f64, place: f64, size: f64| (centre - place).abs() > size / 2.0 + 6.0;
        self.block.is_some_and(|Block { centre, size }| {
            far(centre.0, self.anchor.0, size.0) || far(centre.1, self.anchor.1, size.1)
        })
    }
}

/// Places the tags in their order beside what is written already.
pub fn place<'a>(
    tags: impl IntoIterator<Item = &'a Tag>,
    written: &[Block],
    to_screen: impl Fn(Point) -> (f64, f64),
    screen: (f64, f64),
    letter_px: f64,
) -> Vec<PlacedTag> {
    let mut taken = written.to_vec();
    let place_one = |tag: &Tag| {
        let anchor = to_screen(tag.at);
        let off = anchor.0 < 0.0 || anchor.1 < 0.0 || anchor.0 > screen.0 || anchor.1 > screen.1;
        let block = if off { None } else { room(tag, anchor, &taken, screen, letter_px) };
        taken.extend(block);
        PlacedTag { tag: tag.clone(), block, anchor }
    };
    tags.into_iter().map(place_one).collect()
}

/// The nearest free box beside a place; one over others for what is urgent.
fn room(tag: &Tag, anchor: (f64, f64), taken: &[Block], screen: (f64, f64), letter_px: f64) -> Option<Block> {
    let size = size(tag, letter_px);
    let at = |(dx, dy)| Block { centre: (anchor.0 + dx, anchor.1 + dy), size };
    let steps = match tag.kind {
        _ if tag.urgent => 9,
        TagKind::Governing(_) | TagKind::Unchecked => 3,
        _ => 2,
    };
    let free = |block: &Block| block.within(screen) && !taken.iter().any(|other| block.covers(other));
    candidates(size, steps).map(at).find(free).or_else(|| tag.urgent.then(|| at((0.0, -size.1))))
}

fn size(tag: &Tag, letter_px: f64) -> (f64, f64) {
    let height = letter_px * 1.5;
    match tag.kind {
        TagKind::Ring(_) => (letter_px * 1.8, letter_px * 1.8),
        _ => (tag.text.chars().count() as f64 * letter_px * 0.56 + letter_px * 0.8, height),
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

#[cfg(test)]
mod tests {
    use super::*;

    fn tag(kind: TagKind, urgent: bool) -> Tag {
        Tag {
            key: String::new(),
            kind,
            at: Point::new(5.0, 5.0),
            text: "0.83".into(),
            label: String::new(),
            owner: None,
            urgent,
        }
    }

    fn screen(point: Point) -> (f64, f64) {
        (point.x * 100.0, point.z * 100.0)
    }

    fn blocks(placed: &[PlacedTag]) -> Vec<Block> {
        placed.iter().filter_map(|tag| tag.block).collect()
    }

    #[test]
    fn tags_of_one_place_do_not_cover_each_other() {
        let tags = vec![tag(TagKind::Governing(1.83), true); 20];
        let blocks = blocks(&place(&tags, &[], screen, (1000.0, 1000.0), 12.0));
        assert_eq!(blocks.len(), 20);
        for (i, a) in blocks.iter().enumerate() {
            assert!(blocks[..i].iter().all(|b| !a.covers(b)));
        }
    }

    #[test]
    fn what_is_written_already_is_not_covered() {
        let written = [Block { centre: (530.0, 500.0), size: (60.0, 20.0) }];
        let placed = place(&[tag(TagKind::Member(0.83), false)], &written, screen, (1000.0, 1000.0), 12.0);
        assert!(!blocks(&placed)[0].covers(&written[0]));
    }

    #[test]
    fn what_is_urgent_is_always_written_and_what_is_off_the_sheet_never() {
        let (urgent, quiet) = (tag(TagKind::Ring(0), true), tag(TagKind::Member(0.5), false));
        let size = (1000.0, 1000.0);
        assert_eq!(blocks(&place(&vec![urgent.clone(); 200], &[], screen, size, 12.0)).len(), 200);
        assert!(blocks(&place(&vec![quiet; 200], &[], screen, size, 12.0)).len() < 200);
        assert!(blocks(&place(&[urgent], &[], |_| (-500.0, 0.0), size, 12.0)).is_empty());
    }
}
