use super::whereabouts::Whereabouts;
use super::{Figure, Tag, concrete, equipment, forces, jacks, mechanism, opening, swing, tags};
use crate::editor::{Seen, View};
use falsewright_core::Design;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::scheme::Scheme;

/// All that is drawn of a design, from back to front.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Scene {
    /// Shapes in metres.
    pub figures: Vec<Figure>,
    /// Writing at places of the drawing.
    pub tags: Vec<Tag>,
}

/// What the user wants to see besides the works themselves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shown {
    /// Pressure of fresh concrete.
    pub pressure: bool,
    /// Deflected shapes.
    pub deflection: bool,
    /// Bending moments.
    pub moment: bool,
}

impl Default for Shown {
    fn default() -> Self {
        Self { pressure: true, deflection: false, moment: false }
    }
}

/// Draws a design; without one, the section as it was drawn.
pub fn scene(scheme: &Scheme, design: Option<&Design>, catalogue: &Catalogue, shown: Shown) -> Scene {
    if scheme.section.outline.is_empty() {
        return Scene::default();
    }
    let mut figures = vec![concrete::ground(scheme, design.map(|design| &design.model))];
    let Some(design) = design.filter(|design| !design.model.pours.is_empty()) else {
        figures.push(concrete::rings(&scheme.section));
        figures.extend(concrete::joints(scheme));
        return Scene { figures, tags: Vec::new() };
    };
    let (model, results) = (&design.model, &design.results);
    let mut values = Vec::new();
    if shown.pressure {
        values.extend(forces::pressures(model, results));
    }
    if shown.moment {
        values.extend(forces::along_members(&results.diagrams, true));
    }
    if shown.deflection {
        values.extend(forces::along_members(&results.diagrams, false));
    }
    figures.extend(concrete::pours(model));
    figures.extend(jacks::jacks(model, results));
    figures.extend(opening::openings(View::Section, model, results));
    figures.extend(equipment::equipment(View::Section, model, results, catalogue, |_| true));
    figures.extend(swing::swings(model, results));
    figures.extend(concrete::joints(scheme));
    let tags = tags::tags(&Whereabouts { seen: Seen::SECTION, model, results }, &values);
    figures.extend(values.into_iter().map(|value| value.figure));
    figures.extend(mechanism::mechanisms(results));
    Scene { figures, tags }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::paint::{TagKind, tone};
    use falsewright_core::design;
    use falsewright_core::results::Diagram;
    use falsewright_core::scheme::heron_lane;
    use std::collections::BTreeSet;

    fn demo(shown: Shown) -> (Design, Scene) {
        let scheme = heron_lane().expect("the demo is readable");
        let catalogue = Catalogue::generic().with_items_of(&scheme);
        let design = design(&scheme, &catalogue).expect("the demo can be computed");
        let scene = scene(&scheme, Some(&design), &catalogue, shown);
        (design, scene)
    }

    #[test]
    fn keys_are_unique_whatever_is_shown() {
        let (_, scene) = demo(Shown { pressure: true, deflection: true, moment: true });
        let figures: BTreeSet<&str> = scene.figures.iter().map(|figure| figure.key.as_str()).collect();
        assert_eq!(figures.len(), scene.figures.len());
        let mut tags: Vec<&str> = scene.tags.iter().map(|tag| tag.key.as_str()).collect();
        tags.sort_unstable();
        let doubled: Vec<_> = tags.windows(2).filter(|pair| pair[0] == pair[1]).collect();
        assert!(doubled.is_empty(), "{doubled:?}");
    }

    #[test]
    fn next_to_nothing_is_not_written_beside_a_diagram() {
        let (design, scene) = demo(Shown { pressure: false, deflection: true, moment: true });
        let still = |diagram: &Diagram| diagram.stations.iter().all(|station| station.deflection_m.abs() < 0.04e-3);
        assert!(design.results.diagrams.iter().any(still), "all of the demo moves");
        let values = scene.tags.iter().filter(|tag| tag.kind == TagKind::Value);
        let nothing: Vec<_> = values.filter(|tag| tag.text.starts_with("0.0 ")).map(|tag| &tag.text).collect();
        assert!(nothing.is_empty(), "{nothing:?}");
    }

    #[test]
    fn every_placed_element_is_drawn_and_tells_its_greatest_ratio() {
        let (design, scene) = demo(Shown::default());
        let model = &design.model;
        let ids = model.shutters.iter().map(|of| of.id).chain(model.ties.iter().map(|of| of.id));
        for id in ids.chain(model.falsework.iter().map(|of| of.id)) {
            assert!(scene.figures.iter().any(|figure| figure.owner == Some(id)), "{id} is not drawn");
            let worst = design.results.governing_of(id).map(|check| check.ratio);
            let written = scene.tags.iter().find_map(|tag| match tag.kind {
                TagKind::Governing(ratio) if tag.owner == Some(id) => Some(ratio),
                _ => None,
            });
            assert_eq!(written, worst, "{id}");
        }
    }

    #[test]
    fn every_part_is_toned_by_a_check_of_its_own() {
        let (design, _) = demo(Shown::default());
        for part in &design.model.parts {
            assert!(tone::governing(&design.results, part).is_some(), "{} {:?}", part.mark, part.role);
        }
    }

    #[test]
    fn what_cannot_be_computed_is_still_drawn_as_it_is() {
        let scheme = heron_lane().expect("the demo is readable");
        let scene = scene(&scheme, None, &Catalogue::generic(), Shown::default());
        assert!(scene.figures.iter().any(|figure| figure.key == "section"));
    }
}
