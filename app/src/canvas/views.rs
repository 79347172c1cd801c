use super::Drawing;
use super::paint::name_of;
use crate::editor::View;
use crate::language::t;
use crate::memo::Memo;
use crate::store::{Laid, Pane, Store};
use crate::widgets::{answers, narrow_screen};
use falsewright_core::scheme::Id;
use gloo_events::EventListener;
use leptos::prelude::*;

/// A screen on which several views have room side by side.
const WIDE: &str = "(min-width: 1201px)";

/// The views that are laid out on the sheet, with their names at its foot.
#[component]
pub fn Views() -> impl IntoView {
    let store = Store::here();
    let wide = RwSignal::new(answers(WIDE));
    if let Some(window) = web_sys::window() {
        let heard = EventListener::new(&window, "resize", move |_| {
            if answers(WIDE) != wide.get_untracked() {
                wide.update(|wide| *wide = !*wide);
            }
        });
        let heard = StoredValue::new_local(Some(heard));
        on_cleanup(move || {
            heard.try_update_value(Option::take);
        });
    }
    // A blank sheet has only its section.
    let blank = Memo::new(move |_| store.scheme.with(|scheme| scheme.section.outline.is_empty()));
    let laid = Memo::new(move |_| match store.laid() {
        // Options are laid beside each other in section.
        _ if blank.get() || store.beside().is_some() => Laid::One(View::Section),
        Laid::All if !wide.get() => Laid::One(View::Section),
        laid => laid,
    });
    Effect::new(move || {
        let views = laid.get().views();
        if !views.contains(&store.peek(|editor| editor.view())) {
            store.enter(views[0]);
        }
    });
    view! {
        <div class="views" class:all=move || laid.get() == Laid::All>
            // Views that get another size are laid out anew, and so shown whole.
            <For
                each=move || laid.get().views().iter().map(move |view| (*view, laid.get() == Laid::All))
                key=|of| *of
                let((view, _))
            >
                <Drawing view/>
            </For>
        </div>
        <p class="unseen" id="drawing-keys">
            {t("Arrow keys move a cursor, Space presses there. Page Down goes to the next place for the pen in hand, or from mark to mark. F6 leaves the drawing.")}
        </p>
        <nav class="view-names" aria-label=t("Views of the sheet") class:blank=move || blank.get()>
            {Laid::CHOICES
                .into_iter()
                .map(|choice| {
                    view! {
                        <button
                            data-testid=format!("view-{}", choice.id())
                            aria-pressed=move || (laid.get() == choice).to_string()
                            hidden=move || choice == Laid::All && !wide.get()
                            on:click=move |_| store.lay(choice)
                        >
                            {name(choice)}
                        </button>
                    }
                })
                .collect_view()}
            {[View::Elevation, View::Plan]
                .map(|view| {
                    move || laid.get().views().contains(&view).then(|| view! { <Subject pane=store.pane(view)/> })
                })
                .into_iter()
                .collect_view()}
        </nav>
    }
}

fn name(choice: Laid) -> &'static str {
    match choice {
        Laid::One(View::Section) => t("Cross-section"),
        Laid::One(View::Elevation) => t("Elevation"),
        Laid::One(View::Plan) => t("Plan"),
        Laid::All => t("All"),
    }
}

/// Which shutter is shown in elevation, or which falsework in plan, where there are several.
#[component]
fn Subject(pane: Pane) -> impl IntoView {
    let store = Store::here();
    let narrow = narrow_screen();
    let all = Memo::new(move |_| {
        let ids: Vec<Id> = store.scheme.with(|scheme| match pane.view {
            View::Plan => scheme.falsework.iter().map(|falsework| falsework.id).collect(),
            _ => scheme.shutters.iter().map(|shutter| shutter.id).collect(),
        });
        let settled = store.settled.get();
        // Where there is little room, the mark alone.
        let short = |name: String| name.rsplit(' ').next().filter(|_| narrow).map(str::to_owned).unwrap_or(name);
        let named = |id: Id| (id, short(name_of(&settled.design.model, id).unwrap_or_default()));
        ids.into_iter().map(named).collect::<Vec<_>>()
    });
    let label = if pane.view == View::Plan { t("Falsework in plan") } else { t("Shutter in elevation") };
    let options = move || {
        let shown = pane.seen.get().subject;
        let option = |(id, name): (Id, String)| {
            view! { <option value=id.0.to_string() selected=shown == Some(id)>{name}</option> }
        };
        all.get().into_iter().map(option).collect_view()
    };
    move || {
        (all.with(Vec::len) > 1).then(|| {
            view! {
                <select
                    aria-label=label
                    data-testid=format!("subject-{}", pane.view.id())
                    on:change=move |event| {
                        if let Ok(id) = event_target_value(&event).parse() {
                            store.show_subject(pane.view, Id(id));
                        }
                    }
                >
                    {options}
                </select>
            }
        })
    }
}
