//! A bay taken from where it was cast: jacks and rams by statics, worked by hand.

use falsewright_core::Design;
use falsewright_core::hold_points::hold_points;
use falsewright_core::results::{BayMove, Check, CheckKind, Severity};
use falsewright_core::scheme::{Basis, Corner, Id, Lift, Moving, Scheme, Section, Slide, read, write};
use falsewright_tests::simple;

/// A box of 4.8 m by 4.0 m with a cell of 4.0 m by 3.0 m: 7.2 m² of concrete, 25 kN/m³, bays of 10 m: 1800 kN.
fn boxed(moving: Moving) -> Scheme {
    let mut scheme = simple::box_scheme(4.0, 3.0, 0.0);
    scheme.concrete = simple::fluid();
    scheme.bays.length_m = 10.0;
    scheme.moving = Some(moving);
    scheme
}

/// A wall 1 m wide and 2 m high with a slab 1 m thick on it, which reaches `reach_m` to the right of the wall.
fn bracket(reach_m: f64, moving: Moving) -> Scheme {
    let corners = [(0.0, 0.0), (1.0, 0.0), (1.0, 2.0), (1.0 + reach_m, 2.0), (1.0 + reach_m, 3.0), (0.0, 3.0)];
    let outline = (1..).zip(corners).map(|(id, (x_m, z_m))| Corner { id: Id(id), x_m, z_m, cut: None }).collect();
    let mut scheme = simple::scheme(Section { outline, cells: vec![], joints: vec![] }, &[]);
    scheme.concrete = simple::fluid();
    scheme.bays.length_m = 10.0;
    scheme.moving = Some(moving);
    scheme
}

fn lift(lines: u32, edge_m: f64, jacks: u32) -> Moving {
    Moving { lift: Lift { lines, edge_m, jacks, ..Lift::default() }, ..Moving::default() }
}

fn moved(design: &Design) -> &BayMove {
    design.results.moved.as_ref().expect("it is moved")
}

fn check<'a>(design: &'a Design, member: &str, kind: CheckKind) -> &'a Check {
    let found = design.results.checks.iter().find(|check| check.member == member && check.check == kind);
    found.unwrap_or_else(|| panic!("{member} is not checked"))
}

fn near(value: f64, expected: f64) {
    assert!((value - expected).abs() < 1e-9 * expected.abs().max(1.0), "{value} {expected}");
}

#[test]
fn a_box_lies_evenly_on_its_jacks() {
    let moving = Moving { carried_kn: 180.0, ..lift(2, 0.6, 3) };
    let design = simple::solved(&boxed(moving));
    let moved = moved(&design);
    near(moved.weight_kn, 1980.0);
    let [left, right] = moved.lines.as_slice() else { panic!("two lines") };
    near(right.x_m - left.x_m, 4.8 - 1.2);
    near(left.force_kn, 330.0);
    near(right.force_kn, 330.0);
    // 100 mm by jacks of 150 mm.
    assert_eq!(moved.goes, 1);
    // 1.25 × 330 kN on 0.6 m × 0.6 m, by 1000 kN and 3000 kPa.
    near(check(&design, "J1 lifting jack", CheckKind::Jacking).ratio, 0.4125);
    near(check(&design, "J2 lifting jack", CheckKind::BasePressure).ratio, 412.5 / 0.36 / 3000.0);
    let text = design.quantities.iter().map(|line| line.item.to_string()).collect::<Vec<_>>().join("; ");
    assert!(text.contains("Lifting jack") && !text.contains("Sliding ram"), "{text}");
    let jacks = design.quantities.iter().find(|line| line.item.contains("Lifting jack")).expect("counted");
    near(jacks.count, 6.0);
}

#[test]
fn forces_of_jacks_balance_an_eccentric_bay() {
    // 2 m² with its centre at 0.5 m and 2 m² at 1 m, 25 kN/m³ on 10 m: 500 kN each.
    let design = simple::solved(&bracket(1.0, lift(2, 0.1, 1)));
    let moved = moved(&design);
    near(moved.weight_kn, 1000.0);
    near(moved.centre.x, 0.75);
    // Lever arms about the left line, at 0.1 m: 1000 × 0.65 = F × 0.8.
    near(moved.lines[1].force_kn, 812.5);
    near(moved.lines[0].force_kn, 187.5);

    // Three alike: those of a stiff beam on equal springs at 0.1, 0.5 and 0.9 m, 250 kNm about the middle.
    let design = simple::solved(&bracket(1.0, lift(3, 0.1, 2)));
    let forces: Vec<f64> = self::moved(&design).lines.iter().map(|line| 2.0 * line.force_kn).collect();
    near(forces.iter().sum(), 1000.0);
    near((forces[2] - forces[0]) * 0.4, 250.0);
    near(forces[1], 1000.0 / 3.0);
}

#[test]
fn a_bay_that_would_tip_off_its_jacks_is_told_of() {
    // 2 m² at 0.5 m and 3 m² at 1.5 m: the centre is at 1.1 m, beyond the line at 0.9 m.
    let design = simple::solved(&bracket(2.0, lift(2, 0.1, 1)));
    near(moved(&design).centre.x, 1.1);
    assert!(moved(&design).lines[0].force_kn < 0.0);
    let told = design.results.findings.iter().find(|finding| finding.text.starts_with("The bay would tip off J1"));
    assert_eq!(told.expect("told").severity, Severity::Fail);
    assert!(design.results.checks.iter().all(|check| check.member != "J1 lifting jack"));
}

#[test]
fn rams_push_against_friction_and_slope() {
    let slide = Slide { distance_m: 12.5, rise: 0.02, start_friction: 0.1, running_friction: 0.05, ..Slide::default() };
    let design = simple::solved(&boxed(Moving { slide: Some(slide), ..lift(2, 0.6, 3) }));
    let push = moved(&design).push.clone().expect("it is slid");
    // On a slope of 1 in 50 with its angle: W (μ cos + sin).
    let angle = 0.02_f64.atan();
    near(push.start_kn, 1800.0 * (0.1 * angle.cos() + angle.sin()));
    near(push.running_kn, 1800.0 * (0.05 * angle.cos() + angle.sin()));
    // 12.5 m by 0.9 m is 13.9, at 2 m an hour.
    assert_eq!(push.strokes, 14);
    near(push.hours, 6.25);
    near(check(&design, "R sliding ram", CheckKind::Jacking).ratio, push.start_kn / 2.0 / 500.0);

    let falling = Slide { rise: -0.08, ..slide };
    let design = simple::solved(&boxed(Moving { slide: Some(falling), ..lift(2, 0.6, 3) }));
    assert!(moved(&design).push.as_ref().is_some_and(|push| push.running_kn < 0.0));
    assert!(design.results.findings.iter().any(|finding| finding.text.contains("runs down its path by itself")));
}

#[test]
fn limit_states_factor_the_weight_and_the_working_load() {
    let mut scheme = boxed(lift(2, 0.6, 3));
    let ratio = |scheme: &Scheme, kind| check(&simple::solved(scheme), "J1 lifting jack", kind).ratio;
    let (force, pressure) = (ratio(&scheme, CheckKind::Jacking), ratio(&scheme, CheckKind::BasePressure));
    scheme.basis = Basis::LimitStateB1;
    // 1.35 on the weight; 1.65 / 1.1 on a working load and 1.35 on an allowable pressure.
    near(ratio(&scheme, CheckKind::Jacking), force * 1.35 / 1.5);
    near(ratio(&scheme, CheckKind::BasePressure), pressure);
}

#[test]
fn jacks_stand_under_concrete() {
    // Under the two legs of a portal: the middle one of three lines has nothing over it.
    let corners = [(0.0, 0.0), (0.5, 0.0), (0.5, 2.0), (3.5, 2.0), (3.5, 0.0), (4.0, 0.0), (4.0, 2.5), (0.0, 2.5)];
    let outline = (1..).zip(corners).map(|(id, (x_m, z_m))| Corner { id: Id(id), x_m, z_m, cut: None }).collect();
    let mut scheme = simple::scheme(Section { outline, cells: vec![], joints: vec![] }, &[]);
    let told = |scheme: &Scheme, text: &str| {
        let findings = simple::solved(scheme).results.findings;
        findings.iter().any(|finding| finding.severity == Severity::Fail && finding.text.contains(text))
    };
    scheme.moving = Some(lift(3, 0.25, 2));
    assert!(told(&scheme, "at x = 2.00 m is under no concrete"));
    scheme.moving = Some(lift(2, 0.25, 2));
    assert!(!told(&scheme, "is under no concrete"));
    scheme.moving = Some(lift(2, 2.0, 2));
    assert!(told(&scheme, "The outer lines of jacks meet"));
    assert!(simple::solved(&scheme).results.moved.is_none());
}

#[test]
fn its_hold_points_have_the_numbers_of_the_scheme() {
    let mut scheme = boxed(Moving { slide: Some(Slide::default()), ..lift(2, 0.6, 3) });
    let stages = |scheme: &Scheme| {
        let points = hold_points(scheme, &simple::solved(scheme));
        points.iter().flat_map(|stage| &stage.points).map(ToString::to_string).collect::<Vec<_>>().join("\n")
    };
    // Shutters or falsework make a scheme that has hold points.
    let face = simple::face(&scheme, falsewright_core::model::FaceKind::OuterWall, 900, -5.0);
    scheme.shutters = vec![simple::shutter(201, face, falsewright_core::scheme::Arrangement::UprightPrimaries)];
    let text = stages(&scheme);
    // 1.25 × 300 kN, and that on 0.36 m²; 0.1 × 1800 kN.
    for part in ["2 lines of 3 jacks", "each for 375 kN", "bear 1042 kPa", "push with 180 kN", "14 strokes"] {
        assert!(text.contains(part), "{part}: {text}");
    }
    scheme.moving = None;
    assert!(!stages(&scheme).contains("jacks"));
}

#[test]
fn what_moves_a_bay_is_kept_and_refused_like_all_else() {
    let scheme = boxed(Moving { slide: Some(Slide::default()), ..Moving::default() });
    assert_eq!(read(&write(&scheme)).expect("it is read"), scheme);
    let refused = |change: &dyn Fn(&mut Moving), what: &str| {
        let mut scheme = scheme.clone();
        change(scheme.moving.as_mut().expect("it is moved"));
        let errors = scheme.validate().expect_err(what);
        assert!(errors.iter().any(|error| error.to_string().contains(what)), "{what}: {errors:?}");
    };
    refused(&|moving| moving.lift.lines = 1, "a number of lines of jacks");
    refused(&|moving| moving.lift.jacks = 0, "a number of jacks in a line");
    refused(&|moving| moving.lift.jack_kn = f64::NAN, "a working load of a jack");
    refused(&|moving| moving.lift.travel_m = 0.0, "a travel of jacks");
    refused(&|moving| moving.lift.unevenness = 0.9, "an unevenness of jacks");
    let slide = |change: fn(&mut Slide)| move |moving: &mut Moving| moving.slide.iter_mut().for_each(change);
    refused(&slide(|slide| slide.rams = 0), "a number of rams");
    refused(&slide(|slide| slide.rise = 1.0), "a rise of a slide path");
    refused(&slide(|slide| slide.rate_m_h = 0.0), "a speed of sliding");
}
