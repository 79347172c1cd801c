//! Puts a construction joint at the level of the pointer.

use crate::editor::tool::{Change, Context, Event, Step};
use crate::editor::{Overlay, Readout, Snap, Target};
use crate::language::key;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;

/// What is going on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum State {
    /// No pointer.
    #[default]
    Idle,
    /// A joint would come here.
    Pointing(Line),
    /// A joint is being pulled to its level.
    Pulling(Line),
}

/// A joint to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    ends: [Point; 2],
    snap: Snap,
    /// Its level above the lowest point of the section.
    above_m: f64,
}

impl State {
    pub(in crate::editor) fn step(&mut self, event: Event, context: &Context) -> Step {
        match event {
            Event::Hover(at) => {
                *self = line(context, at).map_or(Self::Idle, Self::Pointing);
                Step::none()
            }
            Event::Tap(at) => {
                *self = Self::Idle;
                match context.hit(at, |target| matches!(target, Target::Joint(_))) {
                    Some(joint) => Step::select(Some(joint)),
                    None => Step::add(Edit::AddJoint { z_m: context.snapper().level(at.z).0 }),
                }
            }
            Event::Drag { at, .. } => {
                *self = line(context, at).map_or(Self::Idle, Self::Pulling);
                Step::preview(Edit::AddJoint { z_m: context.snapper().level(at.z).0 })
            }
            Event::Drop => {
                *self = Self::Idle;
                Step { select_new: true, ..Step::change(Change::Keep) }
            }
            Event::Cancel => {
                *self = Self::Idle;
                Step::change(Change::Drop)
            }
            Event::Key(_) => Step::none(),
        }
    }

    pub(in crate::editor) fn overlay(&self, overlay: &mut Overlay) {
        if let Self::Pointing(line) | Self::Pulling(line) = *self {
            overlay.preview = line.ends.to_vec();
            overlay.snap = Some(line.snap);
            overlay.readout = Some(Readout::length(line.ends[1], key("above the base"), line.above_m));
        }
    }
}

fn line(context: &Context, at: Point) -> Option<Line> {
    let bounds = context.places.section()?;
    let (z, reason) = context.snapper().level(at.z);
    let ends = [bounds.min.x, bounds.max.x].map(|x| Point::new(x, z));
    let snap = Snap { point: Point::new(at.x, z), reason };
    Some(Line { ends, snap, above_m: z - bounds.min.z })
}
