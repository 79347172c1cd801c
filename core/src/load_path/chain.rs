//! A straight line of members in a frame: how it is built, loaded and read, whichever way it runs.

use super::line::{Deflection, Envelope, Peak};
use crate::analysis::{Axis, DistributedLoad, ForceExtremes, Frame, LoadCase, Member, NodalLoad, PointLoad, Solution};
use crate::results::Station;
use crate::sorting::sort;

/// Stations on each member of a diagram.
const INTERVALS: usize = 8;

/// A load on a chain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BeamLoad {
    /// Linear from `w1` at `a` to `w2` at `b`, kN/m.
    Line { a: f64, b: f64, w1: f64, w2: f64 },
    /// `p` kN at `a`.
    Point { a: f64, p: f64 },
}

impl BeamLoad {
    /// The same, `factor` times as large.
    pub fn times(self, factor: f64) -> Self {
        match self {
            Self::Line { a, b, w1, w2 } => Self::Line { a, b, w1: w1 * factor, w2: w2 * factor },
            Self::Point { a, p } => Self::Point { a, p: p * factor },
        }
    }

    /// All of it, kN.
    pub fn total_kn(&self) -> f64 {
        match *self {
            Self::Point { p, .. } => p,
            Self::Line { a, b, w1, w2 } => (b - a) * (w1 + w2) / 2.0,
        }
    }
}

/// Members end to end on a straight line.
#[derive(Clone)]
pub struct Chain {
    /// Distance of each node along the line, m.
    pub nodes_m: Vec<f64>,
    pub first_node: usize,
    pub first_member: usize,
    /// Indices of nodes that are held or carried, in rising order.
    pub supports: Vec<usize>,
}

impl Chain {
    /// Adds a chain to `frame`. `point` gives the place of each distance; `supports_m` are among the nodes.
    pub fn build(
        frame: &mut Frame,
        ends_m: &[f64],
        supports_m: &[f64],
        point: impl Fn(f64) -> (f64, f64),
        member: impl Fn(usize, usize) -> Member,
    ) -> Self {
        let mut nodes_m: Vec<f64> = ends_m.iter().chain(supports_m).copied().collect();
        sort(&mut nodes_m, f64::total_cmp);
        nodes_m.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
        let first_node = frame.nodes.len();
        let first_member = frame.members.len();
        for &offset in &nodes_m {
            let (x, y) = point(offset);
            frame.add_node(x, y);
        }
        for i in 1..nodes_m.len() {
            frame.add_member(member(first_node + i - 1, first_node + i));
        }
        let held = |offset: f64| supports_m.iter().any(|place| (place - offset).abs() < 1e-6);
        let supports = (0..nodes_m.len()).filter(|&i| held(nodes_m[i])).collect();
        Self { nodes_m, first_node, first_member, supports }
    }

    /// Node of the frame at this distance.
    pub fn node_at(&self, offset_m: f64) -> Option<usize> {
        let index = self.nodes_m.iter().position(|node| (node - offset_m).abs() < 1e-6)?;
        Some(self.first_node + index)
    }

    pub fn last_node(&self) -> usize {
        self.first_node + self.nodes_m.len().saturating_sub(1)
    }

    pub fn start_m(&self) -> f64 {
        self.nodes_m.first().copied().unwrap_or(0.0)
    }

    pub fn end_m(&self) -> f64 {
        self.nodes_m.last().copied().unwrap_or(0.0)
    }

    /// Nodes of the frame that are supports.
    pub fn support_nodes(&self) -> impl Iterator<Item = usize> + '_ {
        self.supports.iter().map(|index| self.first_node + index)
    }

    /// Adds loads along `axis`, `sign` giving their direction.
    pub fn load(&self, loads: &[BeamLoad], axis: Axis, sign: f64, case: &mut LoadCase) {
        if self.nodes_m.len() < 2 {
            return;
        }
        let points = loads.iter().filter(|load| matches!(load, BeamLoad::Point { .. })).count();
        case.point.reserve(points);
        case.nodal.reserve(points);
        if points < loads.len() {
            case.distributed.reserve(2 * (loads.len() - points) + self.nodes_m.len());
        }
        for load in loads {
            match *load {
                BeamLoad::Point { a, p } if self.node_at(a).is_some() => {
                    let node = self.node_at(a).unwrap_or(self.first_node);
                    let (fx, fy) = if axis == Axis::X { (p * sign, 0.0) } else { (0.0, p * sign) };
                    case.nodal.push(NodalLoad { node, fx, fy, mz: 0.0 });
                }
                BeamLoad::Point { a, p } => {
                    let last = self.nodes_m.len() - 2;
                    let span = self.nodes_m[1..=last].partition_point(|&node| node < a - 1e-9);
                    let along = (a - self.nodes_m[span]).clamp(0.0, self.nodes_m[span + 1] - self.nodes_m[span]);
                    case.point.push(PointLoad { member: self.first_member + span, axis, p: p * sign, a: along });
                }
                BeamLoad::Line { a, b, w1, w2 } => {
                    let w = |x: f64| (w1 + (w2 - w1) * (x - a) / (b - a)) * sign;
                    for (span, pair) in self.nodes_m.windows(2).enumerate() {
                        let (from, to) = (a.max(pair[0]), b.min(pair[1]));
                        if to - from > 1e-9 {
                            case.distributed.push(DistributedLoad {
                                member: self.first_member + span,
                                axis,
                                w1: w(from),
                                w2: w(to),
                                a: from - pair[0],
                                b: to - pair[0],
                            });
                        }
                    }
                }
            }
        }
    }

    /// Greatest moment, shear and deflection along the chain.
    pub fn envelope(&self, solution: &Solution) -> Envelope {
        let mut envelope = Envelope::default();
        for span in self.supports.windows(2) {
            self.raise_span(solution, span[0], span[1], &mut envelope);
        }
        let end = self.nodes_m.len().saturating_sub(1);
        let roots = [self.supports.first().map(|&root| (root, 0)), self.supports.last().map(|&root| (root, end))];
        for (root, tip) in roots.into_iter().flatten().filter(|(root, tip)| root != tip) {
            for member in root.min(tip)..root.max(tip) {
                raise(&mut envelope, self.nodes_m[member], &solution.force_extremes(self.first_member + member));
            }
            let drop = self.deflection_at(solution, tip) - self.deflection_at(solution, root);
            let span_m = 2.0 * (self.nodes_m[tip] - self.nodes_m[root]).abs();
            let peak = Peak::among(0, [(self.nodes_m[tip], drop)]);
            envelope.deflection.raise(Deflection { peak, span_m });
        }
        envelope
    }

    /// Takes in a span between two nodes: deflections are measured from the straight line between them.
    fn raise_span(&self, solution: &Solution, a: usize, b: usize, envelope: &mut Envelope) {
        let [from, to] = [a, b].map(|node| self.deflection_at(solution, node));
        let span_m = self.nodes_m[b] - self.nodes_m[a];
        let slope = (to - from) / span_m;
        for (member, &start) in self.nodes_m.iter().enumerate().take(b).skip(a) {
            let line = (from + slope * (start - self.nodes_m[a]), slope);
            let (forces, (off, x)) = solution.extremes_from_line(self.first_member + member, line);
            raise(envelope, start, &forces);
            envelope.deflection.raise(Deflection { peak: Peak::among(0, [(start + x, off)]), span_m });
        }
    }

    /// Greatest moment and shear along the chain.
    pub fn forces(&self, solution: &Solution) -> Envelope {
        let mut envelope = Envelope::default();
        for (index, start) in self.nodes_m.iter().enumerate().take(self.nodes_m.len().saturating_sub(1)) {
            raise(&mut envelope, *start, &solution.force_extremes(self.first_member + index));
        }
        envelope
    }

    /// Forces and shape at places along the chain.
    pub fn stations(&self, solution: &Solution) -> Vec<Station> {
        let station = |(member, x): (usize, f64)| {
            let [moment_knm, shear_kn, deflection_m] = solution.bending_at(self.first_member + member, x);
            Station { s_m: self.nodes_m[member] + x, moment_knm, shear_kn, deflection_m }
        };
        let members = 0..self.nodes_m.len().saturating_sub(1);
        let mut stations = Vec::with_capacity(members.len() * (INTERVALS + 1));
        stations.extend(members.flat_map(|member| self.places(member)).map(station));
        stations
    }

    /// Evenly spaced places on a member, as its index in the chain and the distance from its start.
    fn places(&self, member: usize) -> impl Iterator<Item = (usize, f64)> + use<> {
        let length = self.nodes_m[member + 1] - self.nodes_m[member];
        (0..=INTERVALS).map(move |i| (member, length * i as f64 / INTERVALS as f64))
    }

    /// Deflection across the chain at a node.
    fn deflection_at(&self, solution: &Solution, node: usize) -> f64 {
        let last = self.nodes_m.len().saturating_sub(2);
        let member = node.min(last);
        solution.deflection_at(self.first_member + member, self.nodes_m[node] - self.nodes_m[member])
    }
}

/// Takes in the forces of a member that starts at this distance.
fn raise(envelope: &mut Envelope, start_m: f64, extremes: &ForceExtremes) {
    let peak = |(value, x): (f64, f64)| (start_m + x, value);
    envelope.moment.raise(Peak::among(0, [extremes.moment_max, extremes.moment_min].map(peak)));
    envelope.shear.raise(Peak::among(0, [extremes.shear_max, extremes.shear_min].map(peak)));
}
