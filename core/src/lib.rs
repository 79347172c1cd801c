//! The mechanics of Falsewright: temporary works for box culverts, with no browser in sight.
//!
//! Data flows one way:
//!
//! ```text
//! Scheme + Catalogue --layout--> Model --load_path, checks--> Results --> quantities, drawings, exports
//! ```
//!
//! [`design`] runs the whole of it. A view reads its [`Design`]; nothing here knows of views.
//!
//! # Units and axes
//! Metres, kilonewtons, kPa, kN/m³, kNm, hours and °C throughout; a public field says its unit in its name.
//! The section plane has `x` to the right and `z` up; `y` runs along the culvert, from 0 at the start of a bay.
//! A shutter's force is positive where it resists fresh concrete pushing outward; a leg's where it is compressed.

#[macro_use]
pub mod sentence;
#[macro_use]
pub mod formula;

pub mod actions;
pub mod analysis;
pub mod catalogue;
pub mod checks;
pub mod cutting_stock;
pub mod decimals;
mod findings;
pub mod geometry;
pub mod hold_points;
pub mod json;
pub mod layout;
pub mod limits;
pub mod load_path;
pub mod model;
pub mod quantities;
pub mod results;
pub mod scheme;
pub mod sorting;
mod striking;

mod pipeline;

pub(crate) use pipeline::catalogue_of;
pub use pipeline::{Design, DesignError, design};
