use super::bending::Bending;
use super::cutting::Response;
use super::section::{Section, State};
use super::{Axis, Frame, Member};

/// A member as the solver sees it.
#[derive(Clone, Debug)]
pub(super) struct Element {
    pub nodes: [usize; 2],
    pub length: f64,
    pub per_length: f64,
    pub cosine: f64,
    pub sine: f64,
    pub ei: f64,
    pub ea: f64,
    pub hinged: [bool; 2],
    pub axial_release: [bool; 2],
    pub shear_release: [bool; 2],
    pub arms: Option<[[f64; 2]; 2]>,
    /// Its cross-section, with the axial force that acts on the deflections.
    pub section: Section,
    /// Moment on each node by a unit of its rotation, as forces act on turning arms: 0 in a linear analysis.
    pub arm_moments: [f64; 2],
    /// Slopes of the unloaded member at its ends, from sway and bow; between them they change linearly.
    pub imperfection: [f64; 2],
}

impl Element {
    pub fn new(frame: &Frame, member: &Member) -> Self {
        let (length, cosine, sine) = frame.direction(member);
        let bar = member.ei == 0.0;
        Self {
            nodes: [member.i, member.j],
            length,
            per_length: 1.0 / length,
            cosine,
            sine,
            ei: member.ei,
            ea: member.ea,
            hinged: [member.release_i || bar, member.release_j || bar],
            axial_release: member.axial_release,
            shear_release: member.shear_release,
            arms: member.arms.iter().flatten().any(|&arm| arm != 0.0).then_some(member.arms),
            section: Section {
                compliance: if bar { 0.0 } else { 1.0 / member.ei },
                shear_compliance: 1.0 / member.ga,
                axial_compliance: 1.0 / member.ea,
                tension: 0.0,
            },
            arm_moments: [0.0; 2],
            imperfection: [0.0; 2],
        }
    }

    /// A load in local axes.
    pub fn to_local(&self, axis: Axis, load: f64) -> [f64; 2] {
        match axis {
            Axis::X => [load * self.cosine, -load * self.sine],
            Axis::Y => [load * self.sine, load * self.cosine],
            Axis::LocalX => [load, 0.0],
            Axis::LocalY => [0.0, load],
        }
    }

    /// Local movements of both ends from global ones of the nodes.
    #[inline]
    pub fn turn_in(&self, [mut a, mut b, c, mut d, mut e, f]: [f64; 6]) -> [f64; 6] {
        if let Some([[x_i, y_i], [x_j, y_j]]) = self.arms {
            (a, b) = (a - y_i * c, b + x_i * c);
            (d, e) = (d - y_j * f, e + x_j * f);
        }
        let (cs, sn) = (self.cosine, self.sine);
        [cs * a + sn * b, cs * b - sn * a, c, cs * d + sn * e, cs * e - sn * d, f]
    }

    /// Global forces on the nodes from local ones on both ends.
    #[inline]
    pub fn turn_out(&self, [a, b, mut c, d, e, mut f]: [f64; 6]) -> [f64; 6] {
        let (cs, sn) = (self.cosine, self.sine);
        let (a, b, d, e) = (cs * a - sn * b, sn * a + cs * b, cs * d - sn * e, sn * d + cs * e);
        if let Some([[x_i, y_i], [x_j, y_j]]) = self.arms {
            c += x_i * b - y_i * a;
            f += x_j * e - y_j * d;
        }
        [a, b, c, d, e, f]
    }

    /// Stiffness between the global movements of both nodes.
    pub fn stiffness(&self) -> [[f64; 6]; 6] {
        if self.arms.is_some() || self.shear_release != [false; 2] || self.axial_release != [false; 2] {
            return self.stiffness_by_columns();
        }
        let Bending { alpha, beta, gamma, delta } = Bending::of(self);
        let (c, s, axial) = (self.cosine, self.sine, self.ea * self.per_length);
        let (xx, xy, yy) = (axial * c * c + delta * s * s, (axial - delta) * c * s, axial * s * s + delta * c * c);
        let [gi, gj] = gamma;
        [
            [xx, xy, -s * gi, -xx, -xy, -s * gj],
            [xy, yy, c * gi, -xy, -yy, c * gj],
            [-s * gi, c * gi, alpha[0], s * gi, -c * gi, beta],
            [-xx, -xy, s * gi, xx, xy, s * gj],
            [-xy, -yy, -c * gi, xy, yy, -c * gj],
            [-s * gj, c * gj, beta, s * gj, -c * gj, alpha[1]],
        ]
    }

    /// The same for any releases and arms: forces on the nodes for a unit of each movement.
    fn stiffness_by_columns(&self) -> [[f64; 6]; 6] {
        let mut stiffness = [[0.0; 6]; 6];
        let rest = Response::default();
        for column in 0..6 {
            let mut unit = [0.0; 6];
            unit[column] = 1.0;
            let start = self.start(self.turn_in(unit), &rest);
            let forces = self.forces_on(&unit, &start, &rest);
            for (row, force) in stiffness.iter_mut().zip(forces) {
                row[column] = force;
            }
        }
        stiffness
    }

    /// State at node i for the local movements of both ends, given what the loads do to the member.
    #[inline(always)]
    pub fn start(&self, movement: [f64; 6], response: &Response) -> State {
        if self.is_plain() {
            self.plain_start(movement, &response.end)
        } else {
            self.any_start(movement, &response.end)
        }
    }

    #[cold]
    fn any_start(&self, movement: [f64; 6], end: &State) -> State {
        let [u_i, v_i, turn_i, u_j, v_j, turn_j] = movement;
        let (mut axial, mut along) = (self.ea * (u_j - u_i - end.along) * self.per_length, u_i);
        if self.axial_release != [false; 2] {
            axial = if self.axial_release[0] { 0.0 } else { -end.axial };
            if self.axial_release[0] {
                along = u_j - end.along;
            }
        }
        if self.ei == 0.0 {
            let slope = (v_j - v_i - end.deflection) * self.per_length;
            let transverse = -self.section.tension * slope;
            return State { axial, transverse, moment: 0.0, slope, deflection: v_i, along };
        }

        // Of deflection, slope, moment / EI and transverse force / μEI at node i two are known and two follow from what
        // is known of them at node j: for each, its value there by a unit of each at node i.
        let Rows { deflection, slope, moment, force } = self.rows();
        let unit = self.section.mu() * self.ei;
        let [hinged_i, hinged_j] = self.hinged;
        let [slides_i, slides_j] = self.shear_release;
        let [push_i, push_j] = self.imperfection.map(|slope| self.section.tension * slope);
        let mut state = [
            if slides_i { 0.0 } else { v_i },
            if hinged_i { 0.0 } else { turn_i },
            0.0,
            if slides_i { push_i / unit } else { 0.0 },
        ];
        let (p, q) = (if slides_i { 0 } else { 3 }, if hinged_i { 1 } else { 2 });
        let (row_1, first) =
            if slides_j { (force, (push_j - end.transverse) / unit) } else { (deflection, v_j - end.deflection) };
        let (row_2, second) = if hinged_j { (moment, -end.moment / self.ei) } else { (slope, turn_j - end.slope) };
        let left =
            |row: &[f64; 4], value: f64| value - row.iter().zip(state).map(|(row, known)| row * known).sum::<f64>();
        let (first, second) = (left(&row_1, first), left(&row_2, second));
        let determinant = row_1[q] * row_2[p] - row_1[p] * row_2[q];
        state[q] = (first * row_2[p] - second * row_1[p]) / determinant;
        state[p] = (second * row_1[q] - first * row_2[q]) / determinant;
        let [deflection, slope, moment, transverse] = state;
        State { axial, transverse: transverse * unit, moment: moment * self.ei, slope, deflection, along }
    }

    /// Whether only moments bend it, and its ends do not slide.
    #[inline]
    fn is_plain(&self) -> bool {
        let Section { tension, shear_compliance, .. } = self.section;
        let slides = self.shear_release[0] | self.shear_release[1] | self.axial_release[0] | self.axial_release[1];
        self.ei != 0.0 && tension == 0.0 && shear_compliance == 0.0 && !slides
    }

    /// Slope-deflection equations: moments on the ends by what both turn from the chord.
    #[inline]
    fn plain_start(&self, [u_i, v_i, turn_i, u_j, v_j, turn_j]: [f64; 6], end: &State) -> State {
        let per_length = self.per_length;
        let unit = 2.0 * self.ei * per_length;
        let chord = (v_j - end.deflection - v_i) * per_length;
        let (mut at_i, mut at_j) = (turn_i - chord, turn_j - end.slope - chord);
        match self.hinged {
            [false, false] => {}
            [false, true] => at_j = -0.5 * (at_i + end.moment / unit),
            [true, false] => at_i = -0.5 * at_j,
            [true, true] => {
                at_j = end.moment / (-1.5 * unit);
                at_i = -0.5 * at_j;
            }
        }
        let (moment_i, moment_j) = (unit * (2.0 * at_i + at_j), unit * (at_i + 2.0 * at_j));
        State {
            axial: self.ea * (u_j - u_i - end.along) * per_length,
            transverse: (moment_i + moment_j) * per_length,
            moment: -moment_i,
            slope: chord + at_i,
            deflection: v_i,
            along: u_i,
        }
    }

    fn rows(&self) -> Rows {
        let section = self.section;
        let (mu, kappa) = (section.mu(), section.kappa());
        let [s0, s1, s2, s3, ..] = section.transfer(self.length);
        let s3 = s3 - section.shear_compliance * mu * self.length * self.ei;
        Rows {
            deflection: [1.0, s1 / mu, s2 / mu, s3 / mu],
            slope: [0.0, s0, s1, s2],
            moment: [0.0, kappa * s1, s0, s1],
            force: [0.0, 0.0, 0.0, 1.0],
        }
    }

    /// Local forces and moments of the nodes on the member.
    #[inline]
    pub fn end_forces(&self, start: &State, response: &Response) -> [f64; 6] {
        let (end, section) = (&response.end, self.section);
        let (mut push_i, mut push_j) = (0.0, 0.0);
        let mut moment_j = start.transverse * self.length + start.moment + end.moment;
        if !section.is_plain() {
            [push_i, push_j] = self.imperfection.map(|slope| section.tension * slope);
            let [s0, s1, ..] = section.transfer(self.length);
            let across = section.tension * start.slope + start.transverse;
            moment_j = across * s1 / section.mu() + start.moment * s0 + end.moment;
        }
        [
            -start.axial,
            start.transverse - push_i,
            -start.moment,
            start.axial + end.axial,
            -(start.transverse + end.transverse - push_j),
            moment_j,
        ]
    }

    /// Global forces and moments on the member at its nodes, which have moved by `movement`.
    #[inline]
    pub fn forces_on(&self, movement: &[f64; 6], start: &State, response: &Response) -> [f64; 6] {
        let mut forces = self.turn_out(self.end_forces(start, response));
        if self.arms.is_some() {
            forces[2] += self.arm_moments[0] * movement[2];
            forces[5] += self.arm_moments[1] * movement[5];
        }
        forces
    }
}

struct Rows {
    deflection: [f64; 4],
    slope: [f64; 4],
    moment: [f64; 4],
    force: [f64; 4],
}
