//! Puts a shutter on the wall face that is tapped, or pulled from.

use crate::editor::Target;
use crate::editor::tool::{Change, Context, Event, Step};
use crate::language::t;
use falsewright_core::geometry::{Edge, Point};
use falsewright_core::layout::takes_shutter;
use falsewright_core::scheme::FaceRef;
use falsewright_core::scheme::edit::Edit;

/// What is going on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum State {
    /// Nothing.
    #[default]
    Idle,
    /// A shutter is being pulled from a face.
    Pulling,
}

impl State {
    pub(in crate::editor) fn step(&mut self, event: Event, context: &Context) -> Step {
        match (*self, event) {
            (Self::Idle, Event::Tap(at)) => match wall(context, at) {
                Some(face) => match context.places.scheme.shutters.iter().find(|shutter| shutter.face == face) {
                    Some(shutter) => Step::select(Some(Target::Shutter(shutter.id))),
                    None => Step::add(Edit::AddShutter(face)),
                },
                None => match context.hit(at, |target| matches!(target, Target::Shutter(_))) {
                    Some(shutter) => Step::select(Some(shutter)),
                    None => Step::say(t("Tap a wall face to put a shutter on it.")),
                },
            },
            (Self::Idle, Event::Drag { from, first: true, .. }) => match wall(context, from) {
                Some(face) => {
                    *self = Self::Pulling;
                    Step::preview(Edit::AddShutter(face))
                }
                None => Step::none(),
            },
            (Self::Pulling, Event::Drop) => {
                *self = Self::Idle;
                Step { select_new: true, ..Step::change(Change::Keep) }
            }
            (_, Event::Cancel) => {
                *self = Self::Idle;
                Step::change(Change::Drop)
            }
            _ => Step::none(),
        }
    }
}

/// The wall face nearest to a point, from twice the usual reach.
fn wall(context: &Context, at: Point) -> Option<FaceRef> {
    let distance = |from: Point, to: Point| (Edge::new(from, to).nearest(at) - at).length();
    let walls = context.places.faces.iter().filter(|face| takes_shutter(face));
    let near = walls.map(|face| (distance(face.from, face.to), face.of));
    let near = near.filter(|(distance, _)| *distance <= 2.0 * context.viewport.length_m(context.reach_px));
    near.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, face)| face)
}
