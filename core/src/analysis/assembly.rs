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
        let is_unknown = |node: usize, dof: usize| free[node][dof] && !held[node][dof];
        let order = reverse_cuthill_mckee(frame);
        let count = order.iter().map(|&node| (0..3).filter(|&dof| is_unknown(node, dof)).count()).sum();
        let mut of_node = vec![[count; 3]; frame.nodes.len()];
        let mut next = 0;
        for node in order {
            for (_, unknown) in of_node[node].iter_mut().enumerate().filter(|(dof, _)| is_unknown(node, *dof)) {
                *unknown = next;
                next += 1;
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
        let held = self.held.iter().flatten().zip(ground.iter().flatten());
        for (movement, (held, ground)) in movements.iter_mut().flatten().zip(held) {
            if *held {
                *movement = *ground;
            }
        }
        movements
    }

    /// A matrix with room for the frame's stiffness.
    pub fn matrix(&self, elements: &[Element]) -> Skyline {
        let mut first: Vec<usize> = (0..=self.count).collect();
        for unknowns in &self.of_node {
            reach(unknowns, &mut first);
        }
        for element in elements {
            reach(&self.of_ends(element), &mut first);
        }
        first.truncate(self.count);
        Skyline::new(first)
    }

    /// Adds the frame's stiffness to `matrix`.
    pub fn assemble(&self, frame: &Frame, elements: &[Element], matrix: &mut Skyline) {
        for element in elements {
            matrix.add(&self.of_ends(element), &element.stiffness());
        }
        let springs = frame.springs.iter().map(|spring| (spring.node, spring.dof, spring.k));
        let contacts = frame.contacts.iter().map(|contact| (contact.node, contact.dof, contact.k));
        for (node, dof, k) in springs.chain(contacts) {
            matrix.add(&[self.of(node)[dof as usize]], &[[k]]);
        }
    }
}

/// Lets the rows of these unknowns begin at the first of them.
fn reach(unknowns: &[usize], first: &mut [usize]) {
    let least = unknowns.iter().fold(usize::MAX, |least, unknown| least.min(*unknown));
    for &unknown in unknowns {
        first[unknown] = first[unknown].min(least);
    }
}

/// Movements of both ends of an element.
pub(super) fn ends(movements: &[[f64; 3]], element: &Element) -> [f64; 6] {
    let [[a, b, c], [d, e, f]] = element.nodes.map(|node| movements[node]);
    [a, b, c, d, e, f]
}
