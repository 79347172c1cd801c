//! Keeps equipment on its faces when the section changes under it.

use super::repeats::{self, is_regular};
use crate::geometry::Point;
use crate::layout::concrete::faces;
use crate::model::Face;
use crate::scheme::{FaceRef, Falsework, Id, Scheme, Shutter, TieEnd};
use crate::sorting::sort;

/// Moves equipment along with its faces; what has lost its face goes, with all that hangs on it.
pub(super) fn follow(before: &Scheme, after: &mut Scheme) {
    let old = faces(&before.section, before.ground.level_m);
    let new = faces(&after.section, after.ground.level_m);
    let joints = |scheme: &Scheme| {
        let mut ids: Vec<Id> = scheme.section.joints.iter().map(|joint| joint.id).collect();
        sort(&mut ids, Id::cmp);
        ids
    };
    let heirs = Heirs { old: &old, new: &new, same_pours: joints(before) == joints(after) };
    keep_shutters(&heirs, after);
    keep_falsework(&heirs, after);
    drop_orphans(after);
}

/// Removes ties without shutters and openings without falsework.
pub(super) fn drop_orphans(scheme: &mut Scheme) {
    let Scheme { shutters, ties, falsework, openings, .. } = scheme;
    let stands = |id| shutters.iter().any(|shutter: &Shutter| shutter.id == id);
    ties.retain(|row| stands(row.shutter) && !matches!(row.to, TieEnd::Shutter { id } if !stands(id)));
    openings.retain(|opening| falsework.iter().any(|f: &Falsework| f.id == opening.falsework));
    repeats::prune(scheme);
}

fn keep_shutters(heirs: &Heirs, scheme: &mut Scheme) {
    let Scheme { shutters, ties, repeats, .. } = scheme;
    let mut found = heirs.of(shutters.iter().map(|shutter| shutter.face)).into_iter();
    shutters.retain_mut(|shutter| {
        let Some((was, is)) = found.next().flatten() else { return false };
        shutter.face = is.of;
        let rise = translation(was, is).map_or(0.0, |by| by.z);
        let [bottom, top] = levels(is);
        let reach = bottom - shutter.below_m..=top + shutter.above_m;
        ties.iter_mut().filter(|row| row.shutter == shutter.id).for_each(|row| row.z_m += rise);
        ties.retain(|row| {
            let holds = row.shutter == shutter.id || row.to == TieEnd::Shutter { id: shutter.id };
            !holds || is_regular(repeats, row.id) || reach.contains(&row.z_m)
        });
        true
    });
}

fn keep_falsework(heirs: &Heirs, scheme: &mut Scheme) {
    let Scheme { falsework, openings, repeats, .. } = scheme;
    let mut found = heirs.of(falsework.iter().map(|falsework| falsework.soffit)).into_iter();
    falsework.retain_mut(|falsework| {
        let Some((was, is)) = found.next().flatten() else { return false };
        falsework.soffit = is.of;
        if let Some(by) = translation(was, is) {
            falsework.leg_lines.iter_mut().for_each(|line| line.x_m += by.x);
            let own = openings.iter_mut().filter(|opening| opening.falsework == falsework.id);
            own.for_each(|opening| opening.left_m += by.x);
        }
        let [left, right] = super::soffit_extent(heirs.new, is);
        falsework.leg_lines.retain(|line| is_regular(repeats, line.id) || (left <= line.x_m && line.x_m <= right));
        openings.retain(|opening| {
            opening.falsework != falsework.id || (left <= opening.left_m && opening.left_m + opening.width_m <= right)
        });
        true
    });
}

/// Which face takes the place of which.
struct Heirs<'a> {
    old: &'a [Face],
    new: &'a [Face],
    /// No joint was added or removed: a face stays in its pour.
    same_pours: bool,
}

impl<'a> Heirs<'a> {
    /// For each face that equipment stands on: what it was and what it is now. Where two become one, the larger has it.
    fn of(&self, faces: impl Iterator<Item = FaceRef>) -> Vec<Option<(&'a Face, &'a Face)>> {
        let found: Vec<_> = faces.map(|of| self.heir(of)).collect();
        let keeps = |i: usize, (was, is): &(&Face, &Face)| {
            let rivals = found.iter().enumerate().filter_map(|(j, rival)| rival.map(|rival| (j, rival)));
            rivals.filter(|(j, rival)| *j != i && rival.1.of == is.of).all(|(j, rival)| {
                let (own, other) = (shared(was, is), shared(rival.0, rival.1));
                own > other || (own == other && i < j)
            })
        };
        found.iter().enumerate().map(|(i, heir)| heir.filter(|heir| keeps(i, heir))).collect()
    }

    /// The face of old and the one of the same edge that covers most of it now.
    fn heir(&self, of: FaceRef) -> Option<(&'a Face, &'a Face)> {
        let was = self.old.iter().find(|face| face.of == of)?;
        let same_edge = || {
            let edge = |face: &&Face| face.of.corner == of.corner && face.of.cut == of.cut && face.kind == was.kind;
            self.new.iter().filter(edge)
        };
        let own = same_edge().find(|face| face.of == of && self.same_pours);
        let largest = || same_edge().max_by(|a, b| shared(was, a).total_cmp(&shared(was, b)));
        own.or_else(largest).map(|is| (was, is))
    }
}

/// Height that two faces share.
fn shared(was: &Face, is: &Face) -> f64 {
    let ([a, b], [c, d]) = (levels(was), levels(is));
    b.min(d) - a.max(c)
}

fn levels(face: &Face) -> [f64; 2] {
    [face.from.z.min(face.to.z), face.from.z.max(face.to.z)]
}

/// By how much a face has moved, if it only moved.
fn translation(was: &Face, is: &Face) -> Option<Point> {
    let (from, to) = (is.from - was.from, is.to - was.to);
    ((from - to).length() < 1e-9).then_some(from)
}
