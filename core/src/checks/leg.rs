use super::comparison::{Comparison, no_resistance};
use super::divisor::{Divisor, gamma, stated_load_factor};
use super::prop::PropClass;
use super::steel::source;
use super::strut::{Strut, StrutForces};
use crate::catalogue::{Item, PropRating};
use crate::formula::number;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::word;

/// A leg or prop in compression between points held sideways, and its head and base jacks.
///
/// Erection tolerances of BS 5975 are 25 mm of eccentricity, which comes in with the forces, and 1.5° of lean, which
/// the least horizontal load of 2.5 % stands for. Published safe loads of props rest on the same two.
pub fn check_leg(item: &Item, basis: Basis, forces: &StrutForces, buckling_length_m: f64) -> Vec<Verdict> {
    let compression_kn = forces.compression_kn;
    let Some(leg) = item.leg() else {
        let reason = format!("{} is not a leg", item.code);
        return vec![no_resistance(CheckKind::Buckling, compression_kn, "kN", &reason)];
    };
    let strut = Strut { tube: leg.tube(), yield_mpa: leg.yield_mpa, curve: &leg.curve, length_m: buckling_length_m };
    let jack = StatedLoad { check: CheckKind::Bearing, name: "jacks", working_kn: leg.jack_working_kn };
    let mut verdicts = match &leg.rating {
        Some(rating) => vec![check_rating(rating, basis, compression_kn, buckling_length_m)],
        None => strut.check(basis, forces),
    };
    verdicts.push(jack.check(basis, compression_kn));
    verdicts
}

/// An adjustable prop at its extension. Its strength already has the eccentricity and lean of EN 1065 in it.
fn check_rating(rating: &PropRating, basis: Basis, compression_kn: f64, extension_m: f64) -> Verdict {
    let known = PropClass::named(&rating.class)
        .and_then(|class| class.characteristic_kn(rating.greatest_m, extension_m).map(|kn| (class, kn)));
    let Some((class, characteristic_kn)) = known else {
        let reason = format!(
            "a class {} prop of at most {} m is not made for {} m",
            rating.class,
            number(rating.greatest_m),
            number(extension_m)
        );
        return no_resistance(CheckKind::Buckling, compression_kn, "kN", &reason);
    };
    let divisor = Divisor::new(basis, gamma::STEEL);
    let comparison = Comparison {
        check: CheckKind::Buckling,
        demand: compression_kn,
        resistance: characteristic_kn / divisor.value(),
        unit: "kN",
        source: source(formula!("EN 1065 class {}", format!("{class:?}")), basis),
    };
    let numbers = formula!("{} kN / ({} kN / {})", number(compression_kn), number(characteristic_kn), divisor);
    let given = formula!("lmax = {} m, l = {} m", number(rating.greatest_m), number(extension_m));
    comparison.verdict_given(given, "N / (Ry,k / γ)", numbers)
}

/// A prop that pulls: its tube up to yield, EN 1993-1-1 6.2.3, and its head and base jacks. Props of EN 1065 do not pull.
pub fn check_pulled_prop(item: &Item, basis: Basis, tension_kn: f64) -> Vec<Verdict> {
    let Some(leg) = item.leg().filter(|leg| leg.rating.is_none()) else {
        let reason = format!("{} does not pull", item.code);
        return vec![no_resistance(CheckKind::Tension, tension_kn, "kN", &reason)];
    };
    let area_mm2 = leg.area_m2() * 1e6;
    let divisor = Divisor::new(basis, gamma::STEEL);
    let comparison = Comparison {
        check: CheckKind::Tension,
        demand: tension_kn,
        resistance: super::tie::steel_force_kn(area_mm2, leg.yield_mpa) / divisor.value(),
        unit: "kN",
        source: source("EN 1993-1-1 6.2.3", basis),
    };
    let numbers = formula!(
        "{} kN / ({} mm² × {} N/mm² / {})",
        number(tension_kn),
        number(area_mm2),
        number(leg.yield_mpa),
        divisor
    );
    let jack = StatedLoad { check: CheckKind::Bearing, name: "jacks", working_kn: leg.jack_working_kn };
    vec![comparison.verdict("N / (A fy / γ)", numbers), jack.check(basis, tension_kn)]
}

/// A diagonal, in tension or compression, and the couplers at its ends.
pub fn check_brace(item: &Item, basis: Basis, axial_kn: f64, length_m: f64) -> Vec<Verdict> {
    let axial_kn = axial_kn.abs();
    let Some(brace) = item.brace() else {
        let reason = format!("{} is not a brace", item.code);
        return vec![no_resistance(CheckKind::Buckling, axial_kn, "kN", &reason)];
    };
    let strut = Strut { tube: brace.tube(), yield_mpa: brace.yield_mpa, curve: &brace.curve, length_m };
    let coupler = StatedLoad { check: CheckKind::Coupler, name: "couplers", working_kn: brace.coupler_working_kn };
    let mut verdicts = strut.check(basis, &StrutForces::axial(axial_kn));
    verdicts.push(coupler.check(basis, axial_kn));
    verdicts
}

/// Equipment known by its working load only.
struct StatedLoad {
    check: CheckKind,
    name: &'static str,
    working_kn: f64,
}

impl StatedLoad {
    fn check(&self, basis: Basis, force_kn: f64) -> Verdict {
        let factor = stated_load_factor(basis);
        let source = match basis {
            Basis::WorkingLoad => formula!("Stated working load of the {}", word(self.name)),
            _ => formula!("Stated working load of the {} × 1.65 taken as characteristic, γM 1.1", word(self.name)),
        };
        let comparison = Comparison {
            check: self.check,
            demand: force_kn,
            resistance: factor * self.working_kn,
            unit: "kN",
            source,
        };
        let numbers = formula!("{} kN / ({} × {} kN)", number(force_kn), number(factor), number(self.working_kn));
        comparison.verdict("N / (k Nwork)", numbers)
    }
}
