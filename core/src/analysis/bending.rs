use super::element::Element;
use super::transfer::transfer;
use std::f64::consts::PI;

/// Above this tension, N·L²/EI, the stiffness is written in a form that does not cancel.
const LARGE_TENSION: f64 = 16.0;

/// How often a member that shears off has buckled, and the most that is counted: more often than any frame has modes.
const COUNTLESS: usize = 1 << 20;

/// Stiffness across a member, between (v, θ) at node i and at node j:
/// `[δ γi −δ γj; γi αi −γi β; −δ −γi δ −γj; γj β −γj αj]`.
pub(super) struct Bending {
    pub alpha: [f64; 2],
    pub beta: f64,
    pub gamma: [f64; 2],
    pub delta: f64,
}

impl Bending {
    /// Of a member whose ends do not slide across it.
    pub fn of(element: &Element) -> Self {
        let per_length = element.per_length;
        let (alpha, beta) = if element.hinged == [true, true] { (0.0, 0.0) } else { rotational(element) };
        let (alpha, beta) = match element.hinged {
            [false, false] => ([alpha, alpha], beta),
            hinged => (hinged.map(|hinged| if hinged { 0.0 } else { alpha - beta * beta / alpha }), 0.0),
        };
        let gamma = alpha.map(|alpha| (alpha + beta) * per_length);
        Self { alpha, beta, gamma, delta: ((gamma[0] + gamma[1]) + element.section.tension) * per_length }
    }
}

/// Moment at one end for a unit rotation there, and at the other end, both ends held otherwise.
///
/// Shear deforms after Timoshenko; the shear that an axial force adds is that of the slope, after Engesser (S. P.
/// Timoshenko, J. M. Gere, *Theory of Elastic Stability*, 2nd ed. 1961, section 2.17).
fn rotational(element: &Element) -> (f64, f64) {
    let (l, unit) = (element.length, element.ei * element.per_length);
    let section = element.section;
    if section.is_plain() {
        return (4.0 * unit, 2.0 * unit);
    }
    let shear = element.ei * element.section.shear_compliance * section.mu() / (l * l);
    let z = section.kappa() * l * l;
    if z == 0.0 {
        let phi = 12.0 * shear;
        return ((4.0 + phi) / (1.0 + phi) * unit, (2.0 - phi) / (1.0 + phi) * unit);
    }
    if z > LARGE_TENSION {
        let w = z.sqrt();
        let (inverse, tangent, sheared) = (1.0 / libm::cosh(w), libm::tanh(w), shear * w * w * w);
        let unit = unit * w / (2.0 * inverse - 2.0 + (w + sheared) * tangent);
        return (unit * (w - tangent + sheared), unit * (tangent - (w + sheared) * inverse));
    }
    let [s0, s1, s2, s3, ..] = transfer(z, 1.0);
    let s3 = s3 - shear;
    let unit = unit / (s2 * s2 - s1 * s3);
    (unit * (s1 * s2 - s0 * s3), unit * s3)
}

/// The same of a member clamped at both ends, from φ = L·√(N/μEI) and the whole half waves in it.
///
/// With ψ = φ/2 it buckles in even shapes at sin ψ = 0 and in odd ones at tan ψ = μψ, once in each half wave of ψ after
/// the first. Both follow from `pinned`: signs of α ± β turn where `pinned` grows, and may disagree with it there.
fn held_alone(phi: f64, mu: f64, pinned: usize) -> usize {
    let even = pinned / 2;
    if even == 0 {
        return 0;
    }
    let psi = 0.5 * phi;
    let rest = psi - even as f64 * PI;
    let before_odd = libm::sin(rest) < mu * psi * libm::cos(rest);
    2 * even - usize::from(before_odd)
}

impl Element {
    /// How many of its own critical loads the axial force is beyond while both nodes are held.
    ///
    /// Source: W. H. Wittrick, F. W. Williams, *Q. J. Mech. Appl. Math.* 24 (1971), 263–284.
    pub fn buckled_alone(&self) -> usize {
        if self.section.tension >= 0.0 || self.ei == 0.0 {
            return 0;
        }
        let section = self.section;
        if section.mu() <= 0.0 {
            return COUNTLESS;
        }
        let phi = self.length * (-section.kappa()).sqrt();
        let pinned = (libm::floor(phi / PI) as usize).min(COUNTLESS);
        if self.hinged == [true, true] {
            return pinned;
        }
        let (alpha, beta) = rotational(self);
        held_alone(phi, section.mu(), pinned) + self.negative_released(alpha, beta)
    }

    /// Negative eigenvalues of the stiffness of the movements that releases let an end make, the rest held.
    fn negative_released(&self, alpha: f64, beta: f64) -> usize {
        let gamma = (alpha + beta) * self.per_length;
        let delta = (2.0 * gamma + self.section.tension) * self.per_length;
        let clamped = [
            [delta, gamma, -delta, gamma],
            [gamma, alpha, -gamma, beta],
            [-delta, -gamma, delta, -gamma],
            [gamma, beta, -gamma, alpha],
        ];
        let released = [self.shear_release[0], self.hinged[0], self.shear_release[1], self.hinged[1]];
        let mut at = (0..4).filter(|&movement| released[movement]);
        match (at.next(), at.next()) {
            (None, _) => 0,
            (Some(p), None) => usize::from(clamped[p][p] < 0.0),
            (Some(p), Some(q)) => {
                let (a, b, c) = (clamped[p][p], clamped[p][q], clamped[q][q]);
                let determinant = a * c - b * b;
                if determinant < 0.0 { 1 } else { 2 * usize::from(a + c < 0.0) }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::cutting::Response;
    use crate::analysis::{Frame, Member};

    fn frame() -> Frame {
        let mut frame = Frame::default();
        frame.add_node(0.0, 0.0);
        frame.add_node(2.0, 1.0);
        frame
    }

    fn element(hinged: [bool; 2], ga: f64, tension: f64) -> Element {
        let member = Member { ga, release_i: hinged[0], release_j: hinged[1], ..Member::beam(0, 1, 3.0, 70.0) };
        let mut element = Element::new(&frame(), &member);
        element.section.tension = tension;
        element
    }

    #[test]
    fn stiffness_and_end_forces_agree() {
        for hinged in [[false, false], [true, false], [false, true], [true, true]] {
            for (ga, tension) in [(f64::INFINITY, -2.0), (f64::INFINITY, 0.0), (20.0, 0.0), (20.0, 1.5), (9.0, -1.7)] {
                let element = element(hinged, ga, tension);
                let stiffness = element.stiffness();
                for column in 0..6 {
                    let mut unit = [0.0; 6];
                    unit[column] = 1.0;
                    let rest = Response::default();
                    let start = element.start(element.turn_in(unit), &rest);
                    let forces = element.forces_on(&unit, &start, &rest);
                    for row in 0..6 {
                        let (a, b) = (stiffness[row][column], forces[row]);
                        assert!((a - b).abs() < 1e-11, "{hinged:?} {ga} {tension} [{row}][{column}]: {a} {b}");
                    }
                }
            }
        }
    }

    #[test]
    fn both_forms_of_the_stiffness_agree() {
        for ga in [f64::INFINITY, 40.0] {
            let mu = |n: f64| 1.0 + n / ga;
            // Where N·L² / EI·μ is at the limit.
            let limit = LARGE_TENSION * 3.0 / 5.0;
            let limit = limit / (1.0 - limit / ga);
            assert!((limit / mu(limit) - LARGE_TENSION * 0.6).abs() < 1e-9);
            let at = |tension| rotational(&element([false; 2], ga, tension));
            let (below, above) = (at(limit * (1.0 - 1e-12)), at(limit * (1.0 + 1e-12)));
            assert!((below.0 / above.0 - 1.0).abs() < 1e-10 && (below.1 / above.1 - 1.0).abs() < 1e-10);
        }
    }

    #[test]
    fn counts_its_own_critical_loads() {
        // Euler loads of length √5 and EI 3: the effective lengths are 1, 0.6992 and 0.5.
        let euler = PI * PI * 3.0 / 5.0;
        for (hinged, factor) in [([true, true], 1.0), ([true, false], 2.045_75), ([false, false], 4.0)] {
            for ga in [f64::INFINITY, 31.0] {
                // Engesser: shear softens a load of N to N / (1 + N/GA).
                let critical = euler * factor;
                let critical =
                    if factor == 2.045_75 && ga.is_finite() { continue } else { critical / (1.0 + critical / ga) };
                assert_eq!(element(hinged, ga, -critical * 0.999).buckled_alone(), 0, "{hinged:?} {ga}");
                assert_eq!(element(hinged, ga, -critical * 1.001).buckled_alone(), 1, "{hinged:?} {ga}");
            }
        }
        assert!(element([false; 2], 31.0, -31.1).buckled_alone() > 1000);
    }

    #[test]
    fn counts_without_a_jump_at_whole_half_waves() {
        for ga in [f64::INFINITY, 31.0] {
            // Clamped at both ends it buckles at 2, 4, 6 half waves, and once within the third and the fifth:
            // at 2.86 and 4.92 unless shear deforms it.
            for (half_waves, expected) in (1..).zip([(0, 0), (0, 1), (2, 2), (2, 3), (4, 4), (4, 5)]) {
                let euler = PI * PI * 3.0 / 5.0 * f64::from(half_waves * half_waves);
                let exact = euler / (1.0 + euler / ga);
                let count = |part: f64| element([false; 2], ga, -exact * part).buckled_alone();
                let (below, above) = (count(1.0 - 1e-9), count(1.0 + 1e-9));
                assert_eq!((below, above), expected, "{half_waves} {ga}");
                for step in -100..=100 {
                    let near = count(1.0 + f64::from(step) * f64::EPSILON);
                    assert!(below <= near && near <= above, "{half_waves} {ga} {step}: {near}");
                }
            }
        }
    }

    #[test]
    fn a_sliding_end_buckles_in_sway() {
        // Clamped at both ends, one sliding across: effective length 1.
        let member = Member { shear_release: [false, true], ..Member::beam(0, 1, 3.0, 70.0) };
        let mut element = Element::new(&frame(), &member);
        let euler = PI * PI * 3.0 / 5.0;
        for (factor, count) in [(0.999, 0), (1.001, 1)] {
            element.section.tension = -euler * factor;
            assert_eq!(element.buckled_alone(), count);
        }
    }
}
