use super::SectionPicker;
use crate::language::t;
use crate::store::Store;
use falsewright_core::catalogue::Item;
use falsewright_core::scheme::edit::Edit;
use leptos::prelude::*;
use web_sys::SubmitEvent;

/// Makes an item of the user's own out of another, under a new code.
#[component]
pub fn CopyItem(code: String) -> impl IntoView {
    let store = Store::here();
    let open = RwSignal::new(false);
    let fault = RwSignal::new(None::<String>);
    let new_code = RwSignal::new(String::new());
    let new_name = RwSignal::new(String::new());
    let of = StoredValue::new(code);
    let item = move || store.catalogue.with_untracked(|catalogue| catalogue.get(&of.get_value()).cloned());
    let begin = move |_| {
        if let Some(item) = item() {
            new_code.set(free_code(store, &item.code));
            new_name.set(item.name);
        }
        fault.set(None);
        open.update(|open| *open = !*open);
    };
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        let Some(item) = item() else { return };
        let code = new_code.get_untracked().trim().to_owned();
        if code.is_empty() || taken(store, &code) {
            fault.set(Some(say!("The code “{}” is empty or taken. Type another.", code)));
            return;
        }
        let source = format!("copy of {}, {}", item.code, item.source);
        let copy = Item { code: code.clone(), name: new_name.get_untracked().trim().to_owned(), source, ..item };
        match store.attempt(|editor| editor.perform(Edit::SetItem(copy))) {
            Ok(()) => store.look_up(Some(code)),
            Err(refusal) => fault.set(Some(refusal.to_string())),
        }
    };
    let form = move || {
        view! {
            <form class="supply" on:submit=submit>
                {line(t("New code"), "copy-code", new_code)}
                {line(t("Name"), "copy-name", new_name)}
                <p class="actions"><button type="submit" data-testid="copy-make">{t("Make this item")}</button></p>
                {move || fault.get().map(|fault| view! { <p class="reason" role="alert">{fault}</p> }.into_any())}
            </form>
        }
        .into_any()
    };
    view! {
        <button data-testid="copy-item" aria-expanded=move || open.get().to_string() on:click=begin>{t("Copy under a new code")}</button>
        {move || open.get().then(form)}
    }
}

/// Adds a standard section to the items of the user's own.
#[component]
pub fn NewSection() -> impl IntoView {
    let store = Store::here();
    let choose = Callback::new(move |item: Item| {
        let code = item.code.clone();
        store.edit(Edit::SetItem(item));
        store.look_up(Some(code));
    });
    view! { <SectionPicker title=t("Add a standard section") choose/> }
}

fn line(label: &'static str, id: &'static str, text: RwSignal<String>) -> impl IntoView {
    view! {
        <label class="field">
            <span>{label}</span>
            <input
                type="text"
                data-testid=id
                autocomplete="off"
                prop:value=text
                on:input=move |event| text.set(event_target_value(&event))
            />
        </label>
    }
}

fn taken(store: Store, code: &str) -> bool {
    store.catalogue.with_untracked(|catalogue| catalogue.get(code).is_some())
}

fn free_code(store: Store, code: &str) -> String {
    let mut codes = (2..).map(|count| format!("{code}-{count}"));
    codes.find(|code| !taken(store, code)).unwrap_or_default()
}
