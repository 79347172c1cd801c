//! Whether a braced bent as a whole stands at every stage: overturning about its outer bases, and sliding on them.

use super::bent_effects::{Push, UnitCases};
use super::record::{Record, Subject};
use super::soffit::UNFACTORED;
use super::soffit_bent::Run;
use super::soffit_levels::Levels;
use crate::actions::friction::Contact;
use crate::analysis::LoadCase;
use crate::catalogue::PlateMaterial;
use crate::checks::stability::{Standing, check_overturning, check_sliding};
use crate::geometry::Point;
use crate::model::{Leg, LegKind};
use crate::results::Verdict;
use crate::scheme::{Bearing, Lateral};

impl Run<'_> {
    /// Checks balance under loads as they are, to either side. Walls that hold a bent at its heads keep it from both.
    pub fn check_balance(&self, service: &Levels, record: &mut Record) {
        let falsework = self.table.falsework;
        let mut on_floor = falsework.legs.iter().filter(|leg| leg.kind != LegKind::Stub);
        let (Some(left), Some(right)) = (on_floor.next(), on_floor.next_back()) else { return };
        if falsework.lateral == Lateral::HeldByWalls {
            return;
        }
        let cases = UnitCases::new(self.bent, 1.0, self.exposure.as_ref(), self.widest, false);
        let member = format!("{} bent", falsework.mark);
        for front in 0..service.bent_loads.len() {
            let (weights, vertical_kn) = self.vertical(service, front, 1.0);
            let case = self.table.case(front);
            for push in self.pushes(front, vertical_kn, &UNFACTORED) {
                let pushing_kn = cases.sum(push, |unit| self.bent.forces(unit).map(|(_, [right, _])| right).sum());
                if pushing_kn == 0.0 {
                    continue;
                }
                let edge = if pushing_kn > 0.0 { right } else { left };
                let at = Point::new(edge.x_m, edge.foot_m);
                let place = format!("about the base of {}", edge.mark);
                let subject = Subject { owner: falsework.id, member: &member, case: &case, place: &place, at };
                record.check(&subject, [self.overturning(&cases, &weights, push, edge, pushing_kn.signum())]);
                let place = "at its bases";
                record.check(&Subject { place, ..subject }, self.sliding(vertical_kn, pushing_kn.abs()));
            }
        }
    }

    /// About the outer base on the side to which it is pushed.
    fn overturning(&self, cases: &UnitCases, weights: &LoadCase, push: Push, edge: &Leg, side: f64) -> Verdict {
        // Moments that turn the bent over the edge.
        let moment =
            |(at, [right, up]): (Point, [f64; 2])| side * (right * (at.z - edge.foot_m) - up * (at.x - edge.x_m));
        let mut standing = Standing::default();
        for moment_knm in self.bent.forces(weights).map(moment) {
            standing.holding += (-moment_knm).max(0.0);
            standing.tipping_permanent += moment_knm.max(0.0);
        }
        standing.tipping_variable = cases.sum(push, |unit| self.bent.forces(unit).map(moment).sum()).max(0.0);
        check_overturning(self.table.scheme.basis, &standing)
    }

    /// On a slab; of what stands on the ground the friction is not known.
    fn sliding(&self, vertical_kn: f64, pushing_kn: f64) -> Option<Verdict> {
        let falsework = self.table.falsework;
        if falsework.bearing == Bearing::Ground {
            return None;
        }
        let contacts: &[Contact] = match falsework.base.plate()?.material {
            PlateMaterial::Steel => &[Contact::SteelOnTrowelledConcrete],
            PlateMaterial::Timber => &[Contact::TimberOnConcrete, Contact::TimberOnSteel],
        };
        let least = contacts.iter().map(|contact| contact.coefficients().0).fold(f64::INFINITY, f64::min);
        let standing = Standing { holding: vertical_kn, tipping_variable: pushing_kn, ..Standing::default() };
        Some(check_sliding(self.table.scheme.basis, &standing, least))
    }
}
