use super::dimensions::{Legible, written};
use super::kept::{Drawn, Kept, hit};
use super::paint::{Block, PlacedTag, Tag, TagKind, place, tenths, tone};
use super::pointer::ends_long_press;
use super::sheet::heading;
use crate::editor::{Target, View};
use crate::memo::Memo;
use crate::store::{Pane, Store};
use crate::widgets::letter_px;
use leptos::prelude::*;
use leptos::svg::G;
use wasm_bindgen::JsCast;
use web_sys::{Event, MouseEvent, PointerEvent};

/// Area of drawing for each ratio that is written all the time, by the square of its letters; the greatest come first.
const AREA: f64 = 278.0;

/// Ratios at members, numbers of findings, values of diagrams.
#[component]
pub fn Tags(legible: Memo<Vec<Legible>>) -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let letter = letter_px();
    let group = NodeRef::<G>::new();
    let placed = StoredValue::new_local(Vec::new());
    Effect::new(move |kept: Option<Kept>| {
        let mut kept = kept.unwrap_or_default();
        let Some(group) = group.get() else { return kept };
        let drags = store.lags_behind_drag();
        let before = drags.then(|| placed.try_update_value(std::mem::take).unwrap_or_default());
        let all = legible.with(|legible| placed_tags(store, pane, legible, letter, before));
        let (tappable, open) = (store.takes_taps(), store.note());
        let draw = |placed: &PlacedTag| draw(placed, pane.test_id(&placed.tag.key), tappable, open);
        kept.follow(&group, all.iter().map(draw), !drags);
        placed.set_value(all);
        kept
    });
    let tag_at = move |event: &Event| {
        let id = hit(event, ".tag")?;
        let is_it = |placed: &&PlacedTag| pane.test_id(&placed.tag.key) == id;
        placed.with_value(|all| all.iter().find(is_it).map(|placed| (placed.tag.kind, placed.tag.owner)))
    };
    let choose = move |event: &Event, adds: bool| {
        let Some((kind, Some(owner))) = tag_at(event).filter(|_| untrack(|| store.takes_taps())) else { return };
        store.enter(pane.view);
        match kind {
            TagKind::Ring(index) => store.choose_note(Some(index)),
            _ if adds => store.toggle(owner),
            _ => store.select(owner),
        }
    };
    let ask = move |event: MouseEvent| {
        let touch = event.dyn_ref::<PointerEvent>().is_some_and(|event| event.pointer_type() == "touch");
        let owner = tag_at(&event).and_then(|(_, owner)| owner);
        if !touch && owner.is_some_and(|owner| !store.has_chosen(owner)) {
            choose(&event, false);
        }
    };
    view! {
        <g
            class="tags"
            node_ref=group
            on:click=move |event| if !ends_long_press() {
                choose(&event, event.shift_key());
            }
            on:contextmenu=ask
            on:keydown=move |event| if matches!(event.key().as_str(), "Enter" | " ") {
                event.prevent_default();
                event.stop_propagation();
                choose(&event, event.shift_key());
            }
        />
    }
}

/// What is written, in the order of its rank, then what only screen readers hear: of `before` that stays as it was.
fn placed_tags(
    store: Store,
    pane: Pane,
    legible: &[Legible],
    letter: f64,
    before: Option<Vec<PlacedTag>>,
) -> Vec<PlacedTag> {
    let view = pane.viewport.get();
    let to_screen = |at| {
        let at = view.to_screen(at);
        (at.x, at.y)
    };
    let mut taken = written(&view, legible);
    taken.kept.push(heading(&view, letter));
    let scene = pane.scene.get();
    let (chosen, open) = (store.chosen.get(), store.note());
    // The greatest comes first.
    let quiet = store.is_quiet();
    let mut room = if quiet { 1.0 } else { (view.width_px * view.height_px / (AREA * letter * letter)).ceil() };
    let compared = pane.view == View::Section && !store.printing.get();
    let differences = if compared { store.differences(true) } else { Default::default() };
    let signs: Vec<Tag> = differences.iter().map(super::beside::sign).collect();
    let (wanted, others): (Vec<&Tag>, Vec<&Tag>) = scene.tags.iter().chain(&signs).partition(|tag| {
        if !matches!(tag.kind, TagKind::Governing(_)) {
            return wanted(tag, &chosen, open) && !(quiet && matches!(tag.kind, TagKind::Value | TagKind::Ring(_)));
        }
        room -= 1.0;
        room >= 0.0 || tag.urgent || is_selected(tag, &chosen)
    });
    let mut placed = place(wanted, &taken, to_screen, (view.width_px, view.height_px), letter);
    let unseen = |tag| PlacedTag { tag, block: None, anchor: Default::default() };
    match before {
        None => placed.extend(others.into_iter().cloned().map(unseen)),
        Some(before) => {
            let left = before.into_iter().map(|before| before.tag);
            let left: Vec<Tag> = left.filter(|tag| placed.iter().all(|now| now.tag.key != tag.key)).collect();
            placed.extend(left.into_iter().map(unseen));
        }
    }
    placed
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

fn draw(placed: &PlacedTag, test_id: String, tappable: bool, open: Option<usize>) -> Drawn {
    let tag = &placed.tag;
    let is_open = matches!(tag.kind, TagKind::Ring(index) if open == Some(index));
    Drawn::new("g")
        .keyed(tag.key.clone())
        .set("class", format!("tag {}{}", class_of(tag.kind), if is_open { " open" } else { "" }))
        .set("role", if tag.owner.is_some() { "button" } else { "img" })
        .set_if("tabindex", tag.owner.map(|_| "-1"))
        .set("aria-label", tag.label.clone())
        .set("data-testid", test_id)
        .set_if("data-own", tag.owner.filter(|_| tappable).map(|owner| owner.0.to_string()))
        .holding(body(placed))
}

/// The sign of a difference, which cannot be touched.
pub(super) fn still(placed: &PlacedTag) -> Drawn {
    Drawn::new("g")
        .keyed(placed.tag.key.clone())
        .set("class", "tag sign")
        .set("role", "img")
        .set("aria-label", placed.tag.label.clone())
        .holding(body(placed))
}

fn body(placed: &PlacedTag) -> Vec<Drawn> {
    let Some(Block { centre: (x, y), size: (width, height) }) = placed.block else { return Vec::new() };
    let led = placed
        .leader()
        .map(|[from, to]| format!("M{} {}L{} {}", tenths(from.0), tenths(from.1), tenths(to.0), tenths(to.1)));
    let round = if matches!(placed.tag.kind, TagKind::Ring(_)) { height / 2.0 } else { 2.0 };
    let rect = Drawn::new("rect")
        .set("x", tenths(x - width / 2.0))
        .set("y", tenths(y - height / 2.0))
        .set("width", tenths(width))
        .set("height", tenths(height))
        .set("rx", tenths(round));
    let text = Drawn::new("text").set("x", tenths(x)).set("y", tenths(y)).saying(placed.tag.text.clone());
    vec![Drawn::path("leader", led.unwrap_or_default()), rect, text]
}
