//! Pressure on the shutters, and moments and deflections along the members of the section plane.

use super::{Figure, Path};
use crate::language::member;
use crate::units;
use falsewright_core::geometry::Point;
use falsewright_core::model::{Model, PlacedShutter};
use falsewright_core::results::{Diagram, PressureDiagram, Results, Station};

/// Length on the drawing of the greatest pressure.
const GREATEST_PRESSURE_M: f64 = 0.22;
/// Length on the drawing of the greatest moment or deflection.
const GREATEST_M: f64 = 0.3;
/// What is less would be written as 0, in mm and in kNm.
const LEAST_WRITTEN: f64 = 0.05;

/// A diagram with the place and text of its greatest value.
pub struct Labelled {
    /// The diagram.
    pub figure: Figure,
    /// Where its greatest value stands.
    pub at: Point,
    /// The value with its unit; none where it would be written as 0.
    pub text: Option<String>,
}

/// Pressures, drawn in the concrete, pushing at each shutter.
pub fn pressures(model: &Model, results: &Results) -> Vec<Labelled> {
    let all = results.pressures.iter().flat_map(|pressure| &pressure.points);
    let metres_per_kpa = GREATEST_PRESSURE_M / all.map(|point| point.1).fold(1e-9, f64::max);
    let diagram = |pressure: &PressureDiagram| {
        let shutter = model.shutter(pressure.shutter)?;
        let face = |z: f64| Point::new(face_x(shutter, z), z);
        let tail = |(z, kpa): (f64, f64)| face(z) - Point::new(shutter.outward * kpa * metres_per_kpa, 0.0);
        let &(bottom, _) = pressure.points.first()?;
        let &(top, _) = pressure.points.last()?;
        let greatest = pressure.points.iter().copied().max_by(|a, b| a.1.total_cmp(&b.1))?;
        let label = say!("Pressure on {}, at most {}", shutter.mark, units::quantity(greatest.1, "kPa", 1));
        let mut figure = Figure::new(format!("pressure-{}", shutter.mark), label, None);
        let (mut area, mut arrows) = (Path::default(), Path::default());
        area.ring(pressure.points.iter().map(|&point| tail(point)).chain([face(top), face(bottom)]));
        for z in levels(bottom, top) {
            let kpa = at_level(&pressure.points, z);
            if kpa * metres_per_kpa > 0.06 {
                arrow(&mut arrows, tail((z, kpa)), face(z));
            }
        }
        figure.stroke("pressure-area", area);
        figure.stroke("pressure-arrows", arrows);
        Some(Labelled { figure, at: tail(greatest), text: Some(units::quantity(greatest.1, "kPa", 0)) })
    };
    results.pressures.iter().filter_map(diagram).collect()
}

/// Deflected shapes, exaggerated, or moments on the side that they stretch.
pub fn along_members(diagrams: &[Diagram], moments: bool) -> Vec<Labelled> {
    let value = |station: &Station| if moments { -station.moment_knm } else { station.deflection_m };
    let all = diagrams.iter().flat_map(|diagram| &diagram.stations);
    let greatest = all.map(|station| value(station).abs()).fold(0.0, f64::max);
    if greatest <= 0.0 {
        return Vec::new();
    }
    let draw = |diagram: &Diagram| {
        let axis = (diagram.to - diagram.from).unit();
        let place = |station: &Station| {
            diagram.from + axis * station.s_m + axis.left() * (value(station) * GREATEST_M / greatest)
        };
        let peak = diagram.stations.iter().max_by(|a, b| value(a).abs().total_cmp(&value(b).abs()))?;
        let (size, unit) = if moments { (peak.moment_knm.abs(), "kNm") } else { (peak.deflection_m.abs() * 1e3, "mm") };
        let text = units::quantity(size, unit, 1);
        let kind = if moments { "moment" } else { "deflection" };
        let of = member(&diagram.member);
        let label = if moments {
            say!("Moment of {}, at most {}", of, text)
        } else {
            say!("Deflection of {}, at most {}", of, text)
        };
        let key = format!("{kind}-{}", diagram.member.replace(' ', "-"));
        let mut figure = Figure::new(key, label, None);
        let shape = diagram.stations.iter().map(place);
        let mut path = Path::default();
        if moments {
            let ends = [diagram.to, diagram.from];
            path.ring(shape.chain(ends));
        } else {
            path.line(shape);
        }
        figure.stroke(kind, path);
        Some(Labelled { figure, at: place(peak), text: (size >= LEAST_WRITTEN).then_some(text) })
    };
    diagrams.iter().filter_map(draw).collect()
}

fn face_x(shutter: &PlacedShutter, z: f64) -> f64 {
    let (low, high) = (shutter.face.from, shutter.face.to);
    let rise = high.z - low.z;
    if rise.abs() < 1e-9 { low.x } else { low.lerp(high, (z - low.z) / rise).x }
}

fn at_level(points: &[(f64, f64)], z: f64) -> f64 {
    let within = points.windows(2).find(|pair| pair[0].0 <= z && z <= pair[1].0);
    within.map_or(0.0, |pair| {
        let part = (z - pair[0].0) / (pair[1].0 - pair[0].0).max(1e-9);
        pair[0].1 + (pair[1].1 - pair[0].1) * part
    })
}

fn levels(bottom: f64, top: f64) -> impl Iterator<Item = f64> {
    const STEP_M: f64 = 0.4;
    let count = ((top - bottom) / STEP_M).clamp(0.0, 100.0) as usize;
    (0..count).map(move |i| bottom + (i as f64 + 0.5) * STEP_M)
}

fn arrow(path: &mut Path, tail: Point, tip: Point) {
    let back = (tail - tip).unit() * 0.06;
    let side = back.left() * 0.45;
    path.line([tail, tip]).line([tip + back + side, tip, tip + back - side]);
}
