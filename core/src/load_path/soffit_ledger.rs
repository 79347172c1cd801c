//! What comes in and goes out at each level under a soffit, kN for the whole bay.

use super::record::Record;
use super::soffit_bent::{Run, State};
use super::soffit_levels::Levels;
use super::soffit_load::{Strip, strips};
use crate::analysis::{LoadCase, Solution};
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

/// One position of the front, from facing to ground: of each bent its own weight, and a share of what its state bears
/// beyond that.
pub fn front(run: &Run, service: &Levels, state: &State, record: &mut Record) {
    let Run { table, bent, widest, .. } = run;
    let bents = service.bent_widths.len() as f64;
    let share = service.bent_widths.iter().sum::<f64>() / widest;
    let over_bents = |of: &dyn Fn(&Solution) -> f64| {
        let own = of(&state.own);
        own * bents + (of(&state.solution) - own) * share
    };
    let heads_kn = over_bents(&|solution| bent.heads_kn(solution));
    let ground_kn = over_bents(&|solution| bent.reactions(solution).iter().sum());

    let own_weight = bent.own_weight(1.0, &mut LoadCase::default());
    let passed = &service.passed_kn[state.front];
    let mut levels: Vec<LedgerLevel> = passed.iter().map(|&(name, onto, from)| level(name, onto, from)).collect();
    let onto_bents = passed.last().map_or(0.0, |&(_, _, from)| from);
    levels.push(level("heads of the bents", onto_bents + own_weight.on_heads_kn * bents, heads_kn));
    levels.push(level("legs and bases", heads_kn + own_weight.below_kn * bents, ground_kn));
    let case = format!("vertical, {}", table.fronts[state.front].name);
    record.results.ledger.push(LedgerEntry::new(table.pour.mark.clone(), case, levels));
}

fn level(name: &str, into_kn: f64, out_kn: f64) -> LedgerLevel {
    LedgerLevel { level: name.into(), into_kn, out_kn }
}
