//! Resistances as the load path uses them: jacks, slabs of an age, striking, hollow beams, twisting between restraints.

use falsewright_core::Design;
use falsewright_core::catalogue::{Catalogue, Item, Kind};
use falsewright_core::model::FaceKind;
use falsewright_core::results::{CheckKind, Severity, StruckForm};
use falsewright_core::scheme::{
    Bearing, Cement, Direction, Hardening, Scheme, SlabAge, Striking, Temperature, heron_lane, read, write,
};
use falsewright_tests::assert_close;
use falsewright_tests::simple::{box_scheme, check, demand, face, falsework, solved};
use proptest::prelude::*;

fn soffit(height_m: f64, leg: &str) -> Scheme {
    let mut scheme = box_scheme(4.0, height_m, 0.0);
    let soffit = face(&scheme, FaceKind::Soffit, 900, 2.4);
    scheme.falsework = vec![falsework(50, soffit, Direction::Across, &[1.0, 2.4, 3.8])];
    scheme.falsework[0].leg = leg.into();
    scheme.falsework[0].lift_m = 1.5;
    scheme
}

fn hardening(celsius: f64) -> Hardening {
    Hardening { class_mpa: 32.0, cement: Cement::Normal, temperature: Temperature::Mean { celsius } }
}

fn told<'a>(design: &'a Design, words: &str) -> Option<&'a Severity> {
    design.results.findings.iter().find(|finding| finding.text.contains(words)).map(|finding| &finding.severity)
}

/// Height of the leg: the cell less base 10 mm, board 17.6 mm, beams 0.2 and 0.2 m.
fn cell_m(leg_m: f64) -> f64 {
    leg_m + 0.01 + 0.0176 + 0.4
}

#[test]
fn jacks_make_up_what_the_standards_leave() {
    // 2.83 m: 2.5 m of standard and 0.165 m in each jack, of 0.45 m.
    let design = solved(&soffit(cell_m(2.83), "LEG60"));
    let extension = check(&design, "L2 leg", CheckKind::Extension);
    assert_close("extension", extension.demand, 0.165, 1e-9);
    assert_close("ratio", extension.ratio, 0.165 / 0.45, 1e-9);
    // One standard has no joint; 4.2 m takes 3.0 + 1.0 m and has one.
    assert!(!design.results.checks.iter().any(|check| check.check == CheckKind::Spigot));
    let tall = solved(&soffit(cell_m(4.2), "LEG60"));
    assert!(check(&tall, "L2 leg", CheckKind::Spigot).ratio > check(&tall, "L2 leg", CheckKind::Buckling).ratio);
}

#[test]
fn jacks_beyond_their_range_are_found() {
    let mut scheme = soffit(cell_m(2.83), "OWN");
    let mut own = Catalogue::generic().get("LEG60").expect("LEG60").clone();
    own.code = "OWN".into();
    if let Kind::Leg(leg) = &mut own.kind
        && let Some(stack) = &mut leg.stack
    {
        // 2.0 m leaves 0.83 m for jacks of 0.3 m each.
        (stack.standards_m, stack.head_jack_m, stack.base_jack_m) = (vec![3.0, 2.0], [0.05, 0.3], [0.05, 0.3]);
    }
    scheme.items.push(own);
    let design = solved(&scheme);
    let extension = check(&design, "L1 leg", CheckKind::Extension);
    assert_close("both jacks", extension.demand, 0.83, 1e-9);
    assert_close("their range", extension.resistance, 0.6, 1e-9);
    assert_eq!(told(&design, "jacks would extend 830 mm, 230 mm further"), Some(&Severity::Fail));
}

#[test]
fn a_slab_of_unknown_age_is_told_of() {
    let mut scheme = soffit(3.0, "LEG60");
    let design = solved(&scheme);
    assert_eq!(told(&design, "age of the slab under F1 is not given"), Some(&Severity::Warn));
    assert!(!design.results.checks.iter().any(|check| check.member == "L1 base" && check.check == CheckKind::Shear));
    scheme.falsework[0].bearing = Bearing::Ground;
    assert_eq!(told(&solved(&scheme), "age of the slab"), None);
}

/// fck of C32 after 14 days at 12 °C is 25.46 N/mm² (worked in the validation table), more than the 25 stated; after 7
/// days at 5 °C 0.4778 × 7 = 3.345 days count: βcc = exp(0.25 (1 − √(28 / 3.345))) = 0.6228, so 16.91 N/mm².
#[test]
fn a_young_slab_bears_less() {
    let mut scheme = soffit(3.0, "LEG60");
    let pressure = |design: &Design| check(design, "L1 base", CheckKind::BasePressure).ratio;
    let unknown = pressure(&solved(&scheme));
    scheme.falsework[0].slab = Some(SlabAge { age_days: 14.0, hardening: hardening(12.0) });
    let old = solved(&scheme);
    assert!(told(&old, "age of the slab").is_none() && told(&old, "less than the 25.0 N/mm² stated").is_none());
    assert!(pressure(&old) >= unknown);
    let punching = check(&old, "L1 base", CheckKind::Shear);
    assert!(punching.ratio < 1.0 && punching.source.contains("6.4.4"), "{punching:#?}");

    scheme.falsework[0].slab = Some(SlabAge { age_days: 7.0, hardening: hardening(5.0) });
    let young = solved(&scheme);
    assert_eq!(told(&young, "has 16.9 N/mm²"), Some(&Severity::Note));
    assert!(check(&young, "L1 base", CheckKind::Shear).ratio > punching.ratio);
    assert!(pressure(&young) > pressure(&old));
    scheme.falsework[0].slab = Some(SlabAge { age_days: 1.0, hardening: hardening(12.0) });
    assert!(check(&solved(&scheme), "L1 base", CheckKind::BasePressure).ratio.is_infinite());
}

/// Roof 0.5 m: (12.5 + 1.5) kPa of 28 kPa need half of 32 N/mm², 24 with the margin: βcc 0.6, √(28 / t) = 1 + 0.5108 / 0.25,
/// t = 3.024 days at 20 °C. EN 1992-1-1 (B.10) gives 0.99812 of it at 20 °C.
#[test]
fn striking_waits_for_strength() {
    let mut scheme = soffit(3.0, "LEG60");
    assert!(solved(&scheme).results.striking.is_empty());
    scheme.striking = Some(Striking { hardening: hardening(20.0), service_kpa: Some(28.0) });
    let design = solved(&scheme);
    let soffits = |design: &Design| {
        let times = &design.results.striking;
        times.iter().find(|time| time.form == StruckForm::Soffits).cloned().expect("soffits")
    };
    let time = soffits(&design);
    assert_close("required", time.required_mpa, 16.0, 1e-9);
    assert_close("hours", time.hours.expect("reached"), 3.024 * 24.0 / 0.99812, 0.002);
    assert_close("untested", time.untested_h.expect("warm"), 240.0, 1e-9);
    let text = time.formula.split(" = ").nth(1).expect("numbers");
    assert_close("formula", falsewright_tests::formula::evaluate(text).expect(text), 16e6, 1e-3);
    assert!(told(&design, "erection, striking").is_none() && told(&design, "erection, and the ground").is_some());

    scheme.striking = Some(Striking { hardening: hardening(20.0), service_kpa: None });
    let whole = solved(&scheme);
    assert_close("whole strength", soffits(&whole).required_mpa, 32.0, 1e-9);
    assert!(soffits(&whole).hours > time.hours && told(&whole, "service load of the soffits").is_some());

    scheme.striking = Some(Striking { hardening: hardening(-12.0), service_kpa: Some(28.0) });
    let frozen = solved(&scheme);
    assert_eq!((soffits(&frozen).hours, soffits(&frozen).untested_h), (None, None));
    assert_eq!(told(&frozen, "never has the 16.0 N/mm²"), Some(&Severity::Warn));
}

/// A wall needs 2 N/mm², 5 in the cold, but no strength is counted before 10 h at 20 °C.
#[test]
fn walls_wait_until_concrete_has_set() {
    let mut scheme = heron_lane().expect("the demo");
    let walls = |scheme: &Scheme| {
        let times = solved(scheme).results.striking;
        times.into_iter().find(|time| time.form == StruckForm::Walls).expect("walls")
    };
    scheme.striking = Some(Striking { hardening: hardening(20.0), service_kpa: None });
    let warm = walls(&scheme);
    assert_close("hours", warm.hours.expect("reached"), 10.0 / 0.99812, 1e-3);
    assert_eq!(warm.required_mpa, 2.0);
    let cold = Temperature::History { hours_celsius: vec![[12.0, 15.0], [48.0, 3.0]] };
    scheme.striking =
        Some(Striking { hardening: Hardening { temperature: cold, ..hardening(0.0) }, service_kpa: None });
    assert_eq!(walls(&scheme).required_mpa, 5.0);
    assert!(walls(&scheme).hours > warm.hours);
}

fn hollow(code: &str) -> Item {
    Catalogue::generic().get(code).expect("a hollow section").clone()
}

/// Every resistance of a hollow primary is known; a hollow transfer beam is checked against twisting.
#[test]
fn hollow_sections_carry_soffits() {
    for code in ["SHS100x5", "RHS150x100x6", "CHS48x4"] {
        let mut scheme = soffit(3.0, "LEG60");
        scheme.falsework[0].primary = code.into();
        let design = solved(&scheme);
        for kind in [CheckKind::Bending, CheckKind::Shear, CheckKind::Bearing, CheckKind::Deflection] {
            let check = check(&design, "F1 primary", kind);
            assert!(check.ratio.is_finite() && check.ratio > 0.0, "{code} {check:#?}");
        }
        // The moment is that of the frame; the resistance is a plastic modulus by 1.65.
        let steel = hollow(code).steel().expect("steel").clone();
        let plastic = steel.section.properties().plastic_modulus_mm3 * steel.yield_mpa().expect("known") * 1e-6;
        assert!(check(&design, "F1 primary", CheckKind::Bending).resistance <= plastic / 1.65 + 1e-9);
    }
    let mut scheme = heron_lane().expect("the demo");
    scheme.openings[0].transfer = "RHS200x100x8".into();
    let design = solved(&scheme);
    assert!(check(&design, "A1 transfer beam", CheckKind::LateralTorsional).ratio.is_finite());
}

/// A notch takes shear resistance away, and only that.
#[test]
fn notched_secondaries_shear_sooner() {
    let mut scheme = soffit(3.0, "LEG60");
    scheme.falsework[0].secondary = "T75x150".into();
    let whole = solved(&scheme);
    let mut own = Catalogue::generic().get("T75x150").expect("timber").clone();
    if let Kind::Timber(timber) = &mut own.kind {
        let notch = falsewright_core::catalogue::EndNotch { left_m: 0.1, from_support_m: 0.05, taper: 0.0 };
        timber.notch = Some(notch);
    }
    scheme.items.push(own);
    let notched = solved(&scheme);
    let ratio = |design: &Design, kind| check(design, "F1 secondary", kind).ratio;
    assert!(ratio(&notched, CheckKind::Shear) > 1.4 * ratio(&whole, CheckKind::Shear));
    assert_close("bending", ratio(&notched, CheckKind::Bending), ratio(&whole, CheckKind::Bending), 1e-12);
}

/// Between restraints the beam twists later; the moment of the check is on the beam.
#[test]
fn restraints_help_a_transfer_beam() {
    let mut scheme = heron_lane().expect("the demo");
    let twisting = |scheme: &Scheme| check(&solved(scheme), "A1 transfer beam", CheckKind::LateralTorsional).clone();
    let free = twisting(&scheme);
    let mut last = free.clone();
    for apart in [3.0, 1.5, 0.5] {
        scheme.openings[0].restraint_m = Some(apart);
        let held = twisting(&scheme);
        assert!(held.ratio < last.ratio * (1.0 + 1e-9), "{apart}: {held:#?}");
        last = held;
    }
    let bending = demand(&solved(&scheme), "A1 transfer beam", CheckKind::Bending);
    assert!(free.demand <= bending + 1e-9 && free.demand > 0.5 * bending, "{} {bending}", free.demand);
    assert!(free.formula.to_string().contains("C1 = 1.1"), "{}", free.formula);
}

/// What is not given is not written, so that schemes of before keep their bytes.
#[test]
fn schemes_without_the_new_data_stay_as_they_are() {
    let mut scheme = heron_lane().expect("the demo");
    let whole = write(&scheme);
    assert_eq!(read(&whole).expect("read"), scheme);
    scheme.striking = None;
    scheme.falsework[0].slab = None;
    let text = write(&scheme);
    assert!(!text.contains("striking") && !text.contains("\"slab\":") && !text.contains("stack"));
    assert_eq!(read(&text).expect("read"), scheme);
}

/// What no slab, concrete or leg can be is refused, and says what is wrong.
#[test]
fn impossible_data_are_refused() {
    let refused = |change: &dyn Fn(&mut Scheme), words: &str| {
        let mut scheme = heron_lane().expect("the demo");
        change(&mut scheme);
        let errors = scheme.validate().expect_err(words);
        assert!(errors.iter().any(|error| error.to_string().contains(words)), "{words}: {errors:?}");
    };
    let slab = |age_days, hardening| Some(SlabAge { age_days, hardening });
    refused(&|scheme| scheme.falsework[0].slab = slab(-1.0, hardening(10.0)), "an age of the slab below");
    refused(&|scheme| scheme.falsework[0].slab = slab(f64::NAN, hardening(10.0)), "an age of the slab below");
    refused(&|scheme| scheme.falsework[0].slab = slab(7.0, hardening(150.0)), "a temperature");
    let striking = |hardening, service_kpa| Some(Striking { hardening, service_kpa });
    refused(&|scheme| scheme.striking = striking(hardening(10.0), Some(0.0)), "a service load of soffits");
    let weak = || Hardening { class_mpa: 0.0, ..hardening(10.0) };
    refused(&|scheme| scheme.striking = striking(weak(), None), "a strength class of concrete");
    let long = || Hardening { temperature: Temperature::History { hours_celsius: vec![[1.0, 9.0]; 2001] }, ..weak() };
    refused(&|scheme| scheme.striking = striking(long(), None), "temperatures");
    let leg = |change: fn(&mut falsewright_core::catalogue::Stack)| {
        let mut own = Catalogue::generic().get("LEG60").expect("LEG60").clone();
        if let Kind::Leg(leg) = &mut own.kind {
            leg.stack.iter_mut().for_each(change);
        }
        own
    };
    refused(&|scheme| scheme.items.push(leg(|stack| stack.standards_m.clear())), "one to twelve lengths");
    refused(&|scheme| scheme.items.push(leg(|stack| stack.head_jack_m = [0.4, 0.2])), "from its least to its greatest");
    refused(&|scheme| scheme.items.push(leg(|stack| stack.part_at_greatest = 1.5)), "a part between 0 and 1");
}

proptest! {
    /// A longer leg never has fewer standards by more than its jacks make up; extensions stay in their range.
    #[test]
    fn stacks_reach_their_height(height in 0.5..12.0f64) {
        let leg = Catalogue::generic().get("LEG60").expect("LEG60").clone();
        let stack = leg.leg().and_then(|leg| leg.stack.clone()).expect("a stack");
        match stack.under(height) {
            Ok(stacked) => {
                for extension in [stacked.head_m, stacked.base_m] {
                    prop_assert!((0.05 - 1e-9..=0.45 + 1e-9).contains(&extension), "{stacked:?}");
                }
                let standards = height - stacked.head_m - stacked.base_m;
                prop_assert!((standards / 0.5 - (standards / 0.5).round()).abs() < 1e-4, "{standards}");
                prop_assert!(standards >= 0.5 - 1e-4 && stacked.standards >= (standards / 3.0 - 1e-4).ceil() as usize);
            }
            Err(_) => prop_assert!(height < 0.6 + 1e-6),
        }
    }
}
