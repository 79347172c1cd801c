//! What is drawn, as plain data: figures in metres and tags to be placed on the screen.

mod concrete;
mod elevation;
mod equipment;
mod figure;
mod forces;
mod highlight;
mod holding;
mod jacks;
mod mechanism;
mod opening;
mod path;
mod placing;
mod plan;
mod profile;
mod scene;
mod swing;
mod tags;
pub mod tone;
mod whereabouts;

pub use elevation::elevation;
pub use equipment::{Name, name_of, names, outlines};
pub use figure::{Figure, Stroke};
pub use highlight::highlight;
pub use path::{Path, push_line, tenths};
pub use placing::{Block, PlacedTag, Written, place};
pub use plan::plan;
pub use scene::{Scene, Shown, scene};
pub use tags::{Tag, TagKind};
