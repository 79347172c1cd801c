use super::SiteWind;
use crate::json::tagged;
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
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "name", rename_all = "snake_case")]
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
    /// DIN 18218:2010.
    Din18218 {
        /// Consistency as placed.
        class: Consistency,
        /// Final setting time at 15 °C, 5 to 20 h.
        setting_time_h: f64,
    },
    /// ACI 347R-14.
    Aci347 {
        /// Wall or column.
        element: FormElement,
        /// Cement and admixtures.
        chemistry: CementChemistry,
        /// Slump, up to 175 mm.
        slump_mm: f64,
        /// Depth of internal vibration, up to 1.2 m.
        vibrated_depth_m: f64,
    },
}

tagged! { PressureMethod, "name", |fields| {
    "ciria_r108" => PressureMethod::CiriaR108 { c1: fields.take("c1")?, c2: fields.take("c2")? },
    "full_head" => PressureMethod::FullHead,
    "din18218" => PressureMethod::Din18218 {
        class: fields.take("class")?,
        setting_time_h: fields.take("setting_time_h")?,
    },
    "aci347" => PressureMethod::Aci347 {
        element: fields.take("element")?,
        chemistry: fields.take("chemistry")?,
        slump_mm: fields.take("slump_mm")?,
        vibrated_depth_m: fields.take("vibrated_depth_m")?,
    },
} }

/// Consistency classes of EN 206 by flow table, and self-compacting concrete.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Consistency {
    /// Stiff.
    F1,
    /// Plastic.
    F2,
    /// Soft.
    F3,
    /// Very soft.
    F4,
    /// Flowable.
    F5,
    /// Very flowable.
    F6,
    /// Self-compacting.
    Scc,
}

impl Consistency {
    /// All, from the stiffest.
    pub const ALL: [Self; 7] = [Self::F1, Self::F2, Self::F3, Self::F4, Self::F5, Self::F6, Self::Scc];
}

impl std::fmt::Display for Consistency {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Scc => f.write_str("SCC"),
            other => write!(f, "{other:?}"),
        }
    }
}

/// What a form makes, in ACI 347.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FormElement {
    /// A wall.
    Wall,
    /// A column.
    Column,
}

/// Cement and admixtures in ACI 347. A retarder is any admixture that delays setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CementChemistry {
    /// Types I, II and III without retarder.
    Plain,
    /// Types I, II and III with a retarder.
    PlainRetarded,
    /// Other types or blends below 70 % slag or 40 % fly ash, without retarder.
    Blended,
    /// The same with a retarder.
    BlendedRetarded,
    /// Blends with 70 % slag or 40 % fly ash, and above.
    HighlyBlended,
}

/// How fast concrete arrives in the forms.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "by", rename_all = "snake_case")]
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

tagged! { Delivery, "by", |fields| {
    "volume" => Delivery::Volume { rate_m3_h: fields.take("rate_m3_h")? },
    "rise" => Delivery::Rise { rate_m_h: fields.take("rate_m_h")? },
} }

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
    /// How far off its axis a leg is loaded at its head.
    #[serde(default = "Loads::usual_eccentricity_m")]
    pub leg_eccentricity_m: f64,
    /// Wind on the site; none: not told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wind: Option<SiteWind>,
    /// Horizontal force of a pump line or other plant on one bent of falsework, at the level of its soffit, kN.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plant_kn: Option<f64>,
    /// How much warmer or colder steel beams become than when they were placed, K.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_range_k: Option<f64>,
}

impl Loads {
    fn usual_eccentricity_m() -> f64 {
        crate::actions::horizontal::ECCENTRICITY_TOLERANCE_M
    }
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
