//! Wall shutters: fresh concrete to ties, props and feet.

use super::beam::Beams;
use super::line::{Envelope, Peak};
use super::record::{Bending, Record, Subject, at_level};
use super::wall_facing::Path;
use super::wall_frame::{self, Link, Unsolved, Upright};
use super::{wall_ledger, wall_standing};
use crate::actions::KN_PER_KG;
use crate::actions::factors::factors;
use crate::checks::stability::{Standing, check_uplift};
use crate::geometry::Point;
use crate::layout::build_up_m;
use crate::model::{Model, Part, PlacedShutter, PlacedTieRow, Pour, Role, Solid};
use crate::results::{Diagram, Severity, Station};
use crate::scheme::{Arrangement, Scheme};
use crate::sentence::{Sentence, number, word};

/// What would hold a shutter upright is not told where it is less, kN.
const HARDLY_KN: f64 = 0.05;
/// Foot forces below this need no word, kN.
pub(super) const WORTH_TELLING_KN: f64 = 0.5;

/// Every pour: its shutters while they stand empty, and when it is full.
pub fn solve(scheme: &Scheme, model: &Model, record: &mut Record) {
    let beams = Beams::default();
    for pour in &model.pours {
        let walls = Walls::new(scheme, model, pour, &beams);
        let paths = walls.hand_down_all(record);
        for group in groups(&paths, model) {
            walls.solve_group(&group, record);
            walls.stand(&group, record);
        }
    }
    wall_standing::tell_of_missing_wind(scheme, model, record);
}

/// One pour when it is full.
pub fn solve_full(scheme: &Scheme, model: &Model, pour: &Pour, record: &mut Record) {
    let beams = Beams::default();
    let walls = Walls::new(scheme, model, pour, &beams);
    let paths = walls.hand_down_all(record);
    groups(&paths, model).iter().for_each(|group| walls.solve_group(group, record));
}

/// Shutters joined by ties, with the rows that join them.
pub(super) struct LinkedGroup<'a> {
    pub paths: Vec<&'a Path<'a>>,
    pub rows: Vec<&'a PlacedTieRow>,
}

fn groups<'a>(paths: &'a [Path<'a>], model: &'a Model) -> Vec<LinkedGroup<'a>> {
    let mut group_of: Vec<usize> = (0..paths.len()).collect();
    let index = |id| paths.iter().position(|path| path.shutter.id == id);
    for row in &model.ties {
        if let (Some(a), Some(b)) = (index(row.shutter), row.to.and_then(index)) {
            let (old, new) = (group_of[b], group_of[a]);
            group_of.iter_mut().filter(|group| **group == old).for_each(|group| *group = new);
        }
    }
    (0..paths.len())
        .filter_map(|group| {
            let members: Vec<&Path> = (0..paths.len()).filter(|&i| group_of[i] == group).map(|i| &paths[i]).collect();
            let has = |row: &&PlacedTieRow| members.iter().any(|path| path.shutter.id == row.shutter);
            let rows = model.ties.iter().filter(has).collect();
            (!members.is_empty()).then_some(LinkedGroup { paths: members, rows })
        })
        .collect()
}

pub(super) struct Walls<'a> {
    pub scheme: &'a Scheme,
    pub model: &'a Model,
    pub pour: &'a Pour,
    pub beams: &'a Beams,
    /// Pour and state, in words.
    pub case: Sentence,
}

impl<'a> Walls<'a> {
    fn new(scheme: &'a Scheme, model: &'a Model, pour: &'a Pour, beams: &'a Beams) -> Self {
        Self { scheme, model, pour, beams, case: sentence!("{}, full", &pour.mark) }
    }

    /// Solves the uprights of a group with their ties, checks them, and writes the group's ledger.
    fn solve_group(&self, group: &LinkedGroup, record: &mut Record) {
        let uprights: Vec<Upright> = group.paths.iter().map(|path| self.upright(path)).collect();
        let index = |id| group.paths.iter().position(|path| path.shutter.id == id);
        let links: Vec<Link> = group.rows.iter().filter_map(|row| self.link(row, group, index)).collect();
        let solved = match wall_frame::solve(&uprights, &links) {
            Ok(solved) => solved,
            Err(unsolved) => {
                let Unsolved { error, frame } = *unsolved;
                for path in &group.paths {
                    record.unsolved_frame(path.shutter.id, &path.shutter.mark, &frame, &error);
                }
                return;
            }
        };
        for (index, path) in group.paths.iter().enumerate() {
            let id = path.shutter.id;
            let held = group.rows.iter().zip(&solved.links).filter(|(row, _)| row.shutter == id || row.to == Some(id));
            let stretch = path.shutter.face.stretch();
            let held = held.map(|(row, &force)| ((row.z_m - path.shutter.bottom_m) * stretch, force));
            let envelope = Envelope { bearing: Peak::among(0, held), ..solved.envelopes[index] };
            self.check_upright(path, &envelope, &solved.stations[index], record);
        }
        self.tell_feet(&group.paths, &solved.feet, record);
        if let Some(prop) = &solved.missing_prop {
            let path = group.paths[prop.upright];
            let force = prop.force_kn * greatest(&path.widths).1;
            let mark = &path.shutter.mark;
            let text = if force.abs() < HARDLY_KN {
                sentence!("Nothing holds {} upright against leaning.", mark)
            } else {
                sentence!(
                    "Nothing holds {} upright against leaning: at level {} it takes {} {} at each upright.",
                    mark,
                    number(prop.z_m, "m", 2),
                    number(force.abs(), "kN", 1),
                    if force > 0.0 { word("outward") } else { word("inward") }
                )
            };
            let remedy = sentence!("Place a row of props from the shutter to the ground.");
            record.find(Severity::Warn, path.shutter.id, text, remedy);
        }
        let mut tie_forces = Vec::new();
        for (row, &force_kn_m) in group.rows.iter().zip(&solved.links) {
            match self.share_row(row, force_kn_m, group, record) {
                Ok(forces) => tie_forces.push(forces),
                Err(error) => return record.unsolved(row.id, &row.mark, &error),
            }
        }
        for (row, forces) in group.rows.iter().zip(&tie_forces) {
            self.check_row(row, forces, record);
        }
        for (path, &lift_kn_m) in group.paths.iter().zip(&solved.lifts) {
            self.check_lift(path, lift_kn_m, record);
        }
        let entries = wall_ledger::entries(self.pour, self.model, &group.paths, &group.rows, &solved, &tie_forces);
        record.results.ledger.extend(entries);
    }

    pub(super) fn upright(&self, path: &Path) -> Upright {
        let shutter = path.shutter;
        let beam = match shutter.arrangement {
            Arrangement::UprightPrimaries => shutter.primary.beam(),
            Arrangement::LevelPrimaries => shutter.secondary.beam(),
        };
        Upright {
            x_m: self.back(shutter, shutter.bottom_m).x,
            lean: shutter.face.lean(),
            outward: shutter.outward,
            bottom_m: self.back(shutter, shutter.bottom_m).z,
            top_m: self.back(shutter, shutter.top_m).z,
            ei_knm2: beam.map_or(0.0, |beam| beam.ei_knm2),
            ea_kn: beam.map_or(0.0, |beam| beam.ea_kn),
            foot_held: shutter.foot_held,
            weight_kn_m: 0.0,
            loads: path.loads.clone(),
        }
    }

    pub(super) fn link(
        &self,
        row: &PlacedTieRow,
        group: &LinkedGroup,
        index: impl Fn(crate::scheme::Id) -> Option<usize>,
    ) -> Option<Link> {
        let from = index(row.shutter)?;
        let uprights = group.paths[from].widths.len() as f64;
        let stiffness = match (row.item.tie(), row.item.leg()) {
            (Some(tie), _) => tie.modulus_kpa * tie.area_m2 / row.length_m,
            (_, Some(leg)) => wall_frame::steel_stiffness(leg.area_m2(), row.length_m),
            _ => return None,
        };
        Some(Link {
            from,
            to: row.to.and_then(index),
            z_m: row.z_m,
            stiffness_kn_m: stiffness * row.places_m.len() as f64 / uprights,
            is_tie: row.item.tie().is_some(),
            both_ways: row.pulls_and_pushes(),
            run_m: row.run_m(),
            below_m: row.below_m(),
        })
    }

    fn check_upright(&self, path: &Path, envelope: &Envelope, stations: &[Station], record: &mut Record) {
        let shutter = path.shutter;
        let level = match shutter.arrangement {
            Arrangement::UprightPrimaries => Level::Primary,
            Arrangement::LevelPrimaries => Level::Secondary,
        };
        let (_, width) = greatest(&path.widths);
        let stretch = shutter.face.stretch();
        self.check(shutter, level, envelope.times(width), &|along| shutter.bottom_m + along / stretch, record);
        record.results.diagrams.push(Diagram {
            owner: shutter.id,
            member: format!("{} {}", shutter.mark, level.name()),
            from: self.back(shutter, shutter.bottom_m),
            to: self.back(shutter, shutter.top_m),
            stations: stations.iter().map(|station| station.times(width)).collect(),
        });
    }

    /// The forces that feet need, so that someone provides for them.
    fn tell_feet(&self, paths: &[&Path], feet_kn_m: &[f64], record: &mut Record) {
        for (side, sign, remedy) in [
            (word("outward"), 1.0, sentence!("Hold it back there: a tie in the kicker, a cleat or a wedge.")),
            (word("into the concrete"), -1.0, sentence!("Let it bear there on earlier concrete or a spacer.")),
        ] {
            let force =
                |(path, foot): (&&Path, &f64)| (path.shutter.mark.clone(), foot * sign * greatest(&path.widths).1);
            let pushing: Vec<Sentence> = paths
                .iter()
                .zip(feet_kn_m)
                .map(force)
                .filter(|(_, force)| *force >= WORTH_TELLING_KN)
                .map(|(mark, force)| sentence!("{} by {}", mark, number(force, "kN", 1)))
                .collect();
            if let Some(path) = paths.first().filter(|_| !pushing.is_empty()) {
                let text = sentence!("The foot of each upright is pushed {}: {}.", side, pushing);
                record.find(Severity::Note, path.shutter.id, text, remedy);
            }
        }
    }

    /// Checks what the concrete and raking props lift against what weighs and holds a shutter down.
    fn check_lift(&self, path: &Path, lift_kn_m: f64, record: &mut Record) {
        let shutter = path.shutter;
        let lift_kn = lift_kn_m * path.widths.iter().sum::<f64>();
        if lift_kn <= WORTH_TELLING_KN {
            return;
        }
        let standing = Standing {
            holding: weight_kn(shutter, &self.model.parts),
            tipping_variable: lift_kn,
            held: shutter.hold_down_kn * path.widths.len() as f64,
            ..Standing::default()
        };
        let member = format!("{} foot", shutter.mark);
        let place = at_level(shutter.bottom_m);
        let at = self.at(shutter, shutter.bottom_m);
        let subject = Subject { owner: shutter.id, member: &member, case: &self.case, place: &place, at };
        record.check(&subject, [check_uplift(self.scheme.basis, &standing)]);
    }

    pub(super) fn check(
        &self,
        shutter: &PlacedShutter,
        member: Level,
        envelope: Envelope,
        level: &dyn Fn(f64) -> f64,
        record: &mut Record,
    ) {
        let (item, below) = match member {
            Level::Facing => (&shutter.facing, None),
            Level::Secondary => (&shutter.secondary, shutter.primary.beam()),
            Level::Primary => (&shutter.primary, None),
        };
        record.check_bending(&Bending {
            owner: shutter.id,
            member: &format!("{} {}", shutter.mark, member.name()),
            item,
            strength: envelope.times(factors(self.scheme.basis).fresh_concrete_pressure),
            service: envelope,
            bearing_m: below.map_or(0.1, |beam| beam.breadth_m),
            case: &|_| self.case.clone(),
            place: &|at| (at_level(level(at)), self.at(shutter, level(at))),
        });
    }

    /// A point in the middle of a shutter's thickness.
    pub(super) fn at(&self, shutter: &PlacedShutter, z: f64) -> Point {
        Point::new(shutter.face.x_at(z) + shutter.outward * build_up_m(shutter) / 2.0, z)
    }

    /// The point on the back of a shutter that is square behind a level of its face.
    pub(super) fn back(&self, shutter: &PlacedShutter, z: f64) -> Point {
        let [across, up] = shutter.square();
        let square_m = build_up_m(shutter) / shutter.face.stretch();
        Point::new(shutter.face.x_at(z) + across * square_m, z + up * square_m)
    }
}

/// What a shutter weighs, kN.
pub(super) fn weight_kn(shutter: &PlacedShutter, parts: &[Part]) -> f64 {
    let board_kg_m2 = shutter.facing.board().map_or(0.0, |board| board.mass_kg_m2);
    let [secondary_kg_m, primary_kg_m] =
        [&shutter.secondary, &shutter.primary].map(|item| item.beam().map_or(0.0, |beam| beam.mass_kg_m));
    let kg = |part: &Part| match (part.role, part.solid) {
        (Role::Facing, Solid::Sheet { length_m, .. }) => board_kg_m2 * part.solid.length_m() * length_m,
        (Role::Secondary, solid) => secondary_kg_m * solid.length_m(),
        (Role::Primary, solid) => primary_kg_m * solid.length_m(),
        _ => 0.0,
    };
    let own = parts.iter().filter(|part| part.owner == shutter.id);
    own.map(|part| kg(part) * f64::from(part.count)).sum::<f64>() * KN_PER_KG
}

#[derive(Clone, Copy)]
pub(super) enum Level {
    Facing,
    Secondary,
    Primary,
}

impl Level {
    fn name(self) -> &'static str {
        match self {
            Self::Facing => "facing",
            Self::Secondary => "secondary",
            Self::Primary => "primary",
        }
    }
}

/// Index and size of the greatest value, by size.
pub(super) fn greatest(values: &[f64]) -> (usize, f64) {
    values.iter().enumerate().fold((0, 0.0), |best, (i, v)| if v.abs() > best.1 { (i, v.abs()) } else { best })
}
