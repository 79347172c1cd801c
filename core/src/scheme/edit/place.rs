//! Places an excerpt: on matching faces, in the mirror, or on one chosen face.

use super::excerpt::{Between, Excerpt, OnFace, Standing, check_free, check_levels, falsework_under, kind, shutter_on};
use super::falsework::{check_under, falsework_mut, in_order, soffit_extent};
use super::{EditError, opening, shutters};
use crate::layout::concrete::faces;
use crate::model::Face;
use crate::scheme::{FaceRef, Falsework, Id, LegLine, Opening, Scheme, Shutter, TieEnd};
use std::collections::BTreeMap;

/// Leg lines this near stand at the same place, m.
const SAME_M: f64 = 1e-3;

/// Where the copies go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Onto {
    /// On the faces that match those they were copied from.
    Matching,
    /// On the faces that lie there in a mirror at this x.
    Mirror(f64),
    /// On this face.
    Face(FaceRef),
}

/// Adds copies of all elements, or refuses and adds none: the caller drops the scheme.
pub(super) fn place(scheme: &mut Scheme, excerpt: &Excerpt, onto: Onto) -> Result<(), EditError> {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    let mut placing = Placing { faces: &faces, onto, ids: BTreeMap::new() };
    for item in &excerpt.items {
        if !scheme.items.iter().any(|own| own.code == item.code) {
            scheme.items.push(item.clone());
        }
    }
    excerpt.shutters.iter().try_for_each(|shutter| placing.shutter(scheme, shutter))?;
    excerpt.ties.iter().try_for_each(|tie| placing.row(scheme, tie))?;
    excerpt.falsework.iter().try_for_each(|falsework| placing.falsework(scheme, falsework))?;
    excerpt.leg_lines.iter().try_for_each(|line| placing.leg_line(scheme, line))?;
    excerpt.openings.iter().try_for_each(|opening| placing.opening(scheme, opening))?;
    for repeat in &excerpt.repeats {
        let mut copy = repeat.clone();
        let own = std::iter::once(&mut copy.of).chain(&mut copy.members);
        let mut own = own.chain(copy.moved.iter_mut().map(|moved| &mut moved.id));
        let all = own.all(|id| placing.ids.get(id).map(|fresh| *id = *fresh).is_some());
        if all {
            let turned = matches!(onto, Onto::Mirror(_)) && scheme.falsework.iter().any(|of| of.id == copy.of);
            copy.moved.iter_mut().filter(|_| turned).for_each(|moved| moved.at = 1.0 - moved.at);
            scheme.repeats.push(copy);
        }
    }
    Ok(())
}

struct Placing<'a> {
    faces: &'a [Face],
    onto: Onto,
    /// The copies of what was copied.
    ids: BTreeMap<Id, Id>,
}

impl Placing<'_> {
    /// The face for a copy.
    fn face(&self, scheme: &Scheme, was: &Standing, what: &'static str) -> Result<Face, EditError> {
        let (found, place) = match self.onto {
            Onto::Matching => (
                was.exact(self.faces).or_else(|| was.in_order(scheme, self.faces)),
                "that matches the one it was copied from; choose a face first, then paste",
            ),
            Onto::Mirror(x_m) => {
                (was.mirrored(x_m).exact(self.faces), "at the same place on the other side of the centre line")
            }
            Onto::Face(of) => {
                let face = self.faces.iter().find(|face| face.of == of);
                let wall = |face: &&Face| {
                    let soffit = |kind| kind == super::excerpt::Kind::Soffit;
                    kind(face).is_some_and(|kind| soffit(kind) == soffit(was.kind))
                };
                (face.filter(wall), "of its kind where it was to go")
            }
        };
        found.cloned().ok_or(EditError::NoFace { what, place })
    }

    fn shutter(&mut self, scheme: &mut Scheme, of: &OnFace<Shutter>) -> Result<(), EditError> {
        let face = self.face(scheme, &of.face, "shutter")?;
        if let Some(id) = shutter_on(scheme, &face) {
            return Err(EditError::Occupied { what: "Shutter", id });
        }
        let id = scheme.fresh_id();
        self.ids.insert(of.element.id, id);
        scheme.shutters.push(Shutter { id, face: face.of, ..of.element.clone() });
        Ok(())
    }

    fn row(&mut self, scheme: &mut Scheme, of: &Between) -> Result<(), EditError> {
        let own = of.row.id;
        let end = |was: &Standing, id: Id| match self.ids.get(&id) {
            Some(copy) => Ok(*copy),
            None => {
                let face = self.face(scheme, was, "row of ties")?;
                shutter_on(scheme, &face).ok_or(EditError::NothingThere { what: "row of ties", needs: "shutter" })
            }
        };
        let shutter = end(&of.near, of.row.shutter)?;
        let face = shutters::face_of(scheme, self.faces, shutter)?;
        let z_m = of.row.z_m - of.near.foot() + shutters::levels(face)[0];
        let mut row = of.row.clone();
        (row.id, row.shutter, row.z_m) = (scheme.fresh_id(), shutter, z_m);
        match (self.onto, row.to, &of.far) {
            (Onto::Face(_), TieEnd::Shutter { .. }, _) => {
                shutters::check_level(scheme, self.faces, shutter, z_m)?;
                let usual = shutters::row_at(scheme, self.faces, shutter, z_m)?;
                if matches!(usual.to, TieEnd::Fixed { .. }) {
                    row.item = usual.item;
                }
                row.to = usual.to;
            }
            (_, TieEnd::Shutter { id }, Some(far)) => row.to = TieEnd::Shutter { id: end(far, id)? },
            (_, TieEnd::Shutter { .. }, None) => {
                return Err(EditError::NothingThere { what: "row of ties", needs: "shutter" });
            }
            (_, TieEnd::Fixed { .. }, _) => {}
        }
        check_levels(scheme, self.faces, &row)?;
        check_free(scheme, &row)?;
        self.ids.insert(own, row.id);
        scheme.ties.push(row);
        Ok(())
    }

    fn falsework(&mut self, scheme: &mut Scheme, of: &OnFace<Falsework>) -> Result<(), EditError> {
        let face = self.face(scheme, &of.face, "falsework")?;
        if let Some(id) = falsework_under(scheme, &face) {
            return Err(EditError::Occupied { what: "Falsework", id });
        }
        let mut copy = of.element.clone();
        let id = scheme.fresh_id();
        (copy.id, copy.soffit) = (id, face.of);
        self.ids.insert(of.element.id, id);
        let ([was_left, was_right], [left, right]) = (of.face.extent, soffit_extent(self.faces, &face));
        let scale = if was_right - was_left > SAME_M { (right - left) / (was_right - was_left) } else { 1.0 };
        let gaps: Vec<bool> = copy.leg_lines.iter().map(|line| line.braced).collect();
        for (i, line) in copy.leg_lines.iter_mut().enumerate() {
            let fresh = Id(id.0.saturating_add(1 + i as u32));
            self.ids.insert(line.id, fresh);
            line.id = fresh;
            line.x_m = match self.onto {
                Onto::Mirror(x_m) => {
                    // The gap on the right of a line lies on the left of its image.
                    line.braced = i > 0 && gaps[i - 1];
                    2.0 * x_m - line.x_m
                }
                _ if (scale - 1.0).abs() < 1e-9 => line.x_m - was_left + left,
                _ => left + (line.x_m - was_left) * scale,
            };
        }
        in_order(&mut copy.leg_lines);
        scheme.falsework.push(copy);
        Ok(())
    }

    /// The falsework that a lone line or opening goes into, and its place there.
    fn under(&self, scheme: &Scheme, of: &Standing, what: &'static str) -> Result<(Id, f64), EditError> {
        let face = self.face(scheme, of, what)?;
        let falsework = falsework_under(scheme, &face).ok_or(EditError::NothingThere { what, needs: "falsework" })?;
        Ok((falsework, soffit_extent(self.faces, &face)[0] - of.extent[0]))
    }

    fn leg_line(&mut self, scheme: &mut Scheme, of: &OnFace<LegLine>) -> Result<(), EditError> {
        let (falsework, by) = self.under(scheme, &of.face, "leg line")?;
        let x_m = if let Onto::Mirror(x_m) = self.onto { 2.0 * x_m - of.element.x_m } else { of.element.x_m + by };
        check_under(scheme, falsework, "A leg line", x_m)?;
        let id = scheme.fresh_id();
        let lines = &mut falsework_mut(scheme, falsework)?.leg_lines;
        if let Some(line) = lines.iter().find(|line| (line.x_m - x_m).abs() < SAME_M) {
            return Err(EditError::Occupied { what: "Leg line", id: line.id });
        }
        lines.push(LegLine { id, x_m, braced: false });
        in_order(lines);
        Ok(())
    }

    fn opening(&mut self, scheme: &mut Scheme, of: &OnFace<Opening>) -> Result<(), EditError> {
        let (falsework, by) = self.under(scheme, &of.face, "opening")?;
        let left_m = match self.onto {
            Onto::Mirror(x_m) => 2.0 * x_m - of.element.left_m - of.element.width_m,
            _ => of.element.left_m + by,
        };
        let copy = Opening {
            id: scheme.fresh_id(),
            falsework,
            left_m,
            built_width_m: None,
            built_height_m: None,
            ..of.element.clone()
        };
        opening::put(scheme, copy)
    }
}
