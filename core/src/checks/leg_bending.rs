use super::buckling::{Strut, critical_force_kn};
use super::divisor::{Divisor, gamma};
use super::formula::{Comparison, no_resistance, number};
use super::steel::source;
use crate::catalogue::Item;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;

/// A leg bent while it is compressed: `N / Nb + M / (1 − N / Ncr) / Mc ≤ 1`, the linear sum that lies on the safe side
/// of EN 1993-1-1 6.3.3, told as the moment beside what the compression leaves.
pub fn check_leg_bending(
    item: &Item,
    basis: Basis,
    compression_kn: f64,
    moment_knm: f64,
    buckling_length_m: f64,
) -> Verdict {
    let Some(leg) = item.leg() else {
        let reason = format!("{} is not a leg", item.code);
        return no_resistance(CheckKind::Bending, moment_knm, "kNm", &reason);
    };
    let tube = leg.tube();
    let strut = Strut { tube, yield_mpa: leg.yield_mpa, curve: &leg.curve, length_m: buckling_length_m };
    let buckling_kn = strut.check(basis, compression_kn).resistance;
    let critical_kn = critical_force_kn(tube.inertia_m4(), buckling_length_m);
    let divisor = Divisor::new(basis, gamma::STEEL);
    let modulus_mm3 = tube.plastic_modulus_m3() * 1e9;
    let left = (1.0 - compression_kn / buckling_kn).max(0.0);
    let grown_knm = moment_knm / (1.0 - compression_kn / critical_kn).max(1e-3);
    let comparison = Comparison {
        check: CheckKind::Bending,
        demand: grown_knm,
        resistance: left * modulus_mm3 * leg.yield_mpa * 1e-6 / divisor.value(),
        unit: "kNm",
        source: source("EN 1993-1-1 6.3.3, linear sum", basis),
    };
    let numbers = format!(
        "{} kNm / ((1 − {} kN / {} kN) × {} mm³ × {} N/mm² / {divisor})",
        number(grown_knm),
        number(compression_kn),
        number(buckling_kn),
        number(modulus_mm3),
        number(leg.yield_mpa)
    );
    let given = format!("M = {} kNm / (1 − N / Ncr), Ncr = {} kN", number(moment_knm), number(critical_kn));
    comparison.verdict_given(&given, "M / ((1 − N / Nb) Wpl fy / γ)", &numbers)
}
