use super::element::Element;
use super::{Frame, FrameError};

/// How far a frame is from straight and plumb before it is loaded, for second-order analysis.
///
/// They act as the equivalent forces of EN 1993-1-1:2005, 5.3.2(7), of the axial forces that second order finds: N·φ at
/// both ends of a leaning member, and 8·N·e₀/L² along a bowed one.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Imperfections {
    /// Lean of everything that stands, in rad, towards +x with rising y. Rigid arms stay upright.
    pub sway: f64,
    /// Members that are bowed.
    pub bows: Vec<Bow>,
}

/// The bow of a member, a parabola.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bow {
    /// The member. Bars stay straight.
    pub member: usize,
    /// How far its middle is off the straight line between its ends, along its local y, in m.
    pub rise: f64,
}

impl Imperfections {
    /// Lean `φ = φ₀·αh·αm` of a row of columns: `αh = 2/√h` between 2/3 and 1, `αm = √(0.5·(1 + 1/m))`.
    ///
    /// `basic` is φ₀: 1/200 in EN 1993-1-1:2005, 5.3.2(3), whose αh and αm these are; another code's value may be put in
    /// its place. `height` in m; `columns` that bear at least half the average load.
    pub fn sway_angle(basic: f64, height: f64, columns: usize) -> f64 {
        let height_factor = (2.0 / height.sqrt()).clamp(2.0 / 3.0, 1.0);
        let column_factor = (0.5 * (1.0 + 1.0 / columns.max(1) as f64)).sqrt();
        basic * height_factor * column_factor
    }

    pub(super) fn validate(&self, frame: &Frame) -> Result<(), FrameError> {
        if !self.sway.is_finite() {
            return Err(FrameError::NonFinite { what: "sway", index: 0 });
        }
        for (index, bow) in self.bows.iter().enumerate() {
            let Bow { member, rise } = *bow;
            if member >= frame.members.len() {
                return Err(FrameError::UnknownMember { what: "bow", index, member });
            }
            if !rise.is_finite() {
                return Err(FrameError::NonFinite { what: "bow", index });
            }
        }
        Ok(())
    }

    /// Gives the parts of each member, where `starts` are the first parts, their slopes.
    pub(super) fn apply(&self, starts: &[usize], elements: &mut [Element]) {
        for element in elements.iter_mut() {
            element.imperfection = [-self.sway * element.sine * element.sine; 2];
        }
        for bow in &self.bows {
            let parts = &mut elements[starts[bow.member]..starts[bow.member + 1]];
            let length: f64 = parts.iter().map(|part| part.length).sum();
            let slope = |x: f64| 4.0 * bow.rise * (1.0 - 2.0 * x / length) / length;
            let mut x = 0.0;
            for part in parts.iter_mut().filter(|part| part.ei > 0.0) {
                part.imperfection[0] += slope(x);
                x += part.length;
                part.imperfection[1] += slope(x);
            }
        }
    }
}
