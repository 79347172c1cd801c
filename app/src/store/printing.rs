use super::{Pane, Store};
use crate::editor::{Editor, ScreenPoint, Seen, View, Viewport};
use falsewright_core::scheme::Id;
use gloo_events::EventListener;
use leptos::prelude::*;

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

impl Store {
    /// True from just before the page is laid out for paper until it is back on the screen.
    pub(super) fn follow_printing(self) {
        let Some(window) = web_sys::window() else { return };
        let printing = self.printing;
        EventListener::new(&window, "beforeprint", move |_| printing.set(true)).forget();
        EventListener::new(&window, "afterprint", move |_| printing.set(false)).forget();
    }

    /// The set of drawings: the section, the elevation of each shutter and the plan of each falsework, whole, for the
    /// paper's size and to scale.
    pub fn on_paper(&self) -> Vec<Pane> {
        untrack(|| {
            let before = self.peek(Editor::views);
            let sheets = self.sheets().into_iter().map(|seen| self.drawn_for_paper(seen)).collect();
            self.editor.update(|editor| editor.put_views_back(before));
            sheets
        })
    }

    fn sheets(&self) -> Vec<Seen> {
        let section = std::iter::once(Seen::SECTION);
        let of = |view: View| move |id: Id| Seen { view, subject: Some(id) };
        self.scheme.with_untracked(|scheme| {
            let elevations = scheme.shutters.iter().map(|shutter| shutter.id).map(of(View::Elevation));
            let plans = scheme.falsework.iter().map(|falsework| falsework.id).map(of(View::Plan));
            section.chain(elevations).chain(plans).collect()
        })
    }

    fn drawn_for_paper(&self, seen: Seen) -> Pane {
        self.editor.update(|editor| {
            if let Some(of) = seen.subject {
                editor.show(seen.view, of);
            }
            editor.viewport_on_mut(seen.view).resize(PAPER_PX.0, PAPER_PX.1);
        });
        self.fit_view(seen.view);
        self.editor.update(|editor| to_scale(editor.viewport_on_mut(seen.view)));
        self.pane(seen.view).as_it_is()
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
