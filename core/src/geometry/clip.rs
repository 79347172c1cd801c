use super::Point;
use geo::{BooleanOps, LineString, MultiPolygon, Polygon, Rect};

/// The parts of a ring with holes between two levels, each an outer ring followed by its holes, for drawing.
/// The clipping rounds to a grid, some 1e-9 of the size; measure areas by [`super::Boundary`] instead.
pub fn regions_between(outer: &[Point], holes: &[Vec<Point>], bottom: f64, top: f64) -> Vec<Vec<Vec<Point>>> {
    let solid = Polygon::new(to_line(outer), holes.iter().map(|hole| to_line(hole)).collect());
    let left = outer.iter().map(|p| p.x).fold(f64::MAX, f64::min);
    let right = outer.iter().map(|p| p.x).fold(f64::MIN, f64::max);
    let band = Rect::new((left - 1.0, bottom), (right + 1.0, top)).to_polygon();
    from_polygons(&solid.intersection(&band))
}

fn to_line(ring: &[Point]) -> LineString<f64> {
    ring.iter().map(|p| (p.x, p.z)).collect()
}

fn from_polygons(polygons: &MultiPolygon<f64>) -> Vec<Vec<Vec<Point>>> {
    let ring = |line: &LineString<f64>| {
        let closed: Vec<Point> = line.coords().map(|c| Point::new(c.x, c.y)).collect();
        closed[..closed.len().saturating_sub(1)].to_vec()
    };
    let region = |polygon: &Polygon<f64>| {
        std::iter::once(polygon.exterior()).chain(polygon.interiors()).map(ring).collect::<Vec<_>>()
    };
    polygons.iter().map(region).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_through_a_tube_leaves_two_walls() {
        let ring = |points: &[(f64, f64)]| points.iter().map(|&(x, z)| Point::new(x, z)).collect::<Vec<_>>();
        let outer = ring(&[(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)]);
        let cell = ring(&[(0.5, 0.5), (0.5, 2.5), (3.5, 2.5), (3.5, 0.5)]);
        let regions = regions_between(&outer, std::slice::from_ref(&cell), 1.0, 2.0);
        assert_eq!(regions.len(), 2);
        assert!(regions.iter().all(|region| region.len() == 1 && region[0].len() == 4));
        assert_eq!(regions_between(&outer, &[cell], 0.0, 3.0)[0].len(), 2);
    }
}
