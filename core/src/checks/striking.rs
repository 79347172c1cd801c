//! When forms may go: maturity of the concrete, and what it must have reached.

use super::concrete::{Cement, characteristic_strength_at};
use crate::scheme::{Hardening, Temperature};

/// Concrete temperature over an hour or more: hours and °C.
pub type Interval = (f64, f64);

/// Maturity of Nurse and Saul over a temperature history, °C h: `Σ (T + 10) Δt`, nothing gained at or below −10 °C.
pub fn nurse_saul_c_h(history: &[Interval]) -> f64 {
    history.iter().map(|&(hours, celsius)| (celsius + 10.0).max(0.0) * hours.max(0.0)).sum()
}

/// Age at 20 °C of equal maturity by Nurse and Saul, h.
pub fn nurse_saul_age_h(history: &[Interval]) -> f64 {
    nurse_saul_c_h(history) / 30.0
}

/// Age at 20 °C of equal maturity, EN 1992-1-1 Annex B (B.10), h: `Σ exp(13.65 − 4000 / (273 + T)) Δt`; from 0 to 80 °C,
/// nothing gained below 0.
pub fn equivalent_age_h(history: &[Interval]) -> f64 {
    let rate = |celsius: f64| {
        if celsius < 0.0 { 0.0 } else { libm::exp(13.65 - 4000.0 / (273.0 + celsius.min(80.0))) }
    };
    history.iter().map(|&(hours, celsius)| rate(celsius) * hours.max(0.0)).sum()
}

/// Mean strength reached in a temperature history, N/mm²: EN 1992-1-1 3.1.2(6) at the lesser of the two ages.
pub fn strength_reached_mpa(mean_28_mpa: f64, cement: Cement, history: &[Interval]) -> f64 {
    let hours = equivalent_age_h(history).min(nurse_saul_age_h(history));
    mean_28_mpa * cement.hardening(hours / 24.0)
}

/// Temperatures over an age: a history is cut off there, or goes on with its last temperature.
pub fn history_to(temperature: &Temperature, hours: f64) -> Vec<Interval> {
    let given: Vec<Interval> = match temperature {
        Temperature::Mean { celsius } => vec![(hours, *celsius)],
        Temperature::History { hours_celsius } => hours_celsius.iter().map(|&[h, t]| (h.max(0.0), t)).collect(),
    };
    let (mut left, mut history) = (hours, Vec::with_capacity(given.len() + 1));
    for &(each, celsius) in &given {
        let taken = each.min(left);
        history.push((taken, celsius));
        left -= taken;
    }
    if let (true, Some(&(_, last))) = (left > 0.0, given.last()) {
        history.push((left, last));
    }
    history
}

/// Characteristic strength at an age, N/mm²: EN 1992-1-1 3.1.2(5) at the lesser of the two ages at 20 °C, so that nothing
/// is counted before it is equal to 3 days.
pub fn characteristic_at(hardening: &Hardening, age_h: f64) -> f64 {
    let history = history_to(&hardening.temperature, age_h);
    let hours = equivalent_age_h(&history).min(nurse_saul_age_h(&history));
    characteristic_strength_at(hardening.class_mpa, hardening.cement, hours / 24.0)
}

/// Hours in a history until the concrete has a strength: its last temperature goes on; none where it never does.
pub fn hours_until_in(required_mpa: f64, mean_28_mpa: f64, cement: Cement, temperature: &Temperature) -> Option<f64> {
    let part = required_mpa / mean_28_mpa;
    let wanted_h = cement.age_at(part) * 24.0;
    let reachable = part > 0.0 && part < cement.hardening(f64::INFINITY);
    if !reachable || !wanted_h.is_finite() {
        return None;
    }
    hours_to_age(wanted_h, temperature)
}

/// Hours in a history until both ages at 20 °C have come to this; none where one never does.
pub fn hours_to_age(wanted_h: f64, temperature: &Temperature) -> Option<f64> {
    let weighted = reached_h(equivalent_age_h, wanted_h, temperature)?;
    Some(weighted.max(reached_h(nurse_saul_age_h, wanted_h, temperature)?))
}

/// Hours until an age that grows evenly in each interval is reached.
fn reached_h(age_h: fn(&[Interval]) -> f64, wanted_h: f64, temperature: &Temperature) -> Option<f64> {
    let given: Vec<Interval> = match temperature {
        Temperature::Mean { celsius } => vec![(f64::INFINITY, *celsius)],
        Temperature::History { hours_celsius } => hours_celsius.iter().map(|&[h, t]| (h.max(0.0), t)).collect(),
    };
    let (mut hours, mut age) = (0.0, 0.0);
    for (index, &(each, celsius)) in given.iter().enumerate() {
        let rate = age_h(&[(1.0, celsius)]);
        let last = index + 1 == given.len();
        if rate > 0.0 && (last || age + rate * each >= wanted_h) {
            return Some(hours + ((wanted_h - age) / rate).max(0.0));
        }
        hours += each;
        age += rate * each;
    }
    None
}

/// Hours at an even temperature until the concrete has a strength; none where it never does.
pub fn hours_until(required_mpa: f64, mean_28_mpa: f64, cement: Cement, celsius: f64) -> Option<f64> {
    hours_until_in(required_mpa, mean_28_mpa, cement, &Temperature::Mean { celsius })
}

/// Strength of a wall face that is not damaged when its form is struck, N/mm² (common practice).
pub const WALL_MPA: f64 = 2.0;
/// Strength at which frost does no harm, N/mm² (common practice).
pub const FROST_MPA: f64 = 5.0;
/// Strength at which a soffit of small spans may lose its forms, N/mm², or twice the stress that it will then have
/// (common practice).
pub const SOFFIT_MPA: f64 = 10.0;

/// Strength that a slab needs to bear itself, by its load then and at service, N/mm²: `(w / w_ser) fck`, at least
/// [`SOFFIT_MPA`] (rule of UK practice, from memory).
pub fn soffit_strength_mpa(load_kpa: f64, service_kpa: f64, fck: f64) -> f64 {
    (load_kpa / service_kpa * fck).max(SOFFIT_MPA)
}

/// The same with cracking in mind: `w / w_ser ≤ (fc / fck)^0.6` (Beeby, from memory), so `fck (w / w_ser)^(1 / 0.6)`.
pub fn soffit_strength_beeby_mpa(load_kpa: f64, service_kpa: f64, fck: f64) -> f64 {
    fck * libm::pow(load_kpa / service_kpa, 1.0 / 0.6)
}

/// Least times before striking without tests, of Portland cement concrete: BS 8110 Table 6.2 (from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Walls and columns.
    Vertical,
    /// Soffits of slabs, props left in.
    SlabSoffit,
    /// Soffits of beams, props left in.
    BeamSoffit,
    /// Props of slabs.
    SlabProps,
    /// Props of beams.
    BeamProps,
}

/// `a / (T + 10)`, not below the value of 16 °C, hours; `T` mean air temperature, °C. Never below freezing.
pub fn least_time_h(form: Form, celsius: f64) -> Option<f64> {
    let (rate, warm) = match form {
        Form::Vertical => (300.0, 12.0),
        Form::SlabSoffit => (2400.0, 96.0),
        Form::BeamSoffit => (5520.0, 240.0),
        Form::SlabProps => (6000.0, 240.0),
        Form::BeamProps => (8640.0, 336.0),
    };
    (celsius >= 0.0).then(|| if celsius >= 16.0 { warm } else { (rate / (celsius + 10.0)).max(warm) })
}
