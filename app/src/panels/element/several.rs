//! What several selected elements have in common, and what can be done with them.

use super::{falsework, opening, shutter, ties};
use crate::editor::{Action, Editor, Target, counted};
use crate::language::{listed, t};
use crate::memo::Memo;
use crate::store::Store;
use falsewright_core::scheme::Id;
use leptos::prelude::*;

/// Their number by kinds, the fields that all of them have, and what can be done with them.
pub fn panel(store: Store, chosen: &[Target]) -> AnyView {
    let chosen: Vec<Target> = chosen.iter().map(|target| target.whole()).collect();
    let title = listed(&counted(&chosen));
    let ids: Vec<Id> = chosen.iter().filter_map(Target::element).collect();
    let all = |of: fn(&Target) -> bool| chosen.iter().all(of);
    let fields = if all(|target| matches!(target, Target::Shutter(_))) {
        shutter::fields(store, ids)
    } else if all(|target| matches!(target, Target::TieRow(_))) {
        ties::fields(store, ids)
    } else if all(|target| matches!(target, Target::Falsework(_))) {
        falsework::fields(store, ids)
    } else if all(|target| matches!(target, Target::LegLine(_))) {
        falsework::leg_lines(store, ids)
    } else if all(|target| matches!(target, Target::Opening(_))) {
        opening::fields(store, ids)
    } else {
        None
    };
    let various = fields.is_some().then(|| {
        view! {
            <p class="quiet wide">{t("An empty field means that they differ. What you enter holds for all of them.")}</p>
        }.into_any()
    });
    view! {
        <section class="element" aria-label=t("Selected elements") data-testid="element">
            <header>
                <h2>{title}</h2>
                <button aria-label=t("Close") data-testid="close" on:click=move |_| store.run(|editor| editor.select(None))>"✕"</button>
            </header>
            <Actions/>
            {various}
            {fields}
        </section>
    }
    .into_any()
}

/// Buttons for what can be done with the selection.
#[component]
pub fn Actions() -> impl IntoView {
    let store = Store::here();
    let actions = Memo::new(move |_| {
        let offered = store.read(Editor::actions);
        offered.into_iter().filter(|action| !matches!(action, Action::SelectAll | Action::Paste)).collect::<Vec<_>>()
    });
    let button = move |action: Action| {
        let pressed = move || (action == Action::AddMore).then(|| store.read(Editor::adding).to_string());
        let name = if let Some(key) = action.key() {
            format!("{} ({})", t(action.explained()), t(key))
        } else {
            t(action.explained()).to_owned()
        };
        view! {
            <button
                data-testid=action.id()
                title=name
                aria-pressed=pressed
                on:click=move |_| store.perform(action)
            >{t(action.words())}</button>
        }
        .into_any()
    };
    view! { <div class="actions">{move || actions.get().into_iter().map(button).collect_view()}</div> }
}
