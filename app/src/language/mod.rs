//! The language of the page. English stands in the code and is what another language is looked up by; the words of
//! another language are a file that is fetched when it is asked for.

/// A sentence in the language of the page, with these values: `say!("Row {} carries {}", a, b)`.
macro_rules! say {
    ($template:literal $(, $value:expr)* $(,)?) => {
        $crate::language::filled($crate::language::t($template), &[$(&$value as &dyn std::fmt::Display),*])
    };
}

mod load;
mod steps;
#[cfg(test)]
mod tests;

pub use load::{load, preferred};
pub use steps::{listed, step};

use crate::units;
use falsewright_core::sentence::{Sentence, Value, fill};
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::fmt::Display;

/// A language that the page speaks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Language {
    #[default]
    /// Of the code.
    English,
    /// As it is spoken on German sites.
    German,
}

impl Language {
    /// All.
    pub const ALL: [Self; 2] = [Self::English, Self::German];

    /// ISO 639-1.
    pub fn code(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
        }
    }

    /// What it calls itself.
    pub fn own_name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
        }
    }

    /// The language of a tag such as `de-AT`.
    pub fn of_tag(tag: &str) -> Option<Self> {
        let primary = tag.split(['-', '_']).next().unwrap_or_default();
        Self::ALL.into_iter().find(|language| language.code().eq_ignore_ascii_case(primary))
    }

    /// Between whole numbers and decimals.
    pub fn decimal_sign(self) -> char {
        match self {
            Self::English => '.',
            Self::German => ',',
        }
    }
}

type Table = BTreeMap<&'static str, &'static str>;

thread_local! {
    static SPOKEN: Cell<Language> = const { Cell::new(Language::English) };
    /// The words of German, once they have been asked for.
    static GERMAN: RefCell<Table> = const { RefCell::new(BTreeMap::new()) };
}

/// The language of the page.
pub fn spoken() -> Language {
    SPOKEN.get()
}

/// Speaks a language from now on.
pub fn speak(language: Language) {
    SPOKEN.set(language);
}

/// The words of a text that is not known before the page runs; none where the language has none.
pub fn look_up(english: &str) -> Option<&'static str> {
    match spoken() {
        Language::English => None,
        Language::German => GERMAN.with_borrow(|table| table.get(english).copied()),
    }
}

/// The text in the language of the page; in English where that has no words for it.
pub fn t(english: &'static str) -> &'static str {
    look_up(english).unwrap_or(english)
}

/// Marks a text that is looked up where it is shown, so that files of words have it.
pub const fn key(english: &'static str) -> &'static str {
    english
}

/// A template with its values.
pub fn filled(template: &str, values: &[&dyn Display]) -> String {
    let values: Vec<String> = values.iter().map(ToString::to_string).collect();
    fill(template, &values)
}

/// A sentence of the results in the language and the units of the page.
pub fn told(sentence: &Sentence) -> String {
    let values: Vec<String> = sentence.values.iter().map(written).collect();
    fill(t(sentence.template), &values)
}

fn written(value: &Value) -> String {
    match value {
        Value::Word(word) => t(word).to_owned(),
        Value::Name(name) => name.clone(),
        Value::Member(name) => member(name),
        Value::Item(name) => look_up(name).unwrap_or(name).to_owned(),
        Value::Number { value, unit, decimals } => units::unbroken(units::quantity(*value, unit, *decimals)),
        Value::Limit { value, unit, decimals, to } => units::unbroken(units::limit(*value, unit, *decimals, *to)),
        Value::Stated(_) => value.to_string(),
        Value::Length { metres, mm, decimals } => units::unbroken(units::length(*metres, *mm, *decimals)),
        Value::List(parts) => parts.iter().map(told).collect::<Vec<_>>().join(", "),
        Value::Sentence(sentence) => told(sentence),
    }
}

/// Mark and role of a member, such as `S1 primary`, with the role in the language of the page.
pub fn member(name: &str) -> String {
    let role = |(at, _): (usize, &str)| Some((&name[..at], look_up(&name[at + 1..])?));
    match name.match_indices(' ').find_map(role) {
        Some((mark, role)) => format!("{mark} {role}"),
        None => name.to_owned(),
    }
}
