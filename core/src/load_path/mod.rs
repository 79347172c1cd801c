//! Hands the loads down, level by level: facing, secondaries, primaries, then ties, or legs and the ground.
//! The reactions of one level are the loads of the next.

mod bay_move;
mod beam;
mod bent;
mod bent_effects;
mod bent_sideways;
mod chain;
mod clash;
mod clearance;
mod filling;
mod line;
mod record;
mod run_through;
mod slope_over;
mod soffit;
mod soffit_balance;
mod soffit_bent;
mod soffit_ledger;
mod soffit_legs;
mod soffit_levels;
mod soffit_load;
mod soffit_slab;
mod soffit_states;
mod soffit_twisting;
mod soffit_wind;
mod still;
mod swing;
mod wall;
mod wall_facing;
mod wall_frame;
mod wall_ledger;
mod wall_pressure;
mod wall_rows;
mod wall_standing;

pub use record::Record;
pub(crate) use wall::solve_full as solve_full_walls;

use crate::model::Model;
use crate::scheme::Scheme;

/// Works out every load path of the model.
pub fn solve(scheme: &Scheme, model: &Model, record: &mut Record) {
    filling::follow(scheme, model, record);
    wall::solve(scheme, model, record);
    soffit::solve(scheme, model, record);
    slope_over::tell(scheme, model, record);
    run_through::tell(model, record);
    clash::tell(model, record);
    clearance::measure(scheme, model, record);
    swing::measure(scheme, model, record);
    bay_move::solve(scheme, model, record);
}
