use super::{edit_all, form_of, items, swing};
use crate::language::{key, t};
use crate::memo::Memo;
use crate::panels::unfolding::{self, Opened};
use crate::store::Store;
use crate::units;
use crate::widgets::Unit;
use falsewright_core::model::Role;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Arrangement, Id, Scheme};
use leptos::prelude::*;

const ARRANGEMENTS: [(Arrangement, &str); 2] = [
    (Arrangement::UprightPrimaries, key("Level secondaries on upright primaries")),
    (Arrangement::LevelPrimaries, key("Upright secondaries on level primaries")),
];

/// How shutters are built up.
pub fn fields(store: Store, ids: Vec<Id>) -> Option<AnyView> {
    let find = |scheme: &Scheme, id: Id| scheme.shutters.iter().find(|shutter| shutter.id == id).cloned();
    let (values, form) = form_of(store, ids.clone(), find, Edit::SetShutter)?;
    let upright = Memo::new(move |_| {
        values.with(|all| all.iter().all(|shutter| shutter.arrangement == Arrangement::UprightPrimaries))
    });
    let hinged = Memo::new(move |_| values.with(|all| all.iter().all(|shutter| shutter.hinge.is_some())));
    let rows_m = RwSignal::new(1.0_f64);
    let rows = crate::widgets::Form::new(Memo::new(move |_| rows_m.get()), move |value| rows_m.set(value));
    let one = if let [one] = ids.as_slice() { Some(*one) } else { None };
    let place_rows = move |_| {
        let spacing_m = rows_m.get_untracked();
        edit_all(store, ids.iter().map(|id| Edit::AddTieRows { shutter: *id, spacing_m }).collect());
    };
    let opened = Opened::default();
    let pressures = move || one.map(|id| pressure(store, id, opened));
    Some(
        view! {
            <div class="fields">
                {form.choice("Arrangement", &ARRANGEMENTS, |of| of.arrangement, |of, value| of.arrangement = value)}
                {form.code("Facing", items(store, Role::Facing), |of| &of.facing, |of, code| of.facing = code)}
                {form.code("Secondaries", items(store, Role::Secondary), |of| &of.secondary, |of, code| of.secondary = code)}
                {form.number("Secondaries apart", Unit::MM, |of| of.secondaries.max_m, |of, value| of.secondaries.max_m = value)}
                {form.number("First from edge", Unit::MM, |of| of.secondaries.edge_m, |of, value| of.secondaries.edge_m = value)}
                {form.code("Primaries", items(store, Role::Primary), |of| &of.primary, |of, code| of.primary = code)}
                {move || upright.get().then(|| view! {
                    {form.number("Primaries apart", Unit::MM, |of| of.primaries.max_m, |of, value| of.primaries.max_m = value)}
                    {form.number("First from bay end", Unit::MM, |of| of.primaries.edge_m, |of, value| of.primaries.edge_m = value)}
                }.into_any())}
                {form.number("Below the face", Unit::MM, |of| of.below_m, |of, value| of.below_m = value)}
                {form.number("Above the face", Unit::MM, |of| of.above_m, |of, value| of.above_m = value)}
                {form.toggle("Foot held", |of| of.foot_held, |of, value| of.foot_held = value)}
                {form.number("Each upright held down", Unit::of("kN", 1), |of| of.hold_down_kn.unwrap_or(0.0), |of, value| of.hold_down_kn = Some(value).filter(|kn| *kn != 0.0))}
                {form.toggle("Hinged", |of| of.hinge.is_some(), |of, hinged| of.hinge = hinged.then(|| of.hinge.unwrap_or_default()))}
                {move || hinged.get().then(|| swing::fields(store, form, one))}
                {rows.number("Tie rows apart", Unit::MM, |value| *value, |value, new| *value = new)}
                <button data-testid="place-rows" on:click=place_rows>{t("Place tie rows anew")}</button>
                {pressures}
            </div>
        }
        .into_any(),
    )
}

/// The greatest pressure on a shutter, which unfolds into how it was found.
fn pressure(store: Store, id: Id, opened: Opened) -> Option<AnyView> {
    let worked = store.settled.get();
    let diagram = worked.design.results.pressures.iter().find(|diagram| diagram.shutter == id)?.clone();
    let summary = view! {
        <span>{t("Pressure of fresh concrete")}</span>
        <span class="n">{units::quantity(diagram.greatest().0, "kPa", 1)}</span>
    };
    let worked = move || {
        view! {
            <dl class="worked">
                <dt>{t("Formula")}</dt>
                <dd class="formula">{diagram.formula.to_string()}</dd>
                <dt>{t("Source")}</dt>
                <dd>{diagram.source}</dd>
            </dl>
        }
        .into_any()
    };
    let unfolding = unfolding::line(String::new(), opened, summary.into_any(), worked);
    Some(view! { <div class="checks wide" data-testid="pressure">{unfolding}</div> }.into_any())
}
