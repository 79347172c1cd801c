//! Buckling curves of EN 1993-1-1.

use super::divisor::{Divisor, gamma};
use super::formula::{Comparison, no_resistance, number};
use super::steel::source;
use crate::catalogue::{STEEL_MODULUS_MPA, Tube};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
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

/// A tube in compression.
pub(super) struct Strut<'a> {
    pub tube: Tube,
    pub yield_mpa: f64,
    pub curve: &'a str,
    pub length_m: f64,
}

impl Strut<'_> {
    /// Axial compression against flexural buckling; eccentricity of the load is not in it.
    pub fn check(&self, basis: Basis, force_kn: f64) -> Verdict {
        let Some(alpha) = imperfection(self.curve) else {
            let reason = format!("no buckling curve named {}", self.curve);
            return no_resistance(CheckKind::Buckling, force_kn, "kN", &reason);
        };
        let ratio = self.tube.diameter_m / self.tube.wall_m;
        if ratio > 90.0 * 235.0 / self.yield_mpa {
            let reason = "the tube is of class 4 of EN 1993-1-1, which is not covered";
            return no_resistance(CheckKind::Buckling, force_kn, "kN", reason);
        }
        let area_mm2 = self.tube.area_m2() * 1e6;
        let squash_kn = area_mm2 * self.yield_mpa * 1e-3;
        let slenderness = (squash_kn / critical_force_kn(self.tube.inertia_m4(), self.length_m)).sqrt();
        let chi = reduction(slenderness, alpha);
        let divisor = Divisor::new(basis, gamma::STEEL);
        let comparison = Comparison {
            check: CheckKind::Buckling,
            demand: force_kn,
            resistance: chi * squash_kn / divisor.value(),
            unit: "kN",
            source: source("EN 1993-1-1 6.3.1", basis),
        };
        let numbers = format!(
            "{} kN / ({} × {} mm² × {} N/mm² / {divisor})",
            number(force_kn),
            number(chi),
            number(area_mm2),
            number(self.yield_mpa)
        );
        let given = format!("L = {} m, λ = {}, curve {}", number(self.length_m), number(slenderness), self.curve);
        comparison.verdict_given(&given, "N / (χ A fy / γ)", &numbers)
    }
}
