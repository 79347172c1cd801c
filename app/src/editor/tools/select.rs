//! Selects, moves things, and moves the sheet where there is nothing.

use crate::editor::moving;
use crate::editor::outline_moves::selected_by;
use crate::editor::overlay::handles;
use crate::editor::tool::{Change, Context, Event, Step};
use crate::editor::{Overlay, Readout, Snap, Target};
use falsewright_core::geometry::Point;

/// What is going on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum State {
    /// Nothing.
    #[default]
    Idle,
    /// A thing is being dragged; what it was drawn to, and its live value.
    Moving(Target, Option<Snap>, Option<Readout>),
    /// The sheet is being dragged.
    Sheet,
}

impl State {
    pub(in crate::editor) fn step(&mut self, event: Event, context: &Context) -> Step {
        match (*self, event) {
            (_, Event::Tap(at)) => {
                *self = Self::Idle;
                let target = under(context, at);
                Step::select(target.and_then(|target| selected_by(target, context.selection)))
            }
            (Self::Idle, Event::Drag { from, at, first: true, screen }) => match under(context, from) {
                Some(target) if movable(target) => {
                    let step = self.go_on(context, target, from, at);
                    Step { select: Some(selected_by(target, context.selection)), ..step }
                }
                _ => {
                    *self = Self::Sheet;
                    Step { hold: Some((from, screen)), ..Step::none() }
                }
            },
            (Self::Moving(target, ..), Event::Drag { from, at, .. }) => self.go_on(context, target, from, at),
            (Self::Sheet, Event::Drag { from, screen, .. }) => Step { hold: Some((from, screen)), ..Step::none() },
            (Self::Moving(target, ..), Event::Drop) => {
                *self = Self::Idle;
                // A crown is a new corner.
                Step { select_new: matches!(target, Target::EdgeMiddle(_)), ..Step::change(Change::Keep) }
            }
            (_, Event::Drop | Event::Cancel) => {
                *self = Self::Idle;
                Step::change(Change::Drop)
            }
            _ => Step::none(),
        }
    }

    fn go_on(&mut self, context: &Context, target: Target, from: Point, at: Point) -> Step {
        let snapper = context.snapper();
        match moving::drag(&context.places, &snapper, target, from, at, context.modifiers.shift) {
            Some(moved) => {
                *self = Self::Moving(target, moved.snap, moved.readout);
                Step::preview(moved.edit)
            }
            None => {
                *self = Self::Moving(target, None, None);
                Step::none()
            }
        }
    }

    pub(in crate::editor) fn overlay(&self, overlay: &mut Overlay) {
        if let Self::Moving(_, snap, readout) = *self {
            (overlay.snap, overlay.readout) = (snap, readout);
        }
    }
}

/// Handles of the selection come before all else.
pub(in crate::editor) fn under(context: &Context, at: Point) -> Option<Target> {
    let reach_m = context.viewport.length_m(context.reach_px);
    let distance = |p: Point| (p - at).length();
    let px_m = context.viewport.length_m(1.0);
    let handle = handles(&context.places, context.selection, px_m).into_iter().filter(|h| distance(h.at) <= reach_m);
    let handle = handle.min_by(|a, b| distance(a.at).total_cmp(&distance(b.at)));
    handle.map(|handle| handle.target).or_else(|| context.hit(at, |_| true))
}

/// Whether a thing can be dragged.
pub(in crate::editor) fn movable(target: Target) -> bool {
    !matches!(target, Target::Shutter(_) | Target::Falsework(_) | Target::Dimension(_))
}

/// Shows a thing dragged from one point to another.
pub(in crate::editor) fn moved(context: &Context, target: Target, from: Point, at: Point) -> Step {
    let moved = moving::drag(&context.places, &context.snapper(), target, from, at, context.modifiers.shift);
    moved.map_or(Step::none(), |moved| Step::preview(moved.edit))
}

/// Left and right of two places.
pub(in crate::editor) fn ordered(a: f64, b: f64) -> [f64; 2] {
    [a.min(b), a.max(b)]
}
