use super::{Axis, DistributedLoad, FrameError, LoadCase, NodalLoad};
use serde::Deserialize;
use std::collections::BTreeSet;
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
    /// Supports that only push.
    pub contacts: Vec<Contact>,
}

/// A joint, in m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Node {
    /// To the right.
    pub x: f64,
    /// Up.
    pub y: f64,
}

/// A straight prismatic member. [`Frame::add_stepped`] makes one whose section changes.
///
/// Pairs belong to its start and its end.
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
    /// Shear stiffness in kN: finite after Timoshenko, infinite after Euler and Bernoulli.
    pub ga: f64,
    /// Whether its start is hinged to node i.
    pub release_i: bool,
    /// Whether its end is hinged to node j.
    pub release_j: bool,
    /// Whether an end slides along the member.
    pub axial_release: [bool; 2],
    /// Whether an end slides across the member.
    pub shear_release: [bool; 2],
    /// Rigid arms from the nodes to the member's ends, along global x and y, in m.
    pub arms: [[f64; 2]; 2],
    /// Which axial forces it bears.
    pub acts: Acts,
    /// Own weight in kN/m: what [`Frame::self_weight`] loads it with.
    pub weight: f64,
}

/// Which axial forces a member bears.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Acts {
    /// Both.
    #[default]
    Both,
    /// Tension only: a tie, a slender diagonal.
    Tension,
    /// Compression only: a prop that is not fastened, a packing.
    Compression,
}

/// A support that pushes one way and lets go the other way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contact {
    /// The node.
    pub node: usize,
    /// Direction that it resists.
    pub dof: Dof,
    /// Whether it pushes the node along the positive direction, as the ground does upwards.
    pub pushes_positive: bool,
    /// Stiffness in kN/m, or kNm/rad; infinite if rigid.
    pub k: f64,
    /// Another direction in which supports and springs hold the node only while the contact pushes, as the ground holds
    /// a foot sideways.
    pub grips: Option<Dof>,
}

/// A part of a member whose section changes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Its length, in any unit: parts share the member's length in proportion.
    pub share: f64,
    /// Bending stiffness in kNm².
    pub ei: f64,
    /// Axial stiffness in kN.
    pub ea: f64,
    /// Shear stiffness in kN; infinite after Euler and Bernoulli.
    pub ga: f64,
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Dof {
    /// Along x.
    Ux,
    /// Along y.
    Uy,
    /// In rotation.
    Rz,
}

impl Contact {
    /// A rigid contact that pushes along the positive direction and holds nothing else.
    pub fn rigid(node: usize, dof: Dof) -> Self {
        Self { node, dof, pushes_positive: true, k: f64::INFINITY, grips: None }
    }

    /// A force along the positive direction as one that pushes.
    pub(super) fn pushed(&self, force: f64) -> f64 {
        if self.pushes_positive { force } else { -force }
    }
}

impl Support {
    /// Node and number of each direction held.
    fn held(&self) -> impl Iterator<Item = (usize, usize)> + use<> {
        let Self { node, ux, uy, rz } = *self;
        [ux, uy, rz].into_iter().enumerate().filter(|(_, held)| *held).map(move |(dof, _)| (node, dof))
    }
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
        Self {
            i,
            j,
            ei,
            ea,
            ga: f64::INFINITY,
            release_i: false,
            release_j: false,
            axial_release: [false; 2],
            shear_release: [false; 2],
            arms: [[0.0; 2]; 2],
            acts: Acts::Both,
            weight: 0.0,
        }
    }

    /// A member hinged at both ends that bears axial force only: axial stiffness in kN.
    ///
    /// It never buckles by itself in an analysis: check it on its own.
    pub fn bar(i: usize, j: usize, ea: f64) -> Self {
        Self { release_i: true, release_j: true, ..Self::beam(i, j, 0.0, ea) }
    }

    /// One of the parts into which it is cut: releases and arms stay at the outer ends.
    pub(super) fn part(&self, first: bool, last: bool) -> Self {
        let arm = |keep: bool, arm: [f64; 2]| if keep { arm } else { [0.0; 2] };
        Self {
            release_i: first && self.release_i,
            release_j: last && self.release_j,
            axial_release: [first && self.axial_release[0], last && self.axial_release[1]],
            shear_release: [first && self.shear_release[0], last && self.shear_release[1]],
            arms: [arm(first, self.arms[0]), arm(last, self.arms[1])],
            ..*self
        }
    }

    /// Whether it can move without its nodes.
    fn is_loose(&self) -> bool {
        let [across_i, across_j] = self.shear_release;
        let hinged = |release: bool| usize::from(release || self.ei == 0.0);
        let released = hinged(self.release_i) + hinged(self.release_j) + usize::from(across_i) + usize::from(across_j);
        self.axial_release == [true, true] || self.shear_release == [true, true] || released > 2
    }
}

impl Frame {
    /// Node, direction and stiffness of each spring and contact.
    pub(super) fn ground_stiffnesses(&self) -> impl Iterator<Item = (usize, Dof, f64)> {
        let springs = self.springs.iter().map(|spring| (spring.node, spring.dof, spring.k));
        springs.chain(self.contacts.iter().map(|contact| (contact.node, contact.dof, contact.k)))
    }

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

    /// Adds a member whose section changes, from node i to node j: its parts in order, each with its share of the length
    /// and its stiffness, between nodes of their own. `whole` gives all else. Returns the indices of the parts.
    pub fn add_stepped(&mut self, whole: Member, sections: &[Section]) -> std::ops::Range<usize> {
        let first = self.members.len();
        let total: f64 = sections.iter().map(|section| section.share).sum();
        let [from, to] = self.ends(&whole);
        let (mut i, mut passed) = (whole.i, 0.0);
        for (part, section) in sections.iter().enumerate() {
            passed += section.share;
            let (start, last, t) = (part == 0, part + 1 == sections.len(), passed / total);
            let j =
                if last { whole.j } else { self.add_node(from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)) };
            let Section { ei, ea, ga, .. } = *section;
            self.add_member(Member { i, j, ei, ea, ga, ..whole }.part(start, last));
            i = j;
        }
        first..self.members.len()
    }

    /// The members' own weight times `factor`, downwards. Bars hand it to their nodes, half each.
    pub fn self_weight(&self, factor: f64) -> LoadCase {
        let mut loads = LoadCase::default();
        for (index, member) in self.members.iter().enumerate().filter(|(_, member)| member.weight != 0.0) {
            let (length, ..) = self.direction(member);
            let w = -factor * member.weight;
            if member.ei == 0.0 {
                let half = |node| NodalLoad { node, fx: 0.0, fy: 0.5 * w * length, mz: 0.0 };
                loads.nodal.extend([half(member.i), half(member.j)]);
            } else {
                let line = DistributedLoad { member: index, axis: Axis::Y, w1: w, w2: w, a: 0.0, b: length };
                loads.distributed.push(line);
            }
        }
        loads
    }

    /// Where a member begins and ends, beyond its arms.
    pub(super) fn ends(&self, member: &Member) -> [Node; 2] {
        let beyond = |node: Node, [x, y]: [f64; 2]| Node { x: node.x + x, y: node.y + y };
        [beyond(self.nodes[member.i], member.arms[0]), beyond(self.nodes[member.j], member.arms[1])]
    }

    /// Length of a member and the cosine and sine of its angle to x.
    pub(super) fn direction(&self, member: &Member) -> (f64, f64, f64) {
        let [from, to] = self.ends(member);
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let length = (dx * dx + dy * dy).sqrt();
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
            let arms = member.arms.iter().flatten().all(|arm| arm.is_finite());
            if !(member.ei.is_finite() && member.ea.is_finite() && member.weight.is_finite() && arms)
                || member.ga.is_nan()
            {
                return Err(FrameError::NonFinite { what: "member", index });
            }
            if member.ei < 0.0 || member.ea <= 0.0 || member.ga <= 0.0 {
                return Err(FrameError::Stiffness { what: "member", index });
            }
            if member.is_loose() {
                return Err(FrameError::LooseMember { member: index });
            }
            let [from, to] = self.ends(member);
            let (dx, dy) = (to.x - from.x, to.y - from.y);
            let square = dx * dx + dy * dy;
            if !square.is_finite() {
                return Err(FrameError::NonFinite { what: "member", index });
            }
            if square < LEAST_LENGTH * LEAST_LENGTH {
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
        self.validate_contacts()
    }

    fn validate_contacts(&self) -> Result<(), FrameError> {
        let mut held: BTreeSet<(usize, usize)> = BTreeSet::new();
        if !self.contacts.is_empty() {
            held.extend(self.supports.iter().flat_map(Support::held));
        }
        for (index, contact) in self.contacts.iter().enumerate() {
            let Contact { node, dof, k, .. } = *contact;
            self.has_node("contact", index, node)?;
            if k.is_nan() {
                return Err(FrameError::NonFinite { what: "contact", index });
            }
            if k <= 0.0 {
                return Err(FrameError::Stiffness { what: "contact", index });
            }
            if !held.insert((node, dof as usize)) {
                return Err(FrameError::HeldTwice { node, dof });
            }
        }
        Ok(())
    }

    /// Whether something holds or springs a node along a direction.
    pub(super) fn holds(&self, node: usize, dof: Dof) -> bool {
        self.supports.iter().any(|support| support.node == node && [support.ux, support.uy, support.rz][dof as usize])
            || self.springs.iter().any(|spring| spring.node == node && spring.dof == dof)
            || self.contacts.iter().any(|contact| contact.node == node && contact.dof == dof)
    }

    pub(super) fn has_node(&self, what: &'static str, index: usize, node: usize) -> Result<(), FrameError> {
        if node < self.nodes.len() { Ok(()) } else { Err(FrameError::UnknownNode { what, index, node }) }
    }
}
