use super::{edit_all, form, form_of, items};
use crate::language::{key, t};
use crate::memo::Memo;
use crate::panels::hardening;
use crate::store::Store;
use crate::widgets::{Form, Unit};
use falsewright_core::model::Role;
use falsewright_core::scheme::edit::{Edit, LegSpacing};
use falsewright_core::scheme::{Bearing, Direction, Falsework, Hardening, Id, Lateral, LegLine, Scheme, SlabAge};
use leptos::prelude::*;

const DIRECTIONS: [(Direction, &str); 2] =
    [(Direction::Across, key("across, at each bent")), (Direction::Along, key("along, at each leg line"))];
const LATERAL: [(Lateral, &str); 2] =
    [(Lateral::Braced, key("diagonals")), (Lateral::HeldByWalls, key("walls cast earlier"))];
const BASES: [(bool, &str); 2] = [(true, key("concrete cast earlier")), (false, key("the ground"))];
const STRENGTH_MPA: f64 = 20.0;

/// How falsework is built up.
pub fn fields(store: Store, ids: Vec<Id>) -> Option<AnyView> {
    let find = |scheme: &Scheme, id: Id| scheme.falsework.iter().find(|of| of.id == id).cloned();
    let (values, form) = form_of(store, ids.clone(), find, Edit::SetFalsework)?;
    let slab = Memo::new(move |_| values.with(|all| all.iter().all(on_slab)));
    let aged = Memo::new(move |_| values.with(|all| all.iter().all(|of| of.slab.is_some())));
    let hardening = |of: &Falsework| of.slab.as_ref().map_or(hardening::USUAL, |slab| slab.hardening.clone());
    let hardens = Memo::new(move |_| values.with(|all| all.iter().map(hardening).collect::<Vec<_>>()));
    let set_hardening = move |hardens: Vec<Hardening>| {
        let change = |(mut of, hardening): (Falsework, Hardening)| {
            of.slab.as_mut()?.hardening = hardening;
            Some(Edit::SetFalsework(of))
        };
        edit_all(store, values.get_untracked().into_iter().zip(hardens).filter_map(change).collect());
    };
    let apart_m = RwSignal::new(1.2_f64);
    let apart = Form::new(Memo::new(move |_| apart_m.get()), move |value| apart_m.set(value));
    let respace = move |_| {
        let spacing = LegSpacing::Apart(apart_m.get_untracked());
        edit_all(store, ids.iter().map(|id| Edit::RespaceLegLines { falsework: *id, spacing }).collect());
    };
    Some(
        view! {
            <div class="fields">
                {form.choice("Primaries run", &DIRECTIONS, |of| of.direction, |of, value| of.direction = value)}
                {form.code("Facing", items(store, Role::Facing), |of| &of.facing, |of, code| of.facing = code)}
                {form.code("Secondaries", items(store, Role::Secondary), |of| &of.secondary, |of, code| of.secondary = code)}
                {form.number("Secondaries apart", Unit::MM, |of| of.secondaries.max_m, |of, value| of.secondaries.max_m = value)}
                {form.number("First from edge", Unit::MM, |of| of.secondaries.edge_m, |of, value| of.secondaries.edge_m = value)}
                {form.code("Primaries", items(store, Role::Primary), |of| &of.primary, |of, code| of.primary = code)}
                {form.code("Legs", items(store, Role::Leg), |of| &of.leg, |of, code| of.leg = code)}
                {form.code("Bases", items(store, Role::Base), |of| &of.base, |of, code| of.base = code)}
                {form.code("Diagonals", items(store, Role::Brace), |of| &of.brace, |of, code| of.brace = code)}
                {form.number("Bents apart", Unit::MM, |of| of.bents.max_m, |of, value| of.bents.max_m = value)}
                {form.number("First from bay end", Unit::MM, |of| of.bents.edge_m, |of, value| of.bents.edge_m = value)}
                {form.number("Legs held every", Unit::MM, |of| of.lift_m, |of, value| of.lift_m = value)}
                {form.choice("Held sideways by", &LATERAL, |of| of.lateral, |of, value| of.lateral = value)}
                {form.choice("Bases stand on", &BASES, on_slab, set_on_slab)}
                {move || slab.get().then(|| form.number("Its strength", Unit::of("MPa", 1), strength, set_strength))}
                {move || slab.get().then(|| form.toggle("Its age is known", |of| of.slab.is_some(), set_aged))}
                {move || (slab.get() && aged.get()).then(|| view! {
                    {form.number("Age on the day", Unit::of("days", 1), age_days, set_age_days)}
                    {hardening::fields(hardens, set_hardening)}
                }.into_any())}
                {apart.number("Leg lines apart", Unit::MM, |value| *value, |value, new| *value = new)}
                <button data-testid="respace-legs" on:click=respace>{t("Place leg lines anew")}</button>
            </div>
        }
        .into_any(),
    )
}

/// Several lines of legs.
pub fn leg_lines(store: Store, ids: Vec<Id>) -> Option<AnyView> {
    let find = |scheme: &Scheme, id: Id| {
        scheme.falsework.iter().flat_map(|of| &of.leg_lines).find(|line| line.id == id).copied()
    };
    let (values, _) = form_of(store, ids, find, |line: LegLine| Edit::ToggleBraced(line.id))?;
    let put = move |lines: Vec<LegLine>| {
        let was = values.get_untracked();
        let changed = lines.iter().zip(was).filter(|(line, was)| line.braced != was.braced);
        store.edit(Edit::Several(changed.map(|(line, _)| Edit::ToggleBraced(line.id)).collect()));
    };
    let brace = Form::of_several(values, put);
    let toggle = brace.toggle("Diagonals to the next", |line| line.braced, |line, value| line.braced = value);
    Some(view! { <div class="fields">{toggle}</div> }.into_any())
}

/// A line of legs.
pub fn leg_line(store: Store, id: Id) -> Option<AnyView> {
    let find =
        move |scheme: &Scheme| scheme.falsework.iter().flat_map(|of| &of.leg_lines).find(|line| line.id == id).copied();
    let (value, form) = form(store, find, |line: LegLine| Edit::MoveLegLine { line: line.id, x_m: line.x_m })?;
    let brace = Form::new(value, move |line: LegLine| store.edit(Edit::ToggleBraced(line.id)));
    let owner = move || {
        let scheme = store.scheme.get();
        scheme.falsework.iter().find(|of| of.leg_lines.iter().any(|line| line.id == id)).map(|of| of.id)
    };
    Some(
        view! {
            <div class="fields">
                {form.number("x", Unit::SPAN, |line| line.x_m, |line, value| line.x_m = value)}
                {brace.toggle("Diagonals to the next", |line| line.braced, |line, value| line.braced = value)}
                <button
                    class="wide"
                    data-testid="whole-falsework"
                    on:click=move |_| if let Some(id) = untrack(owner) {
                        store.select(id);
                    }
                >{t("Fields of the whole falsework")}</button>
            </div>
        }
        .into_any(),
    )
}

fn on_slab(of: &Falsework) -> bool {
    matches!(of.bearing, Bearing::Slab { .. })
}

fn set_on_slab(of: &mut Falsework, slab: bool) {
    if slab != on_slab(of) {
        of.bearing = if slab { Bearing::Slab { strength_mpa: STRENGTH_MPA } } else { Bearing::Ground };
    }
}

fn set_aged(of: &mut Falsework, known: bool) {
    let slab = of.slab.take().unwrap_or(SlabAge { age_days: 7.0, hardening: hardening::USUAL });
    of.slab = known.then_some(slab);
}

fn age_days(of: &Falsework) -> f64 {
    of.slab.as_ref().map_or(0.0, |slab| slab.age_days)
}

fn set_age_days(of: &mut Falsework, value: f64) {
    if let Some(slab) = &mut of.slab {
        slab.age_days = value;
    }
}

fn strength(of: &Falsework) -> f64 {
    match of.bearing {
        Bearing::Slab { strength_mpa } => strength_mpa,
        Bearing::Ground => STRENGTH_MPA,
    }
}

fn set_strength(of: &mut Falsework, value: f64) {
    of.bearing = Bearing::Slab { strength_mpa: value };
}
