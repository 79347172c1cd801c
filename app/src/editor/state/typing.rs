//! Dimension lines and what is typed into them.

use super::{Editor, Outcome, Refusal, faces_of};
use crate::editor::dimensions::{self, Dimension, DimensionKey};
use crate::editor::{Target, View, parse_length};
use falsewright_core::model::Model;

/// Distance between rows of dimension lines, px.
const DIMENSION_ROW_PX: f64 = 26.0;

impl Editor {
    /// The dimension lines of what is shown on the view in hand.
    pub fn dimensions(&self) -> Vec<Dimension> {
        self.dimensions_on(self.view())
    }

    /// The dimension lines of what is shown on a view.
    pub fn dimensions_on(&self, view: View) -> Vec<Dimension> {
        let scheme = self.shown();
        let (faces, model) = (faces_of(scheme), Model::default());
        let places = self.places_on(view, scheme, &faces, &model);
        let mut all = dimensions::dimensions(&places, self.viewport_on(view).length_m(DIMENSION_ROW_PX));
        for dimension in &mut all {
            dimension.chosen = dimensions::belongs(&places, self.selection(), dimension);
        }
        all
    }

    /// Opens the field of the selected element's own dimension with a typed character.
    pub(super) fn type_into_selection(&mut self, typed: char) -> Option<Outcome> {
        let model = Model::default();
        let places = self.places(&model);
        let all = dimensions::dimensions(&places, self.viewport().length_m(DIMENSION_ROW_PX));
        let key = dimensions::principal(&places, self.selection(), &all)?;
        let outcome = self.select(Some(Target::Dimension(key)));
        self.typed = Some(typed);
        Some(outcome)
    }

    /// Gives a dimension a typed value.
    pub fn type_dimension(&mut self, key: DimensionKey, text: &str) -> Result<Outcome, Refusal> {
        let value_m = parse_length(text)?;
        let model = Model::default();
        let places = self.places(&model);
        let edit = dimensions::edit_for(&places, key, value_m).ok_or(Refusal::Dimension)?;
        self.perform(edit)
    }

    /// The character that opened the field of the chosen dimension.
    pub fn typed(&self) -> Option<char> {
        self.typed
    }
}
