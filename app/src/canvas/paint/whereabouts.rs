//! Where on a view stands what was computed.

use super::equipment::place_of;
use crate::editor::{Seen, View};
use falsewright_core::geometry::Point;
use falsewright_core::model::{Model, PlacedFalsework};
use falsewright_core::results::{Check, Results};
use falsewright_core::scheme::Id;

/// A view of what was placed and computed.
pub struct Whereabouts<'a> {
    /// The view.
    pub seen: Seen,
    /// What is placed.
    pub model: &'a Model,
    /// What is computed.
    pub results: &'a Results,
}

impl Whereabouts<'_> {
    /// Whether an element is on the view.
    pub fn shows(&self, owner: Id) -> bool {
        let Some(subject) = self.seen.subject else { return self.seen.is_section() };
        let holds = || {
            self.model.ties.iter().any(|row| row.id == owner && [Some(row.shutter), row.to].contains(&Some(subject)))
        };
        match self.seen.view {
            View::Section => true,
            View::Elevation => owner == subject || holds(),
            View::Plan => {
                let of = |falsework: &PlacedFalsework| falsework.legs.iter().any(|leg| leg.owner == owner);
                owner == subject || self.falsework().is_some_and(of)
            }
        }
    }

    /// The falsework of a plan.
    fn falsework(&self) -> Option<&PlacedFalsework> {
        self.model.falsework.iter().find(|falsework| self.seen.is_plan_of(falsework.id))
    }

    /// Where a check is written.
    pub fn check(&self, check: &Check) -> Option<Point> {
        self.point(Some(check.owner), check.at)
    }

    /// A place of the section that concerns an element: along the bay at that of its ties or legs that bears most, else in
    /// the middle.
    pub fn point(&self, owner: Option<Id>, at: Point) -> Option<Point> {
        if self.seen.is_section() {
            return Some(at);
        }
        let owner = owner.filter(|owner| self.shows(*owner))?;
        Some(self.seen.view.project([at.x, self.along(owner), at.z]))
    }

    /// Where an element is.
    pub fn element(&self, owner: Id) -> Option<Point> {
        let [x, y, z] = place_of(self.model, owner).filter(|_| self.shows(owner))?;
        let y = if self.seen.is_section() { y } else { self.along(owner) };
        Some(self.seen.view.project([x, y, z]))
    }

    fn along(&self, owner: Id) -> f64 {
        let tie = || {
            let row = self.model.ties.iter().find(|row| row.id == owner)?;
            row.places_m.get(self.results.most_loaded_tie(owner)?).copied()
        };
        let leg = || {
            let bents = &self.falsework()?.bents_m;
            bents.get(self.results.most_loaded_bent(owner, bents.len())?).copied()
        };
        tie().or_else(leg).unwrap_or(self.model.bay_m / 2.0)
    }
}
