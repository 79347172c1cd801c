use super::{Corner, FaceRef, Id, Section};
use crate::geometry::{Boundary, Edge, Point};
use crate::sorting::sort;

/// A straight part of the section's boundary with what it stems from. The concrete lies to its left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionEdge {
    /// The line itself.
    pub line: Edge,
    /// The corner where the edge starts as listed in its ring.
    pub corner: Id,
    /// Whether it is the corner's haunch or chamfer.
    pub cut: bool,
    /// The cell that it bounds; none on the outline.
    pub cell: Option<Id>,
}

impl Section {
    /// Every edge of outline and cells, whichever way the rings are drawn: the outline first, each ring in
    /// order around it, the outline counter-clockwise and cells clockwise.
    pub fn edges(&self) -> Vec<SectionEdge> {
        let mut edges = ring_edges(&self.outline, None);
        for cell in &self.cells {
            edges.extend(ring_edges(&cell.corners, Some(cell.id)));
        }
        edges
    }

    /// The edges without their names, for measuring.
    pub fn boundary(&self) -> Boundary {
        Boundary { edges: self.edges().into_iter().map(|edge| edge.line).collect() }
    }

    /// Pours from the lowest up: id, bottom and top. A joint outside the section makes none; one at a corner, give or
    /// take a micrometre, is exactly there.
    pub fn bands(&self, boundary: &Boundary) -> Vec<Band> {
        let Some([lowest, highest]) = boundary.extent() else { return Vec::new() };
        let mut joints: Vec<(f64, Id)> = self.joints.iter().map(|joint| (joint.z_m, joint.id)).collect();
        for (z, _) in &mut joints {
            let level = boundary.edges.iter().map(|edge| edge.from.z).find(|level| (level - *z).abs() < SNAP_M);
            *z = level.unwrap_or(*z);
        }
        joints.retain(|&(z, _)| lowest < z && z < highest);
        sort(&mut joints, |a, b| a.0.total_cmp(&b.0));
        joints.dedup_by(|next, kept| next.0 == kept.0);
        let starts = std::iter::once((lowest, FaceRef::LOWEST)).chain(joints.iter().copied());
        let tops = joints.iter().map(|joint| joint.0).chain(std::iter::once(highest));
        starts.zip(tops).map(|((bottom_m, pour), top_m)| Band { pour, bottom_m, top_m }).collect()
    }
}

/// The levels between which a pour lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// The joint below, or [`FaceRef::LOWEST`].
    pub pour: Id,
    /// Lower joint or lowest level of the section.
    pub bottom_m: f64,
    /// Upper joint or highest level of the section.
    pub top_m: f64,
}

/// Joints this near to a corner are at its level.
const SNAP_M: f64 = 1e-6;

fn ring_edges(corners: &[Corner], cell: Option<Id>) -> Vec<SectionEdge> {
    let mut edges = Vec::with_capacity(2 * corners.len());
    for (i, corner) in corners.iter().enumerate() {
        let previous = &corners[(i + corners.len() - 1) % corners.len()];
        let next = &corners[(i + 1) % corners.len()];
        let leaving = corner.leaving(next);
        if corner.cut.is_some() {
            let line = Edge::new(corner.arriving(previous), leaving);
            edges.push(SectionEdge { line, corner: corner.id, cut: true, cell });
        }
        let line = Edge::new(leaving, next.arriving(corner));
        edges.push(SectionEdge { line, corner: corner.id, cut: false, cell });
    }
    let doubled_area: f64 = edges.iter().map(|edge| edge.line.from.cross(edge.line.to)).sum();
    if (doubled_area < 0.0) != cell.is_some() {
        edges.reverse();
        edges.iter_mut().for_each(|edge| edge.line = edge.line.reversed());
    }
    edges
}

impl Corner {
    /// Its place, disregarding its cut; rounded to 1e-11 m, so that levels equal but for binary fractions are equal.
    pub fn point(&self) -> Point {
        let rounded = |value: f64| (value * 1e11).round() / 1e11;
        Point::new(rounded(self.x_m), rounded(self.z_m))
    }

    /// Where the edge from `previous` ends.
    fn arriving(&self, previous: &Self) -> Point {
        self.towards(previous, self.cut.map_or(0.0, |cut| cut.before_m))
    }

    /// Where the edge to `next` starts.
    fn leaving(&self, next: &Self) -> Point {
        self.towards(next, self.cut.map_or(0.0, |cut| cut.after_m))
    }

    fn towards(&self, other: &Self, distance_m: f64) -> Point {
        if distance_m == 0.0 { self.point() } else { self.point() + (other.point() - self.point()).unit() * distance_m }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scheme::{Cut, Joint};

    fn corner(id: u32, x_m: f64, z_m: f64) -> Corner {
        Corner { id: Id(id), x_m, z_m, cut: None }
    }

    fn triangle() -> Section {
        let outline = vec![corner(1, 0.0, 0.0), corner(2, 4.0, 0.0), corner(3, 0.0, 3.0)];
        Section { outline, cells: Vec::new(), joints: Vec::new() }
    }

    #[test]
    fn identity_does_not_follow_the_winding() {
        let mut section = triangle();
        section.outline[1].cut = Some(Cut { before_m: 1.0, after_m: 2.0 });
        let edges = section.edges();
        section.outline.reverse();
        section.outline[1].cut = Some(Cut { before_m: 2.0, after_m: 1.0 });
        let reversed = section.edges();
        assert_eq!(edges.len(), 4);
        let cut = |edges: &[SectionEdge]| edges.iter().find(|edge| edge.cut).map(|edge| (edge.corner, edge.line));
        assert_eq!(cut(&edges), cut(&reversed));
        let (corner, line) = cut(&edges).unwrap();
        assert_eq!(corner, Id(2));
        assert!((line.from - Point::new(3.0, 0.0)).length() < 1e-12);
        assert!((line.to - Point::new(2.4, 1.2)).length() < 1e-12);
        // 2 -> 1 in the reversed list is the bottom edge, which the first list calls 1 -> 2.
        assert_eq!(edges[0].corner, Id(1));
        assert!(reversed.iter().any(|edge| edge.corner == Id(2) && !edge.cut && edge.line == edges[0].line));
    }

    #[test]
    fn joints_are_sorted_and_snapped() {
        let mut section = triangle();
        section.outline.push(corner(4, 0.0, 1.0));
        section.joints = [(7, 2.0), (8, 1.0 + 1e-9), (9, 5.0)].map(|(id, z_m)| Joint { id: Id(id), z_m }).to_vec();
        let bands = section.bands(&section.boundary());
        assert_eq!(bands.iter().map(|band| band.pour).collect::<Vec<_>>(), vec![Id(0), Id(8), Id(7)]);
        assert_eq!(bands[1], Band { pour: Id(8), bottom_m: 1.0, top_m: 2.0 });
    }
}
