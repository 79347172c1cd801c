use super::focus;
use crate::comparison::{KeyFigures, Print};
use crate::editor::OptionId;
use crate::language::t;
use crate::memo::Memo;
use crate::panels::ratio::Ratio;
use crate::store::Store;
use crate::units;
use leptos::prelude::*;
use std::sync::Arc;
use web_sys::{Event, HtmlInputElement, KeyboardEvent};

/// One option: its section as drawn, its name, and what it comes to.
#[component]
pub fn OnePrint(id: OptionId) -> impl IntoView {
    let store = Store::here();
    let here = Memo::new(move |_| store.in_hand() == id);
    let beside = Memo::new(move |_| store.beside() == Some(id));
    let print = Memo::new(move |_| store.print(id));
    let name = Memo::new(move |_| store.option_name(id));
    let on_change = move |event: Event| {
        let input = event_target::<HtmlInputElement>(&event);
        store.rename_option(id, &input.value());
        input.set_value(&name.get_untracked());
    };
    let on_key = move |event: KeyboardEvent| {
        let input = event_target::<HtmlInputElement>(&event);
        if event.key() == "Escape" {
            input.set_value(&name.get_untracked());
        }
        if matches!(event.key().as_str(), "Enter" | "Escape") {
            focus_print(id);
        }
    };
    view! {
        <li class="print" class:here=move || here.get() class:beside=move || beside.get()>
            <button
                class="face"
                id=format!("option-{}", id.0)
                data-testid=format!("option-{}", id.0)
                aria-current=move || here.get().then_some("true")
                title=move || if here.get() { t("On the sheet") } else { t("Put this option on the sheet (Shift with Page Up or Page Down)") }
                on:click=move |_| store.switch_to(id)
            >
                <span class="unseen">{move || say!("Option {}", name.get())}". "</span>
                {move || print.get().map(|print| view! { {thumbnail(&print)} {figures(&print)} }.into_any())}
            </button>
            <div class="foot">
                <input
                    type="text"
                    data-testid=format!("option-name-{}", id.0)
                    aria-label=t("Name of the option")
                    prop:value=move || name.get()
                    on:change=on_change
                    on:keydown=on_key
                />
                {move || (!here.get()).then(|| view! {
                    <button
                        data-testid=format!("compare-{}", id.0)
                        aria-pressed=move || beside.get().to_string()
                        title=t("Lay this option beside the one on the sheet")
                        on:click=move |_| store.lay_beside((!beside.get_untracked()).then_some(id))
                    >{t("Compare")}</button>
                }.into_any())}
            </div>
        </li>
    }
}

/// The section as drawn, small.
fn thumbnail(print: &Arc<Print>) -> impl IntoView + use<> {
    const BESIDE_M: f64 = 0.2;
    let view_box = print.bounds.map(|bounds| {
        let size = bounds.max - bounds.min;
        let [x, y] = [bounds.min.x - BESIDE_M, -bounds.max.z - BESIDE_M];
        format!("{x:.2} {y:.2} {:.2} {:.2}", size.x + 2.0 * BESIDE_M, size.z + 2.0 * BESIDE_M)
    });
    let figures = print.figures.iter().filter(|figure| figure.key != "ground").map(|figure| {
        let path = |stroke: &crate::canvas::paint::Stroke| {
            view! { <path class=stroke.class.clone() d=stroke.d.clone()/> }.into_any()
        };
        view! { <g class="figure">{figure.strokes.iter().map(path).collect_view()}</g> }.into_any()
    });
    view! {
        <svg class="thumbnail" viewBox=view_box aria-hidden="true">
            <g transform="scale(1 -1)">{figures.collect_view()}</g>
        </svg>
    }
}

/// Worst ratio, clear way, weight and pieces.
fn figures(print: &Arc<Print>) -> impl IntoView + use<> {
    let of = KeyFigures::of(&print.worked);
    let clear = of.clear_m.map(|[width, height]| format!("{} × {}", units::dimension(width), units::size(height)));
    let failing = (of.failing > 0).then(|| format!("▲ {}", of.failing));
    view! {
        <span class="told">
            <span>
                {of.failed.then(|| view! { <strong class="fails">{format!("▲ {}", t("cannot be computed"))}</strong> }.into_any())}
                {of.worst.map(|value| view! { <span class="unseen">{t("Worst ratio")}" "</span><Ratio value/>" " }.into_any())}
                {failing.map(|failing| view! { <strong class="fails" title=t("Notes of what must not be built so")>{failing}</strong> }.into_any())}
                {(of.worst.is_none() && !of.failed).then(|| view! { <span class="quiet">{t("nothing checked yet")}</span> }.into_any())}
            </span>
            <span data-part="clear">{clear.unwrap_or_else(|| t("no clear way").to_owned())}</span>
            " "
            <span data-part="weight">{cost_or_weight(&of)}</span>
            " "
            <span data-part="pieces">{pieces(of.equipment.pieces)}</span>
        </span>
    }
}

fn cost_or_weight(of: &KeyFigures) -> String {
    match of.cost {
        Some(cost) => say!("costs {}", units::number(cost, 0)),
        None => units::quantity(of.equipment.mass_kg, "kg", 0),
    }
}

fn pieces(count: f64) -> String {
    say!("{} pieces", units::number(count, 0))
}

fn face_of(id: OptionId) -> Option<web_sys::Element> {
    web_sys::window()?.document()?.get_element_by_id(&format!("option-{}", id.0))
}

/// Moves the focus to an option.
pub fn focus_print(id: OptionId) {
    focus(face_of(id));
}

/// Scrolls the tray to an option.
pub fn show(id: OptionId) {
    if let Some(face) = face_of(id) {
        let options = web_sys::ScrollIntoViewOptions::new();
        options.set_block(web_sys::ScrollLogicalPosition::Nearest);
        options.set_inline(web_sys::ScrollLogicalPosition::Nearest);
        face.scroll_into_view_with_scroll_into_view_options(&options);
    }
}
