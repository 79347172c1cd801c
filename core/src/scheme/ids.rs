use serde::{Deserialize, Serialize};
use std::fmt;

/// Names one element of a scheme for as long as it lives.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Id(pub u32);

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{}", self.0)
    }
}

/// Names a face by what it stems from, so that it keeps its shutter while the section is edited.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FaceRef {
    /// The corner where the edge starts, as listed in its ring.
    pub corner: Id,
    /// Whether the face is the corner's own haunch or chamfer rather than the edge after it.
    #[serde(default)]
    pub cut: bool,
    /// The joint below the pour; [`FaceRef::LOWEST`] for the lowest pour.
    pub pour: Id,
}

impl FaceRef {
    /// Stands for the pour below the lowest joint.
    pub const LOWEST: Id = Id(0);
}
