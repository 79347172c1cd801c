//! The views of the sheet: what stands on each, and how they are laid out.

use super::{Store, Wording};
use crate::canvas::legible;
use crate::canvas::paint::{Scene, Shown, elevation, plan, scene};
use crate::editor::{Bounds, Dimension, Editor, Outcome, Overlay, ScreenPoint, Seen, View, Viewport};
use crate::memo::Memo;
use crate::widgets::letter_px;
use crate::worked::Worked;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::{Id, Scheme};
use leptos::prelude::*;
use std::sync::Arc;

/// From what is shown to the edges of a view, px: the least, the most, and between them as a part of its shorter side.
const MARGIN_PX: [f64; 2] = [14.0, 26.0];
const MARGIN: f64 = 0.04;
/// Room below a view for its scale, and for its heading as well, px.
const SCALE_PX: f64 = 14.0;
const HEADING_PX: f64 = 28.0;
/// A view that changes by less when it is fitted again is fitted.
const FITTED: f64 = 0.003;
/// Room for levels at the right of an elevation, px.
const LEVELS_PX: f64 = 70.0;

/// Which views are laid out on the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Laid {
    /// One.
    One(View),
    /// All, where the screen is wide enough; else the section.
    All,
}

impl Laid {
    /// All that can be chosen, in the order they are shown.
    pub const CHOICES: [Self; 4] =
        [Self::One(View::Section), Self::One(View::Elevation), Self::One(View::Plan), Self::All];

    /// A short name of its own.
    pub fn id(self) -> &'static str {
        match self {
            Self::One(view) => view.id(),
            Self::All => "all",
        }
    }

    /// The views.
    pub fn views(self) -> &'static [View] {
        match self {
            Self::One(View::Section) => &View::ALL[..1],
            Self::One(View::Elevation) => &View::ALL[1..2],
            Self::One(View::Plan) => &View::ALL[2..],
            Self::All => &View::ALL,
        }
    }
}

/// What a view is made from.
#[derive(Clone, Copy)]
pub(super) struct Sources {
    pub editor: RwSignal<Editor>,
    pub scheme: Memo<Arc<Scheme>>,
    pub worked: Memo<Arc<Worked>>,
    pub catalogue: Memo<Arc<Catalogue>>,
    pub shown: RwSignal<Shown>,
    pub wording: RwSignal<Wording>,
}

/// One view of the sheet. Nothing of it is computed while nobody looks at it.
#[derive(Clone, Copy)]
pub struct Pane {
    /// Which it is.
    pub view: View,
    /// What it shows.
    pub seen: Memo<Seen>,
    /// What is drawn.
    pub scene: Memo<Arc<Scene>>,
    /// What part of it is on the screen.
    pub viewport: Memo<Viewport>,
    /// Marks over it.
    pub overlay: Memo<Overlay>,
    /// Its dimension lines.
    pub dimensions: Memo<Vec<Dimension>>,
    /// Whether pointers and keys act on it.
    pub in_hand: Memo<bool>,
}

impl Pane {
    pub(super) fn new(view: View, sources: Sources) -> Self {
        let Sources { editor, scheme, worked, catalogue, shown, wording } = sources;
        let seen = Memo::new(move |_| editor.with(|editor| editor.seen(view)));
        let draw = move || {
            wording.track();
            let (scheme, worked) = (scheme.get(), worked.get());
            let design = worked.fault.is_none().then_some(&worked.design);
            match (view, seen.get().subject) {
                (View::Section, _) => catalogue.with(|catalogue| scene(&scheme, design, catalogue, shown.get())),
                (View::Elevation, Some(id)) => catalogue.with(|catalogue| elevation(&scheme, design, catalogue, id)),
                (View::Plan, Some(id)) => catalogue.with(|catalogue| plan(design, catalogue, id)),
                (View::Elevation | View::Plan, None) => Scene::default(),
            }
        };
        Self {
            view,
            seen,
            scene: Memo::new(move |_| Arc::new(draw())),
            viewport: Memo::new(move |_| editor.with(|editor| *editor.viewport_on(view))),
            overlay: Memo::new(move |_| editor.with(|editor| editor.overlay_on(view))),
            dimensions: Memo::new(move |_| editor.with(|editor| editor.dimensions_on(view))),
            in_hand: Memo::new(move |_| editor.with(|editor| editor.view() == view)),
        }
    }

    /// The same as it is now, whatever becomes of the view.
    pub(super) fn as_it_is(&self) -> Self {
        Self {
            view: self.view,
            seen: self.seen.as_it_is(),
            scene: self.scene.as_it_is(),
            viewport: self.viewport.as_it_is(),
            overlay: self.overlay.as_it_is(),
            dimensions: self.dimensions.as_it_is(),
            in_hand: self.in_hand.as_it_is(),
        }
    }

    /// The view that this component stands in.
    pub fn here() -> Self {
        expect_context()
    }

    /// The test id of something on this view.
    pub fn test_id(&self, of: &str) -> String {
        if self.view == View::Section { of.to_owned() } else { format!("{}-{of}", self.view.id()) }
    }
}

impl Store {
    /// A view of the sheet.
    pub fn pane(&self, view: View) -> Pane {
        self.panes[view as usize]
    }

    /// Which views the user wants on the sheet.
    pub fn laid(&self) -> Laid {
        self.laid.get()
    }

    /// Lays out these views.
    pub fn lay(&self, laid: Laid) {
        self.laid.set(laid);
        if let Laid::One(view) = laid {
            self.enter(view);
        }
    }

    /// Whether what a view shows is written under it: a section alone on the screen needs no heading.
    pub fn has_heading(&self, view: View) -> bool {
        view != View::Section || self.laid() == Laid::All || self.printing.get()
    }

    /// Takes a view in hand.
    pub fn enter(&self, view: View) {
        self.act(|editor| {
            let changed = editor.view() != view && editor.enter(view);
            Outcome { view_changed: changed, ..Outcome::default() }
        });
    }

    /// Shows this shutter in elevation, or this falsework in plan.
    pub fn show_subject(&self, view: View, of: Id) {
        self.act(|editor| editor.show(view, of));
    }

    /// Shows the whole of every view.
    pub fn fit(&self) {
        View::ALL.into_iter().for_each(|view| self.fit_view(view));
    }

    /// Shows the whole of a view with its dimension lines.
    pub fn fit_view(&self, view: View) {
        // Two options are shown at one scale, so there is room for both.
        let beside = untrack(|| self.beside().and_then(|id| self.print(id)?.bounds));
        let beside = beside.filter(|_| view == View::Section);
        // What can move is told by a ring, which stands about what else there is.
        let round = [Point::new(-0.2, -0.2), Point::new(0.2, 0.3)];
        let worked = self.worked.get_untracked();
        let mechanisms = worked.design.results.mechanisms.iter().filter(|_| view == View::Section);
        let rings: Vec<Point> = mechanisms.flat_map(|mechanism| round.map(|by| mechanism.at + by)).collect();
        self.act(|editor| {
            let outcome = editor.fit_on(view);
            let Some(bounds) = editor.bounds_on(view) else { return outcome };
            let corners = [Some(bounds), beside].into_iter().flatten().flat_map(|bounds| [bounds.min, bounds.max]);
            // Rows of dimension lines stand further off the smaller the scale.
            for _ in 0..8 {
                let viewport = *editor.viewport_on(view);
                let written = legible(&viewport, &editor.dimensions_on(view), letter_px());
                let lines = written.iter().flat_map(|legible| legible.dimension.line);
                let texts = written.iter().flat_map(|legible| legible.block.corners());
                let texts = texts.map(|(x, y)| viewport.to_world(ScreenPoint::new(x, y)));
                let all = corners.clone().chain(lines).chain(texts).chain(rings.iter().copied());
                let Some(mut all) = Bounds::around(all) else { break };
                let headed = untrack(|| self.has_heading(view));
                all.min.z -= viewport.length_m(if headed { HEADING_PX } else { SCALE_PX });
                if view == View::Elevation {
                    all.max.x += viewport.length_m(LEVELS_PX);
                }
                let shorter_px = viewport.width_px.min(viewport.height_px);
                let fitted = editor.viewport_on_mut(view);
                fitted.fit(all, (MARGIN * shorter_px).clamp(MARGIN_PX[0], MARGIN_PX[1]));
                if (fitted.px_per_m / viewport.px_per_m - 1.0).abs() < FITTED {
                    break;
                }
            }
            editor.shown_whole(view);
            outcome
        });
    }

    /// Sets the size of a view. What has another size than when it was last laid out is shown whole, and so is what was.
    pub fn resize(&self, view: View, width_px: f64, height_px: f64, first: bool) {
        let (was, whole) = self.peek(|editor| (*editor.viewport_on(view), editor.shows_whole(view)));
        self.editor.update(|editor| editor.viewport_on_mut(view).resize(width_px, height_px));
        let other = (was.width_px, was.height_px) != (width_px, height_px);
        let refits = view == View::Section && (self.takes_refit() || untrack(|| self.beside()).is_some());
        if first && other || refits || whole && (first || other) {
            self.fit_view(view);
        }
    }
}
