use super::lookup::{Lookup, fail, warn};
use super::{legs, opening};
use crate::catalogue::{Catalogue, Item};
use crate::geometry::{Boundary, Point, Side};
use crate::model::{Face, FaceKind, Model, PlacedFalsework};
use crate::results::Finding;
use crate::scheme::{Direction, Falsework, Lateral, Scheme};
use crate::sentence::length_mm;
use crate::sorting::sort;

pub fn place(scheme: &Scheme, catalogue: &Catalogue, model: &mut Model, findings: &mut Vec<Finding>) {
    for (index, drawn) in scheme.falsework.iter().enumerate() {
        let mark = format!("F{}", index + 1);
        let Some(faces) = soffit(model, drawn) else {
            findings.push(fail(
                drawn.id,
                sentence!("{} has lost its soffit: the edge or the pour that it carried is gone.", &mark),
                sentence!("Delete the falsework or place it under another soffit."),
            ));
            continue;
        };
        let carried = |other: &&PlacedFalsework| other.faces.iter().any(|face| faces.contains(face));
        if let Some(other) = model.falsework.iter().find(carried) {
            findings.push(fail(
                drawn.id,
                sentence!("{} lies under the same concrete as {}, and is left out.", &mark, &other.mark),
                sentence!("Delete one of the two: falsework reaches under the slopes beside its soffit too."),
            ));
            continue;
        }
        if let Some(placed) = one(drawn, mark, faces, &model.solid, scheme, catalogue, findings) {
            if stands_on_own_pour(&placed, model) {
                findings.push(warn(
                    drawn.id,
                    sentence!("{} stands on a floor that is cast in the same pour as what it carries.", &placed.mark),
                    sentence!("Draw a construction joint at or above the floor, so that the floor is cast earlier."),
                ));
            }
            model.falsework.push(placed);
        }
    }
}

/// Whether the floor under a falsework is fresh when it is loaded.
fn stands_on_own_pour(placed: &PlacedFalsework, model: &Model) -> bool {
    let (left, right) = span(&placed.faces);
    let below = Point::new((left + right) / 2.0, placed.floor_m - 1e-3);
    model.pour(placed.pour).is_some_and(|pour| below.z > pour.bottom_m) && model.solid.contains(below)
}

/// The soffit of this falsework and the slopes that adjoin it, from left to right.
fn soffit(model: &Model, drawn: &Falsework) -> Option<Vec<Face>> {
    let under = |face: &&Face| {
        face.of.pour == drawn.soffit.pour && matches!(face.kind, FaceKind::Soffit | FaceKind::SlopeUnder)
    };
    let mut chain = vec![model.faces.iter().filter(under).find(|face| face.of == drawn.soffit)?.clone()];
    let meets = |a: &Face, b: &Face| (a.from - b.to).length() < 1e-6 || (a.to - b.from).length() < 1e-6;
    while let Some(next) = model
        .faces
        .iter()
        .filter(under)
        .find(|face| !chain.contains(face) && chain.iter().any(|known| meets(face, known)))
    {
        chain.push(next.clone());
    }
    sort(&mut chain, |a, b| a.from.x.min(a.to.x).total_cmp(&b.from.x.min(b.to.x)));
    Some(chain)
}

/// Where legs and an opening have to fit.
pub struct Room<'a> {
    /// Mark of the falsework.
    pub mark: &'a str,
    /// Left and right end of the soffit.
    pub ends_m: [f64; 2],
    /// Underside of the primaries.
    pub head_m: f64,
    /// Level of the floor in the middle.
    pub floor_m: f64,
    /// Level of the floor at any place.
    pub floor: &'a dyn Fn(f64) -> f64,
    /// Width and thickness of a base.
    pub plate_width_m: f64,
    pub plate_m: f64,
}

fn one(
    drawn: &Falsework,
    mark: String,
    faces: Vec<Face>,
    solid: &Boundary,
    scheme: &Scheme,
    catalogue: &Catalogue,
    findings: &mut Vec<Finding>,
) -> Option<PlacedFalsework> {
    let lookup = Lookup { catalogue, owner: drawn.id, mark: &mark };
    let is_beam = |item: &Item| item.beam().is_some();
    let facing = lookup.item(&drawn.facing, "facing", |item| item.board().is_some(), findings);
    let secondary = lookup.item(&drawn.secondary, "secondary", is_beam, findings);
    let primary = lookup.item(&drawn.primary, "primary", is_beam, findings);
    let leg = lookup.item(&drawn.leg, "leg", |item| item.leg().is_some(), findings);
    let base = lookup.item(&drawn.base, "base", |item| item.plate().is_some(), findings);
    let brace = lookup.item(&drawn.brace, "diagonal", |item| item.brace().is_some(), findings);
    let (facing, secondary, primary, leg, base, brace) = (facing?, secondary?, primary?, leg?, base?, brace?);

    let depth = |item: &Item| item.beam().map_or(0.0, |beam| beam.depth_m);
    let (left, right) = span(&faces);
    let soffit_m = faces.iter().filter(|face| face.of == drawn.soffit).map(lowest).fold(f64::INFINITY, f64::min);
    let head_m = soffit_m - facing.board()?.thickness_m - depth(&secondary) - depth(&primary);
    let plate = base.plate()?;
    let floor = |x: f64| solid.floor_below(Point::new(x, head_m), Side::After).unwrap_or(scheme.ground.level_m);
    let floor_m = floor((left + right) / 2.0);
    if head_m - floor_m < 0.3 {
        findings.push(fail(
            drawn.id,
            sentence!("{}: no room for legs, only {} between floor and primaries.", &mark, length_mm(head_m - floor_m)),
            sentence!("Use shallower members."),
        ));
        return None;
    }

    let room = Room {
        mark: &mark,
        ends_m: [left, right],
        head_m,
        floor_m,
        floor: &floor,
        plate_width_m: plate.width_m,
        plate_m: plate.thickness_m,
    };
    let opening = opening::place(drawn.id, &room, scheme, catalogue, findings);
    let legs = legs::place(drawn, &room, opening.as_ref(), findings);
    let (tied, braced) = legs::bracing(drawn, &legs, opening.as_ref());
    if drawn.lateral == Lateral::Braced && braced.is_empty() {
        findings.push(fail(
            drawn.id,
            sentence!("{} has no diagonals to take its horizontal load.", &mark),
            sentence!("Brace at least one gap between lines of legs, or state that cast walls hold it."),
        ));
    }
    if legs.len() < 2 {
        findings.push(fail(
            drawn.id,
            sentence!("{} stands on fewer than two lines of legs.", &mark),
            sentence!("Add lines of legs under the soffit."),
        ));
        return None;
    }
    let spread = match drawn.direction {
        Direction::Across => right - left,
        Direction::Along => scheme.bays.length_m,
    };
    let start = if drawn.direction == Direction::Across { left } else { 0.0 };
    Some(PlacedFalsework {
        id: drawn.id,
        pour: drawn.soffit.pour,
        faces,
        direction: drawn.direction,
        secondaries_m: drawn.secondaries.positions(spread).iter().map(|offset| start + offset).collect(),
        head_m,
        bents_m: drawn.bents.positions(scheme.bays.length_m),
        legs,
        tied,
        braced,
        lift_m: drawn.lift_m,
        lateral: drawn.lateral,
        bearing: drawn.bearing,
        slab: drawn.slab.clone(),
        floor_m,
        opening,
        mark,
        facing,
        secondary,
        primary,
        leg,
        base,
        brace,
    })
}

/// The left and right end of a chain of faces.
pub fn span(faces: &[Face]) -> (f64, f64) {
    faces.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(left, right), face| {
        (left.min(face.from.x).min(face.to.x), right.max(face.from.x).max(face.to.x))
    })
}

fn lowest(face: &Face) -> f64 {
    face.from.z.min(face.to.z)
}
