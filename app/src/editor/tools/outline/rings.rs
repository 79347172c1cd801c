//! What a drawn ring or line makes of the section.

use crate::editor::freehand::Bend;
use crate::editor::freehand::Sheet;
use crate::editor::tool::Context;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Cell, Corner, Id, Section, SectionEdge};

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

/// The edit of a line from edge to edge of one ring: a downstand, a kicker, a step, a fillet; none where it ends on no
/// edge. Ends within `reach_m` of an edge are drawn to it.
pub fn reshaping(context: &Context, points: &[Point], reach_m: f64) -> Option<Edit> {
    let (&first, &last) = points.first().zip(points.last())?;
    let edges = context.places.scheme.section.edges();
    let reach_m = reach_m.max(ON_EDGE_M);
    let off = |edge: &SectionEdge, p: Point| (edge.line.nearest(p) - p).length();
    let near = |p: Point| edges.iter().filter(move |edge| !edge.cut && off(edge, p) <= reach_m);
    let pairs = near(first).flat_map(|from| near(last).map(move |to| (from, to)));
    let pairs = pairs.filter(|(from, to)| from.cell == to.cell);
    // Back to the same edge where that will do.
    let (from, to) = pairs.min_by(|a, b| {
        let rank = |pair: &(&SectionEdge, &SectionEdge)| {
            (pair.0.corner != pair.1.corner, off(pair.0, first) + off(pair.1, last))
        };
        rank(a).0.cmp(&rank(b).0).then(rank(a).1.total_cmp(&rank(b).1))
    })?;
    let between = points.get(1..points.len() - 1).unwrap_or_default();
    let leaves = between.iter().any(|p| off(from, *p) > reach_m && off(to, *p) > reach_m);
    let across = between.is_empty() && from.corner != to.corner && shared_corner(from, to);
    if !(leaves || across) {
        return None;
    }
    let mut points = points.to_vec();
    let count = points.len();
    (points[0], points[count - 1]) = (from.line.nearest(first), to.line.nearest(last));
    Some(Edit::Reshape { from: from.corner, to: to.corner, points })
}

/// Whether two edges meet in a corner.
fn shared_corner(a: &SectionEdge, b: &SectionEdge) -> bool {
    let ends = |edge: &SectionEdge| [edge.line.from, edge.line.to];
    ends(a).iter().any(|p| ends(b).iter().any(|q| (*p - *q).length() < ON_EDGE_M))
}
