//! How numbers are written into formulas.

use crate::decimals::decimals;
use crate::results::{CheckKind, Verdict};
use std::fmt::{self, Display, Formatter, Write};

/// Four significant figures, no exponent.
pub(super) fn number(value: f64) -> Number {
    Number(value)
}

/// A number in a formula.
#[derive(Clone, Copy)]
pub(super) struct Number(f64);

impl Display for Number {
    fn fmt(&self, formatter: &mut Formatter) -> fmt::Result {
        let places = match self.0.abs() {
            size if !size.is_finite() => return formatter.write_str(if self.0.is_nan() { "unknown" } else { "∞" }),
            size if size >= 1000.0 || size == 0.0 => 0,
            size if size >= 100.0 => 1,
            size if size >= 10.0 => 2,
            size if size >= 1.0 => 3,
            size if size >= 0.1 => 4,
            _ => 5,
        };
        decimals(self.0, places).fmt(formatter)
    }
}

/// What is compared, before its formula is written out.
pub(super) struct Comparison {
    pub check: CheckKind,
    pub demand: f64,
    pub resistance: f64,
    pub unit: &'static str,
    pub source: String,
}

impl Comparison {
    /// A verdict whose formula reads `symbols = numbers = ratio`.
    pub fn verdict(self, symbols: &str, numbers: &dyn Display) -> Verdict {
        self.written(|formula| write!(formula, "{symbols} = {numbers}"))
    }

    /// The same after what its numbers come from: `given; symbols = numbers = ratio`.
    pub fn verdict_given(self, given: &dyn Display, symbols: &str, numbers: &dyn Display) -> Verdict {
        self.written(|formula| {
            write!(formula, "{given}")?;
            let separator = if formula.is_empty() { "" } else { "; " };
            write!(formula, "{separator}{symbols} = {numbers}")
        })
    }

    fn written(self, write: impl FnOnce(&mut String) -> fmt::Result) -> Verdict {
        let Comparison { check, demand, resistance, unit, source } = self;
        let mut verdict = Verdict { check, demand, resistance, unit, source, formula: String::with_capacity(USUAL) };
        // Writing into a text does not fail.
        let _ = write(&mut verdict.formula);
        verdict.formula.push_str(" = ");
        let ratio = verdict.ratio();
        let _ = if ratio.is_finite() {
            write!(verdict.formula, "{}", decimals(ratio, 3))
        } else {
            write!(verdict.formula, "{}", number(ratio))
        };
        verdict
    }
}

/// Letters of a formula, so that it seldom grows as it is written.
const USUAL: usize = 192;

/// The verdict where no resistance is known: none is counted on.
pub(super) fn no_resistance(check: CheckKind, demand: f64, unit: &'static str, reason: &str) -> Verdict {
    let source = format!("No resistance: {reason}");
    let comparison = Comparison { check, demand, resistance: 0.0, unit, source };
    let numbers = format_args!("{} {unit} / 0 {unit} ({reason})", number(demand));
    comparison.verdict("demand / resistance", &numbers)
}
