use super::falsework::Room;
use super::lookup::{fail, warn};
use super::opening::depth;
use crate::model::{Leg, LegKind, PlacedOpening};
use crate::results::Finding;
use crate::scheme::{Falsework, LegLine};
use crate::sentence::number;
use crate::sorting::sort;

/// Two legs stand at least this far apart.
const APART_M: f64 = 0.15;

/// Legs, trestles and stubs of one bent, from left to right.
pub fn place(drawn: &Falsework, room: &Room, opening: Option<&PlacedOpening>, findings: &mut Vec<Finding>) -> Vec<Leg> {
    let mut legs: Vec<Leg> = Vec::new();
    for (index, line) in drawn.leg_lines.iter().enumerate() {
        let mark = format!("L{}", index + 1);
        match leg_of(line, &mark, room, opening, &legs) {
            Ok(leg) => legs.push(leg),
            Err(finding) => findings.push(*finding),
        }
    }
    if let Some(opening) = opening {
        legs.extend(trestles(opening, room));
    }
    sort(&mut legs, |a, b| a.x_m.total_cmp(&b.x_m).then(a.foot_m.total_cmp(&b.foot_m)));
    legs
}

fn leg_of(
    line: &LegLine,
    mark: &str,
    room: &Room,
    opening: Option<&PlacedOpening>,
    placed: &[Leg],
) -> Result<Leg, Box<Finding>> {
    let x = line.x_m;
    let [left, right] = room.ends_m;
    if x <= left || x >= right {
        return Err(Box::new(fail(
            line.id,
            sentence!("{}: {} at x = {} does not stand under the soffit.", room.mark, mark, number(x, "m", 3)),
            sentence!("Move the line between the walls."),
        )));
    }
    if let Some(other) = placed.iter().find(|leg| (leg.x_m - x).abs() < APART_M) {
        return Err(Box::new(warn(
            line.id,
            sentence!("{}: {} stands in {} and is left out.", room.mark, mark, &other.mark),
            sentence!("Move the lines apart or delete one."),
        )));
    }
    let leg = |kind, foot_m| Leg { owner: line.id, mark: mark.into(), x_m: x, kind, foot_m, head_m: room.head_m };
    let on_floor = leg(LegKind::Leg, (room.floor)(x) + room.plate_m);
    let Some(opening) = opening else { return Ok(on_floor) };
    let [outer_left, inner_left, inner_right, outer_right] = opening.trestles_m;
    if x <= outer_left - APART_M || x >= outer_right + APART_M {
        Ok(on_floor)
    } else if x >= inner_left + APART_M && x <= inner_right - APART_M {
        Ok(leg(LegKind::Stub, opening.underside_m + depth(&opening.transfer)))
    } else {
        Err(Box::new(warn(
            line.id,
            sentence!("{}: {} stands in a trestle of {} and is left out.", room.mark, mark, &opening.mark),
            sentence!("Move the line clear of the trestle or delete it."),
        )))
    }
}

/// The trestle legs of an opening, and the posts that take the primary down to the transfer beams above them.
fn trestles(opening: &PlacedOpening, room: &Room) -> impl Iterator<Item = Leg> {
    let top = opening.underside_m + depth(&opening.transfer);
    opening.trestles_m.into_iter().enumerate().flat_map(move |(index, x)| {
        let mark = format!("{}t{}", opening.mark, index + 1);
        let leg = |mark, kind, foot_m, head_m| Leg { owner: opening.drawn.id, mark, x_m: x, kind, foot_m, head_m };
        [
            leg(mark.clone(), LegKind::Trestle, (room.floor)(x) + room.plate_m, opening.underside_m),
            leg(format!("{mark} post"), LegKind::Stub, top, room.head_m),
        ]
    })
}

/// Pairs of neighbours on the floor, by index.
pub type Pairs = Vec<(usize, usize)>;

/// Neighbours joined by level tubes, and those with diagonals as well: the gaps drawn so, and every trestle.
pub fn bracing(drawn: &Falsework, legs: &[Leg], opening: Option<&PlacedOpening>) -> (Pairs, Pairs) {
    let standing: Vec<usize> = (0..legs.len()).filter(|&index| legs[index].kind != LegKind::Stub).collect();
    let across_way = |a: &Leg, b: &Leg| {
        opening
            .is_some_and(|opening| a.x_m < opening.trestles_m[1] + APART_M && b.x_m > opening.trestles_m[2] - APART_M)
    };
    let drawn_so = |leg: &Leg| drawn.leg_lines.iter().any(|line| line.id == leg.owner && line.braced);
    let tied: Pairs =
        standing.windows(2).map(|pair| (pair[0], pair[1])).filter(|&(a, b)| !across_way(&legs[a], &legs[b])).collect();
    let is_trestle = |leg: &Leg| leg.kind == LegKind::Trestle;
    let braced = tied
        .iter()
        .copied()
        .filter(|&(a, b)| (is_trestle(&legs[a]) && is_trestle(&legs[b])) || drawn_so(&legs[a]))
        .collect();
    (tied, braced)
}
