//! Says in notes and checks which items are not those of the catalogue.

use crate::catalogue::exchange::{Datum, Field};
use crate::catalogue::{Catalogue, Item, Origin};
use crate::model::{Model, Part};
use crate::results::{Finding, Results, Severity};
use crate::scheme::{Id, Scheme};
use crate::sentence::{Sentence, Value, item as named, word};
use std::collections::BTreeMap;

/// Adds a note for each item in use that is the supplier's or the user's, and says so in the source of its checks.
pub fn name_own_items(scheme: &Scheme, catalogue: &Catalogue, model: &Model, results: &mut Results) {
    let mut users: BTreeMap<&str, Id> = BTreeMap::new();
    for used in scheme.uses() {
        if matches!(catalogue.origin(used.code), Some(Origin::Supplier | Origin::Own)) {
            users.entry(used.code).or_insert(used.element);
        }
    }
    if users.is_empty() {
        return;
    }
    for (code, element) in &users {
        results.findings.extend(catalogue.get(code).map(|item| note(item, catalogue.ours(code).as_ref(), *element)));
    }
    let own: Vec<&Part> = model.parts.iter().filter(|part| users.contains_key(&*part.item)).collect();
    for check in &mut results.checks {
        let mut codes: Vec<&str> = own.iter().filter(|part| check.is_of(part)).map(|part| &*part.item).collect();
        codes.sort_unstable();
        codes.dedup();
        for code in codes {
            let words = catalogue.origin(code).map_or("", Origin::words);
            check.source = formula!("{}; {}{}", &check.source, code, words);
        }
    }
}

fn note(item: &Item, ours: Option<&Item>, element: Id) -> Finding {
    let Item { code, name, .. } = item;
    let (text, remedy) = match ours {
        Some(ours) => {
            let supplied = item.supplied(ours);
            let value = |field: &&'static Field| {
                let name = word(field.name);
                match (item.datum(field), ours.datum(field)) {
                    (new, old) if new == old => sentence!("{} {}", name, written(field, new)),
                    (new, old) => sentence!("{} {} instead of {}", name, written(field, new), written(field, old)),
                }
            };
            let values: Vec<Sentence> = supplied.fields.iter().map(value).collect();
            (
                sentence!("{} ({}) is by supplier's data, {}: {}.", code, named(name), &supplied.source, values),
                sentence!("Keep the supplier's sheet with the calculation and have it checked with it."),
            )
        }
        None => (
            sentence!("{} ({}) is an item of your own, by {}.", code, named(name), &item.source),
            sentence!("Have its values checked with the calculation."),
        ),
    };
    Finding { severity: Severity::Note, owner: Some(element), at: None, check: None, text, remedy }
}

fn written(field: &Field, datum: Option<Datum>) -> Value {
    match datum {
        None => word("none"),
        Some(Datum::Word(word)) => word.into(),
        Some(Datum::Number(number)) => field.written(number).into(),
    }
}
