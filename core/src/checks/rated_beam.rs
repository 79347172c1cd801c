use super::beam::BeamForces;
use super::comparison::Comparison;
use super::divisor::stated_load_factor;
use crate::catalogue::RatedBeam;
use crate::formula::number;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::word;

/// A beam known by its stated working values, such as one of aluminium.
pub(super) fn check(beam: &RatedBeam, basis: Basis, forces: BeamForces) -> Vec<Verdict> {
    let factor = stated_load_factor(basis);
    let compare = |check, demand: f64, working: f64, unit: &'static str, symbols: &'static str| {
        let comparison = Comparison {
            check,
            demand,
            resistance: factor * working,
            unit,
            source: match basis {
                Basis::WorkingLoad => "Stated working value of the beam".into(),
                _ => "Stated working value of the beam × 1.65 taken as characteristic, γM 1.1".into(),
            },
        };
        let numbers =
            formula!("{} {} / ({} × {} {})", number(demand), word(unit), number(factor), number(working), word(unit));
        comparison.verdict(symbols, numbers)
    };
    let mut verdicts = vec![
        compare(CheckKind::Bending, forces.moment_knm, beam.moment_working_knm, "kNm", "M / (k Mwork)"),
        compare(CheckKind::Shear, forces.shear_kn, beam.shear_working_kn, "kN", "V / (k Vwork)"),
    ];
    if let Some(force) = forces.bearing_kn {
        verdicts.push(compare(CheckKind::Bearing, force, beam.bearing_working_kn, "kN", "F / (k Fwork)"));
    }
    verdicts
}
