//! How kinds and values of items are written on the page.

use crate::units;
use falsewright_core::catalogue::exchange::{Datum, Field, Meaning};
use falsewright_core::catalogue::{Item, Kind, Origin};

/// Kinds of items in the order of the list.
pub const KINDS: [(&str, &str); 9] = [
    ("board", "Boards"),
    ("timber", "Sawn timber"),
    ("timber_beam", "Timber formwork beams"),
    ("rated_beam", "Beams with stated working values"),
    ("steel", "Steel beams"),
    ("tie", "Ties"),
    ("leg", "Legs and props"),
    ("brace", "Tubes and couplers"),
    ("plate", "Bases and sole plates"),
];

/// The kind of an item, as in [`KINDS`].
pub fn kind(item: &Item) -> &'static str {
    match item.kind {
        Kind::Board(_) => "board",
        Kind::Timber(_) => "timber",
        Kind::TimberBeam(_) => "timber_beam",
        Kind::RatedBeam(_) => "rated_beam",
        Kind::Steel(_) => "steel",
        Kind::Tie(_) => "tie",
        Kind::Leg(_) => "leg",
        Kind::Brace(_) => "brace",
        Kind::Plate(_) => "plate",
    }
}

/// Words to search with: in small letters, a cross as an x.
pub fn plain(text: &str) -> String {
    text.to_lowercase().replace('×', "x")
}

/// Whether an item has all these words in its code, its name or its kind.
pub fn matches(item: &Item, words: &str) -> bool {
    let kind_name = KINDS.iter().find(|(key, _)| *key == kind(item)).map_or("", |(_, name)| name);
    let text = plain(&format!("{} {} {kind_name}", item.code, item.name));
    let close = text.replace(' ', "");
    words.split_whitespace().all(|word| text.contains(word) || close.contains(word))
}

/// A mark behind the name of an item that is not ours.
pub fn mark(origin: Option<Origin>) -> &'static str {
    match origin {
        Some(Origin::Supplier) => "supplier's value",
        Some(Origin::Own) => "your own",
        Some(Origin::Standard) => "standard section",
        Some(Origin::Catalogue) | None => "",
    }
}

/// What a value is, behind its name.
pub fn meaning(field: &Field) -> &'static str {
    match field.meaning {
        Meaning::Characteristic => "characteristic",
        Meaning::Working => "working",
        Meaning::Mean => "mean",
        Meaning::Word | Meaning::Size | Meaning::Weight => "",
    }
}

/// The unit that a value is shown and typed in, and its size as a fraction: so many of it make so many of the value's own.
fn unit(field: &Field) -> (&'static str, f64, f64) {
    match field.unit {
        "m" => ("mm", 1e3, 1.0),
        "m²" => ("mm²", 1e6, 1.0),
        "m³/m" => ("cm³/m", 1e6, 1.0),
        "kPa" => ("N/mm²", 1.0, 1e3),
        unit => (unit, 1.0, 1.0),
    }
}

/// The unit that a value is shown and typed in.
pub fn unit_name(field: &Field) -> &'static str {
    unit(field).0
}

/// A value without its unit.
pub fn number(field: &Field, datum: &Datum) -> String {
    let (_, many, of) = unit(field);
    match datum {
        Datum::Word(word) => word.clone(),
        Datum::Number(value) => units::figures(value * many / of),
    }
}

/// A value with its unit.
pub fn written(field: &Field, datum: &Datum) -> String {
    format!("{} {}", number(field, datum), unit_name(field)).trim_end().to_owned()
}

/// The value that was typed.
pub fn typed(field: &Field, text: &str) -> Option<Datum> {
    let (_, many, of) = unit(field);
    match field.meaning {
        Meaning::Word => Some(Datum::Word(text.trim().to_owned())),
        _ => units::parse(text).map(|value| Datum::Number(value * of / many)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::catalogue::Catalogue;

    #[test]
    fn every_value_is_typed_as_it_is_shown() {
        for item in Catalogue::generic().iter() {
            for (field, datum) in item.data().into_iter().filter(|(field, _)| !field.is_identity()) {
                let back = typed(field, &number(field, &datum));
                match (&datum, back) {
                    (Datum::Number(value), Some(Datum::Number(back))) => {
                        assert!((back - value).abs() <= 1e-5 * value.abs(), "{} {}", item.code, field.key);
                    }
                    (datum, back) => assert_eq!(Some(datum), back.as_ref()),
                }
            }
        }
    }

    #[test]
    fn words_find_items() {
        let catalogue = Catalogue::generic();
        let found = |words: &str| catalogue.iter().filter(|item| matches(item, &plain(words))).count();
        assert_eq!(found("ub 305×165×40"), 1);
        assert_eq!(found("TIE"), catalogue.iter().filter(|item| item.tie().is_some()).count());
        assert_eq!(found(""), catalogue.iter().count());
        assert_eq!(found("no such thing"), 0);
    }
}
