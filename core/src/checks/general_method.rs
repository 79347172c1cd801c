//! Buckling out of the plane of a frame or a member of any shape, EN 1993-1-1 6.3.4.

use super::buckling::reduction;
use super::comparison::Comparison;
use super::divisor::{Divisor, gamma};
use super::steel::source;
use crate::formula::number;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;

/// Factors on all loads, and the imperfections of the two ways to buckle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GeneralMethod {
    /// `αult,k`: the most loaded section reaches its characteristic resistance in the plane, effects of second order and
    /// imperfections in the plane included.
    pub ultimate: f64,
    /// `αcr,op`: it buckles elastically out of the plane.
    pub critical: f64,
    /// `α` of buckling along its axis; none where there is no compression.
    pub flexural: Option<f64>,
    /// `αLT` of lateral torsional buckling in the general case; none where there is no bending.
    pub lateral: Option<f64>,
}

impl GeneralMethod {
    /// `λop = √(αult,k / αcr,op)`, 6.3.4(3).
    pub fn slenderness(&self) -> f64 {
        (self.ultimate / self.critical).sqrt()
    }

    /// `χop`, 6.3.4(4) a: the lesser of `χ` and `χLT`, both at `λop`.
    pub fn reduction(&self) -> f64 {
        let slenderness = self.slenderness();
        let each = [self.flexural, self.lateral].into_iter().flatten().map(|alpha| reduction(slenderness, alpha));
        each.fold(1.0, f64::min)
    }

    /// `χop αult,k / γM1 ≥ 1`, 6.3.4(2). On the working-load basis with its load factor in the divisor.
    pub fn check(&self, basis: Basis) -> Verdict {
        let divisor = Divisor::new(basis, gamma::STEEL);
        let chi = self.reduction();
        let comparison = Comparison {
            check: CheckKind::Buckling,
            demand: 1.0,
            resistance: chi * self.ultimate / divisor.value(),
            unit: "",
            source: source("EN 1993-1-1 6.3.4", basis),
        };
        let numbers = formula!("1 / ({} × {} / {})", number(chi), number(self.ultimate), divisor);
        let given = formula!("αcr,op = {}, λop = {}", number(self.critical), number(self.slenderness()));
        comparison.verdict_given(given, "1 / (χop αult,k / γ)", numbers)
    }
}
