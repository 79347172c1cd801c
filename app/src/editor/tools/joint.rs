//! Puts a construction joint at the level of the pointer.

use crate::editor::tool::{Change, Context, Event, Step};
use crate::editor::{Overlay, Readout, Target};
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;

/// What is going on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum State {
    /// No pointer.
    #[default]
    Idle,
    /// A joint would come at this level, its ends here.
    Pointing([Point; 2]),
    /// A joint is being pulled to its level.
    Pulling([Point; 2]),
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
                    None => Step::add(Edit::AddJoint { z_m: context.snapper().level(at.z) }),
                }
            }
            Event::Drag { at, .. } => {
                *self = line(context, at).map_or(Self::Idle, Self::Pulling);
                Step::preview(Edit::AddJoint { z_m: context.snapper().level(at.z) })
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
            overlay.preview = line.to_vec();
            overlay.readout = Some(Readout { at: line[1], length_m: line[1].z, angle_deg: None });
        }
    }
}

fn line(context: &Context, at: Point) -> Option<[Point; 2]> {
    let bounds = context.places.section()?;
    let z = context.snapper().level(at.z);
    Some([bounds.min.x, bounds.max.x].map(|x| Point::new(x, z)))
}
