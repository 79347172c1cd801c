use crate::actions::fresh_concrete::filling::Filling;
use crate::scheme::Id;
use crate::sentence::Sentence;

/// Pressure on one shutter over its height, for the fullest state of its pour.
#[derive(Clone, Debug, PartialEq)]
pub struct PressureDiagram {
    /// The shutter.
    pub shutter: Id,
    /// `(level, pressure)` at each kink, from the bottom up: m and kPa.
    pub points: Vec<(f64, f64)>,
    /// Greatest pressure by the method, before the fluid head limits it.
    pub limit_kpa: f64,
    /// Governing rise over the height of the form.
    pub rise_m_h: f64,
    /// How the greatest pressure was found.
    pub formula: Sentence,
    /// Where that comes from.
    pub source: &'static str,
}

/// How a pour fills.
#[derive(Clone, Debug, PartialEq)]
pub struct PourFilling {
    /// The pour.
    pub pour: Id,
    /// Its mark.
    pub mark: String,
    /// Its surface against time, and the pressure under it.
    pub filling: Filling,
    /// The fastest rise beside a wall shutter of the pour, at which its pressure is found; without one, of the pour.
    pub governing_rise_m_h: f64,
    /// Where the method of pressure is used outside its range.
    pub warnings: Vec<Sentence>,
}
