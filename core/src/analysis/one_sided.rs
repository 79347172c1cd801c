use super::cut::{Cut, DOUBTFUL, Unit, compliance, one_sided};
use super::factorised::Factorised;
use super::{FrameError, LoadCase, Solution};

/// Forces and gaps below this part of the greatest are taken for rounding.
const ROUNDING: f64 = 1e-9;

/// Rounds without fewer faults after which parts are changed one at a time.
const PATIENCE: usize = 3;

/// A load case solved with one-sided parts.
#[derive(Clone, Debug)]
pub struct OneSided {
    /// Forces and movements.
    pub solution: Solution,
    /// Members that have gone slack: they bear no axial force.
    pub slack_members: Vec<usize>,
    /// Contacts that have let go.
    pub open_contacts: Vec<usize>,
}

impl Factorised<'_> {
    /// Solves one load case in which members bear tension or compression only and contacts only push, as the frame says.
    ///
    /// The parts that let go, and how far, are found on the one factorisation by block principal pivoting, which ends
    /// (J. J. Júdice, F. M. Pires, *Computers & Operations Research* 21 (1994), 587–596). A frame that lifts off
    /// altogether is a [`FrameError::Mechanism`].
    pub fn solve_one_sided(&self, loads: &LoadCase) -> Result<OneSided, FrameError> {
        let parts = one_sided(self.frame);
        let tight = self.solve(loads)?;
        let mut contact = Complementarity::new(self, &parts, &tight);
        contact.settle()?;

        let (mut loads, mut slips) = (loads.clone(), Vec::new());
        let (mut slack_members, mut open_contacts) = (Vec::new(), Vec::new());
        for (index, &(cut, sign)) in parts.iter().enumerate().filter(|(index, _)| contact.open[*index]) {
            match cut {
                Cut::Contact(contact) => open_contacts.push(contact),
                Cut::Along(member) | Cut::Turn(member, _) => slack_members.push(member),
                Cut::Ground(..) => {}
            }
            let by = contact.units[index].as_ref().map_or(0.0, |unit| unit.by);
            cut.shift(self.frame, sign * by * contact.gaps[index], &mut loads, &mut slips);
        }
        let solution =
            if slips.is_empty() && slack_members.is_empty() { tight } else { self.solve_slipped(&loads, &slips)? };
        Ok(OneSided { solution, slack_members, open_contacts })
    }
}

/// Each part bears a force of its sign, or has a gap of that sign: `force = at rest + S·gaps`.
struct Complementarity<'a> {
    factorised: &'a Factorised<'a>,
    parts: &'a [(Cut, f64)],
    /// Forces with all parts closed.
    closed: Vec<f64>,
    open: Vec<bool>,
    gaps: Vec<f64>,
    /// Known only of parts that have been open.
    units: Vec<Option<Unit>>,
    /// Whether so little holds the frame that it may be rounding.
    doubtful: bool,
}

impl<'a> Complementarity<'a> {
    fn new(factorised: &'a Factorised<'a>, parts: &'a [(Cut, f64)], tight: &Solution) -> Self {
        let closed = parts.iter().map(|(cut, sign)| sign * cut.force(factorised.frame, tight)).collect();
        let count = parts.len();
        Self {
            factorised,
            parts,
            closed,
            open: vec![false; count],
            gaps: vec![0.0; count],
            units: vec![None; count],
            doubtful: false,
        }
    }

    fn settle(&mut self) -> Result<(), FrameError> {
        let rounds = 20 + 10 * self.parts.len();
        let (mut fewest, mut patience) = (usize::MAX, PATIENCE);
        for _ in 0..rounds {
            let faults = self.faults();
            let Some(&last) = faults.last() else { return Ok(()) };
            if faults.len() < fewest {
                (fewest, patience) = (faults.len(), PATIENCE);
            } else {
                patience = patience.saturating_sub(1);
            }
            let before = self.open.clone();
            let change = if patience > 0 { faults.as_slice() } else { &[last] };
            change.iter().for_each(|&part| self.open[part] = !self.open[part]);
            match self.find_gaps() {
                Ok(()) => {}
                Err(error) if change.len() == 1 => return Err(error),
                Err(_) => {
                    self.open = before;
                    self.open[last] = !self.open[last];
                    patience = 0;
                    self.find_gaps()?;
                }
            }
        }
        Err(FrameError::NoContact { rounds })
    }

    /// Parts that bear a force of the wrong sign, and open ones whose gap has closed.
    fn faults(&self) -> Vec<usize> {
        let forces = self.forces();
        let greatest = |values: &[f64]| values.iter().fold(0.0, |most: f64, value| most.max(value.abs()));
        let (force, gap) = (ROUNDING * greatest(&self.closed), ROUNDING * greatest(&self.gaps));
        let wrong = |&part: &usize| if self.open[part] { self.gaps[part] < -gap } else { forces[part] < -force };
        (0..self.parts.len()).filter(wrong).collect()
    }

    fn opened(&self) -> impl Iterator<Item = (&Unit, f64, f64)> {
        let all = self.units.iter().zip(self.parts).zip(&self.gaps).zip(&self.open);
        all.filter(|(_, open)| **open)
            .filter_map(|(((unit, part), gap), _)| unit.as_ref().map(|unit| (unit, part.1, *gap)))
    }

    fn forces(&self) -> Vec<f64> {
        let frame = self.factorised.frame;
        let force = |((cut, sign), closed): (&(Cut, f64), &f64)| {
            let by_gaps = self.opened().map(|(unit, way, gap)| sign * way * gap * cut.force(frame, &unit.solution));
            closed + by_gaps.sum::<f64>()
        };
        self.parts.iter().zip(&self.closed).map(force).collect()
    }

    /// Gaps at which the open parts bear nothing.
    fn find_gaps(&mut self) -> Result<(), FrameError> {
        let open: Vec<usize> = (0..self.parts.len()).filter(|&part| self.open[part]).collect();
        for &part in &open {
            if self.units[part].is_none() {
                self.units[part] = Some(Unit::new(self.factorised, self.parts[part].0)?);
            }
        }
        let units: Vec<&Unit> = open.iter().filter_map(|&part| self.units[part].as_ref()).collect();
        let matrix = compliance(self.factorised.frame, &units)?;
        let right = open.iter().map(|&part| -self.parts[part].1 * self.closed[part]).collect();
        self.doubtful = matrix.weakest() < DOUBTFUL;
        self.gaps.fill(0.0);
        for (&part, gap) in open.iter().zip(matrix.solve(right)) {
            self.gaps[part] = self.parts[part].1 * gap;
        }
        Ok(())
    }
}
