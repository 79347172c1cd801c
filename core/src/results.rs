//! What was computed: forces, checks, the ledger, findings. Data only.

mod check;
mod finding;
mod forces;
mod ledger;
mod moved;
mod pressure;
mod striking;

use crate::geometry::Point;
use crate::scheme::Id;
use crate::sentence::Sentence;
pub(crate) use check::ratio;
pub use check::{Check, CheckKind, Verdict};
pub use finding::{Finding, Mechanism, MovingMember, Severity};
pub use forces::{Diagram, LegForce, Station, TieForce};
pub use ledger::{LedgerEntry, LedgerLevel};
pub use moved::{BayMove, JackLine, Push};
pub use pressure::{PourFilling, PressureDiagram};
pub use striking::{StrikingTime, StruckForm};

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
    /// How hinged shutters swing off their concrete.
    pub swings: Vec<Swing>,
    /// When the forms of each pour may go, if the scheme says how its concrete hardens.
    pub striking: Vec<StrikingTime>,
    /// How a bay is taken from where it was cast, if it is.
    pub moved: Option<BayMove>,
    /// What can move without resistance.
    pub mechanisms: Vec<Mechanism>,
    /// What the user should know, most serious first.
    pub findings: Vec<Finding>,
}

impl Results {
    /// The check with the greatest ratio; room that there is does not count beside others, however little is to spare.
    pub fn governing(&self) -> Option<&Check> {
        self.checks.iter().max_by(|a, b| a.order(b))
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

    /// The same among the checks of one element.
    pub fn governing_of(&self, owner: Id) -> Option<&Check> {
        self.checks.iter().filter(|check| check.owner == owner).max_by(|a, b| a.order(b))
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

/// How a hinged shutter swings off its concrete, measured between outlines in the section.
#[derive(Clone, Debug, PartialEq)]
pub struct Swing {
    /// The shutter.
    pub shutter: Id,
    /// Its parts where they come to rest, each an outline; as far as they get if something is in the way.
    pub outlines: Vec<[Point; 4]>,
    /// How far it could be swung until it meets something, degrees: none if it never does.
    pub clear_deg: Option<f64>,
    /// What meets what there.
    pub meets: Option<Sentence>,
    /// The gap that is asked for.
    pub wanted_m: f64,
    /// The least gap once it has been moved; nought if something is in the way.
    pub gap_m: f64,
    /// Between what.
    pub between: Sentence,
}
