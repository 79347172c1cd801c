//! What was computed: forces, checks, the ledger, findings. Data only.

use crate::actions::fresh_concrete::filling::Filling;
use crate::formula::Formula;
use crate::geometry::Point;
use crate::model::Part;
use crate::scheme::Id;
use crate::sentence::Sentence;
use serde::Serialize;

/// Everything computed for one scheme.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Results {
    /// Fresh concrete on each shutter.
    pub pressures: Vec<PressureDiagram>,
    /// How each pour fills, from the lowest up.
    pub fillings: Vec<PourFilling>,
    /// Every check of every member, as computed.
    pub checks: Vec<Check>,
    /// Ties and props, the most loaded of each row first.
    pub ties: Vec<TieForce>,
    /// Legs, stubs and trestles, the most loaded of each line.
    pub legs: Vec<LegForce>,
    /// What comes in and goes out at each level of the path.
    pub ledger: Vec<LedgerEntry>,
    /// Forces and shapes along the members that stand in the section plane.
    pub diagrams: Vec<Diagram>,
    /// The room in each opening.
    pub clearances: Vec<Clearance>,
    /// When the forms of each pour may go, if the scheme says how its concrete hardens.
    pub striking: Vec<StrikingTime>,
    /// What can move without resistance.
    pub mechanisms: Vec<Mechanism>,
    /// What the user should know, most serious first.
    pub findings: Vec<Finding>,
}

impl Results {
    /// The check with the greatest ratio.
    pub fn governing(&self) -> Option<&Check> {
        self.checks.iter().max_by(|a, b| a.ratio.total_cmp(&b.ratio))
    }

    /// Which tie or prop of a row, counted along the bay from 0, bears most.
    pub fn most_loaded_tie(&self, row: Id) -> Option<usize> {
        let own = self.ties.iter().filter(|tie| tie.row == row).enumerate();
        own.max_by(|a, b| a.1.force_kn.abs().total_cmp(&b.1.force_kn.abs())).map(|(place, _)| place)
    }

    /// At which of so many bents, counted along the bay from 0, a leg line or an opening's trestles bear most.
    pub fn most_loaded_bent(&self, owner: Id, bents: usize) -> Option<usize> {
        let own = self.legs.iter().filter(|leg| leg.owner == owner).enumerate();
        own.max_by(|a, b| a.1.axial_kn.total_cmp(&b.1.axial_kn)).map(|(leg, _)| leg % bents.max(1))
    }

    /// The check with the greatest ratio among those of one element and member role prefix.
    pub fn governing_of(&self, owner: Id) -> Option<&Check> {
        self.checks.iter().filter(|check| check.owner == owner).max_by(|a, b| a.ratio.total_cmp(&b.ratio))
    }
}

/// Pressure on one shutter over its height, for the fullest state of its pour.
#[derive(Clone, Debug, PartialEq)]
pub struct PressureDiagram {
    /// The shutter.
    pub shutter: Id,
    /// `(level, pressure)` at each kink, from the bottom up: m and kPa.
    pub points: Vec<(f64, f64)>,
    /// Greatest pressure by the method, before the fluid head limits it.
    pub limit_kpa: f64,
    /// Governing rise over the height of the form.
    pub rise_m_h: f64,
    /// How the greatest pressure was found.
    pub formula: Sentence,
    /// Where that comes from.
    pub source: &'static str,
}

/// How a pour fills.
#[derive(Clone, Debug, PartialEq)]
pub struct PourFilling {
    /// The pour.
    pub pour: Id,
    /// Its mark.
    pub mark: String,
    /// Its surface against time, and the pressure under it.
    pub filling: Filling,
    /// The fastest rise beside a wall shutter of the pour, at which its pressure is found; without one, of the pour.
    pub governing_rise_m_h: f64,
    /// Where the method of pressure is used outside its range.
    pub warnings: Vec<Sentence>,
}

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
    /// Tension and shear of an anchor together.
    Anchorage,
}

impl CheckKind {
    /// All.
    pub const ALL: [Self; 17] = [
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

/// Force of one tie or prop.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TieForce {
    /// Mark of the row and place along the bay.
    pub id: String,
    /// The row.
    #[serde(skip)]
    pub row: Id,
    /// Force as first calculated, unfactored: tension of a tie, compression of a prop.
    pub force_kn: f64,
}

/// Axial force of one leg, stub or trestle.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LegForce {
    /// Mark and bent.
    pub id: String,
    /// Leg line or opening.
    #[serde(skip)]
    pub owner: Id,
    /// Greatest unfactored compression over all states of the pour.
    pub axial_kn: f64,
}

/// The path of one load through the works.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LedgerEntry {
    /// Mark of the pour.
    pub pour: String,
    /// Such as `vertical, full` or `horizontal, S1–S2`.
    pub case: Sentence,
    /// From concrete to ground, or from concrete to ties.
    pub levels: Vec<LedgerLevel>,
    /// Greatest difference at any level, by the greatest force: 0.001 is 0.1 %.
    pub difference: f64,
}

impl LedgerEntry {
    /// An entry whose difference is the greatest of its levels.
    pub fn new(pour: String, case: Sentence, levels: Vec<LedgerLevel>) -> Self {
        let greatest = levels.iter().fold(1e-9, |greatest: f64, level| greatest.max(level.into_kn.abs()));
        let apart = levels.iter().fold(0.0, |apart: f64, level| apart.max((level.into_kn - level.out_kn).abs()));
        Self { pour, case, levels, difference: apart / greatest }
    }
}

/// One level of the path.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LedgerLevel {
    /// Such as `secondaries`.
    pub level: &'static str,
    /// What comes in, own weight included.
    #[serde(rename = "in")]
    pub into_kn: f64,
    /// What its supports bear.
    #[serde(rename = "out")]
    pub out_kn: f64,
}

/// Moment, shear and deflection along a member in the section plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Diagram {
    /// The element that it belongs to.
    pub owner: Id,
    /// Such as `S1 primary`.
    pub member: String,
    /// Axis of the member.
    pub from: Point,
    /// End of its axis.
    pub to: Point,
    /// Evenly or unevenly spaced along the axis.
    pub stations: Vec<Station>,
}

/// One place on a member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// Distance from the start of the axis.
    pub s_m: f64,
    /// Bending moment, positive where it stretches the side to the right of the axis.
    pub moment_knm: f64,
    /// Shear.
    pub shear_kn: f64,
    /// Deflection to the left of the axis.
    pub deflection_m: f64,
}

impl Station {
    /// The same place under `factor` times the load.
    pub fn times(self, factor: f64) -> Self {
        Self {
            moment_knm: self.moment_knm * factor,
            shear_kn: self.shear_kn * factor,
            deflection_m: self.deflection_m * factor,
            ..self
        }
    }
}

/// The room in an opening, measured between placed solids.
#[derive(Clone, Debug, PartialEq)]
pub struct Clearance {
    /// The opening.
    pub opening: Id,
    /// Least clear width over the height of the way, guards and tolerance taken off.
    pub width_m: f64,
    /// Least clear height over the width of the way, deflection and tolerance taken off.
    pub height_m: f64,
    /// What is nearest at the left and right, and at what height.
    pub width_between: Sentence,
    /// What is lowest above the way.
    pub height_below: Sentence,
}

/// When forms may go.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StrikingTime {
    /// Mark of the pour.
    pub pour: String,
    /// Which of its forms.
    pub form: StruckForm,
    /// Strength that the concrete must have then.
    pub required_mpa: f64,
    /// Hours from placing until it has it; none if it never does.
    pub hours: Option<f64>,
    /// Hours that are usual where strength is not tested; none at temperatures below freezing.
    pub untested_h: Option<f64>,
    /// Clause or practice behind the strength.
    pub source: String,
    /// The strength with its numbers.
    pub formula: String,
}

/// Forms that are struck together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StruckForm {
    /// Wall shutters.
    Walls,
    /// Soffits with all that carries them.
    Soffits,
}

impl StruckForm {
    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Self::Walls => "walls",
            Self::Soffits => "soffits",
        }
    }
}

/// A frame in the section plane that can move without resistance, all of it or a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Mechanism {
    /// The element that it belongs to.
    pub owner: Id,
    /// Where it moves most as it begins to move.
    pub at: Point,
    /// All its members.
    pub members: Vec<MovingMember>,
    /// What moves, in whole sentences.
    pub text: Sentence,
    /// What to do.
    pub remedy: Sentence,
}

/// A member of a mechanism, and which way its ends set out: the place that moves most moves 1 m.
#[derive(Clone, Copy, Debug, PartialEq)]
#[allow(missing_docs)]
pub struct MovingMember {
    pub from: Point,
    pub to: Point,
    pub from_moves: Point,
    pub to_moves: Point,
}

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// Must not be built so.
    Fail,
    /// Missing or outside the range of a method.
    Warn,
    /// Worth knowing.
    Note,
}

/// What the user should know, in whole sentences.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// How much it matters.
    pub severity: Severity,
    /// The element concerned.
    #[serde(skip)]
    pub owner: Option<Id>,
    /// Where on the section.
    #[serde(skip)]
    pub at: Option<Point>,
    /// Index of the check behind it.
    #[serde(skip)]
    pub check: Option<usize>,
    /// What is wrong and where.
    pub text: Sentence,
    /// What to do.
    pub remedy: Sentence,
}
