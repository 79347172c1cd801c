use crate::editor::{Action, Editor};
use crate::language::t;
use crate::store::{Pane, Store};
use crate::widgets::{coarse_pointer, focus_on, focus_sibling};
use leptos::html::Div;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, KeyboardEvent};

/// Room that the list is given, px.
const WIDTH_PX: f64 = 232.0;
/// From a finger to the list, px.
const BESIDE_PX: f64 = 14.0;

/// What can be done here: opened by a right click, a long press or the menu key. It holds nothing up; whatever is done
/// elsewhere closes it.
#[component]
pub fn Menu() -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    move || store.menu().filter(|_| pane.in_hand.get()).map(|_| view! { <List/> })
}

#[component]
fn List() -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let list = NodeRef::<Div>::new();
    let actions = store.peek(Editor::actions);
    let adding = store.peek(Editor::adding);
    let coarse = coarse_pointer();
    let row_px = if coarse { 46.0 } else { 30.0 };
    let height = row_px * actions.len() as f64 + 10.0;
    let place = store.menu().zip(Some(pane.viewport.get_untracked())).map(|(at, view)| {
        let beside = if coarse { BESIDE_PX } else { 2.0 };
        let x = if at.x + beside + WIDTH_PX > view.width_px { at.x - beside - WIDTH_PX } else { at.x + beside };
        (x.max(4.0), at.y.min(view.height_px - height - 4.0).max(4.0))
    });
    let (left, top) = place.unwrap_or_default();
    Effect::new(move || {
        if let Some(list) = list.get() {
            let _ = list
                .query_selector("button")
                .ok()
                .flatten()
                .and_then(|button| button.dyn_into::<HtmlElement>().ok())
                .map(|button| button.focus());
        }
    });
    let close = move || {
        store.set_menu(None);
        focus_on(&format!(".drawing.{}", pane.view.id()));
    };
    let item = move |action: Action| {
        let ticks = action == Action::AddMore;
        view! {
            <button
                role=if ticks { "menuitemcheckbox" } else { "menuitem" }
                data-testid=format!("menu-{}", action.id())
                title=t(action.explained())
                aria-checked=ticks.then(|| adding.to_string())
                on:click=move |_| {
                    close();
                    store.perform(action);
                }
            >
                <span>{t(action.words())}</span>
                <kbd>{action.key().map(t)}</kbd>
            </button>
        }
    };
    let on_key = move |event: KeyboardEvent| {
        match event.key().as_str() {
            "ArrowDown" => focus_sibling(&event, true),
            "ArrowUp" => focus_sibling(&event, false),
            "Escape" | "Tab" => close(),
            _ => return,
        }
        event.prevent_default();
        event.stop_propagation();
    };
    view! {
        <div
            class="menu"
            node_ref=list
            role="menu"
            aria-label=t("What can be done here")
            data-testid="menu"
            style:left=format!("{left:.0}px")
            style:top=format!("{top:.0}px")
            on:keydown=on_key
        >
            {actions.into_iter().map(item).collect_view()}
        </div>
    }
}
