use super::{Maker, size};
use crate::geometry::Point;
use crate::layout::ties::build_up_m;
use crate::model::{Model, Part, PlacedShutter, PlacedTieRow, Role, Solid};
use crate::scheme::Arrangement;

pub fn shutter(shutter: &PlacedShutter, bay_m: f64, parts: &mut Vec<Part>) {
    let maker = |role, item| Maker::new(shutter.id, &shutter.mark, role, item);
    let board_m = shutter.facing.board().map_or(0.0, |board| board.thickness_m);
    let (secondary_depth, secondary_breadth) = size(&shutter.secondary);
    let (primary_depth, primary_breadth) = size(&shutter.primary);
    let [across, up] = shutter.square();
    let away = |distance: f64, z: f64| [shutter.face.x_at(z) + across * distance, z + up * distance];
    let (bottom, top) = (shutter.bottom_m, shutter.top_m);

    parts.push(maker(Role::Facing, &shutter.facing).make(Solid::Sheet {
        from: Point::new(shutter.face.x_at(bottom), bottom),
        to: Point::new(shutter.face.x_at(top), top),
        outward: shutter.outward,
        thickness_m: board_m,
        length_m: bay_m,
    }));
    let upright = |off: f64, y: f64, depth: f64, breadth: f64| {
        let ([x0, z0], [x1, z1]) = (away(off, bottom), away(off, top));
        Solid::Bar { from: [x0, y, z0], to: [x1, y, z1], size_m: [depth, depth], breadth_m: breadth }
    };
    let level = |[x, z]: [f64; 2], depth: f64, breadth: f64| Solid::Bar {
        from: [x, 0.0, z],
        to: [x, bay_m, z],
        size_m: [depth, breadth],
        breadth_m: 0.0,
    };
    // A waling lies at the level of its ties, wherever that meets it.
    let at_ties = |off: f64, z: f64| [shutter.face.x_at(z) + shutter.outward * off * shutter.face.stretch(), z];
    let secondary_off = board_m + secondary_depth / 2.0;
    let primary_off = board_m + secondary_depth + primary_depth / 2.0;
    let secondaries = maker(Role::Secondary, &shutter.secondary);
    let primaries = maker(Role::Primary, &shutter.primary);
    match shutter.arrangement {
        Arrangement::UprightPrimaries => {
            parts.extend(
                shutter
                    .secondaries_m
                    .iter()
                    .map(|&z| secondaries.make(level(away(secondary_off, z), secondary_depth, secondary_breadth))),
            );
            parts.extend(
                shutter
                    .primaries_m
                    .iter()
                    .map(|&y| primaries.make(upright(primary_off, y, primary_depth, primary_breadth))),
            );
        }
        Arrangement::LevelPrimaries => {
            parts.extend(
                shutter
                    .secondaries_m
                    .iter()
                    .map(|&y| secondaries.make(upright(secondary_off, y, secondary_depth, secondary_breadth))),
            );
            parts.extend(
                shutter
                    .primaries_m
                    .iter()
                    .map(|&z| primaries.make(level(at_ties(primary_off, z), primary_depth, primary_breadth))),
            );
        }
    }
}

pub fn ties(row: &PlacedTieRow, model: &Model, parts: &mut Vec<Part>) {
    let Some(near) = model.shutter(row.shutter) else { return };
    let is_tie = row.item.tie().is_some();
    let (role, projection, thickness) = match (row.item.tie(), row.item.leg()) {
        (Some(tie), _) => (Role::Tie, tie.projection_m, tie.diameter_m),
        (_, Some(leg)) => (Role::Prop, 0.0, leg.diameter_m),
        _ => return,
    };
    let start = near.face.x_at(row.z_m) + near.outward * build_up_m(near);
    let toward = if is_tie { -near.outward } else { near.outward };
    let from = start - toward * projection / 2.0;
    let to = start + toward * (row.run_m() + projection / 2.0);
    let end_z = row.z_m - row.below_m();
    let maker = Maker::new(row.id, &row.mark, role, &row.item);
    parts.extend(row.places_m.iter().map(|&y| {
        maker.make(Solid::Bar {
            from: [from, y, row.z_m],
            to: [to, y, end_z],
            size_m: [thickness, thickness],
            breadth_m: thickness,
        })
    }));
}
