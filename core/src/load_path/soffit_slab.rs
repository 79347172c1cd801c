//! Bases on a slab cast earlier: local bearing, its edges and punching, by the strength that it has at its age.

use super::record::{Record, Subject};
use super::soffit_bent::Run;
use crate::checks::concrete::PlateOnSlab;
use crate::checks::{base_sides_m, striking};
use crate::geometry::{Point, Side};
use crate::model::Leg;
use crate::results::Severity;
use crate::scheme::{Bearing, SlabAge};
use crate::sentence::number;

/// From the top of a slab to its tension reinforcement: cover and half a bar; common practice.
const COVER_M: f64 = 0.06;

/// What the slab under a falsework bears on the day of the pour.
pub(super) struct Slab {
    /// As stated.
    pub bearing: Bearing,
    /// By its age, N/mm²; none where the age is not known.
    strength_mpa: Option<f64>,
    /// From the end of the bay to the nearest bent.
    along_m: f64,
}

impl Run<'_> {
    /// The slab, and a note where its age is not known. Its strength is the lesser of what is stated and what its age
    /// gives.
    pub(super) fn slab(&self, record: &mut Record) -> Slab {
        let falsework = self.table.falsework;
        let bay_m = self.table.model.bay_m;
        let along_m = falsework.bents_m.iter().fold(bay_m, |least: f64, &y| least.min(y).min(bay_m - y));
        let Bearing::Slab { strength_mpa: stated } = falsework.bearing else {
            return Slab { bearing: falsework.bearing, strength_mpa: None, along_m };
        };
        let Some(SlabAge { age_days, hardening }) = &falsework.slab else {
            record.find(
                Severity::Warn,
                falsework.id,
                sentence!(
                    "The age of the slab under {} is not given: its stated strength of {} is taken; local bearing at its \
                     edges and punching are not checked.",
                    &falsework.mark,
                    number(stated, "N/mm²", 1)
                ),
                sentence!("Give its age, strength class and temperature."),
            );
            return Slab { bearing: falsework.bearing, strength_mpa: None, along_m };
        };
        let by_age = striking::characteristic_at(hardening, age_days * 24.0);
        if by_age < stated {
            record.find(
                Severity::Note,
                falsework.id,
                sentence!(
                    "At {} days the slab under {} has {} by its temperature, less than the {} stated; the lesser is taken.",
                    number(*age_days, "", 1),
                    &falsework.mark,
                    number(by_age, "N/mm²", 1),
                    number(stated, "N/mm²", 1)
                ),
                sentence!("Test it before it is loaded, or load it later."),
            );
        }
        let strength_mpa = by_age.min(stated);
        Slab { bearing: Bearing::Slab { strength_mpa }, strength_mpa: Some(strength_mpa), along_m }
    }

    /// Checks one base on the slab. Reinforcement is not counted.
    pub(super) fn check_slab(&self, slab: &Slab, leg: &Leg, force_kn: f64, subject: &Subject, record: &mut Record) {
        let (falsework, solid, basis) = (self.table.falsework, &self.table.model.solid, self.table.scheme.basis);
        let Some(strength_mpa) = slab.strength_mpa else { return };
        let Some(sides_m) = base_sides_m(&falsework.base, basis, &slab.bearing, &self.table.scheme.ground) else {
            return;
        };
        let floor_m = leg.foot_m - falsework.base.plate().map_or(0.0, |plate| plate.thickness_m);
        let slab_m = solid.depth_below(Point::new(leg.x_m, floor_m), Side::After);
        let spans = solid.spans_at(floor_m - 1e-3, Side::After);
        let across_m = spans.iter().filter(|[left, right]| (*left..=*right).contains(&leg.x_m));
        let to_edge_m =
            across_m.fold(slab.along_m, |least, [left, right]| least.min(leg.x_m - left).min(right - leg.x_m));
        if slab_m <= COVER_M {
            return;
        }
        let plate = PlateOnSlab { sides_m, slab_m, to_edge_m };
        record.check(subject, plate.check(basis, strength_mpa, 0.0, slab_m - COVER_M, force_kn));
    }
}
