//! Factors on loads, and which loads meet at each stage. Permanent 1.35, variable 1.5 and favourable 0.9 of EN 12812,
//! and the stages of BS 5975, are from memory; 1.5 on the pressure of fresh concrete as in DIN 18218:2010 (from memory).

use crate::scheme::Basis;

/// Factors on unfavourable loads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factors {
    /// Self weight, and fresh concrete on soffits once placed.
    pub permanent: f64,
    /// Construction operations and wind.
    pub variable: f64,
    /// Lateral pressure of fresh concrete on shutters.
    pub fresh_concrete_pressure: f64,
}

/// Factors of a basis: 1.0 against permissible values, or those of limit states.
pub fn factors(basis: Basis) -> Factors {
    match basis {
        Basis::WorkingLoad => Factors { permanent: 1.0, variable: 1.0, fresh_concrete_pressure: 1.0 },
        Basis::LimitStateB1 | Basis::LimitStateB2 => {
            Factors { permanent: 1.35, variable: 1.5, fresh_concrete_pressure: 1.5 }
        }
    }
}

/// Permanent and variable load together, each unfavourable.
pub fn combined(factors: Factors, permanent: f64, variable: f64) -> f64 {
    factors.permanent * permanent + factors.variable * variable
}

/// Standing against overturning, uplift and sliding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Balance {
    /// On what holds.
    pub favourable: f64,
    /// On permanent loads that tip.
    pub permanent: f64,
    /// On variable loads that tip.
    pub variable: f64,
}

/// Factors of balance: 1.2 in all on the working-load basis, 0.9 against 1.35 and 1.5 in limit states.
pub fn balance(basis: Basis) -> Balance {
    match basis {
        Basis::WorkingLoad => Balance { favourable: 1.0, permanent: 1.2, variable: 1.2 },
        Basis::LimitStateB1 | Basis::LimitStateB2 => Balance { favourable: 0.9, permanent: 1.35, variable: 1.5 },
    }
}

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

/// Wind of a stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wind {
    /// In which work goes on.
    Working,
    /// Greatest of the site for the time that the works stand.
    Greatest,
}

/// What acts together at a stage. Self weight always does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Combination {
    /// The stage.
    pub stage: Stage,
    /// Fresh concrete.
    pub concrete: bool,
    /// People, plant and heaped concrete.
    pub operations: bool,
    /// The wind.
    pub wind: Wind,
    /// Least horizontal load that stands in for imperfections.
    pub notional: bool,
}

/// The three combinations, the same on both bases.
pub const COMBINATIONS: [Combination; 3] = [
    Combination { stage: Stage::Erected, concrete: false, operations: false, wind: Wind::Greatest, notional: false },
    Combination { stage: Stage::Concreting, concrete: true, operations: true, wind: Wind::Working, notional: true },
    Combination { stage: Stage::Loaded, concrete: true, operations: false, wind: Wind::Greatest, notional: false },
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
