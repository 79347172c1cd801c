use super::{Maker, size};
use crate::model::{Leg, LegKind, Part, PlacedFalsework, Role, Solid};

/// Legs, bases, diagonals and transfer beams of every bent.
pub fn parts(falsework: &PlacedFalsework, _bay_m: f64, parts: &mut Vec<Part>) {
    for &y in &falsework.bents_m {
        for leg in &falsework.legs {
            stand(falsework, leg, y, parts);
        }
        for bar in falsework.bracing() {
            let thickness = falsework.brace.brace().map_or(0.0, |brace| brace.diameter_m);
            let maker = Maker {
                owner: falsework.id,
                mark: &falsework.mark,
                role: if bar.diagonal { Role::Brace } else { Role::Ledger },
                item: &falsework.brace,
            };
            parts.push(maker.make(Solid::Bar {
                from: [bar.from.x, y, bar.from.z],
                to: [bar.to.x, y, bar.to.z],
                size_m: [thickness, thickness],
                breadth_m: thickness,
            }));
        }
        if let Some(opening) = &falsework.opening {
            let (depth, breadth) = size(&opening.transfer);
            let z = opening.underside_m + depth / 2.0;
            let maker =
                Maker { owner: opening.drawn.id, mark: &opening.mark, role: Role::Transfer, item: &opening.transfer };
            parts.push(maker.make_several(
                opening.drawn.transfers,
                Solid::Bar {
                    from: [opening.beam_m[0], y, z],
                    to: [opening.beam_m[1], y, z],
                    size_m: [depth, depth],
                    breadth_m: breadth,
                },
            ));
        }
    }
}

fn stand(falsework: &PlacedFalsework, leg: &Leg, y: f64, parts: &mut Vec<Part>) {
    let item = falsework.item_of(leg);
    let role = match leg.kind {
        LegKind::Leg => Role::Leg,
        LegKind::Stub => Role::Stub,
        LegKind::Trestle => Role::Trestle,
    };
    let diameter = item.leg().map_or(0.0, |tube| tube.diameter_m);
    let maker = Maker { owner: leg.owner, mark: &leg.mark, role, item };
    parts.push(maker.make(Solid::Bar {
        from: [leg.x_m, y, leg.foot_m],
        to: [leg.x_m, y, leg.head_m],
        size_m: [diameter, diameter],
        breadth_m: diameter,
    }));
    if let (true, Some(plate)) = (leg.kind != LegKind::Stub, falsework.base.plate()) {
        let maker = Maker { role: Role::Base, item: &falsework.base, ..maker };
        parts.push(maker.make(Solid::Plate {
            centre: [leg.x_m, y, leg.foot_m],
            width_m: plate.width_m,
            length_m: plate.length_m,
            thickness_m: plate.thickness_m,
        }));
    }
}
