use super::paint::{Figure, Scene};
use crate::editor::Target;
use crate::memo::Memo;
use crate::store::{Pane, Store};
use leptos::prelude::*;

/// All figures, each kept in place while it changes.
#[component]
pub fn Figures() -> impl IntoView {
    let pane = Pane::here();
    let keys = Memo::new(move |_| {
        pane.scene.with(|scene| scene.figures.iter().map(|figure| figure.key.clone()).collect::<Vec<_>>())
    });
    view! {
        <For each=move || keys.get() key=|key| key.clone() let:key>
            <OneFigure key/>
        </For>
    }
}

#[component]
fn OneFigure(key: String) -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let test_id = pane.test_id(&key);
    let figure = Memo::new(move |last: Option<&Figure>| {
        let found = |scene: &Scene| scene.figures.iter().find(|figure| figure.key == key).or(last).cloned();
        pane.scene.with(|scene| found(scene)).unwrap_or_default()
    });
    let is = move |target: &Target| {
        let element = target.element();
        element.is_some() && figure.with(|figure| figure.owner == element)
    };
    let strokes = move || {
        let strokes = figure.with(|figure| figure.strokes.clone());
        strokes.into_iter().map(|stroke| view! { <path class=stroke.class d=stroke.d/> }).collect_view()
    };
    view! {
        <g
            class="figure"
            class:selected=move || store.chosen.with(|chosen| chosen.iter().any(is))
            class:hovered=move || store.hover.with(|hover| hover.as_ref().is_some_and(is))
            role="img"
            aria-label=move || figure.with(|figure| figure.label.clone())
            data-testid=test_id
        >
            {strokes}
        </g>
    }
}
