//! Continuous beams, put to the frame solver.

use crate::analysis::{Axis, DistributedLoad, Frame, FrameError, LoadCase, Member, PointLoad, Solution, Support};
use crate::results::Station;

/// A load on a beam, positive against its supports.
#[derive(Clone, Copy, Debug)]
pub enum BeamLoad {
    /// Linear from `w1` at `a` to `w2` at `b`, kN/m.
    Line { a: f64, b: f64, w1: f64, w2: f64 },
    /// `p` kN at `a`.
    Point { a: f64, p: f64 },
}

/// Stations on each member of a diagram.
const INTERVALS: usize = 8;

/// A straight beam on rigid supports, with overhangs where the supports stand inside its ends.
pub struct ContinuousBeam {
    frame: Frame,
    /// Distance of each node from the start.
    nodes: Vec<f64>,
    /// Node of each support.
    supports: Vec<usize>,
}

/// What one load case does to a beam.
pub struct BeamResult {
    /// Support forces, positive against the load, in the order of the supports.
    pub reactions: Vec<f64>,
    /// Forces and shape along the beam.
    pub line: LineResult,
}

/// Forces and shape along a straight line of members.
#[derive(Clone, Debug, Default)]
pub struct LineResult {
    /// Greatest bending moment, absolute.
    pub moment: Peak,
    /// Greatest shear, absolute.
    pub shear: Peak,
    /// Deflection that is greatest for its span.
    pub deflection: SpanDeflection,
    /// Forces and shape along the beam.
    pub stations: Vec<Station>,
}

/// A value and where it stands, from the start of the beam.
#[derive(Clone, Copy, Debug, Default)]
pub struct Peak {
    pub value: f64,
    pub at_m: f64,
}

impl Peak {
    pub fn raise(&mut self, value: f64, at_m: f64) {
        if value.abs() > self.value {
            *self = Self { value: value.abs(), at_m };
        }
    }
}

/// Deflection of one span from the straight line between its ends. A cantilever counts as twice its length, as its
/// limit in EN 1995-1-1, 7.2 is twice that of a span.
#[derive(Clone, Copy, Debug, Default)]
pub struct SpanDeflection {
    pub deflection_m: f64,
    pub span_m: f64,
    pub at_m: f64,
}

impl SpanDeflection {
    pub fn raise(&mut self, other: Self) {
        if self.span_m == 0.0 || other.deflection_m * self.span_m > self.deflection_m * other.span_m {
            *self = other;
        }
    }
}

impl ContinuousBeam {
    /// A beam of `length_m` on supports at these distances from its start, in rising order.
    pub fn new(length_m: f64, supports_m: &[f64], ei_knm2: f64) -> Self {
        let mut nodes = vec![0.0];
        let mut supports = Vec::with_capacity(supports_m.len());
        for &at in supports_m {
            if at - nodes[nodes.len() - 1] > 1e-6 {
                nodes.push(at);
            }
            supports.push(nodes.len() - 1);
        }
        if length_m - nodes[nodes.len() - 1] > 1e-6 {
            nodes.push(length_m);
        }
        let mut frame = Frame::default();
        for &x in &nodes {
            frame.add_node(x, 0.0);
        }
        for i in 1..nodes.len() {
            frame.add_member(Member::beam(i - 1, i, ei_knm2, 1e6));
        }
        for (index, &node) in supports.iter().enumerate() {
            frame.supports.push(Support { node, ux: index == 0, uy: true, rz: false });
        }
        Self { frame, nodes, supports }
    }

    /// Solves the beam for one load case.
    pub fn solve(&self, loads: &[BeamLoad]) -> Result<BeamResult, FrameError> {
        let mut results = self.solve_each(&[loads.to_vec()])?;
        Ok(results.remove(0))
    }

    /// Solves the beam for many load cases on one factorisation.
    pub fn solve_each(&self, cases: &[Vec<BeamLoad>]) -> Result<Vec<BeamResult>, FrameError> {
        let factorised = self.frame.factorise()?;
        cases.iter().map(|loads| Ok(self.read(&factorised.solve(&self.load_case(loads))?))).collect()
    }

    fn load_case(&self, loads: &[BeamLoad]) -> LoadCase {
        let mut case = LoadCase::default();
        let members = self.frame.members.len();
        for load in loads {
            match *load {
                BeamLoad::Point { a, p } => {
                    let member = self.nodes[1..members].partition_point(|&node| node < a).min(members - 1);
                    let along = (a - self.nodes[member]).clamp(0.0, self.nodes[member + 1] - self.nodes[member]);
                    case.point.push(PointLoad { member, axis: Axis::Y, p: -p, a: along });
                }
                BeamLoad::Line { a, b, w1, w2 } => {
                    for member in 0..members {
                        let (start, end) = (self.nodes[member], self.nodes[member + 1]);
                        let (from, to) = (a.max(start), b.min(end));
                        if to - from > 1e-9 {
                            let w = |x: f64| w1 + (w2 - w1) * (x - a) / (b - a);
                            case.distributed.push(DistributedLoad {
                                member,
                                axis: Axis::Y,
                                w1: -w(from),
                                w2: -w(to),
                                a: from - start,
                                b: to - start,
                            });
                        }
                    }
                }
            }
        }
        case
    }

    fn read(&self, solution: &Solution) -> BeamResult {
        BeamResult {
            reactions: self.supports.iter().map(|&node| solution.reaction(node).fy).collect(),
            line: LineResult::read(solution, 0, &self.nodes, &self.supports),
        }
    }
}

impl LineResult {
    /// Reads a straight chain of members, the first of which is `first_member`, with nodes at these distances from
    /// its start. `supports` are indices of nodes in rising order.
    pub fn read(solution: &Solution, first_member: usize, nodes_m: &[f64], supports: &[usize]) -> Self {
        let mut line = Self::default();
        let (first, last) = (supports.first().copied().unwrap_or(0), supports.last().copied().unwrap_or(0));
        for (index, pair) in nodes_m.windows(2).enumerate() {
            let (start, length) = (pair[0], pair[1] - pair[0]);
            let member = first_member + index;
            let extremes = solution.extremes(member);
            for peak in [extremes.moment_max, extremes.moment_min] {
                line.moment.raise(peak.value, start + peak.x);
            }
            for peak in [extremes.shear_max, extremes.shear_min] {
                line.shear.raise(peak.value, start + peak.x);
            }
            line.deflection.raise(if index < first || index >= last {
                let (tip, root) = if index < first { (0.0, length) } else { (length, 0.0) };
                let drop = solution.deflection_at(member, tip) - solution.deflection_at(member, root);
                SpanDeflection { deflection_m: drop.abs(), span_m: 2.0 * length, at_m: start + tip }
            } else {
                let peak = extremes.deflection_from_chord;
                SpanDeflection { deflection_m: peak.value.abs(), span_m: length, at_m: start + peak.x }
            });
            line.stations.extend((0..=INTERVALS).map(|i| {
                let x = length * i as f64 / INTERVALS as f64;
                Station {
                    s_m: start + x,
                    moment_knm: solution.moment_at(member, x),
                    shear_kn: solution.shear_at(member, x),
                    deflection_m: solution.deflection_at(member, x),
                }
            }));
        }
        line
    }
}
