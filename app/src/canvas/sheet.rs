use super::paint::{Block, name_of};
use crate::editor::{View, Viewport};
use crate::language::t;
use crate::store::{Pane, Store, reduction_on_paper};
use crate::units;
use crate::widgets::letter_px;
use falsewright_core::geometry::Point;
use leptos::prelude::*;
use std::fmt::Write;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{HtmlElement, ResizeObserver};

/// Lines of the sheet's grid at whole steps, told apart by weight.
#[component]
pub fn Grid() -> impl IntoView {
    let pane = Pane::here();
    let path = move |coarse: usize| {
        let view = pane.viewport.get();
        grid_path(&view, lines_m(&view)[coarse])
    };
    let (fine, coarse) = (move || path(0), move || path(1));
    view! {
        <path class="grid-fine" d=fine/>
        <path class="grid-coarse" d=coarse/>
    }
}

/// A bar that tells the scale.
#[component]
pub fn ScaleBar() -> impl IntoView {
    let (store, pane) = (Store::here(), Pane::here());
    let heading = move || {
        if !store.has_heading(pane.view) {
            return String::new();
        }
        let subject = pane.seen.get().subject;
        let mark = subject.and_then(|id| name_of(&store.worked.get().design.model, id));
        let mark = mark.as_deref().and_then(|name| name.rsplit(' ').next()).unwrap_or_default().to_owned();
        match pane.view {
            View::Section => t("Cross-section").to_owned(),
            View::Elevation => say!("Elevation of {}", mark),
            View::Plan => say!("Plan of {}", mark),
        }
    };
    let length = move || {
        let px_per_m = pane.viewport.get().px_per_m;
        units::scale_m().into_iter().find(|length| length * px_per_m >= 50.0).unwrap_or(10.0)
    };
    let px = move || length() * pane.viewport.get().px_per_m;
    let at = move || format!("translate(16 {})", pane.viewport.get().height_px - 14.0);
    let bars = move || {
        let px = px();
        format!("M0 0V-6H{}V0ZM{} 0V-6M0 -3H{}", px, px / 2.0, px / 2.0)
    };
    let reduction = move || {
        let viewport = pane.viewport.get();
        if store.printing.get() {
            say!(", 1 : {} on A4", format!("{:.0}", reduction_on_paper(&viewport)))
        } else {
            format!(", 1 : {:.0}", 50.0 / viewport.zoom())
        }
    };
    view! {
        <g class="scale-bar" transform=at aria-hidden="true">
            <text class="heading" x="0" y=-heading_up_px() data-testid=pane.test_id("heading")>{heading}</text>
            <path d=bars/>
            <text x=move || px() + 6.0 y="0">
                {move || units::scale(length())}
                {reduction}
            </text>
        </g>
    }
}

/// From the scale bar up to the heading of a view.
fn heading_up_px() -> f64 {
    letter_px() + 5.0
}

/// Room that the heading and the scale bar take.
pub fn heading(view: &Viewport, letter: f64) -> Block {
    let size = (210.0, 2.0 * letter + 18.0);
    Block { centre: (16.0 + size.0 / 2.0, view.height_px - 8.0 - size.1 / 2.0), size }
}

/// Distances of the fine and the coarse lines: the closest of which the fine ones can be told apart.
fn lines_m(view: &Viewport) -> [f64; 2] {
    const LEAST_PX: f64 = 14.0;
    let all = units::lines_m();
    all.into_iter().find(|[fine, _]| fine * view.px_per_m >= LEAST_PX).unwrap_or(all[3])
}

fn grid_path(view: &Viewport, step: f64) -> String {
    let mut path = String::new();
    let far = view.origin + Point::new(view.length_m(view.width_px), -view.length_m(view.height_px));
    for i in (view.origin.x / step).ceil() as i64..=(far.x / step).floor() as i64 {
        let x = (i as f64 * step - view.origin.x) * view.px_per_m;
        let _ = write!(path, "M{x:.1} 0V{:.0}", view.height_px);
    }
    for i in (far.z / step).ceil() as i64..=(view.origin.z / step).floor() as i64 {
        let y = (view.origin.z - i as f64 * step) * view.px_per_m;
        let _ = write!(path, "M0 {y:.1}H{:.0}", view.width_px);
    }
    path
}

/// Tells the store the size of a view, now and whenever it changes, as long as the view is laid out.
pub fn follow_size(frame: &HtmlElement, store: Store, view: View) {
    let measured = frame.clone();
    let mut first = true;
    let mut measure = move || {
        let (width, height) = (f64::from(measured.client_width()), f64::from(measured.client_height()));
        if width > 0.0 && height > 0.0 {
            store.resize(view, width, height, std::mem::take(&mut first));
        }
    };
    // Before anything is drawn for another size.
    measure();
    let on_resize = Closure::<dyn FnMut()>::new(measure);
    if let Ok(observer) = ResizeObserver::new(on_resize.as_ref().unchecked_ref()) {
        observer.observe(frame);
        let kept = StoredValue::new_local((observer, on_resize));
        on_cleanup(move || {
            kept.try_with_value(|(observer, _)| observer.disconnect());
        });
    }
}
