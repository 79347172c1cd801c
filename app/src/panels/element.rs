//! The fields of the selected element.

mod concrete;
mod falsework;
mod opening;
mod several;
mod shutter;
mod swing;
mod ties;
mod used;

use super::checks::ChecksOf;
use super::unfolding::Opened;
use crate::editor::Target;
use crate::language::{look_up, t};
use crate::memo::Memo;
use crate::store::Store;
use crate::widgets::Form;
use falsewright_core::catalogue::{Item, Origin};
use falsewright_core::model::Role;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Id, Scheme};
use leptos::prelude::*;
use several::Actions;

/// What is selected, its fields and its checks.
#[component]
pub fn Element() -> impl IntoView {
    let store = Store::here();
    let chosen = Memo::new(move |_| selected(store));
    move || {
        let chosen = chosen.get();
        let target = match chosen.as_slice() {
            [] => return None,
            [one] => *one,
            all => return Some(several::panel(store, all)),
        };
        let fields = match target {
            Target::Corner(id) | Target::Cut(id) | Target::Haunch(id) => concrete::corner(store, id),
            Target::Face(face) => concrete::face(store, face),
            Target::Joint(id) => concrete::joint(store, id),
            Target::Shutter(id) | Target::ShutterEnd(id, _) | Target::Hinge(id) | Target::Swing(id) => {
                shutter::fields(store, vec![id])
            }
            Target::TieRow(id) => ties::fields(store, vec![id]),
            Target::Falsework(id) => falsework::fields(store, vec![id]),
            Target::LegLine(id) => falsework::leg_line(store, id),
            Target::Opening(id) | Target::OpeningEdge(id, _) | Target::Transfer(id) => opening::fields(store, vec![id]),
            Target::EdgeEnd { .. } | Target::EdgeMiddle(_) | Target::Dimension(_) => return None,
        }?;
        let element = target.element();
        let opened = Opened::default();
        let title = move || title(store, &target);
        Some(view! {
            <section class="element" aria-label=t("Selected element") data-testid="element">
                <header>
                    <h2>{move || title()}</h2>
                    <button aria-label=t("Close") data-testid="close" on:click=move |_| store.run(|editor| editor.select(None))>"✕"</button>
                </header>
                <Actions/>
                {fields}
                {element.map(|element| view! { <used::ItemsUsed element/> }.into_any())}
                {move || element.map(|id| checks(store, id, opened))}
            </section>
        }
        .into_any())
    }
}

/// All that is selected, but dimensions.
pub fn selected(store: Store) -> Vec<Target> {
    store.chosen.get().into_iter().filter(|target| !matches!(target, Target::Dimension(_))).collect()
}

/// The mark of what is selected, or its kind.
pub fn mark(store: Store, target: &Target) -> String {
    let title = title(store, target);
    title
        .rsplit(' ')
        .next()
        .filter(|word| word.chars().any(|c| c.is_ascii_digit()))
        .map_or(title.clone(), str::to_owned)
}

fn checks(store: Store, id: Id, opened: Opened) -> impl IntoView {
    let worked = store.settled.get();
    let checks: Vec<_> = worked.design.results.checks.iter().filter(|check| check.owner == id).cloned().collect();
    (!checks.is_empty()).then(|| view! { <ChecksOf checks opened/> }.into_any())
}

/// The name of a target: its mark if it has one.
pub fn title(store: Store, target: &Target) -> String {
    let worked = store.settled.get();
    let named = target.element().and_then(|id| crate::canvas::paint::name_of(&worked.design.model, id));
    named.unwrap_or_else(|| {
        match target {
            Target::Corner(_) => t("Corner"),
            Target::EdgeEnd { .. } | Target::EdgeMiddle(_) => t("Edge"),
            Target::Cut(_) | Target::Haunch(_) => t("Haunch or chamfer"),
            Target::Face(_) => t("Face"),
            Target::Joint(_) => t("Construction joint"),
            Target::Shutter(_) | Target::ShutterEnd(..) | Target::Hinge(_) | Target::Swing(_) => t("Wall shutter"),
            Target::TieRow(_) => t("Row of ties"),
            Target::Falsework(_) => t("Soffit falsework"),
            Target::LegLine(_) => t("Line of legs"),
            Target::Opening(_) | Target::OpeningEdge(..) | Target::Transfer(_) => t("Access opening"),
            Target::Dimension(_) => t("Dimension"),
        }
        .to_owned()
    })
}

/// A form on an element of the scheme; none if it is not there. It keeps its last value when the element goes.
fn form<T: Clone + PartialEq + Send + Sync + 'static>(
    store: Store,
    find: impl Fn(&Scheme) -> Option<T> + Send + Sync + 'static,
    edit: impl Fn(T) -> Edit + Send + Sync + 'static,
) -> Option<(Memo<T>, Form<T>)> {
    let first = store.scheme.with_untracked(|scheme| find(scheme))?;
    let value = Memo::new(move |last: Option<&T>| {
        let found = store.scheme.with(|scheme| find(scheme));
        found.unwrap_or_else(|| last.unwrap_or(&first).clone())
    });
    Some((value, Form::new(value, move |value| store.edit(edit(value)))))
}

/// A form on several elements alike; none if one is not there. It keeps its last values when one goes.
fn form_of<T: Clone + PartialEq + Send + Sync + 'static>(
    store: Store,
    ids: Vec<Id>,
    find: impl Fn(&Scheme, Id) -> Option<T> + Send + Sync + 'static,
    edit: impl Fn(T) -> Edit + Send + Sync + 'static,
) -> Option<(Memo<Vec<T>>, Form<T>)> {
    let find = move |scheme: &Scheme| ids.iter().map(|id| find(scheme, *id)).collect::<Option<Vec<T>>>();
    let first = store.scheme.with_untracked(|scheme| find(scheme))?;
    let values = Memo::new(move |last: Option<&Vec<T>>| {
        let found = store.scheme.with(|scheme| find(scheme));
        found.unwrap_or_else(|| last.unwrap_or(&first).clone())
    });
    let put = move |values: Vec<T>| edit_all(store, values.into_iter().map(&edit).collect());
    Some((values, Form::of_several(values, put)))
}

/// Several edits as one step.
fn edit_all(store: Store, mut edits: Vec<Edit>) {
    let edit = if edits.len() == 1 { edits.pop() } else { Some(Edit::Several(edits)) };
    edit.into_iter().for_each(|edit| store.edit(edit));
}

/// Codes and names of the items that can take a role.
fn items(store: Store, role: Role) -> Memo<Vec<(String, String)>> {
    Memo::new(move |_| {
        store.catalogue.with(|catalogue| {
            let named = |item: &Item| {
                let origin = t(catalogue.origin(&item.code).map_or("", Origin::words));
                (item.code.clone(), format!("{}{origin}", look_up(&item.name).unwrap_or(&item.name)))
            };
            catalogue.choices(role).into_iter().map(named).collect()
        })
    })
}
