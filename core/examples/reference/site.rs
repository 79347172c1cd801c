use super::Evaluate;
use super::case::{Case, Got};
use falsewright_core::actions::factors::{Factors, combined};
use falsewright_core::actions::fresh_concrete::envelope::tie_force_kn;
use falsewright_core::actions::friction::{coefficient_needed, friction_kn, ptfe_coefficient};
use falsewright_core::analysis::{Axis, DistributedLoad, Frame, LoadCase, Member, Support};
use falsewright_core::catalogue::STEEL_MODULUS_MPA;
use falsewright_core::checks::en1993::moment_knm;
use falsewright_core::checks::handling::reduced_kg;
use falsewright_core::checks::tie::{SAFETY_ON_BREAKING, bolt_tension_kn, rod_area_mm2, steel_force_kn};

pub const TOPICS: &[(&str, Evaluate)] = &[
    ("thread bar tie", thread_bar),
    ("tie design resistance, EN 1993-1-8", bolt),
    ("sliding force", sliding),
    ("required friction", required_friction),
    ("PTFE/stainless", ptfe),
    ("manual handling filter", handling),
    ("access opening beam", opening_beam),
    ("leg load", leg_load),
    ("EN 12812 class B2", class_b2),
];

fn thread_bar(case: &Case) -> Option<Got> {
    let area = rod_area_mm2(case.positive("d_mm")?);
    let (yielding, breaking) = (steel_force_kn(area, case.number("fy")?), steel_force_kn(area, case.number("fu")?));
    Some(Got::of(&[
        ("A_mm2", area),
        ("Fy_kN", yielding),
        ("Fu_kN", breaking),
        ("half_Fu_kN", breaking / SAFETY_ON_BREAKING),
    ]))
}

fn bolt(case: &Case) -> Option<Got> {
    let area = case.number("As").or_else(|| case.positive("d_mm").map(rod_area_mm2))?;
    let breaking = steel_force_kn(area, case.number("fu")?);
    Some(Got::of(&[("FtRd_kN", bolt_tension_kn(breaking, case.number_or("gM2", 1.25)))]))
}

fn sliding(case: &Case) -> Option<Got> {
    Some(Got::of(&[("F", friction_kn(case.number("N")?, case.number("mu")?))]))
}

fn required_friction(case: &Case) -> Option<Got> {
    Some(Got::of(&[("mu_req", coefficient_needed(case.number("ratio")?, case.number_or("FoS", 1.0)))]))
}

fn ptfe(case: &Case) -> Option<Got> {
    Some(Got::of(&[("mu", ptfe_coefficient(case.number("sigma_MPa")?))]))
}

fn handling(case: &Case) -> Option<Got> {
    Some(Got::of(&[("kg", reduced_kg(case.number("base_kg")?, case.number("reduction")?))]))
}

fn opening_beam(case: &Case) -> Option<Got> {
    let factors = Factors {
        permanent: case.number_or("gG", 1.35),
        variable: case.number_or("gQ", 1.5),
        fresh_concrete_pressure: 1.0,
    };
    let (permanent, variable) = (case.number("w_k_G")?, case.number("w_k_Q")?);
    let (length, beams) = (case.positive("L")?, case.number_or("beams", 1.0));
    let yield_mpa = case.number("fy").unwrap_or_else(|| case.grade_of_topic());
    let resistance = beams * moment_knm(case.positive("Wpl_cm3")? * 1e3, yield_mpa);
    let mut frame = Frame::default();
    let ends = [frame.add_node(0.0, 0.0), frame.add_node(length, 0.0)];
    frame.supports = ends.map(|node| Support { node, ux: node == ends[0], uy: true, rz: false }).to_vec();
    let ei = beams * STEEL_MODULUS_MPA * 1e3 * case.positive("Iy_cm4")? * 1e-8;
    let member = frame.add_member(Member::beam(ends[0], ends[1], ei, 1e6));
    let factorised = frame.factorise().ok()?;
    let under = |w: f64| {
        let load = DistributedLoad { member, axis: Axis::Y, w1: -w, w2: -w, a: 0.0, b: length };
        factorised.solve(&LoadCase { distributed: vec![load], ..LoadCase::default() }).ok()
    };
    let design = combined(factors, permanent, variable);
    let (strength, service) = (under(design)?.extremes(member), under(permanent + variable)?.extremes(member));
    let moment = strength.moment_max.0;
    Some(Got::of(&[
        ("w_d", design),
        ("M_Ed", moment),
        ("V_Ed", strength.shear_max.0.max(-strength.shear_min.0)),
        ("Mc_Rd", resistance),
        ("util_Mc", moment / resistance),
        ("defl_mm", -1e3 * service.deflection_min.0),
    ]))
}

fn leg_load(case: &Case) -> Option<Got> {
    let alone = tie_force_kn(case.number("w")?, case.number("sx")?, case.number("sy")?);
    Some(Got::of(&[("N_tributary", alone), ("N_with_1p1", alone * case.number_or("factor_continuity", 1.1))]))
}

fn class_b2(case: &Case) -> Option<Got> {
    let divisor = case.number_or("gM", 1.1) * case.number_or("extra", 1.15);
    Some(Got::of(&[("Rd", case.number("Rk")? / divisor)]))
}
