//! The room in an opening, measured between the placed parts.

use super::record::{Record, Subject};
use crate::checks::Comparison;
use crate::geometry::Point;
use crate::model::{Model, Part, PlacedFalsework, PlacedOpening, Solid};
use crate::results::{Check, CheckKind, Clearance};
use crate::scheme::Scheme;
use crate::sentence::{Sentence, length_mm, member, number};

/// Measures every opening and checks what is asked for.
pub fn measure(scheme: &Scheme, model: &Model, record: &mut Record) {
    for falsework in &model.falsework {
        if let Some(opening) = &falsework.opening {
            one(scheme, model, falsework, opening, record);
        }
    }
}

/// What a part takes up in the section.
struct Extent<'a> {
    part: &'a Part,
    left: f64,
    right: f64,
    bottom: f64,
    top: f64,
}

fn extent(part: &Part) -> Extent<'_> {
    let (left, right, bottom, top) = match part.solid {
        Solid::Bar { from, to, size_m: [across, up], .. } => {
            let [level, upright] = [from[2] == to[2], from[0] == to[0]];
            let (dx, dz) = (if upright { across / 2.0 } else { 0.0 }, if level || !upright { up / 2.0 } else { 0.0 });
            (from[0].min(to[0]) - dx, from[0].max(to[0]) + dx, from[2].min(to[2]) - dz, from[2].max(to[2]) + dz)
        }
        Solid::Sheet { from, to, .. } => (from.x.min(to.x), from.x.max(to.x), from.z.min(to.z), from.z.max(to.z)),
        Solid::Plate { centre, width_m, thickness_m, .. } => {
            (centre[0] - width_m / 2.0, centre[0] + width_m / 2.0, centre[2] - thickness_m, centre[2])
        }
    };
    Extent { part, left, right, bottom, top }
}

fn one(scheme: &Scheme, model: &Model, falsework: &PlacedFalsework, opening: &PlacedOpening, record: &mut Record) {
    let drawn = &opening.drawn;
    let tolerance = scheme.limits.access_tolerance_m;
    let (floor, ceiling) = (falsework.floor_m, falsework.floor_m + drawn.height_m);
    let (left, right) = (drawn.left_m, drawn.left_m + drawn.width_m);
    let middle = (left + right) / 2.0;
    let parts: Vec<Extent> = model.parts.iter().map(extent).collect();
    let beside = |extent: &&Extent| extent.bottom < ceiling - 1e-9 && extent.top > floor + 1e-9;
    let nearest_left =
        parts.iter().filter(beside).filter(|extent| extent.right <= middle).max_by(|a, b| a.right.total_cmp(&b.right));
    let nearest_right =
        parts.iter().filter(beside).filter(|extent| extent.left >= middle).min_by(|a, b| a.left.total_cmp(&b.left));
    let above = parts.iter().filter(|extent| extent.right > left && extent.left < right && extent.top > floor + 1e-9);
    let lowest = above.min_by(|a, b| a.bottom.total_cmp(&b.bottom));
    let (Some(at_left), Some(at_right), Some(lowest)) = (nearest_left, nearest_right, lowest) else { return };

    let sag = sag_over(record, opening);
    let width_m = at_right.left - at_left.right - 2.0 * drawn.guard_m - tolerance;
    let height_m = lowest.bottom - floor - sag - tolerance;
    let name = |extent: &Extent| member(&format!("{} {}", extent.part.mark, extent.part.role.name()));
    let level = |extent: &Extent| number(extent.bottom.max(floor) - floor, "m", 2);
    let clearance = Clearance {
        opening: drawn.id,
        width_m,
        height_m,
        width_between: sentence!(
            "{} at {} and {} at {} above the floor",
            name(at_left),
            level(at_left),
            name(at_right),
            level(at_right)
        ),
        height_below: sentence!("{}, less {} deflection", name(lowest), length_mm(sag)),
    };
    let case = sentence!("measured");
    let mut check = |member: String, place: &Sentence, at, wanted: f64, got: f64, taken: String| {
        let subject = Subject { owner: drawn.id, member: &member, case: &case, place, at };
        let comparison = Comparison {
            check: CheckKind::Clearance,
            demand: wanted,
            resistance: got,
            unit: "m",
            source: "measured between placed parts; common practice".into(),
        };
        let numbers = formula!("{0} / ({1}) = {0} / {2}", number(wanted, "m", 3), taken, number(got, "m", 3));
        record.check(&subject, [comparison.verdict("wanted / clear", numbers)]);
    };
    check(
        format!("{} clear width", opening.mark),
        &clearance.width_between,
        Point::new(middle, floor),
        drawn.width_m,
        width_m,
        format!("{:.3} − 2 × {:.3} guards − {tolerance:.3} tolerance", at_right.left - at_left.right, drawn.guard_m),
    );
    check(
        format!("{} clear height", opening.mark),
        &clearance.height_below,
        Point::new(middle, ceiling),
        drawn.height_m,
        height_m,
        format!("{:.3} − {sag:.3} deflection − {tolerance:.3} tolerance", lowest.bottom - floor),
    );
    record.results.clearances.push(clearance);
}

/// Greatest deflection of the transfer beams, m.
fn sag_over(record: &Record, opening: &PlacedOpening) -> f64 {
    let of_beam = |check: &&Check| check.owner == opening.drawn.id && check.check == CheckKind::Deflection;
    let checked = record.results.checks.iter().filter(of_beam).map(|check| check.demand / 1e3);
    let drawn = record.results.diagrams.iter().filter(|diagram| diagram.owner == opening.drawn.id);
    let full = drawn.flat_map(|diagram| &diagram.stations).map(|station| station.deflection_m.abs());
    checked.chain(full).fold(0.0, f64::max)
}
