//! Why a point is where it is.

use crate::language::t;
use crate::units;
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
    /// Where an edge crosses a joint.
    EdgeAndJoint,
    /// On an edge, plumb or level with a point, drawn at it.
    EdgeAligned(Point),
    /// On the middle of the edge that starts at this corner.
    Middle(Id),
    /// On the edge that starts at this corner.
    Edge(Id),
    /// Above or below a point, drawn at it.
    AlignedX(Point),
    /// Level with a point, drawn at it.
    AlignedZ(Point),
    /// Above one point and level with another.
    Aligned(Point, Point),
    /// As far from its neighbour as that from the next, or as on the other side.
    EqualSpacing,
    /// Halfway between its neighbours.
    Halfway,
    /// As large as another haunch.
    SameHaunch,
    /// On the first point of the outline being drawn: closes it.
    Close,
    /// In a direction of whole 15°, degrees.
    Direction(f64),
}

impl SnapReason {
    /// In words, for the mark beside the pointer; nothing for [`SnapReason::Free`].
    pub fn words(&self) -> String {
        match self {
            Self::Free => "",
            Self::Grid(step_m) => return say!("grid {}", units::size(*step_m)),
            Self::Corner(_) => t("corner"),
            Self::EdgeAndJoint => t("edge at joint"),
            Self::EdgeAligned(_) => t("edge, in line with corner"),
            Self::Middle(_) => t("middle of edge"),
            Self::Edge(_) => t("on edge"),
            Self::AlignedX(_) => t("plumb with corner"),
            Self::AlignedZ(_) => t("level with corner"),
            Self::Aligned(..) => t("plumb and level with corners"),
            Self::EqualSpacing => t("equal spacing"),
            Self::Halfway => t("halfway"),
            Self::SameHaunch => t("as the other haunch"),
            Self::Close => t("closes the outline"),
            Self::Direction(_) => t("direction"),
        }
        .to_owned()
    }

    /// How much it binds: corner, then crossing, middle, edge, alignment, spacing, grid.
    pub fn rank(&self) -> u8 {
        match self {
            Self::Close | Self::Corner(_) => 0,
            Self::EdgeAndJoint | Self::EdgeAligned(_) => 1,
            Self::Middle(_) => 2,
            Self::Edge(_) => 3,
            Self::AlignedX(_) | Self::AlignedZ(_) | Self::Aligned(..) | Self::Direction(_) => 4,
            Self::EqualSpacing | Self::Halfway | Self::SameHaunch => 5,
            Self::Grid(_) => 6,
            Self::Free => 7,
        }
    }
}
