use crate::canvas::paint::tone;
use leptos::prelude::*;

/// A ratio with its tone; a wedge before it where it is above 1.00.
#[component]
pub fn Ratio(value: f64) -> impl IntoView {
    view! { <span class=format!("ratio {}", tone::tone(value))>{tone::printed(value)}</span> }
}
