//! Falsework drawn where shutters of its pour or the concrete are.

use super::record::Record;
use super::still::{Still, named, overlap};
use crate::geometry::{Bounds, Point, edges_of};
use crate::model::{Model, Part, PlacedFalsework, PlacedShutter, Role, TOUCHING_M};
use crate::results::{Finding, Severity};
use crate::scheme::Id;
use crate::sentence::Sentence;

/// Tells what of each falsework is. Beams that run across to the walls are told of by themselves; ties are cut to fit.
pub fn tell(model: &Model, record: &mut Record) {
    for falsework in &model.falsework {
        let owners: Vec<Id> = falsework.owners().collect();
        let own = model.parts.iter().filter(|part| stands(part) && owners.contains(&part.owner));
        let own: Vec<Own> = own.map(|part| Own { part, outline: part.solid.outline(TOUCHING_M) }).collect();
        // Of those behind each other the first.
        let mut alone: Vec<&Own> = Vec::new();
        for own in own.iter().filter(|own| own.part.role != Role::Base) {
            if !alone.iter().any(|other| other.outline == own.outline) {
                alone.push(own);
            }
        }
        for concrete in Still::concrete_up_to(model, falsework.pour) {
            let met = alone.iter().filter_map(|own| Some((own.part, concrete.overlap(&own.outline)?)));
            let remedy = sentence!("Move the legs or the way clear of it.");
            tell_of(falsework, &concrete.name, met, remedy, record);
        }
        for shutter in model.shutters.iter().filter(|shutter| shutter.pour == falsework.pour) {
            let remedy = sentence!("Move the legs or the way clear of it, or cast what it forms in an earlier pour.");
            tell_of(falsework, &sentence!("{}", &shutter.mark), met_by(model, shutter, &own), remedy, record);
        }
    }
}

/// A part of falsework, drawn in by what counts as touching.
struct Own<'a> {
    part: &'a Part,
    outline: [Point; 4],
}

/// Those of the parts that are where parts of a shutter are, and where.
fn met_by<'a>(model: &Model, shutter: &PlacedShutter, own: &[Own<'a>]) -> Vec<(&'a Part, Point)> {
    let theirs = || model.parts.iter().filter(|part| part.owner == shutter.id);
    let Some(around) = Bounds::around(theirs().flat_map(|part| part.solid.outline(0.0))) else { return Vec::new() };
    let met = |own: &Own<'a>| {
        Bounds::around(own.outline).filter(|bounds| bounds.meets(&around))?;
        let place = theirs()
            .filter(|other| abreast(own.part, other))
            .find_map(|other| overlap(edges_of(&other.solid.outline(0.0)), &own.outline));
        Some((own.part, place?))
    };
    own.iter().filter_map(met).collect()
}

/// Parts of one name once.
fn tell_of<'a>(
    falsework: &PlacedFalsework,
    other: &Sentence,
    met: impl IntoIterator<Item = (&'a Part, Point)>,
    remedy: Sentence,
    record: &mut Record,
) {
    let (mut names, mut at): (Vec<Sentence>, _) = (Vec::new(), None);
    for (part, place) in met {
        let name = sentence!("{}", named(part));
        if !names.contains(&name) {
            names.push(name);
        }
        at.get_or_insert(place);
    }
    if let Some(list) = names.into_iter().reduce(|list, next| sentence!("{}, {}", list, next)) {
        let text = sentence!("Parts of {} are drawn where {} is: {}.", &falsework.mark, other, list);
        let finding = Finding { severity: Severity::Warn, owner: Some(falsework.id), at, check: None, text, remedy };
        record.results.findings.push(finding);
    }
}

fn stands(part: &Part) -> bool {
    !matches!(part.role, Role::Facing | Role::Secondary | Role::Primary)
}

/// Whether both are at one place along the bay.
fn abreast(a: &Part, b: &Part) -> bool {
    let ([from, to], [low, high]) = (a.along_bay_m(), b.along_bay_m());
    to.min(high) - from.max(low) > TOUCHING_M
}
