//! The room in an opening, measured between the outlines of the placed parts in the section.

use super::record::{Record, Subject};
use super::still::named;
use crate::checks::Comparison;
use crate::geometry::{Edge, Point, edges_of};
use crate::model::{Model, Part, PlacedFalsework, PlacedOpening};
use crate::results::{Check, CheckKind, Clearance, Severity};
use crate::scheme::{Opening, Scheme};
use crate::sentence::{Sentence, length, length_mm, number};

/// What stands no higher above the floor stands on it, m.
const FLAT_M: f64 = 1e-9;

/// Measures every opening and checks what is asked for.
pub fn measure(scheme: &Scheme, model: &Model, record: &mut Record) {
    for falsework in &model.falsework {
        if let Some(opening) = &falsework.opening {
            one(scheme, model, falsework, opening, record);
        }
    }
}

/// What comes nearest to the way, and where.
struct Nearest<'a> {
    part: &'a Part,
    at: Point,
}

fn ends(edges: impl Iterator<Item = Edge> + Clone) -> impl Iterator<Item = Point> + Clone {
    edges.flat_map(|edge| [edge.from, edge.to])
}

/// What is nearest to the left and right of a place between two levels. What reaches across it is above the way instead.
fn nearest_beside(model: &Model, middle: f64, [floor, ceiling]: [f64; 2]) -> [Option<Nearest<'_>>; 2] {
    let mut nearest: [Option<Nearest>; 2] = [None, None];
    for part in &model.parts {
        let outline = part.solid.outline(0.0);
        let known = |side: usize| nearest[side].as_ref().map_or(f64::INFINITY, |found| (found.at.x - middle).abs());
        if outline.iter().all(|p| p.x < middle - known(0)) || outline.iter().all(|p| p.x > middle + known(1)) {
            continue;
        }
        let ends = ends(edges_of(&outline).filter_map(|side| side.between(floor + FLAT_M, ceiling - FLAT_M)));
        let side = usize::from(ends.clone().any(|p| p.x > middle));
        if side == 1 && ends.clone().any(|p| p.x < middle) {
            continue;
        }
        let off = |p: Point| (p.x - middle).abs();
        let closest = ends.min_by(|a, b| off(*a).total_cmp(&off(*b)).then(a.z.total_cmp(&b.z)));
        let Some(at) = closest else { continue };
        if nearest[side].as_ref().is_none_or(|found| off(at) < off(found.at)) {
            nearest[side] = Some(Nearest { part, at });
        }
    }
    nearest
}

/// The lowest part above the floor between two places.
fn lowest_above<'a>(model: &'a Model, [left, right]: [f64; 2], floor: f64) -> Option<Nearest<'a>> {
    let mut lowest: Option<Nearest> = None;
    for part in &model.parts {
        let outline = part.solid.outline(0.0);
        let known = lowest.as_ref().map_or(f64::INFINITY, |found: &Nearest| found.at.z);
        if outline.iter().all(|p| p.z >= known) {
            continue;
        }
        let ends = ends(edges_of(&outline).filter_map(|side| side.across(left, right)));
        let stands = ends.clone().any(|p| p.z > floor + FLAT_M);
        let below = ends.filter(|p| stands && p.z < known).min_by(|a, b| a.z.total_cmp(&b.z));
        if let Some(at) = below {
            lowest = Some(Nearest { part, at });
        }
    }
    lowest
}

/// The highest place of the floor under the way, which need not be level.
fn highest_floor(model: &Model, falsework: &PlacedFalsework, [left, right]: [f64; 2]) -> f64 {
    let up = model.faces.iter().filter(|face| face.normal.z > 0.0);
    let ends = ends(up.filter_map(|face| Edge::new(face.from, face.to).across(left, right)));
    ends.map(|p| p.z).filter(|z| *z < falsework.head_m).fold(falsework.floor_m, f64::max)
}

fn one(scheme: &Scheme, model: &Model, falsework: &PlacedFalsework, opening: &PlacedOpening, record: &mut Record) {
    let drawn = &opening.drawn;
    let tolerance = scheme.limits.access_tolerance_m;
    let way = [drawn.left_m, drawn.left_m + drawn.width_m];
    let middle = f64::midpoint(way[0], way[1]);
    let floor = highest_floor(model, falsework, way);
    let ceiling = floor + drawn.height_m;
    let [Some(at_left), Some(at_right)] = nearest_beside(model, middle, [floor, ceiling]) else { return };
    let Some(lowest) = lowest_above(model, way, floor) else { return };

    let sag = sag_over(record, opening);
    let between_m = at_right.at.x - at_left.at.x;
    let below_m = lowest.at.z - floor;
    let width = clear_width(drawn, between_m, tolerance);
    let height = clear_height(drawn, below_m, sag, tolerance);
    let level = |nearest: &Nearest| number((nearest.at.z - floor).max(0.0), "m", 2);
    let [left, right] = [&at_left, &at_right].map(|nearest| named(nearest.part));
    let width_between = if drawn.built_width_m.is_some() {
        sentence!("as built")
    } else if at_left.at.z == at_right.at.z {
        sentence!("between {} and {}, {} above the floor", left, right, level(&at_left))
    } else {
        sentence!("between {} at {} and {} at {} above the floor", left, level(&at_left), right, level(&at_right))
    };
    let clearance = Clearance {
        opening: drawn.id,
        width_m: width.0,
        height_m: height.0,
        width_between,
        height_below: match drawn.built_height_m {
            Some(_) => sentence!("what is built over it, less {} deflection", length_mm(sag)),
            None => sentence!("{}, less {} deflection", named(lowest.part), length_mm(sag)),
        },
    };
    let case = sentence!("measured");
    let mut check = |member: String, place: &Sentence, at, wanted: f64, (got, taken): (f64, String), built: bool| {
        let subject = Subject { owner: drawn.id, member: &member, case: &case, place, at };
        let comparison = Comparison {
            check: CheckKind::Clearance,
            demand: wanted,
            resistance: got,
            unit: "m",
            source: if built { "measured on site" } else { "measured between placed parts; common practice" }.into(),
        };
        let numbers = formula!("{0} / ({1}) = {0} / {2}", number(wanted, "m", 3), taken, number(got, "m", 3));
        record.check(&subject, [comparison.verdict("wanted / clear", numbers)]);
    };
    check(
        format!("{} clear width", opening.mark),
        &clearance.width_between,
        Point::new(middle, floor),
        drawn.width_m,
        width,
        drawn.built_width_m.is_some(),
    );
    check(
        format!("{} clear height", opening.mark),
        &clearance.height_below,
        Point::new(middle, ceiling),
        drawn.height_m,
        height,
        drawn.built_height_m.is_some(),
    );
    tell_of_building(opening, [between_m, below_m], tolerance, record);
    record.results.clearances.push(clearance);
}

/// The clear width, and what it is taken from. What is measured on site has no tolerance left.
fn clear_width(drawn: &Opening, between_m: f64, tolerance: f64) -> (f64, String) {
    let guard = drawn.guard_m;
    match drawn.built_width_m {
        Some(built) => (built - 2.0 * guard, format!("{built:.3} − 2 × {guard:.3} guards")),
        None => (
            between_m - 2.0 * guard - tolerance,
            format!("{between_m:.3} − 2 × {guard:.3} guards − {tolerance:.3} tolerance"),
        ),
    }
}

/// The clear height in the same way.
fn clear_height(drawn: &Opening, below_m: f64, sag: f64, tolerance: f64) -> (f64, String) {
    match drawn.built_height_m {
        Some(built) => (built - sag, format!("{built:.3} − {sag:.3} deflection")),
        None => (below_m - sag - tolerance, format!("{below_m:.3} − {sag:.3} deflection − {tolerance:.3} tolerance")),
    }
}

/// Says where what stands on site is not what was worked out.
fn tell_of_building(opening: &PlacedOpening, [between_m, below_m]: [f64; 2], tolerance: f64, record: &mut Record) {
    let drawn = &opening.drawn;
    let differs = |built: &f64, drawn_m: f64| (built - drawn_m).abs() > tolerance;
    if let Some(built) = drawn.built_width_m.filter(|built| differs(built, between_m)) {
        record.find(
            Severity::Warn,
            drawn.id,
            sentence!(
                "{} is {} wide between what stands at its sides, drawn {}: forces are those of the drawing.",
                &opening.mark,
                length(built, 3),
                length(between_m, 3)
            ),
            sentence!("Put the legs beside it on the drawing where they stand on site."),
        );
    }
    if let Some(built) = drawn.built_height_m.filter(|built| differs(built, below_m)) {
        record.find(
            Severity::Warn,
            drawn.id,
            sentence!(
                "{} is {} high below what stands over it, drawn {}: forces are those of the drawing.",
                &opening.mark,
                length(built, 3),
                length(below_m, 3)
            ),
            sentence!("Put what is over it on the drawing where it stands on site."),
        );
    }
}

/// Greatest deflection of the transfer beams, m.
fn sag_over(record: &Record, opening: &PlacedOpening) -> f64 {
    let of_beam = |check: &&Check| check.owner == opening.drawn.id && check.check == CheckKind::Deflection;
    let checked = record.results.checks.iter().filter(of_beam).map(|check| check.demand / 1e3);
    let drawn = record.results.diagrams.iter().filter(|diagram| diagram.owner == opening.drawn.id);
    let full = drawn.flat_map(|diagram| &diagram.stations).map(|station| station.deflection_m.abs());
    checked.chain(full).fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{Role, Solid};
    use crate::scheme::Id;

    fn part(from: [f64; 3], to: [f64; 3], size_m: f64) -> Part {
        let solid = Solid::Bar { from, to, size_m: [size_m; 2], breadth_m: size_m };
        Part { mark: "P".into(), owner: Id(1), role: Role::Prop, item: "TUBE".into(), count: 1, solid }
    }

    /// A tube of 50 mm that rises by 4 for 3 across: its side lies 0.025 m off its axis, at (0.02, −0.015) by its foot,
    /// and is a metre up after 1.015 / 0.8 of its length.
    #[test]
    fn a_raking_tube_is_nearest_where_it_leaves_the_way() {
        let parts = vec![part([0.0, 1.0, 0.0], [1.2, 1.0, 1.6], 0.05), part([2.5, 1.0, 0.0], [2.5, 1.0, 3.0], 0.1)];
        let model = Model { parts, ..Model::default() };
        let [left, right] = nearest_beside(&model, 2.0, [0.0, 1.0]).map(|nearest| nearest.unwrap().at);
        assert!((left - Point::new(0.02 + 0.6 * 1.015 / 0.8, 1.0)).length() < 1e-8, "{left:?}");
        assert!((right - Point::new(2.45, 0.0)).length() < 1e-8, "{right:?}");
    }

    /// The same tube over a way that begins at 0.9 m: 0.88 / 0.6 of its length along it from its foot, less what the lower
    /// side lies below.
    #[test]
    fn a_raking_tube_hangs_into_the_way_by_its_lower_side() {
        let model = Model { parts: vec![part([0.0, 1.0, 0.0], [1.2, 1.0, 1.6], 0.05)], ..Model::default() };
        let lowest = lowest_above(&model, [0.9, 3.0], 0.0).unwrap().at;
        assert!((lowest - Point::new(0.9, 0.8 * 0.88 / 0.6 - 0.015)).length() < 1e-8, "{lowest:?}");
        assert!(lowest_above(&model, [1.3, 3.0], 0.0).is_none());
    }

    #[test]
    fn what_stands_on_the_floor_or_above_the_way_is_not_beside_it() {
        let parts = vec![part([0.0, 0.0, 0.0], [0.0, 2.0, 0.0], 0.0), part([0.0, 0.0, 3.0], [0.0, 2.0, 3.0], 0.2)];
        let model = Model { parts, ..Model::default() };
        assert!(nearest_beside(&model, 2.0, [0.0, 2.8]).iter().all(Option::is_none));
    }
}
