//! Dimension lines: measured on the scheme, typed back into it.
//!
//! Thicknesses and clear sizes are chained across the section, as far as its edges are level and upright. A value typed
//! into a chain moves the edge at its right or upper end with all beyond it; one typed for the whole goes into the
//! widest part of the chain.

mod bay;
mod chains;
mod chosen;

pub(super) use chosen::{belongs, principal};

use super::View;
use super::places::{Places, levels};
use chains::{chains, widest_chain};
use falsewright_core::geometry::{Edge, Point};
use falsewright_core::model::FaceKind;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Bays, Corner, Cut, Falsework, Id, Shutter, TieEnd, TieRow};
use falsewright_core::sorting::sort;

/// Room for shutters and their members beside the section, m.
const SHUTTER_ROOM_M: f64 = 0.6;

/// How far off the section dimension lines begin at its left (-1) or right (1): beside its shutters and props.
fn room_m(places: &Places, side: f64) -> f64 {
    let Some(bounds) = places.section().filter(|_| !places.scheme.shutters.is_empty()) else { return 0.0 };
    let edge = if side < 0.0 { bounds.min.x } else { bounds.max.x };
    let props = places.scheme.ties.iter().filter(|row| matches!(row.to, TieEnd::Fixed { .. }));
    let ends = props.filter_map(|row| places.row_line(row)).flatten();
    ends.map(|end| (end.x - edge) * side).fold(SHUTTER_ROOM_M, f64::max)
}

/// Values nearer than this are equal, m.
const SAME_M: f64 = 1e-4;

/// A dimension line on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// Names it from one change to the next.
    pub key: DimensionKey,
    /// The measured points.
    pub measured: [Point; 2],
    /// The ends of the dimension line; extension lines run to it from the measured points.
    pub line: [Point; 2],
    /// What it says.
    pub value_m: f64,
    /// So many parts of this length, one after another.
    pub count: usize,
    /// Whether it is one of the selected element.
    pub chosen: bool,
}

impl Dimension {
    fn new(key: DimensionKey, measured: [Point; 2], line: [Point; 2], value_m: f64) -> Self {
        Self { key, measured, line, value_m, count: 1, chosen: false }
    }
}

/// What a dimension measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum DimensionKey {
    /// Distance between two parallel edges; the first moves when a value is typed.
    Edges {
        /// Start of the edge that moves.
        edge: Id,
        /// Start of the edge that stays.
        from: Id,
    },
    /// Over the whole section.
    Width,
    /// Over the whole section.
    Height,
    /// How far a battered face is out of plumb, or a falling one out of level, by the corner where its edge starts.
    Rise(Id),
    /// Both legs of a haunch or chamfer where they are equal.
    Cut(Id),
    /// Leg of a haunch or chamfer along the edge that arrives at its corner.
    CutBefore(Id),
    /// Leg of a haunch or chamfer along the edge that leaves its corner.
    CutAfter(Id),
    /// A joint above the lowest point of the section.
    Joint(Id),
    /// A row of ties above the one below it, or above the foot of its shutter.
    TieRow(Id),
    /// A leg line from the one to its left, or from the wall.
    LegLine(Id),
    /// Clear width of an opening.
    OpeningWidth(Id),
    /// Clear height of an opening.
    OpeningHeight(Id),
    /// An opening from the wall to its left.
    OpeningLeft(Id),
    /// From the end of the bay to the first of what is spaced along it: upright primaries of a shutter, ties of a row on
    /// walings, bents of falsework.
    AlongEnd(Id),
    /// Distance of what is spaced along the bay.
    Along(Id),
    /// Length of a bay.
    BayLength,
    /// From the foot of a shutter to its head.
    ShutterHeight(Id),
}

/// All dimension lines. `row_m` is the distance between rows of them.
pub(super) fn dimensions(places: &Places, row_m: f64) -> Vec<Dimension> {
    let mut all = Vec::new();
    match places.seen.view {
        View::Section => {}
        View::Elevation => {
            bay::elevation(places, row_m, &mut all);
            return all;
        }
        View::Plan => {
            bay::plan(places, row_m, &mut all);
            return all;
        }
    }
    chains(places, row_m, &mut all);
    rises(places, row_m, &mut all);
    cuts(places, &mut all);
    joints(places, row_m, &mut all);
    ties(places, row_m, &mut all);
    legs(places, row_m, &mut all);
    openings(places, row_m, &mut all);
    all
}

/// The edit that gives a dimension this value; none where it is no longer there.
pub(super) fn edit_for(places: &Places, key: DimensionKey, value_m: f64) -> Option<Edit> {
    let dimension = dimensions(places, 1.0).into_iter().find(|dimension| dimension.key == key)?;
    let change = value_m - dimension.value_m;
    Some(match key {
        DimensionKey::Edges { edge, from } => chains::typed(places, edge, from, &dimension, value_m)?,
        DimensionKey::Width | DimensionKey::Height => {
            let upright = key == DimensionKey::Width;
            let chain = widest_chain(places, upright)?;
            let gap = chain.windows(2).max_by(|a, b| (a[1].0 - a[0].0).total_cmp(&(b[1].0 - b[0].0)))?;
            let key = DimensionKey::Edges { edge: gap[1].1, from: gap[0].1 };
            let length_m = gap[1].0 - gap[0].0;
            if length_m + change <= 0.0 {
                return Some(Edit::SetLength {
                    edge: gap[1].1,
                    from: gap[0].1,
                    length_m: length_m + change,
                    carry: true,
                });
            }
            return edit_for(places, key, length_m + change);
        }
        DimensionKey::Rise(edge) => risen(places, edge, value_m)?,
        DimensionKey::Cut(corner) => cut_edit(places, corner, |cut| (cut.before_m, cut.after_m) = (value_m, value_m))?,
        DimensionKey::CutBefore(corner) => cut_edit(places, corner, |cut| cut.before_m = value_m)?,
        DimensionKey::CutAfter(corner) => cut_edit(places, corner, |cut| cut.after_m = value_m)?,
        DimensionKey::Joint(joint) => Edit::MoveJoint { joint, z_m: dimension.measured[0].z + value_m },
        DimensionKey::TieRow(row) => Edit::MoveTieRow { row, z_m: dimension.measured[0].z + value_m },
        DimensionKey::LegLine(line) => Edit::MoveLegLine { line, x_m: dimension.measured[0].x + value_m },
        DimensionKey::OpeningLeft(opening) => Edit::MoveOpening { opening, left_m: dimension.measured[0].x + value_m },
        DimensionKey::AlongEnd(id) => bay::spaced(places, id, |spacing| spacing.edge_m = value_m)?,
        DimensionKey::Along(id) => bay::spaced(places, id, |spacing| spacing.max_m = value_m)?,
        DimensionKey::BayLength => Edit::SetBays(Bays { length_m: value_m, ..places.scheme.bays }),
        DimensionKey::ShutterHeight(id) => {
            let shutter = places.shutter(id)?;
            Edit::MoveShutterEnds { shutter: id, below_m: shutter.below_m, above_m: shutter.above_m + change }
        }
        DimensionKey::OpeningWidth(id) | DimensionKey::OpeningHeight(id) => {
            let opening = places.opening(id)?;
            let wide = matches!(key, DimensionKey::OpeningWidth(_));
            Edit::ResizeOpening {
                opening: id,
                left_m: opening.left_m,
                width_m: if wide { value_m } else { opening.width_m },
                height_m: if wide { opening.height_m } else { value_m },
            }
        }
    })
}

fn cut_edit(places: &Places, corner: Id, change: impl Fn(&mut Cut)) -> Option<Edit> {
    let mut cut = corners(places).find(|[_, at, _]| at.id == corner)?[1].cut?;
    change(&mut cut);
    Some(Edit::SetCut { corner, cut: Some(cut) })
}

/// Each corner between its neighbours.
fn corners<'a>(places: &Places<'a>) -> impl Iterator<Item = [&'a Corner; 3]> {
    let section = &places.scheme.section;
    let rings = std::iter::once(&section.outline).chain(section.cells.iter().map(|cell| &cell.corners));
    rings.flat_map(|ring| {
        let count = ring.len();
        (0..count).map(move |i| [&ring[(i + count - 1) % count], &ring[i], &ring[(i + 1) % count]])
    })
}

/// Edges that lean from the plumb or the level by less than 45°, from the lower (or left) corner to the other, with
/// whether they are upright.
fn leaning<'a>(places: &Places<'a>) -> impl Iterator<Item = (Id, [&'a Corner; 2], bool)> {
    corners(places).filter_map(|[_, corner, next]| {
        let along = next.point() - corner.point();
        let upright = along.z.abs() > along.x.abs();
        let (rise, run) = if upright { (along.x, along.z) } else { (along.z, along.x) };
        let ends = if run > 0.0 { [corner, next] } else { [next, corner] };
        (rise.abs() > SAME_M && rise.abs() < run.abs() - SAME_M).then_some((corner.id, ends, upright))
    })
}

fn rises(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    for (edge, [near, far], upright) in leaning(places) {
        let (near, far) = (near.point(), far.point());
        // Beside the head of a wall, or beside the lower end of a slab.
        let (measured, by) = if upright {
            ([Point::new(near.x, far.z), far], Point::new(0.0, 0.75 * row_m))
        } else if near.z < far.z {
            ([near, Point::new(near.x, far.z)], Point::new(-0.5 * row_m, 0.0))
        } else {
            ([far, Point::new(far.x, near.z)], Point::new(0.5 * row_m, 0.0))
        };
        let value_m = (measured[1] - measured[0]).length();
        all.push(Dimension::new(DimensionKey::Rise(edge), measured, measured.map(|p| p + by), value_m));
    }
}

/// The head of a wall, or the higher end of a slab, moves; a negative value leans to the other side.
fn risen(places: &Places, edge: Id, value_m: f64) -> Option<Edit> {
    let (_, [near, far], upright) = leaning(places).find(|leaning| leaning.0 == edge)?;
    Some(if upright {
        let x = near.x_m + value_m.copysign((far.x_m - near.x_m) * value_m.signum());
        Edit::MoveCorner { corner: far.id, to: Point::new(x, far.z_m) }
    } else {
        let [low, high] = if near.z_m < far.z_m { [near, far] } else { [far, near] };
        Edit::MoveCorner { corner: high.id, to: Point::new(high.x_m, low.z_m + value_m) }
    })
}

fn cuts(places: &Places, all: &mut Vec<Dimension>) {
    for [previous, corner, next] in corners(places) {
        let Some(cut) = corner.cut else { continue };
        let at = corner.point();
        let mut add = |key, toward: &Corner, value_m: f64| {
            let measured = [at, at + (toward.point() - at).unit() * value_m];
            all.push(Dimension::new(key, measured, measured, value_m));
        };
        if (cut.before_m - cut.after_m).abs() < SAME_M {
            // Along the level leg, where a figure has most room.
            let level = |other: &Corner| (other.z_m - corner.z_m).abs() < (other.x_m - corner.x_m).abs();
            add(DimensionKey::Cut(corner.id), if level(previous) { previous } else { next }, cut.before_m);
            continue;
        }
        add(DimensionKey::CutBefore(corner.id), previous, cut.before_m);
        add(DimensionKey::CutAfter(corner.id), next, cut.after_m);
    }
}

fn joints(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    let Some(bounds) = places.section() else { return };
    for (row, joint) in (1..).zip(&places.scheme.section.joints) {
        let x = bounds.max.x + room_m(places, 1.0) + f64::from(row + 1) * row_m;
        let measured = [bounds.min.z, joint.z_m].map(|z| Point::new(bounds.max.x, z));
        let line = measured.map(|p| Point::new(x, p.z));
        all.push(Dimension::new(DimensionKey::Joint(joint.id), measured, line, joint.z_m - bounds.min.z));
    }
}

fn ties(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    // Ties through a wall are measured outside it, where nothing else stands.
    let outside =
        |shutter: &&Shutter| places.shutter_face(shutter).is_some_and(|face| face.kind == FaceKind::OuterWall);
    let (outer, inner): (Vec<&Shutter>, Vec<&Shutter>) = places.scheme.shutters.iter().partition(outside);
    let mut measured: Vec<Id> = Vec::new();
    for shutter in outer.into_iter().chain(inner) {
        let (Some([foot, _]), Some(face)) = (places.board(shutter), places.shutter_face(shutter)) else { continue };
        let own = |row: &&TieRow| row.holds(shutter.id) && !measured.contains(&row.id);
        let mut rows: Vec<_> = places.scheme.ties.iter().filter(own).collect();
        measured.extend(rows.iter().map(|row| row.id));
        sort(&mut rows, |a, b| a.z_m.total_cmp(&b.z_m));
        let out = face.normal.x.signum() * (SHUTTER_ROOM_M + 0.5 * row_m);
        let on_face = |z: f64| Edge::new(face.from, face.to).x_at(z.clamp(levels(face)[0], levels(face)[1]));
        row_chain(&rows, foot.z, on_face, foot.x + out, all);
    }
}

/// Rows one above another, measured at `from` of their level, the line at `at`.
fn row_chain(rows: &[&TieRow], foot_m: f64, from: impl Fn(f64) -> f64, at: f64, all: &mut Vec<Dimension>) {
    let mut below = foot_m;
    for row in rows {
        let measured = [below, row.z_m].map(|z| Point::new(from(row.z_m), z));
        let line = measured.map(|p| Point::new(at, p.z));
        all.push(Dimension::new(DimensionKey::TieRow(row.id), measured, line, row.z_m - below));
        below = row.z_m;
    }
}

fn legs(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    for falsework in &places.scheme.falsework {
        leg_chain(places, falsework, 0.75 * row_m, all);
    }
}

/// Leg lines one after another from the left, so far above the lower edge of the room.
fn leg_chain(places: &Places, falsework: &Falsework, up_m: f64, all: &mut Vec<Dimension>) {
    let Some(room) = places.falsework_bounds(falsework) else { return };
    let mut left = room.min.x;
    for leg in &falsework.leg_lines {
        let measured = [left, leg.x_m].map(|x| Point::new(x, room.min.z));
        let line = measured.map(|p| p + Point::new(0.0, up_m));
        all.push(Dimension::new(DimensionKey::LegLine(leg.id), measured, line, leg.x_m - left));
        left = leg.x_m;
    }
}

fn openings(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    for opening in &places.scheme.openings {
        let falsework = places.falsework(opening.falsework);
        let (Some(way), Some(room)) = (places.way(opening), falsework.and_then(|f| places.falsework_bounds(f))) else {
            continue;
        };
        let id = opening.id;
        let mut add = |key, measured: [Point; 2], by: Point| {
            let value_m = (measured[1] - measured[0]).length();
            all.push(Dimension::new(key, measured, measured.map(|p| p + by), value_m));
        };
        let top_left = Point::new(way.min.x, way.max.z);
        add(DimensionKey::OpeningWidth(id), [top_left, way.max], Point::new(0.0, -0.75 * row_m));
        add(DimensionKey::OpeningHeight(id), [way.min, top_left], Point::new(0.75 * row_m, 0.0));
        let wall = Point::new(room.min.x, way.min.z);
        add(DimensionKey::OpeningLeft(id), [wall, way.min], Point::new(0.0, 1.75 * row_m));
    }
}

#[cfg(test)]
mod tests;
