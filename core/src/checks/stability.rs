//! Standing: overturning, sliding, uplift and what holds them, by the factors of each basis.

use super::comparison::Comparison;
use crate::actions::factors::balance;
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict, ratio};
use crate::scheme::Basis;
use crate::sentence::word;

/// Loads that hold or tip, of one unit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Standing {
    /// Permanent, holding.
    pub holding: f64,
    /// Permanent, tipping.
    pub tipping_permanent: f64,
    /// Variable, tipping.
    pub tipping_variable: f64,
    /// What ties and anchors add to holding, at their own permissible or design value.
    pub held: f64,
}

impl Standing {
    /// What tips, factored.
    pub fn tipping(&self, basis: Basis) -> f64 {
        let factors = balance(basis);
        factors.permanent * self.tipping_permanent + factors.variable * self.tipping_variable
    }

    /// What holds, factored.
    pub fn holding(&self, basis: Basis) -> f64 {
        balance(basis).favourable * self.holding + self.held
    }

    /// What tips by what holds, factored; infinite where nothing holds.
    pub fn ratio(&self, basis: Basis) -> f64 {
        ratio(self.tipping(basis), self.holding(basis))
    }

    /// What a hold-down has to add, nought where weight is enough.
    pub fn hold_down(&self, basis: Basis) -> f64 {
        (self.tipping(basis) - balance(basis).favourable * self.holding).max(0.0)
    }

    /// The same where what holds does so by friction.
    pub fn rubbing(self, coefficient: f64) -> Self {
        Self { holding: coefficient * self.holding, ..self }
    }

    fn check(&self, check: CheckKind, basis: Basis, unit: &'static str) -> Verdict {
        let factors = balance(basis);
        let comparison = Comparison {
            check,
            demand: self.tipping(basis),
            resistance: self.holding(basis),
            unit,
            source: source(basis).into(),
        };
        let numbers = formula!(
            "({} × {} {} + {} × {} {}) / ({} × {} {} + {} {})",
            stated(factors.permanent),
            number(self.tipping_permanent),
            word(unit),
            stated(factors.variable),
            number(self.tipping_variable),
            word(unit),
            stated(factors.favourable),
            number(self.holding),
            word(unit),
            number(self.held),
            word(unit)
        );
        comparison.verdict("(γ G + γ Q) / (γ Gfav + R)", numbers)
    }
}

fn source(basis: Basis) -> &'static str {
    match basis {
        Basis::WorkingLoad => "Factor 1.2 of BS 5975 (from memory)",
        Basis::LimitStateB1 | Basis::LimitStateB2 => "EN 12812, 0.9 against 1.35 and 1.5 (from memory)",
    }
}

/// Moments about an edge, kNm.
pub fn check_overturning(basis: Basis, moments: &Standing) -> Verdict {
    moments.check(CheckKind::Overturning, basis, "kNm")
}

/// Vertical forces, kN.
pub fn check_uplift(basis: Basis, forces: &Standing) -> Verdict {
    forces.check(CheckKind::Uplift, basis, "kN")
}

/// Horizontal forces against friction under what weighs `holding` kN, kN. The least coefficient of the contact counts.
pub fn check_sliding(basis: Basis, forces: &Standing, coefficient: f64) -> Verdict {
    forces.rubbing(coefficient).check(CheckKind::Sliding, basis, "kN")
}
