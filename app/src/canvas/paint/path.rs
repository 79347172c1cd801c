//! Path data of the drawing, in metres, `z` up.

use crate::editor::ScreenPoint;
use falsewright_core::geometry::Point;

/// The `d` of an SVG path under construction.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Path(String);

impl Path {
    /// An open line through these points.
    pub fn line(&mut self, points: impl IntoIterator<Item = Point>) -> &mut Self {
        let mut command = 'M';
        for point in points {
            self.0.push(command);
            write_metres(&mut self.0, point.x);
            self.0.push(' ');
            write_metres(&mut self.0, point.z);
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

    /// Adds what is drawn, unless it is there already as one of the pieces that end at `ends`.
    pub fn piece(&mut self, ends: &mut Vec<usize>, draw: impl FnOnce(&mut Self)) {
        let start = self.0.len();
        draw(self);
        let mut from = 0;
        for &to in &*ends {
            if self.0[from..to] == self.0[start..] {
                self.0.truncate(start);
                return;
            }
            from = to;
        }
        ends.push(self.0.len());
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

/// A number of px as it is written.
pub fn tenths(px: f64) -> String {
    let mut text = String::new();
    write_decimal(&mut text, px, 10);
    text
}

/// Adds a line on the screen to the data of a path.
pub fn push_line(text: &mut String, points: impl IntoIterator<Item = ScreenPoint>) {
    let mut command = 'M';
    for point in points {
        text.push(command);
        write_decimal(text, point.x, 10);
        text.push(' ');
        write_decimal(text, point.y, 10);
        command = 'L';
    }
}

/// Writes metres to a tenth of a millimetre, so that equal shapes give equal text.
fn write_metres(text: &mut String, metres: f64) {
    write_decimal(text, metres, 10_000);
}

/// Writes a number to so many parts of one. Thousands are written at each move of a drag, and writing whole numbers is
/// many times faster than writing floating ones.
fn write_decimal(text: &mut String, value: f64, parts: u64) {
    let all = (value * parts as f64).round() as i64;
    let (mut whole, mut part) = (all.unsigned_abs() / parts, all.unsigned_abs() % parts);
    if all < 0 {
        text.push('-');
    }
    let mut digit = 1;
    while whole / digit >= 10 {
        digit *= 10;
    }
    while digit > 0 {
        text.push(char::from(b'0' + (whole / digit) as u8));
        (whole, digit) = (whole % digit, digit / 10);
    }
    if part > 0 {
        text.push('.');
    }
    let mut digit = parts / 10;
    while part > 0 {
        text.push(char::from(b'0' + (part / digit) as u8));
        (part, digit) = (part % digit, digit / 10);
    }
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

    #[test]
    fn places_are_written_as_floating_numbers_are() {
        for tenths in (-30_000..30_000).step_by(7).chain([-1, 0, 1, 10, 10_000, -10_000, 123_456_789]) {
            let metres = f64::from(tenths) / 1e4;
            let mut text = String::new();
            write_metres(&mut text, metres);
            assert_eq!(text, metres.to_string());
        }
    }

    #[test]
    fn places_on_the_screen_have_one_decimal() {
        assert_eq!([1.0, -0.04, -12.25, 0.96].map(tenths), ["1", "0", "-12.3", "1"]);
        let mut text = String::new();
        push_line(&mut text, [ScreenPoint::new(1.0, 2.5), ScreenPoint::new(-3.0, 0.0)]);
        assert_eq!(text, "M1 2.5L-3 0");
    }
}
