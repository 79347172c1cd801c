//! Hinged shutters as they come to rest off their concrete, dashed, and what they turn about.

use super::profile::ellipse;
use super::{Figure, Path, equipment};
use falsewright_core::geometry::Point;
use falsewright_core::model::Model;
use falsewright_core::results::{Results, Swing};

/// Radius of a hinge.
const HINGE_M: f64 = 0.04;

/// One figure for each hinged shutter.
pub fn swings(model: &Model, results: &Results) -> Vec<Figure> {
    results.swings.iter().filter_map(|swing| draw(model, swing)).collect()
}

fn draw(model: &Model, swing: &Swing) -> Option<Figure> {
    let (shutter, name) = (model.shutter(swing.shutter)?, equipment::name_of(model, swing.shutter)?);
    let at = shutter.hinge_at(shutter.hinge.as_ref()?);
    let mut figure = Figure::new(format!("swing-{}", shutter.mark), say!("{}, swung", name), Some(swing.shutter));
    let (mut swung, mut hinge) = (Path::default(), Path::default());
    for outline in &swing.outlines {
        swung.ring(*outline);
    }
    hinge.ring(ellipse(at, Point::new(HINGE_M, HINGE_M)));
    let short = swing.gap_m < swing.wanted_m;
    figure.stroke(if short { "swung short" } else { "swung" }, swung);
    figure.stroke("hinge", hinge);
    Some(figure)
}
