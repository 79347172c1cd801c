use crate::editor::{Boxed, Editor, Key, KeyInput, Modifiers, Tool};
use crate::language::t;
use crate::memo::Memo;
use crate::store::Store;
use crate::widgets::{coarse_pointer, narrow_screen};
use falsewright_core::scheme::edit::Edit;
use leptos::prelude::*;

/// What the pen in hand does, with its quick ways.
#[component]
pub fn Hint() -> impl IntoView {
    let store = Store::here();
    let proposed = Memo::new(move |_| store.overlay.with(|overlay| overlay.proposed));
    let drawing = Memo::new(move |_| {
        store.tool.get() == Tool::Outline
            && store.overlay.with(|overlay| overlay.preview.len() > 1 && overlay.stroke.is_empty())
    });
    let boxed = Memo::new(move |_| store.overlay.with(|overlay| overlay.boxed));
    let adding = Memo::new(move |_| store.read(Editor::adding));
    let (coarse, narrow) = (coarse_pointer(), narrow_screen());
    let words = move || match store.tool.get() {
        _ if proposed.get() => {
            t("Straightened, with round sizes. Touch a dimension to type it; the next stroke keeps the shape.")
        }
        Tool::Select => match boxed.get() {
            Some(Boxed { inside: true, .. }) => t("A box drawn to the right takes what lies wholly inside it."),
            Some(_) => t("A box drawn to the left takes what it touches."),
            None if adding.get() => t("Each tap adds to the selection, or takes out of it."),
            None if narrow => "",
            None if coarse => t("Touch what you want to change; hold a finger on it for more."),
            None => t(
                "Touch what you want to change. F6, Page Down and the arrows do the same by keys: see “This page” in the title block.",
            ),
        },
        // The buttons beside it say enough where there is little room.
        Tool::Outline if narrow && drawing.get() => "",
        Tool::Outline => {
            t("Outline: sketch a ring roughly, drag a rectangle by its diagonal, or touch point after point and type \
             lengths, or points such as 450; 500. A line from an edge back to it makes a downstand or kicker.")
        }
        Tool::Joint => t("Joint: touch or drag to the level where a pour ends."),
        Tool::Shutter => t("Shutter: touch a wall face, or put them on all."),
        Tool::Ties => {
            t("Ties: touch a shutter at the level of a row, pull up or down for rows so far apart, or hold all.")
        }
        Tool::Legs => t(
            "Legs: touch a soffit to put falsework under it, then where more legs stand; pull along it by one spacing.",
        ),
        Tool::Opening => t("Opening: drag the clear way through falsework."),
        Tool::Hand => t("Hand: drag the sheet."),
    };
    let key = move |key: Key| {
        move |_| {
            store.key(KeyInput { key, modifiers: Modifiers::default() }, false);
        }
    };
    let button = |id: &'static str, name: &'static str, act: Box<dyn Fn()>| {
        view! { <button data-testid=id on:click=move |_| act()>{name}</button> }.into_any()
    };
    let edit = move |edit: Edit| Box::new(move || store.edit(edit.clone())) as Box<dyn Fn()>;
    let actions = move || {
        match store.tool.get() {
        Tool::Outline if proposed.get() => view! {
            <button data-testid="keep" title=t("Enter") on:click=key(Key::Enter)>{t("Keep")}</button>
            <button data-testid="refuse" title=t("Escape") on:click=key(Key::Escape)>{t("Refuse")}</button>
        }
        .into_any(),
        Tool::Outline if drawing.get() => view! {
            <button data-testid="close-ring" title=t("Enter") on:click=key(Key::Enter)>{t("Close")}</button>
            <button data-testid="point-back" title=t("Backspace") on:click=key(Key::Backspace)>{t("Last point back")}</button>
        }
        .into_any(),
        Tool::Shutter => view! {
            {button("all-outer", t("All outer faces"), edit(Edit::AddShutters { inner: false }))}
            {button("all-inner", t("All inner faces"), edit(Edit::AddShutters { inner: true }))}
        }
        .into_any(),
        Tool::Ties => button("hold-all", t("Hold all shutters"), edit(Edit::HoldShutters)).into_any(),
        _ => ().into_any(),
    }
    };
    view! {
        <div class="hint">
            <p role="status" data-testid="hint">{move || words()}</p>
            <div class="quick">{move || actions()}</div>
        </div>
    }
}
