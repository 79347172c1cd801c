//! Lateral pressure of fresh concrete on formwork.

use crate::scheme::{Concrete, Delivery, PressureMethod};

/// Temperatures that CIRIA Report 108 was drawn up for (from memory), °C.
const CIRIA_TEMPERATURES_C: [f64; 2] = [5.0, 30.0];
/// Coefficients of constituent materials in CIRIA Report 108.
const CIRIA_C2: [f64; 2] = [0.30, 0.60];
/// Coefficients of section shape in CIRIA Report 108.
const CIRIA_C1: [f64; 2] = [1.0, 1.5];

const CIRIA: &str = "CIRIA Report 108 (1985)";
const FLUID: &str = "Fluid over the full height";

/// The greatest pressure that fresh concrete can reach on a form.
#[derive(Clone, Debug, PartialEq)]
pub struct PressureLimit {
    /// The pressure.
    pub kpa: f64,
    /// The formula with its numbers.
    pub formula: String,
    /// Where it comes from.
    pub source: &'static str,
    /// Where the method is used outside its range, in plain words.
    pub warnings: Vec<String>,
}

/// How fast concrete rises where it spreads over this plan area.
pub fn rise(delivery: &Delivery, plan_area_m2: f64) -> f64 {
    match *delivery {
        Delivery::Rise { rate_m_h } => rate_m_h,
        Delivery::Volume { rate_m3_h } if plan_area_m2 > 0.0 => rate_m3_h / plan_area_m2,
        Delivery::Volume { .. } => f64::INFINITY,
    }
}

/// Greatest pressure on a form of one height that holds a pour of another height.
///
/// CIRIA R108: `Pmax = D [C1 √R + C2 K √(H − C1 √R)] ≤ D h` with `K = (36 / (T + 16))²`, and `D h` where
/// `C1 √R > H`; `D` kN/m³, `R` m/h, `T` °C, `H` height of the form, `h` of the pour.
/// Whatever the method cannot deal with is taken as fluid.
pub fn pressure_limit(concrete: &Concrete, rise_m_h: f64, form_height_m: f64, pour_height_m: f64) -> PressureLimit {
    match concrete.method {
        PressureMethod::FullHead => fluid(concrete, pour_height_m, FLUID, Vec::new()),
        PressureMethod::CiriaR108 { c1, c2 } => {
            ciria(concrete, Coefficients { c1, c2 }, rise_m_h, form_height_m, pour_height_m)
        }
    }
}

fn fluid(concrete: &Concrete, pour_m: f64, source: &'static str, warnings: Vec<String>) -> PressureLimit {
    let density = concrete.unit_weight_kn_m3;
    let kpa = density * pour_m;
    let formula = format!("D h = {density:.1} kN/m³ × {pour_m:.3} m = {kpa:.1} kPa");
    PressureLimit { kpa, formula, source, warnings }
}

#[derive(Clone, Copy)]
struct Coefficients {
    c1: f64,
    c2: f64,
}

fn ciria(concrete: &Concrete, coefficients: Coefficients, rise: f64, form_m: f64, pour_m: f64) -> PressureLimit {
    let Coefficients { c1, c2 } = coefficients;
    let (density, temperature) = (concrete.unit_weight_kn_m3, concrete.temperature_c);
    let form_m = form_m.max(pour_m);
    let mut warnings = ciria_warnings(coefficients, temperature);

    let usable = rise >= 0.0 && rise.is_finite() && c1 >= 0.0 && c2 >= 0.0 && temperature > -16.0;
    if !usable {
        warnings.push(
            "The rise, temperature or coefficients cannot be used with CIRIA Report 108: fluid pressure is taken."
                .into(),
        );
        return fluid(concrete, pour_m, CIRIA, warnings);
    }
    let filling = c1 * rise.sqrt();
    if filling > form_m {
        let mut limit = fluid(concrete, pour_m, CIRIA, warnings);
        limit.formula = format!("C1 √R = {filling:.2} > H = {form_m:.2} m, so {}", limit.formula);
        return limit;
    }
    let root_k = 36.0 / (temperature + 16.0);
    let k = root_k * root_k;
    let by_rise = density * (filling + c2 * k * (form_m - filling).sqrt());
    let head = density * pour_m;
    let kpa = by_rise.min(head);
    let formula = format!(
        "D [C1 √R + C2 K √(H − C1 √R)] = {density:.1} kN/m³ × [{c1:.2} × √{rise:.3} + {c2:.2} × {k:.3} × \
         √({form_m:.3} − {c1:.2} × √{rise:.3})] = {by_rise:.1} kPa; D h = {density:.1} × {pour_m:.3} = {head:.1} kPa; \
         the lesser {kpa:.1} kPa"
    );
    PressureLimit { kpa, formula, source: CIRIA, warnings }
}

fn ciria_warnings(Coefficients { c1, c2 }: Coefficients, temperature: f64) -> Vec<String> {
    let mut warnings = Vec::new();
    let [cold, hot] = CIRIA_TEMPERATURES_C;
    if !(cold..=hot).contains(&temperature) {
        warnings.push(format!(
            "Concrete at {temperature:.0} °C is outside the {cold:.0} to {hot:.0} °C that CIRIA Report 108 covers."
        ));
    }
    let [least, most] = CIRIA_C2;
    if !(least..=most).contains(&c2) {
        warnings.push(format!("C2 = {c2:.2} is outside the {least:.2} to {most:.2} of CIRIA Report 108."));
    }
    if !CIRIA_C1.contains(&c1) {
        warnings.push(format!("C1 = {c1:.2} is neither 1.0 (walls and bases) nor 1.5 (columns)."));
    }
    warnings
}
