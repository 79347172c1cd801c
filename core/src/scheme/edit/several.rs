//! Several elements at once.

use super::{EditError, follow, outline};
use crate::geometry::Point;
use crate::scheme::{Id, Scheme};
use std::collections::BTreeSet;

/// Removes elements; one that went with another is not missed. All corners of a ring take the ring with them, those of
/// the outline the whole section.
pub(super) fn remove_all(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let known: BTreeSet<Id> = scheme.ids().collect();
    if let Some(&id) = ids.iter().find(|id| !known.contains(id)) {
        return Err(EditError::Missing { what: "element", id });
    }
    let section = &mut scheme.section;
    section.cells.retain(|cell| !cell.corners.iter().all(|corner| ids.contains(&corner.id)));
    if section.outline.iter().all(|corner| ids.contains(&corner.id)) {
        section.outline.clear();
        section.cells.clear();
        section.joints.clear();
    }
    for &id in ids {
        let here: BTreeSet<Id> = scheme.ids().collect();
        if here.contains(&id) && !outline::remove(&mut scheme.section, id)? {
            super::remove_placed(scheme, id);
        }
    }
    follow::drop_orphans(scheme);
    Ok(())
}

/// Moves corners and joints to new places, all in one.
pub(super) fn move_section(
    scheme: &mut Scheme,
    corners: &[(Id, Point)],
    joints: &[(Id, f64)],
) -> Result<(), EditError> {
    for (corner, to) in corners {
        outline::move_corner(scheme, *corner, *to)?;
    }
    for (joint, z_m) in joints {
        outline::move_joint(scheme, *joint, *z_m)?;
    }
    Ok(())
}
