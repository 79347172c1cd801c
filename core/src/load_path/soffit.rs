//! Soffit falsework: fresh concrete down to the bents, for every position of the pour front.

use super::bent::Bent;
use super::line::Envelope;
use super::record::{Bending, Record, at_x};
use super::soffit_load::{Front, Strip, carries, fronts, strips};
use super::{soffit_bent, soffit_ledger, soffit_levels};
use crate::actions::factors::{Factors, factors};
use crate::actions::thermal::{STEEL_EXPANSION, movement_m};
use crate::analysis::FrameError;
use crate::catalogue::{Item, Kind};
use crate::geometry::Point;
use crate::layout::span;
use crate::model::{Face, Model, PlacedFalsework, Pour};
use crate::results::Severity;
use crate::scheme::Scheme;
use crate::sentence::{Sentence, number, word};

/// Loads as they are.
pub(super) const UNFACTORED: Factors = Factors { permanent: 1.0, variable: 1.0, fresh_concrete_pressure: 1.0 };

pub fn solve(scheme: &Scheme, model: &Model, record: &mut Record) {
    if let Some(falsework) = model.falsework.first().filter(|_| scheme.loads.wind.is_none()) {
        record.find(
            Severity::Warn,
            falsework.id,
            sentence!("Falsework is not checked in wind, since the site's wind is not given."),
            sentence!("Give the site's wind among the loads and limits."),
        );
    }
    for pour in &model.pours {
        let under: Vec<&Face> = model.faces.iter().filter(|face| face.of.pour == pour.id && carries(face)).collect();
        record.results.ledger.push(soffit_ledger::concrete(pour, model, &under));
        for falsework in model.falsework.iter().filter(|falsework| falsework.pour == pour.id) {
            if scheme.loads.temperature_range_k.is_none() {
                tell_warming(falsework, record);
            }
            let table = Table::new(scheme, model, pour, falsework);
            if let Err(error) = table.solve(record) {
                record.unsolved(falsework.id, &falsework.mark, &error);
            }
        }
    }
}

/// Says what is left out where steel beams are held apart by braced trestles.
fn tell_warming(falsework: &PlacedFalsework, record: &mut Record) {
    const WARMER_K: f64 = 10.0;
    let Some(opening) = falsework.opening.as_ref().filter(|opening| matches!(opening.transfer.kind, Kind::Steel(_)))
    else {
        return;
    };
    let [left, .., right] = opening.trestles_m;
    let moved_mm = movement_m(STEEL_EXPANSION, right - left, WARMER_K) * 1e3;
    let text = sentence!(
        "{}: each {} lengthen its transfer beams by {} between the trestles, which hold against it. This is not checked, \
         since no range of temperature is given.",
        &opening.mark,
        number(WARMER_K, "K", 0),
        number(moved_mm, "mm", 1)
    );
    let remedy = sentence!("Give the range of temperature among the loads and limits.");
    record.find(Severity::Note, opening.drawn.id, text, remedy);
}

/// One soffit with all that carries it.
pub(super) struct Table<'a> {
    pub scheme: &'a Scheme,
    pub model: &'a Model,
    pub pour: &'a Pour,
    pub falsework: &'a PlacedFalsework,
    pub strips: Vec<Strip>,
    pub fronts: Vec<Front>,
    /// Pour, stage and front in words, for each front.
    pub cases: Vec<Sentence>,
    /// Left and right end of the soffit.
    pub ends_m: [f64; 2],
}

impl<'a> Table<'a> {
    fn new(scheme: &'a Scheme, model: &'a Model, pour: &'a Pour, falsework: &'a PlacedFalsework) -> Self {
        let (left, right) = span(&falsework.faces);
        let strips = strips(&falsework.faces, pour, &model.solid);
        let fronts = fronts(left, right);
        let case = |Front { stage, name, .. }: &Front| sentence!("{}, {}, {}", &pour.mark, word(stage.name()), name);
        let cases = fronts.iter().map(case).collect();
        Self { scheme, model, pour, falsework, strips, fronts, cases, ends_m: [left, right] }
    }

    fn solve(&self, record: &mut Record) -> Result<(), FrameError> {
        let service = soffit_levels::solve(self, &UNFACTORED)?;
        let factors = factors(self.scheme.basis);
        let factored = (factors != UNFACTORED).then(|| soffit_levels::solve(self, &factors)).transpose()?;
        let strength = factored.as_ref().unwrap_or(&service);
        let falsework = self.falsework;
        let mut check = |name: &str, item: &Item, strength: &Envelope, service: &Envelope, bearing_m: f64| {
            record.check_bending(&Bending {
                owner: falsework.id,
                member: &format!("{} {name}", falsework.mark),
                item,
                strength: *strength,
                service: *service,
                bearing_m,
                case: &|front| self.cases[front].clone(),
                place: &|x| (at_x(x), Point::new(x, falsework.head_m)),
            });
        };
        check("facing", &falsework.facing, &strength.facing, &service.facing, 0.0);
        let on_primary = falsework.primary.beam().map_or(0.1, |beam| beam.breadth_m);
        check("secondary", &falsework.secondary, &strength.secondary, &service.secondary, on_primary);
        if let (Some(strength), Some(service)) = (&strength.primary, &service.primary) {
            let on_head = falsework.leg.leg().map_or(0.1, |leg| 2.0 * leg.footprint_m);
            check("primary", &falsework.primary, strength, service, on_head);
        }
        let bent = Bent::build(falsework, self.ends_m);
        if let Err(error) =
            soffit_bent::solve(self, &bent, &service, factored.as_ref().map(|levels| (levels, &factors)), record)
        {
            record.unsolved_frame(falsework.id, &falsework.mark, &bent.frame, &error);
        }
        Ok(())
    }

    /// Pour, stage and front within a sentence.
    pub fn case_in_words(&self, front: usize) -> Sentence {
        let Front { stage, name, .. } = &self.fronts[front];
        sentence!("{} of {} ({})", word(stage.name()), &self.pour.mark, name)
    }
}
