use super::margin::Leaf;
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

    /// On a narrow screen there is room for one of margin, title block and tray: the one opened last.
    pub fn keep_one_open(&self, store: Store) {
        let Self { pulled, data, .. } = *self;
        let opened = |open: Box<dyn Fn() -> bool>, fold_others: Box<dyn Fn()>| {
            Effect::new(move |was: Option<bool>| {
                let now = open();
                if now && was == Some(false) && narrow_screen() {
                    fold_others();
                }
                now
            });
        };
        let fold = |open: RwSignal<bool>| {
            if open.get_untracked() {
                open.set(false);
            }
        };
        let fold_tray = move || {
            if untrack(|| store.tray_open()) {
                store.set_tray_open(false);
            }
        };
        opened(
            Box::new(move || pulled.get()),
            Box::new(move || {
                fold(data);
                fold_tray();
            }),
        );
        opened(
            Box::new(move || data.get()),
            Box::new(move || {
                fold(pulled);
                fold_tray();
            }),
        );
        opened(
            Box::new(move || store.tray_open()),
            Box::new(move || {
                fold(data);
                fold(pulled);
            }),
        );
    }
}
