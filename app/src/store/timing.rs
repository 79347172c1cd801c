//! Marks of the browser's User Timing.

use web_sys::Performance;

fn performance() -> Option<Performance> {
    web_sys::window()?.performance()
}

/// Runs a computation as the measure `falsewright.solve`.
pub fn measure_solve<T>(solve: impl FnOnce() -> T) -> T {
    begin("falsewright.solve");
    let solved = solve();
    end("falsewright.solve");
    solved
}

/// Measures `falsewright.paint`, from now until the views have followed the change.
pub fn measure_paint() {
    begin("falsewright.paint");
    leptos::task::spawn_local(async {
        leptos::task::tick().await;
        end("falsewright.paint");
    });
}

fn begin(name: &str) {
    if let Some(performance) = performance() {
        let _ = performance.mark(name);
    }
}

fn end(name: &str) {
    if let Some(performance) = performance() {
        let _ = performance.measure_with_start_mark(name, name);
        performance.clear_marks_with_mark_name(name);
    }
}
