//! What the frame solver says of frames and loads that it cannot solve.

use falsewright_core::analysis::{
    Axis, Displacement, DistributedLoad, Dof, Frame, FrameError, LoadCase, Member, NodalLoad, PointLoad, Spring,
    Support,
};

const EI: f64 = 200.0;
const EA: f64 = 3e5;

fn frame(nodes: &[(f64, f64)], members: &[Member], supports: &[(usize, [bool; 3])]) -> Frame {
    let mut frame = Frame::default();
    for &(x, y) in nodes {
        frame.add_node(x, y);
    }
    frame.members = members.to_vec();
    frame.supports = supports.iter().map(|&(node, [ux, uy, rz])| Support { node, ux, uy, rz }).collect();
    frame
}

fn cantilever() -> Frame {
    frame(&[(0.0, 0.0), (2.0, 0.0)], &[Member::beam(0, 1, EI, EA)], &[(0, [true; 3])])
}

fn error(frame: &Frame) -> FrameError {
    frame.factorise().expect_err("the frame is not sound")
}

fn load_error(frame: &Frame, loads: LoadCase) -> FrameError {
    frame.factorise().expect("the frame is sound").solve(&loads).expect_err("the loads are not sound")
}

/// A mechanism that moves most there, by 1 m or 1 rad.
fn moves_most(error: &FrameError, node: usize, dof: Dof) {
    let FrameError::Mechanism { node: at, dof: along, movement } = error else { panic!("{error}") };
    assert_eq!((*at, *along), (node, dof));
    let Displacement { ux, uy, rz } = movement[node];
    assert!(([ux, uy, rz][dof as usize].abs() - 1.0).abs() < 1e-12, "{movement:?}");
    assert!(movement.iter().all(|by| by.ux.abs() <= 1.0 && by.uy.abs() <= 1.0), "{movement:?}");
}

fn mechanism(frame: &Frame, node: usize, dof: Dof) {
    moves_most(&error(frame), node, dof);
}

const PIN: [bool; 3] = [true, true, false];
const ROLLER: [bool; 3] = [false, true, false];

#[test]
fn a_beam_on_rollers_slides() {
    let beam = frame(&[(0.0, 0.0), (2.0, 0.0)], &[Member::beam(0, 1, EI, EA)], &[(0, ROLLER), (1, ROLLER)]);
    assert!(matches!(error(&beam), FrameError::Mechanism { dof: Dof::Ux, .. }));
}

/// A chain of four nodes hangs on two bars, which leave it one movement. By how its numbers are rounded the pivot of that
/// movement is left with more than 1e-11 of its diagonal.
#[test]
fn a_mechanism_is_none_the_less_for_rounding() {
    let nodes = [
        (0.0, 0.0),
        (0.8381929674020798, -0.49599254725209985),
        (2.6966834649417537, 0.0),
        (4.541348566088808, 0.508374142328909),
        (6.30380858142277, -1.0687820813515638),
        (8.133101813106636, -0.23312971321489737),
    ];
    let members = [
        Member::beam(0, 1, 50.0, 855080.8123888142),
        Member::beam(2, 3, 50.0, 20000.0),
        Member::beam(3, 4, 50.0, 343876.59641483467),
        Member::beam(4, 5, 50.0, 20000.0),
        Member::bar(4, 1, 376905.83844791516),
        Member::beam(0, 1, 50.0, 20000.0),
        Member::bar(0, 5, 20000.0),
    ];
    let mut hanging = frame(&nodes, &members, &[(0, [true; 3])]);
    hanging.springs = vec![Spring { node: 1, dof: Dof::Ux, k: 10.0 }];
    mechanism(&hanging, 5, Dof::Uy);
}

/// Seven figures of the stiffness cancel, and it stands: F·L³/3EI at its end (beam tables).
#[test]
fn a_long_slender_cantilever_is_no_mechanism() {
    const PARTS: usize = 100;
    let nodes: Vec<(f64, f64)> = (0..=PARTS).map(|at| (0.6 * at as f64, 0.8 * at as f64)).collect();
    let members: Vec<Member> = (0..PARTS).map(|part| Member::beam(part, part + 1, EI, EA)).collect();
    let long = frame(&nodes, &members, &[(0, [true; 3])]);
    let loads = LoadCase { nodal: vec![NodalLoad { node: PARTS, fx: -0.8, fy: 0.6, mz: 0.0 }], ..LoadCase::default() };
    let solution = long.factorise().expect("stands").solve(&loads).expect("solves");
    let (moved, length) = (solution.displacement(PARTS), PARTS as f64);
    let expected = length.powi(3) / (3.0 * EI);
    assert!(((0.6 * moved.uy - 0.8 * moved.ux) / expected - 1.0).abs() < 1e-5, "{moved:?} {expected}");
}

#[test]
fn a_beam_on_one_pin_turns() {
    let beam = frame(&[(0.0, 0.0), (2.0, 0.0)], &[Member::beam(0, 1, EI, EA)], &[(0, PIN)]);
    mechanism(&beam, 1, Dof::Uy);
}

#[test]
fn a_hinge_inside_a_simple_span_sinks_there() {
    let hinged = Member { release_j: true, ..Member::beam(0, 1, EI, EA) };
    let members = [hinged, Member::beam(1, 2, EI, EA)];
    mechanism(&frame(&[(0.0, 0.0), (1.0, 0.0), (3.0, 0.0)], &members, &[(0, PIN), (2, ROLLER)]), 1, Dof::Uy);
}

#[test]
fn a_tie_of_two_sloping_bars_in_line_kinks() {
    // The same at any slope: rounding must not pass for stiffness.
    for degrees in 0..90 {
        let (sine, cosine) = f64::from(degrees).to_radians().sin_cos();
        let nodes: Vec<_> = [0.0, 1.3, 2.9].iter().map(|s| (s * cosine, s * sine)).collect();
        let bars = [Member::bar(0, 1, EA), Member::bar(1, 2, EA)];
        let error = error(&frame(&nodes, &bars, &[(0, PIN), (2, PIN)]));
        assert!(matches!(error, FrameError::Mechanism { node: 1, .. }), "{degrees}°: {error}");
    }
}

#[test]
fn an_unbraced_tower_of_bars_leans() {
    let nodes = [(0.0, 0.0), (1.1, 0.1), (0.2, 2.0), (1.3, 2.1), (0.4, 4.0), (1.5, 4.1)];
    let braced = |diagonals: &[(usize, usize)]| {
        let all = [(0, 2), (1, 3), (2, 3), (2, 4), (3, 5), (4, 5)].iter().chain(diagonals);
        let bars: Vec<_> = all.map(|&(i, j)| Member::bar(i, j, EA)).collect();
        frame(&nodes, &bars, &[(0, PIN), (1, PIN)])
    };
    assert!(matches!(error(&braced(&[])), FrameError::Mechanism { dof: Dof::Ux, .. }));
    assert!(matches!(error(&braced(&[(0, 3)])), FrameError::Mechanism { node: 4 | 5, dof: Dof::Ux, .. }));
    assert!(matches!(error(&braced(&[(2, 5)])), FrameError::Mechanism { .. }));
    assert!(braced(&[(0, 3), (2, 5)]).factorise().is_ok());
}

#[test]
fn a_node_joined_to_nothing_falls() {
    let mut loose = cantilever();
    loose.add_node(5.0, 5.0);
    assert!(matches!(error(&loose), FrameError::Mechanism { node: 2, .. }));
    loose.supports.push(Support { node: 2, ux: true, uy: true, rz: false });
    assert!(loose.factorise().is_ok());
}

#[test]
fn a_joint_of_hinges_only_is_no_mechanism_but_bears_no_moment() {
    let bars = [Member::bar(0, 2, EA), Member::bar(1, 2, EA)];
    let tripod = frame(&[(0.0, 0.0), (2.0, 0.0), (1.0, 1.0)], &bars, &[(0, PIN), (1, PIN)]);
    let nodal = |fy, mz| LoadCase { nodal: vec![NodalLoad { node: 2, fx: 0.0, fy, mz }], ..LoadCase::default() };
    let solution = tripod.factorise().expect("sound").solve(&nodal(-10.0, 0.0)).expect("sound");
    assert!((solution.axial_at(0, 0.5) + 5.0 * 2.0_f64.sqrt()).abs() < 1e-12);
    moves_most(&load_error(&tripod, nodal(0.0, 1.0)), 2, Dof::Rz);

    let mut sprung = tripod;
    sprung.springs.push(Spring { node: 2, dof: Dof::Rz, k: 50.0 });
    let solution = sprung.factorise().expect("sound").solve(&nodal(0.0, 1.0)).expect("the spring bears it");
    assert!((solution.displacement(2).rz - 0.02).abs() < 1e-15);
    assert!((solution.spring_force(0) + 1.0).abs() < 1e-12);
}

#[test]
fn frames_that_make_no_sense() {
    let bad = |change: fn(&mut Frame)| {
        let mut frame = cantilever();
        change(&mut frame);
        error(&frame)
    };
    assert_eq!(bad(|frame| frame.nodes[1].x = 0.0), FrameError::ZeroLength { member: 0 });
    assert_eq!(bad(|frame| frame.nodes[1].x = f64::NAN), FrameError::NonFinite { what: "node", index: 1 });
    bad(|frame| frame.nodes[1].x = 1.7e308);
    assert_eq!(bad(|frame| frame.members[0].ei = f64::INFINITY), FrameError::NonFinite { what: "member", index: 0 });
    assert_eq!(bad(|frame| frame.members[0].ea = 0.0), FrameError::Stiffness { what: "member", index: 0 });
    assert_eq!(bad(|frame| frame.members[0].ei = -1.0), FrameError::Stiffness { what: "member", index: 0 });
    let missing = |what, node| FrameError::UnknownNode { what, index: 0, node };
    assert_eq!(bad(|frame| frame.members[0].j = 7), missing("member", 7));
    assert_eq!(bad(|frame| frame.supports[0].node = 2), missing("support", 2));
    assert_eq!(bad(|frame| frame.springs.push(Spring { node: 9, dof: Dof::Ux, k: 1.0 })), missing("spring", 9));
    let spring = |k| move |frame: &mut Frame| frame.springs.push(Spring { node: 1, dof: Dof::Ux, k });
    for (k, expected) in [
        (-1.0, FrameError::Stiffness { what: "spring", index: 0 }),
        (f64::NAN, FrameError::NonFinite { what: "spring", index: 0 }),
    ] {
        let mut frame = cantilever();
        spring(k)(&mut frame);
        assert_eq!(error(&frame), expected);
    }
}

#[test]
fn loads_that_make_no_sense() {
    let line = |member, w1, a, b| LoadCase {
        distributed: vec![DistributedLoad { member, axis: Axis::Y, w1, w2: 1.0, a, b }],
        ..LoadCase::default()
    };
    let point =
        |member, p, a| LoadCase { point: vec![PointLoad { member, axis: Axis::Y, p, a }], ..LoadCase::default() };
    let nodal = |node, fx| LoadCase { nodal: vec![NodalLoad { node, fx, fy: 0.0, mz: 0.0 }], ..LoadCase::default() };
    let bad = |loads| load_error(&cantilever(), loads);

    let off = |a, b| FrameError::LoadOffMember { member: 0, a, b, length: 2.0 };
    assert_eq!(bad(line(0, 1.0, -0.1, 1.0)), off(-0.1, 1.0));
    assert_eq!(bad(line(0, 1.0, 0.0, 2.1)), off(0.0, 2.1));
    assert_eq!(bad(line(0, 1.0, 1.5, 0.5)), off(1.5, 0.5));
    assert_eq!(bad(point(0, 1.0, 2.5)), off(2.5, 2.5));
    let (lines, points) = ("distributed load", "point load");
    assert_eq!(bad(line(3, 1.0, 0.0, 1.0)), FrameError::UnknownMember { what: lines, index: 0, member: 3 });
    assert_eq!(bad(point(3, 1.0, 0.0)), FrameError::UnknownMember { what: points, index: 0, member: 3 });
    assert_eq!(bad(nodal(4, 1.0)), FrameError::UnknownNode { what: "nodal load", index: 0, node: 4 });
    assert_eq!(bad(line(0, f64::NAN, 0.0, 1.0)), FrameError::NonFinite { what: lines, index: 0 });
    assert_eq!(bad(point(0, f64::INFINITY, 1.0)), FrameError::NonFinite { what: points, index: 0 });
    assert_eq!(bad(nodal(1, f64::NAN)), FrameError::NonFinite { what: "nodal load", index: 0 });
}

#[test]
fn a_bar_bears_loads_along_it_only() {
    let bars = [Member::bar(0, 1, EA)];
    let hanger = frame(&[(0.0, 2.0), (0.0, 0.0)], &bars, &[(0, PIN), (1, [true, false, false])]);
    let line = |axis| LoadCase {
        distributed: vec![DistributedLoad { member: 0, axis, w1: -3.0, w2: -3.0, a: 0.0, b: 2.0 }],
        ..LoadCase::default()
    };
    let solution = hanger.factorise().expect("sound").solve(&line(Axis::Y)).expect("its own weight");
    assert!((solution.axial_at(0, 0.0) - 6.0).abs() < 1e-12);
    assert_eq!(load_error(&hanger, line(Axis::X)), FrameError::LoadAcrossBar { member: 0 });
}

#[test]
fn loads_a_rounding_beyond_the_end_are_whole() {
    let beam = cantilever();
    let line = DistributedLoad { member: 0, axis: Axis::Y, w1: -5.0, w2: -5.0, a: -1e-10, b: 2.0 + 1e-10 };
    let point = [-1e-10, 0.0, 2.0, 2.0 + 1e-10].map(|a| PointLoad { member: 0, axis: Axis::Y, p: -3.0, a });
    let loads = LoadCase { distributed: vec![line], point: point.to_vec(), ..LoadCase::default() };
    let reaction = beam.factorise().expect("sound").solve(&loads).expect("sound").reaction(0);
    assert!((reaction.fy - 22.0).abs() < 1e-12);
    assert!((reaction.mz - 22.0).abs() < 1e-12);
}

#[test]
fn beyond_the_critical_load_there_is_no_second_order_answer() {
    let beam = cantilever();
    let critical = std::f64::consts::PI.powi(2) * EI / 16.0;
    let pushed = |part: f64| LoadCase {
        nodal: vec![NodalLoad { node: 1, fx: -part * critical, fy: 1.0, mz: 0.0 }],
        ..LoadCase::default()
    };
    assert!(beam.solve_second_order(&pushed(0.99)).is_ok());
    assert!(matches!(beam.solve_second_order(&pushed(1.01)), Err(FrameError::Unstable)));
    assert!(matches!(beam.solve_second_order(&pushed(30.0)), Err(FrameError::Unstable)));
}

#[test]
fn stiffnesses_too_far_apart_are_not_trusted() {
    let sloping = |ea| {
        let mut frame = Frame::default();
        frame.add_node(0.0, 0.0);
        for member in 0..80 {
            let s = f64::from(member + 1) / 8.0;
            let j = frame.add_node(0.8 * s, 0.6 * s);
            frame.add_member(Member::beam(j - 1, j, 20.0, ea));
        }
        frame.supports.push(Support { node: 0, ux: true, uy: true, rz: true });
        let load = NodalLoad { node: 80, fx: -0.6, fy: 0.8, mz: 0.0 };
        frame.factorise()?.solve(&LoadCase { nodal: vec![load], ..LoadCase::default() })
    };
    // A cantilever of 10 m: P·L³/3EI.
    let moved = sloping(1e5).expect("ordinary stiffnesses").displacement(80);
    assert!((0.8 * moved.uy - 0.6 * moved.ux - 1000.0 / 60.0).abs() < 1e-5);
    assert!(matches!(sloping(1e10), Err(FrameError::IllConditioned { .. })));
}

#[test]
fn messages_say_where_and_what_to_do() {
    let text = FrameError::Mechanism { node: 4, dof: Dof::Ux, movement: Vec::new() }.to_string();
    assert_eq!(text, "node 4 can move along x without resistance; support or brace it, or take out a release");
}

#[test]
fn an_empty_frame_is_at_rest() {
    assert!(Frame::default().factorise().expect("nothing to do").solve(&LoadCase::default()).is_ok());
}
