//! What the page hands in: pointers, wheel and keys.

use super::ScreenPoint;

/// What kind of pointer it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PointerKind {
    /// Mouse or trackpad.
    Mouse,
    /// Pen on a tablet.
    Pen,
    /// Finger.
    Touch,
}

impl PointerKind {
    /// How far it may move and still be a tap, px.
    pub fn slop_px(self) -> f64 {
        if self == Self::Mouse { 4.0 } else { 6.0 }
    }

    /// How near it must come to a thing to mean it, px.
    pub fn reach_px(self) -> f64 {
        if self == Self::Touch { 22.0 } else { 8.0 }
    }
}

/// The button that acts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Button {
    /// None: the pointer hovers.
    None,
    /// Left button, pen tip or finger.
    #[default]
    Main,
    /// Middle button: pans.
    Middle,
    /// Right button: asks what can be done.
    Second,
}

/// Keys held down.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Modifiers {
    /// Shift: larger nudges, directions locked to 15°.
    pub shift: bool,
    /// Control or Command: suspends snapping; with wheel: zooms.
    pub control: bool,
    /// Space: any drag pans.
    pub space: bool,
}

/// One pointer event.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointerInput {
    /// The same from down to up.
    pub id: i32,
    /// What kind of pointer.
    pub kind: PointerKind,
    /// Where it is.
    pub at: ScreenPoint,
    /// The button that acts.
    pub button: Button,
    /// Keys held down.
    pub modifiers: Modifiers,
}

/// One wheel event, its distances in px (a line is 16 px).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wheel {
    /// Where the pointer is.
    pub at: ScreenPoint,
    /// To the right.
    pub dx: f64,
    /// Down.
    pub dy: f64,
    /// Keys held down; a trackpad pinch comes with `control`.
    pub modifiers: Modifiers,
}

/// A key, named by what it types.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// Backs out of what is going on.
    Escape,
    /// Ends an outline or a typed length.
    Enter,
    /// Removes the selection.
    Delete,
    /// Takes back a typed character or a drawn point; else as `Delete`.
    Backspace,
    /// Arrow.
    Left,
    /// Arrow.
    Right,
    /// Arrow.
    Up,
    /// Arrow.
    Down,
    /// To the next place.
    PageDown,
    /// To the place before.
    PageUp,
    /// A character as typed.
    Char(char),
}

/// A key press.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct KeyInput {
    /// The key.
    pub key: Key,
    /// Keys held down with it.
    pub modifiers: Modifiers,
}
