//! Collects what the load paths find.

use crate::analysis::FrameError;
use crate::geometry::Point;
use crate::results::{Check, Finding, Results, Severity, Verdict};
use crate::scheme::Id;

/// The results as they grow.
#[derive(Default)]
pub struct Record {
    /// So far.
    pub results: Results,
}

/// The member that checks belong to.
pub struct Subject<'a> {
    pub owner: Id,
    pub member: &'a str,
    pub case: &'a str,
}

impl Record {
    /// Adds a check of `subject` at a place, given in words and on the section.
    pub fn check(&mut self, subject: &Subject, place: impl Into<String>, at: Point, verdict: Verdict) {
        self.results.checks.push(Check {
            member: subject.member.into(),
            owner: subject.owner,
            check: verdict.check,
            place: place.into(),
            at,
            case: subject.case.into(),
            demand: verdict.demand,
            resistance: verdict.resistance,
            unit: verdict.unit,
            ratio: verdict.ratio(),
            source: verdict.source,
            formula: verdict.formula,
        });
    }

    /// Adds several checks at one place.
    pub fn checks(&mut self, subject: &Subject, place: &str, at: Point, verdicts: impl IntoIterator<Item = Verdict>) {
        for verdict in verdicts {
            self.check(subject, place, at, verdict);
        }
    }

    /// Says what cannot be computed, or must be known.
    pub fn find(&mut self, severity: Severity, owner: Id, text: String, remedy: &str) {
        self.results.findings.push(Finding {
            severity,
            owner: Some(owner),
            at: None,
            check: None,
            text,
            remedy: remedy.into(),
        });
    }

    /// Says that a member cannot be solved.
    pub fn unsolved(&mut self, owner: Id, member: &str, error: &FrameError) {
        self.find(
            Severity::Fail,
            owner,
            format!("{member} cannot be solved: {error}"),
            "Give it enough supports to stand.",
        );
    }
}
