use crate::language::{member, told};
use crate::worked::Worked;
use falsewright_core::quantities::{Equipment, equipment};
use falsewright_core::results::{Check, Severity};
use falsewright_core::scheme::Id;

/// What an option comes to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct KeyFigures {
    /// Nothing could be computed.
    pub failed: bool,
    /// The greatest ratio.
    pub worst: Option<f64>,
    /// Where that is.
    pub place: String,
    /// The element that it belongs to.
    pub owner: Option<Id>,
    /// Findings that say that it must not be built so.
    pub failing: usize,
    /// Clear width and height of the narrowest way.
    pub clear_m: Option<[f64; 2]>,
    /// The fastest rise beside a shutter, as the concrete is to be placed.
    pub rise_m_h: Option<f64>,
    /// The greatest pressure on a shutter.
    pub pressure_kpa: Option<f64>,
    /// Concrete of a bay.
    pub concrete_m3: f64,
    /// Equipment of a bay.
    pub equipment: Equipment,
    /// Cost of all bays, if a rate is known.
    pub cost: Option<f64>,
}

impl KeyFigures {
    /// Of what was worked out.
    pub fn of(worked: &Worked) -> Self {
        let (model, results) = (&worked.design.model, &worked.design.results);
        let governing = results.governing();
        let place = |check: &Check| format!("{}, {}", member(&check.member), told(&check.place));
        let narrowest = results.clearances.iter().min_by(|a, b| a.width_m.total_cmp(&b.width_m));
        let pressures = results.pressures.iter().flat_map(|pressure| &pressure.points).map(|point| point.1);
        Self {
            failed: worked.fault.is_some(),
            worst: governing.map(|check| check.ratio),
            place: governing.map(place).unwrap_or_default(),
            owner: governing.map(|check| check.owner),
            failing: results.findings.iter().filter(|finding| finding.severity == Severity::Fail).count(),
            clear_m: narrowest.map(|way| [way.width_m, way.height_m]),
            rise_m_h: results.pressures.iter().map(|pressure| pressure.rise_m_h).reduce(f64::max),
            pressure_kpa: pressures.reduce(f64::max),
            concrete_m3: model.pours.iter().map(|pour| pour.volume_m3).sum(),
            equipment: equipment(&worked.design.quantities),
            cost: worked.design.reuse.and_then(|reuse| reuse.cost).map(|cost| cost.total()),
        }
    }
}
