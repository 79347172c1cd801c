//! Items in and out of files: CSV with units in its header, and JSON.

mod csv;
mod fields;

pub use fields::{FIELDS, Field, Meaning};

use super::{Item, ItemFault};
use serde_json::{Map, Number, Value, json};
use std::collections::BTreeSet;

/// Most items of one file.
const MOST_ITEMS: usize = 2000;

/// Why a file of items cannot be taken in.
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
    #[error("column {heading:?} is not known; use a heading of an exported file, unit and all")]
    UnknownColumn {
        /// Its heading.
        heading: String,
    },
    /// A heading twice.
    #[error("column {heading:?} is there twice; keep one")]
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
    #[error("line {line}: {heading} is {text:?}; give a number with a decimal point and no unit")]
    NotANumber {
        /// The row.
        line: usize,
        /// The column.
        heading: String,
        /// What is there.
        text: String,
    },
    /// Values that do not make an item.
    #[error("{place}: {reason}")]
    NotAnItem {
        /// Line or index.
        place: String,
        /// What is missing or odd.
        reason: String,
    },
    /// An item that cannot be computed with.
    #[error("{place}: {fault}")]
    Fault {
        /// Line or index.
        place: String,
        /// What is wrong with it.
        fault: ItemFault,
    },
    /// Two items of one code.
    #[error("{place}: code {code:?} is there twice; give each item its own")]
    RepeatedCode {
        /// Line or index.
        place: String,
        /// The code.
        code: String,
    },
    /// Text that is not JSON of this form.
    #[error("the file is not JSON with a list of items: {reason}")]
    NotJson {
        /// What is wrong.
        reason: String,
    },
}

/// Items as CSV: a header of keys, units and meanings, one row for each item, only columns in use.
pub fn to_csv<'a>(items: impl IntoIterator<Item = &'a Item>) -> String {
    let rows: Vec<Map<String, Value>> = items.into_iter().map(flat).collect();
    let used: Vec<&Field> = FIELDS.iter().filter(|field| rows.iter().any(|row| row.contains_key(field.key))).collect();
    let headings: Vec<String> = used.iter().map(|field| csv::write_cell(&field.heading())).collect();
    let mut text = headings.join(",") + "\r\n";
    for row in &rows {
        let cell = |field: &&Field| match row.get(field.key) {
            Some(Value::String(word)) => csv::write_cell(word),
            Some(value) => value.to_string(),
            None => String::new(),
        };
        text += &(used.iter().map(cell).collect::<Vec<_>>().join(",") + "\r\n");
    }
    text
}

/// Reads items from CSV.
///
/// # Errors
/// The first thing that is wrong, with its line and column.
pub fn from_csv(text: &str) -> Result<Vec<Item>, ExchangeError> {
    let rows = csv::read(text).map_err(|line| ExchangeError::OpenQuote { line })?;
    let Some((header, rows)) = rows.split_first().filter(|(_, rows)| !rows.is_empty()) else {
        return Err(ExchangeError::Empty);
    };
    let mut columns: Vec<&Field> = Vec::new();
    for heading in &header.cells {
        let field = Field::of_heading(heading)
            .ok_or_else(|| ExchangeError::UnknownColumn { heading: heading.chars().take(80).collect() })?;
        if columns.contains(&field) {
            return Err(ExchangeError::RepeatedColumn { heading: field.heading() });
        }
        columns.push(field);
    }
    let mut items = Taken::new(rows.len())?;
    for row in rows {
        if row.cells.len() > columns.len() {
            return Err(ExchangeError::LongRow { line: row.line });
        }
        let mut value = Value::Object(Map::new());
        for (field, cell) in columns.iter().zip(&row.cells) {
            if !cell.trim().is_empty() {
                put(&mut value, field.key, cell_value(field, cell.trim(), row.line)?);
            }
        }
        items.take(format!("line {}", row.line), value)?;
    }
    Ok(items.items)
}

/// Items as JSON with the unit and meaning of each value.
pub fn to_json<'a>(items: impl IntoIterator<Item = &'a Item>) -> String {
    let words = |field: &Field| Value::from(format!("{}, {}", field.unit, field.meaning.name()));
    let units: Map<String, Value> = FIELDS
        .iter()
        .filter(|field| field.meaning != Meaning::Word && !field.unit.is_empty())
        .map(|field| (field.key.to_owned(), words(field)))
        .collect();
    let items: Vec<&Item> = items.into_iter().collect();
    let document = json!({ "units": units, "items": items });
    serde_json::to_string_pretty(&document).unwrap_or_default()
}

/// Reads items from JSON: a list of them, or an object with such a list named `items`.
///
/// # Errors
/// The first thing that is wrong, with its place in the list.
pub fn from_json(text: &str) -> Result<Vec<Item>, ExchangeError> {
    let value: Value =
        serde_json::from_str(text).map_err(|error| ExchangeError::NotJson { reason: error.to_string() })?;
    let list = value.as_array().or_else(|| value["items"].as_array());
    let list = list.ok_or_else(|| ExchangeError::NotJson { reason: "there is no list of items".into() })?;
    let mut items = Taken::new(list.len())?;
    for (index, value) in list.iter().enumerate() {
        items.take(format!("item {}", index + 1), value.clone())?;
    }
    Ok(items.items)
}

/// Items taken in so far.
struct Taken {
    items: Vec<Item>,
    codes: BTreeSet<String>,
}

impl Taken {
    fn new(count: usize) -> Result<Self, ExchangeError> {
        match count {
            0 => Err(ExchangeError::Empty),
            count if count > MOST_ITEMS => Err(ExchangeError::TooMany { count }),
            _ => Ok(Self { items: Vec::new(), codes: BTreeSet::new() }),
        }
    }

    fn take(&mut self, place: String, value: Value) -> Result<(), ExchangeError> {
        let item: Item = serde_json::from_value(value)
            .map_err(|error| ExchangeError::NotAnItem { place: place.clone(), reason: error.to_string() })?;
        if let Some(fault) = item.fault() {
            return Err(ExchangeError::Fault { place, fault });
        }
        if item.code.trim().is_empty() || !self.codes.insert(item.code.clone()) {
            return Err(ExchangeError::RepeatedCode { place, code: item.code });
        }
        self.items.push(item);
        Ok(())
    }
}

/// The values of an item by the path of each.
fn flat(item: &Item) -> Map<String, Value> {
    let mut all = Map::new();
    if let Ok(value) = serde_json::to_value(item) {
        flatten("", &value, &mut all);
    }
    all
}

fn flatten(path: &str, value: &Value, all: &mut Map<String, Value>) {
    let under = |name: &str| if path.is_empty() { name.to_owned() } else { format!("{path}.{name}") };
    match value {
        Value::Object(fields) => fields.iter().for_each(|(name, value)| flatten(&under(name), value, all)),
        Value::Array(values) => {
            values.iter().enumerate().for_each(|(index, value)| flatten(&under(&index.to_string()), value, all));
        }
        leaf => {
            all.insert(path.to_owned(), leaf.clone());
        }
    }
}

fn cell_value(field: &Field, cell: &str, line: usize) -> Result<Value, ExchangeError> {
    if field.meaning == Meaning::Word {
        return Ok(Value::from(cell));
    }
    let whole = cell.parse::<u32>().ok().map(Number::from);
    let number = whole.or_else(|| cell.parse::<f64>().ok().and_then(Number::from_f64));
    number.map(Value::Number).ok_or_else(|| ExchangeError::NotANumber {
        line,
        heading: field.heading(),
        text: cell.chars().take(80).collect(),
    })
}

/// Puts a value at a path such as `section.h_mm` or `sheet_m.1`.
fn put(at: &mut Value, path: &str, leaf: Value) {
    let (name, rest) = path.split_once('.').map_or((path, None), |(name, rest)| (name, Some(rest)));
    let place = match name.parse::<usize>() {
        Ok(index) => {
            let mut list = at.as_array().cloned().unwrap_or_default();
            list.resize(list.len().max(index + 1), Value::Null);
            *at = Value::Array(list);
            &mut at[index]
        }
        Err(_) => {
            if !at.is_object() {
                *at = Value::Object(Map::new());
            }
            &mut at[name]
        }
    };
    match rest {
        None => *place = leaf,
        Some(rest) => put(place, rest, leaf),
    }
}
