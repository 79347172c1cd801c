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
        Some(Target::Dimension(key)) => {
            store.read(|editor| editor.dimensions()).into_iter().find(|dimension| dimension.key == key && dimension.typed)
        }
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
    let commit = move || {
        if let Some(input) = input.get_untracked() {
            let text = input.value();
            store.try_run(|editor| editor.type_dimension(key, &text));
        }
    };
    view! {
        <input
            class="typing"
            node_ref=input
            type="text"
            inputmode="decimal"
            autocomplete="off"
            aria-label=super::dimensions::words(key)
            data-testid="typing"
            value=format!("{} mm", units::millimetres(dimension.value_m))
            style:left=move || format!("{:.0}px", at().x)
            style:top=move || format!("{:.0}px", at().y)
            on:keydown=move |event| match event.key().as_str() {
                "Enter" => {
                    commit();
                    leave();
                }
                "Escape" => leave(),
                _ => {}
            }
        />
    }
}
