use super::buckling::{Bending, critical_force_kn, curve_of_rolled_i, imperfection, reduction, slenderness};
use super::comparison::{Comparison, no_resistance};
use super::divisor::{Divisor, gamma};
use super::en1993::{added_up, interaction_rate, minor_interaction_rate, moment_knm};
use super::lateral_torsional::{MomentShape, check_lateral_torsional_shaped};
use super::steel::{class_in_bending, source};
use crate::catalogue::{Item, Section};
use crate::formula::number;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::word;

/// A rolled member compressed and bent about both axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamColumn {
    /// Compression.
    pub compression_kn: f64,
    /// Greatest moment about the stronger axis.
    pub moment_knm: f64,
    /// Greatest moment about the weaker axis.
    pub minor_moment_knm: f64,
    /// Buckling length about the stronger axis.
    pub major_m: f64,
    /// Buckling length about the weaker axis, and between lateral restraints.
    pub minor_m: f64,
}

/// EN 1993-1-1 6.3.3 with Annex B for rolled I-sections of class 1 and 2: `N / Nb,y + kyy My / Mb + kyz Mz / Mc,z` and
/// `N / Nb,z + kzy My / Mb + kzz Mz / Mc,z` with `Cm` 1, `kyz = 0.6 kzz`, and `kzy` taken as 1. Uniform moment for lateral
/// torsional buckling. Others get none.
pub fn check_beam_column(item: &Item, basis: Basis, member: &BeamColumn) -> Vec<Verdict> {
    let demand = member.compression_kn;
    let refuse = |reason: &str| vec![no_resistance(CheckKind::Buckling, demand, "kN", reason)];
    let Some(steel) = item.steel() else { return refuse(&format!("{} is not of steel", item.code)) };
    let (Section::I { h_mm, b_mm, tf_mm, .. }, Some(yield_mpa)) = (steel.section, steel.yield_mpa()) else {
        return refuse("only rolled I-sections of known strength are covered");
    };
    if class_in_bending(&steel.section, yield_mpa).is_none_or(|class| class > 2) {
        return refuse("only classes 1 and 2 of EN 1993-1-1 are covered");
    }
    let properties = steel.section.properties();
    let divisor = Divisor::new(basis, gamma::STEEL).value();
    let squash_kn = properties.area_mm2 * yield_mpa * 1e-3;
    let strut = |about: Bending, inertia_mm4: f64, length_m: f64| {
        let alpha = curve_of_rolled_i(h_mm / b_mm, tf_mm, about).and_then(imperfection)?;
        let slender = slenderness(squash_kn, critical_force_kn(inertia_mm4 * 1e-12, length_m));
        Some((slender, steel.count() * reduction(slender, alpha) * squash_kn / divisor))
    };
    let major = strut(Bending::Major, properties.major_inertia_mm4, member.major_m);
    let minor = strut(Bending::Minor, properties.minor_inertia_mm4, member.minor_m);
    let shape = MomentShape::end_moments(1.0);
    let twisting = check_lateral_torsional_shaped(item, basis, member.moment_knm, member.minor_m, shape);
    let (Some((slender, about_y)), Some((slender_z, about_z)), Some(twisting)) = (major, minor, twisting) else {
        return refuse("no buckling curve is known for flanges of this thickness");
    };
    let part = |buckling_kn: f64| (demand / buckling_kn).clamp(0.0, 1.0);
    let k = 1.0 + interaction_rate(slender, true) * part(about_y);
    let kzz = 1.0 + minor_interaction_rate(slender_z) * part(about_z);
    let minor_knm = steel.count() * moment_knm(properties.minor_modulus_mm3, yield_mpa) / divisor;
    let sum = |name: &'static str, buckling_kn: f64, k: f64, k_minor: f64| {
        let (moment, resistance) = (member.moment_knm.abs(), twisting.resistance);
        let minor = member.minor_moment_knm.abs();
        let bending = k * moment / resistance + k_minor * minor / minor_knm;
        let ratio = added_up(demand / buckling_kn, bending);
        let comparison = Comparison {
            check: CheckKind::Buckling,
            demand,
            resistance: if ratio > 0.0 { demand / ratio } else { buckling_kn },
            unit: "kN",
            source: source("EN 1993-1-1 6.3.3, Annex B", basis),
        };
        let numbers = formula!(
            "{} kN / {} kN + {} × {} kNm / {} kNm + {} × {} kNm / {} kNm",
            number(demand),
            number(buckling_kn),
            number(k),
            number(moment),
            number(resistance),
            number(k_minor),
            number(minor),
            number(minor_knm)
        );
        comparison.verdict(formula!("N / Nb,{0} + k{0}y My / Mb + k{0}z Mz / Mc,z", word(name)), numbers)
    };
    vec![sum("y", about_y, k, 0.6 * kzz), sum("z", about_z, 1.0, kzz)]
}
