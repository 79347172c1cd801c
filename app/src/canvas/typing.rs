use crate::editor::{Dimension, Target};
use crate::store::Store;
use crate::units;
use leptos::html::Input;
use leptos::prelude::*;

/// The field of the dimension that was tapped, laid over it.
#[component]
pub fn Typing() -> impl IntoView {
    let store = Store::here();
    let dimension = Memo::new(move |_| match store.selection.get() {
        Some(Target::Dimension(key)) => store
            .dimensions
            .get()
            .into_iter()
            .find(|dimension| dimension.key == key),
        _ => None,
    });
    let key = Memo::new(move |_| dimension.get().map(|dimension| dimension.key));
    move || {
        key.get()?;
        let dimension = dimension.get_untracked()?;
        Some(view! { <Field dimension/> })
    }
}

#[component]
fn Field(dimension: Dimension) -> impl IntoView {
    let store = Store::here();
    let input = NodeRef::<Input>::new();
    let [a, b] = dimension.line;
    let at = move || store.viewport.get().to_screen(a.lerp(b, 0.5));
    let key = dimension.key;
    Effect::new(move || {
        if let Some(input) = input.get() {
            let _ = input.focus();
            input.select();
        }
    });
    let leave = move || store.run(|editor| editor.select(None));
    let written = format!("{} mm", units::millimetres(dimension.value_m));
    let first = written.clone();
    let commit = move || {
        let text = input.get_untracked().map(|input| input.value()).unwrap_or_default();
        text == first || store.try_run(|editor| editor.type_dimension(key, &text))
    };
    let commit_on_blur = commit.clone();
    view! {
        <input
            class="typing"
            node_ref=input
            type="text"
            inputmode="decimal"
            autocomplete="off"
            aria-label=super::dimensions::words(key)
            data-testid="typing"
            value=written
            style:left=move || format!("{:.0}px", at().x)
            style:top=move || format!("{:.0}px", at().y)
            on:keydown=move |event| match event.key().as_str() {
                "Enter" if commit() => leave(),
                "Escape" => leave(),
                _ => {}
            }
            on:blur=move |_| {
                commit_on_blur();
            }
        />
    }
}
