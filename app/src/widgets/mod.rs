//! Fields and marks without knowledge of the trade.

mod form;

pub use form::{Form, Unit};

/// Size of the writing on the drawing, px: larger where fingers point at it.
pub fn letter_px() -> f64 {
    let coarse = web_sys::window()
        .and_then(|window| window.match_media("(pointer: coarse) and (min-width: 700px)").ok().flatten())
        .is_some_and(|query| query.matches());
    if coarse { 14.0 } else { 12.0 }
}
