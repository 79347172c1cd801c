//! Jacks and rams by the working load stated for them, and what the plates of jacks press on.

use super::comparison::Comparison;
use super::divisor::{allowable_pressure_factor, stated_load_factor};
use super::ground::contact_pressure_kpa;
use crate::actions::factors::factors;
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;

/// The greatest force of one jack or ram, `forced_kn` its even share and `unevenness` what that may grow by.
pub fn check_jacking(basis: Basis, forced_kn: f64, unevenness: f64, working_kn: f64) -> Verdict {
    let (load, factor) = (factors(basis).permanent, stated_load_factor(basis));
    let comparison = Comparison {
        check: CheckKind::Jacking,
        demand: load * unevenness * forced_kn,
        resistance: factor * working_kn,
        unit: "kN",
        source: "Working load stated by the supplier; unevenness as given".into(),
    };
    let numbers = formula!(
        "({} × {} × {} kN) / ({} × {} kN)",
        stated(load),
        stated(unevenness),
        number(forced_kn),
        number(factor),
        number(working_kn)
    );
    comparison.verdict("(γ u F) / (k Fw)", numbers)
}

/// Pressure under the square plate of a jack.
pub fn check_plate(basis: Basis, forced_kn: f64, unevenness: f64, side_m: f64, allowable_kpa: f64) -> Verdict {
    let (load, factor) = (factors(basis).permanent, allowable_pressure_factor(basis));
    let comparison = Comparison {
        check: CheckKind::BasePressure,
        demand: contact_pressure_kpa(load * unevenness * forced_kn, side_m, side_m),
        resistance: factor * allowable_kpa,
        unit: "kPa",
        source: "Allowable pressure stated for what the plate lies on".into(),
    };
    let numbers = formula!(
        "({} × {} × {} kN / ({} m × {} m)) / ({} × {} kPa)",
        stated(load),
        stated(unevenness),
        number(forced_kn),
        number(side_m),
        number(side_m),
        number(factor),
        number(allowable_kpa)
    );
    comparison.verdict("(γ u F / (a a)) / (k qa)", numbers)
}
