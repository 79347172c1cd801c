//! Straight members out of a rough freehand stroke.

mod members;
mod rounding;
mod simplify;

pub use members::Bend;
pub use rounding::Sheet;

use falsewright_core::geometry::{Edge, Point};
use members::Members;

/// A stroke nearer than this to a straight line is one, as a part of its length.
const STRAIGHT: f64 = 0.06;

/// A straight stroke this far off level and plumb is the diagonal of a rectangle: tan 10°.
const SLANTING: f64 = 0.176;

/// Corners stand out by this part of the stroke's size at least.
const WOBBLE: f64 = 0.015;

/// Ends nearer than this part of the length meet.
const GAP: f64 = 0.08;

/// What a stroke was meant to be.
#[derive(Clone, Debug, PartialEq)]
pub enum Sketch {
    /// The rectangle of which a straight slanting stroke is the diagonal, by the ends of the stroke.
    Rectangle([Point; 2]),
    /// A ring, its corners once round.
    Ring(Vec<Bend>),
    /// Members from one end to the other.
    Line(Vec<Point>),
}

/// Whether a stroke is so far the diagonal of a rectangle.
pub fn diagonal(stroke: &[Point], finest_m: f64) -> Option<[Point; 2]> {
    let (&first, &last) = stroke.first().zip(stroke.last())?;
    let chord = Edge::new(first, last);
    let (along, allowed) = (chord.vector(), (STRAIGHT * chord.length()).max(0.5 * finest_m));
    let straight = stroke.iter().all(|p| (chord.nearest(*p) - *p).length() <= allowed);
    let slanting = along.x.abs().min(along.z.abs()) > SLANTING * along.x.abs().max(along.z.abs());
    (straight && slanting).then_some([first, last])
}

/// Reads a stroke, and gives its members round places on the sheet; none where it is too small to be meant. A length
/// of `finest_m` is as near as a hand can draw at this scale.
pub fn read(stroke: &[Point], finest_m: f64, sheet: &Sheet) -> Option<Sketch> {
    let whole_m = simplify::length(stroke);
    if !whole_m.is_finite() || whole_m < 3.0 * finest_m {
        return None;
    }
    if let Some(ends) = diagonal(stroke, finest_m) {
        return Some(Sketch::Rectangle(ends));
    }
    let even = simplify::evenly(stroke, finest_m / 2.0);
    let tolerance_m = finest_m.max(WOBBLE * spread(&even));
    let Some(ring) = simplify::once_round(&even, (GAP * whole_m).max(2.5 * finest_m)) else {
        let mut members = Members::fit(&even, false, tolerance_m);
        sheet.round(&mut members, finest_m);
        return Some(Sketch::Line(members.points()));
    };
    let mut members = Members::fit(&ring, true, tolerance_m);
    sheet.round(&mut members, finest_m);
    let bends = rounding::round_bends(members.bends(), &members);
    let meant = bends.len() >= 3 && area(&bends).abs() > (4.0 * finest_m) * (4.0 * finest_m);
    meant.then_some(Sketch::Ring(bends))
}

/// The corners by which a stroke goes on from a point, its end last; only its end where it is straight.
pub fn onward(from: Point, stroke: &[Point], finest_m: f64, sheet: &Sheet) -> Vec<Point> {
    let whole: Vec<Point> = std::iter::once(from).chain(stroke.iter().copied()).collect();
    let Some(&last) = stroke.last() else { return Vec::new() };
    let chord = Edge::new(from, last);
    let off = whole.iter().map(|p| (chord.nearest(*p) - *p).length()).fold(0.0, f64::max);
    let straight_m = (STRAIGHT * simplify::length(&whole)).max(2.0 * finest_m);
    if off <= straight_m || !simplify::length(&whole).is_finite() {
        return vec![last];
    }
    let even = simplify::evenly(&whole, finest_m / 2.0);
    let mut members = Members::fit(&even, false, finest_m.max(WOBBLE * spread(&even)));
    sheet.round(&mut members, finest_m);
    members.start_at(from);
    members.points().split_off(1)
}

fn spread(points: &[Point]) -> f64 {
    crate::editor::Bounds::around(points.iter().copied()).map_or(0.0, |bounds| (bounds.max - bounds.min).length())
}

fn area(ring: &[Bend]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| a.at.cross(b.at)).sum::<f64>() / 2.0
}

#[cfg(test)]
mod tests;
