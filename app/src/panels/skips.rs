use crate::language::t;
use crate::widgets::{focus_on, focused};
use leptos::prelude::*;

/// The parts of the sheet, and what takes the focus in each.
const PARTS: [(&str, &str); 4] = [
    (".board", ".drawing"),
    (".margin", ".leaves [aria-selected=true]"),
    (".title-block", ".title-block :is(button, summary, input, select)"),
    (".pens", ".pens [aria-pressed=true]"),
];

/// For keys: past what stands between, seen while it has the focus.
#[component]
pub fn Skips() -> impl IntoView {
    let skip = |to: usize, name: &'static str| {
        view! { <button data-testid=format!("skip-{to}") on:click=move |_| { focus_on(PARTS[to].1); }>{name}</button> }
            .into_any()
    };
    view! {
        <nav class="skips" aria-label=t("Parts of the sheet")>
            {skip(0, t("To the drawing"))}
            {skip(1, t("To the margin"))}
            {skip(2, t("To the title block"))}
            {skip(3, t("To the pens"))}
        </nav>
    }
}

/// Goes to the next part of the sheet, or to the one before, all round.
pub fn to_next_part(forward: bool) {
    let count = PARTS.len();
    let inside =
        |(part, _): &(&str, &str)| focused().is_some_and(|focused| focused.closest(part).ok().flatten().is_some());
    let here = PARTS.iter().position(inside);
    for step in 1..=count {
        let next = match here {
            Some(here) if forward => (here + step) % count,
            Some(here) => (here + count - step) % count,
            None => step - 1,
        };
        if focus_on(PARTS[next].1) {
            return;
        }
    }
}
