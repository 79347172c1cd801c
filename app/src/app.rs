use crate::canvas::{Drawing, hold_space, in_field, key_input};
use crate::panels::{Hint, Margin, Pens, Start, TitleBlock};
use crate::persistence::{self, Saved, open_dropped, save_to_file};
use crate::store::Store;
use falsewright_core::scheme::{Scheme, Section};
use gloo_events::{EventListener, EventListenerOptions};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{DragEvent, Event, KeyboardEvent};

/// Puts the page into the document.
pub fn start() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(Page);
}

/// The whole sheet.
#[component]
fn Page() -> impl IntoView {
    let mut restored = persistence::restore();
    let saved = if restored.scheme.is_some() { Saved::Kept } else { Saved::Nothing };
    let blank = || Scheme::blank(Section { outline: Vec::new(), cells: Vec::new(), joints: Vec::new() });
    let scheme = restored.scheme.take().unwrap_or_else(blank);
    let store = Store::provide(scheme, saved, persistence::left_handed());
    store.tell(restored.told.take());
    persistence::keep(store, restored);
    listen(store);
    Effect::new(move || persistence::keep_left_handed(store.left_handed()));
    view! {
        <div
            class="sheet"
            class:left-handed=move || store.left_handed()
            on:dragover=|event: DragEvent| event.prevent_default()
            on:drop=move |event: DragEvent| open_dropped(store, &event)
        >
            <main class="board">
                <h1 class="unseen">"Falsewright: temporary works for box culverts"</h1>
                <Drawing/>
                <Hint/>
                <Start/>
                <Message/>
            </main>
            <Margin/>
            <TitleBlock/>
            <Pens/>
        </div>
    }
}

/// What the page has to tell.
#[component]
fn Message() -> impl IntoView {
    let store = Store::here();
    let text = Memo::new(move |_| store.message().or_else(|| store.overlay.with(|overlay| overlay.refusal.clone())));
    let body = move |text: String| {
        view! {
            <p>{text}</p>
            <button aria-label="Close" on:click=move |_| store.tell(None)>"✕"</button>
        }
    };
    let newer = RwSignal::new(false);
    if let Some(window) = web_sys::window() {
        EventListener::new(&window, "falsewright-update", move |_| newer.set(true)).forget();
    }
    let reload = move |_| {
        if let (Some(window), Ok(event)) = (web_sys::window(), Event::new("falsewright-apply-update")) {
            let _ = window.dispatch_event(&event);
        }
    };
    view! {
        <div class="message" role="status" data-testid="update" hidden=move || !newer.get() || text.with(Option::is_some)>
            <p>"A new version is ready. The drawing is kept."</p>
            <button on:click=reload>"Reload"</button>
        </div>
        <div class="message" role="status" aria-live="polite" data-testid="message" hidden=move || text.with(Option::is_none)>
            {move || text.get().map(body)}
        </div>
    }
}

fn listen(store: Store) {
    let Some(window) = web_sys::window() else { return };
    let options = EventListenerOptions::enable_prevent_default();
    EventListener::new_with_options(&window, "keydown", options, move |event| {
        if let Some(event) = event.dyn_ref::<KeyboardEvent>() {
            on_key(store, event);
        }
    })
    .forget();
    EventListener::new(&window, "keyup", |event| {
        if event.dyn_ref::<KeyboardEvent>().is_some_and(|event| event.key() == " ") {
            hold_space(false);
        }
    })
    .forget();
}

fn on_key(store: Store, event: &KeyboardEvent) {
    let command = event.ctrl_key() || event.meta_key();
    let letter = event.key().to_lowercase();
    if command && letter == "s" {
        event.prevent_default();
        save_to_file(store);
        return;
    }
    if event.is_composing() || in_field(event) || event.alt_key() {
        return;
    }
    if letter == " " {
        hold_space(true);
    }
    if key_input(event).is_some_and(|input| store.key(input)) {
        event.prevent_default();
    }
}
