//! Sections against areas, widths and faces worked out by hand, and properties that hold for every section.

use falsewright_core::geometry::{Point, Side};
use falsewright_core::layout::concrete::{faces, pours};
use falsewright_core::model::{Face, FaceKind, Pour};
use falsewright_core::scheme::{Corner, Cut, FaceRef, Id, Joint, Scheme, Section, Walls};
use falsewright_tests::assert_close;
use proptest::prelude::*;

const WALLS: Walls = Walls { wall_m: 0.4, roof_m: 0.45, base_m: 0.5, haunch_m: 0.25 };

fn a_box() -> Section {
    Section::box_cell(6.4, 3.5, WALLS)
}

fn with_joints(mut section: Section, levels: &[f64]) -> Section {
    section.joints = (100..).zip(levels).map(|(id, &z_m)| Joint { id: Id(id), z_m }).collect();
    section
}

fn count(faces: &[Face], kind: FaceKind) -> usize {
    faces.iter().filter(|face| face.kind == kind).count()
}

fn area(pours: &[Pour]) -> f64 {
    pours.iter().map(|pour| pour.area_m2).sum()
}

fn all_sections() -> Vec<(&'static str, Section)> {
    vec![
        ("box", a_box()),
        ("twin box", Section::twin_box(4.0, 3.0, WALLS, 0.3)),
        ("trough", Section::u_trough(5.0, 3.0, 0.4, 0.5, 0.2)),
        ("portal", Section::portal(6.0, 4.0, 0.5, 0.6, 0.3)),
    ]
}

#[test]
fn templates_are_valid_schemes() {
    for (name, section) in all_sections() {
        assert_eq!(Scheme::blank(section).validate(), Ok(()), "{name}");
    }
}

#[test]
fn box_area_is_outer_less_inner_and_haunches() {
    // Outer 7.2 × 4.45, cell 6.4 × 3.5, two haunches of 0.25 × 0.25 / 2 put back.
    let expected = 7.2 * 4.45 - 6.4 * 3.5 + 2.0 * 0.25 * 0.25 / 2.0;
    let whole = pours(&a_box(), 10.0, 25.0);
    assert_eq!(whole.len(), 1);
    assert!((whole[0].area_m2 - expected).abs() < 1e-9);
    assert_close("volume", whole[0].volume_m3, expected * 10.0, 1e-12);
    assert_close("weight", whole[0].weight_kn, expected * 250.0, 1e-12);
    assert_close("centroid x", whole[0].centroid.x, 3.6, 1e-12);
    // Moments about the underside: outer, cell, haunches with their centres a third of the leg below the soffit.
    let moment = 7.2 * 4.45 * 2.225 - 6.4 * 3.5 * 2.25 + 0.0625 * (4.0 - 0.25 / 3.0);
    assert_close("centroid z", whole[0].centroid.z, moment / expected, 1e-12);
}

#[test]
fn areas_of_the_other_templates() {
    // Twin: outer 9.1 × 3.95 less two cells 4 × 3, four haunches of 0.25 × 0.25 / 2. Then base and two walls; roof and
    // two walls.
    let expected = [
        9.1 * 3.95 - 2.0 * 12.0 + 4.0 * 0.03125,
        5.8 * 0.5 + 2.0 * 0.4 * 3.0 + 2.0 * 0.02,
        7.0 * 0.6 + 2.0 * 0.5 * 4.0 + 2.0 * 0.045,
    ];
    for ((name, section), expected) in all_sections().into_iter().skip(1).zip(expected) {
        assert!((area(&pours(&section, 1.0, 1.0)) - expected).abs() < 1e-9, "{name}");
    }
}

#[test]
fn joints_cut_the_box_into_base_and_rest() {
    // Kickers of 150 mm on the base.
    let cut = pours(&with_joints(a_box(), &[0.65]), 10.0, 25.0);
    let marks: Vec<_> = cut.iter().map(|pour| (pour.mark.as_str(), pour.id, pour.bottom_m, pour.top_m)).collect();
    assert_eq!(marks, [("P1", FaceRef::LOWEST, 0.0, 0.65), ("P2", Id(100), 0.65, 4.45)]);
    assert!((cut[0].area_m2 - (7.2 * 0.5 + 2.0 * 0.4 * 0.15)).abs() < 1e-9);
    assert!((area(&cut) - pours(&a_box(), 10.0, 25.0)[0].area_m2).abs() < 1e-9);
    assert_eq!([cut[0].regions.len(), cut[1].regions.len()], [1, 1]);
}

#[test]
fn width_jumps_at_floor_and_grows_at_haunches() {
    let boundary = a_box().boundary();
    let width = |z, side| boundary.width_at(z, side);
    assert!((width(0.5, Side::Before) - 7.2).abs() < 1e-12);
    assert!((width(0.5, Side::After) - 0.8).abs() < 1e-12);
    // Half way up the haunches each adds half its leg.
    assert!((width(3.875, Side::After) - 1.05).abs() < 1e-12);
    assert!((width(4.0, Side::Before) - 1.3).abs() < 1e-12);
    assert!((width(4.0, Side::After) - 7.2).abs() < 1e-12);
    assert_eq!(boundary.levels(0.0, 4.45), vec![0.5, 3.75, 4.0]);
}

#[test]
fn thickness_above_a_haunch_and_floor_below_it() {
    let boundary = a_box().boundary();
    // 100 mm out from the wall the haunch lies 150 mm under the soffit.
    let depth = boundary.depth_above(Point::new(0.5, 3.85), 4.45, Side::After);
    assert!((depth - 0.6).abs() < 1e-12);
    assert_eq!(boundary.floor_below(Point::new(0.5, 3.85), Side::After), Some(0.5));
    let portal = Section::portal(6.0, 4.0, 0.5, 0.6, 0.3).boundary();
    assert_eq!(portal.floor_below(Point::new(3.0, 4.0), Side::After), None);
}

#[test]
fn faces_of_the_box_with_kickers() {
    let faces = faces(&with_joints(a_box(), &[0.65]), 0.0);
    assert_eq!(count(&faces, FaceKind::OuterWall), 4);
    assert_eq!(count(&faces, FaceKind::InnerWall), 4);
    assert_eq!(count(&faces, FaceKind::Soffit), 1);
    assert_eq!(count(&faces, FaceKind::SlopeUnder), 2);
    assert_eq!(count(&faces, FaceKind::SlopeOver), 0);
    // Floor, two kicker tops, roof.
    assert_eq!(count(&faces, FaceKind::FreeTop), 4);
    // Base on blinding, two walls on kickers.
    assert_eq!(count(&faces, FaceKind::CastAgainst), 3);
    let soffit = faces.iter().find(|face| face.kind == FaceKind::Soffit).unwrap();
    assert_eq!(soffit.of.pour, Id(100));
    assert_eq!((soffit.normal.x, soffit.normal.z), (0.0, -1.0));
    assert!((soffit.to.x - soffit.from.x - 5.9).abs() < 1e-12);
}

#[test]
fn a_joint_at_the_floor_leaves_walls_only() {
    let faces = faces(&with_joints(a_box(), &[0.5]), 0.0);
    let joints: Vec<_> = faces.iter().filter(|face| face.of.corner == Id(100)).collect();
    assert_eq!(joints.len(), 4);
    assert!(joints.iter().all(|face| ((face.to.x - face.from.x).abs() - 0.4).abs() < 1e-12));
    let floor = faces.iter().find(|face| face.kind == FaceKind::FreeTop && face.of.corner != Id(100)).unwrap();
    assert_eq!(floor.of.pour, FaceRef::LOWEST);
}

#[test]
fn binary_fractions_do_not_tilt_a_floor() {
    let sum = 0.1 + 0.2;
    assert_ne!(sum, 0.3);
    for levels in [[sum, 0.3], [0.3, sum]] {
        let mut section = with_joints(a_box(), &[0.3]);
        for (corner, z_m) in section.cells[0].corners.iter_mut().zip(levels) {
            corner.z_m = z_m;
        }
        let faces = faces(&section, 0.0);
        let of_joint = |face: &&Face| face.of.corner == Id(100);
        let floor = faces.iter().find(|face| face.kind == FaceKind::FreeTop && !of_joint(face)).unwrap();
        assert_eq!(floor.of.pour, FaceRef::LOWEST);
        assert_eq!(faces.iter().filter(of_joint).count(), 4);
    }
}

#[test]
fn a_joint_at_the_soffit_gives_the_soffit_to_the_roof() {
    let faces = faces(&with_joints(a_box(), &[4.0]), 0.0);
    let soffit = faces.iter().find(|face| face.kind == FaceKind::Soffit).unwrap();
    assert_eq!(soffit.of.pour, Id(100));
    // The haunches belong to the walls below; each meets the roof over wall and haunch.
    assert!(faces.iter().filter(|face| face.kind == FaceKind::SlopeUnder).all(|face| face.of.pour == FaceRef::LOWEST));
    let bottoms: Vec<_> =
        faces.iter().filter(|face| face.kind == FaceKind::CastAgainst && face.of.pour == Id(100)).collect();
    assert_eq!(bottoms.len(), 2);
    assert!(bottoms.iter().all(|face| (face.to.x - face.from.x - 0.65).abs() < 1e-12));
}

#[test]
fn faces_of_twin_box_trough_and_portal() {
    let kinds = |section: &Section, ground| {
        let faces = faces(section, ground);
        [
            FaceKind::OuterWall,
            FaceKind::InnerWall,
            FaceKind::Soffit,
            FaceKind::SlopeUnder,
            FaceKind::SlopeOver,
            FaceKind::FreeTop,
            FaceKind::CastAgainst,
        ]
        .map(|kind| count(&faces, kind))
    };
    assert_eq!(kinds(&Section::twin_box(4.0, 3.0, WALLS, 0.3), 0.0), [2, 4, 2, 4, 0, 3, 1]);
    // Haunches at the floor of the trough are steeper than concrete stands; two wall tops and the floor are free.
    assert_eq!(kinds(&Section::u_trough(5.0, 3.0, 0.4, 0.5, 0.2), 0.0), [2, 2, 0, 0, 2, 3, 1]);
    assert_eq!(kinds(&Section::portal(6.0, 4.0, 0.5, 0.6, 0.3), 0.0), [2, 2, 1, 2, 0, 1, 2]);
    // With the ground far below, the feet of the portal need forms too.
    assert_eq!(kinds(&Section::portal(6.0, 4.0, 0.5, 0.6, 0.3), -3.0), [2, 2, 3, 2, 0, 1, 0]);
}

#[test]
fn a_fall_stands_and_a_steep_batter_does_not() {
    let corner = |id, x_m, z_m| Corner { id: Id(id), x_m, z_m, cut: None };
    // The top falls 1 in 4 (14°), then drops at 45°.
    let outline =
        vec![corner(1, 0.0, 0.0), corner(2, 3.0, 0.0), corner(3, 3.0, 0.5), corner(4, 2.0, 1.5), corner(5, 0.0, 2.0)];
    let faces = faces(&Section { outline, cells: Vec::new(), joints: Vec::new() }, 0.0);
    let kind = |id| faces.iter().find(|face| face.of.corner == Id(id)).unwrap().kind;
    assert_eq!([kind(3), kind(4)], [FaceKind::SlopeOver, FaceKind::FreeTop]);
}

#[test]
fn names_stay_when_a_wall_moves() {
    let names = |section: &Section| faces(section, 0.0).iter().map(|face| (face.of, face.kind)).collect::<Vec<_>>();
    let before = with_joints(a_box(), &[0.65]);
    let mut after = before.clone();
    after.outline[1].x_m += 0.3;
    after.outline[2].x_m += 0.3;
    assert_eq!(names(&before), names(&after));
}

/// A valid section of any template and proportions with up to three joints.
fn any_section() -> impl Strategy<Value = Section> {
    let walls = (0.2..1.0, 0.2..1.0, 0.2..1.0, 0.05..0.6).prop_map(|(wall_m, roof_m, base_m, haunch_m)| Walls {
        wall_m,
        roof_m,
        base_m,
        haunch_m,
    });
    (0..4_u8, 2.0..12.0, 2.0..7.0, walls, prop::collection::vec(0.02..0.98, 0..4)).prop_map(
        |(shape, width, height, walls, joints)| {
            let section = match shape {
                0 => Section::box_cell(width, height, walls),
                1 => Section::twin_box(width, height, walls, walls.base_m),
                2 => Section::u_trough(width, height, walls.wall_m, walls.base_m, walls.haunch_m),
                _ => Section::portal(width, height, walls.wall_m, walls.roof_m, walls.haunch_m),
            };
            let top = section.outline.iter().map(|corner| corner.z_m).fold(0.0, f64::max);
            let levels: Vec<f64> = joints.iter().map(|part| part * top).collect();
            with_joints(section, &levels)
        },
    )
}

fn moved(section: &Section, place: impl Fn(f64, f64) -> (f64, f64)) -> Section {
    let mut section = section.clone();
    for corner in section.outline.iter_mut().chain(section.cells.iter_mut().flat_map(|cell| &mut cell.corners)) {
        (corner.x_m, corner.z_m) = place(corner.x_m, corner.z_m);
    }
    for joint in &mut section.joints {
        joint.z_m = place(0.0, joint.z_m).1;
    }
    section
}

/// The same section drawn the other way round.
fn turned(section: &Section) -> Section {
    let turn = |ring: &mut Vec<Corner>| {
        ring.reverse();
        for corner in ring {
            corner.cut = corner.cut.map(|cut| Cut { before_m: cut.after_m, after_m: cut.before_m });
        }
    };
    let mut section = section.clone();
    turn(&mut section.outline);
    section.cells.iter_mut().for_each(|cell| turn(&mut cell.corners));
    section
}

/// Signed area of a ring by the polygon rule.
fn shoelace(ring: &[Point]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| a.cross(*b)).sum::<f64>() / 2.0
}

fn lengths_by_kind(faces: &[Face]) -> Vec<(String, f64)> {
    let mut sums = std::collections::BTreeMap::<String, f64>::new();
    for face in faces {
        *sums.entry(format!("{:?}", face.kind)).or_default() += (face.to - face.from).length();
    }
    sums.into_iter().collect()
}

proptest! {
    #[test]
    fn pours_make_up_the_section(section in any_section()) {
        let mut whole = section.clone();
        whole.joints.clear();
        let whole = &pours(&whole, 1.0, 1.0)[0];
        prop_assert!((area(&pours(&section, 1.0, 1.0)) - whole.area_m2).abs() < 1e-9);
        // Cells run clockwise and so count negative.
        let rings: f64 = whole.regions[0].iter().map(|ring| shoelace(ring)).sum();
        prop_assert!((rings - whole.area_m2).abs() < 1e-9);
    }

    #[test]
    fn clipped_regions_have_the_integrated_area(section in any_section()) {
        for pour in pours(&section, 1.0, 1.0) {
            let holes = |region: &[Vec<Point>]| region[1..].iter().map(|hole| shoelace(hole).abs()).sum::<f64>();
            let drawn: f64 = pour.regions.iter().map(|region| shoelace(&region[0]).abs() - holes(region)).sum();
            prop_assert!((drawn - pour.area_m2).abs() < 1e-6, "{} {}", drawn, pour.area_m2);
        }
    }

    #[test]
    fn faces_close_round_every_pour(section in any_section()) {
        let faces = faces(&section, 0.0);
        for pour in pours(&section, 1.0, 1.0) {
            let own = || faces.iter().filter(|face| face.of.pour == pour.id);
            let open = own().fold(Point::default(), |sum, face| sum + (face.to - face.from));
            prop_assert!(open.length() < 1e-5);
            let enclosed: f64 = own().map(|face| face.from.cross(face.to)).sum::<f64>() / 2.0;
            prop_assert!((enclosed - pour.area_m2).abs() < 1e-4);
        }
    }

    #[test]
    fn place_hand_and_winding_change_nothing(section in any_section(), x in -50.0..50.0, z in -50.0..50.0) {
        let before = lengths_by_kind(&faces(&section, 0.0));
        let versions = [
            (moved(&section, |a, b| (a + x, b + z)), z),
            (moved(&section, |a, b| (-a, b)), 0.0),
            (turned(&section), 0.0),
        ];
        for (version, ground) in versions {
            let after = lengths_by_kind(&faces(&version, ground));
            prop_assert_eq!(before.len(), after.len());
            for (a, b) in before.iter().zip(&after) {
                prop_assert_eq!(&a.0, &b.0);
                prop_assert!((a.1 - b.1).abs() < 1e-5);
            }
            prop_assert!((area(&pours(&version, 1.0, 1.0)) - area(&pours(&section, 1.0, 1.0))).abs() < 1e-9);
        }
    }

    #[test]
    fn width_integrates_to_the_area(section in any_section()) {
        let boundary = section.boundary();
        for pour in pours(&section, 1.0, 1.0) {
            let mut levels = boundary.levels(pour.bottom_m, pour.top_m);
            levels.insert(0, pour.bottom_m);
            levels.push(pour.top_m);
            let width = |z, side| boundary.width_at(z, side);
            let slab = |z: &[f64]| (width(z[0], Side::After) + width(z[1], Side::Before)) / 2.0 * (z[1] - z[0]);
            let trapezoids: f64 = levels.windows(2).map(slab).sum();
            prop_assert!((trapezoids - pour.area_m2).abs() < 1e-9);
        }
    }
}
