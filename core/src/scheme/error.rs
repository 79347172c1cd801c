use super::{Id, SCHEMA};
use crate::geometry::Point;
use std::fmt;

/// What an error is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// The scheme as a whole.
    Scheme,
    /// The settings of the scheme.
    Settings,
    /// An element of the scheme, such as a corner.
    Element(&'static str, Id),
}

impl fmt::Display for Subject {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Scheme => f.write_str("Scheme"),
            Self::Settings => f.write_str("Settings"),
            Self::Element(kind, id) => write!(f, "{kind} {id}"),
        }
    }
}

/// An element of the section and where it lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// The element.
    pub id: Id,
    /// Where it lies or what it lies next to.
    pub at: Point,
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} at x {:.3} m, z {:.3} m", self.id, self.at.x, self.at.z)
    }
}

/// Why a scheme cannot be worked with: what is wrong, where, and what to do.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[allow(missing_docs)]
pub enum SchemeError {
    #[error("The scheme has schema {found}; this version knows {SCHEMA}. Open it with the version that made it.")]
    Schema { found: u32 },

    #[error(
        "{subject}: {quantity} of {} is outside {} to {}. Enter a value in this range.",
        with_unit(value, unit),
        with_unit(low, ""),
        with_unit(high, unit)
    )]
    OutOfRange { subject: Subject, quantity: &'static str, value: f64, low: f64, high: f64, unit: &'static str },

    #[error("{subject}: {count} {what} are more than {limit}. Take some away, space them wider, or split the scheme.")]
    TooMany { subject: Subject, what: &'static str, count: usize, limit: usize },

    #[error("{subject}: its {what} of {count} characters is longer than {limit}. Shorten it.")]
    TextTooLong { subject: Subject, what: &'static str, count: usize, limit: usize },

    #[error("{ring} has {count} corners. A ring needs at least three; add corners or remove the ring.")]
    TooFewCorners { ring: Ring, count: usize },

    #[error("Two elements are named {id}. Give every element an id of its own.")]
    RepeatedId { id: Id },

    #[error("An element is named #0, which stands for the lowest pour. Give it an id from 1 up.")]
    ReservedId,

    #[error(
        "The section measures {width_m:.3} m by {height_m:.3} m; more than {limit_m} m is not a culvert. \
             Check the units of its corners."
    )]
    TooLarge { width_m: f64, height_m: f64, limit_m: f64 },

    #[error("The edge from corner {from} is only {length_m:.4} m long. Move the corner, or remove it.")]
    ShortEdge { from: Place, length_m: f64 },

    #[error(
        "The edge from corner {from} is {length_m:.3} m long, but the cuts at its ends take {needed_m:.3} m of it. \
             Shorten the haunch or chamfer."
    )]
    CutTooLong { from: Place, length_m: f64, needed_m: f64 },

    #[error("The ring folds back on itself at corner {at}. Move the corner so that its edges open by more than 5°.")]
    SharpCorner { at: Place },

    #[error(
        "The ring crosses or touches itself: the edge from corner {first} meets the edge from corner {second}. \
             Move one of the corners."
    )]
    SelfCrossing { first: Place, second: Id },

    #[error(
        "{ring} and {other} cross or touch: the edge from corner {first} meets the edge from corner {second}. \
             Move them apart."
    )]
    RingsMeet { ring: Ring, other: Ring, first: Place, second: Id },

    #[error("Cell {cell} lies outside the outline. Move it into the concrete, or remove it.")]
    CellOutside { cell: Place },

    #[error("Cell {cell} lies inside cell {around}. Keep one of the two.")]
    CellInCell { cell: Place, around: Id },

    #[error(
        "The concrete between the edge from corner {first} and the edge from corner {second} is only \
             {thickness_m:.4} m thick. Make it at least 0.020 m."
    )]
    Sliver { first: Place, second: Id, thickness_m: f64 },

    #[error(
        "Joint {joint} at z {z_m:.3} m is not inside the section, which reaches from {low_m:.3} m to {high_m:.3} m. \
             Move it at least 0.020 m into the concrete, or remove it: the pour beyond it would have none."
    )]
    JointOutside { joint: Id, z_m: f64, low_m: f64, high_m: f64 },

    #[error("Joints {first} and {second} at z {z_m:.3} m are less than 0.020 m apart. Move one, or remove it.")]
    JointsTooClose { first: Id, second: Id, z_m: f64 },

    #[error(
        "Joint {joint} leaves a layer of {thickness_m:.4} m at the level edge from corner {edge}. \
             Move the joint to the edge, or at least 0.020 m away."
    )]
    ThinLayer { joint: Id, edge: Place, thickness_m: f64 },

    #[error("{subject}: {what} refers to {missing}, which is not there. Choose another, or remove it.")]
    Dangling { subject: Subject, what: &'static str, missing: Id },

    #[error("Tie row {row} starts and ends at shutter {shutter}. Choose another shutter for its far end.")]
    TieToItself { row: Id, shutter: Id },

    #[error("{kind} {first} and {second} are on the same face. Remove one of them.")]
    SameFace { kind: &'static str, first: Id, second: Id },

    #[error("Openings {first} and {second} both pass through falsework {falsework}. Remove one of them.")]
    SecondOpening { falsework: Id, first: Id, second: Id },

    #[error("Item \"{code}\": {property} is {value}, which is not a usable value. Enter what the data sheet says.")]
    ItemProperty { code: String, property: String, value: String },

    #[error("Item \"{code}\": {reason}. Correct its dimensions.")]
    ItemShape { code: String, reason: &'static str },

    #[error("Two items have the code \"{code}\". Give each a code of its own.")]
    RepeatedCode { code: String },

    #[error("An item called \"{name}\" has no code, so nothing can refer to it. Give it one.")]
    NoCode { name: String },
}

/// A number with its unit, short even where it is absurd.
fn with_unit(number: &f64, unit: &str) -> String {
    let plain = *number == 0.0 || (1e-4..1e7).contains(&number.abs());
    let number = if plain { number.to_string() } else { format!("{number:e}") };
    if unit.is_empty() { number } else { format!("{number} {unit}") }
}

/// A ring of the section.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ring {
    /// The outer ring.
    Outline,
    /// A cell.
    Cell(Id),
}

impl From<Option<Id>> for Ring {
    fn from(cell: Option<Id>) -> Self {
        cell.map_or(Self::Outline, Self::Cell)
    }
}

impl fmt::Display for Ring {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Outline => f.write_str("The outline"),
            Self::Cell(id) => write!(f, "Cell {id}"),
        }
    }
}

impl SchemeError {
    /// Where on the section the error lies, if it lies there.
    pub fn place(&self) -> Option<Place> {
        match self {
            Self::ShortEdge { from: place, .. }
            | Self::CutTooLong { from: place, .. }
            | Self::SharpCorner { at: place }
            | Self::SelfCrossing { first: place, .. }
            | Self::RingsMeet { first: place, .. }
            | Self::CellOutside { cell: place }
            | Self::CellInCell { cell: place, .. }
            | Self::Sliver { first: place, .. }
            | Self::ThinLayer { edge: place, .. } => Some(*place),
            _ => None,
        }
    }
}
