//! What members can bear, and how that compares with what they must.
//!
//! Demands are unfactored on the working-load basis and factored on the limit-state bases. A member whose resistance
//! is not known gets none, so that it fails with the reason.

mod base;
mod beam;
mod beam_column;
mod board;
pub mod bs5268;
pub mod buckling;
mod comparison;
pub mod concrete;
mod deflection;
mod divisor;
pub mod en1993;
pub mod en1995;
pub mod fittings;
mod fixed_end;
mod general_method;
pub mod ground;
pub mod handling;
pub mod hollow;
mod jack;
pub mod jacking;
pub mod lateral_torsional;
mod leg;
mod moment_shape;
pub mod prop;
mod rated_beam;
pub mod stability;
mod steel;
pub mod striking;
mod strut;
pub mod tie;
mod timber;
mod timber_beam;
mod timber_strut;
pub mod web;

pub use base::{base_sides_m, check_base};
pub use beam::check_beam;
pub use beam_column::{BeamColumn, check_beam_column};
pub use board::check_board;
pub(crate) use comparison::Comparison;
pub use deflection::check_deflection;
pub use fixed_end::{EndForce, check_fixed_end};
pub use general_method::GeneralMethod;
pub use jack::check_stack;
pub(crate) use lateral_torsional::LateralTorsional;
pub use lateral_torsional::check_lateral_torsional;
pub use leg::{check_brace, check_leg, check_pulled_prop};
pub use strut::StrutForces;
pub use tie::check_tie;
pub use timber_strut::{check_notch, check_timber_strut};
