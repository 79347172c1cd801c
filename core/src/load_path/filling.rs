//! Pours as histories: level against time.

use super::record::Record;
use super::wall_pressure::governing_rise_m_h;
use crate::actions::fresh_concrete::filling::Filling;
use crate::actions::fresh_concrete::pressure_limit;
use crate::geometry::Side;
use crate::model::{Model, Pour};
use crate::results::PourFilling;
use crate::scheme::Scheme;

/// Follows every pour from its lowest level until it is full.
pub fn follow(scheme: &Scheme, model: &Model, record: &mut Record) {
    record.results.fillings = model.pours.iter().map(|pour| history(scheme, model, pour)).collect();
}

fn history(scheme: &Scheme, model: &Model, pour: &Pour) -> PourFilling {
    let area = |z: f64, side| (z, model.solid.width_at(z, side) * model.bay_m);
    let between = model.solid.levels(pour.bottom_m, pour.top_m);
    let areas: Vec<(f64, f64)> = std::iter::once(area(pour.bottom_m, Side::After))
        .chain(between.iter().flat_map(|&z| [area(z, Side::Before), area(z, Side::After)]))
        .chain([area(pour.top_m, Side::Before)])
        .collect();
    let filling = Filling::new(scheme.concrete.delivery, &areas);
    let shutters = model.shutters.iter().filter(|shutter| shutter.pour == pour.id);
    let beside_shutters = shutters.map(|shutter| governing_rise_m_h(shutter, &model.solid, scheme)).fold(0.0, f64::max);
    let governing_rise_m_h = if beside_shutters > 0.0 {
        beside_shutters
    } else {
        areas.iter().map(|&(z, _)| filling.rise_at_m_h(z)).fold(0.0, f64::max)
    };
    let height = pour.top_m - pour.bottom_m;
    let limit = pressure_limit(&scheme.concrete, governing_rise_m_h, height, height);
    PourFilling { pour: pour.id, mark: pour.mark.clone(), filling, governing_rise_m_h, warnings: limit.warnings }
}
