//! Collects what the load paths find.

use super::line::Envelope;
use crate::analysis::{Dof, Frame, FrameError, Member};
use crate::catalogue::Item;
use crate::checks::{check_beam, check_board, check_deflection};
use crate::geometry::Point;
use crate::results::{Check, CheckKind, Finding, Mechanism, MovingMember, Results, Severity, Verdict};
use crate::scheme::{Basis, Id, Scheme};
use crate::sentence::{Sentence, number};
use std::fmt::Write;

/// Checks of a scheme of usual size, so that their list seldom grows.
const USUAL_CHECKS: usize = 256;

/// The results as they grow.
pub struct Record {
    /// So far.
    pub results: Results,
    basis: Basis,
    span_over_deflection: f64,
}

/// The member that a check belongs to, where and when.
pub(super) struct Subject<'a> {
    pub owner: Id,
    pub member: &'a str,
    /// Pour and state.
    pub case: &'a Sentence,
    /// Where, in words.
    pub place: &'a Sentence,
    /// Where on the section.
    pub at: Point,
}

/// A member in bending, with its greatest effects.
pub(super) struct Bending<'a> {
    pub owner: Id,
    pub member: &'a str,
    pub item: &'a Item,
    /// Under factored loads.
    pub strength: Envelope,
    /// Under unfactored loads.
    pub service: Envelope,
    /// Length over which the level below bears on it.
    pub bearing_m: f64,
    /// Name of each load case.
    pub case: &'a dyn Fn(usize) -> Sentence,
    /// Place of a peak, in words and on the section.
    pub place: &'a dyn Fn(f64) -> (Sentence, Point),
}

impl Record {
    /// Nothing yet, for this scheme.
    pub fn new(scheme: &Scheme) -> Self {
        Self {
            results: Results { checks: Vec::with_capacity(USUAL_CHECKS), ..Results::default() },
            basis: scheme.basis,
            span_over_deflection: scheme.limits.span_over_deflection,
        }
    }

    /// Adds checks. Of one kind for one member the worst stays; of those alike but for rounding the first.
    pub(super) fn check(&mut self, subject: &Subject, verdicts: impl IntoIterator<Item = Verdict>) {
        for verdict in verdicts {
            let ratio = verdict.ratio();
            let same = |check: &&mut Check| {
                check.check == verdict.check && check.owner == subject.owner && check.member == subject.member
            };
            // Those of one member come one after another.
            let known = self.results.checks.iter_mut().rfind(same);
            if known.as_ref().is_some_and(|check| check.ratio >= ratio * (1.0 - 1e-9)) {
                continue;
            }
            let check = Check {
                member: subject.member.into(),
                owner: subject.owner,
                check: verdict.check,
                place: subject.place.clone(),
                at: subject.at,
                case: subject.case.clone(),
                demand: verdict.demand,
                resistance: verdict.resistance,
                unit: verdict.unit,
                ratio,
                source: verdict.source,
                formula: verdict.formula,
            };
            match known {
                Some(known) => *known = check,
                None => self.results.checks.push(check),
            }
        }
    }

    /// Checks bending, shear, bearing where the item has a resistance, and deflection.
    pub(super) fn check_bending(&mut self, bending: &Bending) {
        let Bending { item, strength, service, .. } = bending;
        let (moment, shear) = (strength.moment.value, strength.shear.value);
        let bearing = (strength.bearing.value > 0.0).then_some(strength.bearing.value);
        let mut verdicts = match item.board() {
            Some(_) => check_board(item, self.basis, moment, shear),
            None => check_beam(item, self.basis, moment, shear, bearing, bending.bearing_m),
        };
        let deflection = service.deflection;
        verdicts.push(check_deflection(deflection.peak.value, deflection.span_m, self.span_over_deflection));
        for verdict in verdicts {
            let peak = match verdict.check {
                CheckKind::Shear => strength.shear,
                CheckKind::Bearing => strength.bearing,
                CheckKind::Deflection => deflection.peak,
                _ => strength.moment,
            };
            let (place, at) = (bending.place)(peak.at_m);
            let case = (bending.case)(peak.case);
            let subject = Subject { owner: bending.owner, member: bending.member, case: &case, place: &place, at };
            self.check(&subject, [verdict]);
        }
    }

    /// Says what cannot be computed, or must be known.
    pub(super) fn find(&mut self, severity: Severity, owner: Id, text: Sentence, remedy: Sentence) {
        self.results.findings.push(Finding { severity, owner: Some(owner), at: None, check: None, text, remedy });
    }

    /// Says that a member cannot be solved.
    pub(super) fn unsolved(&mut self, owner: Id, member: &str, error: &FrameError) {
        self.find(Severity::Fail, owner, in_words(member, error), hold_it());
    }

    /// The same of a frame in the section plane: where it can move, how is kept for the drawing.
    pub(super) fn unsolved_frame(&mut self, owner: Id, member: &str, frame: &Frame, error: &FrameError) {
        self.find_moving(owner, in_words(member, error), hold_it(), frame, error);
    }

    /// Says what does not stand, and keeps how it moves if it is a mechanism of this frame.
    pub(super) fn find_moving(
        &mut self,
        owner: Id,
        text: Sentence,
        remedy: Sentence,
        frame: &Frame,
        error: &FrameError,
    ) {
        match Mechanism::of(owner, text, remedy, frame, error) {
            Ok(mechanism) if self.results.mechanisms.iter().all(|other| other.text != mechanism.text) => {
                self.results.mechanisms.push(mechanism);
            }
            Err([text, remedy]) if self.results.findings.iter().all(|other| other.text != text) => {
                self.find(Severity::Fail, owner, text, remedy);
            }
            Ok(_) | Err(_) => {}
        }
    }
}

/// One of those of a mark, such as `T1.3`.
pub(super) fn numbered(mark: &str, number: usize) -> String {
    let mut text = String::with_capacity(mark.len() + 4);
    // Writing into a text does not fail.
    let _ = write!(text, "{mark}.{number}");
    text
}

/// A place across the culvert.
pub(super) fn at_x(x_m: f64) -> Sentence {
    sentence!("x = {}", number(x_m, "m", 2))
}

/// A height.
pub(super) fn at_level(z_m: f64) -> Sentence {
    sentence!("level {}", number(z_m, "m", 2))
}

fn hold_it() -> Sentence {
    sentence!("Hold it: a foot, another row of ties or props, a line of legs or a brace.")
}

fn in_words(member: &str, error: &FrameError) -> Sentence {
    match error {
        FrameError::Mechanism { dof: Dof::Ux, .. } => sentence!("{} is free to move sideways.", member),
        FrameError::Mechanism { dof: Dof::Uy, .. } => sentence!("{} is free to move up or down.", member),
        FrameError::Mechanism { dof: Dof::Rz, .. } => sentence!("{} is free to turn.", member),
        other => sentence!("{} cannot be solved: {}.", member, other.to_string()),
    }
}

impl Mechanism {
    /// A frame of the section plane that moves so; text and remedy again if it does not move.
    fn of(
        owner: Id,
        text: Sentence,
        remedy: Sentence,
        frame: &Frame,
        error: &FrameError,
    ) -> Result<Self, [Sentence; 2]> {
        let FrameError::Mechanism { node, movement, .. } = error else { return Err([text, remedy]) };
        let place = |node: usize| frame.nodes.get(node).map(|node| Point::new(node.x, node.y));
        let by = |node: usize| movement.get(node).map(|by| Point::new(by.ux, by.uy));
        let member = |member: &Member| {
            let (i, j) = (member.i, member.j);
            Some(MovingMember { from: place(i)?, to: place(j)?, from_moves: by(i)?, to_moves: by(j)? })
        };
        let Some(at) = place(*node) else { return Err([text, remedy]) };
        let members = frame.members.iter().filter_map(member).collect();
        Ok(Self { owner, at, members, text, remedy })
    }
}
