//! Parts as they are seen in the section: end-on where they run along the culvert, else from the side.

use super::Path;
use falsewright_core::catalogue::{Item, Kind, Section};
use falsewright_core::geometry::Point;
use falsewright_core::model::Solid;

/// Draws a solid; `item` tells the shape of what is seen end-on.
pub fn draw(path: &mut Path, solid: &Solid, item: Option<&Item>) {
    match *solid {
        Solid::Bar { from, to, size_m } => {
            let (start, end) = (Point::new(from[0], from[2]), Point::new(to[0], to[2]));
            if (end - start).length() > 1e-6 {
                path.bar(start, end, size_m[0]);
            } else {
                end_on(path, start, size_m, item.map(|item| &item.kind));
            }
        }
        Solid::Sheet { from, to, thickness_m, outward, .. } => {
            let side = (to - from).unit().left();
            let turned = if side.x.abs() > 1e-9 { side.x * outward < 0.0 } else { side.z * outward < 0.0 };
            let out = side * if turned { -thickness_m } else { thickness_m };
            path.ring([from, to, to + out, from + out]);
        }
        Solid::Plate { centre, width_m, thickness_m, .. } => {
            let low = Point::new(centre[0] - width_m / 2.0, centre[2] - thickness_m);
            path.rectangle(low, Point::new(centre[0] + width_m / 2.0, centre[2]));
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
        Some(Kind::Timber(_)) => {
            path.rectangle(low, high);
            path.line([low, high]).line([Point::new(low.x, high.z), Point::new(high.x, low.z)]);
        }
        _ => {
            path.rectangle(low, high);
        }
    }
}

fn ellipse(centre: Point, half: Point) -> impl Iterator<Item = Point> {
    const CORNERS: u32 = 24;
    (0..CORNERS).map(move |corner| {
        let angle = std::f64::consts::TAU * f64::from(corner) / f64::from(CORNERS);
        centre + Point::new(half.x * angle.cos(), half.z * angle.sin())
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

    fn bounds(d: &str) -> [f64; 4] {
        let numbers: Vec<f64> = d.split(['M', 'L', 'Z', ' ']).filter_map(|number| number.parse().ok()).collect();
        let (x, z): (Vec<f64>, Vec<f64>) = numbers.chunks(2).map(|pair| (pair[0], pair[1])).unzip();
        let low = |v: &[f64]| v.iter().copied().fold(f64::INFINITY, f64::min);
        let high = |v: &[f64]| v.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        [low(&x), low(&z), high(&x), high(&z)]
    }

    #[test]
    fn a_sheet_lies_on_its_outward_side_or_below() {
        let sheet = |to: Point, outward: f64| {
            let mut path = Path::default();
            let from = Point::new(0.0, 0.0);
            draw(&mut path, &Solid::Sheet { from, to, outward, thickness_m: 0.02, length_m: 9.0 }, None);
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
