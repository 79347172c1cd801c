//! Corners, edges, cells and joints.

use super::EditError;
use crate::geometry::Point;
use crate::scheme::{Cell, Corner, Cut, Id, Joint, Scheme, Section};
use crate::sorting::sort;

/// Sine of the angle between edges that count as parallel, at most.
const PARALLEL: f64 = 1e-4;

/// Joints nearer than this make no pour, m.
const SAME_LEVEL_M: f64 = 1e-3;

/// The first section of a sheet stands on the ground.
pub(super) fn set_section(scheme: &mut Scheme, section: &Section) {
    let first = scheme.fresh_id().0;
    let ids = (first..).map(Id);
    let blank = scheme.section.outline.is_empty();
    scheme.section = renumbered(section, ids);
    if let Some([lowest, _]) = scheme.section.boundary().extent().filter(|_| blank) {
        scheme.ground.level_m = lowest;
    }
}

fn renumbered(section: &Section, mut ids: impl Iterator<Item = Id>) -> Section {
    let mut section = section.clone();
    let cells = section.cells.iter_mut().flat_map(|cell| {
        let corners = cell.corners.iter_mut().map(|corner| &mut corner.id);
        std::iter::once(&mut cell.id).chain(corners)
    });
    let outline = section.outline.iter_mut().map(|corner| &mut corner.id);
    let joints = section.joints.iter_mut().map(|joint| &mut joint.id);
    for (id, fresh) in outline.chain(cells).chain(joints).zip(&mut ids) {
        *id = fresh;
    }
    section
}

pub(super) fn add_corner(scheme: &mut Scheme, edge: Id, at: Point) -> Result<(), EditError> {
    let id = scheme.fresh_id();
    let (ring, i) = ring_of(&mut scheme.section, edge)?;
    ring.insert(i + 1, Corner { id, x_m: at.x, z_m: at.z, cut: None });
    Ok(())
}

pub(super) fn move_corner(scheme: &mut Scheme, corner: Id, to: Point) -> Result<(), EditError> {
    let (ring, i) = ring_of(&mut scheme.section, corner)?;
    (ring[i].x_m, ring[i].z_m) = (to.x, to.z);
    Ok(())
}

pub(super) fn move_edge(scheme: &mut Scheme, edge: Id, distance_m: f64) -> Result<(), EditError> {
    let (ring, i) = ring_of(&mut scheme.section, edge)?;
    let next = (i + 1) % ring.len();
    let left = (ring[next].point() - ring[i].point()).unit().left();
    let clockwise = doubled_area(ring) < 0.0;
    let by = left * if clockwise { distance_m } else { -distance_m };
    shift(&mut ring[i], by);
    shift(&mut ring[next], by);
    Ok(())
}

pub(super) fn set_length(scheme: &mut Scheme, edge: Id, from: Id, length_m: f64, carry: bool) -> Result<(), EditError> {
    if !(0.001..=100.0).contains(&length_m) {
        return Err(EditError::Value { what: "length", value: length_m, range: "0.001 to 100 m" });
    }
    let [a, b] = ends(&mut scheme.section, edge)?;
    let [c, d] = ends(&mut scheme.section, from)?;
    let direction = (d - c).unit();
    if (b - a).unit().cross(direction).abs() > PARALLEL {
        return Err(EditError::NotParallel { edge, from });
    }
    let distance = (a.lerp(b, 0.5) - c).dot(direction.left());
    let away = direction.left() * distance.signum();
    let by = away * (length_m - distance.abs());
    if carry {
        carry_beyond(&mut scheme.section, a.dot(away).min(b.dot(away)), away, by);
    } else {
        let (ring, i) = ring_of(&mut scheme.section, edge)?;
        let next = (i + 1) % ring.len();
        shift(&mut ring[i], by);
        shift(&mut ring[next], by);
    }
    Ok(())
}

pub(super) fn set_cut(scheme: &mut Scheme, corner: Id, cut: Option<Cut>) -> Result<(), EditError> {
    let (ring, i) = ring_of(&mut scheme.section, corner)?;
    ring[i].cut = cut;
    Ok(())
}

pub(super) fn add_cell(scheme: &mut Scheme, corners: &[Corner]) {
    let id = scheme.fresh_id();
    let corner = |(fresh, corner): (u32, &Corner)| Corner { id: Id(fresh), ..*corner };
    scheme.section.cells.push(Cell { id, corners: (id.0 + 1..).zip(corners).map(corner).collect() });
}

/// What is left of an edge keeps its name.
pub(super) fn reshape(scheme: &mut Scheme, from: Id, to: Id, points: &[Point]) -> Result<(), EditError> {
    let fresh = scheme.fresh_id().0;
    let (ring, i) = ring_of(&mut scheme.section, from)?;
    let j = ring.iter().position(|corner| corner.id == to).ok_or(EditError::Missing { what: "corner", id: to })?;
    let (Some(&first), Some(&last)) = (points.first(), points.last()) else { return Ok(()) };
    let mut points = points.to_vec();
    let count = ring.len();
    let (after, gone) = if i == j {
        let along = ring[(i + 1) % count].point() - ring[i].point();
        if (last - first).dot(along) < 0.0 {
            points.reverse();
        }
        (i, 0)
    } else {
        let way = |from: usize, steps: usize| (from..from + steps).map(|k| ring[k % count].point());
        let onward = (j + count - i) % count;
        let length = |ends: [Point; 2], between: Vec<Point>| {
            let whole: Vec<Point> = [&ends[..1], &between, &ends[1..]].concat();
            whole.windows(2).map(|pair| (pair[1] - pair[0]).length()).sum::<f64>()
        };
        let forth = length([first, last], way(i + 1, onward).collect());
        let back = length([last, first], way(j + 1, count - onward).collect());
        if forth <= back {
            (i, onward)
        } else {
            points.reverse();
            (j, count - onward)
        }
    };
    let mut corners: Vec<Corner> =
        (fresh..).zip(&points).map(|(id, p)| Corner { id: Id(id), x_m: p.x, z_m: p.z, cut: None }).collect();
    if let Some(end) = corners.last_mut().filter(|_| gone > 0) {
        end.id = if after == i { to } else { from };
    }
    ring.rotate_left((after + 1) % count);
    ring.splice(..gone, corners);
    let same = |a: &Corner, b: &Corner| (a.point() - b.point()).length() < SAME_LEVEL_M;
    ring.dedup_by(|next, kept| same(next, kept));
    if ring.len() > 1 && same(&ring[0], &ring[ring.len() - 1]) {
        ring.remove(0);
    }
    Ok(())
}

pub(super) fn carry_edge(scheme: &mut Scheme, edge: Id, by: Point, from: Id) -> Result<(), EditError> {
    if !(by.x.is_finite() && by.z.is_finite()) {
        return Err(EditError::Value { what: "distance", value: f64::NAN, range: "a number of metres" });
    }
    let [a, b] = ends(&mut scheme.section, edge)?;
    let [c, d] = ends(&mut scheme.section, from)?;
    let axis = if by.x != 0.0 { Point::new(1.0, 0.0) } else { Point::new(0.0, 1.0) };
    let away = axis * (a.lerp(b, 0.5) - c.lerp(d, 0.5)).dot(axis).signum();
    carry_beyond(&mut scheme.section, a.dot(away).min(b.dot(away)), away, by);
    Ok(())
}

/// Moves all that lies as far as `limit` in a direction, or farther.
fn carry_beyond(section: &mut Section, limit: f64, away: Point, by: Point) {
    let limit = limit - SAME_LEVEL_M;
    corners_mut(section).filter(|corner| corner.point().dot(away) > limit).for_each(|corner| shift(corner, by));
    let beyond = |joint: &&mut Joint| joint.z_m * away.z > limit && away.z.abs() > 0.999;
    section.joints.iter_mut().filter(beyond).for_each(|joint| joint.z_m += by.z);
}

pub(super) fn add_joint(scheme: &mut Scheme, z_m: f64) -> Result<(), EditError> {
    check_joint(&scheme.section, z_m)?;
    let id = scheme.fresh_id();
    scheme.section.joints.push(Joint { id, z_m });
    sort(&mut scheme.section.joints, |a, b| a.z_m.total_cmp(&b.z_m));
    Ok(())
}

pub(super) fn move_joint(scheme: &mut Scheme, joint: Id, z_m: f64) -> Result<(), EditError> {
    let joints = &mut scheme.section.joints;
    let i = joints.iter().position(|j| j.id == joint).ok_or(EditError::Missing { what: "joint", id: joint })?;
    joints.remove(i);
    check_joint(&scheme.section, z_m)?;
    scheme.section.joints.insert(i, Joint { id: joint, z_m });
    Ok(())
}

fn check_joint(section: &Section, z_m: f64) -> Result<(), EditError> {
    let inside = section
        .boundary()
        .extent()
        .is_some_and(|[lowest, highest]| lowest + SAME_LEVEL_M < z_m && z_m < highest - SAME_LEVEL_M);
    let taken = section.joints.iter().any(|joint| (joint.z_m - z_m).abs() < SAME_LEVEL_M);
    if inside && !taken { Ok(()) } else { Err(EditError::JointLevel { z_m }) }
}

/// Removes a corner, cell or joint, or says that the id is none of them.
pub(super) fn remove(section: &mut Section, id: Id) -> Result<bool, EditError> {
    if let Ok((ring, i)) = ring_of(section, id) {
        if ring.len() <= 3 {
            return Err(EditError::LastCorners(id));
        }
        ring.remove(i);
        return Ok(true);
    }
    let before = section.cells.len() + section.joints.len();
    section.cells.retain(|cell| cell.id != id);
    section.joints.retain(|joint| joint.id != id);
    Ok(section.cells.len() + section.joints.len() < before)
}

fn ring_of(section: &mut Section, corner: Id) -> Result<(&mut Vec<Corner>, usize), EditError> {
    let rings = std::iter::once(&mut section.outline).chain(section.cells.iter_mut().map(|cell| &mut cell.corners));
    rings
        .filter_map(|ring| ring.iter().position(|c| c.id == corner).map(|i| (ring, i)))
        .next()
        .ok_or(EditError::Missing { what: "corner", id: corner })
}

fn ends(section: &mut Section, edge: Id) -> Result<[Point; 2], EditError> {
    let (ring, i) = ring_of(section, edge)?;
    Ok([ring[i].point(), ring[(i + 1) % ring.len()].point()])
}

fn corners_mut(section: &mut Section) -> impl Iterator<Item = &mut Corner> {
    section.outline.iter_mut().chain(section.cells.iter_mut().flat_map(|cell| cell.corners.iter_mut()))
}

fn shift(corner: &mut Corner, by: Point) {
    corner.x_m += by.x;
    corner.z_m += by.z;
}

fn doubled_area(ring: &[Corner]) -> f64 {
    ring.iter().zip(ring.iter().cycle().skip(1)).map(|(a, b)| a.point().cross(b.point())).sum()
}
