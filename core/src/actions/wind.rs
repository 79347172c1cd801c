//! Wind. Coefficients and terrain data of EN 1991-1-4 are from memory.

use serde::{Deserialize, Serialize};

/// Half the density of air in the UK annex to EN 1991-1-4, kg/m³.
pub const HALF_AIR_DENSITY_UK: f64 = 0.613;
/// Half the density of air that EN 1991-1-4 recommends, kg/m³.
pub const HALF_AIR_DENSITY_EN: f64 = 0.625;
/// Wind in which work goes on, BS 5975 practice (from memory), m/s: 0.2 kPa, as in EN 12812 (from memory).
pub const WORKING_WIND_M_S: f64 = 18.0;
/// Force coefficient of tubes, boards and edges alike, EN 12811-1 6.2.7.4 (from memory).
pub const FORCE_COEFFICIENT: f64 = 1.3;

/// Force coefficient of a wall shutter on its own, both faces together; common practice, between the 1.2 in the middle of
/// a long wall and the more near its ends in EN 1991-1-4 Table 7.9 (from memory).
pub const SHUTTER_FORCE_COEFFICIENT: f64 = 1.3;
/// Part of the wind that reaches a solid wall close behind another, EN 1991-1-4 7.4.2 (from memory).
pub const SHELTERED: f64 = 0.3;

/// `q = k v²`, N/m².
pub fn velocity_pressure_n_m2(speed_m_s: f64, half_density: f64) -> f64 {
    half_density * speed_m_s * speed_m_s
}

/// Ground around a site, EN 1991-1-4 Table 4.1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Terrain {
    /// Sea or coast.
    Sea,
    /// Lakes or flat land without obstacles.
    I,
    /// Low vegetation, single obstacles.
    II,
    /// Villages, suburbs, forest.
    III,
    /// Towns.
    IV,
}

impl Terrain {
    /// Roughness length and least height, m.
    fn roughness(self) -> (f64, f64) {
        match self {
            Self::Sea => (0.003, 1.0),
            Self::I => (0.01, 1.0),
            Self::II => (0.05, 2.0),
            Self::III => (0.3, 5.0),
            Self::IV => (1.0, 10.0),
        }
    }
}

/// Where and for how long something stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WindSite {
    /// Fundamental basic wind velocity, with altitude.
    pub basic_m_s: f64,
    /// The ground around.
    pub terrain: Terrain,
    /// Height above ground.
    pub height_m: f64,
    /// Orography factor `co`; 1 on flat ground.
    pub orography: f64,
    /// Years in which the wind is passed once on average.
    pub return_years: f64,
}

/// Peak wind of a site.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PeakWind {
    /// Probability factor.
    pub probability: f64,
    /// Mean velocity.
    pub mean_m_s: f64,
    /// Turbulence intensity.
    pub turbulence: f64,
    /// Peak velocity pressure.
    pub pressure_kpa: f64,
}

impl WindSite {
    /// `qp = (1 + 7 Iv) ½ ρ vm²`, EN 1991-1-4 4.2 to 4.5 with recommended values.
    pub fn peak(&self) -> PeakWind {
        let (z0, least) = self.terrain.roughness();
        let z = self.height_m.max(least);
        let kr = 0.19 * libm::pow(z0 / 0.05, 0.07);
        let log = libm::log(z / z0);
        let probability = probability_factor(self.return_years);
        let mean_m_s = kr * log * self.orography * probability * self.basic_m_s;
        let turbulence = 1.0 / (self.orography * log);
        let pressure_kpa = (1.0 + 7.0 * turbulence) * velocity_pressure_n_m2(mean_m_s, HALF_AIR_DENSITY_EN) * 1e-3;
        PeakWind { probability, mean_m_s, turbulence, pressure_kpa }
    }
}

/// `cprob` of EN 1991-1-4 4.2(2) with `K = 0.2`, `n = 0.5`; 1 for 50 years. A return period of a year or less is taken
/// as two years.
pub fn probability_factor(return_years: f64) -> f64 {
    let exceeded = 1.0 / return_years.max(2.0);
    let gumbel = |p: f64| 1.0 - 0.2 * libm::log(-libm::log(1.0 - p));
    (gumbel(exceeded) / gumbel(0.02)).sqrt()
}

/// Return period for a time that something stands, EN 1991-1-6 Table 3.1, years.
pub fn return_years(days: f64) -> f64 {
    match days {
        d if d <= 3.0 => 2.0,
        d if d <= 91.0 => 5.0,
        d if d <= 365.0 => 10.0,
        _ => 50.0,
    }
}

/// Force on a surface, kN.
pub fn force_kn(pressure_kpa: f64, force_coefficient: f64, area_m2: f64) -> f64 {
    pressure_kpa * force_coefficient * area_m2
}
