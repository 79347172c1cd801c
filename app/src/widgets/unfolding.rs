use leptos::prelude::*;

/// A part that is folded up at first, and is told whether it is open: what is dear to make can wait until then.
pub fn unfolding(id: &'static str, title: &'static str, inside: impl FnOnce(Signal<bool>) -> AnyView) -> AnyView {
    let open = RwSignal::new(false);
    view! {
        <details
            class=format!("further {id}")
            data-testid=id
            on:toggle=move |event| open.set(event_target::<web_sys::Element>(&event).has_attribute("open"))
        >
            <summary>{title}</summary>
            {inside(open.into())}
        </details>
    }
    .into_any()
}
