//! Whether hinged shutters swing clear: outlines in the section, moved until they meet what stands still.

use super::record::{Record, Subject};
use super::still::{Still, named};
use crate::checks::Comparison;
use crate::geometry::{Connector, Edge, Motion, Point, edges_of};
use crate::model::{Model, Part, PlacedFalsework, PlacedShutter, Role, TOUCHING_M};
use crate::results::{CheckKind, Severity, Swing};
use crate::scheme::{Hinge, Id, Scheme};
use crate::sentence::{Sentence, length_mm, number, term};

/// How far the ground is taken to reach beyond the section, m.
const GROUND_M: f64 = 100.0;

/// Swings every hinged shutter and checks the gap that is asked for.
pub fn measure(scheme: &Scheme, model: &Model, record: &mut Record) {
    for shutter in &model.shutters {
        if let Some(hinge) = &shutter.hinge {
            one(scheme, model, hinge, shutter, record);
        }
    }
}

/// A part that moves.
struct Mover<'a> {
    part: &'a Part,
    outline: [Point; 4],
    /// Drawn in by what counts as touching.
    core: [Point; 4],
}

/// Where something is in the way.
struct Meeting {
    /// How far the motion goes until then.
    after: f64,
    at: Point,
    what: Sentence,
}

fn one(scheme: &Scheme, model: &Model, hinge: &Hinge, shutter: &PlacedShutter, record: &mut Record) {
    let (turn, drop) = (shutter.turn(hinge), Motion::Drop { way: 1.0 });
    let angle = hinge.angle_deg.to_radians();

    let movers = movers(model, shutter);
    let stills = stills(scheme, model, hinge, shutter);
    let first = meeting(turn, &movers, &stills);
    let mut rest = moved(&movers, turn, first.as_ref().map_or(angle, |meeting| meeting.after.min(angle)));
    let mut in_the_way = first.as_ref().filter(|meeting| meeting.after < angle).map(|meeting| {
        let [turned, of] = [meeting.after.to_degrees(), hinge.angle_deg].map(|angle| number(angle, "°", 1));
        let what = match meeting.after {
            0.0 => meeting.what.clone(),
            _ => sentence!("{} after {} of {}", &meeting.what, turned, of),
        };
        (meeting.at, what)
    });
    if in_the_way.is_none() {
        let low = meeting(drop, &rest, &stills).filter(|meeting| meeting.after < hinge.drop_m);
        rest = moved(&rest, drop, low.as_ref().map_or(hinge.drop_m, |meeting| meeting.after));
        in_the_way = low.map(|meeting| {
            let [lowered, of] = [meeting.after, hinge.drop_m].map(length_mm);
            (meeting.at, sentence!("{} when lowered by {} of {}", &meeting.what, lowered, of))
        });
    }
    if in_the_way.is_none() {
        tell_of_rising(model, shutter, &rest, record);
    }
    let (gap_m, at, between) = match in_the_way {
        Some((at, what)) => (0.0, at, what),
        None => {
            let Some((way, what)) = gap(&rest, &stills) else { return };
            (way.length(), way.middle(), what)
        }
    };

    let case = sentence!("swung by {}, lowered by {}", number(hinge.angle_deg, "°", 1), length_mm(hinge.drop_m));
    let name = format!("{} {}", shutter.mark, term("gap when swung"));
    let subject = Subject { owner: shutter.id, member: &name, case: &case, place: &between, at };
    let comparison = Comparison {
        check: CheckKind::Clearance,
        demand: hinge.gap_m,
        resistance: gap_m,
        unit: "m",
        source: "measured between outlines in the section; common practice".into(),
    };
    let numbers = formula!("{} / {}", number(hinge.gap_m, "m", 3), number(gap_m, "m", 3));
    record.check(&subject, [comparison.verdict("wanted / clear", numbers)]);
    record.results.swings.push(Swing {
        shutter: shutter.id,
        outlines: rest.iter().map(|mover| mover.outline).collect(),
        clear_deg: first.as_ref().map(|meeting| meeting.after.to_degrees()),
        meets: first.map(|meeting| meeting.what),
        wanted_m: hinge.gap_m,
        gap_m,
        between,
    });
}

/// Where concrete that is lifted comes up against a shutter that stands beside it, swung clear.
fn tell_of_rising(model: &Model, shutter: &PlacedShutter, rest: &[Mover], record: &mut Record) {
    let (Some(jacks), Some(highest)) = (&model.jacks, model.pours.last()) else { return };
    let face = &shutter.face;
    if model.solid.faces_solid(face.from.lerp(face.to, 0.5), face.normal.x) {
        // What is within the section rises with it.
        return;
    }
    // For the shutter the concrete comes up as if it went down itself.
    let rising: Vec<Still> = Still::concrete_up_to(model, highest.id).collect();
    let met = meeting(Motion::Drop { way: 1.0 }, rest, &rising);
    if let Some(Meeting { after, what, .. }) = met.filter(|met| met.after < jacks.lift.height_m) {
        let text = sentence!("{} when the bay has been lifted by {}.", what, length_mm(after));
        let remedy =
            sentence!("Swing it further or take it off before the bay is lifted, or let it rise with the bay.");
        record.find(Severity::Fail, shutter.id, text, remedy);
    }
}

/// Outlines behind each other once.
fn movers<'a>(model: &'a Model, shutter: &PlacedShutter) -> Vec<Mover<'a>> {
    let mut movers: Vec<Mover> = Vec::new();
    for part in model.parts.iter().filter(|part| part.owner == shutter.id) {
        let outline = part.solid.outline(0.0);
        if movers.iter().all(|mover| mover.outline != outline) {
            movers.push(Mover { part, outline, core: part.solid.outline(TOUCHING_M) });
        }
    }
    movers
}

/// The concrete up to the shutter's pour, the ground, and other equipment of the pour: that of earlier ones has been
/// struck.
fn stills(scheme: &Scheme, model: &Model, hinge: &Hinge, shutter: &PlacedShutter) -> Vec<Still> {
    let concrete = Still::concrete_up_to(model, shutter.pour);
    let [left, right] = [-GROUND_M, GROUND_M].map(|x| Point::new(x, scheme.ground.level_m));
    let ground = Still::new(sentence!("the ground"), [Edge::new(left, right)].into_iter());
    let mut stills: Vec<Still> = concrete.chain([ground]).collect();
    let (owners, mut seen) = (equipment(model, hinge, shutter), Vec::new());
    for part in model.parts.iter().filter(|part| part.role != Role::Tie && owners.contains(&part.owner)) {
        let outline = part.solid.outline(0.0);
        if !seen.contains(&outline) {
            seen.push(outline);
            stills.push(Still::new(sentence!("{}", named(part)), edges_of(&outline)));
        }
    }
    stills
}

/// What stands when a shutter is swung, but the shutter itself and what holds it.
fn equipment(model: &Model, hinge: &Hinge, shutter: &PlacedShutter) -> Vec<Id> {
    let beside = |of: &&PlacedShutter| of.id != shutter.id && of.pour == shutter.pour;
    let mut owners: Vec<Id> = model.shutters.iter().filter(beside).map(|of| of.id).collect();
    let rows = model.ties.iter().filter(|row| row.to != Some(shutter.id) && owners.contains(&row.shutter));
    let rows: Vec<Id> = rows.map(|row| row.id).collect();
    owners.extend(rows);
    let stands = |falsework: &&PlacedFalsework| falsework.pour == shutter.pour && !hinge.falsework_out;
    owners.extend(model.falsework.iter().filter(stands).flat_map(PlacedFalsework::owners));
    owners
}

fn moved<'a>(movers: &[Mover<'a>], motion: Motion, by: f64) -> Vec<Mover<'a>> {
    let all = |outline: [Point; 4]| outline.map(|point| motion.moved(point, by));
    let moved = |mover: &Mover<'a>| Mover { part: mover.part, outline: all(mover.outline), core: all(mover.core) };
    movers.iter().map(moved).collect()
}

/// Where the motion first brings one of the parts onto something; at once if they overlap as they are.
fn meeting(motion: Motion, movers: &[Mover], stills: &[Still]) -> Option<Meeting> {
    let mut first: Option<(f64, Point, &Mover, &Still)> = None;
    for mover in movers {
        let own = edges_of(&mover.core);
        let track = own.clone().map(|edge| motion.track(&edge)).reduce(both).unwrap_or_default();
        let met = |edge: &&Edge| {
            let [near, far] = motion.track(edge);
            near <= track[1] && track[0] <= far
        };
        for still in stills {
            let mut meet = |after: f64, at: Point| {
                if first.is_none_or(|(known, ..)| after < known) {
                    first = Some((after, at, mover, still));
                }
            };
            if let Some(at) = still.overlap(&mover.core) {
                meet(0.0, at);
                continue;
            }
            for edge in still.edges.iter().filter(met) {
                for point in mover.core {
                    if let Some(by) = motion.until_on(point, edge) {
                        meet(by, motion.moved(point, by));
                    }
                }
                for own in own.clone() {
                    if let Some(by) = motion.reversed().until_on(edge.from, &own) {
                        meet(by, edge.from);
                    }
                }
            }
        }
    }
    let (after, at, mover, still) = first?;
    let what = match after {
        0.0 => sentence!("{} overlaps {} as they stand", named(mover.part), &still.name),
        _ => sentence!("{} meets {}", named(mover.part), &still.name),
    };
    Some(Meeting { after, at, what })
}

/// The range that holds two ranges.
fn both(a: [f64; 2], b: [f64; 2]) -> [f64; 2] {
    [a[0].min(b[0]), a[1].max(b[1])]
}

/// The shortest way between the parts and anything that stands still.
fn gap(movers: &[Mover], stills: &[Still]) -> Option<(Connector, Sentence)> {
    let mut least: Option<(Connector, &Mover, &Still)> = None;
    for (mover, still) in movers.iter().flat_map(|mover| stills.iter().map(move |still| (mover, still))) {
        let known = least.map_or(f64::INFINITY, |(way, ..)| way.length());
        if still.apart(&mover.outline) < known
            && let Some(way) = shortest(&mover.outline, still)
            && way.length() < known
        {
            least = Some((way, mover, still));
        }
    }
    least.map(|(way, mover, still)| (way, sentence!("{} and {}", named(mover.part), &still.name)))
}

/// The shortest way between an outline and what stands still: none at all where they overlap.
fn shortest(outline: &[Point; 4], still: &Still) -> Option<Connector> {
    if let Some(at) = still.overlap(outline) {
        return Some(Connector { from: at, to: at });
    }
    let ways = edges_of(outline).flat_map(|own| still.edges.iter().flat_map(move |edge| own.connectors(edge)));
    ways.min_by(|a, b| a.length().total_cmp(&b.length()))
}
