use super::element::Element;
use super::{Dof, Frame, FrameError};
use crate::sorting::sort;
use serde::Deserialize;

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
    /// Movements of the ground.
    pub settlements: Vec<Settlement>,
    /// Temperature and other strains of members.
    pub strains: Vec<Strain>,
    /// Lack of fit of members.
    pub gaps: Vec<Gap>,
}

/// Direction of a load on a member.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
pub enum Axis {
    /// Along global x.
    X,
    /// Along global y.
    Y,
    /// Along the member, from node i to node j.
    #[serde(rename = "x")]
    LocalX,
    /// Across the member, along its local y.
    #[serde(rename = "y")]
    LocalY,
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

/// A movement of the ground under a support or spring, in m or rad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settlement {
    /// The node that stands on it.
    pub node: usize,
    /// Direction of the movement.
    pub dof: Dof,
    /// How far, along the positive direction.
    pub by: f64,
}

/// What a member would do if it were free, all along: temperature, shrinkage.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strain {
    /// The member.
    pub member: usize,
    /// Strain along its axis, longer is positive: α·ΔT for an even change of temperature.
    pub axial: f64,
    /// Curvature in 1/m, positive where the side of −y grows longer: α·(ΔT at −y − ΔT at +y) / depth.
    pub curvature: f64,
}

/// A lack of fit at one place of a member: how far the part after it is moved and turned against the part before it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// The member.
    pub member: usize,
    /// Where, in m from node i.
    pub a: f64,
    /// Along the member in m: positive if it is too long, as when a jack is wound out.
    pub along: f64,
    /// Along its local y, in m.
    pub across: f64,
    /// Kink in rad, counter-clockwise.
    pub turn: f64,
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

/// A gap at a place of a member.
pub(super) struct LocalGap {
    pub member: usize,
    pub x: f64,
    pub jump: [f64; 3],
}

/// A load case checked and turned to the axes of the members, in their order.
#[derive(Default)]
pub(super) struct LocalLoads {
    pub lines: Vec<LocalLoad>,
    pub forces: Vec<LocalForce>,
    pub gaps: Vec<LocalGap>,
    pub strains: Vec<Strain>,
    /// Global force and moment on each node.
    pub nodes: Vec<[f64; 3]>,
    /// Movement of the ground at each node; empty if it rests.
    pub ground: Vec<[f64; 3]>,
}

impl LoadCase {
    /// Adds another case times a factor, for combinations.
    pub fn add(&mut self, factor: f64, other: &Self) {
        self.nodal.extend(other.nodal.iter().map(|load| NodalLoad {
            fx: factor * load.fx,
            fy: factor * load.fy,
            mz: factor * load.mz,
            ..*load
        }));
        let line = |load: &DistributedLoad| DistributedLoad { w1: factor * load.w1, w2: factor * load.w2, ..*load };
        self.distributed.extend(other.distributed.iter().map(line));
        self.point.extend(other.point.iter().map(|load| PointLoad { p: factor * load.p, ..*load }));
        self.settlements.extend(other.settlements.iter().map(|load| Settlement { by: factor * load.by, ..*load }));
        self.strains.extend(other.strains.iter().map(|load| Strain {
            axial: factor * load.axial,
            curvature: factor * load.curvature,
            ..*load
        }));
        self.gaps.extend(other.gaps.iter().map(|load| load.times(factor)));
    }

    /// Without what acts on these members.
    pub(super) fn without_members(&self, members: &[usize]) -> Self {
        let mut rest = self.clone();
        rest.distributed.retain(|load| !members.contains(&load.member));
        rest.point.retain(|load| !members.contains(&load.member));
        rest.strains.retain(|load| !members.contains(&load.member));
        rest.gaps.retain(|load| !members.contains(&load.member));
        rest
    }

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
            let force = element.to_local(axis, p);
            let [along, across] = force;
            let [i, j] = element.nodes;
            if x == 0.0 {
                let [fx, fy, mz, ..] = element.turn_out([along, across, 0.0, 0.0, 0.0, 0.0]);
                add(&mut nodes[i], [fx, fy, mz]);
            } else if x == element.length {
                let [.., fx, fy, mz] = element.turn_out([0.0, 0.0, 0.0, along, across, 0.0]);
                add(&mut nodes[j], [fx, fy, mz]);
            } else if p != 0.0 {
                element.can_bear(member, across.abs(), p.abs())?;
                forces.push(LocalForce { member, x, force });
            }
        }

        let mut gaps = Vec::with_capacity(self.gaps.len());
        for (index, load) in self.gaps.iter().enumerate() {
            let Gap { member, a, along, across, turn } = *load;
            let what = "gap";
            let element = elements.get(member).ok_or(FrameError::UnknownMember { what, index, member })?;
            if ![a, along, across, turn].iter().all(|value| value.is_finite()) {
                return Err(FrameError::NonFinite { what, index });
            }
            let (x, _) = element.span(member, a, a)?;
            gaps.push(LocalGap { member, x, jump: [along, across, turn] });
        }
        for (index, load) in self.strains.iter().enumerate() {
            let Strain { member, axial, curvature } = *load;
            let what = "strain";
            elements.get(member).ok_or(FrameError::UnknownMember { what, index, member })?;
            if !(axial.is_finite() && curvature.is_finite()) {
                return Err(FrameError::NonFinite { what, index });
            }
        }

        let mut strains = self.strains.clone();
        // Stable, so that the order in which loads of one member are added up stays that in which they are given.
        sort(&mut lines, |l, r| l.member.cmp(&r.member));
        sort(&mut strains, |l, r| l.member.cmp(&r.member));
        sort(&mut forces, |l, r| l.member.cmp(&r.member).then(l.x.total_cmp(&r.x)));
        sort(&mut gaps, |l, r| l.member.cmp(&r.member).then(l.x.total_cmp(&r.x)));
        let ground = self.ground(frame)?;
        Ok(LocalLoads { lines, forces, gaps, strains, nodes, ground })
    }

    fn ground(&self, frame: &Frame) -> Result<Vec<[f64; 3]>, FrameError> {
        if self.settlements.is_empty() {
            return Ok(Vec::new());
        }
        let mut holds = vec![[false; 3]; frame.nodes.len()];
        for support in &frame.supports {
            for (holds, held) in holds[support.node].iter_mut().zip([support.ux, support.uy, support.rz]) {
                *holds |= held;
            }
        }
        let springs = frame.springs.iter().map(|spring| (spring.node, spring.dof));
        for (node, dof) in springs.chain(frame.contacts.iter().map(|contact| (contact.node, contact.dof))) {
            holds[node][dof as usize] = true;
        }
        let mut ground = vec![[0.0; 3]; frame.nodes.len()];
        for (index, settlement) in self.settlements.iter().enumerate() {
            let Settlement { node, dof, by } = *settlement;
            frame.has_node("settlement", index, node)?;
            if !by.is_finite() {
                return Err(FrameError::NonFinite { what: "settlement", index });
            }
            if !holds[node][dof as usize] {
                return Err(FrameError::NotHeld { index, node, dof });
            }
            ground[node][dof as usize] += by;
        }
        Ok(ground)
    }
}

impl Gap {
    pub(super) fn times(&self, factor: f64) -> Self {
        Self { along: factor * self.along, across: factor * self.across, turn: factor * self.turn, ..*self }
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
