use super::lookup::{Lookup, fail};
use crate::catalogue::{Catalogue, Item};
use crate::model::{Model, PlacedShutter, PlacedTieRow};
use crate::results::Finding;
use crate::scheme::{Arrangement, Scheme, TieEnd, TieRow};
use crate::sentence::{Sentence, item as named, number, term};

pub fn place(scheme: &Scheme, catalogue: &Catalogue, model: &mut Model, findings: &mut Vec<Finding>) {
    let (mut ties, mut props) = (0, 0);
    for drawn in &scheme.ties {
        let is_prop = catalogue.get(&drawn.item).is_some_and(|item| item.leg().is_some());
        let mark = if is_prop {
            props += 1;
            format!("B{props}")
        } else {
            ties += 1;
            format!("T{ties}")
        };
        match row(drawn, mark, scheme, catalogue, model, findings) {
            Ok(placed) => model.ties.push(placed),
            Err(Some(finding)) => findings.push(*finding),
            Err(None) => {}
        }
    }
}

/// The placed row; `Err(None)` where the finding stands already.
fn row(
    drawn: &TieRow,
    mark: String,
    scheme: &Scheme,
    catalogue: &Catalogue,
    model: &Model,
    findings: &mut Vec<Finding>,
) -> Result<PlacedTieRow, Option<Box<Finding>>> {
    let refuse = |text: Sentence, remedy: Sentence| Some(Box::new(fail(drawn.id, text, remedy)));
    let missing = || {
        refuse(sentence!("{} has no shutter to hold.", &mark), sentence!("Delete the row or place the shutter again."))
    };
    let near = model.shutter(drawn.shutter).ok_or_else(missing)?;
    let far = match drawn.to {
        TieEnd::Shutter { id } => Some(model.shutter(id).ok_or_else(missing)?),
        TieEnd::Fixed { .. } => None,
    };
    for shutter in std::iter::once(near).chain(far) {
        if drawn.z_m < shutter.bottom_m || drawn.z_m > shutter.top_m {
            return Err(refuse(
                sentence!("{} at {} is beyond the edge of {}.", &mark, number(drawn.z_m, "m", 3), &shutter.mark),
                sentence!("Move the row to a level that both shutters reach."),
            ));
        }
    }

    let lookup = Lookup { catalogue, owner: drawn.id, mark: &mark };
    let serves = |item: &Item| item.tie().is_some() || item.leg().is_some();
    let item = lookup.item(&drawn.item, term("tie or prop"), serves, findings).ok_or(None)?;
    let is_tie = item.tie().is_some();

    let length_m = match (drawn.to, far) {
        (TieEnd::Fixed { length_m }, _) => length_m,
        (_, Some(far)) => {
            if near.outward == far.outward || near.arrangement != far.arrangement || near.pour != far.pour {
                return Err(refuse(
                    sentence!("{} joins {} and {}, which do not match.", &mark, &near.mark, &far.mark),
                    sentence!("Join two shutters of one pour that face opposite ways and are built up alike."),
                ));
            }
            let gap = far.face.x_at(drawn.z_m) - near.face.x_at(drawn.z_m);
            let concrete_between = gap * near.outward < 0.0;
            if concrete_between != is_tie {
                return Err(refuse(
                    sentence!("{}: {} does not suit its place.", &mark, named(&item.name)),
                    sentence!("Use a tie through concrete and a prop across a void."),
                ));
            }
            let build_up = build_up_m(near) + build_up_m(far);
            if is_tie { gap.abs() + build_up } else { gap.abs() - build_up }
        }
        (TieEnd::Shutter { .. }, None) => return Err(missing()),
    };
    if length_m <= 0.05 {
        return Err(refuse(
            sentence!("{}: there is no room for it between the shutters.", &mark),
            sentence!("Use shallower members or another support."),
        ));
    }

    let holder = scheme.shutters.iter().find(|shutter| shutter.id == near.id).ok_or_else(missing)?;
    let places_m = holder.ties_along(drawn).positions(scheme.bays.length_m);
    let apart = |far: &&PlacedShutter| {
        near.arrangement == Arrangement::UprightPrimaries
            && (far.primaries_m.len() != places_m.len()
                || far.primaries_m.iter().zip(&places_m).any(|(a, b)| (a - b).abs() > 1e-6))
    };
    if let Some(far) = far.filter(apart) {
        return Err(refuse(
            sentence!("{}: the primaries of {} and {} do not stand opposite each other.", &mark, &near.mark, &far.mark),
            sentence!("Give both shutters the same spacing of primaries."),
        ));
    }
    Ok(PlacedTieRow {
        id: drawn.id,
        mark,
        shutter: near.id,
        to: far.map(|far| far.id),
        z_m: drawn.z_m,
        length_m,
        item,
        places_m,
        held: drawn.held.filter(|_| far.is_none()),
    })
}

/// From the concrete face to the back of the primaries, measured level.
pub fn build_up_m(shutter: &PlacedShutter) -> f64 {
    let depth = |item: &Item| item.beam().map_or(0.0, |beam| beam.depth_m);
    let board_m = shutter.facing.board().map_or(0.0, |board| board.thickness_m);
    (board_m + depth(&shutter.secondary) + depth(&shutter.primary)) * shutter.face.stretch()
}
