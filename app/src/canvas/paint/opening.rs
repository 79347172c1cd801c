//! The clear way and its guards.

use super::{Figure, Path};
use crate::editor::View;
use crate::units;
use falsewright_core::model::Model;
use falsewright_core::results::Results;

/// The envelope of each opening with the room measured in it.
pub fn openings(view: View, model: &Model, results: &Results) -> Vec<Figure> {
    let mut figures = Vec::new();
    for falsework in &model.falsework {
        let Some(opening) = &falsework.opening else { continue };
        let drawn = &opening.drawn;
        let (left, floor) = (drawn.left_m, falsework.floor_m);
        let (right, top) = (left + drawn.width_m, floor + drawn.height_m);
        let found = results.clearances.iter().find(|clearance| clearance.opening == drawn.id);
        let room = found.map_or_else(String::new, |clearance| {
            say!(", measured {} × {}", units::dimension(clearance.width_m), units::size(clearance.height_m))
        });
        let (width, height) = (units::dimension(drawn.width_m), units::size(drawn.height_m));
        let label = say!("Clear way {} of {} × {}", opening.mark, width, height) + &room;
        let mut figure = Figure::new(format!("way-{}", opening.mark), label, Some(drawn.id));
        let (mut way, mut guards, mut cross) = (Path::default(), Path::default(), Path::default());
        let near = |x: f64| view.project([x, 0.0, floor]);
        let far = |x: f64| view.project([x, model.bay_m, top]);
        way.rectangle(near(left), far(right));
        cross.line([near(left), far(right)]);
        cross.line([far(left), near(right)]);
        if drawn.guard_m > 0.0 {
            guards.rectangle(near(left - drawn.guard_m), far(left));
            guards.rectangle(near(right), far(right + drawn.guard_m));
        }
        let short = found.is_some_and(|room| room.width_m < drawn.width_m || room.height_m < drawn.height_m);
        figure.stroke("guard", guards);
        figure.stroke("way-cross", cross);
        figure.stroke(if short { "way short" } else { "way" }, way);
        figures.push(figure);
    }
    figures
}
