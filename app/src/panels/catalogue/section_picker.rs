use super::words::plain;
use crate::language::t;
use crate::memo::Memo;
use falsewright_core::catalogue::{GRADES, Item, standard_beam, standard_pair, standard_sections};
use leptos::prelude::*;

/// Sections that are listed at once.
const MOST: usize = 8;

/// Chooses a rolled section of the standard tables by name and grade.
#[component]
pub fn SectionPicker(title: &'static str, choose: Callback<Item>) -> impl IntoView {
    let open = RwSignal::new(false);
    let search = RwSignal::new(String::new());
    let grade = RwSignal::new(GRADES[1].to_owned());
    let pair = RwSignal::new(false);
    let found = Memo::new(move |_| {
        let wanted = plain(&search.get()).replace(' ', "");
        let names = standard_sections().map(|(name, _)| name);
        names.filter(|name| plain(name).replace(' ', "").contains(&wanted)).collect::<Vec<&str>>()
    });
    let row = move |name: &'static str| {
        let take = move |_| {
            let make = if pair.get_untracked() { standard_pair } else { standard_beam };
            if let Some(item) = make(name, &grade.get_untracked()) {
                open.set(false);
                choose.run(item);
            }
        };
        let label = move || {
            let grade = grade.get();
            if pair.get() { say!("Two {} {}", name, grade) } else { format!("{name} {grade}") }
        };
        view! { <li><button data-testid=format!("section-{}", name.replace(' ', "-")) on:click=take>{move || label()}</button></li> }.into_any()
    };
    let more = move || {
        let count = found.with(Vec::len);
        match count {
            0 => say!("No section of the tables is called so."),
            count if count > MOST => say!("And {} more: type more of the name.", count - MOST),
            _ => String::new(),
        }
    };
    let body = move || {
        view! {
            <div class="picker">
                <label class="field">
                    <span>{t("Section")}</span>
                    <input
                        type="text"
                        autocomplete="off"
                        placeholder=t("such as UB 305 or HE 200")
                        data-testid="section-search"
                        prop:value=search
                        on:input=move |event| search.set(event_target_value(&event))
                    />
                </label>
                <label class="field">
                    <span>{t("Grade")}</span>
                    <select data-testid="section-grade" on:change=move |event| grade.set(event_target_value(&event))>
                        {GRADES.map(|name| view! { <option value=name selected=move || grade.get() == name>{name}</option> }.into_any())}
                    </select>
                </label>
                <label class="field tick wide">
                    <input
                        type="checkbox"
                        data-testid="section-pair"
                        prop:checked=pair
                        on:change=move |event| pair.set(event_target_checked(&event))
                    />
                    <span>{t("Two side by side, 50 mm apart")}</span>
                </label>
                <ul class="wide">{move || found.get().into_iter().take(MOST).map(row).collect_view()}</ul>
                <p class="wide quiet" role="status">{move || more()}</p>
            </div>
        }.into_any()
    };
    view! {
        <div class="sections">
            <button
                data-testid="sections"
                aria-expanded=move || open.get().to_string()
                on:click=move |_| open.update(|open| *open = !*open)
            >{title}</button>
            {move || open.get().then(body)}
        </div>
    }
}
