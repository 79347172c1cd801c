//! Fresh concrete on a soffit: its depth above each place, and how far the pour has come.

use super::chain::BeamLoad;
use crate::geometry::{Boundary, Point, Side};
use crate::model::{Face, FaceKind, Pour};
use crate::sorting::sort;

/// Depth of concrete above an underside, linear between two places.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strip {
    pub a: f64,
    pub b: f64,
    pub depth_a: f64,
    pub depth_b: f64,
}

impl Strip {
    fn depth(&self, x: f64) -> f64 {
        self.depth_a + (self.depth_b - self.depth_a) * (x - self.a) / (self.b - self.a)
    }

    /// Area of concrete above the strip.
    pub fn area(&self) -> f64 {
        (self.b - self.a) * (self.depth_a + self.depth_b) / 2.0
    }

    /// The part between two places, if any.
    fn between(&self, left: f64, right: f64) -> Option<Self> {
        let (a, b) = (self.a.max(left), self.b.min(right));
        (b - a > 1e-9).then(|| Self { a, b, depth_a: self.depth(a), depth_b: self.depth(b) })
    }
}

/// Strips of concrete above these undersides, from left to right.
pub fn strips<'a>(faces: impl IntoIterator<Item = &'a Face>, pour: &Pour, solid: &Boundary) -> Vec<Strip> {
    let mut strips = Vec::new();
    for face in faces {
        let (from, to) = if face.from.x < face.to.x { (face.from, face.to) } else { (face.to, face.from) };
        let mut places = vec![from.x];
        places.extend(solid.stations(from.x, to.x));
        places.push(to.x);
        let under = |x: f64| Point::new(x, from.z + (to.z - from.z) * (x - from.x) / (to.x - from.x));
        strips.extend(places.windows(2).filter(|pair| pair[1] - pair[0] > 1e-9).map(|pair| Strip {
            a: pair[0],
            b: pair[1],
            depth_a: solid.depth_above(under(pair[0]), pour.top_m, Side::After),
            depth_b: solid.depth_above(under(pair[1]), pour.top_m, Side::Before),
        }));
    }
    sort(&mut strips, |p, q| p.a.total_cmp(&q.a));
    strips
}

/// Whether concrete rests on a face.
pub fn carries(face: &Face) -> bool {
    matches!(face.kind, FaceKind::Soffit | FaceKind::SlopeUnder)
        || (face.kind == FaceKind::CastAgainst && face.normal.z < 0.0)
}

/// How far a pour has come across a soffit.
#[derive(Clone, Debug, PartialEq)]
pub struct Front {
    /// In words, such as `full` or `from the left, to 50 %`.
    pub name: String,
    /// Where concrete lies.
    pub from_m: f64,
    pub to_m: f64,
}

/// Positions of the pour front: full, from either side, and from the middle outward.
pub fn fronts(left: f64, right: f64) -> Vec<Front> {
    const STEPS: u32 = 6;
    let width = right - left;
    let middle = (left + right) / 2.0;
    let mut fronts = vec![Front { name: "full".into(), from_m: left, to_m: right }];
    for step in 1..STEPS {
        let part = f64::from(step) / f64::from(STEPS);
        let percent = libm::round(part * 100.0);
        let front = |name: &str, from_m, to_m| Front { name: format!("{name}, to {percent} %"), from_m, to_m };
        fronts.push(front("from the left", left, left + part * width));
        fronts.push(front("from the right", right - part * width, right));
        if step % 2 == 0 {
            fronts.push(front("from the middle", middle - part * width / 2.0, middle + part * width / 2.0));
        }
    }
    fronts
}

/// What lies on each metre of the bay along a soffit, from factored densities: kN/m² and kN/m³.
#[derive(Clone, Copy, Debug)]
pub struct Intensity {
    pub concrete_kn_m3: f64,
    pub formwork_kpa: f64,
    /// Over the part that is being placed.
    pub operations_kpa: f64,
}

/// Loads on a beam across the soffit, placed by `x`, for one metre of bay.
pub fn loads(strips: &[Strip], front: &Front, intensity: &Intensity) -> Vec<BeamLoad> {
    let mut loads = Vec::with_capacity(2 * strips.len());
    for strip in strips {
        let mut line = |strip: Strip, wa: f64, wb: f64| {
            loads.push(BeamLoad::Line { a: strip.a, b: strip.b, w1: wa, w2: wb });
        };
        line(*strip, intensity.formwork_kpa, intensity.formwork_kpa);
        if let Some(placed) = strip.between(front.from_m, front.to_m) {
            let load = |depth: f64| depth * intensity.concrete_kn_m3 + intensity.operations_kpa;
            line(placed, load(placed.depth_a), load(placed.depth_b));
        }
    }
    loads
}

/// Horizontal force of the concrete on the slopes among these faces, kN per metre of bay, to the right.
pub fn thrust_kn_m(faces: &[Face], pour: &Pour, front: &Front, concrete_kn_m3: f64) -> f64 {
    faces
        .iter()
        .map(|face| {
            let (low, high) = if face.from.x < face.to.x { (face.from, face.to) } else { (face.to, face.from) };
            let (left, right) = (low.x.max(front.from_m), high.x.min(front.to_m));
            if right <= left {
                return 0.0;
            }
            let level = |x: f64| low.z + (high.z - low.z) * (x - low.x) / (high.x - low.x);
            let head = |x: f64| concrete_kn_m3 * (pour.top_m - level(x));
            (head(left) + head(right)) / 2.0 * (right - left) / (high.x - low.x) * (high - low).length() * face.normal.x
        })
        .sum()
}
