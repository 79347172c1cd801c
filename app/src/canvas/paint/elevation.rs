//! A wall shutter from outside, over the length of a bay.

use super::whereabouts::Whereabouts;
use super::{Figure, Path, Scene, Tag, TagKind, equipment, tags};
use crate::editor::{FLOOR_DEPTH_M, Seen, View, lower_end};
use crate::language::t;
use crate::units;
use falsewright_core::Design;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::geometry::Point;
use falsewright_core::layout::stands_on;
use falsewright_core::model::{Model, PlacedShutter};
use falsewright_core::scheme::{Id, Scheme};

/// Lines go this far beyond the bay.
const PAST_M: f64 = 0.3;
/// Levels nearer than this are one.
const SAME_M: f64 = 1e-3;

/// Draws one shutter with what holds it; nothing without a design.
pub fn elevation(scheme: &Scheme, design: Option<&Design>, catalogue: &Catalogue, shutter: Id) -> Scene {
    let Some(Design { model, results, .. }) = design else { return Scene::default() };
    let Some(placed) = model.shutter(shutter) else { return Scene::default() };
    let seen = Seen { view: View::Elevation, subject: Some(shutter) };
    let view = Whereabouts { seen, model, results };
    let levels = levels(model, placed);
    let mut figures = vec![floor(scheme, model, placed)];
    figures.extend(equipment::equipment(seen.view, model, results, catalogue, |id| view.shows(id)));
    figures.push(face(model, placed));
    figures.extend(joints(scheme, model, placed));
    figures.push(marks(model, &levels));
    let mut tags = tags::tags(&view, &[]);
    tags.extend(levels.into_iter().enumerate().map(|(index, (z, words))| Tag {
        key: format!("level-{}", index + 1),
        kind: TagKind::Level,
        at: Point::new(model.bay_m + PAST_M, z),
        text: units::level(z),
        label: format!("{words} {}", units::level(z)),
        owner: None,
        urgent: false,
    }));
    Scene { figures, tags }
}

/// The levels of the face and of its pour, from the lowest, with what they are.
fn levels(model: &Model, shutter: &PlacedShutter) -> Vec<(f64, String)> {
    let (low, high) = (shutter.face.from.z.min(shutter.face.to.z), shutter.face.from.z.max(shutter.face.to.z));
    let mut levels = vec![(low, t("Foot of the face").to_owned()), (high, t("Top of the face").to_owned())];
    if let Some(pour) = model.pour(shutter.pour) {
        for (z, words) in [(pour.bottom_m, t("Foot of the pour")), (pour.top_m, t("Top of the pour"))] {
            match levels.iter_mut().find(|(level, _)| (level - z).abs() < SAME_M) {
                Some((_, known)) => *known = format!("{known}, {words}"),
                None => levels.push((z, words.to_owned())),
            }
        }
    }
    levels
}

/// What the wall stands on: the floor of its cell, or the ground, with earlier concrete up to the shutter.
fn floor(scheme: &Scheme, model: &Model, shutter: &PlacedShutter) -> Figure {
    let foot = shutter.face.from.z.min(shutter.face.to.z);
    let (level, is_floor) = lower_end(foot, stands_on(&shutter.face, &model.solid, scheme.ground.level_m));
    let mut figure = Figure::new("floor", t("What the wall stands on"), None);
    let ends = [-PAST_M, model.bay_m + PAST_M].map(|y| Point::new(y, level));
    let (mut line, mut hatch, mut earlier) = (Path::default(), Path::default(), Path::default());
    if is_floor {
        line.line(ends);
        hatch.rectangle(ends[0] - Point::new(0.0, FLOOR_DEPTH_M), ends[1]);
    }
    if foot > level + SAME_M {
        earlier.rectangle(Point::new(0.0, level), Point::new(model.bay_m, foot));
    }
    figure.stroke("ground-hatch", hatch);
    figure.stroke("earlier", earlier);
    figure.stroke("ground-line", line);
    figure
}

/// The face behind the shutter.
fn face(model: &Model, shutter: &PlacedShutter) -> Figure {
    let (low, high) = (shutter.face.from.z.min(shutter.face.to.z), shutter.face.from.z.max(shutter.face.to.z));
    let mut figure = Figure::new("face", t("The concrete face behind the shutter"), None);
    let mut path = Path::default();
    path.rectangle(Point::new(0.0, low), Point::new(model.bay_m, high));
    figure.stroke("hidden-edge", path);
    figure
}

/// Construction joints near the shutter.
fn joints(scheme: &Scheme, model: &Model, shutter: &PlacedShutter) -> Vec<Figure> {
    let near = shutter.bottom_m - PAST_M..=shutter.top_m + PAST_M;
    let draw = |(index, joint): (usize, &falsewright_core::scheme::Joint)| {
        let mut figure = Figure::new(
            format!("joint-J{}", index + 1),
            say!("Construction joint at level {}", units::level(joint.z_m)),
            Some(joint.id),
        );
        let mut path = Path::default();
        path.line([-PAST_M, model.bay_m + PAST_M].map(|y| Point::new(y, joint.z_m)));
        figure.stroke("joint", path);
        figure
    };
    let joints = scheme.section.joints.iter().enumerate();
    joints.filter(|(_, joint)| near.contains(&joint.z_m)).map(draw).collect()
}

/// The marks of levels beside the bay.
fn marks(model: &Model, levels: &[(f64, String)]) -> Figure {
    const MARK_M: f64 = 0.12;
    let mut figure = Figure::new("levels", t("Levels"), None);
    let mut path = Path::default();
    for (z, _) in levels {
        let tip = Point::new(model.bay_m + PAST_M * 0.7, *z);
        path.line([Point::new(model.bay_m, *z), Point::new(model.bay_m + PAST_M, *z)]);
        path.ring([tip, tip + Point::new(-0.6 * MARK_M, MARK_M), tip + Point::new(0.6 * MARK_M, MARK_M)]);
    }
    figure.stroke("level-mark", path);
    figure
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::design;
    use falsewright_core::scheme::edit::{Edit, apply};
    use falsewright_core::scheme::{Arrangement, heron_lane};

    /// Ties that are drawn in the elevation of a shutter: each is its plate with its rod.
    fn drawn(scene: &Scene, model: &Model, row: Id) -> usize {
        let figure = scene.figures.iter().find(|figure| figure.owner == Some(row));
        let rings: usize = figure.map_or(0, |figure| {
            figure
                .strokes
                .iter()
                .filter(|stroke| stroke.class.contains("tie"))
                .map(|of| of.d.matches('Z').count())
                .sum()
        });
        let plates = model.ties.iter().any(|of| of.id == row && of.item.tie().is_some_and(|tie| tie.plate.is_some()));
        if plates { rings / 2 } else { rings }
    }

    fn counts_agree(scheme: &Scheme) {
        let catalogue = Catalogue::generic().with_items_of(scheme);
        let design = design(scheme, &catalogue).expect("the demo can be computed");
        let ties: Vec<_> = design.model.ties.iter().filter(|row| row.item.tie().is_some()).collect();
        assert!(!ties.is_empty());
        for row in ties {
            let billed =
                design.quantities.iter().filter(|line| line.mark == row.mark && line.item.to_string() == row.item.name);
            let billed: f64 = billed.map(|line| line.count).sum();
            for shutter in std::iter::once(row.shutter).chain(row.to) {
                let scene = elevation(scheme, Some(&design), &catalogue, shutter);
                assert_eq!(drawn(&scene, &design.model, row.id) as f64, billed, "{}", row.mark);
            }
        }
    }

    #[test]
    fn as_many_ties_are_drawn_as_are_in_the_bill() {
        counts_agree(&heron_lane().expect("the demo is readable"));
    }

    #[test]
    fn so_they_are_on_walings_with_another_spacing_in_each_row() {
        let mut scheme = heron_lane().expect("the demo is readable");
        for shutter in scheme.shutters.clone() {
            let level = falsewright_core::scheme::Shutter { arrangement: Arrangement::LevelPrimaries, ..shutter };
            scheme = apply(&scheme, &Edit::SetShutter(level)).expect("shutters can be built up so");
        }
        for (index, row) in scheme.ties.iter_mut().enumerate() {
            row.spacing.max_m = 0.6 + 0.1 * index as f64;
        }
        counts_agree(&scheme);
    }

    #[test]
    fn every_row_of_a_shutter_is_drawn_and_tells_its_ratio_and_nothing_else_does() {
        let scheme = heron_lane().expect("the demo is readable");
        let catalogue = Catalogue::generic().with_items_of(&scheme);
        let design = design(&scheme, &catalogue).expect("the demo can be computed");
        for shutter in &scheme.shutters {
            let scene = elevation(&scheme, Some(&design), &catalogue, shutter.id);
            let own = |id: Id| id == shutter.id || scheme.ties.iter().any(|row| row.id == id && row.holds(shutter.id));
            let told: Vec<Id> =
                scene.tags.iter().filter(|tag| tag.key.starts_with("ratio-")).filter_map(|tag| tag.owner).collect();
            assert!(told.iter().all(|id| own(*id)));
            for row in scheme.ties.iter().filter(|row| row.holds(shutter.id)) {
                let tag = scene.tags.iter().find(|tag| tag.owner == Some(row.id)).expect("its ratio is written");
                assert!((tag.at.z - row.z_m).abs() < 1e-9 && (0.0..=scheme.bays.length_m).contains(&tag.at.x));
                assert!(scene.figures.iter().any(|figure| figure.owner == Some(row.id)));
            }
        }
    }
}
