//! The concrete itself: pours between joints and the faces that bound them.

use crate::geometry::{Boundary, Edge, Point, Side, regions_between};
use crate::model::{Face, FaceKind, Pour};
use crate::scheme::{Band, FaceRef, Section, SectionEdge};

/// Run of an upright face by its rise, and rise of a level face by its run, at most.
const TRUE_WITHIN: f64 = 1e-3;

/// Rise by run from which a surface facing up needs a form, tan 20° (common practice for stiff concrete).
const STANDS_TO: f64 = 0.363_970_234_266_202_4;

/// Faces shorter than this are left out, m.
const SHORTEST_M: f64 = 1e-6;

/// Pours of a valid section from the lowest up, for bays of this length and concrete of this weight.
pub fn pours(section: &Section, bay_m: f64, unit_weight_kn_m3: f64) -> Vec<Pour> {
    let edges = section.edges();
    let boundary = section.boundary();
    let bands = section.bands(&boundary);
    let (outer, cells) = rings(section, &edges);
    let pour = |(i, band): (usize, &Band)| {
        let moments = boundary.moments_between(band.bottom_m, band.top_m);
        let volume_m3 = moments.area_m2 * bay_m;
        Pour {
            id: band.pour,
            mark: format!("P{}", i + 1),
            bottom_m: band.bottom_m,
            top_m: band.top_m,
            regions: if bands.len() == 1 {
                vec![std::iter::once(&outer).chain(&cells).cloned().collect()]
            } else {
                regions_between(&outer, &cells, band.bottom_m, band.top_m)
            },
            area_m2: moments.area_m2,
            centroid: moments.centroid,
            volume_m3,
            weight_kn: volume_m3 * unit_weight_kn_m3,
        }
    };
    bands.iter().enumerate().map(pour).collect()
}

/// Faces of all pours, from the lowest pour up, each pour's own edges first and then its joints, whose faces bear the
/// joint's id as corner, several for one joint. What faces down at or below `ground_m`, outside cells, is cast on
/// blinding.
pub fn faces(section: &Section, ground_m: f64) -> Vec<Face> {
    let edges = section.edges();
    let boundary = section.boundary();
    let bands = section.bands(&boundary);
    let mut faces = Vec::with_capacity(edges.len() + 4 * bands.len());
    for (i, band) in bands.iter().enumerate() {
        for edge in &edges {
            let Some(line) = part_in(&edge.line, band) else { continue };
            let of = FaceRef { corner: edge.corner, cut: edge.cut, pour: band.pour };
            faces.push(face(of, classify(edge, &line, &boundary, ground_m), line));
        }
        if i > 0 {
            let of = FaceRef { corner: band.pour, cut: false, pour: band.pour };
            let bottoms = joined_spans(&boundary, band.bottom_m);
            faces.extend(bottoms.map(|[left, right]| {
                let line = Edge::new(Point::new(left, band.bottom_m), Point::new(right, band.bottom_m));
                face(of, FaceKind::CastAgainst, line)
            }));
        }
        if let Some(above) = bands.get(i + 1) {
            let of = FaceRef { corner: above.pour, cut: false, pour: band.pour };
            let tops = joined_spans(&boundary, band.top_m);
            faces.extend(tops.map(|[left, right]| {
                let line = Edge::new(Point::new(right, band.top_m), Point::new(left, band.top_m));
                face(of, FaceKind::FreeTop, line)
            }));
        }
    }
    faces
}

fn face(of: FaceRef, kind: FaceKind, line: Edge) -> Face {
    Face { of, kind, from: line.from, to: line.to, normal: line.outward() }
}

/// The part of a section edge that bounds the pour of this band. A level edge bounds the pour on its concrete side.
fn part_in(edge: &Edge, band: &Band) -> Option<Edge> {
    if edge.from.z == edge.to.z {
        let z = edge.from.z;
        let faces_down = edge.to.x > edge.from.x;
        let inside =
            if faces_down { band.bottom_m <= z && z < band.top_m } else { band.bottom_m < z && z <= band.top_m };
        return inside.then_some(*edge);
    }
    edge.between(band.bottom_m, band.top_m).filter(|part| part.length() > SHORTEST_M)
}

fn classify(edge: &SectionEdge, line: &Edge, boundary: &Boundary, ground_m: f64) -> FaceKind {
    let along = line.vector();
    let (run, rise) = (along.x.abs(), along.z.abs());
    let faces_down = along.x > 0.0;
    if run <= TRUE_WITHIN * rise {
        let enclosed = edge.cell.is_some() || boundary.faces_solid(line.middle(), line.outward().x);
        return if enclosed { FaceKind::InnerWall } else { FaceKind::OuterWall };
    }
    let on_ground = edge.cell.is_none() && line.from.z.max(line.to.z) <= ground_m + SHORTEST_M;
    match (faces_down, rise <= TRUE_WITHIN * run) {
        (true, _) if on_ground => FaceKind::CastAgainst,
        (true, true) => FaceKind::Soffit,
        (true, false) => FaceKind::SlopeUnder,
        (false, _) if rise <= STANDS_TO * run => FaceKind::FreeTop,
        (false, _) => FaceKind::SlopeOver,
    }
}

/// Where concrete below a joint meets concrete above it.
fn joined_spans(boundary: &Boundary, z: f64) -> impl Iterator<Item = [f64; 2]> {
    let below = boundary.spans_at(z, Side::Before);
    let above = boundary.spans_at(z, Side::After);
    below.into_iter().flat_map(move |lower| {
        let shared: Vec<[f64; 2]> = above
            .iter()
            .map(|upper| [lower[0].max(upper[0]), lower[1].min(upper[1])])
            .filter(|shared| shared[1] - shared[0] > SHORTEST_M)
            .collect();
        shared
    })
}

/// The outline and the cells as rings of points, cuts included.
fn rings(section: &Section, edges: &[SectionEdge]) -> (Vec<Point>, Vec<Vec<Point>>) {
    let ring = |cell| edges.iter().filter(|edge| edge.cell == cell).map(|edge| edge.line.from).collect();
    (ring(None), section.cells.iter().map(|cell| ring(Some(cell.id))).collect())
}
