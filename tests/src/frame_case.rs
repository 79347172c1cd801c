//! Frame cases with expected values, read from `data/frames`; its README tells their format.

use falsewright_core::analysis::Member;
use falsewright_core::analysis::case::{Case, ReadCase};
use serde::Deserialize;
use std::collections::BTreeMap;
use std::path::Path;

/// One case and what is known of it.
#[derive(Clone, Debug, Deserialize)]
pub struct FrameCase {
    /// The case.
    #[serde(flatten)]
    pub case: Case,
    /// Values to find.
    pub expected: Expected,
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

/// Index of a node or member among the names of its kind. Panics if it is not there.
pub fn index(names: &[String], id: &str) -> usize {
    names.iter().position(|name| name == id).unwrap_or_else(|| panic!("no {id}"))
}

/// Length of a member in m.
pub fn length(case: &ReadCase, member: usize) -> f64 {
    let Member { i, j, .. } = case.frame.members[member];
    let (from, to) = (case.frame.nodes[i], case.frame.nodes[j]);
    (to.x - from.x).hypot(to.y - from.y)
}
