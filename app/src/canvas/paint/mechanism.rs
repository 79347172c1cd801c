//! What can move without resistance: its members dashed as they set out, and a ring where it moves most.

use super::profile::ellipse;
use super::{Figure, Path};
use crate::language::told;
use falsewright_core::geometry::Point;
use falsewright_core::results::{Mechanism, MovingMember, Results};

/// Length on the drawing of the greatest movement.
const GREATEST_M: f64 = 0.3;
/// Radius of the ring.
const RING_M: f64 = 0.12;

/// One figure for each element that can move: the first way in which it can.
pub fn mechanisms(results: &Results) -> impl Iterator<Item = Figure> {
    let first = |(index, mechanism): &(usize, &Mechanism)| {
        results.mechanisms[..*index].iter().all(|other| other.owner != mechanism.owner)
    };
    results.mechanisms.iter().enumerate().filter(first).map(|(_, mechanism)| draw(mechanism))
}

fn draw(mechanism: &Mechanism) -> Figure {
    let key = format!("mechanism-{}", mechanism.owner.0);
    let mut figure = Figure::new(key, told(&mechanism.text), Some(mechanism.owner));
    let (mut moved, mut ring) = (Path::default(), Path::default());
    for member in mechanism.members.iter().filter(|member| moves(member)) {
        moved.line([member.from + member.from_moves * GREATEST_M, member.to + member.to_moves * GREATEST_M]);
    }
    ring.ring(ellipse(mechanism.at, Point::new(RING_M, RING_M)));
    figure.stroke("mechanism-moved", moved);
    figure.stroke("mechanism-ring", ring);
    figure
}

fn moves(member: &MovingMember) -> bool {
    const LEAST: f64 = 1e-3;
    [member.from_moves, member.to_moves].iter().any(|by| by.length() > LEAST)
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::scheme::Id;
    use falsewright_core::sentence::Sentence;

    #[test]
    fn a_leaning_leg_is_drawn_dashed_and_ringed_at_its_head() {
        let still = Point::new(0.0, 0.0);
        let head = Point::new(1.0, 3.0);
        let member =
            |to: Point, to_moves: Point| MovingMember { from: Point::new(1.0, 0.0), to, from_moves: still, to_moves };
        let mechanism = Mechanism {
            owner: Id(7),
            at: head,
            members: vec![member(head, Point::new(1.0, 0.0)), member(Point::new(2.0, 0.0), still)],
            text: Sentence::plain("F1 is free to move sideways.".into()),
            remedy: Sentence::default(),
        };
        let twice = Results { mechanisms: vec![mechanism.clone(), mechanism], ..Results::default() };
        let figures: Vec<Figure> = mechanisms(&twice).collect();
        assert_eq!(figures.len(), 1);
        let [moved, ring] = &figures[0].strokes[..] else { panic!("{:?}", figures[0].strokes) };
        assert_eq!((moved.class.as_str(), moved.d.as_str()), ("mechanism-moved", "M1 0L1.3 3"));
        assert!(ring.d.starts_with("M1.12 3L"), "{}", ring.d);
    }
}
