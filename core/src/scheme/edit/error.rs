use crate::catalogue::ItemFault;
use crate::model::Role;
use crate::scheme::{Id, SchemeError};

/// Why an edit is refused. The scheme stays as it was.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum EditError {
    /// The element is not in the scheme.
    #[error("There is no {what} {id} in the scheme; choose one that is on the drawing.")]
    Missing {
        /// Kind of element.
        what: &'static str,
        /// Its id.
        id: Id,
    },
    /// No item of the user's own has this code.
    #[error("There is no item of your own with the code {0}.")]
    MissingItem(String),
    /// An item that cannot be computed with.
    #[error("{0}.")]
    Item(#[from] ItemFault),
    /// An element without such a part.
    #[error("Element {element} has no {}; choose one that it has.", .role.name())]
    NoSuchPart {
        /// The element.
        element: Id,
        /// The part.
        role: Role,
    },
    /// A value that cannot be used.
    #[error("{value} cannot be the {what}; it must be {range}.")]
    Value {
        /// What it was to be.
        what: &'static str,
        /// The value.
        value: f64,
        /// What would do.
        range: &'static str,
    },
    /// The distance between edges that cross is no one length.
    #[error("The edges from corners {edge} and {from} are not parallel, so their distance has no one value.")]
    NotParallel {
        /// Start of the one edge.
        edge: Id,
        /// Start of the other.
        from: Id,
    },
    /// A ring of two corners encloses nothing.
    #[error("Corner {0} cannot go: a ring needs three corners. Remove the cell instead.")]
    LastCorners(Id),
    /// A level with no concrete, or with a joint already.
    #[error("A joint at {z_m:.3} m makes no pour; put it inside the concrete, away from other joints.")]
    JointLevel {
        /// The level.
        z_m: f64,
    },
    /// A face that a wall shutter cannot form.
    #[error("A shutter stands on a face that is upright or battered by 1 in 3 at most; this one is not.")]
    NotAWall,
    /// No wall face without a shutter.
    #[error("Every upright face {} has a shutter already.", if *inner { "of the cells" } else { "of the outside" })]
    NoneBare {
        /// Faces of cells were meant.
        inner: bool,
    },
    /// No shutter without ties or props.
    #[error("There is no shutter without ties or props; put shutters on the walls first.")]
    AllHeld,
    /// A face that falsework cannot carry.
    #[error("Falsework stands under a level soffit; this face is not one.")]
    NotASoffit,
    /// Something is there already.
    #[error("{what} {id} is there already; change it, or remove it first.")]
    Occupied {
        /// Kind of element.
        what: &'static str,
        /// Its id.
        id: Id,
    },
    /// A row of ties above or below its shutter.
    #[error("Level {z_m:.3} m is off the shutter, which reaches from {bottom_m:.3} m to {top_m:.3} m.")]
    OffShutter {
        /// The level.
        z_m: f64,
        /// Foot of the board.
        bottom_m: f64,
        /// Head of the board.
        top_m: f64,
    },
    /// Something outside the soffit that carries it.
    #[error("{what} at {x_m:.3} m is not under the soffit, which reaches from {left_m:.3} m to {right_m:.3} m.")]
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
    #[error("Under a soffit {height_m:.2} m above the floor there is no room for a way and transfer beams over it.")]
    TooLow {
        /// From floor to soffit.
        height_m: f64,
    },
    /// None of the chosen elements can be treated so.
    #[error("Nothing chosen can be {what}. Choose shutters, rows of ties, falsework, leg lines or openings.")]
    NothingTo {
        /// What was to be done.
        what: &'static str,
    },
    /// A text that holds no elements.
    #[error("What is on the clipboard cannot be pasted here: {why}. Copy elements of a drawing first.")]
    NotElements {
        /// What it is.
        why: String,
    },
    /// No face for a copy.
    #[error("There is no face {place} for a copied {what}. Nothing was placed.")]
    NoFace {
        /// Kind of element.
        what: &'static str,
        /// Where the face would be.
        place: &'static str,
    },
    /// What an element stands on or joins is not there.
    #[error("A copied {what} needs a {needs} there. Copy the {needs} with it, or put one there first.")]
    NothingThere {
        /// Kind of element.
        what: &'static str,
        /// What it needs.
        needs: &'static str,
    },
    /// No room for another one.
    #[error("There is no free place for another {what} like {id}. Remove one, or paste onto a face that you choose.")]
    NoneFree {
        /// Kind of element.
        what: &'static str,
        /// The element.
        id: Id,
    },
    /// Elements that cannot be made alike.
    #[error(
        "These cannot be aligned so. Choose elements of one kind that are built up alike: shutters, rows of ties, \
             leg lines of one falsework, or openings."
    )]
    Unlike,
    /// The scheme would not be valid.
    #[error(transparent)]
    Invalid(Box<SchemeError>),
}
