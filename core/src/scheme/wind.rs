use serde::{Deserialize, Serialize};

/// Wind on the site for the time that the works stand.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SiteWind {
    /// Greatest gust speed `V` of `q = 0.613 V²` N/m².
    pub basic_speed_m_s: f64,
    /// Gust speed up to which work goes on.
    pub working_speed_m_s: f64,
}
