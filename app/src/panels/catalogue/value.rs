use super::item::{back_to_ours, watched};
use super::words;
use crate::language::{t, told};
use crate::memo::Memo;
use crate::store::Store;
use crate::units;
use falsewright_core::catalogue::exchange::{Datum, Field};
use falsewright_core::catalogue::{Item, Supplied};
use falsewright_core::scheme::edit::Edit;
use leptos::html::Button;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, KeyboardEvent, SubmitEvent};

/// The source of a value that the user says nothing else of.
const SUPPLIER: &str = "supplier's data";

/// A value of an item; a touch opens a field for the supplier's.
#[component]
pub fn ValueRow(code: String, field: &'static Field) -> impl IntoView {
    let store = Store::here();
    let item = watched(store, code.clone());
    let ours = store.catalogue.with_untracked(|catalogue| catalogue.ours(&code));
    let open = RwSignal::new(false);
    let fault = RwSignal::new(None::<String>);
    let button = NodeRef::<Button>::new();
    let close = move || {
        open.set(false);
        fault.set(None);
        if let Some(button) = button.get_untracked() {
            let _ = button.focus();
        }
    };
    let old = StoredValue::new(ours);
    let supplied = Memo::new(move |_| {
        let item = item.get()?;
        let ours = old.get_value().filter(|ours| *ours != item)?;
        Some(item.supplied(&ours)).filter(|supplied| supplied.fields.contains(&field))
    });
    let now = move || item.get().and_then(|item| item.datum(field));
    let value = move || now().map(|datum| words::written(field, &datum));
    let ours = move || old.with_value(|ours| ours.as_ref()?.datum(field)).map(|datum| words::written(field, &datum));
    let explained = move || {
        let meaning = words::meaning(field);
        match supplied.get() {
            Some(Supplied { source, .. }) => {
                let comma = if meaning.is_empty() { "" } else { ", " };
                let from = say!("by {}; ours {}", source, ours().unwrap_or_default());
                format!("{}{comma}{from}", t(meaning))
            }
            None => t(meaning).to_owned(),
        }
    };
    let code = StoredValue::new(code);
    let put = move |number: &str, source: &str| {
        let Some(present) = item.get_untracked() else { return };
        let result = match words::typed(field, number) {
            Some(datum) => replaced(&present, old.get_value().as_ref(), field, &datum, source),
            None => Err(say!("“{}” is not a number. Type one, such as 90 or 12.5.", number)),
        };
        match result.and_then(|item| {
            store.attempt(|editor| editor.perform(Edit::SetItem(item))).map_err(|refusal| refusal.to_string())
        }) {
            Ok(()) => close(),
            Err(reason) => fault.set(Some(reason)),
        }
    };
    let back = move |_| {
        let (Some(present), Some(ours)) = (item.get_untracked(), old.get_value()) else { return };
        let edit = match present.with_ours(&ours, field) {
            Ok(item) if item == ours => Ok(code.with_value(|code| back_to_ours(store, code))),
            Ok(item) => Ok(Edit::SetItem(item)),
            Err(fault) => Err(told(&fault.sentence()) + "."),
        };
        match edit.and_then(|edit| store.attempt(|editor| editor.perform(edit)).map_err(|refusal| refusal.to_string()))
        {
            Ok(()) => close(),
            Err(reason) => fault.set(Some(reason)),
        }
    };
    let form = move || {
        let first = now().map(|datum| words::number(field, &datum)).unwrap_or_default();
        let source = supplied.get_untracked().map_or(SUPPLIER.to_owned(), |supplied| supplied.source);
        let submit = move |event: SubmitEvent| {
            event.prevent_default();
            let Some(form) = event.target().and_then(|target| target.dyn_into::<HtmlElement>().ok()) else { return };
            put(&field_of(&form, "number"), &field_of(&form, "source"));
        };
        let on_key = move |event: KeyboardEvent| {
            if event.key() == "Escape" {
                event.stop_propagation();
                close();
            }
        };
        let is_ours = old.with_value(Option::is_some);
        view! {
            <form class="supply" on:submit=submit on:keydown=on_key>
                <label class="field">
                    <span>{if is_ours { t("Supplier's value") } else { t("Value") }}</span>
                    <Entry field first/>
                </label>
                {is_ours.then(|| view! {
                    <label class="field">
                        <span>{t("Source")}</span>
                        <input type="text" name="source" data-testid="supply-source" maxlength="150" prop:value=source/>
                    </label>
                }.into_any())}
                <p class="actions">
                    <button type="submit" data-testid="supply-use">{t("Use this value")}</button>
                    <button type="button" on:click=move |_| close()>{t("Cancel")}</button>
                </p>
                {move || fault.get().map(|fault| view! { <p class="reason" role="alert" data-testid="supply-fault">{fault}</p> }.into_any())}
            </form>
        }.into_any()
    };
    view! {
        <li class="value" class:supplied=move || supplied.get().is_some()>
            <button
                class="value"
                node_ref=button
                data-testid=format!("value-{}", field.key)
                aria-expanded=move || open.get().to_string()
                on:click=move |_| if open.get_untracked() { close() } else { open.set(true) }
            >
                <span>{units::capital(t(field.name))} <small>{move || explained()}</small></span>
                <span class="n">{move || value()}</span>
            </button>
            {move || supplied.get().map(|_| view! {
                <button class="back" data-testid=format!("ours-{}", field.key) on:click=back>
                    {move || say!("Back to ours: {}", ours().unwrap_or_default())}
                </button>
            }.into_any())}
            {move || open.get().then(|| untrack(form))}
        </li>
    }
}

/// The field for a number, or a list of the words that it can be; it takes the focus.
#[component]
fn Entry(field: &'static Field, first: String) -> impl IntoView {
    let input = NodeRef::<leptos::html::Input>::new();
    let list = NodeRef::<leptos::html::Select>::new();
    Effect::new(move || {
        let (input, list) = (input.get(), list.get());
        // Only what is drawn keeps a selection.
        request_animation_frame(move || {
            if let Some(input) = input {
                let _ = input.focus();
                input.select();
            }
            if let Some(list) = list {
                let _ = list.focus();
            }
        });
    });
    let choices = field.choices();
    if choices.is_empty() {
        view! {
            <span class="amount">
                <input
                    type="text"
                    name="number"
                    inputmode="decimal"
                    autocomplete="off"
                    node_ref=input
                    data-testid="supply-number"
                    prop:value=first
                />
                <span class="unit">{words::unit_name(field)}</span>
            </span>
        }
        .into_any()
    } else {
        let option =
            |word: &'static str| view! { <option value=word selected=word == first>{word}</option> }.into_any();
        view! {
            <select name="number" node_ref=list data-testid="supply-number">{choices.iter().copied().map(option).collect_view()}</select>
        }
        .into_any()
    }
}

fn replaced(
    item: &Item,
    ours: Option<&Item>,
    field: &'static Field,
    datum: &Datum,
    source: &str,
) -> Result<Item, String> {
    let source = if source.trim().is_empty() { SUPPLIER } else { source };
    let result = match ours {
        Some(ours) => item.with_supplied(ours, field, datum, source),
        None => item.with_datum(field, datum),
    };
    result.map_err(|fault| told(&fault.sentence()) + ".")
}

fn field_of(form: &HtmlElement, name: &str) -> String {
    let found = form.query_selector(&format!("[name={name}]")).ok().flatten();
    let value = found.and_then(|element| js_sys::Reflect::get(&element, &"value".into()).ok());
    value.and_then(|value| value.as_string()).unwrap_or_default()
}
