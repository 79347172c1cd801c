//! Wall shutters and what holds them.

use super::{EditError, defaults, repeats};
use crate::geometry::{Edge, Side};
use crate::layout::concrete::faces;
use crate::layout::takes_shutter;
use crate::model::{Face, FaceKind};
use crate::scheme::{FaceRef, Id, Scheme, Shutter, Spacing, TieEnd, TieRow};

/// Ends this near are at the same place, m.
const SAME_M: f64 = 1e-4;

/// Concrete thicker than this is not tied through, m.
const LONGEST_TIE_M: f64 = 2.5;

/// A row this near to a level is there, m.
const SAME_LEVEL_M: f64 = 1e-9;

/// Rows of one shutter, at most.
const MOST_ROWS: usize = 50;

pub(super) fn add_shutter(scheme: &mut Scheme, of: FaceRef) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let face = faces.iter().find(|face| face.of == of).ok_or(EditError::Missing { what: "face", id: of.corner })?;
    if !takes_shutter(face) {
        return Err(EditError::NotAWall);
    }
    if let Some(shutter) = scheme.shutters.iter().find(|shutter| shutter.face == of) {
        return Err(EditError::Occupied { what: "Shutter", id: shutter.id });
    }
    let shutter = defaults::shutter(scheme.fresh_id(), face);
    scheme.shutters.push(shutter);
    Ok(())
}

pub(super) fn add_shutters(scheme: &mut Scheme, inner: bool) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let kind = if inner { FaceKind::InnerWall } else { FaceKind::OuterWall };
    let bare = faces.iter().filter(|face| face.kind == kind).filter(|face| stands_free(scheme, face));
    let bare: Vec<FaceRef> = bare.map(|face| face.of).collect();
    if bare.is_empty() {
        return Err(EditError::NoneBare { inner });
    }
    bare.into_iter().try_for_each(|face| add_shutter(scheme, face))
}

fn stands_free(scheme: &Scheme, face: &Face) -> bool {
    !scheme.shutters.iter().any(|shutter| shutter.face == face.of)
}

/// A kicker gets one row near its head, a higher shutter rows of usual spacing, and one more where its head stands
/// far above them: an outer shutter beside a roof slab.
pub(super) fn hold_all(scheme: &mut Scheme) -> Result<(), EditError> {
    let shutters: Vec<Id> = scheme.shutters.iter().map(|shutter| shutter.id).collect();
    let held = |scheme: &Scheme, id: Id| scheme.ties.iter().any(|row| row.holds(id));
    if shutters.iter().all(|id| held(scheme, *id)) {
        return Err(EditError::AllHeld);
    }
    for id in shutters {
        if held(scheme, id) {
            continue;
        }
        let faces = faces(&scheme.section, scheme.ground.level_m);
        let [bottom, top] = levels(face_of(scheme, &faces, id)?);
        if top - bottom < defaults::KICKER_M {
            let below_m = defaults::KICKER_TO_TIE_M.min((top - bottom) / 4.0);
            add_row(scheme, id, top - below_m)?;
            continue;
        }
        add_rows(scheme, id, defaults::TIES_APART_M)?;
        let own = scheme.ties.iter().filter(|row| row.shutter == id).map(|row| row.z_m);
        let highest = own.fold(bottom, f64::max);
        if top - highest > defaults::HEAD_OVER_TIE_M {
            add_row(scheme, id, top - defaults::SHUTTER_END_TO_TIE_M)?;
        }
    }
    Ok(())
}

pub(super) fn move_ends(scheme: &mut Scheme, id: Id, below_m: f64, above_m: f64) -> Result<(), EditError> {
    for (what, value) in [("reach below the face", below_m), ("reach above the face", above_m)] {
        if !(0.0..=2.0).contains(&value) {
            return Err(EditError::Value { what, value, range: "0 to 2 m" });
        }
    }
    let shutter = shutter_mut(scheme, id)?;
    (shutter.below_m, shutter.above_m) = (below_m, above_m);
    Ok(())
}

/// Shutters that ties join keep their primaries opposite each other.
pub(super) fn set_shutter(scheme: &mut Scheme, shutter: &Shutter) -> Result<(), EditError> {
    let before = std::mem::replace(shutter_mut(scheme, shutter.id)?, shutter.clone());
    if (before.arrangement, before.primaries) != (shutter.arrangement, shutter.primaries) {
        for id in joined(scheme, shutter.id) {
            let other = shutter_mut(scheme, id)?;
            (other.arrangement, other.primaries) = (shutter.arrangement, shutter.primaries);
        }
    }
    Ok(())
}

/// All shutters that rows of ties or props join to this one, directly or through others, itself first.
fn joined(scheme: &Scheme, shutter: Id) -> Vec<Id> {
    let mut found = vec![shutter];
    let mut next = 0;
    while let Some(&id) = found.get(next) {
        next += 1;
        for row in scheme.ties.iter().filter(|row| row.holds(id)) {
            let ends = [Some(row.shutter), if let TieEnd::Shutter { id } = row.to { Some(id) } else { None }];
            for end in ends.into_iter().flatten() {
                if !found.contains(&end) && scheme.shutters.iter().any(|other| other.id == end) {
                    found.push(end);
                }
            }
        }
    }
    found
}

pub(super) fn add_row(scheme: &mut Scheme, shutter: Id, z_m: f64) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    check_level(scheme, &faces, shutter, z_m)?;
    let row = row_at(scheme, &faces, shutter, z_m)?;
    scheme.ties.push(row);
    Ok(())
}

pub(super) fn add_prop(scheme: &mut Scheme, shutter: Id, z_m: f64, length_m: f64) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    check_level(scheme, &faces, shutter, z_m)?;
    let row = defaults::tie_row(scheme.fresh_id(), shutter, TieEnd::Fixed { length_m }, false, z_m);
    scheme.ties.push(row);
    Ok(())
}

pub(super) fn add_rows(scheme: &mut Scheme, shutter: Id, spacing_m: f64) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let [bottom, top] = rows_over(scheme, &faces, shutter)?;
    let height = top - bottom;
    if !(spacing_m > height / MOST_ROWS as f64 && spacing_m > 0.05) {
        return Err(EditError::Value { what: "spacing of rows", value: spacing_m, range: "0.1 m or more" });
    }
    let (opposite, _) = far_end(scheme, &faces, shutter, (bottom + top) / 2.0)?;
    let fixed = |end: TieEnd| matches!(end, TieEnd::Fixed { .. });
    scheme.ties.retain(|row| !row.holds(shutter) || fixed(row.to) != fixed(opposite));
    repeats::prune(scheme);
    let edge_m = defaults::SHUTTER_END_TO_TIE_M;
    let mut members = Vec::new();
    for place in (Spacing { edge_m: edge_m.min(height / 4.0), max_m: spacing_m }).positions(height) {
        let row = row_at(scheme, &faces, shutter, bottom + place)?;
        members.push(row.id);
        scheme.ties.push(row);
    }
    repeats::note(scheme, shutter, Spacing { edge_m, max_m: spacing_m }, members);
    Ok(())
}

/// The levels over which rows of a shutter stand: its own height, and that of the shutter opposite where there is one.
pub(super) fn rows_over(scheme: &Scheme, faces: &[Face], shutter: Id) -> Result<[f64; 2], EditError> {
    let [bottom, top] = reach(scheme, faces, shutter)?;
    let (opposite, _) = far_end(scheme, faces, shutter, (bottom + top) / 2.0)?;
    let TieEnd::Shutter { id } = opposite else { return Ok([bottom, top]) };
    let other = reach(scheme, faces, id)?;
    Ok([bottom.max(other[0]), top.min(other[1])])
}

pub(super) fn move_row(scheme: &mut Scheme, row: Id, z_m: f64) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let (shutter, to) = scheme.ties.iter().find(|r| r.id == row).map(|r| (r.shutter, r.to)).ok_or(missing_row(row))?;
    let ends = [Some(shutter), if let TieEnd::Shutter { id } = to { Some(id) } else { None }];
    for end in ends.into_iter().flatten() {
        check_level(scheme, &faces, end, z_m)?;
    }
    if (row_mut(scheme, row)?.z_m - z_m).abs() > SAME_LEVEL_M {
        repeats::release(scheme, row);
        row_mut(scheme, row)?.z_m = z_m;
    }
    Ok(())
}

pub(super) fn set_item(scheme: &mut Scheme, row: Id, item: &str) -> Result<(), EditError> {
    row_mut(scheme, row)?.item = item.to_owned();
    Ok(())
}

pub(super) fn set_row(scheme: &mut Scheme, row: &TieRow) -> Result<(), EditError> {
    if (row_mut(scheme, row.id)?.z_m - row.z_m).abs() > SAME_LEVEL_M {
        repeats::release(scheme, row.id);
    }
    *row_mut(scheme, row.id)? = row.clone();
    Ok(())
}

pub(super) fn row_at(scheme: &Scheme, faces: &[Face], shutter: Id, z_m: f64) -> Result<TieRow, EditError> {
    let (to, across_concrete) = far_end(scheme, faces, shutter, z_m)?;
    Ok(defaults::tie_row(scheme.fresh_id(), shutter, to, across_concrete, z_m))
}

/// What a row of this shutter reaches at a level: the same pour's shutter across the concrete, else the one across the void, else
/// a fixed point; and whether concrete lies between.
pub(super) fn far_end(scheme: &Scheme, faces: &[Face], shutter: Id, z_m: f64) -> Result<(TieEnd, bool), EditError> {
    let face = face_of(scheme, faces, shutter)?;
    let [bottom, top] = levels(face);
    let z = z_m.clamp(bottom + SAME_M, top - SAME_M);
    let x = line(face).x_at(z);
    let boundary = scheme.section.boundary();
    let spans = [Side::Before, Side::After].map(|side| boundary.spans_at(z, side)).concat();
    let (of, outward) = (face.of, face.normal.x.signum());
    let across = |toward: f64| {
        let ends = spans.iter().flatten().filter(|end| (**end - x) * toward > SAME_M);
        ends.min_by(|a, b| (*a - x).abs().total_cmp(&(*b - x).abs())).and_then(|end| {
            let opposite = |other: &&Shutter| {
                let face = faces.iter().find(|face| face.of == other.face);
                face.is_some_and(|face| {
                    let [low, high] = levels(face);
                    (low - other.below_m..=high + other.above_m).contains(&z_m)
                        && face.of.pour == of.pour
                        && face.normal.x * outward < 0.0
                        && (line(face).x_at(z.clamp(low, high)) - end).abs() < SAME_M.max(0.02 * (high - low))
                })
            };
            scheme.shutters.iter().find(opposite).map(|other| (other.id, (end - x).abs()))
        })
    };
    let tied = across(-outward).filter(|(_, length_m)| *length_m <= LONGEST_TIE_M);
    Ok(match (tied, across(outward)) {
        (Some((id, _)), _) => (TieEnd::Shutter { id }, true),
        (None, Some((id, _))) => (TieEnd::Shutter { id }, false),
        (None, None) => (defaults::FIXED, false),
    })
}

pub(super) fn check_level(scheme: &Scheme, faces: &[Face], shutter: Id, z_m: f64) -> Result<(), EditError> {
    let [bottom_m, top_m] = reach(scheme, faces, shutter)?;
    if (bottom_m..=top_m).contains(&z_m) { Ok(()) } else { Err(EditError::OffShutter { z_m, bottom_m, top_m }) }
}

fn reach(scheme: &Scheme, faces: &[Face], id: Id) -> Result<[f64; 2], EditError> {
    let [bottom, top] = levels(face_of(scheme, faces, id)?);
    let shutter = shutter_of(scheme, id)?;
    Ok([bottom - shutter.below_m, top + shutter.above_m])
}

pub(super) fn face_of<'a>(scheme: &Scheme, faces: &'a [Face], id: Id) -> Result<&'a Face, EditError> {
    let of = shutter_of(scheme, id)?.face;
    faces.iter().find(|face| face.of == of).ok_or(EditError::Missing { what: "face", id: of.corner })
}

pub(super) fn shutter_of(scheme: &Scheme, id: Id) -> Result<&Shutter, EditError> {
    scheme.shutters.iter().find(|shutter| shutter.id == id).ok_or(EditError::Missing { what: "shutter", id })
}

pub(super) fn shutter_mut(scheme: &mut Scheme, id: Id) -> Result<&mut Shutter, EditError> {
    scheme.shutters.iter_mut().find(|shutter| shutter.id == id).ok_or(EditError::Missing { what: "shutter", id })
}

pub(super) fn row_mut(scheme: &mut Scheme, id: Id) -> Result<&mut TieRow, EditError> {
    scheme.ties.iter_mut().find(|row| row.id == id).ok_or(missing_row(id))
}

pub(super) fn missing_row(id: Id) -> EditError {
    EditError::Missing { what: "row of ties", id }
}

pub(super) fn line(face: &Face) -> Edge {
    Edge::new(face.from, face.to)
}

pub(super) fn levels(face: &Face) -> [f64; 2] {
    [face.from.z.min(face.to.z), face.from.z.max(face.to.z)]
}
