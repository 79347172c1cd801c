//! What the user drew: the section, its pours, and the equipment placed on it. Saved as JSON, `"schema": 1`.

mod demo;
mod edges;
pub mod edit;
mod error;
mod hardening;
mod hinge;
mod holding;
mod ids;
mod job;
mod moving;
mod placing;
mod programme;
mod read;
mod repeat;
mod section;
mod settings;
mod stock;
mod templates;
mod uses;
mod validate;
mod wind;

pub use demo::heron_lane;
pub use edges::{Band, SectionEdge};
pub use error::{Place, Ring, SchemeError, Subject};
pub use hardening::{Cement, Hardening, SlabAge, Striking, Temperature, TemperatureTextError};
pub use hinge::Hinge;
pub use holding::{CastAnchor, FixedEnd, HeldBy};
pub use ids::{FaceRef, Id};
pub use job::Job;
pub use moving::{Lift, Moving, Slide};
pub use placing::{
    Arrangement, Bearing, Direction, Falsework, Lateral, LegLine, Opening, Shutter, Spacing, TieEnd, TieRow,
};
pub use programme::{Programme, Rates};
pub use read::{LARGEST_FILE, ReadError, read, read_bytes, write, write_on_one_line};
pub use repeat::{Moved, Repeat};
pub use section::{Cell, Corner, Cut, Joint, Section};
pub use settings::{
    Basis, Bays, CementChemistry, Concrete, Consistency, Delivery, FormElement, Ground, Limits, Loads, PressureMethod,
};
pub use stock::Stock;
pub use templates::Walls;
pub use uses::Use;
pub use wind::SiteWind;

pub use crate::actions::wind::Terrain;

use crate::catalogue::Item;
use serde::{Deserialize, Serialize};

/// The version of the file format that this crate writes.
pub const SCHEMA: u32 = 1;

/// A whole drawing. Every element has an [`Id`] of its own, unique in the scheme.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scheme {
    /// Version of the file format, [`SCHEMA`].
    pub schema: u32,
    /// What the job is called on the drawing.
    pub name: String,
    /// What its drawings are marked with, so that an old print is known from a new one; empty before the first issue.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub revision: String,
    /// What this option of the job is called; empty for one that was not named.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub option: String,
    /// The concrete section.
    pub section: Section,
    /// How the culvert is cut into pours along its length.
    pub bays: Bays,
    /// The fresh concrete and how it arrives.
    pub concrete: Concrete,
    /// The rules that resistances follow.
    pub basis: Basis,
    /// Loads that do not come from the concrete.
    pub loads: Loads,
    /// Limits of deflection and clearance.
    pub limits: Limits,
    /// What the works stand on where no concrete is below.
    pub ground: Ground,
    /// Wall shutters.
    pub shutters: Vec<Shutter>,
    /// Rows of ties and props that hold the shutters.
    pub ties: Vec<TieRow>,
    /// Soffit falsework, one for each soffit.
    pub falsework: Vec<Falsework>,
    /// Ways kept open through the falsework.
    pub openings: Vec<Opening>,
    /// When forms may go, if that is to be computed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub striking: Option<Striking>,
    /// How bays are taken from where they were cast, if they are.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moving: Option<Moving>,
    /// How sets of equipment go from bay to bay, if that is to be worked out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub programme: Option<Programme>,
    /// What bars are bought in, if cutting is to be worked out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stock: Option<Stock>,
    /// Rows and lines that stand regularly.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub repeats: Vec<Repeat>,
    /// The user's own items; one with the code of a catalogue item replaces it.
    #[serde(default)]
    pub items: Vec<Item>,
}
