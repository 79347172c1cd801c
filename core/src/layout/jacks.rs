use crate::geometry::Side;
use crate::model::{Model, PlacedJacks};
use crate::results::{Finding, Severity};
use crate::scheme::{Lift, Moving, Scheme};
use crate::sentence::{Sentence, number};

/// How far above its lowest point the bay is looked at to see what lies on its jacks, m.
const JUST_ABOVE_M: f64 = 1e-3;

/// Puts lines of jacks evenly under the bay, if it is moved.
pub fn place(scheme: &Scheme, model: &mut Model, findings: &mut Vec<Finding>) {
    let (Some(moving), Some(lowest)) = (scheme.moving, model.pours.first()) else { return };
    let Moving { lift, slide, carried_kn } = moving;
    let under = model.solid.spans_at(lowest.bottom_m + JUST_ABOVE_M, Side::After);
    let (Some(&[left, _]), Some(&[_, right])) = (under.first(), under.last()) else { return };
    let mut fail = |text: Sentence| {
        let remedy = sentence!("Change how many lines of jacks there are, or how far they are from the edges.");
        findings.push(Finding {
            severity: Severity::Fail,
            owner: Some(lowest.id),
            at: None,
            check: None,
            text,
            remedy,
        });
    };
    let (first, last) = (left + lift.edge_m, right - lift.edge_m);
    if last <= first {
        fail(sentence!("The outer lines of jacks meet: they are too far from the edges of the underside."));
        return;
    }
    let lines_m = lines(first, last, &lift);
    for x in lines_m.iter().filter(|x| !under.iter().any(|[from, to]| (from..=to).contains(x))) {
        fail(sentence!("A line of jacks at x = {} is under no concrete.", number(*x, "m", 2)));
    }
    model.jacks = Some(PlacedJacks { lines_m, under_m: lowest.bottom_m, carried_kn, lift, slide });
}

fn lines(first: f64, last: f64, lift: &Lift) -> Vec<f64> {
    let gaps = f64::from(lift.lines.max(2) - 1);
    (0..lift.lines).map(|line| first + (last - first) * f64::from(line) / gaps).collect()
}
