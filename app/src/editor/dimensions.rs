//! Dimension lines: measured on the scheme, typed back into it.

use falsewright_core::geometry::Point;
use falsewright_core::scheme::{Id, Scheme};

/// A dimension line on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// Names it from one change to the next.
    pub key: DimensionKey,
    /// The measured points.
    pub measured: [Point; 2],
    /// The ends of the dimension line; extension lines run to it from the measured points.
    pub line: [Point; 2],
    /// What it says.
    pub value_m: f64,
    /// Whether a value can be typed for it.
    pub typed: bool,
}

/// What a dimension measures.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub enum DimensionKey {
    /// Distance between two parallel edges; the first moves when a value is typed.
    Edges {
        /// Start of the edge that moves.
        edge: Id,
        /// Start of the edge that stays.
        from: Id,
    },
    /// Leg of a haunch or chamfer along the edge that arrives at its corner.
    CutBefore(Id),
    /// Leg of a haunch or chamfer along the edge that leaves its corner.
    CutAfter(Id),
    /// A joint above the lowest point of the section.
    Joint(Id),
    /// A row of ties above the one below it, or above the foot of its shutter.
    TieRow(Id),
    /// A leg line from the one to its left, or from the wall.
    LegLine(Id),
    /// Clear width of an opening.
    OpeningWidth(Id),
    /// Clear height of an opening.
    OpeningHeight(Id),
    /// An opening from the wall to its left.
    OpeningLeft(Id),
}

/// All dimension lines of a scheme. `line_m` is the distance between rows of dimension lines.
pub fn dimensions(scheme: &Scheme, line_m: f64) -> Vec<Dimension> {
    let _ = (scheme, line_m);
    Vec::new()
}
