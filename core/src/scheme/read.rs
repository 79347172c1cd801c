use super::{SCHEMA, Scheme, SchemeError};
use crate::json;
use crate::sentence::{Sentence, word};
use serde::Deserialize;
use std::fmt;

/// No scheme file is larger, bytes.
pub const LARGEST_FILE: usize = 4 << 20;

/// Why a file is not a scheme that can be opened: what is wrong, where, and what to do.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)]
pub enum ReadError {
    TooLarge { bytes: usize },

    NotText { position: usize },

    Empty,

    Truncated { line: usize, column: usize },

    Syntax { line: usize, column: usize, what: String },

    NotAScheme { found: &'static str },

    NoSchema,

    BadSchema { found: String },

    Newer { found: u64 },

    MissingField { field: String, line: usize, column: usize },

    UnknownField { field: String, line: usize, column: usize },

    RepeatedField { field: String, line: usize, column: usize },

    WrongValue { what: String, line: usize, column: usize },

    Invalid(Vec<SchemeError>),

    InvalidOption { option: String, errors: Vec<SchemeError> },

    NoOptions,

    SeveralOptions,
}

impl ReadError {
    /// What is wrong, where, and what to do.
    pub fn sentence(&self) -> Sentence {
        let schema = || SCHEMA.to_string();
        match self {
            Self::TooLarge { bytes } => sentence!(
                "The file of {} bytes is larger than {}. Open a scheme file saved by this program.",
                *bytes,
                LARGEST_FILE
            ),
            Self::NotText { position } => sentence!(
                "The file is not text: byte {} is not UTF-8. Open a scheme file saved by this program.",
                *position
            ),
            Self::Empty => sentence!("The file is empty. Open another copy of it."),
            Self::Truncated { line, column } => sentence!(
                "The file ends too early, at line {}, column {}: it is cut short. Open another copy of it.",
                *line,
                *column
            ),
            Self::Syntax { line, column, what } => sentence!(
                "The file is damaged at line {}, column {}: {}. Open another copy of it, or mend it there.",
                *line,
                *column,
                what
            ),
            Self::NotAScheme { found } => sentence!(
                "The file holds {} at its line 1 where a scheme should be. Open a scheme file saved by this program.",
                word(found)
            ),
            Self::NoSchema => sentence!(
                "The file does not say which schema it follows, so it is not a scheme. Add \"schema\": {} at its \
                 beginning if you are sure that it is one.",
                schema()
            ),
            Self::BadSchema { found } => sentence!(
                "The schema {} of the file is not a whole number from 1 up. Set \"schema\": {} at its beginning if you \
                 are sure that it is a scheme.",
                found,
                schema()
            ),
            Self::Newer { found } => sentence!(
                "The file has schema {} and was made by a newer version; this one knows up to {}. Reload the page to \
                 get the newest version, then open the file again.",
                found.to_string(),
                schema()
            ),
            Self::MissingField { field, line, column } => sentence!(
                "The field `{}` is missing from what ends at line {}, column {}. Add it there.",
                field,
                *line,
                *column
            ),
            Self::UnknownField { field, line, column } => sentence!(
                "The field `{}` at line {}, column {} is not known there. Remove it, or correct its name.",
                field,
                *line,
                *column
            ),
            Self::RepeatedField { field, line, column } => sentence!(
                "The field `{}` at line {}, column {} is given twice. Remove one of the two.",
                field,
                *line,
                *column
            ),
            Self::WrongValue { what, line, column } => {
                sentence!("The value at line {}, column {} cannot be used: {}. Correct it there.", *line, *column, what)
            }
            Self::Invalid(errors) => all_of(errors),
            Self::InvalidOption { option, errors } => sentence!("In option {}: {}", option, all_of(errors)),
            Self::NoOptions => sentence!("The file holds no option of the job. Open another copy of it."),
            Self::SeveralOptions => sentence!(
                "The file holds several options of a job where one scheme should be. Open it on the page, put the \
                 other options away, and save the one that is left."
            ),
        }
    }
}

fn all_of(errors: &[SchemeError]) -> Sentence {
    let first = errors.first().map(SchemeError::sentence).unwrap_or_default();
    match errors.len() {
        0 | 1 => first,
        count => sentence!("{} ({} more like this.)", first, count - 1),
    }
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.sentence().fmt(f)
    }
}

impl std::error::Error for ReadError {}

/// The version, looked at before anything else.
#[derive(Deserialize)]
struct Header {
    schema: Option<serde_json::Value>,
    options: Option<serde::de::IgnoredAny>,
}

/// Reads a scheme from the bytes of a file.
pub fn read_bytes(bytes: &[u8]) -> Result<Scheme, ReadError> {
    if bytes.len() > LARGEST_FILE {
        return Err(ReadError::TooLarge { bytes: bytes.len() });
    }
    let text = std::str::from_utf8(bytes).map_err(|error| ReadError::NotText { position: error.valid_up_to() })?;
    read(text)
}

/// Reads a scheme and makes sure that it can be worked with.
pub fn read(text: &str) -> Result<Scheme, ReadError> {
    let (text, several) = known(text)?;
    if several {
        return Err(ReadError::SeveralOptions);
    }
    let scheme: Scheme = parse(text)?;
    scheme.validate().map_err(ReadError::Invalid)?;
    Ok(scheme)
}

pub(super) fn parse<T: serde::de::DeserializeOwned>(text: &str) -> Result<T, ReadError> {
    json::read(text).map_err(explain)
}

/// The text of a file whose schema is known, and whether it holds several options.
pub(super) fn known(text: &str) -> Result<(&str, bool), ReadError> {
    if text.len() > LARGEST_FILE {
        return Err(ReadError::TooLarge { bytes: text.len() });
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let found = match text.trim() {
        "" => return Err(ReadError::Empty),
        "null" | "true" | "false" => Some("a single word"),
        other => match other.as_bytes()[0] {
            b'[' => Some("a list"),
            b'"' => Some("a text"),
            b'0'..=b'9' | b'-' => Some("a number"),
            _ => None,
        },
    };
    if let Some(found) = found {
        return Err(ReadError::NotAScheme { found });
    }
    // What is deeper than a reader of trees goes is passed over.
    let header: Header = serde_json::from_str(text).map_err(|error| explain(error.into()))?;
    let schema = header.schema.ok_or(ReadError::NoSchema)?;
    match schema.as_u64() {
        Some(found) if found > u64::from(SCHEMA) => return Err(ReadError::Newer { found }),
        Some(1..) => {}
        _ => return Err(ReadError::BadSchema { found: shortened(&schema.to_string()) }),
    }
    Ok((text, header.options.is_some()))
}

/// Writes a scheme as text that [`read`] turns into the same scheme.
pub fn write(scheme: &Scheme) -> String {
    json::write_indented(scheme)
}

/// As [`write()`], on one line.
pub fn write_on_one_line(scheme: &Scheme) -> String {
    json::write(scheme)
}

fn explain(error: json::Error) -> ReadError {
    let json::Error { cause, what, line, column } = error;
    let what = in_words(&what);
    match cause {
        json::Cause::Truncated => ReadError::Truncated { line, column },
        json::Cause::Syntax => ReadError::Syntax { line, column, what },
        json::Cause::Value => {
            let field = what.split('`').nth(1).unwrap_or_default().to_owned();
            if what.starts_with("missing field") {
                ReadError::MissingField { field, line, column }
            } else if what.starts_with("unknown field") {
                ReadError::UnknownField { field, line, column }
            } else if what.starts_with("duplicate field") {
                ReadError::RepeatedField { field, line, column }
            } else {
                ReadError::WrongValue { what, line, column }
            }
        }
    }
}

/// The parser's own words, without names of the program's types.
fn in_words(what: &str) -> String {
    let Some((found, expected)) = what.rsplit_once(", expected ") else { return shortened(what) };
    let expected = match expected {
        "f64" => "a number",
        "u32" => "a whole number from 0 to 4294967295",
        record if record.starts_with("struct ") => "a record of fields",
        other => other,
    };
    format!("{}, expected {expected}", shortened(found))
}

/// At most this many characters of what stood in a file are repeated in a message.
fn shortened(text: &str) -> String {
    const LONGEST: usize = 160;
    if text.chars().count() <= LONGEST { text.to_owned() } else { text.chars().take(LONGEST).chain(['…']).collect() }
}
