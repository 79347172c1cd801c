use super::{Id, Spacing};
use serde::{Deserialize, Serialize};

/// Rows of ties of a shutter, or lines of legs of falsework, that stand regularly over its height or width and go on
/// doing so when that changes. One that is moved on purpose stands fixed from then on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Repeat {
    /// The shutter or falsework.
    pub of: Id,
    /// Where they stand.
    pub spacing: Spacing,
    /// Those that stand regularly.
    pub members: Vec<Id>,
    /// Those that were moved on purpose.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub moved: Vec<Moved>,
    /// Lines of legs leave room for the trestles of a way through the falsework, and begin anew beside them.
    #[serde(default, skip_serializing_if = "is_false")]
    pub around_way: bool,
}

fn is_false(value: &bool) -> bool {
    !value
}

/// One that no longer stands regularly.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Moved {
    /// The row or line.
    pub id: Id,
    /// Its regular place, which stays free, as a part of the whole height or width: 0 to 1.
    pub at: f64,
}
