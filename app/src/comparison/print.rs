use crate::canvas::paint::{Figure, Shown, scene};
use crate::editor::{Bounds, ends};
use crate::worked::Worked;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::Scheme;
use std::sync::Arc;

/// An option as it was last worked out, with its section as drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Print {
    /// Generic items and its own.
    pub catalogue: Arc<Catalogue>,
    /// What was computed for it.
    pub worked: Arc<Worked>,
    /// The works alone, without pressures, moments and tags.
    pub figures: Vec<Figure>,
    /// Around the section; none for a blank sheet.
    pub bounds: Option<Bounds>,
}

impl Print {
    /// Draws an option that is worked out already.
    pub fn new(scheme: &Scheme, catalogue: Arc<Catalogue>, worked: Arc<Worked>) -> Self {
        let works = Shown { pressure: false, deflection: false, moment: false };
        let design = worked.fault.is_none().then_some(&worked.design);
        let figures = scene(scheme, design, &catalogue, works).figures;
        let outline = scheme.section.outline.iter().map(|corner| Point::new(corner.x_m, corner.z_m));
        let bounds = Bounds::around(outline.chain(worked.design.model.parts.iter().flat_map(ends)));
        Self { catalogue, worked, figures, bounds }
    }

    /// Works an option out and draws it.
    pub fn worked_out(scheme: &Scheme, generic: &Catalogue) -> Self {
        let catalogue = Arc::new(generic.clone().with_items_of(scheme));
        let worked = Arc::new(Worked::out(scheme, &catalogue));
        Self::new(scheme, catalogue, worked)
    }
}
