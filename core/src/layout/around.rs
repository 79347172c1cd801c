//! What stands around the equipment: the floor below a wall face, the walls beside a soffit.

use crate::geometry::{Boundary, Point, Side};
use crate::model::{Face, FaceKind};

/// From a face to where the floor in front of it is looked for, m.
const IN_FRONT_M: f64 = 0.05;

/// Level in front of the foot of a wall face, m: the floor of its cell, else the ground.
pub fn stands_on(face: &Face, solid: &Boundary, ground_m: f64) -> f64 {
    let foot = if face.from.z < face.to.z { face.from } else { face.to };
    let in_front = foot + Point::new(face.normal.x.signum() * IN_FRONT_M, IN_FRONT_M);
    let floor = if face.kind == FaceKind::InnerWall { solid.floor_below(in_front, Side::Before) } else { None };
    floor.unwrap_or(ground_m)
}

/// The walls that bound the room between two places at a level, `[left, right]` of each, m.
pub fn walls_beside(solid: &Boundary, [left, right]: [f64; 2], level_m: f64) -> Vec<[f64; 2]> {
    let spans = solid.spans_at(level_m, Side::Before);
    let middle = (left + right) / 2.0;
    let at_left = spans.iter().filter(|span| span[1] < middle).max_by(|a, b| a[1].total_cmp(&b[1]));
    let at_right = spans.iter().filter(|span| span[0] > middle).min_by(|a, b| a[0].total_cmp(&b[0]));
    at_left.into_iter().chain(at_right).copied().collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::concrete::faces;
    use crate::scheme::{Section, Walls};

    const WALLS: Walls = Walls { wall_m: 0.4, roof_m: 0.4, base_m: 0.5, haunch_m: 0.0 };

    #[test]
    fn inner_faces_stand_on_the_floor_and_outer_ones_on_the_ground() {
        let section = Section::box_cell(4.0, 3.0, WALLS);
        for face in faces(&section, -0.2).iter().filter(|face| face.normal.x.abs() > 0.9) {
            let expected = if face.kind == FaceKind::InnerWall { 0.5 } else { -0.2 };
            assert!((stands_on(face, &section.boundary(), -0.2) - expected).abs() < 1e-9, "{face:?}");
        }
    }

    #[test]
    fn the_room_of_each_cell_has_its_own_two_walls() {
        let solid = Section::twin_box(3.0, 2.4, WALLS, 0.3).boundary();
        let near = |found: Vec<[f64; 2]>, expected: [[f64; 2]; 2]| {
            let all = found.iter().flatten().zip(expected.iter().flatten());
            assert!(found.len() == 2 && all.into_iter().all(|(a, b)| (a - b).abs() < 1e-9), "{found:?}");
        };
        near(walls_beside(&solid, [0.4, 3.4], 1.5), [[0.0, 0.4], [3.4, 3.7]]);
        near(walls_beside(&solid, [3.7, 6.7], 1.5), [[3.4, 3.7], [6.7, 7.1]]);
        assert!(walls_beside(&solid, [0.4, 3.4], 9.0).is_empty());
    }
}
