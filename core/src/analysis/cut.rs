use super::dense::Dense;
use super::element::Element;
use super::factorised::Factorised;
use super::mechanism::greatest;
use super::{Acts, Displacement, Dof, Frame, FrameError, Gap, LoadCase, Settlement, Solution};

/// Part of a cut's own stiffness below which what is left may be rounding: the rest is then factorised by itself to see
/// whether it stands.
pub(super) const DOUBTFUL: f64 = 1e-5;

/// Something that a part of the frame resists: moved by a gap, a settlement or a slip, it takes on a force.
///
/// Moved far enough that the force is gone, the frame behaves as if that part were not there, on the factorisation that
/// there is. Source: J. Holnicki-Szulc, J. T. Gierliński, *Structural Analysis, Design and Control by the Virtual
/// Distortion Method*, 1995.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Cut {
    /// A member along its axis; the force is its mean axial force.
    Along(usize),
    /// A member against turning at node i or node j; the force is the moment there.
    Turn(usize, usize),
    /// The ground at a node; the force is the reaction.
    Ground(usize, Dof),
    /// A contact; the force is that along the positive direction.
    Contact(usize),
}

impl Cut {
    /// Everything that ties a member to the frame, its nodes left where they are.
    pub fn of_member(frame: &Frame, member: usize) -> Vec<Self> {
        let data = &frame.members[member];
        let mut cuts = Vec::with_capacity(3);
        if data.axial_release == [false; 2] {
            cuts.push(Self::Along(member));
        }
        let released = [data.release_i, data.release_j];
        let slides = data.shear_release.iter().filter(|slides| **slides).count();
        let hinges = released.iter().filter(|hinged| **hinged).count();
        let left = if data.ei == 0.0 { 0 } else { 2_usize.saturating_sub(slides + hinges) };
        let turns = (0..2).filter(|&end| !released[end]).map(|end| Self::Turn(member, end));
        cuts.extend(turns.take(left));
        cuts
    }

    /// Moves it by `by`, in a load case or, for a contact, by a slip, in the sense that raises its force.
    pub fn shift(self, frame: &Frame, by: f64, loads: &mut LoadCase, slips: &mut Vec<(usize, f64)>) {
        let gap = |member, a, along, turn| Gap { member, a, along, across: 0.0, turn };
        match self {
            Self::Along(member) => loads.gaps.push(gap(member, 0.0, -by, 0.0)),
            Self::Turn(member, 0) => loads.gaps.push(gap(member, 0.0, 0.0, -by)),
            Self::Turn(member, _) => {
                let (length, ..) = frame.direction(&frame.members[member]);
                loads.gaps.push(gap(member, length, 0.0, -by));
            }
            Self::Ground(node, dof) => loads.settlements.push(Settlement { node, dof, by }),
            Self::Contact(contact) => slips.push((contact, by)),
        }
    }

    /// Its force in a solution.
    pub fn force(self, frame: &Frame, solution: &Solution) -> f64 {
        match self {
            Self::Along(member) => solution.mean_axial(member),
            Self::Turn(member, 0) => solution.moment_at(member, 0.0),
            Self::Turn(member, _) => solution.moment_at(member, f64::INFINITY),
            Self::Ground(node, dof) => {
                let reaction = solution.reaction(node);
                [reaction.fx, reaction.fy, reaction.mz][dof as usize]
            }
            Self::Contact(contact) => frame.contacts[contact].pushed(solution.contact_force(contact)),
        }
    }

    /// What its own stiffness is measured by.
    pub fn stiffness(self, factorised: &Factorised) -> f64 {
        let (frame, elements) = (factorised.frame, &factorised.stiffness.elements);
        match self {
            Self::Along(member) => elements[member].ea / elements[member].length,
            Self::Turn(member, _) => elements[member].ei / elements[member].length,
            Self::Contact(contact) if frame.contacts[contact].k.is_finite() => frame.contacts[contact].k,
            Self::Contact(contact) => ground(factorised, frame.contacts[contact].node, frame.contacts[contact].dof),
            Self::Ground(node, dof) => ground(factorised, node, dof),
        }
    }
}

/// Stiffness with which the frame and its springs hold a node.
fn ground(factorised: &Factorised, node: usize, dof: Dof) -> f64 {
    let at = dof as usize;
    let joined = factorised.stiffness.elements.iter().filter(|element| element.nodes.contains(&node));
    let of_element = |element: &Element| {
        let stiffness = element.stiffness();
        let end = |end: usize| if element.nodes[end] == node { stiffness[3 * end + at][3 * end + at] } else { 0.0 };
        end(0) + end(1)
    };
    let springs = factorised.frame.springs.iter().filter(|spring| spring.node == node && spring.dof == dof);
    let stiffness = joined.map(of_element).sum::<f64>() + springs.map(|spring| spring.k).sum::<f64>();
    if stiffness > 0.0 { stiffness } else { 1.0 }
}

/// The one-sided part that a cut opens, and the sign of the force with which it works.
pub(super) fn one_sided(frame: &Frame) -> Vec<(Cut, f64)> {
    let members = frame.members.iter().enumerate().filter_map(|(member, data)| match data.acts {
        Acts::Both => None,
        Acts::Tension => Some((Cut::Along(member), 1.0)),
        Acts::Compression => Some((Cut::Along(member), -1.0)),
    });
    let contacts = frame.contacts.iter().enumerate();
    let contacts =
        contacts.map(|(index, contact)| (Cut::Contact(index), if contact.pushes_positive { 1.0 } else { -1.0 }));
    members.chain(contacts).collect()
}

/// The solution for a unit movement of a cut.
#[derive(Clone, Debug)]
pub(super) struct Unit {
    pub cut: Cut,
    pub solution: Solution,
    /// The movement, chosen so that the part's own stiffness would answer it with 1.
    pub by: f64,
}

impl Unit {
    pub fn new(factorised: &Factorised, cut: Cut) -> Result<Self, FrameError> {
        let by = 1.0 / cut.stiffness(factorised);
        let (mut loads, mut slips) = (LoadCase::default(), Vec::new());
        cut.shift(factorised.frame, by, &mut loads, &mut slips);
        Ok(Self { cut, solution: factorised.solve_slipped(&loads, &slips)?, by })
    }
}

/// A cut without which, those before it open, the frame is loose, and how it moves then.
pub(super) struct Loose {
    pub cut: usize,
    pub movement: Vec<Displacement>,
}

/// Forces of cuts by the movements of all, factorised to find the movements at which none bears anything, but for a part
/// `left` of its own stiffness.
pub(super) fn compliance(frame: &Frame, units: &[&Unit], left: f64) -> Result<Dense, Loose> {
    let row = |of: &Unit, by: &[&Unit]| by.iter().map(|by| of.cut.force(frame, &by.solution)).collect::<Vec<f64>>();
    let mut rows: Vec<Vec<f64>> = units.iter().map(|of| row(of, units)).collect();
    rows.iter_mut().enumerate().for_each(|(at, row)| row[at] += left);
    Dense::factorise(rows).map_err(|cut| {
        // The movement, 1 for this cut, at which those before it bear nothing.
        let (before, last) = units.split_at(cut);
        let right = before.iter().map(|of| -of.cut.force(frame, &last[0].solution)).collect();
        let mut parts = Dense::factorise(before.iter().map(|of| row(of, before)).collect())
            .map_or(vec![0.0; cut], |matrix| matrix.solve(right));
        parts.push(1.0);
        Loose { cut, movement: together(units, &parts) }
    })
}

impl Loose {
    /// Whether nothing shifts and nodes only turn.
    pub fn turns(&self) -> bool {
        greatest(&self.movement).1 == Dof::Rz
    }
}

impl From<Loose> for FrameError {
    fn from(loose: Loose) -> Self {
        Self::mechanism(loose.movement)
    }
}

/// How nodes move when cuts open by these parts of their unit movements.
fn together(units: &[&Unit], parts: &[f64]) -> Vec<Displacement> {
    let nodes = units.first().map_or(0, |unit| unit.solution.displacements.len());
    let mut movement = vec![Displacement::default(); nodes];
    for (unit, part) in units.iter().zip(parts) {
        movement.iter_mut().zip(&unit.solution.displacements).for_each(|(sum, moved)| sum.add(*part, moved));
    }
    movement
}
