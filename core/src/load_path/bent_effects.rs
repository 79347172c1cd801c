//! What loads do to a bent, in numbers that can be added up.

use super::bent::{Bent, OwnWeight};
use super::chain::Chain;
use super::line::Envelope;
use super::soffit_wind::Exposure;
use crate::analysis::{Factorised, FrameError, LoadCase, Solution, Without};

/// What one load case does to all that is checked and handed on.
#[derive(Clone, Debug)]
pub struct Effects {
    /// Of each leg, kN.
    pub compressions: Vec<f64>,
    /// Upward, under each leg, kN.
    pub reactions: Vec<f64>,
    /// Greatest of each leg, by size, kNm.
    pub moments: Vec<f64>,
    /// Of each tube of the bracing, tension positive, kN.
    pub braces: Vec<f64>,
    /// Of the primary, where it runs across.
    pub primary: Option<Envelope>,
    pub transfer: Option<Envelope>,
    /// Handed on by the primary, downward and to the right, kN.
    pub heads_kn: f64,
    pub heads_sideways_kn: f64,
    /// Held by bases and walls, to the left, kN.
    pub ground_sideways_kn: f64,
}

impl Effects {
    pub fn of(bent: &Bent, solution: &Solution) -> Self {
        Self::read(bent, solution, Chain::envelope)
    }

    /// Without deflections.
    pub fn of_forces(bent: &Bent, solution: &Solution) -> Self {
        Self::read(bent, solution, Chain::forces)
    }

    fn read(bent: &Bent, solution: &Solution, envelope: fn(&Chain, &Solution) -> Envelope) -> Self {
        Self {
            compressions: bent.compressions(solution),
            reactions: bent.reactions(|foot| solution.reaction(foot)),
            moments: bent.leg_moments(solution),
            braces: bent.brace_forces(solution).map(|(_, force)| force).collect(),
            primary: bent.primary().map(|chain| envelope(chain, solution)),
            transfer: bent.transfer.as_ref().map(|chain| envelope(chain, solution)),
            heads_kn: bent.heads_kn(solution),
            heads_sideways_kn: bent.heads_sideways_kn(solution),
            ground_sideways_kn: bent.ground_sideways_kn(solution),
        }
    }
}

/// Horizontal loads on a bent, to the right: kN at the heads, kNm about them, kPa of wind.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Push {
    pub heads_kn: f64,
    pub tilt_knm: f64,
    pub wind_kpa: f64,
}

impl Push {
    pub const REST: Self = Self { heads_kn: 0.0, tilt_knm: 0.0, wind_kpa: 0.0 };

    pub fn times(self, factor: f64) -> Self {
        Self { heads_kn: self.heads_kn * factor, tilt_knm: self.tilt_knm * factor, wind_kpa: self.wind_kpa * factor }
    }

    /// All to the right, for effects that are told by size.
    pub fn sizes(self) -> Self {
        Self { heads_kn: self.heads_kn.abs(), tilt_knm: self.tilt_knm.abs(), wind_kpa: self.wind_kpa.abs() }
    }

    /// What it comes to, from what each part of one unit does.
    pub fn sum(self, of_parts: [f64; 3]) -> f64 {
        self.parts().into_iter().zip(of_parts).map(|(factor, unit)| factor * unit).sum()
    }

    fn parts(self) -> [f64; 3] {
        [self.heads_kn, self.tilt_knm, self.wind_kpa]
    }
}

/// Load cases of which there is one for every bent alike.
pub struct UnitCases {
    /// Own weight, unfactored.
    pub own: LoadCase,
    pub own_weight: OwnWeight,
    /// One of each part of a push.
    pushes: [LoadCase; 3],
    /// One kelvin more in its beams, if any are of steel and the range is known.
    warming: Option<LoadCase>,
}

impl UnitCases {
    pub fn new(bent: &Bent, exposure: Option<&Exposure>, width_m: f64, warmed: bool) -> Self {
        let mut own = LoadCase::default();
        let own_weight = bent.own_weight(&mut own);
        let mut pushes = [LoadCase::default(), LoadCase::default(), LoadCase::default()];
        bent.lateral(1.0, &mut pushes[0]);
        bent.tilt(1.0, &mut pushes[1]);
        if let Some(exposure) = exposure {
            bent.wind(exposure, width_m, &mut pushes[2]);
        }
        let mut warm = LoadCase::default();
        let warming = (warmed && bent.warming(&mut warm)).then_some(warm);
        Self { own, own_weight, pushes, warming }
    }

    /// What `of` tells of each part of a push.
    pub fn of_parts(&self, of: impl Fn(&LoadCase) -> f64) -> [f64; 3] {
        [0, 1, 2].map(|part| of(&self.pushes[part]))
    }
}

/// Effects of the unit cases on a bent with some of its legs lifted.
#[derive(Clone, Debug)]
pub struct Units {
    own: Unit,
    /// None where they are not asked for.
    pushes: [Option<Unit>; 3],
    warming: Option<Unit>,
}

/// What one unit case does.
#[derive(Clone, Debug)]
struct Unit {
    effects: Effects,
    solution: Solution,
}

impl Unit {
    fn of(bent: &Bent, solution: Solution) -> Self {
        Self { effects: Effects::of_forces(bent, &solution), solution }
    }
}

impl Units {
    /// On all legs.
    pub fn solve(bent: &Bent, frame: &Factorised, cases: &UnitCases) -> Result<Self, FrameError> {
        let unit = |case: &LoadCase| frame.solve(case).map(|solution| Unit::of(bent, solution));
        let some = |case: &LoadCase| (!case.nodal.is_empty()).then(|| unit(case)).transpose();
        let [heads, tilt, wind] = &cases.pushes;
        Ok(Self {
            own: unit(&cases.own)?,
            pushes: [some(heads)?, some(tilt)?, some(wind)?],
            warming: cases.warming.as_ref().map(unit).transpose()?,
        })
    }

    /// The same with legs lifted; those of pushes only where it may be `pushed`.
    pub fn after(&self, bent: &Bent, without: &Without, pushed: bool) -> Self {
        let after = |unit: &Unit| Unit::of(bent, without.after(&[(1.0, &unit.solution)]));
        Self {
            own: after(&self.own),
            pushes: self.pushes.each_ref().map(|unit| unit.as_ref().filter(|_| pushed).map(after)),
            warming: self.warming.as_ref().map(after),
        }
    }

    /// Of its own weight.
    pub fn own(&self) -> &Effects {
        &self.own.effects
    }

    /// The solutions of what pushes and warms it, where there are any.
    pub fn solutions(&self) -> [Option<&Solution>; 4] {
        let [heads, tilt, wind] = &self.pushes;
        [heads, tilt, wind, &self.warming].map(|unit| unit.as_ref().map(|unit| &unit.solution))
    }

    /// Factors of these solutions.
    pub fn factors(push: Push, warmer_k: f64) -> [f64; 4] {
        let [heads, tilt, wind] = push.parts();
        [heads, tilt, wind, warmer_k]
    }

    /// What a push does, as solutions with their factors.
    pub fn of_pushing(&self, push: Push) -> impl Iterator<Item = (f64, &Solution)> {
        let units = self.pushes.iter().map(|unit| unit.as_ref().map(|unit| &unit.solution));
        push.parts().into_iter().zip(units).filter_map(|(factor, unit)| Some((factor, unit?)).filter(|_| factor != 0.0))
    }

    /// What one of each part of a push does to a number.
    pub fn of_parts(&self, of: impl Fn(&Effects) -> f64) -> [f64; 3] {
        self.pushes.each_ref().map(|unit| unit.as_ref().map_or(0.0, |unit| of(&unit.effects)))
    }

    /// What a kelvin does to a number, by size.
    pub fn of_warming(&self, of: impl Fn(&Effects) -> f64) -> f64 {
        self.warming.as_ref().map_or(0.0, |warming| of(&warming.effects).abs())
    }
}
