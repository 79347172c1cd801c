use super::dimensions::{Dimensions, legible_on};
use super::figures::Figures;
use super::patterns::Patterns;
use super::sheet::ScaleBar;
use super::tags::Tags;
use super::{is_large, named, world};
use crate::store::Pane;
use leptos::prelude::*;

/// A view as it is printed: without what only serves to work on it.
#[component]
pub fn OnPaper(pane: Pane) -> impl IntoView {
    let view = pane.view;
    provide_context(pane);
    let legible = legible_on(pane);
    let size = move || pane.viewport.with(|view| format!("0 0 {} {}", view.width_px, view.height_px));
    view! {
        <svg class=format!("drawing {}", view.id()) class:large=is_large() viewBox=size role="img" aria-label=named(view)>
            <Patterns/>
            <g transform=move || world(&pane.viewport.get())>
                <Figures/>
            </g>
            <Dimensions legible/>
            <Tags legible/>
            <ScaleBar/>
        </svg>
    }
}
