//! Facing, secondaries and lengthwise primaries of a soffit, each loaded by the reactions of the one above.

use super::beam::{BeamResult, ContinuousBeam, envelope};
use super::bent::weight_kn_m;
use super::chain::BeamLoad;
use super::line::{Envelope, Peak};
use super::soffit::Table;
use super::soffit_load::{Intensity, Strip, loads};
use crate::actions::combinations::heaping_kpa;
use crate::actions::factors::Factors;
use crate::analysis::FrameError;
use crate::catalogue::Item;
use crate::scheme::Direction;

/// What the levels above the bents bear and hand down.
pub struct Levels {
    pub facing: Envelope,
    pub secondary: Envelope,
    /// Where primaries run along; those across belong to the bents.
    pub primary: Option<Envelope>,
    /// For each front: loads along a bent that carries one metre of bay.
    pub bent_loads: Vec<Vec<BeamLoad>>,
    /// Metres of bay that each bent carries.
    pub bent_widths: Vec<f64>,
    /// For each front, what comes in and goes out at each level, kN for the whole bay.
    pub passed_kn: Vec<Vec<(&'static str, f64, f64)>>,
}

/// Solves the levels for every front, with loads times their factors.
pub fn solve(table: &Table, factors: &Factors) -> Result<Levels, FrameError> {
    let levels = LevelsOf::new(table, factors);
    match table.falsework.direction {
        Direction::Across => levels.across(),
        Direction::Along => levels.along(),
    }
}

struct LevelsOf<'a> {
    table: &'a Table<'a>,
    intensity: Intensity,
    /// Loads across the soffit for each front, on one metre of bay.
    cases: Vec<Vec<BeamLoad>>,
    /// Own weight of a secondary and a primary, kN/m.
    secondary_kn_m: f64,
    primary_kn_m: f64,
    /// One kN on each metre of bay.
    unit: [BeamLoad; 1],
}

impl<'a> LevelsOf<'a> {
    fn new(table: &'a Table<'a>, factors: &Factors) -> Self {
        let area_m2: f64 = table.strips.iter().map(Strip::area).sum();
        let concrete_kpa = table.scheme.concrete.unit_weight_kn_m3 * area_m2 / (table.ends_m[1] - table.ends_m[0]);
        let intensity = Intensity {
            concrete_kn_m3: table.scheme.concrete.unit_weight_kn_m3 * factors.permanent,
            formwork_kpa: table.scheme.loads.formwork_kpa * factors.permanent,
            operations_kpa: table.scheme.loads.operations_kpa * factors.variable,
            heaped_kpa: heaping_kpa(table.scheme.basis, concrete_kpa) * factors.variable,
        };
        Self {
            table,
            intensity,
            cases: table.fronts.iter().map(|front| loads(&table.strips, front, &intensity)).collect(),
            secondary_kn_m: weight_kn_m(&table.falsework.secondary) * factors.permanent,
            primary_kn_m: weight_kn_m(&table.falsework.primary) * factors.permanent,
            unit: [BeamLoad::Line { a: 0.0, b: table.model.bay_m, w1: 1.0, w2: 1.0 }],
        }
    }

    fn bay(&self) -> [f64; 2] {
        [0.0, self.table.model.bay_m]
    }

    fn facing(&self, ends_m: [f64; 2]) -> ContinuousBeam {
        let stiffness = self.table.falsework.facing.board().map_or(0.0, |board| board.stiffness_knm2_m);
        ContinuousBeam::new(ends_m, &self.table.falsework.secondaries_m, stiffness)
    }

    /// Primaries across the culvert: secondaries run along it, over the bents.
    fn across(&self) -> Result<Levels, FrameError> {
        let (bay_m, falsework) = (self.table.model.bay_m, self.table.falsework);
        let places = &falsework.secondaries_m;
        let facing = self.facing(self.table.ends_m).solve_each(&self.cases)?;
        let over_bents = beam(self.bay(), &falsework.bents_m, &falsework.secondary).solve(&self.unit)?;
        let carried_m: f64 = over_bents.reactions.iter().sum();
        let own_kn = self.secondary_kn_m * bay_m * places.len() as f64;

        let mut secondary = Peak::default();
        let mut bent_loads = Vec::new();
        let mut passed_kn = Vec::new();
        for (front, (case, result)) in self.cases.iter().zip(&facing).enumerate() {
            let loads: Vec<(f64, f64)> =
                places.iter().zip(&result.reactions).map(|(&x, r)| (x, r + self.secondary_kn_m)).collect();
            secondary.raise(Peak::among(front, loads.iter().copied()));
            let (onto, from) = (total_kn(case) * bay_m, result.reactions.iter().sum::<f64>() * bay_m);
            let loads: Vec<BeamLoad> = loads.into_iter().map(|(a, p)| BeamLoad::Point { a, p }).collect();
            passed_kn.push(vec![("facing", onto, from), ("secondaries", from + own_kn, total_kn(&loads) * carried_m)]);
            bent_loads.push(loads);
        }
        Ok(Levels {
            facing: envelope(&facing),
            secondary: over_bents.envelope.times(secondary.value).told_of(secondary.at_m, secondary.case),
            primary: None,
            bent_loads,
            bent_widths: over_bents.reactions,
            passed_kn,
        })
    }

    /// Primaries along the culvert, one at each line of heads: secondaries run across it.
    fn along(&self) -> Result<Levels, FrameError> {
        let (bay_m, falsework) = (self.table.model.bay_m, self.table.falsework);
        let lines: Vec<f64> = falsework.head_lines().collect();
        let facing = self.facing(self.bay()).solve(&self.unit)?;
        let carried_m: f64 = facing.reactions.iter().sum();
        let (_, deepest) = self.deepest();

        let count = falsework.secondaries_m.len() as f64;
        let own = self.secondary_kn_m * count / bay_m;
        let [left, right] = self.table.ends_m;
        let own_kn = own * bay_m * (right - left);
        let with_own = |case: &Vec<BeamLoad>| {
            case.iter().copied().chain([BeamLoad::Line { a: left, b: right, w1: own, w2: own }]).collect()
        };
        let cases: Vec<Vec<BeamLoad>> = self.cases.iter().map(with_own).collect();
        let secondaries = self.resting(&lines, &cases)?;
        let widest = facing.reactions.iter().copied().fold(0.0, f64::max);

        let shares = falsework.secondaries_m.iter().zip(&facing.reactions);
        let on_primary: Vec<BeamLoad> = shares.map(|(&a, &p)| BeamLoad::Point { a, p }).collect();
        let over_bents = beam(self.bay(), &falsework.bents_m, &falsework.primary).solve(&on_primary)?;
        let bents_m: f64 = over_bents.reactions.iter().sum();
        let own_primaries_kn = self.primary_kn_m * bay_m * lines.len() as f64;

        let mut primary = Peak::default();
        let mut bent_loads = Vec::new();
        let mut passed_kn = Vec::new();
        for (front, (case, result)) in self.cases.iter().zip(&secondaries).enumerate() {
            let loads: Vec<(f64, f64)> =
                lines.iter().zip(&result.reactions).map(|(&x, r)| (x, r + self.primary_kn_m)).collect();
            primary.raise(Peak::among(front, loads.iter().copied()));
            let onto = total_kn(case);
            let handed = result.reactions.iter().sum::<f64>() * carried_m;
            let loads: Vec<BeamLoad> = loads.into_iter().map(|(a, p)| BeamLoad::Point { a, p }).collect();
            passed_kn.push(vec![
                ("facing", onto * bay_m, onto * carried_m),
                ("secondaries", onto * carried_m + own_kn, handed),
                ("primaries", handed + own_primaries_kn, total_kn(&loads) * bents_m),
            ]);
            bent_loads.push(loads);
        }
        Ok(Levels {
            facing: facing.envelope.times(deepest).told_of(self.deepest().0, 0),
            secondary: envelope(&secondaries).times(widest),
            primary: Some(over_bents.envelope.times(primary.value).told_of(primary.at_m, primary.case)),
            bent_loads,
            bent_widths: over_bents.reactions,
            passed_kn,
        })
    }

    /// Secondaries across, which rest on the primaries: where they would have to be held down, they lift off. Where they
    /// would tip over then, the bent is left to say so.
    fn resting(&self, lines_m: &[f64], cases: &[Vec<BeamLoad>]) -> Result<Vec<BeamResult>, FrameError> {
        let on = |lines_m: &[f64]| beam(self.table.ends_m, lines_m, &self.table.falsework.secondary);
        let mut results = on(lines_m).solve_each(cases)?;
        for (result, case) in results.iter_mut().zip(cases) {
            let mut bearing: Vec<usize> = (0..lines_m.len()).collect();
            while let Some(&least) =
                bearing.iter().min_by(|&&a, &&b| result.reactions[a].total_cmp(&result.reactions[b]))
                && result.reactions[least] < -1e-9
            {
                bearing.retain(|&line| line != least);
                let places: Vec<f64> = bearing.iter().map(|&line| lines_m[line]).collect();
                let Ok(fewer) = on(&places).solve(case) else { break };
                *result = BeamResult { reactions: vec![0.0; lines_m.len()], ..fewer };
                bearing.iter().zip(fewer.reactions).for_each(|(&line, reaction)| result.reactions[line] = reaction);
            }
        }
        Ok(results)
    }

    /// Where the concrete is deepest, and the load there, kPa.
    fn deepest(&self) -> (f64, f64) {
        let ends = self.table.strips.iter().flat_map(|strip| [(strip.a, strip.depth_a), (strip.b, strip.depth_b)]);
        let deepest = Peak::among(0, ends);
        let Intensity { concrete_kn_m3, formwork_kpa, operations_kpa, heaped_kpa } = self.intensity;
        (deepest.at_m, deepest.value * concrete_kn_m3 + formwork_kpa + operations_kpa + heaped_kpa)
    }
}

fn beam(ends_m: [f64; 2], supports_m: &[f64], item: &Item) -> ContinuousBeam {
    ContinuousBeam::new(ends_m, supports_m, item.beam().map_or(0.0, |beam| beam.ei_knm2))
}

/// All of these loads, kN.
pub fn total_kn(loads: &[BeamLoad]) -> f64 {
    loads.iter().map(BeamLoad::total_kn).sum()
}
