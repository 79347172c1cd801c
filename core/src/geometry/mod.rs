//! Plane geometry of the section: points and rings, no words of the trade.

mod point;

pub use point::Point;
