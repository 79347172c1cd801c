use super::lookup::{Lookup, fail, warn};
use crate::catalogue::{Catalogue, Item};
use crate::geometry::{Boundary, Point, Side};
use crate::model::{Face, FaceKind, Leg, LegKind, Model, PlacedFalsework, PlacedOpening};
use crate::results::Finding;
use crate::scheme::{Direction, Falsework, Opening, Scheme};

/// Transfer beams reach this far beyond the outer trestle legs.
const BEAM_END_M: f64 = 0.15;

pub fn place(scheme: &Scheme, catalogue: &Catalogue, model: &mut Model, findings: &mut Vec<Finding>) {
    for (index, drawn) in scheme.falsework.iter().enumerate() {
        let mark = format!("F{}", index + 1);
        let Some(faces) = soffit(model, drawn) else {
            findings.push(fail(
                drawn.id,
                format!("{mark} has lost its soffit: the edge or the pour that it carried is gone."),
                "Delete the falsework or place it under another soffit.",
            ));
            continue;
        };
        if let Some(placed) = one(drawn, mark, faces, &model.solid, scheme, catalogue, findings) {
            model.falsework.push(placed);
        }
    }
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
    chain.sort_by(|a, b| a.from.x.min(a.to.x).total_cmp(&b.from.x.min(b.to.x)));
    Some(chain)
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
            format!("{mark}: no room for legs, only {:.0} mm between floor and primaries.", (head_m - floor_m) * 1e3),
            "Use shallower members.",
        ));
        return None;
    }

    let drawn_opening = scheme.openings.iter().find(|opening| opening.falsework == drawn.id);
    let opening = drawn_opening.and_then(|opening| {
        let index = scheme.openings.iter().position(|other| other.id == opening.id).unwrap_or(0);
        let beside_m = opening.guard_m + scheme.limits.access_tolerance_m;
        place_opening(opening, format!("A{}", index + 1), beside_m, plate.width_m, floor_m, catalogue, findings)
    });

    let mut placing = Legs { legs: Vec::new(), tied: Vec::new(), braced: Vec::new(), mark: &mark, owner: drawn.id };
    placing.stand(drawn, [left, right], head_m, &floor, plate.thickness_m, opening.as_ref(), findings);
    let Legs { legs, tied, braced, .. } = placing;
    if legs.len() < 2 {
        findings.push(fail(
            drawn.id,
            format!("{mark} stands on fewer than two lines of legs."),
            "Add lines of legs under the soffit.",
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

fn place_opening(
    drawn: &Opening,
    mark: String,
    beside_m: f64,
    base_width_m: f64,
    floor_m: f64,
    catalogue: &Catalogue,
    findings: &mut Vec<Finding>,
) -> Option<PlacedOpening> {
    let lookup = Lookup { catalogue, owner: drawn.id, mark: &mark };
    let transfer = lookup.item(&drawn.transfer, "transfer beam", |item| item.beam().is_some(), findings);
    let trestle = lookup.item(&drawn.trestle, "trestle leg", |item| item.leg().is_some(), findings);
    let (transfer, trestle) = (transfer?, trestle?);
    let stand_off = beside_m + trestle.leg()?.footprint_m.max(base_width_m / 2.0);
    let inner = [drawn.left_m - stand_off, drawn.left_m + drawn.width_m + stand_off];
    let trestles_m = [inner[0] - drawn.trestle_m, inner[0], inner[1], inner[1] + drawn.trestle_m];
    Some(PlacedOpening {
        beam_m: [trestles_m[0] - BEAM_END_M, trestles_m[3] + BEAM_END_M],
        underside_m: floor_m + drawn.beam_underside_m,
        trestles_m,
        drawn: drawn.clone(),
        mark,
        transfer,
        trestle,
    })
}

struct Legs<'a> {
    legs: Vec<Leg>,
    tied: Vec<(usize, usize)>,
    braced: Vec<(usize, usize)>,
    mark: &'a str,
    owner: crate::scheme::Id,
}

impl Legs<'_> {
    #[allow(clippy::too_many_arguments)]
    fn stand(
        &mut self,
        drawn: &Falsework,
        [left, right]: [f64; 2],
        head_m: f64,
        floor: &dyn Fn(f64) -> f64,
        plate_m: f64,
        opening: Option<&PlacedOpening>,
        findings: &mut Vec<Finding>,
    ) {
        let beam_top =
            opening.map(|opening| opening.underside_m + opening.transfer.beam().map_or(0.0, |beam| beam.depth_m));
        let mut braced_from = Vec::new();
        for (index, line) in drawn.leg_lines.iter().enumerate() {
            let mark = format!("L{}", index + 1);
            if line.x_m <= left || line.x_m >= right {
                findings.push(fail(
                    line.id,
                    format!("{}: {mark} at x = {:.3} m does not stand under the soffit.", self.mark, line.x_m),
                    "Move the line between the walls.",
                ));
                continue;
            }
            let leg = |kind, foot_m| Leg { owner: line.id, mark: mark.clone(), x_m: line.x_m, kind, foot_m, head_m };
            match (opening, beam_top) {
                (Some(opening), Some(top)) if line.x_m > opening.beam_m[0] && line.x_m < opening.beam_m[1] => {
                    let clear = 0.15;
                    if opening.trestles_m.iter().any(|x| (x - line.x_m).abs() < clear)
                        || line.x_m < opening.trestles_m[1]
                        || line.x_m > opening.trestles_m[2]
                    {
                        findings.push(warn(
                            line.id,
                            format!(
                                "{}: {mark} falls into the trestle of {} and is left out.",
                                self.mark, opening.mark
                            ),
                            "Move the line clear of the trestle or delete it.",
                        ));
                    } else {
                        self.legs.push(leg(LegKind::Stub, top));
                    }
                }
                _ => {
                    if line.braced {
                        braced_from.push(line.x_m);
                    }
                    self.legs.push(leg(LegKind::Leg, floor(line.x_m) + plate_m));
                }
            }
        }
        if let (Some(opening), Some(top)) = (opening, beam_top) {
            if top > head_m + 1e-9 {
                findings.push(fail(
                    opening.drawn.id,
                    format!(
                        "{}: the transfer beams stand {:.0} mm too high to fit under the primaries.",
                        opening.mark,
                        (top - head_m) * 1e3
                    ),
                    "Lower them, or use shallower beams or members.",
                ));
            }
            for (index, x) in opening.trestles_m.into_iter().enumerate() {
                let leg = |mark: String, kind, foot_m, head_m| Leg {
                    owner: opening.drawn.id,
                    mark,
                    x_m: x,
                    kind,
                    foot_m,
                    head_m,
                };
                let mark = format!("{}t{}", opening.mark, index + 1);
                self.legs.push(leg(mark.clone(), LegKind::Trestle, floor(x) + plate_m, opening.underside_m));
                self.legs.push(leg(format!("{mark} post"), LegKind::Stub, top, head_m));
            }
        }
        self.legs.sort_by(|a, b| a.x_m.total_cmp(&b.x_m).then(a.foot_m.total_cmp(&b.foot_m)));
        self.brace(&braced_from);
        if drawn.lateral == crate::scheme::Lateral::Braced && self.braced.is_empty() {
            findings.push(fail(
                self.owner,
                format!("{} has no diagonals to take its horizontal load.", self.mark),
                "Brace at least one gap between lines of legs, or state that cast walls hold it.",
            ));
        }
    }

    /// Ties neighbouring legs on the floor together; trestles always have diagonals.
    fn brace(&mut self, from: &[f64]) {
        let standing: Vec<usize> =
            (0..self.legs.len()).filter(|&index| self.legs[index].kind != LegKind::Stub).collect();
        for pair in standing.windows(2) {
            let (a, b) = (&self.legs[pair[0]], &self.legs[pair[1]]);
            let trestle = a.kind == LegKind::Trestle && b.kind == LegKind::Trestle;
            let over_opening = self.legs[pair[0]..pair[1]]
                .iter()
                .any(|leg| leg.kind == LegKind::Stub && leg.x_m > a.x_m + 1e-9 && leg.x_m < b.x_m - 1e-9);
            let pair = (pair[0], pair[1]);
            if over_opening || (trestle && a.mark.ends_with("t2")) {
                continue;
            }
            self.tied.push(pair);
            if trestle || from.contains(&a.x_m) {
                self.braced.push(pair);
            }
        }
    }
}
