//! Frame cases as JSON: a frame, its loads, and which analysis to make.
//!
//! A file is `{"cases": [case, …]}`. Units m, kN, kPa, m², m⁴, rad; axes and signs as in [`crate::analysis`]. Names that
//! are not listed are passed over, and all but those in bold may be left out.
//!
//! - A case: **`id`**, `title`, **`analysis`** (`linear`, `linear_buckling`, `second_order`), **`nodes`**,
//!   **`members`**, `supports`, `springs`, `contacts`, `loads`.
//! - A node: **`id`**, **`x`**, **`y`**.
//! - A member: **`id`**, **`i`**, **`j`**, **`E`**, **`A`**, **`I`** (0 for a bar), `GA` (shear stiffness),
//!   `release_i`, `release_j` (moment), `axial_release`, `shear_release`, `arms` (pairs: at i, at j),
//!   `acts` (`both`, `tension`, `compression`), `weight` (kN/m, for `self_weight`).
//! - A support: **`node`**, `ux`, `uy`, `rz`. A spring: **`node`**, **`dof`** (`ux`, `uy`, `rz`), **`k`**.
//! - A contact: **`node`**, **`dof`**, `pushes` (1 or −1), `k` (rigid if left out), `grips` (another direction, held
//!   only while it pushes).
//! - Loads by `type`: `node` (**`node`**, `Fx`, `Fy`, `Mz`); `dist` (**`member`**, **`dir`**, **`w1`**, **`w2`**,
//!   **`a`**, **`b`**); `point` (**`member`**, **`dir`**, **`P`**, **`a`**); `settlement` (**`node`**, **`dof`**,
//!   **`by`**); `strain` (**`member`**, `axial`, `curvature`); `gap` (**`member`**, **`a`**, `along`, `across`, `turn`);
//!   `self_weight` (`factor`). Directions: `X`, `Y` global, `x`, `y` of the member.

use super::{
    Acts, Axis, Contact, DistributedLoad, Dof, Frame, FrameError, Gap, LoadCase, Member, NodalLoad, PointLoad,
    Settlement, Spring, Strain, Support,
};
use serde::Deserialize;
use std::collections::BTreeMap;

/// Why a file of frame cases cannot be read or solved.
#[derive(Debug, thiserror::Error)]
pub enum CaseError {
    /// The text is not such a file.
    #[error("not a file of frame cases: {0}")]
    Syntax(#[from] serde_json::Error),
    /// Two nodes or members of the same name.
    #[error("case {case}: {what} {id} is there twice; rename one")]
    Twice {
        /// The case.
        case: String,
        /// Node or member.
        what: &'static str,
        /// Its name.
        id: String,
    },
    /// Something names a node or member that is not there.
    #[error("case {case}: there is no {what} {id}; add it or correct the name")]
    Unknown {
        /// The case.
        case: String,
        /// Node or member.
        what: &'static str,
        /// Its name.
        id: String,
    },
    /// The frame cannot be solved.
    #[error("case {case}: {error}")]
    Frame {
        /// The case.
        case: String,
        /// Why.
        error: FrameError,
    },
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

/// A case as it is written.
#[derive(Clone, Debug, Deserialize)]
pub struct Case {
    /// Its name.
    pub id: String,
    /// What it is, in words.
    #[serde(default)]
    pub title: String,
    /// What to compute.
    pub analysis: Analysis,
    nodes: Vec<NodeData>,
    members: Vec<MemberData>,
    #[serde(default)]
    supports: Vec<SupportData>,
    #[serde(default)]
    springs: Vec<SpringData>,
    #[serde(default)]
    contacts: Vec<ContactData>,
    #[serde(default)]
    loads: Vec<LoadData>,
}

/// A case ready to be solved.
#[derive(Clone, Debug)]
pub struct ReadCase {
    /// The frame.
    pub frame: Frame,
    /// Its loads.
    pub loads: LoadCase,
    /// Names of the nodes in their order.
    pub nodes: Vec<String>,
    /// Names of the members in their order.
    pub members: Vec<String>,
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
    GA: Option<f64>,
    #[serde(default)]
    release_i: bool,
    #[serde(default)]
    release_j: bool,
    #[serde(default)]
    axial_release: [bool; 2],
    #[serde(default)]
    shear_release: [bool; 2],
    #[serde(default)]
    arms: [[f64; 2]; 2],
    #[serde(default)]
    acts: Acts,
    #[serde(default)]
    weight: f64,
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
    dof: Dof,
    k: f64,
}

#[derive(Clone, Debug, Deserialize)]
struct ContactData {
    node: String,
    dof: Dof,
    #[serde(default = "one")]
    pushes: f64,
    k: Option<f64>,
    grips: Option<Dof>,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(tag = "type", rename_all = "snake_case")]
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
        dir: Axis,
        w1: f64,
        w2: f64,
        a: f64,
        b: f64,
    },
    Point {
        member: String,
        dir: Axis,
        P: f64,
        a: f64,
    },
    Settlement {
        node: String,
        dof: Dof,
        by: f64,
    },
    Strain {
        member: String,
        #[serde(default)]
        axial: f64,
        #[serde(default)]
        curvature: f64,
    },
    Gap {
        member: String,
        a: f64,
        #[serde(default)]
        along: f64,
        #[serde(default)]
        across: f64,
        #[serde(default)]
        turn: f64,
    },
    SelfWeight {
        #[serde(default = "one")]
        factor: f64,
    },
}

fn one() -> f64 {
    1.0
}

#[derive(Deserialize)]
struct CaseFile {
    cases: Vec<Case>,
}

/// All cases of a file.
pub fn read_cases(text: &str) -> Result<Vec<Case>, CaseError> {
    Ok(serde_json::from_str::<CaseFile>(text)?.cases)
}

impl Case {
    /// The frame and its loads.
    pub fn read(&self) -> Result<ReadCase, CaseError> {
        let nodes = Names::new(self, "node", self.nodes.iter().map(|node| &node.id))?;
        let members = Names::new(self, "member", self.members.iter().map(|member| &member.id))?;
        let mut frame = Frame::default();
        for node in &self.nodes {
            frame.add_node(node.x, node.y);
        }
        for data in &self.members {
            frame.add_member(Member {
                ga: data.GA.unwrap_or(f64::INFINITY),
                release_i: data.release_i,
                release_j: data.release_j,
                axial_release: data.axial_release,
                shear_release: data.shear_release,
                arms: data.arms,
                acts: data.acts,
                weight: data.weight,
                ..Member::beam(nodes.find(&data.i)?, nodes.find(&data.j)?, data.E * data.I, data.E * data.A)
            });
        }
        for support in &self.supports {
            let SupportData { ux, uy, rz, .. } = *support;
            frame.supports.push(Support { node: nodes.find(&support.node)?, ux, uy, rz });
        }
        for spring in &self.springs {
            frame.springs.push(Spring { node: nodes.find(&spring.node)?, dof: spring.dof, k: spring.k });
        }
        for contact in &self.contacts {
            frame.contacts.push(Contact {
                node: nodes.find(&contact.node)?,
                dof: contact.dof,
                pushes_positive: contact.pushes > 0.0,
                k: contact.k.unwrap_or(f64::INFINITY),
                grips: contact.grips,
            });
        }
        let mut loads = LoadCase::default();
        for load in &self.loads {
            load.add_to(&mut loads, &frame, &nodes, &members)?;
        }
        Ok(ReadCase { frame, loads, nodes: nodes.list(), members: members.list() })
    }

    /// An error of the solver, with the name of the case.
    pub fn error(&self, error: FrameError) -> CaseError {
        CaseError::Frame { case: self.id.clone(), error }
    }
}

impl LoadData {
    fn add_to(&self, loads: &mut LoadCase, frame: &Frame, nodes: &Names, members: &Names) -> Result<(), CaseError> {
        match self {
            Self::Node { node, Fx, Fy, Mz } => {
                loads.nodal.push(NodalLoad { node: nodes.find(node)?, fx: *Fx, fy: *Fy, mz: *Mz });
            }
            Self::Dist { member, dir, w1, w2, a, b } => {
                let (member, axis) = (members.find(member)?, *dir);
                loads.distributed.push(DistributedLoad { member, axis, w1: *w1, w2: *w2, a: *a, b: *b });
            }
            Self::Point { member, dir, P, a } => {
                loads.point.push(PointLoad { member: members.find(member)?, axis: *dir, p: *P, a: *a });
            }
            Self::Settlement { node, dof, by } => {
                loads.settlements.push(Settlement { node: nodes.find(node)?, dof: *dof, by: *by });
            }
            Self::Strain { member, axial, curvature } => {
                loads.strains.push(Strain { member: members.find(member)?, axial: *axial, curvature: *curvature });
            }
            Self::Gap { member, a, along, across, turn } => {
                let member = members.find(member)?;
                loads.gaps.push(Gap { member, a: *a, along: *along, across: *across, turn: *turn });
            }
            Self::SelfWeight { factor } => loads.add(1.0, &frame.self_weight(*factor)),
        }
        Ok(())
    }
}

/// Names of the nodes or members of a case.
struct Names<'a> {
    case: &'a str,
    what: &'static str,
    places: BTreeMap<&'a str, usize>,
}

impl<'a> Names<'a> {
    fn new(case: &'a Case, what: &'static str, names: impl Iterator<Item = &'a String>) -> Result<Self, CaseError> {
        let mut places = BTreeMap::new();
        for (place, id) in names.enumerate() {
            if places.insert(id.as_str(), place).is_some() {
                return Err(CaseError::Twice { case: case.id.clone(), what, id: id.clone() });
            }
        }
        Ok(Self { case: &case.id, what, places })
    }

    fn find(&self, id: &str) -> Result<usize, CaseError> {
        let unknown = || CaseError::Unknown { case: self.case.into(), what: self.what, id: id.into() };
        self.places.get(id).copied().ok_or_else(unknown)
    }

    fn list(&self) -> Vec<String> {
        let mut list = vec![String::new(); self.places.len()];
        self.places.iter().for_each(|(id, &place)| list[place] = (*id).into());
        list
    }
}
