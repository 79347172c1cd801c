use super::element::Element;
use super::order::reverse_cuthill_mckee;
use super::skyline::Skyline;
use super::{Dof, Frame};

/// Which unknown each movement of each node is; none where it is held or moves nothing.
#[derive(Clone, Debug)]
pub(super) struct Unknowns {
    of_node: Vec<[Option<usize>; 3]>,
    count: usize,
}

impl Unknowns {
    /// Numbers the movements that resist something. The rotation of a node at which all members are hinged does not.
    pub fn new(frame: &Frame, elements: &[Element]) -> Self {
        let mut free = vec![[true, true, false]; frame.nodes.len()];
        for element in elements {
            for end in 0..2 {
                free[element.nodes[end]][2] |= !element.hinged[end];
            }
        }
        for spring in &frame.springs {
            if spring.dof == Dof::Rz && spring.k > 0.0 {
                free[spring.node][2] = true;
            }
        }
        for support in &frame.supports {
            let held = [support.ux, support.uy, support.rz];
            for (free, held) in free[support.node].iter_mut().zip(held) {
                *free &= !held;
            }
        }
        let mut of_node = vec![[None; 3]; frame.nodes.len()];
        let mut count = 0;
        for node in reverse_cuthill_mckee(frame) {
            for (unknown, _) in of_node[node].iter_mut().zip(free[node]).filter(|(_, free)| *free) {
                *unknown = Some(count);
                count += 1;
            }
        }
        Self { of_node, count }
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

    /// Movements of a node; 0 where held.
    pub fn movement(&self, x: &[f64], node: usize) -> [f64; 3] {
        self.of(node).map(|unknown| unknown.map_or(0.0, |unknown| x[unknown]))
    }

    /// Global movements of both ends of an element.
    pub fn movement_of_ends(&self, x: &[f64], element: &Element) -> [f64; 6] {
        let [[a, b, c], [d, e, f]] = element.nodes.map(|node| self.movement(x, node));
        [a, b, c, d, e, f]
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

    /// Fills `matrix` with the frame's stiffness.
    pub fn assemble(&self, frame: &Frame, elements: &[Element], matrix: &mut Skyline) {
        matrix.clear();
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
        for spring in &frame.springs {
            if let Some(unknown) = self.of(spring.node)[spring.dof as usize] {
                matrix.add(unknown, unknown, spring.k);
            }
        }
    }
}
