//! What comes in and goes out at each level under a soffit, kN for the whole bay.

use super::bent::Bent;
use super::record::Record;
use super::soffit::Table;
use super::soffit_levels::Levels;
use super::soffit_load::{Strip, strips};
use crate::analysis::{FrameError, LoadCase, Solution};
use crate::model::{Face, FaceKind, Model, Pour};
use crate::results::{LedgerEntry, LedgerLevel};

/// The weight of a pour against what rests on falsework and on what is below.
pub fn concrete(pour: &Pour, model: &Model, under: &[&Face]) -> LedgerEntry {
    let density = pour.weight_kn / pour.volume_m3;
    let held = |face: &&&Face| {
        let by_falsework = model.falsework.iter().any(|falsework| falsework.faces.contains(face));
        face.kind == FaceKind::CastAgainst || by_falsework
    };
    let strips = strips(under.iter().filter(held).copied(), pour, &model.solid);
    let held_kn = strips.iter().map(Strip::area).sum::<f64>() * model.bay_m * density;
    let levels = vec![level("concrete on soffits and below", pour.weight_kn, held_kn)];
    LedgerEntry::new(pour.mark.clone(), "vertical, weight of the pour".into(), levels)
}

/// One position of the front, from facing to ground.
pub fn front(
    table: &Table,
    bent: &Bent,
    service: &Levels,
    front: usize,
    record: &mut Record,
) -> Result<(), FrameError> {
    let bents = service.bent_widths.len() as f64;
    let carried_m: f64 = service.bent_widths.iter().sum();
    let factorised = bent.frame.factorise()?;
    let mut case = LoadCase::default();
    let own_weight = bent.own_weight(1.0, &mut case);
    let own = factorised.solve(&case)?;
    let mut case = LoadCase::default();
    bent.vertical(&service.bent_loads[front], &mut case);
    let unit = factorised.solve(&case)?;
    let over_bents = |of: &dyn Fn(&Solution) -> f64| of(&unit) * carried_m + of(&own) * bents;
    let heads_kn = over_bents(&|solution| bent.heads_kn(solution));
    let ground_kn = over_bents(&|solution| bent.reactions(solution).iter().sum());

    let passed = &service.passed_kn[front];
    let mut levels: Vec<LedgerLevel> = passed.iter().map(|&(name, onto, from)| level(name, onto, from)).collect();
    let onto_bents = passed.last().map_or(0.0, |&(_, _, from)| from);
    levels.push(level("heads of the bents", onto_bents + own_weight.on_heads_kn * bents, heads_kn));
    levels.push(level("legs and bases", heads_kn + own_weight.below_kn * bents, ground_kn));
    let case = format!("vertical, {}", table.fronts[front].name);
    record.results.ledger.push(LedgerEntry::new(table.pour.mark.clone(), case, levels));
    Ok(())
}

fn level(name: &str, into_kn: f64, out_kn: f64) -> LedgerLevel {
    LedgerLevel { level: name.into(), into_kn, out_kn }
}
