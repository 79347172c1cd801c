use super::{Id, SCHEMA};
use crate::geometry::Point;
use crate::sentence::{Sentence, Value, length, number, word};
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

impl Subject {
    fn told(self) -> Value {
        match self {
            Self::Scheme => word("Scheme"),
            Self::Settings => word("Settings"),
            Self::Element(kind, id) => sentence!("{} {}", word(kind), id).into(),
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

impl Place {
    fn told(self) -> Value {
        sentence!("{} at x {}, z {}", self.id, metres(self.at.x), metres(self.at.z)).into()
    }
}

/// Why a scheme cannot be worked with: what is wrong, where, and what to do.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)]
pub enum SchemeError {
    Schema { found: u32 },

    OutOfRange { subject: Subject, quantity: &'static str, value: f64, low: f64, high: f64, unit: &'static str },

    TooMany { subject: Subject, what: &'static str, count: usize, limit: usize },

    TextTooLong { subject: Subject, what: &'static str, count: usize, limit: usize },

    TooFewCorners { ring: Ring, count: usize },

    RepeatedId { id: Id },

    ReservedId,

    TooLarge { width_m: f64, height_m: f64, limit_m: f64 },

    ShortEdge { from: Place, length_m: f64 },

    CutTooLong { from: Place, length_m: f64, needed_m: f64 },

    SharpCorner { at: Place },

    SelfCrossing { first: Place, second: Id },

    RingsMeet { ring: Ring, other: Ring, first: Place, second: Id },

    CellOutside { cell: Place },

    CellInCell { cell: Place, around: Id },

    Sliver { first: Place, second: Id, thickness_m: f64 },

    JointOutside { joint: Id, z_m: f64, low_m: f64, high_m: f64 },

    JointsTooClose { first: Id, second: Id, z_m: f64 },

    ThinLayer { joint: Id, edge: Place, thickness_m: f64 },

    Dangling { subject: Subject, what: &'static str, missing: Id },

    TieToItself { row: Id, shutter: Id },

    SameFace { kind: &'static str, first: Id, second: Id },

    SecondOpening { falsework: Id, first: Id, second: Id },

    ItemProperty { code: String, property: String, value: String },

    ItemShape { code: String, reason: &'static str },

    RepeatedCode { code: String },

    NoCode { name: String },
}

/// A number with its unit, short even where it is absurd.
fn with_unit(number: f64, unit: &str) -> String {
    let plain = number == 0.0 || (1e-4..1e7).contains(&number.abs());
    let number = if plain { number.to_string() } else { format!("{number:e}") };
    if unit.is_empty() { number } else { format!("{number} {unit}") }
}

fn metres(value: f64) -> Value {
    number(value, "m", 3)
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

impl Ring {
    fn told(self) -> Value {
        match self {
            Self::Outline => word("The outline"),
            Self::Cell(id) => sentence!("Cell {}", id).into(),
        }
    }
}

impl fmt::Display for SchemeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.sentence().fmt(f)
    }
}

impl std::error::Error for SchemeError {}

impl SchemeError {
    /// What is wrong, where, and what to do.
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Schema { found } => sentence!(
                "The scheme has schema {}; this version knows {}. Open it with the version that made it.",
                found.to_string(),
                SCHEMA.to_string()
            ),
            Self::OutOfRange { subject, quantity, value, low, high, unit } => sentence!(
                "{}: {} of {} is outside {} to {}. Enter a value in this range.",
                subject.told(),
                word(quantity),
                with_unit(*value, unit),
                with_unit(*low, ""),
                with_unit(*high, unit)
            ),
            Self::TooMany { subject, what, count, limit } => sentence!(
                "{}: {} {} are more than {}. Take some away, space them wider, or split the scheme.",
                subject.told(),
                *count,
                word(what),
                *limit
            ),
            Self::TextTooLong { subject, what, count, limit } => sentence!(
                "{}: its {} of {} characters is longer than {}. Shorten it.",
                subject.told(),
                word(what),
                *count,
                *limit
            ),
            Self::TooFewCorners { ring, count } => sentence!(
                "{} has {} corners. A ring needs at least three; add corners or remove the ring.",
                ring.told(),
                *count
            ),
            Self::RepeatedId { id } => {
                sentence!("Two elements are named {}. Give every element an id of its own.", *id)
            }
            Self::ReservedId => {
                sentence!("An element is named #0, which stands for the lowest pour. Give it an id from 1 up.")
            }
            Self::TooLarge { width_m, height_m, limit_m } => sentence!(
                "The section measures {} by {}; more than {} m is not a culvert. Check the units of its corners.",
                metres(*width_m),
                metres(*height_m),
                limit_m.to_string()
            ),
            Self::ShortEdge { from, length_m } => sentence!(
                "The edge from corner {} is only {} long. Move the corner, or remove it.",
                from.told(),
                length(*length_m, 4)
            ),
            Self::CutTooLong { from, length_m, needed_m } => sentence!(
                "The edge from corner {} is {} long, but the cuts at its ends take {} of it. Shorten the haunch or \
                 chamfer.",
                from.told(),
                length(*length_m, 3),
                length(*needed_m, 3)
            ),
            Self::SharpCorner { at } => sentence!(
                "The ring folds back on itself at corner {}. Move the corner so that its edges open by more than 5°.",
                at.told()
            ),
            Self::SelfCrossing { first, second } => sentence!(
                "The ring crosses or touches itself: the edge from corner {} meets the edge from corner {}. Move one of \
                 the corners.",
                first.told(),
                *second
            ),
            Self::RingsMeet { ring, other, first, second } => sentence!(
                "{} and {} cross or touch: the edge from corner {} meets the edge from corner {}. Move them apart.",
                ring.told(),
                other.told(),
                first.told(),
                *second
            ),
            Self::CellOutside { cell } => {
                sentence!("Cell {} lies outside the outline. Move it into the concrete, or remove it.", cell.told())
            }
            Self::CellInCell { cell, around } => {
                sentence!("Cell {} lies inside cell {}. Keep one of the two.", cell.told(), *around)
            }
            Self::Sliver { first, second, thickness_m } => sentence!(
                "The concrete between the edge from corner {} and the edge from corner {} is only {} thick. Make it at \
                 least {}.",
                first.told(),
                *second,
                length(*thickness_m, 4),
                length(0.02, 3)
            ),
            Self::JointOutside { joint, z_m, low_m, high_m } => sentence!(
                "Joint {} at z {} is not inside the section, which reaches from {} to {}. Move it at least {} into the \
                 concrete, or remove it: the pour beyond it would have none.",
                *joint,
                metres(*z_m),
                metres(*low_m),
                metres(*high_m),
                length(0.02, 3)
            ),
            Self::JointsTooClose { first, second, z_m } => sentence!(
                "Joints {} and {} at z {} are less than {} apart. Move one, or remove it.",
                *first,
                *second,
                metres(*z_m),
                length(0.02, 3)
            ),
            Self::ThinLayer { joint, edge, thickness_m } => sentence!(
                "Joint {} leaves a layer of {} at the level edge from corner {}. Move the joint to the edge, or at least \
                 {} away.",
                *joint,
                length(*thickness_m, 4),
                edge.told(),
                length(0.02, 3)
            ),
            Self::Dangling { subject, what, missing } => sentence!(
                "{}: {} refers to {}, which is not there. Choose another, or remove it.",
                subject.told(),
                word(what),
                *missing
            ),
            Self::TieToItself { row, shutter } => sentence!(
                "Tie row {} starts and ends at shutter {}. Choose another shutter for its far end.",
                *row,
                *shutter
            ),
            Self::SameFace { kind, first, second } => {
                sentence!("{} {} and {} are on the same face. Remove one of them.", word(kind), *first, *second)
            }
            Self::SecondOpening { falsework, first, second } => sentence!(
                "Openings {} and {} both pass through falsework {}. Remove one of them.",
                *first,
                *second,
                *falsework
            ),
            Self::ItemProperty { code, property, value } => sentence!(
                "Item \"{}\": {} is {}, which is not a usable value. Enter what the data sheet says.",
                code,
                property,
                value
            ),
            Self::ItemShape { code, reason } => {
                sentence!("Item \"{}\": {}. Correct its dimensions.", code, word(reason))
            }
            Self::RepeatedCode { code } => {
                sentence!("Two items have the code \"{}\". Give each a code of its own.", code)
            }
            Self::NoCode { name } => {
                sentence!("An item called \"{}\" has no code, so nothing can refer to it. Give it one.", name)
            }
        }
    }

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
