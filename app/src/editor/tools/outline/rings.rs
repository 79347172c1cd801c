//! What a drawn ring or line makes of the section.

use crate::editor::freehand::Bend;
use crate::editor::freehand::Sheet;
use crate::editor::tool::Context;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Cell, Corner, Id, Section};

/// Corners this near to an edge are on it, m.
const ON_EDGE_M: f64 = 1e-6;

/// The first ring makes the section, one around it takes its place as the outline, a further one makes a cell.
pub fn ring_edit(context: &Context, ring: &[Bend]) -> Edit {
    let scheme = context.places.scheme;
    let corner = |(i, bend): (u32, &Bend)| Corner { id: Id(i), x_m: bend.at.x, z_m: bend.at.z, cut: bend.cut };
    let corners: Vec<Corner> = (1..).zip(ring).map(corner).collect();
    let points: Vec<Point> = ring.iter().map(|bend| bend.at).collect();
    let section = &scheme.section;
    let bare = section.cells.is_empty() && scheme.shutters.is_empty() && scheme.falsework.is_empty();
    if section.outline.is_empty() {
        Edit::SetSection(Section { outline: corners, cells: Vec::new(), joints: Vec::new() })
    } else if bare && (Sheet { section }).enclosed_by(&points) {
        let void = Cell { id: Id(0), corners: section.outline.clone() };
        Edit::SetSection(Section { outline: corners, cells: vec![void], joints: section.joints.clone() })
    } else {
        Edit::AddCell(corners)
    }
}

/// Corners without haunches.
pub fn sharp(points: &[Point]) -> Vec<Bend> {
    points.iter().map(|at| Bend { at: *at, cut: None }).collect()
}

/// The edit of a line from one edge back to it: a downstand, a kicker, a step; none where the ends are on no one edge.
/// Ends within `reach_m` of the edge are drawn to it.
pub fn reshaping(context: &Context, points: &[Point], reach_m: f64) -> Option<Edit> {
    let (&first, &last) = points.first().zip(points.last())?;
    let edges = context.places.scheme.section.edges();
    let reach_m = reach_m.max(ON_EDGE_M);
    let off = |edge: &falsewright_core::scheme::SectionEdge| {
        [first, last].map(|p| (edge.line.nearest(p) - p).length()).into_iter().fold(0.0, f64::max)
    };
    let near = edges.iter().filter(|edge| !edge.cut && off(edge) <= reach_m);
    let edge = near.min_by(|a, b| off(a).total_cmp(&off(b)))?;
    let leaves = points.len() > 2
        && points[1..points.len() - 1].iter().any(|p| (edge.line.nearest(*p) - *p).length() > reach_m);
    if !leaves {
        return None;
    }
    let mut points = points.to_vec();
    let count = points.len();
    points[0] = edge.line.nearest(first);
    points[count - 1] = edge.line.nearest(last);
    Some(Edit::ReshapeEdge { edge: edge.corner, points })
}
