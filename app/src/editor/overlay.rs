//! What is drawn over the section while editing.

use super::moving;
use super::places::Places;
use super::{Bounds, Selection, Side, Snap, Target};
use falsewright_core::geometry::Point;

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
    /// Length.
    pub length_m: f64,
    /// Direction from the horizontal, counter-clockwise; none where it goes without saying.
    pub angle_deg: Option<f64>,
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

/// What can be dragged of the selection.
pub(super) fn handles(places: &Places, selection: Selection) -> Vec<Handle> {
    let middle = |ends: Option<[Point; 2]>, target| ends.map(|[a, b]| Handle { at: a.lerp(b, 0.5), target });
    let Some(selected) = selection else { return Vec::new() };
    let found = match selected {
        Target::Corner(id) => {
            let at = moving::neighbours(places, id).map(|[_, corner, _]| corner.point());
            vec![at.map(|at| Handle { at, target: selected })]
        }
        Target::Cut(id) => {
            let faces = places.faces.iter().filter(|face| face.of.cut && face.of.corner == id);
            faces.map(|face| middle(Some([face.from, face.to]), selected)).collect()
        }
        Target::Face(of) => {
            let faces = places.faces.iter().filter(|face| face.of == of);
            faces.map(|face| middle(Some([face.from, face.to]), selected)).collect()
        }
        Target::Joint(id) => {
            let joint = places.scheme.section.joints.iter().find(|joint| joint.id == id);
            let ends =
                joint.zip(places.section()).map(|(joint, b)| [b.min.x, b.max.x].map(|x| Point::new(x, joint.z_m)));
            vec![middle(ends, selected)]
        }
        Target::Shutter(id) | Target::ShutterEnd(id, _) => {
            let shutter =
                places.shutter(id).and_then(|shutter| places.board(shutter).zip(places.shutter_bounds(shutter)));
            let end = |side, z: f64, bounds: Bounds| {
                let at = Point::new((bounds.min.x + bounds.max.x) / 2.0, z);
                Some(Handle { at, target: Target::ShutterEnd(id, side) })
            };
            shutter.map_or_else(Vec::new, |([foot, head], bounds)| {
                vec![end(Side::Bottom, foot.z, bounds), end(Side::Top, head.z, bounds)]
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
            vec![
                edge(Side::Left, [min, top_left]),
                edge(Side::Right, [bottom_right, max]),
                edge(Side::Top, [top_left, max]),
            ]
        }
        Target::Dimension(_) => Vec::new(),
    };
    found.into_iter().flatten().collect()
}
