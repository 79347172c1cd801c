//! Keeps equipment on its faces when the section changes under it.

use crate::layout::concrete::faces;
use crate::model::Face;
use crate::scheme::{FaceRef, Falsework, Scheme, Shutter};

/// Moves equipment along with its faces; what has lost its face goes, with all that hangs on it.
pub(super) fn follow(before: &Scheme, after: &mut Scheme) {
    let old = faces(&before.section, before.ground.level_m);
    let new = faces(&after.section, after.ground.level_m);
    keep_shutters(&old, &new, after);
    keep_falsework(&old, &new, after);
    drop_orphans(after);
}

/// Removes ties without shutters and openings without falsework.
pub(super) fn drop_orphans(scheme: &mut Scheme) {
    let Scheme { shutters, ties, falsework, openings, .. } = scheme;
    let stands = |id| shutters.iter().any(|shutter: &Shutter| shutter.id == id);
    ties.retain(|row| stands(row.shutter) && !matches!(row.to, crate::scheme::TieEnd::Shutter { id } if !stands(id)));
    openings.retain(|opening| falsework.iter().any(|f: &Falsework| f.id == opening.falsework));
}

fn keep_shutters(old: &[Face], new: &[Face], scheme: &mut Scheme) {
    let mut taken: Vec<FaceRef> = Vec::new();
    let Scheme { shutters, ties, .. } = scheme;
    shutters.retain_mut(|shutter| {
        let Some((was, is)) = heir(old, new, shutter.face).filter(|(_, is)| !taken.contains(&is.of)) else {
            return false;
        };
        taken.push(is.of);
        shutter.face = is.of;
        let rise = translation(was, is).map_or(0.0, |by| by.z);
        let [bottom, top] = levels(is);
        let reach = bottom - shutter.below_m..=top + shutter.above_m;
        ties.iter_mut().filter(|row| row.shutter == shutter.id).for_each(|row| row.z_m += rise);
        ties.retain(|row| {
            let holds = row.shutter == shutter.id || row.to == crate::scheme::TieEnd::Shutter { id: shutter.id };
            !holds || reach.contains(&row.z_m)
        });
        true
    });
}

fn keep_falsework(old: &[Face], new: &[Face], scheme: &mut Scheme) {
    let mut taken: Vec<FaceRef> = Vec::new();
    let Scheme { falsework, openings, .. } = scheme;
    falsework.retain_mut(|falsework| {
        let Some((was, is)) = heir(old, new, falsework.soffit).filter(|(_, is)| !taken.contains(&is.of)) else {
            return false;
        };
        taken.push(is.of);
        falsework.soffit = is.of;
        if let Some(by) = translation(was, is) {
            falsework.leg_lines.iter_mut().for_each(|line| line.x_m += by.x);
            let own = openings.iter_mut().filter(|opening| opening.falsework == falsework.id);
            own.for_each(|opening| opening.left_m += by.x);
        }
        let [left, right] = super::soffit_extent(new, is);
        falsework.leg_lines.retain(|line| left <= line.x_m && line.x_m <= right);
        openings.retain(|opening| {
            opening.falsework != falsework.id || (left <= opening.left_m && opening.left_m + opening.width_m <= right)
        });
        true
    });
}

/// The face that equipment stood on, and the one of the same edge that covers most of it now.
fn heir<'a>(old: &'a [Face], new: &'a [Face], of: FaceRef) -> Option<(&'a Face, &'a Face)> {
    let was = old.iter().find(|face| face.of == of)?;
    let shared = |face: &Face| {
        let ([a, b], [c, d]) = (levels(was), levels(face));
        b.min(d) - a.max(c)
    };
    let same_edge = new.iter().filter(|face| face.of.corner == of.corner && face.of.cut == of.cut);
    let is = same_edge.filter(|face| face.kind == was.kind).max_by(|a, b| {
        let own = |face: &Face| face.of == of;
        shared(a).total_cmp(&shared(b)).then(own(a).cmp(&own(b)))
    })?;
    Some((was, is))
}

fn levels(face: &Face) -> [f64; 2] {
    [face.from.z.min(face.to.z), face.from.z.max(face.to.z)]
}

/// By how much a face has moved, if it only moved.
fn translation(was: &Face, is: &Face) -> Option<crate::geometry::Point> {
    let (from, to) = (is.from - was.from, is.to - was.to);
    ((from - to).length() < 1e-9).then_some(from)
}
