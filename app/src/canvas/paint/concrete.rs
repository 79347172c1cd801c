//! The concrete of each pour, its joints, and the ground.

use super::{Figure, Path};
use crate::editor::ends;
use crate::language::t;
use crate::units;
use falsewright_core::geometry::Point;
use falsewright_core::model::{Model, Pour, Role};
use falsewright_core::scheme::{Corner, Scheme, Section};

/// Pours, from the lowest up; those below the one now poured are hatched as earlier concrete.
pub fn pours(model: &Model) -> Vec<Figure> {
    let fresh = fresh_pour(model);
    model
        .pours
        .iter()
        .map(|pour| {
            let earlier = fresh.is_some_and(|fresh| pour.top_m <= fresh.bottom_m + 1e-6);
            let label = say!("Pour {}, {} in each bay", pour.mark, units::quantity(pour.volume_m3, "m³", 1));
            let mut figure = Figure::new(format!("pour-{}", pour.mark), label, None);
            let mut path = Path::default();
            for ring in pour.regions.iter().flatten() {
                path.ring(ring.iter().copied());
            }
            figure.stroke(if earlier { "concrete cast" } else { "concrete fresh" }, path);
            figure
        })
        .collect()
}

/// The highest pour that has equipment, else the highest.
fn fresh_pour(model: &Model) -> Option<&Pour> {
    let equipped = |pour: &&Pour| {
        model.shutters.iter().any(|shutter| shutter.pour == pour.id)
            || model.falsework.iter().any(|falsework| falsework.pour == pour.id)
    };
    model.pours.iter().rev().find(equipped).or(model.pours.last())
}

/// The rings as drawn, for a section that cannot be made into pours.
pub fn rings(section: &Section) -> Figure {
    let mut figure = Figure::new("section", t("Section as drawn"), None);
    let mut path = Path::default();
    let rings = std::iter::once(&section.outline).chain(section.cells.iter().map(|cell| &cell.corners));
    for ring in rings {
        path.ring(ring.iter().map(at));
    }
    figure.stroke("concrete unformed", path);
    figure
}

/// Construction joints, a little longer than the section is wide.
pub fn joints(scheme: &Scheme) -> Vec<Figure> {
    let Some((left, right)) = extent(&scheme.section) else { return Vec::new() };
    scheme
        .section
        .joints
        .iter()
        .enumerate()
        .map(|(index, joint)| {
            let label = say!("Construction joint at level {}", units::level(joint.z_m));
            let mut figure = Figure::new(format!("joint-J{}", index + 1), label, Some(joint.id));
            let mut path = Path::default();
            path.line([Point::new(left - 0.35, joint.z_m), Point::new(right + 0.35, joint.z_m)]);
            figure.stroke("joint", path);
            figure
        })
        .collect()
}

/// Left and right end of the outline.
pub fn extent(section: &Section) -> Option<(f64, f64)> {
    let x = |corner: &Corner| corner.x_m;
    let left = section.outline.iter().map(x).min_by(f64::total_cmp)?;
    Some((left, section.outline.iter().map(x).max_by(f64::total_cmp)?))
}

/// The ground line at both sides of the section and under all props, with its hatch below.
pub fn ground(scheme: &Scheme, model: Option<&Model>) -> Figure {
    const REACH_M: f64 = 2.5;
    const PAST_PROP_M: f64 = 0.4;
    const DEPTH_M: f64 = 0.25;
    let level = scheme.ground.level_m;
    let mut figure = Figure::new("ground", say!("Ground at level {}", units::level(level)), None);
    let (left, right) = extent(&scheme.section).unwrap_or((-4.0, 4.0));
    let lowest = scheme.section.outline.iter().map(|corner| corner.z_m).min_by(f64::total_cmp).unwrap_or(level);
    let under = if lowest < level - 1e-6 { lowest } else { level };
    let parts = model.into_iter().flat_map(|model| &model.parts).filter(|part| part.role == Role::Prop);
    let reach = |reach: [f64; 2], end: Point| [reach[0].min(end.x - PAST_PROP_M), reach[1].max(end.x + PAST_PROP_M)];
    let [from, to] = parts.flat_map(ends).fold([left - REACH_M, right + REACH_M], reach);
    let profile = [
        Point::new(from, level),
        Point::new(left, level),
        Point::new(left, under),
        Point::new(right, under),
        Point::new(right, level),
        Point::new(to, level),
    ];
    let (mut line, mut hatch) = (Path::default(), Path::default());
    line.line(profile);
    hatch.ring(profile.into_iter().chain(profile.into_iter().rev().map(|p| Point::new(p.x, p.z - DEPTH_M))));
    figure.stroke("ground-hatch", hatch);
    figure.stroke("ground-line", line);
    figure
}

fn at(corner: &Corner) -> Point {
    Point::new(corner.x_m, corner.z_m)
}
