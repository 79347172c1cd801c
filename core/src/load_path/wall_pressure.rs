use super::chain::BeamLoad;
use crate::actions::fresh_concrete::{PressureLimit, pressure_limit, rise};
use crate::geometry::{Boundary, Side};
use crate::model::{PlacedShutter, Pour};
use crate::results::PressureDiagram;
use crate::scheme::Scheme;
use crate::sentence::Sentence;

/// Pressure of fresh concrete on a shutter when its pour is full, and the warnings of the method.
pub fn on(shutter: &PlacedShutter, pour: &Pour, solid: &Boundary, scheme: &Scheme) -> (PressureDiagram, Vec<Sentence>) {
    let density = scheme.concrete.unit_weight_kn_m3;
    let bottom = shutter.face.from.z.min(shutter.face.to.z);
    let top = shutter.face.from.z.max(shutter.face.to.z);
    let rise_m_h = governing_rise_m_h(shutter, solid, scheme);
    let height = pour.top_m - pour.bottom_m;
    let limit = pressure_limit(&scheme.concrete, rise_m_h, height, height);

    let head = |z: f64| density * (pour.top_m - z);
    let kink = pour.top_m - limit.kpa / density;
    let mut points = vec![(bottom, head(bottom).min(limit.kpa))];
    if kink > bottom + 1e-9 && kink < top - 1e-9 {
        points.push((kink, limit.kpa));
    }
    points.push((top, head(top).min(limit.kpa)));
    let PressureLimit { kpa: limit_kpa, formula, source, warnings } = limit;
    (PressureDiagram { shutter: shutter.id, points, limit_kpa, rise_m_h, formula, source }, warnings)
}

/// The fastest rise over the height of a shutter's face, m/h.
pub fn governing_rise_m_h(shutter: &PlacedShutter, solid: &Boundary, scheme: &Scheme) -> f64 {
    let bottom = shutter.face.from.z.min(shutter.face.to.z);
    let top = shutter.face.from.z.max(shutter.face.to.z);
    rise(&scheme.concrete.delivery, least_width(solid, bottom, top) * scheme.bays.length_m)
}

/// Least width of concrete between two levels, m: there the concrete rises fastest.
fn least_width(solid: &Boundary, bottom: f64, top: f64) -> f64 {
    let ends = [solid.width_at(bottom, Side::After), solid.width_at(top, Side::Before)];
    let between = solid.levels(bottom, top);
    let kinks = between.iter().flat_map(|&z| [solid.width_at(z, Side::Before), solid.width_at(z, Side::After)]);
    ends.into_iter().chain(kinks).fold(f64::INFINITY, f64::min)
}

impl PressureDiagram {
    /// Level force of the concrete on a metre of shutter, kN/m.
    pub fn resultant_kn_m(&self) -> f64 {
        self.points.windows(2).map(|pair| (pair[1].0 - pair[0].0) * (pair[0].1 + pair[1].1) / 2.0).sum()
    }

    /// Greatest pressure, kPa, and its level, m.
    pub fn greatest(&self) -> (f64, f64) {
        self.points.iter().fold((0.0, 0.0), |best, &(z, p)| if p > best.0 { (p, z) } else { best })
    }

    /// The pressure as loads on a beam that starts at `bottom_m` and is `stretch` times as long as it is high.
    pub(super) fn loads(&self, bottom_m: f64, stretch: f64) -> Vec<BeamLoad> {
        let load = |pair: &[(f64, f64)]| BeamLoad::Line {
            a: (pair[0].0 - bottom_m) * stretch,
            b: (pair[1].0 - bottom_m) * stretch,
            w1: pair[0].1,
            w2: pair[1].1,
        };
        self.points.windows(2).map(load).collect()
    }
}
