use super::{FOUR_FIGURES, Row, Rows};
use falsewright_core::checks::ground::{
    BeamOnSprings, GroundKind, NC_STRIP, SHAPE_SQUARE, SolePlate, breadth_below_packing, clay_failure_kpa,
    contact_pressure_kpa, fill_depth_m, pressure_at_depth_kpa, web_bearing_length_mm,
};
use falsewright_core::checks::handling::{Lifter, Zone, guideline_kg, reduced_kg, repetition};
use falsewright_core::checks::stability::{Standing, check_overturning, check_sliding};
use falsewright_core::scheme::Basis;

pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Ground, balance and hands");
    spread(&mut rows);
    soil(&mut rows);
    balance(&mut rows);
    hands(&mut rows);
    rows.rows
}

fn spread(rows: &mut Rows) {
    rows.from("2 down, 1 out, worked independently", "kPa", FOUR_FIGURES);
    rows.check("40 kN on 0.225 × 0.6 m", 296.3, contact_pressure_kpa(40.0, 0.225, 0.6));
    rows.check("The same 0.3 m down", 84.66, pressure_at_depth_kpa(40.0, 0.225, 0.6, 0.3));
    rows.from("2 down, 1 out, solved back", "m", FOUR_FIGURES);
    rows.check("Fill that brings 40 kN to 84.66 kPa", 0.3, fill_depth_m(40.0, 0.225, 0.6, 84.66));
    rows.from("Geometry", "mm", FOUR_FIGURES);
    rows.check("150 mm below 75 mm of packing", 300.0, breadth_below_packing(150.0, 75.0));
    rows.check("100 mm through flange 10.2 and root 8.9", 195.5, web_bearing_length_mm(100.0, 10.2, 8.9));
    let effects = SolePlate { length_m: 0.75, breadth_m: 0.225, base_m: 0.15 }.effects(30.0);
    rows.from("Statics", "kN/m", FOUR_FIGURES).check("30 kN along 0.75 m", 40.0, effects.line_kn_m);
    rows.from("Statics", "kNm", FOUR_FIGURES).check("Its cantilever", 1.8, effects.moment_knm);
    rows.from("Statics", "kPa", FOUR_FIGURES).check("Its pressure", 177.8, effects.pressure_kpa);
    let beam = BeamOnSprings::new(40.0, 10_000.0, 450.0);
    rows.from("Hetényi", "1/m", FOUR_FIGURES).check("β", 1.535, beam.beta);
    rows.from("Hetényi", "mm", FOUR_FIGURES).check("Settlement of 40 kN", 3.071, beam.settlement_m * 1e3);
    rows.from("Hetényi", "kNm", FOUR_FIGURES).check("Moment under 40 kN", 6.514, beam.moment_knm);
}

fn soil(rows: &mut Rows) {
    rows.from("Prandtl, 2 + π", "kPa", FOUR_FIGURES);
    rows.check("Strip on clay of 50 kPa", 257.0, clay_failure_kpa(50.0, NC_STRIP, 1.0));
    rows.check("Square on clay of 50 kPa", 308.4, clay_failure_kpa(50.0, NC_STRIP, SHAPE_SQUARE));
    rows.from("BS 8004:1986 table on a public page", "kPa", 1e-9);
    for (kind, low) in [
        (GroundKind::DenseGravel, 600.0),
        (GroundKind::MediumGravel, 200.0),
        (GroundKind::DenseSand, 300.0),
        (GroundKind::MediumSand, 100.0),
        (GroundKind::HardClay, 300.0),
        (GroundKind::StiffClay, 150.0),
        (GroundKind::FirmClay, 75.0),
    ] {
        rows.check(format!("{kind:?}, lower value"), low, kind.presumed_kpa().map_or(f64::NAN, |range| range.0));
    }
}

fn balance(rows: &mut Rows) {
    let moments = Standing { holding: 20.0, tipping_permanent: 2.0, tipping_variable: 8.0, held: 0.0 };
    rows.from("By hand: 1.2 × 10 / 20", "", FOUR_FIGURES);
    rows.check("Overturning, working loads", 0.6, check_overturning(Basis::WorkingLoad, &moments).ratio());
    rows.from("By hand: (1.35 × 2 + 1.5 × 8) / (0.9 × 20)", "", FOUR_FIGURES);
    rows.check("Overturning, limit state", 0.8167, check_overturning(Basis::LimitStateB1, &moments).ratio());
    let light = Standing { holding: 10.0, ..moments };
    rows.from("By hand: 14.7 − 9", "kNm", FOUR_FIGURES);
    rows.check("Hold-down, limit state", 5.7, light.hold_down(Basis::LimitStateB1));
    let forces = Standing { holding: 100.0, tipping_variable: 10.0, ..Standing::default() };
    rows.from("By hand: 1.2 × 10 / (0.4 × 100)", "", FOUR_FIGURES);
    rows.check("Sliding at 0.4, working loads", 0.3, check_sliding(Basis::WorkingLoad, &forces, 0.4).ratio());
}

fn hands(rows: &mut Rows) {
    rows.from("HSE L23: 25 and 16 kg confirmed in print", "kg", 1e-9);
    rows.check("Man, knuckle height", 25.0, guideline_kg(Zone::Knuckle, Lifter::Man, true));
    rows.check("Woman, knuckle height", 16.0, guideline_kg(Zone::Knuckle, Lifter::Woman, true));
    rows.from("HSE, simple manual handling risk filters", "kg", FOUR_FIGURES);
    rows.check("25 kg twice a minute", 17.5, reduced_kg(25.0, repetition(2.0)));
}
