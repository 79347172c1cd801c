use super::kept::{Drawn, Kept, hit};
use super::paint::{Block, Written, push_line, tenths};
use crate::editor::{Dimension, DimensionKey, ScreenPoint, Target, Viewport};
use crate::language::{key, t};
use crate::memo::Memo;
use crate::store::{Pane, Store};
use crate::units;
use crate::widgets::{coarse_pointer, letter_px};
use falsewright_core::sorting::sort;
use leptos::prelude::*;
use leptos::svg::G;
use web_sys::Event;

/// Width and height of a figure of the text, as parts of its size.
const FIGURE: [f64; 2] = [0.58, 1.2];
/// Length of a line as a part of its text's, at least.
const SHORTEST: f64 = 0.8;
/// From the line up to the foot of the text.
const ABOVE_PX: f64 = 4.0;
/// On a smaller drawing only overall sizes are written, and those of what is selected.
const ROOM_PX: f64 = 560.0;
/// The same for an elevation and a plan, which have fewer rows of them.
const ROOM_ALONG_PX: f64 = 260.0;
/// On a section that is narrower, in letters, sizes of the equipment are written only where it is selected.
const ROOM_LETTERS: f64 = 28.0;

/// A dimension whose text can be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Legible {
    /// What is measured.
    pub dimension: Dimension,
    /// What is written.
    pub text: String,
    /// Where it is written.
    pub block: Block,
}

/// Those of a view, as it is shown.
pub fn legible_on(pane: Pane) -> Memo<Vec<Legible>> {
    let letter = letter_px();
    Memo::new(move |_| pane.dimensions.with(|all| legible(&pane.viewport.get(), all, letter)))
}

/// The dimensions whose texts can be read at this scale: those of the selected element, then those about as long as
/// their text, a longer one before those that it would cover.
pub fn legible(view: &Viewport, all: &[Dimension], letter_px: f64) -> Vec<Legible> {
    let length = |dimension: &Dimension| (dimension.line[1] - dimension.line[0]).length();
    let whole = |dimension: &Dimension| matches!(dimension.key, DimensionKey::Width | DimensionKey::Height);
    let overall = |dimension: &Dimension| {
        whole(dimension) || matches!(dimension.key, DimensionKey::BayLength | DimensionKey::ShutterHeight(_))
    };
    let shorter_px = view.width_px.min(view.height_px);
    let narrow = shorter_px < if all.iter().any(whole) { ROOM_PX } else { ROOM_ALONG_PX };
    let longest_px = all.iter().filter(|of| whole(of)).map(|of| length(of) * view.px_per_m).fold(0.0, f64::max);
    let small = longest_px > 0.0 && longest_px < ROOM_LETTERS * letter_px;
    let of_section = |dimension: &Dimension| {
        use DimensionKey::{Edges, Height, Joint, OpeningHeight, OpeningWidth, Width};
        matches!(dimension.key, Width | Height | Edges { .. } | Joint(_) | OpeningWidth(_) | OpeningHeight(_))
    };
    let wanted = |dimension: &&Dimension| {
        dimension.chosen || (!narrow || overall(dimension)) && (!small || of_section(dimension))
    };
    let mut ordered: Vec<&Dimension> = all.iter().filter(wanted).collect();
    sort(&mut ordered, |a, b| b.chosen.cmp(&a.chosen).then(length(b).total_cmp(&length(a))));
    let mut kept: Vec<Legible> = Vec::new();
    for dimension in ordered {
        let text = text_of(dimension);
        let width = width_px(&text, letter_px);
        let [from, to] = dimension.line.map(|point| view.to_screen(point));
        if !dimension.chosen && from.distance(to) < SHORTEST * width {
            continue;
        }
        let block = text_block([from, to], width, letter_px);
        if kept.iter().all(|other| !block.covers(&other.block)) {
            kept.push(Legible { dimension: dimension.clone(), text, block });
        }
    }
    kept
}

/// What tags keep clear of: texts and dimension lines, and extension lines if they can.
pub fn written(view: &Viewport, all: &[Legible]) -> Written {
    let mut written = Written { kept: all.iter().map(|legible| legible.block).collect(), crossed: Vec::new() };
    let pair = |ScreenPoint { x, y }| (x, y);
    for Legible { dimension, .. } in all {
        let [a, b] = dimension.line.map(|point| pair(view.to_screen(point)));
        let [from_a, from_b] = dimension.measured.map(|point| pair(view.to_screen(point)));
        written.kept.extend(Block::along([a, b]));
        written.crossed.extend(Block::along([from_a, a]).chain(Block::along([from_b, b])));
    }
    written
}

fn width_px(text: &str, letter_px: f64) -> f64 {
    text.chars().count() as f64 * FIGURE[0] * letter_px
}

fn text_of(dimension: &Dimension) -> String {
    let value = units::dimension(dimension.value_m);
    if dimension.count > 1 { format!("{} × {value}", dimension.count) } else { value }
}

/// Dimension lines, with oblique strokes at their ends, each kept in place while it changes.
#[component]
pub fn Dimensions(legible: Memo<Vec<Legible>>) -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let group = NodeRef::<G>::new();
    let fingers = Fingers { coarse: coarse_pointer(), letter_px: letter_px() };
    let of = |target: Option<Target>| match target {
        Some(Target::Dimension(key)) => Some(key),
        _ => None,
    };
    let lit = Memo::new(move |_| [of(store.selection.get()), of(store.hover.get())]);
    let tappable = Memo::new(move |_| store.takes_dimensions());
    Effect::new(move |kept: Option<Kept>| {
        let mut kept = kept.unwrap_or_default();
        let Some(group) = group.get() else { return kept };
        let (view, lit, tappable) = (pane.viewport.get(), lit.get(), tappable.get());
        let draw = |legible: &Legible| {
            let key = legible.dimension.key;
            draw(&view, legible, fingers, pane.test_id(&test_id(key)), lit.contains(&Some(key)), tappable)
        };
        let drags = store.lags_behind_drag();
        legible.with(|all| kept.follow(&group, all.iter().map(draw), !drags));
        kept
    });
    let choose = move |event: &Event| {
        let Some(id) = hit(event, ".dimension") else { return };
        let mut keys =
            legible.with_untracked(|all| all.iter().map(|it| it.dimension.key).collect::<Vec<_>>()).into_iter();
        if let Some(key) = keys.find(|key| pane.test_id(&test_id(*key)) == id) {
            store.enter(pane.view);
            store.run(|editor| editor.select(Some(Target::Dimension(key))));
        }
    };
    view! {
        <g
            class="dimensions"
            node_ref=group
            on:click=move |event| if tappable.get_untracked() { choose(&event) }
            on:keydown=move |event| if matches!(event.key().as_str(), "Enter" | " ") {
                event.prevent_default();
                event.stop_propagation();
                choose(&event);
            }
        />
    }
}

/// What points at the drawing, and how large is written for it.
#[derive(Clone, Copy)]
struct Fingers {
    coarse: bool,
    letter_px: f64,
}

fn draw(view: &Viewport, legible: &Legible, fingers: Fingers, test_id: String, lit: bool, tappable: bool) -> Drawn {
    const BEYOND_PX: f64 = 5.0;
    const GAP_PX: f64 = 4.0;
    let Legible { dimension, text, .. } = legible;
    let [a, b] = dimension.line.map(|point| view.to_screen(point));
    let [from_a, from_b] = dimension.measured.map(|point| view.to_screen(point));
    let length = a.distance(b);
    let (ux, uy) = if length > 0.0 { ((b.x - a.x) / length, (b.y - a.y) / length) } else { (1.0, 0.0) };
    let mut lines = String::new();
    let off = |from: ScreenPoint, by: f64| ScreenPoint::new(from.x + ux * by, from.y + uy * by);
    push_line(&mut lines, [off(a, -BEYOND_PX), off(b, BEYOND_PX)]);
    for (from, to) in [(from_a, a), (from_b, b)] {
        let reach = from.distance(to);
        if reach >= GAP_PX {
            let (ex, ey) = ((to.x - from.x) / reach, (to.y - from.y) / reach);
            let off = |from: ScreenPoint, by: f64| ScreenPoint::new(from.x + ex * by, from.y + ey * by);
            push_line(&mut lines, [off(from, GAP_PX), off(to, BEYOND_PX)]);
        }
    }
    let (sx, sy) = ((ux - uy) * 3.5, (uy + ux) * 3.5);
    let mut ends = String::new();
    for at in [a, b] {
        push_line(&mut ends, [ScreenPoint::new(at.x - sx, at.y - sy), ScreenPoint::new(at.x + sx, at.y + sy)]);
    }
    let middle = a.middle(b);
    let text_px = width_px(text, fingers.letter_px);
    let along = along(length, text_px);
    let least_px = if fingers.coarse { 44.0 } else { 0.0 };
    let width = (text_px + 16.0).max(least_px);
    let height = if fingers.coarse { 44.0 } else { 26.0 };
    let angle = reading_angle(ux, uy);
    let place = format!("translate({} {}) rotate({})", tenths(middle.x), tenths(middle.y), tenths(angle));
    let target = Drawn::new("rect")
        .set("class", "target")
        .set("x", tenths(along - width / 2.0))
        .set("y", tenths(-ABOVE_PX - 5.0 - height / 2.0))
        .set("width", tenths(width))
        .set("height", tenths(height));
    let label = format!("{} {}", t(words(dimension.key)), said(text, dimension.value_m));
    let text = Drawn::new("text").set("x", tenths(along)).set("y", tenths(-ABOVE_PX)).saying(text.clone());
    Drawn::new("g")
        .keyed(test_id.clone())
        .set("class", if lit { "dimension lit" } else { "dimension" })
        .set("role", "button")
        .set("tabindex", "-1")
        .set("aria-label", label)
        .set("data-testid", test_id)
        .set_if("data-own", tappable.then_some(""))
        .holding([
            Drawn::path("dimension-line", lines),
            Drawn::path("dimension-end", ends),
            Drawn::new("g").set("transform", place).holding([target, text]),
        ])
}

/// What is written, with its unit: who speaks to the page says what is seen.
fn said(text: &str, value_m: f64) -> String {
    let size = units::size(value_m);
    if size.contains(text) { size } else { format!("{text}, {size}") }
}

/// Angle of a text along a direction, read from below or from the right.
fn reading_angle(ux: f64, uy: f64) -> f64 {
    let angle = libm::atan2(uy, ux).to_degrees();
    match angle {
        a if a > 89.9 => a - 180.0,
        a if a < -90.1 => a + 180.0,
        a => a,
    }
}

/// How far along its line from the middle a text stands: beside the line where it does not fit on it.
fn along(length_px: f64, text_px: f64) -> f64 {
    let half = text_px / 2.0;
    if length_px > 2.0 * half + 4.0 { 0.0 } else { length_px / 2.0 + 6.0 + half }
}

/// Where a text of this width is written along a line.
fn text_block([a, b]: [ScreenPoint; 2], width: f64, letter_px: f64) -> Block {
    let length = a.distance(b).max(1e-6);
    let height = FIGURE[1] * letter_px;
    let (cos, sin) = {
        let angle = reading_angle((b.x - a.x) / length, (b.y - a.y) / length).to_radians();
        (libm::cos(angle), libm::sin(angle))
    };
    let (along, above) = (along(length, width), -ABOVE_PX - 0.35 * letter_px);
    let middle = a.middle(b);
    Block {
        centre: (middle.x + along * cos - above * sin, middle.y + along * sin + above * cos),
        size: (width * cos.abs() + height * sin.abs(), width * sin.abs() + height * cos.abs()),
    }
}

/// What a dimension measures.
pub fn words(of: DimensionKey) -> &'static str {
    match of {
        DimensionKey::Edges { .. } => key("Distance of edges"),
        DimensionKey::Width => key("Width of the section"),
        DimensionKey::Height => key("Height of the section"),
        DimensionKey::Rise(_) => key("Batter or fall"),
        DimensionKey::Cut(_) => key("Legs of haunch"),
        DimensionKey::CutBefore(_) | DimensionKey::CutAfter(_) => key("Leg of haunch"),
        DimensionKey::Joint(_) => key("Level of joint above the lowest point"),
        DimensionKey::TieRow(_) => key("Level of ties above those below"),
        DimensionKey::LegLine(_) => key("Distance of legs"),
        DimensionKey::OpeningWidth(_) => key("Clear width"),
        DimensionKey::OpeningHeight(_) => key("Clear height"),
        DimensionKey::OpeningLeft(_) => key("Clear way from the wall"),
        DimensionKey::AlongEnd(_) => key("First from the end of the bay"),
        DimensionKey::Along(_) => key("Distance along the bay"),
        DimensionKey::BayLength => key("Length of the bay"),
        DimensionKey::ShutterHeight(_) => key("Height of the shutter"),
    }
}

fn test_id(key: DimensionKey) -> String {
    match key {
        DimensionKey::Edges { edge, from } => format!("dimension-edges-{}-{}", edge.0, from.0),
        DimensionKey::Width => "dimension-width".to_owned(),
        DimensionKey::Height => "dimension-height".to_owned(),
        DimensionKey::Rise(id) => format!("dimension-rise-{}", id.0),
        DimensionKey::Cut(id) => format!("dimension-cut-{}", id.0),
        DimensionKey::CutBefore(id) => format!("dimension-cut-before-{}", id.0),
        DimensionKey::CutAfter(id) => format!("dimension-cut-after-{}", id.0),
        DimensionKey::Joint(id) => format!("dimension-joint-{}", id.0),
        DimensionKey::TieRow(id) => format!("dimension-ties-{}", id.0),
        DimensionKey::LegLine(id) => format!("dimension-legs-{}", id.0),
        DimensionKey::OpeningWidth(id) => format!("dimension-opening-width-{}", id.0),
        DimensionKey::OpeningHeight(id) => format!("dimension-opening-height-{}", id.0),
        DimensionKey::OpeningLeft(id) => format!("dimension-opening-left-{}", id.0),
        DimensionKey::AlongEnd(id) => format!("dimension-along-end-{}", id.0),
        DimensionKey::Along(id) => format!("dimension-along-{}", id.0),
        DimensionKey::BayLength => "dimension-bay".to_owned(),
        DimensionKey::ShutterHeight(id) => format!("dimension-shutter-height-{}", id.0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_are_read_from_below_or_from_the_right() {
        for (direction, angle) in
            [((1.0, 0.0), 0.0), ((-1.0, 0.0), 0.0), ((-1.0, -0.0), 0.0), ((0.0, 1.0), -90.0), ((0.0, -1.0), -90.0)]
        {
            assert!((reading_angle(direction.0, direction.1) - angle).abs() < 1e-9, "{direction:?}");
        }
    }
}
