//! Reads items and collects everything that is wrong with them.

use super::super::{Item, ItemFault};
use super::csv::{self, Row};
use super::error::{ExchangeError, MOST_ITEMS};
use super::fields::{FIELDS, Field, Meaning};
use super::values::put;
use serde_json::{Map, Number, Value};
use std::collections::BTreeSet;

/// Most faults that are told at once.
const MOST_FAULTS: usize = 50;

/// Reads items from CSV.
///
/// # Errors
/// Everything that is wrong, each with its line and column.
pub fn from_csv(text: &str) -> Result<Vec<Item>, Vec<ExchangeError>> {
    let rows = csv::read(text).map_err(|line| vec![ExchangeError::OpenQuote { line }])?;
    let Some((header, rows)) = rows.split_first().filter(|(_, rows)| !rows.is_empty()) else {
        return Err(vec![ExchangeError::Empty]);
    };
    let columns = columns(header)?;
    let mut taken = Taken::new(rows.len())?;
    for row in rows {
        match cells(row, &columns) {
            Ok(value) => taken.take(format!("line {}", row.line), value),
            Err(faults) => taken.faults.extend(faults),
        }
    }
    taken.done()
}

/// Reads items from JSON: a list of them, or an object with such a list named `items`.
///
/// # Errors
/// Everything that is wrong, each with its place in the list.
pub fn from_json(text: &str) -> Result<Vec<Item>, Vec<ExchangeError>> {
    let not_json = |reason: String| vec![ExchangeError::NotJson { reason }];
    let value: Value = serde_json::from_str(text).map_err(|error| not_json(error.to_string()))?;
    let list = value.as_array().or_else(|| value["items"].as_array());
    let list = list.ok_or_else(|| not_json("there is no list of items".into()))?;
    let mut taken = Taken::new(list.len())?;
    for (index, value) in list.iter().enumerate() {
        taken.take(format!("item {}", index + 1), value.clone());
    }
    taken.done()
}

fn columns(header: &Row) -> Result<Vec<&'static Field>, Vec<ExchangeError>> {
    let (mut columns, mut faults) = (Vec::new(), Vec::new());
    for heading in &header.cells {
        match Field::of_heading(heading) {
            None => faults.push(ExchangeError::UnknownColumn { heading: heading.chars().take(80).collect() }),
            Some(field) if columns.contains(&field) => {
                faults.push(ExchangeError::RepeatedColumn { heading: field.heading() });
            }
            Some(field) => columns.push(field),
        }
    }
    faults.truncate(MOST_FAULTS);
    if faults.is_empty() { Ok(columns) } else { Err(faults) }
}

fn cells(row: &Row, columns: &[&'static Field]) -> Result<Value, Vec<ExchangeError>> {
    if row.cells.len() > columns.len() {
        return Err(vec![ExchangeError::LongRow { line: row.line }]);
    }
    let (mut value, mut faults) = (Value::Object(Map::new()), Vec::new());
    for (field, cell) in columns.iter().zip(&row.cells).filter(|(_, cell)| !cell.trim().is_empty()) {
        match cell_value(field, cell.trim(), row.line) {
            Ok(leaf) => put(&mut value, field.key, leaf),
            Err(fault) => faults.push(fault),
        }
    }
    if faults.is_empty() { Ok(value) } else { Err(faults) }
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

/// What was taken in so far.
struct Taken {
    items: Vec<Item>,
    codes: BTreeSet<String>,
    faults: Vec<ExchangeError>,
}

impl Taken {
    fn new(count: usize) -> Result<Self, Vec<ExchangeError>> {
        match count {
            0 => Err(vec![ExchangeError::Empty]),
            count if count > MOST_ITEMS => Err(vec![ExchangeError::TooMany { count }]),
            _ => Ok(Self { items: Vec::new(), codes: BTreeSet::new(), faults: Vec::new() }),
        }
    }

    fn take(&mut self, place: String, value: Value) {
        let item = match read(&place, value) {
            Ok(item) => item,
            Err(faults) => return self.faults.extend(faults),
        };
        if item.code.trim().is_empty() {
            self.faults.push(ExchangeError::NoCode { place });
        } else if !self.codes.insert(item.code.clone()) {
            self.faults.push(ExchangeError::RepeatedCode { place, code: item.code });
        } else if let Some(fault) = item.fault() {
            self.faults.push(ExchangeError::Fault { place, column: column_of(&fault), fault: Box::new(fault) });
        } else {
            self.items.push(item);
        }
    }

    fn done(mut self) -> Result<Vec<Item>, Vec<ExchangeError>> {
        self.faults.truncate(MOST_FAULTS);
        if self.faults.is_empty() { Ok(self.items) } else { Err(self.faults) }
    }
}

/// One item. Of what is missing, everything is told: a stand-in lets the reader go on to the next.
fn read(place: &str, mut value: Value) -> Result<Item, Vec<ExchangeError>> {
    let mut faults = Vec::new();
    loop {
        let reason = match serde_json::from_value::<Item>(value.clone()) {
            Ok(item) if faults.is_empty() => return Ok(item),
            Ok(_) => return Err(faults),
            Err(error) => error.to_string(),
        };
        match missing(&reason, &value).filter(|_| value.is_object()) {
            Some(field) if field.key == "kind" || field.key == "section.shape" => {
                faults.push(ExchangeError::MissingValue { place: place.into(), column: field.heading() });
                return Err(faults);
            }
            Some(field) => {
                faults.push(ExchangeError::MissingValue { place: place.into(), column: field.heading() });
                let stand_in = if field.meaning == Meaning::Word { Value::from("steel") } else { Value::from(1) };
                put(&mut value, field.key, stand_in);
            }
            None => {
                let place = place.to_owned();
                faults.push(match unknown_word(&reason, &value) {
                    Some((column, known)) => ExchangeError::UnknownWord { place, column, known },
                    None => ExchangeError::NotAnItem { place, reason },
                });
                return Err(faults);
            }
        }
    }
}

/// The field that a reader misses, by its words.
fn missing(reason: &str, value: &Value) -> Option<&'static Field> {
    let name = match reason.strip_prefix("missing field `") {
        Some(rest) => rest.split('`').next()?,
        None if reason.starts_with("invalid length") || reason.starts_with("invalid type: null") => {
            return FIELDS.iter().find(|field| is_hole(value, field.key));
        }
        None => return None,
    };
    let name = if name == "section" { "shape" } else { name };
    let strength_class_of_leg = |field: &Field| field.key == "class" && value["kind"] == "leg";
    let absent = |field: &&Field| {
        at(value, field.key).is_none_or(Value::is_null)
            && field.key.split('.').any(|part| part == name)
            && !strength_class_of_leg(field)
    };
    FIELDS.iter().find(absent)
}

/// Whether one of a pair is missing, or one of a list before its last.
fn is_hole(value: &Value, key: &str) -> bool {
    let Some((list, Ok(index))) = key.rsplit_once('.').map(|(list, index)| (list, index.parse::<usize>())) else {
        return false;
    };
    let is_pair = Field::of_key(&format!("{list}.2")).is_none();
    let found = at(value, list).and_then(Value::as_array);
    found.is_some_and(|all| all.get(index).map_or(is_pair && index == all.len(), Value::is_null))
}

/// The word that a reader does not know: the heading of its column and the words that it knows.
fn unknown_word(reason: &str, value: &Value) -> Option<(String, String)> {
    let (word, known) = reason.strip_prefix("unknown variant `")?.split_once('`')?;
    let is_word = |field: &&Field| at(value, field.key).and_then(Value::as_str) == Some(word);
    let field =
        ["kind", "section.shape", "material"].into_iter().filter_map(Field::of_key).find(|field| is_word(field))?;
    Some((field.heading(), known.trim_start_matches(", expected ").replace('`', "")))
}

fn at<'a>(value: &'a Value, key: &str) -> Option<&'a Value> {
    key.split('.').try_fold(value, |at, part| match part.parse::<usize>() {
        Ok(index) => at.get(index),
        Err(_) => at.get(part),
    })
}

fn column_of(fault: &ItemFault) -> Option<String> {
    Field::of_key(fault.field()?).map(Field::heading)
}
