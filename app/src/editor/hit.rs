//! What is under a pointer.

use super::places::{Places, levels};
use super::{Bounds, Side, Target, Viewport};
use falsewright_core::geometry::{Edge, Point};
use falsewright_core::scheme::Corner;
use falsewright_core::sorting::sort;

/// This near to a face it is the face that is meant, not the shutter on it, px.
const FACE_PX: f64 = 8.0;

/// Everything within reach of a world point, what lies on top first and the nearest of each kind first.
pub fn hits(places: &Places, viewport: &Viewport, at: Point, reach_px: f64) -> Vec<Target> {
    let mut found = Finder { at, reach_m: viewport.length_m(reach_px), found: Vec::new() };
    if places.seen.is_section() {
        corners(places, &mut found);
    }
    openings(places, &mut found);
    for row in &places.scheme.ties {
        found.line(2, places.row_line(row), Target::TieRow(row.id));
    }
    for falsework in &places.scheme.falsework {
        for line in &falsework.leg_lines {
            found.line(3, places.leg(falsework, line), Target::LegLine(line.id));
        }
        for bent in places.bent_lines(falsework) {
            found.line(4, Some(bent), Target::Falsework(falsework.id));
        }
        found.inside(10, places.falsework_bounds(falsework), Target::Falsework(falsework.id));
    }
    for joint in &places.scheme.section.joints {
        found.line(4, places.joint_line(joint), Target::Joint(joint.id));
    }
    if !places.seen.is_section() {
        for shutter in &places.scheme.shutters {
            found.inside(8, places.shutter_bounds(shutter), Target::Shutter(shutter.id));
        }
        return found.in_order();
    }
    for shutter in &places.scheme.shutters {
        let Some(face) = places.shutter_face(shutter) else { continue };
        let near = (Edge::new(face.from, face.to).nearest(at) - at).length() <= viewport.length_m(FACE_PX);
        let beside = (levels(face)[0]..=levels(face)[1]).contains(&at.z);
        // The face itself comes before its shutter, and the shutter beside its face before one that laps it.
        let rank = if near { 8 } else { 7 - u8::from(beside) };
        found.inside(rank, places.shutter_bounds(shutter), Target::Shutter(shutter.id));
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
        if places.seen.is_section() {
            found.line(1, Some([Point::new(min.x, max.z), max]), Target::OpeningEdge(id, Side::Top));
        }
        found.inside(5, places.transfer(opening), Target::Transfer(id));
        found.inside(9, Some(Bounds { min, max }), Target::Opening(id));
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
        sort(&mut self.found, |a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        self.found.into_iter().map(|(_, _, target)| target).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::editor::Seen;
    use falsewright_core::layout::concrete::faces;
    use falsewright_core::model::Model;
    use falsewright_core::scheme::heron_lane;

    fn first(at: Point, reach_px: f64, model: &Model) -> Option<Target> {
        let scheme = heron_lane().unwrap();
        let faces = faces(&scheme.section, scheme.ground.level_m);
        let places = Places { scheme: &scheme, faces: &faces, model, seen: Seen::SECTION };
        hits(&places, &Viewport::new(1000.0, 800.0), at, reach_px).into_iter().next()
    }

    #[test]
    fn the_same_things_are_hit_with_and_without_placed_parts() {
        let scheme = heron_lane().unwrap();
        let catalogue = falsewright_core::catalogue::Catalogue::generic();
        let placed = falsewright_core::design(&scheme, &catalogue).unwrap().model;
        assert!(!placed.parts.is_empty());
        for model in [&Model::default(), &placed] {
            let corner = scheme.section.outline[0];
            let near = corner.point() + Point::new(0.05, 0.05);
            assert_eq!(first(near, 8.0, model), Some(Target::Corner(corner.id)));
            let opening = &scheme.openings[0];
            let inside = Point::new(opening.left_m + opening.width_m / 2.0, 2.0);
            assert_eq!(first(inside, 8.0, model), Some(Target::Opening(opening.id)));
            let edge = Point::new(opening.left_m + opening.width_m + 0.03, 2.0);
            assert_eq!(first(edge, 8.0, model), Some(Target::OpeningEdge(opening.id, Side::Right)));
            let row = scheme.ties.iter().find(|row| row.z_m == 2.2).unwrap();
            let wall_middle = Point::new((corner.x_m + scheme.section.cells[0].corners[0].x_m) / 2.0, 2.22);
            assert_eq!(first(wall_middle, 8.0, model), Some(Target::TieRow(row.id)));
            assert_eq!(first(Point::new(-9.0, 9.0), 20.0, model), None);
        }
    }

    #[test]
    fn a_face_can_be_taken_hold_of_under_its_shutter() {
        let scheme = heron_lane().unwrap();
        let right = scheme.section.outline[1];
        let shutter = scheme.shutters.iter().find(|shutter| shutter.face.corner == right.id && shutter.below_m > 0.0);
        let at = |past: f64| Point::new(right.x_m + past, 3.0);
        assert!(
            matches!(first(at(0.05), 20.0, &Model::default()), Some(Target::Face(face)) if face.corner == right.id)
        );
        assert_eq!(first(at(0.25), 20.0, &Model::default()), Some(Target::Shutter(shutter.unwrap().id)));
    }

    #[test]
    fn a_finger_reaches_farther_than_a_mouse() {
        let corner = heron_lane().unwrap().section.outline[0];
        let beside = corner.point() - Point::new(0.15, 0.15);
        assert_ne!(first(beside, 8.0, &Model::default()), Some(Target::Corner(corner.id)));
        assert_eq!(first(beside, 20.0, &Model::default()), Some(Target::Corner(corner.id)));
    }
}
