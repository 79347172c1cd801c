//! Whether the page is being printed.

use gloo_events::EventListener;
use leptos::prelude::*;

/// True from just before the page is laid out for paper until it is back on the screen.
pub fn printing() -> ReadSignal<bool> {
    let (printing, set) = signal(false);
    if let Some(window) = web_sys::window() {
        for (event, now) in [("beforeprint", true), ("afterprint", false)] {
            EventListener::new(&window, event, move |_| set.set(now)).forget();
        }
    }
    printing
}
