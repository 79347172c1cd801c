//! Fields and marks without knowledge of the trade.

mod focus;
mod form;
mod later;
mod list;

pub use crate::units::Unit;
pub use focus::{focus_next, focus_on, focus_sibling, focused};
pub use form::Form;
pub use later::later;
pub use list::list;

/// Whether the screen answers a media query.
pub fn answers(query: &str) -> bool {
    let found = web_sys::window().and_then(|window| window.match_media(query).ok().flatten());
    found.is_some_and(|query| query.matches())
}

/// Whether fingers point at the screen.
pub fn coarse_pointer() -> bool {
    answers("(pointer: coarse)")
}

/// Whether there is room for what is needed only.
pub fn narrow_screen() -> bool {
    answers("(max-width: 700px)")
}

/// Size of the writing on the drawing for a mouse, px.
pub const SMALL_PX: f64 = 12.0;

/// Size of the writing on the drawing, px: larger where fingers point at it and there is room.
pub fn letter_px() -> f64 {
    if answers("(pointer: coarse) and (min-width: 700px)") { 16.0 } else { SMALL_PX }
}
