//! Items in and out of files: CSV with units in its header, and JSON.

mod csv;
mod error;
mod fields;
mod read;
mod values;

pub use error::ExchangeError;
pub use fields::{FIELDS, Field, Meaning};
pub use read::{from_csv, from_json};
pub use values::Datum;

use super::Item;
use serde_json::{Map, Value, json};
use values::flat;

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
    crate::json::write_indented(&document)
}
