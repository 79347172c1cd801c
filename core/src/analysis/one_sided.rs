use super::cut::{Cut, DOUBTFUL, Unit, compliance, one_sided};
use super::factorised::Factorised;
use super::magnitude::greatest_size;
use super::{FrameError, LoadCase, Solution, letting_go, pivoting};

/// Forces and gaps below this part of the greatest are taken for rounding.
pub(super) const ROUNDING: f64 = 1e-9;

/// Part of their own stiffness that parts keep where they need something to hold them on the way.
const LEFT: f64 = 1e-6;

/// A load case solved with one-sided parts.
#[derive(Clone, Debug)]
pub struct OneSided {
    /// Forces and movements.
    pub solution: Solution,
    /// Members that have gone slack: they bear no axial force.
    pub slack_members: Vec<usize>,
    /// Contacts that have let go.
    pub open_contacts: Vec<usize>,
    /// Contacts that push and yet let go of what they grip: they would neither hold it nor lift without it.
    pub sliding_contacts: Vec<usize>,
}

impl OneSided {
    /// Whether a contact lets go of what it grips though it pushes.
    pub(super) fn slides(&self, cut: Cut) -> bool {
        matches!(cut, Cut::Contact(contact) if self.sliding_contacts.contains(&contact))
    }

    /// Whether a one-sided part has let go.
    pub(super) fn lets_go(&self, cut: Cut) -> bool {
        match cut {
            Cut::Along(member) => self.slack_members.contains(&member),
            Cut::Contact(contact) => self.open_contacts.contains(&contact),
            Cut::Turn(..) | Cut::Ground(..) => false,
        }
    }
}

/// A factorised frame with what it takes to let its one-sided parts go, for any number of load cases.
#[derive(Clone, Debug)]
pub struct Contacts<'f> {
    factorised: &'f Factorised<'f>,
    /// What each part resists, and the sign of the force with which it works.
    parts: Vec<(Cut, f64)>,
    /// Those of the parts, and those of what contacts grip.
    cuts: Vec<Cut>,
    /// Cut of what each part grips.
    grips: Vec<Option<usize>>,
    /// Known only of cuts that have been open.
    units: Vec<Option<Unit>>,
}

impl Factorised<'_> {
    /// Solves one load case in which members bear tension or compression only and contacts only push, as the frame says.
    /// Of several, see [`Self::contacts`].
    pub fn solve_one_sided(&self, loads: &LoadCase) -> Result<OneSided, FrameError> {
        self.contacts().solve(loads)
    }

    /// The frame with its one-sided parts.
    pub fn contacts(&self) -> Contacts<'_> {
        let parts = one_sided(self.frame);
        let mut cuts: Vec<Cut> = parts.iter().map(|(cut, _)| *cut).collect();
        let mut grips = vec![None; parts.len()];
        for (part, grip) in grips.iter_mut().enumerate() {
            if let Cut::Contact(contact) = cuts[part]
                && let Some(dof) = self.frame.contacts[contact].grips
                && self.frame.holds(self.frame.contacts[contact].node, dof)
            {
                *grip = Some(cuts.len());
                cuts.push(Cut::Ground(self.frame.contacts[contact].node, dof));
            }
        }
        let units = vec![None; cuts.len()];
        Contacts { factorised: self, parts, cuts, grips, units }
    }
}

impl Contacts<'_> {
    /// Solves one load case. What lets go, and how far, is found on the one factorisation.
    ///
    /// Without [`super::Contact::grips`] the forces are the only ones that fit. With them there may be several states,
    /// and the one found is that next to the frame with all parts working; or there is none, as a contact would be pulled
    /// while it grips and pressed while it does not: it pushes without gripping then, and slides. A frame that lifts off altogether is a
    /// [`FrameError::Mechanism`].
    pub fn solve(&mut self, loads: &LoadCase) -> Result<OneSided, FrameError> {
        self.solve_from(vec![false; self.parts.len()], loads)
    }

    /// The same, beginning with what lets go in a case like it.
    pub fn solve_like(&mut self, like: &OneSided, loads: &LoadCase) -> Result<OneSided, FrameError> {
        self.solve_from(self.parts.iter().map(|(cut, _)| like.lets_go(*cut)).collect(), loads)
    }

    /// Whether all parts work in a sum of solutions in which all act both ways, each times its factor: it is exact then.
    pub fn all_work(&self, sum: &[(f64, &Solution)]) -> bool {
        let frame = self.factorised.frame;
        let forces: Vec<f64> = self
            .parts
            .iter()
            .map(|(cut, sign)| sum.iter().map(|(factor, solution)| sign * factor * cut.force(frame, solution)).sum())
            .collect();
        let least = -ROUNDING * greatest_size(&forces);
        forces.iter().all(|force| *force >= least)
    }

    fn solve_from(&mut self, open: Vec<bool>, loads: &LoadCase) -> Result<OneSided, FrameError> {
        let frame = self.factorised.frame;
        let tight = self.factorised.solve(loads)?;
        let mut state = State {
            closed: Vec::new(),
            gaps: vec![0.0; self.cuts.len()],
            weakest: f64::INFINITY,
            opened: vec![false; self.parts.len()],
        };
        state.closed.extend(self.cuts.iter().map(|cut| cut.force(frame, &tight)));
        let mut slid = vec![false; self.parts.len()];
        let open = match self.settle(&mut state, &open, &slid) {
            Err(FrameError::NoContact { .. }) if self.grips.iter().any(Option::is_some) => {
                slid.clone_from(&state.opened);
                self.settle(&mut state, &open, &slid)?
            }
            settled => settled?,
        };
        if state.weakest < DOUBTFUL {
            letting_go::without(frame, &self.parts, &open, &slid).factorise()?;
        }

        let mut found =
            OneSided { solution: tight, slack_members: vec![], open_contacts: vec![], sliding_contacts: vec![] };
        for (part, (cut, _)) in self.parts.iter().enumerate() {
            match *cut {
                Cut::Along(member) if open[part] => found.slack_members.push(member),
                Cut::Contact(contact) if open[part] => found.open_contacts.push(contact),
                Cut::Contact(contact) if slid[part] && self.grips[part].is_some() => {
                    found.sliding_contacts.push(contact);
                }
                _ => {}
            }
        }
        if state.gaps.iter().all(|gap| *gap == 0.0) {
            return Ok(found);
        }
        let (mut loads, mut slips) = (loads.clone(), Vec::new());
        for (unit, gap) in self.units.iter().zip(&state.gaps) {
            if let Some(unit) = unit.as_ref().filter(|_| *gap != 0.0) {
                unit.cut.shift(frame, unit.by * gap, &mut loads, &mut slips);
            }
        }
        found.solution = self.factorised.solve_slipped(&loads, &slips)?;
        Ok(found)
    }

    /// Finds the parts that let go, beginning with some, when some have let go of what they grip.
    fn settle(&mut self, state: &mut State, start: &[bool], slid: &[bool]) -> Result<Vec<bool>, FrameError> {
        let mut settle = |open: Vec<bool>, left: f64| {
            pivoting::settle(open, |open| {
                let cuts = self.opened(open, slid);
                self.find_gaps(state, &cuts, left)?;
                state.opened.iter_mut().zip(open).for_each(|(ever, open)| *ever |= open);
                Ok(self.faults(state, open, &cuts))
            })
        };
        settle(start.to_vec(), 0.0).or_else(|_| {
            // The way there may lead over sets that are loose: with a little left of every part, none is.
            let near = settle(vec![false; start.len()], LEFT)?;
            settle(near, 0.0)
        })
    }

    /// Cuts that are open when these parts let go.
    fn opened(&self, open: &[bool], slid: &[bool]) -> Vec<usize> {
        let of_part = |part: usize| {
            let grip = self.grips[part].filter(|_| open[part] || slid[part]);
            [open[part].then_some(part), grip]
        };
        (0..self.parts.len()).flat_map(of_part).flatten().collect()
    }

    /// Gaps at which the open cuts bear nothing, with a part `left` of their own stiffness.
    fn find_gaps(&mut self, state: &mut State, opened: &[usize], left: f64) -> Result<(), FrameError> {
        for &cut in opened {
            if self.units[cut].is_none() {
                self.units[cut] = Some(Unit::new(self.factorised, self.cuts[cut])?);
            }
        }
        let units: Vec<&Unit> = opened.iter().filter_map(|&cut| self.units[cut].as_ref()).collect();
        let matrix = compliance(self.factorised.frame, &units, left)?;
        state.weakest = matrix.weakest();
        state.gaps.fill(0.0);
        for (&cut, gap) in opened.iter().zip(matrix.solve(opened.iter().map(|&cut| -state.closed[cut]).collect())) {
            state.gaps[cut] = gap;
        }
        Ok(())
    }

    /// Parts that bear a force of the wrong sign, and open ones whose gap has closed.
    fn faults(&self, state: &State, open: &[bool], opened: &[usize]) -> Vec<usize> {
        let frame = self.factorised.frame;
        let force = |part: usize| {
            let by_gaps = opened.iter().filter_map(|&cut| {
                let unit = self.units[cut].as_ref()?;
                Some(state.gaps[cut] * self.cuts[part].force(frame, &unit.solution))
            });
            state.closed[part] + by_gaps.sum::<f64>()
        };
        let least = [ROUNDING * greatest_size(&state.closed), ROUNDING * greatest_size(&state.gaps)];
        let wrong = |&part: &usize| {
            let sign = self.parts[part].1;
            if open[part] { sign * state.gaps[part] < -least[1] } else { sign * force(part) < -least[0] }
        };
        (0..self.parts.len()).filter(wrong).collect()
    }
}

/// Forces are those at rest and those by the gaps: each part bears a force of its sign, or has a gap of that sign.
struct State {
    /// Force of each cut with all closed.
    closed: Vec<f64>,
    /// By units of the cuts.
    gaps: Vec<f64>,
    /// Parts that have been open at any time.
    opened: Vec<bool>,
    /// How little of their own stiffness the open cuts leave.
    weakest: f64,
}
