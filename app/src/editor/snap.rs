//! Where a pointer is drawn to.

use falsewright_core::geometry::Point;
use falsewright_core::scheme::Id;

/// A world point with what drew it there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Snap {
    /// Where it is.
    pub point: Point,
    /// Why there.
    pub reason: SnapReason,
}

/// Why a point is where it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SnapReason {
    /// Nothing near, or snapping suspended.
    Free,
    /// On the grid of this step, m.
    Grid(f64),
    /// On a corner.
    Corner(Id),
    /// On the edge that starts at this corner.
    Edge(Id),
    /// Above or below a point, drawn at it.
    AlignedX(Point),
    /// Level with a point, drawn at it.
    AlignedZ(Point),
    /// Above one point and level with another.
    Aligned(Point, Point),
    /// On the first point of the outline being drawn: closes it.
    Close,
    /// In a direction of whole 15°, degrees.
    Direction(f64),
}

impl SnapReason {
    /// In words, for the mark beside the pointer; nothing for [`SnapReason::Free`].
    pub fn words(&self) -> &'static str {
        match self {
            Self::Free => "",
            Self::Grid(_) => "grid",
            Self::Corner(_) => "corner",
            Self::Edge(_) => "on edge",
            Self::AlignedX(_) => "plumb with corner",
            Self::AlignedZ(_) => "level with corner",
            Self::Aligned(..) => "plumb and level",
            Self::Close => "closes the outline",
            Self::Direction(_) => "direction",
        }
    }
}
