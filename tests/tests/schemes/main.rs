//! Whole schemes: their geometry, forces, quantities and files.

mod bent;
mod catalogue;
mod clashing;
mod concrete;
mod cutting;
mod demo;
mod drawn;
mod free_standing;
mod geometry;
mod hold_points;
mod ledger;
mod malformed;
mod monotonic;
mod moving;
mod own_items;
mod programme;
mod soffit_path;
mod stages;
mod swinging;
mod wall_path;
