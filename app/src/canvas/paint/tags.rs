//! What is written at members: ratios, numbers of findings, values of diagrams.

use super::forces::Labelled;
use super::whereabouts::Whereabouts;
use super::{equipment, tone};
use crate::language::{member, told};
use falsewright_core::geometry::Point;
use falsewright_core::results::{Check, Finding, Severity};
use falsewright_core::scheme::Id;
use falsewright_core::sorting::sort;
use std::collections::BTreeMap;

/// A piece of writing that belongs to a place on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Tag {
    /// Unique on the drawing; also its test id.
    pub key: String,
    /// What it looks like.
    pub kind: TagKind,
    /// The place, m.
    pub at: Point,
    /// What it says.
    pub text: String,
    /// What screen readers say.
    pub label: String,
    /// The element concerned.
    pub owner: Option<Id>,
    /// Whether it is written even where nothing is free: what must not or should not be built so.
    pub urgent: bool,
}

/// What a tag looks like, from the one placed first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TagKind {
    /// Number of a finding, from 0, in a ring.
    Ring(usize),
    /// Mark and greatest ratio of an element.
    Governing(f64),
    /// Mark of an element of which nothing is checked.
    Unchecked,
    /// Greatest ratio of one member of an element.
    Member(f64),
    /// Value of a diagram.
    Value,
    /// That something differs from another option.
    Sign,
    /// A level beside its mark.
    Level,
}

/// Rings, then ratios from the greatest down, then values; of all that the view shows.
pub fn tags(view: &Whereabouts, values: &[Labelled]) -> Vec<Tag> {
    let mut tags: Vec<Tag> = rings(view).collect();
    tags.extend(ratios(view));
    tags.extend(values.iter().filter_map(|value| {
        Some(Tag {
            key: format!("value-{}", value.figure.key),
            kind: TagKind::Value,
            at: value.at,
            text: value.text.clone()?,
            label: value.figure.label.clone(),
            owner: None,
            urgent: false,
        })
    }));
    tags
}

fn rings(view: &Whereabouts) -> impl Iterator<Item = Tag> {
    let placed = |(index, finding): (usize, &Finding)| {
        let of_check = || view.check(view.results.checks.get(finding.check?)?);
        let of_owner = || view.element(finding.owner?);
        let own = finding.at.and_then(|at| view.point(finding.owner, at));
        let at = own.or_else(of_check).or_else(of_owner)?;
        Some(Tag {
            key: format!("ring-{}", index + 1),
            kind: TagKind::Ring(index),
            at,
            text: (index + 1).to_string(),
            label: say!("Note {}: {}", index + 1, told(&finding.text)),
            owner: finding.owner,
            urgent: finding.severity != Severity::Note,
        })
    };
    view.results.findings.iter().enumerate().filter_map(placed)
}

fn ratios(view: &Whereabouts) -> Vec<Tag> {
    let mut members: BTreeMap<(Id, &str), &Check> = BTreeMap::new();
    for check in view.results.checks.iter().filter(|check| view.shows(check.owner)) {
        let worst = members.entry((check.owner, &check.member)).or_insert(check);
        if check.ratio.total_cmp(&worst.ratio).is_gt() {
            *worst = check;
        }
    }
    let names = equipment::names(view.model);
    let mut tags = Vec::new();
    for name in names.iter().filter(|name| view.shows(name.id)) {
        let Some(worst) = view.results.governing_of(name.id) else {
            tags.extend(unchecked(view, name));
            continue;
        };
        tags.extend(tag(view, worst, format!("ratio-{}", name.mark), Some(&name.mark)));
        let others = members.iter().filter(|((owner, member), _)| *owner == name.id && **member != worst.member);
        let key = |check: &Check| format!("ratio-{}", check.member.replace(' ', "-"));
        tags.extend(others.filter_map(|(_, check)| tag(view, check, key(check), None)));
    }
    let rank = |tag: &Tag| match tag.kind {
        TagKind::Governing(ratio) => (0, -ratio),
        TagKind::Unchecked => (0, 0.0),
        TagKind::Member(ratio) => (1, -ratio),
        TagKind::Ring(_) | TagKind::Value | TagKind::Level | TagKind::Sign => (2, 0.0),
    };
    sort(&mut tags, |a, b| rank(a).0.cmp(&rank(b).0).then(rank(a).1.total_cmp(&rank(b).1)));
    tags
}

fn unchecked(view: &Whereabouts, name: &equipment::Name) -> Option<Tag> {
    Some(Tag {
        key: format!("ratio-{}", name.mark),
        kind: TagKind::Unchecked,
        at: view.element(name.id)?,
        text: name.mark.clone(),
        label: say!("{}, not checked", name.label),
        owner: Some(name.id),
        urgent: false,
    })
}

fn tag(view: &Whereabouts, check: &Check, key: String, mark: Option<&str>) -> Option<Tag> {
    let ratio = tone::printed(check.ratio);
    Some(Tag {
        key,
        kind: if mark.is_some() { TagKind::Governing(check.ratio) } else { TagKind::Member(check.ratio) },
        at: view.check(check)?,
        text: mark.map_or(ratio.clone(), |mark| format!("{mark} {ratio}")),
        label: match mark {
            // What is written comes first: it is what a user says who speaks to the page.
            Some(mark) => {
                say!("{} {}: {}, {}, ratio {}", mark, ratio, member(&check.member), told(&check.place), ratio)
            }
            None => say!("{}, {}, ratio {}", member(&check.member), told(&check.place), ratio),
        },
        owner: Some(check.owner),
        urgent: mark.is_some() && tone::exceeds(check.ratio),
    })
}
