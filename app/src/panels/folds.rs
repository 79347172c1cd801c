use super::margin::Leaf;
use leptos::prelude::*;

/// What is open, kept while the views are made anew in another language.
#[derive(Clone, Copy)]
pub struct Folds {
    /// The leaf of the margin.
    pub leaf: RwSignal<Leaf>,
    /// Whether the margin is pulled up.
    pub pulled: RwSignal<bool>,
    /// Whether the data of the title block are shown.
    pub data: RwSignal<bool>,
    /// The field that was changed and takes the focus again.
    pub changed: StoredValue<Option<&'static str>>,
}

impl Folds {
    /// Makes them known to all views below.
    pub fn provide() {
        provide_context(Self {
            leaf: RwSignal::new(Leaf::Notes),
            pulled: RwSignal::new(false),
            data: RwSignal::new(false),
            changed: StoredValue::new(None),
        });
    }
}
