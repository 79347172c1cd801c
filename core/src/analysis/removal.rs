use super::cut::{Cut, DOUBTFUL, Unit, compliance};
use super::dense::Dense;
use super::factorised::Factorised;
use super::{Dof, Frame, FrameError, LoadCase, Solution};
use crate::sorting::sort;
use std::rc::Rc;

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
    units: Vec<Rc<Unit>>,
    /// Cuts at nodes that nothing else turns: they bear a moment only if the loads put one there.
    idle: Vec<Cut>,
    matrix: Dense,
}

/// A factorised frame from which one thing after the other is taken out: what is found for a part serves again.
#[derive(Clone, Debug)]
pub struct WhatIf<'f> {
    whole: &'f Factorised<'f>,
    units: Vec<Rc<Unit>>,
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

impl<'f> Factorised<'f> {
    /// Takes parts out without factorising anew: the rest is solved under the gaps and settlements at which the parts
    /// bear nothing. Parts act both ways here.
    pub fn without(&'f self, removal: &Removal) -> Result<Without<'f>, FrameError> {
        WhatIf::new(self).without(removal)
    }
}

impl<'f> WhatIf<'f> {
    /// Nothing taken out yet.
    pub fn new(whole: &'f Factorised<'f>) -> Self {
        Self { whole, units: Vec::new() }
    }

    /// As [`Factorised::without`].
    pub fn without(&mut self, removal: &Removal) -> Result<Without<'f>, FrameError> {
        let (whole, frame) = (self.whole, self.whole.frame);
        let mut members = removal.members.clone();
        sort(&mut members, usize::cmp);
        members.dedup();
        let mut cuts = Vec::new();
        for (index, &member) in members.iter().enumerate() {
            if member >= whole.stiffness.elements.len() {
                return Err(FrameError::UnknownMember { what: "removal", index, member });
            }
            cuts.extend(Cut::of_member(frame, member));
        }
        for (index, &(node, dof)) in removal.supports.iter().enumerate() {
            frame.has_node("removal", index, node)?;
            let cut = Cut::Ground(node, dof);
            if !cuts.contains(&cut) {
                cuts.push(cut);
            }
        }
        let mut units = cuts.into_iter().map(|cut| self.unit(cut)).collect::<Result<Vec<_>, _>>()?;
        let mut idle = Vec::new();
        loop {
            match compliance(frame, &units.iter().map(Rc::as_ref).collect::<Vec<_>>(), 0.0) {
                Ok(matrix) => {
                    if matrix.weakest() < DOUBTFUL {
                        removal.rest(frame).factorise()?;
                    }
                    return Ok(Without { whole, members, units, idle, matrix });
                }
                // Nothing turns this node any more: there is nothing to let go.
                Err(loose) if loose.turns() && matches!(units[loose.cut].cut, Cut::Turn(..)) => {
                    idle.push(units.remove(loose.cut).cut);
                }
                Err(loose) => return Err(loose.into()),
            }
        }
    }

    fn unit(&mut self, cut: Cut) -> Result<Rc<Unit>, FrameError> {
        if let Some(known) = self.units.iter().find(|unit| unit.cut == cut) {
            return Ok(known.clone());
        }
        let unit = Rc::new(Unit::new(self.whole, cut)?);
        self.units.push(unit.clone());
        Ok(unit)
    }
}

impl Without<'_> {
    /// Solves one load case. Forces of the removed parts are 0; movements along removed members mean nothing.
    pub fn solve(&self, loads: &LoadCase) -> Result<Solution, FrameError> {
        let frame = self.whole.frame;
        let before = self.whole.solve(&loads.without_members(&self.members))?;
        let solution = self.after(&[(1.0, &before)]);
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

    /// What becomes of a sum of solutions of the whole frame, under loads that leave removed members alone.
    pub fn after(&self, before: &[(f64, &Solution)]) -> Solution {
        Solution::sum(&self.parts_after(before)).unwrap_or_default()
    }

    /// Solutions of the whole frame and those of the movements that leave the removed parts without force: what their sum
    /// is made of.
    pub fn parts_after<'s>(&'s self, before: &[(f64, &'s Solution)]) -> Vec<(f64, &'s Solution)> {
        let frame = self.whole.frame;
        let force =
            |unit: &Rc<Unit>| -before.iter().map(|(factor, of)| factor * unit.cut.force(frame, of)).sum::<f64>();
        let movements = self.matrix.solve(self.units.iter().map(force).collect());
        let units = self.units.iter().map(|unit| &unit.solution);
        before.iter().copied().chain(movements.into_iter().zip(units)).collect()
    }
}
