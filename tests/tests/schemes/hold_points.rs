//! Hold points of the demo and of small schemes: their numbers are those that the user gave and the results tell.

use falsewright_core::catalogue::Catalogue;
use falsewright_core::hold_points::{HoldPoint, hold_points};
use falsewright_core::results::StruckForm;
use falsewright_core::scheme::{Bearing, Delivery, HeldBy, PressureMethod, Scheme, heron_lane};
use falsewright_core::{Design, design};
use falsewright_tests::simple::box_scheme;

fn told(scheme: &Scheme) -> (Design, Vec<HoldPoint>) {
    let design = design(scheme, &Catalogue::generic()).expect("a scheme that can be worked out");
    let points = hold_points(scheme, &design);
    (design, points)
}

fn at<'a>(all: &'a [HoldPoint], stage: &str) -> &'a HoldPoint {
    all.iter().find(|point| point.stage == stage).unwrap_or_else(|| panic!("no stage {stage:?}"))
}

fn says(point: &HoldPoint, words: &str) -> bool {
    point.points.iter().any(|text| text.contains(words))
}

#[test]
fn follow_the_work_pour_by_pour() {
    let (_, all) = told(&heron_lane().expect("the demo is readable"));
    let stages: Vec<String> = all.iter().map(|point| point.stage.to_string()).collect();
    assert_eq!(
        stages,
        [
            "Before anything is put up",
            "Before P1 is concreted",
            "While P1 is concreted",
            "Before the forms of P1 go",
            "Before P2 is concreted",
            "While P2 is concreted",
            "Before the forms of P2 go",
        ]
    );
    assert!(all.iter().all(|point| !point.points.is_empty()));
}

#[test]
fn count_the_ties_and_props_that_the_bill_counts() {
    let (design, all) = told(&heron_lane().expect("the demo is readable"));
    for pour in &design.model.pours {
        let before = at(&all, &format!("Before {} is concreted", pour.mark));
        let rows = design.model.ties.iter();
        let rows: Vec<_> = rows.filter(|row| design.model.shutter(row.shutter).unwrap().pour == pour.id).collect();
        for (props, words) in [(false, "are in, their nuts"), (true, "stand, held at both ends")] {
            let of_kind = || rows.iter().filter(|row| row.item.leg().is_some() == props);
            let billed: f64 = of_kind()
                .map(|row| {
                    let lines = design
                        .quantities
                        .iter()
                        .filter(|line| line.mark == row.mark && line.item == row.item.name.as_str());
                    lines.map(|line| line.count).sum::<f64>()
                })
                .sum();
            assert!(billed > 0.0, "{} has none", pour.mark);
            assert!(says(before, &format!("all {billed} {words}")), "{billed} {words}: {before:#?}");
            assert!(of_kind().all(|row| says(before, &row.mark)));
        }
    }
}

#[test]
fn ask_for_what_was_assumed() {
    let scheme = heron_lane().expect("the demo is readable");
    let (design, all) = told(&scheme);
    let before = at(&all, "Before P2 is concreted");
    let opening = &scheme.openings[0];
    let (wide, high) = (opening.width_m * 1e3, opening.height_m * 1e3);
    assert!(says(before, &format!("at least {wide} mm wide and {high} mm high")));
    let axis = scheme.loads.leg_eccentricity_m * 1e3;
    assert!(says(before, &format!("within {axis} mm of its axis")));
    assert!(says(at(&all, "While P2 is concreted"), "At most 15.0 m³/h is placed, at 12 °C or warmer"));
    let after = at(&all, "Before the forms of P2 go");
    for form in [StruckForm::Walls, StruckForm::Soffits] {
        let time = design.results.striking.iter().find(|time| time.pour == "P2" && time.form == form).unwrap();
        let hours = time.hours.unwrap().ceil();
        let words = format!("have {:.1} N/mm², reckoned to take {hours} hours", time.required_mpa);
        assert!(says(after, &words), "{words}");
    }
    assert!(says(after, "Nobody passes below"));
}

#[test]
fn change_with_the_scheme() {
    let mut scheme = heron_lane().expect("the demo is readable");
    scheme.concrete.delivery = Delivery::Rise { rate_m_h: 1.239 };
    scheme.concrete.temperature_c = 12.2;
    scheme.striking = None;
    scheme.falsework[0].bearing = Bearing::Ground;
    scheme.ground.allowable_kpa = 180.0;
    let (_, all) = told(&scheme);
    // A rate is rounded down, a temperature up.
    assert!(says(at(&all, "While P2 is concreted"), "At most 1.23 m/h is placed, at 13 °C or warmer"));
    assert!(says(at(&all, "Before the forms of P2 go"), "none is given here"));
    assert!(says(at(&all, "Before P2 is concreted"), "is shown to bear 180 kPa"));

    scheme.concrete.method = PressureMethod::FullHead;
    let (_, all) = told(&scheme);
    assert!(!says(at(&all, "While P2 is concreted"), "At most"), "no rate presses more than the full head");
}

#[test]
fn what_holds_the_props_is_seen() {
    let mut scheme = heron_lane().expect("the demo is readable");
    for (by, words) in [
        (HeldBy::Thrust, "pushes against bears it"),
        (HeldBy::Kentledge { weight_kn: 20.04, friction: 0.3 }, "is held by a block of 20.1 kN or more"),
    ] {
        let props = scheme.ties.iter_mut().filter_map(|row| row.held.as_mut());
        let count = props.map(|end| end.by = by).count();
        assert!(count > 0, "no prop of the demo is held");
        let told = told(&scheme).1;
        let said = told.iter().flat_map(|point| &point.points).filter(|text| text.contains(words)).count();
        assert_eq!(said, count, "{words}");
    }
}

#[test]
fn what_fails_holds_the_work_up() {
    let mut scheme = heron_lane().expect("the demo is readable");
    let sound = told(&scheme).1;
    assert!(!says(&sound[0], "must not be built so"));
    scheme.openings[0].height_m += 0.5;
    assert!(says(&told(&scheme).1[0], "must not be built so"));
}

#[test]
fn there_are_none_without_equipment() {
    assert_eq!(told(&box_scheme(4.0, 4.0, 0.0)).1, []);
}
