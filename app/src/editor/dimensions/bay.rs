//! Dimension lines of an elevation and a plan: along the bay, and those that the section has as well.

use super::{Dimension, DimensionKey, SAME_M, leg_chain, row_chain};
use crate::editor::along::{self, Spaced};
use crate::editor::places::Places;
use crate::editor::{Target, View};
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Arrangement, Id, Spacing, TieRow};
use falsewright_core::sorting::sort;

/// The elevation of a shutter: its rows and height at the left, what is spaced along the bay below.
pub fn elevation(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    let shutter = places.seen.subject.and_then(|id| places.shutter(id));
    let (Some(shutter), Some(bounds), Some(drawn)) = (shutter, places.subject(), places.drawn()) else { return };
    let edge = [bounds.min.z, drawn.min.z];
    let mut rows: Vec<&TieRow> = places.scheme.ties.iter().filter(|row| row.holds(shutter.id)).collect();
    sort(&mut rows, |a, b| a.z_m.total_cmp(&b.z_m));
    row_chain(&rows, bounds.min.z, |_| bounds.min.x, -0.75 * row_m, all);
    let height = [bounds.min.z, bounds.max.z].map(|z| Point::new(bounds.min.x, z));
    let line = height.map(|p| p - Point::new(1.75 * row_m, 0.0));
    let key = DimensionKey::ShutterHeight(shutter.id);
    all.push(Dimension::new(key, height, line, bounds.max.z - bounds.min.z));

    let mut spaced: Vec<Spacing> = Vec::new();
    match shutter.arrangement {
        Arrangement::UprightPrimaries => {
            chain(places, shutter.id, shutter.primaries, edge, 0.75 * row_m, all);
            spaced.push(shutter.primaries);
        }
        Arrangement::LevelPrimaries => {
            for row in &rows {
                if !spaced.contains(&row.spacing) {
                    let by = (0.75 + spaced.len() as f64) * row_m;
                    chain(places, row.id, row.spacing, edge, by, all);
                    spaced.push(row.spacing);
                }
            }
        }
    }
    bay(places, edge, (0.75 + spaced.len() as f64) * row_m, all);
}

/// The plan of falsework: leg lines below, bents at the left, the opening above.
pub fn plan(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    let falsework = places.seen.subject.and_then(|id| places.falsework(id));
    let (Some(falsework), Some(room), Some(drawn)) = (falsework, places.subject(), places.drawn()) else { return };
    let edge = [room.min.x, drawn.min.x];
    leg_chain(places, falsework, -0.75 * row_m, all);
    chain(places, falsework.id, falsework.bents, edge, 0.75 * row_m, all);
    bay(places, edge, 1.75 * row_m, all);
    for opening in places.scheme.openings.iter().filter(|opening| opening.falsework == falsework.id) {
        let (left, right) = (opening.left_m, opening.left_m + opening.width_m);
        let mut add = |key, ends: [f64; 2]| {
            let measured = ends.map(|x| Point::new(x, room.max.z));
            let line = measured.map(|p| p + Point::new(0.0, 0.75 * row_m));
            all.push(Dimension::new(key, measured, line, ends[1] - ends[0]));
        };
        add(DimensionKey::OpeningLeft(opening.id), [room.min.x, left]);
        add(DimensionKey::OpeningWidth(opening.id), [left, right]);
    }
}

/// The first from the end of the bay, and all between the first and the last: measured at the first edge, written so far
/// outside the second.
fn chain(places: &Places, of: Id, spacing: Spacing, edge: [f64; 2], out_m: f64, all: &mut Vec<Dimension>) {
    let positions = spacing.positions(places.bay_m());
    let [Some(&first), Some(&last)] = [positions.first(), positions.last()] else { return };
    let mut add = |key, ends: [f64; 2], count: usize| {
        let measured = ends.map(|place| places.seen.view.at(place, edge[0]));
        let line = ends.map(|place| places.seen.view.at(place, edge[1] - out_m));
        let value_m = (ends[1] - ends[0]) / count as f64;
        all.push(Dimension { count, ..Dimension::new(key, measured, line, value_m) });
    };
    if first > SAME_M {
        add(DimensionKey::AlongEnd(of), [0.0, first], 1);
    }
    if last - first > SAME_M {
        add(DimensionKey::Along(of), [first, last], positions.len() - 1);
    }
}

fn bay(places: &Places, edge: [f64; 2], out_m: f64, all: &mut Vec<Dimension>) {
    let view = places.seen.view;
    let ends = [0.0, places.bay_m()];
    let measured = ends.map(|place| view.at(place, edge[0]));
    let line = ends.map(|place| view.at(place, edge[1] - out_m));
    all.push(Dimension::new(DimensionKey::BayLength, measured, line, places.bay_m()));
}

/// Gives all that is spaced by one chain another spacing.
pub fn spaced(places: &Places, id: Id, change: impl Fn(&mut Spacing)) -> Option<Edit> {
    let target = match places.seen.view {
        View::Section => return None,
        View::Elevation if places.row(id).is_some() => Target::TieRow(id),
        View::Elevation => Target::Shutter(id),
        View::Plan => Target::Falsework(id),
    };
    let (of, was) = along::spaced(places, target)?;
    let mut spacing = was;
    change(&mut spacing);
    let Spaced::Row(_) = of else { return along::edit(places, of, spacing) };
    let shutter = places.seen.subject?;
    let alike = places.scheme.ties.iter().filter(|row| row.holds(shutter) && row.spacing == was);
    Some(Edit::Several(alike.filter_map(|row| along::edit(places, Spaced::Row(row.id), spacing)).collect()))
}
