use super::{SCHEMA, Scheme, SchemeError};
use serde::Deserialize;
use serde_json::error::Category;

/// No scheme file is larger, bytes.
pub const LARGEST_FILE: usize = 4 << 20;

/// Why a file is not a scheme that can be opened: what is wrong, where, and what to do.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[allow(missing_docs)]
pub enum ReadError {
    #[error("The file of {bytes} bytes is larger than {LARGEST_FILE}. Open a scheme file saved by this program.")]
    TooLarge { bytes: usize },

    #[error("The file is not text: byte {position} is not UTF-8. Open a scheme file saved by this program.")]
    NotText { position: usize },

    #[error("The file is empty. Open another copy of it.")]
    Empty,

    #[error("The file ends too early, at line {line}, column {column}: it is cut short. Open another copy of it.")]
    Truncated { line: usize, column: usize },

    #[error("The file is damaged at line {line}, column {column}: {what}. Open another copy of it, or mend it there.")]
    Syntax { line: usize, column: usize, what: String },

    #[error("The file holds {found} at its line 1 where a scheme should be. Open a scheme file saved by this program.")]
    NotAScheme { found: &'static str },

    #[error(
        "The file does not say which schema it follows, so it is not a scheme. \
             Add \"schema\": {SCHEMA} at its beginning if you are sure that it is one."
    )]
    NoSchema,

    #[error(
        "The schema {found} of the file is not a whole number from 1 up. \
             Set \"schema\": {SCHEMA} at its beginning if you are sure that it is a scheme."
    )]
    BadSchema { found: String },

    #[error(
        "The file has schema {found} and was made by a newer version; this one knows up to {SCHEMA}. \
             Reload the page to get the newest version, then open the file again."
    )]
    Newer { found: u64 },

    #[error("The field `{field}` is missing from what ends at line {line}, column {column}. Add it there.")]
    MissingField { field: String, line: usize, column: usize },

    #[error("The field `{field}` at line {line}, column {column} is not known there. Remove it, or correct its name.")]
    UnknownField { field: String, line: usize, column: usize },

    #[error("The field `{field}` at line {line}, column {column} is given twice. Remove one of the two.")]
    RepeatedField { field: String, line: usize, column: usize },

    #[error("The value at line {line}, column {column} cannot be used: {what}. Correct it there.")]
    WrongValue { what: String, line: usize, column: usize },

    #[error("{}{}", first(.0), more(.0))]
    Invalid(Vec<SchemeError>),
}

fn first(errors: &[SchemeError]) -> String {
    errors.first().map(ToString::to_string).unwrap_or_default()
}

fn more(errors: &[SchemeError]) -> String {
    if errors.len() > 1 { format!(" ({} more like this.)", errors.len() - 1) } else { String::new() }
}

/// The version, looked at before anything else.
#[derive(Deserialize)]
struct Header {
    schema: Option<serde_json::Value>,
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
    let header: Header = serde_json::from_str(text).map_err(|error| explain(&error))?;
    let schema = header.schema.ok_or(ReadError::NoSchema)?;
    match schema.as_u64() {
        Some(found) if found > u64::from(SCHEMA) => return Err(ReadError::Newer { found }),
        Some(1..) => {}
        _ => return Err(ReadError::BadSchema { found: shortened(&schema.to_string()) }),
    }
    let scheme: Scheme = serde_json::from_str(text).map_err(|error| explain(&error))?;
    scheme.validate().map_err(ReadError::Invalid)?;
    Ok(scheme)
}

/// Writes a scheme as text that [`read`] turns into the same scheme.
pub fn write(scheme: &Scheme) -> String {
    // Cannot fail: a scheme has neither maps with odd keys nor types that refuse to be written.
    serde_json::to_string_pretty(scheme).unwrap_or_default()
}

fn explain(error: &serde_json::Error) -> ReadError {
    let (line, column) = (error.line(), error.column());
    let message = error.to_string();
    let what = in_words(message.rsplit_once(" at line ").map_or(message.as_str(), |(what, _)| what));
    match error.classify() {
        Category::Eof => ReadError::Truncated { line, column },
        Category::Syntax | Category::Io => ReadError::Syntax { line, column, what },
        Category::Data => {
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
