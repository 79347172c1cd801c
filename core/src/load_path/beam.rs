//! Continuous beams, put to the frame solver.

use super::chain::{BeamLoad, Chain};
use super::line::{Envelope, Peak};
use crate::analysis::{Axis, Factorised, Frame, FrameError, LoadCase, Member, Support};
use std::cell::RefCell;
use std::rc::Rc;

/// Axial stiffness of a beam without axial force, kN.
const ANY_EA_KN: f64 = 1e6;

/// A straight beam on rigid supports, with overhangs where the supports stand inside its ends.
pub struct ContinuousBeam {
    frame: Frame,
    chain: Chain,
}

/// What one load case does to a beam.
pub struct BeamResult {
    /// Support forces, positive against the load, in the order of the supports.
    pub reactions: Vec<f64>,
    pub envelope: Envelope,
}

impl ContinuousBeam {
    /// A beam between two ends on supports at these places, in rising order.
    pub fn new(ends_m: [f64; 2], supports_m: &[f64], ei_knm2: f64) -> Self {
        let mut frame = Frame::default();
        let member = |i, j| Member::beam(i, j, ei_knm2, ANY_EA_KN);
        let chain = Chain::build(&mut frame, &ends_m, supports_m, |offset| (offset, 0.0), member);
        let support = |(i, node)| Support { node, ux: i == 0, uy: true, rz: false };
        frame.supports = chain.support_nodes().enumerate().map(support).collect();
        Self { frame, chain }
    }

    /// Solves the beam for one load case.
    pub fn solve(&self, loads: &[BeamLoad]) -> Result<BeamResult, FrameError> {
        self.read(&self.frame.factorise()?, 0, loads)
    }

    /// Solves the beam for many load cases on one factorisation.
    pub fn solve_each(&self, cases: &[Vec<BeamLoad>]) -> Result<Vec<BeamResult>, FrameError> {
        let factorised = self.frame.factorise()?;
        cases.iter().enumerate().map(|(index, loads)| self.read(&factorised, index, loads)).collect()
    }

    fn read(&self, factorised: &Factorised, case: usize, loads: &[BeamLoad]) -> Result<BeamResult, FrameError> {
        let mut load_case = LoadCase::default();
        self.chain.load(loads, Axis::Y, -1.0, &mut load_case);
        let solution = factorised.solve(&load_case)?;
        let reactions: Vec<f64> = self.chain.support_nodes().map(|node| solution.reaction(node).fy).collect();
        let places = self.chain.supports.iter().map(|&index| self.chain.nodes_m[index]);
        let bearing = Peak::among(0, places.zip(reactions.iter().copied()));
        let envelope = Envelope { bearing, ..self.chain.envelope(&solution) }.in_case(case);
        Ok(BeamResult { reactions, envelope })
    }
}

/// Beams solved so far, since those of shutters opposite each other are alike.
#[derive(Default)]
pub struct Beams(RefCell<Vec<(Asked, Rc<BeamResult>)>>);

/// Ends, supports, EI and loads of a beam.
type Asked = ([f64; 2], Vec<f64>, f64, Vec<BeamLoad>);

impl Beams {
    /// As [`ContinuousBeam::solve`].
    pub fn solve(
        &self,
        ends_m: [f64; 2],
        supports_m: &[f64],
        ei_knm2: f64,
        loads: Vec<BeamLoad>,
    ) -> Result<Rc<BeamResult>, FrameError> {
        let is_asked = |(ends, supports, ei, under): &Asked| {
            (*ends, supports.as_slice(), *ei, under) == (ends_m, supports_m, ei_knm2, &loads)
        };
        if let Some((_, known)) = self.0.borrow().iter().find(|(of, _)| is_asked(of)) {
            return Ok(known.clone());
        }
        let solved = Rc::new(ContinuousBeam::new(ends_m, supports_m, ei_knm2).solve(&loads)?);
        self.0.borrow_mut().push(((ends_m, supports_m.to_vec(), ei_knm2, loads), solved.clone()));
        Ok(solved)
    }
}

/// The greatest effects of several load cases.
pub fn envelope(results: &[BeamResult]) -> Envelope {
    let mut all = Envelope::default();
    results.iter().for_each(|result| all.raise(&result.envelope));
    all
}
