//! What the user should know, in whole sentences, most serious first.

mod own_items;

pub use own_items::name_own_items;

use crate::geometry::Point;
use crate::layout::takes_shutter;
use crate::model::{Face, FaceKind, Model};
use crate::results::{Check, CheckKind, Finding, LedgerEntry, Mechanism, Results, Severity};
use crate::sorting::sort;

/// Ledger difference above which a scheme does not close.
pub const CLOSES_WITHIN: f64 = 1e-3;

/// Adds findings for failed checks, faces that nothing forms, and ledgers that do not close; sorts them all.
pub fn complete(model: &Model, results: &mut Results) {
    let failed = results.checks.iter().enumerate().filter(|(_, check)| check.ratio > 1.0);
    let mut found: Vec<Finding> = failed.map(|(index, check)| of_check(index, check)).collect();
    found.extend(unformed(model));
    found.extend(unchecked(model, !results.striking.is_empty()));
    found.extend(results.ledger.iter().filter(|entry| entry.difference > CLOSES_WITHIN).map(of_ledger));
    results.findings.append(&mut found);
    // What cannot stand comes before what is overloaded.
    results.findings.splice(0..0, results.mechanisms.iter().map(of_mechanism));
    let ratio = |finding: &Finding| finding.check.map_or(f64::INFINITY, |index| results.checks[index].ratio);
    let mut findings = std::mem::take(&mut results.findings);
    sort(&mut findings, |a, b| a.severity.cmp(&b.severity).then(ratio(b).total_cmp(&ratio(a))));
    findings.dedup();
    results.findings = findings;
}

fn of_mechanism(mechanism: &Mechanism) -> Finding {
    Finding {
        severity: Severity::Fail,
        owner: Some(mechanism.owner),
        at: Some(mechanism.at),
        check: None,
        text: mechanism.text.clone(),
        remedy: mechanism.remedy.clone(),
    }
}

fn of_check(index: usize, check: &Check) -> Finding {
    let over = (check.ratio - 1.0) * 100.0;
    let text = match check.check {
        CheckKind::Clearance => format!(
            "{} is {:.3} m, {:.0} mm less than the {:.3} m wanted: {}.",
            check.member,
            check.resistance,
            (check.demand - check.resistance) * 1e3,
            check.demand,
            check.place
        ),
        CheckKind::Stability => format!(
            "{} is too slender to stand: its critical load factor is {:.2}, below {:.0}.",
            check.member, check.resistance, check.demand
        ),
        CheckKind::Overturning | CheckKind::Sliding | CheckKind::Uplift => format!(
            "{} does not stand safely {}, {}: {:.2} {} act in {} against {:.2} {}.",
            check.member,
            check.place,
            check.case,
            check.demand,
            check.unit,
            check.check.name(),
            check.resistance,
            check.unit
        ),
        CheckKind::Anchorage => format!(
            "{} uses {:.0} % of the tension and shear that its anchor can bear, at {}.",
            check.member,
            check.ratio * 100.0,
            check.place
        ),
        CheckKind::Extension if check.resistance <= 0.0 => format!(
            "{} is {:.2} m high, too short for its shortest standard and its jacks, at {}.",
            check.member, check.demand, check.place
        ),
        CheckKind::Extension => format!(
            "{}: its jacks would extend {:.0} mm, {:.0} mm further than they may, at {}.",
            check.member,
            check.demand * 1e3,
            (check.demand - check.resistance) * 1e3,
            check.place
        ),
        kind if check.resistance <= 0.0 => {
            format!("{} has no resistance in {} at {}.", check.member, kind.name(), check.place)
        }
        kind => format!(
            "{} carries {:.3} {} in {}, {over:.0} % over its {:.3} {}, at {}.",
            check.member,
            check.demand,
            check.unit,
            kind.name(),
            check.resistance,
            check.unit,
            check.place
        ),
    };
    Finding {
        severity: Severity::Fail,
        owner: Some(check.owner),
        at: Some(check.at),
        check: Some(index),
        text,
        remedy: remedy(check).into(),
    }
}

fn remedy(check: &Check) -> &'static str {
    match check.check {
        CheckKind::Tension => "Place ties closer, slow the pour, or use a stronger tie.",
        CheckKind::Buckling => "Hold it at closer levels, use more of them, or a stronger one.",
        CheckKind::LateralTorsional => "Restrain its compression flange at closer places, or use a wider section.",
        CheckKind::Extension => "Use standards of another length, or move what it carries.",
        CheckKind::Spigot => "Hold it at closer levels, or use longer standards and tighter spigots.",
        CheckKind::BasePressure => "Use a wider plate or spread the force over more legs.",
        CheckKind::Coupler => "Brace more gaps, or use couplers of a higher class.",
        CheckKind::Clearance => "Move what stands nearest, or ask for less.",
        CheckKind::Stability => "Brace more gaps and shorten the lifts.",
        CheckKind::Overturning => {
            "Prop it, hold it down, weigh it down, hold it to cast walls, or move the outer lines of legs outward."
        }
        CheckKind::Sliding => "Hold its foot, anchor it, use more kentledge, or hold it to cast walls.",
        CheckKind::Uplift => "Hold it down, or weigh it down.",
        CheckKind::Anchorage => "Use a deeper anchor further from the edge, more of them, or wait for strength.",
        CheckKind::Bending | CheckKind::Shear | CheckKind::Bearing | CheckKind::Deflection => {
            "Place what carries it closer together, or use a stronger item."
        }
    }
}

/// Faces that need a form and have none.
fn unformed(model: &Model) -> impl Iterator<Item = Finding> + '_ {
    let has_shutter = |face: &Face| model.shutters.iter().any(|shutter| shutter.face.of == face.of);
    let has_falsework = |face: &Face| model.falsework.iter().any(|falsework| falsework.faces.contains(face));
    model.faces.iter().filter_map(move |face| {
        let mark = model.pour(face.of.pour).map_or("", |pour| pour.mark.as_str());
        let (text, remedy) = match face.kind {
            FaceKind::OuterWall | FaceKind::InnerWall if !has_shutter(face) => {
                (format!("A wall face of {mark} has no shutter."), "Pull a shutter off the face.")
            }
            FaceKind::Soffit | FaceKind::SlopeUnder if !has_falsework(face) => {
                (format!("A soffit of {mark} has no falsework."), "Place falsework under it.")
            }
            FaceKind::SlopeOver if takes_shutter(face) && !has_shutter(face) => {
                (format!("A battered wall face of {mark} has no shutter."), "Pull a shutter off the face.")
            }
            _ => return None,
        };
        let middle: Point = face.from.lerp(face.to, 0.5);
        let place = format!(" It lies at x = {:.2} m, level {:.2} m.", middle.x, middle.z);
        Some(Finding {
            severity: Severity::Warn,
            owner: None,
            at: Some(middle),
            check: None,
            text: text + &place,
            remedy: remedy.into(),
        })
    })
}

/// What no drawing here is checked for, and who usually checks it.
fn unchecked(model: &Model, struck: bool) -> Option<Finding> {
    let opened = model.falsework.iter().any(|falsework| falsework.opening.is_some());
    let category = if opened { "3, since a way leads under loaded falsework" } else { "2" };
    let placed = !(model.shutters.is_empty() && model.falsework.is_empty());
    placed.then(|| Finding {
        severity: Severity::Note,
        owner: None,
        at: None,
        check: None,
        text: format!(
            "Not computed here: stop ends, bracing and wind along the bay, impact, erection, {}and the ground beyond \
             the pressure under bases.",
            if struck { "" } else { "striking, " }
        ),
        remedy: format!(
            "Have them designed, and the whole checked independently; the usual design check is of category {category} \
             (BS 5975, from memory). Local codes decide."
        ),
    })
}

fn of_ledger(entry: &LedgerEntry) -> Finding {
    let worst =
        entry.levels.iter().max_by(|a, b| (a.into_kn - a.out_kn).abs().total_cmp(&(b.into_kn - b.out_kn).abs()));
    let place = worst.map_or(String::new(), |level| {
        format!(" at {}: {:.1} kN come in and {:.1} kN go out", level.level, level.into_kn, level.out_kn)
    });
    Finding {
        severity: Severity::Fail,
        owner: None,
        at: None,
        check: None,
        text: format!("The forces of {} ({}) do not close{place}.", entry.pour, entry.case),
        remedy: "Carry every soffit and hold every shutter; the results cannot be trusted until this closes.".into(),
    }
}
