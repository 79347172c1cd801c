//! The option that is laid beside the one on the sheet, at the same place and scale, and what differs on both.

use super::kept::Kept;
use super::paint::{Figure, Stroke, Tag, TagKind, Written, place};
use super::tags;
use crate::comparison::{Difference, DifferenceKind};
use crate::editor::{OptionId, View};
use crate::language::t;
use crate::memo::Memo;
use crate::store::Store;
use crate::widgets::letter_px;
use leptos::prelude::*;
use leptos::svg::G;

/// The pane of the option beside the drawing, if there is one.
#[component]
pub fn Beside() -> impl IntoView {
    let store = Store::here();
    let beside = Memo::new(move |_| store.beside());
    move || beside.get().map(|id| view! { <Pane id/> })
}

#[component]
fn Pane(id: OptionId) -> impl IntoView {
    let store = Store::here();
    let print = Memo::new(move |_| store.print(id));
    let differences = Memo::new(move |_| store.differences(false));
    let name = move || store.option_name(id);
    let label = move || {
        let count = differences.with(|all| all.len());
        say!("Option {}: {} things differ", name(), count)
    };
    let path = |stroke: &Stroke| view! { <path class=stroke.class.clone() d=stroke.d.clone()/> };
    let figure =
        move |figure: &Figure| view! { <g class="figure">{figure.strokes.iter().map(path).collect_view()}</g> };
    let figures = move || print.get().map(|print| print.figures.iter().map(figure).collect_view());
    let group = NodeRef::<G>::new();
    Effect::new(move |kept: Option<Kept>| {
        let mut kept = kept.unwrap_or_default();
        let Some(group) = group.get() else { return kept };
        let view = store.pane(View::Section).viewport.get();
        let to_screen = |at| {
            let at = view.to_screen(at);
            (at.x, at.y)
        };
        let wanted: Vec<Tag> = differences.with(|all| all.iter().map(sign).collect());
        let placed = place(&wanted, &Written::default(), to_screen, (view.width_px, view.height_px), letter_px());
        kept.follow(&group, placed.iter().map(tags::still), true);
        kept
    });
    view! {
        <div class="pane" data-testid="beside">
            <svg class="drawing still" role="img" aria-label=label>
                <g transform=move || super::world(&store.pane(View::Section).viewport.get())>
                    {figures}
                    <Apart on_sheet=false/>
                </g>
                <g class="tags" node_ref=group/>
            </svg>
            <p class="pane-name">
                <strong>{move || say!("Option {}", name())}</strong>
                <button data-testid="take-in-hand" on:click=move |_| store.switch_to(id)>{t("Take in hand")}</button>
                <button data-testid="beside-close" aria-label=t("End the comparison") on:click=move |_| store.lay_beside(None)>"✕"</button>
            </p>
        </div>
    }
}

/// The name of the option on the sheet while another lies beside it.
#[component]
pub fn PaneName() -> impl IntoView {
    let store = Store::here();
    let shown = Memo::new(move |_| store.beside().is_some());
    let name = move || say!("Option {}, on the sheet", store.option_name(store.in_hand()));
    move || shown.get().then(|| view! { <p class="pane-name"><strong>{name}</strong></p> })
}

/// Heavy outlines of what differs: full where only this option has it, broken where the other has it otherwise.
#[component]
pub fn Apart(on_sheet: bool) -> impl IntoView {
    let store = Store::here();
    let differences = Memo::new(move |_| store.differences(on_sheet));
    let outline = |difference: &Difference| {
        let (class, label) = (class_of(difference), label_of(difference));
        let key = difference.key.clone();
        view! { <path class=class d=difference.d.clone() role="img" aria-label=label data-apart=key/> }
    };
    move || differences.with(|all| all.iter().map(outline).collect_view())
}

fn class_of(difference: &Difference) -> &'static str {
    match difference.kind {
        DifferenceKind::Only => "apart only",
        DifferenceKind::Differs => "apart",
    }
}

fn label_of(difference: &Difference) -> String {
    format!("{}: {}", difference.name, t(difference.kind.words()))
}

/// The sign of a difference, to be placed like other writing on the drawing.
pub fn sign(difference: &Difference) -> Tag {
    Tag {
        key: format!("apart-{}", difference.key),
        kind: TagKind::Sign,
        at: difference.at,
        text: difference.kind.sign().to_owned(),
        label: label_of(difference),
        owner: None,
        urgent: true,
    }
}
