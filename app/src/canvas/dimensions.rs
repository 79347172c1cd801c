use super::paint::Block;
use crate::editor::{Dimension, DimensionKey, ScreenPoint, Target, Viewport};
use crate::language::{key, t};
use crate::memo::Memo;
use crate::store::{Pane, Store};
use crate::units;
use crate::widgets::{coarse_pointer, letter_px};
use falsewright_core::sorting::sort;
use leptos::prelude::*;

/// Width and height of a figure of the text, as parts of its size.
const FIGURE: [f64; 2] = [0.58, 1.2];
/// Length of a line as a part of its text's, at least.
const SHORTEST: f64 = 0.8;
/// From the line up to the foot of the text.
const ABOVE_PX: f64 = 4.0;
/// On a smaller section only overall sizes are written, and those of what is selected.
const ROOM_PX: f64 = 560.0;

/// The dimensions whose texts can be read at this scale: those of the selected element, then those about as long as
/// their text, a longer one before those that it would cover.
pub fn legible(view: &Viewport, all: &[Dimension], letter_px: f64) -> Vec<Dimension> {
    let length = |dimension: &Dimension| (dimension.line[1] - dimension.line[0]).length();
    let overall = |dimension: &Dimension| matches!(dimension.key, DimensionKey::Width | DimensionKey::Height);
    let narrow = view.width_px.min(view.height_px) < ROOM_PX && all.iter().any(overall);
    let mut ordered: Vec<&Dimension> =
        all.iter().filter(|dimension| !narrow || dimension.chosen || overall(dimension)).collect();
    sort(&mut ordered, |a, b| b.chosen.cmp(&a.chosen).then(length(b).total_cmp(&length(a))));
    let mut kept: Vec<(Block, &Dimension)> = Vec::new();
    let line_px = |dimension: &Dimension| {
        let [a, b] = dimension.line.map(|point| view.to_screen(point));
        a.distance(b)
    };
    let long = |dimension: &Dimension| line_px(dimension) >= SHORTEST * width_px(dimension, letter_px);
    for dimension in ordered.into_iter().filter(|dimension| dimension.chosen || long(dimension)) {
        let block = written(view, dimension, letter_px);
        if kept.iter().all(|(other, _)| !block.covers(other)) {
            kept.push((block, dimension));
        }
    }
    kept.into_iter().map(|(_, dimension)| dimension.clone()).collect()
}

fn width_px(dimension: &Dimension, letter_px: f64) -> f64 {
    text_of(dimension).chars().count() as f64 * FIGURE[0] * letter_px
}

fn text_of(dimension: &Dimension) -> String {
    let value = units::dimension(dimension.value_m);
    if dimension.count > 1 { format!("{} × {value}", dimension.count) } else { value }
}

/// Dimension lines, with oblique strokes at their ends, each kept in place while it changes.
#[component]
pub fn Dimensions(legible: Memo<Vec<Dimension>>) -> impl IntoView {
    let store = Store::here();
    let keys = Memo::new(move |_| legible.with(|all| all.iter().map(|dimension| dimension.key).collect::<Vec<_>>()));
    let of = |target: Option<Target>| match target {
        Some(Target::Dimension(key)) => Some(key),
        _ => None,
    };
    let lit = Memo::new(move |_| [of(store.selection.get()), of(store.hover.get())]);
    let tappable = Memo::new(move |_| store.takes_dimensions());
    view! {
        <g class="dimensions">
            <For each=move || keys.get() key=|key| *key let:key>
                <OneDimension key legible lit tappable/>
            </For>
        </g>
    }
}

#[component]
fn OneDimension(
    key: DimensionKey,
    legible: Memo<Vec<Dimension>>,
    lit: Memo<[Option<DimensionKey>; 2]>,
    tappable: Memo<bool>,
) -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let drawn = Memo::new(move |last: Option<&Drawn>| {
        let view = pane.viewport.get();
        let found = legible.with(|all| all.iter().find(|dimension| dimension.key == key).map(|it| draw(&view, it)));
        found.or_else(|| last.cloned()).unwrap_or_default()
    });
    let choose = move || {
        store.enter(pane.view);
        store.run(|editor| editor.select(Some(Target::Dimension(key))));
    };
    let text = move || drawn.with(|drawn| drawn.text.clone());
    let along = move || tenths(drawn.with(|drawn| drawn.along));
    let width = move || drawn.with(Drawn::target_px);
    let height = if coarse_pointer() { 44.0 } else { 26.0 };
    view! {
        <g
            class="dimension"
            class:lit=move || lit.get().contains(&Some(key))
            role="button"
            tabindex="-1"
            aria-label=move || format!("{} {}", t(words(key)), drawn.with(|drawn| drawn.said.clone()))
            data-testid=pane.test_id(&test_id(key))
            data-own=move || tappable.get().then_some("")
            on:click=move |_| if tappable.get_untracked() { choose() }
            on:keydown=move |event| if matches!(event.key().as_str(), "Enter" | " ") {
                event.prevent_default();
                event.stop_propagation();
                choose();
            }
        >
            <path class="dimension-line" d=move || drawn.with(|drawn| drawn.lines.clone())/>
            <path class="dimension-end" d=move || drawn.with(|drawn| drawn.ends.clone())/>
            <g transform=move || drawn.with(|drawn| drawn.place.clone())>
                <rect
                    class="target"
                    x=move || tenths(drawn.with(|drawn| drawn.along - drawn.target_px() / 2.0))
                    y=tenths(-ABOVE_PX - 5.0 - height / 2.0)
                    width=width
                    height=height
                />
                <text x=along y=-ABOVE_PX>{text}</text>
            </g>
        </g>
    }
}

/// What is drawn of a dimension, on the screen.
#[derive(Clone, Debug, Default, PartialEq)]
struct Drawn {
    lines: String,
    ends: String,
    place: String,
    along: f64,
    text_px: f64,
    text: String,
    /// With its unit.
    said: String,
}

impl Drawn {
    /// Width of what can be tapped.
    fn target_px(&self) -> f64 {
        (self.text_px + 16.0).max(if coarse_pointer() { 44.0 } else { 0.0 })
    }
}

fn draw(view: &Viewport, dimension: &Dimension) -> Drawn {
    const BEYOND_PX: f64 = 5.0;
    const GAP_PX: f64 = 4.0;
    let [a, b] = dimension.line.map(|point| view.to_screen(point));
    let [from_a, from_b] = dimension.measured.map(|point| view.to_screen(point));
    let length = a.distance(b);
    let (ux, uy) = if length > 0.0 { ((b.x - a.x) / length, (b.y - a.y) / length) } else { (1.0, 0.0) };
    let extension = |from: ScreenPoint, to: ScreenPoint| {
        let reach = from.distance(to);
        if reach < GAP_PX {
            return String::new();
        }
        let (ex, ey) = ((to.x - from.x) / reach, (to.y - from.y) / reach);
        format!(
            "M{:.1} {:.1}L{:.1} {:.1}",
            from.x + ex * GAP_PX,
            from.y + ey * GAP_PX,
            to.x + ex * BEYOND_PX,
            to.y + ey * BEYOND_PX
        )
    };
    let lines = format!(
        "M{:.1} {:.1}L{:.1} {:.1}{}{}",
        a.x - ux * BEYOND_PX,
        a.y - uy * BEYOND_PX,
        b.x + ux * BEYOND_PX,
        b.y + uy * BEYOND_PX,
        extension(from_a, a),
        extension(from_b, b)
    );
    let (sx, sy) = ((ux - uy) * 3.5, (uy + ux) * 3.5);
    let stroke = |at: ScreenPoint| format!("M{:.1} {:.1}L{:.1} {:.1}", at.x - sx, at.y - sy, at.x + sx, at.y + sy);
    let middle = a.middle(b);
    let text = text_of(dimension);
    let text_px = width_px(dimension, letter_px());
    Drawn {
        lines,
        ends: format!("{}{}", stroke(a), stroke(b)),
        place: format!("translate({:.1} {:.1}) rotate({:.1})", middle.x, middle.y, reading_angle(ux, uy)),
        along: along(length, text_px),
        text_px,
        said: said(&text, dimension.value_m),
        text,
    }
}

/// What is written, with its unit: who speaks to the page says what is seen.
fn said(text: &str, value_m: f64) -> String {
    let size = units::size(value_m);
    if size.contains(text) { size } else { format!("{text}, {size}") }
}

/// A number of px as it is written.
pub fn tenths(px: f64) -> String {
    format!("{px:.1}")
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

/// Where the text of a dimension is written.
pub fn written(view: &Viewport, dimension: &Dimension, letter_px: f64) -> Block {
    let [a, b] = dimension.line.map(|point| view.to_screen(point));
    let length = a.distance(b).max(1e-6);
    let (width, height) = (width_px(dimension, letter_px), FIGURE[1] * letter_px);
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
