//! What part of the section is on the screen.

use falsewright_core::geometry::{Bounds, Point};

/// A point on the screen, CSS px from the top left corner of the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ScreenPoint {
    /// To the right.
    pub x: f64,
    /// Down.
    pub y: f64,
}

impl ScreenPoint {
    /// The point at these coordinates.
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// Distance to another point, px.
    pub fn distance(self, other: Self) -> f64 {
        let (dx, dy) = (self.x - other.x, self.y - other.y);
        (dx * dx + dy * dy).sqrt()
    }

    /// The point halfway to another.
    pub fn middle(self, other: Self) -> Self {
        Self::new((self.x + other.x) / 2.0, (self.y + other.y) / 2.0)
    }
}

/// Maps the section to the screen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Viewport {
    /// The world point at the top left corner of the drawing.
    pub origin: Point,
    /// Screen px to one metre.
    pub px_per_m: f64,
    /// Width of the drawing, px.
    pub width_px: f64,
    /// Height of the drawing, px.
    pub height_px: f64,
}

impl Viewport {
    /// Screen px to one metre at 100 %: 1:50 on a screen of 96 px to the inch.
    pub const PX_PER_M: f64 = 96.0 / 0.0254 / 50.0;
    /// Least zoom.
    pub const MIN_ZOOM: f64 = 0.1;
    /// Greatest zoom.
    pub const MAX_ZOOM: f64 = 30.0;

    /// 100 % with the world's origin at the lower left.
    pub fn new(width_px: f64, height_px: f64) -> Self {
        let px_per_m = Self::PX_PER_M;
        let origin = Point::new(-1.0, height_px / px_per_m - 1.0);
        Self { origin, px_per_m, width_px, height_px }
    }

    /// 1.0 is 100 %.
    pub fn zoom(&self) -> f64 {
        self.px_per_m / Self::PX_PER_M
    }

    /// Where a world point is on the screen.
    pub fn to_screen(&self, p: Point) -> ScreenPoint {
        ScreenPoint::new((p.x - self.origin.x) * self.px_per_m, (self.origin.z - p.z) * self.px_per_m)
    }

    /// What world point is there on the screen.
    pub fn to_world(&self, p: ScreenPoint) -> Point {
        Point::new(self.origin.x + p.x / self.px_per_m, self.origin.z - p.y / self.px_per_m)
    }

    /// Length in the world of so many px, m.
    pub fn length_m(&self, px: f64) -> f64 {
        px / self.px_per_m
    }

    /// Sets the size of the drawing; the middle stays in the middle.
    pub fn resize(&mut self, width_px: f64, height_px: f64) {
        if !(width_px > 0.0 && height_px > 0.0) {
            return;
        }
        self.pan((width_px - self.width_px) / 2.0, (height_px - self.height_px) / 2.0);
        (self.width_px, self.height_px) = (width_px, height_px);
    }

    /// Moves the drawing on the screen, px to the right and down.
    pub fn pan(&mut self, dx: f64, dy: f64) {
        self.origin = self.origin + Point::new(-dx, dy) * (1.0 / self.px_per_m);
    }

    /// Zooms by a factor; what is at `about` stays there.
    pub fn zoom_by(&mut self, factor: f64, about: ScreenPoint) {
        self.zoom_to(self.zoom() * factor, about);
    }

    /// Zooms to 1.0 for 100 %; what is at `about` stays there.
    pub fn zoom_to(&mut self, zoom: f64, about: ScreenPoint) {
        if !zoom.is_finite() {
            return;
        }
        let fixed = self.to_world(about);
        self.px_per_m = Self::PX_PER_M * zoom.clamp(Self::MIN_ZOOM, Self::MAX_ZOOM);
        let moved = self.to_screen(fixed);
        self.pan(about.x - moved.x, about.y - moved.y);
    }

    /// Shows the whole of `bounds` in the middle, with a margin of px around it.
    pub fn fit(&mut self, bounds: Bounds, margin_px: f64) {
        let size = bounds.max - bounds.min;
        let room = |px: f64| (px - 2.0 * margin_px).max(px / 4.0);
        let scale = (room(self.width_px) / size.x.max(0.01)).min(room(self.height_px) / size.z.max(0.01));
        self.px_per_m = Self::PX_PER_M * (scale / Self::PX_PER_M).clamp(Self::MIN_ZOOM, Self::MAX_ZOOM);
        let middle = bounds.min.lerp(bounds.max, 0.5);
        self.origin = middle + Point::new(-self.width_px, self.height_px) * (0.5 / self.px_per_m);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(a: ScreenPoint, b: ScreenPoint) -> bool {
        a.distance(b) < 1e-6
    }

    #[test]
    fn world_and_screen_are_inverse_and_z_is_up() {
        let view = Viewport::new(800.0, 600.0);
        let p = Point::new(2.5, 3.25);
        let back = view.to_world(view.to_screen(p));
        assert!((back - p).length() < 1e-12);
        assert!(view.to_screen(Point::new(0.0, 1.0)).y < view.to_screen(Point::new(0.0, 0.0)).y);
    }

    #[test]
    fn zooming_keeps_the_point_under_the_pointer_and_stays_in_range() {
        let mut view = Viewport::new(800.0, 600.0);
        let about = ScreenPoint::new(123.0, 456.0);
        let before = view.to_world(about);
        for factor in [1.2, 0.3, 1000.0, 1e-9, 1.1] {
            view.zoom_by(factor, about);
            assert!(near(view.to_screen(before), about));
            assert!((0.1 - 1e-12..=30.0 + 1e-12).contains(&view.zoom()));
        }
        let zoom = view.zoom();
        view.zoom_by(f64::NAN, about);
        assert_eq!(view.zoom(), zoom);
    }

    #[test]
    fn fit_shows_everything_in_the_middle() {
        let mut view = Viewport::new(800.0, 600.0);
        let bounds = Bounds { min: Point::new(-3.0, 1.0), max: Point::new(9.0, 7.0) };
        view.fit(bounds, 40.0);
        assert!(near(view.to_screen(Point::new(3.0, 4.0)), ScreenPoint::new(400.0, 300.0)));
        assert!((view.to_screen(bounds.min).x - 40.0).abs() < 1e-6);
        view.resize(1000.0, 600.0);
        assert!(near(view.to_screen(Point::new(3.0, 4.0)), ScreenPoint::new(500.0, 300.0)));
    }
}
