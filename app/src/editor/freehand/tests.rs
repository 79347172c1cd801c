//! Strokes as hands draw them: wobbling, with rounded corners, begun anywhere, either way round, ends that gape or
//! overlap, at uneven speed.

use super::*;
use falsewright_core::scheme::edit::{Edit, apply};
use falsewright_core::scheme::{Cell, Corner, Id, Scheme, Section};
use proptest::prelude::*;

/// 8 px at 80 px to the metre.
const FINEST_M: f64 = 0.1;

/// How a hand draws.
#[derive(Clone, Copy, Debug)]
struct Hand {
    seed: u64,
    /// Greatest distance off the line, m.
    wobble_m: f64,
    /// Radius of corners, m.
    round_m: f64,
    /// Where along the ring it begins, 0 to 1.
    start: f64,
    /// How far it goes past its start (or stops short of it), m.
    past_m: f64,
    backward: bool,
}

fn hands() -> impl Strategy<Value = Hand> {
    (any::<u64>(), 0.0..0.08_f64, 0.0..0.22_f64, 0.0..1.0_f64, -0.25..0.5_f64, any::<bool>()).prop_map(
        |(seed, wobble_m, round_m, start, past_m, backward)| Hand { seed, wobble_m, round_m, start, past_m, backward },
    )
}

/// Numbers from -1 to 1 that look random.
fn noise(state: &mut u64) -> f64 {
    *state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    (*state >> 11) as f64 / (1_u64 << 52) as f64 - 1.0
}

impl Hand {
    /// The way from corner to corner with rounded corners, from `from_m` to `to_m` along it.
    fn draw(&self, corners: &[Point], closed: bool) -> Vec<Point> {
        let mut corners = corners.to_vec();
        if self.backward {
            corners.reverse();
        }
        let path = rounded(&corners, self.round_m, closed);
        let whole = simplify::length(&path);
        let (from, to) =
            if closed { (self.start * whole, (1.0 + self.start) * whole + self.past_m) } else { (0.0, whole) };
        let mut state = self.seed;
        let (mut at, mut drift) = (from, [0.0, 0.0]);
        let mut stroke = Vec::new();
        while at < to {
            let p = along(&path, at.rem_euclid(whole.max(1e-9)), at >= to && !closed);
            // A slow drift with a tremor on it, as a hand has.
            for axis in &mut drift {
                *axis = 0.85 * *axis + 0.15 * noise(&mut state) * 2.0;
            }
            let off =
                drift.map(|axis: f64| axis.clamp(-0.8, 0.8) * self.wobble_m + 0.2 * self.wobble_m * noise(&mut state));
            stroke.push(p + Point::new(off[0], off[1]));
            at += 0.02 + 0.06 * (noise(&mut state) + 1.0);
        }
        if !closed {
            stroke.push(path[path.len() - 1]);
        }
        stroke
    }
}

fn along(path: &[Point], mut at: f64, _end: bool) -> Point {
    for pair in path.windows(2) {
        let step = (pair[1] - pair[0]).length();
        if at <= step && step > 0.0 {
            return pair[0].lerp(pair[1], at / step);
        }
        at -= step;
    }
    path[path.len() - 1]
}

fn rounded(corners: &[Point], radius_m: f64, closed: bool) -> Vec<Point> {
    let count = corners.len();
    let mut path = Vec::new();
    for i in 0..count {
        let (before, at, after) = (corners[(i + count - 1) % count], corners[i], corners[(i + 1) % count]);
        if !closed && (i == 0 || i == count - 1) {
            path.push(at);
            continue;
        }
        let (a, b) = (at + (before - at).unit() * radius_m, at + (after - at).unit() * radius_m);
        // A quadratic curve from leg to leg.
        path.extend((0..=8).map(|k| {
            let t = f64::from(k) / 8.0;
            a.lerp(at, t).lerp(at.lerp(b, t), t)
        }));
    }
    if closed {
        path.push(path[0]);
    }
    path
}

fn points(list: &[(f64, f64)]) -> Vec<Point> {
    list.iter().map(|&(x, z)| Point::new(x, z)).collect()
}

fn rectangle([x, z]: [f64; 2], [width, height]: [f64; 2]) -> Vec<Point> {
    points(&[(x, z), (x + width, z), (x + width, z + height), (x, z + height)])
}

fn blank() -> Section {
    Section { outline: Vec::new(), cells: Vec::new(), joints: Vec::new() }
}

fn corners(ring: &[Bend]) -> Vec<Corner> {
    (1..).zip(ring).map(|(i, bend)| Corner { id: Id(i), x_m: bend.at.x, z_m: bend.at.z, cut: bend.cut }).collect()
}

fn ring(stroke: &[Point], section: &Section) -> Vec<Bend> {
    match read(stroke, FINEST_M, &Sheet { section }) {
        Some(Sketch::Ring(ring)) => ring,
        other => panic!("{other:?}"),
    }
}

/// Whether two rings have the same corners within a tolerance, from whichever corner and whichever way round.
fn same_ring(found: &[Bend], meant: &[Point], tolerance_m: f64) -> bool {
    let fits = |bends: Vec<&Bend>| {
        (0..bends.len()).any(|turn| {
            let turned = bends.iter().cycle().skip(turn);
            turned.zip(meant).all(|(bend, p)| (bend.at - *p).length() <= tolerance_m)
        })
    };
    found.len() == meant.len() && (fits(found.iter().collect()) || fits(found.iter().rev().collect()))
}

fn is_step(value: f64, step: f64) -> bool {
    (value / step - (value / step).round()).abs() < 1e-6
}

/// Half a step of rounding, the wobble, and what rounded corners draw in, for both axes together.
const OFF_M: f64 = 0.2;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn a_rough_box_is_a_box_on_round_sizes(
        hand in hands(), x in -2.0..2.0_f64, z in -1.0..1.0_f64, width in 2.0..9.0_f64, height in 1.6..6.0_f64,
    ) {
        let meant = rectangle([x, z], [width, height]);
        let found = ring(&hand.draw(&meant, true), &blank());
        prop_assert!(same_ring(&found, &meant, OFF_M), "{found:?} for {meant:?}");
        prop_assert!(found.iter().all(|bend| bend.cut.is_none() && is_step(bend.at.x, 0.1) && is_step(bend.at.z, 0.1)));
        let square = |a: &Bend, b: &Bend| (a.at.x == b.at.x) != (a.at.z == b.at.z);
        prop_assert!(found.iter().zip(found.iter().cycle().skip(1)).all(|(a, b)| square(a, b)));
    }

    #[test]
    fn a_rough_box_in_a_box_is_a_section_with_equal_walls(
        outer in hands(), inner in hands(), width in 3.0..9.0_f64, height in 2.6..6.0_f64, wall in 0.35..0.7_f64,
    ) {
        let outline = ring(&outer.draw(&rectangle([0.0, 0.0], [width, height]), true), &blank());
        let section = Section { outline: corners(&outline), ..blank() };
        let scheme = apply(&Scheme::blank(blank()), &Edit::SetSection(section)).unwrap();
        let void = rectangle([wall, wall], [width - 2.0 * wall, height - 2.0 * wall]);
        let cell = ring(&inner.draw(&void, true), &scheme.section);
        let scheme = apply(&scheme, &Edit::AddCell(corners(&cell))).unwrap();
        let x = |ring: &[Bend]| {
            let xs = ring.iter().map(|bend| bend.at.x);
            [xs.clone().fold(f64::MAX, f64::min), xs.fold(f64::MIN, f64::max)]
        };
        let ([left, right], [from, to]) = (x(&outline), x(&cell));
        prop_assert!(((from - left) - (right - to)).abs() < 1e-6, "walls {} and {}", from - left, right - to);
        prop_assert!(is_step(from - left, 0.05) && from - left >= 0.2 - 1e-9);
        prop_assert!((from - left - wall).abs() < 0.25);
        prop_assert_eq!(scheme.validate(), Ok(()));
    }

    #[test]
    fn steps_and_troughs_keep_their_corners(hand in hands(), width in 4.0..8.0_f64, wall in 0.5..0.8_f64) {
        let trough = points(&[
            (0.0, 0.0), (width, 0.0), (width, 3.0), (width - wall, 3.0), (width - wall, 0.6), (wall, 0.6), (wall, 3.0),
            (0.0, 3.0),
        ]);
        let hand = Hand { round_m: hand.round_m / 3.0, wobble_m: hand.wobble_m / 2.0, ..hand };
        let found = ring(&hand.draw(&trough, true), &blank());
        prop_assert!(same_ring(&found, &trough, OFF_M), "{found:?}");
    }

    #[test]
    fn large_haunches_are_haunches(hand in hands(), leg in 0.7..1.1_f64) {
        let hand = Hand { round_m: hand.round_m / 4.0, wobble_m: hand.wobble_m / 2.0, ..hand };
        let cell = points(&[
            (0.0, 0.0), (6.0, 0.0), (6.0, 4.0 - leg), (6.0 - leg, 4.0), (leg, 4.0), (0.0, 4.0 - leg),
        ]);
        let found = ring(&hand.draw(&cell, true), &blank());
        prop_assert!(same_ring(&found, &rectangle([0.0, 0.0], [6.0, 4.0]), OFF_M), "{found:?}");
        let cuts: Vec<_> = found.iter().filter_map(|bend| bend.cut).collect();
        prop_assert_eq!(cuts.len(), 2);
        for cut in cuts {
            prop_assert!((cut.before_m - leg).abs() < 0.25 && (cut.after_m - leg).abs() < 0.25, "{cut:?}");
        }
    }

    #[test]
    fn an_open_line_keeps_its_corners(hand in hands(), width in 2.0..6.0_f64, height in 1.5..4.0_f64) {
        let meant = points(&[(0.0, 0.0), (width, 0.0), (width, height)]);
        let hand = Hand { backward: false, ..hand };
        let Some(Sketch::Line(found)) = read(&hand.draw(&meant, false), FINEST_M, &Sheet { section: &blank() }) else {
            return Err(TestCaseError::fail("no line"));
        };
        prop_assert_eq!(found.len(), 3);
        prop_assert!(found.iter().zip(&meant).all(|(a, b)| (*a - *b).length() < 0.3), "{:?}", found);
    }

    #[test]
    fn a_straight_slanting_stroke_is_a_rectangle(
        hand in hands(), width in 2.0..8.0_f64, height in 2.0..8.0_f64,
    ) {
        let hand = Hand { backward: false, wobble_m: hand.wobble_m / 2.0, ..hand };
        let stroke = hand.draw(&points(&[(0.0, 0.0), (width, height)]), false);
        let found = read(&stroke, FINEST_M, &Sheet { section: &blank() });
        prop_assert!(matches!(found, Some(Sketch::Rectangle(_))), "{:?}", found);
    }

    #[test]
    fn any_scribble_is_read_without_harm(
        scribble in prop::collection::vec((-8.0..8.0_f64, -8.0..8.0_f64), 0..60), finest in 0.001..2.0_f64,
    ) {
        let stroke = points(&scribble);
        let scheme = Scheme::blank(Section::u_trough(5.0, 3.0, 0.45, 0.5, 0.25));
        for section in [&blank(), &scheme.section] {
            if let Some(Sketch::Ring(found)) = read(&stroke, finest, &Sheet { section }) {
                prop_assert!(found.len() >= 3 && found.iter().all(|bend| bend.at.x.is_finite() && bend.at.z.is_finite()));
                let _ = apply(&scheme, &Edit::AddCell(corners(&found)));
            }
            onward(Point::new(1.0, 1.0), &stroke, finest, &Sheet { section });
        }
    }
}

#[test]
fn a_second_cell_stands_in_line_with_the_first() {
    let mut section = blank();
    section.outline =
        corners(&rectangle([0.0, 0.0], [9.0, 4.0]).iter().map(|at| Bend { at: *at, cut: None }).collect::<Vec<_>>());
    let first = rectangle([0.45, 0.525], [3.8, 3.0]);
    section.cells.push(Cell {
        id: Id(9),
        corners: corners(&first.iter().map(|at| Bend { at: *at, cut: None }).collect::<Vec<_>>()),
    });
    let hand = Hand { seed: 7, wobble_m: 0.05, round_m: 0.1, start: 0.3, past_m: 0.2, backward: true };
    let cell = ring(&hand.draw(&rectangle([4.68, 0.6], [3.8, 2.8]), true), &section);
    let levels: Vec<f64> = cell.iter().map(|bend| bend.at.z).collect();
    assert!(levels.iter().all(|z| (z - 0.525).abs() < 1e-9 || (z - 3.525).abs() < 1e-9), "{levels:?}");
}

#[test]
fn a_stroke_around_the_outline_takes_round_thicknesses_from_it() {
    let mut section = blank();
    section.outline =
        corners(&rectangle([0.0, 0.0], [6.0, 3.6]).iter().map(|at| Bend { at: *at, cut: None }).collect::<Vec<_>>());
    let hand = Hand { seed: 11, wobble_m: 0.05, round_m: 0.1, start: 0.6, past_m: 0.1, backward: false };
    let around = ring(&hand.draw(&rectangle([-0.43, -0.52], [6.9, 4.5]), true), &section);
    let xs: Vec<f64> = around.iter().map(|bend| bend.at.x).collect();
    let (left, right) = (xs.iter().copied().fold(f64::MAX, f64::min), xs.iter().copied().fold(f64::MIN, f64::max));
    assert!((-left - (right - 6.0)).abs() < 1e-9 && is_step(left, 0.05), "{xs:?}");
}

#[test]
fn a_dot_is_nothing() {
    let section = blank();
    let sheet = Sheet { section: &section };
    for stroke in [vec![], points(&[(1.0, 1.0)]), points(&[(1.0, 1.0), (1.05, 1.0), (1.0, 1.05)])] {
        assert_eq!(read(&stroke, FINEST_M, &sheet), None);
    }
    assert_eq!(read(&[Point::new(f64::NAN, 0.0), Point::new(5.0, 1.0)], FINEST_M, &sheet), None);
}

#[test]
fn a_haunch_that_ends_in_wobbles_keeps_its_slope() {
    let hand = Hand {
        seed: 13_018_508_950_518_006_072,
        wobble_m: 0.036_987_1,
        round_m: 0.0,
        start: 0.060_587_147_598_098_88,
        past_m: 0.0,
        backward: false,
    };
    let cell = points(&[(0.0, 0.0), (6.0, 0.0), (6.0, 3.3), (5.3, 4.0), (0.7, 4.0), (0.0, 3.3)]);
    let cuts: Vec<_> = ring(&hand.draw(&cell, true), &blank()).iter().filter_map(|bend| bend.cut).collect();
    let near = |leg_m: f64| (leg_m - 0.7).abs() < 0.25;
    assert!(cuts.len() == 2 && cuts.iter().all(|cut| near(cut.before_m) && near(cut.after_m)), "{cuts:?}");
}
