use super::piece::{Response, State, transfer};
use super::{Axis, Frame, Member};

/// Above this tension, N·L²/EI, the stiffness is written in a form that does not cancel.
const LARGE_TENSION: f64 = 16.0;

/// A member as the solver sees it.
#[derive(Clone, Debug)]
pub(super) struct Element {
    pub nodes: [usize; 2],
    pub length: f64,
    pub cosine: f64,
    pub sine: f64,
    pub ei: f64,
    pub ea: f64,
    pub hinged: [bool; 2],
    /// Axial force that acts on the deflections: 0 in a linear analysis.
    pub tension: f64,
}

/// Stiffness across the member, between (v, θ) at node i and at node j:
/// `[δ γi −δ γj; γi αi −γi β; −δ −γi δ −γj; γj β −γj αj]`.
struct Bending {
    alpha: [f64; 2],
    beta: f64,
    gamma: [f64; 2],
    delta: f64,
}

impl Element {
    pub fn new(frame: &Frame, member: &Member) -> Self {
        let (length, cosine, sine) = frame.direction(member);
        let bar = member.ei == 0.0;
        Self {
            nodes: [member.i, member.j],
            length,
            cosine,
            sine,
            ei: member.ei,
            ea: member.ea,
            hinged: [member.release_i || bar, member.release_j || bar],
            tension: 0.0,
        }
    }

    /// Transfer functions at its end.
    fn at_end(&self) -> [f64; 6] {
        transfer(self.tension * self.compliance(), self.length)
    }

    /// 1 / EI; 0 for a bar, which stays straight.
    pub fn compliance(&self) -> f64 {
        if self.ei == 0.0 { 0.0 } else { 1.0 / self.ei }
    }

    /// A global load in local axes.
    pub fn to_local(&self, axis: Axis, load: f64) -> [f64; 2] {
        match axis {
            Axis::X => [load * self.cosine, -load * self.sine],
            Axis::Y => [load * self.sine, load * self.cosine],
        }
    }

    /// Local movements or forces at both ends from global ones.
    pub fn turn_in(&self, [a, b, c, d, e, f]: [f64; 6]) -> [f64; 6] {
        let (cs, sn) = (self.cosine, self.sine);
        [cs * a + sn * b, cs * b - sn * a, c, cs * d + sn * e, cs * e - sn * d, f]
    }

    /// Global movements or forces at both ends from local ones.
    pub fn turn_out(&self, [a, b, c, d, e, f]: [f64; 6]) -> [f64; 6] {
        let (cs, sn) = (self.cosine, self.sine);
        [cs * a - sn * b, sn * a + cs * b, c, cs * d - sn * e, sn * d + cs * e, f]
    }

    /// Stiffness between the global movements of both ends.
    pub fn stiffness(&self) -> [[f64; 6]; 6] {
        let Bending { alpha, beta, gamma, delta } = self.bending();
        let (c, s, axial) = (self.cosine, self.sine, self.ea / self.length);
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

    fn bending(&self) -> Bending {
        let (l, n) = (self.length, self.tension);
        let (alpha, beta, gamma) = match self.hinged {
            [true, true] => ([0.0, 0.0], 0.0, [0.0, 0.0]),
            hinged => {
                let (alpha, beta) = self.rotational();
                let left = alpha - beta * beta / alpha;
                match hinged {
                    [true, _] => ([0.0, left], 0.0, [0.0, left / l]),
                    [_, true] => ([left, 0.0], 0.0, [left / l, 0.0]),
                    _ => ([alpha, alpha], beta, [(alpha + beta) / l; 2]),
                }
            }
        };
        Bending { alpha, beta, gamma, delta: ((gamma[0] + gamma[1]) + n) / l }
    }

    /// Moment at one end for a unit rotation there, and at the other end, both ends held otherwise.
    fn rotational(&self) -> (f64, f64) {
        let unit = self.ei / self.length;
        let z = self.tension * self.length * self.length * self.compliance();
        if z == 0.0 {
            return (4.0 * unit, 2.0 * unit);
        }
        if z > LARGE_TENSION {
            let w = z.sqrt();
            let (inverse, tangent) = (1.0 / libm::cosh(w), libm::tanh(w));
            let unit = unit * w / (2.0 * inverse - 2.0 + w * tangent);
            return (unit * (w - tangent), unit * (tangent - w * inverse));
        }
        let s = transfer(z, 1.0);
        let unit = unit / (s[2] * s[2] - s[1] * s[3]);
        (unit * (s[1] * s[2] - s[0] * s[3]), unit * s[3])
    }

    /// How many of its own critical loads the axial force is beyond while both nodes are held.
    ///
    /// Source: W. H. Wittrick, F. W. Williams, *Q. J. Mech. Appl. Math.* 24 (1971), 263–284.
    pub fn buckled_alone(&self) -> usize {
        if self.tension >= 0.0 || self.ei == 0.0 {
            return 0;
        }
        let phi = self.length * (-self.tension / self.ei).sqrt();
        let pinned = libm::floor(phi / std::f64::consts::PI) as usize;
        if self.hinged == [true, true] {
            return pinned;
        }
        let (alpha, beta) = self.rotational();
        let held = pinned.saturating_sub(usize::from(alpha + beta < 0.0) + usize::from(alpha - beta < 0.0));
        let hinge = self.hinged[0] || self.hinged[1];
        held + usize::from(hinge && alpha < 0.0)
    }

    /// State at node i for the local movements of both ends, given what the loads do to the member.
    pub fn start(&self, movement: [f64; 6], response: &Response) -> State {
        let [u_i, v_i, turn_i, u_j, v_j, turn_j] = movement;
        let end = &response.end;
        let axial = (self.ea * (u_j - u_i) - response.axial_integral) / self.length;
        let deflection = v_i;
        if self.ei == 0.0 {
            let slope = (v_j - v_i) / self.length;
            return State { axial, transverse: -self.tension * slope, moment: 0.0, slope, deflection };
        }
        // The unknowns are the slope or, where it is known, the moment / EI at node i; and the transverse force / EI.
        // The conditions are the deflection and, of slope and moment / EI, the known one at node j.
        let [s0, s1, s2, s3, ..] = self.at_end();
        let kappa_s1 = self.tension * s1 / self.ei;
        let [hinged_i, hinged_j] = self.hinged;
        let known = if hinged_i { 0.0 } else { turn_i };
        let first = v_j - v_i - end.deflection - known * s1;
        let (a11, a12) = (if hinged_i { s1 } else { s2 }, s3);
        let (a21, a22, second) = if hinged_j {
            (if hinged_i { kappa_s1 } else { s0 }, s1, -end.moment / self.ei - known * kappa_s1)
        } else {
            (if hinged_i { s0 } else { s1 }, s2, turn_j - end.slope - known * s0)
        };
        let determinant = a11 * a22 - a12 * a21;
        let unknown = (first * a22 - second * a12) / determinant;
        let transverse = self.ei * (second * a11 - first * a21) / determinant;
        if hinged_i {
            State { axial, transverse, moment: 0.0, slope: unknown, deflection }
        } else {
            State { axial, transverse, moment: self.ei * unknown, slope: turn_i, deflection }
        }
    }

    /// Local forces and moments of the nodes on the member.
    pub fn end_forces(&self, start: &State, response: &Response) -> [f64; 6] {
        let (end, s) = (&response.end, self.at_end());
        let moment_j = (self.tension * start.slope + start.transverse) * s[1] + start.moment * s[0] + end.moment;
        [
            -start.axial,
            start.transverse,
            -start.moment,
            start.axial + end.axial,
            -(start.transverse + end.transverse),
            moment_j,
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    fn element(hinged: [bool; 2], tension: f64) -> Element {
        let mut frame = Frame::default();
        frame.add_node(0.0, 0.0);
        frame.add_node(2.0, 1.0);
        let member = Member { release_i: hinged[0], release_j: hinged[1], ..Member::beam(0, 1, 3.0, 70.0) };
        let mut element = Element::new(&frame, &member);
        element.tension = tension;
        element
    }

    #[test]
    fn stiffness_and_end_forces_agree() {
        for hinged in [[false, false], [true, false], [false, true], [true, true]] {
            for tension in [-2.0, 0.0, 1.5] {
                let element = element(hinged, tension);
                let stiffness = element.stiffness();
                for column in 0..6 {
                    let mut unit = [0.0; 6];
                    unit[column] = 1.0;
                    let rest = Response::default();
                    let start = element.start(element.turn_in(unit), &rest);
                    let forces = element.turn_out(element.end_forces(&start, &rest));
                    for row in 0..6 {
                        let (a, b) = (stiffness[row][column], forces[row]);
                        assert!((a - b).abs() < 1e-11, "{hinged:?} {tension} [{row}][{column}]: {a} {b}");
                    }
                }
            }
        }
    }

    #[test]
    fn both_forms_of_the_stiffness_agree() {
        let limit = LARGE_TENSION * 3.0 / 5.0;
        let (below, above) =
            (element([false; 2], limit).rotational(), element([false; 2], limit * (1.0 + 1e-12)).rotational());
        assert!((below.0 / above.0 - 1.0).abs() < 1e-11 && (below.1 / above.1 - 1.0).abs() < 1e-11);
    }

    #[test]
    fn counts_its_own_critical_loads() {
        // Euler loads of length √5 and EI 3: the effective lengths are 1, 0.6992 and 0.5.
        let euler = PI * PI * 3.0 / 5.0;
        for (hinged, factor) in [([true, true], 1.0), ([true, false], 2.045_75), ([false, false], 4.0)] {
            assert_eq!(element(hinged, -euler * factor * 0.999).buckled_alone(), 0, "{hinged:?}");
            assert_eq!(element(hinged, -euler * factor * 1.001).buckled_alone(), 1, "{hinged:?}");
        }
    }
}
