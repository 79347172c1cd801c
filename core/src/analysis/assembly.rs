use super::element::Element;
use super::order::reverse_cuthill_mckee;
use super::skyline::Skyline;
use super::{Dof, Frame};

/// Which unknown each movement of each node is; none where it is held or moves nothing.
#[derive(Clone, Debug)]
pub(super) struct Unknowns {
    of_node: Vec<[Option<usize>; 3]>,
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
        for (free, held) in free.iter_mut().flatten().zip(held.iter().flatten()) {
            *free &= !held;
        }
        let mut of_node = vec![[None; 3]; frame.nodes.len()];
        let mut count = 0;
        for node in reverse_cuthill_mckee(frame) {
            for (unknown, _) in of_node[node].iter_mut().zip(free[node]).filter(|(_, free)| *free) {
                *unknown = Some(count);
                count += 1;
            }
        }
        Self { of_node, held, count }
    }

    pub fn count(&self) -> usize {
        self.count
    }

    pub fn of(&self, node: usize) -> [Option<usize>; 3] {
        self.of_node[node]
    }

    pub fn of_ends(&self, element: &Element) -> [Option<usize>; 6] {
        let ([a, b, c], [d, e, f]) = (self.of(element.nodes[0]), self.of(element.nodes[1]));
        [a, b, c, d, e, f]
    }

    /// Movements of all nodes; where held, those of the ground.
    pub fn movements(&self, x: &[f64], ground: &[[f64; 3]]) -> Vec<[f64; 3]> {
        let mut movements = vec![[0.0; 3]; self.of_node.len()];
        for (movement, unknown) in movements.iter_mut().flatten().zip(self.of_node.iter().flatten()) {
            if let Some(unknown) = unknown {
                *movement = x[*unknown];
            }
        }
        let held = self.held.iter().flatten().zip(ground.iter().flatten());
        for (movement, (held, ground)) in movements.iter_mut().flatten().zip(held) {
            if *held {
                *movement = *ground;
            }
        }
        movements
    }

    /// The node and direction that move most in `x`: a rotation only if hardly anything shifts.
    pub fn greatest(&self, x: &[f64]) -> Option<(usize, Dof)> {
        // Of the shifts and of the rotations.
        let mut most = [(0.0, None), (0.0, None)];
        for (node, unknowns) in self.of_node.iter().enumerate() {
            for (dof, unknown) in Dof::ALL.into_iter().zip(unknowns) {
                let most = &mut most[usize::from(dof == Dof::Rz)];
                if let Some(size) = unknown.map(|unknown| x[unknown].abs())
                    && size > most.0
                {
                    *most = (size, Some((node, dof)));
                }
            }
        }
        let [(shift, shifts), (rotation, rotates)] = most;
        if shift > 1e-6 * rotation { shifts } else { rotates }
    }

    /// A matrix with room for the frame's stiffness.
    pub fn matrix(&self, elements: &[Element]) -> Skyline {
        let mut first: Vec<usize> = (0..self.count).collect();
        for unknowns in self.of_node.iter() {
            self.reach(unknowns, &mut first);
        }
        for element in elements {
            self.reach(&self.of_ends(element), &mut first);
        }
        Skyline::new(first)
    }

    fn reach(&self, unknowns: &[Option<usize>], first: &mut [usize]) {
        if let Some(least) = unknowns.iter().flatten().min() {
            for &unknown in unknowns.iter().flatten() {
                first[unknown] = first[unknown].min(*least);
            }
        }
    }

    /// Adds the frame's stiffness to `matrix`.
    pub fn assemble(&self, frame: &Frame, elements: &[Element], matrix: &mut Skyline) {
        for element in elements {
            let stiffness = element.stiffness();
            let unknowns = self.of_ends(element);
            for (row, at_row) in unknowns.iter().enumerate() {
                let Some(at_row) = *at_row else { continue };
                for (column, at_column) in unknowns[..=row].iter().enumerate() {
                    if let Some(at_column) = *at_column {
                        matrix.add(at_row, at_column, stiffness[row][column]);
                    }
                }
            }
        }
        let springs = frame.springs.iter().map(|spring| (spring.node, spring.dof, spring.k));
        let contacts = frame.contacts.iter().map(|contact| (contact.node, contact.dof, contact.k));
        for (node, dof, k) in springs.chain(contacts) {
            if let Some(unknown) = self.of(node)[dof as usize] {
                matrix.add(unknown, unknown, k);
            }
        }
    }
}

/// Movements of both ends of an element.
pub(super) fn ends(movements: &[[f64; 3]], element: &Element) -> [f64; 6] {
    let [[a, b, c], [d, e, f]] = element.nodes.map(|node| movements[node]);
    [a, b, c, d, e, f]
}
