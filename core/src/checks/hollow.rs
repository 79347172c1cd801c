//! Hollow sections under a support force.

use super::beam::BeamForces;
use super::buckling::{imperfection, reduction};
use super::comparison::Comparison;
use super::divisor::{Divisor, gamma};
use super::steel::source;
use crate::catalogue::{STEEL_MODULUS_MPA, Section, Steel};
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use std::f64::consts::PI;

/// One wall of a rectangular hollow section above the end of a support, kN, in the manner of EN 1993-1-8 Table 7.11 for
/// side walls (from memory): `χ fy t (b1 + 2.5 t)`, `χ` by curve a at `λ = 3.46 (h / t − 2) / (π √(E / fy))`.
pub fn side_wall_kn(h_mm: f64, t_mm: f64, yield_mpa: f64, stiff_mm: f64) -> f64 {
    let slenderness = 3.46 * (h_mm / t_mm - 2.0).max(0.0) / (PI * (STEEL_MODULUS_MPA / yield_mpa).sqrt());
    let chi = reduction(slenderness, imperfection("a").unwrap_or(0.21));
    chi * yield_mpa * t_mm * (stiff_mm + 2.5 * t_mm) * 1e-3
}

/// A round tube pressed by a plate along it, kN: EN 1993-1-8 Table 7.3 (from memory), `5 kp fy t² (1 + 0.25 η)` with
/// `η = b1 / d ≤ 4` and `kp = 1 − 0.3 n (1 + n)` beside a bending stress of `n` times the yield strength.
pub fn tube_wall_kn(d_mm: f64, t_mm: f64, yield_mpa: f64, stiff_mm: f64, n: f64) -> f64 {
    let n = n.clamp(0.0, 1.0);
    let kp = 1.0 - 0.3 * n * (1.0 + n);
    5.0 * kp * yield_mpa * t_mm * t_mm * (1.0 + 0.25 * (stiff_mm / d_mm).min(4.0)) * 1e-3
}

/// Walls of a hollow section under a support force. A tube counts its greatest moment as standing there.
pub(super) fn check_bearing(steel: &Steel, yield_mpa: f64, basis: Basis, forces: BeamForces) -> Verdict {
    let (divisor, count) = (Divisor::new(basis, gamma::STEEL), steel.count());
    let stiff_mm = forces.bearing_length_m * 1e3;
    let (walls, wall_kn, clause) = match steel.section {
        Section::Round { d_mm, t_mm } => {
            let elastic_knm = steel.section.properties().elastic_modulus_mm3 * yield_mpa * 1e-6 * count;
            let n = forces.moment_knm * divisor.value() / elastic_knm;
            (1.0, tube_wall_kn(d_mm, t_mm, yield_mpa, stiff_mm, n), "EN 1993-1-8 Table 7.3 (from memory)")
        }
        _ => {
            let d = steel.section.dimensions();
            (2.0, side_wall_kn(d.h, d.tw, yield_mpa, stiff_mm), "EN 1993-1-8 Table 7.11 (from memory)")
        }
    };
    let force_kn = forces.bearing_kn.unwrap_or(0.0);
    let comparison = Comparison {
        check: CheckKind::Bearing,
        demand: force_kn,
        resistance: count * walls * wall_kn / divisor.value(),
        unit: "kN",
        source: source(clause, basis),
    };
    let numbers = formula!(
        "{} kN / ({} × {} × {} kN / {})",
        number(force_kn),
        stated(count),
        stated(walls),
        number(wall_kn),
        divisor
    );
    comparison.verdict_given(formula!("b1 = {} mm", number(stiff_mm)), "F / (n walls FRk / γ)", numbers)
}
