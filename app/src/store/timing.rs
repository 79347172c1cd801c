//! Measures of the browser's User Timing.

use js_sys::{Object, Reflect};
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(catch, js_namespace = performance, js_name = measure)]
    fn measure_since(name: &str, options: &Object) -> Result<JsValue, JsValue>;
}

/// Time since the page was opened.
pub fn now_ms() -> f64 {
    web_sys::window().and_then(|window| window.performance()).map_or(0.0, |performance| performance.now())
}

/// Runs a computation as the measure `falsewright.solve`.
pub fn measure_solve<T>(solve: impl FnOnce() -> T) -> T {
    let start_ms = now_ms();
    let solved = solve();
    measure("falsewright.solve", start_ms);
    solved
}

/// Measures `falsewright.paint`, from now until the views have followed the change.
pub fn measure_paint() {
    let start_ms = now_ms();
    leptos::task::spawn_local(async move {
        leptos::task::tick().await;
        measure("falsewright.paint", start_ms);
    });
}

fn measure(name: &str, start_ms: f64) {
    let options = Object::new();
    if Reflect::set(&options, &"start".into(), &start_ms.into()).is_ok() {
        let _ = measure_since(name, &options);
    }
}
