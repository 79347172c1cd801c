//! Sliding and friction.

/// Materials that touch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Contact {
    /// Concrete on concrete; a published single value.
    ConcreteOnConcrete,
    /// Plain unrusted steel on a cast face; a published single value.
    SteelOnCastConcrete,
    /// Plain unrusted steel on trowelled concrete; a published single value.
    SteelOnTrowelledConcrete,
    /// Timber on timber, EN 12812 Annex B (from memory).
    TimberOnTimber,
    /// Timber on steel, EN 12812 Annex B (from memory).
    TimberOnSteel,
    /// Timber on concrete, EN 12812 Annex B (from memory).
    TimberOnConcrete,
    /// Steel on steel, EN 12812 Annex B (from memory).
    SteelOnSteel,
    /// Greased steel; common practice.
    GreasedSteel,
    /// PTFE on steel of a slide path on site; common practice.
    PtfeOnSteel,
}

impl Contact {
    /// Least coefficient for resistance, greatest for sliding forces.
    pub fn coefficients(self) -> (f64, f64) {
        match self {
            Self::ConcreteOnConcrete => (0.4, 0.4),
            Self::SteelOnCastConcrete => (0.1, 0.1),
            Self::SteelOnTrowelledConcrete => (0.5, 0.5),
            Self::TimberOnTimber => (0.4, 1.0),
            Self::TimberOnSteel => (0.5, 1.2),
            Self::TimberOnConcrete => (0.8, 1.0),
            Self::SteelOnSteel => (0.2, 0.8),
            Self::GreasedSteel => (0.05, 0.15),
            Self::PtfeOnSteel => (0.05, 0.10),
        }
    }
}

/// Friction under a force square to it, kN.
pub fn friction_kn(normal_kn: f64, coefficient: f64) -> f64 {
    coefficient * normal_kn
}

/// Coefficient that holds a horizontal load, given as a part of the vertical load, with a factor in hand.
pub fn coefficient_needed(horizontal_by_vertical: f64, factor: f64) -> f64 {
    horizontal_by_vertical * factor
}

/// Lubricated PTFE on stainless steel under a pressure in N/mm², in the form of EN 1337-2 (from memory, low
/// confidence): `1.2 / (10 + σ)` from 0.03 to 0.08.
pub fn ptfe_coefficient(pressure_mpa: f64) -> f64 {
    (1.2 / (10.0 + pressure_mpa)).clamp(0.03, 0.08)
}
