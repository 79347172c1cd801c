//! Selects, moves things, and draws a box around several where there is nothing; a finger moves the sheet there.

use crate::editor::along;
use crate::editor::moving;
use crate::editor::outline_moves::selected_by;
use crate::editor::overlay::{Boxed, handles};
use crate::editor::tool::{Change, Context, Event, Step};
use crate::editor::{Bounds, Overlay, PointerKind, Readout, Snap, Target, lasso};
use falsewright_core::geometry::Point;

/// What is going on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum State {
    /// Nothing.
    #[default]
    Idle,
    /// A thing is being dragged; what it was drawn to, and its live value.
    Moving(Target, Option<Snap>, Option<Readout>),
    /// All that is selected is being dragged.
    MovingAll,
    /// The sheet is being dragged.
    Sheet,
    /// The sheet was pressed for long: a drag draws a box whatever draws it.
    Held,
    /// A box is being drawn.
    Box(Boxed),
}

impl State {
    pub(in crate::editor) fn step(&mut self, event: Event, context: &Context) -> Step {
        match (*self, event) {
            (_, Event::Tap(at)) => {
                *self = Self::Idle;
                let under = under(context, at).and_then(|target| selected_by(target, context.selection));
                if context.adds { Step::toggle(under) } else { Step::select(under) }
            }
            (Self::Idle | Self::Held, Event::Drag { from, at, first: true, screen }) => {
                let under = under(context, from).filter(|_| *self == Self::Idle);
                match under {
                    Some(target) if context.chosen.len() > 1 && context.chosen.contains(&target.whole()) => {
                        *self = Self::MovingAll;
                        moved_all(context, from, at)
                    }
                    Some(target) if !context.adds && (movable(target) || pulled(context, target, from)) => {
                        let step = self.go_on(context, target, from, at);
                        Step { select: Some(selected_by(target, context.selection)), ..step }
                    }
                    _ if *self == Self::Idle && context.kind == PointerKind::Touch => {
                        *self = Self::Sheet;
                        Step { hold: Some((from, screen)), ..Step::none() }
                    }
                    _ => {
                        *self = Self::Box(boxed(from, at));
                        Step::none()
                    }
                }
            }
            (Self::Moving(target, ..), Event::Drag { from, at, .. }) => self.go_on(context, target, from, at),
            (Self::MovingAll, Event::Drag { from, at, .. }) => moved_all(context, from, at),
            (Self::Sheet, Event::Drag { from, screen, .. }) => Step { hold: Some((from, screen)), ..Step::none() },
            (Self::Box(_), Event::Drag { from, at, .. }) => {
                *self = Self::Box(boxed(from, at));
                Step::none()
            }
            (Self::Box(Boxed { bounds, inside }), Event::Drop) => {
                *self = Self::Idle;
                let mut found = lasso::in_box(&context.places, bounds, inside);
                if context.adds {
                    let others = context.chosen.iter().filter(|target| !found.contains(target));
                    found = others.copied().chain(found.iter().copied()).collect();
                }
                Step { choose: Some(found), ..Step::none() }
            }
            (moving @ (Self::Moving(..) | Self::MovingAll), Event::Drop) => {
                *self = Self::Idle;
                // A crown is a new corner.
                Step {
                    select_new: matches!(moving, Self::Moving(Target::EdgeMiddle(_), ..)),
                    ..Step::change(Change::Keep)
                }
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

    /// A finger adds what it holds to the selection; a right click selects it alone.
    pub(in crate::editor) fn hold(&mut self, at: Point, context: &Context) -> Step {
        let under = under(context, at).and_then(|target| selected_by(target, context.selection)).map(Target::whole);
        *self = if under.is_some() { Self::Idle } else { Self::Held };
        match under {
            Some(target) if context.chosen.iter().any(|other| other.whole() == target) => Step::none(),
            Some(target) if context.kind == PointerKind::Mouse => Step::select(Some(target)),
            target => Step::toggle(target),
        }
    }

    pub(in crate::editor) fn overlay(&self, overlay: &mut Overlay) {
        match *self {
            Self::Moving(_, snap, readout) => (overlay.snap, overlay.readout) = (snap, readout),
            Self::Box(boxed) => overlay.boxed = Some(boxed),
            _ => {}
        }
    }
}

/// Drawn to the right it takes what lies wholly inside, to the left what it touches.
fn boxed(from: Point, at: Point) -> Boxed {
    let bounds = Bounds {
        min: Point::new(from.x.min(at.x), from.z.min(at.z)),
        max: Point::new(from.x.max(at.x), from.z.max(at.z)),
    };
    Boxed { bounds, inside: at.x >= from.x }
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

/// Whether a thing that cannot be moved can be pulled along the bay here.
fn pulled(context: &Context, target: Target, at: Point) -> bool {
    along::takes(&context.places, target, at, context.viewport.length_m(context.reach_px))
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

/// Shows all that is selected dragged; with Shift along one axis.
fn moved_all(context: &Context, from: Point, at: Point) -> Step {
    let snapper = context.snapper();
    let mut by = Point::new(snapper.step(at.x - from.x), snapper.step(at.z - from.z));
    if context.modifiers.shift {
        by = if by.x.abs() >= by.z.abs() { Point::new(by.x, 0.0) } else { Point::new(0.0, by.z) };
    }
    moving::all_by(&context.places, context.chosen, by).map_or(Step::change(Change::Drop), Step::preview)
}

/// Left and right of two places.
pub(in crate::editor) fn ordered(a: f64, b: f64) -> [f64; 2] {
    [a.min(b), a.max(b)]
}
