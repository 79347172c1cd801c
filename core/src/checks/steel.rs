use super::beam::BeamForces;
use super::comparison::{Comparison, no_resistance};
use super::divisor::{Divisor, gamma};
use super::en1993;
use super::hollow;
use super::web;
use crate::catalogue::{Section, SectionProperties, Steel};
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::{Sentence, word};

/// Rolled steel: bending with its reduction for high shear, shear, and the web under a support force.
pub(super) fn check(steel: &Steel, basis: Basis, forces: BeamForces) -> Vec<Verdict> {
    let Some(yield_mpa) = steel.yield_mpa() else {
        let reason = format!("no strength known for steel {} of this thickness", steel.grade);
        return vec![no_resistance(CheckKind::Bending, forces.moment_knm, "kNm", &reason)];
    };
    let Some(class) = class_in_bending(&steel.section, yield_mpa) else {
        let reason = "the section is of class 4 of EN 1993-1-1, which is not covered";
        return vec![no_resistance(CheckKind::Bending, forces.moment_knm, "kNm", reason)];
    };
    if !web_is_stocky(&steel.section, yield_mpa) {
        let reason = "the web may buckle in shear (EN 1993-1-1 6.2.6(6)), which is not covered";
        return vec![no_resistance(CheckKind::Shear, forces.shear_kn, "kN", reason)];
    }
    let member = Member { steel, yield_mpa, class, properties: steel.section.properties(), basis };
    let shear = member.shear(forces.shear_kn);
    let high_shear = shear.ratio();
    let mut verdicts = vec![member.bending(forces.moment_knm, high_shear), shear];
    if let Some(force) = forces.bearing_kn {
        verdicts.push(match steel.section {
            Section::I { .. } | Section::Channel { .. } => {
                web::check(steel, yield_mpa, basis, force, forces.bearing_length_m)
            }
            _ => hollow::check_bearing(steel, yield_mpa, basis, forces),
        });
    }
    verdicts
}

/// Clause, and what the basis makes of it.
pub(super) fn source(clause: impl Into<Sentence>, basis: Basis) -> Sentence {
    let clause = clause.into();
    match basis {
        Basis::WorkingLoad => formula!("{} divided by 1.65, as in BS 5975 practice (from memory)", clause),
        Basis::LimitStateB1 => formula!("{}, γM 1.1 of EN 12812", clause),
        Basis::LimitStateB2 => formula!("{}, γM 1.1 of EN 12812; class B2", clause),
    }
}

struct Member<'a> {
    steel: &'a Steel,
    yield_mpa: f64,
    class: u8,
    properties: SectionProperties,
    basis: Basis,
}

impl Member<'_> {
    fn divisor(&self) -> Divisor {
        Divisor::new(self.basis, gamma::STEEL)
    }

    fn shear(&self, shear_kn: f64) -> Verdict {
        let (count, area) = (self.steel.count(), self.properties.shear_area_mm2);
        let comparison = Comparison {
            check: CheckKind::Shear,
            demand: shear_kn,
            resistance: count * en1993::shear_kn(area, self.yield_mpa) / self.divisor().value(),
            unit: "kN",
            source: source("EN 1993-1-1 6.2.6", self.basis),
        };
        let numbers = formula!(
            "{} kN / ({} × {} mm² × {} N/mm² / √3 / {})",
            number(shear_kn),
            stated(count),
            number(area),
            number(self.yield_mpa),
            self.divisor()
        );
        comparison.verdict("V / (n Av fy / √3 / γ)", numbers)
    }

    /// Class 1 and 2 use the plastic modulus. Where shear is above half its resistance: I-sections by 6.2.8(5),
    /// others with the whole modulus reduced.
    fn bending(&self, moment_knm: f64, shear_ratio: f64) -> Verdict {
        let plastic = self.class <= 2;
        let full = if plastic { self.properties.plastic_modulus_mm3 } else { self.properties.elastic_modulus_mm3 };
        let high = shear_ratio > 0.5;
        let reduction = en1993::high_shear(shear_ratio);
        let modulus = match self.steel.section {
            Section::I { .. } if plastic => {
                let d = self.steel.section.dimensions();
                en1993::modulus_with_shear_mm3(full, reduction, d.web_depth() * d.tw, d.tw)
            }
            _ => full * (1.0 - reduction),
        };
        let count = self.steel.count();
        let clause = if high { "EN 1993-1-1 6.2.8" } else { "EN 1993-1-1 6.2.5" };
        let comparison = Comparison {
            check: CheckKind::Bending,
            demand: moment_knm,
            resistance: count * en1993::moment_knm(modulus, self.yield_mpa) / self.divisor().value(),
            unit: "kNm",
            source: source(clause, self.basis),
        };
        let symbol = if plastic { "Wpl" } else { "Wel" };
        let numbers = formula!(
            "{} kNm / ({} × {} cm³ × {} N/mm² / {})",
            number(moment_knm),
            stated(count),
            number(modulus * 1e-3),
            number(self.yield_mpa),
            self.divisor()
        );
        let symbols = formula!("M / (n {} fy / γ)", word(symbol));
        if high {
            let given = formula!("{} reduced for shear with ρ = {}", word(symbol), number(reduction));
            comparison.verdict_given(given, symbols, numbers)
        } else {
            comparison.verdict(symbols, numbers)
        }
    }
}

/// Class in bending, EN 1993-1-1 Table 5.2; none for class 4. Of open sections that of the flanges: a web that need not
/// be checked for shear buckling is of class 1.
pub(super) fn class_in_bending(section: &Section, yield_mpa: f64) -> Option<u8> {
    let epsilon = (235.0 / yield_mpa).sqrt();
    let d = section.dimensions();
    let class = |ratio: f64, limits: [f64; 3]| {
        limits.iter().zip(1..).find(|(limit, _)| ratio <= *limit * epsilon).map(|(_, class)| class)
    };
    const OUTSTAND: [f64; 3] = [9.0, 10.0, 14.0];
    match *section {
        Section::I { .. } => class(((d.b - d.tw) / 2.0 - d.r) / d.tf, OUTSTAND),
        Section::Channel { .. } => class((d.b - d.tw - d.r) / d.tf, OUTSTAND),
        Section::Hollow { h_mm, b_mm, t_mm } => {
            let flange: Option<u8> = class(b_mm / t_mm - 3.0, [33.0, 38.0, 42.0]);
            Some(flange?.max(class(h_mm / t_mm - 3.0, [72.0, 83.0, 124.0])?))
        }
        Section::Round { d_mm, t_mm } => en1993::tube_class(d_mm / t_mm, yield_mpa),
    }
}

/// Whether shear buckling need not be checked: `hw / tw ≤ 72 ε / η` with η = 1.0.
fn web_is_stocky(section: &Section, yield_mpa: f64) -> bool {
    if matches!(section, Section::Round { .. }) {
        return true;
    }
    let d = section.dimensions();
    d.web_depth() / d.tw <= 72.0 * (235.0 / yield_mpa).sqrt()
}
