use super::folds::Folds;
use leptos::prelude::*;
use web_sys::{Element, Event};

/// Names of what is unfolded, kept while it is made anew.
pub type Opened = StoredValue<Vec<String>>;

/// A part that is folded up at first, and stays as it was left when the page is made anew in another language.
pub fn part(id: &'static str, title: &'static str, inside: impl FnOnce(Signal<bool>) -> AnyView) -> AnyView {
    let (open, on_toggle) = kept(id.to_owned(), expect_context::<Folds>().opened);
    view! {
        <details class=format!("further {id}") data-testid=id open=open.get_untracked() on:toggle=on_toggle>
            <summary>{title}</summary>
            {inside(open)}
        </details>
    }
    .into_any()
}

/// A line that unfolds into what is made only then: most are never looked into.
pub fn line(name: String, opened: Opened, summary: AnyView, worked: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let (open, on_toggle) = kept(name, opened);
    view! {
        <details open=open.get_untracked() on:toggle=on_toggle>
            <summary>{summary}</summary>
            {move || open.get().then(&worked)}
        </details>
    }
    .into_any()
}

/// Whether `name` is open, and what keeps that.
fn kept(name: String, opened: Opened) -> (Signal<bool>, impl Fn(Event)) {
    let open = RwSignal::new(opened.with_value(|opened| opened.contains(&name)));
    let on_toggle = move |event: Event| {
        let now = event_target::<Element>(&event).has_attribute("open");
        opened.update_value(|opened| {
            opened.retain(|known| *known != name);
            opened.extend(now.then(|| name.clone()));
        });
        open.set(now);
    };
    (open.into(), on_toggle)
}
