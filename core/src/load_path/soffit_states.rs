//! Every state of the works on the most loaded bent: what stands and lies on it, and what pushes it sideways.

use super::bent::Bent;
use super::bent_effects::{Effects, Push, UnitCases, Units};
use super::line::Envelope;
use super::record::Record;
use super::soffit_bent::Run;
use super::soffit_levels::Levels;
use super::soffit_load::thrust;
use super::soffit_wind::pressure_kpa;
use crate::actions::combinations::leaning;
use crate::actions::factors::Factors;
use crate::analysis::{Factorised, FrameError, Solution, WhatIf, Without};
use crate::checks::stability::Standing;
use crate::results::{Finding, Severity};
use std::rc::Rc;

/// Bases pulled by more than this lift, kN.
const LIFTS_KN: f64 = 1e-6;

/// One state of the most loaded bent.
pub struct State {
    /// Index of the stage and front.
    pub front: usize,
    /// Legs that have lifted off their bases, by index.
    pub lifted: Vec<usize>,
    /// Legs that lift first, and what would hold them down with the factors of balance, kN.
    pub hold_down_kn: Vec<(usize, f64)>,
    pub solution: Rc<Solution>,
    pub effects: Effects,
    /// With the same legs lifted.
    pub units: Rc<Units>,
    /// What may push it sideways and lifts no more legs.
    pub pushes: Vec<Push>,
    /// The push that is in its solution already, where that lifts legs.
    pub pushed: Option<Push>,
    /// Change of temperature of its beams, to either side, K.
    warmer_k: f64,
}

impl State {
    /// All that pushes and warms it beside what is in its solution.
    pub fn sides(&self) -> impl Iterator<Item = (Push, f64)> {
        let pushes = if self.pushes.is_empty() { &[Push::REST][..] } else { &self.pushes };
        let warmed = if self.warmer_k == 0.0 { &[0.0][..] } else { &[1.0, -1.0] };
        pushes.iter().flat_map(move |&push| warmed.iter().map(move |way| (push, way * self.warmer_k)))
    }

    /// Greatest of a number over all that pushes and warms.
    pub fn greatest(&self, of: impl Fn(&Effects) -> f64) -> f64 {
        let of_parts = self.units.of_parts(&of);
        let side = self.pushes.iter().map(|push| push.sum(of_parts)).reduce(f64::max).unwrap_or(0.0);
        of(&self.effects) + side + self.warmer_k * self.units.of_warming(&of)
    }

    /// Greatest size of a number.
    pub fn greatest_size(&self, of: impl Fn(&Effects) -> f64) -> f64 {
        self.greatest(&of).max(self.greatest(|effects| -of(effects)))
    }

    /// Greatest effects on a chain; those of pushes and warming are added by size.
    pub fn envelope(&self, of: impl Fn(&Effects) -> Option<Envelope>) -> Envelope {
        let mut envelope = of(&self.effects).unwrap_or_default().in_case(self.front);
        envelope.moment.value += self.side_by_size(|effects| of(effects).map_or(0.0, |it| it.moment.value));
        envelope.shear.value += self.side_by_size(|effects| of(effects).map_or(0.0, |it| it.shear.value));
        envelope
    }

    /// What pushes and warming add to a number that is told by size.
    pub fn side_by_size(&self, of: impl Fn(&Effects) -> f64) -> f64 {
        let of_parts = self.units.of_parts(&of);
        let pushes = self.pushes.iter().map(|push| push.sizes().sum(of_parts));
        pushes.fold(0.0, f64::max) + self.warmer_k * self.units.of_warming(&of)
    }

    /// Whether a push lifts a base that bears.
    fn lifts(&self, push: Push) -> bool {
        (0..self.effects.reactions.len()).filter(|leg| !self.lifted.contains(leg)).any(|leg| {
            let of_parts = self.units.of_parts(|effects| effects.reactions[leg]);
            self.effects.reactions[leg] + push.sum(of_parts) < -LIFTS_KN
        })
    }
}

impl Run<'_> {
    /// Every state that the bent withstands.
    pub fn states(
        &self,
        levels: &Levels,
        factors: &Factors,
        settling: &mut Settling,
        read: fn(&Bent, &Solution) -> Effects,
        record: &mut Record,
    ) -> Result<Vec<State>, FrameError> {
        let range_k = self.table.scheme.loads.temperature_range_k;
        let mut states = Vec::with_capacity(3 * levels.bent_loads.len());
        for front in 0..levels.bent_loads.len() {
            let (case, vertical_kn) = self.vertical(levels, front, factors.permanent);
            let on_all_legs = Rc::new(settling.on_all_legs.solve(&case)?);
            let still = match settling.settle(&on_all_legs) {
                Ok(still) => still,
                Err(lifted) => {
                    self.tell_tipping(front, None, &lifted, record);
                    continue;
                }
            };
            let without_push = still.at_first.clone();
            let state = |settled: Settled, pushed: Option<Push>| State {
                front,
                hold_down_kn: self.hold_down(&without_push, &settled.at_first),
                effects: read(self.bent, &settled.solution),
                lifted: settled.lifted,
                solution: settled.solution,
                units: settled.units,
                pushes: Vec::new(),
                pushed,
                warmer_k: range_k.unwrap_or(0.0) * factors.variable,
            };
            let mut unpushed = state(still, None);
            let pushes = self.pushes(front, vertical_kn, factors);
            let (lifting, pushing): (Vec<_>, Vec<_>) = pushes.into_iter().partition(|&push| unpushed.lifts(push));
            unpushed.pushes = pushing;
            states.push(unpushed);
            for push in lifting {
                match settling.settle_pushed(&on_all_legs, push) {
                    Ok(settled) => states.push(state(settled, Some(push))),
                    Err(lifted) => self.tell_tipping(front, Some(push), &lifted, record),
                }
            }
        }
        Ok(states)
    }

    /// What pushes a bent sideways, to either side: a part of the vertical load, or a lesser part beside what is known.
    pub fn pushes(&self, front: usize, vertical_kn: f64, factors: &Factors) -> Vec<Push> {
        let table = self.table;
        let (falsework, front, loads) = (table.falsework, &table.fronts[front], &table.scheme.loads);
        let height_m = falsework.head_m - falsework.floor_m;
        let leaning = leaning(table.scheme.basis, loads.horizontal_fraction, height_m);
        let density = table.scheme.concrete.unit_weight_kn_m3 * factors.fresh_concrete_pressure;
        let slopes = thrust(&falsework.faces, table.pour, front, density, falsework.head_m);
        let operations = front.stage.combination().operations;
        let plant_kn = if operations { loads.plant_kn.unwrap_or(0.0) * factors.variable } else { 0.0 };
        let known_kn = slopes.kn_m.abs() * self.widest + plant_kn;
        let slopes_knm = if slopes.kn_m < 0.0 { -slopes.knm_m } else { slopes.knm_m };
        let wind_kpa = pressure_kpa(table.scheme, table.pour, front.stage) * factors.variable;
        let alone = Push { heads_kn: leaning.alone * vertical_kn, ..Push::default() };
        let beside_known = Push {
            heads_kn: leaning.beside_known * vertical_kn + known_kn,
            tilt_knm: slopes_knm * self.widest + plant_kn * self.soffit_above_heads_m(),
            wind_kpa,
        };
        let sideways = [alone, beside_known].map(|push| push.times(self.sway_factor));
        sideways.into_iter().flat_map(|push| [push, push.times(-1.0)]).collect()
    }

    fn soffit_above_heads_m(&self) -> f64 {
        let levels = self.table.falsework.faces.iter().flat_map(|face| [face.from.z, face.to.z]);
        levels.fold(f64::INFINITY, f64::min) - self.table.falsework.head_m
    }

    /// For each leg whose base would pull, what holds it down, from the reactions without and with a push.
    fn hold_down(&self, without: &[f64], with: &[f64]) -> Vec<(usize, f64)> {
        let pulled = (0..with.len()).filter(|&leg| with[leg] < -LIFTS_KN);
        let hold_down = |leg: usize| {
            let standing = Standing {
                holding: without[leg].max(0.0),
                tipping_permanent: (-without[leg]).max(0.0),
                tipping_variable: (without[leg] - with[leg]).max(0.0),
                held: 0.0,
            };
            (leg, standing.hold_down(self.table.scheme.basis))
        };
        pulled.map(hold_down).collect()
    }

    /// Once in each way, for the first position of the front.
    fn tell_tipping(&self, front: usize, push: Option<Push>, lifted: &[usize], record: &mut Record) {
        let falsework = self.table.falsework;
        let marks: Vec<&str> = lifted.iter().map(|&leg| falsework.legs[leg].mark.as_str()).collect();
        let (mark, case, marks) = (&falsework.mark, self.table.case_in_words(front), marks.join(", "));
        let text = match push {
            Some(push) if push.wind_kpa != 0.0 => sentence!(
                "{} tips over {}, pushed by wind and other horizontal loads: nothing holds it once {} lifts off.",
                mark,
                case,
                marks
            ),
            Some(_) => sentence!(
                "{} tips over {}, pushed by its horizontal load: nothing holds it once {} lifts off.",
                mark,
                case,
                marks
            ),
            None => sentence!("{} tips over {}: nothing holds it once {} lifts off.", mark, case, marks),
        };
        let told = |finding: &Finding| finding.owner == Some(falsework.id) && finding.text.template == text.template;
        if !record.results.findings.iter().any(told) {
            let remedy = match push {
                None => sentence!(
                    "Move the outer lines of legs outward, add lines, or place the concrete evenly from the middle."
                ),
                Some(_) => sentence!(
                    "Brace more gaps, move the outer lines of legs outward, or hold the falsework to cast walls."
                ),
            };
            record.find(Severity::Fail, falsework.id, text, remedy);
        }
    }
}

/// A bent that has come to rest on those of its legs that bear.
struct Settled {
    lifted: Vec<usize>,
    solution: Rc<Solution>,
    units: Rc<Units>,
    /// Reactions before any leg lifted.
    at_first: Vec<f64>,
}

/// Lets go of legs that would have to be held down.
pub struct Settling<'a> {
    bent: &'a Bent<'a>,
    on_all_legs: &'a Factorised<'a>,
    units: Rc<Units>,
    what_if: WhatIf<'a>,
    known: Vec<OnLegs<'a>>,
}

/// A bent with some of its legs lifted, in rising order.
struct OnLegs<'a> {
    lifted: Vec<usize>,
    without: Without<'a>,
    /// Once it is known to come to rest so, and whether those of pushes are among them.
    units: Option<(Rc<Units>, bool)>,
}

impl<'a> Settling<'a> {
    pub fn new(bent: &'a Bent<'a>, on_all_legs: &'a Factorised<'a>, cases: &UnitCases) -> Result<Self, FrameError> {
        let units = Rc::new(Units::solve(bent, on_all_legs, cases)?);
        Ok(Self { bent, on_all_legs, units, what_if: WhatIf::new(on_all_legs), known: Vec::new() })
    }

    /// The state at which loads come to rest, or the legs that lifted until nothing held the bent.
    fn settle(&mut self, on_all_legs: &Rc<Solution>) -> Result<Settled, Vec<usize>> {
        self.let_go(&[(1.0, on_all_legs)], true, || on_all_legs.clone())
    }

    /// The same with a push beside them, further than which nothing pushes.
    fn settle_pushed(&mut self, on_all_legs: &Solution, push: Push) -> Result<Settled, Vec<usize>> {
        let units = self.units.clone();
        let parts: Vec<_> = std::iter::once((1.0, on_all_legs)).chain(units.of_pushing(push)).collect();
        self.let_go(&parts, false, || sum(&parts))
    }

    /// Lets it stand on ever fewer legs, unless it stands on all of them.
    fn let_go(
        &mut self,
        on_all_legs: &[(f64, &Solution)],
        pushed_then: bool,
        standing: impl FnOnce() -> Rc<Solution>,
    ) -> Result<Settled, Vec<usize>> {
        let at_first = self.bent.reactions(|foot| Solution::sum_of_reactions(on_all_legs, foot));
        let mut lifted = Vec::new();
        let mut next = lifting(&at_first);
        let (mut solution, mut units) = (None, self.units.clone());
        while let Some(leg) = next {
            lifted.push(leg);
            lifted.sort_unstable();
            let Ok(index) = self.on_legs(&lifted) else { return Err(lifted) };
            let parts = self.known[index].without.parts_after(on_all_legs);
            next = lifting(&self.bent.reactions(|foot| Solution::sum_of_reactions(&parts, foot)));
            if next.is_none() {
                solution = Some(sum(&parts));
                units = self.units_on(index, pushed_then);
            }
        }
        Ok(Settled { lifted, solution: solution.unwrap_or_else(standing), units, at_first })
    }

    /// Effects of the unit cases on one of the known bents, with those of pushes where it may be `pushed`.
    fn units_on(&mut self, index: usize, pushed: bool) -> Rc<Units> {
        let known = &mut self.known[index];
        match &known.units {
            Some((units, with_pushes)) if *with_pushes || !pushed => units.clone(),
            _ => {
                let units = Rc::new(self.units.after(self.bent, &known.without, pushed));
                known.units = Some((units.clone(), pushed));
                units
            }
        }
    }

    /// Index of the bent with these legs lifted.
    fn on_legs(&mut self, lifted: &[usize]) -> Result<usize, FrameError> {
        if let Some(index) = self.known.iter().position(|known| known.lifted == lifted) {
            return Ok(index);
        }
        let without = self.what_if.without(&self.bent.bases(lifted))?;
        self.known.push(OnLegs { lifted: lifted.to_vec(), without, units: None });
        Ok(self.known.len() - 1)
    }
}

fn sum(parts: &[(f64, &Solution)]) -> Rc<Solution> {
    Rc::new(Solution::sum(parts).unwrap_or_default())
}

/// The leg that pulls hardest at its base, if any does.
fn lifting(reactions: &[f64]) -> Option<usize> {
    let (leg, &least) = reactions.iter().enumerate().min_by(|a, b| a.1.total_cmp(b.1))?;
    (least < -LIFTS_KN).then_some(leg)
}
