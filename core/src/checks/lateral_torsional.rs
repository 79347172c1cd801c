//! Lateral torsional buckling of steel beams, EN 1993-1-1.

use super::buckling::reduction;
use super::comparison::{Comparison, no_resistance};
use super::divisor::{Divisor, gamma};
pub use super::moment_shape::{MomentShape, Segment};
use super::steel::source;
use crate::catalogue::{Item, STEEL_MODULUS_MPA, Section, SectionProperties};
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::word;
use std::f64::consts::PI;

/// Shear modulus of steel, `E / 2 (1 + ν)` of EN 1993-1-1 3.2.6 with `ν = 0.3`.
const SHEAR_MODULUS_MPA: f64 = STEEL_MODULUS_MPA / 2.6;

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
    match LateralTorsional::of(item, basis)? {
        Ok(beam) => Some(beam.verdict(moment_knm, length_m, shape)),
        Err(reason) => Some(no_resistance(CheckKind::LateralTorsional, moment_knm.abs(), "kNm", &reason)),
    }
}

/// What a steel beam needs for its lateral torsional buckling, worked out once.
pub(crate) struct LateralTorsional {
    twisting: Twisting,
    clause: &'static str,
    /// Symbol and size of the modulus, mm³.
    modulus: (&'static str, f64),
    depth_by_breadth: f64,
    rolled: bool,
    yield_mpa: f64,
    count: f64,
    basis: Basis,
}

/// Steps from a critical moment to a resistance.
struct Reduced {
    critical_knm: f64,
    slenderness: f64,
    chi: f64,
    resistance_knm: f64,
}

impl LateralTorsional {
    /// None for what is not a steel beam; the reason where its strength is not known.
    pub fn of(item: &Item, basis: Basis) -> Option<Result<Self, String>> {
        let steel = item.steel()?;
        let Some(yield_mpa) = steel.yield_mpa() else {
            return Some(Err(format!("no strength known for steel {} of this thickness", steel.grade)));
        };
        let properties = steel.section.properties();
        let d = steel.section.dimensions();
        let plastic = super::steel::class_in_bending(&steel.section, yield_mpa).is_some_and(|class| class <= 2);
        let rolled = matches!(steel.section, Section::I { .. });
        Some(Ok(Self {
            twisting: (&properties).into(),
            clause: if rolled { "EN 1993-1-1 6.3.2.3" } else { "EN 1993-1-1 6.3.2.2" },
            modulus: if plastic {
                ("Wpl", properties.plastic_modulus_mm3)
            } else {
                ("Wel", properties.elastic_modulus_mm3)
            },
            depth_by_breadth: d.h / d.b,
            rolled,
            yield_mpa,
            count: steel.count(),
            basis,
        }))
    }

    fn reduced(&self, length_m: f64, shape: MomentShape) -> Reduced {
        let modulus = self.modulus.1;
        let critical_knm = critical_moment_knm(self.twisting, shape, length_m);
        let slenderness = super::buckling::slenderness(modulus * self.yield_mpa * 1e-6, critical_knm);
        let chi = if self.rolled {
            rolled_reduction(slenderness, rolled_imperfection(self.depth_by_breadth))
        } else {
            reduction(slenderness, 0.76)
        };
        let divisor = Divisor::new(self.basis, gamma::STEEL).value();
        let resistance_knm = self.count * chi * modulus * self.yield_mpa / divisor * 1e-6;
        Reduced { critical_knm, slenderness, chi, resistance_knm }
    }

    /// Resistance of all sections side by side, kNm.
    pub fn resistance_knm(&self, length_m: f64, shape: MomentShape) -> f64 {
        self.reduced(length_m, shape).resistance_knm
    }

    /// A moment against it.
    pub fn verdict(&self, moment_knm: f64, length_m: f64, shape: MomentShape) -> Verdict {
        let Reduced { critical_knm, slenderness, chi, resistance_knm } = self.reduced(length_m, shape);
        let (symbol, modulus) = self.modulus;
        let (count, divisor) = (self.count, Divisor::new(self.basis, gamma::STEEL));
        let moment_knm = moment_knm.abs();
        let comparison = Comparison {
            check: CheckKind::LateralTorsional,
            demand: moment_knm,
            resistance: resistance_knm,
            unit: "kNm",
            source: source(self.clause, self.basis),
        };
        let numbers = formula!(
            "{} kNm / ({} × {} × {} cm³ × {} N/mm² / {})",
            number(moment_knm),
            stated(count),
            number(chi),
            number(modulus * 1e-3),
            number(self.yield_mpa),
            divisor
        );
        let given = formula!(
            "L = {} m, C1 = {}, C2 = {}, zg = {} mm, Mcr = {} kNm, λLT = {}",
            number(length_m),
            number(shape.c1),
            number(shape.c2),
            number(shape.load_height_mm),
            number(critical_knm),
            number(slenderness)
        );
        comparison.verdict_given(given, formula!("M / (n χLT {} fy / γ)", word(symbol)), numbers)
    }
}
