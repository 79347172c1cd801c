use super::cut::{Cut, DOUBTFUL, Unit, compliance};
use super::dense::Dense;
use super::factorised::Factorised;
use super::{Dof, Frame, FrameError, LoadCase, Solution};
use crate::sorting::sort;

/// Moment, by the greatest force in any member, that is taken for rounding.
const ROUNDING: f64 = 1e-6;

/// Moment in kNm that is taken for rounding in any case.
const LEAST_MOMENT: f64 = 1e-9;

/// What is taken out of a frame to see what happens.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Removal {
    /// Members, with the loads along them.
    pub members: Vec<usize>,
    /// Directions in which the ground lets a node go: supports, springs and contacts there.
    pub supports: Vec<(usize, Dof)>,
}

/// A factorised frame without some of its parts, ready for any number of load cases.
#[derive(Clone, Debug)]
pub struct Without<'f> {
    whole: &'f Factorised<'f>,
    members: Vec<usize>,
    units: Vec<Unit>,
    /// Cuts at nodes that nothing else turns: they bear a moment only if the loads put one there.
    idle: Vec<Cut>,
    matrix: Dense,
}

impl Removal {
    /// What is left of a frame.
    fn rest(&self, frame: &Frame) -> Frame {
        let mut rest = frame.clone();
        let mut index = 0;
        rest.members.retain(|_| {
            index += 1;
            !self.members.contains(&(index - 1))
        });
        for &(node, dof) in &self.supports {
            for support in rest.supports.iter_mut().filter(|support| support.node == node) {
                *[&mut support.ux, &mut support.uy, &mut support.rz][dof as usize] = false;
            }
            rest.springs.retain(|spring| spring.node != node || spring.dof != dof);
            rest.contacts.retain(|contact| contact.node != node || contact.dof != dof);
        }
        rest
    }
}

impl Factorised<'_> {
    /// Takes parts out without factorising anew: the rest is solved under the gaps and settlements at which the parts
    /// bear nothing. Parts act both ways here.
    pub fn without(&self, removal: &Removal) -> Result<Without<'_>, FrameError> {
        let mut members = removal.members.clone();
        sort(&mut members, usize::cmp);
        members.dedup();
        let mut cuts = Vec::new();
        for (index, &member) in members.iter().enumerate() {
            if member >= self.stiffness.elements.len() {
                return Err(FrameError::UnknownMember { what: "removal", index, member });
            }
            cuts.extend(Cut::of_member(self.frame, member));
        }
        for (index, &(node, dof)) in removal.supports.iter().enumerate() {
            self.frame.has_node("removal", index, node)?;
            let cut = Cut::Ground(node, dof);
            if !cuts.contains(&cut) {
                cuts.push(cut);
            }
        }
        let units = cuts.into_iter().map(|cut| Unit::new(self, cut)).collect::<Result<Vec<_>, _>>()?;
        let (mut units, mut idle) = (units, Vec::new());
        loop {
            match compliance(self.frame, &units.iter().collect::<Vec<_>>(), 0.0) {
                Ok(matrix) => {
                    if matrix.weakest() < DOUBTFUL {
                        removal.rest(self.frame).factorise()?;
                    }
                    return Ok(Without { whole: self, members, units, idle, matrix });
                }
                // Nothing turns this node any more: there is nothing to let go.
                Err(loose) if loose.turns() && matches!(units[loose.cut].cut, Cut::Turn(..)) => {
                    idle.push(units.remove(loose.cut).cut);
                }
                Err(loose) => return Err(loose.into()),
            }
        }
    }
}

impl Without<'_> {
    /// Solves one load case. Forces of the removed parts are 0; movements along removed members mean nothing.
    pub fn solve(&self, loads: &LoadCase) -> Result<Solution, FrameError> {
        let frame = self.whole.frame;
        let mut loads = loads.without_members(&self.members);
        let before = self.whole.solve(&loads)?;
        let parts = self.matrix.solve(self.units.iter().map(|unit| -unit.cut.force(frame, &before)).collect());
        let mut slips = Vec::new();
        for (unit, part) in self.units.iter().zip(parts) {
            unit.cut.shift(frame, part * unit.by, &mut loads, &mut slips);
        }
        let solution = self.whole.solve_slipped(&loads, &slips)?;
        let least = (ROUNDING * before.greatest_force()).max(LEAST_MOMENT);
        for cut in &self.idle {
            if let Cut::Turn(member, end) = *cut
                && cut.force(frame, &solution).abs() > least
            {
                let data = &frame.members[member];
                return Err(FrameError::turning([data.i, data.j][end], frame.nodes.len()));
            }
        }
        Ok(solution)
    }
}
