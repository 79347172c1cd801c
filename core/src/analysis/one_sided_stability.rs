//! Second order and buckling of frames with one-sided parts.

use super::buckling::Search;
use super::cut::{Cut, one_sided};
use super::letting_go::{gap, loads_on, tell_all, without};
use super::one_sided::{OneSided, ROUNDING};
use super::pivoting::settle;
use super::{BucklingMode, Displacement, Frame, FrameError, Imperfections, LoadCase, Solution};
use std::borrow::Cow;

/// Forces and gaps of second order below this part of the greatest are taken for what is left of the iteration.
const SETTLED: f64 = 1e-7;

impl Frame {
    /// Solves the equilibrium of the deflected frame, with the sway of nodes (P-Δ) and the bow of members (P-δ).
    ///
    /// Axial forces act on small displacements: `EI·v'''' − N·v'' = q` is solved exactly for the axial force of each
    /// member, and the axial forces are found again until they settle. A member along which the axial force changes is
    /// cut into parts of constant axial force for this purpose. Members do not shorten by bowing.
    ///
    /// One-sided parts let go in the deflected frame: a slack member bears no axial force at its node i, and contacts
    /// with a gap bear nothing.
    pub fn solve_second_order(&self, loads: &LoadCase) -> Result<Solution, FrameError> {
        self.solve_imperfect(loads, &Imperfections::default())
    }

    /// The same for a frame that is not perfectly straight before it is loaded.
    pub fn solve_imperfect(&self, loads: &LoadCase, imperfections: &Imperfections) -> Result<Solution, FrameError> {
        let parts = one_sided(self);
        if parts.is_empty() {
            return self.settle_imperfect(loads, imperfections);
        }
        let first_order = self.factorise()?.solve_one_sided(loads);
        // Where first order has no answer, one start is as good as any.
        let marks = |of: &dyn Fn(&OneSided, Cut) -> bool| -> Vec<bool> {
            parts.iter().map(|(cut, _)| first_order.as_ref().is_ok_and(|found| of(found, *cut))).collect()
        };
        let start = marks(&OneSided::lets_go);
        let slid = marks(&OneSided::slides);
        match self.settle_one_sided(loads, imperfections, &parts, start.clone(), &slid) {
            Err(FrameError::NoContact { .. }) if self.contacts.iter().any(|contact| contact.grips.is_some()) => {
                self.settle_one_sided(loads, imperfections, &parts, start, &vec![true; parts.len()])
            }
            settled => settled,
        }
    }

    fn settle_one_sided(
        &self,
        loads: &LoadCase,
        imperfections: &Imperfections,
        parts: &[(Cut, f64)],
        start: Vec<bool>,
        slid: &[bool],
    ) -> Result<Solution, FrameError> {
        let mut settled = None;
        settle(start, |open| {
            let rest = without(self, parts, open, slid);
            let solution = rest.settle_imperfect(&loads_on(&rest, loads), imperfections)?;
            let solution = tell_all(solution, parts, open);
            let faults = self.faults(loads, parts, open, &solution);
            settled = Some(solution);
            Ok(faults)
        })?;
        settled.ok_or(FrameError::NoContact { rounds: 0 })
    }

    /// Parts that bear a force of the wrong sign, and open ones whose gap has closed.
    fn faults(&self, loads: &LoadCase, parts: &[(Cut, f64)], open: &[bool], solution: &Solution) -> Vec<usize> {
        let moved = |most: f64, by: &Displacement| most.max(by.ux.abs()).max(by.uy.abs());
        let least_gap = -SETTLED * solution.displacements.iter().fold(0.0, moved);
        let least_force = -SETTLED * solution.greatest_force();
        let wrong = |&part: &usize| {
            let (cut, sign) = parts[part];
            if open[part] {
                gap(self, loads, parts[part], |node| solution.displacement(node)) < least_gap
            } else {
                sign * cut.force(self, solution) < least_force
            }
        };
        (0..parts.len()).filter(wrong).collect()
    }

    /// The frame that buckles, and the forces in it. What has let go under the loads is off. A part that bears nothing and
    /// yet has no gap works in one sense of the mode only: such parts are off where the mode would let them go, in the
    /// worse sense.
    pub(super) fn at_buckling(&self, loads: &LoadCase) -> Result<(Cow<'_, Frame>, Solution), FrameError> {
        let parts = one_sided(self);
        let found = self.factorise()?.solve_one_sided(loads)?;
        let open: Vec<bool> = parts.iter().map(|(cut, _)| found.lets_go(*cut)).collect();
        let slid: Vec<bool> = parts.iter().map(|(cut, _)| found.slides(*cut)).collect();
        let solution = found.solution;
        let least = ROUNDING * solution.greatest_force();
        let bears_nothing = |part: usize| parts[part].0.force(self, &solution).abs() <= least;
        let idle: Vec<usize> = (0..parts.len()).filter(|&part| !open[part] && bears_nothing(part)).collect();
        if !idle.is_empty() {
            let [one, other] = [1.0, -1.0].map(|sense| self.buckle_in(sense, &solution, &parts, [&open, &slid], &idle));
            let rest = if one.0.factor <= other.0.factor { one.1 } else { other.1 };
            return Ok((Cow::Owned(rest), solution));
        }
        let whole = open.iter().chain(&slid).all(|lets_go| !lets_go);
        Ok((if whole { Cow::Borrowed(self) } else { Cow::Owned(without(self, &parts, &open, &slid)) }, solution))
    }

    /// The lowest mode in one sense, and the frame without the idle parts that it lets go.
    fn buckle_in(
        &self,
        mut sense: f64,
        solution: &Solution,
        parts: &[(Cut, f64)],
        [open, slid]: [&[bool]; 2],
        idle: &[usize],
    ) -> (BucklingMode, Frame) {
        let at_rest = LoadCase::default();
        let opening =
            |part: usize, mode: &BucklingMode| gap(self, &at_rest, parts[part], |node| mode.shape.displacement(node));
        let mut open = open.to_vec();
        let mut first = None;
        loop {
            let rest = without(self, parts, &open, slid);
            let mode = Search::new(&rest, solution).mode(1);
            // The sense of a mode is any: that in which the part goes on to open is the same as before.
            if first.is_some_and(|first| sense * opening(first, &mode) < 0.0) {
                sense = -sense;
            }
            let lets_go = |part: &usize| !open[*part] && sense * opening(*part, &mode) > SETTLED;
            let more: Vec<usize> = idle.iter().copied().filter(lets_go).collect();
            if more.is_empty() {
                return (mode, rest);
            }
            first = first.or(more.first().copied());
            more.iter().for_each(|&part| open[part] = true);
        }
    }
}
