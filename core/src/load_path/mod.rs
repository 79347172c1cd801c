//! Hands the loads down, level by level: facing, secondaries, primaries, then ties, or legs and the ground.
//! The reactions of one level are the loads of the next.

mod beam;
mod bent;
mod chain;
mod clearance;
mod line;
mod record;
mod soffit;
mod soffit_bent;
mod soffit_ledger;
mod soffit_legs;
mod soffit_levels;
mod soffit_load;
mod soffit_slab;
mod soffit_twisting;
mod wall;
mod wall_frame;
mod wall_ledger;
mod wall_pressure;

pub use record::Record;

use crate::model::Model;
use crate::scheme::Scheme;

/// Works out every load path of the model.
pub fn solve(scheme: &Scheme, model: &Model, record: &mut Record) {
    wall::solve(scheme, model, record);
    soffit::solve(scheme, model, record);
    clearance::measure(scheme, model, record);
}
