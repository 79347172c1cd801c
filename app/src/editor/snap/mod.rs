//! Where a pointer is drawn to.

mod axis;
mod reason;

pub use reason::{Snap, SnapReason};

use super::Viewport;
use crate::units;
use axis::{Stop, Why};
use falsewright_core::geometry::Point;
use falsewright_core::scheme::{Id, Scheme, SectionEdge};

/// How near the pointer must come, screen px.
const RADIUS_PX: f64 = 8.0;

/// The finest step of the grid that is this many px on the screen is taken.
const GRID_PX: f64 = 3.0;

/// Directions go by this, degrees.
const DIRECTION_DEG: f64 = 15.0;

/// What a pointer can be drawn to.
#[derive(Clone, Debug)]
pub struct Snapper {
    corners: Vec<(Id, Point)>,
    edges: Vec<SectionEdge>,
    joints: Vec<f64>,
    drawn: Vec<Point>,
    radius_m: f64,
    grid_m: f64,
    suspended: bool,
}

impl Snapper {
    /// Everything on the section.
    pub fn new(scheme: &Scheme, viewport: &Viewport, suspended: bool) -> Self {
        let rings = std::iter::once(&scheme.section.outline).chain(scheme.section.cells.iter().map(|c| &c.corners));
        Self {
            corners: rings.flatten().map(|corner| (corner.id, corner.point())).collect(),
            edges: scheme.section.edges(),
            joints: scheme.section.joints.iter().map(|joint| joint.z_m).collect(),
            drawn: Vec::new(),
            radius_m: viewport.length_m(RADIUS_PX),
            grid_m: grid_m(viewport),
            suspended,
        }
    }

    /// Leaves out corners that move, and the edges at them.
    pub fn without(mut self, moving: &[Id]) -> Self {
        let places: Vec<Point> =
            self.corners.iter().filter(|corner| moving.contains(&corner.0)).map(|corner| corner.1).collect();
        let touches = |p: Point| places.iter().any(|&place| (place - p).length() < 1e-9);
        self.edges.retain(|edge| !moving.contains(&edge.corner) && !touches(edge.line.from) && !touches(edge.line.to));
        self.corners.retain(|corner| !moving.contains(&corner.0));
        self
    }

    /// Adds the points of the outline being drawn.
    pub fn with_drawn(mut self, points: &[Point]) -> Self {
        self.drawn = points.to_vec();
        self
    }

    /// Where the pointer is drawn to.
    pub fn snap(&self, p: Point) -> Snap {
        if self.suspended {
            return Snap { point: p, reason: SnapReason::Free };
        }
        if let Some(&first) = self.drawn.first().filter(|_| self.drawn.len() >= 3)
            && self.near(first, p)
        {
            return Snap { point: first, reason: SnapReason::Close };
        }
        if let Some(&(id, point)) = nearest(self.corners.iter(), p, |corner| corner.1)
            && self.near(point, p)
        {
            return Snap { point, reason: SnapReason::Corner(id) };
        }
        self.edge(p).unwrap_or_else(|| self.aligned(p))
    }

    /// The nearest step of the grid for a level, place or distance.
    pub fn step(&self, value: f64) -> f64 {
        if self.suspended { value } else { (value / self.grid_m).round() * self.grid_m }
    }

    /// The nearest half of a degree.
    pub fn degrees(&self, value: f64) -> f64 {
        if self.suspended { value } else { (value * 2.0).round() / 2.0 }
    }

    /// A level: that of a corner if near, else in equal spacing, else on the grid; and why.
    pub fn level(&self, z: f64) -> (f64, SnapReason) {
        let points: Vec<Point> = self.points().collect();
        let stop = self.stop(z, &points, |p| p.z);
        (stop.map_or(z, |stop| stop.at), self.reason(stop, &points, SnapReason::AlignedZ))
    }

    /// A place: that of a corner if near, else in equal spacing, else on the grid; and why.
    pub fn place(&self, x: f64) -> (f64, SnapReason) {
        let points: Vec<Point> = self.points().collect();
        let stop = self.stop(x, &points, |p| p.x);
        (stop.map_or(x, |stop| stop.at), self.reason(stop, &points, SnapReason::AlignedX))
    }

    /// One of these values if near, else on the grid; and whether it is one of them.
    pub fn like(&self, value: f64, others: impl Iterator<Item = f64>) -> (f64, bool) {
        let nearest = others.min_by(|a, b| (a - value).abs().total_cmp(&(b - value).abs()));
        match nearest.filter(|at| !self.suspended && (at - value).abs() <= self.radius_m) {
            Some(at) => (at, true),
            None => (self.step(value), false),
        }
    }

    fn stop(&self, value: f64, points: &[Point], of: impl Fn(Point) -> f64) -> Option<Stop> {
        let stations: Vec<f64> = points.iter().map(|p| of(*p)).collect();
        (!self.suspended).then(|| axis::stop(value, &stations, self.radius_m, self.grid_m))
    }

    fn reason(&self, stop: Option<Stop>, points: &[Point], aligned: fn(Point) -> SnapReason) -> SnapReason {
        match stop.map(|stop| stop.why) {
            None => SnapReason::Free,
            Some(Why::Aligned(index)) => points.get(index).map_or(SnapReason::Free, |p| aligned(*p)),
            Some(Why::Equal) => SnapReason::EqualSpacing,
            Some(Why::Halfway) => SnapReason::Halfway,
            Some(Why::Grid) => SnapReason::Grid(self.grid_m),
        }
    }

    fn points(&self) -> impl Iterator<Item = Point> {
        self.corners.iter().map(|corner| corner.1).chain(self.drawn.iter().copied())
    }

    fn near(&self, a: Point, b: Point) -> bool {
        (a - b).length() <= self.radius_m
    }

    /// The nearest edge: where it crosses a joint or the line of a corner, at its middle, or at a step of the grid.
    fn edge(&self, p: Point) -> Option<Snap> {
        let edge = nearest(self.edges.iter(), p, |edge| edge.line.nearest(p))?;
        let on = edge.line.nearest(p);
        if !self.near(on, p) {
            return None;
        }
        let crossing = self.crossings(edge);
        let crossing = nearest(crossing.iter(), p, |snap| snap.point).filter(|snap| self.near(snap.point, p));
        let middle = edge.line.middle();
        if let Some(snap) = crossing {
            return Some(*snap);
        }
        if self.near(middle, p) {
            return Some(Snap { point: middle, reason: SnapReason::Middle(edge.corner) });
        }
        let along = edge.line.vector();
        let stepped = if along.x == 0.0 {
            Point::new(on.x, self.step(on.z))
        } else if along.z == 0.0 {
            Point::new(self.step(on.x), on.z)
        } else {
            on
        };
        let point = if (edge.line.nearest(stepped) - stepped).length() < 1e-9 { stepped } else { on };
        Some(Snap { point, reason: SnapReason::Edge(edge.corner) })
    }

    /// Where an edge crosses joints, and the lines plumb and level with points that are not on it.
    fn crossings(&self, edge: &SectionEdge) -> Vec<Snap> {
        let line = &edge.line;
        let along = line.vector();
        let level = |z: f64| (along.z != 0.0).then(|| Point::new(line.x_at(z), z));
        let plumb = |x: f64| (along.x != 0.0).then(|| Point::new(x, line.z_at(x)));
        let joints = self.joints.iter().filter_map(|z| level(*z)).map(|point| (point, SnapReason::EdgeAndJoint));
        let others = self.points().filter(|q| (line.nearest(*q) - *q).length() > 1e-6);
        let aligned = others.flat_map(|q| {
            let crossings = [level(q.z), plumb(q.x)];
            crossings.into_iter().flatten().map(move |point| (point, SnapReason::EdgeAligned(q)))
        });
        let on = |point: Point| (line.nearest(point) - point).length() < 1e-9;
        let found = joints.chain(aligned).filter(|(point, _)| on(*point));
        found.map(|(point, reason)| Snap { point, reason }).collect()
    }

    fn aligned(&self, p: Point) -> Snap {
        let ((x, plumb), (z, level)) = (self.place(p.x), self.level(p.z));
        let reason = match (plumb, level) {
            (SnapReason::AlignedX(above), SnapReason::AlignedZ(beside)) => SnapReason::Aligned(above, beside),
            (plumb, level) if plumb.rank() <= level.rank() => plumb,
            (_, level) => level,
        };
        Snap { point: Point::new(x, z), reason }
    }

    /// The pointer drawn into a direction of whole 15° from `from`, the length on the grid.
    pub fn direction(&self, from: Point, p: Point) -> Snap {
        let angle = angle_deg(p - from);
        let locked = (angle / DIRECTION_DEG).round() * DIRECTION_DEG;
        let along = unit_at(locked);
        let point = from + along * self.step((p - from).dot(along).max(0.0));
        Snap { point, reason: SnapReason::Direction(locked) }
    }
}

/// The step of the grid at this zoom: 50 mm, or 3 inches, at 100 %.
pub fn grid_m(viewport: &Viewport) -> f64 {
    let steps = units::steps_m();
    steps.into_iter().find(|step| step * viewport.px_per_m >= GRID_PX).unwrap_or(steps[steps.len() - 1])
}

/// Angle of a direction from the horizontal, counter-clockwise, degrees.
pub fn angle_deg(direction: Point) -> f64 {
    libm::atan2(direction.z, direction.x).to_degrees()
}

/// The direction of length 1 at an angle; exact where it is level or plumb.
pub fn unit_at(angle_deg: f64) -> Point {
    match angle_deg.rem_euclid(360.0) {
        0.0 => Point::new(1.0, 0.0),
        90.0 => Point::new(0.0, 1.0),
        180.0 => Point::new(-1.0, 0.0),
        270.0 => Point::new(0.0, -1.0),
        other => Point::new(libm::cos(other.to_radians()), libm::sin(other.to_radians())),
    }
}

fn nearest<T>(among: impl Iterator<Item = T>, p: Point, at: impl Fn(&T) -> Point) -> Option<T> {
    among.min_by(|a, b| (at(a) - p).length().total_cmp(&(at(b) - p).length()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::scheme::{Section, Walls};

    fn scheme() -> Scheme {
        let walls = Walls { wall_m: 0.4, roof_m: 0.4, base_m: 0.4, haunch_m: 0.0 };
        Scheme::blank(Section::box_cell(4.0, 3.0, walls))
    }

    fn snapper(suspended: bool) -> Snapper {
        Snapper::new(&scheme(), &Viewport::new(800.0, 600.0), suspended)
    }

    #[test]
    fn corners_come_before_edges_before_alignment_before_the_grid() {
        let s = snapper(false);
        let corner = s.snap(Point::new(4.83, 3.77));
        assert_eq!(corner.point, Point::new(4.8, 3.8));
        assert!(matches!(corner.reason, SnapReason::Corner(_)));
        let edge = s.snap(Point::new(4.83, 2.288));
        assert_eq!(edge.point.x, 4.8);
        assert!((edge.point.z - 2.3).abs() < 1e-12 && matches!(edge.reason, SnapReason::Edge(_)));
        let aligned = s.snap(Point::new(6.0, 3.44));
        assert!(matches!(aligned.reason, SnapReason::AlignedZ(_)) && aligned.point.z == 3.4);
        let grid = s.snap(Point::new(6.013, 2.012));
        assert_eq!(grid.reason, SnapReason::Grid(0.05));
        assert!((grid.point - Point::new(6.0, 2.0)).length() < 1e-12);
    }

    #[test]
    fn crossings_come_before_the_middle_of_an_edge() {
        let mut scheme = scheme();
        let view = Viewport::new(800.0, 600.0);
        let snap = |scheme: &Scheme, x: f64, z: f64| Snapper::new(scheme, &view, false).snap(Point::new(x, z));
        let level = snap(&scheme, 4.83, 3.43);
        assert_eq!(level.point, Point::new(4.8, 3.4));
        assert!(matches!(level.reason, SnapReason::EdgeAligned(_)));
        let middle = snap(&scheme, 4.83, 1.93);
        assert_eq!(middle.point, Point::new(4.8, 1.9));
        assert!(matches!(middle.reason, SnapReason::Middle(_)));
        scheme.section.joints.push(falsewright_core::scheme::Joint { id: Id(90), z_m: 1.95 });
        let joint = snap(&scheme, 4.83, 1.93);
        assert_eq!((joint.point, joint.reason), (Point::new(4.8, 1.95), SnapReason::EdgeAndJoint));
    }

    #[test]
    fn every_reason_but_none_is_said_in_words() {
        assert!(SnapReason::Free.words().is_empty());
        assert_eq!(SnapReason::Grid(0.05).words(), "grid 50 mm");
        assert_eq!(snapper(false).snap(Point::new(6.0, 1.87)).reason.words(), "halfway");
    }

    #[test]
    fn suspended_snapping_leaves_the_pointer_alone() {
        let p = Point::new(4.8301, 3.7702);
        assert_eq!(snapper(true).snap(p), Snap { point: p, reason: SnapReason::Free });
    }

    #[test]
    fn what_moves_is_not_drawn_to_itself() {
        let id = scheme().section.outline[2].id;
        let snap = snapper(false).without(&[id]).snap(Point::new(4.83, 3.77));
        assert!(!matches!(snap.reason, SnapReason::Corner(_) | SnapReason::Edge(_)));
    }

    #[test]
    fn the_first_point_closes_the_outline() {
        let drawn = [Point::new(6.0, 0.0), Point::new(8.0, 0.0), Point::new(8.0, 2.0)];
        let snap = snapper(false).with_drawn(&drawn).snap(Point::new(6.05, 0.05));
        assert_eq!(snap, Snap { point: drawn[0], reason: SnapReason::Close });
    }

    #[test]
    fn directions_lock_to_fifteen_degrees() {
        let from = Point::new(1.0, 1.0);
        let snap = snapper(false).direction(from, Point::new(3.0, 1.2));
        assert_eq!((snap.point.z, snap.reason), (1.0, SnapReason::Direction(0.0)));
        let steep = snapper(false).direction(from, Point::new(2.0, 2.05));
        assert_eq!(steep.reason, SnapReason::Direction(45.0));
    }

    #[test]
    fn the_grid_is_coarser_the_farther_off() {
        let mut view = Viewport::new(800.0, 600.0);
        assert_eq!(grid_m(&view), 0.05);
        view.zoom_to(0.1, Default::default());
        assert_eq!(grid_m(&view), 0.5);
        view.zoom_to(8.0, Default::default());
        assert_eq!(grid_m(&view), 0.005);
    }
}
