use super::Point;

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
