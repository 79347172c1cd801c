use crate::editor::{Editor, Tool};
use crate::language::{key, step, t};
use crate::memo::Memo;
use crate::store::Store;
use leptos::prelude::*;

/// The pens at the foot of the sheet, with undo, redo and what is shown.
#[component]
pub fn Pens() -> impl IntoView {
    let store = Store::here();
    let pen = move |tool: Tool| {
        let (id, name, icon) = face(tool);
        view! {
            <button
                class="pen"
                data-testid=format!("pen-{id}")
                title=match tool {
                    Tool::Select => t("Select (V). A box drawn to the right takes what is inside, to the left what it touches.").to_owned(),
                    _ => format!("{} ({})", t(name), tool.letter().to_uppercase()),
                }
                aria-pressed=move || (store.tool.get() == tool).to_string()
                on:click=move |_| store.run(|editor| editor.set_tool(tool))
            >
                <svg viewBox="0 0 24 24" aria-hidden="true"><path d=icon/></svg>
                <span>{t(name)}</span>
            </button>
        }.into_any()
    };
    let undo = Memo::new(move |_| store.undo_label());
    let redo = Memo::new(move |_| store.redo_label());
    let pen_mode = Memo::new(move |_| store.read(Editor::pen_mode));
    view! {
        <nav class="pens" class:left=move || store.left_handed() aria-label=t("Pens")>
            <div class="row tools">{Tool::ALL.into_iter().map(pen).collect_view()}</div>
            <div class="row steps">
                <button
                    data-testid="undo"
                    aria-label=t("Undo")
                    title=move || undo.get().map_or(t("Undo").to_owned(), |of| say!("Undo: {}", step(&of)))
                    disabled=move || undo.with(Option::is_none)
                    on:click=move |_| store.undo()
                >
                    <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M9 5L4 10l5 5M4 10h10a5 5 0 0 1 0 10h-3"/></svg>
                    <span>{t("Undo")}</span>
                </button>
                <button
                    data-testid="redo"
                    aria-label=t("Redo")
                    title=move || redo.get().map_or(t("Redo").to_owned(), |of| say!("Redo: {}", step(&of)))
                    disabled=move || redo.with(Option::is_none)
                    on:click=move |_| store.redo()
                >
                    <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M15 5l5 5-5 5M20 10H10a5 5 0 0 0 0 10h3"/></svg>
                    <span>{t("Redo")}</span>
                </button>
                <button data-testid="fit" aria-label=t("Fit") title=t("Show the whole section") on:click=move |_| store.fit()>
                    <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M4 9V4h5M15 4h5v5M20 15v5h-5M9 20H4v-5M8 9h8v6H8z"/></svg>
                    <span>{t("Fit")}</span>
                </button>
                <button class="side" data-testid="hand" aria-label=t("Side") title=t("Move the pens to the other side") on:click=move |_| store.change_hand()>
                    <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M4 12h16M8 8l-4 4 4 4M16 8l4 4-4 4"/></svg>
                    <span>{t("Side")}</span>
                </button>
            </div>
            <Layers/>
            {move || pen_mode.get().then(|| view! {
                <button
                    data-testid="pen-mode"
                    aria-pressed="true"
                    title=t("Fingers only move the sheet since a pen was used")
                    on:click=move |_| store.leave_pen_mode()
                >{t("Pen only")}</button>
            }.into_any())}
        </nav>
    }
}

#[component]
fn Layers() -> impl IntoView {
    let store = Store::here();
    view! {
        <div class="row layers" role="group" aria-label=t("Shown on the drawing")>
            <button
                data-testid="snaps"
                title=t("Points go to the grid and to what is there; hold Ctrl to suspend it")
                aria-pressed=move || store.read(Editor::snaps).to_string()
                on:click=move |_| store.run(|editor| editor.set_snaps(!editor.snaps()))
            >{t("Snap")}</button>
            <button
                data-testid="show-pressure"
                aria-pressed=move || store.shown().pressure.to_string()
                on:click=move |_| store.show(|shown| shown.pressure = !shown.pressure)
            >{t("Pressure")}</button>
            <button
                data-testid="show-deflection"
                aria-pressed=move || store.shown().deflection.to_string()
                on:click=move |_| store.show(|shown| shown.deflection = !shown.deflection)
            >{t("Deflection")}</button>
            <button
                data-testid="show-moment"
                aria-pressed=move || store.shown().moment.to_string()
                on:click=move |_| store.show(|shown| shown.moment = !shown.moment)
            >{t("Moment")}</button>
        </div>
    }
}

/// Test id, name and line drawing of a pen.
fn face(tool: Tool) -> (&'static str, &'static str, &'static str) {
    match tool {
        Tool::Select => ("select", key("Select"), "M6 3l12 10-6 .6L9.4 20z"),
        Tool::Outline => ("outline", key("Outline"), "M4 19V7h16v12zM8 15v-4h8v4z"),
        Tool::Joint => ("joint", key("Joint"), "M7 3v7M17 3v7M7 14v7M17 14v7M2 12h4M8 12h3M13 12h3M18 12h4"),
        Tool::Shutter => ("shutter", key("Shutter"), "M7 3v18M10 3v18M10 6h4M10 12h4M10 18h4M14 3v18h3V3z"),
        Tool::Ties => ("ties", key("Ties"), "M2 12h20M6 7v10M18 7v10M9 4v16M15 4v16"),
        Tool::Legs => ("legs", key("Legs"), "M3 5h18M3 8h18M7 8v12M17 8v12M5 20h4M15 20h4M7 18L17 10"),
        Tool::Opening => ("opening", key("Opening"), "M4 20V6h16v14M8 20v-9h8v9M2 20h20"),
        Tool::Hand => ("hand", key("Hand"), "M12 3v18M3 12h18M9 6l3-3 3 3M9 18l3 3 3-3M6 9l-3 3 3 3M18 9l3 3-3 3"),
    }
}
