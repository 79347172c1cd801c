use crate::editor::{Dimension, Editor, ScreenPoint, Target};
use crate::language::t;
use crate::memo::Memo;
use crate::store::{Pane, Store};
use crate::units;
use leptos::html::Input;
use leptos::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use web_sys::{FocusEvent, KeyboardEvent};

/// Half the room of the field with its reason, px.
const HALF_WIDTH_PX: f64 = 120.0;
const HALF_HEIGHT_PX: f64 = 28.0;

/// The field of the dimension that was tapped, laid over it.
#[component]
pub fn Typing() -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let dimension = Memo::new(move |_| match store.selection.get() {
        Some(Target::Dimension(key)) if pane.in_hand.get() => {
            pane.dimensions.get().into_iter().find(|dimension| dimension.key == key)
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
    let (store, pane) = (Store::here(), Pane::here());
    let input = NodeRef::<Input>::new();
    let [a, b] = dimension.line;
    // Wholly on its view, with the reason below the field, or above it where there is more room.
    let at = move || {
        let view = pane.viewport.get();
        let at = view.to_screen(a.lerp(b, 0.5));
        let inside = |at: f64, border: f64, size: f64| at.min(size - border).max(border.min(size / 2.0));
        ScreenPoint::new(inside(at.x, HALF_WIDTH_PX, view.width_px), inside(at.y, HALF_HEIGHT_PX, view.height_px))
    };
    let above = move || at().y > pane.viewport.get().height_px / 2.0;
    let key = dimension.key;
    let typed = store.peek(Editor::typed);
    Effect::new(move || {
        if let Some(input) = input.get() {
            let _ = input.focus();
            match typed {
                Some(_) => {
                    let _ = input.set_selection_range(1, 1);
                }
                None => input.select(),
            }
        }
    });
    let written = units::size(dimension.value_m);
    let first = typed.map_or(written.clone(), String::from);
    let why = RwSignal::new(None::<String>);
    // Leaving takes the field away, and the browser then tells that it lost the focus.
    let left = Rc::new(Cell::new(false));
    let leave = {
        let left = left.clone();
        move || {
            left.set(true);
            store.run(|editor| editor.select(None));
        }
    };
    let commit = move |text: String| {
        let done = if text == written {
            Ok(())
        } else {
            store.attempt(|editor| editor.type_dimension(key, &text)).map_err(|refusal| refusal.to_string())
        };
        let good = done.is_ok();
        let _ = why.try_set(done.err());
        good
    };
    let on_key = {
        let commit = commit.clone();
        move |event: KeyboardEvent| match event.key().as_str() {
            "Enter" if commit(event_target_value(&event)) => leave(),
            "Escape" => leave(),
            _ => {}
        }
    };
    // A value that is refused stays in its field with the reason under it; what is drawn stays as it was.
    let on_blur = move |event: FocusEvent| {
        if !left.get() {
            commit(event_target_value(&event));
            if let Some(why) = why.try_get_untracked().flatten() {
                store.tell(Some(why));
            }
        }
    };
    let invalid = move || why.with(Option::is_some).to_string();
    view! {
        <div class="typing-place" class:above=above style:left=move || format!("{:.0}px", at().x) style:top=move || format!("{:.0}px", at().y)>
            <input
                class="typing"
                node_ref=input
                type="text"
                inputmode="decimal"
                autocomplete="off"
                aria-label=t(super::dimensions::words(key))
                aria-invalid=invalid
                aria-describedby="typing-why"
                data-testid="typing"
                value=first
                on:keydown=on_key
                on:input=move |_| why.set(None)
                on:blur=on_blur
            />
            <p class="typing-why" id="typing-why" role="alert" data-testid="typing-why" hidden=move || why.with(Option::is_none)>
                {move || why.get()}
            </p>
        </div>
    }
}
