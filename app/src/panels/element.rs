//! The fields of the selected element.

mod concrete;
mod falsework;
mod opening;
mod shutter;
mod ties;
mod used;

use super::checks::ChecksOf;
use crate::editor::Target;
use crate::store::Store;
use crate::widgets::Form;
use falsewright_core::catalogue::{Item, Origin};
use falsewright_core::model::Role;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Id, Scheme};
use leptos::prelude::*;

/// What is selected, its fields and its checks.
#[component]
pub fn Element() -> impl IntoView {
    let store = Store::here();
    let target = Memo::new(move |_| selected(store));
    move || {
        let target = target.get()?;
        let fields = match target {
            Target::Corner(id) | Target::Cut(id) | Target::Haunch(id) => concrete::corner(store, id),
            Target::Face(face) => concrete::face(store, face),
            Target::Joint(id) => concrete::joint(store, id),
            Target::Shutter(id) | Target::ShutterEnd(id, _) => shutter::fields(store, id),
            Target::TieRow(id) => ties::fields(store, id),
            Target::Falsework(id) => falsework::fields(store, id),
            Target::LegLine(id) => falsework::leg_line(store, id),
            Target::Opening(id) | Target::OpeningEdge(id, _) | Target::Transfer(id) => opening::fields(store, id),
            Target::EdgeEnd { .. } | Target::EdgeMiddle(_) | Target::Dimension(_) => return None,
        }?;
        let element = target.element();
        let title = move || title(store, &target);
        let removable = !matches!(target, Target::Face(_));
        Some(view! {
            <section class="element" aria-label="Selected element" data-testid="element">
                <header>
                    <h2>{title}</h2>
                    {removable.then(|| view! {
                        <button
                            data-testid="remove"
                            on:click=move |_| if let Some(id) = element {
                                store.edit(Edit::Remove(id));
                            }
                        >"Remove"</button>
                    })}
                    <button aria-label="Close" data-testid="close" on:click=move |_| store.run(|editor| editor.select(None))>"✕"</button>
                </header>
                {fields}
                {element.map(|element| view! { <used::ItemsUsed element/> })}
                {move || element.map(|id| checks(store, id))}
            </section>
        })
    }
}

/// What is selected, unless it is a dimension.
pub fn selected(store: Store) -> Option<Target> {
    store.selection.get().filter(|target| !matches!(target, Target::Dimension(_)))
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

fn checks(store: Store, id: Id) -> impl IntoView {
    let worked = store.settled.get();
    let checks: Vec<_> = worked.design.results.checks.iter().filter(|check| check.owner == id).cloned().collect();
    (!checks.is_empty()).then(|| view! { <ChecksOf checks/> })
}

fn title(store: Store, target: &Target) -> String {
    let worked = store.settled.get();
    let named = target.element().and_then(|id| crate::canvas::paint::name_of(&worked.design.model, id));
    named.unwrap_or_else(|| {
        match target {
            Target::Corner(_) => "Corner",
            Target::EdgeEnd { .. } | Target::EdgeMiddle(_) => "Edge",
            Target::Cut(_) | Target::Haunch(_) => "Haunch or chamfer",
            Target::Face(_) => "Face",
            Target::Joint(_) => "Construction joint",
            Target::Shutter(_) | Target::ShutterEnd(..) => "Wall shutter",
            Target::TieRow(_) => "Row of ties",
            Target::Falsework(_) => "Soffit falsework",
            Target::LegLine(_) => "Line of legs",
            Target::Opening(_) | Target::OpeningEdge(..) | Target::Transfer(_) => "Access opening",
            Target::Dimension(_) => "Dimension",
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

/// Codes and names of the items that can take a role.
fn items(store: Store, role: Role) -> Memo<Vec<(String, String)>> {
    Memo::new(move |_| {
        store.catalogue.with(|catalogue| {
            let named = |item: &Item| {
                let origin = catalogue.origin(&item.code).map_or("", Origin::words);
                (item.code.clone(), format!("{}{origin}", item.name))
            };
            catalogue.choices(role).into_iter().map(named).collect()
        })
    })
}
