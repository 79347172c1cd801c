//! What is written at members: ratios, numbers of findings, values of diagrams.

use super::forces::Labelled;
use super::{equipment, tone};
use crate::language::{member, told};
use falsewright_core::geometry::Point;
use falsewright_core::model::Model;
use falsewright_core::results::{Check, Finding, Results, Severity};
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
}

/// Rings, then ratios from the greatest down, then values.
pub fn tags(model: &Model, results: &Results, values: &[Labelled]) -> Vec<Tag> {
    let mut tags: Vec<Tag> = rings(model, results).collect();
    tags.extend(ratios(model, results));
    tags.extend(values.iter().map(|value| Tag {
        key: format!("value-{}", value.figure.key),
        kind: TagKind::Value,
        at: value.at,
        text: value.text.clone(),
        label: value.figure.label.clone(),
        owner: None,
        urgent: false,
    }));
    tags
}

fn rings(model: &Model, results: &Results) -> impl Iterator<Item = Tag> {
    let placed = |(index, finding): (usize, &Finding)| {
        let of_check = || Some(results.checks.get(finding.check?)?.at);
        let of_owner = || equipment::place_of(model, finding.owner?);
        let at = finding.at.or_else(of_check).or_else(of_owner)?;
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
    results.findings.iter().enumerate().filter_map(placed)
}

fn ratios(model: &Model, results: &Results) -> Vec<Tag> {
    let mut members: BTreeMap<(Id, &str), &Check> = BTreeMap::new();
    for check in &results.checks {
        let worst = members.entry((check.owner, &check.member)).or_insert(check);
        if check.ratio.total_cmp(&worst.ratio).is_gt() {
            *worst = check;
        }
    }
    let names = equipment::names(model);
    let mut tags = Vec::new();
    for name in &names {
        let Some(worst) = results.governing_of(name.id) else {
            tags.extend(unchecked(model, name));
            continue;
        };
        tags.push(tag(worst, format!("ratio-{}", name.mark), Some(&name.mark)));
        let others = members.iter().filter(|((owner, member), _)| *owner == name.id && **member != worst.member);
        tags.extend(others.map(|(_, check)| tag(check, format!("ratio-{}", check.member.replace(' ', "-")), None)));
    }
    let rank = |tag: &Tag| match tag.kind {
        TagKind::Governing(ratio) => (0, -ratio),
        TagKind::Unchecked => (0, 0.0),
        TagKind::Member(ratio) => (1, -ratio),
        TagKind::Ring(_) | TagKind::Value => (2, 0.0),
    };
    sort(&mut tags, |a, b| rank(a).0.cmp(&rank(b).0).then(rank(a).1.total_cmp(&rank(b).1)));
    tags
}

fn unchecked(model: &Model, name: &equipment::Name) -> Option<Tag> {
    Some(Tag {
        key: format!("ratio-{}", name.mark),
        kind: TagKind::Unchecked,
        at: equipment::place_of(model, name.id)?,
        text: name.mark.clone(),
        label: say!("{}, not checked", name.label),
        owner: Some(name.id),
        urgent: false,
    })
}

fn tag(check: &Check, key: String, mark: Option<&str>) -> Tag {
    let ratio = tone::printed(check.ratio);
    Tag {
        key,
        kind: if mark.is_some() { TagKind::Governing(check.ratio) } else { TagKind::Member(check.ratio) },
        at: check.at,
        text: mark.map_or(ratio.clone(), |mark| format!("{mark} {ratio}")),
        label: say!("{}, {}, ratio {}", member(&check.member), told(&check.place), ratio),
        owner: Some(check.owner),
        urgent: mark.is_some() && tone::exceeds(check.ratio),
    }
}
