use super::factorised::Factorised;
use super::{Axis, Dof, FrameError, Gap, LoadCase, Settlement, Solution};

/// What an influence line is of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Effect {
    /// Reaction at a node.
    Reaction {
        /// The node.
        node: usize,
        /// Its direction.
        dof: Dof,
    },
    /// Axial force of a member, such as a leg.
    Axial {
        /// The member.
        member: usize,
        /// Where, in m from node i.
        x: f64,
    },
    /// Shear in a member.
    Shear {
        /// The member.
        member: usize,
        /// Where, in m from node i.
        x: f64,
    },
    /// Moment in a member.
    Moment {
        /// The member.
        member: usize,
        /// Where, in m from node i.
        x: f64,
    },
}

/// An influence line or field: the effect of a unit load anywhere.
#[derive(Clone, Debug)]
pub struct Influence {
    shape: Solution,
    sign: f64,
    /// Cosine and sine of each member.
    directions: Vec<(f64, f64)>,
}

impl Factorised<'_> {
    /// The influence line of an effect, as the shape of the frame when what resists it is moved by 1 (Müller-Breslau).
    pub fn influence(&self, effect: Effect) -> Result<Influence, FrameError> {
        let mut loads = LoadCase::default();
        let gap = |member, a| Gap { member, a, along: 0.0, across: 0.0, turn: 0.0 };
        let sign = match effect {
            Effect::Reaction { node, dof } => {
                loads.settlements.push(Settlement { node, dof, by: 1.0 });
                -1.0
            }
            Effect::Axial { member, x } => {
                loads.gaps.push(Gap { along: 1.0, ..gap(member, x) });
                1.0
            }
            Effect::Shear { member, x } => {
                loads.gaps.push(Gap { across: 1.0, ..gap(member, x) });
                -1.0
            }
            Effect::Moment { member, x } => {
                loads.gaps.push(Gap { turn: 1.0, ..gap(member, x) });
                1.0
            }
        };
        let directions = self.stiffness.elements.iter().map(|element| (element.cosine, element.sine)).collect();
        Ok(Influence { shape: self.solve(&loads)?, sign, directions })
    }
}

impl Influence {
    /// Effect of a unit force or moment on a node. Panics if the frame has no such node.
    pub fn at_node(&self, node: usize, dof: Dof) -> f64 {
        let moved = self.shape.displacement(node);
        self.sign * [moved.ux, moved.uy, moved.rz][dof as usize]
    }

    /// Effect of a unit force along a local axis of a member, `x` m from node i. Panics if the frame has no such member.
    pub fn on_member(&self, member: usize, axis: Axis, x: f64) -> f64 {
        let (along, across) = (self.shape.along_at(member, x), self.shape.deflection_at(member, x));
        let (cosine, sine) = self.directions[member];
        self.sign
            * match axis {
                Axis::X => cosine * along - sine * across,
                Axis::Y => sine * along + cosine * across,
                Axis::LocalX => along,
                Axis::LocalY => across,
            }
    }
}
