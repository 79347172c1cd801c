//! How the options are shown: in the tray, beside each other, to others.

use super::Store;
use crate::comparison::Difference;
use crate::editor::{Editor, OptionId, Tool};
use leptos::prelude::*;
use std::sync::Arc;

impl Store {
    /// Whether the tray lies open.
    pub fn tray_open(&self) -> bool {
        self.tray.open.get()
    }

    /// Opens or folds the tray; a section that is wholly in sight stays so.
    pub fn set_tray_open(&self, open: bool) {
        if self.tray.open.get_untracked() != open {
            self.tray.refit.set_value(self.peek(Editor::shows_all));
            self.tray.open.set(open);
        }
    }

    /// The option that is laid beside the one on the sheet.
    pub fn beside(&self) -> Option<OptionId> {
        self.tray.beside.get()
    }

    /// Lays an option beside the one on the sheet, or takes it away again.
    pub fn lay_beside(&self, id: Option<OptionId>) {
        if self.tray.beside.get_untracked() != id {
            self.tray.refit.set_value(true);
            self.tray.beside.set(id);
        }
    }

    /// What differs on the sheet from what lies beside it, or there from the sheet.
    pub fn differences(&self, on_sheet: bool) -> Arc<Vec<Difference>> {
        self.tray.apart.with(|apart| apart[usize::from(!on_sheet)].clone())
    }

    /// Whether the sheet is shown to others: only looked at.
    pub fn presenting(&self) -> bool {
        self.tray.presenting.get()
    }

    /// Shows the sheet to others, or takes it in hand again.
    pub fn present(&self, presenting: bool) {
        if self.tray.presenting.get_untracked() == presenting {
            return;
        }
        if presenting {
            self.lay_beside(None);
            self.set_menu(None);
            self.tell(None);
            self.run(|editor| editor.select(None));
        }
        self.run(|editor| editor.set_tool(if presenting { Tool::Hand } else { Tool::default() }));
        self.tray.refit.set_value(true);
        self.tray.presenting.set(presenting);
    }

    /// Whether little is written on the drawing, as there is something else to see: never on paper.
    pub fn is_quiet(&self) -> bool {
        !self.printing.get() && (self.presenting() || self.beside().is_some())
    }
}
