//! Brings elements into line with the first of them.

use super::excerpt::{check_free, check_levels};
use super::{EditError, falsework, opening, repeats, shutters};
use crate::layout::concrete::faces;
use crate::scheme::{Id, Opening, Scheme, Shutter, TieRow};
use crate::sorting::sort;

/// What becomes the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Level of rows, head of shutters, height of openings.
    Level,
    /// Spacings of the members of shutters, rows or falsework.
    Spacing,
    /// Distances between the rows of two shutters, or the leg lines of falsework, from the first to the last.
    Apart,
}

/// Changes all elements after the first to be as it is.
pub(super) fn align(scheme: &mut Scheme, ids: &[Id], how: Align) -> Result<(), EditError> {
    let found = |known: &mut dyn Iterator<Item = Id>| {
        let known: Vec<Id> = known.collect();
        ids.iter().all(|id| known.contains(id))
    };
    let rows = found(&mut scheme.ties.iter().map(|row| row.id));
    let lines = found(&mut scheme.falsework.iter().flat_map(|of| of.leg_lines.iter().map(|line| line.id)));
    match ids {
        [] | [_] => Err(EditError::NothingTo { what: "aligned with another" }),
        _ if rows => match how {
            Align::Level => rows_level(scheme, ids),
            Align::Spacing => rows_spacing(scheme, ids),
            Align::Apart => rows_apart(scheme, ids),
        },
        _ if lines && how == Align::Apart => lines_apart(scheme, ids),
        _ if found(&mut scheme.shutters.iter().map(|shutter| shutter.id)) => match how {
            Align::Level => heads_level(scheme, ids),
            Align::Spacing => shutters_spacing(scheme, ids),
            Align::Apart => Err(EditError::Unlike),
        },
        _ if found(&mut scheme.falsework.iter().map(|of| of.id)) && how == Align::Spacing => {
            falsework_spacing(scheme, ids)
        }
        _ if found(&mut scheme.openings.iter().map(|of| of.id)) && how == Align::Level => openings_level(scheme, ids),
        _ => Err(EditError::Unlike),
    }
}

fn rows_of(scheme: &Scheme, ids: &[Id]) -> Result<Vec<TieRow>, EditError> {
    let row = |id: &Id| scheme.ties.iter().find(|row| row.id == *id).cloned().ok_or(shutters::missing_row(*id));
    ids.iter().map(row).collect()
}

fn rows_level(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let z_m = rows_of(scheme, &ids[..1])?[0].z_m;
    for id in &ids[1..] {
        shutters::move_row(scheme, *id, z_m)?;
    }
    rows_of(scheme, ids)?.iter().try_for_each(|row| check_free(scheme, row))
}

fn rows_spacing(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let rows = rows_of(scheme, ids)?;
    rows[1..].iter().try_for_each(|row| shutters::set_row(scheme, &TieRow { spacing: rows[0].spacing, ..row.clone() }))
}

fn rows_apart(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let mut rows = rows_of(scheme, ids)?;
    if rows.iter().any(|row| (row.shutter, row.to) != (rows[0].shutter, rows[0].to)) {
        return Err(EditError::Unlike);
    }
    sort(&mut rows, |a, b| a.z_m.total_cmp(&b.z_m));
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let (low, high) = (rows[0].z_m, rows[rows.len() - 1].z_m);
    for (i, row) in rows.iter().enumerate() {
        let z_m = low + (high - low) * i as f64 / (rows.len() - 1) as f64;
        repeats::release(scheme, row.id);
        shutters::row_mut(scheme, row.id)?.z_m = z_m;
        check_levels(scheme, &faces, &TieRow { z_m, ..row.clone() })?;
    }
    Ok(())
}

fn lines_apart(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let of = falsework::with_line(scheme, ids[0])?;
    let lines = &falsework::falsework_mut(scheme, of)?.leg_lines;
    let places: Vec<(Id, f64)> =
        lines.iter().filter(|line| ids.contains(&line.id)).map(|line| (line.id, line.x_m)).collect();
    if places.len() < ids.len() {
        return Err(EditError::Unlike);
    }
    let (left, right) = (places[0].1, places[places.len() - 1].1);
    for (i, (id, _)) in places.iter().enumerate() {
        falsework::move_line(scheme, *id, left + (right - left) * i as f64 / (places.len() - 1) as f64)?;
    }
    Ok(())
}

fn shutters_of(scheme: &Scheme, ids: &[Id]) -> Result<Vec<Shutter>, EditError> {
    ids.iter().map(|id| shutters::shutter_of(scheme, *id).cloned()).collect()
}

fn heads_level(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let top = |id: Id| shutters::face_of(scheme, &faces, id).map(|face| shutters::levels(face)[1]);
    let of = shutters_of(scheme, ids)?;
    let head = top(ids[0])? + of[0].above_m;
    let tops: Vec<f64> = ids.iter().map(|id| top(*id)).collect::<Result<_, _>>()?;
    let mut others = of.iter().zip(tops).skip(1);
    others.try_for_each(|(shutter, top)| shutters::move_ends(scheme, shutter.id, shutter.below_m, head - top))
}

fn shutters_spacing(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let of = shutters_of(scheme, ids)?;
    if of.iter().any(|shutter| shutter.arrangement != of[0].arrangement) {
        return Err(EditError::Unlike);
    }
    for id in &ids[1..] {
        let mut shutter = shutters::shutter_of(scheme, *id)?.clone();
        (shutter.secondaries, shutter.primaries) = (of[0].secondaries, of[0].primaries);
        shutters::set_shutter(scheme, &shutter)?;
    }
    Ok(())
}

fn falsework_spacing(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let first = falsework::falsework_mut(scheme, ids[0])?.clone();
    for id in &ids[1..] {
        let of = falsework::falsework_mut(scheme, *id)?;
        (of.secondaries, of.bents, of.lift_m) = (first.secondaries, first.bents, first.lift_m);
    }
    Ok(())
}

fn openings_level(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let first = opening::opening_mut(scheme, ids[0])?.clone();
    for id in &ids[1..] {
        let Opening { height_m, beam_underside_m, .. } = first;
        let of = opening::opening_mut(scheme, *id)?;
        (of.height_m, of.beam_underside_m) = (height_m, beam_underside_m);
    }
    Ok(())
}
