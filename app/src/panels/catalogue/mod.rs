//! The catalogue: items by kind, their values, the supplier's in place of ours, and files of them.

mod copy;
mod files;
mod item;
mod section_picker;
mod value;
mod words;

pub use item::ItemBody;
pub use section_picker::SectionPicker;

use crate::language::t;
use crate::memo::Memo;
use crate::persistence::import_dropped;
use crate::store::Store;
use crate::widgets::list;
use copy::NewSection;
use falsewright_core::catalogue::{Item, Origin};
use files::Files;
use item::ItemRow;
use leptos::prelude::*;
use web_sys::DragEvent;

/// Every item that the scheme can use.
#[component]
pub fn Items() -> impl IntoView {
    let store = Store::here();
    let search = RwSignal::new(String::new());
    let in_use = RwSignal::new(false);
    Effect::new(move || {
        store.look_ups();
        search.set(String::new());
        in_use.set(false);
    });
    let found = move |kind: &'static str| {
        Memo::new(move |_| {
            let words = words::plain(&search.get());
            let used = in_use.get().then(|| used_codes(store));
            let wanted = |item: &&Item| {
                words::kind(item) == kind
                    && words::matches(item, &words)
                    && used.as_ref().is_none_or(|used| used.contains(&item.code))
            };
            store.catalogue.with(|catalogue| catalogue.iter().filter(wanted).map(|item| item.code.clone()).collect())
        })
    };
    let groups: Vec<(&'static str, Memo<Vec<String>>)> =
        words::KINDS.iter().map(|(kind, name)| (*name, found(kind))).collect();
    let lists = groups.iter().map(|(_, codes)| *codes).collect::<Vec<_>>();
    let none = move || lists.iter().all(|codes| codes.with(Vec::is_empty));
    let group = |(name, codes): (&'static str, Memo<Vec<String>>)| {
        view! {
            <section class="kind" hidden=move || codes.with(Vec::is_empty)>
                <h2>{t(name)}</h2>
                <ul>
                    {list(move || codes.get(), String::clone, |code| view! { <ItemRow code/> }.into_any())}
                </ul>
            </section>
        }
        .into_any()
    };
    view! {
        <section
            class="catalogue"
            aria-label=t("Catalogue of items")
            data-testid="catalogue"
            on:dragover=|event: DragEvent| event.prevent_default()
            on:drop=move |event: DragEvent| import_dropped(store, &event)
        >
            <div class="search">
                <label class="field">
                    <span>{t("Search by name, code or kind")}</span>
                    <input
                        type="text"
                        autocomplete="off"
                        data-testid="item-search"
                        prop:value=search
                        on:input=move |event| search.set(event_target_value(&event))
                    />
                </label>
                <label class="field tick">
                    <input
                        type="checkbox"
                        data-testid="items-in-use"
                        prop:checked=in_use
                        on:change=move |event| in_use.set(event_target_checked(&event))
                    />
                    <span>{t("In use")}</span>
                </label>
            </div>
            <Files/>
            {groups.into_iter().map(group).collect_view()}
            {move || none().then(|| view! { <p class="quiet">{t("No item is called so. Search for less, or copy an item under a new code.")}</p> }.into_any())}
            <NewSection/>
        </section>
    }
}

/// Codes of the items that elements name.
fn used_codes(store: Store) -> Vec<String> {
    store.scheme.with(|scheme| scheme.uses().iter().map(|used| used.code.to_owned()).collect())
}

/// Codes of the items in use that are the supplier's or the user's own.
pub fn own_codes_in_use(store: Store) -> Vec<String> {
    let mut codes = used_codes(store);
    codes.sort();
    codes.dedup();
    store.catalogue.with(|catalogue| {
        codes.retain(|code| matches!(catalogue.origin(code), Some(Origin::Supplier | Origin::Own)));
    });
    codes
}
