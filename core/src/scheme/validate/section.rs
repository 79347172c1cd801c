use super::{Errors, LONGEST_M};
use crate::geometry::{Boundary, Edge, Point};
use crate::scheme::{Corner, Id, Place, Ring, SchemeError, Section, SectionEdge, Subject};
use crate::sorting::sort;

/// Concrete is nowhere thinner, m.
const THINNEST_M: f64 = 0.02;

/// Edges are not shorter, m.
const SHORTEST_EDGE_M: f64 = 0.005;

/// Edges this near touch, m.
const TOUCHING_M: f64 = 1e-6;

/// Corners open by more than this, as sine: 5°.
const SHARPEST: f64 = 0.087_155_742_747_658_17;

impl Section {
    fn rings(&self) -> impl Iterator<Item = (Ring, &[Corner])> {
        let cells = self.cells.iter().map(|cell| (Ring::Cell(cell.id), cell.corners.as_slice()));
        std::iter::once((Ring::Outline, self.outline.as_slice())).chain(cells)
    }

    /// Width and height over the outline's corners.
    pub(super) fn size(&self) -> [f64; 2] {
        let range = |of: fn(&Corner) -> f64| {
            let values = self.outline.iter().map(of);
            values.clone().fold(f64::MIN, f64::max) - values.fold(f64::MAX, f64::min)
        };
        [range(|corner| corner.x_m), range(|corner| corner.z_m)]
    }
}

impl Errors {
    pub(super) fn check_numbers(&mut self, section: &Section) {
        for (ring, corners) in section.rings() {
            if corners.len() < 3 {
                self.push(SchemeError::TooFewCorners { ring, count: corners.len() });
            }
            for corner in corners {
                let subject = Subject::Element("Corner", corner.id);
                self.place(subject, "x", corner.x_m);
                self.place(subject, "z", corner.z_m);
                if let Some(cut) = corner.cut {
                    self.length(subject, "a leg of the cut before it", cut.before_m, SHORTEST_EDGE_M);
                    self.length(subject, "a leg of the cut after it", cut.after_m, SHORTEST_EDGE_M);
                }
            }
        }
        for joint in &section.joints {
            self.place(Subject::Element("Joint", joint.id), "a level", joint.z_m);
        }
        let [width_m, height_m] = section.size();
        if width_m > LONGEST_M || height_m > LONGEST_M {
            self.push(SchemeError::TooLarge { width_m, height_m, limit_m: LONGEST_M });
        }
    }

    fn check_lengths(&mut self, section: &Section) {
        for (_, corners) in section.rings() {
            for (i, corner) in corners.iter().enumerate() {
                let next = &corners[(i + 1) % corners.len()];
                let from = Place { id: corner.id, at: corner.point() };
                let length_m = (next.point() - corner.point()).length();
                let needed_m = corner.cut.map_or(0.0, |cut| cut.after_m) + next.cut.map_or(0.0, |cut| cut.before_m);
                if length_m < SHORTEST_EDGE_M {
                    self.push(SchemeError::ShortEdge { from, length_m });
                } else if length_m - needed_m < SHORTEST_EDGE_M {
                    self.push(SchemeError::CutTooLong { from, length_m, needed_m });
                }
            }
        }
    }

    /// Refuses edges that meet, and returns pairs that come nearer than concrete may be thin.
    fn check_crossings<'a>(&mut self, edges: &'a [SectionEdge]) -> Vec<(&'a SectionEdge, &'a SectionEdge)> {
        let mut near = Vec::new();
        let mut ring_start = 0;
        for (i, first) in edges.iter().enumerate() {
            if edges[ring_start].cell != first.cell {
                ring_start = i;
            }
            for (j, second) in edges.iter().enumerate().skip(i + 1) {
                if !boxes_near(&first.line, &second.line) {
                    continue;
                }
                let same_ring = first.cell == second.cell;
                let ends_ring = edges.get(j + 1).is_none_or(|next| next.cell != second.cell);
                if same_ring && j == i + 1 {
                    self.check_corner(first, second);
                } else if same_ring && i == ring_start && ends_ring {
                    self.check_corner(second, first);
                } else if let Some(at) = meeting(&first.line, &second.line) {
                    let place = Place { id: first.corner, at };
                    self.push(if same_ring {
                        SchemeError::SelfCrossing { first: place, second: second.corner }
                    } else {
                        let (ring, other) = (first.cell.into(), second.cell.into());
                        SchemeError::RingsMeet { ring, other, first: place, second: second.corner }
                    });
                } else {
                    near.push((first, second));
                }
            }
        }
        near
    }

    /// Refuses neighbours that fold back on each other.
    fn check_corner(&mut self, arriving: &SectionEdge, leaving: &SectionEdge) {
        let (a, b) = (arriving.line.vector().unit(), leaving.line.vector().unit());
        if a.dot(b) < 0.0 && a.cross(b).abs() < SHARPEST {
            self.push(SchemeError::SharpCorner { at: Place { id: leaving.corner, at: leaving.line.from } });
        }
    }

    fn check_nesting(&mut self, section: &Section, edges: &[SectionEdge]) {
        let ring = |cell: Option<Id>| Boundary {
            edges: edges.iter().filter(|edge| edge.cell == cell).map(|edge| edge.line).collect(),
        };
        let outline = ring(None);
        let cells: Vec<(Id, Boundary)> = section.cells.iter().map(|cell| (cell.id, ring(Some(cell.id)))).collect();
        for (id, cell) in &cells {
            let Some(at) = cell.edges.first().map(|edge| edge.from) else { continue };
            let place = Place { id: *id, at };
            if !outline.contains(at) {
                self.push(SchemeError::CellOutside { cell: place });
            }
            for (around, _) in cells.iter().filter(|(other, ring)| other != id && ring.contains(at)) {
                self.push(SchemeError::CellInCell { cell: place, around: *around });
            }
        }
    }

    fn check_thickness(&mut self, near: &[(&SectionEdge, &SectionEdge)], boundary: &Boundary) {
        for (first, second) in near {
            if let Some((at, thickness_m)) = thinnest_between(&first.line, &second.line, boundary) {
                let first = Place { id: first.corner, at };
                self.push(SchemeError::Sliver { first, second: second.corner, thickness_m });
            }
        }
    }

    fn check_joints(&mut self, section: &Section, edges: &[SectionEdge], boundary: &Boundary) {
        let Some([low_m, high_m]) = boundary.extent() else { return };
        let mut joints = section.joints.clone();
        sort(&mut joints, |a, b| a.z_m.total_cmp(&b.z_m));
        for pair in joints.windows(2).filter(|pair| pair[1].z_m - pair[0].z_m < THINNEST_M) {
            self.push(SchemeError::JointsTooClose { first: pair[0].id, second: pair[1].id, z_m: pair[1].z_m });
        }
        for joint in &joints {
            if !(low_m + THINNEST_M..=high_m - THINNEST_M).contains(&joint.z_m) {
                self.push(SchemeError::JointOutside { joint: joint.id, z_m: joint.z_m, low_m, high_m });
                continue;
            }
            for edge in edges.iter().filter(|edge| edge.line.from.z == edge.line.to.z) {
                let faces_down = edge.line.to.x > edge.line.from.x;
                let above_edge_m = joint.z_m - edge.line.from.z;
                let thickness_m = if faces_down { above_edge_m } else { -above_edge_m };
                if (TOUCHING_M..THINNEST_M).contains(&thickness_m) {
                    let edge = Place { id: edge.corner, at: edge.line.middle() };
                    self.push(SchemeError::ThinLayer { joint: joint.id, edge, thickness_m });
                }
            }
        }
    }
}

/// Whether this is a section at all; its numbers have been looked at already.
pub(super) fn check(section: &Section) -> Result<(), Vec<SchemeError>> {
    let mut errors = Errors::default();
    errors.check_lengths(section);
    errors.finish()?;

    let edges = section.edges();
    let mut errors = Errors::default();
    let near = errors.check_crossings(&edges);
    errors.finish()?;

    let boundary = section.boundary();
    let mut errors = Errors::default();
    errors.check_nesting(section, &edges);
    errors.check_joints(section, &edges, &boundary);
    errors.finish()?;

    let mut errors = Errors::default();
    errors.check_thickness(&near, &boundary);
    errors.finish()
}

fn boxes_near(a: &Edge, b: &Edge) -> bool {
    let apart = |a0: f64, a1: f64, b0: f64, b1: f64| {
        a0.max(a1) + THINNEST_M < b0.min(b1) || b0.max(b1) + THINNEST_M < a0.min(a1)
    };
    !apart(a.from.x, a.to.x, b.from.x, b.to.x) && !apart(a.from.z, a.to.z, b.from.z, b.to.z)
}

/// A point that two edges share, or nearly share.
fn meeting(a: &Edge, b: &Edge) -> Option<Point> {
    let touching = || a.connectors(b).into_iter().find(|way| way.length() < TOUCHING_M).map(|way| way.from);
    a.meeting(b).or_else(touching)
}

/// Least thickness of concrete between two edges that face each other through it, where that is too thin.
fn thinnest_between(a: &Edge, b: &Edge, boundary: &Boundary) -> Option<(Point, f64)> {
    let (along_a, along_b) = (a.vector().unit(), b.vector().unit());
    if along_a.dot(along_b) > -0.02 {
        return None;
    }
    let through_concrete = |from: Point, to: Point| {
        let way = to - from;
        let middle = from.lerp(to, 0.5);
        along_a.cross(way) > 0.0
            && along_b.cross(way) < 0.0
            && boundary.contains(middle)
            && boundary.edges.iter().all(|edge| (edge.nearest(middle) - middle).length() > 1e-3 * way.length())
    };
    a.connectors(b)
        .into_iter()
        .filter(|way| way.length() < THINNEST_M - TOUCHING_M && through_concrete(way.from, way.to))
        .map(|way| (way.middle(), way.length()))
        .min_by(|first, second| first.1.total_cmp(&second.1))
}
