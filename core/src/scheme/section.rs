use super::Id;
use serde::{Deserialize, Serialize};

/// The concrete section: an outer ring, cells in it, and the levels at which pours end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Section {
    /// The outer ring, in either direction, not repeated at its end.
    pub outline: Vec<Corner>,
    /// Voids inside the outline.
    #[serde(default)]
    pub cells: Vec<Cell>,
    /// Horizontal construction joints.
    #[serde(default)]
    pub joints: Vec<Joint>,
}

/// A corner of a ring.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Corner {
    /// Keeps its identity when moved.
    pub id: Id,
    /// To the right.
    pub x_m: f64,
    /// Up.
    pub z_m: f64,
    /// The corner cut off by a haunch or chamfer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cut: Option<Cut>,
}

/// A haunch (in a cell) or chamfer (of the outline): a straight line across the corner.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cut {
    /// Its leg along the edge that arrives at the corner.
    pub before_m: f64,
    /// Its leg along the edge that leaves the corner.
    pub after_m: f64,
}

/// A void.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cell {
    /// Names the cell.
    pub id: Id,
    /// Its ring, in either direction.
    pub corners: Vec<Corner>,
}

/// A horizontal construction joint. The pour above it is named after it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Joint {
    /// Names the joint and the pour above it.
    pub id: Id,
    /// Its level.
    pub z_m: f64,
}
