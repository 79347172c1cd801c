use crate::store::Pane;
use leptos::prelude::*;

/// Hatches of the drawing, of the same density at every zoom.
#[component]
pub fn Patterns() -> impl IntoView {
    let pane = Pane::here();
    let to_world = move || format!("scale({})", 1.0 / pane.viewport.get().px_per_m);
    // Each view has hatches of its own, as each has a scale of its own.
    let id = move |of: &str| pane.test_id(of);
    view! {
        <defs>
            <pattern id=id("hatch-fresh") width="86" height="86" patternUnits="userSpaceOnUse" patternTransform=to_world>
                <rect class="fresh-ground" width="86" height="86"/>
                <g class="stipple">
                    <circle cx="8" cy="11" r="0.9"/><circle cx="31" cy="6" r="0.6"/><circle cx="57" cy="14" r="0.9"/>
                    <circle cx="77" cy="4" r="0.6"/><circle cx="18" cy="27" r="0.7"/><circle cx="44" cy="33" r="0.8"/>
                    <circle cx="71" cy="29" r="0.6"/><circle cx="5" cy="44" r="0.7"/><circle cx="29" cy="51" r="0.9"/>
                    <circle cx="60" cy="48" r="0.6"/><circle cx="82" cy="55" r="0.9"/><circle cx="14" cy="66" r="0.6"/>
                    <circle cx="47" cy="69" r="0.7"/><circle cx="68" cy="74" r="0.8"/><circle cx="33" cy="81" r="0.6"/>
                    <path d="M40 18l3.6 1.3-2.8 2.5z"/><path d="M12 38l3-1.9.7 3.2z"/><path d="M66 61l3.4.2-1.8 2.6z"/>
                    <path d="M75 41l-1 3.2-2.5-1.7z"/><path d="M24 73l2.6-2 1.2 3z"/><path d="M52 80l3.2 1-2.2 2.3z"/>
                </g>
            </pattern>
            <pattern id=id("hatch-cast") width="9" height="9" patternUnits="userSpaceOnUse" patternTransform=to_world>
                <rect class="cast-ground" width="9" height="9"/>
                <path class="hatch-line" d="M-2 2L2-2M0 9L9 0M7 11L11 7"/>
            </pattern>
            <pattern id=id("hatch-ground") width="14" height="14" patternUnits="userSpaceOnUse" patternTransform=to_world>
                <path class="hatch-line" d="M0 7L7 0M3 14L14 3M9 14L14 9M0 2L2 0"/>
            </pattern>
            <pattern id=id("hatch-guard") width="6" height="6" patternUnits="userSpaceOnUse" patternTransform=to_world>
                <path class="guard-line" d="M0 0L6 6M-1 5L1 7M5-1L7 1"/>
            </pattern>
            <pattern id=id("hatch-over") width="5" height="5" patternUnits="userSpaceOnUse" patternTransform=to_world>
                <rect class="over-ground" width="5" height="5"/>
                <path class="over-line" d="M-1 1L1-1M0 5L5 0M4 6L6 4"/>
            </pattern>
        </defs>
    }
}
