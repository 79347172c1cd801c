//! ACI 347R-14 in SI units, `R` m/h, `T` °C. The split by rise and height, 7.2 and 785 are confirmed in print; 1156, 244,
//! `Cw`, `Cc` and the least pressure are from memory, and agree within 0.3 % with the forms in pounds and feet.

use super::{Fill, PressureLimit};
use crate::scheme::{CementChemistry, FormElement};
use crate::sentence::{Sentence, length, length_mm, number};

const SOURCE: &str = "ACI 347R-14 (partly from memory)";
/// Standard gravity as used with densities, m/s².
const GRAVITY: f64 = 9.81;
const SLOW_RISE_M_H: f64 = 2.1;
const FASTEST_RISE_M_H: f64 = 4.5;
const LOW_WALL_M: f64 = 4.2;
const GREATEST_SLUMP_MM: f64 = 175.0;
const DEEPEST_VIBRATION_M: f64 = 1.2;

/// How concrete comes into the form.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placing {
    /// Wall or column.
    pub element: FormElement,
    /// Cement and admixtures.
    pub chemistry: CementChemistry,
    /// Slump.
    pub slump_mm: f64,
    /// Depth of internal vibration.
    pub vibrated_depth_m: f64,
}

/// Which formula governs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Equation {
    /// Walls up to 2.1 m/h and 4.2 m.
    Wall1,
    /// Higher walls, and walls up to 4.5 m/h.
    Wall2,
    /// Columns.
    Column,
}

/// Unit weight coefficient `Cw`; density kg/m³.
pub fn unit_weight_coefficient(density_kg_m3: f64) -> f64 {
    match density_kg_m3 {
        w if w < 2240.0 => (0.5 * (1.0 + w / 2320.0)).max(0.80),
        w if w <= 2400.0 => 1.0,
        w => w / 2320.0,
    }
}

/// Chemistry coefficient `Cc`.
pub fn chemistry_coefficient(chemistry: CementChemistry) -> f64 {
    match chemistry {
        CementChemistry::Plain => 1.0,
        CementChemistry::PlainRetarded | CementChemistry::Blended => 1.2,
        CementChemistry::BlendedRetarded | CementChemistry::HighlyBlended => 1.4,
    }
}

/// The formula for a form; none for a wall that rises faster than 4.5 m/h.
pub fn equation(element: FormElement, rise_m_h: f64, form_m: f64) -> Option<Equation> {
    match element {
        FormElement::Column => Some(Equation::Column),
        FormElement::Wall if rise_m_h < SLOW_RISE_M_H && form_m <= LOW_WALL_M => Some(Equation::Wall1),
        FormElement::Wall if rise_m_h <= FASTEST_RISE_M_H => Some(Equation::Wall2),
        FormElement::Wall => None,
    }
}

/// `Cc Cw [7.2 + …]`, kPa, before its limits.
pub fn pressure_by_rise(equation: Equation, rise_m_h: f64, temperature_c: f64, cw: f64, cc: f64) -> f64 {
    let warmth = temperature_c + 17.8;
    cc * cw
        * match equation {
            Equation::Wall1 | Equation::Column => 7.2 + 785.0 * rise_m_h / warmth,
            Equation::Wall2 => 7.2 + (1156.0 + 244.0 * rise_m_h) / warmth,
        }
}

/// `30 Cw`, kPa.
pub fn least_pressure(cw: f64) -> f64 {
    30.0 * cw
}

/// At least `30 Cw`, at most fluid, kPa.
pub fn limited(by_rise_kpa: f64, cw: f64, fluid_kpa: f64) -> f64 {
    by_rise_kpa.max(least_pressure(cw)).min(fluid_kpa)
}

/// `ρ g h`, kPa; density kg/m³.
pub fn fluid_pressure(density_kg_m3: f64, height_m: f64) -> f64 {
    density_kg_m3 * GRAVITY * height_m * 1e-3
}

pub(super) fn limit(fill: &Fill, placing: Placing) -> PressureLimit {
    let Fill { density, temperature, rise, form, pour } = *fill;
    let mut warnings = Vec::new();
    let mut out = |reason: Sentence| warnings.push(sentence!("{}: fluid pressure is taken, as ACI 347 asks.", reason));
    if !(rise >= 0.0 && rise.is_finite() && temperature > -17.8) {
        out(sentence!("The rise or temperature cannot be used with ACI 347"));
    }
    if placing.slump_mm.is_nan() || placing.slump_mm > GREATEST_SLUMP_MM {
        out(sentence!("A slump of {} is above 175 mm", length_mm(placing.slump_mm * 1e-3)));
    }
    if placing.vibrated_depth_m.is_nan() || placing.vibrated_depth_m > DEEPEST_VIBRATION_M {
        out(sentence!("Vibration {} deep is below 1.2 m", length(placing.vibrated_depth_m, 1)));
    }
    let equation = equation(placing.element, rise, form);
    if equation.is_none() {
        out(sentence!("A wall that rises {} is above 4.5 m/h", number(rise, "m/h", 1)));
    }
    let Some(equation) = equation.filter(|_| warnings.is_empty()) else { return fill.fluid(SOURCE, warnings) };
    if !(4.0..=35.0).contains(&temperature) {
        warnings.push(sentence!(
            "Concrete at {} is outside the range that ACI 347 was drawn up for.",
            number(temperature, "°C", 0)
        ));
    }
    let cw = unit_weight_coefficient(density * 1e3 / GRAVITY);
    let cc = chemistry_coefficient(placing.chemistry);
    let by_rise = pressure_by_rise(equation, rise, temperature, cw, cc);
    let head = density * pour;
    let kpa = limited(by_rise, cw, head);
    let (rise, temperature) = (number(rise, "", 3), number(temperature, "", 1));
    let by_equation = match equation {
        Equation::Wall1 | Equation::Column => formula!("785 × {} / ({} + 17.8)", rise, temperature),
        Equation::Wall2 => formula!("(1156 + 244 × {}) / ({} + 17.8)", rise, temperature),
    };
    let formula = formula!(
        "Cc Cw [7.2 + …] = {0} × {1} × [7.2 + {2}] = {3}; 30 Cw = 30 × {1} = {4}; ρ g h = {5} × {6} = {7}; pmax {8}",
        number(cc, "", 1),
        number(cw, "", 3),
        by_equation,
        number(by_rise, "kPa", 1),
        number(least_pressure(cw), "kPa", 1),
        number(density, "kN/m³", 1),
        number(pour, "m", 3),
        number(head, "kPa", 1),
        number(kpa, "kPa", 1)
    );
    PressureLimit { kpa, formula, source: SOURCE, warnings }
}
