//! Back and forth through the steps, and what waits to become one.

use super::{Editor, Outcome};
use crate::editor::Document;
use crate::editor::tool::Pen;
use crate::language::key;

impl Editor {
    /// Commits what waits to be kept or refused, if anything does.
    pub(super) fn keep_proposal(&mut self) -> Option<Outcome> {
        let (edit, scheme) = self.preview.take_if(|_| self.pen.proposes())?;
        self.pen = Pen::new(self.pen.tool());
        let label = self.step_name(&edit);
        self.commit(scheme, &label);
        Some(Outcome::committed())
    }

    /// Takes back what is proposed, else the last step.
    pub fn undo(&mut self) -> Outcome {
        if self.pen.proposes() {
            self.drop_gesture();
            return Outcome { scheme_changed: true, ..Outcome::view() };
        }
        self.go_to(self.document.at().wrapping_sub(1))
    }

    /// Does again what was taken back.
    pub fn redo(&mut self) -> Outcome {
        self.go_to(self.document.at() + 1)
    }

    /// Goes to the state after so many steps. What is proposed is kept, unless that would drop the step to go to.
    pub fn go_to(&mut self, step: usize) -> Outcome {
        let kept = if step <= self.document.at() { self.keep_proposal() } else { None };
        let shown = self.preview.is_some();
        self.drop_gesture();
        let Document { scheme, history } = &mut self.document;
        let before = history.at();
        let arrived = history.go(step, scheme);
        if history.at() == before {
            return Outcome { scheme_changed: shown, ..Outcome::view() }.after(kept);
        }
        self.settle();
        let message = (!arrived).then(|| say!("The steps beyond this one can no longer be read."));
        Outcome { message, ..Outcome::committed() }
    }

    /// Whether there is a step to take back.
    pub fn can_undo(&self) -> bool {
        self.undo_label().is_some()
    }

    /// Whether there is a step to do again.
    pub fn can_redo(&self) -> bool {
        self.redo_label().is_some()
    }

    /// What undo would take back.
    pub fn undo_label(&self) -> Option<&str> {
        if self.pen.proposes() {
            return Some(key("Sketch"));
        }
        self.document.history.undo_label()
    }

    /// What redo would do again.
    pub fn redo_label(&self) -> Option<&str> {
        self.document.history.redo_label()
    }
}
