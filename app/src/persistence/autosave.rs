use super::{Saved, put_aside};
use crate::store::Store;
use falsewright_core::scheme::{self, Scheme};
use gloo_events::EventListener;
use gloo_timers::callback::Timeout;
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::{Storage, VisibilityState};

const KEY: &str = "falsewright.scheme";
const DELAY_MS: u32 = 300;

/// The browser's own store of texts. It is written at once, even while a page is being left.
pub(super) fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// The scheme kept at the last visit, and what to tell the user. One that cannot be read is put aside unchanged.
pub fn restore() -> (Option<Scheme>, Option<String>) {
    let Some(text) = storage().and_then(|storage| storage.get_item(KEY).ok().flatten()) else { return (None, None) };
    match scheme::read(&text) {
        Ok(scheme) => (Some(scheme), None),
        Err(error) => {
            let place =
                if put_aside(&text) { "It is set aside unchanged under Earlier sheets" } else { "It is left as it is" };
            let told = format!("The drawing kept in this browser could not be opened: {error} {place}.");
            (None, Some(told))
        }
    }
}

/// Keeps every committed change, soon after it and when the page is left.
pub fn keep(store: Store) {
    let known = Rc::new(RefCell::new(storage().and_then(|storage| storage.get_item(KEY).ok().flatten())));
    let waiting: Rc<RefCell<Option<Timeout>>> = Rc::default();
    let save = {
        let (known, waiting) = (known.clone(), waiting.clone());
        Rc::new(move || {
            if waiting.borrow_mut().take().is_some() {
                let saved = store.peek(|editor| write(editor.scheme(), &mut known.borrow_mut()));
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

/// Writes the scheme; what another tab wrote meanwhile is put aside first.
fn write(scheme: &Scheme, known: &mut Option<String>) -> bool {
    let Some(storage) = storage() else { return false };
    let text = scheme::write(scheme);
    let present = storage.get_item(KEY).ok().flatten();
    if let Some(other) = present.filter(|present| Some(present) != known.as_ref())
        && !put_aside(&other)
    {
        return false;
    }
    let written = storage.set_item(KEY, &text).is_ok();
    if written {
        *known = Some(text);
    }
    written
}
