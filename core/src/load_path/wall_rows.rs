//! Rows of ties and props: how a row's force falls to each of them, and what each must bear.

use super::beam::BeamResult;
use super::chain::BeamLoad;
use super::record::{Record, Subject, at_level, numbered};
use super::wall::{Level, LinkedGroup, Walls, greatest};
use super::wall_facing::Path;
use crate::actions::factors::factors;
use crate::analysis::FrameError;
use crate::catalogue::{Item, Kind};
use crate::checks::concrete::Anchor;
use crate::checks::fittings::TiePlate;
use crate::checks::{EndForce, StrutForces, check_fixed_end, check_leg, check_pulled_prop, check_tie};
use crate::geometry::Point;
use crate::model::PlacedTieRow;
use crate::results::{Severity, TieForce, Verdict};
use crate::scheme::{Arrangement, CastAnchor, HeldBy};
use crate::sentence::{Sentence, item, number};
use std::rc::Rc;

/// Play of a tie's rod in the hole of its plate, m; common practice.
const HOLE_PLAY_M: f64 = 0.004;

/// Forces of no size but that of rounding, kN.
pub(super) const AS_GOOD_AS_NOTHING_KN: f64 = 1e-6;

impl Walls<'_> {
    /// Level force of each tie of a row at each of its ends, from its force per metre of wall. Walings are checked on
    /// the way.
    pub(super) fn share_row(
        &self,
        row: &PlacedTieRow,
        force_kn_m: f64,
        group: &LinkedGroup,
        record: &mut Record,
    ) -> Result<Vec<Vec<f64>>, FrameError> {
        let ends = group.paths.iter().filter(|path| path.shutter.id == row.shutter || Some(path.shutter.id) == row.to);
        let mut shares: Vec<Vec<f64>> = Vec::new();
        for path in ends {
            shares.push(match path.shutter.arrangement {
                Arrangement::UprightPrimaries => path.widths.iter().map(|width| width * force_kn_m).collect(),
                Arrangement::LevelPrimaries => {
                    let waling = self.waling(row, force_kn_m, path)?;
                    self.check(path.shutter, Level::Primary, waling.envelope, &|_| row.z_m, record);
                    waling.reactions.clone()
                }
            });
        }
        let differ = |a: &[f64], b: &[f64]| a.iter().zip(b).any(|(a, b)| (a - b).abs() > 0.01 * a.abs().max(b.abs()));
        if let [near, far] = &shares[..]
            && differ(near, far)
        {
            record.find(
                Severity::Note,
                row.id,
                sentence!("{}: its two walings load the ties differently, by more than 1 %.", &row.mark),
                sentence!("Let the upright secondaries of both shutters stand opposite each other."),
            );
        }
        Ok(shares)
    }

    /// The waling of one shutter at one row.
    pub(super) fn waling(
        &self,
        row: &PlacedTieRow,
        force_kn_m: f64,
        path: &Path,
    ) -> Result<Rc<BeamResult>, FrameError> {
        let shutter = path.shutter;
        let beam = shutter.primary.beam().map_or(0.0, |beam| beam.ei_knm2);
        let loads: Vec<BeamLoad> = shutter
            .secondaries_m
            .iter()
            .zip(&path.widths)
            .map(|(&a, width)| BeamLoad::Point { a, p: width * force_kn_m })
            .collect();
        self.beams.solve([0.0, self.model.bay_m], &row.places_m, beam, loads)
    }

    /// Checks the ties of a row, each for the greater of the forces at its ends.
    pub(super) fn check_row(&self, row: &PlacedTieRow, ends: &[Vec<f64>], record: &mut Record) {
        let greater = |a: f64, b: f64| if b.abs() > a.abs() { b } else { a };
        let at_place = |i: usize| ends.iter().filter_map(|forces| forces.get(i).copied()).fold(0.0, greater);
        let level: Vec<f64> = (0..row.places_m.len()).map(at_place).collect();
        let (worst, _) = greatest(&level);
        let Some((&force_kn, &place_m)) = level.get(worst).zip(row.places_m.get(worst)) else { return };
        let force = Held { level_kn: force_kn, factor: factors(self.scheme.basis).fresh_concrete_pressure };
        self.check_held(row, &force, &self.case, place_m, record);
        if row.item.tie().is_some() {
            self.check_plate(row, force_kn * force.factor, place_m, record);
        }
        let by_level = row.length_m / row.run_m();
        let force = |(place, &force_kn): (usize, &f64)| TieForce {
            id: numbered(&row.mark, place + 1),
            row: row.id,
            force_kn: if row.to.is_none() { force_kn * by_level } else { force_kn },
        };
        record.results.ties.extend(level.iter().enumerate().map(force));
        self.tell_of_unknown_end(row, force_kn, record);
    }

    /// Checks one tie or prop of a row and what holds its fixed end.
    pub(super) fn check_held(
        &self,
        row: &PlacedTieRow,
        force: &Held,
        case: &Sentence,
        place_m: f64,
        record: &mut Record,
    ) {
        let basis = self.scheme.basis;
        let is_tie = row.item.tie().is_some();
        let member = format!("{} {}", row.mark, if is_tie { "tie" } else { "prop" });
        let place = along_the_bay(row.z_m, place_m);
        let at = self.model.shutter(row.shutter).map_or(Point::default(), |shutter| self.at(shutter, row.z_m));
        let subject = Subject { owner: row.id, member: &member, case, place: &place, at };
        let by_level = if row.to.is_none() { row.length_m / row.run_m() } else { 1.0 };
        let axial_kn = force.level_kn * by_level * force.factor;
        if is_tie {
            record.check(&subject, [check_tie(&row.item, basis, axial_kn)]);
        } else if axial_kn >= -AS_GOOD_AS_NOTHING_KN {
            let axial = StrutForces::axial(axial_kn.max(0.0));
            let forces = StrutForces { head_m: self.scheme.loads.leg_eccentricity_m, ..axial };
            record.check(&subject, check_leg(&row.item, basis, &forces, row.length_m));
        } else {
            record.check(&subject, check_pulled_prop(&row.item, basis, -axial_kn));
        }
        if let (Some(held), None) = (&row.held, row.to) {
            let lift_kn = -force.level_kn * row.below_m() / row.run_m();
            let end = if is_tie {
                EndForce { along_kn: 0.0, out_kn: force.level_kn, factor: force.factor }
            } else {
                EndForce { along_kn: force.level_kn.abs(), out_kn: lift_kn, factor: force.factor }
            };
            let member = format!("{} fixed end", row.mark);
            let subject = Subject { member: &member, ..subject };
            let anchor = |cast: &CastAnchor| anchor(cast, &row.places_m);
            let verdicts = check_fixed_end(&held.by, basis, &end, anchor);
            record.check(&subject, verdicts);
        }
    }

    /// The plates of a tie on the primaries at both its ends.
    fn check_plate(&self, row: &PlacedTieRow, force_kn: f64, place_m: f64, record: &mut Record) {
        let basis = self.scheme.basis;
        let Some(tie) = row.item.tie() else { return };
        if tie.plate.is_none() {
            let text = sentence!(
                "{}: {} tells of no plate under its nuts, which is not checked.",
                &row.mark,
                item(&row.item.name)
            );
            record.find(Severity::Warn, row.id, text, sentence!("Give the item the size of its plate."));
        }
        let shutters = std::iter::once(row.shutter).chain(row.to).filter_map(|id| self.model.shutter(id));
        for shutter in shutters {
            let Some(plate) = plate(&row.item, &shutter.primary) else { continue };
            let member = format!("{} plate", row.mark);
            let place = sentence!("{}, {}", along_the_bay(row.z_m, place_m), &shutter.mark);
            let at = self.at(shutter, row.z_m);
            let subject = Subject { owner: row.id, member: &member, case: &self.case, place: &place, at };
            let mut verdicts: Vec<Verdict> = Vec::new();
            if plate.gap_m > 0.0 {
                verdicts.push(plate.check_bending(basis, force_kn));
            } else {
                verdicts.push(plate.check_overhang(basis, force_kn));
            }
            verdicts.extend(plate.check_on_timber(&shutter.primary, basis, force_kn));
            record.check(&subject, verdicts);
        }
    }

    /// Says so where nobody has told what holds a row's fixed end.
    fn tell_of_unknown_end(&self, row: &PlacedTieRow, force_kn: f64, record: &mut Record) {
        let pulls = row.item.tie().is_some();
        let size = force_kn.abs() * row.length_m / row.run_m();
        let (text, remedy) = match (row.held, row.to) {
            (_, Some(_)) => return,
            (None, None) => (
                if pulls {
                    sentence!(
                        "{} pulls with {} at something that is not told, so it is not checked.",
                        &row.mark,
                        number(size, "kN", 1)
                    )
                } else {
                    sentence!(
                        "{} pushes with {} at something that is not told, so it is not checked.",
                        &row.mark,
                        number(size, "kN", 1)
                    )
                },
                sentence!(
                    "Say what holds its fixed end: an anchor in earlier concrete, kentledge, or something to thrust \
                     against."
                ),
            ),
            (Some(held), None) if pulls && !matches!(held.by, HeldBy::Anchor(_)) => (
                sentence!("{} pulls, which only an anchor can hold.", &row.mark),
                sentence!("Anchor it in earlier concrete."),
            ),
            _ => return,
        };
        record.find(Severity::Warn, row.id, text, remedy);
    }
}

/// Level force of one tie or prop, kN, unfactored, positive where it works as such, with the factor of its load.
pub(super) struct Held {
    pub level_kn: f64,
    pub factor: f64,
}

/// A place on a row, in words.
fn along_the_bay(z_m: f64, place_m: f64) -> Sentence {
    sentence!("{}, {} along the bay", at_level(z_m), number(place_m, "m", 2))
}

/// The plate of a tie on a primary.
fn plate(tie: &Item, primary: &Item) -> Option<TiePlate> {
    let tie = tie.tie()?;
    let plate = tie.plate?;
    let gap_m = match &primary.kind {
        Kind::Steel(steel) if steel.side_by_side == 2 => steel.breadth_m - 2.0 * steel.section.dimensions().b * 1e-3,
        _ => 0.0,
    };
    Some(TiePlate {
        length_m: plate.length_m,
        width_m: plate.width_m,
        thickness_m: plate.thickness_m,
        gap_m: gap_m.max(0.0),
        hole_m: tie.diameter_m + HOLE_PLAY_M,
        nut_m: plate.nut_m,
        yield_mpa: plate.yield_mpa,
    })
}

/// An anchor among its neighbours along the bay, in concrete taken as cracked.
fn anchor(cast: &CastAnchor, places_m: &[f64]) -> Anchor {
    let apart = places_m.windows(2).map(|pair| pair[1] - pair[0]).fold(f64::INFINITY, f64::min);
    Anchor {
        depth_m: cast.depth_m,
        head_m: cast.head_m,
        rod_m: cast.rod_m,
        edge_m: cast.edge_m,
        spacing_m: apart.min(1e3),
        cracked: true,
    }
}
