//! Sentences with values in them. [`Display`](fmt::Display) writes them in English and in SI; a view may write them in
//! another language, which may want its words in another order, and in other units.

use crate::decimals::{Bound, decimals, shortest};
use serde::{Serialize, Serializer};
use std::fmt::{self, Write};
use std::sync::Arc;

/// A sentence, or a part of one, with its values.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sentence {
    /// In English, with `{}` or `{0}`, `{1}` … where values stand.
    pub template: &'static str,
    /// In the order of their places; shared, since one place or case is told of many checks.
    pub values: Arc<[Value]>,
}

/// What stands in a sentence.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A word of the language, such as the name of a check.
    Word(&'static str),
    /// A mark, code or name, which is the same in every language.
    Name(String),
    /// Mark and role of a member, such as `S1 primary`.
    Member(String),
    /// The name of an item, which is a word of the language if it is one of ours.
    Item(String),
    /// A number.
    Number {
        /// In its unit.
        value: f64,
        /// Of SI; empty for a number alone.
        unit: &'static str,
        /// As it is written in that unit.
        decimals: usize,
    },
    /// What must not be passed, never rounded up, or what must be reached, never rounded down, in whatever unit it is
    /// written.
    Limit {
        /// In its unit.
        value: f64,
        /// Of SI; empty for a number alone.
        unit: &'static str,
        /// As it is written in that unit.
        decimals: usize,
        /// Which way it is rounded.
        to: Bound,
    },
    /// A number alone as it is stated, with no more decimals than it has.
    Stated(f64),
    /// How long something is, m; a place or level is a number.
    Length {
        /// In metres.
        metres: f64,
        /// Written in mm rather than m.
        mm: bool,
        /// As it is written in that unit.
        decimals: usize,
    },
    /// Parts one after another, with a comma between them.
    List(Vec<Sentence>),
    /// A sentence within.
    Sentence(Box<Sentence>),
}

/// A sentence with its values: marks and names, [`word`], [`member`], [`number`], [`length`], other sentences.
#[macro_export]
macro_rules! sentence {
    ($template:literal $(, $value:expr)* $(,)?) => {
        $crate::sentence::Sentence { template: $template, values: [$($crate::sentence::Value::from($value)),*].into() }
    };
}

/// A word that a view writes in its language.
pub const fn word(english: &'static str) -> Value {
    Value::Word(english)
}

/// Marks a word that becomes part of a sentence elsewhere, so that files of words have it.
pub const fn term(english: &'static str) -> &'static str {
    english
}

/// Mark and role of a member.
pub fn member(name: &str) -> Value {
    Value::Member(name.to_owned())
}

/// The name of an item.
pub fn item(name: &str) -> Value {
    Value::Item(name.to_owned())
}

/// A number in a unit of SI, empty for a number alone.
pub const fn number(value: f64, unit: &'static str, decimals: usize) -> Value {
    Value::Number { value, unit, decimals }
}

/// What must not be passed.
pub const fn at_most(value: f64, unit: &'static str, decimals: usize) -> Value {
    Value::Limit { value, unit, decimals, to: Bound::Lower }
}

/// What must be reached.
pub const fn at_least(value: f64, unit: &'static str, decimals: usize) -> Value {
    Value::Limit { value, unit, decimals, to: Bound::Upper }
}

/// A length, written in metres.
pub const fn length(metres: f64, decimals: usize) -> Value {
    Value::Length { metres, mm: false, decimals }
}

/// A length, written in whole millimetres.
pub const fn length_mm(metres: f64) -> Value {
    Value::Length { metres, mm: true, decimals: 0 }
}

/// What stands between a number and its unit: nothing before the sign of an angle.
pub fn space_before(unit: &str) -> &'static str {
    if matches!(unit, "" | "°") { "" } else { " " }
}

impl Sentence {
    /// A text that no view can translate.
    pub fn plain(text: String) -> Self {
        Self { template: "{}", values: [Value::Name(text)].into() }
    }

    /// Whether its English text holds these words.
    pub fn contains(&self, words: &str) -> bool {
        self.to_string().contains(words)
    }

    /// Whether its English text starts so.
    pub fn starts_with(&self, words: &str) -> bool {
        self.to_string().starts_with(words)
    }
}

/// Puts values in the places of a template: `{}` takes the next one, `{0}`, `{1}` … the one of that number.
pub fn fill(template: &str, values: &[String]) -> String {
    let mut text = String::with_capacity(template.len() + 16 * values.len());
    // Writing into a text does not fail.
    let _ =
        write_filled(&mut text, template, |text, index| text.write_str(values.get(index).map_or("", String::as_str)));
    text
}

fn write_filled<W: Write>(to: &mut W, template: &str, value: impl Fn(&mut W, usize) -> fmt::Result) -> fmt::Result {
    let mut next = 0;
    let mut rest = template;
    while let Some((before, after)) = rest.split_once('{') {
        to.write_str(before)?;
        let Some((place, after)) = after.split_once('}') else {
            to.write_char('{')?;
            rest = after;
            continue;
        };
        value(to, place.parse().unwrap_or(next))?;
        next += 1;
        rest = after;
    }
    to.write_str(rest)
}

impl fmt::Display for Sentence {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write_filled(f, self.template, |f, index| self.values.get(index).map_or(Ok(()), |value| value.fmt(f)))
    }
}

impl fmt::Display for Value {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Word(word) => f.write_str(word),
            Self::Name(name) | Self::Member(name) | Self::Item(name) => f.write_str(name),
            Self::Number { value, unit, decimals: places } => {
                write!(f, "{}{}{unit}", decimals(*value, *places), space_before(unit))
            }
            Self::Limit { value, unit, decimals, to } => number(to.of(*value, *decimals), unit, *decimals).fmt(f),
            Self::Stated(value) => shortest(*value).fmt(f),
            Self::Length { metres, mm: true, decimals: places } => write!(f, "{} mm", decimals(metres * 1e3, *places)),
            Self::Length { metres, mm: false, decimals: places } => write!(f, "{} m", decimals(*metres, *places)),
            Self::List(parts) => {
                for (index, part) in parts.iter().enumerate() {
                    let before = if index == 0 { "" } else { ", " };
                    write!(f, "{before}{part}")?;
                }
                Ok(())
            }
            Self::Sentence(sentence) => sentence.fmt(f),
        }
    }
}

impl Serialize for Sentence {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl From<&'static str> for Sentence {
    fn from(template: &'static str) -> Self {
        Self { template, values: Arc::default() }
    }
}

impl PartialEq<&str> for Sentence {
    fn eq(&self, text: &&str) -> bool {
        let told = self.to_string();
        told == *text
    }
}

impl From<String> for Value {
    fn from(name: String) -> Self {
        Self::Name(name)
    }
}

impl From<&String> for Value {
    fn from(name: &String) -> Self {
        Self::Name(name.clone())
    }
}

impl From<&str> for Value {
    fn from(name: &str) -> Self {
        Self::Name(name.to_owned())
    }
}

impl From<Sentence> for Value {
    fn from(sentence: Sentence) -> Self {
        Self::Sentence(Box::new(sentence))
    }
}

impl From<&Sentence> for Value {
    fn from(sentence: &Sentence) -> Self {
        Self::Sentence(Box::new(sentence.clone()))
    }
}

impl From<Vec<Sentence>> for Value {
    fn from(parts: Vec<Sentence>) -> Self {
        Self::List(parts)
    }
}

impl From<crate::scheme::Id> for Value {
    fn from(id: crate::scheme::Id) -> Self {
        Self::Name(id.to_string())
    }
}

impl From<u32> for Value {
    fn from(count: u32) -> Self {
        Self::Name(count.to_string())
    }
}

impl From<usize> for Value {
    fn from(count: usize) -> Self {
        Self::Name(count.to_string())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_stand_in_their_places() {
        let values = ["a".to_owned(), "b".to_owned()];
        assert_eq!(fill("{} before {}.", &values), "a before b.");
        assert_eq!(fill("{1} after {0}, {0} first", &values), "b after a, a first");
        assert_eq!(fill("{} {} {}{", &values), "a b {");
    }

    #[test]
    fn english_is_written_in_si() {
        let inner = sentence!("at {}", number(1.25, "m", 2));
        let told = sentence!("{} carries {} in {} {}.", "S1", number(12.0, "kN", 1), word("bending"), inner);
        assert_eq!(told, "S1 carries 12.0 kN in bending at 1.25 m.");
        assert_eq!(sentence!("{}, {}", length(3.6, 3), length_mm(0.45)), "3.600 m, 450 mm");
    }
}
