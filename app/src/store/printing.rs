use super::Store;
use crate::editor::{ScreenPoint, View, Viewport};
use gloo_events::EventListener;
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;

/// Room for a view on a sheet of A4, 277 × 158 mm as `print.css` lays it out, with letters of 2.6 mm if they have 12 px.
const PAPER_PX: (f64, f64) = (1300.0, 741.0);

/// Px of a view to a millimetre of paper.
const PX_PER_MM: f64 = PAPER_PX.0 / 277.0;

/// Reductions that scale rules have: ISO 5455 and those between.
const REDUCTIONS: [f64; 12] = [5.0, 10.0, 20.0, 25.0, 50.0, 75.0, 100.0, 125.0, 200.0, 250.0, 500.0, 1000.0];

/// How many metres a metre on the sheet of paper stands for.
pub fn reduction_on_paper(viewport: &Viewport) -> f64 {
    1000.0 * PX_PER_MM / viewport.px_per_m
}

/// Draws what is shown whole at the next scale at which a length can be taken off the paper.
fn to_scale(viewport: &mut Viewport) {
    let whole = reduction_on_paper(viewport);
    if let Some(rule) = REDUCTIONS.into_iter().find(|&rule| rule >= whole) {
        let middle = ScreenPoint::new(viewport.width_px / 2.0, viewport.height_px / 2.0);
        viewport.zoom_by(whole / rule, middle);
    }
}

/// A view as it was on the screen, and whether that showed the whole of it.
struct OnScreen {
    view: View,
    viewport: Viewport,
    whole: bool,
}

impl Store {
    /// The views that are printed: the section, and what there is of the others.
    pub fn views_on_paper(&self) -> impl Iterator<Item = View> {
        let panes = self.panes;
        let is_there = move |view: View| panes[view as usize].seen.get_untracked().subject.is_some();
        View::ALL.into_iter().filter(move |&view| view == View::Section || is_there(view))
    }

    /// True from just before the page is laid out for paper until it is back on the screen. All views are drawn whole, for
    /// the paper's size and to scale meanwhile.
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
                self.editor.update(|editor| to_scale(editor.viewport_on_mut(view)));
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_metre_on_paper_is_what_its_scale_says() {
        let mut viewport = Viewport::new(PAPER_PX.0, PAPER_PX.1);
        viewport.zoom_to(0.9, ScreenPoint::new(0.0, 0.0));
        let middle = viewport.to_world(ScreenPoint::new(PAPER_PX.0 / 2.0, PAPER_PX.1 / 2.0));
        to_scale(&mut viewport);
        // 1 : 68.98 on paper before: px are 96 to the inch on the screen and 4.69 to the millimetre on paper.
        assert!((reduction_on_paper(&viewport) - 75.0).abs() < 1e-9);
        // 277 mm at 1 : 75.
        assert!((viewport.length_m(PAPER_PX.0) - 20.775).abs() < 1e-9);
        let kept = viewport.to_screen(middle);
        assert!((kept.x - PAPER_PX.0 / 2.0).abs() < 1e-6 && (kept.y - PAPER_PX.1 / 2.0).abs() < 1e-6);
    }
}
