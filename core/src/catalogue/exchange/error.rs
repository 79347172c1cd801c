use super::super::ItemFault;

/// Most items of one file.
pub(super) const MOST_ITEMS: usize = 2000;

/// Why a file of items cannot be taken in: where, what, and what to do.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ExchangeError {
    /// Nothing in it.
    #[error("the file has no items; give a header and one row for each item")]
    Empty,
    /// Far more than anybody has.
    #[error("the file has {count} items; at most {MOST_ITEMS} can be taken in at once")]
    TooMany {
        /// How many.
        count: usize,
    },
    /// A quotation mark without its fellow.
    #[error("line {line}: a quotation mark is not closed; close it or double it")]
    OpenQuote {
        /// Where it opens.
        line: usize,
    },
    /// A column that no item has, or whose unit differs.
    #[error("line 1, column {heading:?}: not known; use a heading of an exported file, unit and all")]
    UnknownColumn {
        /// Its heading.
        heading: String,
    },
    /// A heading twice.
    #[error("line 1, column {heading:?}: it is there twice; keep one")]
    RepeatedColumn {
        /// Its heading.
        heading: String,
    },
    /// A row longer than the header.
    #[error("line {line}: more cells than the header has; remove commas or put text in quotation marks")]
    LongRow {
        /// The row.
        line: usize,
    },
    /// A cell that should be a number.
    #[error("line {line}, column {heading:?}: {text:?} is not a number; give one with a decimal point and no unit")]
    NotANumber {
        /// The row.
        line: usize,
        /// The column.
        heading: String,
        /// What is there.
        text: String,
    },
    /// An item of its kind needs this value.
    #[error("{place}, column {column:?}: nothing is there; an item of this kind needs it, so give a value")]
    MissingValue {
        /// Line or index.
        place: String,
        /// Heading of the column.
        column: String,
    },
    /// A word that is none of those that it can be.
    #[error("{place}, column {column:?}: the word is not known; use {known}")]
    UnknownWord {
        /// Line or index.
        place: String,
        /// Heading of the column.
        column: String,
        /// The words that are known.
        known: String,
    },
    /// Values that do not make an item.
    #[error("{place}: {reason}; compare it with an exported file")]
    NotAnItem {
        /// Line or index.
        place: String,
        /// What is odd.
        reason: String,
    },
    /// An item that cannot be computed with.
    #[error("{place}{}: {fault}", of_column(.column))]
    Fault {
        /// Line or index.
        place: String,
        /// Heading of the column, if one value is at fault.
        column: Option<String>,
        /// What is wrong with it.
        fault: Box<ItemFault>,
    },
    /// An item that nothing can refer to.
    #[error("{place}, column \"code\": nothing is there; give the item a code of its own")]
    NoCode {
        /// Line or index.
        place: String,
    },
    /// Two items of one code.
    #[error("{place}, column \"code\": {code:?} is there twice; give each item its own")]
    RepeatedCode {
        /// Line or index.
        place: String,
        /// The code.
        code: String,
    },
    /// Text that is not JSON of this form.
    #[error("the file is not JSON with a list of items: {reason}; compare it with an exported file")]
    NotJson {
        /// What is wrong.
        reason: String,
    },
}

fn of_column(column: &Option<String>) -> String {
    column.as_ref().map(|column| format!(", column {column:?}")).unwrap_or_default()
}
