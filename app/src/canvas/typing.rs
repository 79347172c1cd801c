use crate::editor::{Dimension, Target};
use crate::store::Store;
use crate::units;
use leptos::html::Input;
use leptos::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use web_sys::{FocusEvent, KeyboardEvent};

/// The field of the dimension that was tapped, laid over it.
#[component]
pub fn Typing() -> impl IntoView {
    let store = Store::here();
    let dimension = Memo::new(move |_| match store.selection.get() {
        Some(Target::Dimension(key)) => store.dimensions.get().into_iter().find(|dimension| dimension.key == key),
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
    let written = format!("{} mm", units::millimetres(dimension.value_m));
    // Leaving takes the field away, and the browser then tells that it lost the focus.
    let left = Rc::new(Cell::new(false));
    let leave = {
        let left = left.clone();
        move || {
            left.set(true);
            store.run(|editor| editor.select(None));
        }
    };
    let commit = {
        let first = written.clone();
        move |text: String| text == first || store.try_run(|editor| editor.type_dimension(key, &text))
    };
    let on_key = {
        let (commit, leave) = (commit.clone(), leave.clone());
        move |event: KeyboardEvent| match event.key().as_str() {
            "Enter" if commit(event_target_value(&event)) => leave(),
            "Escape" => leave(),
            _ => {}
        }
    };
    let on_blur = move |event: FocusEvent| {
        if !left.replace(true) {
            commit(event_target_value(&event));
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
            value=written
            style:left=move || format!("{:.0}px", at().x)
            style:top=move || format!("{:.0}px", at().y)
            on:keydown=on_key
            on:blur=on_blur
        />
    }
}
