//! Lateral torsional buckling of steel beams, EN 1993-1-1.

use super::buckling::reduction;
use super::divisor::{Divisor, gamma};
use super::formula::{Comparison, no_resistance, number};
use super::steel::source;
use crate::catalogue::{Item, STEEL_MODULUS_MPA, Section, SectionProperties};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use std::f64::consts::PI;

/// Shear modulus of steel, EN 1993-1-1 3.2.6.
const SHEAR_MODULUS_MPA: f64 = 81_000.0;

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
    /// Uniform load on a simple span.
    pub fn uniform_load(load_height_mm: f64) -> Self {
        Self { c1: 1.127, c2: 0.454, load_height_mm }
    }
}

/// Elastic critical moment of a span with fork ends, kNm; NCCI SN003 to EN 1993-1-1 with k = kw = 1:
/// `Mcr = C1 π² E Iz / L² {√[Iw/Iz + L² G It / (π² E Iz) + (C2 zg)²] − C2 zg}`.
pub fn critical_moment_knm(properties: &SectionProperties, shape: MomentShape, length_m: f64) -> f64 {
    let (e, g, length) = (STEEL_MODULUS_MPA, SHEAR_MODULUS_MPA, length_m * 1e3);
    let (iz, it, iw) = (properties.minor_inertia_mm4, properties.torsion_mm4, properties.warping_mm6);
    let lateral = PI * PI * e * iz / (length * length);
    let raised = shape.c2 * shape.load_height_mm;
    shape.c1 * lateral * ((iw / iz + g * it / lateral + raised * raised).sqrt() - raised) * 1e-6
}

/// `χLT` for rolled I-sections, EN 1993-1-1 6.3.2.3 with λLT,0 = 0.4 and β = 0.75: curve b up to a depth of twice the
/// breadth, c above.
pub fn rolled_reduction(slenderness: f64, depth_by_breadth: f64) -> f64 {
    let alpha = if depth_by_breadth <= 2.0 { 0.34 } else { 0.49 };
    let square = slenderness * slenderness;
    let phi = 0.5 * (1.0 + alpha * (slenderness - 0.4) + 0.75 * square);
    (1.0 / (phi + (phi * phi - 0.75 * square).max(0.0).sqrt())).min(1.0).min(1.0 / square)
}

/// Lateral torsional buckling between lateral restraints, with uniform load on the top flange and fork ends. Each of
/// several sections buckles alone. Channels follow curve d of 6.3.2.2. None for a beam that is not steel.
pub fn check_lateral_torsional(item: &Item, basis: Basis, moment_knm: f64, length_m: f64) -> Option<Verdict> {
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
    let critical = critical_moment_knm(&properties, MomentShape::uniform_load(d.h / 2.0), length_m);
    let slenderness = (modulus * yield_mpa * 1e-6 / critical).sqrt();
    let (chi, clause) = match steel.section {
        Section::I { .. } => (rolled_reduction(slenderness, d.h / d.b), "EN 1993-1-1 6.3.2.3"),
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
