use crate::formula::{Formula, number};
use crate::results::{CheckKind, Verdict, ratio};
use crate::sentence::{Sentence, word};

/// What is compared, before it is a verdict.
pub(crate) struct Comparison {
    pub check: CheckKind,
    pub demand: f64,
    pub resistance: f64,
    pub unit: &'static str,
    pub source: Sentence,
}

impl Comparison {
    /// A verdict whose formula reads `symbols = numbers = ratio`.
    pub fn verdict(self, symbols: impl Into<Sentence>, numbers: Sentence) -> Verdict {
        self.written(None, symbols.into(), numbers)
    }

    /// The same after what its numbers come from: `given; symbols = numbers = ratio`.
    pub fn verdict_given(self, given: Sentence, symbols: impl Into<Sentence>, numbers: Sentence) -> Verdict {
        self.written(Some(given), symbols.into(), numbers)
    }

    fn written(self, given: Option<Sentence>, symbols: Sentence, numbers: Sentence) -> Verdict {
        let Comparison { check, demand, resistance, unit, source } = self;
        let formula = Formula { given, symbols, numbers, ratio: ratio(demand, resistance) };
        Verdict { check, demand, resistance, unit, source, formula }
    }
}

/// The verdict where no resistance is known: none is counted on.
pub(super) fn no_resistance(check: CheckKind, demand: f64, unit: &'static str, reason: &str) -> Verdict {
    let source = formula!("No resistance: {}", reason);
    let comparison = Comparison { check, demand, resistance: 0.0, unit, source };
    let numbers = formula!("{0} {1} / 0 {1} ({2})", number(demand), word(unit), reason);
    comparison.verdict("demand / resistance", numbers)
}
