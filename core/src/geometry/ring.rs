use super::{Edge, Point};

/// The edges of a closed ring.
pub fn edges_of(ring: &[Point]) -> impl Iterator<Item = Edge> + Clone + '_ {
    ring.iter().zip(ring[1.min(ring.len())..].iter().chain(ring.first())).map(|(from, to)| Edge::new(*from, *to))
}

/// Whether a point lies within closed rings, given by all their edges.
pub fn encloses(rings: impl Iterator<Item = Edge>, point: Point) -> bool {
    let crossed = |edge: &Edge| (edge.from.z > point.z) != (edge.to.z > point.z) && edge.x_at(point.z) > point.x;
    rings.filter(crossed).count() % 2 == 1
}
