//! Ties: the rod, its nut and plate, and the plate's bearing on the waling.

use super::comparison::{Comparison, no_resistance};
use super::divisor::{Divisor, gamma, stated_load_factor};
use crate::catalogue::Item;
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use std::f64::consts::PI;

/// Least ratio of breaking force to permissible tension, BS 5975 practice (from memory).
pub const SAFETY_ON_BREAKING: f64 = 2.0;
/// `k2` of EN 1993-1-8 Table 3.4.
const K2: f64 = 0.9;

/// Area of a plain round rod, mm².
pub fn rod_area_mm2(diameter_mm: f64) -> f64 {
    PI / 4.0 * diameter_mm * diameter_mm
}

/// Area by strength, kN.
pub fn steel_force_kn(area_mm2: f64, strength_mpa: f64) -> f64 {
    area_mm2 * strength_mpa * 1e-3
}

/// Tension of a threaded rod as of a bolt, EN 1993-1-8 Table 3.4: `0.9 Fu / γM2`, kN.
pub fn bolt_tension_kn(breaking_kn: f64, gamma: f64) -> f64 {
    K2 * breaking_kn / gamma
}

/// A tie in tension. Working load: its stated working load, at most half its breaking force. Limit state:
/// `0.9 Fu / 1.25` as for a bolt, at most what its stated working load allows, since nuts and plates may be weaker.
pub fn check_tie(item: &Item, basis: Basis, tension_kn: f64) -> Verdict {
    let Some(tie) = item.tie() else {
        return no_resistance(CheckKind::Tension, tension_kn, "kN", &format!("{} is not a tie", item.code));
    };
    let factor = stated_load_factor(basis);
    let by_stated = factor * tie.working_kn;
    let (by_breaking, breaking, source) = match basis {
        Basis::WorkingLoad => (
            tie.breaking_kn / SAFETY_ON_BREAKING,
            formula!("{} kN / {}", number(tie.breaking_kn), stated(SAFETY_ON_BREAKING)),
            "Stated working load; at most half the breaking force, BS 5975 practice (from memory)",
        ),
        Basis::LimitStateB1 | Basis::LimitStateB2 => {
            let divisor = Divisor::new(basis, gamma::STEEL_BREAKING);
            (
                bolt_tension_kn(tie.breaking_kn, divisor.value()),
                formula!("{} × {} kN / {}", stated(K2), number(tie.breaking_kn), divisor),
                "EN 1993-1-8 Table 3.4; at most the stated working load × 1.65 by γM 1.1",
            )
        }
    };
    let comparison = Comparison {
        check: CheckKind::Tension,
        demand: tension_kn,
        resistance: by_stated.min(by_breaking),
        unit: "kN",
        source: source.into(),
    };
    let numbers = formula!(
        "{} kN / least of ({} × {} kN, {})",
        number(tension_kn),
        number(factor),
        number(tie.working_kn),
        breaking
    );
    comparison.verdict("F / FR", numbers)
}
