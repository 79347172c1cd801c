//! The drawing.

mod dimensions;
mod figures;
mod menu;
mod overlay;
pub mod paint;
mod patterns;
mod pointer;
mod sheet;
mod tags;
mod typing;

use crate::language::t;
use crate::store::Store;
pub use pointer::{hold_space, in_field, key_input};

use dimensions::Dimensions;
pub use dimensions::legible;
use figures::Figures;
use leptos::html::Div;
use leptos::prelude::*;
use leptos::svg::Svg;
use menu::Menu;
use overlay::Marks;
use patterns::Patterns;
use sheet::{Grid, ScaleBar};
use tags::Tags;
use typing::Typing;

/// The section, on which everything is placed and edited.
#[component]
pub fn Drawing() -> impl IntoView {
    let store = Store::here();
    let svg = NodeRef::<Svg>::new();
    let frame = NodeRef::<Div>::new();
    Effect::new(move || {
        if let (Some(svg), Some(frame)) = (svg.get(), frame.get()) {
            pointer::attach(&svg, store);
            sheet::follow_size(&frame, store);
        }
    });
    let letter = crate::widgets::letter_px();
    let legible =
        Memo::new(move |_| store.dimensions.with(|all| dimensions::legible(&store.viewport.get(), all, letter)));
    let world = move || {
        let view = store.viewport.get();
        let scale = view.px_per_m;
        format!("matrix({scale} 0 0 {} {} {})", -scale, -view.origin.x * scale, view.origin.z * scale)
    };
    view! {
        <div class="drawing-frame" node_ref=frame>
            <svg
                class="drawing"
                class:hand=move || store.tool.get() == crate::editor::Tool::Hand
                node_ref=svg
                tabindex="0"
                role="application"
                aria-label=t("Section of the culvert with its temporary works")
                data-testid="drawing"
            >
                <Patterns/>
                <Grid/>
                <g transform=world>
                    <Figures/>
                </g>
                <Dimensions legible/>
                <Marks/>
                <Tags legible/>
                <ScaleBar/>
            </svg>
            <Typing/>
            <Menu/>
        </div>
    }
}
