//! The views of the sheet: which is in hand, what part of each is on the screen, and what it is of.

use super::cursor::Cursor;
use super::{Editor, Outcome, faces_of};
use crate::editor::places::Places;
use crate::editor::view::seen;
use crate::editor::{Bounds, Overlay, Seen, Target, View, Viewport};
use falsewright_core::model::{Face, Model};
use falsewright_core::scheme::{Id, Scheme};

/// Room for dimension lines around the section, px.
const MARGIN_PX: f64 = 110.0;

/// What is kept of the views.
#[derive(Clone, Debug)]
pub struct Views {
    /// The one that pointers and keys act on.
    in_hand: View,
    viewports: [Viewport; 3],
    /// What showed the whole of each, until it is moved or zoomed.
    whole: [Option<Viewport>; 3],
    /// The shutter and the falsework that were last selected or chosen to be shown.
    shutter: Option<Id>,
    falsework: Option<Id>,
}

impl Default for Views {
    fn default() -> Self {
        let viewports = [Viewport::new(800.0, 600.0); 3];
        Self { in_hand: View::Section, viewports, whole: [None; 3], shutter: None, falsework: None }
    }
}

impl Editor {
    /// The view that pointers and keys act on.
    pub fn view(&self) -> View {
        self.views.in_hand
    }

    /// Takes a view in hand; false: something is going on in another.
    pub fn enter(&mut self, view: View) -> bool {
        if self.views.in_hand != view && !self.recogniser.busy() {
            self.views.in_hand = view;
            self.hover = None;
            // A cursor is at a place of the view that it was moved on.
            self.cursor = Cursor::default();
        }
        self.views.in_hand == view
    }

    /// Marks over the view in hand of what is shown.
    pub fn overlay(&self) -> Overlay {
        self.overlay_on(self.view())
    }

    /// Shows this shutter in elevation, or this falsework in plan.
    pub fn show(&mut self, view: View, of: Id) -> Outcome {
        match view {
            View::Section => {}
            View::Elevation => self.views.shutter = Some(of),
            View::Plan => self.views.falsework = Some(of),
        }
        Outcome::view()
    }

    /// The views as they are now.
    pub fn views(&self) -> Views {
        self.views.clone()
    }

    /// Puts the views back as they were.
    pub fn put_views_back(&mut self, views: Views) {
        self.views = views;
    }

    /// What a view shows.
    pub fn seen(&self, view: View) -> Seen {
        let scheme = self.shown();
        match self.preview {
            Some(_) if view == View::Elevation => self.seen_of(view, scheme, &faces_of(scheme)),
            _ => self.seen_of(view, scheme, &self.faces),
        }
    }

    fn seen_of(&self, view: View, scheme: &Scheme, faces: &[Face]) -> Seen {
        let wanted = if view == View::Plan { self.views.falsework } else { self.views.shutter };
        seen(view, wanted, scheme, faces)
    }

    /// Where everything of a scheme is on a view.
    pub(super) fn places_on<'a>(
        &self,
        view: View,
        scheme: &'a Scheme,
        faces: &'a [Face],
        model: &'a Model,
    ) -> Places<'a> {
        Places { scheme, faces, model, seen: self.seen_of(view, scheme, faces) }
    }

    /// Where everything of the committed scheme is on the view in hand.
    pub(super) fn places<'a>(&'a self, model: &'a Model) -> Places<'a> {
        self.places_on(self.view(), &self.document.scheme, &self.faces, model)
    }

    /// The elevation and the plan follow what is selected.
    pub(super) fn follow_selection(&mut self) {
        let Some(target) = self.chosen.last() else { return };
        let scheme = &self.document.scheme;
        let falsework_of = |line: Id| {
            let holds = |of: &&falsewright_core::scheme::Falsework| of.leg_lines.iter().any(|other| other.id == line);
            scheme.falsework.iter().find(holds).map(|of| of.id)
        };
        let (shutter, falsework) = match target.whole() {
            Target::Shutter(id) => (Some(id), None),
            Target::TieRow(id) => {
                let row = scheme.ties.iter().find(|row| row.id == id);
                let shown = self.seen(View::Elevation).subject;
                (row.filter(|row| !shown.is_some_and(|id| row.holds(id))).map(|row| row.shutter), None)
            }
            Target::Falsework(id) => (None, Some(id)),
            Target::LegLine(id) => (None, falsework_of(id)),
            Target::Opening(id) => {
                (None, scheme.openings.iter().find(|opening| opening.id == id).map(|opening| opening.falsework))
            }
            _ => (None, None),
        };
        self.views.shutter = shutter.or(self.views.shutter);
        self.views.falsework = falsework.or(self.views.falsework);
    }

    /// What part of the view in hand is on the screen.
    pub fn viewport(&self) -> &Viewport {
        self.viewport_on(self.view())
    }

    /// Changes what part of the view in hand is on the screen.
    pub fn viewport_mut(&mut self) -> &mut Viewport {
        self.viewport_on_mut(self.view())
    }

    /// What part of a view is on the screen.
    pub fn viewport_on(&self, view: View) -> &Viewport {
        &self.views.viewports[view as usize]
    }

    /// Changes what part of a view is on the screen.
    pub fn viewport_on_mut(&mut self, view: View) -> &mut Viewport {
        &mut self.views.viewports[view as usize]
    }

    /// Shows the whole of the view in hand.
    pub fn fit(&mut self) -> Outcome {
        self.fit_on(self.view())
    }

    /// Shows the whole of a view, with room for dimensions; what is blank at 100 %.
    pub fn fit_on(&mut self, view: View) -> Outcome {
        let bounds = self.bounds_on(view);
        let viewport = self.viewport_on_mut(view);
        match bounds {
            Some(bounds) => viewport.fit(bounds, MARGIN_PX),
            None => *viewport = Viewport::new(viewport.width_px, viewport.height_px),
        }
        Outcome::view()
    }

    /// Notes that a view shows the whole now.
    pub fn shown_whole(&mut self, view: View) {
        self.views.whole[view as usize] = self.bounds_on(view).map(|_| *self.viewport_on(view));
    }

    /// Whether a view is as it was when it showed the whole, and nothing goes on that the pointer or a key holds to it.
    pub fn shows_whole(&self, view: View) -> bool {
        let rests = !self.is_dragging() && !self.recogniser.busy() && self.pen.last_point().is_none();
        rests && self.views.whole[view as usize].is_some_and(|whole| whole == *self.viewport_on(view))
    }

    pub(super) fn fit_all(&mut self) {
        for view in View::ALL {
            self.fit_on(view);
        }
    }

    /// Around all that a view shows, without dimension lines.
    pub fn bounds_on(&self, view: View) -> Option<Bounds> {
        let model = Model::default();
        let places = self.places_on(view, &self.document.scheme, &self.faces, &model);
        places.drawn()
    }
}
