//! Turns raw pointer events into taps, drags, pans and pinches.

use super::{Button, PointerInput, PointerKind, ScreenPoint};

/// What a pointer does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Goes down.
    Down,
    /// Moves.
    Move,
    /// Goes up.
    Up,
    /// Is taken away.
    Cancel,
}

/// What the user does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Gesture {
    /// Points without pressing.
    Hover,
    /// Presses and lets go in one place.
    Tap,
    /// Drags, after having pressed at `from`.
    Drag {
        /// Where it was pressed.
        from: ScreenPoint,
        /// Whether the drag starts just now.
        first: bool,
    },
    /// Lets go after a drag or a long press.
    Drop,
    /// Gives up what was going on.
    Cancel,
    /// Moves the sheet, px.
    Pan {
        /// To the right.
        dx: f64,
        /// Down.
        dy: f64,
    },
    /// Moves and zooms the sheet by two fingers.
    Pinch {
        /// Middle of the fingers before.
        from: ScreenPoint,
        /// Middle of the fingers now.
        to: ScreenPoint,
        /// Distance now by distance before.
        factor: f64,
    },
}

#[derive(Clone, Copy, Debug, Default, PartialEq)]
enum State {
    #[default]
    Idle,
    Pressed {
        id: i32,
        kind: PointerKind,
        from: ScreenPoint,
        pans: bool,
    },
    Dragging {
        id: i32,
        kind: PointerKind,
        from: ScreenPoint,
        last: ScreenPoint,
    },
    /// Pressed for long, and not moved yet.
    Held {
        id: i32,
        kind: PointerKind,
        from: ScreenPoint,
    },
    Panning {
        id: i32,
        last: ScreenPoint,
    },
    Pinching {
        first: (i32, ScreenPoint),
        second: (i32, ScreenPoint),
    },
    /// One finger is left of a pinch: it does nothing more.
    Spent {
        id: i32,
    },
}

/// Recognises gestures, one at a time.
#[derive(Debug, Default)]
pub struct Recogniser {
    state: State,
    /// A pen was used: fingers move the sheet.
    pub pen_mode: bool,
    /// The hand was in use when the pointer went down: it taps as well.
    hand: bool,
}

impl Recogniser {
    /// Whether something is going on.
    pub fn busy(&self) -> bool {
        self.state != State::Idle
    }

    /// Forgets what is going on.
    pub fn reset(&mut self) {
        self.state = State::Idle;
    }

    /// The pointer that is down has been in its place for long: where, and what pointer.
    pub fn hold(&mut self) -> Option<(ScreenPoint, PointerKind)> {
        let State::Pressed { id, kind, from, .. } = self.state else { return None };
        self.state = State::Held { id, kind, from };
        Some((from, kind))
    }

    /// Takes the next event. With the hand every drag pans.
    pub fn feed(&mut self, phase: Phase, input: PointerInput, hand: bool) -> Option<Gesture> {
        if phase == Phase::Down && input.kind == PointerKind::Pen {
            self.pen_mode = true;
        }
        match phase {
            Phase::Down => self.down(input, hand),
            Phase::Move => self.moved(input),
            Phase::Up => self.up(input),
            Phase::Cancel => self.cancel(input),
        }
    }

    fn down(&mut self, input: PointerInput, hand: bool) -> Option<Gesture> {
        self.hand = hand;
        let pans = hand
            || input.modifiers.space
            || input.button == Button::Middle
            || (self.pen_mode && input.kind == PointerKind::Touch);
        let touch = input.kind == PointerKind::Touch;
        match self.state {
            State::Idle if matches!(input.button, Button::Main | Button::Middle) => {
                self.state = State::Pressed { id: input.id, kind: input.kind, from: input.at, pans };
                None
            }
            State::Pressed { id, kind: PointerKind::Touch, from, .. } if touch && id != input.id => {
                self.state = State::Pinching { first: (id, from), second: (input.id, input.at) };
                Some(Gesture::Cancel)
            }
            State::Held { id, kind: PointerKind::Touch, from: last }
            | State::Dragging { id, kind: PointerKind::Touch, last, .. }
                if touch && id != input.id =>
            {
                self.state = State::Pinching { first: (id, last), second: (input.id, input.at) };
                Some(Gesture::Cancel)
            }
            State::Panning { id, last } if touch && id != input.id => {
                self.state = State::Pinching { first: (id, last), second: (input.id, input.at) };
                None
            }
            _ => None,
        }
    }

    fn moved(&mut self, input: PointerInput) -> Option<Gesture> {
        match self.state {
            State::Idle => Some(Gesture::Hover),
            State::Pressed { id, kind, from, pans } if id == input.id => {
                if from.distance(input.at) <= kind.slop_px() {
                    return None;
                }
                if pans {
                    self.state = State::Panning { id, last: input.at };
                    return Some(Gesture::Pan { dx: input.at.x - from.x, dy: input.at.y - from.y });
                }
                self.state = State::Dragging { id, kind, from, last: input.at };
                Some(Gesture::Drag { from, first: true })
            }
            State::Held { id, kind, from } if id == input.id => {
                if from.distance(input.at) <= kind.slop_px() {
                    return None;
                }
                self.state = State::Dragging { id, kind, from, last: input.at };
                Some(Gesture::Drag { from, first: true })
            }
            State::Dragging { id, kind, from, .. } if id == input.id => {
                self.state = State::Dragging { id, kind, from, last: input.at };
                Some(Gesture::Drag { from, first: false })
            }
            State::Panning { id, last } if id == input.id => {
                self.state = State::Panning { id, last: input.at };
                Some(Gesture::Pan { dx: input.at.x - last.x, dy: input.at.y - last.y })
            }
            State::Pinching { mut first, mut second } => {
                let (from, before) = (first.1.middle(second.1), first.1.distance(second.1));
                if first.0 == input.id {
                    first.1 = input.at;
                } else if second.0 == input.id {
                    second.1 = input.at;
                } else {
                    return None;
                }
                self.state = State::Pinching { first, second };
                let factor = first.1.distance(second.1).max(1.0) / before.max(1.0);
                Some(Gesture::Pinch { from, to: first.1.middle(second.1), factor })
            }
            _ => None,
        }
    }

    fn up(&mut self, input: PointerInput) -> Option<Gesture> {
        match self.state {
            State::Pressed { id, pans, .. } if id == input.id => {
                self.state = State::Idle;
                (!pans || self.hand || input.kind == PointerKind::Touch).then_some(Gesture::Tap)
            }
            State::Dragging { id, .. } | State::Held { id, .. } if id == input.id => {
                self.state = State::Idle;
                Some(Gesture::Drop)
            }
            _ => {
                self.leave(input.id);
                None
            }
        }
    }

    fn cancel(&mut self, input: PointerInput) -> Option<Gesture> {
        match self.state {
            State::Pressed { id, .. } | State::Dragging { id, .. } | State::Held { id, .. } if id == input.id => {
                self.state = State::Idle;
                Some(Gesture::Cancel)
            }
            _ => {
                self.leave(input.id);
                None
            }
        }
    }

    fn leave(&mut self, left: i32) {
        self.state = match self.state {
            State::Panning { id, .. } | State::Spent { id } if id == left => State::Idle,
            State::Pinching { first, second } if first.0 == left => State::Spent { id: second.0 },
            State::Pinching { first, second } if second.0 == left => State::Spent { id: first.0 },
            other => other,
        };
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::editor::Modifiers;

    fn input(id: i32, kind: PointerKind, x: f64, y: f64) -> PointerInput {
        PointerInput { id, kind, at: ScreenPoint::new(x, y), button: Button::Main, modifiers: Modifiers::default() }
    }

    fn mouse(x: f64, y: f64) -> PointerInput {
        input(1, PointerKind::Mouse, x, y)
    }

    #[test]
    fn a_press_within_the_slop_is_a_tap_and_beyond_it_a_drag() {
        let mut r = Recogniser::default();
        assert_eq!(r.feed(Phase::Down, mouse(10.0, 10.0), false), None);
        assert_eq!(r.feed(Phase::Move, mouse(13.0, 12.0), false), None);
        assert_eq!(r.feed(Phase::Up, mouse(13.0, 12.0), false), Some(Gesture::Tap));
        r.feed(Phase::Down, mouse(10.0, 10.0), false);
        let from = ScreenPoint::new(10.0, 10.0);
        assert_eq!(r.feed(Phase::Move, mouse(15.0, 10.0), false), Some(Gesture::Drag { from, first: true }));
        assert_eq!(r.feed(Phase::Move, mouse(10.0, 10.0), false), Some(Gesture::Drag { from, first: false }));
        assert_eq!(r.feed(Phase::Up, mouse(10.0, 10.0), false), Some(Gesture::Drop));
        assert_eq!(r.feed(Phase::Move, mouse(0.0, 0.0), false), Some(Gesture::Hover));
    }

    #[test]
    fn a_second_finger_cancels_the_stroke_and_pinches() {
        let mut r = Recogniser::default();
        let finger = |id, x| input(id, PointerKind::Touch, x, 0.0);
        r.feed(Phase::Down, finger(1, 0.0), false);
        r.feed(Phase::Move, finger(1, 3.0), false);
        assert_eq!(r.feed(Phase::Down, finger(2, 100.0), false), Some(Gesture::Cancel));
        let Some(Gesture::Pinch { from, to, factor }) = r.feed(Phase::Move, finger(2, 200.0), false) else { panic!() };
        assert_eq!((from.x, to.x, factor), (50.0, 100.0, 2.0));
        assert_eq!(r.feed(Phase::Up, finger(1, 0.0), false), None);
        assert_eq!(r.feed(Phase::Move, finger(2, 150.0), false), None);
        assert_eq!(r.feed(Phase::Up, finger(2, 150.0), false), None);
        assert!(!r.busy());
    }

    #[test]
    fn after_a_pen_fingers_pan_and_still_tap() {
        let mut r = Recogniser::default();
        r.feed(Phase::Down, input(9, PointerKind::Pen, 0.0, 0.0), false);
        assert_eq!(r.feed(Phase::Up, input(9, PointerKind::Pen, 0.0, 0.0), false), Some(Gesture::Tap));
        r.feed(Phase::Down, input(1, PointerKind::Touch, 0.0, 0.0), false);
        let pan = r.feed(Phase::Move, input(1, PointerKind::Touch, 10.0, 0.0), false);
        assert_eq!(pan, Some(Gesture::Pan { dx: 10.0, dy: 0.0 }));
        assert_eq!(r.feed(Phase::Up, input(1, PointerKind::Touch, 10.0, 0.0), false), None);
        r.feed(Phase::Down, input(1, PointerKind::Touch, 0.0, 0.0), false);
        assert_eq!(r.feed(Phase::Up, input(1, PointerKind::Touch, 0.0, 0.0), false), Some(Gesture::Tap));
    }

    #[test]
    fn a_press_that_stays_is_held_and_can_still_be_dragged() {
        let mut r = Recogniser::default();
        assert_eq!(r.hold(), None);
        r.feed(Phase::Down, mouse(10.0, 10.0), false);
        let at = ScreenPoint::new(10.0, 10.0);
        assert_eq!(r.hold(), Some((at, PointerKind::Mouse)));
        assert_eq!(r.feed(Phase::Move, mouse(12.0, 10.0), false), None);
        assert_eq!(r.feed(Phase::Up, mouse(12.0, 10.0), false), Some(Gesture::Drop));
        r.feed(Phase::Down, mouse(10.0, 10.0), false);
        r.hold();
        assert_eq!(r.feed(Phase::Move, mouse(30.0, 10.0), false), Some(Gesture::Drag { from: at, first: true }));
        assert_eq!(r.hold(), None);
    }

    #[test]
    fn a_pointer_taken_away_cancels_the_drag() {
        let mut r = Recogniser::default();
        r.feed(Phase::Down, mouse(0.0, 0.0), false);
        r.feed(Phase::Move, mouse(50.0, 0.0), false);
        assert_eq!(r.feed(Phase::Cancel, mouse(50.0, 0.0), false), Some(Gesture::Cancel));
        assert_eq!(r.feed(Phase::Up, mouse(50.0, 0.0), false), None);
    }
}
