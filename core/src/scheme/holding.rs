use crate::json::tagged;
use serde::{Deserialize, Serialize};

/// What holds the fixed end of a tie or prop.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FixedEnd {
    /// How far it lies below the row, for raking props; nought for level ones and for ties.
    #[serde(default, skip_serializing_if = "is_nought")]
    pub below_m: f64,
    /// What holds it there.
    pub by: HeldBy,
}

/// Ways to hold the fixed end of a tie or prop.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "held_by", rename_all = "snake_case")]
pub enum HeldBy {
    /// Something strong that can only be pushed against, for which the user answers.
    Thrust,
    /// A block that stands loose on the ground or a slab, one for each prop.
    Kentledge {
        /// Its weight.
        weight_kn: f64,
        /// Least coefficient of friction under it.
        friction: f64,
    },
    /// A headed anchor in concrete cast earlier.
    Anchor(CastAnchor),
}

tagged! { HeldBy, "held_by", |fields| {
    "thrust" => HeldBy::Thrust,
    "kentledge" => HeldBy::Kentledge { weight_kn: fields.take("weight_kn")?, friction: fields.take("friction")? },
    "anchor" => HeldBy::Anchor(fields.rest()?),
} }

/// A headed anchor in concrete cast earlier.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CastAnchor {
    /// Depth of its head.
    pub depth_m: f64,
    /// Diameter of its head.
    pub head_m: f64,
    /// Diameter of its rod.
    pub rod_m: f64,
    /// To the nearest edge of the concrete.
    pub edge_m: f64,
    /// Cylinder strength of the concrete on the day that it is pulled.
    pub strength_mpa: f64,
}

fn is_nought(value: &f64) -> bool {
    *value == 0.0
}
