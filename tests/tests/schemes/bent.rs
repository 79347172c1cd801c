//! Bents, diagonals and access openings of small schemes against statics and three moments.

use falsewright_core::Design;
use falsewright_core::model::FaceKind;
use falsewright_core::results::CheckKind;
use falsewright_core::scheme::{Corner, Direction, Id, Lateral, Scheme};
use falsewright_tests::assert_close;
use falsewright_tests::simple::{
    assert_closes, box_scheme, check, clear_way, demand, face, falsework, fronts, leg_kn, solved, stiff_leg,
};
use falsewright_tests::three_moments::Beam;
use std::f64::consts::PI;

/// kN per kg.
const G: f64 = 9.81e-3;
/// The transfer beams reach 0.15 m beyond the outer trestle legs: 2 × 40.29 kg/m of it.
const BEAM_ENDS: f64 = 2.0 * 51.32e-4 * 7850.0 * 0.15 * G;

/// A box with a cell this wide from x = 0.4 m and 4 m high, its floor at 0.5 m; one bent a metre of bay.
fn bents(width_m: f64, haunch_m: f64, direction: Direction, lines_m: &[f64]) -> Scheme {
    let mut scheme = box_scheme(width_m, 4.0, haunch_m);
    scheme.bays.length_m = 2.0;
    let soffit = face(&scheme, FaceKind::Soffit, 900, 0.4 + width_m / 2.0);
    scheme.falsework = vec![falsework(50, soffit, direction, lines_m)];
    scheme.items = vec![stiff_leg()];
    scheme
}

/// Two lines of legs 2.4 m apart with one diagonal from the left foot to the right head.
fn braced(haunch_m: f64, horizontal_fraction: f64) -> Scheme {
    let mut scheme = bents(4.0, haunch_m, Direction::Across, &[1.2, 3.6]);
    scheme.falsework[0].lateral = Lateral::Braced;
    scheme.falsework[0].leg_lines[0].braced = true;
    scheme.loads.horizontal_fraction = horizontal_fraction;
    scheme
}

/// Of the diagonal by its horizontal run: legs 4.5 − 0.0176 − 0.4 − 0.51 = 3.5724 m high, 2.4 m apart.
fn slope() -> f64 {
    (3.5724f64 * 3.5724 + 2.4 * 2.4).sqrt() / 2.4
}

/// The horizontal load is a part of all vertical load, and a single diagonal takes all of it: from 2.5 to 5 % the
/// force grows by 2.5 % of V times length by run. V per bent of 1 m: 4 × 14.5 kPa, eleven secondaries of 5 kg/m, 4 m
/// of HE 200 B, two legs LEG60 (5.554 kg/m and 11 kg), the diagonal (4.3038 m of 4.370 kg/m, couplers 2.4 kg).
#[test]
fn diagonal_takes_the_horizontal_load() {
    let force = |fraction: f64| demand(&solved(&braced(0.0, fraction)), "F1 diagonal", CheckKind::Coupler);
    let vertical =
        4.0 * 14.5 + G * (11.0 * 5.0 + 4.0 * 78.08e-4 * 7850.0 + 2.0 * (5.554 * 3.5724 + 11.0) + 4.3038 * 4.370 + 2.4);
    let factor = second_order(&braced(0.0, 0.025));
    assert_close("2.5 % more", force(0.05) - force(0.025), factor * 0.025 * vertical * slope(), 1e-4);
    // At least 1 % acts.
    assert_close("1 %", force(0.0), force(0.01), 1e-12);
    assert_close("4 % more", force(0.05) - force(0.0), factor * 0.04 * vertical * slope(), 1e-4);
}

/// The diagonal pulls down or pushes up its right head by H times height by run, and its left foot: the right leg and
/// the base of the left one bear that as well.
#[test]
fn legs_bear_what_the_diagonal_brings() {
    // Legs this near to the walls bear most under the full pour, like the diagonal.
    let [less, more] = [0.025, 0.05].map(|fraction| {
        let mut scheme = braced(0.0, fraction);
        let lines = &mut scheme.falsework[0].leg_lines;
        (lines[0].x_m, lines[1].x_m) = (0.5, 4.3);
        solved(&scheme)
    });
    let added = |member: &str, kind| demand(&more, member, kind) - demand(&less, member, kind);
    let along_diagonal = added("F1 diagonal", CheckKind::Coupler);
    let upright = along_diagonal * 3.5724 / (3.5724f64 * 3.5724 + 3.8 * 3.8).sqrt();
    assert!(upright > 1.0);
    assert_close("right leg", added("L2 leg", CheckKind::Buckling), upright, 1e-6);
    assert_close("right leg", leg_kn(&more, "L2.1") - leg_kn(&less, "L2.1"), upright, 1e-6);
    assert!(added("L1 leg", CheckKind::Buckling).abs() < 1e-9);
    let pressure = |design, line| demand(design, line, CheckKind::BasePressure);
    let area_m2 = leg_kn(&less, "L2.1") / pressure(&less, "L2 base");
    let left = (pressure(&more, "L1 base") - pressure(&less, "L1 base")) * area_m2;
    assert_close("left base", left, upright, 1e-6);
}

/// By how much the horizontal loads grow, 1 / (1 − 1/α), from the critical load factor that is reported.
fn second_order(scheme: &Scheme) -> f64 {
    let critical = check(&solved(scheme), "F1 bent", CheckKind::Stability).resistance;
    if critical < 10.0 { 1.0 / (1.0 - 1.0 / critical) } else { 1.0 }
}

/// Own weight of the stiff leg: area of a tube 900 × 440 and jacks of 10 kg.
fn stiff_leg_kn(length_m: f64) -> f64 {
    (7850.0 * PI / 4.0 * (0.9f64 * 0.9 - 0.02 * 0.02) * length_m + 10.0) * G
}

/// Concrete from the left to five sixths thrusts on the left haunch of 0.3 m only: fluid of 25 kN/m³, 0.5 m deep at
/// its top and 0.8 m at its foot, on 0.3 m of height: 25 × 0.65 × 0.3 = 4.875 kN/m. Beside it act 1 % of the vertical
/// load then. Legs that do not shorten leave the diagonal to the horizontal load.
#[test]
fn thrust_on_a_haunch_goes_to_the_diagonal() {
    let mut scheme = braced(0.3, 0.0);
    scheme.falsework[0].leg = "STIFF_LEG".into();
    let placed = 4.0 * 5.0 / 6.0;
    let vertical = (placed * 0.5 + 0.3 * 0.3 / 2.0) * 25.0
        + placed * 1.5
        + 4.0 * 0.5
        + G * (11.0 * 5.0 + 4.0 * 78.08e-4 * 7850.0 + 4.3038 * 4.370 + 2.4)
        + 2.0 * stiff_leg_kn(3.5724);
    let horizontal = (0.01 * vertical + 4.875) * second_order(&scheme);
    assert_close("diagonal", demand(&solved(&scheme), "F1 diagonal", CheckKind::Coupler), horizontal * slope(), 1e-3);
}

/// A clear way of 3 m from x = 2.9 m, 2.8 m high, on two UB 305 × 165 × 40 for each bent.
fn opening(scheme: &mut Scheme, trestle: &str) {
    scheme.openings = vec![clear_way(trestle, 0.9)];
}

/// Trestle legs: 2.9 − 0.25 for guards − 0.05 tolerance − 0.1 m of half a base = 2.5 m and 0.9 m to its left; 6.3 m and
/// 0.9 m to its right.
const TRESTLES: [f64; 4] = [1.6, 2.5, 6.3, 7.2];
/// With the posts on them, and three stubs between.
const HEADS: [f64; 7] = [1.6, 2.5, 3.6, 4.4, 5.2, 6.3, 7.2];

/// The way between the trestles' bases: 6.2 − 2.6 = 3.6 m, less guards and tolerance 3.05 m; a thick leg at the same
/// places leaves 3.8 − 0.9 = 2.9 m, less 0.55. Its height: 3 m less deflection and tolerance.
#[test]
fn clear_way_by_hand() {
    let mut scheme = bents(8.0, 0.0, Direction::Along, &[3.6, 4.4, 5.2]);
    for (trestle, expected) in [("LEG76", 3.05), ("STIFF_LEG", 2.35)] {
        opening(&mut scheme, trestle);
        let design = solved(&scheme);
        let clearance = &design.results.clearances[0];
        assert_close("width", clearance.width_m, expected, 1e-9);
        if trestle == "STIFF_LEG" {
            // It reaches 0.05 m into the way as drawn, where nothing is clear above the floor then.
            assert!(clearance.height_m < 0.0, "{clearance:?}");
            continue;
        }
        let sag_m = demand(&design, "A1 transfer beam", CheckKind::Deflection) / 1e3;
        let height_m = 3.0 - sag_m - 0.05;
        // What the trestles shorten by is taken off as well.
        assert!(sag_m > 0.0 && clearance.height_m <= height_m + 1e-9, "{clearance:?}");
        assert!(clearance.height_m > height_m - 1e-3, "{clearance:?}");
    }
}

/// A footway of 0.15 m above the rest of the floor, from x = 5 m: what is clear above it is lower by that.
#[test]
fn clear_way_over_a_step_in_the_floor() {
    let mut scheme = bents(8.0, 0.0, Direction::Along, &[3.6, 4.4, 5.2]);
    opening(&mut scheme, "LEG76");
    let level = solved(&scheme).results.clearances[0].height_m;
    let ring = &mut scheme.section.cells[0].corners;
    ring[1].z_m = 0.65;
    for (place, id, z_m) in [(1, 701, 0.5), (2, 702, 0.65)] {
        ring.insert(place, Corner { id: Id(id), x_m: 5.0, z_m, cut: None });
    }
    scheme.section.joints[0].z_m = 0.65;
    assert_close("height", solved(&scheme).results.clearances[0].height_m, level - 0.15, 1e-3);
}

/// What is measured on site is taken instead of what is drawn, with no tolerance: guards of 0.25 m and deflection only.
#[test]
fn clear_way_as_built() {
    let mut scheme = bents(8.0, 0.0, Direction::Along, &[3.6, 4.4, 5.2]);
    opening(&mut scheme, "LEG76");
    let told =
        |design: &Design| design.results.findings.iter().any(|it| it.text.contains("forces are those of the drawing"));
    let drawn = solved(&scheme);
    // Between the bases 3.6 m as drawn.
    scheme.openings[0].built_width_m = Some(3.56);
    scheme.openings[0].built_height_m = Some(2.95);
    let built = solved(&scheme);
    let [before, after] = [&drawn, &built].map(|design| &design.results.clearances[0]);
    assert_close("width", after.width_m, 3.06, 1e-9);
    // Both lose the same deflection, the drawn 3 m the tolerance of 0.05 m as well.
    assert_close("height", after.height_m, before.height_m, 1e-9);
    assert_eq!(after.width_between, "as built");
    assert_close("ratio", check(&built, "A1 clear width", CheckKind::Clearance).ratio, 3.0 / 3.06, 1e-9);
    assert_eq!(check(&built, "A1 clear width", CheckKind::Clearance).source, "measured on site");
    assert!(!told(&built), "within the tolerance");
    // Too narrow for what is wanted, and not where it is drawn.
    scheme.openings[0].built_width_m = Some(3.4);
    let narrow = solved(&scheme);
    assert!(check(&narrow, "A1 clear width", CheckKind::Clearance).fails() && told(&narrow));
    // The same of its height: drawn 3 m.
    scheme.openings[0].built_width_m = None;
    scheme.openings[0].built_height_m = Some(3.1);
    assert!(told(&solved(&scheme)));
}

/// The transfer beams of one bent under one position of the front, and the forces of posts and stubs.
type State = (Beam, [f64; 7]);

/// Secondaries across run over posts on the trestles and over stubs between, which stand on the transfer beams: their
/// reactions, the beams' own weight (51.3 cm²) and three moments give moment, trestle forces and deflection. I of one
/// beam is 8 503 cm⁴ (EN 10365 tables); trestles do not settle, and are too heavy to lift.
#[test]
fn transfer_beam_over_an_opening() {
    let mut scheme = bents(8.0, 0.0, Direction::Along, &[3.6, 4.4, 5.2]);
    opening(&mut scheme, "STIFF_LEG");
    let design = solved(&scheme);
    // Each of two bents carries 1 m of the bay, with six secondaries in 2 m of it.
    let always = 0.5 + 6.0 * 5.0 * G / 2.0;
    let primary = 78.08e-4 * 7850.0 * G;
    let stub = G * (5.554 * (4.5 - 0.0176 - 0.4 - 3.8034) + 11.0);
    let beams_kn_m = 2.0 * 51.32e-4 * 7850.0 * G;
    let states: Vec<State> = fronts(0.4, 8.4)
        .into_iter()
        .map(|[from, to]| {
            let lines = vec![[0.4, 8.4, always, always], [from, to, 14.0, 14.0]];
            let secondaries = Beam { ends: [0.4, 8.4], supports: HEADS.to_vec(), lines, points: vec![] };
            let secondaries = secondaries.resting();
            let forces = HEADS.map(|head| secondaries.reaction_at(head) + primary + stub);
            let beams = Beam {
                ends: [1.6, 7.2],
                supports: TRESTLES.to_vec(),
                points: (2..5).map(|i| (HEADS[i], forces[i])).collect(),
                lines: vec![[1.6, 7.2, beams_kn_m, beams_kn_m]],
            };
            (beams, forces)
        })
        .collect();
    let most = |of: &dyn Fn(&State) -> f64| states.iter().map(of).fold(0.0, f64::max);

    for (mark, head) in [("L1", 2), ("L2", 3), ("L3", 4), ("A1t1 post", 0), ("A1t2 post", 1)] {
        assert_close(mark, leg_kn(&design, &format!("{mark}.1")), most(&|(_, forces)| forces[head]), 1e-3);
    }
    let moment = most(&|(beams, _)| beams.greatest_moment()) / 2.0;
    assert_close("moment of one beam", demand(&design, "A1 transfer beam", CheckKind::Bending), moment, 1e-3);
    let sag = most(&|(beams, _)| beams.sag(2.5, 6.3)) / (2.0 * 210e6 * 8503e-8);
    assert_close("deflection", demand(&design, "A1 transfer beam", CheckKind::Deflection), sag * 1e3, 5e-3);
    // On a trestle leg: the beams' reaction, the post on it, itself, and half of the diagonal of its trestle.
    let diagonal = G * (4.370 * (0.9f64 * 0.9 + 2.99 * 2.99).sqrt() + 2.4) / 2.0;
    let ends = stiff_leg_kn(2.99) + diagonal + BEAM_ENDS;
    let inner = most(&|(beams, forces)| beams.solve().reactions[1] + forces[1]) + stiff_leg_kn(2.99) + diagonal;
    assert_close("inner trestle leg", leg_kn(&design, "A1t2.1"), inner, 1e-3);
    let outer = most(&|(beams, forces)| beams.solve().reactions[0] + forces[0]) + ends - diagonal;
    let bearing = demand(&design, "A1 transfer beam", CheckKind::Bearing);
    assert_close("on a trestle", bearing, inner / 2.0, 1e-3);
    assert_close("outer trestle leg", leg_kn(&design, "A1t1.1"), outer, 1e-3);
    assert_closes(&design, "vertical", 1e-9);
}
