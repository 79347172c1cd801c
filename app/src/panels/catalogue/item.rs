use super::copy::CopyItem;
use super::value::ValueRow;
use super::words;
use crate::language::t;
use crate::memo::Memo;
use crate::store::Store;
use crate::widgets::Form;
use falsewright_core::catalogue::exchange::Field;
use falsewright_core::catalogue::{Item, Origin};
use falsewright_core::scheme::edit::Edit;
use leptos::prelude::*;

/// An item of the list, which opens into its values.
#[component]
pub fn ItemRow(code: String) -> impl IntoView {
    let store = Store::here();
    let item = watched(store, code.clone());
    let own = code.clone();
    let open = Memo::new(move |_| store.open_item().as_deref() == Some(own.as_str()));
    let origin = origin(store, code.clone());
    let used = used(store, code.clone());
    let row = NodeRef::<leptos::html::Li>::new();
    Effect::new(move || {
        if open.get()
            && let Some(row) = row.get()
        {
            row.scroll_into_view_with_bool(true);
        }
    });
    let toggled = code.clone();
    let toggle = move |_| store.set_open_item((!open.get_untracked()).then(|| toggled.clone()));
    let (shown, id) = (code.clone(), format!("item-{code}"));
    view! {
        <li class="item" class:open=move || open.get() node_ref=row data-testid=id>
            <button class="item" aria-expanded=move || open.get().to_string() on:click=toggle>
                <span class="name">{move || item.get().map(|item| words::name(&item.name))} " " <span class="code">{code}</span></span>
                <span class="marks">
                    {move || used.get().then(|| view! { <span>{t("in use")}</span> }.into_any())}
                    {move || {
                        let mark = words::mark(origin.get());
                        (!mark.is_empty()).then(|| view! { <strong>{t(mark)}</strong> }.into_any())
                    }}
                </span>
            </button>
            {move || {
                let code = shown.clone();
                open.get().then(|| view! { <ItemBody code/> }.into_any())
            }}
        </li>
    }
}

/// The values of an item, each of which the supplier's can replace.
#[component]
pub fn ItemBody(code: String) -> impl IntoView {
    let store = Store::here();
    let item = watched(store, code.clone());
    let origin = origin(store, code.clone());
    let used = used(store, code.clone());
    let fields = Memo::new(move |_| -> Vec<&'static Field> {
        let all = item.get().map(|item| item.data()).unwrap_or_default();
        all.into_iter().map(|(field, _)| field).filter(|field| !field.is_identity()).collect()
    });
    let of = code.clone();
    let values = move || {
        let row = |field| view! { <ValueRow code=of.clone() field/> }.into_any();
        fields.get().into_iter().map(row).collect_view()
    };
    let of = code.clone();
    let source = move || {
        let item = item.get()?;
        let supplied = store.catalogue.with(|catalogue| catalogue.ours(&of)).filter(|ours| *ours != item).map(|ours| {
            let supplied = item.supplied(&ours);
            let names: Vec<&str> = supplied.fields.iter().map(|field| t(field.name)).collect();
            say!("Supplier's: {}, by {}. Other values: {}.", names.join(", "), supplied.source, ours.source)
        });
        Some(supplied.unwrap_or_else(|| say!("Source: {}.", item.source)))
    };
    let of = code.clone();
    let own_words = move || (origin.get() == Some(Origin::Own)).then(|| words_of_own(store, &of)).flatten();
    let of = code.clone();
    let actions = move || match origin.get() {
        Some(Origin::Supplier) => {
            let code = of.clone();
            let back = move |_| store.edit(back_to_ours(store, &code));
            view! { <button data-testid="back-to-ours" on:click=back>{t("All values back to ours")}</button> }
                .into_any()
        }
        Some(Origin::Own | Origin::Standard) if used.get() => {
            view! { <p class="quiet">{t("It is in use. To remove it, first choose another item in its place.")}</p> }
                .into_any()
        }
        Some(Origin::Own | Origin::Standard) => {
            let code = of.clone();
            let remove = move |_| store.edit(Edit::RemoveItem(code.clone()));
            view! { <button data-testid="remove-item" on:click=remove>{t("Remove this item")}</button> }.into_any()
        }
        Some(Origin::Catalogue) | None => ().into_any(),
    };
    view! {
        <div class="body">
            {move || own_words()}
            <ul class="values">{move || values()}</ul>
            <p class="quiet" data-testid="item-source">{move || source()}</p>
            <div class="actions">{move || actions()}<CopyItem code/></div>
        </div>
    }
}

/// Ours in place of the supplier's: a built-in item needs no item of the user's own, a standard section does.
pub fn back_to_ours(store: Store, code: &str) -> Edit {
    let ours =
        store.catalogue.with_untracked(|catalogue| catalogue.ours(code).filter(|_| !catalogue.is_built_in(code)));
    ours.map_or_else(|| Edit::RemoveItem(code.to_owned()), Edit::SetItem)
}

fn words_of_own(store: Store, code: &str) -> Option<impl IntoView + use<>> {
    let first = store.catalogue.with_untracked(|catalogue| catalogue.get(code).cloned())?;
    let item = watched(store, code.to_owned());
    let value = Memo::new(move |last: Option<&Item>| item.get().unwrap_or_else(|| last.unwrap_or(&first).clone()));
    let form = Form::new(value, move |item| store.edit(Edit::SetItem(item)));
    Some(
        view! {
            <div class="fields">
                {form.text("Name", |item| &item.name, |item, text| item.name = text)}
                {form.text("Source", |item| &item.source, |item, text| item.source = text)}
            </div>
        }
        .into_any(),
    )
}

/// The item of this code as it is now.
pub fn watched(store: Store, code: String) -> Memo<Option<Item>> {
    Memo::new(move |_| store.catalogue.with(|catalogue| catalogue.get(&code).cloned()))
}

fn origin(store: Store, code: String) -> Memo<Option<Origin>> {
    Memo::new(move |_| store.catalogue.with(|catalogue| catalogue.origin(&code)))
}

fn used(store: Store, code: String) -> Memo<bool> {
    Memo::new(move |_| store.scheme.with(|scheme| scheme.uses().iter().any(|used| used.code == code)))
}
