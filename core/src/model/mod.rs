//! The scheme put together: faces, pours and every placed item, each with its place. Data only.

mod concrete;
mod jacks;
mod part;
mod placed;

pub use concrete::{Face, FaceKind, Pour};
pub use jacks::PlacedJacks;
pub use part::{Part, Role, Solid, TOUCHING_M};
pub use placed::{BracingBar, Leg, LegKind, PlacedFalsework, PlacedOpening, PlacedShutter, PlacedTieRow};

use crate::geometry::Boundary;
use crate::scheme::Id;

/// All that is placed, for drawing, computing and counting alike.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Model {
    /// Length of a bay.
    pub bay_m: f64,
    /// All concrete of the section.
    pub solid: Boundary,
    /// Pours from the lowest up.
    pub pours: Vec<Pour>,
    /// Faces of all pours.
    pub faces: Vec<Face>,
    /// Wall shutters.
    pub shutters: Vec<PlacedShutter>,
    /// Rows of ties and props.
    pub ties: Vec<PlacedTieRow>,
    /// Soffit falsework with its opening.
    pub falsework: Vec<PlacedFalsework>,
    /// What takes a bay from where it was cast.
    pub jacks: Option<PlacedJacks>,
    /// Every physical item of one bay's set of equipment.
    pub parts: Vec<Part>,
}

impl Model {
    /// The pour of this id.
    pub fn pour(&self, id: Id) -> Option<&Pour> {
        self.pours.iter().find(|pour| pour.id == id)
    }

    /// The shutter of this id.
    pub fn shutter(&self, id: Id) -> Option<&PlacedShutter> {
        self.shutters.iter().find(|shutter| shutter.id == id)
    }
}
