use super::{Edge, Point};
use crate::sorting::sort;

/// The side from which a level or place is approached, where a value may jump there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// From below, or from the left.
    Before,
    /// From above, or from the right.
    After,
}

impl Side {
    /// Whether `value` lies between `a` and `b`, the end on the far side left out.
    fn within(self, value: f64, a: f64, b: f64) -> bool {
        let (low, high) = (a.min(b), a.max(b));
        match self {
            Self::Before => low < value && value <= high,
            Self::After => low <= value && value < high,
        }
    }
}

/// Area of a solid and its moments about the axes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Moments {
    /// Area, m².
    pub area_m2: f64,
    /// Centre of area; the origin where there is no area.
    pub centroid: Point,
}

/// All edges of a plane solid, which lies to the left of each. Every query is one pass over the edges.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Boundary {
    /// In any order.
    pub edges: Vec<Edge>,
}

impl Boundary {
    /// Total width of the solid at a level.
    pub fn width_at(&self, z: f64, side: Side) -> f64 {
        self.edges
            .iter()
            .filter(|edge| side.within(z, edge.from.z, edge.to.z))
            .map(|edge| edge.x_at(z) * (edge.to.z - edge.from.z).signum())
            .sum()
    }

    /// Where the solid lies at a level: `[left, right]` of each part, from left to right.
    pub fn spans_at(&self, z: f64, side: Side) -> Vec<[f64; 2]> {
        let mut crossings: Vec<f64> =
            self.edges.iter().filter(|edge| side.within(z, edge.from.z, edge.to.z)).map(|edge| edge.x_at(z)).collect();
        sort(&mut crossings, f64::total_cmp);
        crossings.as_chunks().0.to_vec()
    }

    /// Levels strictly between two where the width can jump or kink, in order. The ends are not among them.
    pub fn levels(&self, bottom: f64, top: f64) -> Vec<f64> {
        breakpoints(self.edges.iter().map(|edge| edge.from.z), bottom, top)
    }

    /// Places strictly between two where the height above can jump or kink, in order. The ends are not among them.
    pub fn stations(&self, left: f64, right: f64) -> Vec<f64> {
        breakpoints(self.edges.iter().map(|edge| edge.from.x), left, right)
    }

    /// Lowest and highest level; none without edges.
    pub fn extent(&self) -> Option<[f64; 2]> {
        let levels = self.edges.iter().map(|edge| edge.from.z);
        levels.fold(None, |extent, z| Some(extent.map_or([z, z], |[low, high]: [f64; 2]| [low.min(z), high.max(z)])))
    }

    /// Height of solid straight above a point on its underside, up to where it first ends, at most to level `top`; nought at
    /// the thin end of a wedge.
    pub fn depth_above(&self, point: Point, top: f64, side: Side) -> f64 {
        let exit = self.upper_surfaces(point.x, side).filter(|&z| z >= point.z - TOLERANCE).fold(top, f64::min);
        (exit - point.z).max(0.0)
    }

    /// Highest surface of the solid that lies below a point.
    pub fn floor_below(&self, point: Point, side: Side) -> Option<f64> {
        self.upper_surfaces(point.x, side).filter(|&z| z < point.z - TOLERANCE).max_by(f64::total_cmp)
    }

    /// Depth of solid straight below a point on its upper side, down to where it first ends; nought if there is none.
    pub fn depth_below(&self, point: Point, side: Side) -> f64 {
        let under =
            self.edges.iter().filter(|edge| edge.to.x > edge.from.x && side.within(point.x, edge.from.x, edge.to.x));
        let exit = under.map(|edge| edge.z_at(point.x)).filter(|&z| z < point.z - TOLERANCE).max_by(f64::total_cmp);
        exit.map_or(0.0, |z| point.z - z)
    }

    /// Whether the point lies in the solid; on an edge, either.
    pub fn contains(&self, point: Point) -> bool {
        let above = self
            .edges
            .iter()
            .filter(|edge| Side::After.within(point.x, edge.from.x, edge.to.x) && edge.z_at(point.x) > point.z);
        above.count() % 2 == 1
    }

    /// Whether some of the solid lies at the level of `point` on the side to which `direction_x` points.
    pub fn faces_solid(&self, point: Point, direction_x: f64) -> bool {
        self.edges.iter().any(|edge| {
            Side::After.within(point.z, edge.from.z, edge.to.z)
                && (edge.x_at(point.z) - point.x) * direction_x.signum() > TOLERANCE
        })
    }

    /// Area and centre of the part between two levels, by Green's theorem: `∮ x dz` and its moments.
    pub fn moments_between(&self, bottom: f64, top: f64) -> Moments {
        let origin = self.edges.first().map_or(Point::default(), |edge| edge.from);
        let (mut area, mut about_z, mut about_x) = (0.0, 0.0, 0.0);
        for part in self.edges.iter().filter_map(|edge| edge.between(bottom, top)) {
            let (a, b) = (part.from - origin, part.to - origin);
            let rise = b.z - a.z;
            area += rise * (a.x + b.x) / 2.0;
            about_z += rise * (a.x * a.x + a.x * b.x + b.x * b.x) / 6.0;
            about_x += rise * (a.x * (2.0 * a.z + b.z) + b.x * (a.z + 2.0 * b.z)) / 6.0;
        }
        if area <= 0.0 {
            return Moments::default();
        }
        Moments { area_m2: area, centroid: origin + Point::new(about_z, about_x) * (1.0 / area) }
    }

    /// Levels at `x` at which one leaves the solid going up.
    fn upper_surfaces(&self, x: f64, side: Side) -> impl Iterator<Item = f64> {
        self.edges
            .iter()
            .filter(move |edge| edge.to.x < edge.from.x && side.within(x, edge.from.x, edge.to.x))
            .map(move |edge| edge.z_at(x))
    }
}

/// Points nearer than this are the same point, m.
const TOLERANCE: f64 = 1e-7;

fn breakpoints(values: impl Iterator<Item = f64>, low: f64, high: f64) -> Vec<f64> {
    let mut between: Vec<f64> = values.filter(|&v| v > low + TOLERANCE && v < high - TOLERANCE).collect();
    sort(&mut between, f64::total_cmp);
    between.dedup_by(|next, kept| *next - *kept < TOLERANCE);
    between
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(points: &[(f64, f64)]) -> impl Iterator<Item = Edge> {
        let at = |i: usize| Point::new(points[i % points.len()].0, points[i % points.len()].1);
        (0..points.len()).map(move |i| Edge::new(at(i), at(i + 1)))
    }

    /// A 4 × 3 box with a 3 × 2 cell, its walls and slabs 0.5 thick.
    fn tube() -> Boundary {
        let outer = ring(&[(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)]);
        let cell = ring(&[(0.5, 0.5), (0.5, 2.5), (3.5, 2.5), (3.5, 0.5)]);
        Boundary { edges: outer.chain(cell).collect() }
    }

    #[test]
    fn width_jumps_at_the_floor() {
        let tube = tube();
        assert_eq!(tube.width_at(0.5, Side::Before), 4.0);
        assert_eq!(tube.width_at(0.5, Side::After), 1.0);
        assert_eq!(tube.width_at(3.0, Side::After), 0.0);
        assert_eq!(tube.spans_at(1.0, Side::After), vec![[0.0, 0.5], [3.5, 4.0]]);
    }

    #[test]
    fn depth_above_jumps_at_the_wall_and_stops_at_the_pour() {
        let tube = tube();
        assert_eq!(tube.depth_above(Point::new(2.0, 2.5), 3.0, Side::After), 0.5);
        assert_eq!(tube.depth_above(Point::new(2.0, 2.5), 2.7, Side::After), 2.7 - 2.5);
        assert_eq!(tube.depth_above(Point::new(0.5, 0.0), 3.0, Side::Before), 3.0);
        assert_eq!(tube.depth_above(Point::new(0.5, 0.0), 3.0, Side::After), 0.5);
    }

    #[test]
    fn depth_below_ends_at_the_underside() {
        let tube = tube();
        assert_eq!(tube.depth_below(Point::new(2.0, 0.5), Side::After), 0.5);
        assert_eq!(tube.depth_below(Point::new(2.0, 3.0), Side::After), 0.5);
        assert_eq!(tube.depth_below(Point::new(0.2, 3.0), Side::After), 3.0);
        assert_eq!(tube.depth_below(Point::new(2.0, 0.0), Side::After), 0.0);
    }

    #[test]
    fn floor_is_the_nearest_surface_below() {
        let tube = tube();
        assert_eq!(tube.floor_below(Point::new(2.0, 2.5), Side::After), Some(0.5));
        assert_eq!(tube.floor_below(Point::new(2.0, 9.0), Side::After), Some(3.0));
        assert_eq!(tube.floor_below(Point::new(2.0, 0.5), Side::After), None);
        assert_eq!(tube.floor_below(Point::new(4.0, 9.0), Side::After), None);
    }

    #[test]
    fn moments_of_the_tube() {
        let moments = tube().moments_between(f64::MIN, f64::MAX);
        assert!((moments.area_m2 - 6.0).abs() < 1e-12);
        assert!((moments.centroid - Point::new(2.0, 1.5)).length() < 1e-12);
        let base = tube().moments_between(0.0, 0.75);
        assert!((base.area_m2 - 2.25).abs() < 1e-12);
        assert!((base.centroid.z - (2.0 * 0.25 + 0.25 * 0.625) / 2.25).abs() < 1e-12);
    }

    #[test]
    fn contains_concrete_not_air() {
        let tube = tube();
        assert!(tube.contains(Point::new(0.2, 1.0)));
        assert!(!tube.contains(Point::new(2.0, 1.0)));
        assert!(tube.faces_solid(Point::new(0.5, 1.0), 1.0));
        assert!(!tube.faces_solid(Point::new(4.0, 1.0), 1.0));
    }

    #[test]
    fn breakpoints_are_sorted_and_single() {
        assert_eq!(tube().levels(0.0, 3.0), vec![0.5, 2.5]);
        assert_eq!(tube().stations(-1.0, 9.0), vec![0.0, 0.5, 3.5, 4.0]);
    }
}
