use super::element::Element;
use super::loads::{LocalForce, LocalLoad, LocalLoads};

/// Forces and movement at one place of a member, in its local axes.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct State {
    /// Axial force, tension positive.
    pub axial: f64,
    /// Force across the undeformed axis: the shear, less the part of the axial force that the slope turns across.
    pub transverse: f64,
    pub moment: f64,
    pub slope: f64,
    pub deflection: f64,
}

/// A stretch of a member on which the load is linear.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Piece {
    /// Where it begins, from node i.
    pub x: f64,
    pub length: f64,
    /// Load at its start along local x and y, and how it grows.
    pub load: [f64; 2],
    pub growth: [f64; 2],
    /// Force at its start along local x and y.
    pub force: [f64; 2],
    /// 1 / EI; 0 for a bar.
    pub compliance: f64,
    /// Axial force that acts on the deflections: 0 in a linear analysis.
    pub tension: f64,
    /// Just after the force at its start.
    pub start: State,
}

impl Piece {
    pub fn end(&self) -> f64 {
        self.x + self.length
    }

    /// Solution of `EI·v'''' − N·v'' = q` from the start of the piece.
    pub fn at(&self, x: f64) -> State {
        let s = transfer(self.tension * self.compliance, x);
        let State { axial, transverse, moment, slope, deflection } = self.start;
        let ([p, q], [dp, dq], c) = (self.load, self.growth, self.compliance);
        State {
            axial: axial - x * (p + 0.5 * dp * x),
            transverse: transverse + x * (q + 0.5 * dq * x),
            moment: self.tension * slope * s[1] + moment * s[0] + transverse * s[1] + q * s[2] + dq * s[3],
            slope: slope * s[0] + c * (moment * s[1] + transverse * s[2] + q * s[3] + dq * s[4]),
            deflection: deflection + slope * s[1] + c * (moment * s[2] + transverse * s[3] + q * s[4] + dq * s[5]),
        }
    }

    /// dM/dx where the state is `state`.
    pub fn shear(&self, state: &State) -> f64 {
        state.transverse + self.tension * state.slope
    }

    /// d²M/dx² at `x`, where the state is `state`.
    pub fn shear_growth(&self, x: f64, state: &State) -> f64 {
        self.load[1] + self.growth[1] * x + self.tension * self.compliance * state.moment
    }
}

/// `s_k(x) = Σ κᵐ x²ᵐ⁺ᵏ / (2m+k)!` for k from 0 to 5, where `κ = N/EI`: each is the derivative of the next.
///
/// With κ = 0 these are the powers of the linear theory, else the sines or hyperbolic sines of the beam-column.
pub(super) fn transfer(kappa: f64, x: f64) -> [f64; 6] {
    let square = x * x;
    let (p2, p3, p4, p5) = (square / 2.0, square * x / 6.0, square * square / 24.0, square * square * x / 120.0);
    if kappa == 0.0 {
        return [1.0, x, p2, p3, p4, p5];
    }
    let z = kappa * square;
    let (s4, s5) = (p4 * series(z, 4.0), p5 * series(z, 5.0));
    let (s2, s3) = (p2 + kappa * s4, p3 + kappa * s5);
    [1.0 + kappa * s2, x + kappa * s3, s2, s3, s4, s5]
}

/// `Σ zᵐ k! / (2m+k)!`
fn series(z: f64, k: f64) -> f64 {
    let (mut sum, mut term, mut n) = (1.0, 1.0, k);
    while n < 400.0 {
        term *= z / ((n + 1.0) * (n + 2.0));
        n += 2.0;
        sum += term;
        if term.abs() <= 1e-3 * f64::EPSILON * f64::abs(sum) {
            break;
        }
    }
    sum
}

/// What loads do to a member that starts at rest: the state at its end, and the integral of the axial force.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Response {
    pub end: State,
    pub axial_integral: f64,
}

/// The pieces of all members, one member after another.
#[derive(Clone, Debug, Default)]
pub(super) struct Pieces {
    pub all: Vec<Piece>,
    /// First piece of each member; one more than there are members.
    pub starts: Vec<usize>,
}

impl Pieces {
    pub fn of(&self, member: usize) -> &[Piece] {
        &self.all[self.starts[member]..self.starts[member + 1]]
    }

    pub fn of_mut(&mut self, member: usize) -> &mut [Piece] {
        &mut self.all[self.starts[member]..self.starts[member + 1]]
    }

    /// Cuts members where their loads jump or kink.
    pub fn cut(elements: &[Element], loads: &LocalLoads) -> Self {
        let mut pieces = Self { all: Vec::with_capacity(2 * elements.len()), starts: vec![0] };
        let (mut lines, mut forces) = (loads.lines.as_slice(), loads.forces.as_slice());
        let mut breaks = Vec::new();
        for (member, element) in elements.iter().enumerate() {
            let (own_lines, own_forces);
            (own_lines, lines) = lines.split_at(lines.partition_point(|load| load.member == member));
            (own_forces, forces) = forces.split_at(forces.partition_point(|load| load.member == member));
            element.breaks(own_lines, own_forces, &mut breaks);
            for ends in breaks.windows(2) {
                pieces.all.push(element.piece(ends[0], ends[1], own_lines, own_forces));
            }
            pieces.starts.push(pieces.all.len());
        }
        pieces
    }

    /// The piece of a member at `x` from node i, and the state there.
    pub fn at(&self, member: usize, x: f64) -> (&Piece, State) {
        let pieces = self.of(member);
        let piece = &pieces[pieces.partition_point(|piece| piece.x <= x).max(1) - 1];
        (piece, piece.at((x - piece.x).clamp(0.0, piece.length)))
    }

    /// Makes one member of the parts of each, where `starts` are the first parts.
    pub fn join(&mut self, starts: &[usize]) {
        for parts in starts.windows(2) {
            let mut before = 0.0;
            for part in parts[0]..parts[1] {
                let pieces = self.of_mut(part);
                let length = pieces.last().map_or(0.0, Piece::end);
                for piece in pieces {
                    piece.x += before;
                }
                before += length;
            }
        }
        self.starts = starts.iter().map(|&part| self.starts[part]).collect();
    }

    /// Response of a member at rest at its start.
    pub fn response(&self, member: usize) -> Response {
        let mut response = Response::default();
        for piece in self.of(member) {
            let mut piece = *piece;
            piece.start = response.end.after(piece.force);
            let ([p, _], [dp, _], l) = (piece.load, piece.growth, piece.length);
            response.axial_integral += l * (piece.start.axial - l * (p / 2.0 + dp * l / 6.0));
            response.end = piece.at(l);
        }
        response
    }

    /// Fills in the states of a member from the state at its start.
    pub fn set_start(&mut self, member: usize, mut state: State) {
        for piece in self.of_mut(member) {
            piece.start = state.after(piece.force);
            state = piece.at(piece.length);
        }
    }
}

impl State {
    fn after(self, [along, across]: [f64; 2]) -> Self {
        Self { axial: self.axial - along, transverse: self.transverse + across, ..self }
    }
}

impl Element {
    fn breaks(&self, lines: &[LocalLoad], forces: &[LocalForce], breaks: &mut Vec<f64>) {
        breaks.clear();
        breaks.extend([0.0, self.length]);
        breaks.extend(lines.iter().flat_map(|load| [load.a, load.b]));
        breaks.extend(forces.iter().map(|load| load.x));
        breaks.sort_unstable_by(f64::total_cmp);
        breaks.dedup();
    }

    fn piece(&self, from: f64, to: f64, lines: &[LocalLoad], forces: &[LocalForce]) -> Piece {
        let mut piece = Piece {
            x: from,
            length: to - from,
            compliance: self.compliance(),
            tension: self.tension,
            ..Piece::default()
        };
        for load in lines.iter().filter(|load| load.a <= from && to <= load.b) {
            for axis in 0..2 {
                let growth = (load.at_b[axis] - load.at_a[axis]) / (load.b - load.a);
                piece.load[axis] += load.at_a[axis] + growth * (from - load.a);
                piece.growth[axis] += growth;
            }
        }
        for load in forces.iter().filter(|load| load.x == from) {
            piece.force[0] += load.force[0];
            piece.force[1] += load.force[1];
        }
        piece
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn transfer_functions_are_those_of_the_beam_column() {
        let (k, x) = (1.3, 2.1);
        let (sine, cosine) = (libm::sin(k * x), libm::cos(k * x));
        let s = transfer(-k * k, x);
        let expected = [cosine, sine / k, (1.0 - cosine) / (k * k), (k * x - sine) / (k * k * k)];
        for (s, expected) in s.iter().zip(expected) {
            assert!((s - expected).abs() < 1e-14, "{s} {expected}");
        }
        let tension = transfer(k * k, x);
        assert!((tension[0] - libm::cosh(k * x)).abs() < 1e-13);
        assert!((tension[1] - libm::sinh(k * x) / k).abs() < 1e-13);
    }

    #[test]
    fn each_transfer_function_is_the_derivative_of_the_next() {
        for kappa in [-4.0, 0.0, 3.0] {
            let (low, mid, high) = (transfer(kappa, 0.999), transfer(kappa, 1.0), transfer(kappa, 1.001));
            for k in 1..6 {
                let slope = (high[k] - low[k]) / 0.002;
                assert!((slope - mid[k - 1]).abs() < 1e-5, "kappa {kappa}, k {k}: {slope} {}", mid[k - 1]);
            }
        }
    }
}
