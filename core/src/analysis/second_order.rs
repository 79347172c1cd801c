use super::factorised::Factorised;
use super::subdivision::{Subdivision, parts_for_change};
use super::{Frame, FrameError, Imperfections, LoadCase, Solution};

/// Rounds of finding the axial forces again.
const ROUNDS: usize = 200;

/// Change of the axial forces still to come, by the greatest force, at which they have settled.
const SETTLED: f64 = 1e-8;

/// `L·√(N/EI)` aimed at for a part in tension, and the greatest with which the transfer functions keep their figures.
const TENSE: f64 = 6.0;
const TOO_TENSE: f64 = 12.0;

/// Parts of a member by `√(ΔN·L²/EI)`: with as many, parts of constant axial force err by less than 10⁻⁵ of what ΔN
/// changes. More would only spoil figures, as a chain of short parts is ill-conditioned.
const PARTS_OF_CHANGE: f64 = 200.0;

/// Most parts of any member: enough for a tension of 9·10⁶·EI/L². Beyond it, the tension that acts on the deflections is
/// taken as that.
const MOST_PARTS: usize = 256;

/// Times that members may be cut again because their tension has grown.
const CUTS: usize = 8;

impl Frame {
    /// Solves the equilibrium of the deflected frame in which all parts act both ways.
    pub(super) fn settle_imperfect(
        &self,
        loads: &LoadCase,
        imperfections: &Imperfections,
    ) -> Result<Solution, FrameError> {
        let mut solution = self.factorise()?.solve(loads)?;
        imperfections.validate(self)?;
        for _ in 0..CUTS {
            let fine = Subdivision::new(self, |member| self.parts(member, &solution));
            solution = fine.settle(&fine.loads(loads), imperfections)?.join(&fine.starts, self.nodes.len());
            let fits = |(member, parts): (usize, &[usize])| {
                TENSE * self.parts(member, &solution) as f64 <= TOO_TENSE * (parts[1] - parts[0]) as f64
            };
            if fine.starts.windows(2).enumerate().all(fits) {
                return Ok(solution);
            }
        }
        Err(FrameError::NotConverged { rounds: CUTS })
    }

    fn parts(&self, member: usize, solution: &Solution) -> usize {
        let data = &self.members[member];
        if data.ei == 0.0 {
            return 1;
        }
        let (at_i, at_j) = solution.axial_ends(member);
        let (length, ..) = self.direction(data);
        let slender = |axial: f64| length * (axial / data.ei).sqrt();
        let change = libm::ceil(PARTS_OF_CHANGE * slender((at_i - at_j).abs())) as usize;
        let tense = libm::ceil(slender(at_i.max(at_j).max(0.0)) / TENSE) as usize;
        parts_for_change(at_i, at_j).min(change).max(tense).clamp(1, MOST_PARTS)
    }
}

impl Subdivision {
    /// Solves until the axial forces settle.
    fn settle(&self, loads: &LoadCase, imperfections: &Imperfections) -> Result<Solution, FrameError> {
        let mut factorised = Factorised::new(&self.frame);
        imperfections.apply(&self.starts, factorised.stiffness.elements_mut());
        let mut before = vec![0.0; self.frame.members.len()];
        let mut change_before = f64::INFINITY;
        for _ in 0..ROUNDS {
            factorised.factorise_stable()?;
            let solution = factorised.solve(loads)?;
            let axial: Vec<f64> = (0..before.len()).map(|part| solution.mean_axial(part)).collect();
            let change = axial.iter().zip(&before).fold(0.0, |most: f64, (now, then)| most.max((now - then).abs()));
            // Changes shrink by a steady ratio, and all those to come add up to this one / (1 − ratio).
            let left = (1.0 - change / change_before).max(1e-2);
            if change <= SETTLED * solution.greatest_force() * left {
                return Ok(solution);
            }
            factorised
                .stiffness
                .set_tensions(axial.iter().enumerate().map(|(part, axial)| axial.min(self.greatest_tension(part))));
            for (part, element) in
                factorised.stiffness.elements_mut().iter_mut().enumerate().filter(|(_, e)| e.arms.is_some())
            {
                element.arm_moments = solution.arm_moments(part..part + 1, &self.frame, part);
            }
            (before, change_before) = (axial, change);
        }
        Err(FrameError::NotConverged { rounds: ROUNDS })
    }

    fn greatest_tension(&self, part: usize) -> f64 {
        let (ei, length) = (self.frame.members[part].ei, self.lengths[part]);
        if ei > 0.0 { TOO_TENSE * TOO_TENSE * ei / (length * length) } else { f64::INFINITY }
    }
}
