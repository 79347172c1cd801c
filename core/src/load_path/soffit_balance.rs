//! Whether a braced bent as a whole stands at every stage: overturning about its outer bases, and sliding on them.

use super::record::{Record, Subject};
use super::soffit::UNFACTORED;
use super::soffit_bent::Run;
use super::soffit_levels::Levels;
use crate::actions::friction::Contact;
use crate::catalogue::PlateMaterial;
use crate::checks::stability::{Standing, check_overturning, check_sliding};
use crate::geometry::Point;
use crate::model::{Leg, LegKind};
use crate::results::Verdict;
use crate::scheme::{Bearing, Lateral};
use crate::sentence::Sentence;

impl Run<'_> {
    /// Checks balance under loads as they are, to either side. Walls that hold a bent at its heads keep it from both.
    pub fn check_balance(&self, service: &Levels, record: &mut Record) {
        let falsework = self.table.falsework;
        let mut on_floor = falsework.legs.iter().filter(|leg| leg.kind != LegKind::Stub);
        let (Some(left), Some(right)) = (on_floor.next(), on_floor.next_back()) else { return };
        if falsework.lateral == Lateral::HeldByWalls {
            return;
        }
        let basis = self.table.scheme.basis;
        let sideways = self.cases.of_parts(|unit| self.bent.forces(unit).map(|(_, [right, _])| right).sum());
        // Moments of a force that turn the bent over an edge.
        let over = |edge: &'_ Leg, side: f64, (at, [right, up]): (Point, [f64; 2])| {
            side * (right * (at.z - edge.foot_m) - up * (at.x - edge.x_m))
        };
        let edges = [(left, -1.0), (right, 1.0)].map(|(edge, side)| {
            let moments = self.cases.of_parts(|unit| self.bent.forces(unit).map(|force| over(edge, side, force)).sum());
            (edge, side, moments)
        });
        let friction = self.friction();
        let (mut overturning, mut sliding): (Option<Worst>, Option<Worst>) = (None, None);
        for front in 0..service.bent_loads.len() {
            let (weights, vertical_kn) = self.vertical(service, front, 1.0);
            let weighed = [0, 1].map(|way| {
                let (edge, side, _) = edges[way];
                let mut standing = Standing::default();
                for moment_knm in self.bent.forces(&weights).map(|force| over(edge, side, force)) {
                    standing.holding += (-moment_knm).max(0.0);
                    standing.tipping_permanent += moment_knm.max(0.0);
                }
                standing
            });
            for push in self.pushes(front, vertical_kn, &UNFACTORED) {
                let pushing_kn = push.sum(sideways);
                if pushing_kn == 0.0 {
                    continue;
                }
                let way = usize::from(pushing_kn > 0.0);
                let (edge, _, moments) = edges[way];
                let standing = Standing { tipping_variable: push.sum(moments).max(0.0), ..weighed[way] };
                Worst { front, edge, ratio: standing.ratio(basis), standing }.keep(&mut overturning);
                if let Some(coefficient) = friction {
                    let standing =
                        Standing { holding: vertical_kn, tipping_variable: pushing_kn.abs(), ..Standing::default() };
                    let ratio = standing.rubbing(coefficient).ratio(basis);
                    Worst { front, edge, ratio, standing }.keep(&mut sliding);
                }
            }
        }
        if let Some(worst) = overturning {
            let place = sentence!("about the base of {}", &worst.edge.mark);
            self.check_worst(&worst, &place, check_overturning(basis, &worst.standing), record);
        }
        if let Some((worst, coefficient)) = sliding.zip(friction) {
            let place = sentence!("at its bases");
            self.check_worst(&worst, &place, check_sliding(basis, &worst.standing, coefficient), record);
        }
    }

    fn check_worst(&self, worst: &Worst, place: &Sentence, verdict: Verdict, record: &mut Record) {
        let falsework = self.table.falsework;
        let at = Point::new(worst.edge.x_m, worst.edge.foot_m);
        let (member, case) = (format!("{} bent", falsework.mark), &self.table.cases[worst.front]);
        record.check(&Subject { owner: falsework.id, member: &member, case, place, at }, [verdict]);
    }

    /// Least coefficient under the bases, on a slab; of what stands on the ground the friction is not known.
    fn friction(&self) -> Option<f64> {
        let falsework = self.table.falsework;
        if falsework.bearing == Bearing::Ground {
            return None;
        }
        let contacts: &[Contact] = match falsework.base.plate()?.material {
            PlateMaterial::Steel => &[Contact::SteelOnTrowelledConcrete],
            PlateMaterial::Timber => &[Contact::TimberOnConcrete, Contact::TimberOnSteel],
        };
        Some(contacts.iter().map(|contact| contact.coefficients().0).fold(f64::INFINITY, f64::min))
    }
}

/// The state that comes nearest to moving the bent.
struct Worst<'a> {
    front: usize,
    /// About which it turns.
    edge: &'a Leg,
    ratio: f64,
    standing: Standing,
}

impl<'a> Worst<'a> {
    fn keep(self, worst: &mut Option<Self>) {
        if worst.as_ref().is_none_or(|worst| self.ratio > worst.ratio * (1.0 + 1e-9)) {
            *worst = Some(self);
        }
    }
}
