//! The supplier's values in place of ours.

use super::exchange::{Datum, FIELDS, Field};
use super::standard::standard_of_code;
use super::{Catalogue, Item, ItemFault};

/// Where an item in use comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// The built-in catalogue.
    Catalogue,
    /// The table of standard sections.
    Standard,
    /// The supplier: the user's values in place of ours.
    Supplier,
    /// The user.
    Own,
}

impl Origin {
    /// What a bill or a check says of such an item, behind its name; nothing for ours.
    pub fn words(self) -> &'static str {
        match self {
            Self::Catalogue | Self::Standard => "",
            Self::Supplier => ", by supplier's data",
            Self::Own => ", an item of your own",
        }
    }
}

/// What a user's item says of its source, beside the item of ours that it replaces.
#[derive(Clone, Debug, PartialEq)]
pub struct Supplied {
    /// The source that the user gave.
    pub source: String,
    /// The values that come from there.
    pub fields: Vec<&'static Field>,
}

/// Joins the user's source, the values from there, and our source.
const VALUES: &str = ": ";
const OTHERWISE: &str = "; otherwise ";

impl Catalogue {
    /// Where the item of this code comes from.
    pub fn origin(&self, code: &str) -> Option<Origin> {
        let Some(item) = self.own.get(code) else {
            return self.is_built_in(code).then_some(Origin::Catalogue);
        };
        Some(match self.ours(code) {
            Some(ours) if *item != ours => Origin::Supplier,
            Some(_) if self.is_built_in(code) => Origin::Catalogue,
            Some(_) => Origin::Standard,
            None => Origin::Own,
        })
    }

    /// Our item of this code, whatever the user has put in its place: a built-in item or a standard section.
    pub fn ours(&self, code: &str) -> Option<Item> {
        self.generic.get(code).cloned().or_else(|| standard_of_code(code))
    }

    /// Whether there is a built-in item of this code, replaced or not.
    pub fn is_built_in(&self, code: &str) -> bool {
        self.generic.contains_key(code)
    }

    /// The user's own items after others were read from a file: each replaces the one of its code, and one that is as
    /// ours gives way to ours.
    pub fn merged(&self, own: &[Item], read: Vec<Item>) -> Vec<Item> {
        let mut all: Vec<Item> = own.to_vec();
        for item in read {
            let built_in = self.generic.get(&item.code) == Some(&item);
            match all.iter().position(|own| own.code == item.code) {
                Some(at) if built_in => {
                    all.remove(at);
                }
                Some(at) => all[at] = item,
                None if built_in => {}
                None => all.push(item),
            }
        }
        all
    }
}

impl Item {
    /// The values that are other than those of another item of its kind.
    pub fn differences(&self, other: &Item) -> Vec<&'static Field> {
        let values = |field: &&Field| !field.is_identity() && self.datum(field) != other.datum(field);
        FIELDS.iter().filter(values).collect()
    }

    /// What is the supplier's in this item that stands in place of ours.
    pub fn supplied(&self, ours: &Item) -> Supplied {
        let differ = self.differences(ours);
        let told = self.source.strip_suffix(&ours.source).and_then(|rest| rest.strip_suffix(OTHERWISE));
        match told.and_then(|told| told.rsplit_once(VALUES)) {
            Some((source, names)) => {
                let named =
                    |field: &&Field| names.split(", ").any(|name| name == field.name) && ours.datum(field).is_some();
                let mut fields: Vec<&'static Field> = FIELDS.iter().filter(named).collect();
                fields.extend(differ.into_iter().filter(|field| !names.split(", ").any(|name| name == field.name)));
                Supplied { source: source.into(), fields }
            }
            None => Supplied { source: self.source.clone(), fields: differ },
        }
    }

    /// This item with a value of the supplier's in place of ours.
    ///
    /// # Errors
    /// A value that cannot be computed with.
    pub fn with_supplied(
        &self,
        ours: &Item,
        field: &'static Field,
        datum: &Datum,
        source: &str,
    ) -> Result<Item, ItemFault> {
        let mut fields = if self == ours { Vec::new() } else { self.supplied(ours).fields };
        if !fields.contains(&field) {
            fields.push(field);
        }
        Ok(self.with_datum(field, datum)?.told(ours, source, &fields))
    }

    /// This item with one value as ours again; ours itself where nothing of the supplier's is left.
    pub fn with_ours(&self, ours: &Item, field: &'static Field) -> Result<Item, ItemFault> {
        let Supplied { source, mut fields } = self.supplied(ours);
        let item = match ours.datum(field) {
            Some(datum) => self.with_datum(field, &datum)?,
            None => self.clone(),
        };
        fields.retain(|other| other.key != field.key);
        Ok(if fields.is_empty() { ours.clone() } else { item.told(ours, &source, &fields) })
    }

    fn told(mut self, ours: &Item, source: &str, fields: &[&Field]) -> Item {
        let mut names: Vec<&Field> = fields.to_vec();
        names.sort_by_key(|field| FIELDS.iter().position(|other| other.key == field.key));
        self.name = names.iter().fold(ours.name.clone(), |name, field| renamed(&name, field, ours, &self));
        let names: Vec<&str> = names.iter().map(|field| field.name).collect();
        self.source = format!("{}{VALUES}{}{OTHERWISE}{}", source.trim(), names.join(", "), ours.source);
        self
    }
}

/// A name that told a value of ours, such as `90 kN`, telling the new one.
fn renamed(name: &str, field: &Field, ours: &Item, new: &Item) -> String {
    let told = |item: &Item| match item.datum(field)? {
        Datum::Number(number) if !field.unit.is_empty() => Some(field.written(number)),
        Datum::Word(word) if matches!(field.key, "class" | "grade") => Some(word),
        _ => None,
    };
    match (told(ours), told(new)) {
        (Some(old), Some(new)) => name.replace(&old, &new),
        _ => name.to_owned(),
    }
}
