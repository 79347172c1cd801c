//! Soffit falsework.

use super::{EditError, LegSpacing, defaults, opening, repeats};
use crate::geometry::{Point, Side};
use crate::layout::concrete::faces;
use crate::model::{Face, FaceKind};
use crate::scheme::{FaceRef, Falsework, Id, LegLine, Scheme, Spacing};
use crate::sorting::sort;

/// Leg lines of one soffit, at most.
const MOST_LINES: u32 = 100;

/// Ends this near are at the same place, m.
const SAME_M: f64 = 1e-6;

pub(super) fn add_falsework(scheme: &mut Scheme, of: FaceRef) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let face = faces.iter().find(|face| face.of == of).ok_or(EditError::Missing { what: "face", id: of.corner })?;
    if face.kind != FaceKind::Soffit {
        return Err(EditError::NotASoffit);
    }
    if let Some(falsework) = scheme.falsework.iter().find(|falsework| falsework.soffit == of) {
        return Err(EditError::Occupied { what: "Falsework", id: falsework.id });
    }
    let on_slab = floor_under(scheme, face).is_some();
    let spacing = defaults::leg_lines(is_shuttered(scheme, &faces, of.pour));
    let falsework = defaults::falsework(scheme.fresh_id(), face, soffit_extent(&faces, face), spacing, on_slab);
    let lines = falsework.leg_lines.iter().map(|line| line.id).collect();
    repeats::note(scheme, falsework.id, spacing, lines);
    scheme.falsework.push(falsework);
    Ok(())
}

/// Whether inner walls are cast with the soffit of a pour, behind shutters.
fn is_shuttered(scheme: &Scheme, faces: &[Face], pour: Id) -> bool {
    let inner = |of: FaceRef| faces.iter().any(|face| face.of == of && face.kind == FaceKind::InnerWall);
    scheme.shutters.iter().any(|shutter| shutter.face.pour == pour && inner(shutter.face))
}

pub(super) fn set_falsework(scheme: &mut Scheme, falsework: &Falsework) -> Result<(), EditError> {
    *falsework_mut(scheme, falsework.id)? = falsework.clone();
    Ok(())
}

pub(super) fn add_line(scheme: &mut Scheme, falsework: Id, x_m: f64) -> Result<(), EditError> {
    check_under(scheme, falsework, "A leg line", x_m)?;
    let id = scheme.fresh_id();
    let lines = &mut falsework_mut(scheme, falsework)?.leg_lines;
    lines.push(LegLine { id, x_m, braced: false });
    in_order(lines);
    Ok(())
}

pub(super) fn move_line(scheme: &mut Scheme, line: Id, x_m: f64) -> Result<(), EditError> {
    let falsework = with_line(scheme, line)?;
    check_under(scheme, falsework, "A leg line", x_m)?;
    let mut lines = scheme.falsework.iter().flat_map(|falsework| &falsework.leg_lines);
    if lines.any(|l| l.id == line && (l.x_m - x_m).abs() < SAME_PLACE_M) {
        return Ok(());
    }
    repeats::release(scheme, line);
    let lines = &mut falsework_mut(scheme, falsework)?.leg_lines;
    lines.iter_mut().filter(|l| l.id == line).for_each(|l| l.x_m = x_m);
    in_order(lines);
    Ok(())
}

pub(super) fn toggle_braced(scheme: &mut Scheme, line: Id) -> Result<(), EditError> {
    let falsework = with_line(scheme, line)?;
    let lines = &mut falsework_mut(scheme, falsework)?.leg_lines;
    lines.iter_mut().filter(|l| l.id == line).for_each(|l| l.braced = !l.braced);
    Ok(())
}

/// Keeps the ids of the lines from the left as far as they go.
pub(super) fn respace(scheme: &mut Scheme, id: Id, spacing: LegSpacing) -> Result<(), EditError> {
    let fresh = scheme.fresh_id();
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let [left, right] = soffit_extent(&faces, soffit_of(scheme, &faces, id)?);
    let edge_m = repeats::edge_beside_way(scheme, id).filter(|_| matches!(spacing, LegSpacing::Apart(_)));
    let lines = &mut falsework_mut(scheme, id)?.leg_lines;
    let (Some(mut first), Some(mut last)) = (lines.first().copied(), lines.last().copied()) else { return Ok(()) };
    // Beside a way the lines over it may be the first and last that are there.
    if let Some(edge_m) = edge_m {
        (first.x_m, last.x_m) = (left + edge_m, right - edge_m);
    }
    let width = last.x_m - first.x_m;
    let count = match spacing {
        LegSpacing::Count(count) => count,
        LegSpacing::Apart(apart_m) if apart_m > width / f64::from(MOST_LINES) && apart_m > 0.05 => {
            Spacing { edge_m: 0.0, max_m: apart_m }.positions(width).len() as u32
        }
        LegSpacing::Apart(value) => {
            return Err(EditError::Value { what: "spacing of legs", value, range: "0.1 m or more" });
        }
    };
    if !(2..=MOST_LINES).contains(&count) {
        return Err(EditError::Value { what: "number of leg lines", value: f64::from(count), range: "2 to 100" });
    }
    let at = |i: u32| first.x_m + width * f64::from(i) / f64::from(count - 1);
    let kept = |i: u32| lines.get(i as usize).map_or(Id(fresh.0.saturating_add(i)), |line| line.id);
    let line = |i: u32| LegLine { id: kept(i), x_m: at(i), braced: i == 0 || i + 2 == count };
    *lines = (0..count).map(line).collect();
    let members = lines.iter().map(|line| line.id).collect();
    let edge_m = first.x_m - left;
    let even = (edge_m - (right - last.x_m)).abs() < SAME_EDGE_M;
    let apart_m = width / f64::from(count - 1);
    let max_m = if let LegSpacing::Apart(apart_m) = spacing { apart_m } else { apart_m };
    // So many lines as were asked for cannot leave room for a way too.
    let counted = matches!(spacing, LegSpacing::Count(_)) && opening::through(scheme, id).is_some();
    repeats::note(scheme, id, Spacing { edge_m, max_m }, if even && !counted { members } else { Vec::new() });
    Ok(())
}

/// A line this near to a place is there, m.
const SAME_PLACE_M: f64 = 1e-9;

/// Lines this equally far from both ends of the soffit go on standing regularly, m.
const SAME_EDGE_M: f64 = 1e-3;

/// Left and right end of a soffit with the slopes that adjoin it.
pub fn soffit_extent(faces: &[Face], soffit: &Face) -> [f64; 2] {
    let slopes = || faces.iter().filter(|face| face.kind == FaceKind::SlopeUnder && face.of.pour == soffit.of.pour);
    let meets = |a: Point, b: Point| (a - b).length() < SAME_M;
    let (mut left, mut right) = (soffit.from, soffit.to);
    for _ in faces {
        left = slopes().find(|slope| meets(slope.to, left)).map_or(left, |slope| slope.from);
        right = slopes().find(|slope| meets(slope.from, right)).map_or(right, |slope| slope.to);
    }
    [left.x, right.x]
}

/// Level of the concrete under the middle of a soffit.
pub(super) fn floor_under(scheme: &Scheme, soffit: &Face) -> Option<f64> {
    let middle = soffit.from.lerp(soffit.to, 0.5) - Point::new(0.0, 1e-3);
    scheme.section.boundary().floor_below(middle, Side::Before)
}

pub(super) fn soffit_of<'a>(scheme: &Scheme, faces: &'a [Face], falsework: Id) -> Result<&'a Face, EditError> {
    let found = scheme.falsework.iter().find(|f| f.id == falsework);
    let of = found.ok_or(EditError::Missing { what: "falsework", id: falsework })?.soffit;
    faces.iter().find(|face| face.of == of).ok_or(EditError::Missing { what: "soffit", id: of.corner })
}

pub(super) fn check_under(scheme: &Scheme, falsework: Id, what: &'static str, x_m: f64) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let [left_m, right_m] = soffit_extent(&faces, soffit_of(scheme, &faces, falsework)?);
    if (left_m..=right_m).contains(&x_m) { Ok(()) } else { Err(EditError::OffSoffit { what, x_m, left_m, right_m }) }
}

pub(super) fn with_line(scheme: &Scheme, line: Id) -> Result<Id, EditError> {
    let has = |falsework: &&Falsework| falsework.leg_lines.iter().any(|l| l.id == line);
    let found = scheme.falsework.iter().find(has);
    found.map(|falsework| falsework.id).ok_or(EditError::Missing { what: "leg line", id: line })
}

pub(super) fn falsework_mut(scheme: &mut Scheme, id: Id) -> Result<&mut Falsework, EditError> {
    let found = scheme.falsework.iter_mut().find(|falsework| falsework.id == id);
    found.ok_or(EditError::Missing { what: "falsework", id })
}

pub(super) fn in_order(lines: &mut [LegLine]) {
    sort(lines, |a, b| a.x_m.total_cmp(&b.x_m));
}
