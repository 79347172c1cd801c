use super::margin::Leaf;
use super::unfolding::Opened;
use crate::store::Store;
use crate::widgets::narrow_screen;
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
    /// Parts that stand unfolded.
    pub opened: Opened,
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
            opened: Opened::default(),
            changed: StoredValue::new(None),
        });
    }

    /// On a narrow screen there is room for one of margin, title block and tray: the one opened last.
    pub fn keep_one_open(&self, store: Store) {
        let Self { pulled, data, .. } = *self;
        Effect::new(move |was: Option<[bool; 3]>| {
            let now = [pulled.get(), data.get(), store.tray_open()];
            let opened = was.and_then(|was| (0..now.len()).find(|&part| now[part] && !was[part]));
            if let Some(opened) = opened
                && narrow_screen()
            {
                let folds = |part: usize| part != opened && now[part];
                if folds(0) {
                    pulled.set(false);
                }
                if folds(1) {
                    data.set(false);
                }
                if folds(2) {
                    store.set_tray_open(false);
                }
            }
            now
        });
    }
}
