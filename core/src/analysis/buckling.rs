use super::assembly::ends;
use super::cutting::Response;
use super::element::Element;
use super::factorised::Stiffness;
use super::loads::LocalLoads;
use super::mechanism::greatest;
use super::pieces::Pieces;
use super::subdivision::{Subdivision, parts_for_change};
use super::{Displacement, Frame, FrameError, LoadCase, Solution};
use std::sync::Arc;

/// Relative width to which a factor is closed in.
const CLOSE: f64 = 1e-8;

/// Relative step after which a factor is taken to be reached, unless counts beside it say otherwise: what is left of the
/// way goes by the square of the step.
const LAST_STEP: f64 = 1e-5;

/// Axial force, by the greatest force in any member, that is taken for rounding.
const ROUNDING: f64 = 1e-10;

/// The factor at which the loads are as given.
const LOADED: f64 = 1.0;

/// Rounds of inverse iteration at a factor.
const ROUNDS: usize = 3;

/// Factors tried one after another where the shape says, before halving the interval again.
const GUESSES: usize = 6;

/// Part by which a factor is changed to see how the stiffness changes with it.
const STEP: f64 = 1e-4;

/// Parts of a compressed member. In halves its own buckling shows in the movement of its middle.
const HALVES: usize = 2;

/// Greatest N·L²/EI with which the shape of a part is drawn.
const DRAWN_TENSION: f64 = 100.0;

/// A way in which a frame buckles elastically.
#[derive(Clone, Debug)]
pub struct BucklingMode {
    /// Factor on the loads; infinite if the frame never buckles.
    pub factor: f64,
    /// What it looks like.
    pub shape: BucklingShape,
}

/// Shape of a buckled frame, at rest if it never buckles. Of the nodes and the middles of compressed members, the one
/// that moves most moves 1 m along x or y.
#[derive(Clone, Debug)]
pub struct BucklingShape {
    displacements: Vec<Displacement>,
    pieces: Pieces,
}

impl BucklingShape {
    /// Movement of a node. Panics if the frame has no such node.
    pub fn displacement(&self, node: usize) -> Displacement {
        self.displacements[node]
    }

    /// Deflection along local y in m, `x` m from node i. Panics if the frame has no such member.
    pub fn deflection_at(&self, member: usize, x: f64) -> f64 {
        self.pieces.at(member, x).1.deflection
    }
}

impl Frame {
    /// The factor of [`Self::lowest_buckling_factor`] without its shape, which takes longer.
    pub fn lowest_critical_factor(&self, loads: &LoadCase) -> Result<f64, FrameError> {
        let (frame, solution) = self.at_buckling(loads)?;
        Ok(Search::of_factors(&frame, &solution).close_in(1).1)
    }

    /// The lowest of the factors that [`Self::buckling_modes`] finds.
    pub fn lowest_buckling_factor(&self, loads: &LoadCase) -> Result<BucklingMode, FrameError> {
        let (frame, solution) = self.at_buckling(loads)?;
        Ok(Search::new(&frame, &solution).mode(1))
    }

    /// Lowest factors on the loads, with axial forces growing in proportion, at which the frame buckles elastically: as
    /// many as asked for, in rising order, equal where modes coincide.
    ///
    /// Exact stability functions, so that one member from node to node is enough. Factors are closed in by inverse
    /// iteration on the banded stiffness and confirmed by counting the critical factors on either side after W. H.
    /// Wittrick, F. W. Williams, *Q. J. Mech. Appl. Math.* 24 (1971), 263–284, so that none is missed. A member along
    /// which the axial force changes is cut into parts of constant axial force. Bars do not buckle by themselves.
    /// One-sided parts that have let go under the loads are off; one that bears nothing and yet has no gap is off where
    /// the lowest mode would let it go.
    pub fn buckling_modes(&self, loads: &LoadCase, count: usize) -> Result<Vec<BucklingMode>, FrameError> {
        let (frame, solution) = self.at_buckling(loads)?;
        let mut search = Search::new(&frame, &solution);
        Ok((1..=count).map(|rank| search.mode(rank)).collect())
    }
}

/// Counts the critical factors below a factor, and closes in on them.
pub(super) struct Search {
    fine: Subdivision,
    nodes: usize,
    stiffness: Stiffness,
    /// Axial force of each part under the loads as given.
    axial: Vec<f64>,
    /// Parts on rigid arms, and moments by rotation there under the loads as given.
    arms: Vec<(usize, [f64; 2])>,
    /// Factors tried and how many critical ones lie below each.
    tried: Vec<(f64, usize)>,
    /// Movement found by inverse iteration.
    shape: Vec<f64>,
    /// Those of the modes found before.
    found: Vec<Vec<f64>>,
}

impl Search {
    /// Of a frame under the loads that give these forces.
    pub fn new(frame: &Frame, solution: &Solution) -> Self {
        Self::in_parts(frame, solution, HALVES)
    }

    /// The same without shapes.
    fn of_factors(frame: &Frame, solution: &Solution) -> Self {
        Self::in_parts(frame, solution, 1)
    }

    fn in_parts(frame: &Frame, solution: &Solution, of_compressed: usize) -> Self {
        let least = ROUNDING * solution.greatest_force();
        let parts = |member: usize| {
            let (at_i, at_j) = solution.axial_ends(member);
            let least = if at_i.min(at_j) < -least { of_compressed } else { 1 };
            if frame.members[member].ei > 0.0 { parts_for_change(at_i, at_j).max(least) } else { 1 }
        };
        let fine = Subdivision::new(frame, parts);
        let mut axial = Vec::with_capacity(fine.lengths.len());
        for member in 0..frame.members.len() {
            for (_, from, to) in fine.parts(member) {
                let mean = 0.5 * (solution.axial_at(member, from) + solution.axial_before(member, to));
                axial.push(if mean.abs() > least { mean } else { 0.0 });
            }
        }
        let stiffness = Stiffness::new(&fine.frame);
        let mut arms = Vec::new();
        for (member, _) in frame.members.iter().enumerate().filter(|(_, data)| data.arms != [[0.0; 2]; 2]) {
            let [at_i, at_j] = solution.arm_moments(member..member + 1, frame, member);
            arms.extend([(fine.starts[member], [at_i, 0.0]), (fine.starts[member + 1] - 1, [0.0, at_j])]);
        }
        let shape = (0..stiffness.unknowns.count()).map(|n| 1.0 + 0.1 * (n % 7) as f64).collect();
        Self { fine, nodes: frame.nodes.len(), stiffness, axial, arms, tried: vec![(0.0, 0)], shape, found: Vec::new() }
    }

    pub fn mode(&mut self, rank: usize) -> BucklingMode {
        let (below, factor) = self.close_in(rank);
        if factor.is_finite() {
            self.count_below(below);
            (0..ROUNDS).for_each(|_| _ = self.iterate());
            self.scale();
        } else {
            self.shape.fill(0.0);
        }
        let shape = self.draw();
        let size = self.shape.iter().map(|x| x * x).sum::<f64>().sqrt();
        if size > 0.0 {
            self.found.push(self.shape.iter().map(|x| x / size).collect());
        }
        BucklingMode { factor, shape }
    }

    fn count_below(&mut self, factor: f64) -> usize {
        let count = self.factorise(factor);
        self.tried.push((factor, count));
        count
    }

    /// The same without keeping the count.
    fn factorise(&mut self, factor: f64) -> usize {
        self.stiffness.set_tensions(self.axial.iter().map(|axial| factor * axial));
        self.turn_arms(factor);
        self.stiffness.count_negative(&self.fine.frame)
    }

    fn turn_arms(&mut self, factor: f64) {
        if self.arms.is_empty() {
            return;
        }
        let elements = self.stiffness.elements_mut();
        for (part, _) in &self.arms {
            elements[*part].arm_moments = [0.0; 2];
        }
        for (part, moments) in &self.arms {
            for (sum, moment) in elements[*part].arm_moments.iter_mut().zip(moments) {
                *sum += factor * moment;
            }
        }
    }

    /// A factor at which a member has buckled twice even with its ends held (N·L²/EI = 80.8) or sheared off, or if only
    /// bars are compressed, one at which a bar has lost its length.
    fn highest(&self) -> Option<f64> {
        let compressed = || self.stiffness.elements.iter().zip(&self.axial).filter(|(_, axial)| **axial < 0.0);
        let members = compressed().filter(|(element, _)| element.ei > 0.0);
        let held = members.map(|(element, axial)| {
            let bent = 81.0 * element.ei / (element.length * element.length);
            bent.min(1.0 / element.section.shear_compliance) / -axial
        });
        let bars = compressed().map(|(element, axial)| element.ea / -axial);
        held.min_by(f64::total_cmp).or_else(|| bars.min_by(f64::total_cmp))
    }

    /// Closes in on the critical factor of this rank, the lowest being 1: a factor just below it, and the factor.
    fn close_in(&mut self, rank: usize) -> (f64, f64) {
        let Some(highest) = self.highest() else { return (0.0, f64::INFINITY) };
        let above = self.tried.iter().filter(|(_, count)| *count >= rank).map(|(factor, _)| *factor);
        let below = self.tried.iter().filter(|(_, count)| *count < rank).map(|(factor, _)| *factor);
        let mut range = Range { low: below.fold(0.0, f64::max), high: above.fold(f64::INFINITY, f64::min) };
        let mut is_below_highest = range.high.is_finite();
        range.high = range.high.min(highest);
        // The loads as given are the likeliest to lie not far below.
        let (mut guess, mut guesses) = (Some(LOADED), 0);
        while range.is_wide() {
            let trial = match guess.take() {
                Some(factor) if range.holds(factor) && guesses < GUESSES => {
                    guesses += 1;
                    factor
                }
                _ => {
                    if !is_below_highest && self.count_below(highest) < rank {
                        return (0.0, f64::INFINITY);
                    }
                    is_below_highest = true;
                    guesses = 0;
                    range.middle()
                }
            };
            let count = self.factorise(trial);
            is_below_highest |= count >= rank;
            let narrower = range.parted(trial, count < rank);
            if !narrower.is_rough() || count + 1 == rank {
                guess = self.guess(trial);
            }
            let steps_less = |next: f64, part: f64| (next - trial).abs() <= part * next;
            // At a critical factor rounding decides what is counted.
            if guess.is_none_or(|next| !steps_less(next, 0.1 * CLOSE)) {
                self.tried.push((trial, count));
                range = narrower;
            }
            if let Some(exact) = guess.take_if(|next| steps_less(*next, LAST_STEP)) {
                for side in [exact * (1.0 - 0.4 * CLOSE), exact * (1.0 + 0.4 * CLOSE)] {
                    if range.holds(side) {
                        range = range.parted(side, self.count_below(side) < rank);
                    }
                }
            }
        }
        if !is_below_highest && self.count_below(highest) < rank {
            return (0.0, f64::INFINITY);
        }
        (range.low, 0.5 * (range.low + range.high))
    }

    /// One round of inverse iteration at the factor tried last, and the least stiffness against any movement.
    fn iterate(&mut self) -> f64 {
        let before = self.shape.clone();
        self.stiffness.matrix.solve(&mut self.shape);
        for mode in &self.found {
            let part: f64 = mode.iter().zip(&self.shape).map(|(mode, x)| mode * x).sum();
            self.shape.iter_mut().zip(mode).for_each(|(x, mode)| *x -= part * mode);
        }
        let (mut product, mut square) = (0.0, 0.0);
        for (x, before) in self.shape.iter().zip(&before) {
            product += x * before;
            square += x * x;
        }
        let size = square.sqrt();
        self.shape.iter_mut().for_each(|x| *x /= size);
        product / square
    }

    /// Where the stiffness against the movement that it resists least comes to nothing, seen from the factor tried last.
    fn guess(&mut self, factor: f64) -> Option<f64> {
        (1..ROUNDS).for_each(|_| _ = self.iterate());
        let least = self.iterate();
        let movements = self.stiffness.unknowns.movements(&self.shape, &[]);
        let change: f64 = self
            .stiffness
            .elements
            .iter()
            .filter(|element| element.section.tension != 0.0 || element.arms.is_some())
            .map(|element| {
                let ends = ends(&movements, element);
                let mut further = element.clone();
                further.section.tension *= 1.0 + STEP;
                further.arm_moments = further.arm_moments.map(|moment| moment * (1.0 + STEP));
                let energy = |element: &Element| -> f64 {
                    let force = element.stiffness().map(|row| row.iter().zip(&ends).map(|(k, u)| k * u).sum::<f64>());
                    force.iter().zip(&ends).map(|(force, u)| force * u).sum()
                };
                energy(&further) - energy(element)
            })
            .sum();
        let next = factor * (1.0 - least * STEP / change);
        next.is_finite().then_some(next)
    }

    /// Scales the movement so that the greatest shift is 1.
    fn scale(&mut self) {
        let movement: Vec<_> =
            self.stiffness.unknowns.movements(&self.shape, &[]).into_iter().map(Displacement::from).collect();
        let (node, dof, size) = greatest(&movement);
        if size > 0.0 {
            let Displacement { ux, uy, rz } = movement[node];
            let most = [ux, uy, rz][dof as usize];
            self.shape.iter_mut().for_each(|x| *x /= most);
        }
    }

    fn draw(&self) -> BucklingShape {
        let mut elements = self.stiffness.elements.clone();
        for element in Arc::make_mut(&mut elements).iter_mut().filter(|element| element.ei > 0.0) {
            let drawn = DRAWN_TENSION * element.ei / (element.length * element.length);
            element.section.tension = element.section.tension.min(drawn);
        }
        let (mut pieces, _) = Pieces::cut(&elements, &LocalLoads::default());
        let mut movements = self.stiffness.unknowns.movements(&self.shape, &[]);
        for (member, element) in elements.iter().enumerate() {
            let movement = element.turn_in(ends(&movements, element));
            pieces.set_start(member, element.start(movement, &Response::REST));
        }
        movements.truncate(self.nodes);
        let pieces = pieces.join(&self.fine.starts);
        BucklingShape { displacements: movements.into_iter().map(Displacement::from).collect(), pieces }
    }
}

/// Between a factor below the critical one and a factor not below it.
struct Range {
    low: f64,
    high: f64,
}

impl Range {
    fn is_wide(&self) -> bool {
        self.high - self.low > CLOSE * self.high && self.high > f64::MIN_POSITIVE
    }

    fn is_rough(&self) -> bool {
        self.low < 0.1 * self.high
    }

    /// By decades at first, then by halves.
    fn middle(&self) -> f64 {
        if self.is_rough() { 0.1 * self.high } else { 0.5 * (self.low + self.high) }
    }

    fn holds(&self, factor: f64) -> bool {
        self.low < factor && factor < self.high
    }

    fn parted(&self, at: f64, is_below: bool) -> Self {
        if is_below { Self { low: at, ..*self } } else { Self { high: at, ..*self } }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::{Member, NodalLoad, Support};

    #[test]
    fn few_factorisations_find_a_factor() {
        let mut frame = Frame::default();
        let mut loads = LoadCase::default();
        for leg in 0..12 {
            let x = f64::from(leg);
            let (foot, head) = (frame.add_node(x, 0.0), frame.add_node(x, 4.0));
            frame.add_member(Member { release_j: true, ..Member::beam(foot, head, 193.0, 3e5) });
            frame.supports.push(Support { node: foot, ux: true, uy: true, rz: false });
            loads.nodal.push(NodalLoad { node: head, fx: 0.0, fy: -30.0 - x, mz: 0.0 });
            if leg > 0 {
                frame.add_member(Member::beam(head - 2, head, 1e3, 2e5));
                frame.add_member(Member::bar(head - 3, head, 8e3));
            }
        }
        let solution = frame.factorise().and_then(|stands| stands.solve(&loads)).expect("stands");
        let mut search = Search::new(&frame, &solution);
        let first = search.mode(1).factor;
        let tried = search.tried.len();
        let second = search.mode(2).factor;
        assert!(first < second && tried < 19 && search.tried.len() < 34, "{tried} {}", search.tried.len());
    }
}
