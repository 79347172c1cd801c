use super::catalogue::Items;
use super::compare::Compare;
use super::element::{self, Element};
use super::folds::Folds;
use super::ledger::Ledger;
use super::notes::Notes;
use super::schedule::Schedule;
use super::steps::Steps;
use crate::language::t;
use crate::memo::Memo;
use crate::store::Store;
use crate::widgets::{focus_sibling, later};
use falsewright_core::results::Severity;
use leptos::prelude::*;

/// A leaf of the margin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leaf {
    /// What is selected.
    Element,
    /// Findings.
    Notes,
    /// The bill.
    Schedule,
    /// The path of loads.
    Loads,
    /// The catalogue.
    Items,
    /// The history.
    Steps,
    /// Two options.
    Compare,
}

impl Leaf {
    /// Of its tab.
    fn id(self) -> &'static str {
        match self {
            Self::Element => "leaf-element",
            Self::Notes => "leaf-notes",
            Self::Schedule => "leaf-schedule",
            Self::Loads => "leaf-loads",
            Self::Items => "leaf-items",
            Self::Steps => "leaf-steps",
            Self::Compare => "leaf-compare",
        }
    }
}

/// The right margin: the selected element, notes, schedule and path of loads. Pulled up on small screens.
#[component]
pub fn Margin() -> impl IntoView {
    let store = Store::here();
    let folds: Folds = expect_context();
    folds.keep_one_open(store);
    let Folds { leaf, pulled, .. } = folds;
    // A leaf that is asked for again keeps what is open on it.
    let shown = Memo::new(move |_| leaf.get());
    let count = move || {
        let worked = store.settled.get();
        let findings = &worked.design.results.findings;
        let serious = findings.iter().filter(|finding| finding.severity == Severity::Fail).count();
        let count = findings.len() + usize::from(worked.fault.is_some());
        format!("{} {}{count}", t("Notes"), if serious > 0 || worked.fault.is_some() { "▲ " } else { "" })
    };
    let selected = Memo::new(move |_| element::selected(store));
    let noted = Memo::new(move |_| {
        let findings = &store.settled.get().design.results.findings;
        store.note().and_then(|note| findings.get(note)?.owner)
    });
    // What a leaf was turned to before this margin was made has been followed already.
    let turn = move |changed: bool, to: Leaf| {
        if changed {
            leaf.set(to);
            pulled.set(true);
        }
    };
    Effect::new(move |last: Option<Option<usize>>| {
        let note = store.note();
        turn(last.is_some() && note.is_some(), Leaf::Notes);
        note
    });
    Effect::new(move |last: Option<u64>| {
        let look_ups = store.look_ups();
        turn(last.is_some_and(|last| look_ups > last), Leaf::Items);
        look_ups
    });
    let compared = Memo::new(move |_| store.beside().is_some());
    Effect::new(move |last: Option<bool>| {
        let now = compared.get();
        match leaf.get_untracked() {
            _ if last == Some(now) || last.is_none() && !now => {}
            _ if now => leaf.set(Leaf::Compare),
            Leaf::Compare => leaf.set(Leaf::Notes),
            _ => {}
        }
        now
    });
    Effect::new(move |followed: Option<()>| {
        let elements: Vec<_> = selected.get().iter().map(|target| target.element()).collect();
        let note = noted.get_untracked();
        // Steps are gone through while what is selected comes and goes.
        if leaf.get_untracked() == Leaf::Steps || (followed.is_none() && !elements.is_empty()) {
            return;
        }
        if elements.is_empty() {
            if leaf.get_untracked() == Leaf::Element {
                leaf.set(if compared.get_untracked() { Leaf::Compare } else { Leaf::Notes });
            }
        } else if note.is_none() || elements != [note] {
            leaf.set(Leaf::Element);
        }
    });
    let mark = Signal::derive(move || match selected.get().as_slice() {
        [] => String::new(),
        [one] => element::mark(store, one),
        all => say!("{} chosen", all.len()),
    });
    let tab = move |of: Leaf, name: Signal<String>| {
        let id = of.id();
        view! {
            <button
                role="tab"
                id=id
                data-testid=id
                aria-controls="leaf"
                aria-selected=move || (leaf.get() == of).to_string()
                tabindex=move || if leaf.get() == of { "0" } else { "-1" }
                on:keydown=move |event| {
                    let forward = event.key() == "ArrowRight";
                    if forward || event.key() == "ArrowLeft" {
                        event.prevent_default();
                        event.stop_propagation();
                        focus_sibling(&event, forward);
                    }
                }
                on:click=move |_| {
                    let same = leaf.get() == of;
                    leaf.set(of);
                    pulled.update(|pulled| *pulled = !(same && *pulled));
                }
            >
                {name}
            </button>
        }
        .into_any()
    };
    view! {
        <aside class="margin" class:pulled=move || pulled.get() aria-label=t("Margin of the drawing")>
            <div class="leaves" role="tablist">
                {move || (!selected.get().is_empty()).then(|| tab(Leaf::Element, mark))}
                {move || compared.get().then(|| tab(Leaf::Compare, Signal::stored(t("Compare").to_owned())))}
                {tab(Leaf::Notes, Signal::derive(count))}
                {tab(Leaf::Schedule, Signal::stored(t("Schedule").to_owned()))}
                {tab(Leaf::Steps, Signal::stored(t("Steps").to_owned()))}
                {tab(Leaf::Loads, Signal::stored(t("Loads").to_owned()))}
                {tab(Leaf::Items, Signal::stored(t("Items").to_owned()))}
            </div>
            <div class="leaf" id="leaf" role="tabpanel" tabindex="0" aria-labelledby=move || leaf.get().id()>
                {later(move || content(shown.get()))}
            </div>
        </aside>
    }
}

/// What stands on a leaf.
fn content(leaf: Leaf) -> AnyView {
    match leaf {
        Leaf::Element => view! { <Element/><Notes/> }.into_any(),
        Leaf::Notes => view! { <Notes/> }.into_any(),
        Leaf::Schedule => view! { <Schedule/> }.into_any(),
        Leaf::Loads => view! { <Ledger/> }.into_any(),
        Leaf::Items => view! { <Items/> }.into_any(),
        Leaf::Steps => view! { <Steps/> }.into_any(),
        Leaf::Compare => view! { <Compare/> }.into_any(),
    }
}
