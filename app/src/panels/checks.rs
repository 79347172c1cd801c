use super::ratio::Ratio;
use super::unfolding::{self, Opened};
use crate::language::{member, t, told};
use crate::store::Store;
use crate::units;
use falsewright_core::results::Check;
use falsewright_core::sorting::sort;
use leptos::prelude::*;

/// A check with its worked formula.
#[component]
pub fn Worked(check: Check) -> impl IntoView {
    let store = Store::here();
    let mut codes: Vec<String> = store.worked.with_untracked(|worked| {
        let parts = worked.design.model.parts.iter().filter(|part| check.is_of(part));
        parts.map(|part| part.item.to_string()).collect()
    });
    codes.sort();
    codes.dedup();
    let item = move |code: String| {
        let shown = code.clone();
        view! { <button data-testid="check-item" on:click=move |_| store.look_up(Some(code.clone()))>{shown}</button> }
            .into_any()
    };
    let items = (!codes.is_empty()).then(|| {
        view! {
            <dt>{t("Item")}</dt>
            <dd class="items">{codes.into_iter().map(item).collect_view()}</dd>
        }
        .into_any()
    });
    view! {
        <dl class="worked" data-testid="worked">
            <dt>{t("Check")}</dt>
            <dd>{member(&check.member)} ", " {t(check.check.name())} " " <Ratio value=check.ratio/></dd>
            <dt>{t("Where")}</dt>
            <dd>{told(&check.place)}</dd>
            <dt>{t("Pour and state")}</dt>
            <dd>{told(&check.case)}</dd>
            <dt>{t("Demand")}</dt>
            <dd>{amount(check.demand, check.unit)}</dd>
            <dt>{t("Resistance")}</dt>
            <dd>{amount(check.resistance, check.unit)}</dd>
            <dt>{t("Formula")}</dt>
            <dd class="formula">{check.formula.to_string()}</dd>
            <dt>{t("Source")}</dt>
            <dd>{check.source.to_string()}</dd>
            {items}
        </dl>
    }
}

/// All checks of one element, greatest ratio first; each opens into its worked formula. One that was open before is again.
#[component]
pub fn ChecksOf(checks: Vec<Check>, opened: Opened) -> impl IntoView {
    let mut checks = checks;
    sort(&mut checks, |a, b| b.ratio.total_cmp(&a.ratio));
    let row = |check: Check| {
        let name = format!("{}, {}", member(&check.member), t(check.check.name()));
        let summary = view! { <span>{name.clone()}</span> <Ratio value=check.ratio/> }.into_any();
        let worked = move || view! { <Worked check=check.clone()/> }.into_any();
        view! { <li>{unfolding::line(name, opened, summary, worked)}</li> }.into_any()
    };
    view! { <ul class="checks">{checks.into_iter().map(row).collect_view()}</ul> }
}

fn amount(value: f64, unit: &'static str) -> String {
    let decimals = if value.abs() < 10.0 { 3 } else { 1 };
    format!("{} {}", units::amount_trimmed(value, unit, decimals), units::unit(unit))
}
