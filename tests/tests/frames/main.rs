//! The frame solver against closed forms, independent libraries, and the laws that hold for every frame.

mod cases;
mod critical_loads;
mod errors;
mod features;
mod formulas;
mod one_sided;
mod properties;
