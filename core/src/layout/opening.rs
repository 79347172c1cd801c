use super::falsework::Room;
use super::lookup::{Lookup, fail};
use crate::catalogue::{Catalogue, Item};
use crate::model::PlacedOpening;
use crate::results::Finding;
use crate::scheme::{Id, Scheme};
use crate::sentence::length_mm;

/// Transfer beams reach this far beyond the outer trestle legs.
const BEAM_END_M: f64 = 0.15;

/// Places the opening of a falsework, where it has one that fits.
pub fn place(
    falsework: Id,
    room: &Room,
    scheme: &Scheme,
    catalogue: &Catalogue,
    findings: &mut Vec<Finding>,
) -> Option<PlacedOpening> {
    let (index, drawn) = scheme.openings.iter().enumerate().find(|(_, opening)| opening.falsework == falsework)?;
    let mark = format!("A{}", index + 1);
    let lookup = Lookup { catalogue, owner: drawn.id, mark: &mark };
    let transfer = lookup.item(&drawn.transfer, "transfer beam", |item| item.beam().is_some(), findings);
    let trestle = lookup.item(&drawn.trestle, "trestle leg", |item| item.leg().is_some(), findings);
    let (transfer, trestle) = (transfer?, trestle?);

    let beside_m = drawn.guard_m + scheme.limits.access_tolerance_m;
    let stand_off = beside_m + trestle.leg()?.footprint_m.max(room.plate_width_m / 2.0);
    let inner = [drawn.left_m - stand_off, drawn.left_m + drawn.width_m + stand_off];
    let trestles_m = [inner[0] - drawn.trestle_m, inner[0], inner[1], inner[1] + drawn.trestle_m];
    let out_by = (room.ends_m[0] - trestles_m[0]).max(trestles_m[3] - room.ends_m[1]);
    if out_by >= 0.0 {
        findings.push(fail(
            drawn.id,
            sentence!(
                "{} does not fit between the walls: its trestles stand {} too far out.",
                &mark,
                length_mm(out_by)
            ),
            sentence!("Make the way, its guards or the trestles narrower, or move the way."),
        ));
        return None;
    }
    let underside_m = room.floor_m + drawn.beam_underside_m;
    let too_high = underside_m + depth(&transfer) - room.head_m;
    if too_high > 1e-9 {
        findings.push(fail(
            drawn.id,
            sentence!(
                "{}: its transfer beams stand {} too high to fit under the primaries.",
                &mark,
                length_mm(too_high)
            ),
            sentence!("Lower them, or use shallower beams or members."),
        ));
        return None;
    }
    Some(PlacedOpening {
        drawn: drawn.clone(),
        mark,
        transfer,
        trestle,
        trestles_m,
        beam_m: [trestles_m[0] - BEAM_END_M, trestles_m[3] + BEAM_END_M],
        underside_m,
    })
}

pub(super) fn depth(item: &Item) -> f64 {
    item.beam().map_or(0.0, |beam| beam.depth_m)
}
