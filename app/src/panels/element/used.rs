use crate::language::{look_up, t};
use crate::memo::Memo;
use crate::panels::catalogue::{ItemBody, SectionPicker};
use crate::store::Store;
use crate::units;
use crate::widgets::list;
use falsewright_core::catalogue::{Item, Origin};
use falsewright_core::model::Role;
use falsewright_core::scheme::Id;
use falsewright_core::scheme::edit::Edit;
use leptos::prelude::*;

/// The items that an element is made of; each opens into its values.
#[component]
pub fn ItemsUsed(element: Id) -> impl IntoView {
    let store = Store::here();
    let uses = Memo::new(move |_| {
        store.scheme.with(|scheme| {
            let of = scheme.uses().into_iter().filter(|used| used.element == element);
            of.map(|used| (used.role, used.code.to_owned())).collect::<Vec<_>>()
        })
    });
    move || {
        (!uses.with(Vec::is_empty)).then(|| {
            view! {
                <section class="used" aria-label=t("Its items")>
                    <h3>{t("Its items and their values")}</h3>
                    {list(
                        move || uses.get(),
                        |(role, code)| format!("{} {code}", role.name()),
                        move |(role, code)| view! { <UsedItem element role code/> }.into_any(),
                    )}
                </section>
            }
            .into_any()
        })
    }
}

#[component]
fn UsedItem(element: Id, role: Role, code: String) -> impl IntoView {
    let store = Store::here();
    let open = RwSignal::new(false);
    let of = code.clone();
    let named = Memo::new(move |_| {
        store.catalogue.with(|catalogue| {
            let name = catalogue.get(&of).map_or(of.as_str(), |item| item.name.as_str());
            (look_up(name).unwrap_or(name).to_owned(), t(catalogue.origin(&of).map_or("", Origin::words)))
        })
    });
    let choose = Callback::new(move |item: Item| store.edit(Edit::UseItem { element, role, item }));
    let takes_sections = matches!(role, Role::Primary | Role::Transfer);
    view! {
        <div class="item" class:open=move || open.get()>
            <button
                class="item"
                data-testid=format!("used-{}", role.name().replace(' ', "-"))
                aria-expanded=move || open.get().to_string()
                on:click=move |_| open.update(|open| *open = !*open)
            >
                <span>
                    {units::capital(t(role.name()))} ": " {move || named.get().0}
                    <strong>{move || named.get().1}</strong>
                </span>
            </button>
            {move || {
                let code = code.clone();
                open.get().then(|| view! {
                    {takes_sections.then(|| view! { <SectionPicker title=t("Another standard section") choose/> }.into_any())}
                    <ItemBody code/>
                }.into_any())
            }}
        </div>
    }
}
