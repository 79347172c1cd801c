use crate::geometry::Point;
use crate::scheme::Id;
use crate::sentence::Sentence;
use serde::Serialize;

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
