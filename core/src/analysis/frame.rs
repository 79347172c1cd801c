use super::FrameError;
use std::fmt;

/// Least length of a member, in m.
const LEAST_LENGTH: f64 = 1e-6;

/// A plane frame without its loads.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Frame {
    /// Joints.
    pub nodes: Vec<Node>,
    /// Members between joints.
    pub members: Vec<Member>,
    /// Rigid supports.
    pub supports: Vec<Support>,
    /// Elastic supports.
    pub springs: Vec<Spring>,
}

/// A joint, in m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Node {
    /// To the right.
    pub x: f64,
    /// Up.
    pub y: f64,
}

/// A straight prismatic member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Member {
    /// Node at its start.
    pub i: usize,
    /// Node at its end.
    pub j: usize,
    /// Bending stiffness in kNm²; 0 makes it a bar.
    pub ei: f64,
    /// Axial stiffness in kN.
    pub ea: f64,
    /// Whether its start is hinged to node i.
    pub release_i: bool,
    /// Whether its end is hinged to node j.
    pub release_j: bool,
}

/// Directions in which a node is held.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Support {
    /// The node.
    pub node: usize,
    /// Held along x.
    pub ux: bool,
    /// Held along y.
    pub uy: bool,
    /// Held against rotation.
    pub rz: bool,
}

/// A linear spring between a node and the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spring {
    /// The node.
    pub node: usize,
    /// Direction that it resists.
    pub dof: Dof,
    /// Stiffness in kN/m, or kNm/rad against rotation.
    pub k: f64,
}

/// A way in which a node can move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dof {
    /// Along x.
    Ux,
    /// Along y.
    Uy,
    /// In rotation.
    Rz,
}

impl Dof {
    /// In the order of a node's three unknowns.
    pub(super) const ALL: [Self; 3] = [Self::Ux, Self::Uy, Self::Rz];
}

impl fmt::Display for Dof {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Ux => "along x",
            Self::Uy => "along y",
            Self::Rz => "in rotation",
        })
    }
}

impl Member {
    /// A member joined rigidly at both ends: bending stiffness in kNm², axial stiffness in kN.
    pub fn beam(i: usize, j: usize, ei: f64, ea: f64) -> Self {
        Self { i, j, ei, ea, release_i: false, release_j: false }
    }

    /// A member hinged at both ends that bears axial force only: axial stiffness in kN.
    ///
    /// It never buckles by itself in an analysis: check it on its own.
    pub fn bar(i: usize, j: usize, ea: f64) -> Self {
        Self { i, j, ei: 0.0, ea, release_i: true, release_j: true }
    }
}

impl Frame {
    /// Adds a joint at (x, y) in m and returns its index.
    pub fn add_node(&mut self, x: f64, y: f64) -> usize {
        self.nodes.push(Node { x, y });
        self.nodes.len() - 1
    }

    /// Adds a member and returns its index.
    pub fn add_member(&mut self, member: Member) -> usize {
        self.members.push(member);
        self.members.len() - 1
    }

    /// Length of a member and the cosine and sine of its angle to x.
    pub(super) fn direction(&self, member: &Member) -> (f64, f64, f64) {
        let (from, to) = (self.nodes[member.i], self.nodes[member.j]);
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let length = libm::hypot(dx, dy);
        (length, dx / length, dy / length)
    }

    pub(super) fn validate(&self) -> Result<(), FrameError> {
        for (index, node) in self.nodes.iter().enumerate() {
            if !(node.x.is_finite() && node.y.is_finite()) {
                return Err(FrameError::NonFinite { what: "node", index });
            }
        }
        for (index, member) in self.members.iter().enumerate() {
            self.has_node("member", index, member.i)?;
            self.has_node("member", index, member.j)?;
            if !(member.ei.is_finite() && member.ea.is_finite()) {
                return Err(FrameError::NonFinite { what: "member", index });
            }
            if member.ei < 0.0 || member.ea <= 0.0 {
                return Err(FrameError::Stiffness { what: "member", index });
            }
            let (length, ..) = self.direction(member);
            if !length.is_finite() {
                return Err(FrameError::NonFinite { what: "member", index });
            }
            if length < LEAST_LENGTH {
                return Err(FrameError::ZeroLength { member: index });
            }
        }
        for (index, support) in self.supports.iter().enumerate() {
            self.has_node("support", index, support.node)?;
        }
        for (index, spring) in self.springs.iter().enumerate() {
            self.has_node("spring", index, spring.node)?;
            if !spring.k.is_finite() {
                return Err(FrameError::NonFinite { what: "spring", index });
            }
            if spring.k < 0.0 {
                return Err(FrameError::Stiffness { what: "spring", index });
            }
        }
        Ok(())
    }

    pub(super) fn has_node(&self, what: &'static str, index: usize, node: usize) -> Result<(), FrameError> {
        if node < self.nodes.len() { Ok(()) } else { Err(FrameError::UnknownNode { what, index, node }) }
    }
}
