use super::{FOUR_FIGURES, Row, Rows};
use falsewright_core::actions::fresh_concrete::aci347;
use falsewright_core::actions::fresh_concrete::din18218::{self, Consistency1980};
use falsewright_core::actions::fresh_concrete::envelope::{PressureEnvelope, tie_force_kn};
use falsewright_core::actions::fresh_concrete::filling::Filling;
use falsewright_core::actions::fresh_concrete::pressure_limit;
use falsewright_core::actions::fresh_concrete::slope::force_on_slope;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::{CementChemistry, Concrete, Consistency, Delivery, FormElement, PressureMethod};

fn limit(density: f64, celsius: f64, method: PressureMethod, rise: f64, form: f64, pour: f64) -> f64 {
    let concrete = Concrete {
        unit_weight_kn_m3: density,
        temperature_c: celsius,
        method,
        delivery: Delivery::Rise { rate_m_h: rise },
    };
    pressure_limit(&concrete, rise, form, pour).kpa
}

pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Fresh concrete");
    ciria(&mut rows);
    din(&mut rows);
    din_1980(&mut rows);
    aci(&mut rows);
    envelope(&mut rows);
    history_and_slope(&mut rows);
    rows.rows
}

/// Form height, pour height, rise, temperature, C1, C2, pressure.
const CIRIA: [[f64; 7]; 8] = [
    [3.3, 3.3, 3.0, 32.0, 1.0, 0.60, 53.87],
    [3.0, 3.0, 2.0, 10.0, 1.0, 0.30, 53.46],
    [4.0, 4.0, 1.5, 5.0, 1.0, 0.45, 85.70],
    [5.0, 5.0, 2.0, 15.0, 1.0, 0.45, 64.08],
    [2.0, 2.0, 3.0, 5.0, 1.0, 0.60, 50.00],
    [2.0, 2.0, 5.0, 10.0, 1.0, 0.30, 50.00],
    [4.0, 4.0, 4.0, 10.0, 1.5, 0.30, 89.38],
    [4.0, 2.5, 1.0, 10.0, 1.0, 0.45, 62.36],
];

fn ciria(rows: &mut Rows) {
    for (number, [form, pour, rise, celsius, c1, c2, expected]) in CIRIA.into_iter().enumerate() {
        let source = match number {
            0 => "Public calculation sheet to CIRIA Report 108: 53.8 to 53.9",
            _ => "CIRIA Report 108 (1985), formula confirmed in print, worked independently",
        };
        let what = format!("R108, form {form} m, pour {pour} m, {rise} m/h, {celsius} °C, C1 {c1}, C2 {c2}");
        let got = limit(25.0, celsius, PressureMethod::CiriaR108 { c1, c2 }, rise, form, pour);
        rows.from(source, "kPa", FOUR_FIGURES).check(what, expected, got);
    }
}

/// Class, rise, setting time, height, pressure.
const DIN: [(Consistency, f64, f64, f64, f64); 14] = [
    (Consistency::F3, 2.0, 5.0, 5.0, 46.00),
    (Consistency::F4, 3.0, 7.0, 6.0, 87.04),
    (Consistency::F2, 1.0, 10.0, 4.0, 36.69),
    (Consistency::F5, 2.0, 7.0, 6.0, 109.0),
    (Consistency::F6, 1.5, 10.0, 6.0, 139.0),
    (Consistency::Scc, 3.0, 10.0, 4.0, 100.0),
    (Consistency::F1, 0.5, 5.0, 3.0, 25.00),
    (Consistency::F1, 7.0, 5.0, 10.0, 56.0),
    (Consistency::F2, 7.0, 5.0, 10.0, 89.0),
    (Consistency::F3, 7.0, 5.0, 10.0, 116.0),
    (Consistency::F4, 7.0, 5.0, 10.0, 136.0),
    (Consistency::F5, 4.0, 5.0, 10.0, 145.0),
    (Consistency::F6, 4.0, 5.0, 10.0, 177.0),
    (Consistency::Scc, 4.0, 5.0, 10.0, 157.0),
];

/// Setting factors at 7, 10, 15 and 20 h.
const DIN_K1: [(Consistency, [f64; 4]); 5] = [
    (Consistency::F1, [1.060, 1.150, 1.300, 1.450]),
    (Consistency::F2, [1.106, 1.265, 1.530, 1.795]),
    (Consistency::F3, [1.154, 1.385, 1.770, 2.155]),
    (Consistency::F4, [1.280, 1.700, 2.400, 3.100]),
    (Consistency::F5, [1.400, 2.000, 3.000, 4.000]),
];

fn din(rows: &mut Rows) {
    rows.from("DIN 18218:2010-01 from memory, worked independently", "kPa", FOUR_FIGURES);
    for (class, rise, setting_time_h, height, expected) in DIN {
        let got = limit(25.0, 15.0, PressureMethod::Din18218 { class, setting_time_h }, rise, height, height);
        rows.check(format!("DIN 18218 {class}, {rise} m/h, tE {setting_time_h} h, {height} m"), expected, got);
    }
    rows.from("DIN 18218:2010-01 from memory, worked independently", "", FOUR_FIGURES);
    for (class, factors) in DIN_K1 {
        for (hours, expected) in [7.0, 10.0, 15.0, 20.0].into_iter().zip(factors) {
            rows.check(format!("K1 of {class} at {hours} h"), expected, din18218::setting_factor(class, hours));
        }
    }
}

fn din_1980(rows: &mut Rows) {
    rows.from("DIN 18218 (09/1980), table printed in a public booklet", "kPa", 0.0025);
    for (consistency, name, at_rises) in [
        (Consistency1980::Stiff, "stiff", [23.5, 26.0, 28.5, 31.0, 33.5, 36.0]),
        (Consistency1980::Plastic, "plastic", [24.0, 29.0, 34.0, 39.0, 44.0, 49.0]),
    ] {
        for (rise, expected) in [0.5, 1.0, 1.5, 2.0, 2.5, 3.0].into_iter().zip(at_rises) {
            rows.check(
                format!("1980, {name}, {rise} m/h, 15 °C"),
                expected,
                din18218::pressure_1980(consistency, rise, 15.0),
            );
        }
    }
    for (consistency, name, rise, at_temperatures) in [
        (Consistency1980::Stiff, "stiff", 2.5, [23.5, 28.5, 33.5, 38.5, 43.6]),
        (Consistency1980::Plastic, "plastic", 3.0, [34.3, 41.7, 49.0, 56.4, 63.7]),
    ] {
        for (celsius, expected) in [25.0, 20.0, 15.0, 10.0, 5.0].into_iter().zip(at_temperatures) {
            rows.check(
                format!("1980, {name}, {rise} m/h, {celsius} °C"),
                expected,
                din18218::pressure_1980(consistency, rise, celsius),
            );
        }
    }
}

/// Element, density kg/m³, rise, temperature, height, chemistry, pressure.
const ACI: [(FormElement, f64, f64, f64, f64, CementChemistry, f64); 8] = [
    (FormElement::Wall, 2400.0, 1.5, 15.0, 4.0, CementChemistry::Plain, 43.10),
    (FormElement::Wall, 2400.0, 3.0, 10.0, 5.0, CementChemistry::PlainRetarded, 90.14),
    (FormElement::Wall, 2400.0, 0.5, 25.0, 3.0, CementChemistry::Plain, 30.00),
    (FormElement::Wall, 2400.0, 1.5, 15.0, 6.0, CementChemistry::Plain, 53.60),
    (FormElement::Column, 2400.0, 4.0, 20.0, 4.0, CementChemistry::Plain, 90.27),
    (FormElement::Wall, 1840.0, 1.5, 20.0, 4.0, CementChemistry::HighlyBlended, 48.14),
    (FormElement::Wall, 2400.0, 2.0, 5.0, 1.5, CementChemistry::BlendedRetarded, 35.32),
    (FormElement::Wall, 2550.0, 1.5, 15.0, 4.0, CementChemistry::Plain, 47.37),
];

fn aci(rows: &mut Rows) {
    rows.from("ACI 347R-14, split by rate and height confirmed in print, worked independently", "kPa", FOUR_FIGURES);
    for (element, density, rise, celsius, height, chemistry, expected) in ACI {
        let method = PressureMethod::Aci347 { element, chemistry, slump_mm: 150.0, vibrated_depth_m: 1.0 };
        let what = format!("ACI 347, {element:?}, {density} kg/m³, {rise} m/h, {celsius} °C, {height} m");
        rows.check(what, expected, limit(density * 9.81e-3, celsius, method, rise, height, height));
    }
    rows.from("ACI 347R-14 in pounds and feet (43 400 and 2800), from memory", "kPa", 0.004);
    let (feet, psf) = (3.280_84, 0.047_880_3);
    for (rise, celsius) in [(1.0, 10.0), (3.0, 20.0), (4.0, 5.0)] {
        let fahrenheit = celsius * 1.8 + 32.0;
        let expected = psf * (150.0 + 43_400.0 / fahrenheit + 2_800.0 * rise * feet / fahrenheit);
        let got = aci347::pressure_by_rise(aci347::Equation::Wall2, rise, celsius, 1.0, 1.0);
        rows.check(
            format!("ACI 347 in US units, {rise} m/h, {celsius} °C"),
            (expected * 100.0_f64).round() / 100.0,
            got,
        );
    }
}

fn envelope(rows: &mut Rows) {
    for (limit_kpa, height_m, [fluid, force, moment, at]) in
        [(60.0, 5.0, [2.4, 228.0, 447.6, 1.963]), (75.0, 3.0, [3.0, 112.5, 112.5, 1.0])]
    {
        let envelope = PressureEnvelope { density_kn_m3: 25.0, limit_kpa, height_m };
        let of = format!("of {limit_kpa} kPa over {height_m} m");
        rows.from("Statics", "m", FOUR_FIGURES).check(format!("Fluid depth {of}"), fluid, envelope.fluid_depth_m());
        rows.from("Statics", "kN/m", FOUR_FIGURES).check(format!("Force {of}"), force, envelope.force_kn_m());
        rows.from("Statics", "kNm/m", FOUR_FIGURES);
        rows.check(format!("Moment {of}"), moment, envelope.moment_about_base_knm_m());
        rows.from("Statics", "m", FOUR_FIGURES).check(format!("Height {of}"), at, envelope.height_of_force_m());
    }
    rows.from("Statics", "kN", FOUR_FIGURES).check("Tie, 60 kPa on 1.2 m × 1.1 m", 79.2, tie_force_kn(60.0, 1.2, 1.1));
}

/// 10 m³/h on an area that narrows from 10 to 5 m² over 2 m: 15 m³; half of it fills 10 z − 1.25 z² = 7.5.
fn history_and_slope(rows: &mut Rows) {
    let filling = Filling::new(Delivery::Volume { rate_m3_h: 10.0 }, &[(0.0, 10.0), (2.0, 5.0)]);
    rows.from("Geometry by hand", "h", FOUR_FIGURES).check("15 m³ at 10 m³/h", 1.5, filling.duration_h());
    rows.from("Geometry by hand", "m", FOUR_FIGURES).check("Its surface after 0.75 h", 0.8377, filling.surface_m(0.75));
    rows.from("Geometry by hand", "m/h", FOUR_FIGURES).check("Its rise at the top", 2.0, filling.rise_at_m_h(2.0));
    rows.from("Statics by hand: 25 × 0.8377", "kPa", FOUR_FIGURES);
    rows.check("Pressure at its foot after 0.75 h", 20.94, filling.pressure_kpa(0.0, 0.75, 25.0, 60.0));
    // A haunch form from (1, 0) up to (0, 1), the concrete below it and to its left.
    let force = force_on_slope(Point::new(1.0, 0.0), Point::new(0.0, 1.0), [30.0, 10.0]);
    rows.from("Statics by hand: mean of 20 kPa on 1 m each way", "kN/m", FOUR_FIGURES);
    rows.check("Outward force on a batter at 45°", 20.0, force.horizontal_kn_m);
    rows.check("Uplift of a batter at 45°", 20.0, force.upward_kn_m);
}
