use super::{form_of, items};
use crate::language::{key, t};
use crate::memo::Memo;
use crate::store::Store;
use crate::widgets::{Form, Unit};
use falsewright_core::model::Role;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Arrangement, CastAnchor, FixedEnd, HeldBy, Id, Scheme, TieEnd, TieRow};
use leptos::prelude::*;

/// What holds a fixed end, without its values.
#[derive(Clone, Copy, PartialEq)]
enum End {
    Untold,
    Thrust,
    Kentledge,
    Anchor,
}

const ENDS: [(End, &str); 4] = [
    (End::Untold, key("not told")),
    (End::Thrust, key("strong thrust")),
    (End::Kentledge, key("kentledge")),
    (End::Anchor, key("cast anchor")),
];

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
    let same_end = Memo::new(move |_| {
        values.with(|rows| {
            let first = end(rows.first()?);
            rows.iter().all(|row| end(row) == first).then_some(first)
        })
    });
    Some(
        view! {
            <div class="fields">
                {one_role.then(|| form.code("Item", items(store, role), |row| &row.item, |row, code| row.item = code))}
                {form.number("Level", Unit::SPAN, |row| row.z_m, |row, value| row.z_m = value)}
                {move || walings.get().then(|| view! {
                    {form.number("Apart along the bay", Unit::MM, |row| row.spacing.max_m, |row, value| row.spacing.max_m = value)}
                    {form.number("First from bay end", Unit::MM, |row| row.spacing.edge_m, |row, value| row.spacing.edge_m = value)}
                }.into_any())}
                {move || fixed.get().then(|| view! {
                    {form.number("Length", Unit::SPAN, length, set_length)}
                    {(ties == 0).then(|| form.number("Foot below row", Unit::MM, below, set_below))}
                    {form.choice("Fixed end", &ENDS, end, set_end)}
                    {move || same_end.get().map(|end| end_fields(end, form))}
                }.into_any())}
                {move || (!walings.get()).then(|| view! {
                    <p class="quiet wide">{t("One at each upright primary of its shutter.")}</p>
                }.into_any())}
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

fn below(row: &TieRow) -> f64 {
    row.held.map_or(0.0, |held| held.below_m)
}

fn set_below(row: &mut TieRow, value: f64) {
    let by = row.held.map_or(HeldBy::Thrust, |held| held.by);
    row.held = Some(FixedEnd { below_m: value, by });
}

fn end(row: &TieRow) -> End {
    match row.held.map(|held| held.by) {
        None => End::Untold,
        Some(HeldBy::Thrust) => End::Thrust,
        Some(HeldBy::Kentledge { .. }) => End::Kentledge,
        Some(HeldBy::Anchor(_)) => End::Anchor,
    }
}

fn set_end(row: &mut TieRow, chosen: End) {
    if chosen == end(row) {
        return;
    }
    let below_m = below(row);
    let by = match chosen {
        End::Untold => None,
        End::Thrust => Some(HeldBy::Thrust),
        End::Kentledge => Some(HeldBy::Kentledge { weight_kn: 10.0, friction: 0.4 }),
        End::Anchor => Some(HeldBy::Anchor(CastAnchor {
            depth_m: 0.15,
            head_m: 0.04,
            rod_m: 0.02,
            edge_m: 0.3,
            strength_mpa: 15.0,
        })),
    };
    row.held = by.map(|by| FixedEnd { below_m, by });
}

/// The values of what holds a fixed end; a change to one that no longer applies does nothing.
fn end_fields(end: End, form: Form<TieRow>) -> AnyView {
    macro_rules! block {
        ($label:expr, $unit:expr, $field:ident) => {
            form.number(
                $label,
                $unit,
                |row| match row.held.map(|held| held.by) {
                    Some(HeldBy::Kentledge { $field, .. }) => $field,
                    _ => 0.0,
                },
                |row, value| {
                    if let Some(FixedEnd { by: HeldBy::Kentledge { $field, .. }, .. }) = &mut row.held {
                        *$field = value;
                    }
                },
            )
        };
    }
    macro_rules! cast {
        ($label:expr, $unit:expr, $field:ident) => {
            form.number(
                $label,
                $unit,
                |row| match row.held.map(|held| held.by) {
                    Some(HeldBy::Anchor(anchor)) => anchor.$field,
                    _ => 0.0,
                },
                |row, value| {
                    if let Some(FixedEnd { by: HeldBy::Anchor(anchor), .. }) = &mut row.held {
                        anchor.$field = value;
                    }
                },
            )
        };
    }
    match end {
        End::Untold | End::Thrust => ().into_any(),
        End::Kentledge => view! {
            {block!(key("Block at each"), Unit::of("kN", 1), weight_kn)}
            {block!(key("Friction under it"), Unit::of("", 2), friction)}
        }
        .into_any(),
        End::Anchor => view! {
            {cast!(key("Anchor depth"), Unit::FINE, depth_m)}
            {cast!(key("Anchor head"), Unit::FINE, head_m)}
            {cast!(key("Anchor rod"), Unit::FINE, rod_m)}
            {cast!(key("To concrete edge"), Unit::FINE, edge_m)}
            {cast!(key("Concrete when pulled"), Unit::of("MPa", 1), strength_mpa)}
        }
        .into_any(),
    }
}
