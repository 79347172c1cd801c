use crate::editor::Viewport;
use crate::store::Store;
use crate::units;
use falsewright_core::geometry::Point;
use leptos::prelude::*;
use std::fmt::Write;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{HtmlElement, ResizeObserver};

/// Lines of the sheet's grid at whole steps, told apart by weight.
#[component]
pub fn Grid() -> impl IntoView {
    let store = Store::here();
    let path = move |coarse: usize| {
        let view = store.viewport.get();
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
    let store = Store::here();
    let length = move || {
        let px_per_m = store.viewport.get().px_per_m;
        units::scale_m().into_iter().find(|length| length * px_per_m >= 50.0).unwrap_or(10.0)
    };
    let px = move || length() * store.viewport.get().px_per_m;
    let at = move || format!("translate(16 {})", store.viewport.get().height_px - 14.0);
    let bars = move || {
        let px = px();
        format!("M0 0V-6H{}V0ZM{} 0V-6M0 -3H{}", px, px / 2.0, px / 2.0)
    };
    view! {
        <g class="scale-bar" transform=at aria-hidden="true">
            <path d=bars/>
            <text x=move || px() + 6.0 y="0">{move || format!("{}, 1 : {:.0}", units::scale(length()), 50.0 / store.viewport.get().zoom())}</text>
        </g>
    }
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

/// Tells the store the size of the drawing, now and whenever it changes.
pub fn follow_size(frame: &HtmlElement, store: Store) {
    let measured = frame.clone();
    let on_resize = Closure::<dyn FnMut()>::new(move || {
        let (width, height) = (f64::from(measured.client_width()), f64::from(measured.client_height()));
        if width > 0.0 && height > 0.0 {
            store.resize(width, height);
        }
    });
    if let Ok(observer) = ResizeObserver::new(on_resize.as_ref().unchecked_ref()) {
        observer.observe(frame);
    }
    on_resize.forget();
}
