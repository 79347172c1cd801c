use serde::{Deserialize, Serialize};

/// One bay is one pour length along the culvert.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bays {
    /// Length of each bay.
    pub length_m: f64,
    /// Number of bays.
    pub count: u32,
}

/// The fresh concrete.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Concrete {
    /// Weight density, reinforcement included.
    pub unit_weight_kn_m3: f64,
    /// At placing.
    pub temperature_c: f64,
    /// How its pressure is found.
    pub method: PressureMethod,
    /// How fast it arrives.
    pub delivery: Delivery,
}

/// Ways to find the pressure of fresh concrete.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "name", rename_all = "snake_case", deny_unknown_fields)]
pub enum PressureMethod {
    /// CIRIA Report 108 (1985).
    CiriaR108 {
        /// Coefficient of the section: 1.0 walls and bases, 1.5 columns.
        c1: f64,
        /// Coefficient of the constituent materials, 0.30 to 0.60.
        c2: f64,
    },
    /// Fluid over the full height.
    FullHead,
}

/// How fast concrete arrives in the forms.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "by", rename_all = "snake_case", deny_unknown_fields)]
pub enum Delivery {
    /// A volume an hour, spread over the plan area that is open at each level.
    Volume {
        /// Rate of delivery.
        rate_m3_h: f64,
    },
    /// A rise an hour, the same at every level.
    Rise {
        /// Rate of rise.
        rate_m_h: f64,
    },
}

/// The rules that resistances follow. They are never mixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// Permissible values against unfactored loads, as in BS 5975 practice.
    WorkingLoad,
    /// EN 12812 class B1 with EN 1993-1-1 and EN 1995-1-1.
    LimitStateB1,
    /// EN 12812 class B2: as B1, with resistances further divided by 1.15.
    LimitStateB2,
}

/// Loads that do not come from the concrete.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Loads {
    /// Self weight of soffit formwork where no item's own weight is known.
    pub formwork_kpa: f64,
    /// Construction operations.
    pub operations_kpa: f64,
    /// Horizontal load on falsework as a part of its vertical load.
    pub horizontal_fraction: f64,
}

/// Limits of deflection and clearance.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Limits {
    /// Members may deflect their span divided by this.
    pub span_over_deflection: f64,
    /// Kept in hand around a way left open.
    pub access_tolerance_m: f64,
}

/// What the works stand on where no concrete is below.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ground {
    /// Its level.
    pub level_m: f64,
    /// Allowable bearing pressure.
    pub allowable_kpa: f64,
}
