//! Soffit falsework from above, over the length of a bay: cut at half its height.

use super::whereabouts::Whereabouts;
use super::{Figure, Path, Scene, equipment, opening, tags};
use crate::editor::{Seen, View};
use crate::language::t;
use falsewright_core::Design;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::geometry::Point;
use falsewright_core::layout::{span, walls_beside};
use falsewright_core::model::{Model, PlacedFalsework};
use falsewright_core::scheme::Id;

/// Centre lines go this far beyond what they are of.
const PAST_M: f64 = 0.25;

/// Draws one falsework between its walls; nothing without a design.
pub fn plan(design: Option<&Design>, catalogue: &Catalogue, falsework: Id) -> Scene {
    let Some(Design { model, results, .. }) = design else { return Scene::default() };
    let Some(placed) = model.falsework.iter().find(|of| of.id == falsework) else { return Scene::default() };
    let seen = Seen { view: View::Plan, subject: Some(falsework) };
    let view = Whereabouts { seen, model, results };
    let mut figures: Vec<Figure> = walls(model, placed).into_iter().collect();
    let ways = opening::openings(seen.view, model, results);
    figures.extend(ways.into_iter().filter(|way| way.owner.is_some_and(|owner| view.shows(owner))));
    let mut parts = equipment::equipment(seen.view, model, results, catalogue, |id| view.shows(id));
    for figure in &mut parts {
        figure.stroke("centre-line", centre_lines(model, placed, figure.owner));
    }
    figures.extend(parts);
    Scene { figures, tags: tags::tags(&view, &[]) }
}

/// The walls at both sides, cut.
fn walls(model: &Model, falsework: &PlacedFalsework) -> Option<Figure> {
    let (left, right) = span(&falsework.faces);
    let level = (falsework.floor_m + falsework.head_m) / 2.0;
    let mut path = Path::default();
    for [from, to] in walls_beside(&model.solid, [left, right], level) {
        path.rectangle(Point::new(from, 0.0), Point::new(to, model.bay_m));
    }
    let pour = model.pours.iter().find(|pour| (pour.bottom_m..=pour.top_m).contains(&level))?;
    let class = if pour.id == falsework.pour { "concrete fresh" } else { "concrete cast" };
    let mut figure = Figure::new("walls", t("Walls beside the falsework"), None);
    figure.stroke(class, path);
    Some(figure)
}

/// Those of the leg lines of this element, or of the bents if it is the falsework.
fn centre_lines(model: &Model, falsework: &PlacedFalsework, owner: Option<Id>) -> Path {
    let mut path = Path::default();
    if owner == Some(falsework.id) {
        let (left, right) = span(&falsework.faces);
        for &y in &falsework.bents_m {
            path.line([left - PAST_M, right + PAST_M].map(|x| Point::new(x, y)));
        }
    }
    for leg in falsework.legs.iter().filter(|leg| Some(leg.owner) == owner) {
        path.line([-PAST_M, model.bay_m + PAST_M].map(|y| Point::new(leg.x_m, y)));
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::design;
    use falsewright_core::model::{LegKind, Role};
    use falsewright_core::scheme::heron_lane;

    #[test]
    fn as_many_bases_are_drawn_as_are_in_the_bill_and_each_line_tells_its_ratio() {
        let scheme = heron_lane().expect("the demo is readable");
        let catalogue = Catalogue::generic().with_items_of(&scheme);
        let design = design(&scheme, &catalogue).expect("the demo can be computed");
        let falsework = &design.model.falsework[0];
        let scene = plan(Some(&design), &catalogue, falsework.id);
        let strokes = scene.figures.iter().flat_map(|figure| &figure.strokes);
        let bases = strokes.filter(|stroke| stroke.class.contains(Role::Base.name()));
        let drawn: usize = bases.map(|stroke| stroke.d.matches('Z').count()).sum();
        let billed = design.quantities.iter().filter(|line| line.item.to_string() == falsework.base.name);
        assert_eq!(drawn as f64, billed.map(|line| line.count).sum::<f64>());
        for leg in falsework.legs.iter().filter(|leg| leg.kind == LegKind::Leg) {
            let tag = scene.tags.iter().find(|tag| tag.owner == Some(leg.owner)).expect("its ratio is written");
            assert!((tag.at.x - leg.x_m).abs() < 1e-9 && falsework.bents_m.contains(&tag.at.z), "{}", leg.mark);
        }
    }
}
