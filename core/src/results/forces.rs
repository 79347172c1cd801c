use crate::geometry::Point;
use crate::scheme::Id;
use serde::Serialize;

/// Force of one tie or prop.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TieForce {
    /// Mark of the row and place along the bay.
    pub id: String,
    /// The row.
    #[serde(skip)]
    pub row: Id,
    /// Force as first calculated, unfactored: tension of a tie, compression of a prop.
    pub force_kn: f64,
}

/// Axial force of one leg, stub or trestle.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LegForce {
    /// Mark and bent.
    pub id: String,
    /// Leg line or opening.
    #[serde(skip)]
    pub owner: Id,
    /// Greatest unfactored compression over all states of the pour.
    pub axial_kn: f64,
}

/// Moment, shear and deflection along a member in the section plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Diagram {
    /// The element that it belongs to.
    pub owner: Id,
    /// Such as `S1 primary`.
    pub member: String,
    /// Axis of the member.
    pub from: Point,
    /// End of its axis.
    pub to: Point,
    /// Evenly or unevenly spaced along the axis.
    pub stations: Vec<Station>,
}

/// One place on a member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// Distance from the start of the axis.
    pub s_m: f64,
    /// Bending moment, positive where it stretches the side to the right of the axis.
    pub moment_knm: f64,
    /// Shear.
    pub shear_kn: f64,
    /// Deflection to the left of the axis.
    pub deflection_m: f64,
}

impl Station {
    /// The same place under `factor` times the load.
    pub fn times(self, factor: f64) -> Self {
        Self {
            moment_knm: self.moment_knm * factor,
            shear_kn: self.shear_kn * factor,
            deflection_m: self.deflection_m * factor,
            ..self
        }
    }
}
