//! The editor: what a pointer, a key or a typed value does to a scheme. No browser in sight.
//!
//! World points are metres in the section, `z` up; screen points are CSS pixels from the top left corner of the
//! drawing, `y` down. The page hands in [`PointerInput`] and [`KeyInput`], draws [`Editor::shown`] and
//! [`Editor::overlay`], and saves [`Editor::scheme`] whenever an [`Outcome`] says that something was committed.

mod along;
mod dimensions;
mod document;
mod freehand;
mod gesture;
mod history;
mod hit;
mod input;
mod job;
mod label;
mod lasso;
mod moving;
mod outline_moves;
mod overlay;
mod places;
mod quantity;
mod snap;
mod state;
mod swinging;
mod target;
mod tool;
mod tools;
mod view;
mod viewport;

pub use dimensions::{Dimension, DimensionKey};
pub use document::{Document, StepName};
pub use falsewright_core::geometry::Bounds;
pub use input::{Button, Key, KeyInput, Modifiers, PointerInput, PointerKind, Wheel};
pub use job::{Job, OptionId, TrayStep, called};
pub use overlay::{Boxed, Handle, LengthEntry, Overlay, Readout};
pub use places::{FLOOR_DEPTH_M, ends};
pub use quantity::{Bare, QuantityError, parse_length, parse_length_in};
pub use snap::{Snap, SnapReason};
pub use state::{Action, Editor, Outcome, Refusal};
pub use target::{Selection, Side, Target, counted};
pub use tool::Tool;
pub use view::{Seen, View, lower_end};
pub use viewport::{ScreenPoint, Viewport};

#[cfg(test)]
mod tests;
