use super::{Figure, Tag, concrete, equipment, forces, opening, tags};
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
    let mut figures = vec![concrete::ground(scheme)];
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
    figures.extend(opening::openings(model, results));
    figures.extend(equipment::equipment(model, results, catalogue));
    figures.extend(concrete::joints(scheme));
    let tags = tags::tags(model, results, &values);
    figures.extend(values.into_iter().map(|value| value.figure));
    Scene { figures, tags }
}
