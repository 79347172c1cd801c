//! Single values of an item by the key of each.

use super::super::{Item, ItemFault};
use super::fields::{Field, Meaning};
use crate::json::value_of;
use serde_json::{Map, Number, Value};

/// One value of an item, in the unit of its field.
#[derive(Clone, Debug, PartialEq)]
pub enum Datum {
    /// Text.
    Word(String),
    /// A number.
    Number(f64),
}

impl Item {
    /// Every value that the item has, in the order of columns.
    pub fn data(&self) -> Vec<(&'static Field, Datum)> {
        let values = flat(self);
        let datum = |value: &Value| match value {
            Value::String(word) => Some(Datum::Word(word.clone())),
            number => number.as_f64().map(Datum::Number),
        };
        super::FIELDS.iter().filter_map(|field| Some((field, datum(values.get(field.key)?)?))).collect()
    }

    /// One value of the item.
    pub fn datum(&self, field: &Field) -> Option<Datum> {
        self.data().into_iter().find(|(own, _)| own.key == field.key).map(|(_, datum)| datum)
    }

    /// The item with another value.
    ///
    /// # Errors
    /// A value that the item does not have or cannot be computed with.
    pub fn with_datum(&self, field: &'static Field, datum: &Datum) -> Result<Item, ItemFault> {
        let impossible = |reason| ItemFault::Impossible { code: self.code.clone(), reason };
        let out_of_range =
            |value| ItemFault::OutOfRange { code: self.code.clone(), field: field.key, value, limit: 1e9 };
        let Some(present) = flat(self).remove(field.key) else {
            return Err(impossible("an item of its kind has no such value"));
        };
        let leaf = match datum {
            Datum::Word(word) if field.meaning == Meaning::Word => Value::from(word.as_str()),
            Datum::Number(number) if present.is_u64() => {
                if number.fract() != 0.0 || !(1.0..=10.0).contains(number) {
                    return Err(impossible("it takes a whole number from 1 to 10"));
                }
                Value::from(*number as u64)
            }
            Datum::Number(number) if present.is_number() => {
                Number::from_f64(*number).map(Value::Number).ok_or_else(|| out_of_range(*number))?
            }
            _ => return Err(impossible("a number is text, or text a number")),
        };
        let mut value = value_of(self);
        put(&mut value, field.key, leaf);
        let item: Item = serde_json::from_value(value).map_err(|_| impossible("a value is not of its kind"))?;
        item.fault().map_or(Ok(item), Err)
    }
}

/// The values of an item by the path of each.
pub(super) fn flat(item: &Item) -> Map<String, Value> {
    let mut all = Map::new();
    flatten("", &value_of(item), &mut all);
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

/// Puts a value at a path such as `section.h_mm` or `sheet_m.1`.
pub(super) fn put(at: &mut Value, path: &str, leaf: Value) {
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
