//! The whole drawing by keys alone.

use super::*;

impl Desk {
    fn keys(&mut self, keys: &[Key]) {
        for key in keys {
            assert!(self.key(*key), "{key:?}");
        }
    }

    /// A key with Shift.
    fn shifted(&mut self, key: Key) {
        self.modifiers.shift = true;
        assert!(self.key(key), "{key:?}");
        self.modifiers.shift = false;
    }

    /// A box of 5 m by 4 m with a cell in it, by typed points and lengths.
    fn typed_box() -> Self {
        let mut desk = Self::blank();
        desk.type_text("l0;0");
        desk.keys(&[Key::Enter, Key::Right]);
        desk.type_text("5 m");
        desk.keys(&[Key::Enter, Key::Up]);
        desk.type_text("4000");
        desk.keys(&[Key::Enter, Key::Left]);
        desk.type_text("5000");
        desk.keys(&[Key::Enter, Key::Enter]);
        desk.editor.fit();
        desk.key(Key::Escape);
        desk.type_text("l");
        for point in ["450;500", "4550;500", "4550;3550", "450;3550"] {
            desk.type_text(point);
            desk.keys(&[Key::Enter]);
        }
        desk.keys(&[Key::Enter]);
        desk
    }
}

fn points(ring: &[falsewright_core::scheme::Corner]) -> Vec<(f64, f64)> {
    let round = |value: f64| (value * 1e6).round() / 1e6;
    ring.iter().map(|corner| (round(corner.x_m), round(corner.z_m))).collect()
}

const SPACE: Key = Key::Char(' ');

#[test]
fn rings_are_drawn_by_typed_points_and_lengths() {
    let desk = Desk::typed_box();
    let section = &desk.editor.scheme().section;
    assert_eq!(points(&section.outline), [(0.0, 0.0), (5.0, 0.0), (5.0, 4.0), (0.0, 4.0)]);
    assert_eq!(points(&section.cells[0].corners), [(0.45, 0.5), (4.55, 0.5), (4.55, 3.55), (0.45, 3.55)]);
}

#[test]
fn a_typed_point_that_lacks_a_length_is_refused_and_stays() {
    let mut desk = Desk::blank();
    desk.type_text("l450");
    desk.keys(&[Key::Enter]);
    assert!(desk.last.message.as_deref().is_some_and(|message| message.contains("semicolon")), "{:?}", desk.last);
    desk.type_text(";500");
    desk.keys(&[Key::Enter]);
    assert_eq!(desk.editor.overlay().preview.first(), Some(&Point::new(0.45, 0.5)));
}

#[test]
fn every_pen_is_used_at_its_next_place() {
    let mut desk = Desk::typed_box();
    desk.type_text("j");
    desk.keys(&[Key::PageDown, Key::Enter]);
    desk.key(Key::Escape);
    desk.type_text("s");
    let mut seen = Vec::new();
    for _ in 0..9 {
        desk.keys(&[Key::PageDown, SPACE]);
        seen.push(desk.editor.cursor());
    }
    // Four walls, parted by the joint.
    assert_eq!(seen[8], seen[0], "the places come round: {seen:?}");
    assert_eq!(desk.editor.scheme().shutters.len(), 8);

    // A row where it is pressed, and rows over the height by a pull of one spacing.
    desk.type_text("t");
    desk.keys(&[Key::PageDown, SPACE]);
    assert_eq!(desk.editor.scheme().ties.len(), 1);
    desk.keys(&[Key::PageDown, Key::PageDown]);
    desk.shifted(SPACE);
    assert!(desk.editor.cursor_holds());
    desk.keys(&[Key::Up, Key::Up, Key::Up, SPACE]);
    assert!(desk.editor.scheme().ties.len() > 2, "{:?}", desk.editor.scheme().ties);
    assert!(!desk.editor.cursor_holds());

    desk.type_text("f");
    desk.keys(&[Key::PageDown, SPACE]);
    assert_eq!(desk.editor.scheme().falsework.len(), 1);
    desk.type_text("o");
    desk.keys(&[Key::PageDown]);
    desk.shifted(Key::Left);
    desk.keys(&[SPACE]);
    for _ in 0..3 {
        desk.shifted(Key::Right);
    }
    desk.keys(&[SPACE]);
    assert_eq!(desk.editor.scheme().openings.len(), 1, "{:?}", desk.last);
}

#[test]
fn escape_lets_go_of_what_the_cursor_pulls() {
    let mut desk = Desk::typed_box();
    desk.type_text("s");
    desk.keys(&[Key::PageDown, SPACE]);
    let before = desk.editor.scheme().clone();
    desk.type_text("t");
    desk.keys(&[Key::PageDown]);
    desk.shifted(SPACE);
    desk.keys(&[Key::Up, Key::Up, Key::Up]);
    assert_ne!(desk.editor.shown(), &before);
    desk.keys(&[Key::Escape]);
    assert_eq!(desk.editor.shown(), &before);
    assert_eq!(desk.editor.scheme(), &before);
}

#[test]
fn the_cursor_selects_and_stays_in_sight_and_a_pointer_takes_over() {
    let mut desk = Desk::boxed();
    desk.keys(&[Key::Right]);
    let first = desk.editor.cursor().unwrap();
    for _ in 0..200 {
        desk.keys(&[Key::Right]);
    }
    let at = desk.editor.viewport().to_screen(desk.editor.cursor().unwrap());
    assert!((0.0..=1200.0).contains(&at.x), "{at:?}");
    for _ in 0..200 {
        desk.keys(&[Key::Left]);
    }
    assert!((desk.editor.cursor().unwrap() - first).length() < 1e-9);
    // To the middle of the left wall's outer face and onto it.
    while desk.editor.cursor().is_some_and(|at| at.x > 0.0) {
        desk.keys(&[Key::Left]);
    }
    desk.keys(&[SPACE]);
    assert!(matches!(desk.editor.selection(), Some(Target::Face(_))), "{:?}", desk.editor.selection());
    desk.go(1.0, 1.0);
    assert_eq!(desk.editor.cursor(), None);
    // What is selected is moved by the arrows again.
    assert!(desk.key(Key::Left));
    assert_eq!(desk.editor.cursor(), None);
}

#[test]
fn a_pointer_that_stands_still_leaves_the_cursor() {
    let mut desk = Desk::boxed();
    desk.go(1.0, 1.0);
    desk.keys(&[Key::Right]);
    desk.go(1.0, 1.0);
    assert!(desk.editor.cursor().is_some());
}

#[test]
fn a_space_bar_that_is_held_for_the_sheet_presses_nothing() {
    let mut desk = Desk::boxed();
    desk.type_text("j");
    desk.keys(&[Key::PageDown]);
    let held = KeyInput { key: SPACE, modifiers: Modifiers::default() };
    assert_eq!(desk.editor.key_held(held, &desk.design.clone()), None);
    assert!(desk.editor.scheme().section.joints.is_empty());
}
