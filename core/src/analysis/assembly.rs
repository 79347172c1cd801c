use super::element::Element;
use super::order::reverse_cuthill_mckee;
use super::skyline::Skyline;
use super::{Dof, Frame};

/// Which unknown each movement of each node is.
#[derive(Clone, Debug)]
pub(super) struct Unknowns {
    /// Where a movement is held or moves nothing, the number after the last unknown.
    of_node: Vec<[usize; 3]>,
    /// Whether each movement of each node is held rigidly.
    pub held: Vec<[bool; 3]>,
    count: usize,
}

impl Unknowns {
    /// Numbers the movements that resist something. The rotation of a node at which all members are hinged does not.
    pub fn new(frame: &Frame, elements: &[Element]) -> Self {
        let mut free = vec![[true, true, false]; frame.nodes.len()];
        for element in elements {
            for end in 0..2 {
                // An arm turns with its node.
                free[element.nodes[end]][2] |= !element.hinged[end] || element.arms.is_some();
            }
        }
        let springs = frame.springs.iter().filter(|spring| spring.k > 0.0).map(|spring| (spring.node, spring.dof));
        let contacts = frame.contacts.iter().map(|contact| (contact.node, contact.dof));
        for (node, _) in springs.chain(contacts).filter(|(_, dof)| *dof == Dof::Rz) {
            free[node][2] = true;
        }
        let mut held = vec![[false; 3]; frame.nodes.len()];
        for support in &frame.supports {
            for (held, by_this) in held[support.node].iter_mut().zip([support.ux, support.uy, support.rz]) {
                *held |= by_this;
            }
        }
        for contact in frame.contacts.iter().filter(|contact| contact.k.is_infinite()) {
            held[contact.node][contact.dof as usize] = true;
        }
        for (free, held) in free.as_flattened_mut().iter_mut().zip(held.as_flattened()) {
            *free &= !held;
        }
        let count = free.as_flattened().iter().map(|free| usize::from(*free)).sum();
        let mut of_node = vec![[count; 3]; frame.nodes.len()];
        let mut next = 0;
        for node in reverse_cuthill_mckee(frame) {
            for (unknown, free) in of_node[node].iter_mut().zip(free[node]) {
                *unknown = if free { next } else { count };
                next += usize::from(free);
            }
        }
        Self { of_node, held, count }
    }

    pub fn count(&self) -> usize {
        self.count
    }

    /// Those of a node; one more than the last where there is none.
    pub fn of(&self, node: usize) -> [usize; 3] {
        self.of_node[node]
    }

    pub fn of_ends(&self, element: &Element) -> [usize; 6] {
        let ([a, b, c], [d, e, f]) = (self.of(element.nodes[0]), self.of(element.nodes[1]));
        [a, b, c, d, e, f]
    }

    /// Movements of all nodes; where held, those of the ground.
    pub fn movements(&self, x: &[f64], ground: &[[f64; 3]]) -> Vec<[f64; 3]> {
        let x = &x[..self.count];
        let of = |unknown: usize| x.get(unknown).map_or(0.0, |movement| *movement);
        let mut movements: Vec<_> = self.of_node.iter().map(|unknowns| unknowns.map(of)).collect();
        let held = self.held.as_flattened().iter().zip(ground.as_flattened());
        for (movement, (held, ground)) in movements.as_flattened_mut().iter_mut().zip(held) {
            if *held {
                *movement = *ground;
            }
        }
        movements
    }

    /// A matrix with room for the frame's stiffness: the rows of a node begin at the first unknown of all that it is
    /// joined to.
    pub fn matrix(&self, elements: &[Element]) -> Skyline {
        let own = |unknowns: &[usize; 3]| unknowns[0].min(unknowns[1]).min(unknowns[2]);
        let firsts: Vec<usize> = self.of_node.iter().map(own).collect();
        let mut reached = firsts.clone();
        for element in elements {
            let [i, j] = element.nodes;
            reached[i] = reached[i].min(firsts[j]);
            reached[j] = reached[j].min(firsts[i]);
        }
        let mut first = vec![0; self.count + 1];
        for (unknowns, reached) in self.of_node.iter().zip(reached) {
            for &unknown in unknowns {
                first[unknown] = reached;
            }
        }
        first.truncate(self.count);
        Skyline::new(first)
    }

    /// Adds the frame's stiffness to `matrix`.
    pub fn assemble(&self, frame: &Frame, elements: &[Element], matrix: &mut Skyline) {
        for element in elements {
            matrix.add(&self.of_ends(element), &element.stiffness());
        }
        for (node, dof, k) in frame.ground_stiffnesses() {
            matrix.add(&[self.of(node)[dof as usize]], &[[k]]);
        }
    }
}

/// Movements of both ends of an element.
pub(super) fn ends(movements: &[[f64; 3]], element: &Element) -> [f64; 6] {
    let [[a, b, c], [d, e, f]] = element.nodes.map(|node| movements[node]);
    [a, b, c, d, e, f]
}
