//! Forces and shape along a straight line of members.

use crate::analysis::Solution;
use crate::results::Station;

/// Stations on each member of a diagram.
const INTERVALS: usize = 8;

/// A greatest value, by size, and where and when it stands.
#[derive(Clone, Copy, Debug, Default)]
pub struct Peak {
    pub value: f64,
    pub at_m: f64,
    /// Index of the load case.
    pub case: usize,
}

impl Peak {
    /// The value of greatest size in a list of places and values.
    pub fn among(case: usize, values: impl IntoIterator<Item = (f64, f64)>) -> Self {
        let mut peak = Self { case, ..Self::default() };
        values.into_iter().for_each(|(at_m, value)| peak.raise(Self { value: value.abs(), at_m, case }));
        peak
    }

    pub fn raise(&mut self, other: Self) {
        if other.value > self.value {
            *self = other;
        }
    }

    pub fn times(self, factor: f64) -> Self {
        Self { value: self.value * factor, ..self }
    }
}

/// Deflection of one span from the straight line between its ends. A cantilever counts as twice its length, as its
/// limit in EN 1995-1-1, 7.2 is twice that of a span.
#[derive(Clone, Copy, Debug, Default)]
pub struct Deflection {
    /// Its size, m.
    pub peak: Peak,
    pub span_m: f64,
}

impl Deflection {
    pub fn raise(&mut self, other: Self) {
        if self.span_m == 0.0 || other.peak.value * self.span_m > self.peak.value * other.span_m {
            *self = other;
        }
    }
}

/// Greatest effects on a member over all its load cases.
#[derive(Clone, Copy, Debug, Default)]
pub struct Envelope {
    /// kNm, or kNm/m for boards.
    pub moment: Peak,
    /// kN, or kN/m for boards.
    pub shear: Peak,
    /// Greatest support force, kN.
    pub bearing: Peak,
    pub deflection: Deflection,
}

impl Envelope {
    pub fn raise(&mut self, other: &Self) {
        self.moment.raise(other.moment);
        self.shear.raise(other.shear);
        self.bearing.raise(other.bearing);
        self.deflection.raise(other.deflection);
    }

    /// The same under `factor` times the load.
    pub fn times(&self, factor: f64) -> Self {
        Self {
            moment: self.moment.times(factor),
            shear: self.shear.times(factor),
            bearing: self.bearing.times(factor),
            deflection: Deflection { peak: self.deflection.peak.times(factor), ..self.deflection },
        }
    }

    /// The same, told of one place and case.
    pub fn told_of(mut self, at_m: f64, case: usize) -> Self {
        for peak in [&mut self.moment, &mut self.shear, &mut self.bearing, &mut self.deflection.peak] {
            (peak.at_m, peak.case) = (at_m, case);
        }
        self
    }
}

/// What one load case does to a line.
#[derive(Clone, Debug, Default)]
pub struct LineResult {
    /// Without bearing, which the supports know.
    pub envelope: Envelope,
    pub stations: Vec<Station>,
}

impl LineResult {
    /// Reads a chain of members, the first of which is `first_member`, with nodes at these places. `supports` are
    /// indices of nodes in rising order.
    pub fn read(solution: &Solution, first_member: usize, nodes_m: &[f64], supports: &[usize]) -> Self {
        let mut line = Self::default();
        for (index, pair) in nodes_m.windows(2).enumerate() {
            let (start, length) = (pair[0], pair[1] - pair[0]);
            let member = first_member + index;
            let extremes = solution.extremes(member);
            let peak = |(value, x): (f64, f64)| (start + x, value);
            line.envelope.moment.raise(Peak::among(0, [extremes.moment_max, extremes.moment_min].map(peak)));
            line.envelope.shear.raise(Peak::among(0, [extremes.shear_max, extremes.shear_min].map(peak)));
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
        line.envelope.deflection = line.deflection(solution, first_member, nodes_m, supports);
        line
    }

    /// The span or cantilever that deflects most for its length.
    fn deflection(&self, solution: &Solution, first_member: usize, nodes_m: &[f64], supports: &[usize]) -> Deflection {
        let mut worst = Deflection::default();
        let (Some(&first), Some(&last), Some(end)) = (supports.first(), supports.last(), nodes_m.len().checked_sub(1))
        else {
            return worst;
        };
        for pair in supports.windows(2) {
            let (a, b) = (pair[0], pair[1]);
            let peak = if b == a + 1 {
                let (value, x) = solution.extremes(first_member + a).deflection_from_chord;
                (nodes_m[a] + x, value)
            } else {
                self.from_chord(a, b)
            };
            worst.raise(Deflection { peak: Peak::among(0, [peak]), span_m: nodes_m[b] - nodes_m[a] });
        }
        for (root, tip) in [(first, 0), (last, end)] {
            if root != tip {
                let at =
                    |node: usize| self.stations[(node * (INTERVALS + 1)).min(self.stations.len() - 1)].deflection_m;
                let drop = at(tip) - at(root);
                let span_m = 2.0 * (nodes_m[tip] - nodes_m[root]).abs();
                worst.raise(Deflection { peak: Peak::among(0, [(nodes_m[tip], drop)]), span_m });
            }
        }
        worst
    }

    /// Greatest distance from the chord of a span of several members between two nodes: the station furthest away,
    /// and the top of the parabola through it and its neighbours.
    fn from_chord(&self, a: usize, b: usize) -> (f64, f64) {
        let span = &self.stations[a * (INTERVALS + 1)..b * (INTERVALS + 1)];
        let (Some(start), Some(end)) = (span.first(), span.last()) else { return (0.0, 0.0) };
        let slope = (end.deflection_m - start.deflection_m) / (end.s_m - start.s_m);
        let off = |station: &Station| station.deflection_m - start.deflection_m - slope * (station.s_m - start.s_m);
        let mut points: Vec<(f64, f64)> = span.iter().map(|station| (station.s_m, off(station))).collect();
        points.dedup_by(|p, q| (p.0 - q.0).abs() < 1e-9);
        let Some(top) = (0..points.len()).max_by(|&i, &j| points[i].1.abs().total_cmp(&points[j].1.abs())) else {
            return (0.0, 0.0);
        };
        let (Some(&p), Some(&q)) = (points.get(top.wrapping_sub(1)), points.get(top + 1)) else { return points[top] };
        let (x, y) = points[top];
        let (left, right) = ((y - p.1) / (x - p.0), (q.1 - y) / (q.0 - x));
        let curvature = (right - left) / (q.0 - p.0);
        if curvature.abs() < 1e-15 {
            return points[top];
        }
        let slope_at_top = (left * (q.0 - x) + right * (x - p.0)) / (q.0 - p.0);
        let step = (-slope_at_top / (2.0 * curvature)).clamp(p.0 - x, q.0 - x);
        (x + step, y + slope_at_top * step + curvature * step * step)
    }
}
