use super::{Id, Scheme, TieEnd};
use crate::model::Role;

/// An item that an element is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Use<'a> {
    /// The shutter, row of ties, falsework or opening.
    pub element: Id,
    /// What the item does there. A row has [`Role::Prop`] where its far end is fixed, [`Role::Tie`] otherwise.
    pub role: Role,
    /// Code of the item.
    pub code: &'a str,
}

impl Scheme {
    /// Every item that an element names, element by element.
    pub fn uses(&self) -> Vec<Use<'_>> {
        let mut uses = Vec::new();
        let mut add = |element, role, code| uses.push(Use { element, role, code });
        for shutter in &self.shutters {
            add(shutter.id, Role::Facing, shutter.facing.as_str());
            add(shutter.id, Role::Secondary, &shutter.secondary);
            add(shutter.id, Role::Primary, &shutter.primary);
        }
        for row in &self.ties {
            let role = if matches!(row.to, TieEnd::Fixed { .. }) { Role::Prop } else { Role::Tie };
            add(row.id, role, &row.item);
        }
        for falsework in &self.falsework {
            add(falsework.id, Role::Facing, &falsework.facing);
            add(falsework.id, Role::Secondary, &falsework.secondary);
            add(falsework.id, Role::Primary, &falsework.primary);
            add(falsework.id, Role::Leg, &falsework.leg);
            add(falsework.id, Role::Base, &falsework.base);
            add(falsework.id, Role::Brace, &falsework.brace);
        }
        for opening in &self.openings {
            add(opening.id, Role::Transfer, &opening.transfer);
            add(opening.id, Role::Trestle, &opening.trestle);
        }
        uses
    }
}
