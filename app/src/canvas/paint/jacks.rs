//! Jacks under a bay that is moved, and its centre of gravity.

use super::profile::ellipse;
use super::{Figure, Path};
use crate::language::t;
use crate::units;
use falsewright_core::geometry::Point;
use falsewright_core::model::Model;
use falsewright_core::results::{BayMove, Check, Results};

/// Height of a jack and of its plate.
const HEIGHT_M: f64 = 0.28;
const PLATE_M: f64 = 0.05;
/// Half the width of its body and of its ram.
const HALF_BODY_M: f64 = 0.12;
const HALF_RAM_M: f64 = 0.07;
/// Radius of the sign of a centre of gravity.
const CENTRE_M: f64 = 0.09;

/// A figure for each line of jacks, and one for what they lift.
pub fn jacks(model: &Model, results: &Results) -> Vec<Figure> {
    let (Some(jacks), Some(moved)) = (&model.jacks, &results.moved) else { return Vec::new() };
    let half_plate = jacks.lift.plate_m / 2.0;
    let mut figures: Vec<Figure> = moved
        .lines
        .iter()
        .map(|line| {
            let force = units::quantity(line.force_kn, "kN", 0);
            let label = say!("{} lifting jacks of line {}, {} each", line.jacks, line.mark, force);
            let mut figure = Figure::new(format!("jack-{}", line.mark), label, None);
            let at = |x: f64, down: f64| Point::new(line.x_m + x, jacks.under_m - down);
            let mut path = Path::default();
            path.rectangle(at(-half_plate, HEIGHT_M), at(half_plate, HEIGHT_M - PLATE_M));
            path.rectangle(at(-HALF_BODY_M, HEIGHT_M - PLATE_M), at(HALF_BODY_M, HEIGHT_M / 3.0));
            path.rectangle(at(-HALF_RAM_M, HEIGHT_M / 3.0), at(HALF_RAM_M, 0.0));
            let member = line.member();
            let mut own = results.checks.iter().filter(|check| check.member == member);
            let short = line.force_kn < 0.0 || own.any(Check::fails);
            figure.stroke(if short { "jack short" } else { "jack" }, path);
            figure
        })
        .collect();
    figures.push(centre(moved));
    figures
}

fn centre(moved: &BayMove) -> Figure {
    let mut figure = Figure::new("centre-of-gravity", t("Centre of gravity of the concrete"), None);
    let (at, mut path) = (moved.centre, Path::default());
    path.ring(ellipse(at, Point::new(CENTRE_M, CENTRE_M)));
    path.line([at - Point::new(CENTRE_M, 0.0), at + Point::new(CENTRE_M, 0.0)]);
    path.line([at - Point::new(0.0, CENTRE_M), at + Point::new(0.0, CENTRE_M)]);
    figure.stroke("centre-of-gravity", path);
    figure
}
