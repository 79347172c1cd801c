use super::{Displacement, Dof, FrameError};

/// Shift by the greatest rotation below which nodes are said to turn.
const HARDLY: f64 = 1e-6;

/// Where the nodes move most, how, and how far: a rotation only if hardly anything shifts.
pub(super) fn greatest(movement: &[Displacement]) -> (usize, Dof, f64) {
    let (mut shift, mut turn) = ((0, Dof::Ux, 0.0), (0, Dof::Rz, 0.0));
    for (node, moved) in movement.iter().enumerate() {
        for (dof, size) in [(Dof::Ux, moved.ux.abs()), (Dof::Uy, moved.uy.abs())] {
            if size > shift.2 {
                shift = (node, dof, size);
            }
        }
        if moved.rz.abs() > turn.2 {
            turn = (node, Dof::Rz, moved.rz.abs());
        }
    }
    if shift.2 > HARDLY * turn.2 || turn.2 == 0.0 { shift } else { turn }
}

impl FrameError {
    /// A mechanism in which the nodes move like this, to any scale.
    pub(super) fn mechanism(mut movement: Vec<Displacement>) -> Self {
        let (node, dof, size) = greatest(&movement);
        if size > 0.0 {
            for moved in &mut movement {
                *moved = Displacement { ux: moved.ux / size, uy: moved.uy / size, rz: moved.rz / size };
            }
        }
        Self::Mechanism { node, dof, movement }
    }

    /// A node that turns without anything else.
    pub(super) fn turning(node: usize, nodes: usize) -> Self {
        let moved = |at: usize| Displacement { rz: if at == node { 1.0 } else { 0.0 }, ..Displacement::default() };
        Self::Mechanism { node, dof: Dof::Rz, movement: (0..nodes).map(moved).collect() }
    }
}
