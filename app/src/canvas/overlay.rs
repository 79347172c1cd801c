use super::paint::highlight;
use crate::editor::{Boxed, Overlay, ScreenPoint, SnapReason, Viewport};
use crate::store::Store;
use crate::units;
use falsewright_core::geometry::Point;
use leptos::prelude::*;
use std::fmt::Write;

/// What is under the pointer, what is being drawn, and the handles of the selection.
#[component]
pub fn Marks() -> impl IntoView {
    let store = Store::here();
    let preview = move || screen_line(&store.viewport.get(), &store.overlay.get().preview);
    let lit = move |target: Option<crate::editor::Target>| {
        let (scheme, worked) = (store.scheme.get(), store.worked.get());
        let line = target.map(|target| highlight(&target, &scheme, &worked.design.model)).unwrap_or_default();
        screen_line(&store.viewport.get(), &line)
    };
    let all_lit = move || {
        let chosen = store.chosen.get();
        chosen.into_iter().map(|target| lit(Some(target))).collect::<String>()
    };
    let handles = move || {
        let view = store.viewport.get();
        let handles = store.overlay.get().handles;
        let draw = |handle: crate::editor::Handle| {
            let at = view.to_screen(handle.at);
            view! { <rect class="handle" x=at.x - 4.5 y=at.y - 4.5 width="9" height="9"/> }
        };
        handles.into_iter().map(draw).collect_view()
    };
    view! {
        <g class="marks" aria-hidden="true">
            <path class="lit hover" d=move || lit(store.overlay.get().hover)/>
            <path class="lit chosen" d=all_lit/>
            {move || store.overlay.get().boxed.map(|boxed| box_mark(&store.viewport.get(), boxed))}
            <path class="preview" d=preview/>
            {move || snap_mark(&store.viewport.get(), &store.overlay.get())}
            {handles}
            {move || readout(&store.viewport.get(), &store.overlay.get())}
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
        SnapReason::AlignedX(from) | SnapReason::AlignedZ(from) => vec![screen_line(view, &[from, snap.point])],
        SnapReason::Aligned(above, level) => [above, level].map(|from| screen_line(view, &[from, snap.point])).to_vec(),
        _ => Vec::new(),
    };
    let words = match snap.reason {
        SnapReason::Grid(_) => "",
        reason => reason.words(),
    };
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
            let meaning = entry.length_m.map_or("?".to_owned(), units::millimetres);
            (entry.at, format!("{}▏ = {meaning} mm", entry.text))
        }
        (None, Some(readout)) => {
            let angle = readout.angle_deg.map_or(String::new(), |angle| format!("  {angle:.1}°"));
            (readout.at, format!("{} mm{angle}", units::millimetres(readout.length_m)))
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
