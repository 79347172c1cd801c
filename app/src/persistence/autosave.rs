use super::{Saved, put_aside};
use crate::editor::{Document, Job};
use crate::language::told;
use crate::store::Store;
use falsewright_core::json;
use falsewright_core::scheme::{self, Scheme};
use gloo_events::EventListener;
use gloo_timers::callback::Timeout;
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::{Storage, VisibilityState};

const KEY: &str = "falsewright.scheme";
const STEPS_KEY: &str = "falsewright.steps";
/// Steps of the options that were not on the sheet.
const RESTING_KEY: &str = "falsewright.steps.resting";
const DELAY_MS: u32 = 300;

/// The browser's own store of texts. It is written at once, even while a page is being left.
pub(super) fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// What was kept at the last visit.
#[derive(Default)]
pub struct Restored {
    /// The options with their steps and the document on the sheet, if there are any that can be read.
    pub job: Option<(Job, Document)>,
    /// What to tell the user.
    pub told: Option<String>,
    /// The text that may be written over.
    known: Option<String>,
}

/// Reads what was kept at the last visit. A text that cannot be read is put aside unchanged.
pub fn restore() -> Restored {
    let Some(text) = kept(KEY) else { return Restored::default() };
    match read(&text) {
        Ok(file) => {
            let here = kept(STEPS_KEY).unwrap_or_default();
            let resting: Vec<String> = kept(RESTING_KEY).and_then(|text| json::read(&text).ok()).unwrap_or_default();
            let count = file.options.len();
            let all = file.options.into_iter().chain(file.put_away).enumerate().map(|(index, scheme)| {
                let steps = if index == file.at { Some(&here) } else { resting.get(index) };
                Document::with_steps(scheme, steps.map_or("", String::as_str))
            });
            let mut options: Vec<Document> = all.collect();
            let put_away = options.split_off(count);
            Restored { job: Some(Job::of(options, file.at, put_away)), told: None, known: Some(text) }
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
            Restored { job: None, told: Some(told), known: None }
        }
    }
}

/// A blank sheet is no scheme that can be worked with, but it may be where the user left off.
fn read(text: &str) -> Result<scheme::Job, scheme::ReadError> {
    scheme::Job::read(text).or_else(|error| {
        let blank = json::read(text).ok().filter(Scheme::is_blank).ok_or(error)?;
        Ok(scheme::Job::new(vec![blank], 0, Vec::new()))
    })
}

fn kept(key: &str) -> Option<String> {
    storage()?.get_item(key).ok().flatten()
}

/// Keeps every committed change, soon after it and when the page is left.
pub fn keep(store: Store, restored: Restored) {
    let known = Rc::new(RefCell::new(Known { text: restored.known, resting: None }));
    let waiting: Rc<RefCell<Option<Timeout>>> = Rc::default();
    let save = {
        let (known, waiting) = (known.clone(), waiting.clone());
        Rc::new(move || {
            if waiting.borrow_mut().take().is_some() {
                let saved = write(store, &mut known.borrow_mut());
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

/// What this page has written.
struct Known {
    text: Option<String>,
    /// The count of changes of the options that rest.
    resting: Option<u64>,
}

/// Writes the options and their steps; without room for the steps, the options alone. What cannot be read, or was
/// written by another tab meanwhile, is put aside first.
fn write(store: Store, known: &mut Known) -> bool {
    let Some(storage) = storage() else { return false };
    let text = store.job_text(true);
    if let Some(other) = kept(KEY).filter(|present| Some(present) != known.text.as_ref())
        && !put_aside(&other)
    {
        return false;
    }
    let keep = || storage.set_item(KEY, &text).is_ok();
    let without = |key: &str| storage.remove_item(key).is_ok();
    if !(keep() || (without(RESTING_KEY) && keep()) || (without(STEPS_KEY) && keep())) {
        return false;
    }
    known.text = Some(text);
    if storage.set_item(STEPS_KEY, &store.peek(|editor| editor.document().written_steps())).is_err() {
        without(STEPS_KEY);
    }
    if let Some((changes, steps)) = store.resting_steps(known.resting) {
        known.resting = Some(changes);
        let rests = steps.iter().any(|steps| !steps.is_empty());
        if !rests || storage.set_item(RESTING_KEY, &json::write(&steps)).is_err() {
            without(RESTING_KEY);
        }
    }
    true
}
