//! What edits are called in the history, and what went with them.

use crate::language::{key, t};
use falsewright_core::scheme::Scheme;
use falsewright_core::scheme::edit::{Align, Edit};

/// Names a step of the history.
pub fn label(edit: &Edit) -> &'static str {
    match edit {
        Edit::SetSection(_) => key("Draw section"),
        Edit::AddCorner { .. } => key("Add corner"),
        Edit::MoveCorner { .. } => key("Move corner"),
        Edit::MoveEdge { .. } => key("Move edge"),
        Edit::SetLength { .. } => key("Type length"),
        Edit::SetCut { .. } => key("Change haunch"),
        Edit::AddCell(_) => key("Draw cell"),
        Edit::Reshape { .. } => key("Reshape edge"),
        Edit::CarryEdge { .. } => key("Type length"),
        Edit::AddJoint { .. } => key("Add joint"),
        Edit::MoveJoint { .. } => key("Move joint"),
        Edit::Remove(_) | Edit::RemoveAll(_) => key("Remove"),
        Edit::MoveSection { .. } => key("Move section"),
        Edit::Duplicate(_) => key("Duplicate"),
        Edit::Mirror(_) => key("Mirror"),
        Edit::Opposite(_) => key("Copy to the opposite face"),
        Edit::Align { how: Align::Level, .. } => key("Bring to the same level"),
        Edit::Align { how: Align::Spacing, .. } => key("Give the same spacing"),
        Edit::Align { how: Align::Apart, .. } => key("Space equally"),
        Edit::Paste { .. } => key("Paste"),
        Edit::Several(edits) => edits.last().map_or(key("Change"), label),
        Edit::AddShutter(_) => key("Add shutter"),
        Edit::AddShutters { .. } => key("Add shutters"),
        Edit::HoldShutters => key("Add ties and props"),
        Edit::MoveShutterEnds { .. } | Edit::SetShutter(_) => key("Change shutter"),
        Edit::AddTieRow { .. } => key("Add row of ties"),
        Edit::AddProp { .. } => key("Add row of props"),
        Edit::AddTieRows { .. } => key("Space rows of ties"),
        Edit::MoveTieRow { .. } => key("Move row of ties"),
        Edit::SetTieItem { .. } | Edit::SetTieRow(_) => key("Change row of ties"),
        Edit::AddFalsework(_) => key("Add falsework"),
        Edit::SetFalsework(_) => key("Change falsework"),
        Edit::AddLegLine { .. } => key("Add leg line"),
        Edit::MoveLegLine { .. } => key("Move leg line"),
        Edit::RespaceLegLines { .. } => key("Space leg lines"),
        Edit::ToggleBraced(_) => key("Change bracing"),
        Edit::AddOpening { .. } => key("Add opening"),
        Edit::MoveOpening { .. } => key("Move opening"),
        Edit::ResizeOpening { .. } | Edit::SetOpening(_) => key("Change opening"),
        Edit::SetName(_) | Edit::SetOption(_) => key("Rename"),
        Edit::SetRevision(_) => key("Change the revision"),
        Edit::SetConcrete(_) => key("Change concrete"),
        Edit::SetBasis(_) => key("Change basis"),
        Edit::SetBays(_) => key("Change bays"),
        Edit::SetLoads(_) => key("Change loads"),
        Edit::SetLimits(_) => key("Change limits"),
        Edit::SetGround(_) => key("Change ground"),
        Edit::SetStriking(_) => key("Set the striking"),
        Edit::SetMoving(_) => key("Set how bays are moved"),
        Edit::SetStock(_) => key("Set the stock lengths"),
        Edit::SetProgramme(_) => key("Set the programme"),
        Edit::SetItem(_) => key("Change item"),
        Edit::SetItems(_) => key("Import items"),
        Edit::UseItem { .. } => key("Choose item"),
        Edit::RemoveItem(_) => key("Remove item"),
    }
}

/// Says what a change of the section took away with it; nothing for any other edit.
pub fn lost(edit: &Edit, before: &Scheme, after: &Scheme) -> Option<String> {
    if respaces(edit) {
        return None;
    }
    let lines = |scheme: &Scheme| scheme.falsework.iter().map(|falsework| falsework.leg_lines.len()).sum();
    let counts = |scheme: &Scheme| {
        [
            (scheme.shutters.len(), key("shutter"), key("shutters")),
            (scheme.ties.len(), key("row of ties"), key("rows of ties")),
            (scheme.falsework.len(), key("falsework"), key("falseworks")),
            (lines(scheme), key("leg line"), key("leg lines")),
            (scheme.openings.len(), key("opening"), key("openings")),
        ]
    };
    let gone: Vec<String> = counts(before)
        .into_iter()
        .zip(counts(after))
        .filter(|(was, is)| is.0 < was.0)
        .map(|((was, one, many), (is, ..))| match was - is {
            1 => format!("1 {}", t(one)),
            count => format!("{count} {}", t(many)),
        })
        .collect();
    if let Edit::RemoveAll(ids) = edit {
        let count = |scheme: &Scheme| counts(scheme).iter().map(|(count, ..)| *count).sum::<usize>();
        let more = count(before).saturating_sub(count(after)) > ids.len();
        return more.then(|| say!("Removed in all: {}.", gone.join(", ")));
    }
    let itself = matches!(edit, Edit::Remove(_)) && gone.len() == 1 && gone[0].starts_with("1 ");
    (!gone.is_empty() && !itself).then(|| say!("Removed with it: {}.", gone.join(", ")))
}

/// Whether rows or lines are placed anew, so that there may be fewer.
fn respaces(edit: &Edit) -> bool {
    match edit {
        Edit::AddTieRows { .. } | Edit::RespaceLegLines { .. } | Edit::AddFalsework(_) => true,
        Edit::AddOpening { .. } | Edit::MoveOpening { .. } | Edit::ResizeOpening { .. } | Edit::SetOpening(_) => true,
        Edit::Several(edits) => edits.iter().all(respaces),
        _ => false,
    }
}
