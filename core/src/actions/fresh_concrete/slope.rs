//! Pressure on sloping forms, with its uplift.

use crate::geometry::Point;

/// Fresh concrete on a plane form, for a metre along it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlopeForce {
    /// Along `x`, positive to the right, kN/m.
    pub horizontal_kn_m: f64,
    /// Upward, kN/m: uplift of a form above the concrete, load on one below.
    pub upward_kn_m: f64,
}

/// Force of the concrete on a form from one point to another, with the concrete on the left and pressures at its ends
/// in kPa. Pressure acts square to the form.
pub fn force_on_slope(from: Point, to: Point, pressure_kpa: [f64; 2]) -> SlopeForce {
    let mean = (pressure_kpa[0] + pressure_kpa[1]) / 2.0;
    SlopeForce { horizontal_kn_m: mean * (to.z - from.z), upward_kn_m: -mean * (to.x - from.x) }
}
