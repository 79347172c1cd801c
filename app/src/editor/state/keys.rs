//! Keys.

use super::{Action, Editor, Outcome, Refusal};
use crate::editor::tool::Event;
use crate::editor::{Key, KeyInput, Modifiers, PointerKind, ScreenPoint, Tool, moving};
use crate::units;
use falsewright_core::Design;
use falsewright_core::geometry::Point;
use falsewright_core::model::Model;

/// One press of a zoom key.
const KEY_ZOOM: f64 = 1.1;

impl Editor {
    /// A key press; none: not for the editor.
    pub fn key(&mut self, input: KeyInput, design: &Design) -> Option<Outcome> {
        let KeyInput { key, modifiers } = input;
        if modifiers.control && matches!(key, Key::Char(_)) {
            return self.command(key, modifiers, &design.model);
        }
        let drawn = self.pen.last_point();
        let step = self.step(Event::Key(key), &design.model, PointerKind::Mouse, modifiers);
        if step.taken {
            let outcome = self.take(step);
            self.follow_drawn(drawn, &design.model);
            return Some(outcome);
        }
        let nudges =
            !self.chosen.is_empty() && !self.cursor_holds() && (self.tool() == Tool::Select || self.cursor().is_none());
        if (!nudges || !matches!(key, Key::Left | Key::Right | Key::Up | Key::Down))
            && let Some(outcome) = self.cursor_key(input, &design.model)
        {
            return Some(outcome);
        }
        match key {
            Key::Escape => Some(self.back_out()),
            Key::Delete | Key::Backspace => self.remove_chosen("Remove"),
            Key::Left | Key::Right | Key::Up | Key::Down => self.nudge(key, modifiers, &design.model),
            Key::Char(c) if c.is_ascii_digit() || c == '.' || c == ',' => self.type_into_selection(c),
            Key::Char(c) => {
                let tool = Tool::ALL.into_iter().find(|tool| tool.letter() == c.to_ascii_lowercase())?;
                Some(self.set_tool(tool))
            }
            Key::Enter | Key::PageDown | Key::PageUp => None,
        }
    }

    fn command(&mut self, key: Key, modifiers: Modifiers, model: &Model) -> Option<Outcome> {
        let Key::Char(c) = key else { return None };
        let middle = ScreenPoint::new(self.viewport().width_px / 2.0, self.viewport().height_px / 2.0);
        match (c.to_ascii_lowercase(), modifiers.shift) {
            ('z', false) => return Some(self.undo()),
            ('z', true) | ('y', false) => return Some(self.redo()),
            ('a', false) => return Some(self.choose_all(model)),
            ('d', false) => return self.act(Action::Duplicate),
            ('+' | '=', _) => self.viewport_mut().zoom_by(KEY_ZOOM, middle),
            ('-', _) => self.viewport_mut().zoom_by(1.0 / KEY_ZOOM, middle),
            ('0', _) => self.viewport_mut().zoom_to(1.0, middle),
            _ => return None,
        }
        Some(Outcome::view())
    }

    /// A key that is held goes on with its step, so that all of it is one.
    pub fn key_held(&mut self, input: KeyInput, design: &Design) -> Option<Outcome> {
        // The space bar is held for the sheet to follow the pointer.
        if input.key == Key::Char(' ') {
            return None;
        }
        self.nudging = matches!(input.key, Key::Left | Key::Right | Key::Up | Key::Down);
        let outcome = self.key(input, design);
        self.nudging = false;
        outcome
    }

    /// Out of a drag, then out of the selection, then out of the tool to the hand.
    fn back_out(&mut self) -> Outcome {
        if self.preview.is_some() || self.recogniser.busy() {
            self.drop_gesture();
            return Outcome { scheme_changed: true, ..Outcome::view() };
        }
        self.refusal = None;
        if self.chosen.is_empty() { self.set_tool(Tool::Hand) } else { self.select(None) }
    }

    fn nudge(&mut self, key: Key, modifiers: Modifiers, model: &Model) -> Option<Outcome> {
        let step = units::nudges_m()[usize::from(modifiers.shift)];
        let by = match key {
            Key::Left => Point::new(-step, 0.0),
            Key::Right => Point::new(step, 0.0),
            Key::Up => Point::new(0.0, step),
            _ => Point::new(0.0, -step),
        };
        let places = self.places(model);
        let edit = match self.chosen.as_slice() {
            [] => return None,
            [one] => moving::nudge(&places, *one, by)?,
            all => moving::all_by(&places, all, by)?,
        };
        let label = self.step_name(&edit);
        Some(self.perform_as(&edit, &label))
    }

    pub(super) fn refused(&mut self, refusal: &Refusal) -> Outcome {
        self.refusal = Some(refusal.to_string());
        Outcome { message: self.refusal.clone(), ..Outcome::view() }
    }
}
