//! When forms may go: maturity of the concrete, and what it must have reached.

use super::concrete::Cement;

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

/// Hours at an even temperature until the concrete has a strength; none where it never does.
pub fn hours_until(required_mpa: f64, mean_28_mpa: f64, cement: Cement, celsius: f64) -> Option<f64> {
    let part = required_mpa / mean_28_mpa;
    let each = equivalent_age_h(&[(1.0, celsius)]).min(nurse_saul_age_h(&[(1.0, celsius)]));
    let reachable = part > 0.0 && part < libm::exp(0.2) && each > 0.0;
    let hours = cement.age_at(part) * 24.0 / each;
    (reachable && hours.is_finite()).then_some(hours)
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
