//! DIN 18218. The straight lines of stiff and plastic concrete are confirmed in print as those of the 1980 edition;
//! the other classes, `K1`, the least pressures and the temperature rule of the 2010 edition are from memory.

use super::{Fill, PressureLimit};
use crate::scheme::Consistency;
use crate::sentence::{Sentence, length, number};

const SOURCE: &str = "DIN 18218:2010-01 (partly from memory)";
/// Density that the lines were drawn up for, kN/m³.
const DENSITY: f64 = 25.0;
/// Setting time that the lines were drawn up for, h.
const SETTING_TIME_H: f64 = 5.0;
const LONGEST_SETTING_H: f64 = 20.0;
/// Placing temperature at which the setting time is stated, °C.
const REFERENCE_C: f64 = 15.0;
const HIGHEST_FORM_M: f64 = 10.0;
const FASTEST_RISE_M_H: f64 = 7.0;

/// How the pressure of a class grows with the rise `v`.
#[derive(Clone, Copy)]
enum Line {
    /// `(a v + b) K1`, `K1 = 1 + k (tE − 5)`.
    Whole { a: f64, b: f64, k: f64 },
    /// `25 + a v K1`, `K1 = tE / 5`.
    Rising { a: f64 },
}

fn line(class: Consistency) -> Line {
    match class {
        Consistency::F1 => Line::Whole { a: 5.0, b: 21.0, k: 0.03 },
        Consistency::F2 => Line::Whole { a: 10.0, b: 19.0, k: 0.053 },
        Consistency::F3 => Line::Whole { a: 14.0, b: 18.0, k: 0.077 },
        Consistency::F4 => Line::Whole { a: 17.0, b: 17.0, k: 0.14 },
        Consistency::F5 => Line::Rising { a: 30.0 },
        Consistency::F6 => Line::Rising { a: 38.0 },
        Consistency::Scc => Line::Rising { a: 33.0 },
    }
}

/// `K1` for a final setting time.
pub fn setting_factor(class: Consistency, setting_time_h: f64) -> f64 {
    match line(class) {
        Line::Whole { k, .. } => 1.0 + k * (setting_time_h - SETTING_TIME_H),
        Line::Rising { .. } => setting_time_h / SETTING_TIME_H,
    }
}

/// Greatest pressure before the fluid head limits it, kPa: at least 25 (F1 to F4) or 30, times `γ / 25`.
pub fn pressure_by_rise(class: Consistency, rise_m_h: f64, k1: f64, density_kn_m3: f64) -> f64 {
    let kpa = match line(class) {
        Line::Whole { a, b, .. } => ((a * rise_m_h + b) * k1).max(25.0),
        Line::Rising { a } => (25.0 + a * rise_m_h * k1).max(30.0),
    };
    kpa * density_kn_m3 / DENSITY
}

/// Rise of pressure for concrete placed colder than 15 °C: 3 % for each K (F1 to F4) or 5 %. What the standard lets
/// off warmer concrete is not taken.
pub fn temperature_factor(class: Consistency, temperature_c: f64) -> f64 {
    let each = match line(class) {
        Line::Whole { .. } => 0.03,
        Line::Rising { .. } => 0.05,
    };
    1.0 + each * (REFERENCE_C - temperature_c).max(0.0)
}

/// Consistency of the 1980 edition.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Consistency1980 {
    /// Stiff: `5 v + 21`.
    Stiff,
    /// Plastic: `10 v + 19`.
    Plastic,
}

/// `kT = (145 − 3 T) / 100` of the 1980 edition.
pub fn temperature_factor_1980(temperature_c: f64) -> f64 {
    (145.0 - 3.0 * temperature_c) / 100.0
}

/// Pressure of the 1980 edition, kPa.
pub fn pressure_1980(consistency: Consistency1980, rise_m_h: f64, temperature_c: f64) -> f64 {
    let at_15_c = match consistency {
        Consistency1980::Stiff => 5.0 * rise_m_h + 21.0,
        Consistency1980::Plastic => 10.0 * rise_m_h + 19.0,
    };
    at_15_c * temperature_factor_1980(temperature_c)
}

pub(super) fn limit(fill: &Fill, class: Consistency, setting_time_h: f64) -> PressureLimit {
    let Fill { density, temperature, rise, form, pour } = *fill;
    let mut warnings = warnings(fill, setting_time_h);
    let usable = rise >= 0.0 && rise.is_finite() && setting_time_h.is_finite() && temperature.is_finite();
    if !usable || form > HIGHEST_FORM_M || rise > FASTEST_RISE_M_H || setting_time_h > LONGEST_SETTING_H {
        warnings.push(sentence!("DIN 18218 does not reach so far: fluid pressure is taken."));
        return fill.fluid(SOURCE, warnings);
    }
    let k1 = setting_factor(class, setting_time_h.max(SETTING_TIME_H));
    let cold = temperature_factor(class, temperature);
    let by_rise = cold * pressure_by_rise(class, rise, k1, density);
    let head = density * pour;
    let kpa = by_rise.min(head);
    let [cold, unit_weight, k1] = [number(cold, "", 2), number(density, "", 1), number(k1, "", 3)];
    let rise = number(rise, "", 3);
    let by_class = match line(class) {
        Line::Whole { a, b, .. } => formula!(
            "kT γ / 25 × greatest of ((a v + b) K1, 25) = {} × {} / 25 × greatest of (({} × {} + {}) × {}, 25)",
            cold,
            unit_weight,
            number(a, "", 0),
            rise,
            number(b, "", 0),
            k1
        ),
        Line::Rising { a } => formula!(
            "kT γ / 25 × greatest of (25 + a v K1, 30) = {} × {} / 25 × greatest of (25 + {} × {} × {}, 30)",
            cold,
            unit_weight,
            number(a, "", 0),
            rise,
            k1
        ),
    };
    let formula = formula!(
        "{}: {} = {}; γ h = {} × {} = {}; the lesser {}",
        class.to_string(),
        by_class,
        number(by_rise, "kPa", 1),
        number(density, "kN/m³", 1),
        number(pour, "m", 3),
        number(head, "kPa", 1),
        number(kpa, "kPa", 1)
    );
    PressureLimit { kpa, formula, source: SOURCE, warnings }
}

fn warnings(fill: &Fill, setting_time_h: f64) -> Vec<Sentence> {
    let mut warnings = Vec::new();
    if !(SETTING_TIME_H..=LONGEST_SETTING_H).contains(&setting_time_h) {
        warnings.push(sentence!(
            "A setting time of {} is outside the 5 to 20 h of DIN 18218; at least 5 h is counted.",
            number(setting_time_h, "h", 1)
        ));
    }
    if fill.form > HIGHEST_FORM_M {
        warnings.push(sentence!("A form {} high is above the 10 m of DIN 18218.", length(fill.form, 1)));
    }
    if !(0.0..=FASTEST_RISE_M_H).contains(&fill.rise) {
        warnings.push(sentence!("A rise of {} is outside the 7 m/h of DIN 18218.", number(fill.rise, "m/h", 1)));
    }
    if !(5.0..=30.0).contains(&fill.temperature) {
        warnings.push(sentence!(
            "Concrete at {} is outside the 5 to 30 °C that DIN 18218 covers (from memory).",
            number(fill.temperature, "°C", 0)
        ));
    }
    warnings
}
