//! What dragging corners, edges, haunches and joints does to the section, with the value that the user watches.

use super::moving::{LEAST_CUT_M, Moved, neighbours, outward};
use super::places::Places;
use super::snap::{Snap, SnapReason, Snapper};
use super::{Readout, Target};
use crate::language::key;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Corner, Cut, Id};

/// Moves an edge along its normal.
pub fn move_edge(places: &Places, snapper: &Snapper, edge: Id, from: Point, to: Point) -> Option<Moved> {
    let [_, start, next] = neighbours(places, edge)?;
    let normal = outward(places, edge)?;
    let others = snapper.clone().without(&[start.id, next.id]);
    let distance = (to - from).dot(normal);
    let (distance_m, reason) = if normal.z.abs() < 1e-9 {
        let (x, reason) = others.place(start.x_m + distance * normal.x);
        ((x - start.x_m) * normal.x, reason)
    } else if normal.x.abs() < 1e-9 {
        let (z, reason) = others.level(start.z_m + distance * normal.z);
        ((z - start.z_m) * normal.z, reason)
    } else {
        (others.step(distance), SnapReason::Free)
    };
    let at = from + normal * distance_m;
    Some(Moved {
        edit: Edit::MoveEdge { edge, distance_m },
        snap: Some(Snap { point: at, reason }),
        readout: Some(Readout::length(at, key("moved"), distance_m.abs())),
    })
}

/// Moves a joint; its level is measured above the lowest point of the section.
pub fn joint(places: &Places, snapper: &Snapper, joint: Id, from: Point, to: Point) -> Option<Moved> {
    let start_m = places.scheme.section.joints.iter().find(|j| j.id == joint)?.z_m;
    let lowest_m = places.section()?.min.z;
    let (z_m, reason) = snapper.level(start_m + to.z - from.z);
    let at = Point::new(from.x, z_m);
    Some(Moved {
        edit: Edit::MoveJoint { joint, z_m },
        snap: Some(Snap { point: at, reason }),
        readout: Some(Readout::length(at, key("above the base"), z_m - lowest_m)),
    })
}

/// Pulls a haunch with equal legs out of a corner, through a point.
pub fn haunch(places: &Places, snapper: &Snapper, corner: Id, to: Point) -> Option<Moved> {
    let [previous, at, next] = neighbours(places, corner)?;
    cut(places, snapper, corner, to, [previous, at, next], [1.0, 1.0])
}

/// The haunch of a corner through a point, its legs in their present proportion.
pub fn scaled_cut(places: &Places, snapper: &Snapper, corner: Id, to: Point) -> Option<Moved> {
    let [previous, at, next] = neighbours(places, corner)?;
    let now = at.cut?;
    cut(places, snapper, corner, to, [previous, at, next], [now.before_m, now.after_m])
}

fn cut(
    places: &Places,
    snapper: &Snapper,
    corner: Id,
    to: Point,
    [previous, at, next]: [&Corner; 3],
    [before, after]: [f64; 2],
) -> Option<Moved> {
    let toward = |other: &Corner, leg: f64| (other.point() - at.point()).unit() * leg;
    let (along, away) = (toward(previous, before), toward(next, after));
    let area = along.cross(away);
    if area == 0.0 {
        return None;
    }
    let v = to - at.point();
    let scale = v.cross(away) / area + along.cross(v) / area;
    let section = &places.scheme.section;
    let rings = std::iter::once(&section.outline).chain(section.cells.iter().map(|cell| &cell.corners));
    let legs: Vec<f64> = rings
        .flatten()
        .filter(|other| other.id != corner)
        .filter_map(|other| other.cut.map(|cut| cut.before_m))
        .collect();
    let (before_m, same) = snapper.like(before * scale, legs.into_iter());
    let after_m = if before == after { before_m } else { snapper.step(after * scale) };
    let cut = (before_m.min(after_m) >= LEAST_CUT_M).then_some(Cut { before_m, after_m });
    let middle = at.point() + toward(previous, before_m / 2.0) + toward(next, after_m / 2.0);
    let reason = if same { SnapReason::SameHaunch } else { SnapReason::Free };
    let readout = Readout { by_m: Some(after_m), ..Readout::length(middle, key("haunch"), before_m) };
    Some(Moved {
        edit: Edit::SetCut { corner, cut },
        snap: Some(Snap { point: middle, reason }),
        readout: cut.is_some().then_some(readout),
    })
}

/// Pulls one end of an edge along the edge that adjoins it there: a batter of a wall, a fall of a slab.
pub fn edge_end(places: &Places, snapper: &Snapper, edge: Id, corner: Id, by: Point) -> Option<Moved> {
    let [_, start, next] = neighbours(places, edge)?;
    let [before, at, after] = neighbours(places, corner)?;
    let (other, beyond) = if corner == start.id { (next, before) } else { (start, after) };
    let along = (beyond.point() - at.point()).unit();
    let others = snapper.clone().without(&[corner]);
    let distance = by.dot(along);
    // Along a level or upright neighbour the corner is drawn to others; it then stands square above the other end too.
    let (to, reason) = if along.z.abs() < 1e-9 {
        let (x, reason) = others.place(at.x_m + distance * along.x);
        (Point::new(x, at.z_m), reason)
    } else if along.x.abs() < 1e-9 {
        let (z, reason) = others.level(at.z_m + distance * along.z);
        (Point::new(at.x_m, z), reason)
    } else {
        (at.point() + along * others.step(distance), SnapReason::Free)
    };
    Some(Moved {
        edit: Edit::MoveCorner { corner, to },
        snap: Some(Snap { point: to, reason }),
        readout: Some(slope(to, other.point())),
    })
}

/// Raises the middle of an edge to a crown, or sinks it.
pub fn crown(places: &Places, snapper: &Snapper, edge: Id, by: Point) -> Option<Moved> {
    let [_, start, next] = neighbours(places, edge)?;
    let normal = outward(places, edge)?;
    let middle = start.point().lerp(next.point(), 0.5);
    let rise_m = snapper.step(by.dot(normal));
    let at = middle + normal * rise_m;
    Some(Moved { edit: Edit::AddCorner { edge, at }, snap: None, readout: Some(slope(at, start.point())) })
}

/// How far a line is out of plumb, or out of level, and one in how much.
fn slope(at: Point, other: Point) -> Readout {
    let along = at - other;
    let (what, rise, run) = if along.z.abs() > along.x.abs() {
        (key("batter"), along.x.abs(), along.z.abs())
    } else {
        (key("fall"), along.z.abs(), along.x.abs())
    };
    let one_in = (rise > 1e-6).then(|| run / rise);
    Readout { one_in, ..Readout::length(at, what, rise) }
}

/// What is selected by touching or dragging something: a handle stands for what it belongs to.
pub fn selected_by(target: Target, selection: super::Selection) -> super::Selection {
    match target {
        Target::Haunch(corner) => Some(Target::Corner(corner)),
        Target::EdgeEnd { .. } | Target::EdgeMiddle(_) => selection,
        other => Some(other),
    }
}
