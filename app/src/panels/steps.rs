use crate::editor::StepName;
use crate::language::{step, t};
use crate::store::Store;
use crate::widgets::list as entries;
use leptos::html::Ol;
use leptos::prelude::*;

/// All steps in plain words, the latest first, with where the drawing stands now. Touch one to go there.
#[component]
pub fn Steps() -> impl IntoView {
    let store = Store::here();
    let list = NodeRef::<Ol>::new();
    Effect::new(move || {
        store.at.track();
        let here = list.get().and_then(|list| list.query_selector("[aria-current]").ok().flatten());
        if let Some(here) = here {
            here.scroll_into_view_with_scroll_into_view_options(&nearest());
        }
    });
    let row = move |number: usize, label: String| {
        let here = move || store.at.get() == number;
        view! {
            <li class:ahead=move || { number > store.at.get() }>
                <button
                    data-testid=format!("step-{number}")
                    aria-current=move || here().then_some("step")
                    on:click=move |_| store.run(|editor| editor.go_to(number))
                >
                    <span class="number">{number}</span>
                    <span>{step(&label)}</span>
                </button>
            </li>
        }
        .into_any()
    };
    view! {
        <section class="steps-list" aria-label=t("Steps") data-testid="steps">
            <p class="quiet">{t("Every step is kept, also when the page is closed. Touch one to go there; a new step drops those taken back.")}</p>
            <ol reversed node_ref=list>
                {entries(
                    move || store.steps.get().into_iter().rev().collect(),
                    |step: &StepName| format!("{} {}", step.number, step.label),
                    move |step| row(step.number, step.label).into_any(),
                )}
            </ol>
        </section>
    }
}

fn nearest() -> web_sys::ScrollIntoViewOptions {
    let options = web_sys::ScrollIntoViewOptions::new();
    options.set_block(web_sys::ScrollLogicalPosition::Nearest);
    options
}
