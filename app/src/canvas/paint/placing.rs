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

    /// Its left upper and right lower corner.
    pub fn corners(&self) -> [(f64, f64); 2] {
        let ((x, y), (width, height)) = (self.centre, self.size);
        [(x - width / 2.0, y - height / 2.0), (x + width / 2.0, y + height / 2.0)]
    }

    /// Narrow blocks along a line: one where it is level or plumb, more where it leans.
    pub fn along([from, to]: [(f64, f64); 2]) -> impl Iterator<Item = Self> {
        const LEAN_PX: f64 = 8.0;
        const LINE_PX: f64 = 2.0;
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let count = (dx.abs().min(dy.abs()) / LEAN_PX).ceil().clamp(1.0, 64.0);
        (0..count as u32).map(move |i| {
            let middle = (f64::from(i) + 0.5) / count;
            Self {
                centre: (from.0 + dx * middle, from.1 + dy * middle),
                size: (dx.abs() / count + LINE_PX, dy.abs() / count + LINE_PX),
            }
        })
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
    /// The line from the edge of its box to its place, where it stands so far off that one must lead there.
    pub fn leader(&self) -> Option<[(f64, f64); 2]> {
        let Block { centre, size } = self.block?;
        let (dx, dy) = (self.anchor.0 - centre.0, self.anchor.1 - centre.1);
        let far = dx.abs() > size.0 / 2.0 + 6.0 || dy.abs() > size.1 / 2.0 + 6.0;
        let out = (size.0 / 2.0 / dx.abs()).min(size.1 / 2.0 / dy.abs());
        far.then_some([(centre.0 + dx * out, centre.1 + dy * out), self.anchor])
    }
}

/// What is on the screen before tags are placed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Written {
    /// Texts and lines that no tag covers.
    pub kept: Vec<Block>,
    /// Lines that a tag covers only where nothing else is free.
    pub crossed: Vec<Block>,
}

/// Places the tags in their order beside what is written already.
pub fn place<'a>(
    tags: impl IntoIterator<Item = &'a Tag>,
    written: &Written,
    to_screen: impl Fn(Point) -> (f64, f64),
    screen: (f64, f64),
    letter_px: f64,
) -> Vec<PlacedTag> {
    let mut taken = written.kept.clone();
    let place_one = |tag: &Tag| {
        let anchor = to_screen(tag.at);
        let off = anchor.0 < 0.0 || anchor.1 < 0.0 || anchor.0 > screen.0 || anchor.1 > screen.1;
        let block = if off { None } else { room(tag, anchor, [&taken, &written.crossed], screen, letter_px) };
        taken.extend(block);
        PlacedTag { tag: tag.clone(), block, anchor }
    };
    let mut placed: Vec<PlacedTag> = tags.into_iter().map(place_one).collect();
    uncross(&mut placed);
    placed
}

/// Lets tags of one size change places where both are nearer to what they belong to then: leaders that cross do.
fn uncross(placed: &mut [PlacedTag]) {
    const ROUNDS: u32 = 3;
    const NEARER_PX: f64 = 1.0;
    let far = |of: &PlacedTag, block: Block| {
        let (dx, dy) = (of.anchor.0 - block.centre.0, of.anchor.1 - block.centre.1);
        (dx * dx + dy * dy).sqrt()
    };
    for _ in 0..ROUNDS {
        let mut changed = false;
        for i in 0..placed.len() {
            for j in 0..i {
                let (Some(a), Some(b)) = (placed[i].block, placed[j].block) else { continue };
                if a.size != b.size {
                    continue;
                }
                let now = far(&placed[i], a) + far(&placed[j], b);
                if far(&placed[i], b) + far(&placed[j], a) < now - NEARER_PX {
                    (placed[i].block, placed[j].block) = (Some(b), Some(a));
                    changed = true;
                }
            }
        }
        if !changed {
            break;
        }
    }
}

/// On a smaller drawing there is no room for leaders to values.
const SMALL_PX: f64 = 560.0;

/// The nearest free box beside a place; one over others for what is urgent.
fn room(
    tag: &Tag,
    anchor: (f64, f64),
    [taken, crossed]: [&[Block]; 2],
    screen: (f64, f64),
    letter_px: f64,
) -> Option<Block> {
    let size = size(tag, letter_px);
    let at = |(dx, dy)| Block { centre: (anchor.0 + dx, anchor.1 + dy), size };
    let steps = match tag.kind {
        _ if tag.urgent => 9,
        TagKind::Governing(_) | TagKind::Unchecked => 4,
        // Values far from their diagrams would fill a small drawing.
        TagKind::Value if screen.0.min(screen.1) < SMALL_PX => 1,
        _ => 2,
    };
    let off = |block: &Block, others: &[Block]| !others.iter().any(|other| block.covers(other));
    let places = || candidates(size, steps).map(at).filter(|block| block.within(screen) && off(block, taken));
    let free = places().find(|block| off(block, crossed)).or_else(|| places().next());
    free.or_else(|| tag.urgent.then(|| at((0.0, -size.1))))
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
        let blocks = blocks(&place(&tags, &Written::default(), screen, (1000.0, 1000.0), 12.0));
        assert_eq!(blocks.len(), 20);
        for (i, a) in blocks.iter().enumerate() {
            assert!(blocks[..i].iter().all(|b| !a.covers(b)));
        }
    }

    #[test]
    fn what_is_written_already_is_not_covered() {
        let text = Block { centre: (530.0, 500.0), size: (60.0, 20.0) };
        let lines: Vec<Block> = Block::along([(470.0, 300.0), (470.0, 700.0)])
            .chain(Block::along([(300.0, 300.0), (900.0, 450.0)]))
            .collect();
        let placed = |written: Written| {
            let tag = tag(TagKind::Member(0.83), false);
            blocks(&place(&[tag], &written, screen, (1000.0, 1000.0), 12.0))[0]
        };
        for written in [
            Written { kept: [vec![text], lines.clone()].concat(), crossed: Vec::new() },
            Written { kept: vec![text], crossed: lines.clone() },
        ] {
            let block = placed(written);
            assert!(!block.covers(&text) && lines.iter().all(|line| !block.covers(line)), "{block:?}");
        }
        // What may be crossed is crossed where nothing else is free.
        let all = Block { centre: (500.0, 500.0), size: (900.0, 900.0) };
        let block = placed(Written { kept: vec![text], crossed: vec![all] });
        assert!(block.covers(&all) && !block.covers(&text));
    }

    #[test]
    fn leaders_do_not_cross() {
        let mut pair = [(100.0, 100.0), (160.0, 100.0)].map(|anchor| PlacedTag {
            tag: tag(TagKind::Member(0.5), false),
            block: Some(Block { centre: (260.0 - anchor.0, 140.0), size: (40.0, 20.0) }),
            anchor,
        });
        uncross(&mut pair);
        assert!(pair.iter().all(|placed| placed.block.unwrap().centre.0 == placed.anchor.0), "{pair:?}");
    }

    #[test]
    fn a_leader_begins_at_the_edge_of_its_tag() {
        let block = Block { centre: (100.0, 100.0), size: (40.0, 20.0) };
        let placed = |anchor| PlacedTag { tag: tag(TagKind::Value, false), block: Some(block), anchor };
        assert_eq!(placed((100.0, 160.0)).leader(), Some([(100.0, 110.0), (100.0, 160.0)]));
        assert_eq!(placed((200.0, 125.0)).leader(), Some([(120.0, 105.0), (200.0, 125.0)]));
        assert_eq!(placed((122.0, 100.0)).leader(), None);
    }

    #[test]
    fn what_is_urgent_is_always_written_and_what_is_off_the_sheet_never() {
        let (urgent, quiet) = (tag(TagKind::Ring(0), true), tag(TagKind::Member(0.5), false));
        let (size, none) = ((1000.0, 1000.0), Written::default());
        assert_eq!(blocks(&place(&vec![urgent.clone(); 200], &none, screen, size, 12.0)).len(), 200);
        assert!(blocks(&place(&vec![quiet; 200], &none, screen, size, 12.0)).len() < 200);
        assert!(blocks(&place(&[urgent], &none, |_| (-500.0, 0.0), size, 12.0)).is_empty());
    }
}
