use super::Evaluate;
use super::case::{Case, Got};
use falsewright_core::actions::factors::{Factors, combined};
use falsewright_core::actions::fresh_concrete::aci347::{self, Equation};
use falsewright_core::actions::fresh_concrete::din18218::{self, Consistency1980};
use falsewright_core::actions::fresh_concrete::envelope::{PressureEnvelope, tie_force_kn};
use falsewright_core::actions::fresh_concrete::{ciria, pressure_limit};
use falsewright_core::actions::horizontal::{LEAST_FRACTION, LeastLateral, Sway, sway_en12812};
use falsewright_core::actions::imposed::{heaping_en12812_kpa, soffit_load_kpa, working_area_en1991_kpa};
use falsewright_core::actions::wind::velocity_pressure_n_m2;
use falsewright_core::scheme::{Concrete, Consistency, Delivery, FormElement, PressureMethod};

pub const TOPICS: &[(&str, Evaluate)] = &[
    ("concrete pressure / CIRIA 108", ciria_108),
    ("concrete pressure / DIN 18218", din_18218),
    ("concrete pressure / DIN 18218:1980", din_18218_1980),
    ("published DIN 18218:1980 table", din_18218_1980_table),
    ("concrete pressure / ACI 347", aci_347),
    ("pressure envelope", envelope),
    ("tie force", tie_force),
    ("falsework load per m2", falsework_load),
    ("EN 12812 in-situ concrete heaping", heaping),
    ("EN 1991-1-6 Table 4.2", working_area),
    ("BS 5975 minimum lateral force", lateral),
    ("velocity pressure", velocity),
    ("sway imperfection EN 1993", sway_1993),
    ("sway imperfection EN 12812", sway_12812),
    ("ULS combination", combination),
];

fn concrete(unit_weight_kn_m3: f64, temperature_c: f64, method: PressureMethod) -> Concrete {
    Concrete { unit_weight_kn_m3, temperature_c, method, delivery: Delivery::Rise { rate_m_h: 1.0 } }
}

fn ciria_108(case: &Case) -> Option<Got> {
    let (density, temperature) = (case.positive("D_kN_m3")?, case.number("T_C")?);
    let (c1, c2, rise) = (case.number("C1")?, case.number("C2")?, case.number("R_m_h")?);
    let pour = case.positive("h_pour_m")?;
    let form = case.number_or("H_form_m", pour);
    let k = ciria::temperature_factor(temperature)?;
    let limit = pressure_limit(&concrete(density, temperature, PressureMethod::CiriaR108 { c1, c2 }), rise, form, pour);
    let envelope = PressureEnvelope { density_kn_m3: density, limit_kpa: limit.kpa, height_m: pour };
    let got = Got::of(&[
        ("K", k),
        ("P_fluid", density * pour),
        ("P_max", limit.kpa),
        ("h_hydrostatic", envelope.fluid_depth_m()),
    ]);
    let by_rise = ciria::pressure_by_rise(density, ciria::filling_term(c1, rise), c2, k, form.max(pour));
    Some(match by_rise {
        Some(by_rise) => got.with("P_formula", by_rise),
        None => got,
    })
}

fn consistency(name: &str) -> Option<Consistency> {
    Consistency::ALL.into_iter().find(|class| class.to_string() == name)
}

fn din_18218(case: &Case) -> Option<Got> {
    let class = consistency(case.text("cls")?)?;
    let (rise, density) = (case.number("v_m_h")?, case.number_or("gamma_c", 25.0));
    let (setting_time_h, height) = (case.number_or("tE_h", 5.0), case.positive("H_m")?);
    let method = PressureMethod::Din18218 { class, setting_time_h };
    let limit = pressure_limit(&concrete(density, case.number_or("T_C", 15.0), method), rise, height, height);
    let k1 = din18218::setting_factor(class, setting_time_h);
    let envelope = PressureEnvelope { density_kn_m3: density, limit_kpa: limit.kpa, height_m: height };
    Some(Got::of(&[
        ("K1", k1),
        ("sigma_k", din18218::pressure_by_rise(class, rise, k1, density)),
        ("hydrostatic", density * height),
        ("sigma_design_k", limit.kpa),
        ("h_s", envelope.fluid_depth_m()),
    ]))
}

fn din_18218_1980(case: &Case) -> Option<Got> {
    let consistency = match case.text("equation")? {
        name if name.starts_with("stiff") => Consistency1980::Stiff,
        name if name.starts_with("plastic") => Consistency1980::Plastic,
        _ => return None,
    };
    let temperature = case.number("T_C")?;
    Some(Got::of(&[
        ("kT", din18218::temperature_factor_1980(temperature)),
        ("P", din18218::pressure_1980(consistency, case.number("v_m_h")?, temperature)),
    ]))
}

fn din_18218_1980_table(case: &Case) -> Option<Got> {
    let temperatures = case.numbers("T_C")?;
    let rises = case.numbers("v_m_h")?;
    let pairs: Vec<(f64, f64)> = match (rises.as_slice(), temperatures.as_slice()) {
        (rises, [one]) => rises.iter().map(|&rise| (rise, *one)).collect(),
        ([one], temperatures) => temperatures.iter().map(|&temperature| (*one, temperature)).collect(),
        (rises, temperatures) => rises.iter().copied().zip(temperatures.iter().copied()).collect(),
    };
    let row = |consistency| -> Vec<f64> {
        pairs.iter().map(|&(rise, temperature)| din18218::pressure_1980(consistency, rise, temperature)).collect()
    };
    Some(Got::default().with("stiff", row(Consistency1980::Stiff)).with("plastic", row(Consistency1980::Plastic)))
}

fn aci_347(case: &Case) -> Option<Got> {
    let element = match case.text("element")? {
        "wall" => FormElement::Wall,
        "column" => FormElement::Column,
        _ => return None,
    };
    let (density, rise, temperature) = (case.positive("w_kg_m3")?, case.number("R_m_h")?, case.number("T_C")?);
    let (height, cc) = (case.positive("H_m")?, case.number_or("Cc", 1.0));
    let cw = aci347::unit_weight_coefficient(density);
    let (least, fluid) = (aci347::least_pressure(cw), aci347::fluid_pressure(density, height));
    let got = Got::of(&[("Cw", cw), ("p_min", least), ("p_hydrostatic", fluid)]);
    Some(match aci347::equation(element, rise, height) {
        None => got.with("p_max", fluid),
        Some(equation) => {
            let by_rise = aci347::pressure_by_rise(equation, rise, temperature, cw, cc);
            let name = match equation {
                Equation::Wall1 => "wall-1",
                Equation::Wall2 => "wall-2",
                Equation::Column => "column",
            };
            let greatest = aci347::limited(by_rise, cw, fluid);
            got.with("eq", name).with("p_formula", by_rise).with("p_max", greatest)
        }
    })
}

fn envelope(case: &Case) -> Option<Got> {
    let envelope = PressureEnvelope {
        density_kn_m3: case.positive("D")?,
        limit_kpa: case.positive("P_max")?,
        height_m: case.positive("H")?,
    };
    Some(Got::of(&[
        ("h_s", envelope.fluid_depth_m()),
        ("F_per_m", envelope.force_kn_m()),
        ("M_base_per_m", envelope.moment_about_base_knm_m()),
        ("y_resultant_above_base", envelope.height_of_force_m()),
    ]))
}

fn tie_force(case: &Case) -> Option<Got> {
    Some(Got::of(&[("F_tie", tie_force_kn(case.number("P")?, case.number("sx_m")?, case.number("sy_m")?))]))
}

fn falsework_load(case: &Case) -> Option<Got> {
    let (thickness, density) = (case.number("t_m")?, case.number("density")?);
    Some(Got::of(&[("w", soffit_load_kpa(thickness, density, case.number("formwork")?, case.number("ops")?))]))
}

fn heaping(case: &Case) -> Option<Got> {
    Some(Got::of(&[("Q4", heaping_en12812_kpa(case.number("t_m")? * case.number_or("gamma_c", 25.0)))]))
}

fn working_area(case: &Case) -> Option<Got> {
    Some(Got::of(&[("Q", working_area_en1991_kpa(case.number("t_m")? * case.number_or("gamma_c", 25.0)))]))
}

fn lateral(case: &Case) -> Option<Got> {
    let lateral = LeastLateral::new(LEAST_FRACTION, case.number("V_kN")?, case.number_or("H_known_kN", 0.0));
    Some(Got::of(&[
        ("a_2p5pc", lateral.of_vertical_kn),
        ("b_known_plus_1pc", lateral.known_and_more_kn),
        ("H_design", lateral.governing_kn()),
    ]))
}

fn velocity(case: &Case) -> Option<Got> {
    let half_density = case.number("k").or_else(|| case.number("rho").map(|density| density / 2.0))?;
    Some(Got::of(&[("q_N_m2", velocity_pressure_n_m2(case.number("v_m_s")?, half_density))]))
}

fn sway_1993(case: &Case) -> Option<Got> {
    let Sway { alpha_h, alpha_m, phi } = Sway::en1993(case.positive("h_m")?, case.positive("m")?);
    Some(Got::of(&[("alpha_h", alpha_h), ("alpha_m", alpha_m), ("phi", phi)]))
}

fn sway_12812(case: &Case) -> Option<Got> {
    Some(Got::of(&[("tan_phi", sway_en12812(case.positive("h_m")?))]))
}

fn combination(case: &Case) -> Option<Got> {
    let factors = Factors { permanent: case.number("gG")?, variable: case.number("gQ")?, fresh_concrete_pressure: 1.0 };
    Some(Got::of(&[("w_d", combined(factors, case.number("G")?, case.number("Q")?))]))
}
