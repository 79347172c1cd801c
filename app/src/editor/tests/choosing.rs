//! Several elements selected, and what is done with all of them.

use super::*;

fn rows(desk: &Desk) -> Vec<f64> {
    desk.scheme().ties.iter().map(|row| row.z_m).collect()
}

/// The middle of a row of the demo's left wall.
fn row(level: f64) -> (f64, f64) {
    (0.225, level)
}

#[test]
fn shift_adds_and_takes_out_and_a_plain_tap_starts_anew() {
    let mut desk = Desk::demo();
    let tap = |desk: &mut Desk, level: f64| desk.tap(row(level).0, row(level).1);
    tap(&mut desk, 2.2);
    desk.modifiers.shift = true;
    tap(&mut desk, 3.45);
    tap(&mut desk, 4.55);
    assert_eq!(desk.editor.chosen().len(), 3);
    assert_eq!(desk.editor.selection(), None);
    tap(&mut desk, 3.45);
    let ids: Vec<u32> = desk.editor.chosen().iter().filter_map(Target::element).map(|id| id.0).collect();
    assert_eq!(ids, [45, 47]);
    desk.tap(-3.0, 8.0);
    assert_eq!(desk.editor.chosen().len(), 2, "nothing there to add");
    desk.modifiers.shift = false;
    tap(&mut desk, 3.45);
    assert_eq!(desk.editor.selection().and_then(|target| target.element()).map(|id| id.0), Some(46));
}

#[test]
fn a_finger_adds_by_a_long_press_and_by_taps_while_that_is_on() {
    let mut desk = Desk::demo();
    desk.kind = PointerKind::Touch;
    desk.hold(0.225, 2.2);
    desk.hold(0.225, 3.45);
    assert_eq!(desk.editor.chosen().len(), 2);
    desk.act(Action::AddMore);
    desk.tap(0.225, 4.55);
    assert_eq!(desk.editor.chosen().len(), 3);
    assert!(desk.key(Key::Escape) && desk.editor.chosen().is_empty() && !desk.editor.adding());
    desk.tap(0.225, 2.2);
    desk.tap(0.225, 3.45);
    assert_eq!(desk.editor.chosen().len(), 1);
}

#[test]
fn a_box_to_the_right_takes_what_is_inside_and_to_the_left_what_it_touches() {
    let mut desk = Desk::demo();
    let kinds = |desk: &Desk| counted(desk.editor.chosen());
    desk.drag((-0.9, 1.9), (1.0, 5.2));
    assert_eq!(kinds(&desk), "3 rows of ties");
    desk.drag((1.0, 5.2), (-0.9, 1.9));
    assert_eq!(kinds(&desk), "2 shutters and 4 rows of ties", "with the raking props outside");
    desk.drag((-6.0, -1.0), (14.0, 7.0));
    let all = desk.editor.chosen().to_vec();
    assert!(all.iter().any(|target| matches!(target, Target::Falsework(_))));
    assert!(!all.iter().any(|target| matches!(target, Target::LegLine(_) | Target::Corner(_) | Target::Joint(_))));
    let scheme = desk.scheme();
    assert_eq!(all.len(), scheme.shutters.len() + scheme.ties.len() + 1 + scheme.openings.len());
}

#[test]
fn a_held_finger_draws_a_box_where_it_else_moves_the_sheet() {
    let mut desk = Desk::demo();
    desk.kind = PointerKind::Touch;
    let before = *desk.editor.viewport();
    desk.down(-3.0, -1.0);
    let outcome = desk.editor.pointer_held(&desk.design).unwrap();
    desk.seen(outcome);
    desk.go(11.0, 7.0);
    assert!(desk.editor.overlay().boxed.is_some_and(|boxed| boxed.inside));
    desk.up(11.0, 7.0);
    assert!(desk.editor.chosen().len() > 10 && *desk.editor.viewport() == before);
}

#[test]
fn all_is_the_equipment_first_and_the_section_next() {
    let mut desk = Desk::demo();
    desk.modifiers.control = true;
    assert!(desk.key(Key::Char('a')));
    let equipment = desk.editor.chosen().len();
    assert!(desk.key(Key::Char('a')));
    let section = &desk.scheme().section;
    let corners = section.outline.len() + section.cells[0].corners.len();
    assert_eq!(desk.editor.chosen().len(), equipment + corners + section.joints.len());
    desk.modifiers.control = false;
    let whole = desk.scheme().clone();
    assert!(desk.key(Key::Delete));
    assert!(desk.scheme().section.outline.is_empty() && desk.scheme().shutters.is_empty());
    let outcome = desk.editor.undo();
    desk.seen(outcome);
    assert_eq!(*desk.scheme(), whole);
}

#[test]
fn all_moves_with_the_section_as_one_step_and_every_distance_stays() {
    let mut desk = Desk::demo();
    desk.modifiers.control = true;
    desk.key(Key::Char('a'));
    desk.key(Key::Char('a'));
    desk.modifiers.control = false;
    let before = desk.scheme().clone();
    let step = desk.editor.document().at();
    desk.modifiers.shift = true;
    assert!(desk.key(Key::Right) && desk.key(Key::Up));
    assert_eq!(desk.editor.document().at(), step + 2);
    let near = |a: f64, b: f64| (a - b).abs() < 1e-9;
    let after = desk.scheme();
    let (old, new) = (&before.section.outline, &after.section.outline);
    assert!(old.iter().zip(new).all(|(a, b)| near(b.x_m - a.x_m, 0.05) && near(b.z_m - a.z_m, 0.05)));
    assert!(before.ties.iter().zip(&after.ties).all(|(a, b)| near(b.z_m - a.z_m, 0.05)));
    let lines = |scheme: &Scheme| scheme.falsework[0].leg_lines.iter().map(|line| line.x_m).collect::<Vec<_>>();
    assert!(lines(&before).iter().zip(lines(after)).all(|(a, b)| near(b - a, 0.05)));
    assert!(near(after.openings[0].left_m - before.openings[0].left_m, 0.05));
    assert!(near(after.section.joints[0].z_m - before.section.joints[0].z_m, 0.05));
}

#[test]
fn several_are_dragged_nudged_and_removed_each_as_one_step() {
    let mut desk = Desk::demo();
    let before = desk.scheme().clone();
    let step = desk.editor.document().at();
    desk.tap(0.225, 2.2);
    desk.modifiers.shift = true;
    desk.tap(0.225, 3.45);
    desk.modifiers.shift = false;
    desk.drag((0.225, 3.45), (0.225, 3.65));
    let levels = |desk: &Desk| (rows(desk)[5], rows(desk)[6]);
    assert_eq!((before.ties[5].z_m, before.ties[6].z_m), (2.2, 3.45));
    let (low, high) = levels(&desk);
    assert!((low - 2.4).abs() < 1e-9 && (high - 3.65).abs() < 1e-9, "{low} {high}");
    assert_eq!(desk.editor.undo_label(), Some("Move 2 rows of ties"));
    desk.key(Key::Down);
    assert!((levels(&desk).0 - 2.395).abs() < 1e-9);
    desk.key(Key::Delete);
    assert_eq!(desk.scheme().ties.len(), before.ties.len() - 2);
    assert_eq!(desk.editor.undo_label(), Some("Remove 2 rows of ties"));
    assert_eq!(desk.editor.document().at(), step + 3);
    desk.editor.go_to(step);
    assert_eq!(*desk.scheme(), before);
}

#[test]
fn a_held_arrow_key_makes_one_step() {
    let mut desk = Desk::demo();
    desk.tap(0.225, 2.2);
    let step = desk.editor.document().at();
    assert!(desk.key(Key::Up));
    for _ in 0..5 {
        let input = KeyInput { key: Key::Up, modifiers: desk.modifiers };
        let outcome = desk.editor.key_held(input, &desk.design).unwrap();
        desk.seen(outcome);
    }
    assert!((rows(&desk)[5] - 2.23).abs() < 1e-9);
    assert_eq!(desk.editor.document().at(), step + 1);
    desk.editor.undo();
    assert_eq!(rows(&desk)[5], 2.2);
}

#[test]
fn escape_goes_from_the_step_to_the_selection_to_the_hand() {
    let mut desk = Desk::demo();
    desk.tap(0.225, 2.2);
    desk.down(0.225, 2.2);
    desk.go(0.225, 2.6);
    assert!(desk.key(Key::Escape));
    assert_eq!((rows(&desk)[5], desk.editor.chosen().len()), (2.2, 1));
    desk.up(0.225, 2.6);
    assert!(desk.key(Key::Escape) && desk.editor.chosen().is_empty());
    assert_eq!(desk.editor.tool(), Tool::Select);
    assert!(desk.key(Key::Escape));
    assert_eq!(desk.editor.tool(), Tool::Hand);
    desk.tap(0.225, 2.2);
    assert_eq!(desk.editor.chosen().len(), 1, "the hand selects what it taps");
}

#[test]
fn legs_are_spaced_by_a_pull_along_their_bearer_and_one_moved_leaves_the_others() {
    let mut desk = Desk::boxed();
    desk.tool(Tool::Legs);
    desk.drag((1.0, 2.0), (2.0, 2.0));
    let lines = |desk: &Desk| desk.scheme().falsework[0].leg_lines.iter().map(|line| line.x_m).collect::<Vec<_>>();
    let gaps = |places: &[f64]| places.windows(2).map(|pair| pair[1] - pair[0]).collect::<Vec<_>>();
    let regular = lines(&desk);
    assert!(gaps(&regular).iter().all(|gap| (gap - 0.9).abs() < 1e-9), "5.4 m in six gaps of no more than 1 m");
    assert_eq!(desk.editor.undo_label(), Some("Space leg lines"));
    desk.tool(Tool::Select);
    desk.drag((regular[2], 1.5), (regular[2] + 0.2, 1.5));
    let moved = lines(&desk);
    for (i, (was, is)) in regular.iter().zip(&moved).enumerate() {
        assert!((is - was - if i == 2 { 0.2 } else { 0.0 }).abs() < 1e-9, "{moved:?}");
    }
}

#[test]
fn alignment_offers_what_suits_and_refuses_with_a_reason() {
    let mut desk = Desk::demo();
    desk.tap(0.225, 2.2);
    assert!(!desk.editor.actions().contains(&Action::SameLevel));
    desk.modifiers.shift = true;
    desk.tap(0.225, 3.45);
    assert!(desk.editor.actions().contains(&Action::SameLevel));
    let before = desk.scheme().clone();
    desk.act(Action::SameLevel);
    assert_eq!(*desk.scheme(), before);
    assert!(desk.last.message.as_deref().is_some_and(|told| told.contains("there already")), "{:?}", desk.last.message);
    desk.modifiers.shift = false;
    desk.drag((0.225, 2.2), (0.225, 2.3));
    desk.tap(0.225, 2.3);
    desk.modifiers.shift = true;
    desk.tap(7.875, 2.2);
    desk.act(Action::SameLevel);
    let levels: Vec<f64> = rows(&desk).into_iter().filter(|level| (2.1..2.4).contains(level)).collect();
    assert!(levels.len() == 2 && levels.iter().all(|level| (level - 2.3).abs() < 1e-9), "{levels:?}");
}
