use super::kept::{Drawn, Kept};
use super::paint::{highlight, push_line, tenths};
use crate::editor::{Boxed, Handle, Overlay, ScreenPoint, SnapReason, Target, View, Viewport};
use crate::language::t;
use crate::memo::Memo;
use crate::store::{Pane, Store};
use crate::units;
use crate::widgets::letter_px;
use falsewright_core::geometry::Point;
use leptos::prelude::*;
use leptos::svg::G;

/// A cross that leaves its middle free, in a ring.
const CURSOR: &str = "M-17 0h11M6 0h11M0 -17v11M0 6v11M-9 0a9 9 0 1 0 18 0a9 9 0 1 0 -18 0";

/// What is under the pointer, what is being drawn, and the handles of the selection.
#[component]
pub fn Marks() -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let group = NodeRef::<G>::new();
    let letter = letter_px();
    let cursor = Memo::new(move |_| {
        store.read(|editor| {
            let at = editor.cursor().filter(|_| editor.view() == pane.view)?;
            Some((at, editor.cursor_place()?, editor.cursor_holds()))
        })
    });
    // On other views equipment is lit as a whole.
    let lit = move |targets: &[Target]| {
        let mut path = String::new();
        if !targets.is_empty() && pane.view == View::Section {
            let (scheme, worked, view) = (store.scheme.get(), store.worked.get(), pane.viewport.get());
            for target in targets {
                push_points(&mut path, &view, &highlight(target, &scheme, &worked.design.model));
            }
        }
        path
    };
    Effect::new(move |kept: Option<Kept>| {
        let mut kept = kept.unwrap_or_default();
        let Some(group) = group.get() else { return kept };
        let view = pane.viewport.get();
        let mut all = vec![
            Drawn::path("lit hover", store.hover.with(|hover| lit(hover.as_slice()))).keyed("hover"),
            Drawn::path("lit chosen", store.chosen.with(|chosen| lit(chosen))).keyed("chosen"),
        ];
        pane.overlay.with(|overlay| {
            all.extend(overlay.boxed.map(|boxed| box_mark(&view, boxed)));
            all.push(Drawn::path("stroke", line(&view, &overlay.stroke)).keyed("stroke"));
            all.push(Drawn::path("preview", line(&view, &overlay.preview)).keyed("preview"));
            snap_mark(&view, overlay, letter, &mut all);
            all.extend(overlay.handles.iter().enumerate().map(|(index, of)| handle(&view, index, of)));
            let busy = overlay.readout.is_some() || overlay.entry.is_some();
            all.extend(cursor.get().map(|(at, place, holds)| {
                let word = (!busy).then(|| {
                    let words = format!("{}; {}", units::dimension(place.x), units::dimension(place.z));
                    word(&view, letter, at, (14.0, -14.0), words)
                });
                cursor_mark(view.to_screen(at), holds).holding(word)
            }));
            all.extend(readout(&view, overlay, letter));
        });
        kept.follow(&group, all, true);
        kept
    });
    view! { <g class="marks" aria-hidden="true" node_ref=group/> }
}

/// Dashed where it takes what it touches.
fn box_mark(view: &Viewport, boxed: Boxed) -> Drawn {
    let (a, b) = (view.to_screen(boxed.bounds.min), view.to_screen(boxed.bounds.max));
    Drawn::new("rect")
        .keyed("box")
        .set("class", if boxed.inside { "box" } else { "box touching" })
        .set("x", tenths(a.x))
        .set("y", tenths(b.y))
        .set("width", tenths(b.x - a.x))
        .set("height", tenths(a.y - b.y))
}

fn push_points(path: &mut String, view: &Viewport, points: &[Point]) {
    push_line(path, points.iter().map(|point| view.to_screen(*point)));
}

fn line(view: &Viewport, points: &[Point]) -> String {
    let mut path = String::new();
    push_points(&mut path, view, points);
    path
}

fn snap_mark(view: &Viewport, overlay: &Overlay, letter: f64, all: &mut Vec<Drawn>) {
    let Some(snap) = overlay.snap.filter(|snap| snap.reason != SnapReason::Free) else { return };
    let mut guides = String::new();
    let mut guide = |from: Point| push_points(&mut guides, view, &[from, snap.point]);
    match snap.reason {
        SnapReason::AlignedX(from) | SnapReason::AlignedZ(from) | SnapReason::EdgeAligned(from) => guide(from),
        SnapReason::Aligned(above, level) => [above, level].into_iter().for_each(guide),
        _ => {}
    }
    let at = view.to_screen(snap.point);
    let cross = format!("M{} {}h10m-5 -5v10", tenths(at.x - 5.0), tenths(at.y));
    all.push(Drawn::path("guide", guides).keyed("guide"));
    all.push(Drawn::path("snap", cross).keyed("snap"));
    all.push(word(view, letter, snap.point, (12.0, 22.0), snap.reason.words()).keyed("snap-word"));
}

/// A word so far from a place: before it where there is no room behind, above it where there is none below.
fn word(view: &Viewport, letter: f64, place: Point, (across, down): (f64, f64), words: String) -> Drawn {
    let at = view.to_screen(place);
    let fits = at.x + across + width_of(&words, letter) < view.width_px;
    let (x, anchor) = if fits { (at.x + across, "start") } else { (at.x - across, "end") };
    let y = if at.y + down < view.height_px { at.y + down } else { at.y - 14.0 };
    Drawn::new("text")
        .set("class", "snap-word")
        .set("x", tenths(x))
        .set("y", tenths(y))
        .set("text-anchor", anchor)
        .saying(words)
}

/// About what a line of writing takes.
fn width_of(words: &str, letter: f64) -> f64 {
    words.chars().count() as f64 * letter * 0.57
}

fn handle(view: &Viewport, index: usize, handle: &Handle) -> Drawn {
    let at = view.to_screen(handle.at);
    let pulls = matches!(handle.target, Target::Haunch(_) | Target::EdgeEnd { .. } | Target::EdgeMiddle(_));
    Drawn::new("rect")
        .keyed(format!("handle-{index}"))
        .set("class", "handle")
        .set("x", tenths(at.x - 4.5))
        .set("y", tenths(at.y - 4.5))
        .set("width", "9")
        .set("height", "9")
        // Round: pulls a new shape out of what is there.
        .set("rx", if pulls { "4.5" } else { "0" })
}

fn cursor_mark(at: ScreenPoint, holds: bool) -> Drawn {
    let place = format!("translate({} {})", tenths(at.x), tenths(at.y));
    let cross = |class| Drawn::path(class, CURSOR.to_owned()).set("transform", place.clone());
    Drawn::new("g")
        .keyed("cursor")
        .set("class", if holds { "cursor holds" } else { "cursor" })
        .set("data-testid", "cursor")
        .holding([cross("halo"), cross("cross")])
}

fn readout(view: &Viewport, overlay: &Overlay, letter: f64) -> Option<Drawn> {
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
    let letter = letter.max(13.0);
    let width = width_of(&text, letter) + 14.0;
    let (left, top) = (x.min(view.width_px - width - 20.0).max(-12.0) + 16.0, (y - 20.0 - 2.0 * letter).max(2.0));
    let ground = Drawn::new("rect").set("width", tenths(width)).set("height", tenths(letter * 1.85)).set("rx", "2");
    let text = Drawn::new("text").set("x", "7").set("y", tenths(letter * 1.3)).saying(text);
    let place = format!("translate({} {})", tenths(left), tenths(top));
    Some(Drawn::new("g").keyed("readout").set("class", "readout").set("transform", place).holding([ground, text]))
}
