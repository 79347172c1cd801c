use super::Evaluate;
use super::case::{Case, Got};
use falsewright_core::checks::ground::{
    SolePlate, breadth_below_packing, clay_failure_kpa, contact_pressure_kpa, pressure_at_depth_kpa,
    web_bearing_length_mm,
};

pub const TOPICS: &[(&str, Evaluate)] = &[
    ("2:1 (vertical:horizontal) spread", soil_spread),
    ("45 degree spread", packing_spread),
    ("1:2.5 spread", flange_spread),
    ("short-term bearing on clay", clay),
    ("sole plate cantilever bending", sole_plate),
];

fn soil_spread(case: &Case) -> Option<Got> {
    let (force, breadth, length) = (case.number("P_kN")?, case.positive("b_m")?, case.positive("l_m")?);
    Some(Got::of(&[
        ("p_contact", contact_pressure_kpa(force, breadth, length)),
        ("p_at_z", pressure_at_depth_kpa(force, breadth, length, case.number("z_m")?)),
    ]))
}

fn packing_spread(case: &Case) -> Option<Got> {
    Some(Got::of(&[("b_eff", breadth_below_packing(case.number("b_mm")?, case.number("t_mm")?))]))
}

fn flange_spread(case: &Case) -> Option<Got> {
    let length = web_bearing_length_mm(case.number("ss")?, case.number("tf")?, case.number("r")?);
    Some(Got::of(&[("length", length)]))
}

fn clay(case: &Case) -> Option<Got> {
    let (cu, nc) = (case.number("cu")?, case.number_or("Nc_strip", falsewright_core::checks::ground::NC_STRIP));
    let shape = case.number_or("sc_square", falsewright_core::checks::ground::SHAPE_SQUARE);
    let factor = case.number_or("FoS", 1.0);
    let (strip, square) = (clay_failure_kpa(cu, nc, 1.0), clay_failure_kpa(cu, nc, shape));
    Some(Got::of(&[
        ("qu_strip", strip),
        ("qu_square", square),
        ("qa_strip", strip / factor),
        ("qa_square", square / factor),
    ]))
}

fn sole_plate(case: &Case) -> Option<Got> {
    let plate = SolePlate {
        length_m: case.positive("L_m")?,
        breadth_m: case.positive("b_m")?,
        base_m: case.number_or("base_m", 0.0),
    };
    let effects = plate.effects(case.number("P_kN")?);
    Some(Got::of(&[("w_kN_m", effects.line_kn_m), ("M_kNm", effects.moment_knm), ("p", effects.pressure_kpa)]))
}
