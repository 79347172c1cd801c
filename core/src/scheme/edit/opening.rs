//! Ways kept open through falsework.

use super::falsework::{check_under, floor_under, soffit_extent, soffit_of};
use super::{EditError, defaults, repeats};
use crate::layout::concrete::faces;
use crate::scheme::{Id, Opening, Scheme};

/// The way through falsework, if there is one.
pub(super) fn through(scheme: &Scheme, falsework: Id) -> Option<&Opening> {
    scheme.openings.iter().find(|opening| opening.falsework == falsework)
}

pub(super) fn add(scheme: &mut Scheme, falsework: Id, left_m: f64, width_m: f64) -> Result<(), EditError> {
    if let Some(opening) = through(scheme, falsework) {
        return Err(EditError::Occupied { what: "Opening", id: opening.id });
    }
    check_way(scheme, falsework, left_m, width_m)?;
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let soffit = soffit_of(scheme, &faces, falsework)?;
    let floor = floor_under(scheme, soffit).unwrap_or(scheme.ground.level_m);
    let height_m = soffit.from.z - floor;
    let [left, right] = soffit_extent(&faces, soffit);
    let beside_m = (left_m - left).min(right - left_m - width_m);
    let opening = defaults::opening(scheme.fresh_id(), falsework, [left_m, width_m], height_m, beside_m);
    scheme.openings.push(opening.ok_or(EditError::TooLow { height_m })?);
    repeats::leave_room(scheme, falsework);
    Ok(())
}

/// Adds an opening made elsewhere.
pub(super) fn put(scheme: &mut Scheme, opening: Opening) -> Result<(), EditError> {
    if let Some(other) = through(scheme, opening.falsework) {
        return Err(EditError::Occupied { what: "Opening", id: other.id });
    }
    check_way(scheme, opening.falsework, opening.left_m, opening.width_m)?;
    repeats::leave_room(scheme, opening.falsework);
    scheme.openings.push(opening);
    Ok(())
}

pub(super) fn shift(scheme: &mut Scheme, id: Id, left_m: f64) -> Result<(), EditError> {
    let (falsework, width_m) = opening_mut(scheme, id).map(|opening| (opening.falsework, opening.width_m))?;
    check_way(scheme, falsework, left_m, width_m)?;
    opening_mut(scheme, id)?.left_m = left_m;
    Ok(())
}

pub(super) fn resize(scheme: &mut Scheme, id: Id, left_m: f64, width_m: f64, height_m: f64) -> Result<(), EditError> {
    let falsework = opening_mut(scheme, id)?.falsework;
    check_way(scheme, falsework, left_m, width_m)?;
    if !(0.5..=20.0).contains(&height_m) {
        return Err(EditError::Value { what: "clear height", value: height_m, range: "0.5 to 20 m" });
    }
    let opening = opening_mut(scheme, id)?;
    opening.beam_underside_m += height_m - opening.height_m;
    (opening.left_m, opening.width_m, opening.height_m) = (left_m, width_m, height_m);
    Ok(())
}

pub(super) fn set(scheme: &mut Scheme, opening: &Opening) -> Result<(), EditError> {
    *opening_mut(scheme, opening.id)? = opening.clone();
    Ok(())
}

fn check_way(scheme: &Scheme, falsework: Id, left_m: f64, width_m: f64) -> Result<(), EditError> {
    if !(0.5..=100.0).contains(&width_m) {
        return Err(EditError::Value { what: "clear width", value: width_m, range: "0.5 to 100 m" });
    }
    check_under(scheme, falsework, "The opening's left edge", left_m)?;
    check_under(scheme, falsework, "The opening's right edge", left_m + width_m)
}

pub(super) fn opening_mut(scheme: &mut Scheme, id: Id) -> Result<&mut Opening, EditError> {
    scheme.openings.iter_mut().find(|opening| opening.id == id).ok_or(EditError::Missing { what: "opening", id })
}
