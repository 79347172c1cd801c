use serde::{Deserialize, Serialize};

/// How a bay is taken from where it was cast once its concrete has hardened: jacks lift it, rams may slide it along.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Moving {
    /// What stays on the concrete and moves with it, such as shutters and falsework; its weight is taken to lie over the
    /// concrete's centre of gravity.
    pub carried_kn: f64,
    /// How it is lifted.
    pub lift: Lift,
    /// How it is slid after that, if it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slide: Option<Slide>,
}

/// Lines of jacks along the bay, evenly spaced across its underside.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lift {
    /// How many lines, 2 or more.
    pub lines: u32,
    /// From the edges of the underside to the outer lines.
    pub edge_m: f64,
    /// How many jacks in each line.
    pub jacks: u32,
    /// Working load stated for a jack.
    pub jack_kn: f64,
    /// Greatest force of a jack by its even share.
    pub unevenness: f64,
    /// How far a jack goes out before it is packed and set anew.
    pub travel_m: f64,
    /// How high the bay is lifted.
    pub height_m: f64,
    /// Side of the square plate under a jack.
    pub plate_m: f64,
    /// Allowable pressure of what the plate lies on.
    pub allowable_kpa: f64,
}

/// A path along the culvert on which the bay is pushed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Slide {
    /// How far.
    pub distance_m: f64,
    /// Rise of the path in metres per metre; it falls where negative.
    pub rise: f64,
    /// Friction at the start.
    pub start_friction: f64,
    /// Friction while it moves.
    pub running_friction: f64,
    /// How many rams push.
    pub rams: u32,
    /// Working load stated for a ram.
    pub ram_kn: f64,
    /// How far a ram goes in one stroke.
    pub stroke_m: f64,
    /// How fast the bay gets on, setting anew included.
    pub rate_m_h: f64,
}

impl Default for Moving {
    fn default() -> Self {
        Self { carried_kn: 0.0, lift: Lift::default(), slide: None }
    }
}

impl Default for Lift {
    /// Common practice throughout.
    fn default() -> Self {
        Self {
            lines: 2,
            edge_m: 0.6,
            jacks: 3,
            jack_kn: 1000.0,
            unevenness: 1.25,
            travel_m: 0.15,
            height_m: 0.1,
            plate_m: 0.6,
            allowable_kpa: 3000.0,
        }
    }
}

impl Default for Slide {
    /// PTFE on steel; common practice throughout.
    fn default() -> Self {
        Self {
            distance_m: 12.0,
            rise: 0.0,
            start_friction: 0.10,
            running_friction: 0.05,
            rams: 2,
            ram_kn: 500.0,
            stroke_m: 0.9,
            rate_m_h: 2.0,
        }
    }
}
