//! Selects, moves things, and moves the sheet where there is nothing.

use crate::editor::Target;
use crate::editor::moving;
use crate::editor::overlay::handles;
use crate::editor::tool::{Change, Context, Event, Step};
use falsewright_core::geometry::Point;

/// What is going on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum State {
    /// Nothing.
    #[default]
    Idle,
    /// A thing is being dragged.
    Moving(Target),
    /// The sheet is being dragged.
    Sheet,
}

impl State {
    pub(in crate::editor) fn step(&mut self, event: Event, context: &Context) -> Step {
        match (*self, event) {
            (_, Event::Tap(at)) => {
                *self = Self::Idle;
                Step::select(under(context, at))
            }
            (Self::Idle, Event::Drag { from, at, first: true, screen }) => match under(context, from) {
                Some(target) if movable(target) => {
                    *self = Self::Moving(target);
                    Step { select: Some(Some(target)), ..moved(context, target, from, at) }
                }
                _ => {
                    *self = Self::Sheet;
                    Step { hold: Some((from, screen)), ..Step::none() }
                }
            },
            (Self::Moving(target), Event::Drag { from, at, .. }) => moved(context, target, from, at),
            (Self::Sheet, Event::Drag { from, screen, .. }) => Step { hold: Some((from, screen)), ..Step::none() },
            (Self::Moving(_), Event::Drop) => {
                *self = Self::Idle;
                Step::change(Change::Keep)
            }
            (_, Event::Drop | Event::Cancel) => {
                *self = Self::Idle;
                Step::change(Change::Drop)
            }
            _ => Step::none(),
        }
    }
}

/// Handles of the selection come before all else.
pub(in crate::editor) fn under(context: &Context, at: Point) -> Option<Target> {
    let reach_m = context.viewport.length_m(context.reach_px);
    let distance = |p: Point| (p - at).length();
    let handle = handles(&context.places, context.selection).into_iter().filter(|h| distance(h.at) <= reach_m);
    let handle = handle.min_by(|a, b| distance(a.at).total_cmp(&distance(b.at)));
    handle.map(|handle| handle.target).or_else(|| context.hit(at, |_| true))
}

/// Whether a thing can be dragged.
pub(in crate::editor) fn movable(target: Target) -> bool {
    !matches!(target, Target::Shutter(_) | Target::Falsework(_) | Target::Dimension(_))
}

/// Shows a thing dragged from one point to another.
pub(in crate::editor) fn moved(context: &Context, target: Target, from: Point, at: Point) -> Step {
    let edit = moving::drag(&context.places, &context.snapper(), target, from, at, context.modifiers.shift);
    edit.map_or(Step::none(), Step::preview)
}

/// Left and right of two places.
pub(in crate::editor) fn ordered(a: f64, b: f64) -> [f64; 2] {
    [a.min(b), a.max(b)]
}
