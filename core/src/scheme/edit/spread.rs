//! Duplicates, mirror images, and shutters on the opposite face.

use super::excerpt::{Excerpt, Standing, falsework_under, shutter_on};
use super::place::{Onto, place};
use super::{EditError, falsework, opening, shutters};
use crate::geometry::{Edge, Side};
use crate::layout::concrete::faces;
use crate::layout::takes_shutter;
use crate::model::{Face, FaceKind};
use crate::scheme::{Id, LegLine, Scheme, TieRow};

/// A lone leg line's duplicate stands this far from it, and a lone row's, m.
const APART_M: f64 = 0.6;
/// Nothing is put nearer to its neighbours, m.
const LEAST_APART_M: f64 = 0.1;

/// Copies elements to the other side of the section's centre line.
pub(super) fn mirror(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let excerpt = Excerpt::of(scheme, ids)?;
    let x_m = centre_line(scheme).ok_or(EditError::NothingTo { what: "mirrored" })?;
    place(scheme, &excerpt, Onto::Mirror(x_m))
}

/// Copies shutters, with the chosen rows on them, to the other face of their walls.
pub(super) fn opposite(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let chosen = chosen_shutters(scheme, ids);
    if chosen.is_empty() {
        return Err(EditError::NothingTo { what: "copied to the opposite face" });
    }
    for id in chosen {
        let face = shutters::face_of(scheme, &faces, id)?;
        let place = "on the other side of its concrete";
        let other = across(scheme, &faces, face).ok_or(EditError::NoFace { what: "shutter", place })?;
        if let Some(id) = shutter_on(scheme, other) {
            return Err(EditError::Occupied { what: "Shutter", id });
        }
        copy_shutter(scheme, ids, id, other)?;
    }
    Ok(())
}

/// Puts another of each element beside it: shutters and falsework on the next free face like theirs, rows and leg lines
/// halfway to the next or as far apart as the last two.
pub(super) fn duplicate(scheme: &mut Scheme, ids: &[Id]) -> Result<(), EditError> {
    let chosen = chosen_shutters(scheme, ids);
    let rows: Vec<TieRow> = scheme.ties.iter().filter(|row| ids.contains(&row.id)).cloned().collect();
    let whole: Vec<Id> = scheme.falsework.iter().map(|of| of.id).filter(|id| ids.contains(id)).collect();
    let lone = scheme.falsework.iter().filter(|of| !whole.contains(&of.id));
    let lines: Vec<(Id, LegLine)> = lone
        .flat_map(|of| of.leg_lines.iter().map(|line| (of.id, *line)))
        .filter(|of| ids.contains(&of.1.id))
        .collect();
    let openings: Vec<Id> = scheme.openings.iter().map(|of| of.id).filter(|id| ids.contains(id)).collect();
    if chosen.len() + rows.len() + whole.len() + lines.len() + openings.len() == 0 {
        return Err(EditError::NothingTo { what: "duplicated" });
    }
    let faces = faces(&scheme.section, scheme.ground.level_m);
    for id in &chosen {
        let face = shutters::face_of(scheme, &faces, *id)?;
        let free = |face: &&Face| shutter_on(scheme, face).is_none();
        let to = next_faces(scheme, &faces, face).into_iter().find(free);
        copy_shutter(scheme, ids, *id, to.ok_or(EditError::NoneFree { what: "shutter", id: *id })?)?;
    }
    for row in rows.iter().filter(|row| !chosen.contains(&row.shutter)) {
        duplicate_row(scheme, &faces, row)?;
    }
    for id in &whole {
        let excerpt = Excerpt::of(scheme, &[*id])?;
        let mut soffits = faces.iter().filter(|face| face.kind == FaceKind::Soffit);
        let to = soffits.find(|face| falsework_under(scheme, face).is_none());
        place(scheme, &excerpt, Onto::Face(to.ok_or(EditError::NoneFree { what: "falsework", id: *id })?.of))?;
    }
    for (of, line) in &lines {
        duplicate_line(scheme, *of, *line)?;
    }
    for id in &openings {
        let excerpt = Excerpt::of(scheme, &[*id])?;
        let free = |id: Id| opening::through(scheme, id).is_none();
        let to = scheme.falsework.iter().find(|of| free(of.id)).map(|of| of.soffit);
        place(scheme, &excerpt, Onto::Face(to.ok_or(EditError::NoneFree { what: "opening", id: *id })?))?;
    }
    Ok(())
}

/// The middle of the outline's width.
fn centre_line(scheme: &Scheme) -> Option<f64> {
    let xs = || scheme.section.outline.iter().map(|corner| corner.x_m);
    let (low, high) = (xs().min_by(f64::total_cmp)?, xs().max_by(f64::total_cmp)?);
    Some((low + high) / 2.0)
}

fn chosen_shutters(scheme: &Scheme, ids: &[Id]) -> Vec<Id> {
    scheme.shutters.iter().map(|shutter| shutter.id).filter(|id| ids.contains(id)).collect()
}

fn copy_shutter(scheme: &mut Scheme, ids: &[Id], shutter: Id, to: &Face) -> Result<(), EditError> {
    let rows = scheme.ties.iter().filter(|row| row.shutter == shutter && ids.contains(&row.id)).map(|row| row.id);
    let with_rows: Vec<Id> = std::iter::once(shutter).chain(rows).collect();
    let excerpt = Excerpt::of(scheme, &with_rows)?;
    place(scheme, &excerpt, Onto::Face(to.of))
}

/// Faces like this one, the likeliest first: the other side of the wall, the other side of the section, other pours.
fn next_faces<'a>(scheme: &Scheme, faces: &'a [Face], face: &Face) -> Vec<&'a Face> {
    let image = centre_line(scheme).zip(Standing::of(scheme, faces, face));
    let image = image.and_then(|(x_m, standing)| standing.mirrored(x_m).exact(faces));
    let walls = faces.iter().filter(|face| takes_shutter(face));
    let same_edge = walls.filter(|other| other.of.corner == face.of.corner && other.of.cut == face.of.cut);
    across(scheme, faces, face).into_iter().chain(image).chain(same_edge).filter(|other| other.of != face.of).collect()
}

/// The face on the other side of the concrete, at the middle of a wall face.
fn across<'a>(scheme: &Scheme, faces: &'a [Face], face: &Face) -> Option<&'a Face> {
    let [bottom, top] = shutters::levels(face);
    let z = (bottom + top) / 2.0;
    let x = Edge::new(face.from, face.to).x_at(z);
    let inward = -face.normal.x.signum();
    let spans = scheme.section.boundary().spans_at(z, Side::Before);
    let ends = spans.iter().flatten().filter(|end| (**end - x) * inward > LEAST_APART_M / 10.0);
    let end = ends.min_by(|a, b| (*a - x).abs().total_cmp(&(*b - x).abs()))?;
    faces.iter().find(|other| {
        let [low, high] = shutters::levels(other);
        takes_shutter(other)
            && other.of.pour == face.of.pour
            && other.normal.x * face.normal.x < 0.0
            && (low..=high).contains(&z)
            && (Edge::new(other.from, other.to).x_at(z) - end).abs() < LEAST_APART_M / 10.0
    })
}

fn duplicate_row(scheme: &mut Scheme, faces: &[Face], row: &TieRow) -> Result<(), EditError> {
    let same = |other: &&TieRow| other.shutter == row.shutter && other.to == row.to;
    let levels: Vec<f64> = scheme.ties.iter().filter(same).map(|other| other.z_m).collect();
    let fits = |z_m: f64| {
        let copy = TieRow { z_m, ..row.clone() };
        super::excerpt::check_levels(scheme, faces, &copy).is_ok()
    };
    let z_m = beside(row.z_m, &levels, fits).ok_or(EditError::NoneFree { what: "row of ties", id: row.id })?;
    let id = scheme.fresh_id();
    scheme.ties.push(TieRow { id, z_m, ..row.clone() });
    Ok(())
}

fn duplicate_line(scheme: &mut Scheme, of: Id, line: LegLine) -> Result<(), EditError> {
    let lines = &falsework::falsework_mut(scheme, of)?.leg_lines;
    let places: Vec<f64> = lines.iter().map(|line| line.x_m).collect();
    let fits = |x_m: f64| falsework::check_under(scheme, of, "A leg line", x_m).is_ok();
    let x_m = beside(line.x_m, &places, fits).ok_or(EditError::NoneFree { what: "leg line", id: line.id })?;
    falsework::add_line(scheme, of, x_m)
}

/// Halfway to the next place beyond; past the last one as far as the last two are apart, else halfway to the one before.
fn beside(place: f64, places: &[f64], fits: impl Fn(f64) -> bool) -> Option<f64> {
    let gap = |toward: f64| {
        let beyond = places.iter().map(|other| (other - place) * toward).filter(|gap| *gap > 1e-6);
        beyond.min_by(f64::total_cmp)
    };
    let (next, last) = (gap(1.0), gap(-1.0));
    let room = |by: f64| (by.abs() >= LEAST_APART_M).then_some(place + by).filter(|place| fits(*place));
    match (next, last) {
        (Some(next), _) => room(next / 2.0),
        (None, Some(last)) => room(last).or_else(|| room(-last / 2.0)),
        (None, None) => room(APART_M).or_else(|| room(-APART_M)),
    }
}
