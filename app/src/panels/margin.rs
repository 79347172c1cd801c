use super::catalogue::Items;
use super::element::{self, Element};
use super::ledger::Ledger;
use super::notes::Notes;
use super::schedule::Schedule;
use crate::store::Store;
use falsewright_core::results::Severity;
use leptos::prelude::*;

#[derive(Clone, Copy, PartialEq, Eq)]
enum Leaf {
    Element,
    Notes,
    Schedule,
    Loads,
    Items,
}

/// The right margin: the selected element, notes, schedule and path of loads. Pulled up on small screens.
#[component]
pub fn Margin() -> impl IntoView {
    let store = Store::here();
    let leaf = RwSignal::new(Leaf::Notes);
    // A leaf that is asked for again keeps what is open on it.
    let shown = Memo::new(move |_| leaf.get());
    let pulled = RwSignal::new(false);
    let count = move || {
        let worked = store.settled.get();
        let findings = &worked.design.results.findings;
        let serious = findings.iter().filter(|finding| finding.severity == Severity::Fail).count();
        let count = findings.len() + usize::from(worked.reason.is_some());
        format!("Notes {}{count}", if serious > 0 || worked.reason.is_some() { "▲ " } else { "" })
    };
    let selected = Memo::new(move |_| element::selected(store));
    let noted = Memo::new(move |_| {
        let findings = &store.settled.get().design.results.findings;
        store.note().and_then(|note| findings.get(note)?.owner)
    });
    Effect::new(move || {
        if store.note().is_some() {
            leaf.set(Leaf::Notes);
            pulled.set(true);
        }
    });
    Effect::new(move || {
        if store.look_ups() > 0 {
            leaf.set(Leaf::Items);
            pulled.set(true);
        }
    });
    Effect::new(move || match selected.get().map(|target| target.element()) {
        Some(element) if element.is_none() || element != noted.get_untracked() => leaf.set(Leaf::Element),
        None if leaf.get_untracked() == Leaf::Element => leaf.set(Leaf::Notes),
        _ => {}
    });
    let mark = Signal::derive(move || selected.get().map(|target| element::mark(store, &target)).unwrap_or_default());
    let tab = move |of: Leaf, id: &'static str, name: Signal<String>| {
        view! {
            <button
                role="tab"
                id=id
                data-testid=id
                aria-controls="leaf"
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
                {move || selected.get().is_some().then(|| tab(Leaf::Element, "leaf-element", mark))}
                {tab(Leaf::Notes, "leaf-notes", Signal::derive(count))}
                {tab(Leaf::Schedule, "leaf-schedule", Signal::stored("Schedule".to_owned()))}
                {tab(Leaf::Loads, "leaf-loads", Signal::stored("Loads".to_owned()))}
                {tab(Leaf::Items, "leaf-items", Signal::stored("Items".to_owned()))}
            </div>
            <div class="leaf" id="leaf" role="tabpanel" tabindex="0" aria-label="Leaf of the margin">
                {move || match shown.get() {
                    Leaf::Element => view! { <Element/><Notes/> }.into_any(),
                    Leaf::Notes => view! { <Notes/> }.into_any(),
                    Leaf::Schedule => view! { <Schedule/> }.into_any(),
                    Leaf::Loads => view! { <Ledger/> }.into_any(),
                    Leaf::Items => view! { <Items/> }.into_any(),
                }}
            </div>
        </aside>
    }
}
