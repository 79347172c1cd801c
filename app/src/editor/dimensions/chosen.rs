//! Which dimensions belong to what is selected.

use super::{Dimension, DimensionKey, SAME_M, corners};
use crate::editor::along;
use crate::editor::places::Places;
use crate::editor::{Selection, Target};
use falsewright_core::geometry::Point;
use falsewright_core::scheme::Id;

/// Whether a dimension is one of the selected element.
pub fn belongs(places: &Places, selection: Selection, dimension: &Dimension) -> bool {
    let Some(selected) = selection.map(Target::whole) else { return false };
    match (dimension.key, selected) {
        (key, Target::Dimension(chosen)) => key == chosen,
        (DimensionKey::Rise(id), _) => edges_of(places, selected).contains(&id),
        (DimensionKey::Cut(id) | DimensionKey::CutBefore(id) | DimensionKey::CutAfter(id), _) => {
            matches!(selected, Target::Corner(corner) | Target::Cut(corner) if corner == id)
        }
        (DimensionKey::Edges { .. }, _) => ends_of(places, selected).iter().any(|p| ends_at(dimension, *p)),
        (DimensionKey::Width | DimensionKey::Height, _) => false,
        (DimensionKey::Joint(id), _) => selected == Target::Joint(id),
        (DimensionKey::TieRow(id), Target::Shutter(shutter)) => {
            places.row(id).is_some_and(|row| row.holds(shutter) || places.seen.is_elevation_of(shutter))
        }
        (DimensionKey::TieRow(id), Target::TieRow(row)) => {
            let both = places.row(id).zip(places.row(row));
            both.is_some_and(|(a, b)| a.shutter == b.shutter || !places.seen.is_section())
        }
        (DimensionKey::LegLine(id), Target::LegLine(line)) => {
            places.leg_line(id).zip(places.leg_line(line)).is_some_and(|(a, b)| a.0.id == b.0.id)
        }
        (DimensionKey::LegLine(id), Target::Falsework(falsework)) => {
            places.leg_line(id).is_some_and(|line| line.0.id == falsework)
        }
        (
            DimensionKey::OpeningWidth(id) | DimensionKey::OpeningHeight(id) | DimensionKey::OpeningLeft(id),
            Target::Opening(opening),
        ) => id == opening,
        (DimensionKey::AlongEnd(id) | DimensionKey::Along(id), _) => {
            along::spaced(places, selected).is_some_and(|(of, _)| of.element() == id)
        }
        (DimensionKey::ShutterHeight(id), Target::Shutter(shutter)) => id == shutter,
        _ => false,
    }
}

/// The dimension that a digit typed at what is selected goes into.
pub fn principal(places: &Places, selection: Selection, all: &[Dimension]) -> Option<DimensionKey> {
    let own = |key: DimensionKey| match (key, selection) {
        (DimensionKey::Rise(_), Some(Target::Face(_))) | (DimensionKey::Cut(_) | DimensionKey::CutBefore(_), _) => 0,
        (DimensionKey::Edges { edge, .. }, Some(Target::Face(face))) if edge == face.corner => 1,
        (DimensionKey::LegLine(id), Some(Target::LegLine(line))) if id == line => 1,
        (DimensionKey::TieRow(id), Some(Target::TieRow(row))) if id == row => 1,
        (DimensionKey::Along(_), Some(Target::Shutter(_) | Target::Falsework(_))) => 1,
        (DimensionKey::OpeningWidth(_) | DimensionKey::Joint(_), _) => 1,
        _ => 2,
    };
    let chosen = all.iter().map(|dimension| (own(dimension.key), dimension));
    let chosen = chosen.filter(|(_, dimension)| belongs(places, selection, dimension));
    chosen.min_by_key(|(rank, _)| *rank).map(|(_, dimension)| dimension.key)
}

/// The edges that are selected, or meet in what is.
fn edges_of(places: &Places, selected: Target) -> Vec<Id> {
    match selected {
        Target::Face(face) => vec![face.corner],
        Target::Corner(id) | Target::Cut(id) => {
            let around = corners(places).find(|[_, corner, _]| corner.id == id);
            around.map_or_else(Vec::new, |[before, corner, _]| vec![before.id, corner.id])
        }
        _ => Vec::new(),
    }
}

/// Where a selected edge or corner is, on each axis that it decides; not a number on the other.
fn ends_of(places: &Places, selected: Target) -> Vec<Point> {
    match selected {
        Target::Face(face) => corners(places)
            .filter(|[_, corner, _]| corner.id == face.corner)
            .flat_map(|[_, corner, next]| {
                let (from, to) = (corner.point(), next.point());
                let upright = (from.z - to.z).abs() > (from.x - to.x).abs();
                [from, to].map(|p| if upright { Point::new(p.x, f64::NAN) } else { Point::new(f64::NAN, p.z) })
            })
            .collect(),
        Target::Corner(id) => {
            corners(places).filter(|[_, corner, _]| corner.id == id).map(|[_, corner, _]| corner.point()).collect()
        }
        _ => Vec::new(),
    }
}

/// Whether a dimension across the section ends at a place or level.
fn ends_at(dimension: &Dimension, p: Point) -> bool {
    let [from, to] = dimension.measured;
    let across = (from.z - to.z).abs() < SAME_M;
    let same = |a: f64, b: f64| (a - b).abs() < SAME_M;
    if across { same(from.x, p.x) || same(to.x, p.x) } else { same(from.z, p.z) || same(to.z, p.z) }
}
