//! What dragging or nudging a thing does to the scheme.

use super::places::Places;
use super::snap::Snapper;
use super::{Side, Target};
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Corner, Cut, Id, Opening};
use std::collections::BTreeMap;

/// Haunches smaller than this vanish, m.
const LEAST_CUT_M: f64 = 0.02;

/// The edit of dragging a thing from one point to another; none where it does not move that way.
pub fn drag(places: &Places, snapper: &Snapper, target: Target, from: Point, to: Point, locked: bool) -> Option<Edit> {
    let by = to - from;
    Some(match target {
        Target::Corner(corner) => {
            let start = neighbours(places, corner)?[1].point();
            let others = snapper.clone().without(&[corner]);
            let to = if locked { others.direction(start, start + by) } else { others.snap(start + by) };
            Edit::MoveCorner { corner, to: to.point }
        }
        Target::Face(face) => move_edge(places, snapper, face.corner, by)?,
        Target::Cut(corner) => Edit::SetCut { corner, cut: scaled_cut(places, snapper, corner, to)? },
        Target::Joint(joint) => {
            let start = places.scheme.section.joints.iter().find(|j| j.id == joint)?.z_m;
            Edit::MoveJoint { joint, z_m: snapper.level(start + by.z) }
        }
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
        Target::Shutter(_) | Target::Falsework(_) | Target::Dimension(_) => return None,
    })
}

/// The edit of moving a thing by a small step, off any grid; none where it does not move that way.
pub fn nudge(places: &Places, target: Target, by: Point) -> Option<Edit> {
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
        Target::Opening(id) => Edit::MoveOpening { opening: id, left_m: places.opening(id)?.left_m + along? },
        Target::OpeningEdge(id, side) => resized(places.opening(id)?, side, by, |value| value),
        Target::Transfer(id) => {
            let mut opening = places.opening(id)?.clone();
            opening.beam_underside_m = (opening.beam_underside_m + up?).max(opening.height_m);
            Edit::SetOpening(opening)
        }
        Target::Shutter(_) | Target::Falsework(_) | Target::Dimension(_) => return None,
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

fn move_edge(places: &Places, snapper: &Snapper, edge: Id, by: Point) -> Option<Edit> {
    let [_, start, next] = neighbours(places, edge)?;
    let normal = outward(places, edge)?;
    let others = snapper.clone().without(&[start.id, next.id]);
    let distance = by.dot(normal);
    let distance_m = if normal.z.abs() < 1e-9 {
        (others.place(start.x_m + distance * normal.x) - start.x_m) * normal.x
    } else if normal.x.abs() < 1e-9 {
        (others.level(start.z_m + distance * normal.z) - start.z_m) * normal.z
    } else {
        others.step(distance)
    };
    Some(Edit::MoveEdge { edge, distance_m })
}

/// The haunch of a corner through `to`, its legs in their present proportion; none where it would be too small.
fn scaled_cut(places: &Places, snapper: &Snapper, corner: Id, to: Point) -> Option<Option<Cut>> {
    let [previous, at, next] = neighbours(places, corner)?;
    let cut = at.cut?;
    let before = (previous.point() - at.point()).unit() * cut.before_m;
    let after = (next.point() - at.point()).unit() * cut.after_m;
    let area = before.cross(after);
    if area == 0.0 {
        return None;
    }
    let v = to - at.point();
    let scale = v.cross(after) / area + before.cross(v) / area;
    let (before_m, after_m) = (snapper.step(cut.before_m * scale), snapper.step(cut.after_m * scale));
    Some((before_m.min(after_m) >= LEAST_CUT_M).then_some(Cut { before_m, after_m }))
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
            _ => edits.extend(nudge(places, *target, by).filter(|_| equipment(target))),
        }
    }
    let place = |(id, by): (Id, Point)| Some((id, neighbours(places, id)?[1].point() + by));
    let corners: Vec<(Id, Point)> = corners.into_iter().filter(|(_, by)| by.length() > 0.0).filter_map(place).collect();
    if !(corners.is_empty() && section.is_empty()) {
        edits.insert(0, Edit::MoveSection { corners, joints: section });
    }
    (!edits.is_empty()).then_some(Edit::Several(edits))
}

fn equipment(target: &Target) -> bool {
    matches!(target, Target::TieRow(_) | Target::LegLine(_) | Target::Opening(_))
}
