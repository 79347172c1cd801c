//! Loads: fresh concrete, operations, wind, what leans and slides, the factors on
//! loads, and which of them meet.

pub mod combinations;
pub mod factors;
pub mod fresh_concrete;
pub mod friction;
pub mod horizontal;
pub mod imposed;
pub mod thermal;
pub mod wind;

/// Weight of a kilogram, kN.
pub const KN_PER_KG: f64 = 9.81e-3;
