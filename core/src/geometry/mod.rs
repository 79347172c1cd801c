//! Plane geometry of the section: points, edges and rings, no words of the trade.

mod boundary;
mod bounds;
mod clip;
mod edge;
mod motion;
mod point;
mod ring;

pub use boundary::{Boundary, Moments, Side};
pub use bounds::Bounds;
pub use clip::regions_between;
pub use edge::{Connector, Edge};
pub use motion::Motion;
pub use point::Point;
pub use ring::{edges_of, encloses};
