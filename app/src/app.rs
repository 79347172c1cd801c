use crate::canvas::{Beside, Views, hold_space, in_field, key_input};
use crate::editor::{Document, Editor, Job, Tool};
use crate::language::{Language, load, speak, t};
use crate::memo::Memo;
use crate::panels::{
    Folds, Hint, Margin, Options, Pens, Presenting, Printed, Skips, Spoken, Start, TitleBlock, to_next_part,
};
use crate::persistence::{self, Saved, open_dropped, save_to_file};
use crate::store::Store;
use crate::units::set_system;
use crate::warming::warm_up;
use crate::widgets::{focus_next, list};
use falsewright_core::scheme::Scheme;
use gloo_events::{EventListener, EventListenerOptions};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{ClipboardEvent, DragEvent, Element, Event, KeyboardEvent};

/// Puts the page into the document, once the words of its language are there. Without them it speaks English.
pub fn start() {
    console_error_panic_hook::set_once();
    set_system(persistence::system());
    let language = persistence::language();
    if language == Language::English {
        leptos::mount::mount_to_body(Page);
        return;
    }
    wasm_bindgen_futures::spawn_local(async move {
        if load(language).await {
            speak(language);
        }
        leptos::mount::mount_to_body(Page);
    });
}

/// The whole sheet.
#[component]
fn Page() -> impl IntoView {
    let mut restored = persistence::restore();
    let saved = if restored.job.is_some() { Saved::Kept } else { Saved::Nothing };
    let (job, document) = restored.job.take().unwrap_or_else(|| (Job::default(), Document::new(Scheme::empty())));
    let tray_open = persistence::tray_open().unwrap_or(!job.is_single());
    let store = Store::provide(job, document, saved, persistence::left_handed(), persistence::laid(), tray_open);
    store.tell(restored.told.take());
    persistence::keep(store, restored);
    listen(store);
    Effect::new(move || persistence::keep_left_handed(store.left_handed()));
    Effect::new(move |before: Option<bool>| {
        let open = store.tray_open();
        if before.is_some_and(|before| before != open) {
            persistence::keep_tray_open(open);
        }
        open
    });
    Effect::new(move || persistence::keep_laid(store.laid()));
    Effect::new(move || set_language_of_document(store.wording().language));
    Folds::provide();
    warm_up();
    let newer = newer_version();
    let sheet = move |_| {
        view! {
            <Skips/>
            <main class="board" class:two=move || store.beside().is_some() class:later=move || is_later(store)>
                <h1 class="unseen">{t("Falsewright: temporary works for box culverts")}</h1>
                <Spoken/>
                <div class="panes">
                    <div class="stack"><Views/></div>
                    <Beside/>
                    <Start/>
                    <Message newer/>
                </div>
                <Options/>
                <Hint/>
            </main>
            <Margin/>
            <TitleBlock/>
            <Pens/>
            <Presenting/>
            <Printed/>
        }
        .into_any()
    };
    view! {
        <div
            class="sheet"
            class:left-handed=move || store.left_handed()
            class:presenting=move || store.presenting()
            on:dragover=|event: DragEvent| event.prevent_default()
            on:drop=move |event: DragEvent| open_dropped(store, &event)
        >
            {list(move || vec![store.wording()], |wording| wording.language.code().to_owned() + wording.system.code(), sheet)}
        </div>
    }
}

fn set_language_of_document(language: Language) {
    let document = web_sys::window().and_then(|window| window.document()).and_then(|it| it.document_element());
    if let Some(root) = document {
        let _ = root.set_attribute("lang", language.code());
    }
}

/// Whether a newer version of the page waits.
fn newer_version() -> RwSignal<bool> {
    let newer = RwSignal::new(false);
    if let Some(window) = web_sys::window() {
        EventListener::new(&window, "falsewright-update", move |_| newer.set(true)).forget();
    }
    newer
}

/// Whether the option on the sheet lies behind the one beside it in the tray.
fn is_later(store: Store) -> bool {
    store.beside().is_some_and(|beside| store.job(|job| job.place_of(beside) < job.place_of(job.here())))
}

/// What the page has to tell.
#[component]
fn Message(newer: RwSignal<bool>) -> impl IntoView {
    let store = Store::here();
    let text = Memo::new(move |_| store.message().or_else(|| store.overlay.with(|overlay| overlay.refusal.clone())));
    let body = move |text: String| {
        view! {
            <p>{text}</p>
            <button aria-label=t("Close") on:click=move |_| store.tell(None)>"✕"</button>
        }
    };
    let reload = move |_| {
        if let (Some(window), Ok(event)) = (web_sys::window(), Event::new("falsewright-apply-update")) {
            let _ = window.dispatch_event(&event);
        }
    };
    view! {
        <div class="message" role="status" data-testid="update" hidden=move || !newer.get() || text.with(Option::is_some)>
            <p>{t("A new version is ready. The drawing is kept.")}</p>
            <button on:click=reload>{t("Reload")}</button>
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
    for name in ["copy", "cut", "paste"] {
        let options = EventListenerOptions::enable_prevent_default();
        EventListener::new_with_options(&window, name, options, move |event| {
            if let Some(event) = event.dyn_ref::<ClipboardEvent>() {
                on_clipboard(store, event);
            }
        })
        .forget();
    }
    EventListener::new(&window, "pointerdown", move |event| {
        let element = event.target().and_then(|target| target.dyn_into::<Element>().ok());
        if element.is_none_or(|element| element.closest(".menu").ok().flatten().is_none()) {
            store.set_menu(None);
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

/// Elements are copied and pasted as text, unless it is text in a field, or words marked on the page, that is meant.
fn on_clipboard(store: Store, event: &ClipboardEvent) {
    let marked = web_sys::window().and_then(|window| window.get_selection().ok().flatten());
    let words = marked.is_some_and(|marked| !marked.is_collapsed());
    if untrack(|| store.presenting()) {
        return;
    }
    let Some(data) = event.clipboard_data().filter(|_| !in_field(event)) else { return };
    if event.type_() == "paste" {
        event.prevent_default();
        store.paste(&data.get_data("text/plain").unwrap_or_default());
        return;
    }
    if words {
        return;
    }
    event.prevent_default();
    if let Some(text) = store.copied_text()
        && data.set_data("text/plain", &text).is_ok()
        && event.type_() == "cut"
    {
        store.remove_copied();
    }
}

/// Marks of the drawing that can be chosen.
const MARKS: &str = ".tags [role=button]:has(rect), .dimensions [role=button]";

/// Whether a key is for what has the focus, and not for the drawing: what presses it, moves in it, or scrolls it. Beside
/// the drawing and its pens, letters and figures are for nothing.
fn is_for_control(event: &KeyboardEvent) -> bool {
    let Some(element) = event.target().and_then(|target| target.dyn_into::<Element>().ok()) else { return false };
    let within = |selector: &str| element.closest(selector).ok().flatten().is_some();
    let is = |selector: &str| element.matches(selector).unwrap_or_default();
    let key = event.key();
    match key.as_str() {
        "Enter" | " " => is("button, summary, a[href], [role=button]"),
        "PageUp" | "PageDown" => within(".margin, .title-block, .start"),
        "ArrowUp" | "ArrowDown" | "ArrowLeft" | "ArrowRight" => is("[role=tab], [role=tabpanel], summary"),
        _ if event.ctrl_key() || event.meta_key() => false,
        _ => key.chars().count() == 1 && within(".margin, .title-block"),
    }
}

fn on_key(store: Store, event: &KeyboardEvent) {
    let command = event.ctrl_key() || event.meta_key();
    let letter = event.key().to_lowercase();
    if command && letter == "s" {
        event.prevent_default();
        save_to_file(store);
        return;
    }
    if event.key() == "F6" {
        event.prevent_default();
        to_next_part(!event.shift_key());
        return;
    }
    if event.is_composing() || in_field(event) || event.alt_key() || is_for_control(event) {
        return;
    }
    if on_option_key(store, event) {
        event.prevent_default();
        return;
    }
    if untrack(|| store.presenting()) {
        return;
    }
    // From mark to mark of the drawing, while no pen has places of its own.
    let pages = matches!(event.key().as_str(), "PageDown" | "PageUp");
    if pages && matches!(store.tool.get_untracked(), Tool::Select | Tool::Hand) {
        event.prevent_default();
        focus_next(MARKS, event.key() == "PageDown");
        return;
    }
    if letter == " " {
        hold_space(true);
    }
    if event.key() == "Escape" && store.menu().is_some() {
        store.set_menu(None);
        return;
    }
    if key_input(event).is_some_and(|input| store.key(input, event.repeat())) {
        event.prevent_default();
    }
}

/// Shift with a page key goes through the options, and Escape backs out of what is shown of them.
fn on_option_key(store: Store, event: &KeyboardEvent) -> bool {
    let presenting = untrack(|| store.presenting());
    match event.key().as_str() {
        "PageUp" if presenting || event.shift_key() => store.step_option(-1),
        "PageDown" if presenting || event.shift_key() => store.step_option(1),
        "ArrowLeft" if presenting => store.step_option(-1),
        "ArrowRight" if presenting => store.step_option(1),
        "Escape" if presenting => store.present(false),
        "Escape" if untrack(|| store.beside()).is_some() && store.peek(Editor::is_at_rest) => store.lay_beside(None),
        _ => return false,
    }
    true
}
