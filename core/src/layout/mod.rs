//! Puts a scheme's equipment in its place: [`Scheme`] and [`Catalogue`] in, [`Model`] out.

mod around;
mod batter;
pub mod concrete;
mod falsework;
mod jacks;
mod legs;
mod lookup;
mod opening;
mod parts;
mod shutters;
mod ties;

pub use around::{stands_on, walls_beside};
pub use batter::takes_shutter;
pub use falsework::span;
pub use ties::build_up_m;

use crate::catalogue::Catalogue;
use crate::model::Model;
use crate::results::Finding;
use crate::scheme::Scheme;

/// Places everything that can be placed; a finding tells of anything that cannot.
pub fn place(scheme: &Scheme, catalogue: &Catalogue) -> (Model, Vec<Finding>) {
    let mut findings = Vec::new();
    let mut model = Model {
        bay_m: scheme.bays.length_m,
        solid: scheme.section.boundary(),
        pours: concrete::pours(&scheme.section, scheme.bays.length_m, scheme.concrete.unit_weight_kn_m3),
        faces: concrete::faces(&scheme.section, scheme.ground.level_m),
        ..Model::default()
    };
    shutters::place(scheme, catalogue, &mut model, &mut findings);
    ties::place(scheme, catalogue, &mut model, &mut findings);
    falsework::place(scheme, catalogue, &mut model, &mut findings);
    jacks::place(scheme, &mut model, &mut findings);
    model.parts = parts::of(&model);
    (model, findings)
}
