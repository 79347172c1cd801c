use super::super::ItemFault;
use crate::sentence::Sentence;
use std::fmt;

/// Most items of one file.
pub(super) const MOST_ITEMS: usize = 2000;

/// Why a file of items cannot be taken in: where, what, and what to do.
#[derive(Clone, Debug, PartialEq)]
pub enum ExchangeError {
    /// Nothing in it.
    Empty,
    /// Far more than anybody has.
    TooMany {
        /// How many.
        count: usize,
    },
    /// A quotation mark without its fellow.
    OpenQuote {
        /// Where it opens.
        line: usize,
    },
    /// A column that no item has, or whose unit differs.
    UnknownColumn {
        /// Its heading.
        heading: String,
    },
    /// A heading twice.
    RepeatedColumn {
        /// Its heading.
        heading: String,
    },
    /// A row longer than the header.
    LongRow {
        /// The row.
        line: usize,
    },
    /// A cell that should be a number.
    NotANumber {
        /// The row.
        line: usize,
        /// The column.
        heading: String,
        /// What is there.
        text: String,
    },
    /// An item of its kind needs this value.
    MissingValue {
        /// Line or index.
        place: String,
        /// Heading of the column.
        column: String,
    },
    /// A word that is none of those that it can be.
    UnknownWord {
        /// Line or index.
        place: String,
        /// Heading of the column.
        column: String,
        /// The words that are known.
        known: String,
    },
    /// Values that do not make an item.
    NotAnItem {
        /// Line or index.
        place: String,
        /// What is odd.
        reason: String,
    },
    /// An item that cannot be computed with.
    Fault {
        /// Line or index.
        place: String,
        /// Heading of the column, if one value is at fault.
        column: Option<String>,
        /// What is wrong with it.
        fault: Box<ItemFault>,
    },
    /// An item that nothing can refer to.
    NoCode {
        /// Line or index.
        place: String,
    },
    /// Two items of one code.
    RepeatedCode {
        /// Line or index.
        place: String,
        /// The code.
        code: String,
    },
    /// Text that is not JSON of this form.
    NotJson {
        /// What is wrong.
        reason: String,
    },
}

impl ExchangeError {
    /// Where, what, and what to do, without a full stop.
    pub fn sentence(&self) -> Sentence {
        let quoted = |text: &String| format!("{text:?}");
        match self {
            Self::Empty => sentence!("the file has no items; give a header and one row for each item"),
            Self::TooMany { count } => {
                sentence!("the file has {} items; at most {} can be taken in at once", *count, MOST_ITEMS)
            }
            Self::OpenQuote { line } => {
                sentence!("line {}: a quotation mark is not closed; close it or double it", *line)
            }
            Self::UnknownColumn { heading } => sentence!(
                "line 1, column {}: not known; use a heading of an exported file, unit and all",
                quoted(heading)
            ),
            Self::RepeatedColumn { heading } => {
                sentence!("line 1, column {}: it is there twice; keep one", quoted(heading))
            }
            Self::LongRow { line } => sentence!(
                "line {}: more cells than the header has; remove commas or put text in quotation marks",
                *line
            ),
            Self::NotANumber { line, heading, text } => sentence!(
                "line {}, column {}: {} is not a number; give one with a decimal point and no unit",
                *line,
                quoted(heading),
                quoted(text)
            ),
            Self::MissingValue { place, column } => sentence!(
                "{}, column {}: nothing is there; an item of this kind needs it, so give a value",
                place,
                quoted(column)
            ),
            Self::UnknownWord { place, column, known } => {
                sentence!("{}, column {}: the word is not known; use {}", place, quoted(column), known)
            }
            Self::NotAnItem { place, reason } => sentence!("{}: {}; compare it with an exported file", place, reason),
            Self::Fault { place, column: Some(column), fault } => {
                sentence!("{}, column {}: {}", place, quoted(column), fault.sentence())
            }
            Self::Fault { place, column: None, fault } => sentence!("{}: {}", place, fault.sentence()),
            Self::NoCode { place } => {
                sentence!("{}, column \"code\": nothing is there; give the item a code of its own", place)
            }
            Self::RepeatedCode { place, code } => {
                sentence!("{}, column \"code\": {} is there twice; give each item its own", place, quoted(code))
            }
            Self::NotJson { reason } => {
                sentence!("the file is not JSON with a list of items: {}; compare it with an exported file", reason)
            }
        }
    }
}

impl fmt::Display for ExchangeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.sentence().fmt(f)
    }
}

impl std::error::Error for ExchangeError {}
