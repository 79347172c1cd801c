use super::element;
use crate::canvas::paint::tone;
use crate::editor::Editor;
use crate::language::{member, step as step_words, t, told};
use crate::memo::Memo;
use crate::store::Store;
use crate::units;
use falsewright_core::results::Severity;
use leptos::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use std::time::Duration;

/// Several changes in a row are told as one.
const QUIET: Duration = Duration::from_millis(500);

/// What screen readers are told: after a change what it was and the worst ratio, at the cursor of the keys what is there.
/// A drag is silent until it ends.
#[component]
pub fn Spoken() -> impl IntoView {
    let store = Store::here();
    let told = RwSignal::new(String::new());
    let waiting: Rc<Cell<Option<TimeoutHandle>>> = Rc::default();
    let tell = move |words: Box<dyn Fn() -> String>| {
        let tell = {
            let waiting = waiting.clone();
            move || {
                waiting.set(None);
                told.set(words());
            }
        };
        if let Some(earlier) = waiting.take() {
            earlier.clear();
        }
        waiting.set(set_timeout_with_handle(tell, QUIET).ok());
    };
    let tell_change = tell.clone();
    Effect::new(move |before: Option<(u64, usize)>| {
        let (count, at) = (store.commits(), store.at.get_untracked());
        if let Some((_, was_at)) = before.filter(|before| before.0 != count) {
            tell_change(Box::new(move || change(store, at < was_at)));
        }
        (count, at)
    });
    let cursor = Memo::new(move |_| store.read(|editor| (editor.cursor_place(), editor.cursor_holds())));
    Effect::new(move || {
        if cursor.with(|(place, _)| place.is_some()) {
            tell(Box::new(move || here(store)));
        }
    });
    view! {
        <p class="unseen" role="status" aria-live="polite" aria-atomic="true" data-testid="spoken">{move || told.get()}</p>
    }
}

/// The step that was made or taken back, and how the scheme stands.
fn change(store: Store, back: bool) -> String {
    let at = store.at.get_untracked();
    let step =
        store.steps.with_untracked(|steps| steps.iter().find(|step| step.number == at).map(|step| step.label.clone()));
    let step = step_words(&step.unwrap_or_default());
    let worked = store.worked.get_untracked();
    let stands = match (worked.reason(), worked.design.results.governing()) {
        (Some(reason), _) => reason,
        (None, Some(check)) => {
            say!("Worst ratio {}: {}, {}.", tone::printed(check.ratio), member(&check.member), told(&check.place))
        }
        (None, None) => t("Nothing is checked yet.").to_owned(),
    };
    let fails = worked.design.results.findings.iter().filter(|finding| finding.severity == Severity::Fail).count();
    let fails = if fails > 0 { say!(" Notes that it must not be built so: {}.", fails) } else { String::new() };
    let now = format!("{step}. {stands}{fails}");
    if back { say!("Back to: {}", now) } else { now }
}

/// What is at the cursor, and where that is.
fn here(store: Store) -> String {
    let (place, holds) = store.peek(|editor| (editor.cursor_place(), editor.cursor_holds()));
    let Some(place) = place else { return String::new() };
    let what = store.peek(Editor::hover).map(|target| element::title(store, &target));
    let what = what.map_or(String::new(), |what| format!("{what}, "));
    let at = format!("{what}{}; {}", units::dimension(place.x), units::size(place.z));
    if holds { say!("Held: {}", at) } else { at }
}
