use super::assembly::Unknowns;
use super::element::Element;
use super::loads::LocalLoads;
use super::piece::{Pieces, Response};
use super::skyline::Skyline;
use super::{Dof, Frame, FrameError, LoadCase, Reaction, Solution};

/// A pivot below this part of its diagonal has nothing left but rounding.
const LEAST_PIVOT: f64 = 1e-11;

/// Greatest force out of balance at a node, by the greatest force on any node.
const BALANCE: f64 = 1e-6;

/// A frame ready to be solved for any number of load cases.
#[derive(Clone, Debug)]
pub struct Factorised<'a> {
    pub(super) frame: &'a Frame,
    pub(super) elements: Vec<Element>,
    pub(super) unknowns: Unknowns,
    pub(super) matrix: Skyline,
}

impl Frame {
    /// Factorises the stiffness of the frame, or says where the frame is loose.
    ///
    /// For members that stand for rigid links, EA up to 10⁶ · EI / 1 m² keeps six figures. Where rounding spoils more
    /// than that, solving gives [`FrameError::IllConditioned`].
    pub fn factorise(&self) -> Result<Factorised<'_>, FrameError> {
        self.validate()?;
        let mut factorised = Factorised::new(self);
        factorised.count_negative();
        match factorised.matrix.weak_pivot(LEAST_PIVOT) {
            None => Ok(factorised),
            Some(row) => {
                let movement = factorised.matrix.soft_movement(row);
                let (node, dof) = factorised.unknowns.greatest(&movement).unwrap_or((0, Dof::Ux));
                Err(FrameError::Mechanism { node, dof })
            }
        }
    }
}

impl<'a> Factorised<'a> {
    /// A frame checked before, not yet factorised.
    pub(super) fn new(frame: &'a Frame) -> Self {
        let elements: Vec<_> = frame.members.iter().map(|member| Element::new(frame, member)).collect();
        let unknowns = Unknowns::new(frame, &elements);
        let matrix = unknowns.matrix(&elements);
        Self { frame, elements, unknowns, matrix }
    }

    /// Sets the axial force of each member that acts on its deflections. Factorise again after that.
    pub(super) fn set_tensions(&mut self, tensions: impl Iterator<Item = f64>) {
        for (element, tension) in self.elements.iter_mut().zip(tensions) {
            element.tension = tension;
        }
    }

    /// Factorises and counts the negative eigenvalues of the stiffness, those of the held members included.
    pub(super) fn count_negative(&mut self) -> usize {
        self.unknowns.assemble(self.frame, &self.elements, &mut self.matrix);
        self.matrix.factorise() + self.elements.iter().map(Element::buckled_alone).sum::<usize>()
    }

    /// Factorises, or says that the frame is not stable under its axial forces.
    pub(super) fn factorise_stable(&mut self) -> Result<(), FrameError> {
        let unstable = self.count_negative() > 0 || self.matrix.weak_pivot(LEAST_PIVOT).is_some();
        if unstable { Err(FrameError::Unstable) } else { Ok(()) }
    }
}

impl Factorised<'_> {
    /// Solves one load case.
    pub fn solve(&self, loads: &LoadCase) -> Result<Solution, FrameError> {
        let loads = loads.to_local(self.frame, &self.elements)?;
        let mut pieces = Pieces::cut(&self.elements, &loads);
        let (x, responses) = self.movements(&loads, &pieces)?;
        let mut forces = vec![[0.0; 3]; self.frame.nodes.len()];
        for (member, (element, response)) in self.elements.iter().zip(&responses).enumerate() {
            let [i, j] = element.nodes;
            let start = element.start(element.turn_in(self.unknowns.movement_of_ends(&x, element)), response);
            let ends = element.turn_out(element.end_forces(&start, response));
            for dof in 0..3 {
                forces[i][dof] += ends[dof];
                forces[j][dof] += ends[dof + 3];
            }
            pieces.set_start(member, start);
        }
        self.collect(&x, &loads, forces, pieces)
    }

    /// Movements of the unknowns, and what the loads do to each member at rest.
    fn movements(&self, loads: &LocalLoads, pieces: &Pieces) -> Result<(Vec<f64>, Vec<Response>), FrameError> {
        let mut x = vec![0.0; self.unknowns.count()];
        for (node, load) in loads.nodes.iter().enumerate() {
            for (unknown, load) in self.unknowns.of(node).into_iter().zip(load) {
                if let Some(unknown) = unknown {
                    x[unknown] += load;
                }
            }
        }
        let mut responses = Vec::with_capacity(self.elements.len());
        for (member, element) in self.elements.iter().enumerate() {
            let response = pieces.response(member);
            let start = element.start([0.0; 6], &response);
            let ends = element.turn_out(element.end_forces(&start, &response));
            for (unknown, end) in self.unknowns.of_ends(element).into_iter().zip(ends) {
                if let Some(unknown) = unknown {
                    x[unknown] -= end;
                }
            }
            responses.push(response);
        }
        self.matrix.solve(&mut x);
        Ok((x, responses))
    }

    /// Reactions from the balance of each node, where `forces` are those of the nodes on the members.
    fn collect(
        &self,
        x: &[f64],
        loads: &LocalLoads,
        mut forces: Vec<[f64; 3]>,
        pieces: Pieces,
    ) -> Result<Solution, FrameError> {
        let greatest = forces.iter().chain(&loads.nodes).flatten().fold(0.0, |most: f64, force| most.max(force.abs()));
        let mut held = vec![[false; 3]; self.frame.nodes.len()];
        for support in &self.frame.supports {
            for (held, by_this) in held[support.node].iter_mut().zip([support.ux, support.uy, support.rz]) {
                *held |= by_this;
            }
        }
        for (force, load) in forces.iter_mut().flatten().zip(loads.nodes.iter().flatten()) {
            *force -= load;
        }
        let mut reactions = vec![[0.0; 3]; self.frame.nodes.len()];
        let mut spring_forces = Vec::with_capacity(self.frame.springs.len());
        for spring in &self.frame.springs {
            let dof = spring.dof as usize;
            let force = -spring.k * self.unknowns.movement(x, spring.node)[dof];
            spring_forces.push(force);
            reactions[spring.node][dof] += force;
        }
        for (node, balance) in forces.iter().enumerate() {
            for dof in 0..3 {
                let residual = balance[dof] - reactions[node][dof];
                if held[node][dof] {
                    reactions[node][dof] = balance[dof];
                } else if residual.is_nan() || residual.abs() > BALANCE * greatest {
                    let dof = Dof::ALL[dof];
                    let loose = dof == Dof::Rz && self.unknowns.of(node)[2].is_none();
                    return Err(if loose {
                        FrameError::Mechanism { node, dof }
                    } else {
                        FrameError::IllConditioned { node, dof }
                    });
                }
            }
        }
        let displacements = (0..self.frame.nodes.len()).map(|node| self.unknowns.movement(x, node).into());
        Ok(Solution {
            displacements: displacements.collect(),
            reactions: reactions.into_iter().map(Reaction::from).collect(),
            spring_forces,
            pieces,
        })
    }
}
