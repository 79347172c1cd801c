//! Where a pointer is drawn to.

use super::Viewport;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::{Id, Scheme, SectionEdge};

/// How near the pointer must come, screen px.
const RADIUS_PX: f64 = 8.0;

/// Steps of the grid, m; the finest that is this many px on the screen is taken.
const GRID_M: [f64; 7] = [0.005, 0.01, 0.05, 0.1, 0.5, 1.0, 5.0];
const GRID_PX: f64 = 3.0;

/// Directions go by this, degrees.
const DIRECTION_DEG: f64 = 15.0;

/// A world point with what drew it there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Snap {
    /// Where it is.
    pub point: Point,
    /// Why there.
    pub reason: SnapReason,
}

/// Why a point is where it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SnapReason {
    /// Nothing near, or snapping suspended.
    Free,
    /// On the grid of this step, m.
    Grid(f64),
    /// On a corner.
    Corner(Id),
    /// On the edge that starts at this corner.
    Edge(Id),
    /// Above or below a point, drawn at it.
    AlignedX(Point),
    /// Level with a point, drawn at it.
    AlignedZ(Point),
    /// Above one point and level with another.
    Aligned(Point, Point),
    /// On the first point of the outline being drawn: closes it.
    Close,
    /// In a direction of whole 15°, degrees.
    Direction(f64),
}

impl SnapReason {
    /// In words, for the mark beside the pointer; nothing for [`SnapReason::Free`].
    pub fn words(&self) -> &'static str {
        match self {
            Self::Free => "",
            Self::Grid(_) => "grid",
            Self::Corner(_) => "corner",
            Self::Edge(_) => "on edge",
            Self::AlignedX(_) => "plumb with corner",
            Self::AlignedZ(_) => "level with corner",
            Self::Aligned(..) => "plumb and level",
            Self::Close => "closes the outline",
            Self::Direction(_) => "direction",
        }
    }
}

/// What a pointer can be drawn to.
#[derive(Clone, Debug)]
pub struct Snapper {
    corners: Vec<(Id, Point)>,
    edges: Vec<SectionEdge>,
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

    /// A level: that of a corner if near, else on the grid.
    pub fn level(&self, z: f64) -> f64 {
        self.coordinate(z, |p| p.z)
    }

    /// A place: that of a corner if near, else on the grid.
    pub fn place(&self, x: f64) -> f64 {
        self.coordinate(x, |p| p.x)
    }

    fn coordinate(&self, value: f64, of: impl Fn(Point) -> f64) -> f64 {
        let aligned = self.points().map(of).min_by(|a, b| (a - value).abs().total_cmp(&(b - value).abs()));
        match aligned.filter(|at| !self.suspended && (at - value).abs() <= self.radius_m) {
            Some(at) => at,
            None => self.step(value),
        }
    }

    fn points(&self) -> impl Iterator<Item = Point> {
        self.corners.iter().map(|corner| corner.1).chain(self.drawn.iter().copied())
    }

    fn near(&self, a: Point, b: Point) -> bool {
        (a - b).length() <= self.radius_m
    }

    /// The nearest edge, at a step of the grid where it is level or upright.
    fn edge(&self, p: Point) -> Option<Snap> {
        let edge = nearest(self.edges.iter(), p, |edge| edge.line.nearest(p))?;
        let on = edge.line.nearest(p);
        let along = edge.line.vector();
        let stepped = if along.x == 0.0 {
            Point::new(on.x, self.step(on.z))
        } else if along.z == 0.0 {
            Point::new(self.step(on.x), on.z)
        } else {
            on
        };
        let point = if (edge.line.nearest(stepped) - stepped).length() < 1e-9 { stepped } else { on };
        self.near(on, p).then_some(Snap { point, reason: SnapReason::Edge(edge.corner) })
    }

    fn aligned(&self, p: Point) -> Snap {
        let plumb = nearest(self.points(), Point::new(p.x, 0.0), |q| Point::new(q.x, 0.0));
        let plumb = plumb.filter(|q| (q.x - p.x).abs() <= self.radius_m);
        let level = nearest(self.points(), Point::new(0.0, p.z), |q| Point::new(0.0, q.z));
        let level = level.filter(|q| (q.z - p.z).abs() <= self.radius_m);
        match (plumb, level) {
            (Some(x), Some(z)) => Snap { point: Point::new(x.x, z.z), reason: SnapReason::Aligned(x, z) },
            (Some(x), None) => Snap { point: Point::new(x.x, self.step(p.z)), reason: SnapReason::AlignedX(x) },
            (None, Some(z)) => Snap { point: Point::new(self.step(p.x), z.z), reason: SnapReason::AlignedZ(z) },
            (None, None) => {
                Snap { point: Point::new(self.step(p.x), self.step(p.z)), reason: SnapReason::Grid(self.grid_m) }
            }
        }
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

/// The step of the grid at this zoom: 50 mm at 100 %.
pub fn grid_m(viewport: &Viewport) -> f64 {
    let fine = GRID_M.into_iter().find(|step| step * viewport.px_per_m >= GRID_PX);
    fine.unwrap_or(GRID_M[GRID_M.len() - 1])
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
        let edge = s.snap(Point::new(4.83, 1.988));
        assert_eq!(edge.point.x, 4.8);
        assert!((edge.point.z - 2.0).abs() < 1e-12 && matches!(edge.reason, SnapReason::Edge(_)));
        let aligned = s.snap(Point::new(6.0, 3.44));
        assert!(matches!(aligned.reason, SnapReason::AlignedZ(_)) && aligned.point.z == 3.4);
        let grid = s.snap(Point::new(6.013, 2.012));
        assert_eq!(grid.reason, SnapReason::Grid(0.05));
        assert!((grid.point - Point::new(6.0, 2.0)).length() < 1e-12);
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
