//! What is on paper: the drawings, and all that a checker and the site need.

use super::cutting;
use super::hardening;
use super::hold_points;
use super::ledger::Ledger;
use super::moving;
use super::ratio::Ratio;
use super::schedule::Schedule;
use super::site_card;
use super::title_block::{BASES, Summary, caution};
use crate::canvas::OnPaper;
use crate::language::{member, t, told};
use crate::store::{Pane, Store};
use falsewright_core::results::{Check, Finding};
use falsewright_core::sorting::sort;
use leptos::prelude::*;

/// Made only while the page is printed.
#[component]
pub fn Printed() -> impl IntoView {
    let printing = Store::here().printing;
    move || printing.get().then(|| view! { <Sheets/> }.into_any())
}

#[component]
fn Sheets() -> impl IntoView {
    let store = Store::here();
    let worked = store.worked.get_untracked();
    let results = &worked.design.results;
    let mut checks = results.checks.clone();
    sort(&mut checks, |a, b| b.ratio.total_cmp(&a.ratio));
    let striking = results.striking.clone();
    let striking = (!striking.is_empty())
        .then(|| view! { <section><h2>{t("Striking")}</h2>{hardening::table(striking)}</section> }.into_any());
    let moved = results.moved.as_ref();
    let moved =
        moved.map(|moved| view! { <section><h2>{t("Moving the bay")}</h2>{moving::table(moved)}</section> }.into_any());
    let stock = store.scheme.with_untracked(|scheme| scheme.stock.clone());
    let cut = stock.map(|stock| {
        view! { <section><h2>{t("Cutting from stock")}</h2>{cutting::lists(store, &stock)}</section> }.into_any()
    });
    view! {
        <div class="printed" data-testid="printed">
            {store.on_paper().into_iter().map(|pane| sheet(store, pane)).collect_view()}
            <section>
                <h2>{t("Notes")}</h2>
                {worked.reason().map(|reason| view! { <p>{format!("▲ {reason}")}</p> }.into_any())}
                <ol>{results.findings.iter().map(note).collect_view()}</ol>
            </section>
            <section>
                <h2>{t("Limits of the pour for the site")}</h2>
                {site_card::tables(store, Signal::stored(true))}
            </section>
            {striking}
            {moved}
            {hold_points::sheet(store)}
            <section>
                <h2>{t("Schedule")}</h2>
                <Schedule/>
            </section>
            {cut}
            <section>
                <h2>{t("Path of loads")}</h2>
                <Ledger/>
            </section>
            <section>
                <h2>{t("Checks")}</h2>
                <table>
                    <thead>
                        <tr><th>{t("Check")}</th><th>{t("Where")}</th><th>{t("Formula")}</th><th class="n">{t("Ratio")}</th></tr>
                    </thead>
                    <tbody>{checks.iter().map(row).collect_view()}</tbody>
                </table>
            </section>
        </div>
    }
}

/// A view over its title block.
fn sheet(store: Store, pane: Pane) -> impl IntoView {
    view! {
        <article>
            <OnPaper pane/>
            <Summary/>
            {heading(store)}
        </article>
    }
}

fn heading(store: Store) -> impl IntoView {
    let scheme = store.scheme.get_untracked();
    let name = if scheme.name.is_empty() { t("Temporary works").to_owned() } else { scheme.name.clone() };
    let named = store.job(|job| !job.is_single()) || !scheme.option.is_empty();
    let option = named.then(|| say!("Option {}", store.option_name(store.in_hand())));
    let revision = (!scheme.revision.is_empty()).then(|| say!("Revision {}", scheme.revision));
    let basis = BASES.iter().find(|(basis, _)| *basis == scheme.basis).map(|(_, name)| t(name).to_owned());
    let today = js_sys::Date::new_0().to_locale_date_string("default", &wasm_bindgen::JsValue::UNDEFINED).into();
    let parts: Vec<String> = [option, revision, basis, Some(today)].into_iter().flatten().collect();
    view! {
        <header>
            <h2>{name}</h2>
            <p>{parts.join(", ")}</p>
            {caution()}
        </header>
    }
}

fn note(finding: &Finding) -> impl IntoView + use<> {
    view! { <li>{format!("{}: {}", super::notes::heading(finding.severity), told(&finding.text))} " " <i>{told(&finding.remedy)}</i></li> }
}

fn row(check: &Check) -> impl IntoView + use<> {
    view! {
        <tr>
            <td>{format!("{}, {}", member(&check.member), t(check.check.name()))}</td>
            <td>{told(&check.place)} <br/> {told(&check.case)}</td>
            <td>{check.formula.to_string()} <br/> <i>{check.source.to_string()}</i></td>
            <td class="n"><Ratio value=check.ratio/></td>
        </tr>
    }
}
