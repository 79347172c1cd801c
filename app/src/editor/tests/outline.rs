//! Drawing the outline by sketching, pulling and typing.

use super::*;
use falsewright_core::scheme::FaceRef;

/// A wobbling stroke through points.
fn sketch(desk: &mut Desk, points: &[(f64, f64)]) {
    let mut way = Vec::new();
    for pair in points.windows(2) {
        for i in 0..20 {
            let t = f64::from(i) / 20.0;
            let wobble = 0.015 * f64::from(i % 4 - 2);
            way.push((
                pair[0].0 + (pair[1].0 - pair[0].0) * t + wobble,
                pair[0].1 + (pair[1].1 - pair[0].1) * t - wobble,
            ));
        }
    }
    let (first, last) = (way[0], way[way.len() - 1]);
    desk.go(first.0, first.1);
    desk.down(first.0, first.1);
    way.iter().for_each(|(x, z)| desk.go(*x, *z));
    desk.up(last.0, last.1);
}

fn outer(desk: &mut Desk) {
    sketch(desk, &[(0.0, 0.1), (5.02, 0.0), (5.1, 4.05), (0.05, 3.95), (0.02, 0.05)]);
}

fn inner(desk: &mut Desk) {
    sketch(desk, &[(0.45, 0.5), (4.6, 0.55), (4.55, 3.5), (0.5, 3.55), (0.47, 0.52)]);
}

fn at(handle: Option<Handle>) -> (f64, f64) {
    let handle = handle.unwrap();
    (handle.at.x, handle.at.z)
}

fn handle(desk: &Desk, wanted: impl Fn(Target) -> bool) -> (f64, f64) {
    at(desk.editor.overlay().handles.into_iter().find(|handle| wanted(handle.target)))
}

#[test]
fn a_sketch_is_shown_first_and_kept_or_refused() {
    let mut desk = Desk::blank();
    desk.tool(Tool::Outline);
    outer(&mut desk);
    assert!(desk.editor.overlay().proposed && !desk.last.committed);
    assert_eq!(desk.editor.shown().section.outline.len(), 4);
    assert!(desk.scheme().section.outline.is_empty() && !desk.editor.dimensions().is_empty());
    assert!(desk.key(Key::Escape));
    assert!(desk.editor.shown().section.outline.is_empty() && !desk.editor.can_undo());

    outer(&mut desk);
    desk.editor.undo();
    assert!(desk.editor.shown().section.outline.is_empty() && !desk.editor.can_redo());

    outer(&mut desk);
    assert!(desk.key(Key::Enter) && desk.last.committed);
    let corners = desk.corners();
    let expected = [(0.0, 0.0), (5.1, 0.0), (5.1, 4.0), (0.0, 4.0)];
    assert!(expected.iter().all(|e| corners.iter().any(|c| (c.0 - e.0).abs() < 0.11 && (c.1 - e.1).abs() < 0.11)));

    inner(&mut desk);
    assert!(desk.scheme().section.cells.is_empty());
    desk.tool(Tool::Joint);
    assert_eq!(desk.scheme().section.cells.len(), 1);
    assert_eq!(desk.editor.undo_label(), Some("Draw cell"));
}

#[test]
fn the_next_stroke_keeps_the_first_and_two_fingers_do_not_lose_it() {
    let mut desk = Desk::blank();
    desk.kind = PointerKind::Touch;
    desk.tool(Tool::Outline);
    outer(&mut desk);
    desk.down(2.0, 2.0);
    let second = PointerInput { id: 2, ..desk.input(3.0, 2.0) };
    desk.editor.pointer_down(second, &Design::default());
    desk.editor.pointer_up(second, &Design::default());
    desk.up(2.0, 2.0);
    assert!(desk.editor.overlay().proposed);
    inner(&mut desk);
    assert_eq!(desk.scheme().section.outline.len(), 4);
    assert_eq!(desk.editor.shown().section.cells.len(), 1);
    desk.tap(2.5, 2.0);
    assert_eq!(desk.scheme().section.cells.len(), 1);
    assert!(desk.scheme().section.cells[0].corners.iter().all(|corner| corner.cut.is_none()));
}

#[test]
fn what_is_done_with_the_selection_or_the_steps_keeps_a_sketch() {
    let mut desk = Desk::blank();
    desk.tool(Tool::Outline);
    outer(&mut desk);
    let outcome = desk.editor.go_to(0);
    desk.seen(outcome);
    assert!(desk.last.committed && desk.scheme().section.outline.is_empty());
    desk.editor.redo();
    assert_eq!(desk.scheme().section.outline.len(), 4);

    inner(&mut desk);
    desk.modifiers.control = true;
    assert!(desk.key(Key::Char('a')) && desk.last.committed);
    desk.modifiers.control = false;
    assert_eq!((desk.scheme().section.cells.len(), desk.editor.chosen().len()), (1, 4));

    // What is ahead cannot be gone to and the sketch be kept: it is dropped, as before any redo.
    desk.editor.undo();
    inner(&mut desk);
    desk.editor.redo();
    assert!(!desk.editor.overlay().proposed && desk.scheme().section.cells.len() == 1);
}

#[test]
fn a_handle_stands_for_its_edge_where_taps_add() {
    let mut desk = Desk::boxed();
    desk.tap(6.9, 2.0);
    let face = desk.editor.selection();
    assert!(matches!(face, Some(Target::Face(_))));
    desk.editor.set_adding(true);
    let end = handle(&desk, |target| matches!(target, Target::EdgeEnd { .. }));
    desk.tap(end.0, end.1);
    assert!(desk.editor.chosen().is_empty(), "its edge is taken out: {:?}", desk.editor.chosen());
}

#[test]
fn a_sketch_that_cannot_be_is_refused_in_words() {
    let mut desk = Desk::boxed();
    desk.tool(Tool::Outline);
    let before = desk.scheme().clone();
    sketch(&mut desk, &[(5.0, 1.0), (8.4, 1.0), (8.5, 3.0), (5.0, 3.1), (5.0, 1.1)]);
    assert!(desk.last.message.is_some() && !desk.editor.overlay().proposed);
    assert_eq!((desk.scheme(), desk.editor.shown()), (&before, &before));
}

#[test]
fn a_haunch_is_pulled_out_of_its_corner_and_typed() {
    let mut desk = Desk::boxed();
    let corner = desk.scheme().section.cells[0].corners[0];
    desk.tap(corner.x_m, corner.z_m);
    assert_eq!(desk.editor.selection(), Some(Target::Corner(corner.id)));
    let from = handle(&desk, |target| target == Target::Haunch(corner.id));
    assert!(from.0 > corner.x_m && from.1 > corner.z_m, "{from:?}");
    desk.down(from.0, from.1);
    desk.go(corner.x_m + 0.1, corner.z_m + 0.1);
    let readout = desk.editor.overlay().readout.unwrap();
    assert_eq!((readout.what, readout.by_m), ("haunch", Some(readout.length_m)));
    desk.go(corner.x_m + 0.14, corner.z_m + 0.13);
    assert_eq!(desk.editor.overlay().snap.unwrap().reason, SnapReason::SameHaunch);
    desk.up(corner.x_m + 0.14, corner.z_m + 0.13);
    let cut = |desk: &Desk| desk.scheme().section.cells[0].corners[0].cut.unwrap();
    assert_eq!((cut(&desk).before_m, cut(&desk).after_m), (0.25, 0.25));
    assert_eq!(desk.editor.selection(), Some(Target::Corner(corner.id)));

    assert!(desk.key(Key::Char('3')));
    assert_eq!(desk.editor.selection(), Some(Target::Dimension(DimensionKey::Cut(corner.id))));
    assert_eq!(desk.editor.typed(), Some('3'));
    let outcome = desk.editor.type_dimension(DimensionKey::Cut(corner.id), "150*2").unwrap();
    desk.seen(outcome);
    assert_eq!((cut(&desk).before_m, cut(&desk).after_m), (0.3, 0.3));
    let before = desk.scheme().clone();
    assert!(matches!(desk.editor.type_dimension(DimensionKey::Cut(corner.id), "5 m"), Err(Refusal::Edit(_))));
    assert_eq!(*desk.scheme(), before);
}

#[test]
fn a_wall_is_battered_by_the_end_of_its_face_and_a_roof_crowned_by_its_middle() {
    let mut desk = Desk::boxed();
    let head = desk.scheme().section.outline[2];
    desk.tap(6.9, 2.0);
    let from = handle(&desk, |target| matches!(target, Target::EdgeEnd { corner, .. } if corner == head.id));
    desk.down(from.0, from.1);
    desk.go(from.0 - 0.15, from.1 + 0.02);
    let readout = desk.editor.overlay().readout.unwrap();
    assert_eq!(readout.what, "batter");
    assert!((readout.length_m - 0.15).abs() < 1e-9 && (readout.one_in.unwrap() - 30.0).abs() < 1e-6);
    desk.up(from.0 - 0.15, from.1 + 0.02);
    let moved = desk.scheme().section.outline[2];
    assert!((moved.x_m - 6.75).abs() < 1e-9 && (moved.z_m - head.z_m).abs() < 1e-12);
    assert!(matches!(desk.editor.selection(), Some(Target::Face(_))));
    let dimension = desk.editor.dimensions().into_iter().find(|d| matches!(d.key, DimensionKey::Rise(_))).unwrap();
    assert!(dimension.chosen && (dimension.value_m - 0.15).abs() < 1e-9);

    desk.tap(2.0, 4.5);
    let from = handle(&desk, |target| matches!(target, Target::EdgeMiddle(_)));
    assert!(from.1 > 4.5, "the handle stands outside: {from:?}");
    desk.drag(from, (from.0, from.1 + 0.1));
    assert_eq!(desk.scheme().section.outline.len(), 5);
    let crown = desk.scheme().section.outline.iter().map(|corner| corner.z_m).fold(f64::MIN, f64::max);
    assert!((crown - 4.6).abs() < 1e-9, "{crown}");
    assert_eq!(desk.editor.undo_label(), Some("Add corner"));
}

#[test]
fn a_line_from_a_soffit_back_to_it_makes_a_downstand() {
    let mut desk = Desk::boxed();
    desk.tool(Tool::Outline);
    desk.tap(3.0, 4.1);
    desk.tap(3.0, 3.7);
    desk.tap(3.6, 3.7);
    desk.tap(3.6, 4.1);
    assert!(desk.last.committed, "{:?}", desk.last.message);
    assert_eq!(desk.scheme().section.cells[0].corners.len(), 8);
    assert_eq!(desk.editor.undo_label(), Some("Reshape edge"));
    desk.editor.undo();
    // A kicker from the wall to the floor.
    desk.tap(0.45, 0.65);
    desk.tap(0.7, 0.65);
    desk.tap(0.7, 0.5);
    assert!(desk.last.committed, "{:?}", desk.last.message);
    assert_eq!(desk.scheme().section.cells[0].corners.len(), 6);
    desk.editor.undo();
    // The same by a stroke.
    sketch(&mut desk, &[(2.5, 4.1), (2.52, 3.5), (3.6, 3.52), (3.62, 4.1)]);
    assert!(desk.editor.overlay().proposed, "{:?}", desk.last);
    assert!(desk.key(Key::Enter));
    let corners = &desk.scheme().section.cells[0].corners;
    assert_eq!(corners.len(), 8);
    assert!(corners.iter().filter(|corner| (corner.z_m - 3.5).abs() < 0.06).count() == 2, "{corners:?}");
}

#[test]
fn a_drawn_outline_goes_on_by_a_stroke() {
    let mut desk = Desk::blank();
    desk.tool(Tool::Outline);
    desk.tap(0.0, 0.0);
    desk.tap(5.0, 0.0);
    sketch(&mut desk, &[(5.0, 0.0), (5.05, 3.0), (0.0, 3.05)]);
    assert_eq!(desk.editor.overlay().preview.len(), 5);
    assert!(desk.key(Key::Enter));
    assert_eq!(desk.corners().len(), 4);
    assert!((desk.corners()[2].0 - 5.0).abs() < 1e-9, "{:?}", desk.corners());
}

#[test]
fn a_joint_is_dragged_with_its_height_and_corner_edge_and_joint_are_nudged() {
    let mut desk = Desk::boxed();
    desk.tool(Tool::Joint);
    desk.drag((3.0, 1.0), (3.0, 0.65));
    assert!((desk.scheme().section.joints[0].z_m - 0.65).abs() < 1e-9);
    desk.tool(Tool::Select);
    desk.down(-0.2, 0.65);
    desk.go(-0.2, 0.85);
    let readout = desk.editor.overlay().readout.unwrap();
    assert!(readout.what == "above the base" && (readout.length_m - 0.85).abs() < 1e-9);
    desk.up(-0.2, 0.85);
    let joint = |desk: &Desk| desk.scheme().section.joints[0].z_m;
    desk.key(Key::Up);
    assert!((joint(&desk) - 0.855).abs() < 1e-9);
    desk.modifiers.shift = true;
    desk.key(Key::Down);
    assert!((joint(&desk) - 0.805).abs() < 1e-9);
    desk.tap(6.9, 0.0);
    desk.key(Key::Right);
    desk.modifiers.shift = false;
    desk.key(Key::Up);
    let corner = desk.scheme().section.outline[1];
    assert!((corner.x_m - 6.95).abs() < 1e-9 && (corner.z_m - 0.005).abs() < 1e-9);
}

#[test]
fn snapping_can_be_switched_off() {
    let mut desk = Desk::boxed();
    let snapped = |desk: &mut Desk| {
        desk.down(6.9, 2.0);
        desk.go(7.213, 2.0);
        let x = desk.editor.shown().section.outline[1].x_m;
        desk.key(Key::Escape);
        desk.up(7.213, 2.0);
        x
    };
    assert!((snapped(&mut desk) - 7.2).abs() < 1e-9);
    desk.editor.set_snaps(false);
    assert!((snapped(&mut desk) - 7.213).abs() < 2e-3 && !desk.editor.snaps());
    desk.editor.set_snaps(true);
    desk.modifiers.control = true;
    assert!((snapped(&mut desk) - 7.213).abs() < 2e-3);
}

#[test]
fn shutters_and_what_holds_them_come_on_all_walls_at_once() {
    let mut desk = Desk::boxed();
    desk.tool(Tool::Joint);
    desk.tap(-0.5, 0.65);
    for edit in [Edit::AddShutters { inner: false }, Edit::AddShutters { inner: true }, Edit::HoldShutters] {
        let outcome = desk.editor.perform(edit.clone()).unwrap();
        desk.seen(outcome);
        assert!(desk.editor.perform(edit).is_err(), "there is nothing left to do");
    }
    assert_eq!(desk.scheme().shutters.len(), 8);
    let faces: Vec<FaceRef> = desk.scheme().shutters.iter().map(|shutter| shutter.face).collect();
    assert!(faces.iter().enumerate().all(|(i, face)| !faces[..i].contains(face)));
    for shutter in &desk.scheme().shutters {
        let held = |row: &falsewright_core::scheme::TieRow| {
            row.shutter == shutter.id || row.to == TieEnd::Shutter { id: shutter.id }
        };
        assert!(desk.scheme().ties.iter().any(held), "{shutter:?}");
    }
    let results = &desk.design.results;
    let failed = |check: &&falsewright_core::results::Check| check.ratio > 1.0;
    let failed: Vec<_> =
        results.checks.iter().filter(failed).map(|check| (&check.member, check.check, check.ratio)).collect();
    assert!(failed.is_empty(), "{failed:#?}");
}
