//! Parts as they are seen on a view: end-on where they run toward the eye, else from the side.

use super::Path;
use crate::editor::View;
use falsewright_core::catalogue::{Item, Kind, Section};
use falsewright_core::geometry::Point;
use falsewright_core::model::{Part, Solid};

/// A solid at depth 0 of a view: two that are equal so are drawn alike.
pub fn flat(view: View, mut solid: Solid) -> Solid {
    let depth = match view {
        View::Elevation => 0,
        View::Section => 1,
        View::Plan => 2,
    };
    match &mut solid {
        Solid::Bar { from, to, .. } => (from[depth], to[depth]) = (0.0, 0.0),
        Solid::Plate { centre, .. } => centre[depth] = 0.0,
        Solid::Sheet { .. } => {}
    }
    solid
}

/// Draws a part; `item` tells the shape of what is seen end-on.
pub fn draw(path: &mut Path, view: View, part: &Part, item: Option<&Item>) {
    match part.solid {
        Solid::Bar { from, to, size_m, breadth_m } => {
            let (start, end) = (view.project(from), view.project(to));
            let runs_along_bay = (to[1] - from[1]).abs() > 1e-6;
            let (width, seen_end_on) = match view {
                View::Section => (size_m[0], size_m),
                View::Elevation => (if runs_along_bay { size_m[1] } else { breadth_m }, [breadth_m, size_m[0]]),
                View::Plan => (if runs_along_bay { size_m[0] } else { breadth_m }, [size_m[0], breadth_m]),
            };
            if (end - start).length() <= 1e-6 {
                end_on(path, start, seen_end_on, item.map(|item| &item.kind));
            } else if view == View::Section {
                path.bar(start, end, width);
            } else {
                for off in part.abreast_m() {
                    let beside = view.project([0.0, off, 0.0]);
                    path.bar(start + beside, end + beside, width);
                }
            }
        }
        // From above and from outside a board is as long as the bay.
        Solid::Sheet { from, to, length_m, .. } if view != View::Section => {
            let corners = [[from.x, 0.0, from.z], [to.x, length_m, to.z]].map(|corner| view.project(corner));
            let [a, b] = corners;
            path.rectangle(Point::new(a.x.min(b.x), a.z.min(b.z)), Point::new(a.x.max(b.x), a.z.max(b.z)));
        }
        Solid::Sheet { .. } => _ = path.ring(part.solid.outline(0.0)),
        Solid::Plate { centre: [x, y, z], width_m, thickness_m, length_m } => {
            let low = view.project([x - width_m / 2.0, y - length_m / 2.0, z - thickness_m]);
            path.rectangle(low, view.project([x + width_m / 2.0, y + length_m / 2.0, z]));
        }
    }
}

fn end_on(path: &mut Path, centre: Point, size_m: [f64; 2], kind: Option<&Kind>) {
    let half = Point::new(size_m[0] / 2.0, size_m[1] / 2.0);
    let (low, high) = (centre - half, centre + half);
    match kind {
        Some(Kind::TimberBeam(beam)) => {
            let (flange, web) = (beam.depth_m * 0.2, beam.breadth_m * 0.35);
            i_shape(path, centre, size_m, beam.depth_m, flange, web);
        }
        Some(Kind::Steel(steel)) => {
            let webs = f64::from(steel.side_by_side.max(1));
            match steel.section {
                Section::I { h_mm, tw_mm, tf_mm, .. } | Section::Channel { h_mm, tw_mm, tf_mm, .. } => {
                    i_shape(path, centre, size_m, h_mm / 1e3, tf_mm / 1e3, webs * tw_mm / 1e3);
                }
                Section::Hollow { t_mm, .. } => {
                    let wall = Point::new(t_mm / 1e3, t_mm / 1e3);
                    path.rectangle(low, high).rectangle(low + wall, high - wall);
                }
                Section::Round { t_mm, .. } => {
                    let wall = Point::new(t_mm / 1e3, t_mm / 1e3);
                    path.ring(ellipse(centre, half)).ring(ellipse(centre, half - wall));
                }
            }
        }
        Some(Kind::Tie(tie)) => {
            // The plate under its nut, as it lies on an upright primary.
            if let Some(plate) = tie.plate {
                let half = Point::new(plate.width_m / 2.0, plate.length_m / 2.0);
                path.rectangle(centre - half, centre + half);
            }
            path.ring(ellipse(centre, half));
        }
        Some(Kind::Leg(_)) => {
            path.ring(ellipse(centre, half));
        }
        Some(Kind::Timber(_)) => {
            path.rectangle(low, high);
            path.line([low, high]).line([Point::new(low.x, high.z), Point::new(high.x, low.z)]);
        }
        _ => {
            path.rectangle(low, high);
        }
    }
}

/// Corners of an ellipse about its centre.
pub fn ellipse(centre: Point, half: Point) -> impl Iterator<Item = Point> {
    const CORNERS: u32 = 24;
    (0..CORNERS).map(move |corner| {
        let angle = std::f64::consts::TAU * f64::from(corner) / f64::from(CORNERS);
        centre + Point::new(half.x * libm::cos(angle), half.z * libm::sin(angle))
    })
}

/// Two flanges and a web, upright where the depth is along `z`, else lying.
fn i_shape(path: &mut Path, centre: Point, size_m: [f64; 2], depth: f64, flange: f64, web: f64) {
    let upright = (size_m[1] - depth).abs() <= (size_m[0] - depth).abs();
    let (b, h) = if upright { (size_m[0] / 2.0, size_m[1] / 2.0) } else { (size_m[1] / 2.0, size_m[0] / 2.0) };
    let (w, f) = ((web / 2.0).min(b), (h - flange).max(0.0));
    let corners =
        [(-b, -h), (b, -h), (b, -f), (w, -f), (w, f), (b, f), (b, h), (-b, h), (-b, f), (-w, f), (-w, -f), (-b, -f)];
    path.ring(corners.map(|(x, z)| centre + if upright { Point::new(x, z) } else { Point::new(z, x) }));
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::model::Role;
    use falsewright_core::scheme::Id;
    use std::sync::Arc;

    fn bounds(d: &str) -> [f64; 4] {
        let numbers: Vec<f64> = d.split(['M', 'L', 'Z', ' ']).filter_map(|number| number.parse().ok()).collect();
        let (x, z): (Vec<f64>, Vec<f64>) = numbers.chunks(2).map(|pair| (pair[0], pair[1])).unzip();
        let low = |v: &[f64]| v.iter().copied().fold(f64::INFINITY, f64::min);
        let high = |v: &[f64]| v.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        [low(&x), low(&z), high(&x), high(&z)]
    }

    fn part(count: u32, solid: Solid) -> Part {
        let (mark, item) = (Arc::default(), Arc::default());
        Part { mark, owner: Id(1), role: Role::Primary, item, count, solid }
    }

    #[test]
    fn a_bar_shows_its_length_and_the_size_across_it_on_every_view() {
        let seen = |view, count, solid| {
            let mut path = Path::default();
            draw(&mut path, view, &part(count, solid), None);
            bounds(&path.finish())
        };
        let bar = |from, to, breadth_m| Solid::Bar { from, to, size_m: [0.2, 0.2], breadth_m };
        let upright = bar([1.0, 4.0, 0.0], [1.0, 4.0, 3.0], 0.5);
        assert_eq!(seen(View::Section, 1, upright), [0.9, 0.0, 1.1, 3.0]);
        assert_eq!(seen(View::Elevation, 1, upright), [3.75, 0.0, 4.25, 3.0]);
        assert_eq!(seen(View::Plan, 1, upright), [0.9, 3.75, 1.1, 4.25]);
        let across = bar([0.0, 4.0, 2.0], [6.0, 4.0, 2.0], 0.5);
        assert_eq!(seen(View::Section, 1, across), [0.0, 1.9, 6.0, 2.1]);
        assert_eq!(seen(View::Plan, 1, across), [0.0, 3.75, 6.0, 4.25]);
        assert_eq!(seen(View::Plan, 2, across), [0.0, 3.5, 6.0, 4.5]);
        let along = Solid::Bar { from: [1.0, 0.0, 2.0], to: [1.0, 9.0, 2.0], size_m: [0.1, 0.2], breadth_m: 0.0 };
        assert_eq!(seen(View::Elevation, 1, along), [0.0, 1.9, 9.0, 2.1]);
        assert_eq!(seen(View::Plan, 1, along), [0.95, 0.0, 1.05, 9.0]);
    }

    #[test]
    fn a_sheet_lies_on_its_outward_side_or_below() {
        let sheet = |to: Point, outward: f64| {
            let mut path = Path::default();
            let from = Point::new(0.0, 0.0);
            let solid = Solid::Sheet { from, to, outward, thickness_m: 0.02, length_m: 9.0 };
            draw(&mut path, View::Section, &part(1, solid), None);
            bounds(&path.finish())
        };
        assert_eq!(sheet(Point::new(0.0, 3.0), 1.0), [0.0, 0.0, 0.02, 3.0]);
        assert_eq!(sheet(Point::new(0.0, 3.0), -1.0), [-0.02, 0.0, 0.0, 3.0]);
        assert_eq!(sheet(Point::new(3.0, 0.0), -1.0), [0.0, -0.02, 3.0, 0.0]);
    }

    #[test]
    fn a_beam_seen_end_on_fills_its_size_lying_or_upright() {
        for size in [[0.08, 0.2], [0.2, 0.08]] {
            let mut path = Path::default();
            i_shape(&mut path, Point::new(1.0, 1.0), size, 0.2, 0.04, 0.03);
            let [left, bottom, right, top] = bounds(&path.finish());
            assert!((right - left - size[0]).abs() < 1e-9 && (top - bottom - size[1]).abs() < 1e-9);
        }
    }
}
