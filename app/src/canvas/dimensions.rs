use super::paint::Block;
use crate::editor::{Dimension, DimensionKey, ScreenPoint, Target, Viewport};
use crate::store::Store;
use crate::units;
use crate::widgets::coarse_pointer;
use falsewright_core::sorting::sort;
use leptos::prelude::*;

/// Width of a figure of the text.
const LETTER_PX: f64 = 7.0;
/// Length of a line as a part of its text's, at least.
const SHORTEST: f64 = 0.8;
/// From the line up to the foot of the text.
const ABOVE_PX: f64 = 4.0;

/// The dimensions whose texts can be read at this scale: those about as long as their text, a longer one before those
/// that it would cover.
pub fn legible(view: &Viewport, all: &[Dimension]) -> Vec<Dimension> {
    let length = |dimension: &Dimension| (dimension.line[1] - dimension.line[0]).length();
    let mut ordered: Vec<&Dimension> = all.iter().collect();
    sort(&mut ordered, |a, b| length(b).total_cmp(&length(a)));
    let mut kept: Vec<(Block, &Dimension)> = Vec::new();
    let line_px = |dimension: &Dimension| {
        let [a, b] = dimension.line.map(|point| view.to_screen(point));
        a.distance(b)
    };
    let text_px = |dimension: &Dimension| units::millimetres(dimension.value_m).len() as f64 * LETTER_PX;
    for dimension in ordered.into_iter().filter(|dimension| line_px(dimension) >= SHORTEST * text_px(dimension)) {
        let block = written(view, dimension);
        if kept.iter().all(|(other, _)| !block.covers(other)) {
            kept.push((block, dimension));
        }
    }
    kept.into_iter().map(|(_, dimension)| dimension.clone()).collect()
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
    let tappable = Memo::new(move |_| store.takes_taps());
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
    let store = Store::here();
    let drawn = Memo::new(move |last: Option<&Drawn>| {
        let view = store.viewport.get();
        let found = legible.with(|all| all.iter().find(|dimension| dimension.key == key).map(|it| draw(&view, it)));
        found.or_else(|| last.cloned()).unwrap_or_default()
    });
    let choose = move || store.run(|editor| editor.select(Some(Target::Dimension(key))));
    let text = move || drawn.with(|drawn| drawn.text.clone());
    let along = move || tenths(drawn.with(|drawn| drawn.along));
    let width = move || drawn.with(Drawn::target_px);
    let height = if coarse_pointer() { 44.0 } else { 26.0 };
    view! {
        <g
            class="dimension"
            class:lit=move || lit.get().contains(&Some(key))
            role="button"
            tabindex=move || if tappable.get() { "0" } else { "-1" }
            aria-label=move || format!("{} {} mm", words(key), text())
            data-testid=test_id(key)
            data-own=move || tappable.get().then_some("")
            on:click=move |_| if tappable.get_untracked() { choose() }
            on:keydown=move |event| if event.key() == "Enter" {
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
    text: String,
}

impl Drawn {
    /// Width of what can be tapped.
    fn target_px(&self) -> f64 {
        self.text.len() as f64 * LETTER_PX + 16.0
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
    let text = units::millimetres(dimension.value_m);
    Drawn {
        lines,
        ends: format!("{}{}", stroke(a), stroke(b)),
        place: format!("translate({:.1} {:.1}) rotate({:.1})", middle.x, middle.y, reading_angle(ux, uy)),
        along: along(length, &text),
        text,
    }
}

/// A number of px as it is written.
pub fn tenths(px: f64) -> String {
    format!("{px:.1}")
}

/// Angle of a text along a direction, read from below or from the right.
fn reading_angle(ux: f64, uy: f64) -> f64 {
    let angle = uy.atan2(ux).to_degrees();
    match angle {
        a if a > 89.9 => a - 180.0,
        a if a < -90.1 => a + 180.0,
        a => a,
    }
}

/// How far along its line from the middle a text stands: beside the line where it does not fit on it.
fn along(length_px: f64, text: &str) -> f64 {
    let half = text.len() as f64 * LETTER_PX / 2.0;
    if length_px > 2.0 * half + 4.0 { 0.0 } else { length_px / 2.0 + 6.0 + half }
}

/// Where the text of a dimension is written.
pub fn written(view: &Viewport, dimension: &Dimension) -> Block {
    let [a, b] = dimension.line.map(|point| view.to_screen(point));
    let length = a.distance(b).max(1e-6);
    let text = units::millimetres(dimension.value_m);
    let (cos, sin) = {
        let angle = reading_angle((b.x - a.x) / length, (b.y - a.y) / length).to_radians();
        (angle.cos(), angle.sin())
    };
    let (along, above) = (along(length, &text), -ABOVE_PX - 5.0);
    let middle = a.middle(b);
    let (width, height) = (text.len() as f64 * LETTER_PX, 14.0);
    Block {
        centre: (middle.x + along * cos - above * sin, middle.y + along * sin + above * cos),
        size: (width * cos.abs() + height * sin.abs(), width * sin.abs() + height * cos.abs()),
    }
}

/// What a dimension measures.
pub fn words(key: DimensionKey) -> &'static str {
    match key {
        DimensionKey::Edges { .. } => "Distance of edges",
        DimensionKey::Width => "Width of the section",
        DimensionKey::Height => "Height of the section",
        DimensionKey::CutBefore(_) | DimensionKey::CutAfter(_) => "Leg of haunch",
        DimensionKey::Joint(_) => "Level of joint above the lowest point",
        DimensionKey::TieRow(_) => "Level of ties above those below",
        DimensionKey::LegLine(_) => "Distance of legs",
        DimensionKey::OpeningWidth(_) => "Clear width",
        DimensionKey::OpeningHeight(_) => "Clear height",
        DimensionKey::OpeningLeft(_) => "Clear way from the wall",
    }
}

fn test_id(key: DimensionKey) -> String {
    match key {
        DimensionKey::Edges { edge, from } => format!("dimension-edges-{}-{}", edge.0, from.0),
        DimensionKey::Width => "dimension-width".to_owned(),
        DimensionKey::Height => "dimension-height".to_owned(),
        DimensionKey::CutBefore(id) => format!("dimension-cut-before-{}", id.0),
        DimensionKey::CutAfter(id) => format!("dimension-cut-after-{}", id.0),
        DimensionKey::Joint(id) => format!("dimension-joint-{}", id.0),
        DimensionKey::TieRow(id) => format!("dimension-ties-{}", id.0),
        DimensionKey::LegLine(id) => format!("dimension-legs-{}", id.0),
        DimensionKey::OpeningWidth(id) => format!("dimension-opening-width-{}", id.0),
        DimensionKey::OpeningHeight(id) => format!("dimension-opening-height-{}", id.0),
        DimensionKey::OpeningLeft(id) => format!("dimension-opening-left-{}", id.0),
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
