use super::paint::highlight;
use crate::editor::{Boxed, Editor, Overlay, ScreenPoint, SnapReason, Target, View, Viewport};
use crate::language::t;
use crate::memo::Memo;
use crate::store::{Pane, Store};
use crate::units;
use crate::widgets::letter_px;
use falsewright_core::geometry::Point;
use leptos::prelude::*;
use std::fmt::Write;

/// A cross that leaves its middle free, in a ring.
const CURSOR: &str = "M-17 0h11M6 0h11M0 -17v11M0 6v11M-9 0a9 9 0 1 0 18 0a9 9 0 1 0 -18 0";

/// What is under the pointer, what is being drawn, and the handles of the selection.
#[component]
pub fn Marks() -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let preview = Memo::new(move |_| screen_line(&pane.viewport.get(), &pane.overlay.with(|it| it.preview.clone())));
    let lit = move |targets: &[Target]| {
        // On other views equipment is lit as a whole.
        if targets.is_empty() || pane.view != View::Section {
            return String::new();
        }
        let (scheme, worked, view) = (store.scheme.get(), store.worked.get(), pane.viewport.get());
        let line = |target: &Target| screen_line(&view, &highlight(target, &scheme, &worked.design.model));
        targets.iter().map(line).collect()
    };
    let boxed = Memo::new(move |_| pane.overlay.with(|overlay| overlay.boxed));
    let placed = Memo::new(move |_| pane.overlay.with(|overlay| overlay.handles.clone()));
    let cursor = Memo::new(move |_| store.read(|editor| editor.cursor().zip(editor.cursor_place())));
    let holds = move || store.read(Editor::cursor_holds);
    let cursor_mark = move || {
        let (at, place) = cursor.get().filter(|_| pane.view == View::Section)?;
        let ScreenPoint { x, y } = pane.viewport.get().to_screen(at);
        let busy = pane.overlay.with(|overlay| overlay.readout.is_some() || overlay.entry.is_some());
        let words = format!("{}; {}", units::dimension(place.x), units::dimension(place.z));
        Some(view! {
            <g class="cursor" class:holds=holds data-testid="cursor" transform=format!("translate({x:.1} {y:.1})")>
                <path class="halo" d=CURSOR/>
                <path d=CURSOR/>
                {(!busy).then(|| view! { <text class="snap-word" x="14" y="-14">{words}</text> })}
            </g>
        })
    };
    let handles = move || {
        let (view, handles) = (pane.viewport.get(), placed.get());
        let draw = |handle: crate::editor::Handle| {
            let at = view.to_screen(handle.at);
            let pulls = matches!(handle.target, Target::Haunch(_) | Target::EdgeEnd { .. } | Target::EdgeMiddle(_));
            // Round: pulls a new shape out of what is there.
            let round = if pulls { 4.5 } else { 0.0 };
            view! { <rect class="handle" x=at.x - 4.5 y=at.y - 4.5 width="9" height="9" rx=round/> }
        };
        handles.into_iter().map(draw).collect_view()
    };
    view! {
        <g class="marks" aria-hidden="true">
            <path class="lit hover" d=move || store.hover.with(|hover| lit(hover.as_slice()))/>
            <path class="lit chosen" d=move || store.chosen.with(|chosen| lit(chosen))/>
            {move || boxed.get().map(|boxed| box_mark(&pane.viewport.get(), boxed))}
            <path class="stroke" d=move || pane.overlay.with(|it| screen_line(&pane.viewport.get(), &it.stroke))/>
            <path class="preview" d=move || preview.get()/>
            {move || pane.overlay.with(|overlay| snap_mark(&pane.viewport.get(), overlay))}
            {handles}
            {cursor_mark}
            {move || pane.overlay.with(|overlay| readout(&pane.viewport.get(), overlay))}
        </g>
    }
}

/// Dashed where it takes what it touches.
fn box_mark(view: &Viewport, boxed: Boxed) -> impl IntoView + use<> {
    let (a, b) = (view.to_screen(boxed.bounds.min), view.to_screen(boxed.bounds.max));
    view! { <rect class="box" class:touching=!boxed.inside x=a.x y=b.y width=b.x - a.x height=a.y - b.y/> }
}

fn screen_line(view: &Viewport, points: &[Point]) -> String {
    let mut path = String::new();
    for (index, point) in points.iter().enumerate() {
        let at = view.to_screen(*point);
        let _ = write!(path, "{}{:.1} {:.1}", if index == 0 { 'M' } else { 'L' }, at.x, at.y);
    }
    path
}

fn snap_mark(view: &Viewport, overlay: &Overlay) -> Option<impl IntoView + use<>> {
    let snap = overlay.snap?;
    if snap.reason == SnapReason::Free {
        return None;
    }
    let at = view.to_screen(snap.point);
    let guides: Vec<String> = match snap.reason {
        SnapReason::AlignedX(from) | SnapReason::AlignedZ(from) | SnapReason::EdgeAligned(from) => {
            vec![screen_line(view, &[from, snap.point])]
        }
        SnapReason::Aligned(above, level) => [above, level].map(|from| screen_line(view, &[from, snap.point])).to_vec(),
        _ => Vec::new(),
    };
    let words = snap.reason.words();
    let cross = format!("M{} {}h10m-5 -5v10", at.x - 5.0, at.y);
    Some(view! {
        {guides.into_iter().map(|guide| view! { <path class="guide" d=guide/> }).collect_view()}
        <path class="snap" d=cross/>
        <text class="snap-word" x=at.x + 12.0 y=at.y + 22.0>{words}</text>
    })
}

fn readout(view: &Viewport, overlay: &Overlay) -> Option<impl IntoView + use<>> {
    let (at, text) = match (&overlay.entry, &overlay.readout) {
        (Some(entry), _) => {
            let meaning = entry.length_m.map_or(String::new(), |length_m| format!(" = {}", units::size(length_m)));
            (entry.at, format!("{}▏{meaning}", entry.text))
        }
        (None, Some(readout)) => {
            let what = if readout.what.is_empty() { String::new() } else { format!("{} ", t(readout.what)) };
            let length = match readout.by_m {
                Some(by_m) => format!("{} × {}", units::dimension(readout.length_m), units::size(by_m)),
                None => units::size(readout.length_m),
            };
            let angle = readout.angle_deg.map_or(String::new(), |angle| format!("  {}°", units::number(angle, 1)));
            let slope = readout.one_in.map_or(String::new(), |run| format!("  1 : {run:.0}"));
            (readout.at, format!("{what}{length}{angle}{slope}"))
        }
        (None, None) => return None,
    };
    let ScreenPoint { x, y } = view.to_screen(at);
    let letter = letter_px().max(13.0);
    let width = text.chars().count() as f64 * letter * 0.57 + 14.0;
    let (left, top) = (x.min(view.width_px - width - 20.0).max(-12.0) + 16.0, (y - 20.0 - 2.0 * letter).max(2.0));
    Some(view! {
        <g class="readout" transform=format!("translate({left:.1} {top:.1})")>
            <rect width=width height=letter * 1.85 rx="2"/>
            <text x="7" y=letter * 1.3>{text}</text>
        </g>
    })
}
