//! Published values as they stand in tables, and the committed table of every check.

mod pressure;
mod reference_cases;
mod validation;
