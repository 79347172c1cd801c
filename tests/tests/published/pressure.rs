//! Fresh-concrete pressure against CIRIA Report 108 and against what any pressure must obey.

use falsewright_core::actions::factors::factors;
use falsewright_core::actions::fresh_concrete::{PressureLimit, pressure_limit, rise};
use falsewright_core::scheme::{
    Basis, CementChemistry, Concrete, Consistency, Delivery, FormElement, Loads, PressureMethod,
};
use falsewright_tests::{assert_close, reference};
use proptest::prelude::*;

fn ciria(density: f64, temperature: f64, c1: f64, c2: f64) -> Concrete {
    Concrete {
        unit_weight_kn_m3: density,
        temperature_c: temperature,
        method: PressureMethod::CiriaR108 { c1, c2 },
        delivery: Delivery::Rise { rate_m_h: 1.0 },
    }
}

fn wall(temperature: f64, c2: f64, rise: f64, height: f64) -> PressureLimit {
    pressure_limit(&ciria(25.0, temperature, 1.0, c2), rise, height, height)
}

/// CIRIA Report 108: case 01 is a published calculation, the others are worked by hand. Printed to four figures.
#[test]
fn ciria_cases() {
    let cases = reference::cases(include_str!("../../data/reference/ciria_pressure.json"));
    assert_eq!(cases.len(), 8);
    for case in cases {
        let concrete = ciria(case.input("D_kN_m3"), case.input("T_C"), case.input("C1"), case.input("C2"));
        let limit = pressure_limit(&concrete, case.input("R_m_h"), case.input("H_form_m"), case.input("h_pour_m"));
        case.assert("P_max", limit.kpa);
    }
}

/// The formula of CIRIA Report 108 at 144 combinations of rise, temperature, material and height. Four figures.
#[test]
fn ciria_table() {
    let table: serde_json::Value =
        serde_json::from_str(include_str!("../../data/reference/ciria_table.json")).expect("JSON");
    let columns = table["heights_and_rises"].as_array().expect("columns");
    let mut compared = 0;
    for row in table["rows"].as_array().expect("rows") {
        let (c2, temperature) = (row["C2"].as_f64().expect("C2"), row["T_C"].as_f64().expect("T"));
        for (column, expected) in columns.iter().zip(row["kPa"].as_array().expect("kPa")) {
            let (height, rise) = (column[0].as_f64().expect("H"), column[1].as_f64().expect("R"));
            let what = format!("C2 {c2}, {temperature} °C, {height} m, {rise} m/h");
            assert_close(&what, wall(temperature, c2, rise, height).kpa, expected.as_f64().expect("kPa"), 0.0006);
            compared += 1;
        }
    }
    assert_eq!(compared, 144);
}

/// Three rates and temperatures written out, 4 m wall, C2 0.45, D 25 kN/m³ (formula of CIRIA Report 108):
/// 5 °C, 1 m/h:  K = (36/21)² = 2.9388; 25 [1 + 0.45·2.9388·√3] = 25 × 3.2906 = 82.26 kPa
/// 10 °C, 2 m/h: K = (36/26)² = 1.9172; 25 [1.4142 + 0.45·1.9172·√2.5858] = 25 × 2.8015 = 70.04 kPa
/// 20 °C, 3 m/h: K = (36/36)² = 1; 25 [1.7321 + 0.45·√2.2679] = 25 × 2.4098 = 60.24 kPa
#[test]
fn ciria_by_hand_at_three_rates_and_temperatures() {
    for (temperature, rise, expected) in [(5.0, 1.0, 82.26), (10.0, 2.0, 70.04), (20.0, 3.0, 60.24)] {
        assert_close("kPa", wall(temperature, 0.45, rise, 4.0).kpa, expected, 0.0002);
    }
}

#[test]
fn formula_ends_in_the_pressure() {
    let limit = wall(15.0, 0.45, 2.0, 5.0);
    assert!(limit.formula.to_string().ends_with("the lesser 64.1 kPa"), "{}", limit.formula);
    assert!(limit.warnings.is_empty());
}

#[test]
fn full_head_is_fluid() {
    let concrete = Concrete { method: PressureMethod::FullHead, ..ciria(24.0, 10.0, 1.0, 0.3) };
    assert_close("kPa", pressure_limit(&concrete, 1.0, 5.0, 4.5).kpa, 24.0 * 4.5, 1e-12);
}

/// A form drawn lower than its pour counts as high as the pour.
#[test]
fn form_is_at_least_as_high_as_its_pour() {
    let concrete = ciria(25.0, 10.0, 1.0, 0.45);
    assert_eq!(pressure_limit(&concrete, 2.0, 1.0, 4.0).kpa, pressure_limit(&concrete, 2.0, 4.0, 4.0).kpa);
}

#[test]
fn range_of_the_method_is_told() {
    assert!(wall(2.0, 0.45, 2.0, 4.0).warnings[0].contains("2 °C"));
    assert!(wall(35.0, 0.45, 2.0, 4.0).warnings[0].contains("35 °C"));
    assert!(wall(15.0, 0.2, 2.0, 4.0).warnings[0].contains("C2"));
    assert!(pressure_limit(&ciria(25.0, 15.0, 1.2, 0.45), 2.0, 4.0, 4.0).warnings[0].contains("C1"));
}

#[test]
fn what_the_method_cannot_use_is_fluid_with_a_warning() {
    for (temperature, c2, rise) in [
        (-16.0, 0.3, 1.0),
        (-40.0, 0.3, 1.0),
        (f64::NAN, 0.3, 1.0),
        (15.0, f64::NAN, 1.0),
        (15.0, 0.3, f64::NAN),
        (15.0, 0.3, f64::INFINITY),
        (15.0, 0.3, -1.0),
    ] {
        let limit = wall(temperature, c2, rise, 4.0);
        assert_close("kPa", limit.kpa, 100.0, 1e-12);
        assert!(!limit.warnings.is_empty());
    }
}

#[test]
fn rise_from_delivery() {
    assert_close("volume", rise(&Delivery::Volume { rate_m3_h: 18.0 }, 9.0), 2.0, 1e-12);
    assert_close("rise", rise(&Delivery::Rise { rate_m_h: 1.5 }, 9.0), 1.5, 1e-12);
    assert!(rise(&Delivery::Volume { rate_m3_h: 18.0 }, 0.0).is_infinite());
}

/// EN 1990 and EN 12812 factors (from memory) on 10.5 and 1.5 kPa; none on the working-load basis.
#[test]
fn factors_on_loads() {
    let case = reference::case(include_str!("../../data/reference/resistance.json"), "A-ULS-01");
    let total = |basis| factors(basis).permanent * case.input("G") + factors(basis).variable * case.input("Q");
    for basis in [Basis::LimitStateB1, Basis::LimitStateB2] {
        case.assert("w_d", total(basis));
        assert_eq!(factors(basis).fresh_concrete_pressure, 1.5);
    }
    assert_close("working", total(Basis::WorkingLoad), 12.0, 1e-12);
}

fn by(method: PressureMethod, rise: f64, height: f64, temperature: f64) -> PressureLimit {
    pressure_limit(&Concrete { method, ..ciria(25.0, temperature, 1.0, 0.3) }, rise, height, height)
}

const DIN: PressureMethod = PressureMethod::Din18218 { class: Consistency::F3, setting_time_h: 7.0 };
const ACI: PressureMethod = PressureMethod::Aci347 {
    element: FormElement::Wall,
    chemistry: CementChemistry::Blended,
    slump_mm: 150.0,
    vibrated_depth_m: 1.0,
};

/// Fluid outside what a method covers, always with a sentence that says so.
#[test]
fn ranges_of_the_other_methods_are_told() {
    assert!(by(DIN, 2.0, 5.0, 15.0).warnings.is_empty() && by(ACI, 2.0, 5.0, 15.0).warnings.is_empty());
    let long = PressureMethod::Din18218 { class: Consistency::F5, setting_time_h: 24.0 };
    let wet = PressureMethod::Aci347 {
        element: FormElement::Wall,
        chemistry: CementChemistry::Plain,
        slump_mm: 200.0,
        vibrated_depth_m: 2.0,
    };
    for (method, rise, height, words) in [
        (DIN, 8.0, 5.0, "7 m/h"),
        (DIN, 2.0, 11.0, "10 m"),
        (long, 2.0, 5.0, "5 to 20 h"),
        (ACI, 5.0, 5.0, "4.5 m/h"),
        (wet, 1.0, 5.0, "175 mm"),
        (DIN, f64::NAN, 5.0, "fluid"),
        (ACI, f64::INFINITY, 5.0, "fluid"),
    ] {
        let limit = by(method, rise, height, 15.0);
        assert_close(words, limit.kpa, 25.0 * height, 1e-12);
        assert!(limit.warnings.iter().any(|warning| warning.contains(words)), "{words}: {:?}", limit.warnings);
    }
    let quick = PressureMethod::Din18218 { class: Consistency::F3, setting_time_h: 3.0 };
    assert!(by(quick, 2.0, 5.0, 15.0).warnings[0].contains("at least 5 h"));
}

/// By hand: F3 placed at 10 °C: 1.15 × (14 × 2 + 18) × (1 + 0.077 × 2) = 61.0 kPa.
#[test]
fn cold_concrete_presses_more_by_din() {
    assert_close("kPa", by(DIN, 2.0, 5.0, 10.0).kpa, 1.15 * 46.0 * 1.154, 1e-9);
    assert_eq!(by(DIN, 2.0, 5.0, 25.0).kpa, by(DIN, 2.0, 5.0, 15.0).kpa);
}

/// Names in files, and files from before an eccentricity of legs was in them.
#[test]
fn methods_and_loads_in_files() {
    for (method, name) in [(DIN, "din18218"), (ACI, "aci347"), (PressureMethod::FullHead, "full_head")] {
        let value = serde_json::to_value(method).expect("JSON");
        assert_eq!(value["name"], name);
        assert_eq!(serde_json::from_value::<PressureMethod>(value).expect("a method"), method);
    }
    let loads: Loads =
        serde_json::from_str("{\"formwork_kpa\": 0.5, \"operations_kpa\": 1.5, \"horizontal_fraction\": 0.025}")
            .expect("loads");
    assert_eq!(loads.leg_eccentricity_m, 0.025);
}

proptest! {
    #[test]
    fn faster_rise_never_lowers_pressure(
        t in 0.0..35.0, c2 in 0.3..0.6, r in 0.0..10.0, more in 0.0..5.0, h in 0.5..10.0,
    ) {
        prop_assert!(wall(t, c2, r + more, h).kpa >= wall(t, c2, r, h).kpa - 1e-9);
    }

    #[test]
    fn warmer_concrete_never_raises_pressure(
        t in -10.0..30.0, warmer in 0.0..10.0, c2 in 0.3..0.6, r in 0.0..10.0, h in 0.5..10.0,
    ) {
        prop_assert!(wall(t + warmer, c2, r, h).kpa <= wall(t, c2, r, h).kpa + 1e-9);
    }

    #[test]
    fn never_above_fluid_nor_below_nothing(
        t in -30.0..50.0, c2 in 0.0..2.0, r in -1.0..50.0, h in 0.0..15.0, pour in 0.0..15.0,
    ) {
        let kpa = pressure_limit(&ciria(25.0, t, 1.0, c2), r, h, pour).kpa;
        prop_assert!(kpa >= 0.0 && kpa <= 25.0 * pour + 1e-9);
    }

    #[test]
    fn higher_pour_never_lowers_pressure(
        t in 0.0..35.0, c2 in 0.3..0.6, r in 0.0..10.0, h in 0.5..8.0, more in 0.0..4.0,
    ) {
        prop_assert!(wall(t, c2, r, h + more).kpa >= wall(t, c2, r, h).kpa - 1e-9);
    }
}
