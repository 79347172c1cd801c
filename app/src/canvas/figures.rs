use super::kept::{Drawn, Kept};
use super::paint::Figure;
use crate::editor::Target;
use crate::store::{Pane, Store};
use leptos::prelude::*;
use leptos::svg::G;

/// All figures, each kept in place while it changes.
#[component]
pub fn Figures() -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let group = NodeRef::<G>::new();
    Effect::new(move |kept: Option<Kept>| {
        let mut kept = kept.unwrap_or_default();
        let Some(group) = group.get() else { return kept };
        let (chosen, hover) = (store.chosen.get(), store.hover.get());
        let draw = |figure: &Figure| {
            let is = |target: &Target| figure.owner.is_some() && figure.owner == target.element();
            let selected = if chosen.iter().any(is) { " selected" } else { "" };
            let hovered = if hover.as_ref().is_some_and(is) { " hovered" } else { "" };
            Drawn::new("g")
                .keyed(figure.key.clone())
                .set("class", format!("figure{selected}{hovered}"))
                .set("role", "img")
                .set("aria-label", figure.label.clone())
                .set("data-testid", pane.test_id(&figure.key))
                .holding(figure.strokes.iter().map(|stroke| Drawn::path(&stroke.class, stroke.d.clone())))
        };
        pane.scene.with(|scene| kept.follow(&group, scene.figures.iter().map(draw), true));
        kept
    });
    view! { <g node_ref=group/> }
}
