//! Where the wind across the culvert meets falsework, and how hard.

use super::soffit::Table;
use crate::actions::combinations::{Stage, Wind};
use crate::geometry::Point;
use crate::layout::span;
use crate::model::{Model, PlacedFalsework, PlacedShutter, Pour};
use crate::scheme::Scheme;

/// What a bent shows to the wind.
#[derive(Clone, Debug, PartialEq)]
pub struct Exposure {
    /// Force coefficient of the site.
    pub coefficient: f64,
    /// Below this level walls cast earlier give shelter.
    pub sheltered_m: f64,
    /// Lower and upper level of each edge along the bay: the soffit's formwork, and the side forms that stand on it.
    pub edges_m: Vec<[f64; 2]>,
}

/// The exposure of a soffit's bents; none where the site's wind is not given. The second of two side forms stands too far
/// from the first to be sheltered by it, and each leg counts in full: common practice on the safe side.
pub fn exposure(table: &Table) -> Option<Exposure> {
    let Table { scheme, model, pour, falsework, ends_m, .. } = table;
    let coefficient = scheme.loads.wind?.falsework_coefficient();
    let walled = ends_m.iter().zip([-1e-3, 1e-3]).all(|(x, beyond)| {
        let beside = Point::new(x + beyond, pour.bottom_m - 1e-3);
        beside.z > falsework.floor_m && model.solid.contains(beside)
    });
    let soffit_m = falsework.faces.iter().flat_map(|face| [face.from.z, face.to.z]).fold(f64::INFINITY, f64::min);
    let side_forms = model.shutters.iter().filter(|shutter| carries(model, pour, falsework, shutter));
    let mut edges_m = vec![[falsework.head_m, soffit_m]];
    edges_m.extend(side_forms.map(|shutter| [shutter.bottom_m, shutter.top_m]));
    let sheltered_m = if walled { pour.bottom_m } else { falsework.floor_m };
    edges_m.iter_mut().for_each(|edge| edge[0] = edge[0].max(sheltered_m).min(edge[1]));
    Some(Exposure { coefficient, sheltered_m, edges_m })
}

/// Whether a side form stands on the falsework: above its heads, nearest to it, and without props of its own.
fn carries(model: &Model, pour: &Pour, falsework: &PlacedFalsework, shutter: &PlacedShutter) -> bool {
    let low = shutter.face.from.z.min(shutter.face.to.z);
    let propped = model.ties.iter().any(|row| row.shutter == shutter.id && row.to.is_none());
    let away = |falsework: &PlacedFalsework| {
        let (left, right) = span(&falsework.faces);
        (left - shutter.face.from.x).max(shutter.face.from.x - right).max(0.0)
    };
    let nearer = |other: &PlacedFalsework| other.pour == pour.id && away(other) < away(falsework);
    shutter.pour == pour.id && low >= falsework.head_m && !propped && !model.falsework.iter().any(nearer)
}

/// Velocity pressure at the top of a pour at a stage, kPa; nought where the site's wind is not given.
pub fn pressure_kpa(scheme: &Scheme, pour: &Pour, stage: Stage) -> f64 {
    scheme.loads.wind.map_or(0.0, |wind| match stage.combination().wind {
        Wind::Working => wind.working_kpa(),
        Wind::Greatest => wind.greatest_kpa(pour.top_m - scheme.ground.level_m),
    })
}
