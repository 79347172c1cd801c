use super::divisor::stated_load_factor;
use super::formula::{Comparison, no_resistance, number};
use super::strut::{Strut, StrutForces};
use crate::catalogue::Item;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;

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
    let mut verdicts = strut.check(basis, forces);
    verdicts.push(jack.check(basis, compression_kn));
    verdicts
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
            Basis::WorkingLoad => format!("Stated working load of the {}", self.name),
            _ => format!("Stated working load of the {} × 1.65 taken as characteristic, γM 1.1", self.name),
        };
        let comparison = Comparison {
            check: self.check,
            demand: force_kn,
            resistance: factor * self.working_kn,
            unit: "kN",
            source,
        };
        let numbers = format!("{} kN / ({} × {} kN)", number(force_kn), number(factor), number(self.working_kn));
        comparison.verdict("N / (k Nwork)", &numbers)
    }
}
