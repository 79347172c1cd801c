//! The drawing.

mod beside;
mod dimensions;
mod figures;
mod kept;
mod menu;
mod on_paper;
mod overlay;
pub mod paint;
mod patterns;
mod pointer;
mod sheet;
mod tags;
mod typing;
mod views;

use crate::editor::{Tool, View, Viewport};
use crate::language::t;
use crate::store::Store;
use crate::widgets::{SMALL_PX, focus_on, focused, letter_px};
pub use beside::Beside;
pub use on_paper::OnPaper;
pub use pointer::{hold_space, in_field, key_input};

use beside::{Apart, PaneName};
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
pub use views::Views;

/// One view, on which everything that it shows is placed and edited.
#[component]
fn Drawing(view: View) -> impl IntoView {
    let store = Store::here();
    let pane = store.pane(view);
    provide_context(pane);
    let svg = NodeRef::<Svg>::new();
    let frame = NodeRef::<Div>::new();
    Effect::new(move || {
        if let (Some(svg), Some(frame)) = (svg.get(), frame.get()) {
            pointer::attach(&svg, store, view);
            sheet::follow_size(&frame, store, view);
        }
    });
    // What is shown now instead of another shutter or soffit may be of another size.
    Effect::new(move |last: Option<Option<_>>| {
        let subject = pane.seen.get().subject;
        if last.is_some_and(|last| last != subject) {
            store.fit_view(view);
        }
        subject
    });
    // What had the focus may be gone after a change: the keys stay at the drawing.
    Effect::new(move |before: Option<()>| {
        store.chosen.track();
        store.tool.track();
        store.commits();
        if before.is_some() && store.peek(|editor| editor.view()) == view {
            request_animation_frame(move || {
                if focused().is_none() {
                    focus_on(&format!(".drawing.{}", view.id()));
                }
            });
        }
    });
    let legible = dimensions::legible_on(pane);
    let nothing = match view {
        View::Section => "",
        View::Elevation => {
            t("No wall shutter yet. Put one on a wall of the section, and it is shown here over the length of a bay.")
        }
        View::Plan => {
            t("No falsework yet. Put it under a soffit of the section, and it is shown here over the length of a bay.")
        }
    };
    let empty = move || view != View::Section && pane.seen.get().subject.is_none();
    view! {
        <div class="drawing-frame" node_ref=frame>
            <svg
                class=format!("drawing {}", view.id())
                class:hand=move || store.tool.get() == Tool::Hand
                class:large=is_large()
                class:drags=move || store.lags_behind_drag()
                node_ref=svg
                tabindex="0"
                role="application"
                aria-label=named(view)
                aria-describedby="drawing-keys"
                data-testid=match view {
                    View::Section => "drawing".to_owned(),
                    other => format!("drawing-{}", other.id()),
                }
                on:focus=move |_| store.enter(view)
            >
                <Patterns/>
                <Grid/>
                <g transform=move || world(&pane.viewport.get())>
                    <Figures/>
                    {(view == View::Section).then(|| view! { <Apart on_sheet=true/> })}
                </g>
                <Dimensions legible/>
                <Marks/>
                <Tags legible/>
                <ScaleBar/>
            </svg>
            {(view == View::Section).then(|| view! { <PaneName/> })}
            <p class="nothing" hidden=move || !empty()>{nothing}</p>
            <Typing/>
            <Menu/>
        </div>
    }
}

/// What a view is, for those who do not see it.
fn named(view: View) -> &'static str {
    match view {
        View::Section => t("Section of the culvert with its temporary works"),
        View::Elevation => t("Elevation of a wall shutter over the length of a bay"),
        View::Plan => t("Plan of the falsework over the length of a bay"),
    }
}

/// Whether its letters are large.
fn is_large() -> bool {
    letter_px() > SMALL_PX
}

/// From metres of the section to the screen.
fn world(view: &Viewport) -> String {
    let scale = view.px_per_m;
    format!("matrix({scale} 0 0 {} {} {})", -scale, -view.origin.x * scale, view.origin.z * scale)
}
