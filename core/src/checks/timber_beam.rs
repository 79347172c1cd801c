use super::beam::BeamForces;
use super::comparison::Comparison;
use super::divisor::{Divisor, gamma};
use crate::catalogue::TimberBeam;
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::word;

/// Formwork use of EN 13377 beams, as in published class tables: characteristic by permissible is 1.3 × 1.5 / 0.9.
const KMOD: f64 = 0.9;

/// Timber formwork beam against the characteristic resistances of its class.
pub(super) fn check(beam: &TimberBeam, basis: Basis, forces: BeamForces) -> Vec<Verdict> {
    let divisor = Divisor::new(basis, gamma::TIMBER);
    let compare = |check, demand: f64, characteristic: f64, unit: &'static str, symbols: &'static str| {
        let comparison = Comparison {
            check,
            demand,
            resistance: characteristic * KMOD / divisor.value(),
            unit,
            source: match basis {
                Basis::WorkingLoad => "EN 13377 class value, kmod 0.9, γM 1.3, by a load factor of 1.5".into(),
                Basis::LimitStateB1 => "EN 13377 class value, kmod 0.9, γM 1.3".into(),
                Basis::LimitStateB2 => "EN 13377 class value, kmod 0.9, γM 1.3; EN 12812 class B2".into(),
            },
        };
        let numbers = formula!(
            "{} {} / ({} × {} {} / {})",
            number(demand),
            word(unit),
            stated(KMOD),
            number(characteristic),
            word(unit),
            divisor
        );
        comparison.verdict(symbols, numbers)
    };
    let mut verdicts = vec![
        compare(CheckKind::Bending, forces.moment_knm, beam.moment_knm, "kNm", "M / (kmod Mk / γ)"),
        compare(CheckKind::Shear, forces.shear_kn, beam.shear_kn, "kN", "V / (kmod Vk / γ)"),
    ];
    if let Some(force) = forces.bearing_kn {
        verdicts.push(compare(CheckKind::Bearing, force, beam.bearing_kn, "kN", "F / (kmod Rb,k / γ)"));
    }
    verdicts
}
