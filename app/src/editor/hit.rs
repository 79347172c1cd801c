//! What is under a pointer.

use super::places::Places;
use super::{Bounds, Side, Target, Viewport};
use falsewright_core::geometry::{Edge, Point};
use falsewright_core::scheme::Corner;

/// Joints can be taken hold of this far outside the section, m.
const JOINT_PAST_M: f64 = 0.3;

/// Everything within reach of a world point, what lies on top first and the nearest of each kind first.
pub fn hits(places: &Places, viewport: &Viewport, at: Point, reach_px: f64) -> Vec<Target> {
    let mut found = Finder { at, reach_m: viewport.length_m(reach_px), found: Vec::new() };
    corners(places, &mut found);
    openings(places, &mut found);
    for row in &places.scheme.ties {
        found.line(2, places.row_line(row), Target::TieRow(row.id));
    }
    for falsework in &places.scheme.falsework {
        for line in &falsework.leg_lines {
            found.line(3, places.leg(falsework, line), Target::LegLine(line.id));
        }
        found.inside(9, places.falsework_bounds(falsework), Target::Falsework(falsework.id));
    }
    if let Some(section) = places.section() {
        for joint in &places.scheme.section.joints {
            let from = Point::new(section.min.x - JOINT_PAST_M, joint.z_m);
            let to = Point::new(section.max.x + JOINT_PAST_M, joint.z_m);
            found.line(4, Some([from, to]), Target::Joint(joint.id));
        }
    }
    for shutter in &places.scheme.shutters {
        found.inside(6, places.shutter_bounds(shutter), Target::Shutter(shutter.id));
    }
    let pours: Vec<_> = places.scheme.section.joints.iter().map(|joint| joint.id).collect();
    for face in places.faces.iter().filter(|face| !pours.contains(&face.of.corner)) {
        let target = if face.of.cut { Target::Cut(face.of.corner) } else { Target::Face(face.of) };
        found.line(if face.of.cut { 4 } else { 7 }, Some([face.from, face.to]), target);
    }
    found.in_order()
}

fn corners(places: &Places, found: &mut Finder) {
    let section = &places.scheme.section;
    let rings = std::iter::once(&section.outline).chain(section.cells.iter().map(|cell| &cell.corners));
    for corner in rings.flatten() {
        found.point(0, Corner::point(corner), Target::Corner(corner.id));
    }
}

fn openings(places: &Places, found: &mut Finder) {
    for opening in &places.scheme.openings {
        let Some(Bounds { min, max }) = places.way(opening) else { continue };
        let id = opening.id;
        found.line(1, Some([min, Point::new(min.x, max.z)]), Target::OpeningEdge(id, Side::Left));
        found.line(1, Some([Point::new(max.x, min.z), max]), Target::OpeningEdge(id, Side::Right));
        found.line(1, Some([Point::new(min.x, max.z), max]), Target::OpeningEdge(id, Side::Top));
        found.inside(5, places.transfer(opening), Target::Transfer(id));
        found.inside(8, Some(Bounds { min, max }), Target::Opening(id));
    }
}

struct Finder {
    at: Point,
    reach_m: f64,
    /// Rank, distance, target.
    found: Vec<(u8, f64, Target)>,
}

impl Finder {
    fn point(&mut self, rank: u8, point: Point, target: Target) {
        self.add(rank, (point - self.at).length(), target);
    }

    fn line(&mut self, rank: u8, ends: Option<[Point; 2]>, target: Target) {
        if let Some([from, to]) = ends {
            self.point(rank, Edge::new(from, to).nearest(self.at), target);
        }
    }

    fn inside(&mut self, rank: u8, bounds: Option<Bounds>, target: Target) {
        let Some(Bounds { min, max }) = bounds else { return };
        let inside = (min.x..=max.x).contains(&self.at.x) && (min.z..=max.z).contains(&self.at.z);
        if inside {
            self.add(rank, (min.lerp(max, 0.5) - self.at).length().min(self.reach_m), target);
        }
    }

    fn add(&mut self, rank: u8, distance: f64, target: Target) {
        if distance <= self.reach_m {
            self.found.push((rank, distance, target));
        }
    }

    fn in_order(mut self) -> Vec<Target> {
        self.found.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        self.found.into_iter().map(|(_, _, target)| target).collect()
    }
}
