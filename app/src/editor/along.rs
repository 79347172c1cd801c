//! What stands along the bay in equal spacing: ties, upright primaries and bents. Pulling one of them along the bay
//! changes the spacing of all.

use super::moving::Moved;
use super::places::Places;
use super::{Readout, Target, View};
use crate::language::key;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Arrangement, Id, Spacing};

/// None stand nearer together, m.
const LEAST_M: f64 = 0.1;

/// What the spacing is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spaced {
    /// The upright primaries of a shutter, with the ties on them.
    Primaries(Id),
    /// The ties of one row on level primaries.
    Row(Id),
    /// The bents of falsework.
    Bents(Id),
}

impl Spaced {
    /// The element whose spacing it is.
    pub fn element(self) -> Id {
        match self {
            Self::Primaries(id) | Self::Row(id) | Self::Bents(id) => id,
        }
    }
}

/// What is spaced along the bay by the element on this view; none where nothing of it is.
pub fn spaced(places: &Places, target: Target) -> Option<(Spaced, Spacing)> {
    match (places.seen.view, target.whole()) {
        (View::Elevation, Target::Shutter(id)) => {
            let shutter = places.shutter(id).filter(|_| places.seen.is_elevation_of(id))?;
            let upright = shutter.arrangement == Arrangement::UprightPrimaries;
            upright.then_some((Spaced::Primaries(id), shutter.primaries))
        }
        (View::Elevation, Target::TieRow(id)) => {
            let (row, shutter) = (places.row(id)?, places.shutter(places.seen.subject?)?);
            let of = match shutter.arrangement {
                Arrangement::UprightPrimaries => Spaced::Primaries(shutter.id),
                Arrangement::LevelPrimaries => Spaced::Row(id),
            };
            row.holds(shutter.id).then_some((of, shutter.ties_along(row)))
        }
        (View::Plan, Target::Falsework(id)) => bents(places, id),
        (View::Plan, Target::LegLine(id)) => bents(places, places.leg_line(id)?.0.id),
        _ => None,
    }
}

fn bents(places: &Places, falsework: Id) -> Option<(Spaced, Spacing)> {
    let of = places.falsework(falsework).filter(|_| places.seen.is_plan_of(falsework))?;
    Some((Spaced::Bents(falsework), of.bents))
}

/// The edit that gives these another spacing.
pub fn edit(places: &Places, of: Spaced, spacing: Spacing) -> Option<Edit> {
    Some(match of {
        Spaced::Primaries(id) => {
            let mut shutter = places.shutter(id)?.clone();
            shutter.primaries = spacing;
            Edit::SetShutter(shutter)
        }
        Spaced::Row(id) => {
            let mut row = places.row(id)?.clone();
            row.spacing = spacing;
            Edit::SetTieRow(row)
        }
        Spaced::Bents(id) => {
            let mut falsework = places.falsework(id)?.clone();
            falsework.bents = spacing;
            Edit::SetFalsework(falsework)
        }
    })
}

/// Whether a shutter or falsework can be pulled along the bay here: at one of its primaries or bents.
pub fn takes(places: &Places, target: Target, at: Point, reach_m: f64) -> bool {
    let Some([along, _]) = places.seen.view.along_across(at) else { return false };
    let near = |(_, spacing): (Spaced, Spacing)| {
        spacing.positions(places.bay_m()).iter().any(|place| (place - along).abs() <= reach_m)
    };
    matches!(target, Target::Shutter(_) | Target::Falsework(_)) && spaced(places, target).is_some_and(near)
}

/// What pulling the nearest of them along the bay does; none where the pull goes rather across it.
pub fn drag(places: &Places, target: Target, from: Point, to: Point, step: impl Fn(f64) -> f64) -> Option<Moved> {
    let view = places.seen.view;
    let [along, across] = view.along_across(to - from)?;
    if along.abs() <= across.abs() {
        return None;
    }
    let (of, spacing) = spaced(places, target)?;
    let [start, level] = view.along_across(from)?;
    let pulled = pulled(spacing, places.bay_m(), start, along, step)?;
    let positions = pulled.positions(places.bay_m());
    let apart_m = match (positions.as_slice(), is_end(spacing, places.bay_m(), start)) {
        ([first, ..], true) => *first,
        ([first, second, ..], false) => second - first,
        _ => return None,
    };
    let what = if is_end(spacing, places.bay_m(), start) { key("from the end of the bay") } else { key("apart") };
    let readout = Readout::length(view.at(start + along, level), what, apart_m);
    Some(Moved { edit: edit(places, of, pulled)?, snap: None, readout: Some(readout) })
}

fn nearest(positions: &[f64], at: f64) -> usize {
    let order = |a: &usize, b: &usize| (positions[*a] - at).abs().total_cmp(&(positions[*b] - at).abs());
    (0..positions.len()).min_by(order).unwrap_or(0)
}

fn is_end(spacing: Spacing, bay_m: f64, at: f64) -> bool {
    let positions = spacing.positions(bay_m);
    let index = nearest(&positions, at);
    index == 0 || index + 1 == positions.len()
}

/// The spacing after the one nearest to `start` was pulled by so much. The first and last set the distance from the ends
/// of the bay; one between them how many there are, so that it goes with the pointer as far as equal parts allow.
fn pulled(spacing: Spacing, bay_m: f64, start: f64, by: f64, step: impl Fn(f64) -> f64) -> Option<Spacing> {
    let positions = spacing.positions(bay_m);
    if positions.len() < 2 {
        return None;
    }
    let index = nearest(&positions, start);
    // Both halves of the bay mirror each other.
    let from_far = positions.len() - 1 - index;
    let (gaps, place) =
        if index <= from_far { (index, positions[index] + by) } else { (from_far, bay_m - positions[index] - by) };
    if gaps == 0 {
        let most = (bay_m - LEAST_M) / 2.0;
        return Some(Spacing { edge_m: step(place).clamp(0.0, most.max(0.0)), ..spacing });
    }
    let between = bay_m - 2.0 * spacing.edge_m;
    let wanted = ((place - spacing.edge_m) / gaps as f64).clamp(LEAST_M.min(between), between);
    let count = (between / wanted).round().max(1.0);
    // A millimetre more at most, so that the value is a round one.
    Some(Spacing { max_m: (between / count * 1e3 - 1e-6).ceil() / 1e3, ..spacing })
}

#[cfg(test)]
mod tests {
    use super::*;

    const BAY_M: f64 = 10.0;
    const SPACING: Spacing = Spacing { edge_m: 0.4, max_m: 0.95 };

    fn after(start: f64, by: f64) -> Vec<f64> {
        pulled(SPACING, BAY_M, start, by, |value| (value * 20.0).round() / 20.0).unwrap().positions(BAY_M)
    }

    #[test]
    fn an_inner_one_follows_the_pointer_as_far_as_equal_parts_allow() {
        let before = SPACING.positions(BAY_M);
        assert_eq!(before.len(), 11);
        let wider = after(before[2], 0.5);
        assert_eq!(wider.len(), 9);
        assert!((wider[2] - (0.4 + 2.0 * 9.2 / 8.0)).abs() < 1e-9, "{wider:?}");
        assert!(after(before[2], -0.5).len() > before.len());
        assert_eq!(after(before[2], 0.01), before);
    }

    #[test]
    fn both_halves_of_the_bay_mirror_each_other() {
        let before = SPACING.positions(BAY_M);
        for (index, by) in [(1, 0.3), (2, -0.4), (3, 0.7), (0, 0.2)] {
            assert_eq!(after(before[index], by), after(BAY_M - before[index], -by), "{index}");
        }
    }

    #[test]
    fn an_end_one_sets_the_distance_from_the_end_and_all_stay_in_the_bay() {
        assert!((after(0.4, 0.21)[0] - 0.6).abs() < 1e-9);
        for by in [-30.0, -1.0, 3.0, 30.0] {
            let all = after(0.4, by);
            assert!(all.iter().all(|place| (0.0..=BAY_M).contains(place)), "{all:?}");
        }
    }

    #[test]
    fn the_value_is_in_whole_millimetres_and_gives_the_count_that_was_pulled() {
        for by in [-0.6, -0.3, -0.1, 0.2, 0.4, 1.1, 2.0] {
            let spacing = pulled(SPACING, BAY_M, 0.4 + 2.0 * 0.92, by, |value| value).unwrap();
            assert!((spacing.max_m * 1e3 - (spacing.max_m * 1e3).round()).abs() < 1e-9, "{}", spacing.max_m);
            let wanted = (0.92 * 2.0 + by) / 2.0;
            assert_eq!(spacing.positions(BAY_M).len(), (9.2 / wanted).round() as usize + 1, "{by}");
        }
    }
}
