//! Loads: fresh concrete, operations, wind, what leans and slides, and the factors on loads.

pub mod factors;
pub mod fresh_concrete;
pub mod friction;
pub mod horizontal;
pub mod imposed;
pub mod thermal;
pub mod wind;
