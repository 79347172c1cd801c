//! Lateral torsional buckling of steel beams, EN 1993-1-1.

use super::buckling::reduction;
use super::divisor::{Divisor, gamma};
use super::formula::{Comparison, no_resistance, number};
use super::steel::source;
use crate::catalogue::{Item, STEEL_MODULUS_MPA, Section, SectionProperties};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use std::f64::consts::PI;

/// Shear modulus of steel, `E / 2 (1 + ν)` of EN 1993-1-1 3.2.6 with `ν = 0.3`.
const SHEAR_MODULUS_MPA: f64 = STEEL_MODULUS_MPA / 2.6;

/// Shape of the moment and place of the load in the critical moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MomentShape {
    /// `C1`.
    pub c1: f64,
    /// `C2`.
    pub c2: f64,
    /// Load above the shear centre, mm.
    pub load_height_mm: f64,
}

impl MomentShape {
    /// Uniform load on a simple span; confirmed in print.
    pub fn uniform_load(load_height_mm: f64) -> Self {
        Self { c1: 1.127, c2: 0.454, load_height_mm }
    }

    /// A load at the middle of a simple span (from memory).
    pub fn central_load(load_height_mm: f64) -> Self {
        Self { c1: 1.348, c2: 0.630, load_height_mm }
    }

    /// Uniform load between fixed ends (from memory, low confidence).
    pub fn uniform_load_fixed_ends(load_height_mm: f64) -> Self {
        Self { c1: 2.578, c2: 1.554, load_height_mm }
    }

    /// End moments only, from 1 (single curvature) to −1: `1.88 − 1.40 ψ + 0.52 ψ² ≤ 2.7` (from memory); 1.0 where
    /// uniform.
    pub fn end_moments(psi: f64) -> Self {
        Self { c1: (1.88 - 1.40 * psi + 0.52 * psi * psi).min(2.7), c2: 0.0, load_height_mm: 0.0 }
    }
}

/// What bends sideways and twists between restraints.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Twisting {
    /// Second moment of area about the minor axis, mm⁴.
    pub minor_inertia_mm4: f64,
    /// Torsion constant, mm⁴.
    pub torsion_mm4: f64,
    /// Warping constant, mm⁶.
    pub warping_mm6: f64,
}

impl From<&SectionProperties> for Twisting {
    fn from(properties: &SectionProperties) -> Self {
        Self {
            minor_inertia_mm4: properties.minor_inertia_mm4,
            torsion_mm4: properties.torsion_mm4,
            warping_mm6: properties.warping_mm6,
        }
    }
}

/// Elastic critical moment of a span with fork ends, kNm; NCCI SN003 to EN 1993-1-1 with k = kw = 1:
/// `Mcr = C1 π² E Iz / L² {√[Iw/Iz + L² G It / (π² E Iz) + (C2 zg)²] − C2 zg}`.
pub fn critical_moment_knm(section: impl Into<Twisting>, shape: MomentShape, length_m: f64) -> f64 {
    let (e, g, length) = (STEEL_MODULUS_MPA, SHEAR_MODULUS_MPA, length_m * 1e3);
    let Twisting { minor_inertia_mm4: iz, torsion_mm4: it, warping_mm6: iw } = section.into();
    let lateral = PI * PI * e * iz / (length * length);
    let raised = shape.c2 * shape.load_height_mm;
    shape.c1 * lateral * ((iw / iz + g * it / lateral + raised * raised).sqrt() - raised) * 1e-6
}

/// `λLT,0` and `β` for rolled sections, EN 1993-1-1 6.3.2.3.
const ROLLED: (f64, f64) = (0.4, 0.75);

/// `αLT` for rolled I-sections, EN 1993-1-1 Table 6.5: curve b up to a depth of twice the breadth, c above.
pub fn rolled_imperfection(depth_by_breadth: f64) -> f64 {
    if depth_by_breadth <= 2.0 { 0.34 } else { 0.49 }
}

/// `αLT` for rolled I-sections in the general case, EN 1993-1-1 Table 6.4: curve a, or b above twice the breadth.
pub fn general_imperfection(depth_by_breadth: f64) -> f64 {
    if depth_by_breadth <= 2.0 { 0.21 } else { 0.34 }
}

/// `ΦLT = 0.5 (1 + αLT (λ − 0.4) + 0.75 λ²)`, EN 1993-1-1 6.3.2.3.
pub fn rolled_phi(slenderness: f64, imperfection: f64) -> f64 {
    let (plateau, beta) = ROLLED;
    0.5 * (1.0 + imperfection * (slenderness - plateau) + beta * slenderness * slenderness)
}

/// `χLT` of rolled sections, EN 1993-1-1 6.3.2.3.
pub fn rolled_reduction(slenderness: f64, imperfection: f64) -> f64 {
    let (phi, square) = (rolled_phi(slenderness, imperfection), slenderness * slenderness);
    (1.0 / (phi + (phi * phi - ROLLED.1 * square).max(0.0).sqrt())).min(1.0).min(1.0 / square)
}

/// Lateral torsional buckling between lateral restraints, with uniform load on the top flange and fork ends. Each of
/// several sections buckles alone. Channels follow curve d of 6.3.2.2. None for a beam that is not steel.
pub fn check_lateral_torsional(item: &Item, basis: Basis, moment_knm: f64, length_m: f64) -> Option<Verdict> {
    let top_mm = item.steel()?.section.dimensions().h / 2.0;
    check_lateral_torsional_shaped(item, basis, moment_knm, length_m, MomentShape::uniform_load(top_mm))
}

/// The same for another shape of moment and height of load.
pub fn check_lateral_torsional_shaped(
    item: &Item,
    basis: Basis,
    moment_knm: f64,
    length_m: f64,
    shape: MomentShape,
) -> Option<Verdict> {
    let steel = item.steel()?;
    let moment_knm = moment_knm.abs();
    let Some(yield_mpa) = steel.yield_mpa() else {
        let reason = format!("no strength known for steel {} of this thickness", steel.grade);
        return Some(no_resistance(CheckKind::LateralTorsional, moment_knm, "kNm", &reason));
    };
    let properties = steel.section.properties();
    let d = steel.section.dimensions();
    let plastic = super::steel::class_in_bending(&steel.section, yield_mpa).is_some_and(|class| class <= 2);
    let (symbol, modulus) =
        if plastic { ("Wpl", properties.plastic_modulus_mm3) } else { ("Wel", properties.elastic_modulus_mm3) };
    let critical = critical_moment_knm(&properties, shape, length_m);
    let slenderness = super::buckling::slenderness(modulus * yield_mpa * 1e-6, critical);
    let (chi, clause) = match steel.section {
        Section::I { .. } => (rolled_reduction(slenderness, rolled_imperfection(d.h / d.b)), "EN 1993-1-1 6.3.2.3"),
        Section::Channel { .. } => (reduction(slenderness, 0.76), "EN 1993-1-1 6.3.2.2"),
    };
    let divisor = Divisor::new(basis, gamma::STEEL);
    let count = steel.count();
    let comparison = Comparison {
        check: CheckKind::LateralTorsional,
        demand: moment_knm,
        resistance: count * chi * modulus * yield_mpa / divisor.value() * 1e-6,
        unit: "kNm",
        source: source(clause, basis),
    };
    let numbers = format!(
        "{} kNm / ({count} × {} × {} cm³ × {} N/mm² / {divisor})",
        number(moment_knm),
        number(chi),
        number(modulus * 1e-3),
        number(yield_mpa)
    );
    let given = format!("L = {} m, Mcr = {} kNm, λLT = {}", number(length_m), number(critical), number(slenderness));
    Some(comparison.verdict_given(&given, &format!("M / (n χLT {symbol} fy / γ)"), &numbers))
}
