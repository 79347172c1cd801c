//! Random schemes that a user could draw.

use falsewright_core::layout::concrete::faces;
use falsewright_core::model::{Face, FaceKind};
use falsewright_core::scheme::{
    Arrangement, Basis, Concrete, Delivery, Direction, FaceRef, FixedEnd, HeldBy, Id, Joint, Lateral, Opening,
    PressureMethod, Scheme, Section, SiteWind, Spacing, TieEnd, Walls,
};
use falsewright_tests::simple::{anchors, falsework, shutter};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// The same cases in every run; `PROPTEST_RNG_SEED` asks for others.
pub fn config(cases: u32) -> ProptestConfig {
    let known = ProptestConfig::default();
    let rng_seed = if known.rng_seed == RngSeed::Random { RngSeed::Fixed(24_11) } else { known.rng_seed };
    ProptestConfig { cases, failure_persistence: None, rng_seed, ..known }
}

/// What a scheme is drawn from. Parts are between 0 and 1.
#[derive(Clone, Debug)]
pub struct Drawn {
    pub shape: usize,
    pub clear_m: [f64; 2],
    pub wall_m: f64,
    pub slab_m: f64,
    pub haunch_m: f64,
    pub bay_m: f64,
    pub jointed: bool,
    pub level_primaries: bool,
    pub along: bool,
    pub braced: bool,
    pub opened: bool,
    pub propped: bool,
    pub fluid: bool,
    pub basis: usize,
    pub rows: usize,
    pub lines: usize,
    pub spacings_m: [f64; 4],
    pub rate_m3_h: f64,
    pub density: f64,
    pub lift_m: f64,
    pub edge: f64,
    pub trough_haunch: bool,
}

pub fn drawn() -> impl Strategy<Value = Drawn> {
    let section = (0..4usize, [2.0..9.0f64, 2.0..5.0f64], 0.25..0.7f64, 0.25..0.8f64, 0.0..0.4f64, 2.0..14.0f64);
    let flags = (any::<[bool; 8]>(), 0..3usize, 1..5usize, 2..6usize);
    let numbers = ([0.15..0.6f64, 0.5..1.4f64, 0.15..0.6f64, 0.6..1.5f64], 4.0..80.0f64, 23.0..27.0f64);
    (section, flags, numbers, 0.8..2.5f64, 0.1..0.5f64).prop_map(|(section, flags, numbers, lift_m, edge)| {
        let (shape, clear_m, wall_m, slab_m, haunch_m, bay_m) = section;
        let (set, basis, rows, lines) = flags;
        let [jointed, level_primaries, along, braced, opened, propped, fluid, trough_haunch] = set;
        let (spacings_m, rate_m3_h, density) = numbers;
        let haunch_m = if haunch_m < 0.1 { 0.0 } else { haunch_m };
        Drawn {
            shape,
            clear_m,
            wall_m,
            slab_m,
            haunch_m,
            bay_m,
            jointed,
            level_primaries,
            along,
            braced,
            opened,
            propped,
            fluid,
            basis,
            rows,
            lines,
            spacings_m,
            rate_m3_h,
            density,
            lift_m,
            edge,
            trough_haunch,
        }
    })
}

impl Drawn {
    fn section(&self) -> Section {
        let [width, height] = self.clear_m;
        let walls = Walls { wall_m: self.wall_m, roof_m: self.slab_m, base_m: self.slab_m, haunch_m: self.haunch_m };
        let mut section = match self.shape {
            0 => Section::box_cell(width, height, walls),
            1 => Section::twin_box(width, height, walls, self.wall_m),
            2 => Section::portal(width, height, self.wall_m, self.slab_m, self.haunch_m),
            _ => {
                let haunch_m = if self.trough_haunch { self.haunch_m } else { 0.0 };
                Section::u_trough(width, height, self.wall_m, self.slab_m, haunch_m)
            }
        };
        let floor_m = if self.shape == 2 { 0.0 } else { self.slab_m };
        // A trough's haunch stands below the joint.
        let kicker_m = if self.shape == 3 { self.haunch_m + 0.1 } else { 0.15 };
        if self.jointed {
            section.joints = vec![Joint { id: Id(900), z_m: floor_m + kicker_m }];
        }
        section
    }

    fn spacing(&self, index: usize) -> Spacing {
        Spacing { edge_m: self.edge * self.spacings_m[index], max_m: self.spacings_m[index] }
    }

    /// Shutters on all walls, ties through all of them, falsework under all soffits, and an opening where one fits.
    pub fn scheme(&self) -> Scheme {
        let mut scheme = Scheme::blank(self.section());
        scheme.bays.length_m = self.bay_m;
        scheme.basis = [Basis::WorkingLoad, Basis::LimitStateB1, Basis::LimitStateB2][self.basis];
        scheme.concrete = Concrete {
            unit_weight_kn_m3: self.density,
            temperature_c: 12.0,
            method: if self.fluid { PressureMethod::FullHead } else { PressureMethod::CiriaR108 { c1: 1.0, c2: 0.45 } },
            delivery: Delivery::Volume { rate_m3_h: self.rate_m3_h },
        };
        if self.propped {
            let speed = self.density;
            scheme.loads.wind = Some(SiteWind { working_speed_m_s: 0.7 * speed, ..SiteWind::gust(speed) });
        }
        let all = faces(&scheme.section, scheme.ground.level_m);
        for pour in [FaceRef::LOWEST, Id(900)] {
            self.place_walls(&mut scheme, &all, pour);
            let soffits = all.iter().filter(|face| face.of.pour == pour && face.kind == FaceKind::Soffit);
            soffits.for_each(|face| self.place_falsework(&mut scheme, face));
        }
        scheme
    }

    fn place_walls(&self, scheme: &mut Scheme, all: &[Face], pour: Id) {
        let upright =
            |face: &&Face| face.of.pour == pour && matches!(face.kind, FaceKind::OuterWall | FaceKind::InnerWall);
        let mut walls: Vec<&Face> = all.iter().filter(upright).collect();
        walls.sort_by(|a, b| a.from.x.total_cmp(&b.from.x));
        let first = scheme.fresh_id().0;
        let arrangement =
            if self.level_primaries { Arrangement::LevelPrimaries } else { Arrangement::UprightPrimaries };
        for (id, face) in (first..).zip(&walls) {
            let mut placed = shutter(id, face.of, arrangement);
            let (mut over_height, along) = (self.spacing(0), self.spacing(1));
            over_height.edge_m = over_height.edge_m.min(0.3 * (face.to.z - face.from.z).abs());
            (placed.secondaries, placed.primaries) =
                if self.level_primaries { (self.spacing(2), along) } else { (over_height, along) };
            placed.foot_held = true;
            scheme.shutters.push(placed);
        }
        for (index, pair) in walls.chunks(2).enumerate().filter(|(_, pair)| pair.len() == 2) {
            let low = pair.iter().map(|face| face.from.z.min(face.to.z)).fold(f64::MIN, f64::max);
            let high = pair.iter().map(|face| face.from.z.max(face.to.z)).fold(f64::MAX, f64::min);
            let shutters = [first + 2 * index as u32, first + 2 * index as u32 + 1];
            for row in 0..self.rows {
                let level = low + (high - low) * (row as f64 + 0.7) / (self.rows as f64 + 0.4);
                let mut ties = anchors(scheme.fresh_id().0, shutters[0], level, "TIE20", 1.0);
                ties.to = TieEnd::Shutter { id: Id(shutters[1]) };
                ties.spacing = self.spacing(1);
                scheme.ties.push(ties);
            }
            if self.propped {
                let mut props = anchors(scheme.fresh_id().0, shutters[0], low + 0.6 * (high - low), "PROP76", 3.0);
                props.spacing = self.spacing(1);
                let by = HeldBy::Kentledge { weight_kn: 10.0 * self.density, friction: 0.4 };
                props.held = Some(FixedEnd { below_m: 2.9 * self.edge, by });
                scheme.ties.push(props);
            }
        }
    }

    fn place_falsework(&self, scheme: &mut Scheme, soffit: &Face) {
        let [left, right] = [soffit.from.x.min(soffit.to.x), soffit.from.x.max(soffit.to.x)];
        let way_m = right - left - 2.7;
        let opened = self.opened && way_m > 1.0;
        let trestles_end = left + 1.35;
        let [from, to] = if opened { [trestles_end + 0.3, right - 1.65] } else { [left + 0.3, right - 0.3] };
        let lines = if to - from < 0.4 { 1 } else { self.lines };
        let step = if lines > 1 { (to - from) / (lines as f64 - 1.0) } else { 0.0 };
        let places: Vec<f64> = (0..lines).map(|i| from + step * i as f64).collect();
        let direction = if self.along { Direction::Along } else { Direction::Across };
        let mut table = falsework(scheme.fresh_id().0, soffit.of, direction, &places);
        table.bents = self.spacing(3);
        table.secondaries = self.spacing(2);
        table.lift_m = self.lift_m;
        if self.braced {
            table.lateral = Lateral::Braced;
            table.leg_lines.iter_mut().step_by(2).for_each(|line| line.braced = true);
        }
        let falsework_id = table.id;
        scheme.falsework.push(table);
        if opened {
            scheme.openings.push(Opening {
                id: scheme.fresh_id(),
                falsework: falsework_id,
                left_m: trestles_end,
                width_m: way_m,
                height_m: 1.0,
                guard_m: 0.2,
                beam_underside_m: 1.1,
                transfer: "HE240B".into(),
                transfers: 2,
                restraint_m: None,
                trestle: "LEG89".into(),
                trestle_m: 0.6,
                built_width_m: None,
                built_height_m: None,
            });
        }
    }
}
