use crate::store::Store;
use leptos::prelude::*;

/// Hatches of the drawing, of the same density at every zoom.
#[component]
pub fn Patterns() -> impl IntoView {
    let store = Store::here();
    let to_world = move || format!("scale({})", 1.0 / store.viewport.get().px_per_m);
    view! {
        <defs>
            <pattern id="hatch-fresh" width="34" height="34" patternUnits="userSpaceOnUse" patternTransform=to_world>
                <rect class="fresh-ground" width="34" height="34"/>
                <g class="stipple">
                    <circle cx="5" cy="6" r="0.9"/><circle cx="17" cy="3" r="0.6"/><circle cx="28" cy="9" r="0.9"/>
                    <circle cx="11" cy="15" r="0.6"/><circle cx="23" cy="19" r="0.7"/><circle cx="3" cy="24" r="0.8"/>
                    <circle cx="15" cy="27" r="0.9"/><circle cx="30" cy="29" r="0.6"/>
                    <path d="M19 11l3.4 1.2-2.6 2.4z"/><path d="M7 30l2.8-1.8.6 3z"/><path d="M27 23l3 .2-1.6 2.4z"/>
                </g>
            </pattern>
            <pattern id="hatch-cast" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform=to_world>
                <rect class="cast-ground" width="9" height="9"/>
                <path class="hatch-line" d="M-2 2L2-2M0 9L9 0M7 11L11 7"/>
            </pattern>
            <pattern id="hatch-ground" width="14" height="14" patternUnits="userSpaceOnUse" patternTransform=to_world>
                <path class="hatch-line" d="M0 7L7 0M3 14L14 3M9 14L14 9M0 2L2 0"/>
            </pattern>
            <pattern id="hatch-guard" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform=to_world>
                <path class="guard-line" d="M0 0L6 6M-1 5L1 7M5-1L7 1"/>
            </pattern>
            <pattern id="hatch-over" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform=to_world>
                <rect class="over-ground" width="5" height="5"/>
                <path class="over-line" d="M-1 1L1-1M0 5L5 0M4 6L6 4"/>
            </pattern>
        </defs>
    }
}
