use super::{Point, edges_of};

/// An upright rectangle in the section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Lower left corner.
    pub min: Point,
    /// Upper right corner.
    pub max: Point,
}

impl Bounds {
    /// Around all points; none for no points.
    pub fn around(points: impl IntoIterator<Item = Point>) -> Option<Self> {
        points.into_iter().fold(None, |bounds: Option<Self>, p| {
            Some(match bounds {
                None => Self { min: p, max: p },
                Some(b) => Self {
                    min: Point::new(b.min.x.min(p.x), b.min.z.min(p.z)),
                    max: Point::new(b.max.x.max(p.x), b.max.z.max(p.z)),
                },
            })
        })
    }

    /// Whether they have a point in common.
    pub fn meets(&self, other: &Self) -> bool {
        let apart = self.min.x > other.max.x || other.min.x > self.max.x;
        !apart && self.min.z <= other.max.z && other.min.z <= self.max.z
    }

    /// How far it is from another: nought where they meet.
    pub fn apart(&self, other: &Self) -> f64 {
        let across = (self.min.x - other.max.x).max(other.min.x - self.max.x).max(0.0);
        let up = (self.min.z - other.max.z).max(other.min.z - self.max.z).max(0.0);
        Point::new(across, up).length()
    }
}

/// Ends of what lies of a polygon's sides between two values of a coordinate; a side along either is left out.
pub fn sides_between(corners: &[Point], value: impl Fn(Point) -> f64, low: f64, high: f64) -> Vec<Point> {
    let mut ends = Vec::new();
    for side in edges_of(corners) {
        let (from, to) = (value(side.from), value(side.to));
        if from.max(to) <= low || from.min(to) >= high {
            continue;
        }
        let share = |at: f64| ((at - from) / (to - from)).clamp(0.0, 1.0);
        let shares = if from == to { [0.0, 1.0] } else { [share(low), share(high)] };
        ends.extend(shares.map(|share| side.from.lerp(side.to, share)));
    }
    ends
}
