//! How kinds and values of items are written on the page.

use crate::language::{key, look_up, t};
use crate::units::Unit;
use falsewright_core::catalogue::exchange::{Datum, Field, Meaning};
use falsewright_core::catalogue::{Item, Kind, Origin};

/// Kinds of items in the order of the list.
pub const KINDS: [(&str, &str); 9] = [
    ("board", key("Boards")),
    ("timber", key("Sawn timber")),
    ("timber_beam", key("Timber formwork beams")),
    ("rated_beam", key("Beams with stated working values")),
    ("steel", key("Steel beams")),
    ("tie", key("Ties")),
    ("leg", key("Legs and props")),
    ("brace", key("Tubes and couplers")),
    ("plate", key("Bases and sole plates")),
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
    let text = plain(&format!("{} {} {} {kind_name} {}", item.code, item.name, name(&item.name), t(kind_name)));
    let close = text.replace(' ', "");
    words.split_whitespace().all(|word| text.contains(word) || close.contains(word))
}

/// A mark behind the name of an item that is not ours.
pub fn mark(origin: Option<Origin>) -> &'static str {
    match origin {
        Some(Origin::Supplier) => key("supplier's value"),
        Some(Origin::Own) => key("your own"),
        Some(Origin::Standard) => key("standard section"),
        Some(Origin::Catalogue) | None => "",
    }
}

/// What a value is, behind its name.
pub fn meaning(field: &Field) -> &'static str {
    match field.meaning {
        Meaning::Characteristic => key("characteristic"),
        Meaning::Working => key("working"),
        Meaning::Mean => key("mean"),
        Meaning::Word | Meaning::Size | Meaning::Weight => "",
    }
}

/// The name of an item: of ours in the language of the page, of the user's as it is.
pub fn name(name: &str) -> String {
    look_up(name).unwrap_or(name).to_owned()
}

/// How a value is shown and typed.
fn unit(field: &Field) -> Unit {
    const DIGITS: usize = 6;
    match field.unit {
        "m" => Unit::scaled("mm", 1e-3, DIGITS),
        "m²" => Unit::scaled("mm²", 1e-6, DIGITS),
        "m³/m" => Unit::scaled("cm³/m", 1e-6, DIGITS),
        "kPa" => Unit::scaled("N/mm²", 1e3, DIGITS),
        unit => Unit::of(unit, DIGITS),
    }
}

/// The unit that a value is shown and typed in.
pub fn unit_name(field: &Field) -> &'static str {
    unit(field).name()
}

/// A value without its unit.
pub fn number(field: &Field, datum: &Datum) -> String {
    match datum {
        Datum::Word(word) => word.clone(),
        Datum::Number(value) => unit(field).to_figures(*value),
    }
}

/// A value with its unit.
pub fn written(field: &Field, datum: &Datum) -> String {
    format!("{} {}", number(field, datum), unit_name(field)).trim_end().to_owned()
}

/// The value that was typed.
pub fn typed(field: &Field, text: &str) -> Option<Datum> {
    match field.meaning {
        Meaning::Word => Some(Datum::Word(text.trim().to_owned())),
        _ => unit(field).read(text).map(Datum::Number),
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
