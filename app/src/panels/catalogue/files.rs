use crate::language::t;
use crate::memo::Memo;
use crate::persistence::{download, file_name, import_file};
use crate::store::Store;
use falsewright_core::catalogue::Item;
use falsewright_core::catalogue::exchange::{to_csv, to_json};
use leptos::prelude::*;

/// Items in and out of files.
#[component]
pub fn Files() -> impl IntoView {
    let store = Store::here();
    let open = RwSignal::new(false);
    let has_own = Memo::new(move |_| store.scheme.with(|scheme| !scheme.items.is_empty()));
    let own = move || store.scheme.with_untracked(|scheme| scheme.items.clone());
    let all = move || store.catalogue.with_untracked(|catalogue| catalogue.iter().cloned().collect::<Vec<Item>>());
    let body = move || {
        view! {
            <div class="item-files">
                <label class="file">
                    <input type="file" data-testid="import-items" on:change=move |event| import_file(store, &event)/>
                    {t("Take in a file of items")}
                </label>
                {move || has_own.get().then(|| view! {
                    <p>
                        <span>{t("Your own")}</span>
                        <button data-testid="own-csv" on:click=move |_| save(store, "items", false, &own())>"CSV"</button>
                        <button data-testid="own-json" on:click=move |_| save(store, "items", true, &own())>"JSON"</button>
                    </p>
                }.into_any())}
                <p>
                    <span>{t("The whole list")}</span>
                    <button data-testid="all-csv" on:click=move |_| save(store, "catalogue", false, &all())>"CSV"</button>
                    <button data-testid="all-json" on:click=move |_| save(store, "catalogue", true, &all())>"JSON"</button>
                </p>
                <p class="quiet">
                    {t("A file can also be dropped on this list. The item of a code replaces ours of that code; one as ours is ours again.")}
                </p>
            </div>
        }.into_any()
    };
    let told = move || {
        store.import().map(|import| {
            let failed = !import.faults.is_empty();
            view! {
                <div class="import" class:reason=failed role=if failed { "alert" } else { "status" } data-testid="import">
                    <p>{import.told}</p>
                    {failed.then(|| view! {
                        <ol data-testid="import-faults">{import.faults.into_iter().map(|fault| view! { <li>{fault}</li> }.into_any()).collect_view()}</ol>
                    }.into_any())}
                    <button on:click=move |_| store.set_import(None)>{t("Close")}</button>
                </div>
            }.into_any()
        })
    };
    view! {
        <div class="files-of-items">
            <button
                data-testid="item-files"
                aria-expanded=move || open.get().to_string()
                on:click=move |_| open.update(|open| *open = !*open)
            >{t("Files of items")}</button>
            {move || open.get().then(body)}
            {move || told()}
        </div>
    }
}

fn save(store: Store, what: &str, json: bool, items: &[Item]) {
    let name = store.scheme.with_untracked(|scheme| file_name(&scheme.name));
    let (end, kind, text) =
        if json { ("json", "application/json", to_json(items)) } else { ("csv", "text/csv", to_csv(items)) };
    if download(&format!("{name}-{what}.{end}"), kind, &text).is_err() {
        store.tell(Some(t("The browser did not save the file. Try again, or allow downloads for this page.").into()));
    }
}
