//! Differences on the drawing. Parts are the same where role, item and place are, whatever element they belong to.

use super::Print;
use crate::canvas::paint::{Figure, Name, names, outlines};
use crate::language::{key, t};
use falsewright_core::geometry::Point;
use falsewright_core::model::{Part, Role, Solid};
use falsewright_core::scheme::Id;
use std::collections::{BTreeMap, BTreeSet};

/// How something differs from what another option has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DifferenceKind {
    /// The other option has no such element.
    Only,
    /// The other option has it in another place, size or item.
    Differs,
}

impl DifferenceKind {
    /// The sign on the drawing.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Only => "+",
            Self::Differs => "≠",
        }
    }

    /// In words, behind a name; to be looked up.
    pub fn words(self) -> &'static str {
        match self {
            Self::Only => key("only in this option"),
            Self::Differs => key("differs from the other option"),
        }
    }
}

/// Something that differs, and where it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// Unique among those of one option.
    pub key: String,
    /// How it differs.
    pub kind: DifferenceKind,
    /// What it is called.
    pub name: String,
    /// Where its sign stands.
    pub at: Point,
    /// Path data of what differs, m.
    pub d: String,
}

/// What `this` has that `other` has not, or has otherwise.
pub fn differences(this: &Print, other: &Print) -> Vec<Difference> {
    let mut all: Vec<Difference> = this.figures.iter().filter_map(|figure| of_figure(figure, &other.figures)).collect();
    all.extend(of_parts(this, other));
    all
}

/// Role, item, number and place of a part, in tenths of a millimetre.
type Fingerprint<'a> = (Role, &'a str, u32, [i64; 9]);

fn fingerprint(part: &Part) -> Fingerprint<'_> {
    let values: [f64; 9] = match part.solid {
        Solid::Bar { from, to, size_m, breadth_m } => {
            [from[0], from[1], from[2], to[0], to[1], to[2], size_m[0], size_m[1], breadth_m]
        }
        Solid::Sheet { from, to, outward, thickness_m, length_m } => {
            [from.x, from.z, to.x, to.z, outward, thickness_m, length_m, 0.0, 0.0]
        }
        Solid::Plate { centre, width_m, length_m, thickness_m } => {
            [centre[0], centre[1], centre[2], width_m, length_m, thickness_m, 0.0, 0.0, 0.0]
        }
    };
    (part.role, &part.item, part.count, values.map(|value| libm::round(value * 1e4) as i64))
}

fn of_parts(this: &Print, other: &Print) -> Vec<Difference> {
    let (model, others) = (&this.worked.design.model, &other.worked.design.model);
    let mut there = BTreeSet::new();
    for part in &others.parts {
        there.insert(fingerprint(part));
    }
    let mut apart: BTreeMap<Id, Vec<&Part>> = BTreeMap::new();
    for part in model.parts.iter().filter(|part| !there.contains(&fingerprint(part))) {
        apart.entry(part.owner).or_default().push(part);
    }
    let (known, others) = (names(model), names(others));
    let find =
        |names: &[Name], id: Id| names.iter().find(|name| name.id == id).map(|name| (name.what, name.label.clone()));
    let difference = |(owner, parts): (Id, Vec<&Part>)| {
        let (what, name) = find(&known, owner)?;
        // The same id of another kind of thing is another drawing's.
        let same = find(&others, owner).is_some_and(|(other, _)| other == what);
        let kind = if same { DifferenceKind::Differs } else { DifferenceKind::Only };
        let at = middle(parts.first()?);
        Some(Difference { key: format!("element-{owner}"), kind, name, at, d: outlines(&parts, &this.catalogue) })
    };
    apart.into_iter().filter_map(difference).collect()
}

fn middle(part: &Part) -> Point {
    match part.solid {
        Solid::Bar { from, to, .. } => Point::new((from[0] + to[0]) / 2.0, (from[2] + to[2]) / 2.0),
        Solid::Sheet { from, to, .. } => from.lerp(to, 0.5),
        Solid::Plate { centre, .. } => Point::new(centre[0], centre[2]),
    }
}

/// Concrete, joints, ground and clear ways are told apart by their lines; equipment is by its parts.
fn of_figure(figure: &Figure, others: &[Figure]) -> Option<Difference> {
    let is_line =
        |class: &str| class.starts_with("concrete") || matches!(class, "joint" | "ground-line" | "way" | "way short");
    let lines = |figure: &Figure| {
        let lines = figure.strokes.iter().filter(|stroke| is_line(&stroke.class));
        lines
            .flat_map(|stroke| stroke.d.split_inclusive('Z').map(str::to_owned).collect::<Vec<_>>())
            .collect::<Vec<_>>()
    };
    let other = others.iter().find(|other| other.key == figure.key);
    let there = other.map(lines).unwrap_or_default();
    let apart: Vec<String> = lines(figure).into_iter().filter(|line| !there.contains(line)).collect();
    let at = first_point(apart.first()?)?;
    let kind = if other.is_some() { DifferenceKind::Differs } else { DifferenceKind::Only };
    let name = name_of(&figure.key);
    Some(Difference { key: figure.key.clone(), kind, name, at, d: apart.concat() })
}

fn name_of(key: &str) -> String {
    match key.split_once('-') {
        Some(("pour", mark)) => say!("Pour {}", mark),
        Some(("joint", mark)) => say!("Construction joint {}", mark),
        Some(("way", mark)) => say!("Clear way {}", mark),
        None if key == "ground" => t("Ground").to_owned(),
        _ => t("Section as drawn").to_owned(),
    }
}

/// The first point of path data.
fn first_point(d: &str) -> Option<Point> {
    let first = d.trim_start_matches('M').split(['L', 'Z', 'M']).next()?;
    let (x, z) = first.split_once(' ')?;
    Some(Point::new(x.parse().ok()?, z.parse().ok()?))
}
