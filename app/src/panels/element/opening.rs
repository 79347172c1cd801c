use super::{form_of, items};
use crate::language::{t, told};
use crate::store::Store;
use crate::units;
use crate::widgets::Unit;
use falsewright_core::model::Role;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Id, Scheme};
use leptos::prelude::*;

/// A way kept open and what carries the falsework over it.
pub fn fields(store: Store, ids: Vec<Id>) -> Option<AnyView> {
    let find = |scheme: &Scheme, id: Id| scheme.openings.iter().find(|of| of.id == id).cloned();
    let (_, form) = form_of(store, ids.clone(), find, Edit::SetOpening)?;
    let one = if let [one] = ids.as_slice() { Some(*one) } else { None };
    let room = move || {
        let worked = store.settled.get();
        let room = worked.design.results.clearances.iter().find(|room| Some(room.opening) == one)?;
        Some(say!(
            "Measured {} clear {}, and {} clear below {}.",
            units::size(room.width_m),
            told(&room.width_between),
            units::size(room.height_m),
            told(&room.height_below)
        ))
    };
    Some(
        view! {
            <div class="fields">
                <p class="wide" data-testid="room">{move || room()}</p>
                {form.number("Clear width", Unit::SPAN, |of| of.width_m, |of, value| of.width_m = value)}
                {form.number("Clear height", Unit::SPAN, |of| of.height_m, |of, value| of.height_m = value)}
                {one.map(|_| form.number("Left edge x", Unit::SPAN, |of| of.left_m, |of, value| of.left_m = value))}
                {one.map(|_| form.optional("Width built", Unit::SPAN, |of| of.built_width_m, |of, value| of.built_width_m = value))}
                {one.map(|_| form.optional("Height built", Unit::SPAN, |of| of.built_height_m, |of, value| of.built_height_m = value))}
                {form.number("Guard each side", Unit::MM, |of| of.guard_m, |of, value| of.guard_m = value)}
                {form.code("Transfer beams", items(store, Role::Transfer), |of| &of.transfer, |of, code| of.transfer = code)}
                {form.number("Side by side", Unit::NONE, |of| f64::from(of.transfers), |of, value| of.transfers = value.round().clamp(0.0, 99.0) as u32)}
                {form.number("Beam underside", Unit::SPAN, |of| of.beam_underside_m, |of, value| of.beam_underside_m = value)}
                {form.toggle("Restrained between ends", |of| of.restraint_m.is_some(), |of, held| of.restraint_m = held.then_some(of.restraint_m.unwrap_or(1.2)))}
                {form.number("Restraints apart", Unit::MM, |of| of.restraint_m.unwrap_or(0.0), |of, value| of.restraint_m = Some(value).filter(|apart| *apart > 0.0))}
                {form.code("Trestle legs", items(store, Role::Trestle), |of| &of.trestle, |of, code| of.trestle = code)}
                {form.number("Trestle legs apart", Unit::MM, |of| of.trestle_m, |of, value| of.trestle_m = value)}
                <p class="wide quiet">
                    {t("Guard the way against impact, mark its height ahead of it, post a banksman, and follow local rules for people below a loaded soffit.")}
                </p>
            </div>
        }
        .into_any(),
    )
}
