//! Dimension lines: measured on the scheme, typed back into it.
//!
//! Thicknesses and clear sizes are chained across the section, as far as its edges are level and upright. A value typed
//! into a chain moves the edge at its right or upper end with all beyond it; one typed for the whole goes into the
//! widest part of the chain.

use super::places::{Places, levels};
use falsewright_core::geometry::{Edge, Point};
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Corner, Cut, Id, SectionEdge};
use falsewright_core::sorting::sort;

/// Room for shutters and their members beside the section, m.
const SHUTTER_ROOM_M: f64 = 0.6;

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
}

/// All dimension lines. `row_m` is the distance between rows of them.
pub(super) fn dimensions(places: &Places, row_m: f64) -> Vec<Dimension> {
    let mut all = Vec::new();
    chains(places, row_m, &mut all);
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
        DimensionKey::Edges { edge, from } => Edit::SetLength { edge, from, length_m: value_m, carry: true },
        DimensionKey::Width | DimensionKey::Height => {
            let upright = key == DimensionKey::Width;
            let chain = widest_chain(places, upright)?;
            let gap = chain.windows(2).max_by(|a, b| (a[1].0 - a[0].0).total_cmp(&(b[1].0 - b[0].0)))?;
            let length_m = gap[1].0 - gap[0].0 + change;
            Edit::SetLength { edge: gap[1].1, from: gap[0].1, length_m, carry: true }
        }
        DimensionKey::CutBefore(corner) => cut_edit(places, corner, |cut| cut.before_m = value_m)?,
        DimensionKey::CutAfter(corner) => cut_edit(places, corner, |cut| cut.after_m = value_m)?,
        DimensionKey::Joint(joint) => Edit::MoveJoint { joint, z_m: dimension.measured[0].z + value_m },
        DimensionKey::TieRow(row) => Edit::MoveTieRow { row, z_m: dimension.measured[0].z + value_m },
        DimensionKey::LegLine(line) => Edit::MoveLegLine { line, x_m: dimension.measured[0].x + value_m },
        DimensionKey::OpeningLeft(opening) => Edit::MoveOpening { opening, left_m: dimension.measured[0].x + value_m },
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

/// Places (or levels) of upright (or level) edges across the section, each with the corner where its edge starts.
type Chain = Vec<(f64, Id)>;

/// The edges met by a line across the section at level `at` (or up it at place `at`), and the outermost such edges of
/// all where the line meets none: feet of a portal, heads of a trough.
fn chain(edges: &[SectionEdge], upright: bool, at: f64) -> Chain {
    let of = |p: Point| if upright { (p.x, p.z) } else { (p.z, p.x) };
    let true_edges = || {
        edges.iter().filter(|edge| !edge.cut && (of(edge.line.from).0 - of(edge.line.to).0).abs() < SAME_M).map(
            |edge| {
                let ((value, a), (_, b)) = (of(edge.line.from), of(edge.line.to));
                (value, edge.corner, a.min(b)..=a.max(b))
            },
        )
    };
    let mut chain: Chain =
        true_edges().filter(|edge| edge.2.contains(&at)).map(|(value, corner, _)| (value, corner)).collect();
    let lowest = true_edges().min_by(|a, b| a.0.total_cmp(&b.0));
    let highest = true_edges().max_by(|a, b| a.0.total_cmp(&b.0));
    chain.extend(lowest.into_iter().chain(highest).map(|(value, corner, _)| (value, corner)));
    sort(&mut chain, |a, b| a.0.total_cmp(&b.0));
    chain.dedup_by(|a, b| (a.0 - b.0).abs() < SAME_M);
    chain
}

/// One chain through the middle of each cell, or of the section without any, those that say the same left out.
fn all_chains(places: &Places, upright: bool) -> Vec<Chain> {
    let section = &places.scheme.section;
    let rings = section.cells.iter().map(|cell| &cell.corners);
    let rings = rings.chain(std::iter::once(&section.outline).filter(|_| section.cells.is_empty()));
    let edges = section.edges();
    let mut chains: Vec<Chain> = Vec::new();
    for ring in rings {
        let Some(bounds) = super::Bounds::around(ring.iter().map(Corner::point)) else { continue };
        let middle = bounds.min.lerp(bounds.max, 0.5);
        let chain = chain(&edges, upright, if upright { middle.z } else { middle.x });
        let same = |other: &Chain| {
            other.len() == chain.len() && other.iter().zip(&chain).all(|(a, b)| (a.0 - b.0).abs() < SAME_M)
        };
        if chain.len() >= 2 && !chains.iter().any(same) {
            chains.push(chain);
        }
    }
    chains
}

fn widest_chain(places: &Places, upright: bool) -> Option<Chain> {
    all_chains(places, upright).into_iter().max_by_key(Vec::len)
}

fn chains(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    let Some(bounds) = places.section() else { return };
    let right = |value: f64, row: f64| Point::new(value, bounds.min.z - row * row_m);
    let up = |value: f64, row: f64| Point::new(bounds.min.x - SHUTTER_ROOM_M - row * row_m, value);
    for (upright, whole) in [(true, DimensionKey::Width), (false, DimensionKey::Height)] {
        let place: &dyn Fn(f64, f64) -> Point = if upright { &right } else { &up };
        let mut add = |key, from: f64, to: f64, row: f64| {
            let at = |value| if upright { Point::new(value, bounds.min.z) } else { Point::new(bounds.min.x, value) };
            let (measured, line) = ([at(from), at(to)], [place(from, row), place(to, row)]);
            all.push(Dimension { key, measured, line, value_m: to - from });
        };
        let chains = all_chains(places, upright);
        let mut rows = 0.0;
        for chain in chains.iter().filter(|chain| chain.len() > 2) {
            rows += 1.0;
            for pair in chain.windows(2) {
                add(DimensionKey::Edges { edge: pair[1].1, from: pair[0].1 }, pair[0].0, pair[1].0, rows);
            }
        }
        if let Some((first, last)) = chains.first().and_then(|chain| chain.first().zip(chain.last())) {
            add(whole, first.0, last.0, rows + 1.0);
        }
    }
    let mut keys: Vec<DimensionKey> = Vec::new();
    all.retain(|dimension| {
        let fresh = !keys.contains(&dimension.key);
        keys.push(dimension.key);
        fresh
    });
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

fn cuts(places: &Places, all: &mut Vec<Dimension>) {
    for [previous, corner, next] in corners(places) {
        let Some(cut) = corner.cut else { continue };
        let at = corner.point();
        let mut add = |key, toward: &Corner, value_m: f64| {
            let measured = [at, at + (toward.point() - at).unit() * value_m];
            all.push(Dimension { key, measured, line: measured, value_m });
        };
        add(DimensionKey::CutBefore(corner.id), previous, cut.before_m);
        add(DimensionKey::CutAfter(corner.id), next, cut.after_m);
    }
}

fn joints(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    let Some(bounds) = places.section() else { return };
    for (row, joint) in (1..).zip(&places.scheme.section.joints) {
        let x = bounds.max.x + SHUTTER_ROOM_M + f64::from(row + 1) * row_m;
        let measured = [bounds.min.z, joint.z_m].map(|z| Point::new(bounds.max.x, z));
        let line = measured.map(|p| Point::new(x, p.z));
        all.push(Dimension { key: DimensionKey::Joint(joint.id), measured, line, value_m: joint.z_m - bounds.min.z });
    }
}

fn ties(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    for shutter in &places.scheme.shutters {
        let (Some([foot, _]), Some(face)) = (places.board(shutter), places.shutter_face(shutter)) else { continue };
        let mut rows: Vec<_> = places.scheme.ties.iter().filter(|row| row.shutter == shutter.id).collect();
        sort(&mut rows, |a, b| a.z_m.total_cmp(&b.z_m));
        let out = face.normal.x.signum() * (SHUTTER_ROOM_M + 0.5 * row_m);
        let mut below = foot.z;
        for row in rows {
            let x = Edge::new(face.from, face.to).x_at(row.z_m.clamp(levels(face)[0], levels(face)[1]));
            let measured = [Point::new(x, below), Point::new(x, row.z_m)];
            let line = measured.map(|p| Point::new(foot.x + out, p.z));
            all.push(Dimension { key: DimensionKey::TieRow(row.id), measured, line, value_m: row.z_m - below });
            below = row.z_m;
        }
    }
}

fn legs(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    for falsework in &places.scheme.falsework {
        let Some(room) = places.falsework_bounds(falsework) else { continue };
        let mut left = room.min.x;
        for leg in &falsework.leg_lines {
            let measured = [left, leg.x_m].map(|x| Point::new(x, room.min.z));
            let line = measured.map(|p| p + Point::new(0.0, 0.75 * row_m));
            all.push(Dimension { key: DimensionKey::LegLine(leg.id), measured, line, value_m: leg.x_m - left });
            left = leg.x_m;
        }
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
            all.push(Dimension { key, measured, line: measured.map(|p| p + by), value_m });
        };
        let top_left = Point::new(way.min.x, way.max.z);
        add(DimensionKey::OpeningWidth(id), [top_left, way.max], Point::new(0.0, -0.75 * row_m));
        add(DimensionKey::OpeningHeight(id), [way.min, top_left], Point::new(0.75 * row_m, 0.0));
        let wall = Point::new(room.min.x, way.min.z);
        add(DimensionKey::OpeningLeft(id), [wall, way.min], Point::new(0.0, 1.75 * row_m));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::layout::concrete::faces;
    use falsewright_core::model::Model;
    use falsewright_core::scheme::edit::apply;
    use falsewright_core::scheme::{Scheme, Section, Walls};

    const WALLS: Walls = Walls { wall_m: 0.45, roof_m: 0.4, base_m: 0.5, haunch_m: 0.25 };

    fn with<T>(scheme: &Scheme, read: impl FnOnce(&Places) -> T) -> T {
        let faces = faces(&scheme.section, scheme.ground.level_m);
        read(&Places { scheme, faces: &faces, model: &Model::default() })
    }

    fn values(scheme: &Scheme) -> Vec<f64> {
        with(scheme, |places| dimensions(places, 0.3).iter().map(|d| d.value_m).collect())
    }

    /// Types a value for the first dimension that measures `value`.
    fn typed(scheme: &Scheme, value: f64, new: f64) -> Scheme {
        let edit = with(scheme, |places| {
            let all = dimensions(places, 0.3);
            let key = all.iter().find(|d| (d.value_m - value).abs() < 1e-9).unwrap().key;
            edit_for(places, key, new).unwrap()
        });
        apply(scheme, &edit).unwrap()
    }

    fn assert_has(scheme: &Scheme, expected: &[f64]) {
        let values = values(scheme);
        for value in expected {
            assert!(values.iter().any(|v| (v - value).abs() < 1e-9), "{value} is not among {values:?}");
        }
    }

    #[test]
    fn a_box_shows_its_thicknesses_and_clear_sizes() {
        let scheme = Scheme::blank(Section::box_cell(6.0, 3.6, WALLS));
        assert_has(&scheme, &[0.45, 6.0, 6.9, 0.5, 3.6, 0.4, 4.5, 0.25]);
        assert_eq!(values(&scheme).len(), 3 + 1 + 3 + 1 + 4);
    }

    #[test]
    fn open_sections_are_chained_to_their_feet_and_heads() {
        let portal = Scheme::blank(Section::portal(5.0, 3.0, 0.4, 0.35, 0.2));
        assert_has(&portal, &[5.0, 3.0, 0.4, 0.35, 3.35, 5.8]);
        let trough = Scheme::blank(Section::u_trough(4.0, 2.5, 0.3, 0.45, 0.0));
        assert_has(&trough, &[4.0, 2.5, 0.3, 0.45, 2.95, 4.6]);
    }

    #[test]
    fn a_typed_clear_size_keeps_all_thicknesses() {
        let scheme = Scheme::blank(Section::box_cell(6.0, 3.6, WALLS));
        let wider = typed(&scheme, 6.0, 7.2);
        assert_has(&wider, &[0.45, 7.2, 8.1, 0.5, 3.6, 0.4, 4.5]);
        let higher = typed(&wider, 3.6, 4.5);
        assert_has(&higher, &[7.2, 4.5, 5.4, 0.5, 0.4]);
        let whole = typed(&higher, 5.4, 5.0);
        assert_has(&whole, &[4.1, 0.5, 0.4]);
        let twin = Scheme::blank(Section::twin_box(3.0, 2.4, WALLS, 0.3));
        let wider = typed(&twin, 3.0, 3.5);
        assert_has(&wider, &[3.5, 3.0, 0.3, 0.45, 7.7]);
    }

    #[test]
    fn a_typed_thickness_keeps_the_clear_sizes() {
        let scheme = Scheme::blank(Section::box_cell(6.0, 3.6, WALLS));
        let thicker = typed(&scheme, 0.5, 0.6);
        assert_has(&thicker, &[0.6, 3.6, 0.4, 4.6]);
        let haunched = typed(&scheme, 0.25, 0.3);
        assert_has(&haunched, &[0.3, 0.25]);
    }
}
