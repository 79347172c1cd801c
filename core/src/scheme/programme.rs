use serde::{Deserialize, Serialize};

/// How sets of equipment go from bay to bay, and what that is paid for.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Programme {
    /// Sets of equipment, each for one bay at a time.
    pub sets: u32,
    /// From the first pour of a bay to that of the next bay with the same set.
    pub cycle_days: f64,
    /// Bays that facing serves before it is renewed.
    pub facing_uses: u32,
    /// What is paid, in any one currency.
    #[serde(default)]
    pub rates: Rates,
}

/// What is paid for what. A rate that is not known is left out of the cost.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Rates {
    /// Hire of a tonne of equipment for a week. Facing is bought.
    pub hire_per_t_week: Option<f64>,
    /// A square metre of facing.
    pub facing_per_m2: Option<f64>,
    /// Setting and striking, for each square metre of facing and use.
    pub work_per_m2: Option<f64>,
}

impl Default for Programme {
    /// One set, a bay a week, and what film-faced plywood is often used for; common practice.
    fn default() -> Self {
        Self { sets: 1, cycle_days: 7.0, facing_uses: 10, rates: Rates::default() }
    }
}
