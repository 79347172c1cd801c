//! Legs, stubs and trestles of the bents: checks and forces.

use super::line::Peak;
use super::record::{Record, Subject, at_x, numbered};
use super::soffit_bent::Run;
use super::soffit_states::State;
use crate::checks::{StrutForces, check_base, check_leg, check_stack};
use crate::geometry::Point;
use crate::model::LegKind;
use crate::results::{LegForce, Severity};
use crate::sentence::at_least;

/// Greatest effects on each leg.
pub struct LegPeaks {
    /// kN.
    pub compression: Vec<Peak>,
    /// Under its base, kN.
    reaction: Vec<Peak>,
    /// kNm.
    moment: Vec<Peak>,
}

impl Run<'_> {
    /// Greatest force that legs of these kinds put on the beam which they carry or stand on.
    pub fn bearing(&self, compressions: &[Peak], kinds: [LegKind; 2]) -> Peak {
        let mut greatest = Peak::default();
        for (leg, peak) in self.table.falsework.legs.iter().zip(compressions) {
            if kinds.contains(&leg.kind) {
                greatest.raise(Peak { at_m: leg.x_m, ..*peak });
            }
        }
        greatest
    }

    pub fn check_legs(&self, peaks: &LegPeaks, record: &mut Record) {
        let falsework = self.table.falsework;
        let slab = self.slab(record);
        for (index, leg) in falsework.legs.iter().enumerate() {
            let name = match leg.kind {
                LegKind::Leg => "leg",
                LegKind::Stub => "stub",
                LegKind::Trestle => "trestle leg",
            };
            let member = format!("{} {name}", leg.mark);
            let levels = match leg.kind {
                LegKind::Stub => vec![leg.foot_m, leg.head_m],
                _ => falsework.held_levels(leg),
            };
            let longest = levels.windows(2).map(|pair| pair[1] - pair[0]).fold(0.0, f64::max);
            let rated = falsework.item_of(leg).leg().is_some_and(|leg| leg.rating.is_some());
            let length = if rated { leg.head_m - leg.foot_m } else { longest };
            let peak = peaks.compression[index];
            let case = &self.table.cases[peak.case];
            let at = Point::new(leg.x_m, (leg.foot_m + leg.head_m) / 2.0);
            let place = at_x(leg.x_m);
            let subject = Subject { owner: leg.owner, member: &member, case, place: &place, at };
            let item = falsework.item_of(leg);
            let basis = self.table.scheme.basis;
            let forces = StrutForces {
                compression_kn: peak.value,
                moment_knm: peaks.moment[index].value,
                head_m: self.table.scheme.loads.leg_eccentricity_m,
                base_m: 0.0,
            };
            record.check(&subject, check_leg(item, basis, &forces, length));
            let alone = leg.kind == LegKind::Stub;
            record.check(&subject, check_stack(item, basis, &forces, leg.head_m - leg.foot_m, length, alone));
            if leg.kind != LegKind::Stub {
                let peak = peaks.reaction[index];
                let member = format!("{} base", leg.mark);
                let case = &self.table.cases[peak.case];
                let at = Point::new(leg.x_m, leg.foot_m);
                let subject = Subject { owner: leg.owner, member: &member, case, place: &place, at };
                let ground = &self.table.scheme.ground;
                record.check(&subject, check_base(&falsework.base, basis, &slab.bearing, ground, peak.value));
                self.check_slab(&slab, leg, peak.value, &subject, record);
            }
        }
    }

    /// Greatest compression, reaction and moment of each leg over all states, sway to either side.
    pub fn leg_peaks(&self, states: &[State]) -> LegPeaks {
        let over_states = |of: &dyn Fn(&State, usize) -> f64| {
            let peak = |leg: usize| {
                let mut peak = Peak::default();
                states.iter().for_each(|state| {
                    peak.raise(Peak { value: of(state, leg), at_m: 0.0, case: state.front });
                });
                peak
            };
            (0..self.table.falsework.legs.len()).map(peak).collect()
        };
        LegPeaks {
            compression: over_states(&|state, leg| state.greatest(|effects| effects.compressions[leg])),
            reaction: over_states(&|state, leg| state.greatest(|effects| effects.reactions[leg])),
            moment: over_states(&|state, leg| {
                state.effects.moments[leg] + state.side_by_size(|effects| effects.moments[leg])
            }),
        }
    }

    /// Greatest unfactored compression of every leg, from the most loaded bent by the width that each bent carries,
    /// and the legs that lift off.
    pub fn report_legs(&self, states: &[State], widths: &[f64], record: &mut Record) {
        let legs = &self.table.falsework.legs;
        let mut greatest = vec![vec![0.0_f64; widths.len()]; legs.len()];
        for state in states {
            for (leg, bents) in greatest.iter_mut().enumerate() {
                let full = state.greatest(|effects| effects.compressions[leg]);
                let own = state.units.own().compressions[leg];
                for (axial, width) in bents.iter_mut().zip(widths) {
                    *axial = axial.max(own + (full - own) * width / self.widest);
                }
            }
        }
        for (leg, bents) in legs.iter().zip(greatest) {
            record.results.legs.extend(bents.into_iter().enumerate().map(|(bent, axial_kn)| LegForce {
                id: numbered(&leg.mark, bent + 1),
                owner: leg.owner,
                axial_kn,
            }));
        }
        for (index, leg) in legs.iter().enumerate() {
            let lifting = states.iter().filter(|state| state.lifted.contains(&index));
            let hold_down_kn = |state: &State| {
                let own = state.hold_down_kn.iter().find(|(leg, _)| *leg == index);
                own.map_or(0.0, |(_, force_kn)| *force_kn)
            };
            if let Some(state) = lifting.reduce(|a, b| if hold_down_kn(b) > hold_down_kn(a) { b } else { a }) {
                let (case, force) = (self.table.case_in_words(state.front), at_least(hold_down_kn(state), "kN", 1));
                let text = if state.pushed.is_some() {
                    sentence!(
                        "{} lifts off its base {}, pushed sideways; {} would hold it down. What else bears is checked \
                         without it.",
                        &leg.mark,
                        case,
                        force
                    )
                } else {
                    sentence!(
                        "{} lifts off its base {}; {} would hold it down. What else bears is checked without it.",
                        &leg.mark,
                        case,
                        force
                    )
                };
                let remedy = sentence!("Keep its jack hand-tight, or tie it down.");
                record.find(Severity::Note, leg.owner, text, remedy);
            }
        }
    }
}
