use crate::geometry::Point;
use crate::sentence::term;
use serde::Serialize;

/// How a bay is taken from where it was cast.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BayMove {
    /// All that is lifted, kN.
    pub weight_kn: f64,
    /// Centre of gravity of the concrete, in the section.
    pub centre: Point,
    /// Lines of jacks from the left.
    pub lines: Vec<JackLine>,
    /// Goes of the jacks until the bay is as high as it is to be.
    pub goes: u32,
    /// How it is slid after that.
    pub push: Option<Push>,
}

/// A line of jacks along the bay.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct JackLine {
    /// Such as `J1`.
    pub mark: String,
    /// Where it is, across the culvert.
    pub x_m: f64,
    /// How many jacks it has.
    pub jacks: u32,
    /// Of each, shared evenly along the line, kN; negative where the bay would tip off it.
    pub force_kn: f64,
}

impl JackLine {
    /// How its jacks are called where they are checked.
    pub fn member(&self) -> String {
        format!("{} {}", self.mark, term("lifting jack"))
    }
}

/// Pushing a bay along its path.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Push {
    /// Of all rams at the start, kN.
    pub start_kn: f64,
    /// Of all rams while it moves, kN; negative where it has to be held back.
    pub running_kn: f64,
    /// Strokes of the rams over the whole way.
    pub strokes: u32,
    /// Hours for the whole way.
    pub hours: f64,
}
