use super::{Edge, Point, edges_of, encloses};

/// The parts of a ring with holes between two levels, each an outer ring followed by its holes, for drawing. The solid
/// lies to the left of every ring; rings neither cross nor overlap.
pub fn regions_between(outer: &[Point], holes: &[Vec<Point>], bottom: f64, top: f64) -> Vec<Vec<Vec<Point>>> {
    let mut rings = Vec::new();
    let mut pieces = Vec::new();
    for ring in std::iter::once(outer).chain(holes.iter().map(Vec::as_slice)) {
        if ring.iter().all(|p| bottom < p.z && p.z < top) {
            rings.push(ring.to_vec());
        } else {
            cut(ring, bottom, top, &mut pieces);
        }
    }
    rings.extend(joined(pieces, bottom));
    rings.retain(|ring| area(ring).abs() > 0.0);
    let (outers, holes): (Vec<_>, Vec<_>) = rings.into_iter().partition(|ring| area(ring) > 0.0);
    let mut regions: Vec<Vec<Vec<Point>>> = outers.into_iter().map(|ring| vec![ring]).collect();
    for hole in holes {
        if let Some(region) =
            regions.iter_mut().find(|region| hole.first().is_some_and(|&p| encloses(edges_of(&region[0]), p)))
        {
            region.push(hole);
        }
    }
    regions
}

/// The pieces of a ring strictly between the levels, each from one level to a level. What lies on a level is outside.
fn cut(ring: &[Point], bottom: f64, top: f64, pieces: &mut Vec<Vec<Point>>) {
    let inside = |p: Point| bottom < p.z && p.z < top;
    let count = ring.len();
    let from = |i: usize| Edge::new(ring[i % count], ring[(i + 1) % count]);
    // From an edge that starts outside, so that no piece goes over the end of the list.
    let first = (0..count).find(|&i| !inside(ring[i])).unwrap_or(0);
    let mut piece = Vec::new();
    for edge in (first..first + count).map(from) {
        let (low, high) = (edge.from.z.min(edge.to.z), edge.from.z.max(edge.to.z));
        if high <= bottom || low >= top {
            continue;
        }
        let held = |p: Point| {
            let z = p.z.clamp(bottom, top);
            if z == p.z { p } else { Point::new(edge.x_at(z), z) }
        };
        if !inside(edge.from) {
            piece.push(held(edge.from));
        }
        piece.push(held(edge.to));
        if !inside(edge.to) {
            pieces.push(std::mem::take(&mut piece));
        }
    }
}

/// Rings from pieces: the solid, to the left of a piece, goes on along the level where the piece ends to the start of
/// the next one.
fn joined(mut pieces: Vec<Vec<Point>>, bottom: f64) -> Vec<Vec<Point>> {
    let mut rings = Vec::new();
    while let Some(mut ring) = pieces.pop() {
        while let Some((start, end)) = ring.first().copied().zip(ring.last().copied()) {
            let rightwards = end.z == bottom;
            let way = |p: Point| if rightwards { p.x - end.x } else { end.x - p.x };
            let ahead = |p: Point| (p.z == end.z && way(p) >= 0.0).then(|| way(p));
            let next = pieces.iter().enumerate().filter_map(|(i, piece)| Some((ahead(*piece.first()?)?, i)));
            match next.min_by(|a, b| a.0.total_cmp(&b.0)) {
                Some((distance, i)) if ahead(start).is_none_or(|own| distance < own) => ring.extend(pieces.remove(i)),
                _ => break,
            }
        }
        ring.dedup();
        rings.push(ring);
    }
    rings
}

/// Signed area, positive where the inside lies to the left.
fn area(ring: &[Point]) -> f64 {
    edges_of(ring).map(|edge| edge.from.cross(edge.to)).sum::<f64>() / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(points: &[(f64, f64)]) -> Vec<Point> {
        points.iter().map(|&(x, z)| Point::new(x, z)).collect()
    }

    #[test]
    fn a_band_through_a_tube_leaves_two_walls() {
        let outer = ring(&[(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)]);
        let cell = ring(&[(0.5, 0.5), (0.5, 2.5), (3.5, 2.5), (3.5, 0.5)]);
        let regions = regions_between(&outer, std::slice::from_ref(&cell), 1.0, 2.0);
        assert_eq!(regions.len(), 2);
        assert!(regions.iter().all(|region| region.len() == 1 && region[0].len() == 4));
        assert_eq!(regions_between(&outer, std::slice::from_ref(&cell), 0.0, 3.0)[0].len(), 2);
        // At the level of the floor the base is whole; above it there are two walls under a roof.
        let base = regions_between(&outer, std::slice::from_ref(&cell), 0.0, 0.5);
        assert_eq!(base, [[ring(&[(0.0, 0.5), (0.0, 0.0), (4.0, 0.0), (4.0, 0.5)])]]);
        let roof = regions_between(&outer, &[cell], 0.5, 3.0);
        assert_eq!((roof.len(), roof[0].len(), roof[0][0].len()), (1, 1, 8));
    }

    #[test]
    fn a_hole_stays_in_the_part_that_holds_it() {
        let outer =
            ring(&[(0.0, 0.0), (9.0, 0.0), (9.0, 4.0), (5.0, 4.0), (5.0, 1.0), (4.0, 1.0), (4.0, 4.0), (0.0, 4.0)]);
        let hole = ring(&[(6.0, 2.0), (6.0, 3.0), (7.0, 3.0), (7.0, 2.0)]);
        let regions = regions_between(&outer, &[hole], 1.5, 3.5);
        let holes = |left: f64| {
            let of = regions.iter().find(|region| region[0].iter().any(|p| p.x == left));
            of.map(|region| region.len() - 1)
        };
        assert_eq!((regions.len(), holes(0.0), holes(9.0)), (2, Some(0), Some(1)));
    }

    #[test]
    fn what_only_touches_a_level_is_not_there() {
        let outer = ring(&[(0.0, 0.0), (4.0, 0.0), (2.0, 1.0)]);
        assert!(regions_between(&outer, &[], 1.0, 2.0).is_empty());
        assert!(regions_between(&outer, &[], -1.0, 0.0).is_empty());
        assert_eq!(regions_between(&outer, &[], 0.0, 2.0)[0][0].len(), 3);
    }
}
