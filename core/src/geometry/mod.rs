//! Plane geometry of the section: points, edges and rings, no words of the trade.

mod boundary;
mod clip;
mod edge;
mod point;

pub use boundary::{Boundary, Moments, Side};
pub use clip::regions_between;
pub use edge::{Connector, Edge};
pub use point::Point;
