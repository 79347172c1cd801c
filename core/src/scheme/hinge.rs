use serde::{Deserialize, Serialize};

/// A line along the bay about which a shutter is swung off its concrete once its ties are out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hinge {
    /// How far it lies above the upper edge of the shutter; below it where negative.
    pub above_top_m: f64,
    /// How far it lies off the face of the concrete.
    pub off_m: f64,
    /// How far the shutter is swung: what is longer of it, below the hinge or above, goes off the concrete.
    pub angle_deg: f64,
    /// How far it is lowered after that.
    pub drop_m: f64,
    /// The least gap to all that stands still, once it has been moved so.
    pub gap_m: f64,
    /// Whether the falsework of its pour is out by then.
    pub falsework_out: bool,
}

impl Default for Hinge {
    /// A little above the shutter and behind its board; the gap is common practice.
    fn default() -> Self {
        Self { above_top_m: 0.15, off_m: 0.15, angle_deg: 10.0, drop_m: 0.0, gap_m: 0.02, falsework_out: false }
    }
}
