mod copying;
mod repeats;

use super::*;
use crate::layout::concrete::faces;
use crate::model::{Face, FaceKind};
use crate::scheme::{Section, TieEnd, Walls};

/// A box of 6.0 m by 3.6 m clear with walls of 0.45 m, roof and base of 0.4 and 0.5 m and haunches of 0.25 m.
fn box_scheme() -> Scheme {
    let walls = Walls { wall_m: 0.45, roof_m: 0.4, base_m: 0.5, haunch_m: 0.25 };
    Scheme::blank(Section::box_cell(6.0, 3.6, walls))
}

fn done(scheme: &Scheme, edits: &[Edit]) -> Scheme {
    let one = |scheme: Scheme, edit: &Edit| {
        let after = apply(&scheme, edit).unwrap_or_else(|e| panic!("{edit:?}: {e}"));
        assert_eq!(after.validate(), Ok(()), "{edit:?}");
        after
    };
    edits.iter().fold(scheme.clone(), one)
}

fn faces_of(scheme: &Scheme) -> Vec<Face> {
    faces(&scheme.section, scheme.ground.level_m)
}

/// The widest face of a kind that looks this way.
fn face(scheme: &Scheme, kind: FaceKind, normal_x: f64) -> FaceRef {
    let faces = faces_of(scheme);
    let looks = faces.iter().filter(|face| face.kind == kind && (face.normal.x - normal_x).abs() < 0.5);
    looks.max_by(|a, b| (a.to - a.from).length().total_cmp(&(b.to - b.from).length())).unwrap().of
}

fn with_left_wall(scheme: &Scheme) -> Scheme {
    let outer = face(scheme, FaceKind::OuterWall, -1.0);
    let inner = face(scheme, FaceKind::InnerWall, 1.0);
    done(scheme, &[Edit::AddShutter(outer), Edit::AddShutter(inner)])
}

fn with_falsework(scheme: &Scheme) -> Scheme {
    done(scheme, &[Edit::AddFalsework(face(scheme, FaceKind::Soffit, 0.0))])
}

fn area(scheme: &Scheme) -> f64 {
    scheme.section.boundary().moments_between(-100.0, 100.0).area_m2
}

#[test]
fn corners_and_edges_move() {
    let scheme = box_scheme();
    let top = scheme.section.outline[2].id;
    let left_bottom = scheme.section.outline[0].id;
    let higher = done(&scheme, &[Edit::MoveEdge { edge: top, distance_m: 0.1 }]);
    assert!((area(&higher) - area(&scheme) - 0.69).abs() < 1e-9);
    let mid = Point::new(3.0, -0.2);
    let bent = done(&higher, &[Edit::AddCorner { edge: left_bottom, at: mid }]);
    assert!((area(&bent) - area(&higher) - 0.69).abs() < 1e-9);
    let fresh = bent.section.outline[1].id;
    assert_eq!(done(&bent, &[Edit::Remove(fresh)]), higher);
    let moved = done(&bent, &[Edit::MoveCorner { corner: fresh, to: Point::new(3.0, 0.0) }]);
    assert!((area(&moved) - area(&higher)).abs() < 1e-9);
}

#[test]
fn an_edge_grows_its_ring_whichever_way_the_ring_is_drawn() {
    let mut scheme = box_scheme();
    let cell_floor = |scheme: &Scheme| scheme.section.cells[0].corners[0].id;
    let grown = done(&scheme, &[Edit::MoveEdge { edge: cell_floor(&scheme), distance_m: 0.1 }]);
    assert!((area(&scheme) - area(&grown) - 0.6).abs() < 1e-9);
    scheme.section.cells[0].corners.reverse();
    let second = scheme.section.cells[0].corners[2].id;
    let grown = done(&scheme, &[Edit::MoveEdge { edge: second, distance_m: 0.1 }]);
    assert!((area(&scheme) - area(&grown) - 0.6).abs() < 1e-9, "{}", area(&scheme) - area(&grown));
}

#[test]
fn a_typed_clear_width_carries_the_wall_beyond() {
    let scheme = with_falsework(&box_scheme());
    let cell = &scheme.section.cells[0].corners;
    let (left, right) = (cell[3].id, cell[1].id);
    let wider = done(&scheme, &[Edit::SetLength { edge: right, from: left, length_m: 7.2, carry: true }]);
    assert!((wider.section.outline[1].x_m - 8.1).abs() < 1e-12);
    assert!((wider.section.cells[0].corners[1].x_m - 7.65).abs() < 1e-12);
    assert_eq!(wider.section.outline[0], scheme.section.outline[0]);
    let thinner = done(&scheme, &[Edit::SetLength { edge: right, from: left, length_m: 6.2, carry: false }]);
    assert!((thinner.section.outline[1].x_m - 6.9).abs() < 1e-12);
    let floor = cell[0].id;
    let skew = apply(&scheme, &Edit::SetLength { edge: floor, from: left, length_m: 3.0, carry: false });
    assert_eq!(skew, Err(EditError::NotParallel { edge: floor, from: left }));
    let none = apply(&scheme, &Edit::SetLength { edge: right, from: left, length_m: f64::NAN, carry: true });
    assert!(matches!(none, Err(EditError::Value { .. })));
}

#[test]
fn a_thicker_base_lifts_what_stands_on_it() {
    let scheme = done(&with_left_wall(&box_scheme()), &[Edit::AddJoint { z_m: 0.65 }]);
    let shutter = scheme.shutters[1].id;
    let scheme = done(&scheme, &[Edit::AddTieRow { shutter, z_m: 2.0 }]);
    let (floor, bottom) = (scheme.section.cells[0].corners[0].id, scheme.section.outline[0].id);
    let thicker = done(&scheme, &[Edit::SetLength { edge: floor, from: bottom, length_m: 0.6, carry: true }]);
    assert!((thicker.section.joints[0].z_m - 0.75).abs() < 1e-12);
    assert!((thicker.section.outline[2].z_m - 4.6).abs() < 1e-12);
    assert_eq!(thicker.shutters, scheme.shutters);
    assert_eq!(thicker.ties.len(), 1);
}

#[test]
fn a_joint_leaves_equipment_on_the_larger_part_of_its_face() {
    let scheme = with_falsework(&with_left_wall(&box_scheme()));
    let cast = done(&scheme, &[Edit::AddJoint { z_m: 0.65 }]);
    let joint = cast.section.joints[0].id;
    assert!(cast.shutters.iter().all(|shutter| shutter.face.pour == joint));
    assert_eq!(cast.falsework[0].soffit.pour, joint);
    let whole = done(&cast, &[Edit::Remove(joint)]);
    assert_eq!(whole, scheme);
    assert!(matches!(apply(&cast, &Edit::AddJoint { z_m: 0.65 }), Err(EditError::JointLevel { .. })));
    assert!(matches!(apply(&cast, &Edit::MoveJoint { joint, z_m: 9.0 }), Err(EditError::JointLevel { .. })));
    let moved = done(&cast, &[Edit::MoveJoint { joint, z_m: 0.8 }]);
    assert_eq!((moved.section.joints[0].z_m, moved.shutters.len()), (0.8, 2));
}

#[test]
fn removing_a_joint_leaves_the_larger_of_what_would_stand_twice_on_a_face() {
    let scheme = done(&box_scheme(), &[Edit::AddJoint { z_m: 2.0 }]);
    let joint = scheme.section.joints[0].id;
    let outer = |scheme: &Scheme, pour| {
        let found = faces_of(scheme).into_iter().find(|f| f.kind == FaceKind::OuterWall && f.of.pour == pour);
        found.unwrap().of
    };
    let both = [Edit::AddShutter(outer(&scheme, FaceRef::LOWEST)), Edit::AddShutter(outer(&scheme, joint))];
    let scheme = done(&scheme, &both);
    let upper = scheme.shutters[1].id;
    let lowered = done(&scheme, &[Edit::MoveJoint { joint, z_m: 0.6 }]);
    assert_eq!(lowered.shutters, scheme.shutters);
    let whole = done(&scheme, &[Edit::Remove(joint)]);
    assert_eq!(whole.shutters.iter().map(|s| s.id).collect::<Vec<_>>(), vec![upper]);
}

#[test]
fn ties_find_the_shutter_across_the_wall_and_props_stand_without_one() {
    let scheme = with_left_wall(&box_scheme());
    let (outer, inner) = (scheme.shutters[0].id, scheme.shutters[1].id);
    let tied = done(&scheme, &[Edit::AddTieRow { shutter: outer, z_m: 1.5 }]);
    assert_eq!((tied.ties[0].to, tied.ties[0].item.as_str()), (TieEnd::Shutter { id: inner }, "TIE20"));
    let right = face(&scheme, FaceKind::OuterWall, 1.0);
    let scheme = done(&tied, &[Edit::AddShutter(right)]);
    let alone = scheme.shutters[2].id;
    let propped = done(&scheme, &[Edit::AddTieRow { shutter: alone, z_m: 1.5 }]);
    assert!(matches!(propped.ties[1].to, TieEnd::Fixed { .. }));
    assert_eq!(propped.ties[1].item, "PROP76");
    let off = apply(&scheme, &Edit::AddTieRow { shutter: inner, z_m: 4.2 });
    assert!(matches!(off, Err(EditError::OffShutter { .. })), "{off:?}");
}

#[test]
fn a_prop_spans_a_cell_between_inner_shutters() {
    let scheme = box_scheme();
    let sides = [1.0, -1.0].map(|x| Edit::AddShutter(face(&scheme, FaceKind::InnerWall, x)));
    let scheme = done(&scheme, &sides);
    let propped = done(&scheme, &[Edit::AddTieRow { shutter: scheme.shutters[0].id, z_m: 1.5 }]);
    assert_eq!(propped.ties[0].to, TieEnd::Shutter { id: scheme.shutters[1].id });
    assert_eq!(propped.ties[0].item, "PROP76");
}

#[test]
fn rows_fill_the_height_both_shutters_share() {
    let scheme = with_left_wall(&box_scheme());
    let (outer, inner) = (scheme.shutters[0].id, scheme.shutters[1].id);
    let tied = done(&scheme, &[Edit::AddTieRows { shutter: outer, spacing_m: 0.9 }]);
    let levels: Vec<f64> = tied.ties.iter().map(|row| row.z_m).collect();
    assert!(levels.windows(2).all(|w| w[1] - w[0] <= 0.9 + 1e-9 && w[1] > w[0]), "{levels:?}");
    assert!(levels[0] > 0.5 && *levels.last().unwrap() < 3.85, "{levels:?}");
    let tied = done(&tied, &[Edit::AddProp { shutter: outer, z_m: 3.5, length_m: 4.0 }]);
    assert_eq!(tied.ties.last().unwrap().to, TieEnd::Fixed { length_m: 4.0 });
    let again = done(&tied, &[Edit::AddTieRows { shutter: inner, spacing_m: 0.9 }]);
    assert_eq!(again.ties.len(), tied.ties.len());
    assert!(apply(&tied, &Edit::AddProp { shutter: outer, z_m: 9.0, length_m: 4.0 }).is_err());
    assert!(apply(&tied, &Edit::AddTieRows { shutter: outer, spacing_m: 1e-9 }).is_err());
    let bare = done(&tied, &[Edit::Remove(inner)]);
    assert_eq!((bare.ties.len(), bare.shutters.len()), (1, 1), "the prop stays");
}

#[test]
fn falsework_stands_under_the_soffit_and_its_haunches() {
    let scheme = with_falsework(&box_scheme());
    let falsework = &scheme.falsework[0];
    let lines = &falsework.leg_lines;
    assert!((lines[0].x_m - 0.75).abs() < 1e-9 && (lines[lines.len() - 1].x_m - 6.15).abs() < 1e-9);
    assert!(lines.windows(2).all(|w| w[1].x_m - w[0].x_m <= 1.2 + 1e-9));
    assert!(lines[0].braced && lines[lines.len() - 2].braced && !lines[1].braced);
    let id = falsework.id;
    let more = done(&scheme, &[Edit::RespaceLegLines { falsework: id, spacing: LegSpacing::Count(9) }]);
    assert_eq!(more.falsework[0].leg_lines.len(), 9);
    let mut ids: Vec<Id> = more.falsework[0].leg_lines.iter().map(|line| line.id).collect();
    ids.dedup();
    assert_eq!(ids.len(), 9);
    let apart = done(&more, &[Edit::RespaceLegLines { falsework: id, spacing: LegSpacing::Apart(1.2) }]);
    assert_eq!(apart.falsework[0].leg_lines.len(), lines.len());
    let off = apply(&scheme, &Edit::AddLegLine { falsework: id, x_m: 0.2 });
    assert!(matches!(off, Err(EditError::OffSoffit { .. })));
    let twice = apply(&scheme, &Edit::AddFalsework(falsework.soffit));
    assert_eq!(twice, Err(EditError::Occupied { what: "Falsework", id }));
}

#[test]
fn leg_lines_move_and_stay_in_order() {
    let scheme = with_falsework(&box_scheme());
    let falsework = &scheme.falsework[0];
    let first = falsework.leg_lines[0].id;
    let moved = done(&scheme, &[Edit::MoveLegLine { line: first, x_m: 3.0 }, Edit::ToggleBraced(first)]);
    let lines = &moved.falsework[0].leg_lines;
    assert!(lines.windows(2).all(|w| w[0].x_m <= w[1].x_m));
    assert!(!lines.iter().find(|line| line.id == first).unwrap().braced);
    let fewer = done(&moved, &[Edit::Remove(first)]);
    assert_eq!(fewer.falsework[0].leg_lines.len(), lines.len() - 1);
}

#[test]
fn an_opening_leaves_room_for_beams_and_stubs() {
    let scheme = with_falsework(&box_scheme());
    let falsework = scheme.falsework[0].id;
    let scheme = done(&scheme, &[Edit::AddOpening { falsework, left_m: 1.6, width_m: 3.5 }]);
    let opening = &scheme.openings[0];
    assert!(opening.height_m > 2.0 && opening.beam_underside_m > opening.height_m);
    assert!(opening.beam_underside_m + 0.31 < 3.6);
    let id = opening.id;
    let resize = Edit::ResizeOpening { opening: id, left_m: 1.7, width_m: 3.6, height_m: opening.height_m - 0.1 };
    let lower = done(&scheme, &[resize]);
    let gap = |o: &Opening| o.beam_underside_m - o.height_m;
    assert!((gap(&lower.openings[0]) - gap(opening)).abs() < 1e-12);
    assert!(apply(&scheme, &Edit::MoveOpening { opening: id, left_m: 5.0 }).is_err());
    assert!(apply(&scheme, &Edit::AddOpening { falsework, left_m: 1.6, width_m: 3.5 }).is_err());
    assert_eq!(done(&scheme, &[Edit::Remove(falsework)]).openings.len(), 0);
}

#[test]
fn another_section_takes_the_equipment_of_the_old_one_away() {
    let scheme = with_falsework(&with_left_wall(&box_scheme()));
    let twin = Section::twin_box(3.0, 2.4, Walls { wall_m: 0.3, roof_m: 0.3, base_m: 0.3, haunch_m: 0.0 }, 0.3);
    let other = done(&scheme, &[Edit::SetSection(twin)]);
    assert!(other.shutters.is_empty() && other.falsework.is_empty());
    assert_eq!(other.section.cells.len(), 2);
    assert!(other.section.outline.iter().all(|corner| corner.id > scheme.falsework[0].id));
}

#[test]
fn what_is_not_there_is_named() {
    let scheme = box_scheme();
    let id = Id(999);
    let edits = [
        Edit::MoveCorner { corner: id, to: Point::default() },
        Edit::MoveJoint { joint: id, z_m: 1.0 },
        Edit::Remove(id),
        Edit::MoveTieRow { row: id, z_m: 1.0 },
        Edit::MoveLegLine { line: id, x_m: 1.0 },
        Edit::MoveOpening { opening: id, left_m: 1.0 },
        Edit::AddTieRow { shutter: id, z_m: 1.0 },
        Edit::AddLegLine { falsework: id, x_m: 1.0 },
    ];
    for edit in edits {
        assert!(matches!(apply(&scheme, &edit), Err(EditError::Missing { id: Id(999), .. })), "{edit:?}");
    }
}

#[test]
fn what_breaks_the_section_is_refused_with_the_reason() {
    let scheme = box_scheme();
    let cell = scheme.section.cells[0].corners[0].id;
    let outside = apply(&scheme, &Edit::MoveCorner { corner: cell, to: Point::new(-1.0, 0.5) });
    assert!(matches!(outside, Err(EditError::Invalid(_))), "{outside:?}");
    let nowhere = apply(&scheme, &Edit::MoveCorner { corner: cell, to: Point::new(f64::NAN, 0.5) });
    assert!(matches!(nowhere, Err(EditError::Invalid(_))));
    let ring = [(1.0, 1.0), (2.0, 1.0), (2.0, 2.0)].map(|(x_m, z_m)| Corner { id: Id(0), x_m, z_m, cut: None });
    assert!(matches!(apply(&scheme, &Edit::AddCell(ring.to_vec())), Err(EditError::Invalid(_))));
}

#[test]
fn a_blank_sheet_takes_settings_and_an_outline() {
    let empty = Section { outline: Vec::new(), cells: Vec::new(), joints: Vec::new() };
    let blank = Scheme::blank(empty);
    let named = apply(&blank, &Edit::SetName("Subway".into())).unwrap();
    assert_eq!(named.name, "Subway");
    let ring = [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0)].map(|(x_m, z_m)| Corner { id: Id(0), x_m, z_m, cut: None });
    assert!(apply(&blank, &Edit::AddCell(ring.to_vec())).is_err());
    done(&blank, &[Edit::SetSection(box_scheme().section)]);
}

#[test]
fn a_tie_level_with_the_floor_goes_through_the_wall_and_none_through_the_whole_base() {
    let scheme = box_scheme();
    let sides = [-1.0, 1.0].map(|x| Edit::AddShutter(face(&scheme, FaceKind::OuterWall, x)));
    let scheme = with_left_wall(&done(&scheme, &sides[1..]));
    let (outer, inner) = (scheme.shutters[1].id, scheme.shutters[2].id);
    let rows = [0.5, 0.3].map(|z_m| Edit::AddTieRow { shutter: outer, z_m });
    let tied = done(&scheme, &rows);
    assert_eq!(tied.ties[0].to, TieEnd::Shutter { id: inner });
    assert!(matches!(tied.ties[1].to, TieEnd::Fixed { .. }));
}

#[test]
fn shutters_joined_by_ties_keep_their_primaries_opposite_each_other() {
    let scheme = with_left_wall(&box_scheme());
    let tied = done(&scheme, &[Edit::AddTieRow { shutter: scheme.shutters[0].id, z_m: 1.5 }]);
    assert!(matches!(tied.ties[0].to, TieEnd::Shutter { .. }));
    let mut wider = tied.shutters[0].clone();
    wider.primaries.max_m = 2.0;
    for (before, follows) in [(&scheme, false), (&tied, true)] {
        let after = done(before, &[Edit::SetShutter(wider.clone())]);
        assert_eq!(after.shutters[0].primaries.max_m, 2.0);
        assert_eq!(after.shutters[1].primaries == after.shutters[0].primaries, follows);
    }
}

#[test]
fn the_first_section_of_a_sheet_stands_on_the_ground() {
    let blank = Scheme::blank(Section { outline: Vec::new(), cells: Vec::new(), joints: Vec::new() });
    let mut section = box_scheme().section;
    let rings = std::iter::once(&mut section.outline).chain(section.cells.iter_mut().map(|cell| &mut cell.corners));
    rings.flatten().for_each(|corner| corner.z_m += 2.3);
    let drawn = done(&blank, &[Edit::SetSection(section.clone())]);
    assert!((drawn.ground.level_m - 2.3).abs() < 1e-12);
    // A later one leaves the ground where it is.
    let replaced = done(&drawn, &[Edit::SetSection(box_scheme().section)]);
    assert!((replaced.ground.level_m - 2.3).abs() < 1e-12);
}

#[test]
fn a_ring_is_led_along_new_points_from_edge_to_edge_in_either_direction() {
    let scheme = box_scheme();
    let [floor, _, soffit, left] = [0, 1, 2, 3].map(|i| scheme.section.cells[0].corners[i].id);
    let area = |scheme: &Scheme| scheme.section.boundary().moments_between(0.0, 4.5).area_m2;
    let both_ways = |from: Id, to: Id, points: &[(f64, f64)], concrete_m2: f64| {
        let points: Vec<Point> = points.iter().map(|&(x, z)| Point::new(x, z)).collect();
        let reversed = points.iter().rev().copied().collect();
        let ways = [Edit::Reshape { from, to, points }, Edit::Reshape { from: to, to: from, points: reversed }];
        for after in ways.map(|edit| done(&scheme, &[edit])) {
            assert!((area(&after) - area(&scheme) - concrete_m2).abs() < 1e-9, "{after:?}");
            for edge in [from, to] {
                assert!(after.section.cells[0].corners.iter().any(|corner| corner.id == edge), "{edge} keeps its name");
            }
        }
    };
    // A downstand of 0.6 by 0.4 m, a kicker of 0.25 by 0.15 m in the corner, a fillet of 0.3 by 0.2 m.
    both_ways(soffit, soffit, &[(3.6, 4.1), (3.6, 3.7), (3.0, 3.7), (3.0, 4.1)], 0.24);
    both_ways(left, floor, &[(0.45, 0.65), (0.7, 0.65), (0.7, 0.5)], 0.0375);
    both_ways(left, floor, &[(0.45, 0.7), (0.75, 0.5)], 0.03);
    let nothing = Edit::Reshape { from: Id(999), to: soffit, points: vec![Point::new(1.0, 1.0)] };
    assert!(matches!(apply(&scheme, &nothing), Err(EditError::Missing { .. })));
}

#[test]
fn an_edge_is_carried_with_all_beyond_it() {
    let scheme = box_scheme();
    let head = scheme.section.outline[2];
    let battered = done(&scheme, &[Edit::MoveCorner { corner: head.id, to: Point::new(head.x_m - 0.06, head.z_m) }]);
    let (outer, inner) = (battered.section.outline[1].id, battered.section.cells[0].corners[1].id);
    let carried = done(&battered, &[Edit::CarryEdge { edge: outer, by: Point::new(0.05, 0.0), from: inner }]);
    let xs = |scheme: &Scheme| scheme.section.outline.iter().map(|corner| corner.x_m).collect::<Vec<_>>();
    let moved: Vec<f64> = xs(&carried).iter().zip(xs(&battered)).map(|(a, b)| a - b).collect();
    assert!(moved.iter().zip([0.0, 0.05, 0.05, 0.0]).all(|(a, b)| (a - b).abs() < 1e-9), "{moved:?}");
    assert_eq!(carried.section.cells, battered.section.cells);
    let none = apply(&battered, &Edit::CarryEdge { edge: outer, by: Point::new(f64::NAN, 0.0), from: inner });
    assert!(matches!(none, Err(EditError::Value { .. })));
}

#[test]
fn shutters_come_on_all_faces_and_each_is_held() {
    let scheme = done(&box_scheme(), &[Edit::AddJoint { z_m: 0.65 }]);
    assert_eq!(apply(&scheme, &Edit::HoldShutters), Err(EditError::AllHeld));
    let shuttered = done(&scheme, &[Edit::AddShutters { inner: false }, Edit::AddShutters { inner: true }]);
    assert_eq!(shuttered.shutters.len(), 8);
    assert_eq!(apply(&shuttered, &Edit::AddShutters { inner: true }), Err(EditError::NoneBare { inner: true }));
    let held = done(&shuttered, &[Edit::HoldShutters]);
    for shutter in &held.shutters {
        let holds = |row: &TieRow| row.shutter == shutter.id || row.to == TieEnd::Shutter { id: shutter.id };
        assert!(held.ties.iter().any(holds), "{shutter:?}");
    }
}
