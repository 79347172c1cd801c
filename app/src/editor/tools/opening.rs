//! Keeps a way open through falsework: from one side to the other by a drag, or by two taps.

use super::select::{moved, ordered};
use crate::editor::tool::{Change, Context, Event, Step};
use crate::editor::{Key, Overlay, Target};
use crate::language::t;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::Id;
use falsewright_core::scheme::edit::Edit;

/// What is going on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum State {
    /// Nothing.
    #[default]
    Idle,
    /// The one side is set, the other follows the pointer.
    From {
        /// The falsework.
        falsework: Id,
        /// Place of the one side.
        x_m: f64,
        /// From floor to soffit at that side.
        line: [Point; 2],
    },
    /// The way is being dragged open.
    Pulling {
        /// The falsework.
        falsework: Id,
    },
    /// An opening or one of its sides is being moved.
    Moving(Target),
}

impl State {
    pub(in crate::editor) fn step(&mut self, event: Event, context: &Context) -> Step {
        match (*self, event) {
            (Self::Idle, Event::Tap(at)) => match (opening(context, at), falsework(context, at)) {
                (Some(opening), _) => Step::select(Some(opening)),
                (None, Some((falsework, room))) => {
                    let x_m = context.snapper().step(at.x);
                    *self = Self::From { falsework, x_m, line: room.map(|z| Point::new(x_m, z)) };
                    Step::none()
                }
                (None, None) => Step::say(t("Drag across falsework where the way is to be kept open.")),
            },
            (Self::From { falsework, x_m, .. }, Event::Hover(at)) => way(context, falsework, x_m, at),
            (Self::From { falsework, x_m, .. }, Event::Tap(at)) => {
                *self = Self::Idle;
                match way(context, falsework, x_m, at).change {
                    Change::Preview(edit) => Step::add(edit),
                    other => Step::change(other),
                }
            }
            (Self::From { .. }, Event::Key(Key::Escape)) => {
                *self = Self::Idle;
                Step::change(Change::Drop).taken()
            }
            (Self::Idle | Self::From { .. }, Event::Drag { from, at, first: true, .. }) => {
                match (opening(context, from), falsework(context, from)) {
                    (Some(opening), _) => {
                        *self = Self::Moving(opening);
                        Step { select: Some(Some(opening)), ..moved(context, opening, from, at) }
                    }
                    (None, Some((falsework, _))) => {
                        *self = Self::Pulling { falsework };
                        way(context, falsework, context.snapper().step(from.x), at)
                    }
                    (None, None) => Step::none(),
                }
            }
            (Self::Pulling { falsework }, Event::Drag { from, at, .. }) => {
                way(context, falsework, context.snapper().step(from.x), at)
            }
            (Self::Moving(opening), Event::Drag { from, at, .. }) => moved(context, opening, from, at),
            (Self::Pulling { .. }, Event::Drop) => {
                *self = Self::Idle;
                Step { select_new: true, ..Step::change(Change::Keep) }
            }
            (Self::Moving(_), Event::Drop) => {
                *self = Self::Idle;
                Step::change(Change::Keep)
            }
            (_, Event::Cancel) => {
                *self = Self::Idle;
                Step::change(Change::Drop)
            }
            _ => Step::none(),
        }
    }

    pub(in crate::editor) fn overlay(&self, overlay: &mut Overlay) {
        if let Self::From { line, .. } = self {
            overlay.preview = line.to_vec();
        }
    }
}

/// Shows the way between a place and the pointer; nothing while it is no width to speak of.
fn way(context: &Context, falsework: Id, x_m: f64, at: Point) -> Step {
    let [left_m, right] = ordered(x_m, context.snapper().step(at.x));
    if right - left_m < 0.5 {
        return Step::change(Change::Drop);
    }
    Step::preview(Edit::AddOpening { falsework, left_m, width_m: right - left_m })
}

fn opening(context: &Context, at: Point) -> Option<Target> {
    context.hit(at, |t| matches!(t, Target::OpeningEdge(..) | Target::Opening(_) | Target::Transfer(_)))
}

/// The falsework around a point, with the levels of its floor and soffit.
fn falsework(context: &Context, at: Point) -> Option<(Id, [f64; 2])> {
    let Some(Target::Falsework(id)) = context.hit(at, |target| matches!(target, Target::Falsework(_))) else {
        return None;
    };
    let room = context.places.falsework_bounds(context.places.falsework(id)?)?;
    Some((id, [room.min.z, room.max.z]))
}
