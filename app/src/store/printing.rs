use super::Store;
use crate::editor::{View, Viewport};
use gloo_events::EventListener;
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;

/// Room for a view on a sheet of A4, 277 × 158 mm as `print.css` lays it out, with letters of 2.6 mm if they have 12 px.
const PAPER_PX: (f64, f64) = (1300.0, 741.0);

/// A view as it was on the screen, and whether that showed the whole of it.
struct OnScreen {
    view: View,
    viewport: Viewport,
    whole: bool,
}

impl Store {
    /// The views that are printed: the section, and what else there is unless another option lies beside it.
    pub fn views_on_paper(&self) -> impl Iterator<Item = View> {
        let alone = untrack(|| self.beside().is_none());
        let panes = self.panes;
        View::ALL.into_iter().filter(move |&view| {
            view == View::Section || alone && panes[view as usize].seen.get_untracked().subject.is_some()
        })
    }

    /// True from just before the page is laid out for paper until it is back on the screen. All views are drawn whole and
    /// for the paper's size meanwhile.
    pub(super) fn follow_printing(self) {
        let Some(window) = web_sys::window() else { return };
        let before: Rc<RefCell<Vec<OnScreen>>> = Rc::default();
        let kept = before.clone();
        let begin = move |_: &_| {
            if self.printing.get_untracked() {
                return;
            }
            // Headings take room that is kept free when views are fitted.
            self.printing.set(true);
            for view in self.views_on_paper() {
                let (viewport, whole) = self.peek(|editor| (*editor.viewport_on(view), editor.shows_whole(view)));
                kept.borrow_mut().push(OnScreen { view, viewport, whole });
                self.editor.update(|editor| editor.viewport_on_mut(view).resize(PAPER_PX.0, PAPER_PX.1));
                self.fit_view(view);
            }
        };
        let end = move |_: &_| {
            for OnScreen { view, viewport, whole } in before.take() {
                self.editor.update(|editor| {
                    *editor.viewport_on_mut(view) = viewport;
                    if whole {
                        editor.shown_whole(view);
                    }
                });
            }
            self.printing.set(false);
        };
        EventListener::new(&window, "beforeprint", begin).forget();
        EventListener::new(&window, "afterprint", end).forget();
    }
}
