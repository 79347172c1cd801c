use super::{Edge, Point};
use std::f64::consts::TAU;

/// A movement in the section plane that grows from nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Motion {
    /// About a point, in radians: counter-clockwise for a `way` of 1, clockwise for −1.
    Turn {
        /// What stays where it is.
        about: Point,
        /// 1 or −1.
        way: f64,
    },
    /// Down, in metres; up for a `way` of −1.
    Drop {
        /// 1 or −1.
        way: f64,
    },
}

impl Motion {
    /// Where it takes a point.
    pub fn moved(self, point: Point, by: f64) -> Point {
        match self {
            Self::Turn { about, way } => {
                let (sine, cosine) = libm::sincos(way * by);
                let arm = point - about;
                about + arm * cosine + arm.left() * sine
            }
            Self::Drop { way } => Point::new(point.x, point.z - way * by),
        }
    }

    /// The same the other way.
    pub fn reversed(self) -> Self {
        match self {
            Self::Turn { about, way } => Self::Turn { about, way: -way },
            Self::Drop { way } => Self::Drop { way: -way },
        }
    }

    /// Between which distances from its middle, or places across it, an edge is: only what has some in common with another
    /// is ever brought onto it.
    pub fn track(self, edge: &Edge) -> [f64; 2] {
        match self {
            Self::Turn { about, .. } => {
                let farthest = (edge.from - about).length().max((edge.to - about).length());
                [(edge.nearest(about) - about).length(), farthest]
            }
            Self::Drop { .. } => [edge.from.x.min(edge.to.x), edge.from.x.max(edge.to.x)],
        }
    }

    /// How far it goes until it first brings a point onto an edge; a turn ends after a whole one. None: it never does.
    pub fn until_on(self, point: Point, edge: &Edge) -> Option<f64> {
        match self {
            Self::Turn { about, way } => {
                let arm = point - about;
                let angle = |to: Point| {
                    let there = to - about;
                    let turned = libm::atan2(way * arm.cross(there), arm.dot(there));
                    if turned < 0.0 { turned + TAU } else { turned }
                };
                places_at(about, arm.length(), edge).into_iter().flatten().map(angle).reduce(f64::min)
            }
            Self::Drop { way } => {
                let (low, high) = (edge.from.x.min(edge.to.x), edge.from.x.max(edge.to.x));
                let over = low < high && low <= point.x && point.x <= high;
                over.then(|| way * (point.z - edge.z_at(point.x))).filter(|by| *by >= 0.0)
            }
        }
    }
}

/// Places on an edge at this distance from a point.
fn places_at(point: Point, distance: f64, edge: &Edge) -> [Option<Point>; 2] {
    let (along, from) = (edge.vector(), edge.from - point);
    let (a, half_b, c) = (along.dot(along), along.dot(from), from.dot(from) - distance * distance);
    let square = half_b * half_b - a * c;
    if a == 0.0 || square < 0.0 {
        return [None; 2];
    }
    [-1.0, 1.0].map(|sign| {
        let part = (sign * square.sqrt() - half_b) / a;
        (0.0..=1.0).contains(&part).then(|| edge.from.lerp(edge.to, part))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::{FRAC_PI_2, PI};

    const CENTRE: Point = Point::new(1.0, 2.0);

    #[test]
    fn a_turn_meets_an_edge_where_it_takes_the_point() {
        let (point, edge) = (Point::new(1.0, 0.0), Edge::new(Point::new(2.0, -1.0), Point::new(2.0, 5.0)));
        for (way, expected) in [(1.0, PI / 6.0), (-1.0, TAU - 5.0 * PI / 6.0)] {
            let turn = Motion::Turn { about: CENTRE, way };
            let by = turn.until_on(point, &edge).unwrap();
            assert!((by - expected).abs() < 1e-12, "{by}");
            let there = turn.moved(point, by);
            assert!((there.x - 2.0).abs() < 1e-12 && (there - CENTRE).length() - 2.0 < 1e-12);
            let back = turn.reversed().moved(there, by);
            assert!((back - point).length() < 1e-12);
        }
        let far = Edge::new(Point::new(3.1, -1.0), Point::new(3.1, 5.0));
        assert_eq!(Motion::Turn { about: CENTRE, way: 1.0 }.until_on(point, &far), None);
    }

    #[test]
    fn counter_clockwise_is_from_x_to_z() {
        let there = Motion::Turn { about: CENTRE, way: 1.0 }.moved(Point::new(2.0, 2.0), FRAC_PI_2);
        assert!((there - Point::new(1.0, 3.0)).length() < 1e-12);
    }

    #[test]
    fn a_drop_meets_what_lies_below() {
        let slope = Edge::new(Point::new(0.0, 0.0), Point::new(4.0, 1.0));
        let drop = Motion::Drop { way: 1.0 };
        assert_eq!(drop.until_on(Point::new(2.0, 3.0), &slope), Some(2.5));
        assert_eq!(drop.until_on(Point::new(2.0, 0.0), &slope), None);
        assert_eq!(drop.until_on(Point::new(5.0, 3.0), &slope), None);
        assert_eq!(drop.reversed().until_on(Point::new(2.0, 0.0), &slope), Some(0.5));
    }
}
