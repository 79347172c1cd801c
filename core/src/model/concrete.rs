use crate::geometry::Point;
use crate::scheme::{FaceRef, Id};

/// The concrete between two joints.
#[derive(Clone, Debug, PartialEq)]
pub struct Pour {
    /// The joint below, or [`FaceRef::LOWEST`].
    pub id: Id,
    /// Such as `P1`, from the lowest.
    pub mark: String,
    /// Lower joint or lowest point.
    pub bottom_m: f64,
    /// Upper joint or highest point.
    pub top_m: f64,
    /// Closed regions of its section, each an outer ring followed by its holes.
    pub regions: Vec<Vec<Vec<Point>>>,
    /// Area of its section.
    pub area_m2: f64,
    /// Centre of area.
    pub centroid: Point,
    /// Volume in one bay.
    pub volume_m3: f64,
    /// Weight in one bay.
    pub weight_kn: f64,
}

/// One straight part of a pour's boundary. The concrete lies to its left, going from `from` to `to`.
#[derive(Clone, Debug, PartialEq)]
pub struct Face {
    /// What it stems from.
    pub of: FaceRef,
    /// What has to form it.
    pub kind: FaceKind,
    /// Start, with the concrete on the left.
    pub from: Point,
    /// End.
    pub to: Point,
    /// Unit normal out of the concrete.
    pub normal: Point,
}

impl Face {
    /// How far a battered face goes in `x` for each metre up; nought for upright ones, which may be a hair out of plumb.
    pub fn lean(&self) -> f64 {
        match self.kind {
            FaceKind::SlopeOver => (self.to.x - self.from.x) / (self.to.z - self.from.z),
            _ => 0.0,
        }
    }

    /// Length along a wall face by its height.
    pub fn stretch(&self) -> f64 {
        let lean = self.lean();
        (1.0 + lean * lean).sqrt()
    }

    /// Place of a wall face, continued beyond its ends, at a level.
    pub fn x_at(&self, z_m: f64) -> f64 {
        self.from.x + self.lean() * (z_m - self.from.z)
    }
}

/// What has to form a face, told by its normal and place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FaceKind {
    /// Upright, on the outer ring.
    OuterWall,
    /// Upright, in a cell or under a portal.
    InnerWall,
    /// Level, facing down.
    Soffit,
    /// Neither level nor upright, facing down: haunches, battered soffits.
    SlopeUnder,
    /// Neither level nor upright, facing up: batters, haunches at a floor, crown falls steeper than they can stand.
    SlopeOver,
    /// Level, facing up.
    FreeTop,
    /// Against blinding, ground or earlier concrete.
    CastAgainst,
}
