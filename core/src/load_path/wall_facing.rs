//! What presses on a wall shutter, through its facing and level secondaries to its uprights.

use super::chain::BeamLoad;
use super::record::Record;
use super::wall::{Level, Walls, greatest};
use super::wall_pressure;
use crate::analysis::FrameError;
use crate::model::PlacedShutter;
use crate::results::{PressureDiagram, Severity};
use crate::scheme::Arrangement;
use crate::sentence::word;

/// What a shutter hands down to its uprights and ties.
pub(super) struct Path<'a> {
    pub shutter: &'a PlacedShutter,
    pub pressure: PressureDiagram,
    /// Reactions of the facing: kN/m on each level secondary, or metres of facing on each upright one.
    pub facing: Vec<f64>,
    /// Metres of wall that each upright line carries.
    pub widths: Vec<f64>,
    /// Loads on an upright that carries one metre of wall.
    pub loads: Vec<BeamLoad>,
}

impl Path<'_> {
    /// What one metre of wall puts on an upright, kN.
    pub fn load_kn_m(&self) -> f64 {
        self.loads.iter().map(BeamLoad::total_kn).sum()
    }
}

impl<'a> Walls<'a> {
    pub(super) fn hand_down_all(&self, record: &mut Record) -> Vec<Path<'a>> {
        let mut paths = Vec::new();
        for shutter in self.model.shutters.iter().filter(|shutter| shutter.pour == self.pour.id) {
            if self.stands_alone(shutter, record) {
                continue;
            }
            match self.hand_down(shutter, record) {
                Ok(path) => paths.push(path),
                Err(error) => record.unsolved(shutter.id, &shutter.mark, &error),
            }
        }
        paths
    }

    /// Whether one secondary or one upright primary would have to carry all by itself, which is told.
    fn stands_alone(&self, shutter: &PlacedShutter, record: &mut Record) -> bool {
        let one_primary = shutter.arrangement == Arrangement::UprightPrimaries && shutter.primaries_m.len() < 2;
        let what = if shutter.secondaries_m.len() < 2 {
            "secondary"
        } else if one_primary {
            "primary"
        } else {
            return false;
        };
        let text =
            sentence!("{} has room for a single {}, on which nothing can be balanced.", &shutter.mark, word(what));
        let remedy = sentence!("Lessen the distance from the ends to the first member.");
        record.find(Severity::Fail, shutter.id, text, remedy);
        true
    }

    /// Solves facing and level secondaries and checks them.
    fn hand_down(&self, shutter: &'a PlacedShutter, record: &mut Record) -> Result<Path<'a>, FrameError> {
        let (pressure, warnings) = wall_pressure::on(shutter, self.pour, &self.model.solid, self.scheme);
        for warning in warnings {
            record.find(
                Severity::Warn,
                shutter.id,
                sentence!("{}: {}", &shutter.mark, warning),
                sentence!("Check the rate and the mix."),
            );
        }
        record.results.pressures.push(pressure.clone());
        match shutter.arrangement {
            Arrangement::UprightPrimaries => self.over_level_secondaries(shutter, pressure, record),
            Arrangement::LevelPrimaries => self.over_upright_secondaries(shutter, pressure, record),
        }
    }

    fn over_level_secondaries(
        &self,
        shutter: &'a PlacedShutter,
        pressure: PressureDiagram,
        record: &mut Record,
    ) -> Result<Path<'a>, FrameError> {
        let stretch = shutter.face.stretch();
        let levels: Vec<f64> = shutter.secondaries_m.iter().map(|z| (z - shutter.bottom_m) * stretch).collect();
        let board = shutter.facing.board().map_or(0.0, |board| board.stiffness_knm2_m);
        let length = (shutter.top_m - shutter.bottom_m) * stretch;
        let loads = pressure.loads(shutter.bottom_m, stretch);
        let facing = self.beams.solve([0.0, length], &levels, board, loads)?;
        self.check(shutter, Level::Facing, facing.envelope, &|along| shutter.bottom_m + along / stretch, record);

        let beam = shutter.secondary.beam().map_or(0.0, |beam| beam.ei_knm2);
        let length = self.model.bay_m;
        let unit = self.beams.solve([0.0, length], &shutter.primaries_m, beam, vec![uniform(length)])?;
        let (worst, load) = greatest(&facing.reactions);
        let level = shutter.secondaries_m.get(worst).copied().unwrap_or(shutter.bottom_m);
        self.check(shutter, Level::Secondary, unit.envelope.times(load), &|_| level, record);

        let loads = levels.iter().zip(&facing.reactions).map(|(&a, &p)| BeamLoad::Point { a, p }).collect();
        let (facing, widths) = (facing.reactions.clone(), unit.reactions.clone());
        Ok(Path { shutter, pressure, facing, widths, loads })
    }

    fn over_upright_secondaries(
        &self,
        shutter: &'a PlacedShutter,
        pressure: PressureDiagram,
        record: &mut Record,
    ) -> Result<Path<'a>, FrameError> {
        let length = self.model.bay_m;
        let board = shutter.facing.board().map_or(0.0, |board| board.stiffness_knm2_m);
        let unit = self.beams.solve([0.0, length], &shutter.secondaries_m, board, vec![uniform(length)])?;
        let (greatest_kpa, level) = pressure.greatest();
        self.check(shutter, Level::Facing, unit.envelope.times(greatest_kpa), &|_| level, record);
        let loads = pressure.loads(shutter.bottom_m, shutter.face.stretch());
        let (facing, widths) = (unit.reactions.clone(), unit.reactions.clone());
        Ok(Path { shutter, pressure, facing, widths, loads })
    }
}

fn uniform(length_m: f64) -> BeamLoad {
    BeamLoad::Line { a: 0.0, b: length_m, w1: 1.0, w2: 1.0 }
}
