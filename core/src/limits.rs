//! The card for the site: how fast each pour may be placed at each temperature of the concrete.

use crate::catalogue::Catalogue;
use crate::layout;
use crate::load_path::{Record, solve_full_walls};
use crate::model::{Model, Pour};
use crate::results::{CheckKind, Results, Severity};
use crate::scheme::{Delivery, Id, PressureMethod, Scheme};
use crate::sentence::{Sentence, member};
use crate::{DesignError, catalogue_of};

/// Temperatures of the card, °C.
pub const TEMPERATURES_C: [f64; 6] = [5.0, 10.0, 15.0, 20.0, 25.0, 30.0];

/// Rises that are looked at, m/h.
const RISES_M_H: [f64; 2] = [0.1, 12.0];
/// Each step of the search from below by the last.
const STEP: f64 = 1.4;
/// The limit is found within this part of itself.
const WITHIN: f64 = 2e-3;

/// Limits of one pour.
#[derive(Clone, Debug, PartialEq)]
pub struct PourLimits {
    /// The pour.
    pub pour: Id,
    /// Its mark.
    pub mark: String,
    /// One for each temperature asked for.
    pub limits: Vec<Limit>,
}

/// How fast a pour may be placed before a wall member, tie or hold-down passes its resistance.
#[derive(Clone, Debug, PartialEq)]
pub enum Limit {
    /// At any rate: all bear even the full head as a fluid.
    Any,
    /// Up to a rate.
    UpTo {
        /// Delivery that makes the rise, m³/h.
        delivery_m3_h: f64,
        /// The fastest rise beside its shutters, m/h.
        rise_m_h: f64,
        /// What fails beyond it; nothing where the search ends first.
        governing: Option<Governing>,
    },
    /// Not even at the slowest rate looked at.
    Never {
        /// What fails.
        governing: Governing,
    },
}

/// What fails first.
#[derive(Clone, Debug, PartialEq)]
pub struct Governing {
    /// Mark and role of the member, or why it cannot be solved.
    pub member: Sentence,
    /// In what, unless it cannot be solved at all.
    pub check: Option<CheckKind>,
}

/// The card of a scheme: every pour with wall shutters at each of [`TEMPERATURES_C`].
///
/// # Errors
/// A scheme that does not validate.
pub fn site_limits(scheme: &Scheme, catalogue: &Catalogue) -> Result<Vec<PourLimits>, DesignError> {
    limits_at(scheme, catalogue, &TEMPERATURES_C)
}

/// Limits of every pour with wall shutters at these temperatures, °C. The rate climbs from the slowest until something
/// fails, so that every slower rate passes too.
///
/// # Errors
/// A scheme that does not validate.
pub fn limits_at(
    scheme: &Scheme,
    catalogue: &Catalogue,
    temperatures_c: &[f64],
) -> Result<Vec<PourLimits>, DesignError> {
    scheme.validate().map_err(DesignError::Scheme)?;
    let (model, _) = layout::place(scheme, &catalogue_of(scheme, catalogue));
    let with_shutters = |pour: &&Pour| model.shutters.iter().any(|shutter| shutter.pour == pour.id);
    let limits = |pour: &Pour| {
        let search = Search { scheme, model: &model, pour };
        let limits = temperatures_c.iter().map(|&temperature_c| search.limit(temperature_c)).collect();
        PourLimits { pour: pour.id, mark: pour.mark.clone(), limits }
    };
    Ok(model.pours.iter().filter(with_shutters).map(limits).collect())
}

struct Search<'a> {
    scheme: &'a Scheme,
    model: &'a Model,
    pour: &'a Pour,
}

impl Search<'_> {
    fn limit(&self, temperature_c: f64) -> Limit {
        let mut scheme = self.scheme.clone();
        scheme.concrete.temperature_c = temperature_c;
        let mut fluid = scheme.clone();
        fluid.concrete.method = PressureMethod::FullHead;
        if self.failing(&fluid).is_none() {
            return Limit::Any;
        }
        let area_m2 = self.plan_area_m2();
        let mut at = |rise_m_h: f64| {
            scheme.concrete.delivery = match self.scheme.concrete.delivery {
                Delivery::Rise { .. } => Delivery::Rise { rate_m_h: rise_m_h },
                Delivery::Volume { .. } => Delivery::Volume { rate_m3_h: rise_m_h * area_m2 },
            };
            self.failing(&scheme)
        };
        let [slowest, fastest] = RISES_M_H;
        let up_to = |rise_m_h: f64, governing| Limit::UpTo { delivery_m3_h: rise_m_h * area_m2, rise_m_h, governing };
        if let Some(governing) = at(slowest) {
            return Limit::Never { governing };
        }
        let mut passes = slowest;
        let (mut fails, mut governing) = loop {
            if passes >= fastest {
                return up_to(passes, None);
            }
            let next = (passes * STEP).min(fastest);
            match at(next) {
                Some(governing) => break (next, governing),
                None => passes = next,
            }
        };
        while fails - passes > WITHIN * passes {
            let middle = (passes + fails) / 2.0;
            match at(middle) {
                Some(found) => (fails, governing) = (middle, found),
                None => passes = middle,
            }
        }
        up_to(passes, Some(governing))
    }

    /// Plan area over which the concrete rises fastest beside a shutter, m².
    fn plan_area_m2(&self) -> f64 {
        let mut scheme = self.scheme.clone();
        scheme.concrete.delivery = Delivery::Volume { rate_m3_h: 1.0 };
        let fastest = self.solved(&scheme).pressures.iter().map(|pressure| pressure.rise_m_h).fold(0.0, f64::max);
        1.0 / fastest
    }

    fn solved(&self, scheme: &Scheme) -> Results {
        let mut record = Record::new(scheme);
        solve_full_walls(scheme, self.model, self.pour, &mut record);
        record.results
    }

    /// What passes its resistance, or cannot be solved.
    fn failing(&self, scheme: &Scheme) -> Option<Governing> {
        let results = self.solved(scheme);
        if let Some(finding) = results.findings.iter().find(|finding| finding.severity == Severity::Fail) {
            return Some(Governing { member: finding.text.clone(), check: None });
        }
        let worst = results.governing().filter(|check| check.fails())?;
        Some(Governing { member: sentence!("{}", member(&worst.member)), check: Some(worst.check) })
    }
}
