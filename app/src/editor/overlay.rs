//! What is drawn over the section while editing.

use super::{Snap, Target};
use falsewright_core::geometry::Point;

/// Marks over the drawing. All points are in the world.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Overlay {
    /// What a press here would mean.
    pub hover: Option<Target>,
    /// Points that can be dragged, of the selection.
    pub handles: Vec<Handle>,
    /// Where the pointer is drawn to.
    pub snap: Option<Snap>,
    /// Outline or opening being drawn.
    pub preview: Vec<Point>,
    /// Length and angle of what is being drawn or dragged.
    pub readout: Option<Readout>,
    /// A length being typed.
    pub entry: Option<LengthEntry>,
    /// Why the last change was refused, until the next one.
    pub refusal: Option<String>,
}

/// A point that can be dragged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Handle {
    /// Where it is.
    pub at: Point,
    /// What is dragged by it.
    pub target: Target,
}

/// A live value beside the pointer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Readout {
    /// What it is written beside.
    pub at: Point,
    /// Length.
    pub length_m: f64,
    /// Direction from the horizontal, counter-clockwise; none where it goes without saying.
    pub angle_deg: Option<f64>,
}

/// A length being typed on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct LengthEntry {
    /// What it is written beside.
    pub at: Point,
    /// As typed so far.
    pub text: String,
    /// What it means, if it is understood.
    pub length_m: Option<f64>,
}
