//! Shutters, ties, falsework and openings, drawn from the placed parts.

use super::holding::holding;
use super::{Figure, Path, profile, tone};
use crate::editor::View;
use crate::language::t;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::model::{Model, Part, Role, Solid};
use falsewright_core::results::Results;
use falsewright_core::scheme::Id;
use falsewright_core::sorting::sort;
use std::collections::BTreeMap;

/// From the back of the drawing to the front. A plan shows legs and bases over the beams that they carry, as one cut under
/// the beams would, and of the board only its edges.
fn back_to_front(view: View) -> [Role; 12] {
    use Role::{Base, Brace, Facing, Ledger, Leg, Primary, Prop, Secondary, Stub, Tie, Transfer, Trestle};
    match view {
        View::Section => [Ledger, Brace, Leg, Stub, Trestle, Base, Transfer, Primary, Secondary, Tie, Prop, Facing],
        View::Elevation => [Facing, Secondary, Primary, Tie, Prop, Ledger, Brace, Leg, Stub, Trestle, Base, Transfer],
        View::Plan => [Facing, Secondary, Primary, Transfer, Ledger, Brace, Base, Trestle, Leg, Stub, Tie, Prop],
    }
}

/// One figure for each element of these that has parts. Parts behind each other on the view are drawn once.
pub fn equipment(
    view: View,
    model: &Model,
    results: &Results,
    catalogue: &Catalogue,
    wanted: impl Fn(Id) -> bool,
) -> Vec<Figure> {
    let mut groups: BTreeMap<(Id, Role, &str), Vec<&Part>> = BTreeMap::new();
    for part in model.parts.iter().filter(|part| wanted(part.owner)) {
        groups.entry((part.owner, part.role, &part.mark)).or_default().push(part);
    }
    let mut figures: BTreeMap<Id, Figure> = BTreeMap::new();
    for name in names(model) {
        figures.insert(name.id, Figure::new(format!("{}-{}", name.what, name.mark), name.label, Some(name.id)));
    }
    for role in back_to_front(view) {
        for ((owner, ..), parts) in groups.iter().filter(|((_, of, _), _)| *of == role) {
            let Some(figure) = figures.get_mut(owner) else { continue };
            let ratio = parts.first().and_then(|part| tone::governing(results, part)).map(|check| check.ratio);
            let tone = ratio.map_or("untested", tone::tone);
            figure.stroke(format!("member {} {tone}", role.name()), silhouettes(view, parts, catalogue));
        }
    }
    for row in model.ties.iter().filter(|row| view == View::Section && wanted(row.id)) {
        if let Some(figure) = figures.get_mut(&row.id).filter(|_| row.to.is_none()) {
            figure.stroke("held", holding(row, model));
        }
    }
    for figure in figures.values_mut() {
        if let Some(check) = figure.owner.and_then(|owner| results.governing_of(owner)) {
            figure.label = say!("{}, greatest ratio {}", figure.label, tone::printed(check.ratio));
        }
    }
    let mut ordered: Vec<Figure> = figures.into_values().filter(|figure| !figure.strokes.is_empty()).collect();
    sort(&mut ordered, |a, b| order(view, &a.key).cmp(&order(view, &b.key)));
    ordered
}

/// Outlines of parts as they are drawn in section, those behind each other once.
pub fn outlines(parts: &[&Part], catalogue: &Catalogue) -> String {
    silhouettes(View::Section, parts, catalogue).finish()
}

fn silhouettes(view: View, parts: &[&Part], catalogue: &Catalogue) -> Path {
    let (mut all, mut ends, mut seen) = (Path::default(), Vec::new(), Vec::new());
    for part in parts {
        // To write a shape only to find it there already would be dear.
        let shape = (profile::flat(view, part.solid), part.count, &part.item);
        if !seen.contains(&shape) {
            seen.push(shape);
            all.piece(&mut ends, |path| profile::draw(path, view, part, catalogue.get(&part.item)));
        }
    }
    all
}

/// Falsework lies behind shutters, ties in front of both. From above legs are drawn over the beams of an opening, from
/// outside the plates of ties over props.
fn order(view: View, key: &str) -> usize {
    let order = match view {
        View::Plan => ["falsework", "opening", "leg", "shutter", "tie"],
        View::Elevation => ["falsework", "opening", "shutter", "tie-B", "tie-T"],
        View::Section => ["falsework", "leg", "opening", "shutter", "tie"],
    };
    order.iter().position(|what| key.starts_with(what)).unwrap_or(0)
}

/// What an element is called.
pub struct Name {
    /// The element.
    pub id: Id,
    /// First part of its test id.
    pub what: &'static str,
    /// Its mark.
    pub mark: String,
    /// In words.
    pub label: String,
}

/// The names of all placed elements.
pub fn names(model: &Model) -> Vec<Name> {
    let name =
        |id, what, mark: &str, words: &str| Name { id, what, mark: mark.to_owned(), label: format!("{words} {mark}") };
    let mut names = Vec::new();
    names.extend(model.shutters.iter().map(|placed| name(placed.id, "shutter", &placed.mark, t("Wall shutter"))));
    for row in &model.ties {
        let words = if row.mark.starts_with('T') { t("Row of ties") } else { t("Row of props") };
        names.push(name(row.id, "tie", &row.mark, words));
    }
    for falsework in &model.falsework {
        names.push(name(falsework.id, "falsework", &falsework.mark, t("Soffit falsework")));
        if let Some(opening) = &falsework.opening {
            names.push(name(opening.drawn.id, "opening", &opening.mark, t("Access opening")));
        }
        for leg in &falsework.legs {
            if names.iter().all(|known| known.id != leg.owner) {
                names.push(name(leg.owner, "leg", leg.mark.trim_end_matches('s'), t("Line of legs")));
            }
        }
    }
    names
}

/// What an element is called, with its mark.
pub fn name_of(model: &Model, id: Id) -> Option<String> {
    names(model).into_iter().find(|name| name.id == id).map(|name| name.label)
}

/// Where the first part of an element is, `[x, y, z]`.
pub fn place_of(model: &Model, id: Id) -> Option<[f64; 3]> {
    let part = model.parts.iter().find(|part| part.owner == id)?;
    Some(match part.solid {
        Solid::Bar { from, to, .. } => [0, 1, 2].map(|axis| (from[axis] + to[axis]) / 2.0),
        Solid::Sheet { from, to, length_m, .. } => {
            let middle = from.lerp(to, 0.5);
            [middle.x, length_m / 2.0, middle.z]
        }
        Solid::Plate { centre, .. } => centre,
    })
}
