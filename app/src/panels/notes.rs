use super::checks::Worked;
use crate::language::{t, told};
use crate::store::Store;
use falsewright_core::results::{Check, Finding, Severity};
use leptos::prelude::*;

/// The findings as the general notes of the drawing, numbered, most serious first.
#[component]
pub fn Notes() -> impl IntoView {
    let store = Store::here();
    let list = move || {
        let worked = store.settled.get();
        let results = &worked.design.results;
        let findings = &results.findings;
        let note = |(index, finding): (usize, &Finding)| {
            let check = finding.check.and_then(|check| results.checks.get(check)).cloned();
            let first = index == 0 || findings[index - 1].severity != finding.severity;
            view! {
                {first.then(|| view! { <li class="heading">{heading(finding.severity)}</li> }.into_any())}
                <Note index finding=finding.clone() check/>
            }
            .into_any()
        };
        findings.iter().enumerate().map(note).collect_view()
    };
    let none = move || {
        let worked = store.settled.get();
        (worked.fault.is_none() && worked.design.results.findings.is_empty()).then(|| {
            view! {
                <p class="quiet">{if worked.design.results.checks.is_empty() {
                    t("Nothing is checked yet. Place shutters, ties and falsework; what they lack is noted here.")
                } else {
                    t("No findings. Every computed check is at or below 1.00.")
                }}</p>
            }
            .into_any()
        })
    };
    view! {
        <section class="notes" aria-label=t("Notes") aria-busy=move || (!store.is_settled()).to_string()>
            {move || store.settled.get().reason().map(|reason| view! {
                <p class="reason" role="alert" data-testid="reason">{reason}</p>
            }.into_any())}
            {move || none()}
            <ol data-testid="notes">{move || list()}</ol>
        </section>
    }
}

pub(super) fn heading(severity: Severity) -> &'static str {
    match severity {
        Severity::Fail => t("▲ Must not be built so"),
        Severity::Warn => t("Take care"),
        Severity::Note => t("Worth knowing"),
    }
}

#[component]
fn Note(index: usize, finding: Finding, check: Option<Check>) -> impl IntoView {
    let store = Store::here();
    let open = move || store.note() == Some(index);
    let class = match finding.severity {
        Severity::Fail => "fail",
        Severity::Warn => "warn",
        Severity::Note => "note",
    };
    view! {
        <li class=class class:open=open data-testid=format!("note-{}", index + 1)>
            <button
                class="note"
                aria-expanded=move || open().to_string()
                on:click=move |_| store.choose_note((!open()).then_some(index))
            >
                <span class="number">{index + 1}</span>
                <span>
                    {told(&finding.text)}
                    " "
                    <i>{told(&finding.remedy)}</i>
                </span>
            </button>
            {move || open().then(|| check.clone().map(|check| view! { <Worked check/> }.into_any()))}
        </li>
    }
}
