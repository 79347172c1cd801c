//! To come.

pub mod concrete;
