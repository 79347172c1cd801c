//! What a box drawn over the sheet takes, and what all is.

use super::places::Places;
use super::{Bounds, Target};
use falsewright_core::geometry::Point;

/// Everything of the equipment wholly inside a box, or touched by it; where that is nothing, corners and joints. Falsework
/// that is only touched is not taken: its leg lines are.
pub fn in_box(places: &Places, bounds: Bounds, inside: bool) -> Vec<Target> {
    let within = |other: &Bounds| {
        bounds.min.x <= other.min.x
            && other.max.x <= bounds.max.x
            && bounds.min.z <= other.min.z
            && other.max.z <= bounds.max.z
    };
    let touched = |other: &Bounds| {
        bounds.min.x <= other.max.x
            && other.min.x <= bounds.max.x
            && bounds.min.z <= other.max.z
            && other.min.z <= bounds.max.z
    };
    let taken = |(target, of): (Target, Bounds)| {
        let whole = inside || matches!(target, Target::Falsework(_));
        (if whole { within(&of) } else { touched(&of) }).then_some(target)
    };
    let found: Vec<Target> = equipment(places).into_iter().filter_map(taken).collect();
    let found = if found.is_empty() { section(places).into_iter().filter_map(taken).collect() } else { found };
    without_own_lines(places, found)
}

/// All equipment; where there is none or all of it is selected, corners and joints too.
pub fn all(places: &Places, chosen: &[Target]) -> Vec<Target> {
    let equipment: Vec<Target> = equipment(places).into_iter().map(|(target, _)| target).collect();
    let mut found = without_own_lines(places, equipment);
    if found.iter().all(|target| chosen.contains(target)) {
        found.extend(section(places).into_iter().map(|(target, _)| target));
    }
    found
}

fn equipment(places: &Places) -> Vec<(Target, Bounds)> {
    let scheme = places.scheme;
    let line = |ends: Option<[Point; 2]>| ends.and_then(Bounds::around);
    let shutters = scheme.shutters.iter().map(|of| (Target::Shutter(of.id), places.shutter_bounds(of)));
    let rows = scheme.ties.iter().map(|row| (Target::TieRow(row.id), line(places.row_line(row))));
    let falsework = scheme.falsework.iter().map(|of| (Target::Falsework(of.id), places.falsework_bounds(of)));
    let lines = scheme
        .falsework
        .iter()
        .flat_map(|of| of.leg_lines.iter().map(move |leg| (Target::LegLine(leg.id), line(places.leg(of, leg)))));
    let openings = scheme.openings.iter().map(|of| (Target::Opening(of.id), places.way(of)));
    let all = shutters.chain(rows).chain(falsework).chain(lines).chain(openings);
    all.filter_map(|(target, bounds)| Some((target, bounds?))).collect()
}

fn section(places: &Places) -> Vec<(Target, Bounds)> {
    if !places.seen.is_section() {
        return Vec::new();
    }
    let section = &places.scheme.section;
    let corners = section.outline.iter().chain(section.cells.iter().flat_map(|cell| &cell.corners));
    let corners =
        corners.map(|corner| (Target::Corner(corner.id), Bounds { min: corner.point(), max: corner.point() }));
    let Some(whole) = places.section() else { return corners.collect() };
    let joints = section.joints.iter().map(|joint| {
        let at = |x: f64| Point::new(x, joint.z_m);
        (Target::Joint(joint.id), Bounds { min: at(whole.min.x), max: at(whole.max.x) })
    });
    corners.chain(joints).collect()
}

/// Leg lines go with their falsework.
fn without_own_lines(places: &Places, mut found: Vec<Target>) -> Vec<Target> {
    let of = |id| places.leg_line(id).map(|(falsework, _)| Target::Falsework(falsework.id));
    let whole: Vec<Target> = found.iter().copied().filter(|target| matches!(target, Target::Falsework(_))).collect();
    found.retain(|target| !matches!(target, Target::LegLine(id) if of(*id).is_some_and(|of| whole.contains(&of))));
    found
}
