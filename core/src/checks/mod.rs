//! What members can bear, and how that compares with what they must.
//!
//! Demands are unfactored on the working-load basis and factored on the limit-state bases. A member whose resistance
//! is not known gets none, so that it fails with the reason.

mod base;
mod beam;
mod board;
pub mod buckling;
mod deflection;
mod divisor;
mod formula;
pub mod lateral_torsional;
mod leg;
mod leg_bending;
mod steel;
mod tie;
mod timber;
mod timber_beam;
mod web;

pub use base::check_base;
pub use beam::check_beam;
pub use board::check_board;
pub use deflection::check_deflection;
pub use lateral_torsional::check_lateral_torsional;
pub use leg::{check_brace, check_leg};
pub use leg_bending::check_leg_bending;
pub use tie::check_tie;
