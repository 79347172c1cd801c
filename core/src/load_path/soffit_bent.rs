//! The bents of a soffit under every position of the pour front.

use super::bent::Bent;
use super::chain::Chain;
use super::line::{Envelope, Peak};
use super::record::{Bending, Record, Subject};
use super::soffit::Table;
use super::soffit_ledger;
use super::soffit_levels::{Levels, total_kn};
use super::soffit_load::thrust_kn_m;
use crate::actions::factors::factors;
use crate::actions::horizontal::LeastLateral;
use crate::analysis::{FrameError, LoadCase, Solution};
use crate::catalogue::Item;
use crate::checks::check_brace;
use crate::geometry::Point;
use crate::model::{BracingBar, LegKind};
use crate::results::{CheckKind, Diagram, Severity, Verdict};

/// Elastic critical load factors: below the first a bent is refused, below the second it needs second order
/// (EN 1993-1-1, 5.2.1 for the second; common practice for the first).
const REFUSED_BELOW: f64 = 3.0;
const SECOND_ORDER_BELOW: f64 = 10.0;

/// Solves the most loaded bent, checks its members, and closes the ledger over all bents. `factored` is given where
/// factors differ from 1.
pub fn solve(
    table: &Table,
    bent: &Bent,
    service: &Levels,
    factored: Option<&Levels>,
    record: &mut Record,
) -> Result<(), FrameError> {
    let widest = service.bent_widths.iter().copied().fold(0.0, f64::max);
    let mut run = Run { table, bent, widest, sway_factor: 1.0 };
    let permanent = factors(table.scheme.basis).permanent;
    run.sway_factor = run.check_stability(factored.unwrap_or(service), permanent, record)?;

    let unfactored = run.states(service, 1.0, record)?;
    let factored = factored.map(|levels| run.states(levels, permanent, record)).transpose()?;
    let strength = factored.as_ref().unwrap_or(&unfactored);
    run.check_chain(bent.primary(), &table.falsework.primary, "primary", strength, &unfactored, record);
    run.check_transfer(strength, &unfactored, record);
    run.check_legs(strength, record);
    run.check_braces(strength, record);
    run.report_legs(&unfactored, &service.bent_widths, record);
    for state in &unfactored {
        soffit_ledger::front(&run, service, state, record);
    }
    Ok(())
}

/// One state of the pour on the most loaded bent.
pub(super) struct State {
    /// Index of the front.
    pub front: usize,
    /// Legs that have lifted off their bases, by index.
    pub lifted: Vec<usize>,
    pub solution: Solution,
    /// Under the bent's own weight alone, for the legs of less loaded bents.
    pub own: Solution,
    /// Under one kN to the right at the heads.
    pub sway: Solution,
    /// Its horizontal load, kN, to either side.
    pub lateral_kn: f64,
}

pub(super) struct Run<'a> {
    pub table: &'a Table<'a>,
    pub bent: &'a Bent<'a>,
    pub widest: f64,
    /// By which horizontal loads grow for effects of second order.
    sway_factor: f64,
}

impl Run<'_> {
    /// Every position of the front that the bent withstands.
    fn states(&self, levels: &Levels, permanent: f64, record: &mut Record) -> Result<Vec<State>, FrameError> {
        let mut sway = LoadCase::default();
        self.bent.lateral(1.0, &mut sway);
        let mut own = LoadCase::default();
        self.bent.own_weight(permanent, &mut own);
        let standing = self.bent.frame.factorise()?;
        let (sway_standing, own_standing) = (standing.solve(&sway)?, standing.solve(&own)?);
        let mut states = Vec::new();
        for front in 0..levels.bent_loads.len() {
            let (case, vertical_kn) = self.vertical(levels, front, permanent);
            let mut state = State {
                front,
                lifted: Vec::new(),
                solution: standing.solve(&case)?,
                own: own_standing.clone(),
                sway: sway_standing.clone(),
                lateral_kn: self.lateral_kn(front, vertical_kn, permanent),
            };
            match self.lift(&mut state, [&case, &own, &sway]) {
                Ok(()) => states.push(state),
                Err(_) => self.tell_tipping(&state, record),
            }
        }
        Ok(states)
    }

    /// Lets go of every leg that would have to be held down.
    fn lift(&self, state: &mut State, [case, own, sway]: [&LoadCase; 3]) -> Result<(), FrameError> {
        while let Some(leg) = self.lifting(&state.solution) {
            state.lifted.push(leg);
            let bent = self.bent.without_bases(&state.lifted);
            let factorised = bent.frame.factorise()?;
            state.solution = factorised.solve(case)?;
            state.own = factorised.solve(own)?;
            state.sway = factorised.solve(sway)?;
        }
        Ok(())
    }

    fn tell_tipping(&self, state: &State, record: &mut Record) {
        let falsework = self.table.falsework;
        let marks: Vec<&str> = state.lifted.iter().map(|&leg| falsework.legs[leg].mark.as_str()).collect();
        let text = format!(
            "{} tips over while {}: nothing holds it once {} lifts off.",
            falsework.mark,
            self.table.case(state.front),
            marks.join(", ")
        );
        if record.results.findings.iter().all(|finding| finding.text != text) {
            let remedy =
                "Move the outer lines of legs outward, add lines, or place the concrete evenly from the middle.";
            record.find(Severity::Fail, falsework.id, text, remedy);
        }
    }

    /// The leg that pulls hardest at its base, if any does.
    fn lifting(&self, solution: &Solution) -> Option<usize> {
        let reactions = self.bent.reactions(solution);
        let (leg, &least) = reactions.iter().enumerate().min_by(|a, b| a.1.total_cmp(b.1))?;
        (least < -1e-6).then_some(leg)
    }

    fn vertical(&self, levels: &Levels, front: usize, permanent: f64) -> (LoadCase, f64) {
        let mut case = LoadCase::default();
        let own = self.bent.own_weight(permanent, &mut case);
        let loads: Vec<_> = levels.bent_loads[front].iter().map(|load| load.times(self.widest)).collect();
        self.bent.vertical(&loads, &mut case);
        (case, own.on_heads_kn + own.below_kn + total_kn(&loads))
    }

    /// The greater of a part of the vertical load, and a lesser part with the thrust on slopes.
    fn lateral_kn(&self, front: usize, vertical_kn: f64, permanent: f64) -> f64 {
        let table = self.table;
        let density = table.scheme.concrete.unit_weight_kn_m3 * permanent;
        let thrust = thrust_kn_m(&table.falsework.faces, table.pour, &table.fronts[front], density).abs();
        let fraction = table.scheme.loads.horizontal_fraction;
        LeastLateral::new(fraction, vertical_kn, thrust * self.widest).governing_kn() * self.sway_factor
    }

    /// Checks the lowest critical load factor; by how much horizontal loads grow (EN 1993-1-1, 5.2.2(5)).
    fn check_stability(&self, factored: &Levels, permanent: f64, record: &mut Record) -> Result<f64, FrameError> {
        let (case, _) = self.vertical(factored, 0, permanent);
        let lowest = self.bent.frame.lowest_buckling_factor(&case)?.factor;
        let falsework = self.table.falsework;
        let member = format!("{} bent", falsework.mark);
        let case = self.table.case(0);
        let at = Point::new((self.table.ends_m[0] + self.table.ends_m[1]) / 2.0, falsework.head_m);
        let subject = Subject { owner: falsework.id, member: &member, case: &case, place: "whole bent", at };
        let verdict = Verdict {
            check: CheckKind::Stability,
            demand: REFUSED_BELOW,
            resistance: lowest,
            unit: "",
            source: "lowest elastic critical load factor; EN 1993-1-1, 5.2.1 and common practice".into(),
            formula: format!("α_req / α_cr = {REFUSED_BELOW:.2} / {lowest:.2} = {:.2}", REFUSED_BELOW / lowest),
        };
        record.check(&subject, [verdict]);
        if lowest >= SECOND_ORDER_BELOW || lowest <= 1.0 {
            return Ok(1.0);
        }
        let factor = 1.0 / (1.0 - 1.0 / lowest);
        record.find(
            Severity::Note,
            falsework.id,
            format!(
                "{}: the bent's critical load factor is {lowest:.1}; its horizontal loads are raised by {factor:.2} for second order.",
                falsework.mark
            ),
            "Brace more gaps or shorten the lifts for a stiffer bent.",
        );
        Ok(factor)
    }

    /// Greatest effects on a chain over all states, sway to the worse side.
    fn envelope(&self, chain: &Chain, states: &[State]) -> Envelope {
        let mut all = Envelope::default();
        for state in states {
            let mut envelope = chain.envelope(&state.solution).in_case(state.front);
            let sway = chain.envelope(&state.sway).times(state.lateral_kn);
            envelope.moment.value += sway.moment.value;
            envelope.shear.value += sway.shear.value;
            all.raise(&envelope);
        }
        all
    }

    fn check_chain(
        &self,
        chain: Option<&Chain>,
        item: &Item,
        name: &str,
        strength: &[State],
        service: &[State],
        record: &mut Record,
    ) {
        let Some(chain) = chain else { return };
        let falsework = self.table.falsework;
        let member = format!("{} {name}", falsework.mark);
        let bearing = self.bearing(strength, [LegKind::Leg, LegKind::Stub]);
        record.check_bending(&Bending {
            owner: falsework.id,
            member: &member,
            item,
            strength: Envelope { bearing, ..self.envelope(chain, strength) },
            service: self.envelope(chain, service),
            bearing_m: falsework.leg.leg().map_or(0.1, |leg| 2.0 * leg.footprint_m),
            case: &|front| self.table.case(front),
            place: &|x| (format!("x = {x:.2} m"), Point::new(x, falsework.head_m)),
        });
        self.draw(chain, falsework.id, member, falsework.head_m, service, record);
    }

    fn check_transfer(&self, states: &[State], service: &[State], record: &mut Record) {
        let (Some(chain), Some(opening)) = (&self.bent.transfer, &self.table.falsework.opening) else { return };
        let each = 1.0 / f64::from(opening.drawn.transfers);
        let member = format!("{} transfer beam", opening.mark);
        let bearing = self.bearing(states, [LegKind::Stub, LegKind::Trestle]);
        let strength = Envelope { bearing, ..self.envelope(chain, states) }.times(each);
        let service_envelope = self.envelope(chain, service);
        let stub_or_trestle =
            [&opening.trestle, &self.table.falsework.leg].map(|item| item.leg().map_or(0.05, |leg| leg.footprint_m));
        record.check_bending(&Bending {
            owner: opening.drawn.id,
            member: &member,
            item: &opening.transfer,
            strength,
            service: service_envelope,
            bearing_m: 2.0 * stub_or_trestle[0].min(stub_or_trestle[1]),
            case: &|front| self.table.case(front),
            place: &|x| (format!("x = {x:.2} m"), Point::new(x, opening.underside_m)),
        });
        self.check_twisting(chain, opening, states, record);
        self.draw(chain, opening.drawn.id, member, opening.underside_m, service, record);
    }

    fn draw(
        &self,
        chain: &Chain,
        owner: crate::scheme::Id,
        member: String,
        z: f64,
        states: &[State],
        record: &mut Record,
    ) {
        let Some(full) = states.first() else { return };
        let start = chain.start_m();
        let mut stations = chain.stations(&full.solution);
        stations.iter_mut().for_each(|station| station.s_m -= start);
        let (from, to) = (Point::new(start, z), Point::new(chain.end_m(), z));
        record.results.diagrams.push(Diagram { owner, member, from, to, stations });
    }

    /// Checks every tube of the bracing under its greatest force.
    fn check_braces(&self, strength: &[State], record: &mut Record) {
        let falsework = self.table.falsework;
        let mut peaks: Vec<(BracingBar, Peak)> = Vec::new();
        for state in strength {
            let sway = self.bent.brace_forces(&state.sway);
            for (index, ((bar, force), (_, sway))) in self.bent.brace_forces(&state.solution).zip(sway).enumerate() {
                let value = force.abs() + sway.abs() * state.lateral_kn;
                if index == peaks.len() {
                    peaks.push((*bar, Peak::default()));
                }
                peaks[index].1.raise(Peak { value, at_m: 0.0, case: state.front });
            }
        }
        for (bar, peak) in peaks {
            let member = format!("{} {}", falsework.mark, if bar.diagonal { "diagonal" } else { "level tube" });
            let at = bar.from.lerp(bar.to, 0.5);
            let place = format!("x = {:.2} m, level {:.2} m", at.x, at.z);
            let case = self.table.case(peak.case);
            let subject = Subject { owner: falsework.id, member: &member, case: &case, place: &place, at };
            let length = (bar.to - bar.from).length();
            record.check(&subject, check_brace(&falsework.brace, self.table.scheme.basis, peak.value, length));
        }
    }
}
