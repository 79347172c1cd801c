//! Pointers, wheel, and what tools answer.

use super::{Editor, Outcome, find};
use crate::editor::gesture::{Gesture, Phase};
use crate::editor::label::lost;
use crate::editor::tool::{Change, Event, Step};
use crate::editor::{Modifiers, PointerInput, PointerKind, ScreenPoint, Target, Tool, Wheel};
use falsewright_core::Design;
use falsewright_core::model::Model;
use falsewright_core::scheme::Id;
use falsewright_core::scheme::edit::apply;

/// A wheel turned by this many px zooms by e.
const WHEEL_PX: f64 = 300.0;
/// One event zooms no further.
const WHEEL_ZOOM: [f64; 2] = [0.8, 1.25];

impl Editor {
    /// A button, pen or finger goes down.
    pub fn pointer_down(&mut self, input: PointerInput, design: &Design) -> Outcome {
        self.pointer(Phase::Down, input, &design.model)
    }

    /// A pointer moves, pressed or not.
    pub fn pointer_move(&mut self, input: PointerInput, design: &Design) -> Outcome {
        self.pointer(Phase::Move, input, &design.model)
    }

    /// A button, pen or finger goes up.
    pub fn pointer_up(&mut self, input: PointerInput, design: &Design) -> Outcome {
        self.pointer(Phase::Up, input, &design.model)
    }

    /// The browser takes a pointer away: what is going on is dropped.
    pub fn pointer_cancel(&mut self, input: PointerInput) -> Outcome {
        self.pointer(Phase::Cancel, input, &Model::default())
    }

    /// Pans; zooms with `control`, or always if [`Editor::set_wheel_zooms`].
    pub fn wheel(&mut self, wheel: Wheel) -> Outcome {
        if wheel.modifiers.control || self.wheel_zooms {
            let factor = libm::exp(-wheel.dy / WHEEL_PX).clamp(WHEEL_ZOOM[0], WHEEL_ZOOM[1]);
            self.viewport_mut().zoom_by(factor, wheel.at);
        } else if wheel.modifiers.shift && wheel.dx == 0.0 {
            self.viewport_mut().pan(-wheel.dy, 0.0);
        } else {
            self.viewport_mut().pan(-wheel.dx, -wheel.dy);
        }
        Outcome::view()
    }

    /// The pointer that is down has stayed in its place for long: what is there is selected as well. None: no pointer is.
    pub fn pointer_held(&mut self, design: &Design) -> Option<Outcome> {
        if self.tool() == Tool::Outline {
            return None;
        }
        let (at, kind) = self.recogniser.hold()?;
        let mut pen = std::mem::take(&mut self.pen);
        let step = pen.hold(self.viewport().to_world(at), &self.context(&design.model, kind, Modifiers::default()));
        self.pen = pen;
        Some(self.take(step))
    }

    /// Whether something narrow is meant by a finger here, rather than a mark beside it: a handle, a row, a line.
    pub fn narrow_under(&self, at: ScreenPoint, design: &Design) -> bool {
        let at = self.viewport().to_world(at);
        let reach_m = self.viewport().length_m(PointerKind::Touch.reach_px());
        let handles = self.overlay().handles;
        let narrow = |target: &Target| {
            let line = matches!(target, Target::TieRow(_) | Target::LegLine(_) | Target::Joint(_));
            line || matches!(target, Target::Corner(_) | Target::OpeningEdge(..) | Target::ShutterEnd(..))
        };
        let exact = self.context(&design.model, PointerKind::Mouse, Modifiers::default());
        handles.iter().any(|handle| (handle.at - at).length() <= reach_m) || exact.hit(at, narrow).is_some()
    }

    fn pointer(&mut self, phase: Phase, input: PointerInput, model: &Model) -> Outcome {
        if !self.pointer_takes_over(input.at, phase == Phase::Move) {
            return Outcome::default();
        }
        let hand = self.tool() == Tool::Hand;
        let Some(gesture) = self.recogniser.feed(phase, input, hand) else { return Outcome::default() };
        let at = self.viewport().to_world(input.at);
        let event = match gesture {
            Gesture::Hover => Event::Hover(at),
            Gesture::Tap => Event::Tap(at),
            Gesture::Drag { from, first } => {
                Event::Drag { from: self.viewport().to_world(from), at, first, screen: input.at }
            }
            Gesture::Drop => Event::Drop,
            Gesture::Cancel => Event::Cancel,
            Gesture::Pan { dx, dy } => {
                self.viewport_mut().pan(dx, dy);
                return Outcome::view();
            }
            Gesture::Pinch { from, to, factor } => {
                self.viewport_mut().pan(to.x - from.x, to.y - from.y);
                self.viewport_mut().zoom_by(factor, to);
                return Outcome::view();
            }
        };
        if matches!(event, Event::Tap(_) | Event::Drag { first: true, .. }) {
            self.refusal = None;
        }
        if let (Event::Hover(at), true) = (event, input.kind != PointerKind::Touch) {
            self.hover = self.context(model, input.kind, input.modifiers).hit(at, |_| true);
        } else {
            self.hover = None;
        }
        let step = self.step(event, model, input.kind, input.modifiers);
        self.take(step)
    }

    /// Does what a tool answers.
    pub(super) fn take(&mut self, step: Step) -> Outcome {
        let mut outcome = Outcome { message: step.message, ..Outcome::view() };
        if let Some(selection) = step.select {
            self.select(selection);
        }
        if let Some(target) = step.toggle {
            self.toggle(target);
        }
        if let Some(targets) = step.choose {
            self.choose(targets);
        }
        if let Some((world, screen)) = step.hold {
            let now = self.viewport().to_screen(world);
            self.viewport_mut().pan(screen.x - now.x, screen.y - now.y);
        }
        let before = self.document.scheme.fresh_id();
        match step.change {
            Change::None => {}
            Change::Preview(edit) => match apply(&self.document.scheme, &edit) {
                Ok(scheme) => {
                    outcome.scheme_changed = scheme != *self.shown();
                    self.refusal = None;
                    self.preview = Some((edit, scheme));
                }
                Err(error) => self.refusal = Some(error.to_string()),
            },
            Change::Drop => outcome.scheme_changed = self.preview.take().is_some(),
            Change::Keep => {
                outcome.message = outcome.message.or_else(|| self.refusal.clone());
                if let Some((edit, scheme)) = self.preview.take().filter(|(_, scheme)| *scheme != self.document.scheme)
                {
                    outcome.message = outcome.message.or_else(|| lost(&edit, &self.document.scheme, &scheme));
                    let label = self.step_name(&edit);
                    self.commit(scheme, &label);
                    (outcome.scheme_changed, outcome.committed) = (true, true);
                }
            }
            Change::Commit(edit) => match self.change(&edit) {
                Ok(done) => outcome = Outcome { message: outcome.message.or(done.message), ..done },
                Err(refusal) => {
                    self.refusal = Some(refusal.to_string());
                    outcome.message = self.refusal.clone();
                }
            },
        }
        if step.select_new && outcome.committed {
            let scheme = &self.document.scheme;
            let first = (before.0..scheme.fresh_id().0).find_map(|id| find(scheme, Id(id)));
            self.select(first);
        }
        outcome
    }
}
