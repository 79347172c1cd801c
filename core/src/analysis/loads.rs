use super::element::Element;
use super::{Frame, FrameError};

/// How far beyond its member a load may reach by rounding, by the member's length.
const SLACK: f64 = 1e-9;

/// Loads that act together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LoadCase {
    /// On nodes.
    pub nodal: Vec<NodalLoad>,
    /// Spread along members.
    pub distributed: Vec<DistributedLoad>,
    /// At places along members.
    pub point: Vec<PointLoad>,
}

/// Direction of a load on a member.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Axis {
    /// Along global x.
    X,
    /// Along global y.
    Y,
}

/// Force and moment on a node, in kN and kNm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct NodalLoad {
    /// The node.
    pub node: usize,
    /// Force along x.
    pub fx: f64,
    /// Force along y.
    pub fy: f64,
    /// Moment, counter-clockwise.
    pub mz: f64,
}

/// A load that changes linearly along a part of a member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DistributedLoad {
    /// The member.
    pub member: usize,
    /// Its direction.
    pub axis: Axis,
    /// Load at `a`, in kN per m of the member's length.
    pub w1: f64,
    /// Load at `b`, in kN per m of the member's length.
    pub w2: f64,
    /// Where it begins, in m from node i.
    pub a: f64,
    /// Where it ends, in m from node i.
    pub b: f64,
}

/// A force at one place of a member. At a member's very end it acts on the node.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointLoad {
    /// The member.
    pub member: usize,
    /// Its direction.
    pub axis: Axis,
    /// Force in kN.
    pub p: f64,
    /// Where it acts, in m from node i.
    pub a: f64,
}

/// Part of a member's load, along local x and y, linear from `a` to `b`.
pub(super) struct LocalLoad {
    pub member: usize,
    pub a: f64,
    pub b: f64,
    pub at_a: [f64; 2],
    pub at_b: [f64; 2],
}

/// A force inside a member, along local x and y.
pub(super) struct LocalForce {
    pub member: usize,
    pub x: f64,
    pub force: [f64; 2],
}

/// A load case checked and turned to the axes of the members, in their order.
#[derive(Default)]
pub(super) struct LocalLoads {
    pub lines: Vec<LocalLoad>,
    pub forces: Vec<LocalForce>,
    /// Global force and moment on each node.
    pub nodes: Vec<[f64; 3]>,
}

impl LoadCase {
    pub(super) fn to_local(&self, frame: &Frame, elements: &[Element]) -> Result<LocalLoads, FrameError> {
        let mut nodes = vec![[0.0; 3]; frame.nodes.len()];
        for (index, load) in self.nodal.iter().enumerate() {
            frame.has_node("nodal load", index, load.node)?;
            if !(load.fx.is_finite() && load.fy.is_finite() && load.mz.is_finite()) {
                return Err(FrameError::NonFinite { what: "nodal load", index });
            }
            add(&mut nodes[load.node], [load.fx, load.fy, load.mz]);
        }

        let mut lines = Vec::with_capacity(self.distributed.len());
        for (index, load) in self.distributed.iter().enumerate() {
            let DistributedLoad { member, axis, w1, w2, a, b } = *load;
            let what = "distributed load";
            let element = elements.get(member).ok_or(FrameError::UnknownMember { what, index, member })?;
            if ![w1, w2, a, b].iter().all(|value| value.is_finite()) {
                return Err(FrameError::NonFinite { what, index });
            }
            let (a, b) = element.span(member, a, b)?;
            if a == b || (w1 == 0.0 && w2 == 0.0) {
                continue;
            }
            let (at_a, at_b) = (element.to_local(axis, w1), element.to_local(axis, w2));
            element.can_bear(member, at_a[1].abs().max(at_b[1].abs()), w1.abs().max(w2.abs()))?;
            lines.push(LocalLoad { member, a, b, at_a, at_b });
        }

        let mut forces = Vec::with_capacity(self.point.len());
        for (index, load) in self.point.iter().enumerate() {
            let PointLoad { member, axis, p, a } = *load;
            let what = "point load";
            let element = elements.get(member).ok_or(FrameError::UnknownMember { what, index, member })?;
            if !(p.is_finite() && a.is_finite()) {
                return Err(FrameError::NonFinite { what, index });
            }
            let (x, _) = element.span(member, a, a)?;
            let global = match axis {
                Axis::X => [p, 0.0, 0.0],
                Axis::Y => [0.0, p, 0.0],
            };
            if x == 0.0 {
                add(&mut nodes[frame.members[member].i], global);
            } else if x == element.length {
                add(&mut nodes[frame.members[member].j], global);
            } else if p != 0.0 {
                let force = element.to_local(axis, p);
                element.can_bear(member, force[1].abs(), p.abs())?;
                forces.push(LocalForce { member, x, force });
            }
        }

        lines.sort_unstable_by_key(|load| load.member);
        forces.sort_unstable_by(|l, r| l.member.cmp(&r.member).then(l.x.total_cmp(&r.x)));
        Ok(LocalLoads { lines, forces, nodes })
    }
}

impl Element {
    /// The stretch from `a` to `b` moved onto the member where rounding has put it beyond an end.
    fn span(&self, member: usize, a: f64, b: f64) -> Result<(f64, f64), FrameError> {
        let slack = SLACK * self.length;
        if a < -slack || b > self.length + slack || a > b + slack {
            return Err(FrameError::LoadOffMember { member, a, b, length: self.length });
        }
        let snap = |x: f64| {
            if x <= slack {
                0.0
            } else if x >= self.length - slack {
                self.length
            } else {
                x
            }
        };
        Ok((snap(a), snap(b).max(snap(a))))
    }

    fn can_bear(&self, member: usize, across: f64, whole: f64) -> Result<(), FrameError> {
        if self.ei == 0.0 && across > SLACK * whole { Err(FrameError::LoadAcrossBar { member }) } else { Ok(()) }
    }
}

fn add(sum: &mut [f64; 3], load: [f64; 3]) {
    for (sum, load) in sum.iter_mut().zip(load) {
        *sum += load;
    }
}
