use super::folds::Folds;
use crate::language::{Language, key, t};
use crate::persistence::{keep_language, keep_system};
use crate::store::Store;
use crate::units::System;
use leptos::html::Select;
use leptos::prelude::*;

const SYSTEMS: [(System, &str); 2] = [(System::Metric, key("metric")), (System::Customary, key("US customary"))];

const LANGUAGE: &str = "language";
const UNITS: &str = "units";

/// The language and the units of the page.
#[component]
pub fn Speech() -> impl IntoView {
    let store = Store::here();
    let now = store.wording();
    let Folds { changed, .. } = expect_context();
    let (languages, systems) = (NodeRef::<Select>::new(), NodeRef::<Select>::new());
    Effect::new(move || {
        let again = match changed.get_value() {
            Some(LANGUAGE) => languages.get(),
            Some(_) => systems.get(),
            None => None,
        };
        if let Some(again) = again {
            let _ = again.focus();
            changed.set_value(None);
        }
    });
    let language = move |event| {
        if let Some(language) = Language::of_tag(&event_target_value(&event)) {
            keep_language(language);
            changed.set_value(Some(LANGUAGE));
            store.set_language(language);
        }
    };
    let system = move |event| {
        let code = event_target_value(&event);
        if let Some((system, _)) = SYSTEMS.into_iter().find(|(system, _)| system.code() == code) {
            keep_system(system);
            changed.set_value(Some(UNITS));
            store.set_system(system);
        }
    };
    let language_option = |of: Language| {
        view! { <option value=of.code() lang=of.code() selected=of == now.language>{of.own_name()}</option> }.into_any()
    };
    let system_option = |(of, name): (System, &'static str)| {
        view! { <option value=of.code() selected=of == now.system>{t(name)}</option> }.into_any()
    };
    view! {
        <div class="fields speech">
            <label class="field">
                <span>{t("Language")}</span>
                <select node_ref=languages data-testid=LANGUAGE prop:value=move || store.wording().language.code() on:change=language>
                    {Language::ALL.map(language_option)}
                </select>
            </label>
            <label class="field">
                <span>{t("Units")}</span>
                <select node_ref=systems data-testid=UNITS on:change=system>
                    {SYSTEMS.map(system_option)}
                </select>
            </label>
        </div>
    }
}
