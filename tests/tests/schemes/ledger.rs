//! What holds for every scheme that can be drawn: nothing lost, nothing undefined, no side preferred.

use super::drawn::{self, Drawn, drawn};
use falsewright_core::Design;
use falsewright_core::results::Results;
use falsewright_core::scheme::{Corner, Cut, FaceRef, Id, Scheme};
use falsewright_tests::simple::solved;
use proptest::prelude::*;

/// Every number of the results that has a meaning.
fn numbers(results: &Results) -> impl Iterator<Item = (&str, f64)> {
    let checks = results.checks.iter().flat_map(|check| {
        let numbers = [check.demand, check.resistance, check.ratio, check.at.x, check.at.z];
        numbers.map(|number| (check.member.as_str(), number))
    });
    let ties = results.ties.iter().map(|tie| (tie.id.as_str(), tie.force_kn));
    let legs = results.legs.iter().map(|leg| (leg.id.as_str(), leg.axial_kn));
    let levels = results.ledger.iter().flat_map(|entry| &entry.levels);
    let ledger = levels.flat_map(|level| [level.into_kn, level.out_kn].map(|number| (level.level, number)));
    let clear = results.clearances.iter().flat_map(|room| [("room", room.width_m), ("room", room.height_m)]);
    let lines = results.diagrams.iter().flat_map(|diagram| {
        diagram.stations.iter().flat_map(|station| {
            let numbers = [station.s_m, station.moment_knm, station.shear_kn, station.deflection_m];
            numbers.map(|number| (diagram.member.as_str(), number))
        })
    });
    let pressures = results.pressures.iter().flat_map(|pressure| &pressure.points);
    let pressures = pressures.flat_map(|&(z, kpa)| [("pressure", z), ("pressure", kpa)]);
    checks.chain(ties).chain(legs).chain(ledger).chain(clear).chain(lines).chain(pressures)
}

/// Whether the program says that something cannot be solved, with what it says.
fn refused(design: &Design) -> Option<String> {
    let findings = design.results.findings.iter().map(|finding| finding.text.to_string());
    findings.into_iter().find(|text| {
        ["free to", "room for a single", "cannot be solved", "fewer than two", "tips over"]
            .iter()
            .any(|part| text.contains(part))
    })
}

/// Fails unless two sets of numbers agree within `rel` of the greatest of them and 1e-6.
fn same(what: &str, a: &[f64], b: &[f64], rel: f64) -> Result<(), TestCaseError> {
    prop_assert_eq!(a.len(), b.len(), "{}", what);
    let greatest = a.iter().fold(0.0, |most: f64, value| most.max(value.abs()));
    for (a, b) in a.iter().zip(b) {
        prop_assert!((a - b).abs() <= rel * greatest + 1e-6, "{}: {} and {}", what, a, b);
    }
    Ok(())
}

fn sorted(values: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut values: Vec<f64> = values.collect();
    values.sort_by(f64::total_cmp);
    values
}

fn ties(design: &Design) -> Vec<f64> {
    design.results.ties.iter().map(|tie| tie.force_kn).collect()
}

fn legs(design: &Design) -> Vec<f64> {
    design.results.legs.iter().map(|leg| leg.axial_kn).collect()
}

fn demands(design: &Design) -> Vec<f64> {
    design.results.checks.iter().map(|check| check.demand).collect()
}

proptest! {
    #![proptest_config(drawn::config(300))]

    /// What comes in goes out at every level, and every number is one. Schemes that the program says it cannot solve
    /// have no such entries.
    #[test]
    fn the_ledger_closes(drawn in drawn()) {
        let scheme = drawn.scheme();
        prop_assert_eq!(scheme.validate(), Ok(()));
        let design = solved(&scheme);
        for (what, number) in numbers(&design.results) {
            prop_assert!(!number.is_nan(), "{}: {}", what, number);
        }
        for entry in &design.results.ledger {
            prop_assert!(entry.difference < 1e-6, "{:#?}\n{:#?}", entry, design.results.findings);
        }
        let of = |case: &'static str| design.results.ledger.iter().filter(move |entry| entry.case.starts_with(case));
        let horizontal = of("horizontal").count();
        let vertical = of("vertical").filter(|entry| entry.levels.len() > 1).count();
        let props = design.model.ties.iter().filter(|row| row.to.is_none()).count();
        if refused(&design).is_none() {
            prop_assert!(horizontal > 0);
            prop_assert_eq!(of("empty").count(), props);
            prop_assert_eq!(vertical, 15 * design.model.falsework.len());
        }
    }

    /// Where the drawing lies on its sheet changes no force.
    #[test]
    fn the_origin_does_not_matter(drawn in drawn(), by_m in -300.0..300.0f64) {
        let scheme = drawn.scheme();
        let (here, there) = (solved(&scheme), solved(&moved(&scheme, by_m)));
        same("ties", &ties(&here), &ties(&there), 1e-6)?;
        same("legs", &legs(&here), &legs(&there), 1e-6)?;
        same("demands", &demands(&here), &demands(&there), 1e-6)?;
    }

    /// Left and right are alike, where no diagonals lean to one side.
    #[test]
    fn a_mirror_image_bears_the_same(drawn in drawn()) {
        let plain = Drawn { braced: false, opened: false, ..drawn };
        let scheme = plain.scheme();
        let (left, right) = (solved(&scheme), solved(&mirrored(&scheme)));
        let forces = |design: &Design| sorted(ties(design).into_iter());
        same("ties", &forces(&left), &forces(&right), 1e-6)?;
        let forces = |design: &Design| sorted(legs(design).into_iter());
        same("legs", &forces(&left), &forces(&right), 1e-6)?;
        let all = |design: &Design| sorted(design.results.checks.iter().map(|check| check.demand));
        same("demands", &all(&left), &all(&right), 1e-5)?;
    }

    /// The pressure of concrete is in proportion to its density, by either method, and so is all that follows from it.
    #[test]
    fn ties_follow_the_density(drawn in drawn(), factor in 0.5..1.8f64) {
        let scheme = drawn.scheme();
        let mut denser = scheme.clone();
        denser.concrete.unit_weight_kn_m3 *= factor;
        let times: Vec<f64> = ties(&solved(&scheme)).iter().map(|force| force * factor).collect();
        same("ties", &times, &ties(&solved(&denser)), 1e-6)?;
    }
}

fn moved(scheme: &Scheme, by_m: f64) -> Scheme {
    at(scheme, |x| x + by_m)
}

/// Its mirror image about x = 0; elements keep their ids.
fn mirrored(scheme: &Scheme) -> Scheme {
    let mut image = at(scheme, |x| -x);
    let first = |ring: &[Corner], corner: Id| {
        let index = ring.iter().position(|other| other.id == corner)?;
        // What was the edge after a corner is now the edge before it, named after the next corner in the other order.
        Some(ring[(index + 1) % ring.len()].id)
    };
    let section = &scheme.section;
    let renamed = |face: FaceRef| {
        let mut rings = std::iter::once(&section.outline).chain(section.cells.iter().map(|cell| &cell.corners));
        let corner = if face.cut { face.corner } else { rings.find_map(|ring| first(ring, face.corner)).unwrap() };
        FaceRef { corner, ..face }
    };
    for ring in
        std::iter::once(&mut image.section.outline).chain(image.section.cells.iter_mut().map(|c| &mut c.corners))
    {
        ring.reverse();
        for corner in ring {
            corner.cut = corner.cut.map(|cut| Cut { before_m: cut.after_m, after_m: cut.before_m });
        }
    }
    image.shutters.iter_mut().for_each(|shutter| shutter.face = renamed(shutter.face));
    for falsework in &mut image.falsework {
        falsework.soffit = renamed(falsework.soffit);
        falsework.leg_lines.reverse();
    }
    image
}

fn at(scheme: &Scheme, place: impl Fn(f64) -> f64) -> Scheme {
    let mut moved = scheme.clone();
    let cells = moved.section.cells.iter_mut().flat_map(|cell| &mut cell.corners);
    moved.section.outline.iter_mut().chain(cells).for_each(|corner| corner.x_m = place(corner.x_m));
    let lines = moved.falsework.iter_mut().flat_map(|falsework| &mut falsework.leg_lines);
    lines.for_each(|line| line.x_m = place(line.x_m));
    moved.openings.iter_mut().for_each(|opening| opening.left_m = place(opening.left_m));
    moved
}
