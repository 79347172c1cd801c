use super::{Edge, Point};

/// The edges of a closed ring.
pub fn edges_of(ring: &[Point]) -> impl Iterator<Item = Edge> + '_ {
    ring.iter().zip(ring.iter().cycle().skip(1)).map(|(from, to)| Edge::new(*from, *to))
}

/// The lower left and upper right corner of the box around some points.
pub fn around(points: impl Iterator<Item = Point>) -> [Point; 2] {
    let none = [f64::INFINITY, f64::NEG_INFINITY].map(|at| Point::new(at, at));
    points.fold(none, |[low, high], at| {
        [Point::new(low.x.min(at.x), low.z.min(at.z)), Point::new(high.x.max(at.x), high.z.max(at.z))]
    })
}

/// How far two boxes are apart: nought where they meet.
pub fn apart(a: [Point; 2], b: [Point; 2]) -> f64 {
    let across = (a[0].x - b[1].x).max(b[0].x - a[1].x).max(0.0);
    Point::new(across, (a[0].z - b[1].z).max(b[0].z - a[1].z).max(0.0)).length()
}

/// Whether a point lies within closed rings, given by all their edges.
pub fn encloses(rings: impl Iterator<Item = Edge>, point: Point) -> bool {
    let crossed = |edge: &Edge| (edge.from.z > point.z) != (edge.to.z > point.z) && edge.x_at(point.z) > point.x;
    rings.filter(crossed).count() % 2 == 1
}
