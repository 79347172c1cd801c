use super::{form_of, items};
use crate::store::Store;
use crate::widgets::Unit;
use falsewright_core::model::Role;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Arrangement, Id, Scheme, TieEnd, TieRow};
use leptos::prelude::*;

/// Rows of ties or props.
pub fn fields(store: Store, ids: Vec<Id>) -> Option<AnyView> {
    let find = |scheme: &Scheme, id: Id| scheme.ties.iter().find(|row| row.id == id).cloned();
    let (values, form) = form_of(store, ids.clone(), find, Edit::SetTieRow)?;
    let walings = Memo::new(move |_| {
        let scheme = store.scheme.get();
        let level =
            |id: Id| scheme.shutters.iter().any(|of| of.id == id && of.arrangement == Arrangement::LevelPrimaries);
        values.with(|rows| rows.iter().all(|row| level(row.shutter)))
    });
    let across_concrete = |id: &Id| {
        store.worked.with_untracked(|worked| {
            worked.design.model.parts.iter().any(|part| part.owner == *id && part.role == Role::Tie)
        })
    };
    let ties = ids.iter().filter(|id| across_concrete(id)).count();
    let role = if ties > 0 { Role::Tie } else { Role::Prop };
    let one_role = ties == 0 || ties == ids.len();
    let fixed = Memo::new(move |_| values.with(|rows| rows.iter().all(|row| matches!(row.to, TieEnd::Fixed { .. }))));
    Some(
        view! {
            <div class="fields">
                {one_role.then(|| form.code("Item", items(store, role), |row| &row.item, |row, code| row.item = code))}
                {form.number("Level", Unit::MM, |row| row.z_m, |row, value| row.z_m = value)}
                {move || walings.get().then(|| view! {
                    {form.number("Apart along the bay", Unit::MM, |row| row.spacing.max_m, |row, value| row.spacing.max_m = value)}
                    {form.number("First from bay end", Unit::MM, |row| row.spacing.edge_m, |row, value| row.spacing.edge_m = value)}
                })}
                {move || fixed.get().then(|| form.number("Length", Unit::MM, length, set_length))}
                {move || (!walings.get()).then(|| view! {
                    <p class="quiet wide">"One at each upright primary of its shutter."</p>
                })}
            </div>
        }
        .into_any(),
    )
}

fn length(row: &TieRow) -> f64 {
    match row.to {
        TieEnd::Fixed { length_m } => length_m,
        TieEnd::Shutter { .. } => 0.0,
    }
}

fn set_length(row: &mut TieRow, value: f64) {
    if let TieEnd::Fixed { length_m } = &mut row.to {
        *length_m = value;
    }
}
