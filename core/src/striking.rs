//! When the forms of each pour may go, by the maturity of its concrete.

use crate::checks::concrete::mean_strength;
use crate::checks::striking::{
    FROST_MPA, Form, SOFFIT_MPA, WALL_MPA, hours_to_age, hours_until_in, least_time_h, soffit_strength_mpa,
};
use crate::model::{FaceKind, Model, PlacedFalsework, Pour};
use crate::results::{Finding, Results, Severity, StrikingTime, StruckForm};
use crate::scheme::{Programme, Scheme, Striking, Temperature};
use crate::sentence::{Sentence, at_least, at_most, number, word};

/// Concrete colder than this may freeze before it has hardened, °C; common practice.
const COLD_C: f64 = 5.0;
/// No strength is counted before this age at 20 °C, for which the hardening curve of EN 1992-1-1 is not made, h. It is that
/// of 12 h at 16 °C, the least time of BS 8110 for walls.
const EARLIEST_H: f64 = 10.0;
const HOURS_A_DAY: f64 = 24.0;
/// Characteristic below mean strength, EN 1992-1-1 3.1.2(5).
const MARGIN_MPA: f64 = 8.0;

/// Adds the times of every pour that has forms, and what the user should know of them.
pub fn add(scheme: &Scheme, model: &Model, results: &mut Results) {
    let Some(striking) = &scheme.striking else { return };
    for pour in &model.pours {
        if model.shutters.iter().any(|shutter| shutter.pour == pour.id) {
            results.striking.push(walls(striking, pour));
        }
        let over = model.falsework.iter().filter(|falsework| falsework.pour == pour.id);
        let load_kpa = over.map(|falsework| load_kpa(scheme, model, pour, falsework)).fold(f64::NEG_INFINITY, f64::max);
        if load_kpa > 0.0 {
            results.striking.push(soffits(striking, pour, load_kpa));
            if striking.service_kpa.is_none() {
                results.findings.push(note(
                    Severity::Note,
                    sentence!(
                        "The service load of the soffits of {} is not given: they wait for the whole strength of their \
                         class.",
                        &pour.mark
                    ),
                    sentence!("Give the load that they are designed for, own weight included."),
                ));
            }
        }
    }
    for time in results.striking.iter().filter(|time| time.hours.is_none()) {
        results.findings.push(note(
            Severity::Warn,
            sentence!(
                "The concrete of {} never has the {} that its {} need.",
                &time.pour,
                number(time.required_mpa, "N/mm²", 1),
                word(time.form.name())
            ),
            sentence!("Keep it warmer, use a stronger or faster concrete, or leave its forms."),
        ));
    }
    tell_short_cycle(scheme, results);
}

/// Says where forms are wanted for the next bay before they may go.
fn tell_short_cycle(scheme: &Scheme, results: &mut Results) {
    let Some(Programme { cycle_days, .. }) = scheme.programme else { return };
    let hours = |time: &&StrikingTime| time.hours.unwrap_or(0.0);
    let Some(latest) = results.striking.iter().max_by(|a, b| hours(a).total_cmp(&hours(b))) else { return };
    let days = hours(&latest) / HOURS_A_DAY;
    if days > cycle_days {
        results.findings.push(note(
            Severity::Warn,
            sentence!(
                "A set is wanted for the next bay after {}, but the {} of {} may be struck {} after placing at the earliest.",
                at_most(cycle_days, "d", 1),
                word(latest.form.name()),
                &latest.pour,
                at_least(days, "d", 1)
            ),
            sentence!("Use more sets, a longer cycle, or concrete that hardens faster."),
        ));
    }
}

fn note(severity: Severity, text: Sentence, remedy: Sentence) -> Finding {
    Finding { severity, owner: None, at: None, check: None, text, remedy }
}

fn walls(striking: &Striking, pour: &Pour) -> StrikingTime {
    let cold = coldest_c(&striking.hardening.temperature) < COLD_C;
    let (required_mpa, source) = if cold {
        (FROST_MPA, "Harm by frost; common practice")
    } else {
        (WALL_MPA, "Damage to the face of a wall; common practice")
    };
    let formula = format!("{required_mpa} N/mm² of mean strength");
    time(striking, pour, StruckForm::Walls, Form::Vertical, (required_mpa, required_mpa), source, formula)
}

/// Soffits bear the load then as they bear that of service with their whole strength.
fn soffits(striking: &Striking, pour: &Pour, load_kpa: f64) -> StrikingTime {
    let class_mpa = striking.hardening.class_mpa;
    let (required_mpa, source, formula) = match striking.service_kpa {
        Some(service_kpa) => (
            soffit_strength_mpa(load_kpa, service_kpa, class_mpa),
            "Load then by load of service, at least 10 N/mm²; UK practice (from memory)",
            format!(
                "greatest of (w / wser fck, {SOFFIT_MPA} N/mm²) = greatest of ({load_kpa:.2} kPa / {service_kpa:.2} kPa × \
                 {class_mpa:.1} N/mm², {SOFFIT_MPA} N/mm²)"
            ),
        ),
        None => (
            class_mpa.max(SOFFIT_MPA),
            "Whole strength of the class, since the load of service is not known",
            format!("greatest of (fck, {SOFFIT_MPA} N/mm²) = greatest of ({class_mpa:.1} N/mm², {SOFFIT_MPA} N/mm²)"),
        ),
    };
    let formula = format!("{formula} = {required_mpa:.2} N/mm², and {MARGIN_MPA} N/mm² more of mean strength");
    let needed = (required_mpa, required_mpa + MARGIN_MPA);
    time(striking, pour, StruckForm::Soffits, Form::SlabProps, needed, source, formula)
}

fn time(
    striking: &Striking,
    pour: &Pour,
    form: StruckForm,
    practice: Form,
    (required_mpa, mean_mpa): (f64, f64),
    source: &str,
    formula: String,
) -> StrikingTime {
    let hardening = &striking.hardening;
    let mean_28_mpa = mean_strength(hardening.class_mpa);
    let hardened = hours_until_in(mean_mpa, mean_28_mpa, hardening.cement, &hardening.temperature);
    let set = hours_to_age(EARLIEST_H, &hardening.temperature);
    StrikingTime {
        pour: pour.mark.clone(),
        form,
        required_mpa,
        hours: hardened.zip(set).map(|(hardened, set)| hardened.max(set)),
        untested_h: least_time_h(practice, mean_c(&hardening.temperature)),
        source: source.into(),
        formula,
    }
}

/// Own weight of the thickest soffit and operations, unfactored.
fn load_kpa(scheme: &Scheme, model: &Model, pour: &Pour, falsework: &PlacedFalsework) -> f64 {
    let level = falsework.faces.iter().filter(|face| face.kind == FaceKind::Soffit);
    let places = level.flat_map(|face| [0.01, 0.5, 0.99].map(|part| face.from.lerp(face.to, part)));
    let depth = |place| model.solid.depth_above(place, pour.top_m, crate::geometry::Side::After);
    let deepest_m = places.map(depth).fold(0.0, f64::max);
    deepest_m * scheme.concrete.unit_weight_kn_m3 + scheme.loads.operations_kpa
}

fn coldest_c(temperature: &Temperature) -> f64 {
    match temperature {
        Temperature::Mean { celsius } => *celsius,
        Temperature::History { hours_celsius } => {
            hours_celsius.iter().fold(f64::INFINITY, |least, [_, c]| least.min(*c))
        }
    }
}

/// Mean over the hours of a history.
fn mean_c(temperature: &Temperature) -> f64 {
    match temperature {
        Temperature::Mean { celsius } => *celsius,
        Temperature::History { hours_celsius } => {
            let hours: f64 = hours_celsius.iter().map(|[hours, _]| hours).sum();
            let sum: f64 = hours_celsius.iter().map(|[hours, celsius]| hours * celsius).sum();
            if hours > 0.0 { sum / hours } else { f64::NEG_INFINITY }
        }
    }
}
