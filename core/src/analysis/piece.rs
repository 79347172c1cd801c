use super::Strain;
use super::element::Element;
use super::loads::{LocalForce, LocalGap, LocalLoad, LocalLoads};
use crate::sorting::sort;
use std::sync::Arc;

/// Forces and movement at one place of a member, in its local axes.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct State {
    /// Axial force, tension positive.
    pub axial: f64,
    /// Force across the unloaded axis: the shear, less the part of the axial force that the slope turns across. The
    /// part that an imperfection turns across is counted in.
    pub transverse: f64,
    pub moment: f64,
    /// Rotation of the cross-section.
    pub slope: f64,
    pub deflection: f64,
    /// Movement along the member.
    pub along: f64,
}

/// What all cross-sections of a member have in common.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Section {
    /// 1 / EI; 0 for a bar, which stays straight.
    pub compliance: f64,
    /// 1 / GA; 0 after Euler and Bernoulli.
    pub shear_compliance: f64,
    /// 1 / EA.
    pub axial_compliance: f64,
    /// Axial force that acts on the deflections: 0 in a linear analysis.
    pub tension: f64,
}

impl Section {
    /// Whether only moments bend a member of it.
    pub fn is_plain(&self) -> bool {
        self.tension == 0.0 && self.shear_compliance == 0.0
    }

    /// 1 + N/GA: by how much more a tensioned member resists shear, after Engesser.
    pub fn mu(&self) -> f64 {
        1.0 + self.tension * self.shear_compliance
    }

    /// N / μEI.
    pub fn kappa(&self) -> f64 {
        self.tension * self.compliance / self.mu()
    }

    pub fn transfer(&self, x: f64) -> [f64; 6] {
        transfer(self.kappa(), x)
    }

    /// dM/dx where the state is `state`.
    pub fn shear(&self, state: &State) -> f64 {
        (state.transverse + self.tension * state.slope) / self.mu()
    }
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
    /// Gap at its start along local x and y, and kink.
    pub jump: [f64; 3],
    /// Strain and curvature that it takes on freely.
    pub strain: [f64; 2],
    pub section: Section,
    /// Just after the force and the gap at its start.
    pub start: State,
}

impl Piece {
    pub fn end(&self) -> f64 {
        self.x + self.length
    }

    /// Whether only moments bend it, so that all along it is a polynomial.
    pub fn is_plain(&self) -> bool {
        self.section.is_plain() && self.strain[1] == 0.0
    }

    /// Whether no load across it acts along it.
    pub fn is_unloaded(&self) -> bool {
        self.load[1] == 0.0 && self.growth[1] == 0.0
    }

    /// Solution of `M' = T + N·v'`, `θ' = M/EI + κ₀`, `v' = θ − (T + N·v')/GA`, `T' = q` from the start of the piece.
    #[inline]
    pub fn at(&self, x: f64) -> State {
        if self.is_plain() { self.plain_at(x) } else { self.any_at(x) }
    }

    #[inline(always)]
    fn plain_at(&self, x: f64) -> State {
        let State { axial, transverse, moment, slope, deflection, along } = self.start;
        let Section { compliance, axial_compliance, .. } = self.section;
        let ([p, q], [dp, dq]) = (self.load, self.growth);
        let (m, t, q3, q4) = (compliance * moment, compliance * transverse, compliance * q, compliance * dq);
        State {
            axial: axial - x * (p + 0.5 * x * dp),
            transverse: transverse + x * (q + 0.5 * x * dq),
            moment: moment + x * (transverse + x * (0.5 * q + x * dq * (1.0 / 6.0))),
            slope: slope + x * (m + x * (0.5 * t + x * (q3 * (1.0 / 6.0) + x * q4 * (1.0 / 24.0)))),
            deflection: deflection
                + x * (slope
                    + x * (0.5 * m + x * (t * (1.0 / 6.0) + x * (q3 * (1.0 / 24.0) + x * q4 * (1.0 / 120.0))))),
            along: along + x * (self.strain[0] + axial_compliance * (axial - x * (0.5 * p + x * dp * (1.0 / 6.0)))),
        }
    }

    #[cold]
    fn any_at(&self, x: f64) -> State {
        let State { axial, transverse, moment, slope, deflection, along } = self.start;
        let Section { compliance, shear_compliance, axial_compliance, tension } = self.section;
        let ([p, q], [dp, dq], [strain, curvature]) = (self.load, self.growth, self.strain);
        let (mu, s, x2) = (self.section.mu(), self.section.transfer(x), 0.5 * x * x);
        let pushed = tension * slope;
        let bent = compliance * (moment * s[2] + (transverse * s[3] + q * s[4] + dq * s[5]) / mu);
        let sheared = shear_compliance * (transverse * x + q * x2 + dq * x2 * x / 3.0);
        State {
            axial: axial - p * x - dp * x2,
            transverse: transverse + q * x + dq * x2,
            moment: moment * s[0] + ((transverse + pushed) * s[1] + (q + tension * curvature) * s[2] + dq * s[3]) / mu,
            slope: slope * s[0]
                + compliance * (moment * s[1] + (transverse * s[2] + q * s[3] + dq * s[4]) / mu)
                + curvature * s[1],
            deflection: deflection + (slope * s[1] + bent - sheared + curvature * s[2]) / mu,
            along: along + strain * x + axial_compliance * (axial * x - x2 * (p + dp * x / 3.0)),
        }
    }

    /// dM/dx where the state is `state`.
    pub fn shear(&self, state: &State) -> f64 {
        self.section.shear(state)
    }

    /// d²M/dx² at `x`, where the state is `state`.
    pub fn shear_growth(&self, x: f64, state: &State) -> f64 {
        let Section { tension, compliance, .. } = self.section;
        let load = self.load[1] + self.growth[1] * x + tension * (compliance * state.moment + self.strain[1]);
        load / self.section.mu()
    }

    /// Slope of the axis, dv/dx, where the state is `state`.
    pub fn incline(&self, state: &State) -> f64 {
        (state.slope - self.section.shear_compliance * state.transverse) / self.section.mu()
    }

    /// d²v/dx² at `x`, where the state is `state`.
    pub fn bend(&self, x: f64, state: &State) -> f64 {
        let Section { compliance, shear_compliance, .. } = self.section;
        let load = self.load[1] + self.growth[1] * x;
        (compliance * state.moment + self.strain[1] - shear_compliance * load) / self.section.mu()
    }
}

#[inline]
pub(super) fn powers(x: f64) -> [f64; 6] {
    let square = x * x;
    [1.0, x, square / 2.0, square * x / 6.0, square * square / 24.0, square * square * x / 120.0]
}

/// `s_k(x) = Σ κᵐ x²ᵐ⁺ᵏ / (2m+k)!` for k from 0 to 5, where `κ = N/EI`: each is the derivative of the next.
///
/// With κ = 0 these are the powers of the linear theory, else the sines or hyperbolic sines of the beam-column.
pub(super) fn transfer(kappa: f64, x: f64) -> [f64; 6] {
    let square = x * x;
    let (p2, p3, p4, p5) = (square / 2.0, square * x / 6.0, square * square / 24.0, square * square * x / 120.0);
    if kappa == 0.0 {
        return powers(x);
    }
    let z = kappa * square;
    let [fourth, fifth] = series(z);
    let (s4, s5) = (p4 * fourth, p5 * fifth);
    let (s2, s3) = (p2 + kappa * s4, p3 + kappa * s5);
    [1.0 + kappa * s2, x + kappa * s3, s2, s3, s4, s5]
}

/// Terms of the series below that leave nothing out up to a size of `NEAR` of its variable.
const TERMS: usize = 16;
const NEAR: f64 = 16.0;

const FOURTH: [f64; TERMS] = terms(4);
const FIFTH: [f64; TERMS] = terms(5);

/// `k! / (2m+k)!` for each m.
const fn terms(k: usize) -> [f64; TERMS] {
    let mut terms = [1.0; TERMS];
    let mut m = 1;
    while m < TERMS {
        terms[m] = terms[m - 1] / ((2 * m + k - 1) * (2 * m + k)) as f64;
        m += 1;
    }
    terms
}

/// `Σ zᵐ k! / (2m+k)!` for k = 4 and k = 5.
fn series(z: f64) -> [f64; 2] {
    if z.abs() <= NEAR {
        return [&FOURTH, &FIFTH].map(|terms| terms.iter().rev().fold(0.0, |sum, term| sum * z + term));
    }
    [4.0, 5.0].map(|k| {
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
    })
}

/// What loads do to a member that starts at rest: the state at its end.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Response {
    pub end: State,
}

impl Response {
    /// Of a member on which nothing acts.
    pub const REST: Self =
        Self { end: State { axial: 0.0, transverse: 0.0, moment: 0.0, slope: 0.0, deflection: 0.0, along: 0.0 } };

    fn of(pieces: &mut [Piece]) -> Self {
        let mut state = State::default();
        for piece in pieces {
            piece.start = state.after(piece);
            state = piece.at(piece.length);
        }
        Self { end: state }
    }
}

/// How all members are bent and moved, as pieces between the places where what acts on them changes.
#[derive(Clone, Debug)]
pub(super) struct Pieces {
    elements: Arc<[Element]>,
    /// At the start of each member's first piece.
    pub starts: Vec<State>,
    /// Those of members on which something acts, one member after another.
    pub acted_on: Vec<Piece>,
    /// The first of these of each member; one more than there are members.
    pub firsts: Vec<usize>,
}

impl Default for Pieces {
    fn default() -> Self {
        Self { elements: Arc::default(), starts: Vec::new(), acted_on: Vec::new(), firsts: vec![0] }
    }
}

impl Pieces {
    /// Of the same members, all at rest, with room for so many pieces of those on which something acts.
    pub fn at_rest(elements: &Arc<[Element]>, room: usize) -> Self {
        let mut firsts = Vec::with_capacity(elements.len() + 1);
        firsts.push(0);
        Self {
            elements: elements.clone(),
            starts: vec![State::default(); elements.len()],
            acted_on: Vec::with_capacity(room),
            firsts,
        }
    }

    pub fn elements(&self) -> &Arc<[Element]> {
        &self.elements
    }

    /// Hands over the pieces of a member: one where nothing acts on it.
    pub fn of<T>(&self, member: usize, read: impl FnOnce(&[Piece]) -> T) -> T {
        match self.acted_on(member) {
            [] => read(&[self.bare(member)]),
            pieces => read(pieces),
        }
    }

    /// None where nothing acts on the member.
    pub fn acted_on(&self, member: usize) -> &[Piece] {
        &self.acted_on[self.firsts[member]..self.firsts[member + 1]]
    }

    fn bare(&self, member: usize) -> Piece {
        let Element { length, section, .. } = self.elements[member];
        Piece { length, section, start: self.starts[member], ..Piece::default() }
    }

    /// Cuts members where their loads jump or kink, and finds how each responds; none where nothing acts on it.
    pub fn cut(elements: &Arc<[Element]>, loads: &LocalLoads) -> (Self, Vec<Option<Response>>) {
        let mut pieces = Self::at_rest(elements, 3 * loads.lines.len() + loads.forces.len() + loads.gaps.len());
        let mut responses = Vec::with_capacity(elements.len());
        let (mut lines, mut forces) = (loads.lines.as_slice(), loads.forces.as_slice());
        let (mut gaps, mut strains) = (loads.gaps.as_slice(), loads.strains.as_slice());
        let mut breaks = Vec::with_capacity(16);
        for (member, element) in elements.iter().enumerate() {
            let own = Own {
                lines: take(&mut lines, |load| load.member == member),
                forces: take(&mut forces, |load| load.member == member),
                gaps: take(&mut gaps, |load| load.member == member),
                strains: take(&mut strains, |load| load.member == member),
            };
            let first = pieces.acted_on.len();
            if own.is_nothing() && element.imperfection == [0.0; 2] {
                pieces.firsts.push(first);
                responses.push(None);
                continue;
            }
            if own.is_even(element.length) {
                own.add_piece(element, 0.0, element.length, &mut pieces.acted_on);
            } else {
                own.breaks(element.length, &mut breaks);
                for ends in breaks.windows(2) {
                    own.add_piece(element, ends[0], ends[1], &mut pieces.acted_on);
                }
                if own.gaps.last().is_some_and(|gap| gap.x == element.length) {
                    own.add_piece(element, element.length, element.length, &mut pieces.acted_on);
                }
            }
            pieces.firsts.push(pieces.acted_on.len());
            responses.push(Some(Response::of(&mut pieces.acted_on[first..])));
        }
        (pieces, responses)
    }

    /// The cross-section of a member and its state at `x` from node i; inlined, so that only what is read is worked out.
    #[inline(always)]
    pub fn at(&self, member: usize, x: f64) -> (&Section, State) {
        let section = &self.elements[member].section;
        if x <= 0.0 {
            return (section, self.starts[member]);
        }
        let pieces = self.acted_on(member);
        let state = match pieces.partition_point(|piece| piece.x <= x).max(1) {
            _ if pieces.is_empty() && section.is_plain() => {
                self.starts[member].onward(section, x.clamp(0.0, self.elements[member].length))
            }
            _ if pieces.is_empty() => self.bare_at(member, x),
            after => {
                let piece = &pieces[after - 1];
                let into = (x - piece.x).clamp(0.0, piece.length);
                if piece.is_plain() { piece.plain_at(into) } else { piece.any_at(into) }
            }
        };
        (section, state)
    }

    #[cold]
    fn bare_at(&self, member: usize, x: f64) -> State {
        let bare = self.bare(member);
        bare.at(x.clamp(0.0, bare.length))
    }

    /// Makes one member of the parts of each, where `parts` are the first of them.
    pub fn join(self, parts: &[usize]) -> Self {
        let whole = parts.windows(2);
        let elements = whole.clone().map(|parts| self.elements[parts[0]].clone()).collect();
        let mut joined = Self::at_rest(&elements, self.acted_on.len() + self.starts.len());
        for (member, parts) in whole.enumerate() {
            joined.starts[member] = self.starts[parts[0]];
            let mut before = 0.0;
            for part in (parts[0]..parts[1]).filter(|part| parts[1] - parts[0] > 1 || !self.acted_on(*part).is_empty())
            {
                before = self.of(part, |pieces| {
                    joined.acted_on.extend(pieces.iter().map(|piece| Piece { x: piece.x + before, ..*piece }));
                    before + pieces.last().map_or(0.0, Piece::end)
                });
            }
            joined.firsts.push(joined.acted_on.len());
        }
        joined
    }

    /// Fills in the states of a member from the state at its start, before any force and gap there.
    #[inline]
    pub fn set_start(&mut self, member: usize, state: State) {
        let pieces = self.firsts[member]..self.firsts[member + 1];
        self.starts[member] = match self.acted_on.get(pieces.start) {
            Some(first) if !pieces.is_empty() => state.after(first),
            _ => state,
        };
        self.fill_in(member);
    }

    /// Fills in the states of a member's pieces from that at the start of its first.
    #[inline]
    pub fn fill_in(&mut self, member: usize) {
        let mut state = self.starts[member];
        let pieces = &mut self.acted_on[self.firsts[member]..self.firsts[member + 1]];
        for at in 0..pieces.len() {
            pieces[at].start = state;
            if let Some(next) = pieces.get(at + 1) {
                state = pieces[at].at(pieces[at].length).after(next);
            }
        }
    }
}

impl State {
    /// `x` m onward along a member without load that only moments bend.
    #[inline(always)]
    fn onward(self, section: &Section, x: f64) -> Self {
        let Self { axial, transverse, moment, slope, deflection, along } = self;
        let (m, t) = (section.compliance * moment, section.compliance * transverse);
        Self {
            moment: moment + x * transverse,
            slope: slope + x * (m + 0.5 * x * t),
            deflection: deflection + x * (slope + x * (0.5 * m + t * x * (1.0 / 6.0))),
            along: along + x * section.axial_compliance * axial,
            ..self
        }
    }

    /// Just after the force and the gap at the start of a piece.
    pub fn after(self, piece: &Piece) -> Self {
        let ([along, across], [gap_along, gap_across, turn]) = (piece.force, piece.jump);
        Self {
            axial: self.axial - along,
            transverse: self.transverse + across,
            slope: self.slope + turn,
            deflection: self.deflection + gap_across,
            along: self.along + gap_along,
            ..self
        }
    }
}

/// What acts on one member.
struct Own<'a> {
    lines: &'a [LocalLoad],
    forces: &'a [LocalForce],
    gaps: &'a [LocalGap],
    strains: &'a [Strain],
}

/// Takes the first loads, those of one member, off all that are left.
fn take<'a, T>(left: &mut &'a [T], is_own: impl Fn(&T) -> bool) -> &'a [T] {
    let count = left.iter().take_while(|load| is_own(load)).count();
    let (own, rest) = left.split_at(count);
    *left = rest;
    own
}

impl Own<'_> {
    fn is_nothing(&self) -> bool {
        self.lines.is_empty() && self.forces.is_empty() && self.gaps.is_empty() && self.strains.is_empty()
    }

    /// Whether nothing jumps or kinks along the member.
    fn is_even(&self, length: f64) -> bool {
        let is_whole = |load: &LocalLoad| load.a == 0.0 && load.b == length;
        self.forces.is_empty() && self.gaps.is_empty() && self.lines.iter().all(is_whole)
    }

    fn breaks(&self, length: f64, breaks: &mut Vec<f64>) {
        breaks.clear();
        breaks.extend([0.0, length]);
        breaks.extend(self.lines.iter().flat_map(|load| [load.a, load.b]));
        breaks.extend(self.forces.iter().map(|load| load.x));
        breaks.extend(self.gaps.iter().map(|gap| gap.x));
        sort(breaks, f64::total_cmp);
        breaks.dedup();
    }

    fn add_piece(&self, element: &Element, from: f64, to: f64, pieces: &mut Vec<Piece>) {
        pieces.push(Piece::default());
        let Some(piece) = pieces.last_mut() else { return };
        (piece.x, piece.length, piece.section) = (from, to - from, element.section);
        for load in self.lines.iter().filter(|load| load.a <= from && to <= load.b && from < to) {
            let ([p_a, q_a], [p_b, q_b], length) = (load.at_a, load.at_b, load.b - load.a);
            let (along, across) = ((p_b - p_a) / length, (q_b - q_a) / length);
            let ([p, q], [dp, dq], into) = (piece.load, piece.growth, from - load.a);
            piece.load = [p + (p_a + along * into), q + (q_a + across * into)];
            piece.growth = [dp + along, dq + across];
        }
        for load in self.forces.iter().filter(|load| load.x == from) {
            for axis in 0..2 {
                piece.force[axis] += load.force[axis];
            }
        }
        for gap in self.gaps.iter().filter(|gap| gap.x == from) {
            for (jump, gap) in piece.jump.iter_mut().zip(gap.jump) {
                *jump += gap;
            }
        }
        for strain in self.strains {
            piece.strain[0] += strain.axial;
            if element.ei > 0.0 {
                piece.strain[1] += strain.curvature;
            }
        }
        if element.imperfection != [0.0; 2] {
            let [at_i, at_j] = element.imperfection;
            piece.load[1] += element.section.tension * (at_j - at_i) / element.length;
        }
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
