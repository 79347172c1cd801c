//! Formulas with their numbers. They are kept as values and written when they are read: of many that are worked out few
//! are looked at.

use crate::decimals::decimals;
use crate::sentence::{self, Sentence, Value};
use serde::{Serialize, Serializer};
use std::fmt::{Display, Formatter, Result};

/// What was worked out, written as `given; symbols = numbers = ratio`.
#[derive(Clone, Debug, PartialEq)]
pub struct Formula {
    /// What the numbers come from, if that is not plain.
    pub given: Option<Sentence>,
    /// Demand by resistance in symbols.
    pub symbols: Sentence,
    /// The same in numbers.
    pub numbers: Sentence,
    /// What that is.
    pub ratio: f64,
}

impl Display for Formula {
    fn fmt(&self, formatter: &mut Formatter<'_>) -> Result {
        let Self { given, symbols, numbers, ratio } = self;
        if let Some(given) = given {
            write!(formatter, "{given}; ")?;
        }
        write!(formatter, "{symbols} = {numbers} = ")?;
        if ratio.is_finite() { decimals(*ratio, 3).fmt(formatter) } else { number(*ratio).fmt(formatter) }
    }
}

impl Serialize for Formula {
    fn serialize<S: Serializer>(&self, serializer: S) -> std::result::Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

/// A part of a formula with its values. Unlike a sentence it is the same in every language.
macro_rules! formula {
    ($($part:tt)*) => {
        $crate::sentence!($($part)*)
    };
}

/// Four significant figures, no exponent.
// Inlined at its hundreds of callers it would only make the page heavier.
#[inline(never)]
pub(crate) fn number(value: f64) -> Value {
    let places = match value.abs() {
        size if !size.is_finite() => return sentence::word(if value.is_nan() { "unknown" } else { "∞" }),
        size if size >= 1000.0 || size == 0.0 => 0,
        size if size >= 100.0 => 1,
        size if size >= 10.0 => 2,
        size if size >= 1.0 => 3,
        size if size >= 0.1 => 4,
        _ => 5,
    };
    sentence::number(value, "", places)
}

/// A factor as it is stated.
pub(crate) fn stated(value: f64) -> Value {
    Value::Stated(value)
}
