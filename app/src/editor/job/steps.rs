//! What was done in the tray, back and forth.

use super::{Job, OptionId};
use crate::editor::Document;
use crate::language::key;

/// What lies in the tray, and which option is on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Arrangement {
    pub order: Vec<OptionId>,
    pub here: OptionId,
}

/// A step of the tray.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TrayStep {
    /// A blank option.
    New,
    /// A copy of the one on the sheet.
    Copy,
    /// Another order.
    Move,
    /// Out of the tray.
    PutAway,
    /// Into the tray again.
    BringBack,
    /// Other options from a file.
    Open,
}

impl TrayStep {
    /// In plain words, to be looked up.
    pub fn label(self) -> &'static str {
        match self {
            Self::New => key("New option"),
            Self::Copy => key("Copy the option"),
            Self::Move => key("Move the option"),
            Self::PutAway => key("Put the option away"),
            Self::BringBack => key("Bring the option back"),
            Self::Open => key("Open other options"),
        }
    }
}

impl Job {
    /// The step of the tray that undo takes back, if the tray was the last that was changed.
    pub fn undo_step(&self) -> Option<TrayStep> {
        self.past.last().filter(|_| self.in_turn).map(|(step, _)| *step)
    }

    /// The step of the tray that redo does again, if the tray was the last that was changed.
    pub fn redo_step(&self) -> Option<TrayStep> {
        self.future.last().filter(|_| self.in_turn).map(|(step, _)| *step)
    }

    /// Takes back the last step of the tray.
    pub fn undo(&mut self, on_sheet: &mut Document) -> bool {
        let Some((step, before)) = self.past.pop() else { return false };
        let after = self.arrange(before, on_sheet);
        self.future.push((step, after));
        true
    }

    /// Does the step again that was taken back last.
    pub fn redo(&mut self, on_sheet: &mut Document) -> bool {
        let Some((step, after)) = self.future.pop() else { return false };
        let before = self.arrange(after, on_sheet);
        self.past.push((step, before));
        true
    }

    /// Notes that the drawing was changed: undo is for its steps again.
    pub fn drawn_on(&mut self) -> bool {
        std::mem::take(&mut self.in_turn)
    }

    pub(super) fn record(&mut self, step: TrayStep) {
        self.past.push((step, self.shown.clone()));
        self.future.clear();
        self.in_turn = true;
        self.changes += 1;
    }

    /// The option that was on the sheet then comes on it, and the arrangement until now is given back.
    fn arrange(&mut self, to: Arrangement, on_sheet: &mut Document) -> Arrangement {
        self.exchange(to.here, on_sheet);
        self.in_turn = true;
        self.changes += 1;
        std::mem::replace(&mut self.shown, to)
    }
}
