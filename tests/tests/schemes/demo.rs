//! The Heron Lane demo: everything within its resistance, the lane clear, every force accounted for.

use falsewright_core::results::{Check, CheckKind, Severity};
use falsewright_core::scheme::{Scheme, heron_lane};
use falsewright_core::{Design, design};
use falsewright_tests::assert_close;
use falsewright_tests::simple::{assert_closes, demand, solved};

fn heron() -> (Scheme, Design) {
    let scheme = heron_lane().expect("a readable demo");
    let design = solved(&scheme);
    (scheme, design)
}

#[test]
fn every_load_is_accounted_for() {
    let (_, design) = heron();
    assert_closes(&design, "horizontal", 1e-3);
    assert_closes(&design, "vertical", 1e-3);
    let count = |pour: &str, case: &str| {
        design.results.ledger.iter().filter(|entry| entry.pour == pour && entry.case.starts_with(case)).count()
    };
    // Two walls of two shutters; two shutters on raking props that stand empty; what those lift at each wall, and the
    // weight of the pour. P2 has thirteen positions of the front besides, the stages before and after, and what pushes
    // sideways at each of the three.
    assert_eq!(["horizontal", "empty", "vertical", "sideways"].map(|case| count("P1", case)), [2, 2, 3, 0]);
    assert_eq!(["horizontal", "empty", "vertical", "sideways"].map(|case| count("P2", case)), [2, 2, 18, 3]);
}

#[test]
fn nothing_is_overloaded_and_nothing_is_wrong() {
    let (_, design) = heron();
    for check in &design.results.checks {
        assert!(check.ratio <= 1.0, "{check:#?}");
    }
    for finding in &design.results.findings {
        assert_eq!(finding.severity, Severity::Note, "{finding:#?}");
    }
    for member in ["S5 primary", "S6 secondary", "F1 primary", "A1 transfer beam", "A1t2 trestle leg", "F1 diagonal"] {
        assert!(design.results.checks.iter().any(|check| check.member == member && check.ratio > 0.1), "{member}");
    }
}

/// The lane is drawn as wide as it goes: that tells nothing of what bears. Wanted wider than it is, it is the worst.
#[test]
fn the_worst_ratio_is_of_what_bears_or_of_room_that_is_short() {
    let (mut scheme, design) = heron();
    let worst = design.results.governing().expect("checks");
    let room = |check: &Check| check.check == CheckKind::Clearance;
    let greatest = design.results.checks.iter().map(|check| check.ratio).fold(0.0, f64::max);
    assert!(!room(worst) && worst.ratio < greatest, "{worst:#?}");
    assert!(design.results.checks.iter().any(|check| room(check) && check.ratio == greatest));

    scheme.limits.access_tolerance_m += 0.3;
    let design = solved(&scheme);
    let worst = design.results.governing().expect("checks");
    assert!(room(worst) && worst.ratio > 1.0, "{worst:#?}");
    assert_eq!(design.results.governing_of(scheme.openings[0].id).map(|check| check.ratio), Some(worst.ratio));
}

/// The lane wanted is 3.5 m wide and 3.6 m high.
#[test]
fn the_site_lane_is_clear() {
    let (scheme, design) = heron();
    assert!(scheme.openings[0].width_m >= 3.5 && scheme.openings[0].height_m >= 3.6);
    let lane = &design.results.clearances[0];
    assert!(lane.width_m >= 3.5 && lane.height_m >= 3.6, "{lane:?}");
}

/// Ties of 160 kN, and the sum of all forces on one wall: pressure 57.4 kPa at most (CIRIA Report 108 with
/// R = 15 / (2 × 0.45 × 10) = 1.667 m/h, T = 12 °C, C2 = 0.45, H = 4.8 m) on the outer shutter over a bay of 10 m.
#[test]
fn the_ties_bear_the_pressure() {
    let (_, design) = heron();
    for row in ["T3 tie", "T4 tie", "T5 tie", "T6 tie", "T7 tie", "T8 tie", "T9 tie", "T10 tie"] {
        let check = design.results.checks.iter().find(|check| check.member == row).unwrap();
        assert_close("working load", check.resistance, 160.0, 1e-12);
    }
    let root = (15.0f64 / 9.0).sqrt();
    let k = (36.0f64 / 28.0) * (36.0 / 28.0);
    let kpa = 25.0 * (root + 0.45 * k * (4.8 - root).sqrt());
    let outer = kpa * (4.8 - kpa / 50.0) * 10.0;
    // The inner face ends under the haunch, at 4.8 m, where the fluid is 0.65 m deep.
    let inner = outer - 25.0 * 0.65 * 0.65 / 2.0 * 10.0;
    let wall = design.results.ledger.iter().find(|entry| entry.case == "horizontal, S5 + S6").unwrap();
    assert_close("both faces", wall.levels[0].into_kn, outer + inner, 1e-9);
}

/// 4.8 × 2 × 0.45 + 7.2 × 0.45 + 0.2² = 7.6 m² above the joint, of which 7.2 × 0.45 + 0.2² m² stand on the falsework:
/// with 2 kPa on 72 m² of it 964 kN come onto the board.
#[test]
fn the_roof_weighs_on_the_falsework() {
    let (_, design) = heron();
    let full = design.results.ledger.iter().find(|entry| entry.case == "vertical, full").unwrap();
    assert_close("board", full.levels[0].into_kn, (7.2 * 0.45 + 0.04) * 250.0 + 2.0 * 72.0, 1e-9);
    let pour = design.model.pours.iter().find(|pour| pour.mark == "P2").unwrap();
    assert_close("pour", pour.volume_m3, 76.0, 1e-9);
}

/// A wall pour twice as fast, or a colder day, must not be easier.
#[test]
fn faster_and_colder_pours_load_the_ties_more() {
    let (scheme, design_before) = heron();
    let before = demand(&design_before, "T4 tie", CheckKind::Tension);
    let mut colder = scheme.clone();
    colder.concrete.temperature_c = 6.0;
    let mut faster = scheme;
    faster.concrete.delivery = falsewright_core::scheme::Delivery::Volume { rate_m3_h: 30.0 };
    for harder in [colder, faster] {
        let after = design(&harder, &falsewright_core::catalogue::Catalogue::generic()).unwrap();
        assert!(demand(&after, "T4 tie", CheckKind::Tension) > before);
    }
}
