//! What is drawn over the section while editing.

use super::moving;
use super::places::Places;
use super::{Bounds, Selection, Side, Snap, Target, swinging};
use falsewright_core::geometry::Point;
use falsewright_core::scheme::Id;

/// Marks over the drawing. All points are in the world.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Overlay {
    /// What a press here would mean.
    pub hover: Option<Target>,
    /// Points that can be dragged, of the selection.
    pub handles: Vec<Handle>,
    /// Where the pointer is drawn to.
    pub snap: Option<Snap>,
    /// A box being drawn around what is to be selected.
    pub boxed: Option<Boxed>,
    /// Outline or opening being drawn.
    pub preview: Vec<Point>,
    /// A freehand stroke as it is drawn.
    pub stroke: Vec<Point>,
    /// Whether what is shown waits to be kept or refused.
    pub proposed: bool,
    /// Length and angle of what is being drawn or dragged.
    pub readout: Option<Readout>,
    /// A length being typed.
    pub entry: Option<LengthEntry>,
    /// Why the last change was refused, until the next one.
    pub refusal: Option<String>,
}

/// A box that selects.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Boxed {
    /// Where it is.
    pub bounds: Bounds,
    /// It takes what lies wholly inside, not what it touches.
    pub inside: bool,
}

/// A point that can be dragged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Handle {
    /// Where it is.
    pub at: Point,
    /// What is dragged by it.
    pub target: Target,
}

/// A live value beside the pointer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Readout {
    /// What it is written beside.
    pub at: Point,
    /// What is measured; nothing where it goes without saying.
    pub what: &'static str,
    /// Length.
    pub length_m: f64,
    /// Second length, across the first.
    pub by_m: Option<f64>,
    /// Direction from the horizontal, counter-clockwise; none where it goes without saying.
    pub angle_deg: Option<f64>,
    /// Run of a batter or fall by its rise.
    pub one_in: Option<f64>,
}

impl Readout {
    /// Only a length.
    pub fn length(at: Point, what: &'static str, length_m: f64) -> Self {
        Self { at, what, length_m, by_m: None, angle_deg: None, one_in: None }
    }
}

/// A length being typed on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct LengthEntry {
    /// What it is written beside.
    pub at: Point,
    /// As typed so far.
    pub text: String,
    /// What it means, if it is understood.
    pub length_m: Option<f64>,
}

/// A haunch is pulled from this far inside its corner, px.
const HAUNCH_PX: f64 = 34.0;
/// An edge's end is pulled from this far along it, px.
const END_PX: f64 = 26.0;
/// An edge's middle is pulled up from this far outside it, px.
const RISE_PX: f64 = 30.0;
/// Shorter edges have no handles besides their middle, px.
const LEAST_EDGE_PX: f64 = 110.0;

/// The handles of a corner: its own, and that of the haunch in it or to be pulled out of it.
fn corner_handles(places: &Places, id: Id, px_m: f64) -> Vec<Option<Handle>> {
    let Some([previous, corner, next]) = moving::neighbours(places, id) else { return Vec::new() };
    let at = corner.point();
    let inward = ((previous.point() - at).unit() + (next.point() - at).unit()).unit();
    let cut = places.faces.iter().find(|face| face.of.cut && face.of.corner == id);
    let haunch = match cut {
        Some(face) => Handle { at: face.from.lerp(face.to, 0.5), target: Target::Cut(id) },
        None => Handle { at: at + inward * (HAUNCH_PX * px_m), target: Target::Haunch(id) },
    };
    vec![Some(Handle { at, target: Target::Corner(id) }), Some(haunch)]
}

/// The handles of an edge besides its middle: its ends, for a batter or fall, and what raises its middle.
fn edge_handles(places: &Places, edge: Id, px_m: f64) -> Vec<Option<Handle>> {
    let line = moving::neighbours(places, edge).map(|[_, start, next]| (start, next));
    let Some(((start, next), normal)) = line.zip(moving::outward(places, edge)) else { return Vec::new() };
    let (from, to) = (start.point(), next.point());
    if (to - from).length() < LEAST_EDGE_PX * px_m {
        return Vec::new();
    }
    let inset = (to - from).unit() * (END_PX * px_m);
    let end = |at, corner| Some(Handle { at, target: Target::EdgeEnd { edge, corner } });
    let rise = Handle { at: from.lerp(to, 0.5) + normal * (RISE_PX * px_m), target: Target::EdgeMiddle(edge) };
    vec![end(from + inset, start.id), end(to - inset, next.id), Some(rise)]
}

/// What can be dragged of the selection, where a px is so long.
pub(super) fn handles(places: &Places, selection: Selection, px_m: f64) -> Vec<Handle> {
    let middle = |ends: Option<[Point; 2]>, target| ends.map(|[a, b]| Handle { at: a.lerp(b, 0.5), target });
    let Some(selected) = selection else { return Vec::new() };
    let of_section = |target| {
        matches!(
            target,
            Target::Corner(_)
                | Target::Haunch(_)
                | Target::Cut(_)
                | Target::Face(_)
                | Target::EdgeEnd { .. }
                | Target::EdgeMiddle(_)
        )
    };
    if of_section(selected) && !places.seen.is_section() {
        return Vec::new();
    }
    let found = match selected {
        Target::Corner(id) | Target::Haunch(id) => corner_handles(places, id, px_m),
        Target::EdgeEnd { edge, .. } | Target::EdgeMiddle(edge) => edge_handles(places, edge, px_m),
        Target::Cut(id) => {
            let faces = places.faces.iter().filter(|face| face.of.cut && face.of.corner == id);
            faces.map(|face| middle(Some([face.from, face.to]), selected)).collect()
        }
        Target::Face(of) => {
            let faces = places.faces.iter().filter(|face| face.of == of);
            let own = faces.map(|face| middle(Some([face.from, face.to]), selected));
            own.chain(edge_handles(places, of.corner, px_m)).collect()
        }
        Target::Joint(id) => {
            let joint = places.scheme.section.joints.iter().find(|joint| joint.id == id);
            vec![middle(joint.and_then(|joint| places.joint_line(joint)), selected)]
        }
        Target::Shutter(id) | Target::ShutterEnd(id, _) | Target::Hinge(id) | Target::Swing(id) => {
            let shutter =
                places.shutter(id).and_then(|shutter| places.board(shutter).zip(places.shutter_bounds(shutter)));
            let end = |side, z: f64, bounds: Bounds| {
                let at = Point::new((bounds.min.x + bounds.max.x) / 2.0, z);
                Some(Handle { at, target: Target::ShutterEnd(id, side) })
            };
            shutter.map_or_else(Vec::new, |([foot, head], bounds)| {
                [end(Side::Bottom, foot.z, bounds), end(Side::Top, head.z, bounds)]
                    .into_iter()
                    .chain(swinging::handles(places, id))
                    .collect()
            })
        }
        Target::TieRow(id) => vec![middle(places.row(id).and_then(|row| places.row_line(row)), selected)],
        Target::LegLine(id) => {
            vec![middle(places.leg_line(id).and_then(|(falsework, line)| places.leg(falsework, line)), selected)]
        }
        Target::Falsework(id) => {
            let lines = places.falsework(id).into_iter().flat_map(|f| f.leg_lines.iter().map(move |line| (f, line)));
            lines.map(|(f, line)| middle(places.leg(f, line), Target::LegLine(line.id))).collect()
        }
        Target::Opening(id) | Target::OpeningEdge(id, _) | Target::Transfer(id) => {
            let Some(Bounds { min, max }) = places.opening(id).and_then(|opening| places.way(opening)) else {
                return Vec::new();
            };
            let (top_left, bottom_right) = (Point::new(min.x, max.z), Point::new(max.x, min.z));
            let edge = |side, ends| middle(Some(ends), Target::OpeningEdge(id, side));
            let top = places.seen.is_section().then(|| edge(Side::Top, [top_left, max])).flatten();
            vec![edge(Side::Left, [min, top_left]), edge(Side::Right, [bottom_right, max]), top]
        }
        Target::Dimension(_) => Vec::new(),
    };
    found.into_iter().flatten().collect()
}
