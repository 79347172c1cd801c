use super::{Saved, put_aside};
use crate::editor::Document;
use crate::language::told;
use crate::store::Store;
use falsewright_core::scheme::{self, Scheme};
use gloo_events::EventListener;
use gloo_timers::callback::Timeout;
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::{Storage, VisibilityState};

const KEY: &str = "falsewright.scheme";
const STEPS_KEY: &str = "falsewright.steps";
const DELAY_MS: u32 = 300;

/// The browser's own store of texts. It is written at once, even while a page is being left.
pub(super) fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// What was kept at the last visit.
#[derive(Default)]
pub struct Restored {
    /// The scheme with its steps, if there is one that can be read.
    pub document: Option<Document>,
    /// What to tell the user.
    pub told: Option<String>,
    /// The text that may be written over.
    known: Option<String>,
}

/// Reads what was kept at the last visit. A text that cannot be read is put aside unchanged.
pub fn restore() -> Restored {
    let Some(text) = kept_text() else { return Restored::default() };
    match read(&text) {
        Ok(scheme) => {
            let steps = storage().and_then(|storage| storage.get_item(STEPS_KEY).ok().flatten()).unwrap_or_default();
            Restored { document: Some(Document::with_steps(scheme, &steps)), told: None, known: Some(text) }
        }
        Err(error) => {
            let why = told(&error.sentence());
            let told = if put_aside(&text) {
                say!(
                    "The drawing kept in this browser could not be opened: {} It is set aside unchanged under Earlier sheets.",
                    why
                )
            } else {
                say!("The drawing kept in this browser could not be opened: {} It is left as it is.", why)
            };
            Restored { document: None, told: Some(told), known: None }
        }
    }
}

/// A blank sheet is no scheme that can be worked with, but it may be where the user left off.
fn read(text: &str) -> Result<Scheme, scheme::ReadError> {
    scheme::read(text).or_else(|error| {
        let blank = |scheme: &Scheme| scheme.section.outline.is_empty() && scheme.section.cells.is_empty();
        serde_json::from_str(text).ok().filter(blank).ok_or(error)
    })
}

fn kept_text() -> Option<String> {
    storage()?.get_item(KEY).ok().flatten()
}

/// Keeps every committed change, soon after it and when the page is left.
pub fn keep(store: Store, restored: Restored) {
    let known = Rc::new(RefCell::new(restored.known));
    let waiting: Rc<RefCell<Option<Timeout>>> = Rc::default();
    let save = {
        let (known, waiting) = (known.clone(), waiting.clone());
        Rc::new(move || {
            if waiting.borrow_mut().take().is_some() {
                let saved = store.peek(|editor| write(editor.document(), &mut known.borrow_mut()));
                store.set_saved(if saved { Saved::Kept } else { Saved::Failed });
            }
        })
    };
    let later = save.clone();
    Effect::new(move || {
        if store.commits() == 0 {
            return;
        }
        store.set_saved(Saved::Waiting);
        let later = later.clone();
        *waiting.borrow_mut() = Some(Timeout::new(DELAY_MS, move || later()));
    });
    let Some(document) = web_sys::window().and_then(|window| window.document()) else { return };
    let hidden = document.clone();
    let on_hide = save.clone();
    EventListener::new(&document, "visibilitychange", move |_| {
        if hidden.visibility_state() == VisibilityState::Hidden {
            on_hide();
        }
    })
    .forget();
    if let Some(window) = web_sys::window() {
        EventListener::new(&window, "pagehide", move |_| save()).forget();
    }
}

/// Writes the scheme and its steps; without room for the steps, the scheme alone. What cannot be read, or was written by another tab meanwhile, is put aside first.
fn write(document: &Document, known: &mut Option<String>) -> bool {
    let Some(storage) = storage() else { return false };
    let text = scheme::write(document.scheme());
    if let Some(other) = kept_text().filter(|present| Some(present) != known.as_ref())
        && !put_aside(&other)
    {
        return false;
    }
    let keep = || storage.set_item(KEY, &text).is_ok();
    let written = keep() || (storage.remove_item(STEPS_KEY).is_ok() && keep());
    if written {
        *known = Some(text);
        if storage.set_item(STEPS_KEY, &document.written_steps()).is_err() {
            let _ = storage.remove_item(STEPS_KEY);
        }
    }
    written
}
