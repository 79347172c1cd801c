use crate::catalogue::Kind;
use serde::{Deserialize, Serialize};

/// Lengths that bars are bought in, from which pieces are cut; none in a list: those are bought to length.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stock {
    /// Of sawn timber.
    pub timber_m: Vec<f64>,
    /// Of formwork beams.
    pub beams_m: Vec<f64>,
    /// Of rolled steel.
    pub steel_m: Vec<f64>,
    /// Of bracing tubes.
    pub tubes_m: Vec<f64>,
    /// Of tie rods.
    pub rods_m: Vec<f64>,
    /// Width of a saw cut.
    pub saw_m: f64,
}

impl Stock {
    /// Those of a kind of item; none of what is not cut from bars.
    pub fn of(&self, kind: &Kind) -> &[f64] {
        match kind {
            Kind::Timber(_) => &self.timber_m,
            Kind::TimberBeam(_) | Kind::RatedBeam(_) => &self.beams_m,
            Kind::Steel(_) => &self.steel_m,
            Kind::Brace(_) => &self.tubes_m,
            Kind::Tie(_) => &self.rods_m,
            Kind::Board(_) | Kind::Leg(_) | Kind::Plate(_) => &[],
        }
    }
}

impl Default for Stock {
    /// What such bars are often sold in; common practice.
    fn default() -> Self {
        Self {
            timber_m: vec![3.0, 3.6, 4.2, 4.8, 5.4, 6.0],
            beams_m: vec![2.45, 2.9, 3.3, 3.6, 3.9, 4.5, 4.9, 5.9],
            steel_m: vec![6.0, 9.0, 12.0],
            tubes_m: vec![1.5, 1.8, 2.4, 3.0, 3.9, 4.8, 6.4],
            rods_m: vec![3.0, 6.0],
            saw_m: 0.003,
        }
    }
}
