use super::{Maker, size};
use crate::model::{Leg, LegKind, Part, PlacedFalsework, Role, Solid};

/// Legs, bases, diagonals and transfer beams of every bent.
pub fn parts(falsework: &PlacedFalsework, parts: &mut Vec<Part>) {
    let tube = |role| Maker::new(falsework.id, &falsework.mark, role, &falsework.brace);
    let (diagonal, level) = (tube(Role::Brace), tube(Role::Ledger));
    let thickness = falsework.brace.brace().map_or(0.0, |brace| brace.diameter_m);
    let stands: Vec<Stand> = falsework.legs.iter().map(|leg| Stand::of(falsework, leg)).collect();
    let bracing = falsework.bracing();
    let opening = falsework
        .opening
        .as_ref()
        .map(|opening| (opening, Maker::new(opening.drawn.id, &opening.mark, Role::Transfer, &opening.transfer)));
    for &y in &falsework.bents_m {
        for stand in &stands {
            stand.parts(y, parts);
        }
        for bar in &bracing {
            let maker = if bar.diagonal { &diagonal } else { &level };
            parts.push(maker.make(Solid::Bar {
                from: [bar.from.x, y, bar.from.z],
                to: [bar.to.x, y, bar.to.z],
                size_m: [thickness, thickness],
                breadth_m: thickness,
            }));
        }
        if let Some((opening, transfer)) = &opening {
            let (depth, breadth) = size(&opening.transfer);
            let z = opening.underside_m + depth / 2.0;
            parts.push(transfer.make_several(
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

/// A leg of every bent, and what it stands on.
struct Stand<'a> {
    leg: &'a Leg,
    maker: Maker<'a>,
    base: Option<Maker<'a>>,
}

impl<'a> Stand<'a> {
    fn of(falsework: &'a PlacedFalsework, leg: &'a Leg) -> Self {
        let role = match leg.kind {
            LegKind::Leg => Role::Leg,
            LegKind::Stub => Role::Stub,
            LegKind::Trestle => Role::Trestle,
        };
        let maker = |role, item| Maker::new(leg.owner, &leg.mark, role, item);
        let base = (leg.kind != LegKind::Stub).then(|| maker(Role::Base, &falsework.base));
        Self { leg, maker: maker(role, falsework.item_of(leg)), base }
    }

    fn parts(&self, y: f64, parts: &mut Vec<Part>) {
        let Self { leg, maker, base } = self;
        let diameter = maker.item.leg().map_or(0.0, |tube| tube.diameter_m);
        parts.push(maker.make(Solid::Bar {
            from: [leg.x_m, y, leg.foot_m],
            to: [leg.x_m, y, leg.head_m],
            size_m: [diameter, diameter],
            breadth_m: diameter,
        }));
        if let Some((base, plate)) = base.as_ref().and_then(|base| Some((base, base.item.plate()?))) {
            parts.push(base.make(Solid::Plate {
                centre: [leg.x_m, y, leg.foot_m],
                width_m: plate.width_m,
                length_m: plate.length_m,
                thickness_m: plate.thickness_m,
            }));
        }
    }
}
