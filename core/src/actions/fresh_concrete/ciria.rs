//! CIRIA Report 108 (1985): `Pmax = D [C1 √R + C2 K √(H − C1 √R)] ≤ D h`, and `D h` where `C1 √R > H`.
//! `D` kN/m³, `R` m/h, `T` °C, `H` height of the form, `h` of the pour, m.

use super::{Fill, PressureLimit};
use crate::sentence::{Sentence, number};

/// Temperatures that the report was drawn up for (from memory), °C.
const TEMPERATURES_C: [f64; 2] = [5.0, 30.0];
/// Coefficients of constituent materials.
const C2: [f64; 2] = [0.30, 0.60];
/// Coefficients of section shape.
const C1: [f64; 2] = [1.0, 1.5];
const SOURCE: &str = "CIRIA Report 108 (1985)";

/// `K = (36 / (T + 16))²`; none where the temperature is at or below −16 °C.
pub fn temperature_factor(temperature_c: f64) -> Option<f64> {
    (temperature_c > -16.0).then(|| {
        let root = 36.0 / (temperature_c + 16.0);
        root * root
    })
}

/// `C1 √R`, m.
pub fn filling_term(c1: f64, rise_m_h: f64) -> f64 {
    c1 * rise_m_h.sqrt()
}

/// `D [C1 √R + C2 K √(H − C1 √R)]`, kPa; none where `C1 √R > H`.
pub fn pressure_by_rise(density_kn_m3: f64, filling_m: f64, c2: f64, k: f64, form_m: f64) -> Option<f64> {
    (filling_m <= form_m).then(|| density_kn_m3 * (filling_m + c2 * k * (form_m - filling_m).sqrt()))
}

pub(super) fn limit(fill: &Fill, c1: f64, c2: f64) -> PressureLimit {
    let Fill { density, temperature, rise, form, pour } = *fill;
    let mut warnings = warnings(c1, c2, temperature);
    let usable = rise >= 0.0 && rise.is_finite() && c1 >= 0.0 && c2 >= 0.0;
    let Some(k) = temperature_factor(temperature).filter(|_| usable) else {
        warnings.push(sentence!(
            "The rise, temperature or coefficients cannot be used with CIRIA Report 108: fluid pressure is taken."
        ));
        return fill.fluid(SOURCE, warnings);
    };
    let filling = filling_term(c1, rise);
    let Some(by_rise) = pressure_by_rise(density, filling, c2, k, form) else {
        let mut limit = fill.fluid(SOURCE, warnings);
        limit.formula =
            formula!("C1 √R = {} > H = {}, so {}", number(filling, "", 2), number(form, "m", 2), limit.formula);
        return limit;
    };
    let head = density * pour;
    let kpa = by_rise.min(head);
    let formula = formula!(
        "D [C1 √R + C2 K √(H − C1 √R)] = {0} × [{1} × √{2} + {3} × {4} × √({5} − {1} × √{2})] = {6}; \
         D h = {0} × {7} = {8}; the lesser {9}",
        number(density, "kN/m³", 1),
        number(c1, "", 2),
        number(rise, "", 3),
        number(c2, "", 2),
        number(k, "", 3),
        number(form, "", 3),
        number(by_rise, "kPa", 1),
        number(pour, "m", 3),
        number(head, "kPa", 1),
        number(kpa, "kPa", 1)
    );
    PressureLimit { kpa, formula, source: SOURCE, warnings }
}

fn warnings(c1: f64, c2: f64, temperature: f64) -> Vec<Sentence> {
    let mut warnings = Vec::new();
    let [cold, hot] = TEMPERATURES_C;
    if !(cold..=hot).contains(&temperature) {
        warnings.push(sentence!(
            "Concrete at {} is outside the {} to {} that CIRIA Report 108 covers.",
            number(temperature, "°C", 0),
            number(cold, "", 0),
            number(hot, "°C", 0)
        ));
    }
    let [least, most] = C2;
    if !(least..=most).contains(&c2) {
        warnings.push(sentence!(
            "C2 = {} is outside the {} to {} of CIRIA Report 108.",
            number(c2, "", 2),
            number(least, "", 2),
            number(most, "", 2)
        ));
    }
    if !C1.contains(&c1) {
        warnings.push(sentence!("C1 = {} is neither 1.0 (walls and bases) nor 1.5 (columns).", number(c1, "", 2)));
    }
    warnings
}
