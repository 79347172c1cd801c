use super::{Laid, Store};
use crate::editor::{View, Viewport};
use gloo_events::EventListener;
use leptos::prelude::*;
use std::cell::Cell;
use std::rc::Rc;

/// Room for a view on a sheet of A4, 277 × 148 mm as `print.css` lays it out, with letters of 2.6 mm if they have 12 px.
const PAPER_PX: (f64, f64) = (1300.0, 694.0);

impl Store {
    /// True from just before the page is laid out for paper until it is back on the screen. A view alone on its sheet is
    /// drawn whole and for the paper's size meanwhile.
    pub(super) fn follow_printing(self) {
        let Some(window) = web_sys::window() else { return };
        let before: Rc<Cell<Option<(View, Viewport)>>> = Rc::default();
        let kept = before.clone();
        let begin = move |_: &_| {
            if self.printing.get_untracked() {
                return;
            }
            if let Laid::One(view) = untrack(|| self.laid()) {
                kept.set(Some((view, self.peek(|editor| *editor.viewport_on(view)))));
                self.editor.update(|editor| editor.viewport_on_mut(view).resize(PAPER_PX.0, PAPER_PX.1));
                self.fit_view(view);
            }
            self.printing.set(true);
        };
        let end = move |_: &_| {
            if let Some((view, viewport)) = before.take() {
                self.editor.update(|editor| *editor.viewport_on_mut(view) = viewport);
            }
            self.printing.set(false);
        };
        EventListener::new(&window, "beforeprint", begin).forget();
        EventListener::new(&window, "afterprint", end).forget();
    }
}
