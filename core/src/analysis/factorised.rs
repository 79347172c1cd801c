use super::assembly::{Unknowns, ends};
use super::cutting::Response;
use super::element::Element;
use super::loads::LocalLoads;
use super::magnitude::greatest_size;
use super::pieces::Pieces;
use super::skyline::Skyline;
use super::{Contact, Displacement, Dof, Frame, FrameError, LoadCase, Reaction, Solution};
use std::sync::Arc;

/// Greatest force out of balance at a node, by the greatest force on any node.
const BALANCE: f64 = 1e-6;

/// Part of a pivot that its movement must do as work on the members: else the pivot is rounding.
const TRUE_WORK: f64 = 1e-3;

/// The stiffness of a frame, factorised for the axial forces that act on its deflections.
#[derive(Clone, Debug)]
pub(super) struct Stiffness {
    pub elements: Arc<[Element]>,
    pub unknowns: Unknowns,
    pub matrix: Skyline,
}

impl Stiffness {
    /// Of a frame checked before, not yet factorised.
    pub fn new(frame: &Frame) -> Self {
        let elements: Arc<[_]> = frame.members.iter().map(|member| Element::new(frame, member)).collect();
        let unknowns = Unknowns::new(frame, &elements);
        let matrix = unknowns.matrix(&elements);
        Self { elements, unknowns, matrix }
    }

    /// Solutions keep those they were found with.
    pub fn elements_mut(&mut self) -> &mut [Element] {
        Arc::make_mut(&mut self.elements)
    }

    /// Sets the axial force of each member that acts on its deflections, before factorising again.
    pub fn set_tensions(&mut self, tensions: impl Iterator<Item = f64>) {
        self.matrix.clear();
        for (element, tension) in self.elements_mut().iter_mut().zip(tensions) {
            element.section.tension = tension;
        }
    }

    /// Factorises and counts the negative eigenvalues, those of the held members included: once for the tensions set.
    pub fn count_negative(&mut self, frame: &Frame) -> usize {
        self.unknowns.assemble(frame, &self.elements, &mut self.matrix);
        self.matrix.factorise() + self.elements.iter().map(Element::buckled_alone).sum::<usize>()
    }

    /// A movement of the nodes that nothing resists. Where rounding has left a pivot for it, its work on each member tells
    /// them apart: there no great numbers cancel.
    fn free_movement(&self, frame: &Frame) -> Option<Vec<[f64; 3]>> {
        let movement = |row| self.unknowns.movements(&self.matrix.soft_movement(row), &[]);
        if let Some(row) = self.matrix.weak_pivot() {
            return Some(movement(row));
        }
        self.matrix.doubtful_pivots().iter().find_map(|&(row, pivot)| {
            let movement = movement(row);
            (self.work(frame, &movement) < TRUE_WORK * pivot).then_some(movement)
        })
    }

    /// Work of a movement of the nodes on all that resists it.
    fn work(&self, frame: &Frame, movements: &[[f64; 3]]) -> f64 {
        let on_element = |element: &Element| {
            let movement = ends(movements, element);
            let start = element.start(element.turn_in(movement), &Response::REST);
            let forces = element.forces_on(&movement, &start, &Response::REST);
            forces.iter().zip(movement).map(|(force, by)| force * by).sum::<f64>()
        };
        let elastic = frame.ground_stiffnesses().filter(|(.., k)| k.is_finite());
        self.elements.iter().map(on_element).sum::<f64>()
            + elastic.map(|(node, dof, k)| k * movements[node][dof as usize].powi(2)).sum::<f64>()
    }
}

/// A frame ready to be solved for any number of load cases.
#[derive(Clone, Debug)]
pub struct Factorised<'a> {
    pub(super) frame: &'a Frame,
    pub(super) stiffness: Stiffness,
}

impl Frame {
    /// Factorises the stiffness of the frame, or says where the frame is loose.
    ///
    /// For members that stand for rigid links, EA up to 10⁶ · EI / 1 m² keeps six figures. Where rounding spoils more
    /// than that, solving gives [`FrameError::IllConditioned`].
    pub fn factorise(&self) -> Result<Factorised<'_>, FrameError> {
        self.validate()?;
        let mut stiffness = Stiffness::new(self);
        stiffness.count_negative(self);
        match stiffness.free_movement(self) {
            None => Ok(Factorised { frame: self, stiffness }),
            Some(movement) => Err(FrameError::mechanism(movement.into_iter().map(Displacement::from).collect())),
        }
    }
}

impl<'a> Factorised<'a> {
    /// A frame checked before, not yet factorised.
    pub(super) fn new(frame: &'a Frame) -> Self {
        Self { frame, stiffness: Stiffness::new(frame) }
    }

    /// Factorises, or says that the frame is not stable under its axial forces.
    pub(super) fn factorise_stable(&mut self) -> Result<(), FrameError> {
        let unstable = self.stiffness.count_negative(self.frame) > 0;
        if unstable || self.stiffness.matrix.weak_pivot().is_some() {
            return Err(FrameError::Unstable);
        }
        Ok(())
    }
}

impl Factorised<'_> {
    /// Solves one load case. One-sided parts act both ways here: see [`Self::solve_one_sided`].
    pub fn solve(&self, loads: &LoadCase) -> Result<Solution, FrameError> {
        self.solve_slipped(loads, &[])
    }

    /// The same with the ground under some contacts moved.
    pub(super) fn solve_slipped(&self, loads: &LoadCase, slips: &[(usize, f64)]) -> Result<Solution, FrameError> {
        let loads = loads.to_local(self.frame, &self.stiffness.elements)?;
        let ground = self.ground(&loads, slips);
        let (mut pieces, responses) = Pieces::cut(&self.stiffness.elements, &loads);
        let (x, applied) = self.unknown_movements(&loads, &ground, &responses);
        let movements = self.stiffness.unknowns.movements(&x, &ground.held);
        let mut forces = vec![[0.0; 3]; self.frame.nodes.len()];
        for (member, (element, response)) in self.stiffness.elements.iter().zip(&responses).enumerate() {
            let [i, j] = element.nodes;
            let response = response.as_ref().unwrap_or(&Response::REST);
            let movement = ends(&movements, element);
            let start = element.start(element.turn_in(movement), response);
            let on_member = element.forces_on(&movement, &start, response);
            for dof in 0..3 {
                forces[i][dof] += on_member[dof];
                forces[j][dof] += on_member[dof + 3];
            }
            pieces.set_start(member, start);
        }
        self.collect(movements, &loads, &ground, applied, forces, pieces)
    }

    fn ground(&self, loads: &LocalLoads, slips: &[(usize, f64)]) -> Ground {
        let Frame { springs, contacts, .. } = self.frame;
        let under = |node: usize, dof: Dof| loads.ground.get(node).map_or(0.0, |ground| ground[dof as usize]);
        let mut ground = Ground {
            held: loads.ground.clone(),
            springs: springs.iter().map(|spring| under(spring.node, spring.dof)).collect(),
            contacts: contacts.iter().map(|contact| under(contact.node, contact.dof)).collect(),
        };
        for &(index, by) in slips {
            let contact = &contacts[index];
            ground.contacts[index] += by;
            if contact.k.is_infinite() {
                ground.held.resize(self.frame.nodes.len(), [0.0; 3]);
                ground.held[contact.node][contact.dof as usize] += by;
            }
        }
        ground
    }

    /// Movements of the unknowns, and the greatest force that moves them.
    fn unknown_movements(
        &self,
        loads: &LocalLoads,
        ground: &Ground,
        responses: &[Option<Response>],
    ) -> (Vec<f64>, f64) {
        let count = self.stiffness.unknowns.count();
        // What pushes no unknown goes into the last place.
        let mut x = vec![0.0; count + 1];
        let mut push = |unknown: usize, force: f64| x[unknown] += force;
        for (node, load) in loads.nodes.iter().enumerate() {
            self.stiffness.unknowns.of(node).into_iter().zip(load).for_each(|(unknown, load)| push(unknown, *load));
        }
        for (spring, ground) in self.frame.springs.iter().zip(&ground.springs) {
            push(self.stiffness.unknowns.of(spring.node)[spring.dof as usize], spring.k * ground);
        }
        for (contact, ground) in self.frame.contacts.iter().zip(&ground.contacts).filter(|(_, ground)| **ground != 0.0)
        {
            push(self.stiffness.unknowns.of(contact.node)[contact.dof as usize], contact.k * ground);
        }
        for (element, response) in self.stiffness.elements.iter().zip(responses) {
            let settled = element.nodes.iter().any(|&node| ground.held.get(node).is_some_and(|by| by != &[0.0; 3]));
            let inclined = element.section.tension != 0.0 && element.imperfection != [0.0; 2];
            if response.is_none() && !settled && !inclined {
                continue;
            }
            let response = response.as_ref().unwrap_or(&Response::REST);
            let mut movement = [0.0; 6];
            if settled {
                let held = |node: usize| {
                    let (by, held) = (ground.held[node], self.stiffness.unknowns.held[node]);
                    std::array::from_fn::<_, 3, _>(|dof| if held[dof] { by[dof] } else { 0.0 })
                };
                let [[a, b, c], [d, e, f]] = element.nodes.map(held);
                movement = [a, b, c, d, e, f];
            }
            let start = element.start(element.turn_in(movement), response);
            let on_member = element.forces_on(&movement, &start, response);
            self.stiffness
                .unknowns
                .of_ends(element)
                .into_iter()
                .zip(on_member)
                .for_each(|(unknown, end)| push(unknown, -end));
        }
        x.truncate(count);
        let applied = greatest_size(&x);
        self.stiffness.matrix.solve(&mut x);
        (x, applied)
    }

    /// Reactions from the balance of each node, where `forces` are those of the nodes on the members.
    fn collect(
        &self,
        movements: Vec<[f64; 3]>,
        loads: &LocalLoads,
        ground: &Ground,
        applied: f64,
        mut forces: Vec<[f64; 3]>,
        pieces: Pieces,
    ) -> Result<Solution, FrameError> {
        let Frame { springs, contacts, .. } = self.frame;
        let greatest = applied.max(greatest_size(forces.as_flattened())).max(greatest_size(loads.nodes.as_flattened()));
        for (force, load) in forces.as_flattened_mut().iter_mut().zip(loads.nodes.as_flattened()) {
            *force -= load;
        }
        let mut reactions = vec![[0.0; 3]; self.frame.nodes.len()];
        let elastic = |node: usize, dof: Dof, k: f64, ground: f64| -k * (movements[node][dof as usize] - ground);
        let mut spring_forces = Vec::with_capacity(springs.len());
        for (spring, ground) in springs.iter().zip(&ground.springs) {
            let force = elastic(spring.node, spring.dof, spring.k, *ground);
            reactions[spring.node][spring.dof as usize] += force;
            spring_forces.push(force);
        }
        let mut contact_forces = Vec::with_capacity(contacts.len());
        for (contact, ground) in contacts.iter().zip(&ground.contacts) {
            let Contact { node, dof, k, .. } = *contact;
            let elsewhere = reactions[node][dof as usize];
            let rigid = k.is_infinite();
            let force = if rigid { forces[node][dof as usize] - elsewhere } else { elastic(node, dof, k, *ground) };
            reactions[node][dof as usize] += force;
            contact_forces.push(contact.pushed(force));
        }
        for (node, balance) in forces.iter().enumerate() {
            for dof in 0..3 {
                let residual = balance[dof] - reactions[node][dof];
                if self.stiffness.unknowns.held[node][dof] {
                    reactions[node][dof] = balance[dof];
                } else if residual.is_nan() || residual.abs() > BALANCE * greatest {
                    let dof = Dof::ALL[dof];
                    let loose =
                        dof == Dof::Rz && self.stiffness.unknowns.of(node)[2] == self.stiffness.unknowns.count();
                    return Err(if loose {
                        FrameError::turning(node, self.frame.nodes.len())
                    } else {
                        FrameError::IllConditioned { node, dof }
                    });
                }
            }
        }
        Ok(Solution {
            displacements: movements.into_iter().map(Displacement::from).collect(),
            reactions: reactions.into_iter().map(Reaction::from).collect(),
            spring_forces,
            contact_forces,
            pieces,
        })
    }
}

/// Movement of the ground: where it holds nodes rigidly (empty if it rests), under springs and under contacts.
struct Ground {
    held: Vec<[f64; 3]>,
    springs: Vec<f64>,
    contacts: Vec<f64>,
}
