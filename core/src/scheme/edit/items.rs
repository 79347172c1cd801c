use super::EditError;
use crate::catalogue::Item;
use crate::model::Role;
use crate::scheme::{Id, Scheme};

pub(super) fn set(scheme: &mut Scheme, item: &Item) -> Result<(), EditError> {
    if let Some(fault) = item.fault() {
        return Err(fault.into());
    }
    match scheme.items.iter_mut().find(|own| own.code == item.code) {
        Some(own) => own.clone_from(item),
        None => scheme.items.push(item.clone()),
    }
    Ok(())
}

pub(super) fn set_all(scheme: &mut Scheme, items: &[Item]) -> Result<(), EditError> {
    if let Some(fault) = items.iter().filter(|item| !scheme.items.contains(item)).find_map(Item::fault) {
        return Err(fault.into());
    }
    scheme.items = items.to_vec();
    Ok(())
}

pub(super) fn remove(scheme: &mut Scheme, code: &str) -> Result<(), EditError> {
    let at = scheme.items.iter().position(|item| item.code == code);
    scheme.items.remove(at.ok_or_else(|| EditError::MissingItem(code.to_owned()))?);
    Ok(())
}

pub(super) fn make_of(scheme: &mut Scheme, element: Id, role: Role, item: &Item) -> Result<(), EditError> {
    set(scheme, item)?;
    code_of(scheme, element, role).ok_or(EditError::NoSuchPart { element, role })?.clone_from(&item.code);
    Ok(())
}

fn code_of(scheme: &mut Scheme, element: Id, role: Role) -> Option<&mut String> {
    let Scheme { shutters, ties, falsework, openings, .. } = scheme;
    if let Some(shutter) = shutters.iter_mut().find(|of| of.id == element) {
        return match role {
            Role::Facing => Some(&mut shutter.facing),
            Role::Secondary => Some(&mut shutter.secondary),
            Role::Primary => Some(&mut shutter.primary),
            _ => None,
        };
    }
    if let Some(row) = ties.iter_mut().find(|of| of.id == element) {
        return matches!(role, Role::Tie | Role::Prop).then_some(&mut row.item);
    }
    if let Some(falsework) = falsework.iter_mut().find(|of| of.id == element) {
        return match role {
            Role::Facing => Some(&mut falsework.facing),
            Role::Secondary => Some(&mut falsework.secondary),
            Role::Primary => Some(&mut falsework.primary),
            Role::Leg => Some(&mut falsework.leg),
            Role::Base => Some(&mut falsework.base),
            Role::Brace => Some(&mut falsework.brace),
            _ => None,
        };
    }
    let opening = openings.iter_mut().find(|of| of.id == element)?;
    match role {
        Role::Transfer => Some(&mut opening.transfer),
        Role::Trestle => Some(&mut opening.trestle),
        _ => None,
    }
}
