//! Braced bents before, during and after concreting, in wind and with what else pushes them, by statics.

use super::drawn::{self, drawn};
use falsewright_core::Design;
use falsewright_core::actions::wind::Terrain;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::model::FaceKind;
use falsewright_core::results::{CheckKind, Severity};
use falsewright_core::scheme::{Basis, Direction, Id, Joint, Lateral, Loads, Scheme, Section, SiteWind, read, write};
use falsewright_tests::assert_close;
use falsewright_tests::simple::{box_scheme, check, demand, face, falsework, leg_kn, solved, stiff_leg};
use proptest::prelude::*;
use std::f64::consts::PI;

/// kN per kg.
const G: f64 = 9.81e-3;
/// From a base plate 10 mm thick on the floor at 0.5 m to the primaries under the soffit at 4.5 m: board 17.6 mm and
/// two beams of 0.2 m, which are the edge of the formwork.
const LEG_M: f64 = 4.5 - EDGE_M - 0.51;
const EDGE_M: f64 = 0.0176 + 0.4;
const COEFFICIENT: f64 = 1.3;

/// A box with a cell 4 m square, its legs in two bents a metre of bay each, braced by a diagonal in every gap, from the
/// left foot to the right head. The least part of the vertical load is nought, so that 1 % of it acts beside the rest.
fn braced(lines_m: &[f64], leg: &str) -> Scheme {
    let mut scheme = box_scheme(4.0, 4.0, 0.0);
    scheme.bays.length_m = 2.0;
    let soffit = face(&scheme, FaceKind::Soffit, 900, 2.4);
    scheme.falsework = vec![falsework(50, soffit, Direction::Across, lines_m)];
    scheme.falsework[0].lateral = Lateral::Braced;
    scheme.falsework[0].leg = leg.into();
    let gaps = lines_m.len() - 1;
    scheme.falsework[0].leg_lines[..gaps].iter_mut().for_each(|line| line.braced = true);
    scheme.items = vec![stiff_leg()];
    scheme.loads.horizontal_fraction = 0.0;
    scheme
}

fn windy(mut scheme: Scheme, basic_speed_m_s: f64) -> Scheme {
    let (terrain, stands_days) = (Some(Terrain::II), Some(90.0));
    scheme.loads.wind = Some(SiteWind { terrain, stands_days, ..SiteWind::gust(basic_speed_m_s) });
    scheme
}

/// Of a return period of five years at the top of the roof, 5 m above the ground, in terrain II: EN 1991-1-4 4.2 to 4.5
/// with ln(5 / 0.05) = 4.605 and cprob = √(1.3000 / 1.7804).
fn peak_kpa(basic_m_s: f64) -> f64 {
    let mean = 0.19 * 4.60517 * (1.3000f64 / 1.7804).sqrt() * basic_m_s;
    (1.0 + 7.0 / 4.60517) * 0.625 * mean * mean * 1e-3
}

fn diagonal_m(run_m: f64) -> f64 {
    LEG_M.hypot(run_m)
}

/// Own weight of a bent: eleven secondaries of 5 kg/m on its metre, 4 m of HE 200 B, one diagonal, and its legs.
fn own_kn(run_m: f64, legs_kn: f64) -> f64 {
    G * (11.0 * 5.0 + 4.0 * 78.08e-4 * 7850.0 + diagonal_m(run_m) * 4.370 + 2.4) + legs_kn
}

/// Two legs of a tube, of LEG60 or of the stiff one.
fn two_legs_kn(diameter_m: f64, inside_m: f64, ends_kg: f64) -> f64 {
    2.0 * G * (7850.0 * PI / 4.0 * (diameter_m * diameter_m - inside_m * inside_m) * LEG_M + ends_kg)
}

fn two_stiff_kn() -> f64 {
    two_legs_kn(0.9, 0.02, 10.0)
}

/// By how much horizontal loads grow, 1 / (1 − 1/α), from the critical load factor that is reported.
fn second_order(design: &Design) -> f64 {
    let critical = check(design, "F1 bent", CheckKind::Stability).resistance;
    if critical < 10.0 { 1.0 / (1.0 - 1.0 / critical) } else { 1.0 }
}

fn says(design: &Design, words: &[&str]) -> bool {
    design.results.findings.iter().any(|finding| words.iter().all(|word| finding.text.contains(word)))
}

/// The greatest wind after concreting: on the edge of the formwork over a metre of bay, half of it on each leg and on the
/// diagonal comes to the heads, with 1 % of concrete, formwork and own weight.
#[test]
fn greatest_wind_goes_to_the_diagonal() {
    let design = solved(&windy(braced(&[1.2, 3.6], "STIFF_LEG"), 24.0));
    let vertical = 4.0 * (12.5 + 0.5) + own_kn(2.4, two_stiff_kn());
    let area = EDGE_M + (2.0 * 0.9 + 0.0483) * LEG_M / 2.0;
    let force = (0.01 * vertical + peak_kpa(24.0) * COEFFICIENT * area) * second_order(&design);
    let diagonal = check(&design, "F1 diagonal", CheckKind::Coupler);
    assert_eq!(diagonal.case, "P2, after concreting, full");
    assert_close("diagonal", diagonal.demand, force * diagonal_m(2.4) / 2.4, 1e-3);
}

/// A gust that is given as such presses by 0.613 V², and never less than the wind in which work goes on.
#[test]
fn gusts_press_by_their_speed() {
    assert_close("gust", SiteWind::gust(30.0).greatest_kpa(5.0), 0.5517, 1e-6);
    assert_close("working", SiteWind::gust(30.0).working_kpa(), 0.198_612, 1e-6);
    assert_close("calm", SiteWind::gust(5.0).greatest_kpa(5.0), 0.198_612, 1e-6);
    let in_country = SiteWind { terrain: Some(Terrain::II), stands_days: Some(90.0), ..SiteWind::gust(24.0) };
    assert_close("peak", in_country.greatest_kpa(5.0), peak_kpa(24.0), 1e-4);
}

/// Walls cast up to 2.5 m give shelter below: the upper 1.58 m of a leg hand (L − c / 2) / L of their wind to the head.
#[test]
fn cast_walls_shelter_what_is_below() {
    let mut scheme = windy(braced(&[1.2, 3.6], "STIFF_LEG"), 24.0);
    scheme.section.joints = vec![Joint { id: Id(900), z_m: 2.5 }];
    let design = solved(&scheme);
    let vertical = 4.0 * (12.5 + 0.5) + own_kn(2.4, two_stiff_kn());
    let exposed = LEG_M + 0.51 - 2.5;
    let area = EDGE_M + 2.0 * 0.9 * exposed * (LEG_M - exposed / 2.0) / LEG_M + 0.0483 * exposed / 2.0;
    let force = (0.01 * vertical + peak_kpa(24.0) * COEFFICIENT * area) * second_order(&design);
    assert_close("diagonal", demand(&design, "F1 diagonal", CheckKind::Coupler), force * diagonal_m(2.4) / 2.4, 1e-3);
}

/// Before concreting the least weight stands against the greatest wind: moments about the base of a leg 1.9 m from the
/// middle, with 1.2 on all that tips, the primary's 0.1 m beyond the leg among it. Friction of 0.5 holds the bases.
#[test]
fn overturning_and_sliding_before_concreting() {
    let design = solved(&windy(braced(&[0.5, 4.3], "LEG60"), 40.0));
    let vertical = 4.0 * 0.5 + own_kn(3.8, two_legs_kn(0.0603, 0.0523, 11.0));
    let wind = peak_kpa(40.0) * COEFFICIENT;
    let on_legs = wind * (2.0 * 0.0603 + 0.0483) * LEG_M;
    let (on_edge, lean) = (wind * EDGE_M, 0.01 * vertical);
    let beyond = 78.08e-4 * 7850.0 * G * 0.1 * 0.05;
    let moment = on_edge * (LEG_M + EDGE_M / 2.0) + on_legs * LEG_M / 2.0 + lean * LEG_M;
    let factor = second_order(&design);

    let overturning = check(&design, "F1 bent", CheckKind::Overturning);
    assert_eq!(overturning.case, "P2, before concreting, empty");
    assert_close("tipping", overturning.demand, 1.2 * (moment * factor + beyond), 1e-3);
    assert_close("holding", overturning.resistance, vertical * 1.9 + beyond, 1e-3);
    let sliding = check(&design, "F1 bent", CheckKind::Sliding);
    assert_eq!(sliding.case, overturning.case);
    assert_close("sliding", sliding.demand, 1.2 * (on_edge + on_legs + lean) * factor, 1e-3);
    assert_close("friction", sliding.resistance, 0.5 * vertical, 1e-3);
}

/// Two lines a metre apart in a storm: nothing holds the empty bent once the windward leg lifts. The calm one stands.
#[test]
fn a_narrow_bent_tips_in_a_storm() {
    let tips = ["tips over before concreting", "wind"];
    let narrow = braced(&[1.9, 2.9], "LEG60");
    assert!(says(&solved(&windy(narrow.clone(), 60.0)), &tips));
    assert!(!says(&solved(&windy(narrow.clone(), 10.0)), &tips));
    let storm = solved(&windy(narrow, 60.0));
    assert!(check(&storm, "F1 bent", CheckKind::Overturning).ratio > 1.0);
}

/// Four lines in two braced pairs: what lifts is told with what would hold it down, more in more wind.
#[test]
fn lifting_legs_tell_what_holds_them_down() {
    let hold_down = |basic_m_s: f64| {
        let mut scheme = windy(braced(&[0.6, 1.2, 3.6, 4.2], "LEG60"), basic_m_s);
        scheme.falsework[0].leg_lines[1].braced = false;
        let findings = solved(&scheme).results.findings;
        let told = findings.into_iter().filter(|finding| finding.text.contains("before concreting of P2"));
        let amounts = told.filter_map(|finding| {
            let text = finding.text.to_string();
            let (_, after) = text.split_once("; ")?;
            after.split_once(" kN would hold it down")?.0.parse::<f64>().ok()
        });
        amounts.fold(0.0, f64::max)
    };
    assert_eq!(hold_down(5.0), 0.0);
    let [less, more] = [26.0, 30.0].map(hold_down);
    assert!(less > 0.0 && more > less, "{less} {more}");
}

/// A pump line pushes at the soffit: all of it through the diagonal, and by its moment about the bases into the leg.
#[test]
fn plant_pushes_at_the_soffit() {
    let calm = braced(&[1.2, 3.6], "STIFF_LEG");
    let mut pumped = calm.clone();
    pumped.loads.plant_kn = Some(5.0);
    let [calm, pumped] = [calm, pumped].map(|scheme| solved(&scheme));
    let force = 5.0 * second_order(&pumped);
    let [before, after] = [&calm, &pumped].map(|design| demand(design, "F1 diagonal", CheckKind::Coupler));
    assert_close("diagonal", after - before, force * diagonal_m(2.4) / 2.4, 1e-3);
    let leg = leg_kn(&pumped, "L2.1") - leg_kn(&calm, "L2.1");
    assert_close("leg", leg, force * (LEG_M + EDGE_M) / 2.4, 1e-3);
}

/// On limit states `Q3` of 1 % and a sway of 0.01 act beside the rest, on factored loads with a heap of 1.25 kPa on 3 m.
#[test]
fn limit_states_lean_by_two_percent() {
    let mut scheme = braced(&[1.2, 3.6], "STIFF_LEG");
    scheme.basis = Basis::LimitStateB1;
    let design = solved(&scheme);
    let permanent = 4.0 * (12.5 + 0.5) + own_kn(2.4, two_stiff_kn());
    let vertical = 1.35 * permanent + 1.5 * (4.0 * 1.5 + 3.0 * 1.25);
    let force = 0.02 * vertical * second_order(&design);
    assert_close("diagonal", demand(&design, "F1 diagonal", CheckKind::Coupler), force * diagonal_m(2.4) / 2.4, 1e-3);
}

/// A primary between two diagonals that hold its heads: α ΔT L / (L / EA + 2 / k), k the sideways stiffness of a diagonal
/// with its couplers.
#[test]
fn warmth_pushes_diagonals_apart() {
    let cold = braced(&[0.9, 2.4, 3.9], "STIFF_LEG");
    let mut warm = cold.clone();
    warm.loads.temperature_range_k = Some(20.0);
    let tube = Catalogue::generic();
    let tube = tube.iter().find(|item| item.code == "TUBE48B").and_then(|item| item.brace()).expect("a tube");
    let length = diagonal_m(1.5);
    let area = PI / 4.0 * (0.0483f64 * 0.0483 - 0.0403 * 0.0403);
    let softness = length / (210e6 * area) + 2.0 / tube.coupler_stiffness_kn_m;
    let cosine = 1.5 / length;
    let force = 12e-6 * 20.0 * 1.5 / (1.5 / (210e6 * 78.08e-4) + 2.0 * softness / (cosine * cosine));
    let [before, after] = [cold, warm].map(|scheme| demand(&solved(&scheme), "F1 diagonal", CheckKind::Coupler));
    assert_close("diagonal", after - before, force / cosine, 2e-3);
}

/// A haunch of 0.3 m at the foot of a trough, its middle 1.85 m below the top: 46.25 kPa on 0.3 m up and as much sideways;
/// 1.2 × 13.875 less 0.5 kPa on its 0.424 m is 16.44 kN, which is told rounded up.
#[test]
fn a_slope_that_faces_up_is_lifted() {
    let scheme = Scheme::blank(Section::u_trough(4.0, 2.0, 0.3, 0.4, 0.3));
    let words = ["lifts the form by 13.9 kN", "sideways by 13.9 kN", "16.5 kN have to hold it down"];
    assert!(says(&solved(&scheme), &words), "{:#?}", solved(&scheme).results.findings);
}

#[test]
fn wind_that_is_not_given_is_told_of() {
    let calm = braced(&[1.2, 3.6], "LEG60");
    let missing = |scheme: &Scheme| {
        let findings = solved(scheme).results.findings;
        findings.iter().any(|finding| finding.severity == Severity::Warn && finding.text.contains("wind is not given"))
    };
    assert!(missing(&calm));
    assert!(!missing(&windy(calm, 22.0)));
}

/// Files from before these loads read and are written as they were; those with them come back.
#[test]
fn loads_in_files() {
    let old = braced(&[1.2, 3.6], "LEG60");
    let text = write(&old);
    for field in ["wind", "plant_kn", "temperature_range_k"] {
        assert!(!text.contains(field), "{field}");
    }
    assert_eq!(write(&read(&text).expect("an old file")), text);
    for terrain in [Terrain::Sea, Terrain::I, Terrain::II, Terrain::III, Terrain::IV] {
        let mut new = windy(old.clone(), 22.0);
        new.loads.wind =
            new.loads.wind.map(|wind| SiteWind { terrain: Some(terrain), force_coefficient: Some(1.2), ..wind });
        (new.loads.plant_kn, new.loads.temperature_range_k) = (Some(3.0), Some(15.0));
        assert_eq!(read(&write(&new)).expect("a new file"), new);
    }
    assert!(write(&windy(old.clone(), 22.0)).contains("\"terrain\": \"ii\""));
    let gust = Scheme { loads: Loads { wind: Some(SiteWind::gust(22.0)), ..old.loads }, ..old };
    assert!(!write(&gust).contains("terrain"));
}

proptest! {
    #![proptest_config(drawn::config(150))]

    /// What wind, slopes, plant and lean bring comes to bases and walls.
    #[test]
    fn sideways_loads_are_accounted_for(drawn in drawn(), basic_m_s in 5.0..40.0f64, plant_kn in 0.0..10.0f64) {
        let mut scheme = windy(drawn.scheme(), basic_m_s);
        (scheme.loads.plant_kn, scheme.loads.temperature_range_k) = (Some(plant_kn), Some(20.0));
        let design = solved(&scheme);
        for entry in &design.results.ledger {
            prop_assert!(entry.difference < 1e-6, "{:#?}\n{:#?}", entry, design.results.findings);
        }
        let told = ["free to", "cannot be solved", "fewer than two", "tips over"];
        if !told.iter().any(|words| says(&design, &[words])) {
            let sideways = design.results.ledger.iter().filter(|entry| entry.case.starts_with("sideways"));
            prop_assert_eq!(sideways.count(), 3 * design.model.falsework.len());
        }
    }

    /// More wind never makes a bent stand better, nor, while no leg lifts, a member bear less.
    #[test]
    fn more_wind_is_never_safer(drawn in drawn(), basic_m_s in 2.0..35.0f64, more in 1.0..1.5f64) {
        let scheme = drawn.scheme();
        let (less, harder) = (solved(&windy(scheme.clone(), basic_m_s)), solved(&windy(scheme, basic_m_s * more)));
        let lifts = says(&harder, &["lifts off"]) || says(&harder, &["tips over"]);
        for check in &less.results.checks {
            let stands = matches!(check.check, CheckKind::Overturning | CheckKind::Sliding);
            let same = |other: &&falsewright_core::results::Check| {
                other.check == check.check && other.owner == check.owner && other.member == check.member
            };
            if (stands || !lifts) && check.check != CheckKind::Clearance {
                let after = harder.results.checks.iter().find(same).map_or(0.0, |check| check.ratio);
                prop_assert!(after >= check.ratio * (1.0 - 1e-9), "{:#?} {}", check, after);
            }
        }
    }
}
