//! One tool in each file: its states, and the step from one to the next.

pub(super) mod joint;
pub(super) mod legs;
pub(super) mod opening;
pub(super) mod outline;
pub(super) mod select;
pub(super) mod shutter;
pub(super) mod ties;
