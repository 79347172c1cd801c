use super::{Maker, size};
use crate::layout::falsework::span;
use crate::model::{Part, PlacedFalsework, Role, Solid};
use crate::scheme::Direction;

pub fn parts(falsework: &PlacedFalsework, bay_m: f64, parts: &mut Vec<Part>) {
    let maker = |role, item| Maker::new(falsework.id, &falsework.mark, role, item);
    let board_m = falsework.facing.board().map_or(0.0, |board| board.thickness_m);
    let (left, right) = span(&falsework.faces);
    let (primary_depth, primary_breadth) = size(&falsework.primary);
    let (secondary_depth, secondary_breadth) = size(&falsework.secondary);
    let primary_z = falsework.head_m + primary_depth / 2.0;
    let secondary_z = falsework.head_m + primary_depth + secondary_depth / 2.0;

    parts.extend(falsework.faces.iter().map(|face| {
        let (from, to) = if face.from.x < face.to.x { (face.from, face.to) } else { (face.to, face.from) };
        maker(Role::Facing, &falsework.facing).make(Solid::Sheet {
            from,
            to,
            outward: -1.0,
            thickness_m: board_m,
            length_m: bay_m,
        })
    }));
    let across = |y: f64, z: f64, depth: f64, breadth: f64| Solid::Bar {
        from: [left, y, z],
        to: [right, y, z],
        size_m: [depth, depth],
        breadth_m: breadth,
    };
    let along = |x: f64, z: f64, depth: f64, breadth: f64| Solid::Bar {
        from: [x, 0.0, z],
        to: [x, bay_m, z],
        size_m: [breadth, depth],
        breadth_m: 0.0,
    };
    let secondaries = maker(Role::Secondary, &falsework.secondary);
    let primaries = maker(Role::Primary, &falsework.primary);
    match falsework.direction {
        Direction::Across => {
            parts.extend(
                falsework
                    .secondaries_m
                    .iter()
                    .map(|&x| secondaries.make(along(x, secondary_z, secondary_depth, secondary_breadth))),
            );
            parts.extend(
                falsework.bents_m.iter().map(|&y| primaries.make(across(y, primary_z, primary_depth, primary_breadth))),
            );
        }
        Direction::Along => {
            parts.extend(
                falsework
                    .secondaries_m
                    .iter()
                    .map(|&y| secondaries.make(across(y, secondary_z, secondary_depth, secondary_breadth))),
            );
            parts.extend(
                falsework.head_lines().map(|x| primaries.make(along(x, primary_z, primary_depth, primary_breadth))),
            );
        }
    }
}
