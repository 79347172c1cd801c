use crate::formula::Formula;
use crate::geometry::Point;
use crate::model::Part;
use crate::scheme::Id;
use crate::sentence::Sentence;
use serde::Serialize;
use std::cmp::Ordering;

/// One resistance compared with what it must bear.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Check {
    /// Mark and role of the member, such as `S1 primary`.
    pub member: String,
    /// The element that it belongs to.
    #[serde(skip)]
    pub owner: Id,
    /// What is checked.
    pub check: CheckKind,
    /// Where, in words.
    #[serde(rename = "where")]
    pub place: Sentence,
    /// Where on the section.
    #[serde(skip)]
    pub at: Point,
    /// Pour and state.
    pub case: Sentence,
    /// What the member must bear.
    pub demand: f64,
    /// What it can bear.
    pub resistance: f64,
    /// Of demand and resistance.
    pub unit: &'static str,
    /// Demand by resistance.
    pub ratio: f64,
    /// Clause or practice.
    pub source: Sentence,
    /// The formula with its numbers.
    pub formula: Formula,
}

impl Check {
    /// Whether the demand is beyond the resistance, or nothing can be said of it.
    pub fn fails(&self) -> bool {
        self.ratio.is_nan() || self.ratio > 1.0
    }

    /// By their ratios, before them room that there is: a way drawn as wide as will go is full, but loads nothing.
    pub(super) fn order(&self, other: &Self) -> Ordering {
        let counts = |check: &Self| check.check != CheckKind::Clearance || check.fails();
        counts(self).cmp(&counts(other)).then(self.ratio.total_cmp(&other.ratio))
    }

    /// Whether it judges this part. The stability of a bent is that of all its parts; a clearance is of none.
    pub fn is_of(&self, part: &Part) -> bool {
        let named = || self.member.strip_suffix(part.role.name()).is_some_and(|mark| mark.ends_with(' '));
        self.owner == part.owner
            && self.check != CheckKind::Clearance
            && (self.check == CheckKind::Stability || named())
    }
}

/// What a check looks at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum CheckKind {
    /// Bending.
    Bending,
    /// Shear.
    Shear,
    /// Bearing at a support.
    Bearing,
    /// Deflection.
    Deflection,
    /// Tension of a tie.
    Tension,
    /// Compression with buckling.
    Buckling,
    /// Lateral torsional buckling.
    LateralTorsional,
    /// Extension of jacks.
    Extension,
    /// Compression with the kink at spigots.
    Spigot,
    /// Pressure under a base.
    BasePressure,
    /// Slip of couplers.
    Coupler,
    /// Clear width or height of an opening.
    Clearance,
    /// Lowest elastic critical load factor of a bent.
    Stability,
    /// Moments about an edge.
    Overturning,
    /// Level force against friction.
    Sliding,
    /// Upward force against weight and what holds down.
    Uplift,
    /// Force of a jack or ram.
    Jacking,
    /// Tension and shear of an anchor together.
    Anchorage,
}

impl CheckKind {
    /// All.
    pub const ALL: [Self; 18] = [
        Self::Bending,
        Self::Shear,
        Self::Bearing,
        Self::Deflection,
        Self::Tension,
        Self::Buckling,
        Self::LateralTorsional,
        Self::Extension,
        Self::Spigot,
        Self::BasePressure,
        Self::Coupler,
        Self::Clearance,
        Self::Stability,
        Self::Overturning,
        Self::Sliding,
        Self::Uplift,
        Self::Jacking,
        Self::Anchorage,
    ];

    /// What it looks at, in words.
    pub fn name(self) -> &'static str {
        match self {
            Self::Bending => "bending",
            Self::Shear => "shear",
            Self::Bearing => "bearing",
            Self::Deflection => "deflection",
            Self::Tension => "tension",
            Self::Buckling => "compression with buckling",
            Self::LateralTorsional => "lateral torsional buckling",
            Self::Extension => "extension of its jacks",
            Self::Spigot => "compression with kinked spigots",
            Self::BasePressure => "bearing pressure",
            Self::Coupler => "slip of its couplers",
            Self::Clearance => "clearance",
            Self::Stability => "stability",
            Self::Overturning => "overturning",
            Self::Sliding => "sliding",
            Self::Uplift => "uplift",
            Self::Jacking => "jacking",
            Self::Anchorage => "tension and shear of its anchor",
        }
    }
}

/// Outcome of one resistance formula, before it is known where it was used.
#[derive(Clone, Debug, PartialEq)]
pub struct Verdict {
    /// What is checked.
    pub check: CheckKind,
    /// What the member must bear.
    pub demand: f64,
    /// What it can bear.
    pub resistance: f64,
    /// Of demand and resistance.
    pub unit: &'static str,
    /// Clause or practice.
    pub source: Sentence,
    /// The formula with its numbers.
    pub formula: Formula,
}

impl Verdict {
    /// Demand by resistance; infinite where there is no resistance.
    pub fn ratio(&self) -> f64 {
        ratio(self.demand, self.resistance)
    }
}

/// Demand by resistance; infinite where there is no resistance.
pub(crate) fn ratio(demand: f64, resistance: f64) -> f64 {
    if demand <= 0.0 { 0.0 } else { demand / resistance.max(0.0) }
}
