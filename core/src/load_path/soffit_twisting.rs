//! Lateral torsional buckling of transfer beams, with their true moments between restraints.

use super::bent_effects::Units;
use super::chain::Chain;
use super::record::{Record, Subject, at_x};
use super::soffit_bent::Run;
use super::soffit_states::State;
use crate::analysis::Solution;
use crate::checks::lateral_torsional::{MomentShape, Segment};
use crate::checks::{LateralTorsional, check_lateral_torsional};
use crate::geometry::Point;
use crate::model::PlacedOpening;

/// Steps between neighbouring positions of restraints, by their distance.
const SHIFTS: f64 = 4.0;

/// Moments are read this far from a node, where posts and stubs make them jump, m.
const BESIDE_M: f64 = 1e-7;

/// The moment on one length between restraints that comes nearest to its resistance.
struct Worst {
    ratio: f64,
    moment_knm: f64,
    at_m: f64,
    length_m: f64,
    shape: MomentShape,
    front: usize,
}

/// What a solution does to a stretch: moments at its places, kNm, then loads at its loaded nodes, kN.
type Reading = Vec<f64>;

/// Part of a beam between two restraints.
struct Stretch {
    from_m: f64,
    length_m: f64,
    /// Eighths, ends, then both sides of each loaded node, m.
    places_m: Vec<f64>,
    /// The same as members of the frame and distances along them, m.
    on_members: Vec<(usize, f64)>,
    /// Loaded nodes within, by index in the chain.
    loaded: Vec<usize>,
}

impl Run<'_> {
    /// Every state, with what pushes and warms it. Supports hold the beam, and restraints at the drawn distance, wherever
    /// between the supports they stand. Loads stand on the top flange.
    pub fn check_twisting(&self, chain: &Chain, opening: &PlacedOpening, states: &[State], record: &mut Record) {
        let basis = self.table.scheme.basis;
        let item = &opening.transfer;
        let each = 1.0 / f64::from(opening.drawn.transfers);
        let Some(height_mm) = item.steel().map(|steel| steel.section.dimensions().h / 2.0) else { return };
        let Some(resisting) = LateralTorsional::of(item, basis) else { return };
        let stretches: Vec<Stretch> = stretches(chain, opening.drawn.restraint_m);
        let mut worst: Option<Worst> = None;
        let (mut read, mut loads) = (Reading::default(), Vec::new());
        let mut known: Vec<(&Units, Vec<[Option<Reading>; 4]>)> = Vec::new();
        for state in states {
            let units: &Units = &state.units;
            let place = known.iter().position(|(of, _)| std::ptr::eq(*of, units)).unwrap_or_else(|| {
                let read = |stretch: &Stretch| units.solutions().map(|it| it.map(|it| stretch.read(chain, it)));
                known.push((units, stretches.iter().map(read).collect()));
                known.len() - 1
            });
            for (stretch, of_units) in stretches.iter().zip(&known[place].1) {
                let still = stretch.read(chain, &state.solution);
                for (push, warmer_k) in state.sides() {
                    read.clone_from(&still);
                    for (factor, unit) in Units::factors(push, warmer_k).into_iter().zip(of_units) {
                        if let Some(unit) = unit.as_ref().filter(|_| factor != 0.0) {
                            read.iter_mut().zip(unit).for_each(|(value, unit)| *value += factor * unit);
                        }
                    }
                    read.iter_mut().for_each(|value| *value *= each);
                    let (moments_knm, onto_kn) = read.split_at(stretch.places_m.len());
                    stretch.loads(chain, onto_kn, &mut loads);
                    let mut case = stretch.worst(moments_knm, &loads, height_mm, state.front);
                    if let Ok(beam) = &resisting {
                        case.ratio = case.moment_knm / beam.resistance_knm(case.length_m, case.shape);
                    }
                    if worst.as_ref().is_none_or(|worst| case.ratio > worst.ratio) {
                        worst = Some(case);
                    }
                }
            }
        }
        let Some(worst) = worst else { return };
        let verdict = match &resisting {
            Ok(beam) => Some(beam.verdict(worst.moment_knm, worst.length_m, worst.shape)),
            Err(_) => check_lateral_torsional(item, basis, worst.moment_knm, worst.length_m),
        };
        let member = format!("{} transfer beam", opening.mark);
        let case = &self.table.cases[worst.front];
        let at = Point::new(worst.at_m, opening.underside_m);
        let place = at_x(at.x);
        let subject = Subject { owner: opening.drawn.id, member: &member, case, place: &place, at };
        record.check(&subject, verdict);
    }
}

/// Downward load that comes onto the chain at a node.
fn onto(chain: &Chain, solution: &Solution, node: usize) -> f64 {
    let left = node.checked_sub(1).map_or(0.0, |before| {
        let length = chain.nodes_m[node] - chain.nodes_m[before];
        solution.shear_at(chain.first_member + before, length)
    });
    left - solution.shear_at(chain.first_member + node, 0.0)
}

/// Lengths between restraints in every span. Shorter than the span, they may lie anywhere in it.
fn stretches(chain: &Chain, restraint_m: Option<f64>) -> Vec<Stretch> {
    let mut all = Vec::new();
    for pair in chain.supports.windows(2) {
        let (start, end) = (chain.nodes_m[pair[0]], chain.nodes_m[pair[1]]);
        let length = restraint_m.map_or(end - start, |apart| apart.min(end - start));
        let room = end - start - length;
        let shifts = (room / length * SHIFTS).ceil().clamp(0.0, 100.0) as usize;
        for shift in 0..=shifts {
            let from = if shifts == 0 { start } else { start + room * shift as f64 / shifts as f64 };
            all.push(Stretch::new(chain, pair[0]..pair[1], from, length));
        }
    }
    all
}

impl Stretch {
    fn new(chain: &Chain, nodes: std::ops::Range<usize>, from_m: f64, length_m: f64) -> Self {
        let inside = |x: f64| x > from_m + 1e-6 && x < from_m + length_m - 1e-6;
        let loaded: Vec<usize> = nodes.skip(1).filter(|&node| inside(chain.nodes_m[node])).collect();
        let mut places_m: Vec<f64> = (1..8).map(|eighth| from_m + length_m * f64::from(eighth) / 8.0).collect();
        places_m.extend([from_m + BESIDE_M, from_m + length_m - BESIDE_M]);
        let sides = |&node: &usize| [chain.nodes_m[node] - BESIDE_M, chain.nodes_m[node] + BESIDE_M];
        places_m.extend(loaded.iter().flat_map(sides));
        let last = chain.nodes_m.len().saturating_sub(2);
        let on_member = |&x: &f64| {
            let member = chain.nodes_m.partition_point(|&node| node <= x).saturating_sub(1).min(last);
            let length = chain.nodes_m[member + 1] - chain.nodes_m[member];
            (chain.first_member + member, (x - chain.nodes_m[member]).clamp(0.0, length))
        };
        let on_members = places_m.iter().map(on_member).collect();
        Self { from_m, length_m, places_m, on_members, loaded }
    }

    fn read(&self, chain: &Chain, solution: &Solution) -> Reading {
        let mut read = Reading::with_capacity(self.places_m.len() + self.loaded.len());
        read.extend(self.on_members.iter().map(|&(member, x)| solution.moment_at(member, x)));
        read.extend(self.loaded.iter().map(|&node| onto(chain, solution, node)));
        read
    }

    /// Downward loads with their places on the stretch, put into `loads`.
    fn loads(&self, chain: &Chain, onto_kn: &[f64], loads: &mut Vec<(f64, f64)>) {
        let place = |&node: &usize| chain.nodes_m[node] - self.from_m;
        loads.clear();
        loads.extend(self.loaded.iter().map(place).zip(onto_kn.iter().map(|load| load.max(0.0))));
    }

    fn worst(&self, moments_knm: &[f64], loads: &[(f64, f64)], height_mm: f64, front: usize) -> Worst {
        let (mut moment_knm, mut at_m) = (0.0, self.from_m);
        for (&moment, &place) in moments_knm.iter().zip(&self.places_m) {
            if moment.abs() > moment_knm {
                (moment_knm, at_m) = (moment.abs(), place);
            }
        }
        let eighths_knm = moments_knm.first_chunk().copied().unwrap_or([moment_knm; 7]);
        let segment = Segment { length_m: self.length_m, greatest_knm: moment_knm, eighths_knm, loads };
        let shape = segment.shape(height_mm);
        Worst { ratio: moment_knm, moment_knm, at_m, length_m: self.length_m, shape, front }
    }
}
