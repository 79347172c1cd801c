use super::element::Element;
use super::ledger::Ledger;
use super::notes::Notes;
use super::schedule::Schedule;
use crate::store::Store;
use falsewright_core::results::Severity;
use leptos::prelude::*;

#[derive(Clone, Copy, PartialEq, Eq)]
enum Leaf {
    Notes,
    Schedule,
    Loads,
}

/// The right margin: the selected element, notes, schedule and path of loads. Pulled up on small screens.
#[component]
pub fn Margin() -> impl IntoView {
    let store = Store::here();
    let leaf = RwSignal::new(Leaf::Notes);
    let pulled = RwSignal::new(false);
    let count = move || {
        let worked = store.worked.get();
        let findings = &worked.design.results.findings;
        let serious = findings.iter().filter(|finding| finding.severity == Severity::Fail).count();
        let count = findings.len() + usize::from(worked.reason.is_some());
        format!("Notes {}{count}", if serious > 0 || worked.reason.is_some() { "▲ " } else { "" })
    };
    Effect::new(move || {
        if store.note().is_some() {
            leaf.set(Leaf::Notes);
            pulled.set(true);
        }
    });
    let tab = move |of: Leaf, id: &'static str, name: Signal<String>| {
        view! {
            <button
                role="tab"
                id=id
                data-testid=id
                aria-selected=move || (leaf.get() == of).to_string()
                on:click=move |_| {
                    let same = leaf.get() == of;
                    leaf.set(of);
                    pulled.update(|pulled| *pulled = !(same && *pulled));
                }
            >
                {name}
            </button>
        }
    };
    view! {
        <aside class="margin" class:pulled=move || pulled.get() aria-label="Margin of the drawing">
            <div class="leaves" role="tablist">
                {tab(Leaf::Notes, "leaf-notes", Signal::derive(count))}
                {tab(Leaf::Schedule, "leaf-schedule", Signal::stored("Schedule".to_owned()))}
                {tab(Leaf::Loads, "leaf-loads", Signal::stored("Path of loads".to_owned()))}
            </div>
            <div class="leaf" tabindex="0">
                <Element/>
                {move || match leaf.get() {
                    Leaf::Notes => view! { <Notes/> }.into_any(),
                    Leaf::Schedule => view! { <Schedule/> }.into_any(),
                    Leaf::Loads => view! { <Ledger/> }.into_any(),
                }}
            </div>
        </aside>
    }
}
