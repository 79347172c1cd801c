//! Path data of the drawing, in metres, `z` up.

use falsewright_core::geometry::Point;
use std::fmt::Write;

/// The `d` of an SVG path under construction.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Path(String);

impl Path {
    /// An open line through these points.
    pub fn line(&mut self, points: impl IntoIterator<Item = Point>) -> &mut Self {
        let mut command = 'M';
        for point in points {
            let _ = write!(self.0, "{command}{} {}", millimetres(point.x), millimetres(point.z));
            command = 'L';
        }
        self
    }

    /// A closed ring.
    pub fn ring(&mut self, points: impl IntoIterator<Item = Point>) -> &mut Self {
        self.line(points);
        self.0.push('Z');
        self
    }

    /// An upright rectangle.
    pub fn rectangle(&mut self, low: Point, high: Point) -> &mut Self {
        self.ring([low, Point::new(high.x, low.z), high, Point::new(low.x, high.z)])
    }

    /// A bar of this width along an axis.
    pub fn bar(&mut self, from: Point, to: Point, width: f64) -> &mut Self {
        let across = (to - from).unit().left() * (width / 2.0);
        self.ring([from - across, to - across, to + across, from + across])
    }

    /// Adds what another path draws.
    pub fn append(&mut self, other: Path) {
        self.0.push_str(&other.0);
    }

    /// Whether nothing was drawn.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The finished data.
    pub fn finish(self) -> String {
        self.0
    }
}

/// Rounds to a tenth of a millimetre, so that equal shapes give equal text.
fn millimetres(metres: f64) -> f64 {
    let rounded = (metres * 1e4).round() / 1e4;
    if rounded == 0.0 { 0.0 } else { rounded }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bar_has_its_width_across_its_axis() {
        let mut path = Path::default();
        path.bar(Point::new(0.0, 0.0), Point::new(0.0, 2.0), 0.2);
        assert_eq!(path.finish(), "M0.1 0L0.1 2L-0.1 2L-0.1 0Z");
    }

    #[test]
    fn noise_below_a_tenth_of_a_millimetre_is_dropped() {
        let mut path = Path::default();
        path.line([Point::new(0.300_000_001, -1e-9), Point::new(1.0 / 3.0, 1.0)]);
        assert_eq!(path.finish(), "M0.3 0L0.3333 1");
    }
}
