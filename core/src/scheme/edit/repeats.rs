//! Keeps regular rows of ties and lines of legs regular.

use super::{EditError, defaults, falsework, opening, shutters};
use crate::layout::concrete::faces;
use crate::model::Face;
use crate::scheme::{Id, LegLine, Moved, Opening, Repeat, Scheme, Spacing};
use crate::sorting::sort;

/// Places this near are the same, m.
const SAME_M: f64 = 1e-9;

/// No more stand over one height or width.
const MOST: f64 = 200.0;

/// Notes that these stand regularly, in place of what was noted before.
pub(super) fn note(scheme: &mut Scheme, of: Id, spacing: Spacing, members: Vec<Id>) {
    scheme.repeats.retain(|repeat| repeat.of != of);
    if !members.is_empty() {
        let around_way = opening::through(scheme, of).is_some();
        scheme.repeats.push(Repeat { of, spacing, members, moved: Vec::new(), around_way });
    }
}

/// Lets regular lines of legs leave room for the trestles of a way that is new.
pub(super) fn leave_room(scheme: &mut Scheme, falsework: Id) {
    scheme.repeats.iter_mut().filter(|repeat| repeat.of == falsework).for_each(|repeat| repeat.around_way = true);
}

/// From the wall to the first of the regular lines that leave room for a way.
pub(super) fn edge_beside_way(scheme: &Scheme, falsework: Id) -> Option<f64> {
    let found = scheme.repeats.iter().find(|repeat| repeat.of == falsework && way(scheme, repeat).is_some());
    found.map(|repeat| repeat.spacing.edge_m)
}

/// The way that regular lines leave room for.
fn way<'a>(scheme: &'a Scheme, repeat: &Repeat) -> Option<&'a Opening> {
    opening::through(scheme, repeat.of).filter(|_| repeat.around_way)
}

/// Regular places from wall to wall around a way: up to each trestle from its wall, the trestle's leg being the last, and
/// over the way from trestle to trestle.
fn places_around(way: &Opening, tolerance_m: f64, spacing: Spacing, [start, end]: [f64; 2]) -> Vec<f64> {
    let out = way.guard_m + tolerance_m + defaults::TRESTLE_FOOT_M;
    let inner = [way.left_m - out, way.left_m + way.width_m + out];
    let outer = [inner[0] - way.trestle_m, inner[1] + way.trestle_m];
    let gaps = |length_m: f64| (length_m / spacing.max_m - 1e-9).ceil().max(1.0);
    let beside = |wall: f64, toward: f64, trestle: f64| {
        let free = (trestle - wall) * toward - spacing.edge_m;
        let count = if free < defaults::TRESTLE_TO_LEG_M { 0.0 } else { gaps(free) };
        (0..count as u32).map(move |i| wall + toward * (spacing.edge_m + free * f64::from(i) / count))
    };
    let over = inner[1] - inner[0];
    let count = gaps(over).max(2.0);
    let stubs = (1..count as u32).map(|i| inner[0] + over * f64::from(i) / count);
    let mut places: Vec<f64> = beside(start, 1.0, outer[0]).chain(stubs).chain(beside(end, -1.0, outer[1])).collect();
    sort(&mut places, f64::total_cmp);
    places
}

/// Notes that a row or line is going to be moved on purpose: it stands fixed from now on, the others stay.
pub(super) fn release(scheme: &mut Scheme, id: Id) {
    let Some(i) = scheme.repeats.iter().position(|repeat| repeat.members.contains(&id)) else { return };
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let of = scheme.repeats[i].of;
    let place = place(scheme, id);
    let extent = extent(scheme, &faces, of);
    let repeat = &mut scheme.repeats[i];
    repeat.members.retain(|member| *member != id);
    match (place, extent) {
        (Some(place), Ok([start, end])) if end > start => {
            repeat.moved.push(Moved { id, at: ((place - start) / (end - start)).clamp(0.0, 1.0) });
        }
        _ => scheme.repeats.retain(|repeat| repeat.of != of),
    }
}

/// Forgets what is no longer regular because one of it, or what it stands on, is gone.
pub(super) fn prune(scheme: &mut Scheme) {
    let Scheme { repeats, shutters, ties, falsework, .. } = scheme;
    repeats.retain(|repeat| {
        let mut all = repeat.members.iter().copied().chain(repeat.moved.iter().map(|moved| moved.id));
        let rows = shutters.iter().any(|shutter| shutter.id == repeat.of);
        let lines = falsework.iter().find(|falsework| falsework.id == repeat.of).map(|falsework| &falsework.leg_lines);
        match lines {
            Some(lines) => all.all(|id| lines.iter().any(|line| line.id == id)),
            None => rows && all.all(|id| ties.iter().any(|row| row.id == id)),
        }
    });
}

/// Whether a row or line stands regularly.
pub(super) fn is_regular(repeats: &[Repeat], id: Id) -> bool {
    repeats.iter().any(|repeat| repeat.members.contains(&id))
}

/// Places all that is regular over the height or width that is there now.
pub(super) fn settle(scheme: &mut Scheme) {
    if scheme.repeats.is_empty() {
        return;
    }
    let faces = faces(&scheme.section, scheme.ground.level_m);
    for i in 0..scheme.repeats.len() {
        let Ok([start, end]) = extent(scheme, &faces, scheme.repeats[i].of) else { continue };
        let repeat = &scheme.repeats[i];
        let spacing = Spacing { edge_m: repeat.spacing.edge_m.min((end - start) / 4.0), ..repeat.spacing };
        if !(spacing.max_m > 0.0 && (end - start) / spacing.max_m < MOST) {
            continue;
        }
        let mut places: Vec<f64> = match way(scheme, repeat) {
            Some(way) => places_around(way, scheme.limits.access_tolerance_m, spacing, [start, end]),
            None => spacing.positions(end - start).into_iter().map(|place| start + place).collect(),
        };
        for moved in &repeat.moved {
            let at = start + moved.at * (end - start);
            let nearest = (0..places.len()).min_by(|a, b| (places[*a] - at).abs().total_cmp(&(places[*b] - at).abs()));
            if let Some(nearest) = nearest {
                places.remove(nearest);
            }
        }
        let is_falsework = scheme.falsework.iter().any(|falsework| falsework.id == repeat.of);
        if is_falsework { settle_lines(scheme, i, &places) } else { settle_rows(scheme, i, &places) }
    }
}

fn settle_rows(scheme: &mut Scheme, repeat: usize, places: &[f64]) {
    let members = in_order(scheme, repeat);
    let Some(&last) = members.last() else { return };
    let mut kept = Vec::with_capacity(places.len());
    for (i, &z_m) in places.iter().enumerate() {
        let id = match members.get(i) {
            Some(&id) => id,
            None => {
                let Some(mut row) = scheme.ties.iter().find(|row| row.id == last).cloned() else { return };
                row.id = scheme.fresh_id();
                let id = row.id;
                scheme.ties.push(row);
                id
            }
        };
        let row = scheme.ties.iter_mut().find(|row| row.id == id);
        row.into_iter().for_each(|row| put(&mut row.z_m, z_m));
        kept.push(id);
    }
    scheme.ties.retain(|row| !members.contains(&row.id) || kept.contains(&row.id));
    scheme.repeats[repeat].members = kept;
}

fn settle_lines(scheme: &mut Scheme, repeat: usize, places: &[f64]) {
    let members = in_order(scheme, repeat);
    let fresh = scheme.fresh_id();
    let of = scheme.repeats[repeat].of;
    let Some(falsework) = scheme.falsework.iter_mut().find(|falsework| falsework.id == of) else { return };
    let id = |i: usize| members.get(i).copied().unwrap_or(Id(fresh.0.saturating_add(i as u32)));
    let kept: Vec<Id> = (0..places.len()).map(id).collect();
    let lines = &mut falsework.leg_lines;
    lines.retain(|line| !members.contains(&line.id) || kept.contains(&line.id));
    for (&id, &x_m) in kept.iter().zip(places) {
        match lines.iter_mut().find(|line| line.id == id) {
            Some(line) => put(&mut line.x_m, x_m),
            None => lines.push(LegLine { id, x_m, braced: false }),
        }
    }
    falsework::in_order(lines);
    if kept.len() != members.len() {
        defaults::brace_ends(lines);
    }
    scheme.repeats[repeat].members = kept;
}

/// Leaves a place that differs by rounding alone as it is, to the last bit.
fn put(place: &mut f64, to: f64) {
    if (*place - to).abs() > SAME_M {
        *place = to;
    }
}

fn in_order(scheme: &Scheme, repeat: usize) -> Vec<Id> {
    let mut placed: Vec<(f64, Id)> =
        scheme.repeats[repeat].members.iter().filter_map(|&id| Some((place(scheme, id)?, id))).collect();
    sort(&mut placed, |a, b| a.0.total_cmp(&b.0));
    placed.into_iter().map(|(_, id)| id).collect()
}

/// Level of a row, place of a line.
fn place(scheme: &Scheme, id: Id) -> Option<f64> {
    let row = scheme.ties.iter().find(|row| row.id == id).map(|row| row.z_m);
    let mut lines = scheme.falsework.iter().flat_map(|falsework| &falsework.leg_lines);
    row.or_else(|| lines.find(|line| line.id == id).map(|line| line.x_m))
}

/// What the rows of a shutter or the lines of falsework stand over.
fn extent(scheme: &Scheme, faces: &[Face], of: Id) -> Result<[f64; 2], EditError> {
    if scheme.falsework.iter().any(|falsework| falsework.id == of) {
        return falsework::soffit_of(scheme, faces, of).map(|soffit| falsework::soffit_extent(faces, soffit));
    }
    shutters::rows_over(scheme, faces, of)
}
