use leptos::prelude::*;
use std::cell::Cell;
use std::time::Duration;

thread_local! {
    /// Whether the page has been painted.
    static PAINTED: Cell<bool> = const { Cell::new(false) };
}

/// A view that is made once the page has been painted, and from then on at once. Each is made by itself, so that the page
/// answers in between.
pub fn later(view: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let due = RwSignal::new(PAINTED.get());
    if !due.get_untracked() {
        let make = move || {
            PAINTED.set(true);
            let _ = due.try_set(true);
        };
        request_animation_frame(move || set_timeout(make, Duration::ZERO));
    }
    (move || due.get().then(&view)).into_any()
}
