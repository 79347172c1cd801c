//! What every resistance must obey, whatever the numbers.

use falsewright_core::catalogue::{Catalogue, Item, Kind, Timber};
use falsewright_core::checks::{
    StrutForces, check_base, check_beam, check_board, check_brace, check_deflection, check_lateral_torsional,
    check_leg, check_tie,
};
use falsewright_core::results::Verdict;
use falsewright_core::scheme::{Basis, Bearing, Ground};
use proptest::prelude::*;

const BASES: [Basis; 3] = [Basis::WorkingLoad, Basis::LimitStateB1, Basis::LimitStateB2];
const GROUND: Ground = Ground { level_m: 0.0, allowable_kpa: 150.0 };

/// All checks of an item at one size of demand.
fn verdicts(item: &Item, basis: Basis, demand: f64, length_m: f64) -> Vec<Verdict> {
    match &item.kind {
        Kind::Board(_) => check_board(item, basis, demand, demand),
        Kind::Timber(_) | Kind::TimberBeam(_) | Kind::RatedBeam(_) | Kind::Steel(_) => {
            let mut all = check_beam(item, basis, demand, demand, Some(demand), 0.1);
            all.extend(check_lateral_torsional(item, basis, demand, length_m));
            all
        }
        Kind::Tie(_) => vec![check_tie(item, basis, demand)],
        Kind::Leg(_) => check_leg(item, basis, &StrutForces::axial(demand), length_m),
        Kind::Brace(_) => check_brace(item, basis, demand, length_m),
        Kind::Plate(_) => [Bearing::Ground, Bearing::Slab { strength_mpa: 20.0 }]
            .iter()
            .flat_map(|bearing| check_base(item, basis, bearing, &GROUND, demand))
            .collect(),
    }
}

fn last_number(formula: &str) -> f64 {
    let text = formula.rsplit(" = ").next().expect("text");
    let no_resistance = text == "∞";
    if no_resistance {
        f64::INFINITY
    } else {
        text.parse().unwrap_or_else(|_| panic!("{formula:?} does not end in a number"))
    }
}

/// Three decimals are printed: within half of the last.
#[test]
fn every_formula_ends_in_its_ratio() {
    let mut seen = 0;
    for item in Catalogue::generic().iter() {
        for basis in BASES {
            for demand in [0.0, 0.37, 5.0, 80.0] {
                for verdict in verdicts(item, basis, demand, 1.7) {
                    let printed = last_number(&verdict.formula.to_string());
                    // High shear leaves a thin hollow section no bending resistance.
                    let sheared = printed.is_infinite() && verdict.formula.to_string().contains("ρ = 1.000");
                    assert_eq!(verdict.resistance > 0.0, !sheared, "{} {}", item.code, verdict.formula);
                    let apart = (printed - verdict.ratio()).abs();
                    assert!(sheared || apart <= 0.0005 + 1e-9, "{} {}", item.code, verdict.formula);
                    assert!(!verdict.source.to_string().is_empty(), "{}", item.code);
                    assert!(verdict.formula.to_string().matches(" = ").count() >= 2, "{}", verdict.formula);
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 1000, "{seen}");
    assert_eq!(last_number(&check_deflection(0.002, 1.35, 270.0).formula.to_string()), 0.4);
}

/// Boards of one direction: the thicker the stiffer and the stronger.
#[test]
fn thicker_boards_deflect_less_and_bear_more() {
    for suffix in ["", "X"] {
        let boards: Vec<Item> = [12, 15, 18, 21]
            .iter()
            .map(|t| Catalogue::generic().get(&format!("PLY{t}{suffix}")).expect("board").clone())
            .collect();
        for pair in boards.windows(2) {
            let stiffness = |item: &Item| item.board().expect("board").stiffness_knm2_m;
            assert!(stiffness(&pair[1]) > stiffness(&pair[0]));
            for (thin, thick) in
                check_board(&pair[0], BASES[0], 1.0, 1.0).iter().zip(check_board(&pair[1], BASES[0], 1.0, 1.0))
            {
                assert!(thick.resistance > thin.resistance);
            }
        }
    }
}

/// A class B2 resistance is never above B1, nor a working one above B1. Timber across its grain is left out of the
/// second: the permissible stress of BS 5268-2 is above the design strength of EN 1995-1-1.
#[test]
fn bases_are_in_order() {
    for item in Catalogue::generic().iter() {
        let [working, b1, b2] = BASES.map(|basis| verdicts(item, basis, 0.01, 1.7));
        for ((working, b1), b2) in working.iter().zip(&b1).zip(&b2) {
            assert!(b2.resistance <= b1.resistance, "{}", b2.formula);
            let across_grain = working.formula.to_string().contains("fc90");
            assert!(across_grain || working.resistance <= b1.resistance, "{}", working.formula);
        }
    }
}

proptest! {
    #[test]
    fn longer_struts_never_bear_more(length in 0.1..6.0, more in 0.0..3.0, which in 0usize..6) {
        let catalogue = Catalogue::generic();
        let legs: Vec<&Item> = catalogue.iter().filter(|item| item.leg().is_some()).collect();
        let leg = legs[which % legs.len()];
        for basis in BASES {
            let capacity = |length| check_leg(leg, basis, &StrutForces::axial(1.0), length)[0].resistance;
            prop_assert!(capacity(length + more) <= capacity(length) * (1.0 + 1e-12));
        }
    }

    #[test]
    fn more_eccentricity_moment_or_length_never_helps_a_leg(
        length in 0.1..6.0, longer in 0.0..2.0, e in 0.0..0.05, more in 0.0..0.05, moment in 0.0..2.0, n in 1.0..40.0,
    ) {
        let catalogue = Catalogue::generic();
        for leg in catalogue.iter().filter(|item| item.leg().is_some()) {
            for basis in BASES {
                let ratios = |e: f64, moment_knm: f64, length: f64| -> Vec<f64> {
                    let forces = StrutForces { compression_kn: n, moment_knm, head_m: e, base_m: 0.0 };
                    check_leg(leg, basis, &forces, length).iter().map(Verdict::ratio).collect()
                };
                let base = ratios(e + 1e-6, moment, length);
                for worse in [ratios(e + 1e-6 + more, moment, length), ratios(e + 1e-6, moment + more * 20.0, length),
                              ratios(e + 1e-6, moment, length + longer)] {
                    for (less, greater) in base.iter().zip(worse) {
                        prop_assert!(greater >= less - 1e-9);
                    }
                }
            }
        }
    }

    #[test]
    fn longer_beams_never_resist_more_twisting(length in 0.1..10.0, more in 0.0..5.0, which in 0usize..20) {
        let catalogue = Catalogue::generic();
        let beams: Vec<&Item> = catalogue.iter().filter(|item| item.steel().is_some()).collect();
        let beam = beams[which % beams.len()];
        let capacity = |length| check_lateral_torsional(beam, BASES[0], 1.0, length).expect("steel").resistance;
        let bending = check_beam(beam, BASES[0], 1.0, 0.0, None, 0.0)[0].resistance;
        prop_assert!(capacity(length + more) <= capacity(length) * (1.0 + 1e-12));
        prop_assert!(capacity(length) <= bending * (1.0 + 1e-12));
    }

    #[test]
    fn more_shear_never_raises_bending(v in 0.0..600.0, more in 0.0..300.0, which in 0usize..20) {
        let catalogue = Catalogue::generic();
        let beams: Vec<&Item> = catalogue.iter().filter(|item| item.steel().is_some()).collect();
        let beam = beams[which % beams.len()];
        let moment = |shear| check_beam(beam, BASES[1], 1.0, shear, None, 0.0)[0].resistance;
        prop_assert!(moment(v + more) <= moment(v) * (1.0 + 1e-12));
    }

    #[test]
    fn deeper_timber_never_bears_less(b in 30.0..150.0, h in 40.0..280.0, more in 0.0..80.0) {
        let sawn = |h: f64| Item {
            code: "OWN".into(),
            name: String::new(),
            source: String::new(),
            kind: Kind::Timber(Timber { breadth_m: b / 1e3, depth_m: h / 1e3, class: "C24".into(), notch: None }),
        };
        for basis in BASES {
            let shallow = check_beam(&sawn(h), basis, 1.0, 1.0, Some(1.0), 0.1);
            for (shallow, deep) in shallow.iter().zip(check_beam(&sawn(h + more), basis, 1.0, 1.0, Some(1.0), 0.1)) {
                prop_assert!(deep.resistance >= shallow.resistance * (1.0 - 1e-12));
            }
        }
    }

    #[test]
    fn more_demand_never_lowers_a_ratio(demand in 0.0..200.0, more in 0.0..100.0, which in 0usize..60) {
        let catalogue = Catalogue::generic();
        let items: Vec<&Item> = catalogue.iter().collect();
        let item = items[which % items.len()];
        for basis in BASES {
            for (less, greater) in verdicts(item, basis, demand, 2.0).iter().zip(verdicts(item, basis, demand + more, 2.0)) {
                prop_assert!(greater.ratio() >= less.ratio() - 1e-12);
            }
        }
    }

    #[test]
    fn weaker_support_never_bears_more(strength in 5.0..50.0, more in 0.0..20.0, qa in 20.0..600.0, extra in 0.0..300.0) {
        let catalogue = Catalogue::generic();
        let ground = |allowable_kpa| Ground { level_m: 0.0, allowable_kpa };
        for item in catalogue.iter().filter(|item| item.plate().is_some()) {
            let ratio = |bearing: Bearing, qa| check_base(item, BASES[0], &bearing, &ground(qa), 30.0)[0].ratio();
            let slab = |strength_mpa| ratio(Bearing::Slab { strength_mpa }, qa);
            prop_assert!(slab(strength + more) <= slab(strength) + 1e-12);
            prop_assert!(ratio(Bearing::Ground, qa + extra) <= ratio(Bearing::Ground, qa) + 1e-12);
        }
    }
}
