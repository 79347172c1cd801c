//! The hinge of a shutter and how far it is swung, pulled on the section.

use super::moving::Moved;
use super::overlay::Handle;
use super::places::Places;
use super::snap::Snapper;
use super::{Readout, Target};
use crate::language::key;
use falsewright_core::geometry::{Motion, Point};
use falsewright_core::model::PlacedShutter;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Hinge, Id, Scheme, Shutter};

/// A shutter where it is placed, with its hinge as it is drawn, on the section.
fn hinged<'a>(places: &Places<'a>, id: Id) -> Option<(&'a PlacedShutter, Hinge)> {
    let shutter = places.model.shutter(id).filter(|_| places.seen.is_section())?;
    Some((shutter, places.shutter(id)?.hinge?))
}

/// The handle of a hinge, and that of the end that swings.
pub fn handles(places: &Places, id: Id) -> Vec<Option<Handle>> {
    let Some((shutter, hinge)) = hinged(places, id) else { return Vec::new() };
    let at = |at, target| Some(Handle { at, target });
    vec![at(shutter.hinge_at(&hinge), Target::Hinge(id)), at(swung(shutter, &hinge), Target::Swing(id))]
}

/// Where the end that swings comes to rest.
fn swung(shutter: &PlacedShutter, hinge: &Hinge) -> Point {
    let turned = shutter.turn(hinge).moved(shutter.far_end(hinge), hinge.angle_deg.to_radians());
    turned - Point::new(0.0, hinge.drop_m)
}

/// A hinge pulled by a distance.
pub fn hinge(places: &Places, snapper: &Snapper, id: Id, by: Point) -> Option<Moved> {
    moved_hinge(places, id, by, |value| snapper.step(value)).map(Moved::from)
}

/// The edit that moves a hinge, to steps.
pub fn moved_hinge(places: &Places, id: Id, by: Point, step: impl Fn(f64) -> f64) -> Option<Edit> {
    let (shutter, hinge) = hinged(places, id)?;
    let off_m = step(hinge.off_m + shutter.outward * by.x).max(0.0);
    set(places, id, Hinge { above_top_m: step(hinge.above_top_m + by.z), off_m, ..hinge })
}

/// The end that swings, pulled by a distance.
pub fn swing(places: &Places, snapper: &Snapper, id: Id, by: Point) -> Option<Moved> {
    let (shutter, hinge) = hinged(places, id)?;
    let Motion::Turn { about, way } = shutter.turn(&hinge) else { return None };
    let (end, rest) = (shutter.far_end(&hinge), swung(shutter, &hinge));
    let (arm, pulled) = (end - about, rest + by + Point::new(0.0, hinge.drop_m) - about);
    let turned = (way * arm.cross(pulled)).atan2(arm.dot(pulled)).to_degrees();
    let angle_deg = snapper.degrees(turned.max(0.0));
    let hinge = Hinge { angle_deg, ..hinge };
    let at = swung(shutter, &hinge);
    let readout = Readout { angle_deg: Some(angle_deg), ..Readout::length(at, key("moved"), (at - end).length()) };
    Some(Moved { edit: set(places, id, hinge)?, snap: None, readout: Some(readout) })
}

/// The edit that takes a shutter's hinge away.
pub fn unhinged(scheme: &Scheme, id: Id) -> Option<Edit> {
    let shutter = scheme.shutters.iter().find(|shutter| shutter.id == id)?.clone();
    Some(Edit::SetShutter(Shutter { hinge: None, ..shutter }))
}

fn set(places: &Places, id: Id, hinge: Hinge) -> Option<Edit> {
    Some(Edit::SetShutter(Shutter { hinge: Some(hinge), ..places.shutter(id)?.clone() }))
}
