use crate::editor::Target;
use falsewright_core::geometry::Point;
use falsewright_core::model::Model;
use falsewright_core::scheme::{Corner, Scheme};

/// The line that shows where a face, joint or corner is; nothing for equipment, which is lit as a whole.
pub fn highlight(target: &Target, scheme: &Scheme, model: &Model) -> Vec<Point> {
    match *target {
        Target::Face(of) => {
            let face = model.faces.iter().find(|face| face.of == of);
            face.map_or_else(Vec::new, |face| vec![face.from, face.to])
        }
        Target::Corner(id) | Target::Cut(id) => {
            let Some((before, corner, after)) = with_neighbours(scheme, id) else { return Vec::new() };
            const ARM_M: f64 = 0.25;
            let arm = |to: &Corner| at(corner) + (at(to) - at(corner)).unit() * ARM_M;
            vec![arm(before), at(corner), arm(after)]
        }
        Target::Joint(id) => {
            let extent = super::concrete::extent(&scheme.section);
            let joint = scheme.section.joints.iter().find(|joint| joint.id == id);
            let (Some((left, right)), Some(joint)) = (extent, joint) else { return Vec::new() };
            vec![Point::new(left, joint.z_m), Point::new(right, joint.z_m)]
        }
        _ => Vec::new(),
    }
}

fn with_neighbours(scheme: &Scheme, id: falsewright_core::scheme::Id) -> Option<(&Corner, &Corner, &Corner)> {
    let section = &scheme.section;
    let mut rings = std::iter::once(&section.outline).chain(section.cells.iter().map(|cell| &cell.corners));
    rings.find_map(|ring| {
        let index = ring.iter().position(|corner| corner.id == id)?;
        let count = ring.len();
        Some((&ring[(index + count - 1) % count], &ring[index], &ring[(index + 1) % count]))
    })
}

fn at(corner: &Corner) -> Point {
    Point::new(corner.x_m, corner.z_m)
}
