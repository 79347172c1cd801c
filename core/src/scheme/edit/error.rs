use crate::catalogue::ItemFault;
use crate::model::Role;
use crate::scheme::{Id, SchemeError};
use crate::sentence::{Sentence, length, number, word};
use std::fmt;

/// Why an edit is refused. The scheme stays as it was.
#[derive(Clone, Debug, PartialEq)]
pub enum EditError {
    /// The element is not in the scheme.
    Missing {
        /// Kind of element.
        what: &'static str,
        /// Its id.
        id: Id,
    },
    /// No item of the user's own has this code.
    MissingItem(String),
    /// An item that cannot be computed with.
    Item(ItemFault),
    /// An element without such a part.
    NoSuchPart {
        /// The element.
        element: Id,
        /// The part.
        role: Role,
    },
    /// A value that cannot be used.
    Value {
        /// What it was to be.
        what: &'static str,
        /// The value.
        value: f64,
        /// What would do.
        range: &'static str,
    },
    /// The distance between edges that cross is no one length.
    NotParallel {
        /// Start of the one edge.
        edge: Id,
        /// Start of the other.
        from: Id,
    },
    /// A ring of two corners encloses nothing.
    LastCorners(Id),
    /// A level with no concrete, or with a joint already.
    JointLevel {
        /// The level.
        z_m: f64,
    },
    /// A face that a wall shutter cannot form.
    NotAWall,
    /// No wall face without a shutter.
    NoneBare {
        /// Faces of cells were meant.
        inner: bool,
    },
    /// No shutter without ties or props.
    AllHeld,
    /// A face that falsework cannot carry.
    NotASoffit,
    /// Something is there already.
    Occupied {
        /// Kind of element.
        what: &'static str,
        /// Its id.
        id: Id,
    },
    /// A row of ties above or below its shutter.
    OffShutter {
        /// The level.
        z_m: f64,
        /// Foot of the board.
        bottom_m: f64,
        /// Head of the board.
        top_m: f64,
    },
    /// Something outside the soffit that carries it.
    OffSoffit {
        /// What it is.
        what: &'static str,
        /// Where it would be.
        x_m: f64,
        /// Left end of the soffit.
        left_m: f64,
        /// Right end of the soffit.
        right_m: f64,
    },
    /// Too little height for a way and its transfer beams.
    TooLow {
        /// From floor to soffit.
        height_m: f64,
    },
    /// None of the chosen elements can be treated so.
    NothingTo {
        /// What was to be done.
        what: &'static str,
    },
    /// A text that holds no elements.
    NotElements {
        /// What it is.
        why: String,
    },
    /// No face for a copy.
    NoFace {
        /// Kind of element.
        what: &'static str,
        /// Where the face would be.
        place: &'static str,
    },
    /// What an element stands on or joins is not there.
    NothingThere {
        /// Kind of element.
        what: &'static str,
        /// What it needs.
        needs: &'static str,
    },
    /// No room for another one.
    NoneFree {
        /// Kind of element.
        what: &'static str,
        /// The element.
        id: Id,
    },
    /// Elements that cannot be made alike.
    Unlike,
    /// The scheme would not be valid.
    Invalid(Box<SchemeError>),
}

impl EditError {
    /// Why, and what to do.
    pub fn sentence(&self) -> Sentence {
        let metres = |value: &f64| number(*value, "m", 3);
        match self {
            Self::Missing { what, id } => {
                sentence!("There is no {} {} in the scheme; choose one that is on the drawing.", word(what), *id)
            }
            Self::MissingItem(code) => sentence!("There is no item of your own with the code {}.", code),
            Self::Item(fault) => sentence!("{}.", fault.sentence()),
            Self::NoSuchPart { element, role } => {
                sentence!("Element {} has no {}; choose one that it has.", *element, word(role.name()))
            }
            Self::Value { what, value, range } => {
                sentence!(
                    "{} cannot be the {}; it must be {}.",
                    ((value * 1e6).round() / 1e6).to_string(),
                    word(what),
                    word(range)
                )
            }
            Self::NotParallel { edge, from } => sentence!(
                "The edges from corners {} and {} are not parallel, so their distance has no one value.",
                *edge,
                *from
            ),
            Self::LastCorners(id) => {
                sentence!("Corner {} cannot go: a ring needs three corners. Remove the cell instead.", *id)
            }
            Self::JointLevel { z_m } => sentence!(
                "A joint at {} makes no pour; put it inside the concrete, away from other joints.",
                metres(z_m)
            ),
            Self::NotAWall => {
                sentence!("A shutter stands on a face that is upright or battered by 1 in 3 at most; this one is not.")
            }
            Self::NoneBare { inner: true } => sentence!("Every upright face of the cells has a shutter already."),
            Self::NoneBare { inner: false } => sentence!("Every upright face of the outside has a shutter already."),
            Self::AllHeld => {
                sentence!("There is no shutter without ties or props; put shutters on the walls first.")
            }
            Self::NotASoffit => sentence!("Falsework stands under a level soffit; this face is not one."),
            Self::Occupied { what, id } => {
                sentence!("{} {} is there already; change it, or remove it first.", word(what), *id)
            }
            Self::OffShutter { z_m, bottom_m, top_m } => sentence!(
                "Level {} is off the shutter, which reaches from {} to {}.",
                metres(z_m),
                metres(bottom_m),
                metres(top_m)
            ),
            Self::OffSoffit { what, x_m, left_m, right_m } => sentence!(
                "{} at {} is not under the soffit, which reaches from {} to {}.",
                word(what),
                metres(x_m),
                metres(left_m),
                metres(right_m)
            ),
            Self::TooLow { height_m } => sentence!(
                "Under a soffit {} above the floor there is no room for a way and transfer beams over it.",
                length(*height_m, 2)
            ),
            Self::NothingTo { what } => sentence!(
                "Nothing chosen can be {}. Choose shutters, rows of ties, falsework, leg lines or openings.",
                word(what)
            ),
            Self::NotElements { why } => {
                sentence!("What is on the clipboard cannot be pasted here: {}. Copy elements of a drawing first.", why)
            }
            Self::NoFace { what, place } => {
                sentence!("There is no face {} for a copied {}. Nothing was placed.", word(place), word(what))
            }
            Self::NothingThere { what, needs } => sentence!(
                "A copied {0} needs a {1} there. Copy the {1} with it, or put one there first.",
                word(what),
                word(needs)
            ),
            Self::NoneFree { what, id } => sentence!(
                "There is no free place for another {} like {}. Remove one, or paste onto a face that you choose.",
                word(what),
                *id
            ),
            Self::Unlike => sentence!(
                "These cannot be aligned so. Choose elements of one kind that are built up alike: shutters, rows of \
                 ties, leg lines of one falsework, or openings."
            ),
            Self::Invalid(error) => error.sentence(),
        }
    }
}

impl fmt::Display for EditError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.sentence().fmt(f)
    }
}

impl std::error::Error for EditError {}

impl From<ItemFault> for EditError {
    fn from(fault: ItemFault) -> Self {
        Self::Item(fault)
    }
}
