//! What must be seen before and while a bay is taken from where it was cast.

use super::HoldPoint;
use crate::checks::ground::contact_pressure_kpa;
use crate::model::PlacedJacks;
use crate::results::BayMove;
use crate::sentence::{Sentence, at_least, at_most, length_mm, number};

pub fn stages(jacks: &PlacedJacks, moved: &BayMove) -> [HoldPoint; 2] {
    [
        HoldPoint { stage: sentence!("Before the bay is lifted"), points: before_lifting(jacks, moved) },
        HoldPoint { stage: sentence!("While the bay is moved"), points: while_moved(jacks, moved) },
    ]
}

fn before_lifting(jacks: &PlacedJacks, moved: &BayMove) -> Vec<Sentence> {
    let lift = &jacks.lift;
    let greatest_kn = moved.lines.iter().map(|line| line.force_kn).fold(0.0, f64::max) * lift.unevenness;
    vec![
        sentence!("The strength that the designer of the concrete asks for lifting is proven."),
        sentence!(
            "Ties are out and shutters are clear, but for what is to move with the concrete: {} at most.",
            at_most(jacks.carried_kn, "kN", 0)
        ),
        sentence!(
            "{} lines of {} jacks stand where they are drawn, each for {} or more.",
            jacks.lines_m.len(),
            lift.jacks,
            at_least(greatest_kn, "kN", 0)
        ),
        sentence!(
            "What the plates of the jacks lie on is shown to bear {}.",
            at_least(contact_pressure_kpa(greatest_kn, lift.plate_m, lift.plate_m), "kPa", 0)
        ),
        sentence!("Nobody is in, on or under the bay who need not be."),
    ]
}

fn while_moved(jacks: &PlacedJacks, moved: &BayMove) -> Vec<Sentence> {
    let lift = &jacks.lift;
    let mut points = vec![
        sentence!(
            "No jack takes more than {}: jacking stops before, and packing follows the bay all the way.",
            at_most(lift.jack_kn, "kN", 0)
        ),
        sentence!(
            "The bay is lifted by {}, level all the time; goes of the jacks: {}.",
            length_mm(lift.height_m),
            moved.goes
        ),
    ];
    if let (Some(slide), Some(push)) = (&jacks.slide, &moved.push) {
        points.push(sentence!(
            "Rams push with {} at the start at most; where more is needed, somebody looks why.",
            at_least(push.start_kn.max(0.0), "kN", 0)
        ));
        points.push(sentence!(
            "{} strokes take some {} hours; the way ahead is clear for {}.",
            push.strokes,
            at_least(push.hours, "", 1),
            number(slide.distance_m, "m", 2)
        ));
        if push.running_kn < 0.0 {
            points.push(sentence!("The bay is held back for {} all the time.", at_least(-push.running_kn, "kN", 0)));
        }
    }
    points
}
