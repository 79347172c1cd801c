//! Linear, buckling and second-order analysis of plane frames.
//!
//! Straight prismatic members after Euler and Bernoulli with small displacements: no shear deformation.
//!
//! # Units and axes
//! m, kN, kNm and rad, as plain `f64`. Global x to the right, y up, moments and rotations counter-clockwise.
//! A member's local x runs from node i to node j; its local y is that turned a quarter turn counter-clockwise.
//!
//! # Signs
//! Axial force N is positive in tension. The moment M is positive where it stretches the side of −y, the shear is
//! V = dM/dx, deflections are along local y. Reactions act on the structure.

mod assembly;
mod bending;
mod buckling;
mod element;
mod error;
mod extremes;
mod factorised;
mod frame;
mod loads;
mod order;
mod piece;
mod second_order;
mod skyline;
mod solution;
mod subdivision;

pub use buckling::{BucklingMode, BucklingShape};
pub use error::FrameError;
pub use extremes::Extremes;
pub use factorised::Factorised;
pub use frame::{Acts, Contact, Dof, Frame, Member, Node, Section, Spring, Support};
pub use loads::{Axis, DistributedLoad, Gap, LoadCase, NodalLoad, PointLoad, Settlement, Strain};
pub use solution::{Displacement, Reaction, Solution};
