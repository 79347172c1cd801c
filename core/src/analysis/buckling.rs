use super::assembly::ends;
use super::factorised::Factorised;
use super::loads::LocalLoads;
use super::piece::{Pieces, Response};
use super::subdivision::{Subdivision, parts_for_change};
use super::{Displacement, Frame, FrameError, LoadCase, Solution};

/// Relative width to which a factor is closed in.
const CLOSE: f64 = 1e-10;

/// Axial force, by the greatest force in any member, that is taken for rounding.
const ROUNDING: f64 = 1e-10;

/// Rounds of inverse iteration for the shape.
const ROUNDS: usize = 4;

/// Parts of a compressed member. In halves its own buckling shows in the movement of its middle.
const HALVES: usize = 2;

/// Greatest N·L²/EI with which the shape of a part is drawn.
const DRAWN_TENSION: f64 = 100.0;

/// Elastic buckling of a frame.
#[derive(Clone, Debug)]
pub struct BucklingMode {
    /// Lowest factor on the loads at which the frame buckles; infinite if it never does.
    pub factor: f64,
    /// Next higher factor, equal to the first where two modes coincide; infinite if there is none.
    pub second_factor: f64,
    /// Shape of the lowest mode.
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
    /// Lowest factors on the loads, with axial forces growing in proportion, at which the frame buckles elastically.
    ///
    /// Exact stability functions, so that one member from node to node is enough; the critical factors are counted after
    /// W. H. Wittrick, F. W. Williams, *Q. J. Mech. Appl. Math.* 24 (1971), 263–284. A member along which the axial force
    /// changes is cut into parts of constant axial force. Bars do not buckle by themselves.
    pub fn lowest_buckling_factor(&self, loads: &LoadCase) -> Result<BucklingMode, FrameError> {
        let first_order = self.factorise()?.solve(loads)?;
        let parts = |member: usize| {
            let (at_i, at_j) = first_order.axial_ends(member);
            let least = if at_i.min(at_j) < 0.0 { HALVES } else { 1 };
            if self.members[member].ei > 0.0 { parts_for_change(at_i, at_j).max(least) } else { 1 }
        };
        let fine = Subdivision::new(self, parts);
        let solution = fine.frame.factorise()?.solve(&fine.loads(loads))?;
        let mut search = Search::new(&fine.frame, &solution);
        let (below, factor) = search.close_in(1);
        let (_, second_factor) = search.close_in(2);

        let mut shape = search.shape(below, factor);
        shape.displacements.truncate(self.nodes.len());
        shape.pieces.join(&fine.starts);
        Ok(BucklingMode { factor, second_factor, shape })
    }
}

/// Counts the critical factors below a factor.
struct Search<'a> {
    factorised: Factorised<'a>,
    /// Axial force of each member under the loads as given.
    axial: Vec<f64>,
    /// Factors tried and how many critical ones lie below each.
    tried: Vec<(f64, usize)>,
}

impl<'a> Search<'a> {
    fn new(frame: &'a Frame, solution: &Solution) -> Self {
        let least = ROUNDING * solution.greatest_force();
        let axial = (0..frame.members.len()).map(|member| solution.mean_axial(member));
        let axial = axial.map(|axial| if axial.abs() > least { axial } else { 0.0 }).collect();
        Self { factorised: Factorised::new(frame), axial, tried: vec![(0.0, 0)] }
    }

    fn count_below(&mut self, factor: f64) -> usize {
        self.factorised.set_tensions(self.axial.iter().map(|axial| factor * axial));
        let count = self.factorised.count_negative();
        self.tried.push((factor, count));
        count
    }

    /// A factor at which a member has buckled twice even with its ends held (N·L²/EI = 80.8), or if only bars are
    /// compressed, one at which a bar has lost its length.
    fn highest(&self) -> Option<f64> {
        let compressed = || self.factorised.elements.iter().zip(&self.axial).filter(|(_, axial)| **axial < 0.0);
        let members = compressed().filter(|(element, _)| element.ei > 0.0);
        let held = members.map(|(element, axial)| 81.0 * element.ei / (element.length * element.length * -axial));
        let bars = compressed().map(|(element, axial)| element.ea / -axial);
        held.min_by(f64::total_cmp).or_else(|| bars.min_by(f64::total_cmp))
    }

    /// Closes in on the critical factor of this rank, the lowest being 1: a factor below it and one just above.
    fn close_in(&mut self, rank: usize) -> (f64, f64) {
        let Some(highest) = self.highest() else { return (0.0, f64::INFINITY) };
        if self.tried.iter().all(|(_, count)| *count < rank) && self.count_below(highest) < rank {
            return (0.0, f64::INFINITY);
        }
        let above = self.tried.iter().filter(|(_, count)| *count >= rank).map(|(factor, _)| *factor);
        let below = self.tried.iter().filter(|(_, count)| *count < rank).map(|(factor, _)| *factor);
        let (mut low, mut high) = (below.fold(0.0, f64::max), above.fold(f64::INFINITY, f64::min));
        while high - low > CLOSE * high && high > f64::MIN_POSITIVE {
            // By decades at first, then by halves.
            let middle = if low < 0.1 * high { 0.1 * high } else { 0.5 * (low + high) };
            if self.count_below(middle) < rank {
                low = middle;
            } else {
                high = middle;
            }
        }
        (low, high)
    }

    /// Shape in which the frame resists least at a factor just below the critical one, by inverse iteration.
    fn shape(mut self, below: f64, factor: f64) -> BucklingShape {
        let mut x: Vec<f64> = (0..self.factorised.unknowns.count()).map(|n| 1.0 + 0.1 * (n % 7) as f64).collect();
        if factor.is_finite() {
            self.count_below(below);
            for _ in 0..ROUNDS {
                self.factorised.matrix.solve(&mut x);
                self.scale(&mut x);
            }
        } else {
            x.fill(0.0);
        }

        let Factorised { mut elements, unknowns, .. } = self.factorised;
        for element in elements.iter_mut().filter(|element| element.ei > 0.0) {
            let drawn = DRAWN_TENSION * element.ei / (element.length * element.length);
            element.tension = element.tension.min(drawn);
        }
        let mut pieces = Pieces::cut(&elements, &LocalLoads::default());
        let movements = unknowns.movements(&x, &[]);
        for (member, element) in elements.iter().enumerate() {
            let movement = element.turn_in(ends(&movements, element));
            pieces.set_start(member, element.start(movement, &Response::REST));
        }
        BucklingShape { displacements: movements.into_iter().map(Displacement::from).collect(), pieces }
    }

    fn scale(&self, x: &mut [f64]) {
        if let Some((node, dof)) = self.factorised.unknowns.greatest(x) {
            let most = self.factorised.unknowns.movements(x, &[])[node][dof as usize];
            for x in x {
                *x /= most;
            }
        }
    }
}
