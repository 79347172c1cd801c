//! Wall shutters of small schemes against forces worked out by statics and beam tables.

use falsewright_core::model::FaceKind;
use falsewright_core::results::CheckKind;
use falsewright_core::scheme::{Arrangement, Basis, Concrete, Delivery, PressureMethod, Scheme, TieEnd};
use falsewright_tests::assert_close;
use falsewright_tests::simple::{
    anchors, assert_closes, beam_of, box_scheme, check, demand, face, fluid, shutter, solved, spaced, stiff_tie, tie_kn,
};
use falsewright_tests::three_moments::Beam;

/// Pour P2 of a box: walls from 0.5 m, its roof's top at `0.5 + wall_m`; bay 2 m, one shutter on its outer left face.
fn one_shutter(wall_m: f64, arrangement: Arrangement) -> Scheme {
    let mut scheme = box_scheme(4.0, wall_m - 0.5, 0.0);
    scheme.bays.length_m = 2.0;
    let left = face(&scheme, FaceKind::OuterWall, 900, 0.0);
    scheme.shutters = vec![shutter(10, left, arrangement)];
    scheme.items = vec![stiff_tie(), beam_of("EI900", 900.0)];
    scheme
}

/// CIRIA Report 108 with K = 1 (20 °C), R = 1 m/h, H = 4 m and C2 = 1/√3 gives 25 (1 + √3/√3) = 50 kPa.
fn fifty_kpa() -> Concrete {
    let method = PressureMethod::CiriaR108 { c1: 1.0, c2: 1.0 / 3f64.sqrt() };
    Concrete { unit_weight_kn_m3: 25.0, temperature_c: 20.0, method, delivery: Delivery::Rise { rate_m_h: 1.0 } }
}

/// CIRIA Report 108 with D = 25, C1 = 1: `25 (√R + C2 K √(H − √R))`, K = (36 / (T + 16))²; fluid to `Pmax / 25` below
/// the top, constant below. The resultant of the trapezoid is `P (H − P / 50)`. Worked by hand to five figures.
#[test]
fn pressure_diagrams() {
    // Height, rise, temperature, C2, greatest pressure.
    let cases = [
        (3.0, 2.0, 10.0, 0.30, 53.463), // √2 = 1.41421, K = 1.91716: 1.41421 + 0.57515 × 1.25928 = 2.13850
        (4.0, 1.5, 5.0, 0.45, 85.696),  // √1.5 = 1.22474, K = 2.93878: 1.22474 + 1.32245 × 1.66591 = 3.42783
        (5.0, 2.0, 15.0, 0.45, 64.085), // K = 1.34860: 1.41421 + 0.60687 × 1.89362 = 2.56339
    ];
    for (height, rate_m_h, temperature_c, c2, kpa) in cases {
        let mut scheme = one_shutter(height, Arrangement::UprightPrimaries);
        let method = PressureMethod::CiriaR108 { c1: 1.0, c2 };
        let delivery = Delivery::Rise { rate_m_h };
        scheme.concrete = Concrete { unit_weight_kn_m3: 25.0, temperature_c, method, delivery };
        let design = solved(&scheme);
        let diagram = &design.results.pressures[0];
        let [foot, kink, top] = diagram.points[..] else { panic!("not a trapezoid: {diagram:?}") };
        assert_close("pressure at the foot", foot.1, kpa, 1e-4);
        assert_close("pressure at the kink", kink.1, kpa, 1e-4);
        assert_close("level of the kink", kink.0, 0.5 + height - kpa / 25.0, 1e-4);
        assert_eq!((foot.0, top.0), (0.5, 0.5 + height));
        assert!(top.1.abs() < 1e-9);
        assert_close("resultant", diagram.resultant_kn_m(), kpa * (height - kpa / 50.0), 1e-4);
        let facing = &design.results.ledger.iter().find(|entry| entry.case.starts_with("horizontal"));
        if let Some(entry) = facing {
            assert_close("on the bay", entry.levels[0].into_kn, 2.0 * kpa * (height - kpa / 50.0), 1e-4);
        }
    }
}

/// 16 m³/h into two walls 0.4 m thick over a bay of 10 m rise at 16 / 8 = 2 m/h.
#[test]
fn volume_rises_over_the_plan_area_of_the_walls() {
    let mut scheme = one_shutter(4.0, Arrangement::UprightPrimaries);
    scheme.bays.length_m = 10.0;
    scheme.concrete.delivery = Delivery::Volume { rate_m3_h: 16.0 };
    assert_close("rise", solved(&scheme).results.pressures[0].rise_m_h, 2.0, 1e-12);
}

/// A fluid 3 m deep pushes with 25 × 3² / 2 = 112.5 kN/m at a third of the height. Ties 0.6 and 2.1 m above the foot:
/// moments about the lower give the upper 112.5 × 0.4 / 1.5 = 30 kN/m, so 82.5 kN/m remain, whatever the secondaries.
/// Two soldiers in a bay of 2 m carry 1 m each.
#[test]
fn two_ties_by_statics() {
    for arrangement in [Arrangement::UprightPrimaries, Arrangement::LevelPrimaries] {
        let mut scheme = one_shutter(3.0, arrangement);
        scheme.concrete = fluid();
        scheme.ties = vec![anchors(20, 10, 1.1, "TIE20", 1.0), anchors(21, 10, 2.6, "TIE20", 3.0)];
        let design = solved(&scheme);
        for place in [1, 2] {
            assert_close("lower tie", tie_kn(&design, &format!("T1.{place}")), 82.5, 1e-9);
            assert_close("upper tie", tie_kn(&design, &format!("T2.{place}")), 30.0, 1e-9);
        }
        assert_close("demand", demand(&design, "T1 tie", CheckKind::Tension), 82.5, 1e-9);
        assert_closes(&design, "horizontal", 1e-9);

        scheme.basis = Basis::LimitStateB1;
        let factored = solved(&scheme);
        assert_close("unfactored force", tie_kn(&factored, "T1.1"), 82.5, 1e-9);
        assert_close("factored demand", demand(&factored, "T1 tie", CheckKind::Tension), 1.5 * 82.5, 1e-9);
    }
}

/// The cantilevers of the same shutter, with upright secondaries on two walings: below the lower tie, 0.6 m under
/// 75 to 60 kPa: M = 75 × 0.6² / 2 − (15 / 0.6) × 0.6³ / 6 = 12.6 kNm; above the upper one, 0.9 m under a fluid:
/// 25 × 0.9³ / 6 = 3.0375 kNm. Between, at x above the foot, the sagging moment is
/// 82.5 (x − 0.6) − 75 x² / 2 + 25 x³ / 6.
#[test]
fn soldier_moments_by_statics() {
    let mut scheme = one_shutter(3.0, Arrangement::LevelPrimaries);
    scheme.concrete = fluid();
    scheme.shutters[0].secondaries = spaced(0.5, 1.0);
    scheme.ties = vec![anchors(20, 10, 1.1, "TIE20", 1.0), anchors(21, 10, 2.6, "TIE20", 3.0)];
    let design = solved(&scheme);
    let governing = check(&design, "S1 secondary", CheckKind::Bending);
    assert_close("greatest moment", governing.demand, 12.6, 1e-9);
    assert_eq!(governing.place, "level 1.10 m");
    let diagram = design.results.diagrams.iter().find(|diagram| diagram.member == "S1 secondary").unwrap();
    let at = |s: f64| {
        let near = |station: &&falsewright_core::results::Station| (station.s_m - s).abs() < 1e-9;
        diagram.stations.iter().find(near).map(|station| station.moment_knm.abs()).unwrap()
    };
    assert_close("at the upper tie", at(2.1), 3.0375, 1e-9);
    assert_close("in the span", at(1.35), 82.5 * 0.75 - 37.5 * 1.35 * 1.35 + 25.0 * 1.35f64.powi(3) / 6.0, 1e-9);
    assert_close("on a waling", demand(&design, "S1 secondary", CheckKind::Bearing), 82.5, 1e-9);
    // Shear: below the upper tie 30 − 25 × 0.9² / 2; above the lower 82.5 − (75 + 60) / 2 × 0.6 = 42.
    assert_close("shear", demand(&design, "S1 secondary", CheckKind::Shear), 42.0, 1e-9);
}

/// A soldier with a cantilever of 0.4 m, spans of 1.2, 1.2 m and 1.2 m at the top, under min(50, 25 · depth) kPa, with
/// EI 900 kNm². By the equation of three moments: 48.55, 58.45 and 43.00 kN; −4.000, −5.738, −7.200 kNm; the top moves
/// 3.519 mm. Numbers to four figures.
#[test]
fn three_stiff_ties() {
    let mut scheme = one_shutter(4.0, Arrangement::LevelPrimaries);
    scheme.concrete = fifty_kpa();
    scheme.shutters[0].secondary = "EI900".into();
    scheme.shutters[0].secondaries = spaced(0.5, 1.0);
    let level = |above: f64| 0.5 + above;
    scheme.ties = vec![
        anchors(20, 10, level(0.4), "STIFF_TIE", 1.0),
        anchors(21, 10, level(1.6), "STIFF_TIE", 1.0),
        anchors(22, 10, level(2.8), "STIFF_TIE", 1.0),
    ];
    let design = solved(&scheme);
    for (id, kn) in [("T1.1", 48.55), ("T2.1", 58.45), ("T3.1", 43.00)] {
        assert_close(id, tie_kn(&design, id), kn, 2e-4);
    }
    assert_close("moment", demand(&design, "S1 secondary", CheckKind::Bending), 7.2, 1e-6);
    let diagram = design.results.diagrams.iter().find(|diagram| diagram.member == "S1 secondary").unwrap();
    let middle = diagram.stations.iter().find(|station| (station.s_m - 1.6).abs() < 1e-9).unwrap();
    assert_close("over the middle tie", middle.moment_knm.abs(), 5.738, 2e-4);
    let tip = diagram.stations.last().unwrap();
    assert_close("top of the soldier", tip.deflection_m.abs(), 3.519e-3, 5e-4);

    let beam = Beam {
        ends: [0.0, 4.0],
        supports: vec![0.4, 1.6, 2.8],
        lines: vec![[0.0, 2.0, 50.0, 50.0], [2.0, 4.0, 50.0, 0.0]],
        points: vec![],
    };
    for (id, kn) in ["T1.2", "T2.2", "T3.2"].into_iter().zip(beam.solve().reactions) {
        assert_close(id, tie_kn(&design, id), kn, 1e-5);
    }
    assert_closes(&design, "horizontal", 1e-9);
}

/// The same soldier on ties of 20 mm, 4, 2 and 4 m long, by the method of forces: without the middle tie the beam is
/// determinate; the middle tie takes what closes the gap there. Integrals summed over 40 000 steps.
#[test]
fn elastic_ties_share_by_their_stiffness() {
    // Two uprights on two ties, and four, of which each has half a tie.
    elastic_ties(0.5, 1.0);
    elastic_ties(0.25, 2.0);
}

fn elastic_ties(edge_m: f64, uprights_on_a_tie: f64) {
    let mut scheme = one_shutter(4.0, Arrangement::LevelPrimaries);
    scheme.concrete = fifty_kpa();
    scheme.shutters[0].secondary = "EI900".into();
    scheme.shutters[0].secondaries = spaced(edge_m, 2.0 * edge_m);
    let lengths = [4.0, 2.0, 4.0];
    let levels = [0.4, 1.6, 2.8];
    scheme.ties = (0..3).map(|i| anchors(20 + i as u32, 10, 0.5 + levels[i], "TIE20", lengths[i])).collect();
    let design = solved(&scheme);

    // Force method: remove the middle tie; X = gap it closes / flexibility. EA = 205e6 × 3.142e-4 = 64 411 kN.
    let flexibility = lengths.map(|length| uprights_on_a_tie * length / (205e6 * 3.142e-4));
    let load = |x: f64| if x < 2.0 { 50.0 } else { 25.0 * (4.0 - x) };
    let steps = 40_000;
    let h = 4.0 / f64::from(steps);
    let places: Vec<f64> = (0..steps).map(|i| (f64::from(i) + 0.5) * h).collect();
    let total: f64 = places.iter().map(|&x| load(x) * h).sum();
    let about: f64 = places.iter().map(|&x| load(x) * (x - 0.4) * h).sum();
    let top = about / 2.4;
    let (low, unit) = (total - top, 0.5);
    let (mut by_load, mut by_unit) = (0.0, 0.0);
    let (mut sum, mut first) = (0.0, 0.0);
    for &x in &places {
        sum += load(x) * h;
        first += load(x) * x * h;
        let mut moment = -(sum * x - first);
        moment += if x > 0.4 { low * (x - 0.4) } else { 0.0 } + if x > 2.8 { top * (x - 2.8) } else { 0.0 };
        let m = if (0.4..2.8).contains(&x) { if x < 1.6 { -unit * (x - 0.4) } else { -unit * (2.8 - x) } } else { 0.0 };
        by_load += moment * m * h / 900.0;
        by_unit += m * m * h / 900.0;
    }
    by_load += -unit * (low * flexibility[0] + top * flexibility[2]);
    by_unit += unit * unit * (flexibility[0] + flexibility[2]) + flexibility[1];
    let middle = -by_load / by_unit;
    for (id, kn) in [("T1.1", low - middle / 2.0), ("T2.1", middle), ("T3.1", top - middle / 2.0)] {
        assert_close(id, tie_kn(&design, id), kn, 2e-4);
    }
    assert_closes(&design, "horizontal", 1e-9);
}

/// Two shutters on a wall, tied twice. Each tie bears what either side brings, and both sides the same: a fluid 3 m
/// deep on both, feet held. The tie stretches from both ends, so each side sees a spring of 2 EA / L.
#[test]
fn both_sides_of_a_wall_load_the_same_ties() {
    let mut scheme = box_scheme(4.0, 2.5, 0.0);
    scheme.bays.length_m = 2.0;
    scheme.concrete = fluid();
    let (outer, inner) = (face(&scheme, FaceKind::OuterWall, 900, 0.0), face(&scheme, FaceKind::InnerWall, 900, 0.4));
    scheme.shutters =
        vec![shutter(10, outer, Arrangement::UprightPrimaries), shutter(11, inner, Arrangement::UprightPrimaries)];
    // The outer shutter rises 0.5 m beyond the inner one, so what differs leans on the prop.
    scheme.shutters.iter_mut().for_each(|shutter| shutter.foot_held = true);
    let mut tie = anchors(20, 10, 1.5, "TIE20", 1.0);
    tie.to = TieEnd::Shutter { id: scheme.shutters[1].id };
    scheme.ties = vec![tie, anchors(21, 10, 2.5, "PROP76", 2.0)];
    let design = solved(&scheme);
    // Inner side by statics: on it the fluid is 3 m deep at the foot and 0.5 m at its top, 2.5 m up:
    // 75 and 12.5 kPa. About the foot: 12.5 × 2.5² / 2 + 62.5 × 2.5² / 6 = 104.1667; the tie is 1 m up.
    assert_close("tie", tie_kn(&design, "T1.1"), 104.166_667, 1e-8);
    // Outer: 112.5 × 1 about the foot = 104.1667 × 1 + B × 2, B = 4.1667 kN, pushing on the prop.
    assert_close("prop", tie_kn(&design, "B1.1"), 4.166_667, 1e-6);
    assert_closes(&design, "horizontal", 1e-9);
}

/// Walings of two spans of 1.2 m, loaded in the middle of each by an upright secondary: 5/16, 11/8 and 5/16 of the
/// load, and 3/16 of load times span over the middle tie (beam tables).
#[test]
fn waling_over_equal_spans() {
    let mut scheme = one_shutter(3.0, Arrangement::LevelPrimaries);
    scheme.bays.length_m = 2.4;
    scheme.concrete = fluid();
    scheme.shutters[0].secondaries = spaced(0.6, 1.2);
    scheme.ties = vec![anchors(20, 10, 1.1, "TIE20", 1.0), anchors(21, 10, 2.6, "TIE20", 3.0)];
    scheme.ties.iter_mut().for_each(|row| row.spacing = spaced(0.0, 1.2));
    let design = solved(&scheme);
    // Each secondary carries 1.2 m of wall; at the lower waling 82.5 kN/m.
    let load = 1.2 * 82.5;
    for (id, part) in [("T1.1", 5.0 / 16.0), ("T1.2", 11.0 / 8.0), ("T1.3", 5.0 / 16.0)] {
        assert_close(id, tie_kn(&design, id), part * load, 1e-9);
    }
    assert_close("T2.2", tie_kn(&design, "T2.2"), 11.0 / 8.0 * 1.2 * 30.0, 1e-9);
    assert_close("moment", demand(&design, "S1 primary", CheckKind::Bending), 3.0 / 16.0 * load * 1.2, 1e-9);
    assert_close("shear", demand(&design, "S1 primary", CheckKind::Shear), 11.0 / 16.0 * load, 1e-9);
    assert_close("secondary", demand(&design, "S1 secondary", CheckKind::Bending), 1.2 * 12.6, 1e-9);
    assert_closes(&design, "horizontal", 1e-9);
}

/// Level secondaries 0.5 m apart on a fluid 3 m deep: the board by three moments, then the most loaded secondary over
/// soldiers 1 m apart with overhangs of 0.5 m: over four soldiers, 0.125 w at the outer ones by statics.
#[test]
fn board_and_level_secondaries() {
    let mut scheme = one_shutter(3.0, Arrangement::UprightPrimaries);
    scheme.bays.length_m = 4.0;
    scheme.concrete = fluid();
    scheme.shutters[0].secondaries = spaced(0.25, 0.5);
    scheme.ties = vec![anchors(20, 10, 1.1, "TIE20", 1.0), anchors(21, 10, 2.6, "TIE20", 3.0)];
    let design = solved(&scheme);
    let supports: Vec<f64> = (0..6).map(|i| 0.25 + 0.5 * f64::from(i)).collect();
    let board = Beam { ends: [0.0, 3.0], supports, lines: vec![[0.0, 3.0, 75.0, 0.0]], points: vec![] }.solve();
    let moment = board.moments.iter().fold(0.0_f64, |most, moment| most.max(moment.abs()));
    assert_close("board", demand(&design, "S1 facing", CheckKind::Bending), moment, 1e-6);
    let load = board.reactions.iter().copied().fold(0.0, f64::max);
    let secondary = Beam::uniform([0.0, 4.0], &[0.5, 1.5, 2.5, 3.5], load).solve();
    assert_close("overhang", -secondary.moments[0], 0.125 * load, 1e-9);
    assert_close("secondary", demand(&design, "S1 secondary", CheckKind::Bending), 0.125 * load, 1e-6);
    let bearing = secondary.reactions.iter().copied().fold(0.0, f64::max);
    assert_close("on a soldier", demand(&design, "S1 secondary", CheckKind::Bearing), bearing, 1e-6);
    // The same shares fall to the soldiers and their ties.
    for (i, reaction) in secondary.reactions.iter().enumerate() {
        let share = reaction / load;
        assert_close("tie", tie_kn(&design, &format!("T1.{}", i + 1)), 82.5 * share, 1e-6);
    }
    assert_closes(&design, "horizontal", 1e-9);
}

/// A pour of 1.5 m against a shutter of 3 m, pinned at its foot and tied 1 and 2.8 m up. The upper tie would have to
/// push (the beam over the tie lifts), so it goes slack: about the foot 25 × 1.5³ / 6 = 14.0625 kN at 1 m.
#[test]
fn a_slack_tie_drops_out() {
    let mut scheme = one_shutter(1.5, Arrangement::LevelPrimaries);
    scheme.concrete = fluid();
    scheme.shutters[0].above_m = 1.5;
    scheme.shutters[0].secondaries = spaced(0.5, 1.0);
    scheme.shutters[0].foot_held = true;
    scheme.ties = vec![anchors(20, 10, 1.5, "TIE20", 1.0), anchors(21, 10, 3.3, "TIE20", 1.0)];
    let design = solved(&scheme);
    assert_close("tie", tie_kn(&design, "T1.1"), 14.0625, 1e-9);
    assert_eq!(tie_kn(&design, "T2.1"), 0.0);
    assert_closes(&design, "horizontal", 1e-9);
    let foot = design.results.findings.iter().find(|finding| finding.text.starts_with("The foot of"));
    // 28.125 − 14.0625 kN remain for the foot, for 1 m of wall.
    assert!(foot.is_some_and(|finding| finding.text.contains("14.1 kN")), "{:?}", design.results.findings);
}
