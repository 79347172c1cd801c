use super::unfolding;
use crate::language::{key, t};
use crate::memo::Memo;
use crate::store::Store;
use crate::units;
use crate::widgets::{Form, Unit};
use falsewright_core::quantities::Reuse;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Programme, Rates};
use leptos::prelude::*;

/// How sets of equipment go from bay to bay, and what is paid for them.
#[component]
pub fn SetsAndBays() -> impl IntoView {
    let store = Store::here();
    let programme = Memo::new(move |_| store.scheme.with(|scheme| scheme.programme));
    let whether = Form::new(programme, move |programme| store.edit(Edit::SetProgramme(programme)));
    let form = whether.within();
    let is_asked = Memo::new(move |_| programme.with(Option::is_some));
    unfolding::part("programme", t("Sets and bays"), move |_| {
        view! {
            <div class="fields">
                {whether.toggle("Work out uses, hire and cost", Option::is_some, |of, wanted| {
                    *of = wanted.then(Programme::default);
                })}
                {move || is_asked.get().then(|| fields(form))}
            </div>
            <AllBays/>
        }
        .into_any()
    })
}

fn fields(form: Form<Programme>) -> AnyView {
    macro_rules! rate {
        ($label:expr, $unit:expr, $field:ident) => {
            form.optional($label, $unit, |of| of.rates.$field, |of, rate| of.rates = Rates { $field: rate, ..of.rates })
        };
    }
    view! {
        {form.count("Sets of equipment", |of| of.sets, |of, count| of.sets = count)}
        {form.number("Cycle of a set", Unit::of("d", 1), |of| of.cycle_days, |of, value| of.cycle_days = value)}
        {form.count("Uses of facing", |of| of.facing_uses, |of, count| of.facing_uses = count)}
        {rate!(key("Hire a week"), Unit::of("/t", 2), hire_per_t_week)}
        {rate!(key("Facing bought"), Unit::of("/m²", 2), facing_per_m2)}
        {rate!(key("Setting and striking"), Unit::of("/m²", 2), work_per_m2)}
    }
    .into_any()
}

/// What the equipment comes to over all bays; nothing unless it is asked for.
#[component]
pub fn AllBays() -> impl IntoView {
    let store = Store::here();
    let found = Memo::new(move |_| store.settled.with(|worked| worked.design.reuse));
    move || found.with(|found| found.as_ref().map(told))
}

fn told(found: &Reuse) -> AnyView {
    let count = |value: f64| units::number(value, 0);
    let area = |value: f64| units::quantity(value, "m²", 1);
    let mut rows = vec![
        (t("Bays of each set, at most"), count(found.uses.into())),
        (t("Time"), units::quantity(found.days, "d", 1)),
        (t("Weeks of hire, all sets"), count(found.set_weeks.into())),
        (t("Facing set up"), area(found.formed_m2)),
        (t("Facing bought"), area(found.bought_m2)),
        (t("Pieces set up"), count(found.pieces)),
        (t("Mass set up"), units::quantity(found.handled_kg, "kg", 0)),
    ];
    if let Some(cost) = &found.cost {
        rows.extend([
            (t("Cost of hire"), count(cost.hire)),
            (t("Cost of facing"), count(cost.facing)),
            (t("Cost of work"), count(cost.work)),
            (t("Cost of all bays"), count(cost.total())),
        ]);
        rows.extend(cost.per_m2.map(|cost| (t("Cost by facing set up"), units::quantity(cost, "/m²", 2))));
    }
    let row = |(name, value): (&str, String)| {
        view! { <tr><th scope="row">{name.to_owned()}</th><td class="n">{value}</td></tr> }.into_any()
    };
    view! {
        <table class="all-bays" data-testid="all-bays">
            <caption>{t("All bays")}</caption>
            <tbody>{rows.into_iter().map(row).collect_view()}</tbody>
        </table>
    }
    .into_any()
}
