//! Movement and force of members that warm or cool between fixed points.

/// Thermal expansion of steel, EN 1991-1-5 Annex C, for each K.
pub const STEEL_EXPANSION: f64 = 12e-6;
/// Thermal expansion of concrete, EN 1991-1-5 Annex C, for each K.
pub const CONCRETE_EXPANSION: f64 = 10e-6;

/// Free change of length, m.
pub fn movement_m(expansion: f64, length_m: f64, warmer_k: f64) -> f64 {
    expansion * length_m * warmer_k
}

/// Compression of a member between supports of one joint stiffness, kN: `α ΔT L / (L / EA + 1 / k)`.
pub fn restrained_force_kn(expansion: f64, warmer_k: f64, length_m: f64, ea_kn: f64, support_kn_m: f64) -> f64 {
    movement_m(expansion, length_m, warmer_k) / (length_m / ea_kn + 1.0 / support_kn_m)
}
