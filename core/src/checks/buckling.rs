//! Buckling curves of EN 1993-1-1.

use crate::catalogue::STEEL_MODULUS_MPA;
use std::f64::consts::PI;

/// Imperfection factor of a buckling curve, EN 1993-1-1 Table 6.1.
pub fn imperfection(curve: &str) -> Option<f64> {
    match curve {
        "a0" => Some(0.13),
        "a" => Some(0.21),
        "b" => Some(0.34),
        "c" => Some(0.49),
        "d" => Some(0.76),
        _ => None,
    }
}

/// `Φ = 0.5 (1 + α (λ − 0.2) + λ²)`, EN 1993-1-1 6.3.1.2.
pub fn phi(slenderness: f64, imperfection: f64) -> f64 {
    0.5 * (1.0 + imperfection * (slenderness - 0.2) + slenderness * slenderness)
}

/// Reduction factor `χ = 1 / (Φ + √(Φ² − λ²)) ≤ 1`, EN 1993-1-1 6.3.1.2.
pub fn reduction(slenderness: f64, imperfection: f64) -> f64 {
    let phi = phi(slenderness, imperfection);
    (1.0 / (phi + (phi * phi - slenderness * slenderness).max(0.0).sqrt())).min(1.0)
}

/// `λ = √(A fy / Ncr)`, EN 1993-1-1 6.3.1.2; forces in one unit.
pub fn slenderness(squash: f64, critical: f64) -> f64 {
    (squash / critical).sqrt()
}

/// Axes of a section.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bending {
    /// About the stronger axis, `y`.
    Major,
    /// About the weaker axis, `z`.
    Minor,
}

/// Buckling curve of a rolled I-section in S235 to S420, EN 1993-1-1 Table 6.2; none beyond 100 mm flanges.
pub fn curve_of_rolled_i(depth_by_breadth: f64, flange_mm: f64, about: Bending) -> Option<&'static str> {
    let (major, minor) = match (depth_by_breadth > 1.2, flange_mm) {
        (true, t) if t <= 40.0 => ("a", "b"),
        (true, t) if t <= 100.0 => ("b", "c"),
        (false, t) if t <= 100.0 => ("b", "c"),
        _ => return None,
    };
    Some(if about == Bending::Major { major } else { minor })
}

/// Buckling curve of a hollow section, EN 1993-1-1 Table 6.2.
pub fn curve_of_hollow(hot_finished: bool) -> &'static str {
    if hot_finished { "a" } else { "c" }
}

/// Elastic critical force `π² E I / L²`, kN.
pub fn critical_force_kn(inertia_m4: f64, length_m: f64) -> f64 {
    PI * PI * STEEL_MODULUS_MPA * 1e3 * inertia_m4 / (length_m * length_m)
}
