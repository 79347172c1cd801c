//! Taking a bay from where it was cast: its weight onto lines of jacks, then pushed along its path.

use super::record::{Record, Subject, at_x};
use crate::checks::jacking::{check_jacking, check_plate};
use crate::geometry::Point;
use crate::model::Model;
use crate::results::{BayMove, JackLine, Push, Severity};
use crate::scheme::{Id, Scheme, Slide};
use crate::sentence::{length_mm, member, number, term};

/// Works out the forces of jacks and rams, if bays are moved.
pub fn solve(scheme: &Scheme, model: &Model, record: &mut Record) {
    let (Some(jacks), Some(lowest)) = (&model.jacks, model.pours.first()) else { return };
    let concrete_kn: f64 = model.pours.iter().map(|pour| pour.weight_kn).sum();
    let along = |of: fn(Point) -> f64| {
        model.pours.iter().map(|pour| pour.weight_kn * of(pour.centroid)).sum::<f64>() / concrete_kn
    };
    let centre = Point::new(along(|at| at.x), along(|at| at.z));
    let weight_kn = concrete_kn + jacks.carried_kn;
    let (owner, lift) = (lowest.id, &jacks.lift);
    let lines = lines(&jacks.lines_m, weight_kn, centre.x, lift.jacks);
    let case = sentence!("lifted by {}", length_mm(lift.height_m));
    for line in &lines {
        let name = line.member();
        let (at, place) = (Point::new(line.x_m, jacks.under_m), at_x(line.x_m));
        let subject = Subject { owner, member: &name, case: &case, place: &place, at };
        if line.force_kn < 0.0 {
            record.find(
                Severity::Fail,
                owner,
                sentence!("The bay would tip off {}: its centre of gravity is at {}.", member(&name), at_x(centre.x)),
                sentence!("Put the outer lines of jacks further out, to both sides of the centre of gravity."),
            );
            continue;
        }
        let (force, uneven) = (line.force_kn, lift.unevenness);
        record.check(
            &subject,
            [
                check_jacking(scheme.basis, force, uneven, lift.jack_kn),
                check_plate(scheme.basis, force, uneven, lift.plate_m, lift.allowable_kpa),
            ],
        );
    }
    let push = jacks.slide.as_ref().map(|slide| push(weight_kn, slide));
    if let (Some(push), Some(slide)) = (&push, &jacks.slide) {
        check_push(scheme, owner, Point::new(centre.x, jacks.under_m), push, slide, record);
    }
    record.find(
        Severity::Note,
        owner,
        sentence!(
            "Not computed for the bay that is moved: the concrete over its jacks, what guides it, how it rests \
             afterwards, and whether it clears what is left standing beside hinged shutters."
        ),
        sentence!("Have the designer of the concrete agree to the places of the jacks."),
    );
    let goes = libm::ceil(lift.height_m / lift.travel_m - 1e-9) as u32;
    record.results.moved = Some(BayMove { weight_kn, centre, lines, goes, push });
}

fn check_push(scheme: &Scheme, owner: Id, at: Point, push: &Push, slide: &Slide, record: &mut Record) {
    let name = format!("R {}", term("sliding ram"));
    let case = sentence!("slid by {}", number(slide.distance_m, "m", 2));
    let subject = Subject { owner, member: &name, case: &case, place: &sentence!("along the culvert"), at };
    let each_kn = push.start_kn.max(0.0) / f64::from(slide.rams);
    record.check(&subject, [check_jacking(scheme.basis, each_kn, 1.0, slide.ram_kn)]);
    if push.running_kn < 0.0 {
        record.find(
            Severity::Warn,
            owner,
            sentence!("The bay runs down its path by itself with {}.", number(-push.running_kn, "kN", 0)),
            sentence!("Hold it back by more than that, or level the path."),
        );
    }
}

/// The bay is stiff and all jacks alike: forces grow linearly across it.
fn lines(lines_m: &[f64], weight_kn: f64, centre_m: f64, jacks: u32) -> Vec<JackLine> {
    let count = lines_m.len() as f64;
    let middle = lines_m.iter().sum::<f64>() / count;
    let spread: f64 = lines_m.iter().map(|x| (x - middle) * (x - middle)).sum();
    let line = |(index, &x_m): (usize, &f64)| {
        let turned = (centre_m - middle) * (x_m - middle) / spread;
        let force_kn = weight_kn * (1.0 / count + turned) / f64::from(jacks);
        JackLine { mark: format!("J{}", index + 1), x_m, jacks, force_kn }
    };
    lines_m.iter().enumerate().map(line).collect()
}

fn push(weight_kn: f64, slide: &Slide) -> Push {
    // Along and across a path that rises by so much per metre.
    let slope = (1.0 + slide.rise * slide.rise).sqrt();
    let at = |friction: f64| weight_kn * (friction + slide.rise) / slope;
    Push {
        start_kn: at(slide.start_friction),
        running_kn: at(slide.running_friction),
        strokes: libm::ceil(slide.distance_m / slide.stroke_m - 1e-9) as u32,
        hours: slide.distance_m / slide.rate_m_h,
    }
}
