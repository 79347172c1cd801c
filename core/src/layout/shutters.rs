use super::batter::takes_shutter;
use super::lookup::{Lookup, fail};
use crate::catalogue::{Catalogue, Item};
use crate::model::{Model, PlacedShutter};
use crate::results::Finding;
use crate::scheme::{Arrangement, Scheme};
use crate::sorting::sort;

pub fn place(scheme: &Scheme, catalogue: &Catalogue, model: &mut Model, findings: &mut Vec<Finding>) {
    for (index, drawn) in scheme.shutters.iter().enumerate() {
        let mark = format!("S{}", index + 1);
        let Some(face) = model.faces.iter().find(|face| face.of == drawn.face) else {
            findings.push(fail(
                drawn.id,
                sentence!("{} has lost its face: the edge or the pour that it stood on is gone.", &mark),
                sentence!("Delete the shutter or place it on another face."),
            ));
            continue;
        };
        if !takes_shutter(face) {
            findings.push(fail(
                drawn.id,
                sentence!("{} stands on a face that is neither upright nor a batter of 1 in 3 or steeper.", &mark),
                sentence!(
                    "Wall shutters are computed on such faces only; make the face steeper or carry it by falsework."
                ),
            ));
            continue;
        }
        let lookup = Lookup { catalogue, owner: drawn.id, mark: &mark };
        let is_beam = |item: &Item| item.beam().is_some();
        let facing = lookup.item(&drawn.facing, "facing", |item| item.board().is_some(), findings);
        let secondary = lookup.item(&drawn.secondary, "secondary", is_beam, findings);
        let primary = lookup.item(&drawn.primary, "primary", is_beam, findings);
        let (Some(facing), Some(secondary), Some(primary)) = (facing, secondary, primary) else { continue };

        let bottom_m = face.from.z.min(face.to.z) - drawn.below_m;
        let top_m = face.from.z.max(face.to.z) + drawn.above_m;
        let stretch = face.stretch();
        let levels = |spacing: crate::scheme::Spacing| -> Vec<f64> {
            spacing.positions((top_m - bottom_m) * stretch).iter().map(|offset| bottom_m + offset / stretch).collect()
        };
        let (secondaries_m, primaries_m) = match drawn.arrangement {
            Arrangement::UprightPrimaries => {
                (levels(drawn.secondaries), drawn.primaries.positions(scheme.bays.length_m))
            }
            Arrangement::LevelPrimaries => {
                (drawn.secondaries.positions(scheme.bays.length_m), tie_levels(scheme, drawn.id))
            }
        };
        let face = face.clone();
        model.shutters.push(PlacedShutter {
            id: drawn.id,
            mark,
            pour: face.of.pour,
            outward: face.normal.x.signum(),
            face,
            arrangement: drawn.arrangement,
            bottom_m,
            top_m,
            facing,
            secondary,
            secondaries_m,
            primary,
            primaries_m,
            foot_held: drawn.foot_held,
            hold_down_kn: drawn.hold_down_kn.unwrap_or(0.0),
            hinge: drawn.hinge,
        });
    }
}

fn tie_levels(scheme: &Scheme, shutter: crate::scheme::Id) -> Vec<f64> {
    let mut levels: Vec<f64> = scheme.ties.iter().filter(|row| row.holds(shutter)).map(|row| row.z_m).collect();
    sort(&mut levels, f64::total_cmp);
    levels.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    levels
}
