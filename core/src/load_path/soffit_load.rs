//! Fresh concrete on a soffit: its depth above each place, and how far the pour has come.

use super::chain::BeamLoad;
use crate::actions::combinations::{HEAP_M, Stage};
use crate::geometry::{Boundary, Point, Side};
use crate::model::{Face, FaceKind, Pour};
use crate::sentence::{Sentence, Value, number, word};
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

/// A stage of the works, and how far the pour has come across a soffit.
#[derive(Clone, Debug, PartialEq)]
pub struct Front {
    pub stage: Stage,
    /// In words, such as `full` or `from the left, to 50 %`.
    pub name: Sentence,
    /// Where concrete lies.
    pub from_m: f64,
    pub to_m: f64,
    /// Where more of it is heaped than the section needs.
    pub heap_m: [f64; 2],
}

impl Front {
    /// What the ledger calls it: the front while concrete is placed, else the stage.
    pub fn label(&self) -> Value {
        if self.stage == Stage::Concreting { Value::from(&self.name) } else { word(self.stage.name()) }
    }
}

/// Positions of the pour front: full, from either side, and from the middle outward; then before and after concreting.
/// Concrete is heaped where it arrives.
pub fn fronts(left: f64, right: f64) -> Vec<Front> {
    const STEPS: u32 = 6;
    let width = right - left;
    let middle = (left + right) / 2.0;
    let front = |name: Sentence, from_m: f64, to_m: f64, heap_from_m: f64| {
        let heap_m = [heap_from_m.max(from_m), (heap_from_m + HEAP_M).min(to_m)];
        Front { stage: Stage::Concreting, name, from_m, to_m, heap_m }
    };
    let around_middle = middle - HEAP_M / 2.0;
    let mut fronts = vec![front(sentence!("full"), left, right, around_middle)];
    for step in 1..STEPS {
        let part = f64::from(step) / f64::from(STEPS);
        let percent = number(libm::round(part * 100.0), "%", 0);
        let (to, from) = (left + part * width, right - part * width);
        fronts.push(front(sentence!("from the left, to {}", percent.clone()), left, to, to - HEAP_M));
        fronts.push(front(sentence!("from the right, to {}", percent.clone()), from, right, from));
        if step % 2 == 0 {
            let half = part * width / 2.0;
            fronts.push(front(
                sentence!("from the middle, to {}", percent),
                middle - half,
                middle + half,
                around_middle,
            ));
        }
    }
    let unheaped = |stage: Stage, name: Sentence, to_m| Front { stage, name, from_m: left, to_m, heap_m: [left; 2] };
    fronts.push(unheaped(Stage::Erected, sentence!("empty"), left));
    fronts.push(unheaped(Stage::Loaded, sentence!("full"), right));
    fronts
}

/// What lies on each metre of the bay along a soffit, from factored densities: kN/m² and kN/m³.
#[derive(Clone, Copy, Debug)]
pub struct Intensity {
    pub concrete_kn_m3: f64,
    pub formwork_kpa: f64,
    /// Over the part that is being placed.
    pub operations_kpa: f64,
    /// Over the heap.
    pub heaped_kpa: f64,
}

/// Loads on a beam across the soffit, placed by `x`, for one metre of bay.
pub fn loads(strips: &[Strip], front: &Front, intensity: &Intensity) -> Vec<BeamLoad> {
    let operations = front.stage.combination().operations;
    let operations_kpa = if operations { intensity.operations_kpa } else { 0.0 };
    let mut loads = Vec::with_capacity(2 * strips.len());
    for strip in strips {
        let mut line = |strip: Strip, wa: f64, wb: f64| {
            loads.push(BeamLoad::Line { a: strip.a, b: strip.b, w1: wa, w2: wb });
        };
        line(*strip, intensity.formwork_kpa, intensity.formwork_kpa);
        if let Some(placed) = strip.between(front.from_m, front.to_m) {
            let load = |depth: f64| depth * intensity.concrete_kn_m3 + operations_kpa;
            line(placed, load(placed.depth_a), load(placed.depth_b));
        }
        let [from, to] = front.heap_m;
        if let Some(heaped) = strip.between(from, to).filter(|_| operations && intensity.heaped_kpa > 0.0) {
            line(heaped, intensity.heaped_kpa, intensity.heaped_kpa);
        }
    }
    loads
}

/// Force of the concrete on the slopes of a soffit along x, to the right.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Thrust {
    /// kN per metre of bay.
    pub kn_m: f64,
    /// Its moment about a level, clockwise, kNm per metre of bay.
    pub knm_m: f64,
}

/// Thrust of the concrete on the slopes among these faces, and its moment about `level_m`.
pub fn thrust(faces: &[Face], pour: &Pour, front: &Front, concrete_kn_m3: f64, level_m: f64) -> Thrust {
    let mut thrust = Thrust::default();
    for face in faces.iter().filter(|face| face.normal.x != 0.0) {
        let (low, high) = if face.from.x < face.to.x { (face.from, face.to) } else { (face.to, face.from) };
        let (left, right) = (low.x.max(front.from_m), high.x.min(front.to_m));
        if right <= left {
            continue;
        }
        let level = |x: f64| low.z + (high.z - low.z) * (x - low.x) / (high.x - low.x);
        let [a, b] = [left, right].map(|x| (level(x), concrete_kn_m3 * (pour.top_m - level(x))));
        let along_x = (right - left) / (high.x - low.x) * (high - low).length() * face.normal.x;
        thrust.kn_m += (a.1 + b.1) / 2.0 * along_x;
        let [up_a, up_b] = [a.0 - level_m, b.0 - level_m];
        // Both pressure and lever are linear along the slope.
        thrust.knm_m += (2.0 * (a.1 * up_a + b.1 * up_b) + a.1 * up_b + b.1 * up_a) / 6.0 * along_x;
    }
    thrust
}
