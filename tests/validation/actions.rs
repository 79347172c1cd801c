use super::{FOUR_FIGURES, Row, Rows};
use falsewright_core::actions::combinations::{COMBINATIONS, Loads};
use falsewright_core::actions::factors::{combined, factors};
use falsewright_core::actions::friction::{coefficient_needed, friction_kn, ptfe_coefficient};
use falsewright_core::actions::horizontal::{LEAST_FRACTION, LeastLateral, Sway, sway_en12812};
use falsewright_core::actions::imposed::{
    heaping_en12812_kpa, scaffold_class_kpa, soffit_load_kpa, unbalance_kn_m, working_area_en1991_kpa,
};
use falsewright_core::actions::thermal::{STEEL_EXPANSION, movement_m, restrained_force_kn};
use falsewright_core::actions::wind::{
    HALF_AIR_DENSITY_EN, HALF_AIR_DENSITY_UK, Terrain, WindSite, probability_factor, velocity_pressure_n_m2,
};
use falsewright_core::scheme::Basis;

pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Actions");
    vertical(&mut rows);
    horizontal(&mut rows);
    wind(&mut rows);
    combinations(&mut rows);
    sliding(&mut rows);
    rows.rows
}

fn vertical(rows: &mut Rows) {
    rows.from("BS 5975 values, from memory", "kPa", FOUR_FIGURES);
    rows.check("Slab of 0.4 m with formwork and operations", 12.0, soffit_load_kpa(0.4, 25.0, 0.5, 1.5));
    for (thickness, heaped, area) in [(0.25, 0.75, 0.75), (0.5, 1.25, 1.25), (0.8, 1.75, 1.5)] {
        rows.from("EN 12812 Q4, from memory", "kPa", FOUR_FIGURES);
        rows.check(format!("Heaping on {thickness} m"), heaped, heaping_en12812_kpa(25.0 * thickness));
        rows.from("EN 1991-1-6 Table 4.2, from memory", "kPa", FOUR_FIGURES);
        rows.check(format!("Working area on {thickness} m"), area, working_area_en1991_kpa(25.0 * thickness));
    }
    rows.from("EN 12811-1 Table 3, from memory", "kPa", FOUR_FIGURES);
    rows.check("Scaffold of class 3", 2.0, scaffold_class_kpa(3).unwrap_or(f64::NAN));
    rows.from("Statics: 25 × (2² − 1²) / 2", "kN/m", FOUR_FIGURES);
    rows.check("Fronts at 2 m and 1 m", 37.5, unbalance_kn_m(25.0, 2.0, 1.0));
}

fn horizontal(rows: &mut Rows) {
    rows.from("BS 5975: 2.5 % and 1 % confirmed in print", "kN", FOUR_FIGURES);
    for (known, expected) in [(10.0, 30.0), (25.0, 37.0)] {
        let lateral = LeastLateral::new(LEAST_FRACTION, 1200.0, known);
        rows.check(format!("Least lateral, 1200 kN and {known} kN known"), expected, lateral.governing_kn());
    }
    let sway = Sway::en1993(5.0, 4.0);
    rows.from("EN 1993-1-1 5.3.2(3), worked independently", "", FOUR_FIGURES);
    rows.check("αh at 5 m", 0.8944, sway.alpha_h).check("αm of 4 columns", 0.7906, sway.alpha_m);
    rows.check("φ at 5 m, 4 columns", 0.003536, sway.phi);
    rows.from("EN 12812, from memory", "", FOUR_FIGURES).check("tan φ at 14 m", 0.008452, sway_en12812(14.0));
    rows.from("EN 1991-1-5: 12e-6 × 30 × 20", "mm", FOUR_FIGURES);
    rows.check("Steel of 20 m, 30 K warmer", 7.2, movement_m(STEEL_EXPANSION, 20.0, 30.0) * 1e3);
    rows.from("Statics: 0.0036 m / (10 / 100 000 + 1 / 5000)", "kN", FOUR_FIGURES);
    let force = restrained_force_kn(STEEL_EXPANSION, 30.0, 10.0, 1e5, 5e3);
    rows.check("10 m strut between springs of 5000 kN/m, 30 K warmer", 12.0, force);
}

fn wind(rows: &mut Rows) {
    rows.from("½ ρ v², ρ of the UK annex to EN 1991-1-4", "N/m²", FOUR_FIGURES);
    rows.check("18 m/s", 198.6, velocity_pressure_n_m2(18.0, HALF_AIR_DENSITY_UK));
    rows.check("24 m/s", 353.1, velocity_pressure_n_m2(24.0, HALF_AIR_DENSITY_UK));
    rows.from("½ ρ v², ρ recommended in EN 1991-1-4", "N/m²", FOUR_FIGURES);
    rows.check("24 m/s, ρ 1.25", 360.0, velocity_pressure_n_m2(24.0, HALF_AIR_DENSITY_EN));
    // Terrain II, 10 m: kr 0.19, ln(10 / 0.05) = 5.298, cr 1.0067; Iv 0.1887; ce = (1 + 1.321) × 1.0134 = 2.352.
    let site = WindSite { basic_m_s: 24.0, terrain: Terrain::II, height_m: 10.0, orography: 1.0, return_years: 50.0 };
    rows.from("EN 1991-1-4 Figure 4.2: ce 2.35 at 10 m in terrain II, from memory", "kPa", 0.005);
    rows.check("Peak, 24 m/s, terrain II, 10 m", 2.35 * 0.36, site.peak().pressure_kpa);
    rows.from("EN 1991-1-4 4.2(2), worked by hand: √(1.0733 / 1.7804), √(1.3000 / 1.7804)", "", 0.001);
    rows.check("cprob of 2 years", 0.7764, probability_factor(2.0));
    rows.check("cprob of 5 years", 0.8545, probability_factor(5.0));
    rows.from("EN 1991-1-4 4.2(2)", "", FOUR_FIGURES).check("cprob of 50 years", 1.0, probability_factor(50.0));
}

fn combinations(rows: &mut Rows) {
    let limit_state = factors(Basis::LimitStateB1);
    rows.from("EN 1990 factors as in EN 12812, from memory", "kPa", FOUR_FIGURES);
    rows.check("1.35 × 10.5 + 1.5 × 1.5", 16.43, combined(limit_state, 10.5, 1.5));
    let loads = Loads { own: 2.0, concrete: 10.0, operations: 1.5, working_wind: 0.2, greatest_wind: 0.8 };
    rows.from("Stages of BS 5975 by hand: 2.0 + 0.8; 13.5 + 0.2; 12.0 + 0.8", "kPa", FOUR_FIGURES);
    let working = factors(Basis::WorkingLoad);
    for (combination, expected) in COMBINATIONS.iter().zip([2.8, 13.7, 12.8]) {
        rows.check(format!("Stage {:?}", combination.stage), expected, combination.sum(working, &loads));
    }
}

fn sliding(rows: &mut Rows) {
    rows.from("Coulomb", "kN", FOUR_FIGURES).check("500 kN at 0.1", 50.0, friction_kn(500.0, 0.1));
    rows.from("Coulomb", "", FOUR_FIGURES).check("2.5 % with a factor of 2", 0.05, coefficient_needed(0.025, 2.0));
    rows.from("EN 1337-2 form, from memory", "", FOUR_FIGURES).check("PTFE at 20 N/mm²", 0.04, ptfe_coefficient(20.0));
}
