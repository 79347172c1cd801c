//! Shutters that stand empty before the pour: wind and the notional load, what props them, and what they weigh.

use super::chain::BeamLoad;
use super::record::{Record, Subject, at_level};
use super::wall::{LinkedGroup, Walls, weight_kn};
use super::wall_facing::Path;
use super::wall_frame::{self, GroupResult, Link, Upright};
use super::wall_rows::{AS_GOOD_AS_NOTHING_KN, Held};
use crate::actions::factors::factors;
use crate::actions::friction::Contact;
use crate::actions::wind::{self, SHELTERED, SHUTTER_FORCE_COEFFICIENT};
use crate::analysis::FrameError;
use crate::checks::stability::{Standing, check_overturning, check_sliding, check_uplift};
use crate::layout::build_up_m;
use crate::model::{Model, PlacedShutter, PlacedTieRow};
use crate::results::{LedgerEntry, LedgerLevel, Severity};
use crate::scheme::{Arrangement, Scheme, SiteWind};
use crate::sentence::{Sentence, term, word};

/// Notional level load by the weight of the shutter, and its height by that of the shutter: practice for wall forms
/// in Britain (from memory).
const NOTIONAL: f64 = 0.1;
const NOTIONAL_HEIGHT: f64 = 0.75;

/// Says once that empty shutters are not checked where the wind is not told.
pub fn tell_of_missing_wind(scheme: &Scheme, model: &Model, record: &mut Record) {
    if let (None, Some(shutter)) = (scheme.loads.wind, model.shutters.first()) {
        record.find(
            Severity::Warn,
            shutter.id,
            sentence!("The wind on the site is not given: no shutter is checked as it stands empty before the pour."),
            sentence!("Give the greatest and the working gust speed of the site."),
        );
    }
}

/// Loads of an empty shutter that act together.
#[derive(Clone, Copy)]
struct Stage {
    name: &'static str,
    pressure_kpa: f64,
    notional: bool,
}

/// The greatest wind of the site with nobody at work, and the wind in which work goes on with the notional load, on a
/// shutter whose top is that high above the ground.
fn stages(site: SiteWind, top_m: f64) -> [Stage; 2] {
    let on_shutter = |pressure_kpa: f64| wind::force_kn(pressure_kpa, SHUTTER_FORCE_COEFFICIENT, 1.0);
    [
        Stage { name: term("greatest wind"), pressure_kpa: on_shutter(site.greatest_kpa(top_m)), notional: false },
        Stage { name: term("working wind"), pressure_kpa: on_shutter(site.working_kpa()), notional: true },
    ]
}

fn height_m(shutter: &PlacedShutter) -> f64 {
    shutter.top_m - shutter.bottom_m
}

fn is_own_prop(row: &PlacedTieRow, shutter: &PlacedShutter) -> bool {
    row.shutter == shutter.id && row.to.is_none() && row.item.leg().is_some()
}

impl Walls<'_> {
    /// Checks the shutters of a group as they stand empty: each on its own props, with those that hang on it once tied;
    /// a group without props on its own weight.
    pub(super) fn stand(&self, group: &LinkedGroup, record: &mut Record) {
        let Some(site) = self.scheme.loads.wind else { return };
        let has_props = |path: &&&Path| group.rows.iter().any(|row| is_own_prop(row, path.shutter));
        let propped: Vec<&Path> = group.paths.iter().filter(has_props).copied().collect();
        let others: Vec<&Path> = group.paths.iter().filter(|path| !has_props(path)).copied().collect();
        if propped.is_empty() {
            return self.stand_by_weight(group, site, record);
        }
        if let Some(first) = others.first() {
            let marks = |paths: &[&Path]| paths.iter().map(|p| p.shutter.mark.as_str()).collect::<Vec<_>>().join(", ");
            let text = sentence!(
                "{} has no props of its own and stands only while it is tied to {}.",
                marks(&others),
                marks(&propped)
            );
            let remedy = sentence!("Let the crane hold it until its ties are tight.");
            record.find(Severity::Note, first.shutter.id, text, remedy);
        }
        for path in &propped {
            if let Err(error) = self.stand_on_props(path, &others, group, site, record) {
                self.cannot_stand(path, &error, record);
            }
        }
    }

    /// Wind and notional load on one propped shutter, for a metre of wall along its uprights.
    fn loads(&self, path: &Path, others: &[&Path], stage: Stage, to: f64) -> Vec<BeamLoad> {
        let shutter = path.shutter;
        let length_m = height_m(shutter) * shutter.face.stretch();
        let sheltered: f64 = others.iter().map(|other| SHELTERED * height_m(other.shutter) / height_m(shutter)).sum();
        let w = to * stage.pressure_kpa * (1.0 + sheltered);
        let mut loads = vec![BeamLoad::Line { a: 0.0, b: length_m, w1: w, w2: w }];
        if stage.notional {
            let weighed = std::iter::once(&path).chain(others);
            let weight: f64 = weighed.map(|path| weight_kn(path.shutter, &self.model.parts)).sum();
            let p = to * NOTIONAL * weight / path.widths.iter().sum::<f64>();
            loads.push(BeamLoad::Point { a: NOTIONAL_HEIGHT * length_m, p });
        }
        loads
    }

    fn stand_on_props(
        &self,
        path: &Path,
        others: &[&Path],
        group: &LinkedGroup,
        site: SiteWind,
        record: &mut Record,
    ) -> Result<(), FrameError> {
        let shutter = path.shutter;
        let alone = LinkedGroup {
            paths: vec![path],
            rows: group.rows.iter().filter(|row| is_own_prop(row, shutter)).copied().collect(),
        };
        let links: Vec<Link> = alone.rows.iter().filter_map(|row| self.link(row, &alone, |_| Some(0))).collect();
        let shares = self.shares(path, &alone)?;
        let wall_m: f64 = path.widths.iter().sum();
        let weight_kn = weight_kn(shutter, &self.model.parts);
        let leans = shutter.face.lean() != 0.0;
        let mut pushed: Vec<[Option<(f64, Sentence)>; 2]> = vec![[None, None]; alone.rows.len()];
        for stage in stages(site, shutter.top_m - self.scheme.ground.level_m) {
            for (to, toward) in [(1.0, term("outward")), (-1.0, term("toward the concrete"))] {
                let weight_kn_m =
                    if leans { weight_kn / wall_m / (height_m(shutter) * shutter.face.stretch()) } else { 0.0 };
                let loads = self.loads(path, others, stage, to);
                let upright = Upright { loads, weight_kn_m, ..self.upright(path) };
                let solved =
                    wall_frame::solve(std::slice::from_ref(&upright), &links).map_err(|unsolved| unsolved.error)?;
                let case = sentence!("{} empty, {} {}", &self.pour.mark, word(stage.name), word(toward));
                for (known, &force) in pushed.iter_mut().zip(&solved.links) {
                    let known = &mut known[usize::from(force < 0.0)];
                    if known.as_ref().is_none_or(|(greatest, _)| force.abs() > greatest.abs() * (1.0 + 1e-9)) {
                        *known = Some((force, case.clone()));
                    }
                }
                let lifted_kn = solved.lifts.iter().sum::<f64>() * wall_m + if leans { weight_kn } else { 0.0 };
                self.check_empty_lift(path, lifted_kn, weight_kn, &case, record);
                if to > 0.0 && !stage.notional {
                    record.results.ledger.push(self.empty_ledger(path, &upright, &solved, stage));
                }
            }
        }
        let factor = factors(self.scheme.basis).variable;
        for ((row, ways), &(share, place_m)) in alone.rows.iter().zip(&pushed).zip(&shares) {
            for (force, case) in ways.iter().flatten() {
                self.check_held(row, &Held { level_kn: force * share, factor }, case, place_m, record);
            }
        }
        Ok(())
    }

    /// For each row, the greatest width of wall on one of its props, and that prop's place along the bay.
    fn shares(&self, path: &Path, alone: &LinkedGroup) -> Result<Vec<(f64, f64)>, FrameError> {
        let mut shares = Vec::with_capacity(alone.rows.len());
        for row in &alone.rows {
            let widths = match path.shutter.arrangement {
                Arrangement::UprightPrimaries => path.widths.clone(),
                Arrangement::LevelPrimaries => self.waling(row, 1.0, path)?.reactions.clone(),
            };
            let (worst, share) = super::wall::greatest(&widths);
            shares.push((share, row.places_m.get(worst).copied().unwrap_or(0.0)));
        }
        Ok(shares)
    }

    fn check_empty_lift(&self, path: &Path, lifted_kn: f64, weight_kn: f64, case: &Sentence, record: &mut Record) {
        let shutter = path.shutter;
        if lifted_kn <= AS_GOOD_AS_NOTHING_KN {
            return;
        }
        let standing = Standing {
            holding: weight_kn,
            tipping_variable: lifted_kn,
            held: shutter.hold_down_kn * path.widths.len() as f64,
            ..Standing::default()
        };
        let member = format!("{} foot", shutter.mark);
        let place = at_level(shutter.bottom_m);
        let at = self.at(shutter, shutter.bottom_m);
        let subject = Subject { owner: shutter.id, member: &member, case, place: &place, at };
        record.check(&subject, [check_uplift(self.scheme.basis, &standing)]);
    }

    fn empty_ledger(&self, path: &Path, upright: &Upright, solved: &GroupResult, stage: Stage) -> LedgerEntry {
        let shutter = path.shutter;
        let wall_m: f64 = path.widths.iter().sum();
        let on_upright = upright.loads.iter().map(BeamLoad::total_kn).sum::<f64>() / shutter.face.stretch();
        let held: f64 = solved.links.iter().chain(&solved.feet).sum();
        let level = |name: &'static str, into_kn, out_kn| LedgerLevel { level: name, into_kn, out_kn };
        let levels = vec![
            level("wind to uprights", on_upright * self.model.bay_m, on_upright * wall_m),
            level("uprights to props and feet", on_upright * wall_m, held * wall_m),
        ];
        LedgerEntry::new(self.pour.mark.clone(), sentence!("empty, {}, {}", &shutter.mark, word(stage.name)), levels)
    }

    fn cannot_stand(&self, path: &Path, error: &FrameError, record: &mut Record) {
        let text = match error {
            FrameError::Mechanism { .. } => sentence!(
                "{} falls over before the pour: its foot and props do not hold it against wind from both sides.",
                &path.shutter.mark
            ),
            other => sentence!(
                "{} cannot be solved as it stands before the pour: {}.",
                &path.shutter.mark,
                other.to_string()
            ),
        };
        record.find(
            Severity::Warn,
            path.shutter.id,
            text,
            sentence!("Hold its foot, and hold the fixed ends of its props against pull as well as push."),
        );
    }

    /// A group that nothing props: it stands on the width between its backs, or falls.
    fn stand_by_weight(&self, group: &LinkedGroup, site: SiteWind, record: &mut Record) {
        let Some(first) = group.paths.first() else { return };
        let backs = || group.paths.iter().map(|path| self.back(path.shutter, path.shutter.bottom_m).x);
        let (left, right) = backs().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, r), x| (l.min(x), r.max(x)));
        let width_m = if group.paths.len() > 1 { right - left } else { build_up_m(first.shutter) };
        let bottom = group.paths.iter().map(|path| path.shutter.bottom_m).fold(f64::INFINITY, f64::min);
        let weight: f64 = group.paths.iter().map(|path| weight_kn(path.shutter, &self.model.parts)).sum();
        let held: f64 = group.paths.iter().map(|path| path.shutter.hold_down_kn * path.widths.len() as f64).sum();
        let heights = group.paths.iter().map(|path| height_m(path.shutter)).enumerate();
        let (windward, highest) = heights.fold((0, 0.0), |best, one| if one.1 > best.1 { one } else { best });
        let basis = self.scheme.basis;
        let top_m = group.paths.iter().fold(f64::MIN, |top, path| top.max(path.shutter.top_m));
        for stage in stages(site, top_m - self.scheme.ground.level_m) {
            let on = |(index, path): (usize, &&Path)| {
                let height = height_m(path.shutter);
                let part = if index == windward { 1.0 } else { SHELTERED };
                let force = stage.pressure_kpa * part * height * self.model.bay_m;
                (force, force * (path.shutter.bottom_m - bottom + height / 2.0))
            };
            let (mut force, mut moment) =
                group.paths.iter().enumerate().map(on).fold((0.0, 0.0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
            if stage.notional {
                force += NOTIONAL * weight;
                moment += NOTIONAL * weight * NOTIONAL_HEIGHT * highest;
            }
            let lever = width_m / 2.0;
            let moments = Standing {
                holding: weight * lever,
                tipping_variable: moment,
                held: held * lever,
                ..Standing::default()
            };
            let marks: Vec<&str> = group.paths.iter().map(|path| path.shutter.mark.as_str()).collect();
            let member = format!("{} on its own weight", marks.join(" + "));
            let case = sentence!("{} empty, {}", &self.pour.mark, word(stage.name));
            let place = at_level(bottom);
            let at = self.at(first.shutter, first.shutter.bottom_m);
            let subject = Subject { owner: first.shutter.id, member: &member, case: &case, place: &place, at };
            record.check(&subject, [check_overturning(basis, &moments)]);
            if !group.paths.iter().any(|path| path.shutter.foot_held) {
                let forces = Standing { holding: weight, tipping_variable: force, ..Standing::default() };
                let (friction, _) = Contact::TimberOnTimber.coefficients();
                record.check(&subject, [check_sliding(basis, &forces, friction)]);
            }
        }
    }
}
