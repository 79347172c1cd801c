//! Keys.

use super::{Editor, Outcome, Refusal};
use crate::editor::places::Places;
use crate::editor::tool::Event;
use crate::editor::{Key, KeyInput, Modifiers, ScreenPoint, Target, Tool, moving};
use falsewright_core::Design;
use falsewright_core::geometry::Point;
use falsewright_core::model::Model;
use falsewright_core::scheme::edit::Edit;

/// One nudge by an arrow key, and one with Shift, m.
const NUDGE_M: f64 = 0.005;
const LARGE_NUDGE_M: f64 = 0.05;
/// One press of a zoom key.
const KEY_ZOOM: f64 = 1.1;

impl Editor {
    /// A key press; none: not for the editor.
    pub fn key(&mut self, input: KeyInput, design: &Design) -> Option<Outcome> {
        let KeyInput { key, modifiers } = input;
        if modifiers.control {
            return self.command(key, modifiers);
        }
        let step = self.step(Event::Key(key), &design.model, 0.0, modifiers);
        if step.taken {
            return Some(self.take(step));
        }
        match key {
            Key::Escape => Some(self.back_out()),
            Key::Delete | Key::Backspace => self.remove_selection(),
            Key::Left | Key::Right | Key::Up | Key::Down => self.nudge(key, modifiers, &design.model),
            Key::Char(c) if c.is_ascii_digit() || c == '.' || c == ',' => self.type_into_selection(c),
            Key::Char(c) => {
                let tool = Tool::ALL.into_iter().find(|tool| tool.letter() == c.to_ascii_lowercase())?;
                Some(self.set_tool(tool))
            }
            Key::Enter => None,
        }
    }

    fn command(&mut self, key: Key, modifiers: Modifiers) -> Option<Outcome> {
        let Key::Char(c) = key else { return None };
        let middle = ScreenPoint::new(self.viewport.width_px / 2.0, self.viewport.height_px / 2.0);
        match (c.to_ascii_lowercase(), modifiers.shift) {
            ('z', false) => return Some(self.undo()),
            ('z', true) | ('y', false) => return Some(self.redo()),
            ('+' | '=', _) => self.viewport.zoom_by(KEY_ZOOM, middle),
            ('-', _) => self.viewport.zoom_by(1.0 / KEY_ZOOM, middle),
            ('0', _) => self.viewport.zoom_to(1.0, middle),
            _ => return None,
        }
        Some(Outcome::view())
    }

    /// Out of a drag, then out of the selection, then out of the tool.
    fn back_out(&mut self) -> Outcome {
        if self.preview.is_some() || self.recogniser.busy() {
            self.drop_gesture();
            return Outcome { scheme_changed: true, ..Outcome::view() };
        }
        self.refusal = None;
        if self.selection.take().is_some() { Outcome::view() } else { self.set_tool(Tool::Select) }
    }

    fn remove_selection(&mut self) -> Option<Outcome> {
        let edit = match self.selection? {
            Target::Cut(corner) => Edit::SetCut { corner, cut: None },
            Target::Face(_) | Target::Dimension(_) => return None,
            other => Edit::Remove(other.element()?),
        };
        Some(self.perform(edit).unwrap_or_else(|refusal| self.refused(&refusal)))
    }

    fn nudge(&mut self, key: Key, modifiers: Modifiers, model: &Model) -> Option<Outcome> {
        let step = if modifiers.shift { LARGE_NUDGE_M } else { NUDGE_M };
        let by = match key {
            Key::Left => Point::new(-step, 0.0),
            Key::Right => Point::new(step, 0.0),
            Key::Up => Point::new(0.0, step),
            _ => Point::new(0.0, -step),
        };
        let places = Places { scheme: &self.scheme, faces: &self.faces, model };
        let edit = moving::nudge(&places, self.selection?, by)?;
        Some(self.perform(edit).unwrap_or_else(|refusal| self.refused(&refusal)))
    }

    fn refused(&mut self, refusal: &Refusal) -> Outcome {
        self.refusal = Some(refusal.to_string());
        Outcome { message: self.refusal.clone(), ..Outcome::view() }
    }
}
