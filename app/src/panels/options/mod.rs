//! The options of the job, as a row of small prints at the edge of the sheet.

mod print;

use crate::editor::{Job, OptionId};
use crate::language::{key, t};
use crate::memo::Memo;
use crate::store::Store;
use crate::widgets::list;
use leptos::html::Section;
use leptos::prelude::*;
use print::{OnePrint, focus_print};
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, KeyboardEvent};

/// The tray: folded it is a handle.
#[component]
pub fn Options() -> impl IntoView {
    let store = Store::here();
    let tray = NodeRef::<Section>::new();
    let open = Memo::new(move |_| store.tray_open());
    let order = Memo::new(move |_| store.job(|job| job.order().to_vec()));
    let single = Memo::new(move |_| store.job(Job::is_single));
    let handle = move || {
        let count = order.with(Vec::len);
        let mark = if open.get() { "▾" } else { "▴" };
        if count > 1 { format!("{} {count} {mark}", t("Options")) } else { format!("{} {mark}", t("Options")) }
    };
    // What was just taken in hand may lie beyond the edge of the tray.
    Effect::new(move || {
        let here = store.in_hand();
        if open.get() {
            request_animation_frame(move || print::show(here));
        }
    });
    let on_key = move |event: KeyboardEvent| {
        if of_field(&event) {
            return;
        }
        match event.key().as_str() {
            "Escape" if store.beside().is_some() => store.lay_beside(None),
            "Escape" if open.get_untracked() => {
                store.set_tray_open(false);
                focus(tray.get_untracked().and_then(|tray| tray.query_selector(".handle").ok().flatten()));
            }
            "ArrowLeft" | "ArrowRight" if of_print(&event) => {
                store.step_option(if event.key() == "ArrowLeft" { -1 } else { 1 });
                focus_print(untrack(|| store.in_hand()));
            }
            _ => return,
        }
        event.prevent_default();
        event.stop_propagation();
    };
    view! {
        <section class="options" class:open=move || open.get() node_ref=tray aria-label=t("Options of the job") data-testid="options-tray" on:keydown=on_key>
            <div class="head">
                <button class="handle" data-testid="options" aria-expanded=move || open.get().to_string() on:click=move |_| store.set_tray_open(!open.get_untracked())>
                    {move || handle()}
                </button>
                {move || open.get().then(|| view! { <Actions single/> }.into_any())}
            </div>
            {move || open.get().then(|| view! {
                <ol class="prints">
                    {list(move || order.get(), |id| id.0.to_string(), |id| view! { <OnePrint id/> }.into_any())}
                </ol>
            }.into_any())}
        </section>
    }
}

/// What can be done with the option on the sheet, and what was put away.
#[component]
fn Actions(single: Memo<bool>) -> impl IntoView {
    let store = Store::here();
    let at = Memo::new(move |_| store.job(|job| (job.place_of(job.here()).unwrap_or_default(), job.order().len())));
    let button = |id: &'static str, name: &'static str, title: &'static str, off: Signal<bool>, act: fn(Store)| {
        view! {
            <button data-testid=id title=t(title) disabled=move || off.get() on:click=move |_| act(store)>{t(name)}</button>
        }.into_any()
    };
    let never = Signal::stored(false);
    let away = Memo::new(move |_| store.job(|job| job.put_away().collect::<Vec<_>>()));
    let row = move |id: OptionId| {
        let name = store.job(|job| {
            job.resting(id).map(|document| {
                let scheme = document.scheme();
                [scheme.name.as_str(), crate::editor::called(scheme)].join(" ").trim().to_owned()
            })
        });
        view! {
            <li><button data-testid="bring-back" on:click=move |_| store.bring_back(id)>{name}</button></li>
        }
        .into_any()
    };
    view! {
        <div class="acts" role="group" aria-label=t("With the option on the sheet")>
            {button("option-copy", key("Copy"), key("A further option like the one on the sheet"), never, |store| store.copy_option())}
            {button("option-new", key("Blank"), key("A further option on a blank sheet"), never, |store| store.new_option())}
            {button("option-earlier", key("◂ Move"), key("Move the option on the sheet to the left"), Signal::derive(move || at.get().0 == 0),
                |store| store.move_option(untrack(|| store.in_hand()), -1))}
            {button("option-later", key("Move ▸"), key("Move the option on the sheet to the right"), Signal::derive(move || at.get().0 + 1 >= at.get().1),
                |store| store.move_option(untrack(|| store.in_hand()), 1))}
            {button("option-away", key("Put away"), key("Take the option on the sheet out of the tray; it can be brought back"), Signal::derive(move || single.get()),
                |store| store.put_away(untrack(|| store.in_hand())))}
            {button("present", key("Present"), key("Show the drawing large, with its key figures"), never, |store| store.present(true))}
        </div>
        {move || {
            let away = away.get();
            (!away.is_empty()).then(|| view! {
                <details class="away" data-testid="put-away">
                    <summary>{say!("Put away: {}", away.len())}</summary>
                    <ul>{away.into_iter().rev().map(row).collect_view()}</ul>
                </details>
            }.into_any())
        }}
    }
}

fn of_field(event: &KeyboardEvent) -> bool {
    crate::canvas::in_field(event)
}

fn of_print(event: &KeyboardEvent) -> bool {
    let element = event.target().and_then(|target| target.dyn_into::<Element>().ok());
    element.is_some_and(|element| element.closest(".prints").ok().flatten().is_some())
}

pub(super) fn focus(element: Option<Element>) {
    if let Some(element) = element.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
        let _ = element.focus();
    }
}
