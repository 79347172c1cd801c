//! What the user should know, in whole sentences, most serious first.

mod own_items;

pub use own_items::name_own_items;

use crate::geometry::Point;
use crate::layout::takes_shutter;
use crate::model::{Face, FaceKind, Model};
use crate::results::{Check, CheckKind, Finding, LedgerEntry, Mechanism, Results, Severity};
use crate::sentence::{Sentence, Value, at_least, length, length_mm, member, number, word};
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

/// Rounded up, so that what is over by a hair is.
fn percent(ratio: f64) -> Value {
    at_least(ratio * 100.0, "%", 0)
}

fn of_check(index: usize, check: &Check) -> Finding {
    let name = || member(&check.member);
    let place = || &check.place;
    let text = match check.check {
        CheckKind::Clearance => sentence!(
            "{} is {}, {} less than the {} wanted: {}.",
            name(),
            length(check.resistance, 3),
            length_mm(check.demand - check.resistance),
            length(check.demand, 3),
            place()
        ),
        CheckKind::Stability => sentence!(
            "{} is too slender to stand: its critical load factor is {}, below {}.",
            name(),
            number(check.resistance, "", 2),
            number(check.demand, "", 0)
        ),
        CheckKind::Overturning | CheckKind::Sliding | CheckKind::Uplift => sentence!(
            "{} does not stand safely {}, {}: {} act in {} against {}.",
            name(),
            place(),
            &check.case,
            number(check.demand, check.unit, 2),
            word(check.check.name()),
            number(check.resistance, check.unit, 2)
        ),
        CheckKind::Anchorage => sentence!(
            "{} uses {} of the tension and shear that its anchor can bear, at {}.",
            name(),
            percent(check.ratio),
            place()
        ),
        CheckKind::Extension if check.resistance <= 0.0 => sentence!(
            "{} is {} high, too short for its shortest standard and its jacks, at {}.",
            name(),
            length(check.demand, 2),
            place()
        ),
        CheckKind::Extension => sentence!(
            "{}: its jacks would extend {}, {} further than they may, at {}.",
            name(),
            length_mm(check.demand),
            length_mm(check.demand - check.resistance),
            place()
        ),
        kind if check.resistance <= 0.0 => {
            sentence!("{} has no resistance in {} at {}.", name(), word(kind.name()), place())
        }
        kind => sentence!(
            "{} carries {} in {}, {} over its {}, at {}.",
            name(),
            number(check.demand, check.unit, 3),
            word(kind.name()),
            percent(check.ratio - 1.0),
            number(check.resistance, check.unit, 3),
            place()
        ),
    };
    Finding {
        severity: Severity::Fail,
        owner: Some(check.owner),
        at: Some(check.at),
        check: Some(index),
        text,
        remedy: remedy(check),
    }
}

fn remedy(check: &Check) -> Sentence {
    match check.check {
        CheckKind::Tension => sentence!("Place ties closer, slow the pour, or use a stronger tie."),
        CheckKind::Buckling => sentence!("Hold it at closer levels, use more of them, or a stronger one."),
        CheckKind::LateralTorsional => {
            sentence!("Restrain its compression flange at closer places, or use a wider section.")
        }
        CheckKind::Extension => sentence!("Use standards of another length, or move what it carries."),
        CheckKind::Spigot => sentence!("Hold it at closer levels, or use longer standards and tighter spigots."),
        CheckKind::BasePressure => sentence!("Use a wider plate or spread the force over more legs or jacks."),
        CheckKind::Coupler => sentence!("Brace more gaps, or use couplers of a higher class."),
        CheckKind::Clearance => sentence!("Move what stands nearest, or ask for less."),
        CheckKind::Stability => sentence!("Brace more gaps and shorten the lifts."),
        CheckKind::Overturning => sentence!(
            "Prop it, hold it down, weigh it down, hold it to cast walls, or move the outer lines of legs outward."
        ),
        CheckKind::Jacking => sentence!("Use more jacks, or stronger ones."),
        CheckKind::Sliding => sentence!("Hold its foot, anchor it, use more kentledge, or hold it to cast walls."),
        CheckKind::Uplift => sentence!("Hold it down, or weigh it down."),
        CheckKind::Anchorage => {
            sentence!("Use a deeper anchor further from the edge, more of them, or wait for strength.")
        }
        CheckKind::Bending | CheckKind::Shear | CheckKind::Bearing | CheckKind::Deflection => {
            sentence!("Place what carries it closer together, or use a stronger item.")
        }
    }
}

/// Faces that need a form and have none.
fn unformed(model: &Model) -> impl Iterator<Item = Finding> + '_ {
    let has_shutter = |face: &Face| model.shutters.iter().any(|shutter| shutter.face.of == face.of);
    let has_falsework = |face: &Face| model.falsework.iter().any(|falsework| falsework.faces.contains(face));
    model.faces.iter().filter_map(move |face| {
        let mark = model.pour(face.of.pour).map_or("", |pour| pour.mark.as_str());
        let (what, remedy) = match face.kind {
            FaceKind::OuterWall | FaceKind::InnerWall if !has_shutter(face) => {
                (sentence!("A wall face of {} has no shutter.", mark), sentence!("Pull a shutter off the face."))
            }
            FaceKind::Soffit | FaceKind::SlopeUnder if !has_falsework(face) => {
                (sentence!("A soffit of {} has no falsework.", mark), sentence!("Place falsework under it."))
            }
            FaceKind::SlopeOver if takes_shutter(face) && !has_shutter(face) => (
                sentence!("A battered wall face of {} has no shutter.", mark),
                sentence!("Pull a shutter off the face."),
            ),
            _ => return None,
        };
        let middle: Point = face.from.lerp(face.to, 0.5);
        let (x, z) = (number(middle.x, "m", 2), number(middle.z, "m", 2));
        Some(Finding {
            severity: Severity::Warn,
            owner: None,
            at: Some(middle),
            check: None,
            text: sentence!("{} It lies at x = {}, level {}.", what, x, z),
            remedy,
        })
    })
}

/// What no drawing here is checked for, and who usually checks it.
fn unchecked(model: &Model, struck: bool) -> Option<Finding> {
    let opened = model.falsework.iter().any(|falsework| falsework.opening.is_some());
    let placed = !(model.shutters.is_empty() && model.falsework.is_empty());
    placed.then(|| Finding {
        severity: Severity::Note,
        owner: None,
        at: None,
        check: None,
        text: if struck {
            sentence!(
                "Not computed here: stop ends, bracing and wind along the bay, impact, erection, and the ground beyond \
                 the pressure under bases."
            )
        } else {
            sentence!(
                "Not computed here: stop ends, bracing and wind along the bay, impact, erection, striking, and the \
                 ground beyond the pressure under bases."
            )
        },
        remedy: if opened {
            sentence!(
                "Have them designed, and the whole checked independently; the usual design check is of category 3, \
                 since a way leads under loaded falsework (BS 5975, from memory). Local codes decide."
            )
        } else {
            sentence!(
                "Have them designed, and the whole checked independently; the usual design check is of category 2 \
                 (BS 5975, from memory). Local codes decide."
            )
        },
    })
}

fn of_ledger(entry: &LedgerEntry) -> Finding {
    let worst =
        entry.levels.iter().max_by(|a, b| (a.into_kn - a.out_kn).abs().total_cmp(&(b.into_kn - b.out_kn).abs()));
    let (pour, case) = (&entry.pour, &entry.case);
    let text = match worst {
        Some(level) => sentence!(
            "The forces of {} ({}) do not close at {}: {} come in and {} go out.",
            pour,
            case,
            word(level.level),
            number(level.into_kn, "kN", 1),
            number(level.out_kn, "kN", 1)
        ),
        None => sentence!("The forces of {} ({}) do not close.", pour, case),
    };
    Finding {
        severity: Severity::Fail,
        owner: None,
        at: None,
        check: None,
        text,
        remedy: sentence!(
            "Carry every soffit and hold every shutter; the results cannot be trusted until this closes."
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_over_by_a_hair_is_over() {
        for (ratio, written) in [(0.0004, "1 %"), (1.03 - 1.0, "3 %"), (0.694, "70 %")] {
            assert_eq!(sentence!("{}", percent(ratio)).to_string(), written);
        }
    }
}
