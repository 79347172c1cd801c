use super::paint::highlight;
use crate::editor::{Boxed, Overlay, ScreenPoint, SnapReason, Target, View, Viewport};
use crate::language::t;
use crate::store::{Pane, Store};
use crate::units;
use falsewright_core::geometry::Point;
use leptos::prelude::*;
use std::fmt::Write;

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
            let meaning = entry.length_m.map_or("?".to_owned(), units::size);
            (entry.at, format!("{}▏ = {meaning}", entry.text))
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
    let width = text.chars().count() as f64 * 7.4 + 14.0;
    Some(view! {
        <g class="readout" transform=format!("translate({:.1} {:.1})", x + 16.0, y - 44.0)>
            <rect width=width height="24" rx="2"/>
            <text x="7" y="17">{text}</text>
        </g>
    })
}
