//! Reading and writing of JSON: one reader and one writer for all types of a file.
//!
//! Text is read into a tree of values first, and types are made from the tree: so there is one deserializer to make each
//! of them from, which keeps the page small. What is wrong is found again in the text by its path.

mod place;
mod tagged;
mod tree;

pub(crate) use tagged::Fields;
pub(crate) use tagged::tagged;
pub(crate) use tree::{Fault, Tree};

use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use std::fmt;

/// Why a text is not what it should be, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Error {
    /// What it is about.
    pub cause: Cause,
    /// What is wrong.
    pub what: String,
    /// Line, from 1.
    pub line: usize,
    /// Bytes of the line up to it; for a missing field up to the end of the record that lacks it.
    pub column: usize,
}

/// What an [`Error`] is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// The text ends too early.
    Truncated,
    /// It is not JSON.
    Syntax,
    /// It is JSON, but not of the type that is read.
    Value,
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} at line {} column {}", self.what, self.line, self.column)
    }
}

impl std::error::Error for Error {}

impl From<serde_json::Error> for Error {
    fn from(error: serde_json::Error) -> Self {
        let message = error.to_string();
        let what = message.rsplit_once(" at line ").map_or(message.as_str(), |(what, _)| what).to_owned();
        let cause = match error.classify() {
            serde_json::error::Category::Eof => Cause::Truncated,
            serde_json::error::Category::Syntax | serde_json::error::Category::Io => Cause::Syntax,
            serde_json::error::Category::Data => Cause::Value,
        };
        Self { cause, what, line: error.line(), column: error.column() }
    }
}

/// Reads a value.
///
/// # Errors
/// A text that is not JSON, or not of this type.
pub fn read<T: DeserializeOwned>(text: &str) -> Result<T, Error> {
    T::deserialize(&tree(text)?).map_err(|fault| fault.found_in(text))
}

#[inline(never)]
fn tree(text: &str) -> Result<Tree, Error> {
    Ok(serde_json::from_str(text)?)
}

/// Writes a value on one line. Empty: it cannot be written, as a map whose keys are no texts.
pub fn write<T: Serialize>(value: &T) -> String {
    serde_json::to_string(value).unwrap_or_default()
}

/// Writes a value for people to read, each field on a line of its own, two spaces in at each level.
pub fn write_indented<T: Serialize>(value: &T) -> String {
    place::indented(&write(value))
}

/// A value as it is written, to be looked through by the names of its fields.
pub(crate) fn value_of<T: Serialize>(value: &T) -> Value {
    serde_json::from_str(&write(value)).unwrap_or_default()
}

#[cfg(test)]
mod tests;
