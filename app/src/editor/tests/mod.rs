//! Pointer scripts: a whole scheme drawn as a user draws it.

mod items;
mod outline;

use super::*;
use falsewright_core::Design;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Bays, Scheme, Section, TieEnd, Walls, heron_lane};

mod choosing;
mod clipboard;
mod cursor;
mod steps;
mod views;

/// An editor with a pointer; after every event what is shown is valid.
struct Desk {
    editor: Editor,
    kind: PointerKind,
    modifiers: Modifiers,
    last: Outcome,
    /// Of the committed scheme.
    design: Design,
}

impl Desk {
    fn new(section: Section) -> Self {
        let mut editor = Editor::new(Scheme::blank(section));
        editor.viewport_mut().resize(1200.0, 900.0);
        editor.fit();
        let (kind, modifiers) = (PointerKind::Mouse, Modifiers::default());
        Self { editor, kind, modifiers, last: Outcome::default(), design: Design::default() }
    }

    fn blank() -> Self {
        Self::new(Section { outline: Vec::new(), cells: Vec::new(), joints: Vec::new() })
    }

    fn boxed() -> Self {
        Self::new(Section::box_cell(6.0, 3.6, Walls { wall_m: 0.45, roof_m: 0.4, base_m: 0.5, haunch_m: 0.25 }))
    }

    fn input(&self, x: f64, z: f64) -> PointerInput {
        let at = self.editor.viewport().to_screen(Point::new(x, z));
        PointerInput { id: 1, kind: self.kind, at, button: Button::Main, modifiers: self.modifiers }
    }

    fn seen(&mut self, outcome: Outcome) {
        for scheme in [self.editor.scheme(), self.editor.shown()] {
            if !scheme.section.outline.is_empty() {
                assert_eq!(scheme.validate(), Ok(()));
            }
        }
        if outcome.committed {
            self.design = falsewright_core::design(self.editor.scheme(), &Catalogue::generic()).unwrap_or_default();
        }
        self.last = outcome;
    }

    fn down(&mut self, x: f64, z: f64) {
        let outcome = self.editor.pointer_down(self.input(x, z), &self.design);
        self.seen(outcome);
    }

    fn go(&mut self, x: f64, z: f64) {
        let outcome = self.editor.pointer_move(self.input(x, z), &self.design);
        self.seen(outcome);
    }

    fn up(&mut self, x: f64, z: f64) {
        let outcome = self.editor.pointer_up(self.input(x, z), &self.design);
        self.seen(outcome);
    }

    fn tap(&mut self, x: f64, z: f64) {
        self.go(x, z);
        self.down(x, z);
        self.up(x, z);
    }

    fn drag(&mut self, from: (f64, f64), to: (f64, f64)) {
        self.down(from.0, from.1);
        for i in 1..=4 {
            let t = f64::from(i) / 4.0;
            self.go(from.0 + (to.0 - from.0) * t, from.1 + (to.1 - from.1) * t);
        }
        self.up(to.0, to.1);
    }

    fn key(&mut self, key: Key) -> bool {
        let outcome = self.editor.key(KeyInput { key, modifiers: self.modifiers }, &self.design);
        let taken = outcome.is_some();
        self.seen(outcome.unwrap_or_default());
        taken
    }

    fn type_text(&mut self, text: &str) {
        text.chars().for_each(|c| assert!(self.key(Key::Char(c))));
    }

    fn hold(&mut self, x: f64, z: f64) {
        self.down(x, z);
        let outcome = self.editor.pointer_held(&self.design).unwrap_or_default();
        self.seen(outcome);
        self.up(x, z);
    }

    fn demo() -> Self {
        let mut desk = Self::boxed();
        let outcome = desk.editor.open(heron_lane().unwrap());
        desk.seen(outcome);
        desk
    }

    fn act(&mut self, action: Action) {
        let outcome = self.editor.act(action).unwrap_or_default();
        self.seen(outcome);
    }

    fn tool(&mut self, tool: Tool) {
        let outcome = self.editor.set_tool(tool);
        self.seen(outcome);
    }

    fn scheme(&self) -> &Scheme {
        self.editor.scheme()
    }

    fn corners(&self) -> Vec<(f64, f64)> {
        self.scheme().section.outline.iter().map(|corner| (corner.x_m, corner.z_m)).collect()
    }
}

#[test]
fn a_box_is_drawn_by_points_and_typed_lengths_and_all_is_undone() {
    let mut desk = Desk::blank();
    let blank = desk.scheme().clone();
    desk.tool(Tool::Outline);
    desk.tap(0.0, 0.0);
    desk.go(3.0, 0.1);
    desk.type_text("6000+2*450");
    assert_eq!(desk.editor.overlay().entry.unwrap().length_m, Some(6.9));
    desk.key(Key::Enter);
    desk.go(6.85, 2.0);
    desk.type_text("4.5");
    desk.key(Key::Enter);
    desk.tap(0.03, 4.52);
    assert_eq!(desk.editor.overlay().preview.len(), 5);
    desk.tap(0.02, 0.03);
    let corners = desk.corners();
    let expected = [(0.0, 0.0), (6.9, 0.0), (6.9, 4.5), (0.0, 4.5)];
    assert!(corners.iter().zip(expected).all(|(a, b)| (a.0 - b.0).abs() < 1e-9 && (a.1 - b.1).abs() < 1e-9));
    assert_eq!(corners.len(), 4);

    // A cell by a pulled rectangle.
    desk.drag((0.45, 0.5), (6.45, 4.1));
    assert_eq!(desk.scheme().section.cells.len(), 1);
    assert_eq!(desk.scheme().section.cells[0].corners.len(), 4);

    desk.tool(Tool::Joint);
    desk.tap(-0.5, 0.65);
    assert!((desk.scheme().section.joints[0].z_m - 0.65).abs() < 1e-9);

    desk.tool(Tool::Shutter);
    for x in [0.0, 0.45, 6.45, 6.9] {
        desk.tap(x, 2.5);
    }
    assert_eq!(desk.scheme().shutters.len(), 4);
    let joint = desk.scheme().section.joints[0].id;
    assert!(desk.scheme().shutters.iter().all(|shutter| shutter.face.pour == joint));

    desk.tool(Tool::Ties);
    desk.tap(-0.15, 1.2);
    let first = &desk.scheme().ties[0];
    assert_eq!(
        (first.shutter, first.to),
        (desk.scheme().shutters[0].id, TieEnd::Shutter { id: desk.scheme().shutters[1].id })
    );
    desk.drag((-0.15, 2.0), (-0.15, 2.9));
    let count = desk.scheme().ties.len();
    assert!(count >= 4, "{count}");
    desk.drag((7.05, 2.0), (7.05, 2.9));
    assert_eq!(desk.scheme().ties.len(), 2 * count);

    desk.tool(Tool::Legs);
    desk.tap(3.45, 2.0);
    assert_eq!(desk.scheme().falsework.len(), 1);
    let lines = desk.scheme().falsework[0].leg_lines.len();
    desk.tap(1.2, 2.0);
    assert_eq!(desk.scheme().falsework[0].leg_lines.len(), lines + 1);

    desk.tool(Tool::Opening);
    desk.drag((1.7, 1.5), (5.2, 1.5));
    let opening = &desk.scheme().openings[0];
    assert!((opening.left_m - 1.7).abs() < 1e-9 && (opening.width_m - 3.5).abs() < 1e-9);
    let design = &desk.design;
    assert_eq!(design.model.shutters.len(), 4);
    assert_eq!(design.model.falsework.len(), 1);
    assert!(design.model.falsework[0].opening.is_some());

    let whole = desk.scheme().clone();
    let mut steps = 0;
    while desk.editor.can_undo() {
        let outcome = desk.editor.undo();
        desk.seen(outcome);
        steps += 1;
    }
    assert_eq!(*desk.scheme(), blank);
    for _ in 0..steps {
        let outcome = desk.editor.redo();
        desk.seen(outcome);
    }
    assert!(!desk.editor.can_redo());
    assert_eq!(*desk.scheme(), whole);
}

#[test]
fn a_drag_is_shown_live_and_is_one_step() {
    let mut desk = Desk::boxed();
    desk.down(6.9, 2.0);
    desk.go(7.2, 2.0);
    assert!(desk.last.scheme_changed && !desk.last.committed);
    assert!((desk.editor.shown().section.outline[1].x_m - 7.2).abs() < 1e-9);
    assert!((desk.scheme().section.outline[1].x_m - 6.9).abs() < 1e-9);
    desk.go(7.4, 2.0);
    desk.up(7.4, 2.0);
    assert!(desk.last.committed);
    assert!((desk.scheme().section.outline[2].x_m - 7.4).abs() < 1e-9);
    assert_eq!(desk.editor.undo_label(), Some("Move edge"));
    desk.editor.undo();
    assert!(!desk.editor.can_undo());
}

#[test]
fn escape_and_cancel_bring_back_what_was() {
    let mut desk = Desk::boxed();
    let before = desk.scheme().clone();
    desk.down(6.9, 2.0);
    desk.go(7.4, 2.0);
    assert!(desk.key(Key::Escape));
    assert_eq!(*desk.editor.shown(), before);
    desk.up(7.4, 2.0);
    desk.down(6.9, 2.0);
    desk.go(7.4, 2.0);
    let outcome = desk.editor.pointer_cancel(desk.input(7.4, 2.0));
    desk.seen(outcome);
    assert_eq!(*desk.editor.shown(), before);
    assert!(!desk.editor.can_undo());
}

#[test]
fn a_drag_too_far_keeps_the_last_good_shape_and_says_why() {
    let mut desk = Desk::boxed();
    desk.down(6.9, 2.0);
    desk.go(6.6, 2.0);
    assert!((desk.editor.shown().section.outline[1].x_m - 6.6).abs() < 1e-9);
    desk.go(5.0, 2.0);
    assert!(desk.editor.overlay().refusal.is_some());
    desk.up(5.0, 2.0);
    assert!((desk.scheme().section.outline[1].x_m - 6.6).abs() < 1e-9);
    assert!(desk.last.message.is_some());
}

#[test]
fn a_second_finger_drops_the_stroke_and_moves_the_sheet() {
    let mut desk = Desk::boxed();
    desk.kind = PointerKind::Touch;
    let before = desk.scheme().clone();
    desk.down(6.9, 2.0);
    desk.go(7.2, 2.0);
    let zoom = desk.editor.viewport().zoom();
    let second = PointerInput { id: 2, ..desk.input(3.0, 2.0) };
    let outcome = desk.editor.pointer_down(second, &Design::default());
    desk.seen(outcome);
    assert_eq!(*desk.editor.shown(), before);
    let farther = PointerInput { at: ScreenPoint::new(second.at.x - 100.0, second.at.y), ..second };
    desk.editor.pointer_move(farther, &Design::default());
    assert!(desk.editor.viewport().zoom() > zoom);
    desk.editor.pointer_up(farther, &Design::default());
    desk.up(7.2, 2.0);
    assert_eq!(*desk.scheme(), before);
}

#[test]
fn arrows_nudge_and_delete_removes() {
    let mut desk = Desk::boxed();
    desk.tap(6.9, 2.0);
    assert!(matches!(desk.editor.selection(), Some(Target::Face(_))));
    assert!(desk.key(Key::Right));
    assert!((desk.scheme().section.outline[1].x_m - 6.905).abs() < 1e-9);
    desk.modifiers.shift = true;
    desk.key(Key::Left);
    desk.modifiers.shift = false;
    assert!((desk.scheme().section.outline[1].x_m - 6.855).abs() < 1e-9);
    assert!(!desk.key(Key::Up));
    desk.tool(Tool::Shutter);
    desk.tap(0.0, 2.0);
    assert!(matches!(desk.editor.selection(), Some(Target::Shutter(_))));
    assert!(desk.key(Key::Delete));
    assert!(desk.scheme().shutters.is_empty() && desk.editor.selection().is_none());
    desk.modifiers.control = true;
    assert!(desk.key(Key::Char('z')));
    assert_eq!(desk.scheme().shutters.len(), 1);
    assert!(desk.key(Key::Char('y')));
    assert!(desk.scheme().shutters.is_empty());
}

#[test]
fn an_opening_is_resized_by_its_sides_and_made_by_two_taps() {
    let mut desk = Desk::boxed();
    desk.tool(Tool::Legs);
    desk.tap(3.45, 4.1);
    desk.tool(Tool::Opening);
    desk.tap(1.7, 1.5);
    desk.go(4.0, 1.5);
    assert_eq!(desk.editor.shown().openings.len(), 1);
    assert!(desk.scheme().openings.is_empty());
    desk.tap(5.0, 1.5);
    assert!((desk.scheme().openings[0].width_m - 3.3).abs() < 1e-9);
    desk.tool(Tool::Select);
    desk.drag((5.0, 1.5), (5.2, 1.5));
    assert!((desk.scheme().openings[0].width_m - 3.5).abs() < 1e-9);
    desk.drag((1.7, 1.5), (1.8, 1.5));
    let opening = &desk.scheme().openings[0];
    assert!((opening.left_m - 1.8).abs() < 1e-9 && (opening.width_m - 3.4).abs() < 1e-9);
}

#[test]
fn a_typed_dimension_changes_the_scheme_or_says_what_is_wrong() {
    let mut desk = Desk::boxed();
    let dimensions = desk.editor.dimensions();
    let clear = dimensions.iter().find(|d| (d.value_m - 6.0).abs() < 1e-9).unwrap().key;
    let outcome = desk.editor.type_dimension(clear, "7,2 m").unwrap();
    desk.seen(outcome);
    assert!((desk.scheme().section.outline[1].x_m - 8.1).abs() < 1e-9);
    assert!(matches!(desk.editor.type_dimension(clear, "wide"), Err(Refusal::Quantity(_))));
    assert!(matches!(desk.editor.type_dimension(clear, "0"), Err(Refusal::Edit(_))));
    assert!((desk.scheme().section.outline[1].x_m - 8.1).abs() < 1e-9);
}

#[test]
fn a_finger_that_drags_nothing_moves_the_sheet() {
    let mut desk = Desk::boxed();
    desk.kind = PointerKind::Touch;
    let before = desk.editor.viewport().to_screen(Point::new(0.0, 0.0));
    desk.drag((-1.2, 5.0), (-1.0, 5.0));
    let after = desk.editor.viewport().to_screen(Point::new(0.0, 0.0));
    assert!(after.x > before.x + 5.0, "{before:?} {after:?}");
    assert!(!desk.editor.can_undo());
}

#[test]
fn settings_and_opening_a_file_are_steps_too() {
    let mut desk = Desk::boxed();
    let bays = Bays { length_m: 12.0, count: 3 };
    let outcome = desk.editor.perform(Edit::SetBays(bays)).unwrap();
    desk.seen(outcome);
    let same = desk.editor.perform(Edit::SetBays(bays)).unwrap();
    assert!(!same.committed);
    assert!(desk.editor.perform(Edit::SetBays(Bays { length_m: f64::NAN, count: 3 })).is_err());
    assert_eq!(desk.scheme().bays, bays);
    let demo = heron_lane().unwrap();
    let outcome = desk.editor.open(demo.clone());
    desk.seen(outcome);
    assert_eq!(*desk.scheme(), demo);
    desk.editor.undo();
    desk.editor.undo();
    assert!(!desk.editor.can_undo());
}

#[test]
fn every_element_of_the_demo_can_be_hit_and_dragged_without_breaking_it() {
    let mut desk = Desk::boxed();
    let outcome = desk.editor.open(heron_lane().unwrap());
    desk.seen(outcome);
    for tool in Tool::ALL {
        desk.tool(tool);
        for i in 0..6 {
            for j in 0..4 {
                let (x, z) = (-0.2 + 1.35 * f64::from(i), 0.2 + 1.4 * f64::from(j));
                desk.tap(x, z);
                desk.drag((x, z), (x + 0.37, z + 0.21));
                desk.key(Key::Escape);
            }
        }
    }
    while desk.editor.can_undo() {
        desk.editor.undo();
        assert_eq!(desk.scheme().validate(), Ok(()));
    }
}
#[test]
fn a_scheme_left_as_it_is_drawn_passes_its_checks() {
    let mut desk = Desk::boxed();
    desk.tool(Tool::Joint);
    desk.tap(-0.5, 0.65);
    desk.tool(Tool::Shutter);
    for x in [0.0, 0.45, 6.45, 6.9] {
        desk.tap(x, 2.5);
        desk.tap(x, 0.6);
    }
    assert_eq!(desk.scheme().shutters.len(), 8);
    desk.tool(Tool::Ties);
    for (x, out) in [(-0.15, -1.0), (7.05, 1.0)] {
        desk.drag((x, 2.0), (x, 2.9));
        desk.drag((x, 3.7), (x + 4.0 * out, 3.7));
        desk.tap(x, 0.6);
    }
    desk.tool(Tool::Legs);
    desk.tap(3.45, 2.0);
    desk.tool(Tool::Opening);
    desk.drag((1.9, 1.5), (5.0, 1.5));
    let results = &desk.design.results;
    let failed: Vec<String> = results
        .findings
        .iter()
        .filter(|finding| finding.severity == falsewright_core::results::Severity::Fail)
        .map(|finding| finding.text.to_string())
        .collect();
    assert!(failed.is_empty(), "{failed:#?}");
    assert!(results.checks.len() > 100 && results.checks.iter().all(|check| check.ratio <= 1.0));
    let props = desk.scheme().ties.iter().filter(|row| matches!(row.to, TieEnd::Fixed { .. }));
    assert_eq!(props.count(), 2);
}
