//! Laws that hold for every frame: equilibrium, reciprocity, superposition, and that the way a frame is written down
//! changes nothing.

use falsewright_core::analysis::{
    Axis, DistributedLoad, Dof, Frame, FrameError, LoadCase, Member, NodalLoad, PointLoad, Removal, Solution, Spring,
    Support, WhatIf,
};
use proptest::prelude::*;

/// Of the greatest value of the same kind.
const TOLERANCE: f64 = 1e-8;

/// Joints one after another on a line that wanders, so that a chain of rigid members joins them all to the fixed first
/// joint and nothing can be loose; more members, hinged anyhow, between any two of them.
fn any_frame() -> impl Strategy<Value = Frame> {
    let nodes = prop::collection::vec((0.5..2.0, -1.5..1.5), 2..8);
    let chain = prop::collection::vec((50.0..5e3, 2e4..1e6), 8);
    let extra = prop::collection::vec((0..8usize, 0..8usize, 50.0..5e3, 2e4..1e6, any::<[bool; 2]>(), 0..4), 0..6);
    let supports = prop::collection::vec((1..8usize, any::<[bool; 3]>()), 0..3);
    let springs = prop::collection::vec((1..8usize, 0..3usize, 10.0..1e5), 0..3);
    (nodes, chain, extra, supports, springs).prop_map(|(steps, chain, extra, supports, springs)| {
        let mut frame = Frame::default();
        let mut x = 0.0;
        frame.add_node(0.0, 0.0);
        for (dx, y) in steps {
            x += dx;
            frame.add_node(x, y);
        }
        let count = frame.nodes.len();
        for (i, (ei, ea)) in chain.into_iter().take(count - 1).enumerate() {
            frame.add_member(Member::beam(i, i + 1, ei, ea));
        }
        for (i, j, ei, ea, [release_i, release_j], kind) in extra {
            if let (i, j, true) = (i % count, j % count, i % count != j % count) {
                let beam = Member { release_i, release_j, ..Member::beam(i, j, ei, ea) };
                frame.add_member(if kind == 0 { Member::bar(i, j, ea) } else { beam });
            }
        }
        frame.supports.push(Support { node: 0, ux: true, uy: true, rz: true });
        for (node, [ux, uy, rz]) in supports {
            frame.supports.push(Support { node: node % count, ux, uy, rz });
        }
        for (node, dof, k) in springs {
            frame.springs.push(Spring { node: node % count, dof: [Dof::Ux, Dof::Uy, Dof::Rz][dof], k });
        }
        frame
    })
}

/// Places and sizes from which loads on any frame are made.
type LoadSeed = (Vec<(usize, [f64; 3])>, Vec<(usize, bool, [f64; 4])>, Vec<(usize, bool, [f64; 2])>);

fn any_loads() -> impl Strategy<Value = LoadSeed> {
    let part = 0.0..1.0;
    (
        prop::collection::vec((0..8usize, [-50.0..50.0, -50.0..50.0, -20.0..20.0]), 0..4),
        prop::collection::vec(
            (0..14usize, any::<bool>(), [-30.0..30.0, -30.0..30.0, part.clone(), part.clone()]),
            0..5,
        ),
        prop::collection::vec((0..14usize, any::<bool>(), [-40.0..40.0, part]), 1..4),
    )
}

fn loads_on(frame: &Frame, (nodal, lines, points): &LoadSeed) -> LoadCase {
    let axis = |along_x: bool| if along_x { Axis::X } else { Axis::Y };
    let beams: Vec<usize> = (0..frame.members.len()).filter(|&member| frame.members[member].ei > 0.0).collect();
    let beam = |seed: usize| beams[seed % beams.len()];
    let mut loads = LoadCase::default();
    for &(node, [fx, fy, mz]) in nodal {
        // The joints of the chain bear moments, those of hinges only would not.
        loads.nodal.push(NodalLoad { node: node % frame.nodes.len(), fx, fy, mz });
    }
    for &(member, along_x, [w1, w2, p, q]) in lines {
        let member = beam(member);
        let l = length(frame, member);
        loads.distributed.push(DistributedLoad {
            member,
            axis: axis(along_x),
            w1,
            w2,
            a: p.min(q) * l,
            b: p.max(q) * l,
        });
    }
    for &(member, along_x, [p, at]) in points {
        let member = beam(member);
        loads.point.push(PointLoad { member, axis: axis(along_x), p, a: at * length(frame, member) });
    }
    loads
}

fn length(frame: &Frame, member: usize) -> f64 {
    let Member { i, j, .. } = frame.members[member];
    (frame.nodes[j].x - frame.nodes[i].x).hypot(frame.nodes[j].y - frame.nodes[i].y)
}

fn solve(frame: &Frame, loads: &LoadCase) -> Solution {
    frame.factorise().expect("nothing is loose").solve(loads).expect("the loads lie on the frame")
}

/// Shifts, rotations, forces and moments at the nodes.
fn values_at_nodes(frame: &Frame, solution: &Solution) -> [Vec<f64>; 4] {
    let mut kinds: [Vec<f64>; 4] = Default::default();
    for node in 0..frame.nodes.len() {
        let (moved, reaction) = (solution.displacement(node), solution.reaction(node));
        kinds[0].extend([moved.ux, moved.uy]);
        kinds[1].push(moved.rz);
        kinds[2].extend([reaction.fx, reaction.fy]);
        kinds[3].push(reaction.mz);
    }
    kinds
}

/// Everything that a solution tells, kind by kind: shifts, rotations, forces, moments. Members at 5 places.
fn values(frame: &Frame, solution: &Solution) -> [Vec<f64>; 4] {
    let mut kinds = values_at_nodes(frame, solution);
    for member in 0..frame.members.len() {
        for place in [0.07, 0.31, 0.5, 0.77, 0.94] {
            let x = place * length(frame, member);
            kinds[0].push(solution.deflection_at(member, x));
            kinds[2].extend([solution.axial_at(member, x), solution.shear_at(member, x)]);
            kinds[3].push(solution.moment_at(member, x));
        }
    }
    kinds
}

/// Greatest movement and greatest force, for each kind. Frames are some metres wide, so that 1 rad is put beside 1 m and
/// 1 kNm beside 1 kN.
fn scales(kinds: &[Vec<f64>; 4]) -> [f64; 4] {
    let [shift, rotation, force, moment] =
        kinds.each_ref().map(|kind| kind.iter().fold(0.0, |most: f64, value| most.max(value.abs())));
    let (movement, force) = (shift.max(rotation), force.max(moment));
    [movement, movement, force, force]
}

fn assert_same(left: &[Vec<f64>; 4], right: &[Vec<f64>; 4], tolerance: f64) -> Result<(), TestCaseError> {
    assert_same_by(scales(left), left, right, tolerance)
}

fn assert_same_by(
    scales: [f64; 4],
    left: &[Vec<f64>; 4],
    right: &[Vec<f64>; 4],
    tolerance: f64,
) -> Result<(), TestCaseError> {
    for (kind, (left, right)) in left.iter().zip(right).enumerate() {
        prop_assert_eq!(left.len(), right.len());
        for (at, (left, right)) in left.iter().zip(right).enumerate() {
            let same = (left - right).abs() <= tolerance * scales[kind];
            prop_assert!(same, "kind {kind}, value {at}: {left} and {right}, scale {}", scales[kind]);
        }
    }
    Ok(())
}

/// Resultant of a load along x or y from w1 to w2 over a length: force, and distance from its start.
fn resultant(w1: f64, w2: f64, l: f64) -> (f64, f64) {
    let force = 0.5 * (w1 + w2) * l;
    let moment = l * l * (w1 + 2.0 * w2) / 6.0;
    (force, moment)
}

/// Forces along x and y and their moment about the origin, and the sum of their sizes.
#[derive(Default)]
struct Balance([f64; 3], f64);

impl Balance {
    fn add(&mut self, x: f64, y: f64, fx: f64, fy: f64, mz: f64) {
        let terms = [fx, fy, mz + x * fy - y * fx];
        for (sum, term) in self.0.iter_mut().zip(terms) {
            *sum += term;
        }
        self.1 += fx.abs() + fy.abs() + mz.abs() + (x * fy).abs() + (y * fx).abs();
    }

    fn add_on_member(&mut self, frame: &Frame, member: usize, at: f64, axis: Axis, force: f64) {
        let Member { i, j, .. } = frame.members[member];
        let (from, to, t) = (frame.nodes[i], frame.nodes[j], at / length(frame, member));
        let (x, y) = (from.x + t * (to.x - from.x), from.y + t * (to.y - from.y));
        let (fx, fy) = if axis == Axis::X { (force, 0.0) } else { (0.0, force) };
        self.add(x, y, fx, fy, 0.0);
    }
}

/// Cuts a member in two at `t` of its length.
fn split(frame: &Frame, loads: &LoadCase, member: usize, t: f64) -> (Frame, LoadCase) {
    let (mut frame, mut cut) = (frame.clone(), LoadCase { nodal: loads.nodal.clone(), ..LoadCase::default() });
    let at = t * length(&frame, member);
    let whole = frame.members[member];
    let (from, to) = (frame.nodes[whole.i], frame.nodes[whole.j]);
    let middle = frame.add_node(from.x + t * (to.x - from.x), from.y + t * (to.y - from.y));
    frame.members[member] = Member { j: middle, release_j: false, ..whole };
    let second = frame.add_member(Member { i: middle, release_i: false, ..whole });
    for load in &loads.distributed {
        if load.member != member {
            cut.distributed.push(*load);
            continue;
        }
        let value = |x: f64| load.w1 + (load.w2 - load.w1) * (x - load.a) / (load.b - load.a);
        if load.a < at {
            let b = load.b.min(at);
            cut.distributed.push(DistributedLoad { b, w2: value(b), ..*load });
        }
        if load.b > at {
            let a = load.a.max(at);
            cut.distributed.push(DistributedLoad { member: second, w1: value(a), a: a - at, b: load.b - at, ..*load });
        }
    }
    for load in &loads.point {
        let beyond = load.member == member && load.a > at;
        cut.point.push(if beyond { PointLoad { member: second, a: load.a - at, ..*load } } else { *load });
    }
    (frame, cut)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn loads_and_reactions_balance(frame in any_frame(), seed in any_loads()) {
        let loads = loads_on(&frame, &seed);
        let solution = solve(&frame, &loads);
        let mut balance = Balance::default();
        for load in &loads.nodal {
            let node = frame.nodes[load.node];
            balance.add(node.x, node.y, load.fx, load.fy, load.mz);
        }
        for load in &loads.distributed {
            let (force, moment) = resultant(load.w1, load.w2, load.b - load.a);
            // Two forces, at its start and 1 m on, with the same resultant and moment.
            balance.add_on_member(&frame, load.member, load.a, load.axis, force - moment);
            balance.add_on_member(&frame, load.member, load.a + 1.0, load.axis, moment);
        }
        for load in &loads.point {
            balance.add_on_member(&frame, load.member, load.a, load.axis, load.p);
        }
        for (node, at) in frame.nodes.iter().enumerate() {
            let reaction = solution.reaction(node);
            balance.add(at.x, at.y, reaction.fx, reaction.fy, reaction.mz);
        }
        for sum in balance.0 {
            prop_assert!(sum.abs() <= TOLERANCE * balance.1, "{sum} of {}", balance.1);
        }
    }

    /// Betti: the forces of one case do the same work on the movements of the other as the other way round.
    #[test]
    fn work_is_reciprocal(frame in any_frame(), a in any_loads(), b in any_loads()) {
        let nodal = |seed: &LoadSeed| LoadCase { nodal: loads_on(&frame, seed).nodal, ..LoadCase::default() };
        let (a, b) = (nodal(&a), nodal(&b));
        let work = |loads: &LoadCase, solution: &Solution| {
            loads.nodal.iter().map(|load| {
                let moved = solution.displacement(load.node);
                [load.fx * moved.ux, load.fy * moved.uy, load.mz * moved.rz]
            }).fold((0.0, 0.0), |(sum, sizes), terms| {
                (sum + terms.iter().sum::<f64>(), sizes + terms.iter().map(|term| term.abs()).sum::<f64>())
            })
        };
        let (there, back) = (work(&a, &solve(&frame, &b)), work(&b, &solve(&frame, &a)));
        let allowed = TOLERANCE * (there.1 + back.1);
        prop_assert!((there.0 - back.0).abs() <= allowed, "{} {} ± {allowed}", there.0, back.0);
    }

    #[test]
    fn load_cases_add_up(frame in any_frame(), a in any_loads(), b in any_loads(), factor in -2.0..2.0) {
        let (a, mut b) = (loads_on(&frame, &a), loads_on(&frame, &b));
        let solutions = [&a, &b].map(|loads| solve(&frame, loads));
        let apart = solutions.each_ref().map(|solution| values(&frame, solution));
        for load in &mut b.nodal {
            (load.fx, load.fy, load.mz) = (factor * load.fx, factor * load.fy, factor * load.mz);
        }
        b.distributed.iter_mut().for_each(|load| (load.w1, load.w2) = (factor * load.w1, factor * load.w2));
        b.point.iter_mut().for_each(|load| load.p *= factor);
        b.nodal.extend(a.nodal);
        b.distributed.extend(a.distributed);
        b.point.extend(a.point);
        let together = values(&frame, &solve(&frame, &b));
        let [a, b] = apart;
        let sum = std::array::from_fn(|kind| a[kind].iter().zip(&b[kind]).map(|(a, b)| a + factor * b).collect());
        assert_same(&together, &sum, TOLERANCE)?;
        let added = Solution::sum(&[(1.0, &solutions[0]), (factor, &solutions[1])]).expect("two of them");
        assert_same(&together, &values(&frame, &added), TOLERANCE)?;
    }

    #[test]
    fn a_joint_more_changes_nothing(frame in any_frame(), seed in any_loads(), member in 0..14usize, t in 0.1..0.9) {
        let loads = loads_on(&frame, &seed);
        let member = member % frame.members.len();
        prop_assume!(frame.members[member].ei > 0.0);
        let (cut, cut_loads) = split(&frame, &loads, member, t);
        let (whole, parts) = (solve(&frame, &loads), solve(&cut, &cut_loads));
        let (mut left, mut right) = (values(&frame, &whole), values(&frame, &parts));
        // The places on the cut member are others: compare them apart.
        let l = length(&frame, member);
        for kind in 0..4 {
            let per_member = [1, 0, 2, 1][kind] * 5;
            let start = left[kind].len() - per_member * (frame.members.len() - member);
            for values in [&mut left, &mut right] {
                values[kind].drain(start..start + per_member);
            }
        }
        for place in [0.02, 0.33, 0.58, 0.97] {
            let x = place * l;
            let (part, part_x) = if place < t { (member, x) } else { (cut.members.len() - 1, x - t * l) };
            for (solution, values, member, x) in [(&whole, &mut left, member, x), (&parts, &mut right, part, part_x)] {
                values[0].push(solution.deflection_at(member, x));
                values[2].extend([solution.axial_at(member, x), solution.shear_at(member, x)]);
                values[3].push(solution.moment_at(member, x));
            }
        }
        assert_same(&left, &right, TOLERANCE)?;
    }

    #[test]
    fn numbers_of_nodes_and_members_do_not_matter(frame in any_frame(), seed in any_loads(), shift in 1..8usize) {
        let loads = loads_on(&frame, &seed);
        let (nodes, members) = (frame.nodes.len(), frame.members.len());
        // Where each comes to be.
        let node = |old: usize| nodes - 1 - (old + shift) % nodes;
        let member = |old: usize| members - 1 - (old + shift) % members;
        let mut other = frame.clone();
        for old in 0..nodes {
            other.nodes[node(old)] = frame.nodes[old];
        }
        for old in 0..members {
            let data = frame.members[old];
            other.members[member(old)] = Member { i: node(data.i), j: node(data.j), ..data };
        }
        other.supports.iter_mut().for_each(|support| support.node = node(support.node));
        other.springs.iter_mut().for_each(|spring| spring.node = node(spring.node));
        let mut other_loads = loads.clone();
        other_loads.nodal.iter_mut().for_each(|load| load.node = node(load.node));
        other_loads.distributed.iter_mut().for_each(|load| load.member = member(load.member));
        other_loads.point.iter_mut().for_each(|load| load.member = member(load.member));

        let (before, after) = (solve(&frame, &loads), solve(&other, &other_loads));
        let pairs = |shift: f64| move |(left, right): (f64, f64)| (left - right).abs() <= TOLERANCE * shift;
        let left = values(&frame, &before);
        let greatest = scales(&left);
        for old in 0..nodes {
            let (a, b) = (before.displacement(old), after.displacement(node(old)));
            prop_assert!([(a.ux, b.ux), (a.uy, b.uy)].into_iter().all(pairs(greatest[0])), "{a:?} {b:?}");
            let (a, b) = (before.reaction(old), after.reaction(node(old)));
            prop_assert!([(a.fx, b.fx), (a.fy, b.fy)].into_iter().all(pairs(greatest[2])), "{a:?} {b:?}");
        }
        for old in 0..members {
            let (a, b) = (before.extremes(old), after.extremes(member(old)));
            prop_assert!([(a.moment_max.0, b.moment_max.0), (a.moment_min.0, b.moment_min.0)].into_iter().all(pairs(greatest[3])));
            prop_assert!(pairs(greatest[0])((a.deflection_from_chord.0, b.deflection_from_chord.0)));
        }
    }

    #[test]
    fn a_member_turned_end_for_end_is_the_same(frame in any_frame(), seed in any_loads()) {
        let mut loads = loads_on(&frame, &seed);
        let before = solve(&frame, &loads);
        let mut other = frame.clone();
        for data in &mut other.members {
            *data = Member { i: data.j, j: data.i, release_i: data.release_j, release_j: data.release_i, ..*data };
        }
        for load in &mut loads.distributed {
            let l = length(&frame, load.member);
            *load = DistributedLoad { w1: load.w2, w2: load.w1, a: l - load.b, b: l - load.a, ..*load };
        }
        loads.point.iter_mut().for_each(|load| load.a = length(&frame, load.member) - load.a);
        let after = solve(&other, &loads);
        let (left, mut right) = (values(&frame, &before), values(&frame, &after));
        // Deflection and moment turn their signs, the shear does not; the places run the other way.
        let sizes = [2, 1, 2, 1].map(|per_node| per_node * frame.nodes.len());
        for member in 0..frame.members.len() {
            let l = length(&frame, member);
            for (n, place) in [0.07, 0.31, 0.5, 0.77, 0.94].into_iter().enumerate() {
                let (at, x) = (5 * member + n, (1.0 - place) * l);
                right[0][sizes[0] + at] = -after.deflection_at(member, x);
                right[2][sizes[2] + 2 * at] = after.axial_at(member, x);
                right[2][sizes[2] + 2 * at + 1] = after.shear_at(member, x);
                right[3][sizes[3] + at] = -after.moment_at(member, x);
            }
        }
        assert_same(&left, &right, TOLERANCE)?;
    }

    /// Held only where all directions are held, a frame may be turned with its loads.
    #[test]
    fn a_frame_turned_with_its_loads_is_the_same(frame in any_frame(), seed in any_loads(), angle in -3.0..3.0_f64) {
        let mut frame = frame;
        frame.springs.retain(|spring| spring.dof == Dof::Rz);
        for support in &mut frame.supports {
            let both = support.ux && support.uy;
            (support.ux, support.uy) = (both, both);
        }
        let loads = loads_on(&frame, &seed);
        let (sine, cosine) = angle.sin_cos();
        let turn = |x: f64, y: f64| (cosine * x - sine * y, sine * x + cosine * y);
        let mut turned = frame.clone();
        for node in &mut turned.nodes {
            (node.x, node.y) = turn(node.x, node.y);
        }
        let mut turned_loads = LoadCase::default();
        for load in &loads.nodal {
            let (fx, fy) = turn(load.fx, load.fy);
            turned_loads.nodal.push(NodalLoad { fx, fy, ..*load });
        }
        let parts = |axis| if axis == Axis::X { turn(1.0, 0.0) } else { turn(0.0, 1.0) };
        for load in &loads.distributed {
            let (x, y) = parts(load.axis);
            for (axis, part) in [(Axis::X, x), (Axis::Y, y)] {
                turned_loads.distributed.push(DistributedLoad { axis, w1: part * load.w1, w2: part * load.w2, ..*load });
            }
        }
        for load in &loads.point {
            let (x, y) = parts(load.axis);
            for (axis, part) in [(Axis::X, x), (Axis::Y, y)] {
                turned_loads.point.push(PointLoad { axis, p: part * load.p, ..*load });
            }
        }
        let (before, after) = (solve(&frame, &loads), solve(&turned, &turned_loads));
        let mut left = values(&frame, &before);
        let right = values(&turned, &after);
        for node in 0..frame.nodes.len() {
            let (u, r) = (before.displacement(node), before.reaction(node));
            let ((ux, uy), (fx, fy)) = (turn(u.ux, u.uy), turn(r.fx, r.fy));
            left[0][2 * node..2 * node + 2].copy_from_slice(&[ux, uy]);
            left[2][2 * node..2 * node + 2].copy_from_slice(&[fx, fy]);
        }
        assert_same(&left, &right, TOLERANCE)?;
    }

    /// The diagrams belong together: V = dM/dx, members meet their nodes, and nothing is beyond the extremes.
    #[test]
    fn diagrams_belong_together(frame in any_frame(), seed in any_loads()) {
        let loads = loads_on(&frame, &seed);
        let solution = solve(&frame, &loads);
        let [shift, _, force, moment] = scales(&values(&frame, &solution));
        for (member, data) in frame.members.iter().enumerate() {
            let l = length(&frame, member);
            let (from, to) = (frame.nodes[data.i], frame.nodes[data.j]);
            let (cosine, sine) = ((to.x - from.x) / l, (to.y - from.y) / l);
            for (node, x) in [(data.i, 0.0), (data.j, l)] {
                let moved = solution.displacement(node);
                let across = cosine * moved.uy - sine * moved.ux;
                prop_assert!((solution.deflection_at(member, x) - across).abs() <= TOLERANCE * shift);
            }
            for (hinged, x) in [(data.release_i, 0.0), (data.release_j, l)] {
                prop_assert!(!hinged || solution.moment_at(member, x).abs() <= TOLERANCE * moment);
            }
            // Simpson's rule is exact for the shear under a linear load.
            for ends in solution.moment_breaks(member).windows(2) {
                let (a, b) = (ends[0], ends[1] - 1e-12 * l);
                let middle = solution.shear_at(member, 0.5 * (a + b));
                let mean = (solution.shear_at(member, a) + 4.0 * middle + solution.shear_at(member, b)) / 6.0;
                let change = solution.moment_at(member, b) - solution.moment_at(member, a);
                prop_assert!((change - mean * (b - a)).abs() <= TOLERANCE * (moment + force * l));
            }
            let e = solution.extremes(member);
            prop_assert_eq!(solution.force_extremes(member), e.forces());
            let ends = [0.0, l].map(|x| solution.deflection_at(member, x));
            let (forces, off_chord) = solution.extremes_from_line(member, (ends[0], (ends[1] - ends[0]) / l));
            prop_assert_eq!(forces, e.forces());
            prop_assert!((off_chord.0 - e.deflection_from_chord.0).abs() <= TOLERANCE * shift);
            for sample in 0..=60 {
                let x = l * f64::from(sample) / 60.0;
                let (m, v) = (solution.moment_at(member, x), solution.shear_at(member, x));
                let d = solution.deflection_at(member, x);
                prop_assert!(m <= e.moment_max.0 + TOLERANCE * moment && m >= e.moment_min.0 - TOLERANCE * moment);
                prop_assert!(v <= e.shear_max.0 + TOLERANCE * force && v >= e.shear_min.0 - TOLERANCE * force);
                prop_assert!(d <= e.deflection_max.0 + TOLERANCE * shift && d >= e.deflection_min.0 - TOLERANCE * shift);
                let chord = solution.deflection_at(member, 0.0) * (1.0 - x / l) + solution.deflection_at(member, l) * x / l;
                prop_assert!((d - chord).abs() <= e.deflection_from_chord.0 + TOLERANCE * shift);
            }
            for (value, x) in [e.moment_max, e.moment_min] {
                prop_assert!((solution.moment_at(member, x) - value).abs() <= TOLERANCE * moment);
            }
            for (value, x) in [e.deflection_max, e.deflection_min] {
                prop_assert!((solution.deflection_at(member, x) - value).abs() <= TOLERANCE * shift);
            }
        }
    }
}

/// Values of the nodes, and of members other than one.
fn values_but(frame: &Frame, solution: &Solution, but: &[usize]) -> [Vec<f64>; 4] {
    let mut kinds: [Vec<f64>; 4] = Default::default();
    for node in 0..frame.nodes.len() {
        let (moved, reaction) = (solution.displacement(node), solution.reaction(node));
        kinds[0].extend([moved.ux, moved.uy]);
        kinds[2].extend([reaction.fx, reaction.fy]);
        kinds[3].push(reaction.mz);
    }
    for member in (0..frame.members.len()).filter(|member| !but.contains(member)) {
        for place in [0.1, 0.6] {
            let x = place * length(frame, member);
            kinds[0].push(solution.deflection_at(member, x));
            kinds[2].extend([solution.axial_at(member, x), solution.shear_at(member, x)]);
            kinds[3].push(solution.moment_at(member, x));
        }
    }
    kinds
}

/// How far a node moves, in m or rad, under 1 kN or 1 kNm.
fn moved_by_one(frame: &Frame, node: usize, dof: Dof) -> f64 {
    let [fx, fy, mz] = [Dof::Ux, Dof::Uy, Dof::Rz].map(|of| f64::from(of == dof));
    let loads = LoadCase { nodal: vec![NodalLoad { node, fx, fy, mz }], ..LoadCase::default() };
    let moved = solve(frame, &loads).displacement(node);
    [moved.ux, moved.uy, moved.rz][dof as usize]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, failure_persistence: None, ..ProptestConfig::default() })]

    /// Taking members and supports out on the factorisation of the whole is the same as building the frame without them.
    #[test]
    fn removing_is_rebuilding(frame in any_frame(), seed in any_loads(), out in prop::collection::vec(0..14usize, 1..4), support in any::<bool>()) {
        let loads = loads_on(&frame, &seed);
        let count = frame.members.len();
        let mut members: Vec<usize> = out.iter().map(|member| member % count).collect();
        members.sort_unstable();
        members.dedup();
        let (mut rest, mut rest_loads) = (frame.clone(), loads.clone());
        members.iter().rev().for_each(|&member| _ = rest.members.remove(member));
        let kept: Vec<usize> = (0..count).filter(|member| !members.contains(member)).collect();
        let renumbered = |member: usize| kept.iter().position(|&kept| kept == member);
        rest_loads.distributed.retain_mut(|load| renumbered(load.member).map(|member| load.member = member).is_some());
        rest_loads.point.retain_mut(|load| renumbered(load.member).map(|member| load.member = member).is_some());
        let mut removal = Removal { members: members.clone(), supports: Vec::new() };
        if support && let Some(held) = frame.supports.get(1).filter(|held| held.uy && held.node != 0) {
            let node = held.node;
            removal.supports.push((node, Dof::Uy));
            rest.supports.iter_mut().filter(|held| held.node == node).for_each(|held| held.uy = false);
            rest.springs.retain(|spring| spring.node != node || spring.dof != Dof::Uy);
        }
        let factorised = frame.factorise().expect("nothing is loose");
        let direct = rest.factorise().and_then(|rest| rest.solve(&rest_loads));
        let reused = factorised.without(&removal).and_then(|without| without.solve(&loads));
        let mut what_if = WhatIf::new(&factorised);
        _ = what_if.without(&Removal { supports: removal.supports.clone(), ..Removal::default() });
        let once_more = what_if.without(&removal).and_then(|without| without.solve(&loads));
        match (&reused, once_more) {
            (Ok(once), Ok(again)) => prop_assert_eq!(values(&frame, once), values(&frame, &again)),
            (once, again) => prop_assert_eq!(once.is_err(), again.is_err()),
        }
        match (direct, reused) {
            (Ok(direct), Ok(reused)) => {
                let direct = values_but(&rest, &direct, &[]);
                // Removal leaves figures in proportion to how much softer the rest is than the whole, and to the whole's.
                let [rest, whole] = [&direct, &values_but(&frame, &solve(&frame, &loads), &[])].map(scales);
                let softer = (rest[0] / whole[0].max(1e-30)).max(1.0);
                let by = std::array::from_fn(|kind| (softer * rest[kind]).max(whole[kind]));
                assert_same_by(by, &direct, &values_but(&frame, &reused, &members), TOLERANCE)?;
            }
            (Err(_), Err(_)) => {}
            // A node that loses its last member bears no load: rebuilt it is loose, taken out it only has nothing to do.
            (direct, reused) => {
                let lonely = (0..frame.nodes.len()).any(|node| rest.members.iter().all(|member| member.i != node && member.j != node));
                // What moves a kilometre under 1 kN may be called loose or not.
                let soft = match (&direct, &reused) {
                    (Ok(_), Err(FrameError::Mechanism { node, dof, .. })) => moved_by_one(&rest, *node, *dof).abs() > 1e3,
                    _ => false,
                };
                prop_assert!(lonely || soft, "rebuilt {:?}, taken out {:?}", direct.err(), reused.err());
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, failure_persistence: None, ..ProptestConfig::default() })]

    /// With loads on nodes only the axial forces are constant, and the stability functions are exact.
    #[test]
    fn a_joint_more_changes_no_critical_load(frame in any_frame(), seed in any_loads(), member in 0..14usize, t in 0.1..0.9) {
        let loads = LoadCase { nodal: loads_on(&frame, &seed).nodal, ..LoadCase::default() };
        let member = member % frame.members.len();
        prop_assume!(frame.members[member].ei > 0.0);
        let (cut, _) = split(&frame, &loads, member, t);
        let same = |a: f64, b: f64| a == b || (a - b).abs() <= 1e-7 * a;
        let factor = frame.lowest_critical_factor(&loads).expect("sound");
        let with_shape = frame.lowest_buckling_factor(&loads).expect("sound").factor;
        prop_assert!(same(factor, with_shape), "{factor} {with_shape}");
        let (whole, parts) = (frame.buckling_modes(&loads, 2), cut.buckling_modes(&loads, 2));
        for (whole, parts) in whole.expect("sound").into_iter().zip(parts.expect("sound")) {
            let (whole, parts) = (whole.factor, parts.factor);
            let same = whole == parts || (whole - parts).abs() <= 1e-6 * whole;
            prop_assert!(same, "{whole} {parts}");
        }
    }

    #[test]
    fn a_joint_more_changes_no_second_order_answer(frame in any_frame(), seed in any_loads(), member in 0..14usize, t in 0.1..0.9) {
        let mut loads = LoadCase { nodal: loads_on(&frame, &seed).nodal, ..LoadCase::default() };
        let member = member % frame.members.len();
        prop_assume!(frame.members[member].ei > 0.0);
        // A fifth of the critical loads, but less where the frame would move far.
        let moved = scales(&values(&frame, &solve(&frame, &loads)))[0];
        prop_assume!(moved > 0.0);
        let factor = frame.lowest_buckling_factor(&loads).expect("sound").factor.min(0.05 / moved);
        for load in &mut loads.nodal {
            (load.fx, load.fy, load.mz) = (0.2 * factor * load.fx, 0.2 * factor * load.fy, 0.2 * factor * load.mz);
        }
        let (cut, _) = split(&frame, &loads, member, t);
        let (whole, parts) = (frame.solve_second_order(&loads), cut.solve_second_order(&loads));
        let (whole, parts) = (whole.expect("far from buckling"), parts.expect("far from buckling"));
        let nodes = |solution: &Solution| values_at_nodes(&frame, solution);
        assert_same(&nodes(&whole), &nodes(&parts), 1e-6)?;
    }

    /// Under loads too small to matter to it, second order is first order.
    #[test]
    fn small_loads_make_no_second_order(frame in any_frame(), seed in any_loads()) {
        let mut loads = loads_on(&frame, &seed);
        let small = 1e-9;
        loads.nodal.iter_mut().for_each(|load| (load.fx, load.fy, load.mz) = (small * load.fx, small * load.fy, small * load.mz));
        loads.distributed.iter_mut().for_each(|load| (load.w1, load.w2) = (small * load.w1, small * load.w2));
        loads.point.iter_mut().for_each(|load| load.p *= small);
        let second = frame.solve_second_order(&loads).expect("far from buckling");
        assert_same(&values(&frame, &solve(&frame, &loads)), &values(&frame, &second), 1e-6)?;
    }
}
