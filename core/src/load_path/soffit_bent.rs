//! The bents of a soffit at every stage and position of the pour front.

use super::bent::Bent;
use super::bent_effects::{Effects, UnitCases};
use super::chain::Chain;
use super::line::{Envelope, Peak};
use super::record::{Bending, Record, Subject, at_x};
use super::soffit::{Table, UNFACTORED};
use super::soffit_ledger;
use super::soffit_levels::{Levels, total_kn};
use super::soffit_states::{Settling, State};
use super::soffit_wind::exposure;
use crate::actions::factors::Factors;
use crate::analysis::{FrameError, LoadCase};
use crate::checks::{Comparison, check_brace};
use crate::geometry::Point;
use crate::model::{BracingBar, LegKind};
use crate::results::{CheckKind, Diagram, Severity};
use crate::sentence::number;

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
    factored: Option<(&Levels, &Factors)>,
    record: &mut Record,
) -> Result<(), FrameError> {
    let widest = service.bent_widths.iter().copied().fold(0.0, f64::max);
    let warmed = table.scheme.loads.temperature_range_k.is_some();
    let cases = UnitCases::new(bent, exposure(table).as_ref(), widest, warmed);
    let mut run = Run { table, bent, widest, cases, sway_factor: 1.0 };
    let (levels, factors) = factored.unwrap_or((service, &UNFACTORED));
    run.sway_factor = run.check_stability(levels, factors.permanent, record)?;

    let on_all_legs = bent.frame.factorise()?;
    let mut settling = Settling::new(bent, &on_all_legs, &run.cases)?;
    let unfactored = run.states(service, &UNFACTORED, &mut settling, Effects::of, record)?;
    let strength = |(levels, factors)| run.states(levels, factors, &mut settling, Effects::of_forces, record);
    let factored = factored.map(strength).transpose()?;
    let strength = factored.as_ref().unwrap_or(&unfactored);
    let peaks = run.leg_peaks(strength);
    run.check_primary(strength, &unfactored, &peaks.compression, record);
    run.check_transfer(strength, &unfactored, &peaks.compression, record);
    run.check_legs(&peaks, record);
    run.check_braces(strength, record);
    run.check_balance(service, record);
    run.report_legs(&unfactored, &service.bent_widths, record);
    soffit_ledger::vertical(&run, service, &unfactored, record);
    soffit_ledger::sideways(&run, &unfactored, record);
    Ok(())
}

pub(super) struct Run<'a> {
    pub table: &'a Table<'a>,
    pub bent: &'a Bent<'a>,
    /// Metres of bay on the most loaded bent.
    pub widest: f64,
    /// What does not change from state to state.
    pub cases: UnitCases,
    /// By which horizontal loads grow for effects of second order.
    pub sway_factor: f64,
}

impl Run<'_> {
    /// Vertical loads of a bent, and their sum.
    pub fn vertical(&self, levels: &Levels, front: usize, permanent: f64) -> (LoadCase, f64) {
        let mut case = LoadCase::default();
        case.add(permanent, &self.cases.own);
        let loads: Vec<_> = levels.bent_loads[front].iter().map(|load| load.times(self.widest)).collect();
        self.bent.vertical(&loads, &mut case);
        let own = self.cases.own_weight;
        (case, permanent * (own.on_heads_kn + own.below_kn) + total_kn(&loads))
    }

    /// Checks the lowest critical load factor; by how much horizontal loads grow (EN 1993-1-1, 5.2.2(5)).
    fn check_stability(&self, factored: &Levels, permanent: f64, record: &mut Record) -> Result<f64, FrameError> {
        let (case, _) = self.vertical(factored, 0, permanent);
        let lowest = self.bent.frame.lowest_critical_factor(&case)?;
        let falsework = self.table.falsework;
        let member = format!("{} bent", falsework.mark);
        let case = &self.table.cases[0];
        let at = Point::new((self.table.ends_m[0] + self.table.ends_m[1]) / 2.0, falsework.head_m);
        let subject = Subject { owner: falsework.id, member: &member, case, place: &sentence!("whole bent"), at };
        let comparison = Comparison {
            check: CheckKind::Stability,
            demand: REFUSED_BELOW,
            resistance: lowest,
            unit: "",
            source: "lowest elastic critical load factor; EN 1993-1-1, 5.2.1 and common practice".into(),
        };
        let numbers = formula!("{} / {}", number(REFUSED_BELOW, "", 2), number(lowest, "", 2));
        record.check(&subject, [comparison.verdict("α_req / α_cr", numbers)]);
        if lowest >= SECOND_ORDER_BELOW || lowest <= 1.0 {
            return Ok(1.0);
        }
        let factor = 1.0 / (1.0 - 1.0 / lowest);
        if lowest >= REFUSED_BELOW {
            record.find(
                Severity::Note,
                falsework.id,
                sentence!(
                    "{}: the bent's critical load factor is {}; its horizontal loads are raised by {} for second order.",
                    &falsework.mark,
                    number(lowest, "", 1),
                    number(factor, "", 2)
                ),
                sentence!("Brace more gaps or shorten the lifts for a stiffer bent."),
            );
        }
        Ok(factor)
    }

    /// Greatest effects on a chain over all states.
    fn envelope(&self, of: fn(&Effects) -> Option<Envelope>, states: &[State]) -> Envelope {
        let mut all = Envelope::default();
        states.iter().for_each(|state| all.raise(&state.envelope(of)));
        all
    }

    fn check_primary(&self, strength: &[State], service: &[State], compressions: &[Peak], record: &mut Record) {
        let Some(chain) = self.bent.primary() else { return };
        let of = |effects: &Effects| effects.primary;
        let falsework = self.table.falsework;
        let member = format!("{} primary", falsework.mark);
        let bearing = self.bearing(compressions, [LegKind::Leg, LegKind::Stub]);
        record.check_bending(&Bending {
            owner: falsework.id,
            member: &member,
            item: &falsework.primary,
            strength: Envelope { bearing, ..self.envelope(of, strength) },
            service: self.envelope(of, service),
            bearing_m: falsework.leg.leg().map_or(0.1, |leg| 2.0 * leg.footprint_m),
            case: &|front| self.table.cases[front].clone(),
            place: &|x| (at_x(x), Point::new(x, falsework.head_m)),
        });
        self.draw(chain, falsework.id, member, falsework.head_m, service, record);
    }

    fn check_transfer(&self, states: &[State], service: &[State], compressions: &[Peak], record: &mut Record) {
        let (Some(chain), Some(opening)) = (&self.bent.transfer, &self.table.falsework.opening) else { return };
        let each = 1.0 / f64::from(opening.drawn.transfers);
        let member = format!("{} transfer beam", opening.mark);
        let bearing = self.bearing(compressions, [LegKind::Stub, LegKind::Trestle]);
        let of = |effects: &Effects| effects.transfer;
        let strength = Envelope { bearing, ..self.envelope(of, states) }.times(each);
        let service_envelope = self.envelope(of, service);
        let stub_or_trestle =
            [&opening.trestle, &self.table.falsework.leg].map(|item| item.leg().map_or(0.05, |leg| leg.footprint_m));
        record.check_bending(&Bending {
            owner: opening.drawn.id,
            member: &member,
            item: &opening.transfer,
            strength,
            service: service_envelope,
            bearing_m: 2.0 * stub_or_trestle[0].min(stub_or_trestle[1]),
            case: &|front| self.table.cases[front].clone(),
            place: &|x| (at_x(x), Point::new(x, opening.underside_m)),
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
        let mut peaks: Vec<(BracingBar, Peak)> =
            self.bent.braces.iter().map(|(bar, _)| (*bar, Peak::default())).collect();
        for state in strength {
            for (index, (_, peak)) in peaks.iter_mut().enumerate() {
                let value = state.greatest_size(|effects| effects.braces[index]);
                peak.raise(Peak { value, at_m: 0.0, case: state.front });
            }
        }
        for (bar, peak) in peaks {
            let member = format!("{} {}", falsework.mark, if bar.diagonal { "diagonal" } else { "level tube" });
            let at = bar.from.lerp(bar.to, 0.5);
            let place = sentence!("x = {}, level {}", number(at.x, "m", 2), number(at.z, "m", 2));
            let case = &self.table.cases[peak.case];
            let subject = Subject { owner: falsework.id, member: &member, case, place: &place, at };
            let length = (bar.to - bar.from).length();
            record.check(&subject, check_brace(&falsework.brace, self.table.scheme.basis, peak.value, length));
        }
    }
}
