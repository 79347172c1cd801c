//! Soffit falsework of small schemes against forces worked out by statics and three moments.

use falsewright_core::model::FaceKind;
use falsewright_core::results::CheckKind;
use falsewright_core::scheme::{Basis, Direction, Scheme};
use falsewright_tests::assert_close;
use falsewright_tests::simple::{
    assert_closes, beam_of, box_scheme, demand, face, falsework, fronts, leg_kn, solved, spaced, stiff_leg,
};
use falsewright_tests::three_moments::Beam;
use std::f64::consts::PI;

/// kN per kg.
const G: f64 = 9.81e-3;
/// Clear width of the soffit, and the formwork on it; concrete is 0.5 m deep.
const ENDS: [f64; 2] = [0.4, 4.4];
const FORMWORK_KPA: f64 = 0.5;
const CONCRETE_KPA: f64 = 12.5;
const OPERATIONS_KPA: f64 = 1.5;
/// Of a secondary TB20, and of HE 200 B by its area of 78.08 cm² (EN 10365).
const SECONDARY_KN_M: f64 = 5.0 * G;
const PRIMARY_KN_M: f64 = 78.08e-4 * 7850.0 * G;
/// From a base plate 10 mm thick on the floor at 0.5 m to the primaries under the soffit at 3.5 m: board 17.6 mm,
/// beams of 0.2 and 0.2 m.
const LEG_M: f64 = 3.5 - 0.0176 - 0.4 - 0.51;

/// Share of the bay of each of three bents 0.5, 1.5 and 2.5 m along it. Over the outer ones M = −0.125 w; three
/// moments give −0.0625 w over the middle one; so 1 + 2 (0.0625 − 0.125) = 0.875 m for it.
const WIDTHS: [f64; 3] = [1.0625, 0.875, 1.0625];

/// A box with a cell 4 m wide and 3 m high; bay 3 m.
fn soffit(direction: Direction, lines_m: &[f64]) -> Scheme {
    let mut scheme = box_scheme(4.0, 3.0, 0.0);
    scheme.bays.length_m = 3.0;
    let soffit = face(&scheme, FaceKind::Soffit, 900, 2.4);
    scheme.falsework = vec![falsework(50, soffit, direction, lines_m)];
    scheme.items = vec![stiff_leg(), beam_of("LIGHT", 900.0)];
    scheme
}

/// Own weight of a LEG60: a tube 60.3 × 4.0 and jacks of 11 kg.
fn leg_weight_kn() -> f64 {
    let area = PI / 4.0 * (0.0603f64 * 0.0603 - 0.0523 * 0.0523);
    (7850.0 * area * LEG_M + 11.0) * G
}

/// On supports across the soffit, for one metre of bay: what always lies there and what is being placed.
fn across(supports: &[f64], front: [f64; 2], always: f64, placed: f64) -> Beam {
    let lines = vec![[ENDS[0], ENDS[1], always, always], [front[0], front[1], placed, placed]];
    Beam { ends: ENDS, supports: supports.to_vec(), lines, points: vec![] }
}

/// Two legs at 1.2 and 3.6 m under a primary across, loaded by eleven secondaries: the left one by moments about the
/// right one, for the front at its worst. With 1.35 on permanent and 1.5 on variable loads in limit state, where a tenth of
/// the concrete is heaped on 3 m at the front.
#[test]
fn two_legs_by_moments() {
    let left_leg = |width: f64, [from, to]: [f64; 2], permanent: f64, variable: f64, heaped_kpa: f64| {
        let placed = width * (to - from) * (CONCRETE_KPA * permanent + OPERATIONS_KPA * variable);
        let always = 4.0 * (width * FORMWORK_KPA + PRIMARY_KN_M) + 11.0 * width * SECONDARY_KN_M;
        // From the left wall the heap ends where the front stands, from elsewhere nothing governs.
        let heap = [(to - 3.0).max(from), to];
        let heaped = width * (heap[1] - heap[0]) * heaped_kpa * variable;
        placed * (3.6 - (from + to) / 2.0) / 2.4
            + heaped * (3.6 - (heap[0] + heap[1]) / 2.0) / 2.4
            + permanent * (always / 2.0 + leg_weight_kn())
    };
    let worst = |width: f64, permanent: f64, variable: f64, heaped_kpa: f64| {
        let from_left = fronts(ENDS[0], ENDS[1]).into_iter().filter(|front| heaped_kpa == 0.0 || front[0] == ENDS[0]);
        from_left.map(|front| left_leg(width, front, permanent, variable, heaped_kpa)).fold(0.0, f64::max)
    };
    let heaped_kpa = 0.1 * CONCRETE_KPA;
    let mut scheme = soffit(Direction::Across, &[1.2, 3.6]);
    let design = solved(&scheme);
    for (bent, width) in (1..).zip(WIDTHS) {
        for line in ["L1", "L2"] {
            assert_close(line, leg_kn(&design, &format!("{line}.{bent}")), worst(width, 1.0, 1.0, 0.0), 1e-5);
        }
    }
    assert_close("checked", demand(&design, "L1 leg", CheckKind::Buckling), worst(WIDTHS[0], 1.0, 1.0, 0.0), 1e-5);
    assert_close("on a leg", demand(&design, "F1 primary", CheckKind::Bearing), worst(WIDTHS[0], 1.0, 1.0, 0.0), 1e-5);
    assert_closes(&design, "vertical", 1e-9);

    scheme.basis = Basis::LimitStateB1;
    let factored = solved(&scheme);
    let expected = worst(WIDTHS[0], 1.35, 1.5, heaped_kpa);
    assert_close("factored", demand(&factored, "L1 leg", CheckKind::Buckling), expected, 1e-5);
    assert_close("factored", demand(&factored, "L2 leg", CheckKind::Bearing), expected, 1e-5);
    assert_close("unfactored force", leg_kn(&factored, "L1.1"), worst(WIDTHS[0], 1.0, 1.0, heaped_kpa), 1e-5);
}

/// Primaries along, so that secondaries span three lines of legs and lift off where they would pull: end and inner legs,
/// secondaries, primaries and board.
#[test]
fn three_lines_under_secondaries_across() {
    let lines = [0.9, 2.4, 3.9];
    let design = solved(&soffit(Direction::Along, &lines));
    // Eight secondaries over the bay, 0.1 m from its ends and 0.4 m apart.
    let own = 8.0 * SECONDARY_KN_M / 3.0;
    let cases: Vec<Beam> = fronts(ENDS[0], ENDS[1])
        .into_iter()
        .map(|front| across(&lines, front, FORMWORK_KPA + own, CONCRETE_KPA + OPERATIONS_KPA).resting())
        .collect();
    let most = |line: usize| cases.iter().map(|case| case.reaction_at(lines[line])).fold(0.0, f64::max);
    let places: Vec<f64> = (0..8).map(|i| 0.1 + 0.4 * f64::from(i)).collect();
    let board = Beam::uniform([0.0, 3.0], &places, 1.0);
    let shares = board.solve().reactions;
    let primary = Beam {
        ends: [0.0, 3.0],
        supports: vec![0.5, 1.5, 2.5],
        points: places.iter().copied().zip(shares.iter().copied()).collect(),
        lines: vec![],
    };
    for (line, mark) in ["L1", "L2", "L3"].into_iter().enumerate() {
        let on_primary = most(line) + PRIMARY_KN_M;
        for (bent, width) in (1..).zip(primary.solve().reactions) {
            let expected = on_primary * width + leg_weight_kn();
            assert_close(mark, leg_kn(&design, &format!("{mark}.{bent}")), expected, 1e-5);
        }
    }
    assert_close("end and end", leg_kn(&design, "L1.1"), leg_kn(&design, "L3.1"), 1e-9);

    let load = CONCRETE_KPA + OPERATIONS_KPA + FORMWORK_KPA;
    assert_close("board", demand(&design, "F1 facing", CheckKind::Bending), load * board.greatest_moment(), 1e-5);
    let widest = shares.iter().copied().fold(0.0, f64::max);
    let secondary = cases.iter().map(Beam::greatest_moment).fold(0.0, f64::max);
    assert_close("secondary", demand(&design, "F1 secondary", CheckKind::Bending), secondary * widest, 1e-4);
    let on_primary = (0..3).map(most).fold(0.0, f64::max) + PRIMARY_KN_M;
    assert_close(
        "primary",
        demand(&design, "F1 primary", CheckKind::Bending),
        on_primary * primary.greatest_moment(),
        1e-4,
    );
    assert_closes(&design, "vertical", 1e-9);
}

/// Eleven secondaries 0.38 m apart under the board, each over three bents 1 m apart with overhangs of 0.5 m, where
/// 0.125 w governs, w with its own weight.
#[test]
fn board_and_secondaries_along() {
    let design = solved(&soffit(Direction::Across, &[1.2, 3.6]));
    let places: Vec<f64> = (0..11).map(|i| 0.5 + 0.38 * f64::from(i)).collect();
    let cases: Vec<Beam> = fronts(ENDS[0], ENDS[1])
        .into_iter()
        .map(|front| across(&places, front, FORMWORK_KPA, CONCRETE_KPA + OPERATIONS_KPA))
        .collect();
    let moment = cases.iter().map(Beam::greatest_moment).fold(0.0, f64::max);
    assert_close("board", demand(&design, "F1 facing", CheckKind::Bending), moment, 1e-4);
    let reactions = cases.iter().flat_map(|case| case.solve().reactions);
    let load = reactions.fold(0.0, f64::max) + SECONDARY_KN_M;
    assert_close("secondary", demand(&design, "F1 secondary", CheckKind::Bending), 0.125 * load, 1e-5);
    assert_close("on a primary", demand(&design, "F1 secondary", CheckKind::Bearing), WIDTHS[0] * load, 1e-5);
}

/// The primary across on two legs: its greatest moment over all fronts.
#[test]
fn primary_on_two_legs() {
    let mut scheme = soffit(Direction::Across, &[1.2, 3.6]);
    scheme.falsework[0].secondaries = spaced(0.02, 0.04);
    let design = solved(&scheme);
    // Secondaries 40 mm apart: 3.96 / 0.04 = 99 gaps.
    let always = WIDTHS[0] * (FORMWORK_KPA + 100.0 * SECONDARY_KN_M / 4.0) + PRIMARY_KN_M;
    let placed = WIDTHS[0] * (CONCRETE_KPA + OPERATIONS_KPA);
    let moments =
        fronts(ENDS[0], ENDS[1]).into_iter().map(|front| across(&[1.2, 3.6], front, always, placed).greatest_moment());
    let expected = moments.fold(0.0, f64::max);
    assert_close("primary", demand(&design, "F1 primary", CheckKind::Bending), expected, 2e-3);
}

/// Three legs at 0.8, 2.4 and 4.0 m with concrete of 50 kN/m³ from the left to the middle: the right leg would pull at
/// its base, lifts off and hangs; the others follow by moments.
#[test]
fn a_lifted_leg_hangs_from_the_primary() {
    let mut scheme = soffit(Direction::Across, &[0.8, 2.4, 4.0]);
    scheme.concrete.unit_weight_kn_m3 = 50.0;
    scheme.falsework[0].primary = "LIGHT".into();
    let design = solved(&scheme);
    let told = |leg: &str| design.results.findings.iter().any(|finding| finding.text.starts_with(leg));
    assert!(told("L3 lifts off its base") && told("L1 lifts off its base"), "{:#?}", design.results.findings);
    assert!(!told("L2 lifts off its base"));
    // About the middle leg formwork and secondaries balance, and so do the left leg's own weight and the lifted leg.
    let left = |to: f64| {
        let placed = WIDTHS[0] * (2.0 * CONCRETE_KPA + OPERATIONS_KPA) * (to - 0.4);
        placed * (2.4 - (0.4 + to) / 2.0) / 1.6
    };
    let expected = (1..4).map(|k| left(0.4 + f64::from(k) * 4.0 / 6.0)).fold(0.0, f64::max);
    assert_close("left leg", leg_kn(&design, "L1.1"), expected, 1e-5);
    assert_closes(&design, "vertical", 1e-9);
}

/// Haunches of 0.3 m: 4 × 0.5 + 2 × 0.3² / 2 = 2.09 m² of concrete on the falsework, 25 kN/m³ over 3 m, and 2 kPa on
/// 12 m². The rest of the pour stands on the walls below.
#[test]
fn haunches_weigh_on_the_falsework() {
    let mut scheme = box_scheme(4.0, 3.0, 0.3);
    scheme.bays.length_m = 3.0;
    let soffit = face(&scheme, FaceKind::Soffit, 900, 2.4);
    scheme.falsework = vec![falsework(50, soffit, Direction::Across, &[1.2, 3.6])];
    let design = solved(&scheme);
    let full = design.results.ledger.iter().find(|entry| entry.case == "vertical, full").unwrap();
    assert_close("on the board", full.levels[0].into_kn, 2.09 * 25.0 * 3.0 + 2.0 * 12.0, 1e-9);
    let ground = full.levels.last().unwrap().out_kn;
    let own = 11.0 * 3.0 * SECONDARY_KN_M + 3.0 * (4.0 * PRIMARY_KN_M + 2.0 * leg_weight_kn());
    assert_close("on the ground", ground, 2.09 * 25.0 * 3.0 + 24.0 + own, 1e-5);
    assert_closes(&design, "vertical", 1e-9);
}

/// A box cast in one pour has no floor yet when its roof is poured.
#[test]
fn a_floor_of_the_same_pour_is_told_of() {
    let told = |scheme: &Scheme| {
        let findings = solved(scheme).results.findings;
        findings.iter().any(|finding| finding.text.contains("cast in the same pour"))
    };
    let mut scheme = soffit(Direction::Across, &[1.2, 3.6]);
    assert!(!told(&scheme));
    scheme.section.joints.clear();
    scheme.falsework[0].soffit.pour = falsewright_core::scheme::FaceRef::LOWEST;
    assert!(told(&scheme));
}
