use super::factorised::Factorised;
use super::subdivision::Subdivision;
use super::{Frame, FrameError, LoadCase, Solution};

/// Rounds of finding the axial forces again.
const ROUNDS: usize = 100;

/// Change of the axial forces, by the greatest of them, at which they have settled.
const SETTLED: f64 = 1e-10;

/// Parts of a member along which the axial force changes.
const PARTS: usize = 8;

/// Greatest `L·√(N/EI)` of a part in tension: beyond it the transfer functions lose figures.
const LARGE_TENSION: f64 = 6.0;

/// Most parts of any member.
const MOST_PARTS: usize = 32;

impl Frame {
    /// Solves the equilibrium of the deflected frame, with the sway of nodes (P-Δ) and the bow of members (P-δ).
    ///
    /// Axial forces act on small displacements: `EI·v'''' − N·v'' = q` is solved exactly for the axial force of each
    /// member, and the axial forces are found again until they settle. Where loads act along a member, it is cut into 8
    /// parts of constant axial force for this purpose. Members do not shorten by bowing. Imperfections are for the
    /// caller, in the nodes' places or as loads.
    pub fn solve_second_order(&self, loads: &LoadCase) -> Result<Solution, FrameError> {
        let first_order = self.factorise()?.solve(loads)?;
        let parts = |member: usize| {
            let (at_i, at_j) = first_order.axial_ends(member);
            let Some(data) = self.members.get(member).filter(|data| data.ei > 0.0) else { return 1 };
            let (length, ..) = self.direction(data);
            let tense = length * (at_i.max(at_j).max(0.0) / data.ei).sqrt() / LARGE_TENSION;
            let parts = if at_i == at_j { 1 } else { PARTS };
            parts.max(libm::ceil(tense) as usize).min(MOST_PARTS)
        };
        let fine = Subdivision::new(self, parts);
        let fine_loads = fine.loads(loads);

        let mut factorised = Factorised::new(&fine.frame);
        let mut before = vec![0.0; fine.frame.members.len()];
        for _ in 0..ROUNDS {
            factorised.factorise_stable()?;
            let solution = factorised.solve(&fine_loads)?;
            let tensions = fine.tensions(&solution);
            let greatest = tensions.iter().fold(0.0, |most: f64, tension| most.max(tension.abs()));
            let change =
                tensions.iter().zip(&before).fold(0.0, |most: f64, (now, before)| most.max((now - before).abs()));
            if change <= SETTLED * greatest {
                return Ok(solution.join(&fine.starts, self.nodes.len()));
            }
            factorised.set_tensions(tensions.iter().copied());
            before = tensions;
        }
        Err(FrameError::NotConverged { iterations: ROUNDS })
    }
}

impl Subdivision {
    /// Mean axial force of each part, as far as the transfer functions bear it.
    fn tensions(&self, solution: &Solution) -> Vec<f64> {
        let bear = 4.0 * LARGE_TENSION * LARGE_TENSION;
        let parts = self.frame.members.iter().zip(&self.lengths).enumerate();
        let tensions = parts.map(|(part, (member, length))| {
            let mean = solution.mean_axial(part);
            if member.ei > 0.0 { mean.min(bear * member.ei / (length * length)) } else { mean }
        });
        tensions.collect()
    }
}
