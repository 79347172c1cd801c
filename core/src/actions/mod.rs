//! Loads: the pressure of fresh concrete and the factors on loads.

pub mod factors;
pub mod fresh_concrete;
