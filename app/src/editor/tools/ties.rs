//! Puts a row of ties where a shutter is tapped; rows over its height by a pull of one spacing up or down; a row of
//! props by a pull away from the concrete, as long as the props.

use super::select::moved;
use crate::editor::Target;
use crate::editor::tool::{Change, Context, Event, Step};
use crate::language::t;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::Id;
use falsewright_core::scheme::edit::Edit;

/// Rows stand no nearer, m.
const LEAST_SPACING_M: f64 = 0.2;
/// Props are no shorter, m.
const LEAST_PROP_M: f64 = 0.3;

/// What is going on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum State {
    /// Nothing.
    #[default]
    Idle,
    /// The pull is the spacing of this shutter's rows, or the length of its props.
    Pulling(Id),
    /// A row is being moved.
    Moving(Target),
}

impl State {
    pub(in crate::editor) fn step(&mut self, event: Event, context: &Context) -> Step {
        match (*self, event) {
            (Self::Idle, Event::Tap(at)) => match (row(context, at), shutter(context, at)) {
                (Some(row), _) => Step::select(Some(row)),
                (None, Some(shutter)) => Step::add(Edit::AddTieRow { shutter, z_m: context.snapper().step(at.z) }),
                (None, None) => Step::say(t("Tap a shutter where a row of ties belongs.")),
            },
            (Self::Idle, Event::Drag { from, at, first: true, .. }) => {
                match (row(context, from), shutter(context, from)) {
                    (Some(row), _) => {
                        *self = Self::Moving(row);
                        Step { select: Some(Some(row)), ..moved(context, row, from, at) }
                    }
                    (None, Some(shutter)) => {
                        *self = Self::Pulling(shutter);
                        pulled(context, shutter, from, at)
                    }
                    (None, None) => Step::none(),
                }
            }
            (Self::Moving(row), Event::Drag { from, at, .. }) => moved(context, row, from, at),
            (Self::Pulling(shutter), Event::Drag { from, at, .. }) => pulled(context, shutter, from, at),
            (Self::Moving(_) | Self::Pulling(_), Event::Drop) => {
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
}

fn pulled(context: &Context, shutter: Id, from: Point, at: Point) -> Step {
    let (places, snapper) = (&context.places, context.snapper());
    let face = places.shutter(shutter).and_then(|shutter| places.shutter_face(shutter));
    let face = face.filter(|_| places.seen.is_section());
    let out = face.map_or(0.0, |face| (at.x - from.x) * face.normal.x.signum());
    let along = (at.z - from.z).abs();
    if out > along && out >= LEAST_PROP_M {
        return Step::preview(Edit::AddProp { shutter, z_m: snapper.step(from.z), length_m: snapper.step(out) });
    }
    if along > out && along >= LEAST_SPACING_M {
        return Step::preview(Edit::AddTieRows { shutter, spacing_m: snapper.step(along) });
    }
    Step::change(Change::Drop)
}

fn row(context: &Context, at: Point) -> Option<Target> {
    context.hit(at, |target| matches!(target, Target::TieRow(_)))
}

/// The shutter at a point, or on the face there.
fn shutter(context: &Context, at: Point) -> Option<Id> {
    let on = |target: &Target| match target {
        Target::Shutter(id) => Some(*id),
        Target::Face(face) => context.places.scheme.shutters.iter().find(|s| s.face == *face).map(|s| s.id),
        _ => None,
    };
    context.hit(at, |target| on(target).is_some()).as_ref().and_then(on)
}
