//! Frame cases with expected values, read from `data/frames`; its README tells their format.

use falsewright_core::analysis::{
    Axis, DistributedLoad, Dof, Frame, LoadCase, Member, NodalLoad, PointLoad, Spring, Support,
};
use serde::Deserialize;
use std::collections::BTreeMap;
use std::path::Path;

/// One frame, its loads and what is known of them.
#[derive(Clone, Debug, Deserialize)]
pub struct FrameCase {
    /// Such as `SB01`.
    pub id: String,
    /// What it is, in words.
    pub title: String,
    /// What to compute.
    pub analysis: Analysis,
    nodes: Vec<NodeData>,
    members: Vec<MemberData>,
    supports: Vec<SupportData>,
    springs: Vec<SpringData>,
    loads: Vec<LoadData>,
    /// Values to find.
    pub expected: Expected,
}

/// Kind of analysis.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Analysis {
    /// First order.
    Linear,
    /// Lowest critical factors.
    LinearBuckling,
    /// Equilibrium of the deflected frame.
    SecondOrder,
}

/// Values to find, by node or member.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default)]
pub struct Expected {
    /// Forces of the ground on the frame.
    pub reactions: BTreeMap<String, ExpectedReaction>,
    /// Movements of nodes.
    pub displacements: BTreeMap<String, ExpectedDisplacement>,
    /// Forces and deflections of members.
    pub members: BTreeMap<String, ExpectedMember>,
    /// Lowest critical factor.
    pub lambda1: Option<f64>,
    /// The second factor as a multiple of the first.
    pub mode2_over_mode1: Option<f64>,
}

/// Reaction at a node.
#[derive(Clone, Copy, Debug, Deserialize)]
#[allow(missing_docs, non_snake_case)]
pub struct ExpectedReaction {
    pub Rx: f64,
    pub Ry: f64,
    pub Mz: f64,
}

/// Movement of a node.
#[derive(Clone, Copy, Debug, Deserialize)]
#[allow(missing_docs)]
pub struct ExpectedDisplacement {
    pub ux: f64,
    pub uy: f64,
    pub rz: f64,
}

/// Forces and deflections of a member; which are there depends on the analysis.
#[derive(Clone, Debug, Deserialize)]
#[allow(missing_docs, non_snake_case)]
pub struct ExpectedMember {
    pub M_max: Option<ExpectedExtreme>,
    pub M_min: Option<ExpectedExtreme>,
    pub V_max: Option<ExpectedExtreme>,
    pub V_min: Option<ExpectedExtreme>,
    pub v_max: Option<ExpectedExtreme>,
    pub v_min: Option<ExpectedExtreme>,
    pub v_rel_chord_absmax: Option<f64>,
    pub N_i: Option<f64>,
    pub N_j: Option<f64>,
    pub M_i: Option<f64>,
    pub M_j: Option<f64>,
    pub M_max_sampled: Option<f64>,
    pub M_min_sampled: Option<f64>,
    pub samples: Option<usize>,
}

/// An extreme and all its places.
#[derive(Clone, Debug, Deserialize)]
pub struct ExpectedExtreme {
    /// The extreme value.
    pub value: f64,
    /// Where it occurs, from node i.
    pub x: Vec<f64>,
    /// Whether it holds over the whole range between the places.
    #[serde(default)]
    pub flat: bool,
}

#[derive(Clone, Debug, Deserialize)]
struct NodeData {
    id: String,
    x: f64,
    y: f64,
}

#[derive(Clone, Debug, Deserialize)]
#[allow(non_snake_case)]
struct MemberData {
    id: String,
    i: String,
    j: String,
    E: f64,
    A: f64,
    I: f64,
    #[serde(default)]
    release_i: bool,
    #[serde(default)]
    release_j: bool,
}

#[derive(Clone, Debug, Deserialize)]
struct SupportData {
    node: String,
    #[serde(default)]
    ux: bool,
    #[serde(default)]
    uy: bool,
    #[serde(default)]
    rz: bool,
}

#[derive(Clone, Debug, Deserialize)]
struct SpringData {
    node: String,
    dof: String,
    k: f64,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(tag = "type", rename_all = "lowercase")]
#[allow(non_snake_case)]
enum LoadData {
    Node {
        node: String,
        #[serde(default)]
        Fx: f64,
        #[serde(default)]
        Fy: f64,
        #[serde(default)]
        Mz: f64,
    },
    Dist {
        member: String,
        dir: String,
        w1: f64,
        w2: f64,
        a: f64,
        b: f64,
    },
    Point {
        member: String,
        dir: String,
        P: f64,
        a: f64,
    },
}

#[derive(Deserialize)]
struct CaseFile {
    cases: Vec<FrameCase>,
}

/// All cases of a file in `data/frames`. Panics if it cannot be read.
pub fn read(file: &str) -> Vec<FrameCase> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/frames").join(file);
    let text = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let file: CaseFile = serde_json::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    file.cases
}

impl FrameCase {
    /// Index of a node.
    pub fn node(&self, id: &str) -> usize {
        self.nodes.iter().position(|node| node.id == id).unwrap_or_else(|| panic!("{}: no node {id}", self.id))
    }

    /// Index of a member.
    pub fn member(&self, id: &str) -> usize {
        self.members.iter().position(|member| member.id == id).unwrap_or_else(|| panic!("{}: no member {id}", self.id))
    }

    /// Length of a member in m.
    pub fn length(&self, id: &str) -> f64 {
        let member = &self.members[self.member(id)];
        let (from, to) = (&self.nodes[self.node(&member.i)], &self.nodes[self.node(&member.j)]);
        (to.x - from.x).hypot(to.y - from.y)
    }

    /// The frame to solve.
    pub fn frame(&self) -> Frame {
        let mut frame = Frame::default();
        for node in &self.nodes {
            frame.add_node(node.x, node.y);
        }
        for member in &self.members {
            frame.add_member(Member {
                release_i: member.release_i,
                release_j: member.release_j,
                ..Member::beam(self.node(&member.i), self.node(&member.j), member.E * member.I, member.E * member.A)
            });
        }
        for support in &self.supports {
            let SupportData { ux, uy, rz, .. } = *support;
            frame.supports.push(Support { node: self.node(&support.node), ux, uy, rz });
        }
        for spring in &self.springs {
            let dof = match spring.dof.as_str() {
                "ux" => Dof::Ux,
                "uy" => Dof::Uy,
                "rz" => Dof::Rz,
                other => panic!("{}: no direction {other}", self.id),
            };
            frame.springs.push(Spring { node: self.node(&spring.node), dof, k: spring.k });
        }
        frame
    }

    /// Its loads.
    pub fn loads(&self) -> LoadCase {
        let mut loads = LoadCase::default();
        for load in &self.loads {
            match load {
                LoadData::Node { node, Fx, Fy, Mz } => {
                    loads.nodal.push(NodalLoad { node: self.node(node), fx: *Fx, fy: *Fy, mz: *Mz });
                }
                LoadData::Dist { member, dir, w1, w2, a, b } => loads.distributed.push(DistributedLoad {
                    member: self.member(member),
                    axis: self.axis(dir),
                    w1: *w1,
                    w2: *w2,
                    a: *a,
                    b: *b,
                }),
                LoadData::Point { member, dir, P, a } => {
                    let (member, axis) = (self.member(member), self.axis(dir));
                    loads.point.push(PointLoad { member, axis, p: *P, a: *a });
                }
            }
        }
        loads
    }

    fn axis(&self, name: &str) -> Axis {
        match name {
            "X" => Axis::X,
            "Y" => Axis::Y,
            other => panic!("{}: no axis {other}", self.id),
        }
    }
}
