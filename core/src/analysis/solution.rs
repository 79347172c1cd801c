use super::extremes::{ForceExtremes, Search};
use super::piece::Piece;
use super::pieces::Pieces;
use super::section::State;
use super::{Extremes, Frame};

/// A solved load case.
///
/// Its functions panic if given the index of a node, spring or member that the frame does not have. A place beyond an
/// end of a member is taken as that end; at a jump the value is that just after it.
#[derive(Clone, Debug, Default)]
pub struct Solution {
    pub(super) displacements: Vec<Displacement>,
    pub(super) reactions: Vec<Reaction>,
    pub(super) spring_forces: Vec<f64>,
    pub(super) contact_forces: Vec<f64>,
    pub(super) pieces: Pieces,
}

/// Movement of a node: m and rad.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Displacement {
    /// Along x.
    pub ux: f64,
    /// Along y.
    pub uy: f64,
    /// Rotation, counter-clockwise; 0 at a node to which nothing is joined rigidly.
    pub rz: f64,
}

/// What the ground does to a node, by supports and springs together: kN and kNm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Reaction {
    /// Force along x.
    pub fx: f64,
    /// Force along y.
    pub fy: f64,
    /// Moment, counter-clockwise.
    pub mz: f64,
}

impl From<[f64; 3]> for Displacement {
    fn from([ux, uy, rz]: [f64; 3]) -> Self {
        Self { ux, uy, rz }
    }
}

impl From<[f64; 3]> for Reaction {
    fn from([fx, fy, mz]: [f64; 3]) -> Self {
        Self { fx, fy, mz }
    }
}

impl Solution {
    /// Movement of a node.
    pub fn displacement(&self, node: usize) -> Displacement {
        self.displacements[node]
    }

    /// Reaction at a node; 0 where nothing holds it.
    pub fn reaction(&self, node: usize) -> Reaction {
        self.reactions[node]
    }

    /// Force of a spring on the frame, in kN or kNm.
    pub fn spring_force(&self, spring: usize) -> f64 {
        self.spring_forces[spring]
    }

    /// Force of a contact on the node in kN or kNm, positive where it pushes.
    pub fn contact_force(&self, contact: usize) -> f64 {
        self.contact_forces[contact]
    }

    /// Axial force in kN, tension positive, `x` m from node i.
    pub fn axial_at(&self, member: usize, x: f64) -> f64 {
        self.pieces.at(member, x).1.axial
    }

    /// Moment in kNm, `x` m from node i.
    pub fn moment_at(&self, member: usize, x: f64) -> f64 {
        self.pieces.at(member, x).1.moment
    }

    /// Shear in kN, `x` m from node i.
    pub fn shear_at(&self, member: usize, x: f64) -> f64 {
        let (section, state) = self.pieces.at(member, x);
        section.shear(&state)
    }

    /// Deflection along local y in m, `x` m from node i, movement of the nodes included.
    pub fn deflection_at(&self, member: usize, x: f64) -> f64 {
        self.pieces.at(member, x).1.deflection
    }

    /// Movement along local x in m, `x` m from node i.
    pub fn along_at(&self, member: usize, x: f64) -> f64 {
        self.pieces.at(member, x).1.along
    }

    /// Rotation of the cross-section in rad, `x` m from node i; that of the axis differs by the shear's strain.
    pub fn rotation_at(&self, member: usize, x: f64) -> f64 {
        self.pieces.at(member, x).1.slope
    }

    /// Moment in kNm, shear in kN and deflection in m together, `x` m from node i.
    pub fn bending_at(&self, member: usize, x: f64) -> [f64; 3] {
        let (section, state) = self.pieces.at(member, x);
        [state.moment, section.shear(&state), state.deflection]
    }

    /// Greatest and least moment, shear and deflection of a member and where they are, exactly.
    pub fn extremes(&self, member: usize) -> Extremes {
        Search::default().extremes(&self.pieces, member)
    }

    /// Those of its moment and shear alone, which takes less time.
    pub fn force_extremes(&self, member: usize) -> ForceExtremes {
        self.pieces.of(member, |pieces| Search::default().forces(pieces))
    }

    /// Those of its moment and shear, and the greatest distance in m of its deflections from a straight line with its
    /// place: the line is given by its deflection at node i and its slope.
    pub fn extremes_from_line(&self, member: usize, line: (f64, f64)) -> (ForceExtremes, (f64, f64)) {
        self.pieces.of(member, |pieces| Search::default().off_line(pieces, line))
    }

    /// Those of all members in their order, faster than one by one.
    pub fn all_extremes(&self) -> Vec<Extremes> {
        let mut search = Search::default();
        (0..self.members()).map(|member| search.extremes(&self.pieces, member)).collect()
    }

    /// Places in m from node i at which moment, shear or deflection may have an extreme, the ends included.
    pub fn turning_points(&self, member: usize) -> Vec<f64> {
        self.pieces.of(member, |pieces| Search::default().turning_points(pieces))
    }

    /// Places in m from node i where the load jumps or kinks, the ends included.
    pub fn moment_breaks(&self, member: usize) -> Vec<f64> {
        self.pieces.of(member, |pieces| {
            let end = pieces.last().map(Piece::end);
            pieces.iter().map(|piece| piece.x).chain(end).collect()
        })
    }

    fn members(&self) -> usize {
        self.pieces.starts.len()
    }

    /// Axial force at node i and node j of a member.
    pub(super) fn axial_ends(&self, member: usize) -> (f64, f64) {
        let start = self.pieces.starts[member].axial;
        let last = self.pieces.acted_on(member).last();
        (start, last.map_or(start, |piece| piece.at(piece.length).axial))
    }

    /// Moment on each node by a unit of its rotation, as the end forces of a member act on its turning arms.
    pub(super) fn arm_moments(&self, members: std::ops::Range<usize>, frame: &Frame, member: usize) -> [f64; 2] {
        let data = &frame.members[member];
        let (_, cosine, sine) = frame.direction(data);
        let along = |[x, y]: [f64; 2], state: State| {
            (cosine * state.axial - sine * -state.transverse) * x
                + (sine * state.axial + cosine * -state.transverse) * y
        };
        let end = |pieces: &[Piece]| pieces.last().map_or(State::default(), |piece| piece.at(piece.length));
        let at_i = along(data.arms[0], self.pieces.starts[members.start]);
        let at_j = -along(data.arms[1], self.pieces.of(members.end - 1, end));
        [at_i, at_j]
    }

    /// Axial force just before a place, where a force may jump.
    pub(super) fn axial_before(&self, member: usize, x: f64) -> f64 {
        self.pieces.of(member, |pieces| {
            let piece = &pieces[pieces.partition_point(|piece| piece.x < x).max(1) - 1];
            piece.at((x - piece.x).clamp(0.0, piece.length)).axial
        })
    }

    pub(super) fn mean_axial(&self, member: usize) -> f64 {
        let (at_i, at_j) = self.axial_ends(member);
        0.5 * (at_i + at_j)
    }

    /// Greatest force in the members, with moments divided by the member's length: what rounding is measured by.
    pub(super) fn greatest_force(&self) -> f64 {
        (0..self.members()).fold(0.0, |most, member| {
            self.pieces.of(member, |pieces| {
                let length = pieces.last().map_or(1.0, Piece::end);
                pieces.iter().map(|piece| &piece.start).fold(most, |most: f64, state| {
                    most.max(state.axial.abs()).max(state.transverse.abs()).max(state.moment.abs() / length)
                })
            })
        })
    }

    /// Joins the parts of each member, where `starts` are the first parts, and forgets nodes beyond the first `nodes`.
    pub(super) fn join(mut self, starts: &[usize], nodes: usize) -> Self {
        self.pieces = self.pieces.join(starts);
        self.displacements.truncate(nodes);
        self.reactions.truncate(nodes);
        self
    }
}
