//! Linear, buckling and second-order analysis of plane frames.
//!
//! Straight prismatic members with small displacements, after Euler and Bernoulli or after Timoshenko. Results along a
//! member are exact solutions of its differential equation, not interpolations.
//!
//! [`Frame::factorise`] says whether a frame stands; [`Factorised`] then solves any number of [`LoadCase`]s, with parts
//! that act one way ([`Factorised::solve_one_sided`]) or parts taken out ([`Factorised::without`]), and gives influence
//! lines; [`Solution::sum`] adds them up. [`Frame::buckling_modes`] and [`Frame::solve_imperfect`] are the stability of
//! it; [`envelope`] gathers cases.
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
pub mod case;
mod cubic;
mod cut;
mod cutting;
mod dense;
mod element;
mod envelope;
mod error;
mod extremes;
mod factorised;
mod frame;
mod imperfection;
mod influence;
mod letting_go;
mod loads;
mod magnitude;
mod mechanism;
mod one_sided;
mod one_sided_stability;
mod order;
mod piece;
mod pieces;
mod pivoting;
mod polynomial;
mod removal;
mod second_order;
mod section;
mod skyline;
mod solution;
mod subdivision;
mod superposition;
mod transfer;

pub use buckling::{BucklingMode, BucklingShape};
pub use envelope::{Governing, MemberEnvelope, envelope};
pub use error::FrameError;
pub use extremes::{Extremes, ForceExtremes};
pub use factorised::Factorised;
pub use frame::{Acts, Contact, Dof, Frame, Member, Node, Section, Spring, Support};
pub use imperfection::{Bow, Imperfections};
pub use influence::{Effect, Influence};
pub use loads::{Axis, DistributedLoad, Gap, LoadCase, NodalLoad, PointLoad, Settlement, Strain};
pub use one_sided::{Contacts, OneSided};
pub use removal::{Removal, WhatIf, Without};
pub use solution::{Displacement, Reaction, Solution};
