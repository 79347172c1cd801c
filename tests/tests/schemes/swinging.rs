//! Hinged shutters: by hand, and against `geo`, a general library of plane geometry, for any hinge.

use falsewright_core::Design;
use falsewright_core::hold_points::hold_points;
use falsewright_core::model::{FaceKind, Pour};
use falsewright_core::results::{CheckKind, Severity, Swing};
use falsewright_core::scheme::{
    Arrangement, Corner, Direction, Hinge, Id, Joint, Lift, Moving, Scheme, Section, Walls,
};
use falsewright_tests::simple;
use geo::{Coord, Distance, Euclidean, Intersects, LineString, Point, Polygon, Rotate};
use proptest::prelude::*;

/// Walls of 2.8 m on a kicker of 0.2 m, with a shutter at each side of the cell, 4 m apart; the roof comes later.
fn scheme(hinge: Hinge) -> Scheme {
    let walls = Walls { wall_m: 0.4, roof_m: 0.5, base_m: 0.5, haunch_m: 0.0 };
    let mut scheme = simple::scheme(Section::box_cell(4.0, 3.0, walls), &[0.7, 3.5]);
    let face = |x_m| simple::face(&scheme, FaceKind::InnerWall, 900, x_m);
    let (left, right) = (face(-5.0), face(50.0));
    let shutter = |id, face| simple::shutter(id, face, Arrangement::UprightPrimaries);
    scheme.shutters = vec![shutter(201, left), shutter(202, right)];
    scheme.shutters[0].hinge = Some(hinge);
    scheme
}

fn swing(scheme: &Scheme) -> (Design, Swing) {
    let design = simple::solved(scheme);
    let swing = design.results.swings.first().expect("it is hinged").clone();
    (design, swing)
}

const HINGE: Hinge =
    Hinge { above_top_m: 0.2, off_m: 0.3, angle_deg: 10.0, drop_m: 0.0, gap_m: 0.03, falsework_out: false };

#[test]
fn the_gap_is_that_of_the_upper_edge_of_the_board() {
    let (design, swing) = swing(&scheme(HINGE));
    // The edge lies 0.3 m toward the concrete and 0.2 m below the hinge: it moves by 0.3·(1 − cos) + 0.2·sin.
    let turn = 10.0_f64.to_radians();
    let by_hand = 0.3 * (1.0 - turn.cos()) + 0.2 * turn.sin();
    assert!((swing.gap_m - by_hand).abs() < 1e-12, "{} {by_hand}", swing.gap_m);
    assert_eq!(swing.between.to_string(), "S1 facing and the concrete of P2");
    let check = design.results.checks.iter().find(|check| check.member == "S1 gap when swung").expect("checked");
    assert_eq!((check.check, check.demand), (CheckKind::Clearance, 0.03));
    assert!((check.ratio - 0.03 / by_hand).abs() < 1e-12);
    // Lowered, the edge stays beside the face, and the lower end, 0.04 m above the slab, meets it.
    let lowered = |drop_m| self::swing(&scheme(Hinge { drop_m, ..HINGE })).1;
    assert!((lowered(0.03).gap_m - by_hand).abs() < 1e-12);
    assert!(lowered(0.5).between.contains("meets the concrete of P1 when lowered by"), "{}", lowered(0.5).between);
}

#[test]
fn a_hinge_behind_the_board_dips_its_lower_edge_first() {
    let mut dipping = scheme(HINGE);
    // Down to the slab, which is there already.
    dipping.shutters[0].below_m = 0.2;
    let (design, swing) = swing(&dipping);
    // A corner 0.3 m and 3.2 m from the hinge, less the 1 mm that may overlap, is 1 mm above the slab.
    let (across, down) = (0.299, 3.2 - 0.001);
    let above = |turn: f64| 3.2 - across * turn.sin() - down * turn.cos();
    let (mut low, mut high) = (0.0, 0.02);
    assert!(above(low) > 0.0 && above(high) < 0.0);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if above(middle) > 0.0 { low = middle } else { high = middle }
    }
    let clear = swing.clear_deg.expect("it meets the slab");
    assert!((clear - low.to_degrees()).abs() < 1e-9, "{clear} {}", low.to_degrees());
    assert_eq!(swing.gap_m, 0.0);
    assert!(swing.between.starts_with("S1 facing meets the concrete of P1 after 0.2° of 10.0°"), "{}", swing.between);
    let told = design.results.findings.iter().find(|finding| finding.text.starts_with("S1 gap when swung is 0.000 m"));
    assert_eq!(told.expect("it is told").severity, Severity::Fail);
}

#[test]
fn what_is_longer_goes_off_the_concrete_and_sides_mirror_each_other() {
    for (above_top_m, upper_goes) in [(0.2, false), (-3.1, true)] {
        let mut both = scheme(Hinge { above_top_m, angle_deg: 5.0, ..HINGE });
        both.shutters[1].hinge = both.shutters[0].hinge;
        let swings = simple::solved(&both).results.swings;
        let [left, right] = swings.as_slice() else { panic!("two are hinged") };
        assert!((left.gap_m - right.gap_m).abs() < 1e-12 && left.gap_m > 0.0);
        // Of the board the upper and the lower corner at the concrete.
        let [low, high] = [left.outlines[0][0], left.outlines[0][1]];
        assert_eq!(high.x > low.x, upper_goes, "{low:?} {high:?}");
    }
}

/// Walls and roof in one pour, a shutter at the left of the cell, and falsework.
fn whole(direction: Direction) -> Scheme {
    let mut whole = simple::box_scheme(4.0, 3.0, 0.0);
    let soffit = simple::face(&whole, FaceKind::Soffit, 900, 2.4);
    let wall = simple::face(&whole, FaceKind::InnerWall, 900, -5.0);
    whole.falsework = vec![simple::falsework(210, soffit, direction, &[1.0, 2.4, 3.8])];
    whole.shutters = vec![simple::shutter(201, wall, Arrangement::UprightPrimaries)];
    whole
}

#[test]
fn falsework_of_the_pour_stands_in_the_way_until_it_is_out() {
    let hinge = Hinge { above_top_m: -0.1, off_m: 0.4, angle_deg: 20.0, ..HINGE };
    let mut whole = whole(Direction::Across);
    whole.shutters[0].hinge = Some(hinge);
    let (_, standing) = swing(&whole);
    assert_eq!(standing.between.to_string(), "S1 facing overlaps F1 facing as they stand");
    whole.shutters[0].hinge = Some(Hinge { falsework_out: true, ..hinge });
    let (design, out) = swing(&whole);
    let holds = hold_points(&whole, &design);
    assert!(
        holds.iter().flat_map(|hold| &hold.points).any(|point| point.starts_with("The ties of S1 and the falsework"))
    );
    assert!(!out.between.contains("F1") && !out.between.contains("L1"), "{}", out.between);
}

#[test]
fn concrete_that_is_lifted_meets_what_is_swung_over_it() {
    // Walls on a base that reaches 0.5 m beyond them.
    let corners = [(-0.5, 0.0), (5.3, 0.0), (5.3, 0.5), (4.8, 0.5), (4.8, 4.0), (0.0, 4.0), (0.0, 0.5), (-0.5, 0.5)];
    let walls = Walls { wall_m: 0.4, roof_m: 0.5, base_m: 0.5, haunch_m: 0.0 };
    let mut section = Section::box_cell(4.0, 3.0, walls);
    section.outline = (101..).zip(corners).map(|(id, (x_m, z_m))| Corner { id: Id(id), x_m, z_m, cut: None }).collect();
    let mut scheme = simple::scheme(section, &[0.7]);
    let face = simple::face(&scheme, FaceKind::OuterWall, 900, -5.0);
    scheme.shutters = vec![simple::shutter(201, face, Arrangement::UprightPrimaries)];
    scheme.shutters[0].hinge = Some(Hinge { above_top_m: 0.1, off_m: 0.0, angle_deg: 2.0, ..HINGE });
    let told = |scheme: &Scheme| {
        let findings = simple::solved(scheme).results.findings;
        findings.into_iter().map(|finding| finding.text.to_string()).find(|text| text.contains("has been lifted by"))
    };
    assert_eq!(told(&scheme), None);
    let lifted = |height_m| Some(Moving { lift: Lift { height_m, ..Lift::default() }, ..Moving::default() });
    // The lower edge of the board, 0.2 m above the base and 3.4 m below the hinge, comes up by 3.4·(1 − cos 2°), 2 mm; it
    // may overlap by 1 mm.
    scheme.moving = lifted(0.15);
    assert_eq!(told(&scheme), None);
    scheme.moving = lifted(0.25);
    let text = told(&scheme).expect("it meets the base");
    assert_eq!(text, "S1 facing meets the concrete of P1 when the bay has been lifted by 203 mm.");
    // Inside the cell the shutter rises with the bay.
    let inner = simple::face(&scheme, FaceKind::InnerWall, 900, -5.0);
    scheme.shutters[0].face = inner;
    assert_eq!(told(&scheme), None);
}

#[test]
fn falsework_that_runs_through_a_shutter_is_told() {
    let told = |scheme: &Scheme| {
        let findings = simple::solved(scheme).results.findings;
        findings.into_iter().map(|finding| finding.text.to_string()).find(|text| text.contains("run through"))
    };
    for (direction, members) in [(Direction::Across, "primaries"), (Direction::Along, "secondaries")] {
        let text = told(&whole(direction)).expect("it runs through the shutter");
        assert!(text.starts_with(&format!("The {members} of F1")) && text.ends_with("run through S1."), "{text}");
    }
    // The wall is concreted before the roof, and its shutter is gone by then.
    let mut walls_first = whole(Direction::Across);
    walls_first.section.joints.push(Joint { id: Id(901), z_m: 3.4 });
    walls_first.falsework[0].soffit = simple::face(&walls_first, FaceKind::Soffit, 901, 2.4);
    assert_eq!(told(&walls_first), None);
}

fn polygon(points: impl IntoIterator<Item = falsewright_core::geometry::Point>) -> Polygon {
    Polygon::new(points.into_iter().map(|at| Coord { x: at.x, y: at.z }).collect::<LineString>(), Vec::new())
}

fn concrete(pour: &Pour) -> impl Iterator<Item = Polygon> + '_ {
    pour.regions.iter().map(|rings| {
        let ring = |ring: &Vec<_>| polygon(ring.iter().copied()).into_inner().0;
        Polygon::new(ring(&rings[0]), rings[1..].iter().map(ring).collect())
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, ..ProptestConfig::default() })]
    #[test]
    fn as_a_library_of_geometry_finds_it(
        above_top_m in -4.0..1.0_f64, off_m in 0.0..2.0_f64, angle_deg in 0.5..120.0_f64,
        below_m in 0.0..0.19_f64, battered in any::<bool>(),
    ) {
        let mut scheme = scheme(Hinge { above_top_m, off_m, angle_deg, ..HINGE });
        scheme.shutters[0].below_m = below_m;
        if battered {
            for corner in scheme.section.cells[0].corners.iter_mut().filter(|corner| corner.z_m > 1.0) {
                corner.x_m += if corner.x_m < 2.4 { -0.2 } else { 0.2 };
            }
        }
        let (design, swing) = swing(&scheme);
        let model = &design.model;
        let of = |id: u32, inset| -> Vec<Polygon> {
            let parts = model.parts.iter().filter(|part| part.owner == Id(id));
            parts.map(|part| polygon(part.solid.outline(inset))).collect()
        };
        let mut stills: Vec<Polygon> = model.pours[..2].iter().flat_map(concrete).chain(of(202, 0.0)).collect();
        let level = scheme.ground.level_m;
        let ground = [[-100.0, level], [100.0, level], [100.0, level - 1e-9], [-100.0, level - 1e-9]];
        stills.push(polygon(ground.map(|[x, z]| falsewright_core::geometry::Point::new(x, z))));
        // The shutter is at the left of the cell: what is below its hinge swings to the right.
        let shutter = &model.shutters[0];
        let (hinge_x, hinge_z) = (shutter.face.x_at(shutter.top_m + above_top_m) + off_m, shutter.top_m + above_top_m);
        let about = Point::new(hinge_x, hinge_z);
        let way = if 2.0 * hinge_z >= shutter.bottom_m + shutter.top_m { 1.0 } else { -1.0 };
        let meets = |turned: f64| {
            let moved: Vec<_> = of(201, 1e-3).iter().map(|part| part.rotate_around_point(way * turned, about)).collect();
            moved.iter().any(|part| stills.iter().any(|still| still.intersects(part)))
        };
        let clear = swing.clear_deg.unwrap_or(360.0);
        for part in [0.02, 0.2, 0.4, 0.6, 0.8, 0.95, 0.999] {
            prop_assert!(!meets(clear * part), "at {part} of {clear}");
        }
        if clear > 1e-6 {
            prop_assert!(!meets(clear * (1.0 - 1e-6)), "before {clear}");
        }
        if swing.clear_deg.is_some() {
            prop_assert!(meets(clear + 1e-4), "after {clear}");
        }
        if clear >= angle_deg {
            let moved: Vec<_> = of(201, 0.0).iter().map(|part| part.rotate_around_point(way * angle_deg, about)).collect();
            let gaps = moved.iter().flat_map(|part| stills.iter().map(move |still| Euclidean.distance(part, still)));
            let gap = gaps.fold(f64::INFINITY, f64::min);
            // What is within what only touches is no gap for the library.
            prop_assert!((gap - swing.gap_m).abs() < 1e-9 || (gap == 0.0 && swing.gap_m < 1e-3), "{gap} {}", swing.gap_m);
        } else {
            prop_assert_eq!(swing.gap_m, 0.0);
        }
    }
}
