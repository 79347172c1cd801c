//! Generic equipment: what an item is made of and what it can bear. The data are in `catalogue.json`.

mod item;

pub use item::{Beam, Board, Brace, Item, Kind, Leg, Plate, Section, Steel, Tie, Timber, TimberBeam};

use crate::scheme::Scheme;
use std::collections::BTreeMap;

/// The items that a scheme can use, by code.
#[derive(Clone, Debug, PartialEq)]
pub struct Catalogue {
    items: BTreeMap<String, Item>,
}

impl Catalogue {
    /// The built-in items.
    pub fn generic() -> Self {
        let items: Vec<Item> = serde_json::from_str(include_str!("catalogue.json")).unwrap_or_default();
        Self { items: items.into_iter().map(|item| (item.code.clone(), item)).collect() }
    }

    /// These items and the scheme's own, which come first.
    pub fn with_items_of(mut self, scheme: &Scheme) -> Self {
        self.items.extend(scheme.items.iter().map(|item| (item.code.clone(), item.clone())));
        self
    }

    /// The item of this code.
    pub fn get(&self, code: &str) -> Option<&Item> {
        self.items.get(code)
    }

    /// All items in the order of their codes.
    pub fn iter(&self) -> impl Iterator<Item = &Item> {
        self.items.values()
    }
}
