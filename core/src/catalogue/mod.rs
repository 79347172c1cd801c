//! Generic equipment: what an item is made of and what it can bear. The data are in `catalogue.json`.

mod beam;
pub mod exchange;
mod fault;
mod hollow;
mod item;
mod origin;
mod plywood;
mod section;
mod stack;
mod standard;
mod timber_class;
mod tube;

pub use fault::ItemFault;
pub use hollow::{Hollow, standard_hollows, standard_tubes};
pub use item::{
    Beam, Board, Brace, EndNotch, Item, Kind, Leg, NutPlate, Plate, PlateMaterial, PropRating, RatedBeam, Section,
    Steel, Tie, Timber, TimberBeam,
};
pub use origin::{Origin, Supplied};
pub use plywood::{Grain, LayUp, board_section};
pub(crate) use section::Dimensions;
pub use section::{STEEL_MODULUS_MPA, SectionProperties};
pub use stack::{Joint, Stack, Stacked, Unstacked};
pub use standard::{GRADES, standard_beam, standard_pair, standard_section, standard_sections};
pub use timber_class::{Strengths, TimberClass};
pub use tube::{STEEL_KG_M3, Tube};

use crate::json;
use crate::model::Role;
use crate::scheme::Scheme;
use std::collections::BTreeMap;
use std::sync::Arc;

/// The items that a scheme can use, by code.
#[derive(Clone, Debug, PartialEq)]
pub struct Catalogue {
    generic: Arc<BTreeMap<String, Item>>,
    /// The user's; one with the code of a generic item replaces it.
    own: BTreeMap<String, Item>,
}

impl Catalogue {
    /// The built-in items.
    ///
    /// # Panics
    /// If the built-in data are malformed, which a test excludes.
    pub fn generic() -> Self {
        let items: Vec<Item> =
            json::read(include_str!("catalogue.json")).expect("catalogue.json does not fit the item types");
        let generic = items.into_iter().map(|item| (item.code.clone(), item)).collect();
        Self { generic: Arc::new(generic), own: BTreeMap::new() }
    }

    /// These items and the scheme's own, which come first.
    pub fn with_items_of(mut self, scheme: &Scheme) -> Self {
        self.own.extend(scheme.items.iter().map(|item| (item.code.clone(), item.clone())));
        self
    }

    /// The item of this code.
    pub fn get(&self, code: &str) -> Option<&Item> {
        self.own.get(code).or_else(|| self.generic.get(code))
    }

    /// All items in the order of their codes.
    pub fn iter(&self) -> impl Iterator<Item = &Item> {
        let all: BTreeMap<&String, &Item> = self.generic.iter().chain(&self.own).collect();
        all.into_values()
    }

    /// The items that can take a role, in the order of their codes.
    pub fn choices(&self, role: Role) -> Vec<&Item> {
        self.iter().filter(|item| item.suits(role)).collect()
    }
}

impl Item {
    /// Whether it is of a kind that can take the role.
    pub fn suits(&self, role: Role) -> bool {
        match role {
            Role::Facing => self.board().is_some(),
            Role::Secondary | Role::Primary => self.beam().is_some(),
            Role::Transfer => self.steel().is_some(),
            Role::Tie => self.tie().is_some(),
            Role::Prop | Role::Leg | Role::Stub | Role::Trestle => self.leg().is_some(),
            Role::Brace | Role::Ledger => self.brace().is_some(),
            Role::Base => self.plate().is_some(),
        }
    }
}
