use super::beam::BeamForces;
use super::divisor::stated_load_factor;
use super::formula::{Comparison, number};
use crate::catalogue::RatedBeam;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;

/// A beam known by its stated working values, such as one of aluminium.
pub(super) fn check(beam: &RatedBeam, basis: Basis, forces: BeamForces) -> Vec<Verdict> {
    let factor = stated_load_factor(basis);
    let compare = |check, demand: f64, working: f64, unit: &'static str, symbols: &str| {
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
        let numbers = format_args!("{} {unit} / ({} × {} {unit})", number(demand), number(factor), number(working));
        comparison.verdict(symbols, &numbers)
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
