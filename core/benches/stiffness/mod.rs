//! The stiffness of a frame of beams with hinges, assembled for solvers of matrices.

use crate::skyline::Skyline;
use faer::linalg::solvers::Solve;
use faer::sparse::linalg::solvers::{Llt, SymbolicLlt};
use faer::sparse::{SparseColMat, Triplet};
use faer::{Mat, Side};
use falsewright_core::analysis::{Frame, Member};
use std::collections::BTreeMap;

/// Entries on and below the diagonal.
pub struct Stiffness {
    entries: BTreeMap<(usize, usize), f64>,
    size: usize,
}

impl Stiffness {
    /// Of members without arms, on rigid supports only, with the nodes in the order of x.
    pub fn new(frame: &Frame) -> Self {
        let mut turns = vec![false; frame.nodes.len()];
        for member in &frame.members {
            turns[member.i] |= !member.release_i;
            turns[member.j] |= !member.release_j;
        }
        let mut free: Vec<[bool; 3]> = turns.into_iter().map(|turns| [true, true, turns]).collect();
        for support in &frame.supports {
            let held = [support.ux, support.uy, support.rz];
            free[support.node].iter_mut().zip(held).for_each(|(free, held)| *free &= !held);
        }
        let mut order: Vec<usize> = (0..frame.nodes.len()).collect();
        order.sort_by(|&a, &b| frame.nodes[a].x.total_cmp(&frame.nodes[b].x));
        let (mut unknowns, mut size) = (vec![[None; 3]; frame.nodes.len()], 0);
        for node in order {
            for (unknown, _) in unknowns[node].iter_mut().zip(free[node]).filter(|(_, free)| *free) {
                *unknown = Some(size);
                size += 1;
            }
        }
        let mut entries = BTreeMap::new();
        for member in &frame.members {
            let stiffness = global(frame, member);
            let at: Vec<Option<usize>> = unknowns[member.i].into_iter().chain(unknowns[member.j]).collect();
            for (row, values) in at.iter().zip(stiffness) {
                for (column, value) in at.iter().zip(values) {
                    if let (Some(row), Some(column)) = (*row, *column)
                        && row >= column
                    {
                        *entries.entry((row, column)).or_insert(0.0) += value;
                    }
                }
            }
        }
        Self { entries, size }
    }

    pub fn skyline(&self) -> Skyline {
        let mut first: Vec<usize> = (0..self.size).collect();
        for &(row, column) in self.entries.keys() {
            first[row] = first[row].min(column);
        }
        let mut matrix = Skyline::new(first);
        for (&(row, column), &value) in &self.entries {
            if row == column {
                matrix.add(&[row], &[[value]]);
            } else {
                matrix.add(&[row, column], &[[0.0, value], [value, 0.0]]);
            }
        }
        matrix
    }

    pub fn sparse(&self) -> SparseColMat<usize, f64> {
        let entries: Vec<_> =
            self.entries.iter().map(|(&(row, column), &value)| Triplet::new(row, column, value)).collect();
        SparseColMat::try_new_from_triplets(self.size, self.size, &entries).expect("indices within the matrix")
    }

    /// Movements under a unit load on every unknown.
    pub fn solve_skyline(&self, matrix: &Skyline) -> Vec<f64> {
        let (mut matrix, mut x) = (matrix.clone(), vec![1.0; self.size]);
        matrix.factorise();
        matrix.solve(&mut x);
        x
    }

    pub fn solve_sparse(&self, order: SymbolicLlt<usize>, matrix: &SparseColMat<usize, f64>) -> Mat<f64> {
        let mut x = Mat::full(self.size, 1, 1.0);
        Llt::try_new_with_symbolic(order, matrix.as_ref(), Side::Lower).expect("stands").solve_in_place(&mut x);
        x
    }

    /// Both find the same movements.
    pub fn check(&self, skyline: &Skyline, matrix: &SparseColMat<usize, f64>) {
        let (own, other) = (self.solve_skyline(skyline), self.solve_sparse(order(matrix), matrix));
        let greatest = own.iter().fold(0.0, |most: f64, x| most.max(x.abs()));
        let same = own.iter().enumerate().all(|(row, x)| (x - other[(row, 0)]).abs() < 1e-8 * greatest);
        assert!(same, "the solvers disagree");
    }
}

/// The order in which the library eliminates, and what it fills.
pub fn order(matrix: &SparseColMat<usize, f64>) -> SymbolicLlt<usize> {
    SymbolicLlt::try_new(matrix.symbolic(), Side::Lower).expect("memory enough")
}

/// Stiffness of a member between the movements of its nodes.
fn global(frame: &Frame, member: &Member) -> [[f64; 6]; 6] {
    let (from, to) = (frame.nodes[member.i], frame.nodes[member.j]);
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let l = (dx * dx + dy * dy).sqrt();
    let (c, s, ei) = (dx / l, dy / l, member.ei);
    // Each row: a strain of the member by the movements; its stiffness is the sum of their squares.
    let chord = [s / l, -c / l, 0.0, -s / l, c / l, 0.0];
    let turn = |end: usize, [a, b]: [f64; 2]| -> [f64; 6] {
        std::array::from_fn(|at| {
            a * (f64::from(at == 3 * end + 2) - chord[at]) + b * (f64::from(at == 5 - 3 * end) - chord[at])
        })
    };
    let mut strains = vec![([-c, -s, 0.0, c, s, 0.0], member.ea / l)];
    match (member.release_i, member.release_j) {
        (false, false) => strains.extend([(turn(0, [0.5, 0.5]), 12.0 * ei / l), (turn(0, [0.5, -0.5]), 4.0 * ei / l)]),
        (true, false) => strains.push((turn(1, [1.0, 0.0]), 3.0 * ei / l)),
        (false, true) => strains.push((turn(0, [1.0, 0.0]), 3.0 * ei / l)),
        (true, true) => {}
    }
    let mut stiffness = [[0.0; 6]; 6];
    for (strain, k) in strains {
        for (row, values) in stiffness.iter_mut().enumerate() {
            values.iter_mut().zip(strain).for_each(|(value, by)| *value += k * strain[row] * by);
        }
    }
    stiffness
}
