use crate::actions::wind::{
    FORCE_COEFFICIENT, HALF_AIR_DENSITY_UK, Terrain, WORKING_WIND_M_S, WindSite, return_years, velocity_pressure_n_m2,
};
use serde::{Deserialize, Serialize};

/// Wind on the site for the time that the works stand.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SiteWind {
    /// Greatest gust speed `V` of `q = 0.613 V²` N/m²; where the terrain is given, the fundamental basic velocity of
    /// EN 1991-1-4 with altitude.
    pub basic_speed_m_s: f64,
    /// Gust speed up to which work goes on.
    pub working_speed_m_s: f64,
    /// The ground around, flat, from which EN 1991-1-4 finds the peak pressure.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub terrain: Option<Terrain>,
    /// Days that the works stand, by which EN 1991-1-6 Table 3.1 gives the return period in that case; none: 50 years.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stands_days: Option<f64>,
    /// Force coefficient of falsework, its tubes and edges; none: the usual one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub force_coefficient: Option<f64>,
}

impl SiteWind {
    /// A greatest gust, where work stops at the usual one.
    pub fn gust(basic_speed_m_s: f64) -> Self {
        Self {
            basic_speed_m_s,
            working_speed_m_s: WORKING_WIND_M_S,
            terrain: None,
            stands_days: None,
            force_coefficient: None,
        }
    }

    /// Pressure of the wind in which work goes on.
    pub fn working_kpa(&self) -> f64 {
        velocity_pressure_n_m2(self.working_speed_m_s, HALF_AIR_DENSITY_UK) * 1e-3
    }

    /// Greatest pressure at a height above the ground, at least that in which work goes on.
    pub fn greatest_kpa(&self, height_m: f64) -> f64 {
        let greatest_kpa = match self.terrain {
            None => velocity_pressure_n_m2(self.basic_speed_m_s, HALF_AIR_DENSITY_UK) * 1e-3,
            Some(terrain) => {
                let return_years = return_years(self.stands_days.unwrap_or(f64::INFINITY));
                let basic_m_s = self.basic_speed_m_s;
                WindSite { basic_m_s, terrain, height_m, orography: 1.0, return_years }.peak().pressure_kpa
            }
        };
        greatest_kpa.max(self.working_kpa())
    }

    /// On the tubes and edges of falsework.
    pub fn falsework_coefficient(&self) -> f64 {
        self.force_coefficient.unwrap_or(FORCE_COEFFICIENT)
    }
}
