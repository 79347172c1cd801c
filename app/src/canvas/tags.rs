use super::dimensions::{tenths, written};
use super::paint::{Block, PlacedTag, Tag, TagKind, place, tone};
use super::pointer::ends_long_press;
use super::sheet::heading;
use crate::editor::{Dimension, Target, View};
use crate::memo::Memo;
use crate::store::{Pane, Store};
use crate::widgets::letter_px;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{MouseEvent, PointerEvent};

/// Area of drawing for each ratio that is written all the time; the greatest come first.
const AREA_PX2: f64 = 40_000.0;

/// Ratios at members, numbers of findings, values of diagrams.
#[component]
pub fn Tags(legible: Memo<Vec<Dimension>>) -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let letter = letter_px();
    let placed = Memo::new(move |_| {
        let view = pane.viewport.get();
        let to_screen = |at| {
            let at = view.to_screen(at);
            (at.x, at.y)
        };
        let mut written: Vec<Block> = legible.get().iter().map(|dimension| written(&view, dimension, letter)).collect();
        written.push(heading(&view));
        let scene = pane.scene.get();
        let (chosen, open) = (store.chosen.get(), store.note());
        // The greatest comes first.
        let quiet = store.is_quiet();
        let mut room = if quiet { 1.0 } else { (view.width_px * view.height_px / AREA_PX2).ceil() };
        let differences = if pane.view == View::Section { store.differences(true) } else { Default::default() };
        let signs = differences.iter().map(super::beside::sign);
        let (wanted, others): (Vec<Tag>, Vec<Tag>) = scene.tags.iter().cloned().chain(signs).partition(|tag| {
            if !matches!(tag.kind, TagKind::Governing(_)) {
                return wanted(tag, &chosen, open) && !(quiet && matches!(tag.kind, TagKind::Value | TagKind::Ring(_)));
            }
            room -= 1.0;
            room >= 0.0 || tag.urgent || is_selected(tag, &chosen)
        });
        let mut placed = place(&wanted, &written, to_screen, (view.width_px, view.height_px), letter);
        // Screen readers hear all of them.
        placed.extend(others.into_iter().map(|tag| PlacedTag { anchor: to_screen(tag.at), tag, block: None }));
        placed
    });
    let keys = Memo::new(move |_| placed.with(|all| all.iter().map(|it| it.tag.key.clone()).collect::<Vec<_>>()));
    view! {
        <g class="tags">
            <For each=move || keys.get() key=|key| key.clone() let:key>
                <OneTag key placed/>
            </For>
        </g>
    }
}

#[component]
fn OneTag(key: String, placed: Memo<Vec<PlacedTag>>) -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let test_id = pane.test_id(&key);
    let tag = Memo::new(move |last: Option<&Option<PlacedTag>>| {
        let found = placed.with(|placed| placed.iter().find(|placed| placed.tag.key == key).cloned());
        found.or_else(|| last.cloned().flatten())
    });
    let owned = tag.get_untracked().is_some_and(|placed| placed.tag.owner.is_some());
    let tappable = move || owned && store.takes_taps();
    let choose = move |adds: bool| {
        if !untrack(tappable) {
            return;
        }
        let Some(tag) = tag.get_untracked().map(|placed| placed.tag) else { return };
        store.enter(pane.view);
        match (tag.kind, tag.owner) {
            (TagKind::Ring(index), _) => store.choose_note(Some(index)),
            (_, Some(owner)) if adds => store.toggle(owner),
            (_, Some(owner)) => store.select(owner),
            _ => {}
        }
    };
    let owner = move || tag.get_untracked().and_then(|placed| placed.tag.owner);
    let ask = move |event: MouseEvent| {
        let touch = event.dyn_ref::<PointerEvent>().is_some_and(|event| event.pointer_type() == "touch");
        if !touch && owner().is_some_and(|owner| !store.has_chosen(owner)) {
            choose(false);
        }
    };
    let class = move || {
        let kind = tag.with(|tag| tag.as_ref().map(|placed| placed.tag.kind));
        let open = matches!(kind, Some(TagKind::Ring(index)) if store.note() == Some(index));
        format!("tag {}{}", kind.map_or("", class_of), if open { " open" } else { "" })
    };
    view! {
        <g
            class=class
            role=if owned { "button" } else { "img" }
            tabindex=owned.then_some("-1")
            aria-label=move || tag.with(|tag| tag.as_ref().map(|placed| placed.tag.label.clone()))
            data-testid=test_id
            data-own=move || tappable().then(|| owner().map_or(String::new(), |owner| owner.0.to_string()))
            on:click=move |event| if !ends_long_press() {
                choose(event.shift_key());
            }
            on:contextmenu=ask
            on:keydown=move |event| if matches!(event.key().as_str(), "Enter" | " ") {
                event.prevent_default();
                event.stop_propagation();
                choose(event.shift_key());
            }
        >
            {move || tag.with(|tag| tag.as_ref().map(body))}
        </g>
    }
}

/// What is written all the time: what is urgent, one ratio for each element, values. The ratios of an element's members
/// are written while it is selected, the number of a mere remark while its note is open.
fn wanted(tag: &Tag, chosen: &[Target], open: Option<usize>) -> bool {
    match tag.kind {
        TagKind::Ring(index) => tag.urgent || open == Some(index),
        TagKind::Member(ratio) => tone::exceeds(ratio) || (chosen.len() == 1 && is_selected(tag, chosen)),
        _ => true,
    }
}

fn is_selected(tag: &Tag, chosen: &[Target]) -> bool {
    tag.owner.is_some() && chosen.iter().any(|target| target.element() == tag.owner)
}

fn class_of(kind: TagKind) -> &'static str {
    match kind {
        TagKind::Ring(_) => "ring",
        TagKind::Governing(ratio) | TagKind::Member(ratio) => tone::tone(ratio),
        TagKind::Unchecked => "unchecked",
        TagKind::Value => "value",
        TagKind::Sign => "sign",
        TagKind::Level => "level",
    }
}

pub(super) fn body(placed: &PlacedTag) -> Option<impl IntoView + use<>> {
    let Block { centre: (x, y), size: (width, height) } = placed.block?;
    let (to_x, to_y) = placed.anchor;
    let leader = placed.led().then(|| view! { <path class="leader" d=format!("M{x:.1} {y:.1}L{to_x:.1} {to_y:.1}")/> });
    let round = if matches!(placed.tag.kind, TagKind::Ring(_)) { height / 2.0 } else { 2.0 };
    Some(view! {
        {leader}
        <rect x=tenths(x - width / 2.0) y=tenths(y - height / 2.0) width=tenths(width) height=tenths(height) rx=round/>
        <text x=tenths(x) y=tenths(y)>{placed.tag.text.clone()}</text>
    })
}
