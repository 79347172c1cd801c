//! What is selected.

use super::{Editor, Outcome, find};
use crate::editor::{Selection, Target, View, lasso};
use falsewright_core::model::Model;
use falsewright_core::scheme::Id;

impl Editor {
    /// What is selected, if it is one thing.
    pub fn selection(&self) -> Selection {
        if let [one] = self.chosen.as_slice() { Some(*one) } else { None }
    }

    /// All that is selected, in the order in which it was.
    pub fn chosen(&self) -> &[Target] {
        &self.chosen
    }

    /// Whether taps add to the selection.
    pub fn adding(&self) -> bool {
        self.adding
    }

    /// Lets taps add to the selection, or replace it again.
    pub fn set_adding(&mut self, adding: bool) -> Outcome {
        self.adding = adding;
        Outcome::view()
    }

    /// Selects one thing, or nothing. What is proposed is kept.
    pub fn select(&mut self, selection: Selection) -> Outcome {
        self.choose(selection.into_iter().collect())
    }

    /// Selects all these. What is proposed is kept.
    pub fn choose(&mut self, targets: Vec<Target>) -> Outcome {
        let kept = self.keep_proposal();
        self.adding &= !targets.is_empty();
        self.chosen = targets;
        self.typed = None;
        self.follow_selection();
        Outcome::view().after(kept)
    }

    /// Adds a thing to the selection, or takes it out. What is proposed is kept.
    pub fn toggle(&mut self, target: Target) -> Outcome {
        let kept = self.keep_proposal();
        self.typed = None;
        self.chosen.retain(|other| !matches!(other, Target::Dimension(_)));
        self.chosen.iter_mut().for_each(|other| *other = other.whole());
        let count = self.chosen.len();
        self.chosen.retain(|other| *other != target);
        if self.chosen.len() == count {
            self.chosen.push(target);
        }
        self.follow_selection();
        Outcome::view().after(kept)
    }

    /// Selects the element of this id, whatever it is.
    pub fn select_element(&mut self, id: Id) -> Outcome {
        match find(&self.document.scheme, id) {
            Some(target) if self.adding => self.toggle(target),
            found => self.select(found),
        }
    }

    /// Adds the element of this id to the selection, or takes it out.
    pub fn toggle_element(&mut self, id: Id) -> Outcome {
        find(&self.document.scheme, id).map_or_else(Outcome::view, |target| self.toggle(target))
    }

    /// Selects all equipment, and the section too if all equipment is selected already.
    pub fn choose_all(&mut self, model: &Model) -> Outcome {
        let places = self.places_on(View::Section, &self.document.scheme, &self.faces, model);
        let all = lasso::all(&places, &self.chosen);
        self.choose(all)
    }

    /// Ids of the elements that are selected.
    pub(super) fn chosen_ids(&self) -> Vec<Id> {
        let equipment = |target: &&Target| !matches!(target, Target::Face(_) | Target::Dimension(_));
        self.chosen.iter().filter(equipment).filter_map(Target::element).collect()
    }

    /// Selects what has ids from this one on; leg lines go with falsework that is new itself.
    pub(super) fn choose_new(&mut self, from: Id) {
        let scheme = &self.document.scheme;
        let found = (from.0..scheme.fresh_id().0).filter_map(|id| find(scheme, Id(id)));
        let own = |target: &Target| match target {
            Target::LegLine(line) => {
                let of = scheme.falsework.iter().find(|of| of.leg_lines.iter().any(|other| other.id == *line));
                of.is_some_and(|of| of.id >= from)
            }
            _ => false,
        };
        self.chosen = found.filter(|target| !own(target)).collect();
        self.follow_selection();
    }
}
