//! Whether a scheme can be worked with: sizes, names, references, and a section that is truly a section.

mod items;
mod moving;
mod placing;
mod programme;
mod section;
mod stock;

use super::{Delivery, Hardening, Id, PressureMethod, SCHEMA, Scheme, SchemeError, Subject, Temperature};
use crate::sorting::sort;

/// At most this many errors are reported at once.
const MOST_ERRORS: usize = 50;

const MOST_ITEMS: usize = 500;
const LONGEST_NAME: usize = 200;
const LONGEST_CODE: usize = 100;

/// Levels and places lie this near to the origin, m: room for levels above a datum.
const FARTHEST_M: f64 = 1000.0;

/// No length is greater, m.
const LONGEST_M: f64 = 100.0;

impl Scheme {
    /// Every reason why the scheme cannot be worked with, the most basic first. Faces that no longer exist and items
    /// that no catalogue has are none: the layout reports those.
    pub fn validate(&self) -> Result<(), Vec<SchemeError>> {
        if self.schema != SCHEMA {
            return Err(vec![SchemeError::Schema { found: self.schema }]);
        }
        let mut errors = Errors::default();
        errors.check_counts(self);
        errors.finish()?;

        let mut errors = Errors::default();
        errors.check_settings(self);
        errors.check_items(&self.items);
        errors.check_numbers(&self.section);
        errors.check_placing(self);
        errors.check_ids(self);
        errors.check_references(self);
        errors.finish()?;

        section::check(&self.section)
    }
}

#[derive(Default)]
struct Errors(Vec<SchemeError>);

impl Errors {
    fn push(&mut self, error: SchemeError) {
        if self.0.len() < MOST_ERRORS {
            self.0.push(error);
        }
    }

    fn finish(self) -> Result<(), Vec<SchemeError>> {
        if self.0.is_empty() { Ok(()) } else { Err(self.0) }
    }

    /// Refuses numbers outside a range; not-a-number is outside every range.
    fn range(
        &mut self,
        subject: Subject,
        quantity: &'static str,
        value: f64,
        (low, high): (f64, f64),
        unit: &'static str,
    ) {
        if !(low..=high).contains(&value) {
            self.push(SchemeError::OutOfRange { subject, quantity, value, low, high, unit });
        }
    }

    fn length(&mut self, subject: Subject, quantity: &'static str, value: f64, shortest: f64) {
        self.range(subject, quantity, value, (shortest, LONGEST_M), "m");
    }

    fn place(&mut self, subject: Subject, quantity: &'static str, value: f64) {
        self.range(subject, quantity, value, (-FARTHEST_M, FARTHEST_M), "m");
    }

    fn count(&mut self, subject: Subject, what: &'static str, count: usize, limit: usize) {
        if count > limit {
            self.push(SchemeError::TooMany { subject, what, count, limit });
        }
    }

    fn text(&mut self, subject: Subject, what: &'static str, text: &str, limit: usize) {
        let count = text.chars().count();
        if count > limit {
            self.push(SchemeError::TextTooLong { subject, what, count, limit });
        }
    }

    fn check_counts(&mut self, scheme: &Scheme) {
        let section = &scheme.section;
        let corners = section.outline.len() + section.cells.iter().map(|cell| cell.corners.len()).sum::<usize>();
        self.count(Subject::Scheme, "corners", corners, 2000);
        self.count(Subject::Scheme, "cells", section.cells.len(), 100);
        self.count(Subject::Scheme, "joints", section.joints.len(), 50);
        self.count(Subject::Scheme, "shutters", scheme.shutters.len(), MOST_ITEMS);
        self.count(Subject::Scheme, "tie rows", scheme.ties.len(), MOST_ITEMS);
        self.count(Subject::Scheme, "falsework bays", scheme.falsework.len(), MOST_ITEMS);
        self.count(Subject::Scheme, "openings", scheme.openings.len(), MOST_ITEMS);
        self.count(Subject::Scheme, "items", scheme.items.len(), MOST_ITEMS);
        for falsework in &scheme.falsework {
            self.count(Subject::Element("Falsework", falsework.id), "leg lines", falsework.leg_lines.len(), 200);
        }
        self.text(Subject::Scheme, "name", &scheme.name, LONGEST_NAME);
        self.text(Subject::Scheme, "revision", &scheme.revision, LONGEST_CODE);
    }

    fn check_settings(&mut self, scheme: &Scheme) {
        let settings = Subject::Settings;
        let Scheme { bays, concrete, loads, limits, ground, .. } = scheme;
        self.length(settings, "a bay length", bays.length_m, 0.1);
        self.range(settings, "a number of bays", f64::from(bays.count), (1.0, 1000.0), "");
        self.range(settings, "a unit weight of concrete", concrete.unit_weight_kn_m3, (10.0, 50.0), "kN/m³");
        self.range(settings, "a concrete temperature", concrete.temperature_c, (-5.0, 50.0), "°C");
        match concrete.method {
            PressureMethod::CiriaR108 { c1, c2 } => {
                self.range(settings, "a coefficient C1", c1, (0.5, 2.0), "");
                self.range(settings, "a coefficient C2", c2, (0.1, 1.0), "");
            }
            PressureMethod::FullHead => {}
            PressureMethod::Din18218 { setting_time_h, .. } => {
                self.range(settings, "a setting time", setting_time_h, (0.5, 48.0), "h");
            }
            PressureMethod::Aci347 { slump_mm, vibrated_depth_m, .. } => {
                self.range(settings, "a slump", slump_mm, (0.0, 300.0), "mm");
                self.range(settings, "a depth of vibration", vibrated_depth_m, (0.0, 20.0), "m");
            }
        }
        match concrete.delivery {
            Delivery::Volume { rate_m3_h } => {
                self.range(settings, "a delivery of concrete", rate_m3_h, (0.1, 500.0), "m³/h");
            }
            Delivery::Rise { rate_m_h } => self.range(settings, "a rise of concrete", rate_m_h, (0.01, 100.0), "m/h"),
        }
        self.range(settings, "a weight of formwork", loads.formwork_kpa, (0.0, 20.0), "kPa");
        self.range(settings, "a load from operations", loads.operations_kpa, (0.0, 20.0), "kPa");
        self.range(settings, "a horizontal part of the load", loads.horizontal_fraction, (0.0, 1.0), "");
        self.range(settings, "an eccentricity of legs", loads.leg_eccentricity_m, (0.0, 0.2), "m");
        if let Some(wind) = loads.wind {
            self.range(settings, "a greatest wind speed", wind.basic_speed_m_s, (0.0, 100.0), "m/s");
            self.range(settings, "a working wind speed", wind.working_speed_m_s, (0.0, 100.0), "m/s");
            self.range(settings, "a time to stand", wind.stands_days.unwrap_or(1.0), (1.0, 36_500.0), "days");
            self.range(settings, "a force coefficient of wind", wind.falsework_coefficient(), (0.1, 5.0), "");
        }
        if let Some(plant_kn) = loads.plant_kn {
            self.range(settings, "a horizontal load of plant", plant_kn, (0.0, 200.0), "kN");
        }
        if let Some(range_k) = loads.temperature_range_k {
            self.range(settings, "a range of temperature", range_k, (0.0, 80.0), "K");
        }
        self.range(settings, "a span by deflection", limits.span_over_deflection, (50.0, 5000.0), "");
        self.range(settings, "an access tolerance", limits.access_tolerance_m, (0.0, 1.0), "m");
        self.place(settings, "a ground level", ground.level_m);
        if let Some(striking) = &scheme.striking {
            self.hardening(settings, &striking.hardening);
            if let Some(service_kpa) = striking.service_kpa {
                self.range(settings, "a service load of soffits", service_kpa, (1.0, 10_000.0), "kPa");
            }
        }
        self.range(settings, "an allowable bearing pressure", ground.allowable_kpa, (1.0, 10_000.0), "kPa");
        if let Some(moving) = &scheme.moving {
            self.check_moving(settings, moving);
        }
        if let Some(programme) = &scheme.programme {
            self.check_programme(settings, programme, &scheme.bays);
        }
        if let Some(stock) = &scheme.stock {
            self.check_stock(settings, stock);
        }
    }

    fn hardening(&mut self, subject: Subject, hardening: &Hardening) {
        const CELSIUS: (f64, f64) = (-30.0, 90.0);
        self.range(subject, "a strength class of concrete", hardening.class_mpa, (8.0, 120.0), "MPa");
        match &hardening.temperature {
            Temperature::Mean { celsius } => self.range(subject, "a temperature", *celsius, CELSIUS, "°C"),
            Temperature::History { hours_celsius } => {
                self.count(subject, "temperatures", hours_celsius.len(), 2000);
                for &[hours, celsius] in hours_celsius {
                    self.range(subject, "hours of a temperature", hours, (0.0, 100_000.0), "h");
                    self.range(subject, "a temperature", celsius, CELSIUS, "°C");
                }
            }
        }
    }

    fn check_ids(&mut self, scheme: &Scheme) {
        let mut ids: Vec<Id> = scheme.ids().collect();
        sort(&mut ids, Id::cmp);
        if ids.first() == Some(&Id(0)) {
            self.push(SchemeError::ReservedId);
        }
        ids.retain(|&id| id != Id(0));
        let mut repeated: Vec<Id> = ids.windows(2).filter(|pair| pair[0] == pair[1]).map(|pair| pair[0]).collect();
        repeated.dedup();
        repeated.into_iter().for_each(|id| self.push(SchemeError::RepeatedId { id }));
    }
}
