use crate::scheme::{Lift, Slide};

/// Lines of jacks under a bay.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedJacks {
    /// Where they are, across the culvert, from the left.
    pub lines_m: Vec<f64>,
    /// Level of the underside that they push.
    pub under_m: f64,
    /// What moves with the concrete, kN.
    pub carried_kn: f64,
    /// The jacks.
    pub lift: Lift,
    /// Where and by what the bay is slid.
    pub slide: Option<Slide>,
}
