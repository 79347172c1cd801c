//! More of what is wanted may not make a scheme look safer, and odd drawings may not break it.

use super::drawn::{self, Drawn, drawn};
use falsewright_core::results::CheckKind;
use falsewright_core::scheme::{Basis, Delivery, Id, TieEnd};
use falsewright_tests::simple::{box_scheme, demand, face, falsework, solved, spaced};
use proptest::prelude::*;

/// All that fresh concrete puts on the shutters.
fn on_the_shutters(design: &falsewright_core::Design) -> f64 {
    let entries = design.results.ledger.iter().filter(|entry| entry.case.starts_with("horizontal"));
    entries.filter_map(|entry| entry.levels.first()).map(|level| level.into_kn).sum()
}

/// All that comes onto the ground under the full pour.
fn on_the_ground(design: &falsewright_core::Design) -> f64 {
    let full = design.results.ledger.iter().filter(|entry| entry.case == "vertical, full");
    full.filter_map(|entry| entry.levels.last()).map(|level| level.out_kn).sum()
}

/// Changes that a slip of the mouse or of the keyboard can make.
fn spoil(scheme: &mut falsewright_core::scheme::Scheme, how: usize, at: f64) {
    let metres = 12.0 * at - 1.0;
    match how {
        0 => scheme.falsework.iter_mut().flat_map(|f| &mut f.leg_lines).for_each(|line| line.x_m = metres),
        1 => scheme.openings.iter_mut().for_each(|opening| opening.left_m = metres),
        2 => scheme.openings.iter_mut().for_each(|opening| opening.beam_underside_m = 0.1 + 9.0 * at),
        3 => scheme.ties.iter_mut().for_each(|row| row.z_m = 6.0 * at),
        4 => scheme.ties.iter_mut().step_by(2).for_each(|row| row.item = "PROP48".into()),
        5 => scheme.falsework.iter_mut().for_each(|f| f.bents = spaced(20.0 * at, 1.0)),
        6 => scheme.shutters.iter_mut().for_each(|shutter| shutter.secondaries = spaced(4.0 * at, 0.3)),
        7 => scheme.falsework.iter_mut().for_each(|f| f.leg_lines.clear()),
        8 => scheme.ground.level_m = 20.0 * at - 10.0,
        9 => scheme.section.joints.iter_mut().for_each(|joint| joint.z_m = 0.1 + 5.0 * at),
        10 => scheme.ties.iter_mut().for_each(|row| row.to = TieEnd::Fixed { length_m: 0.05 + at }),
        11 => scheme.shutters.iter_mut().for_each(|shutter| (shutter.foot_held, shutter.above_m) = (false, 3.0 * at)),
        12 => scheme.openings.iter_mut().for_each(|opening| opening.trestle_m = 0.05 + 8.0 * at),
        13 => scheme.falsework.iter_mut().for_each(|f| f.lift_m = 0.1 + at * 0.1),
        14 => scheme.shutters.iter_mut().for_each(|shutter| shutter.primary = "T50x100".into()),
        _ => scheme.bays.length_m = 0.1 + at,
    }
}

proptest! {
    #![proptest_config(drawn::config(300))]

    /// Whatever is drawn comes back with numbers and sentences; what does not close is told.
    #[test]
    fn odd_drawings_are_told_of(drawn in drawn(), how in 0..16usize, also in 0..16usize, at in 0.0..1.0f64) {
        let mut scheme = drawn.scheme();
        spoil(&mut scheme, how, at);
        spoil(&mut scheme, also, 1.0 - at);
        let Ok(design) = falsewright_core::design(&scheme, &falsewright_core::catalogue::Catalogue::generic()) else {
            return Ok(());
        };
        for check in &design.results.checks {
            prop_assert!(!check.ratio.is_nan() && !check.demand.is_nan(), "{:#?}", check);
        }
        for entry in &design.results.ledger {
            prop_assert!(!entry.difference.is_nan(), "{:#?}", entry);
            let told = || design.results.findings.iter().any(|finding| finding.text.contains("do not close"));
            prop_assert!(entry.difference <= 1e-3 || told(), "{:#?}", entry);
        }
        prop_assert!(design.results.legs.iter().all(|leg| leg.axial_kn.is_finite()));
        prop_assert!(design.results.ties.iter().all(|tie| tie.force_kn.is_finite()));
    }

    /// Twice the delivery never presses less.
    #[test]
    fn faster_delivery_is_never_safer(drawn in drawn()) {
        let scheme = Drawn { fluid: false, ..drawn.clone() }.scheme();
        let mut faster = scheme.clone();
        faster.concrete.delivery = Delivery::Volume { rate_m3_h: 2.0 * drawn.rate_m3_h };
        let (before, after) = (on_the_shutters(&solved(&scheme)), on_the_shutters(&solved(&faster)));
        prop_assert!(before > 0.0 && after >= before * (1.0 - 1e-12), "{} and {}", before, after);
    }

    /// More operations, formwork or concrete weigh more on the ground, by what is added.
    #[test]
    fn loads_add_up(drawn in drawn(), more_kpa in 0.1..2.0f64) {
        let scheme = drawn.scheme();
        let mut heavier = scheme.clone();
        heavier.loads.operations_kpa += more_kpa;
        let (before, after) = (solved(&scheme), solved(&heavier));
        prop_assume!(!before.results.findings.iter().any(|finding| finding.text.contains("tips over")));
        prop_assume!(!after.results.findings.iter().any(|finding| finding.text.contains("tips over")));
        let area: f64 = before.model.falsework.iter().map(|falsework| {
            let faces = falsework.faces.iter().map(|face| (face.to.x - face.from.x).abs());
            faces.sum::<f64>() * scheme.bays.length_m
        }).sum();
        let added = on_the_ground(&after) - on_the_ground(&before);
        prop_assert!((added - area * more_kpa).abs() < 1e-6 * on_the_ground(&after).max(1.0), "{} {}", added, area);
    }
}

/// On either limit-state basis demands are alike; class B2 has 1.15 times less resistance.
#[test]
fn class_b2_resists_less() {
    let mut scheme = box_scheme(4.0, 3.0, 0.2);
    let soffit = face(&scheme, falsewright_core::model::FaceKind::Soffit, 900, 2.4);
    let direction = falsewright_core::scheme::Direction::Across;
    scheme.falsework = vec![falsework(50, soffit, direction, &[1.0, 2.4, 3.8])];
    scheme.falsework[0].leg_lines.iter_mut().for_each(|line| line.id = Id(line.id.0 + 100));
    scheme.basis = Basis::LimitStateB1;
    let b1 = solved(&scheme);
    scheme.basis = Basis::LimitStateB2;
    let b2 = solved(&scheme);
    for (member, kind) in [("L2 leg", CheckKind::Buckling), ("F1 secondary", CheckKind::Bending)] {
        assert!((demand(&b1, member, kind) - demand(&b2, member, kind)).abs() < 1e-9);
        let resistance = |design| falsewright_tests::simple::check(design, member, kind).resistance;
        assert!((resistance(&b1) / resistance(&b2) - 1.15).abs() < 1e-9, "{member}");
    }
}
