//! What dragging or nudging a thing does to the scheme.

use super::along;
use super::outline_moves::{crown, edge_end, haunch, joint, move_edge, scaled_cut};
use super::places::Places;
use super::snap::Snapper;
use super::{Readout, Side, Snap, Target, swinging};
use crate::language::key;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Corner, Cut, Id, Opening};
use std::collections::BTreeMap;

/// Haunches smaller than this vanish, m.
pub const LEAST_CUT_M: f64 = 0.02;

/// What a drag does.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// To the scheme.
    pub edit: Edit,
    /// What it was drawn to.
    pub snap: Option<Snap>,
    /// Its live value.
    pub readout: Option<Readout>,
}

impl From<Edit> for Moved {
    fn from(edit: Edit) -> Self {
        Self { edit, snap: None, readout: None }
    }
}

/// What dragging a thing from one point to another does; none where it does not move that way.
pub fn drag(places: &Places, snapper: &Snapper, target: Target, from: Point, to: Point, locked: bool) -> Option<Moved> {
    let view = places.seen.view;
    if let Some(pulled) = along::drag(places, target, from, to, |value| snapper.step(value)) {
        return Some(pulled);
    }
    let by = view.in_section(to - from);
    let to = from + by;
    match target {
        Target::Corner(corner) => {
            let start = neighbours(places, corner)?[1].point();
            let others = snapper.clone().without(&[corner]);
            let snap = if locked { others.direction(start, start + by) } else { others.snap(start + by) };
            let readout = Readout::length(snap.point, key("moved"), (snap.point - start).length());
            let edit = Edit::MoveCorner { corner, to: snap.point };
            Some(Moved { edit, snap: Some(snap), readout: Some(readout) })
        }
        Target::Face(face) => move_edge(places, snapper, face.corner, from, to),
        Target::Cut(corner) => scaled_cut(places, snapper, corner, to),
        Target::Haunch(corner) => haunch(places, snapper, corner, to),
        Target::EdgeEnd { edge, corner } => edge_end(places, snapper, edge, corner, by),
        Target::EdgeMiddle(edge) => crown(places, snapper, edge, by),
        Target::Joint(id) => joint(places, snapper, id, from, to).map(|moved| Moved {
            // The marks of a snap lead to places of the section.
            snap: moved.snap.filter(|_| places.seen.is_section()),
            ..moved
        }),
        Target::Hinge(id) => swinging::hinge(places, snapper, id, by),
        Target::Swing(id) => swinging::swing(places, snapper, id, by),
        other => equipment(places, snapper, other, by).map(Moved::from),
    }
}

/// Rows, leg lines, shutters' ends and openings.
fn equipment(places: &Places, snapper: &Snapper, target: Target, by: Point) -> Option<Edit> {
    Some(match target {
        Target::TieRow(row) => Edit::MoveTieRow { row, z_m: snapper.step(places.row(row)?.z_m + by.z) },
        Target::LegLine(line) => Edit::MoveLegLine { line, x_m: snapper.step(places.leg_line(line)?.1.x_m + by.x) },
        Target::ShutterEnd(id, side) => {
            let shutter = places.shutter(id)?;
            let (mut below_m, mut above_m) = (shutter.below_m, shutter.above_m);
            match side {
                Side::Bottom => below_m = snapper.step(below_m - by.z).max(0.0),
                _ => above_m = snapper.step(above_m + by.z).max(0.0),
            }
            Edit::MoveShutterEnds { shutter: id, below_m, above_m }
        }
        Target::Opening(id) => {
            Edit::MoveOpening { opening: id, left_m: snapper.step(places.opening(id)?.left_m + by.x) }
        }
        Target::OpeningEdge(id, side) => resized(places.opening(id)?, side, by, |value| snapper.step(value)),
        Target::Transfer(id) => {
            let mut opening = places.opening(id)?.clone();
            opening.beam_underside_m = snapper.step(opening.beam_underside_m + by.z).max(opening.height_m);
            Edit::SetOpening(opening)
        }
        _ => return None,
    })
}

/// The edit of moving a thing by a small step, off any grid; none where it does not move that way.
pub fn nudge(places: &Places, target: Target, by: Point) -> Option<Edit> {
    let by = places.seen.view.in_section(by);
    let up = (by.z != 0.0).then_some(by.z);
    let along = (by.x != 0.0).then_some(by.x);
    Some(match target {
        Target::Corner(corner) => Edit::MoveCorner { corner, to: neighbours(places, corner)?[1].point() + by },
        Target::Face(face) => {
            let distance_m = by.dot(outward(places, face.corner)?);
            (distance_m.abs() > 1e-9).then_some(Edit::MoveEdge { edge: face.corner, distance_m })?
        }
        Target::Cut(corner) => {
            let cut = neighbours(places, corner)?[1].cut?;
            let more = by.x + by.z;
            let cut = Cut { before_m: cut.before_m + more, after_m: cut.after_m + more };
            Edit::SetCut { corner, cut: (cut.before_m.min(cut.after_m) > LEAST_CUT_M).then_some(cut) }
        }
        Target::Joint(joint) => {
            let start = places.scheme.section.joints.iter().find(|j| j.id == joint)?.z_m;
            Edit::MoveJoint { joint, z_m: start + up? }
        }
        Target::TieRow(row) => Edit::MoveTieRow { row, z_m: places.row(row)?.z_m + up? },
        Target::LegLine(line) => Edit::MoveLegLine { line, x_m: places.leg_line(line)?.1.x_m + along? },
        Target::ShutterEnd(id, side) => {
            let shutter = places.shutter(id)?;
            let [below, above] = if side == Side::Bottom { [-up?, 0.0] } else { [0.0, up?] };
            let (below_m, above_m) = ((shutter.below_m + below).max(0.0), (shutter.above_m + above).max(0.0));
            Edit::MoveShutterEnds { shutter: id, below_m, above_m }
        }
        Target::Hinge(id) => swinging::moved_hinge(places, id, by, |value| value)?,
        Target::Opening(id) => Edit::MoveOpening { opening: id, left_m: places.opening(id)?.left_m + along? },
        Target::OpeningEdge(id, side) => resized(places.opening(id)?, side, by, |value| value),
        Target::Transfer(id) => {
            let mut opening = places.opening(id)?.clone();
            opening.beam_underside_m = (opening.beam_underside_m + up?).max(opening.height_m);
            Edit::SetOpening(opening)
        }
        _ => return None,
    })
}

/// A corner between its neighbours.
pub fn neighbours<'a>(places: &Places<'a>, corner: Id) -> Option<[&'a Corner; 3]> {
    let section = &places.scheme.section;
    let rings = std::iter::once(&section.outline).chain(section.cells.iter().map(|cell| &cell.corners));
    rings.into_iter().find_map(|ring| {
        let i = ring.iter().position(|c| c.id == corner)?;
        let count = ring.len();
        Some([&ring[(i + count - 1) % count], &ring[i], &ring[(i + 1) % count]])
    })
}

/// The direction out of its ring of the edge that starts at a corner.
pub fn outward(places: &Places, edge: Id) -> Option<Point> {
    let found = places.scheme.section.edges().into_iter().find(|e| e.corner == edge && !e.cut)?;
    let out_of_concrete = found.line.outward();
    Some(if found.cell.is_some() { out_of_concrete * -1.0 } else { out_of_concrete })
}

fn resized(opening: &Opening, side: Side, by: Point, step: impl Fn(f64) -> f64) -> Edit {
    let (left, right) = (opening.left_m, opening.left_m + opening.width_m);
    let (left_m, width_m, height_m) = match side {
        Side::Left => {
            let left_m = step(left + by.x);
            (left_m, right - left_m, opening.height_m)
        }
        Side::Right => (left, step(right + by.x) - left, opening.height_m),
        Side::Top | Side::Bottom => (left, opening.width_m, step(opening.height_m + by.z)),
    };
    Edit::ResizeOpening { opening: opening.id, left_m, width_m, height_m }
}

/// The edit of moving several things by the same distance, each the way it moves: faces along their normals, rows up and
/// down, leg lines and openings sideways. Shutters and falsework go with their faces. None where nothing moves.
pub fn all_by(places: &Places, targets: &[Target], by: Point) -> Option<Edit> {
    let by = places.seen.view.in_section(by);
    let mut corners: BTreeMap<Id, Point> = BTreeMap::new();
    let chosen = |id: Id| targets.iter().any(|target| matches!(target, Target::Corner(corner) if *corner == id));
    let mut section = Vec::new();
    let mut edits = Vec::new();
    for target in targets {
        match *target {
            Target::Corner(id) => {
                corners.insert(id, by);
            }
            Target::Face(face) => {
                let Some((normal, [_, start, next])) =
                    outward(places, face.corner).zip(neighbours(places, face.corner))
                else {
                    continue;
                };
                for end in [start.id, next.id].into_iter().filter(|id| !chosen(*id)) {
                    let sum = corners.entry(end).or_default();
                    *sum = *sum + normal * by.dot(normal);
                }
            }
            Target::Joint(id) if by.z != 0.0 => {
                let joint = places.scheme.section.joints.iter().find(|joint| joint.id == id);
                section.extend(joint.map(|joint| (id, joint.z_m + by.z)));
            }
            // Where the section takes it along, this is where it is then already.
            _ => edits.extend(nudge(places, *target, by).filter(|_| goes_alone(target))),
        }
    }
    let place = |(id, by): (Id, Point)| Some((id, neighbours(places, id)?[1].point() + by));
    let corners: Vec<(Id, Point)> = corners.into_iter().filter(|(_, by)| by.length() > 0.0).filter_map(place).collect();
    if !(corners.is_empty() && section.is_empty()) {
        edits.insert(0, Edit::MoveSection { corners, joints: section });
    }
    (!edits.is_empty()).then_some(Edit::Several(edits))
}

fn goes_alone(target: &Target) -> bool {
    matches!(target, Target::TieRow(_) | Target::LegLine(_) | Target::Opening(_))
}
