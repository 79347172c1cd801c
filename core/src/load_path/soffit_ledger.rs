//! What comes in and goes out at each level under a soffit, kN for the whole bay.

use super::bent_effects::{Effects, Push};
use super::record::Record;
use super::soffit_bent::Run;
use super::soffit_levels::Levels;
use super::soffit_load::{Strip, strips};
use super::soffit_states::State;
use crate::actions::combinations::Stage;
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
    LedgerEntry::new(pour.mark.clone(), sentence!("vertical, weight of the pour"), levels)
}

/// Each stage and front, from facing to ground: of each bent its own weight, and a share of what its state bears beyond
/// that.
pub fn vertical(run: &Run, service: &Levels, states: &[State], record: &mut Record) {
    let Run { table, widest, cases, .. } = run;
    let bents = service.bent_widths.len() as f64;
    let share = service.bent_widths.iter().sum::<f64>() / widest;
    let own_weight = cases.own_weight;
    for state in states.iter().filter(|state| state.pushed.is_none()) {
        let over_bents = |of: &dyn Fn(&Effects) -> f64| {
            let own = of(state.units.own());
            own * bents + (of(&state.effects) - own) * share
        };
        let heads_kn = over_bents(&|effects| effects.heads_kn);
        let ground_kn = over_bents(&|effects| effects.reactions.iter().sum());

        let passed = &service.passed_kn[state.front];
        let mut levels: Vec<LedgerLevel> = passed.iter().map(|&(name, onto, from)| level(name, onto, from)).collect();
        let onto_bents = passed.last().map_or(0.0, |&(_, _, from)| from);
        levels.push(level("heads of the bents", onto_bents + own_weight.on_heads_kn * bents, heads_kn));
        levels.push(level("legs and bases", heads_kn + own_weight.below_kn * bents, ground_kn));
        let case = sentence!("vertical, {}", table.fronts[state.front].label());
        record.results.ledger.push(LedgerEntry::new(table.pour.mark.clone(), case, levels));
    }
}

/// What pushes the most loaded bent hardest to one side at each stage.
pub fn sideways(run: &Run, states: &[State], record: &mut Record) {
    let Run { table, bent, cases, .. } = run;
    let right = cases.of_parts(|unit| bent.forces(unit).map(|(_, [right, _])| right).sum());
    let on_top = cases.of_parts(|unit| bent.sideways_on_top_kn(unit));
    for stage in [Stage::Erected, Stage::Concreting, Stage::Loaded] {
        let at_stage = states.iter().filter(|state| table.fronts[state.front].stage == stage);
        let pushed =
            at_stage.flat_map(|state| state.pushes.iter().chain(&state.pushed).map(move |push| (state, *push)));
        let size = |push: Push| push.sum(right);
        let Some((state, push)) = pushed.max_by(|a, b| size(a.1).total_cmp(&size(b.1))) else { continue };

        let on_top = push.sum(on_top);
        let held = |of: fn(&Effects) -> f64| {
            let added = if state.pushed.is_some() { 0.0 } else { push.sum(state.units.of_parts(of)) };
            of(&state.effects) + added
        };
        let heads_kn = held(|effects| effects.heads_sideways_kn);
        let levels = vec![
            level("heads of the bent", on_top, heads_kn),
            level(
                "legs, bracing and bases",
                heads_kn + size(push) - on_top,
                held(|effects| effects.ground_sideways_kn),
            ),
        ];
        let case =
            sentence!("sideways, most loaded bent of {}, {}", &table.falsework.mark, table.fronts[state.front].label());
        record.results.ledger.push(LedgerEntry::new(table.pour.mark.clone(), case, levels));
    }
}

fn level(name: &'static str, into_kn: f64, out_kn: f64) -> LedgerLevel {
    LedgerLevel { level: name, into_kn, out_kn }
}
