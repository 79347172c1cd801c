use super::Point;
use geo::line_intersection::{LineIntersection, line_intersection};

/// A straight part of a boundary. The solid lies to its left, going from `from` to `to`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Edge {
    /// Start.
    pub from: Point,
    /// End.
    pub to: Point,
}

/// A short way between two edges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Connector {
    /// On the one edge.
    pub from: Point,
    /// On the other edge.
    pub to: Point,
}

impl Connector {
    /// Its length.
    pub fn length(&self) -> f64 {
        (self.to - self.from).length()
    }

    /// Its middle.
    pub fn middle(&self) -> Point {
        self.from.lerp(self.to, 0.5)
    }
}

impl Edge {
    /// The edge between these points.
    pub const fn new(from: Point, to: Point) -> Self {
        Self { from, to }
    }

    /// From start to end.
    pub fn vector(&self) -> Point {
        self.to - self.from
    }

    /// Its length.
    pub fn length(&self) -> f64 {
        self.vector().length()
    }

    /// Its middle.
    pub fn middle(&self) -> Point {
        self.from.lerp(self.to, 0.5)
    }

    /// Unit normal out of the solid.
    pub fn outward(&self) -> Point {
        self.vector().unit().left() * -1.0
    }

    /// The same line in the other direction.
    pub fn reversed(&self) -> Self {
        Self::new(self.to, self.from)
    }

    /// `x` where the edge, which is not level, passes level `z`.
    pub fn x_at(&self, z: f64) -> f64 {
        let (low, high) = if self.from.z <= self.to.z { (self.from, self.to) } else { (self.to, self.from) };
        low.x + (high.x - low.x) * ((z - low.z) / (high.z - low.z))
    }

    /// Level where the edge, which is not upright, passes `x`.
    pub fn z_at(&self, x: f64) -> f64 {
        let (left, right) = if self.from.x <= self.to.x { (self.from, self.to) } else { (self.to, self.from) };
        left.z + (right.z - left.z) * ((x - left.x) / (right.x - left.x))
    }

    /// The part between two levels in the edge's own direction; a level edge is kept whole where it lies between them.
    pub fn between(&self, bottom: f64, top: f64) -> Option<Self> {
        if self.from.z.max(self.to.z) < bottom || self.from.z.min(self.to.z) > top {
            return None;
        }
        let held = |p: Point| {
            let z = p.z.clamp(bottom, top);
            if z == p.z { p } else { Point::new(self.x_at(z), z) }
        };
        Some(Self::new(held(self.from), held(self.to)))
    }

    /// The part between two places across, in the edge's own direction; none of an edge that only touches one.
    pub fn across(&self, left: f64, right: f64) -> Option<Self> {
        if self.from.x.max(self.to.x) <= left || self.from.x.min(self.to.x) >= right {
            return None;
        }
        let held = |p: Point| {
            let x = p.x.clamp(left, right);
            if x == p.x { p } else { Point::new(x, self.z_at(x)) }
        };
        Some(Self::new(held(self.from), held(self.to)))
    }

    /// The point of the edge nearest to `point`.
    pub fn nearest(&self, point: Point) -> Point {
        let along = self.vector();
        let square = along.dot(along);
        let t = if square > 0.0 { ((point - self.from).dot(along) / square).clamp(0.0, 1.0) } else { 0.0 };
        self.from.lerp(self.to, t)
    }

    /// A point that the two edges have in common, found by exact predicates.
    pub fn meeting(&self, other: &Self) -> Option<Point> {
        let common = match line_intersection(self.line(), other.line())? {
            LineIntersection::SinglePoint { intersection, .. } => intersection,
            LineIntersection::Collinear { intersection } => intersection.start,
        };
        Some(Point::new(common.x, common.y))
    }

    /// Shortest ways to another edge: from every end, and from the middle of the part that faces the other edge.
    pub fn connectors(&self, other: &Self) -> [Connector; 5] {
        let along = other.vector();
        let square = along.dot(along).max(f64::MIN_POSITIVE);
        let part = |p: Point| (p - other.from).dot(along) / square;
        let (start, end) = (part(self.from), part(self.to));
        let facing = |limit: f64| if start == end { 0.5 } else { ((limit - start) / (end - start)).clamp(0.0, 1.0) };
        let middle = self.from.lerp(self.to, (facing(0.0) + facing(1.0)) / 2.0);
        let there = |p: Point| Connector { from: p, to: other.nearest(p) };
        let back = |p: Point| Connector { from: self.nearest(p), to: p };
        [there(self.from), there(self.to), there(middle), back(other.from), back(other.to)]
    }

    fn line(&self) -> geo::Line<f64> {
        geo::Line::new((self.from.x, self.from.z), (self.to.x, self.to.z))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outward_is_to_the_right() {
        let edge = Edge::new(Point::new(0.0, 0.0), Point::new(2.0, 0.0));
        assert_eq!(edge.outward(), Point::new(0.0, -1.0));
    }

    #[test]
    fn between_keeps_direction_and_untouched_ends() {
        let edge = Edge::new(Point::new(3.0, 4.0), Point::new(1.0, 0.0));
        let part = edge.between(1.0, 5.0).unwrap();
        assert_eq!(part, Edge::new(Point::new(3.0, 4.0), Point::new(1.5, 1.0)));
        assert_eq!(edge.between(4.5, 5.0), None);
    }

    #[test]
    fn across_leaves_out_what_only_touches() {
        let edge = Edge::new(Point::new(3.0, 4.0), Point::new(1.0, 0.0));
        assert_eq!(edge.across(0.0, 2.0), Some(Edge::new(Point::new(2.0, 2.0), Point::new(1.0, 0.0))));
        assert_eq!(edge.across(3.0, 5.0), None);
        let upright = Edge::new(Point::new(1.0, 0.0), Point::new(1.0, 2.0));
        assert_eq!((upright.across(0.0, 2.0), upright.across(1.0, 2.0)), (Some(upright), None));
    }

    #[test]
    fn connectors_find_the_distance_of_long_parallels() {
        let bottom = Edge::new(Point::new(0.0, 0.0), Point::new(10.0, 0.0));
        let top = Edge::new(Point::new(10.0, 0.3), Point::new(0.0, 0.3));
        let middle = bottom.connectors(&top)[2];
        assert_eq!((middle.from, middle.to), (Point::new(5.0, 0.0), Point::new(5.0, 0.3)));
    }
}
