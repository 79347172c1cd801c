//! What edits are called in the history, and what went with them.

use falsewright_core::scheme::Scheme;
use falsewright_core::scheme::edit::{Align, Edit};

/// Names a step of the history.
pub fn label(edit: &Edit) -> &'static str {
    match edit {
        Edit::SetSection(_) => "Draw section",
        Edit::AddCorner { .. } => "Add corner",
        Edit::MoveCorner { .. } => "Move corner",
        Edit::MoveEdge { .. } => "Move edge",
        Edit::SetLength { .. } => "Type length",
        Edit::SetCut { .. } => "Change haunch",
        Edit::AddCell(_) => "Draw cell",
        Edit::Reshape { .. } => "Reshape edge",
        Edit::CarryEdge { .. } => "Type length",
        Edit::AddJoint { .. } => "Add joint",
        Edit::MoveJoint { .. } => "Move joint",
        Edit::Remove(_) | Edit::RemoveAll(_) => "Remove",
        Edit::MoveSection { .. } => "Move section",
        Edit::Duplicate(_) => "Duplicate",
        Edit::Mirror(_) => "Mirror",
        Edit::Opposite(_) => "Copy to the opposite face",
        Edit::Align { how: Align::Level, .. } => "Bring to the same level",
        Edit::Align { how: Align::Spacing, .. } => "Give the same spacing",
        Edit::Align { how: Align::Apart, .. } => "Space equally",
        Edit::Paste { .. } => "Paste",
        Edit::Several(edits) => edits.last().map_or("Change", label),
        Edit::AddShutter(_) => "Add shutter",
        Edit::AddShutters { .. } => "Add shutters",
        Edit::HoldShutters => "Add ties and props",
        Edit::MoveShutterEnds { .. } | Edit::SetShutter(_) => "Change shutter",
        Edit::AddTieRow { .. } => "Add row of ties",
        Edit::AddProp { .. } => "Add row of props",
        Edit::AddTieRows { .. } => "Space rows of ties",
        Edit::MoveTieRow { .. } => "Move row of ties",
        Edit::SetTieItem { .. } | Edit::SetTieRow(_) => "Change row of ties",
        Edit::AddFalsework(_) => "Add falsework",
        Edit::SetFalsework(_) => "Change falsework",
        Edit::AddLegLine { .. } => "Add leg line",
        Edit::MoveLegLine { .. } => "Move leg line",
        Edit::RespaceLegLines { .. } => "Space leg lines",
        Edit::ToggleBraced(_) => "Change bracing",
        Edit::AddOpening { .. } => "Add opening",
        Edit::MoveOpening { .. } => "Move opening",
        Edit::ResizeOpening { .. } | Edit::SetOpening(_) => "Change opening",
        Edit::SetName(_) => "Rename",
        Edit::SetConcrete(_) => "Change concrete",
        Edit::SetBasis(_) => "Change basis",
        Edit::SetBays(_) => "Change bays",
        Edit::SetLoads(_) => "Change loads",
        Edit::SetLimits(_) => "Change limits",
        Edit::SetGround(_) => "Change ground",
        Edit::SetStriking(_) => "Set the striking",
        Edit::SetItem(_) => "Change item",
        Edit::SetItems(_) => "Import items",
        Edit::UseItem { .. } => "Choose item",
        Edit::RemoveItem(_) => "Remove item",
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
            (scheme.shutters.len(), "shutter", "shutters"),
            (scheme.ties.len(), "row of ties", "rows of ties"),
            (scheme.falsework.len(), "falsework", "falseworks"),
            (lines(scheme), "leg line", "leg lines"),
            (scheme.openings.len(), "opening", "openings"),
        ]
    };
    let gone: Vec<String> = counts(before)
        .into_iter()
        .zip(counts(after))
        .filter(|(was, is)| is.0 < was.0)
        .map(|((was, one, many), (is, ..))| match was - is {
            1 => format!("1 {one}"),
            count => format!("{count} {many}"),
        })
        .collect();
    if let Edit::RemoveAll(ids) = edit {
        let count = |scheme: &Scheme| counts(scheme).iter().map(|(count, ..)| *count).sum::<usize>();
        let more = count(before).saturating_sub(count(after)) > ids.len();
        return more.then(|| format!("Removed in all: {}.", gone.join(", ")));
    }
    let itself = matches!(edit, Edit::Remove(_)) && gone.len() == 1 && gone[0].starts_with("1 ");
    (!gone.is_empty() && !itself).then(|| format!("Removed with it: {}.", gone.join(", ")))
}

/// Whether rows or lines are placed anew, so that there may be fewer.
fn respaces(edit: &Edit) -> bool {
    match edit {
        Edit::AddTieRows { .. } | Edit::RespaceLegLines { .. } | Edit::AddFalsework(_) => true,
        Edit::Several(edits) => edits.iter().all(respaces),
        _ => false,
    }
}
