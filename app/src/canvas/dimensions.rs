use super::paint::Block;
use crate::editor::{Dimension, DimensionKey, Target, Viewport};
use crate::store::Store;
use crate::units;
use crate::widgets::coarse_pointer;
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
    ordered.sort_by(|a, b| length(b).total_cmp(&length(a)));
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

/// Dimension lines, with oblique strokes at their ends.
#[component]
pub fn Dimensions(legible: Memo<Vec<Dimension>>) -> impl IntoView {
    let store = Store::here();
    let draw = move || {
        let view = store.viewport.get();
        let chosen = match store.selection.get() {
            Some(Target::Dimension(key)) => Some(key),
            _ => None,
        };
        let hovered = store.overlay.get().hover;
        let draw = |dimension: Dimension| {
            let lit = chosen == Some(dimension.key) || hovered == Some(Target::Dimension(dimension.key));
            let tappable = store.takes_taps();
            one(store, &view, &dimension, lit, tappable)
        };
        legible.get().into_iter().map(draw).collect_view()
    };
    view! { <g class="dimensions">{draw}</g> }
}

fn one(store: Store, view: &Viewport, dimension: &Dimension, lit: bool, tappable: bool) -> impl IntoView + use<> {
    const BEYOND_PX: f64 = 5.0;
    const GAP_PX: f64 = 4.0;
    let [a, b] = dimension.line.map(|point| view.to_screen(point));
    let [from_a, from_b] = dimension.measured.map(|point| view.to_screen(point));
    let length = a.distance(b);
    let (ux, uy) = if length > 0.0 { ((b.x - a.x) / length, (b.y - a.y) / length) } else { (1.0, 0.0) };
    let extension = |from: crate::editor::ScreenPoint, to: crate::editor::ScreenPoint| {
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
    let stroke = |at: crate::editor::ScreenPoint| {
        format!("M{:.1} {:.1}L{:.1} {:.1}", at.x - sx, at.y - sy, at.x + sx, at.y + sy)
    };
    let ends = format!("{}{}", stroke(a), stroke(b));
    let middle = a.middle(b);
    let angle = reading_angle(ux, uy);
    let text = units::millimetres(dimension.value_m);
    let along = along(length, &text);
    let place = format!("translate({:.1} {:.1}) rotate({angle:.1})", middle.x, middle.y);
    let class = if lit { "dimension lit" } else { "dimension" };
    let key = dimension.key;
    let choose = move || store.run(|editor| editor.select(Some(Target::Dimension(key))));
    let (width, height) = (text.len() as f64 * LETTER_PX + 16.0, if coarse_pointer() { 44.0 } else { 26.0 });
    view! {
        <g
            class=class
            role="button"
            tabindex=if tappable { "0" } else { "-1" }
            aria-label=format!("{} {text} mm", words(key))
            data-testid=test_id(key)
            data-own=tappable.then_some("")
            on:click=move |_| if tappable { choose() }
            on:keydown=move |event| if event.key() == "Enter" {
                event.prevent_default();
                event.stop_propagation();
                choose();
            }
        >
            <path class="dimension-line" d=lines/>
            <path class="dimension-end" d=ends/>
            <g transform=place>
                <rect class="target" x=along - width / 2.0 y=-ABOVE_PX - 5.0 - height / 2.0 width=width height=height/>
                <text x=along y=-ABOVE_PX>{text.clone()}</text>
            </g>
        </g>
    }
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
