//! Hold points: what somebody must have seen before the work goes on, with the numbers that the scheme was worked out with.
//!
//! What they ask for is common practice; BS 5975 (from memory) has the temporary works coordinator permit loading and
//! striking.

mod moved_bay;

use crate::Design;
use crate::model::{PlacedFalsework, PlacedTieRow, Pour};
use crate::results::Severity;
use crate::scheme::{Bearing, Delivery, HeldBy, PressureMethod, Scheme};
use crate::sentence::{Sentence, Value, at_least, at_most, length_mm, word};
use serde::Serialize;

/// One stage of the work, and what must be so before or while it goes on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HoldPoint {
    /// Such as `Before P1 is concreted`.
    pub stage: Sentence,
    /// What must be so, in the order in which it comes about.
    pub points: Vec<Sentence>,
}

/// Those of a scheme, in the order of the work: none while no equipment stands.
pub fn hold_points(scheme: &Scheme, design: &Design) -> Vec<HoldPoint> {
    let model = &design.model;
    if model.shutters.is_empty() && model.falsework.is_empty() {
        return Vec::new();
    }
    let mut all = vec![HoldPoint { stage: sentence!("Before anything is put up"), points: at_first(design) }];
    for pour in &model.pours {
        let formed = model.shutters.iter().any(|shutter| shutter.pour == pour.id)
            || model.falsework.iter().any(|falsework| falsework.pour == pour.id);
        if formed {
            all.extend([
                HoldPoint {
                    stage: sentence!("Before {} is concreted", &pour.mark),
                    points: before(scheme, design, pour),
                },
                HoldPoint {
                    stage: sentence!("While {} is concreted", &pour.mark),
                    points: meanwhile(scheme, design, pour),
                },
                HoldPoint { stage: sentence!("Before the forms of {} go", &pour.mark), points: after(design, pour) },
            ]);
        }
    }
    if let (Some(jacks), Some(moved)) = (&model.jacks, &design.results.moved) {
        all.extend(moved_bay::stages(jacks, moved));
    }
    all
}

fn at_first(design: &Design) -> Vec<Sentence> {
    let fails = design.results.findings.iter().filter(|finding| finding.severity == Severity::Fail).count();
    let mut points = vec![
        sentence!("The design and its independent check are signed."),
        sentence!(
            "What is delivered is sound and what the schedule names, and all is worked out with its supplier's data."
        ),
    ];
    if fails > 0 {
        points.push(sentence!("Not one of the {} notes that it must not be built so is left.", fails));
    }
    points
}

fn before(scheme: &Scheme, design: &Design, pour: &Pour) -> Vec<Sentence> {
    let model = &design.model;
    let mut points = Vec::new();
    let of_pour = |row: &&PlacedTieRow| model.shutter(row.shutter).is_some_and(|shutter| shutter.pour == pour.id);
    let (props, ties): (Vec<_>, Vec<_>) = model.ties.iter().filter(of_pour).partition(|row| row.item.leg().is_some());
    if !ties.is_empty() {
        let (marks, count) = counted(&ties);
        points.push(sentence!("Ties {}: all {} are in, their nuts and plates tight.", marks, count));
    }
    if !props.is_empty() {
        let (marks, count) = counted(&props);
        points.push(sentence!("Props {}: all {} stand, held at both ends.", marks, count));
    }
    points.extend(ties.iter().chain(&props).filter_map(|row| held(row)));
    let shutters = || model.shutters.iter().filter(|shutter| shutter.pour == pour.id);
    let feet: Vec<&str> = shutters().filter(|shutter| shutter.foot_held).map(|shutter| shutter.mark.as_str()).collect();
    if !feet.is_empty() {
        points.push(sentence!("The feet of {} cannot move sideways.", feet.join(", ")));
    }
    points.extend(shutters().filter(|shutter| shutter.hold_down_kn > 0.0).map(|shutter| {
        let force = at_least(shutter.hold_down_kn, "kN", 1);
        sentence!("Each upright line of {} is held down for {}.", &shutter.mark, force)
    }));
    for falsework in model.falsework.iter().filter(|falsework| falsework.pour == pour.id) {
        points.extend(under(scheme, falsework));
    }
    let weight = at_most(scheme.concrete.unit_weight_kn_m3, "kN/m³", 1);
    points.push(match scheme.concrete.method {
        PressureMethod::FullHead => sentence!("The concrete ordered is no heavier than {}.", weight),
        _ => sentence!(
            "The concrete ordered is no heavier than {}, and of the kind that its pressure is worked out for.",
            weight
        ),
    });
    points
}

/// What holds the fixed ends of a row.
fn held(row: &PlacedTieRow) -> Option<Sentence> {
    let mark = &row.mark;
    Some(match row.held?.by {
        HeldBy::Thrust => sentence!("What {} pushes against bears it, as is shown.", mark),
        HeldBy::Kentledge { weight_kn, .. } => {
            sentence!("Each of {} is held by a block of {} or more.", mark, at_least(weight_kn, "kN", 1))
        }
        HeldBy::Anchor(anchor) => sentence!(
            "The concrete that {} is anchored in is shown to have a strength of {}.",
            mark,
            at_least(anchor.strength_mpa, "N/mm²", 1)
        ),
    })
}

fn under(scheme: &Scheme, falsework: &PlacedFalsework) -> Vec<Sentence> {
    let mark = &falsework.mark;
    let mut points = vec![match (falsework.bearing, &falsework.slab) {
        (Bearing::Ground, _) => sentence!(
            "The ground under {} is shown to bear {}, and is drained.",
            mark,
            at_least(scheme.ground.allowable_kpa, "kPa", 0)
        ),
        (Bearing::Slab { .. }, Some(slab)) => {
            sentence!("The slab under {} is at least {} days old.", mark, at_least(slab.age_days, "", 0))
        }
        (Bearing::Slab { strength_mpa }, None) => {
            sentence!("The slab under {} is shown to have a strength of {}.", mark, at_least(strength_mpa, "N/mm²", 1))
        }
    }];
    points.push(sentence!(
        "{}: all bracing is in, every leg is loaded within {} of its axis, and no jack is loose.",
        mark,
        length_mm(scheme.loads.leg_eccentricity_m)
    ));
    points.extend(falsework.opening.as_ref().map(|opening| {
        sentence!(
            "The way {} is measured, at least {} wide and {} high; its guards and the gauge ahead of it stand.",
            &opening.mark,
            length_mm(opening.drawn.width_m),
            length_mm(opening.drawn.height_m)
        )
    }));
    points
}

fn meanwhile(scheme: &Scheme, design: &Design, pour: &Pour) -> Vec<Sentence> {
    let walls = design.model.shutters.iter().any(|shutter| shutter.pour == pour.id);
    let mut points = Vec::new();
    if walls && scheme.concrete.method != PressureMethod::FullHead {
        let rate = match scheme.concrete.delivery {
            Delivery::Volume { rate_m3_h } => at_most(rate_m3_h, "m³/h", 1),
            Delivery::Rise { rate_m_h } => at_most(rate_m_h, "m/h", 2),
        };
        points.push(sentence!(
            "At most {} is placed, at {} or warmer; the limits of the pour tell what else may be.",
            rate,
            least_temperature(scheme)
        ));
    }
    points.push(sentence!("Ties, props, legs and levels are watched by somebody who can stop the pour."));
    points.extend(
        scheme
            .loads
            .wind
            .map(|wind| sentence!("Work stops in gusts of more than {}.", at_most(wind.working_speed_m_s, "m/s", 1))),
    );
    points
}

fn after(design: &Design, pour: &Pour) -> Vec<Sentence> {
    let times: Vec<_> = design.results.striking.iter().filter(|time| time.pour == pour.mark).collect();
    let mut points: Vec<Sentence> = times
        .iter()
        .map(|time| {
            let (form, strength) = (word(time.form.name()), at_least(time.required_mpa, "N/mm²", 1));
            match time.hours {
                Some(hours) => sentence!(
                    "The {} are proven to have {}, reckoned to take {} hours.",
                    form,
                    strength,
                    at_least(hours, "", 0)
                ),
                None => sentence!("The {} are proven to have {}.", form, strength),
            }
        })
        .collect();
    if times.is_empty() {
        points
            .push(sentence!("The strength that the designer of the concrete asks for is proven: none is given here."));
    }
    let swings = design.results.swings.iter().filter_map(|swing| {
        let shutter = design.model.shutter(swing.shutter).filter(|shutter| shutter.pour == pour.id)?;
        let (mark, gap) = (&shutter.mark, length_mm(swing.wanted_m));
        Some(if shutter.hinge?.falsework_out {
            sentence!(
                "The ties of {} and the falsework of its pour are out, and nothing else stands where it swings: {} is to be \
                 kept.",
                mark,
                gap
            )
        } else {
            sentence!("The ties of {} are out, and nothing else stands where it swings: {} is to be kept.", mark, gap)
        })
    });
    points.extend(swings);
    let over_way = |falsework: &PlacedFalsework| falsework.pour == pour.id && falsework.opening.is_some();
    if design.model.falsework.iter().any(over_way) {
        points.push(sentence!("Nobody passes below what is being struck."));
    }
    points
}

/// Marks of rows, and how many pieces they are.
fn counted(rows: &[&PlacedTieRow]) -> (String, usize) {
    let marks: Vec<&str> = rows.iter().map(|row| row.mark.as_str()).collect();
    (marks.join(", "), rows.iter().map(|row| row.places_m.len()).sum())
}

/// Of concrete: what is colder presses more.
fn least_temperature(scheme: &Scheme) -> Value {
    at_least(scheme.concrete.temperature_c, "°C", 0)
}
