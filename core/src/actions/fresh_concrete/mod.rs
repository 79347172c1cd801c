//! Lateral pressure of fresh concrete on formwork.

pub mod aci347;
pub mod ciria;
pub mod din18218;
pub mod envelope;
pub mod filling;
pub mod slope;

use crate::scheme::{Concrete, Delivery, PressureMethod};
use crate::sentence::{Sentence, number};

const FLUID: &str = "Fluid over the full height";

/// The greatest pressure that fresh concrete can reach on a form.
#[derive(Clone, Debug, PartialEq)]
pub struct PressureLimit {
    /// The pressure.
    pub kpa: f64,
    /// The formula with its numbers.
    pub formula: Sentence,
    /// Where it comes from.
    pub source: &'static str,
    /// Where the method is used outside its range, in plain words.
    pub warnings: Vec<Sentence>,
}

/// A form as it is filled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Fill {
    /// Weight density, kN/m³.
    pub density: f64,
    /// At placing, °C.
    pub temperature: f64,
    /// Rate of rise, m/h.
    pub rise: f64,
    /// Height of the form, at least that of the pour, m.
    pub form: f64,
    /// Height of the pour, m.
    pub pour: f64,
}

impl Fill {
    /// The whole height as a fluid.
    pub fn fluid(&self, source: &'static str, warnings: Vec<Sentence>) -> PressureLimit {
        let Self { density, pour, .. } = self;
        let kpa = density * pour;
        let formula =
            formula!("D h = {} × {} = {}", number(*density, "kN/m³", 1), number(*pour, "m", 3), number(kpa, "kPa", 1));
        PressureLimit { kpa, formula, source, warnings }
    }
}

/// How fast concrete rises where it spreads over this plan area.
pub fn rise(delivery: &Delivery, plan_area_m2: f64) -> f64 {
    match *delivery {
        Delivery::Rise { rate_m_h } => rate_m_h,
        Delivery::Volume { rate_m3_h } if plan_area_m2 > 0.0 => rate_m3_h / plan_area_m2,
        Delivery::Volume { .. } => f64::INFINITY,
    }
}

/// Greatest pressure on a form of one height that holds a pour of another height, by the method of the scheme.
/// Whatever the method cannot deal with is taken as fluid.
pub fn pressure_limit(concrete: &Concrete, rise_m_h: f64, form_height_m: f64, pour_height_m: f64) -> PressureLimit {
    let fill = Fill {
        density: concrete.unit_weight_kn_m3,
        temperature: concrete.temperature_c,
        rise: rise_m_h,
        form: form_height_m.max(pour_height_m),
        pour: pour_height_m,
    };
    match concrete.method {
        PressureMethod::FullHead => fill.fluid(FLUID, Vec::new()),
        PressureMethod::CiriaR108 { c1, c2 } => ciria::limit(&fill, c1, c2),
        PressureMethod::Din18218 { class, setting_time_h } => din18218::limit(&fill, class, setting_time_h),
        PressureMethod::Aci347 { element, chemistry, slump_mm, vibrated_depth_m } => {
            aci347::limit(&fill, aci347::Placing { element, chemistry, slump_mm, vibrated_depth_m })
        }
    }
}
