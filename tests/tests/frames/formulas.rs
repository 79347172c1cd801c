//! The frame solver against formulas of beam and column theory.
//!
//! Closed forms are those found in every handbook of beams, such as W. C. Young, R. G. Budynas, *Roark's Formulas for
//! Stress and Strain*, 7th ed. 2002, table 8.1, and for columns S. P. Timoshenko, J. M. Gere, *Theory of Elastic
//! Stability*, 2nd ed. 1961, chapters 1 and 2. Continuous beams are computed beside them by Clapeyron's three-moment
//! equation. Numbers with four figures are rounded values of the same formulas.

use falsewright_core::analysis::{
    Axis, DistributedLoad, Dof, Frame, LoadCase, Member, NodalLoad, PointLoad, Solution, Spring, Support,
};
use falsewright_tests::assert_close;
use std::f64::consts::PI;

const EI: f64 = 450.0;
const EA: f64 = 1e5;
/// Of a closed form.
const EXACT: f64 = 1e-9;
/// Of a value given with four figures.
const ROUNDED: f64 = 6e-4;

fn support(node: usize, [ux, uy, rz]: [bool; 3]) -> Support {
    Support { node, ux, uy, rz }
}

const PIN: [bool; 3] = [true, true, false];
const ROLLER: [bool; 3] = [false, true, false];
const FIXED: [bool; 3] = [true, true, true];

/// A level beam of these lengths, no support yet.
fn beam(lengths: &[f64], ei: f64) -> Frame {
    let mut frame = Frame::default();
    let (mut x, mut i) = (0.0, frame.add_node(0.0, 0.0));
    for length in lengths {
        x += length;
        let j = frame.add_node(x, 0.0);
        frame.add_member(Member::beam(i, j, ei, EA));
        i = j;
    }
    frame
}

fn on_supports(lengths: &[f64], supports: &[(usize, [bool; 3])]) -> Frame {
    let mut frame = beam(lengths, EI);
    frame.supports = supports.iter().map(|&(node, held)| support(node, held)).collect();
    frame
}

/// Supports at every node.
fn continuous(spans: &[f64]) -> Frame {
    let held = |node| (node, if node == 0 { PIN } else { ROLLER });
    on_supports(spans, &(0..=spans.len()).map(held).collect::<Vec<_>>())
}

/// A downward load over the whole of each member.
fn uniform(frame: &Frame, w: f64) -> LoadCase {
    (0..frame.members.len())
        .map(|member| (member, w, w))
        .fold(LoadCase::default(), |loads, (member, w1, w2)| with_line(loads, frame, member, w1, w2))
}

fn length(frame: &Frame, member: usize) -> f64 {
    let Member { i, j, .. } = frame.members[member];
    (frame.nodes[j].x - frame.nodes[i].x).hypot(frame.nodes[j].y - frame.nodes[i].y)
}

fn with_line(mut loads: LoadCase, frame: &Frame, member: usize, w1: f64, w2: f64) -> LoadCase {
    let b = length(frame, member);
    loads.distributed.push(DistributedLoad { member, axis: Axis::Y, w1: -w1, w2: -w2, a: 0.0, b });
    loads
}

fn solve(frame: &Frame, loads: &LoadCase) -> Solution {
    frame.factorise().expect("a sound frame").solve(loads).expect("sound loads")
}

fn reactions(frame: &Frame, solution: &Solution) -> Vec<f64> {
    (0..frame.nodes.len()).map(|node| solution.reaction(node).fy).collect()
}

/// Support moments of a continuous beam under a uniform load on each span, by the three-moment equation.
fn three_moments(spans: &[f64], loads: &[f64]) -> Vec<f64> {
    let unknowns = spans.len() - 1;
    let (mut diagonal, mut right): (Vec<f64>, Vec<f64>) = (0..unknowns)
        .map(|i| {
            let (l, r) = (spans[i], spans[i + 1]);
            (2.0 * (l + r), -(loads[i] * l.powi(3) + loads[i + 1] * r.powi(3)) / 4.0)
        })
        .unzip();
    for i in 1..unknowns {
        let factor = spans[i] / diagonal[i - 1];
        diagonal[i] -= factor * spans[i];
        right[i] -= factor * right[i - 1];
    }
    let mut moments = vec![0.0; unknowns + 2];
    for i in (0..unknowns).rev() {
        moments[i + 1] = (right[i] - spans[i + 1] * moments[i + 2]) / diagonal[i];
    }
    moments
}

#[test]
fn equal_spans_under_a_uniform_load() {
    // Support moments / wL², reactions / wL, span moments / wL², deflection of the first span / (wL⁴/EI) and its place
    // / L; half of each symmetric row. Three-moment equation, five decimals.
    type Row = (usize, &'static [f64], &'static [f64], &'static [f64], f64, f64);
    let table: [Row; 5] = [
        (1, &[], &[0.5], &[0.125], 0.01302, 0.5),
        (2, &[-0.125], &[0.375, 1.25], &[0.07031], 0.00542, 0.4215),
        (3, &[-0.1], &[0.4, 1.1], &[0.08, 0.025], 0.00688, 0.4460),
        (4, &[-0.10714, -0.07143], &[0.39286, 1.14286, 0.92857], &[0.07717, 0.03635], 0.00646, 0.4397),
        (5, &[-0.10526, -0.07895], &[0.39474, 1.13158, 0.97368], &[0.07791, 0.03324, 0.04605], 0.00657, 0.4414),
    ];
    let (w, l) = (36.0, 1.2);
    let near = |what: &str, actual: f64, expected: f64, decimals: f64| {
        assert!((actual - expected).abs() <= 0.5 * decimals, "{what}: got {actual}, expected {expected}");
    };
    for (spans, at_supports, forces, in_spans, deflection, place) in table {
        let frame = continuous(&vec![l; spans]);
        let solution = solve(&frame, &uniform(&frame, w));
        for (i, &moment) in at_supports.iter().enumerate() {
            near(&format!("{spans} spans, M {i}"), solution.moment_at(i, l) / (w * l * l), moment, 1.001e-5);
        }
        for (i, &force) in forces.iter().enumerate() {
            near(&format!("{spans} spans, R {i}"), solution.reaction(i).fy / (w * l), force, 1.001e-5);
        }
        for (i, &moment) in in_spans.iter().enumerate() {
            let most = solution.extremes(i).moment_max.0;
            near(&format!("{spans} spans, span {i}"), most / (w * l * l), moment, 1.001e-5);
        }
        let (least, x) = solution.extremes(0).deflection_min;
        near(&format!("{spans} spans, deflection"), -least * EI / (w * l.powi(4)), deflection, 1.001e-5);
        near(&format!("{spans} spans, its place"), x / l, place, 1.001e-4);
    }
}

#[test]
fn unequal_spans_against_the_three_moment_equation() {
    let (spans, w) = ([1.2, 0.9, 2.1, 1.5, 0.6], [12.0, 40.0, 0.0, 25.0, 33.0]);
    let frame = continuous(&spans);
    let loads = (0..spans.len()).fold(LoadCase::default(), |loads, i| with_line(loads, &frame, i, w[i], w[i]));
    let solution = solve(&frame, &loads);
    let moments = three_moments(&spans, &w);
    for i in 1..spans.len() {
        assert_close("moment at a support", solution.moment_at(i, 0.0), moments[i], EXACT);
        assert_close(
            "shear beside it",
            solution.shear_at(i, 0.0),
            w[i] * spans[i] / 2.0 + (moments[i + 1] - moments[i]) / spans[i],
            EXACT,
        );
    }
}

#[test]
fn two_unequal_spans() {
    // Moment at the middle support −(w·L1³ + w·L2³) / 8(L1 + L2).
    for (spans, w, middle, forces, in_spans) in [
        ([2.0, 3.0], 10.0, -8.750, [5.625, 32.29, 12.08], [1.582, 7.300]),
        ([1.2, 1.8], 36.0, -11.34, [12.15, 69.75, 26.10], [2.050, 9.461]),
    ] {
        let frame = continuous(&spans);
        let solution = solve(&frame, &uniform(&frame, w));
        assert_close("middle support", solution.moment_at(0, spans[0]), middle, ROUNDED);
        for (force, expected) in reactions(&frame, &solution).iter().zip(forces) {
            assert_close("reaction", *force, expected, ROUNDED);
        }
        for (member, expected) in in_spans.into_iter().enumerate() {
            assert_close("span moment", solution.extremes(member).moment_max.0, expected, ROUNDED);
        }
    }
}

#[test]
fn simple_span_under_triangles_and_trapezoid() {
    let (w, l) = (20.0_f64, 3.0_f64);
    let frame = continuous(&[l]);

    let rising = solve(&frame, &with_line(LoadCase::default(), &frame, 0, 0.0, w));
    let extremes = rising.extremes(0);
    assert_close("rising: left", rising.reaction(0).fy, w * l / 6.0, EXACT);
    assert_close("rising: right", rising.reaction(1).fy, w * l / 3.0, EXACT);
    assert_close("rising: moment", extremes.moment_max.0, w * l * l / (9.0 * 3.0_f64.sqrt()), EXACT);
    assert_close("rising: its place", extremes.moment_max.1, l / 3.0_f64.sqrt(), EXACT);
    assert_close("rising: deflection", -extremes.deflection_min.0, 0.006522 * w * l.powi(4) / EI, ROUNDED);
    assert_close("rising: its place", extremes.deflection_min.1, l * (1.0 - (8.0_f64 / 15.0).sqrt()).sqrt(), EXACT);

    // Ramps of length a at both ends; a = L/2 makes the symmetric triangle.
    for (a, rounded) in [(1.0, Some((20.0, 19.17, 17.51))), (0.5 * l, None)] {
        let mut loads = LoadCase::default();
        for (w1, w2, from, to) in [(0.0, w, 0.0, a), (w, w, a, l - a), (w, 0.0, l - a, l)] {
            let line = DistributedLoad { member: 0, axis: Axis::Y, w1: -w1, w2: -w2, a: from, b: to };
            loads.distributed.push(line);
        }
        let solution = solve(&frame, &loads);
        let extremes = solution.extremes(0);
        let expected = (
            w * (l - a) / 2.0,
            w * (3.0 * l * l - 4.0 * a * a) / 24.0,
            w * (5.0 * l * l - 4.0 * a * a).powi(2) / 1920.0,
        );
        let found = (solution.reaction(0).fy, extremes.moment_max.0, -extremes.deflection_min.0 * EI);
        assert_close("trapezoid: reaction", found.0, expected.0, EXACT);
        assert_close("trapezoid: moment", found.1, expected.1, EXACT);
        assert_close("trapezoid: deflection", found.2, expected.2, EXACT);
        if let Some(rounded) = rounded {
            assert_close("trapezoid: reaction", found.0, rounded.0, ROUNDED);
            assert_close("trapezoid: moment", found.1, rounded.1, ROUNDED);
            assert_close("trapezoid: deflection", found.2, rounded.2, ROUNDED);
        }
    }
}

#[test]
fn cantilevers() {
    let (w, l) = (7.0, 1.6_f64);
    let frame = on_supports(&[l], &[(0, FIXED)]);
    for (w1, w2, moment, deflection) in [
        (w, w, w * l * l / 2.0, w * l.powi(4) / 8.0),
        (w, 0.0, w * l * l / 6.0, w * l.powi(4) / 30.0),
        (0.0, w, w * l * l / 3.0, 11.0 * w * l.powi(4) / 120.0),
    ] {
        let solution = solve(&frame, &with_line(LoadCase::default(), &frame, 0, w1, w2));
        assert_close("moment", solution.moment_at(0, 0.0), -moment, EXACT);
        assert_close("reaction", solution.reaction(0).mz, moment, EXACT);
        assert_close("tip", solution.displacement(1).uy, -deflection / EI, EXACT);
    }
    let even = solve(&frame, &uniform(&frame, w));
    assert_close("rotation", even.displacement(1).rz, -w * l.powi(3) / (6.0 * EI), EXACT);
}

#[test]
fn overhangs() {
    let (w, l, a) = (30.0, 1.5, 0.5);
    let both = on_supports(&[a, l, a], &[(1, PIN), (2, ROLLER)]);
    let solution = solve(&both, &uniform(&both, w));
    assert_close("support", solution.extremes(1).moment_min.0, -3.750, EXACT);
    assert_close("span", solution.extremes(1).moment_max.0, w * (l * l / 8.0 - a * a / 2.0), EXACT);
    assert_close("reaction", solution.reaction(1).fy, 37.50, EXACT);

    let one = on_supports(&[l, a], &[(0, PIN), (1, ROLLER)]);
    let solution = solve(&one, &uniform(&one, w));
    assert_close("left", solution.reaction(0).fy, 20.0, EXACT);
    assert_close("right", solution.reaction(1).fy, 40.0, EXACT);
    assert_close("span", solution.extremes(0).moment_max.0, 6.667, ROUNDED);

    // Overhangs of 0.3536·L make the moments equal.
    let equal = on_supports(&[l / 8.0_f64.sqrt(), l, l / 8.0_f64.sqrt()], &[(1, PIN), (2, ROLLER)]);
    let extremes = solve(&equal, &uniform(&equal, w)).extremes(1);
    assert_close("equal moments", extremes.moment_max.0, -extremes.moment_min.0, EXACT);
}

#[test]
fn propped_and_fixed_ends() {
    let (w, l) = (14.0, 2.4_f64);
    let propped = on_supports(&[l], &[(0, FIXED), (1, ROLLER)]);
    let solution = solve(&propped, &uniform(&propped, w));
    let extremes = solution.extremes(0);
    assert_close("wall", solution.reaction(0).fy, 5.0 * w * l / 8.0, EXACT);
    assert_close("prop", solution.reaction(1).fy, 3.0 * w * l / 8.0, EXACT);
    assert_close("wall moment", extremes.moment_min.0, -w * l * l / 8.0, EXACT);
    assert_close("span moment", extremes.moment_max.0, 9.0 * w * l * l / 128.0, EXACT);
    assert_close("deflection", -extremes.deflection_min.0, 0.005416 * w * l.powi(4) / EI, ROUNDED);
    assert_close("its place", l - extremes.deflection_min.1, 0.4215 * l, ROUNDED);

    let fixed = on_supports(&[l], &[(0, FIXED), (1, FIXED)]);
    let extremes = solve(&fixed, &uniform(&fixed, w)).extremes(0);
    assert_close("end moment", extremes.moment_min.0, -w * l * l / 12.0, EXACT);
    assert_close("span moment", extremes.moment_max.0, w * l * l / 24.0, EXACT);
    assert_close("deflection", -extremes.deflection_min.0, w * l.powi(4) / (384.0 * EI), EXACT);
}

#[test]
fn upright_beam_under_a_wall_pressure() {
    // Cantilever 0.4, spans 1.2 and 1.2, top 1.2 m; min(50, 25·depth) per m. Three-moment equation by hand.
    let (ei, levels) = (900.0, [0.0, 0.4, 1.6, 2.8, 4.0]);
    let mut frame = Frame::default();
    for level in levels {
        frame.add_node(0.0, level);
    }
    let pressure = |level: f64| (25.0 * (4.0 - level)).min(50.0);
    let mut loads = LoadCase::default();
    for (member, ends) in levels.windows(2).enumerate() {
        frame.add_member(Member::beam(member, member + 1, ei, EA));
        let kink = 2.0_f64.clamp(ends[0], ends[1]);
        for (from, to) in [(ends[0], kink), (kink, ends[1])] {
            let (w1, w2) = (pressure(from), pressure(to));
            let line = DistributedLoad { member, axis: Axis::X, w1, w2, a: from - ends[0], b: to - ends[0] };
            loads.distributed.push(line);
        }
    }
    frame.supports =
        vec![support(1, [true, true, false]), support(2, [true, false, false]), support(3, [true, false, false])];
    let solution = solve(&frame, &loads);
    for (node, force) in [(1, 48.55), (2, 58.45), (3, 43.00)] {
        assert_close("tie", -solution.reaction(node).fx, force, ROUNDED);
    }
    // Pressure to the right stretches the right side, which is −y of an upward member, between the ties.
    for (member, moment) in [(0, -4.000), (1, -5.738), (2, -7.200)] {
        assert_close("moment at a tie", solution.moment_at(member, length(&frame, member)), moment, ROUNDED);
    }
    assert_close("lower span", solution.extremes(1).moment_max.0, 4.152, ROUNDED);
    assert_close("upper span", solution.extremes(2).moment_max.0, 1.566, ROUNDED);
    assert_close("top", solution.displacement(4).ux, 3.519e-3, ROUNDED);
}

#[test]
fn spans_on_springs() {
    let (w, l, k) = (20.0, 1.5_f64, 5000.0);
    let mut frame = beam(&[l, l], EI);
    frame.supports = vec![support(0, [true, false, false])];
    frame.springs = (0..3).map(|node| Spring { node, dof: Dof::Uy, k }).collect();
    let solution = solve(&frame, &uniform(&frame, w));
    let middle = (5.0 * w * l.powi(4) / (24.0 * EI) + w * l / k) / (l.powi(3) / (6.0 * EI) + 1.5 / k);
    assert_close("middle", solution.spring_force(1), middle, EXACT);
    assert_close("middle", solution.reaction(1).fy, 34.11, ROUNDED);
    assert_close("end", solution.reaction(0).fy, 12.94, ROUNDED);
    assert_close("moment", solution.moment_at(0, l), -3.085, ROUNDED);
    assert_close("settlement", -solution.displacement(0).uy, 2.589e-3, ROUNDED);
    assert_close("settlement", -solution.displacement(1).uy, 6.823e-3, ROUNDED);

    let mut frame = beam(&[1.2; 3], EI);
    frame.supports = vec![support(0, [true, false, false])];
    frame.springs = (0..4).map(|node| Spring { node, dof: Dof::Uy, k: 4000.0 }).collect();
    let solution = solve(&frame, &uniform(&frame, 25.0));
    assert_close("end", solution.reaction(0).fy, 13.42, ROUNDED);
    assert_close("inner", solution.reaction(1).fy, 31.58, ROUNDED);
    assert_close("moment", solution.moment_at(0, 1.2), -1.897, ROUNDED);
}

#[test]
fn long_beam_on_close_springs_nears_the_elastic_bed() {
    // Infinite beam: β = (k/4EI)^¼, y0 = Pβ/2k, M0 = P/4β (Hetényi, Beams on Elastic Foundation, 1946).
    let (p, bed, step, half) = (40.0, 10_000.0, 0.02, 250);
    let mut frame = beam(&vec![step; 2 * half], EI);
    frame.supports = vec![support(0, [true, false, false])];
    frame.springs = (0..=2 * half).map(|node| Spring { node, dof: Dof::Uy, k: bed * step }).collect();
    let load = NodalLoad { node: half, fy: -p, ..NodalLoad::default() };
    let solution = solve(&frame, &LoadCase { nodal: vec![load], ..LoadCase::default() });
    let beta: f64 = (bed / (4.0 * EI)).powf(0.25);
    assert_close("β", beta, 1.535, ROUNDED);
    // The ends, at βx = 7.7, and the gaps between springs each cost less than 1e-3.
    assert_close("settlement", -solution.displacement(half).uy, p * beta / (2.0 * bed), 1e-3);
    assert_close("moment", solution.moment_at(half, 0.0), p / (4.0 * beta), 1e-3);
    assert_close("settlement", -solution.displacement(half).uy, 3.071e-3, 1e-3);
}

#[test]
fn deflection_against_a_span_limit() {
    let frame = continuous(&[2.0]);
    let deflection = -solve(&frame, &uniform(&frame, 12.0)).extremes(0).deflection_min.0;
    assert_close("deflection", deflection, 5.556e-3, ROUNDED);
    assert_close("part of span/270", deflection / (2.0 / 270.0), 0.7500, ROUNDED);
}

/// An upright column of one member with a load of 1 kN on top.
fn column(l: f64, member: Member, supports: [[bool; 3]; 2]) -> (Frame, LoadCase) {
    let mut frame = Frame::default();
    frame.add_node(0.0, 0.0);
    frame.add_node(0.0, l);
    frame.add_member(member);
    frame.supports = vec![support(0, supports[0]), support(1, supports[1])];
    let load = NodalLoad { node: 1, fy: -1.0, ..NodalLoad::default() };
    (frame, LoadCase { nodal: vec![load], ..LoadCase::default() })
}

#[test]
fn columns_buckle_at_their_euler_loads() {
    let l = 2.7_f64;
    let euler = PI * PI * EI / (l * l);
    let rigid = Member::beam(0, 1, EI, EA);
    let guided = [true, false, false];
    let held = [true, false, true];
    for (name, member, supports, first, second) in [
        ("both ends fixed", rigid, [FIXED, held], 4.0, 8.18305),
        ("sway with fixed ends", rigid, [FIXED, [false, false, true]], 1.0, 4.0),
        ("hinged to fixed supports", Member { release_i: true, release_j: true, ..rigid }, [FIXED, held], 1.0, 4.0),
        ("hinged at its foot", Member { release_i: true, ..rigid }, [FIXED, held], 2.045_748, 6.046_8),
        ("hinged at its top", Member { release_j: true, ..rigid }, [FIXED, guided], 2.045_748, 6.046_8),
    ] {
        let (frame, loads) = column(l, member, supports);
        let modes = frame.buckling_modes(&loads, 2).expect("sound");
        assert_close(name, modes[0].factor, first * euler, 1e-5);
        assert_close(name, modes[1].factor, second * euler, 1e-5);
    }
}

#[test]
fn a_buckled_hinged_column_is_half_a_sine() {
    let l = 2.7;
    let (frame, loads) = column(l, Member::beam(0, 1, EI, EA), [PIN, [true, false, false]]);
    let shape = frame.lowest_buckling_factor(&loads).expect("sound").shape;
    let middle = shape.deflection_at(0, 0.5 * l);
    assert_close("greatest movement", middle.abs(), 1.0, 1e-6);
    for part in 1..10 {
        let x = l * f64::from(part) / 10.0;
        assert_close("shape", shape.deflection_at(0, x) / middle, (PI * x / l).sin(), 1e-6);
    }
}

#[test]
fn cantilever_buckles_under_its_own_weight() {
    // q·L³/EI = 7.837 (Timoshenko and Gere, section 2.12).
    let l = 2.7_f64;
    let (frame, _) = column(l, Member::beam(0, 1, EI, EA), [FIXED, [false; 3]]);
    let mode = frame.lowest_buckling_factor(&uniform(&frame, 1.0)).expect("sound");
    assert_close("weight", mode.factor, 7.837 * EI / l.powi(3), 1e-3);
}

#[test]
fn a_leaning_bar_buckles_the_column_that_holds_it() {
    // The bar pushes sideways with P·u/L, the cantilever resists with 3EI·u/L³.
    let l = 3.0_f64;
    let mut frame = Frame::default();
    for (x, y) in [(0.0, 0.0), (0.0, l), (2.0, l), (2.0, 0.0)] {
        frame.add_node(x, y);
    }
    frame.add_member(Member::beam(0, 1, EI, EA));
    frame.add_member(Member::bar(1, 2, EA));
    frame.add_member(Member::bar(3, 2, EA));
    frame.supports = vec![support(0, FIXED), support(3, PIN)];
    let load = NodalLoad { node: 2, fy: -1.0, ..NodalLoad::default() };
    let loads = LoadCase { nodal: vec![load], ..LoadCase::default() };
    let mode = frame.lowest_buckling_factor(&loads).expect("sound");
    assert_close("factor", mode.factor, 3.0 * EI / (l * l), 1e-3);

    // At half of it a sideways force moves the frame twice as far.
    let moved = |p: f64| {
        let load = NodalLoad { node: 2, fx: 1.0, fy: -p, mz: 0.0 };
        let loads = LoadCase { nodal: vec![load], ..LoadCase::default() };
        frame.solve_second_order(&loads).expect("below the critical load").displacement(1).ux
    };
    assert_close("amplified", moved(0.5 * mode.factor), 2.0 * moved(0.0), 1e-3);
}

#[test]
fn a_frame_in_tension_never_buckles() {
    let (frame, mut loads) = column(3.0, Member::beam(0, 1, EI, EA), [FIXED, [false; 3]]);
    loads.nodal[0].fy = 5.0;
    let modes = frame.buckling_modes(&loads, 2).expect("sound");
    assert!(modes.iter().all(|mode| mode.factor.is_infinite()));
    assert_eq!(modes[0].shape.deflection_at(0, 3.0), 0.0);
}

#[test]
fn beam_with_axial_force_and_uniform_load() {
    // Hinged beam-column (Timoshenko and Gere, sections 1.4 and 1.11), u = (L/2)·√(|N|/EI):
    // moment at the middle qEI/N·(1 − 1/cosh u) in tension and qEI/|N|·(1/cos u − 1) in compression.
    let (q, l) = (3.0, 4.0);
    let frame = on_supports(&[l], &[(0, PIN), (1, ROLLER)]);
    for n in [-200.0, -20.0, 20.0, 800.0, 20_000.0, 80_000.0_f64] {
        let mut loads = uniform(&frame, q);
        loads.nodal.push(NodalLoad { node: 1, fx: n, ..NodalLoad::default() });
        let solution = frame.solve_second_order(&loads).expect("below the critical load");
        let u = 0.5 * l * (n.abs() / EI).sqrt();
        let moment = if n > 0.0 { q * EI / n * (1.0 - 1.0 / u.cosh()) } else { q * EI / -n * (1.0 / u.cos() - 1.0) };
        let (most, place) = solution.extremes(0).moment_max;
        assert_close(&format!("moment with {n}"), most, moment, 1e-7);
        // In strong tension the moment is all but even.
        if u < 4.0 {
            assert_close("at the middle", place, 0.5 * l, 1e-6);
        }
        for x in [0.3, 1.7, 3.1] {
            let step = 1e-4;
            let slope = (solution.moment_at(0, x + step) - solution.moment_at(0, x - step)) / (2.0 * step);
            assert!((solution.shear_at(0, x) - slope).abs() < 1e-6 * q * l, "shear with {n} at {x}");
        }
        assert_close("from the chord", -solution.deflection_at(0, 0.5 * l), (q * l * l / 8.0 - moment) / n, 1e-6);
    }
}

#[test]
fn extremes_of_a_moment_that_turns_often() {
    // Close to its critical load, N·L²/EI = 39.5, a member with fixed ends bends in waves of its own.
    let (l, part) = (4.0, 0.97);
    let frame = on_supports(&[l], &[(0, FIXED), (1, [false, true, true])]);
    let mut loads = with_line(LoadCase::default(), &frame, 0, -30.0, 32.0);
    loads.nodal.push(NodalLoad { node: 1, fx: -part * 4.0 * PI * PI * EI / (l * l), ..NodalLoad::default() });
    let solution = frame.solve_second_order(&loads).expect("below the critical load");
    let extremes = solution.extremes(0);
    let samples = || (0..=2000).map(|sample| l * f64::from(sample) / 2000.0);
    for (found, value) in [
        (extremes.moment_max.0, samples().map(|x| solution.moment_at(0, x)).fold(f64::MIN, f64::max)),
        (extremes.moment_min.0, samples().map(|x| solution.moment_at(0, x)).fold(f64::MAX, f64::min)),
        (extremes.shear_max.0, samples().map(|x| solution.shear_at(0, x)).fold(f64::MIN, f64::max)),
        (extremes.shear_min.0, samples().map(|x| solution.shear_at(0, x)).fold(f64::MAX, f64::min)),
    ] {
        assert_close("extreme", found, value, 1e-5);
    }
}

#[test]
fn a_sway_portal_settles_on_its_axial_forces() {
    // At the end of a leg M = H·L + N·Δ, with the axial force that the solution tells.
    let l = 4.0;
    let mut frame = Frame::default();
    for (x, y) in [(0.0, 0.0), (0.0, l), (6.0, l), (6.0, 0.0)] {
        frame.add_node(x, y);
    }
    for (i, j) in [(0, 1), (1, 2), (3, 2)] {
        frame.add_member(Member::beam(i, j, EI, EA));
    }
    frame.supports = vec![support(0, PIN), support(3, PIN)];
    let nodal =
        [NodalLoad { node: 1, fx: 1.0, fy: -15.0, mz: 0.0 }, NodalLoad { node: 2, fx: 0.0, fy: -15.0, mz: 0.0 }];
    let loads = LoadCase { nodal: nodal.to_vec(), ..LoadCase::default() };
    let factor = frame.lowest_buckling_factor(&loads).expect("sound").factor;
    assert!(1.5 < factor && factor < 4.0, "a slender portal, {factor}");
    let solution = frame.solve_second_order(&loads).expect("below the critical load");
    for (leg, foot, head) in [(0, 0, 1), (2, 3, 2)] {
        // Local y of an upward member points to the left.
        let (push, sway) = (-solution.reaction(foot).fx, -solution.displacement(head).ux);
        let moment = push * l + solution.axial_at(leg, 0.0) * sway;
        assert_close("head of a leg", solution.moment_at(leg, l), moment, 1e-8);
    }
}

#[test]
fn column_under_its_own_weight_and_wind() {
    // A cantilever under its weight near buckling: the mesh of parts must have settled. Compared with the same column
    // cut by hand into 64 members.
    let (l, weight, wind) = (2.7_f64, 0.6 * 7.837 * EI / 2.7_f64.powi(3), 1.0);
    let top = |count: usize| {
        let mut frame = Frame::default();
        frame.add_node(0.0, 0.0);
        let mut loads = LoadCase::default();
        for member in 0..count {
            let b = l / count as f64;
            frame.add_node(0.0, b * (member + 1) as f64);
            frame.add_member(Member::beam(member, member + 1, EI, EA));
            for (axis, w) in [(Axis::Y, -weight), (Axis::X, wind)] {
                loads.distributed.push(DistributedLoad { member, axis, w1: w, w2: w, a: 0.0, b });
            }
        }
        frame.supports = vec![support(0, FIXED)];
        frame.solve_second_order(&loads).expect("below the critical load").displacement(count).ux
    };
    assert_close("top", top(1), top(64), 1e-3);
}

#[test]
fn a_point_load_at_any_place() {
    // Simple span: M = P·a·b/L, deflection under the load P·a²·b²/(3·EI·L).
    let (p, l) = (12.0, 3.0);
    let frame = continuous(&[l]);
    for a in [0.3, 1.1, 1.5, 2.9] {
        let point = PointLoad { member: 0, axis: Axis::Y, p: -p, a };
        let solution = solve(&frame, &LoadCase { point: vec![point], ..LoadCase::default() });
        let b = l - a;
        assert_close("moment", solution.extremes(0).moment_max.0, p * a * b / l, EXACT);
        assert_close("its place", solution.extremes(0).moment_max.1, a, EXACT);
        assert_close("deflection", -solution.deflection_at(0, a), p * a * a * b * b / (3.0 * EI * l), EXACT);
        assert_close("shear before", solution.extremes(0).shear_max.0, p * b / l, EXACT);
        assert_close("shear after", solution.extremes(0).shear_min.0, -p * a / l, EXACT);
        assert_eq!(solution.moment_breaks(0), [0.0, a, l]);
    }
}
