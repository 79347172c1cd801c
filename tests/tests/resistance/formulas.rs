//! The numbers that every kind of check prints give its ratio, worked out by an independent reader with their units.

use falsewright_core::actions::fresh_concrete::pressure_limit;
use falsewright_core::catalogue::{Catalogue, Item, Kind};
use falsewright_core::checks::concrete::{Anchor, PlateOnSlab};
use falsewright_core::checks::en1995::Notch;
use falsewright_core::checks::fittings::TiePlate;
use falsewright_core::checks::jacking::{check_jacking, check_plate};
use falsewright_core::checks::stability::{Standing, check_overturning, check_sliding, check_uplift};
use falsewright_core::checks::{
    BeamColumn, StrutForces, check_base, check_beam, check_beam_column, check_board, check_brace, check_deflection,
    check_lateral_torsional, check_leg, check_notch, check_stack, check_tie, check_timber_strut,
};
use falsewright_core::design;
use falsewright_core::results::{CheckKind, Verdict};
use falsewright_core::scheme::{
    Basis, Bearing, CementChemistry, Concrete, Consistency, Delivery, FormElement, Ground, PressureMethod, heron_lane,
};
use falsewright_tests::formula::{pressures, printed_ratio, ratio_of};
use std::collections::BTreeSet;

const BASES: [Basis; 3] = [Basis::WorkingLoad, Basis::LimitStateB1, Basis::LimitStateB2];
const GROUND: Ground = Ground { level_m: 0.0, allowable_kpa: 150.0 };

/// Four figures are printed: sums of rounded numbers stay within 0.4 %.
fn assert_works_out(what: &str, formula: &str, ratio: f64) {
    let got = ratio_of(formula).unwrap_or_else(|| panic!("{what}: {formula:?} cannot be read"));
    assert!((got - ratio).abs() <= 0.004 * ratio.abs().max(1e-3), "{what}: {formula} gives {got}, not {ratio}");
    let printed = printed_ratio(formula).unwrap_or_else(|| panic!("{what}: {formula:?} has no ratio"));
    assert!((printed - ratio).abs() <= 0.005 + 1e-9, "{what}: {formula} against {ratio}");
}

fn of_item(item: &Item, basis: Basis, demand: f64) -> Vec<Verdict> {
    let leg = |head_m, moment_knm| {
        let forces = StrutForces { compression_kn: demand, moment_knm, head_m, base_m: 0.0 };
        check_leg(item, basis, &forces, 1.7)
    };
    match &item.kind {
        Kind::Board(_) => check_board(item, basis, demand, demand),
        Kind::Timber(timber) => {
            let notch =
                Notch { depth_mm: timber.depth_m * 1e3, left_mm: 70.0, from_support_mm: 60.0, taper: 0.0, kn: 5.0 };
            let mut all = check_beam(item, basis, demand, demand, Some(demand), 0.1);
            all.push(check_timber_strut(item, basis, demand, 1.7));
            all.push(check_notch(item, basis, demand, &notch));
            all
        }
        Kind::TimberBeam(_) | Kind::RatedBeam(_) | Kind::Steel(_) => {
            let mut all = check_beam(item, basis, demand, demand, Some(demand), 0.1);
            all.extend(check_lateral_torsional(item, basis, demand, 1.7));
            let member = BeamColumn {
                compression_kn: demand,
                moment_knm: demand / 2.0,
                minor_moment_knm: demand / 20.0,
                major_m: 3.0,
                minor_m: 1.5,
            };
            all.extend(check_beam_column(item, basis, &member));
            all
        }
        Kind::Tie(_) => vec![check_tie(item, basis, demand)],
        Kind::Leg(_) => {
            let forces = StrutForces { compression_kn: demand, moment_knm: 0.3, head_m: 0.025, base_m: 0.0 };
            let stacks = [(3.7, false), (2.83, false), (0.13, true), (0.62, false)];
            let stacked = stacks.map(|(height, alone)| check_stack(item, basis, &forces, height, 1.5, alone));
            [leg(0.0, 0.0), leg(0.025, 0.0), leg(0.025, 1.3), stacked.concat()].concat()
        }
        Kind::Brace(_) => check_brace(item, basis, demand, 1.7),
        Kind::Plate(_) => [Bearing::Ground, Bearing::Slab { strength_mpa: 20.0 }]
            .iter()
            .flat_map(|bearing| check_base(item, basis, bearing, &GROUND, demand))
            .collect(),
    }
}

#[test]
fn checks_of_every_item() {
    let mut seen = 0;
    for item in Catalogue::generic().iter() {
        for basis in BASES {
            for demand in [3.7, 37.0] {
                for verdict in of_item(item, basis, demand).iter().filter(|verdict| verdict.ratio().is_finite()) {
                    assert_works_out(&item.code, &verdict.formula.to_string(), verdict.ratio());
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 900, "{seen}");
}

/// Standing, anchors, plates and slabs.
fn without_item(basis: Basis) -> Vec<Verdict> {
    let plate = TiePlate {
        length_m: 0.12,
        width_m: 0.12,
        thickness_m: 0.012,
        gap_m: 0.05,
        hole_m: 0.02,
        nut_m: 0.03,
        yield_mpa: 235.0,
    };
    let anchor = Anchor { depth_m: 0.2, head_m: 0.06, rod_m: 0.02, edge_m: 0.25, spacing_m: 0.5, cracked: true };
    let slab = PlateOnSlab { sides_m: [0.15, 0.2], slab_m: 0.25, to_edge_m: 0.2 };
    let standing = Standing { holding: 31.0, tipping_permanent: 3.3, tipping_variable: 7.1, held: 4.2 };
    let mut all = slab.check(basis, 17.0, 0.004, 0.2, 55.0).to_vec();
    all.extend([
        anchor.check(basis, 17.0, 44.0),
        check_deflection(0.0031, 1.35, 270.0),
        plate.check_bending(basis, 80.0),
        check_overturning(basis, &standing),
        check_uplift(basis, &standing),
        check_sliding(basis, &standing, 0.4),
        check_jacking(basis, 412.0, 1.25, 800.0),
        check_plate(basis, 412.0, 1.25, 0.45, 3000.0),
    ]);
    all
}

#[test]
fn checks_without_an_item() {
    for basis in BASES {
        for verdict in without_item(basis) {
            assert_works_out("no item", &verdict.formula.to_string(), verdict.ratio());
        }
    }
}

/// Kinds that are read in these checks. A kind that is added must be given a reading here.
fn read_in(kind: CheckKind) -> &'static str {
    match kind {
        CheckKind::Bending | CheckKind::Shear | CheckKind::Bearing | CheckKind::LateralTorsional => "an item",
        CheckKind::Tension | CheckKind::Buckling | CheckKind::Coupler | CheckKind::BasePressure => "an item",
        CheckKind::Extension | CheckKind::Spigot => "an item",
        CheckKind::Overturning | CheckKind::Sliding | CheckKind::Uplift | CheckKind::Jacking => "no item",
        CheckKind::Deflection | CheckKind::Clearance | CheckKind::Stability | CheckKind::Anchorage => "a whole job",
    }
}

#[test]
fn every_kind_of_check_is_read() {
    let mut of_items = BTreeSet::new();
    for item in Catalogue::generic().iter() {
        for verdict in of_item(item, Basis::WorkingLoad, 3.7).iter().filter(|verdict| verdict.ratio().is_finite()) {
            assert_works_out(&item.code, &verdict.formula.to_string(), verdict.ratio());
            of_items.insert(verdict.check);
        }
    }
    let alone: BTreeSet<CheckKind> = without_item(Basis::WorkingLoad).iter().map(|verdict| verdict.check).collect();
    let scheme = heron_lane().expect("the demo is read");
    let solved = design(&scheme, &Catalogue::generic()).expect("the demo is solved");
    let of_job: BTreeSet<CheckKind> = solved.results.checks.iter().map(|check| check.check).collect();
    for kind in CheckKind::ALL {
        let read = match read_in(kind) {
            "an item" => &of_items,
            "no item" => &alone,
            _ => &of_job,
        };
        assert!(read.contains(&kind), "{kind:?} is never read in {}", read_in(kind));
    }
    let unlike: BTreeSet<CheckKind> = CheckKind::ALL.into_iter().collect();
    assert_eq!(unlike.len(), CheckKind::Anchorage as usize + 1);
}

/// Every check of a whole job, those of clearance and elastic stability among them.
#[test]
fn checks_of_a_whole_job() {
    let scheme = heron_lane().expect("the demo is read");
    let mut kinds = BTreeSet::new();
    for basis in BASES {
        let design = design(&falsewright_core::scheme::Scheme { basis, ..scheme.clone() }, &Catalogue::generic());
        for check in design.expect("the demo is solved").results.checks {
            assert_works_out(&check.member, &check.formula.to_string(), check.ratio);
            kinds.insert(check.check);
        }
    }
    let wanted = CheckKind::ALL.into_iter().filter(|kind| read_in(*kind) != "no item");
    assert!(wanted.clone().all(|kind| kinds.contains(&kind)), "{kinds:?}");
}

/// One decimal of kPa is printed, of numbers with three; the pressure is the one that governs.
#[test]
fn pressures_of_every_method() {
    let methods = [
        (PressureMethod::FullHead, 1),
        (PressureMethod::CiriaR108 { c1: 1.0, c2: 0.45 }, 2),
        (PressureMethod::CiriaR108 { c1: 1.5, c2: 0.6 }, 2),
    ];
    let din = Consistency::ALL.map(|class| (PressureMethod::Din18218 { class, setting_time_h: 7.3 }, 2));
    let aci = [FormElement::Wall, FormElement::Column].map(|element| {
        let chemistry = CementChemistry::BlendedRetarded;
        (PressureMethod::Aci347 { element, chemistry, slump_mm: 150.0, vibrated_depth_m: 1.0 }, 3)
    });
    let mut governing = BTreeSet::new();
    for (method, parts) in methods.into_iter().chain(din).chain(aci) {
        for (rise, height, celsius) in [(0.4, 2.0, 21.0), (1.37, 3.3, 12.0), (3.9, 6.1, 7.0), (2.2, 1.0, 15.0)] {
            let delivery = Delivery::Rise { rate_m_h: rise };
            let concrete = Concrete { unit_weight_kn_m3: 24.5, temperature_c: celsius, method, delivery };
            let limit = pressure_limit(&concrete, rise, height, height);
            let read = pressures(&limit.formula.to_string());
            let fluid = read.len() == 1 && limit.formula.contains("D h = ");
            assert!(fluid || read.len() == parts, "{}: {read:?}", limit.formula);
            for (got, printed) in &read {
                assert!((got - printed).abs() <= 0.06 + 0.002 * printed, "{}: {got}", limit.formula);
            }
            let governs = read.iter().position(|(_, printed)| (printed - limit.kpa).abs() <= 0.05 + 1e-9);
            assert!(governs.is_some(), "{} against {}", limit.formula, limit.kpa);
            governing.insert((parts, governs));
        }
    }
    assert!(governing.len() >= 6, "{governing:?}");
}
