//! The bill of quantities, counted from the placed parts.

use crate::scheme::Id;
use serde::Serialize;

/// One line of the bill.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Quantity {
    /// Mark on the drawing, such as `S1`; empty for totals.
    pub mark: String,
    /// The element counted; none for totals.
    #[serde(skip)]
    pub owner: Option<Id>,
    /// What it is, in words.
    pub item: String,
    /// Such as `4.250 m` or `2.44 × 1.22 m`.
    pub size: String,
    /// How many `unit`s.
    pub count: f64,
    /// `no.`, `m`, `m²`, `m³`.
    pub unit: &'static str,
    /// Mass of all of them.
    pub mass_kg: f64,
}
