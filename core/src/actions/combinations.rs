//! Which loads of falsework meet, on both bases; the load path follows what stands here.
//!
//! | Stage | weight | concrete | operations | heaped concrete | plant | wind | thermal |
//! |---|---|---|---|---|---|---|---|
//! | before concreting | yes | | | | | greatest | yes |
//! | during concreting | yes | at each place of the front | yes | limit state | yes | working | yes |
//! | after concreting | yes | all | | | | greatest | yes |
//!
//! Sideways act, to either side, whichever does more to a member:
//!
//! | Basis | alone | or beside the known horizontal loads (slopes, plant, wind) |
//! |---|---|---|
//! | working load, BS 5975 | 2.5 % of the vertical load | 1 % of it |
//! | limit state, EN 12812 | the same as on working loads | 1 % of it (`Q3`) and the sway imperfection |
//!
//! The stages of BS 5975 and EN 12812, `Q3` and heaping are from memory; 2.5 % and the form of the rule are confirmed in
//! print. BS 5975 takes the load from operations to cover heaping (from memory).

use super::factors::{Factors, combined};
use super::horizontal::{BESIDE_KNOWN, sway_en12812};
use super::imposed::heaping_en12812_kpa;
use crate::scheme::Basis;

/// Stages of falsework at which strength and balance are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Erected and unloaded.
    Erected,
    /// While concrete is placed.
    Concreting,
    /// Loaded, the concrete not yet bearing itself.
    Loaded,
}

impl Stage {
    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Self::Erected => "before concreting",
            Self::Concreting => "during concreting",
            Self::Loaded => "after concreting",
        }
    }

    /// What acts at the stage.
    pub fn combination(self) -> &'static Combination {
        match self {
            Self::Erected => &COMBINATIONS[0],
            Self::Concreting => &COMBINATIONS[1],
            Self::Loaded => &COMBINATIONS[2],
        }
    }
}

/// Wind of a stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wind {
    /// In which work goes on.
    Working,
    /// Greatest of the site for the time that the works stand.
    Greatest,
}

/// What acts together at a stage. Self weight and what leans always do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Combination {
    /// The stage.
    pub stage: Stage,
    /// Fresh concrete.
    pub concrete: bool,
    /// People and plant, and what concrete is heaped.
    pub operations: bool,
    /// The wind.
    pub wind: Wind,
}

/// The three combinations, the same on both bases.
pub const COMBINATIONS: [Combination; 3] = [
    Combination { stage: Stage::Erected, concrete: false, operations: false, wind: Wind::Greatest },
    Combination { stage: Stage::Concreting, concrete: true, operations: true, wind: Wind::Working },
    Combination { stage: Stage::Loaded, concrete: true, operations: false, wind: Wind::Greatest },
];

/// Loads of falsework before factors, of one unit and direction.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Loads {
    /// Self weight of the works.
    pub own: f64,
    /// Fresh concrete.
    pub concrete: f64,
    /// Operations.
    pub operations: f64,
    /// Wind in which work goes on.
    pub working_wind: f64,
    /// Greatest wind.
    pub greatest_wind: f64,
}

impl Combination {
    /// Factored sum of what acts at the stage.
    pub fn sum(&self, factors: Factors, loads: &Loads) -> f64 {
        let when = |acts: bool, load: f64| if acts { load } else { 0.0 };
        let wind = match self.wind {
            Wind::Working => loads.working_wind,
            Wind::Greatest => loads.greatest_wind,
        };
        combined(
            factors,
            loads.own + when(self.concrete, loads.concrete),
            when(self.operations, loads.operations) + wind,
        )
    }
}

/// Side of the square on which concrete is heaped, EN 12812 (from memory), m.
pub const HEAP_M: f64 = 3.0;

/// Heaped concrete on [`HEAP_M`], beside the load from operations, kPa.
pub fn heaping_kpa(basis: Basis, concrete_kpa: f64) -> f64 {
    match basis {
        Basis::WorkingLoad => 0.0,
        Basis::LimitStateB1 | Basis::LimitStateB2 => heaping_en12812_kpa(concrete_kpa),
    }
}

/// Parts of the vertical load that push sideways at the heads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leaning {
    /// By itself.
    pub alone: f64,
    /// Beside the known horizontal loads.
    pub beside_known: f64,
}

/// The rule of the basis, for falsework of this height, where `least` is the part that the scheme asks for.
pub fn leaning(basis: Basis, least: f64, height_m: f64) -> Leaning {
    let beside_known = match basis {
        Basis::WorkingLoad => BESIDE_KNOWN,
        Basis::LimitStateB1 | Basis::LimitStateB2 => BESIDE_KNOWN + sway_en12812(height_m),
    };
    Leaning { alone: least, beside_known }
}
