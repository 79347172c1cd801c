//! Shear, releases, arms, settlement, temperature, gaps, one-sided parts, removal, influence lines, envelopes and
//! imperfections against closed forms and against the frame written down another way.
//!
//! Closed forms: W. C. Young, R. G. Budynas, *Roark's Formulas for Stress and Strain*, 7th ed. 2002, chapter 8; S. P.
//! Timoshenko, J. M. Gere, *Theory of Elastic Stability*, 2nd ed. 1961, sections 1.11 and 2.17.

use falsewright_core::analysis::{
    Acts, Axis, Bow, Contact, DistributedLoad, Dof, Effect, Frame, FrameError, Gap, Imperfections, LoadCase, Member,
    NodalLoad, PointLoad, Removal, Section, Settlement, Solution, Spring, Strain, Support, envelope,
};
use falsewright_tests::assert_close;
use std::f64::consts::PI;

const EI: f64 = 450.0;
const EA: f64 = 1e5;
const EXACT: f64 = 1e-9;

const PIN: [bool; 3] = [true, true, false];
const ROLLER: [bool; 3] = [false, true, false];
const FIXED: [bool; 3] = [true, true, true];

fn frame(nodes: &[(f64, f64)], members: &[Member], supports: &[(usize, [bool; 3])]) -> Frame {
    let mut frame = Frame::default();
    nodes.iter().for_each(|&(x, y)| _ = frame.add_node(x, y));
    frame.members = members.to_vec();
    frame.supports = supports.iter().map(|&(node, [ux, uy, rz])| Support { node, ux, uy, rz }).collect();
    frame
}

fn beam(length: f64, member: Member, supports: &[(usize, [bool; 3])]) -> Frame {
    frame(&[(0.0, 0.0), (length, 0.0)], &[member], supports)
}

fn uniform(member: usize, w: f64, b: f64) -> LoadCase {
    let line = DistributedLoad { member, axis: Axis::Y, w1: -w, w2: -w, a: 0.0, b };
    LoadCase { distributed: vec![line], ..LoadCase::default() }
}

fn nodal(node: usize, fx: f64, fy: f64) -> LoadCase {
    LoadCase { nodal: vec![NodalLoad { node, fx, fy, mz: 0.0 }], ..LoadCase::default() }
}

fn solve(frame: &Frame, loads: &LoadCase) -> Solution {
    frame.factorise().expect("stands").solve(loads).expect("solves")
}

#[test]
fn shear_deflects_a_beam_further() {
    let (w, l, ga) = (14.0, 2.4_f64, 900.0);
    let member = Member { ga, ..Member::beam(0, 1, EI, EA) };
    let simple = solve(&beam(l, member, &[(0, PIN), (1, ROLLER)]), &uniform(0, w, l));
    let middle = 5.0 * w * l.powi(4) / (384.0 * EI) + w * l * l / (8.0 * ga);
    assert_close("simple span", -simple.extremes(0).deflection_min.0, middle, EXACT);
    assert_close("its place", simple.extremes(0).deflection_min.1, 0.5 * l, EXACT);

    // Propped cantilever: the prop bears 3wL/8 · (1 + 4s)/(1 + 3s), s = EI / GA·L².
    let s = EI / (ga * l * l);
    let propped = solve(&beam(l, member, &[(0, FIXED), (1, ROLLER)]), &uniform(0, w, l));
    assert_close("prop", propped.reaction(1).fy, 0.375 * w * l * (1.0 + 4.0 * s) / (1.0 + 3.0 * s), EXACT);

    // Greatest deflection where the axis, not the cross-section, is level: the shear's part counts.
    let sampled = (0..=20_000).map(|n| propped.deflection_at(0, l * f64::from(n) / 20_000.0)).fold(0.0, f64::min);
    let (least, x) = propped.extremes(0).deflection_min;
    assert!(least <= sampled && least > sampled - 1e-9 && (propped.deflection_at(0, x) - least).abs() < 1e-15);
}

#[test]
fn shear_lowers_the_critical_load() {
    // Engesser: 1/N = 1/N_E + 1/GA, for every Euler column whose shear force is that of the slope.
    let (l, ga) = (3.0, 400.0);
    for (name, supports, length) in [
        ("both pinned", [PIN, ROLLER.map(|_| false)], 1.0),
        ("cantilever", [FIXED, [false; 3]], 2.0),
        ("both fixed", [FIXED, [false, false, true]], 0.5),
    ] {
        let mut supports = supports;
        if name != "cantilever" {
            supports[1][0] = true;
        }
        let member = Member { ga, ..Member::beam(0, 1, EI, EA) };
        let column = frame(&[(0.0, 0.0), (0.0, l)], &[member], &[(0, supports[0]), (1, supports[1])]);
        let euler = PI * PI * EI / (length * l).powi(2);
        let factor = column.lowest_buckling_factor(&nodal(1, 0.0, -1.0)).expect("stands").factor;
        assert_close(name, factor, euler / (1.0 + euler / ga), 1e-7);
    }
}

#[test]
fn a_shear_beam_column_grows_by_engesser() {
    // Half sine of bow is matched by the parabola's moment to some percent; a lateral load at midspan is exact:
    // M = Q/2k'·tan(kL/2), k² = N/(EI(1 − N/GA)), k' = k·(1 − N/GA).
    let (l, ga, n, q) = (3.0_f64, 900.0, 150.0, 4.0);
    let member = Member { ga, ..Member::beam(0, 1, EI, EA) };
    let column = beam(l, member, &[(0, PIN), (1, ROLLER)]);
    let mut loads = nodal(1, -n, 0.0);
    loads.point.push(PointLoad { member: 0, axis: Axis::Y, p: -q, a: 0.5 * l });
    let solution = column.solve_second_order(&loads).expect("below buckling");
    let mu = 1.0 - n / ga;
    let k = (n / (EI * mu)).sqrt();
    let moment = q / (2.0 * k * mu) * (k * l / 2.0).tan();
    assert_close("moment", solution.extremes(0).moment_max.0, moment, 1e-7);
}

#[test]
fn sliding_ends() {
    let (w, l) = (14.0, 2.4_f64);
    // Fixed at one end, guided at the other: M = wL²/3 and wL²/6, deflection wL⁴/24EI.
    let member = Member { shear_release: [false, true], ..Member::beam(0, 1, EI, EA) };
    let guided = solve(&beam(l, member, &[(0, FIXED), (1, FIXED)]), &uniform(0, w, l));
    assert_close("fixed end", guided.moment_at(0, 0.0), -w * l * l / 3.0, EXACT);
    assert_close("guided end", guided.moment_at(0, l), w * l * l / 6.0, EXACT);
    assert_close("deflection", guided.deflection_at(0, l), -w * l.powi(4) / (24.0 * EI), EXACT);
    assert_close("shear", guided.shear_at(0, l) + 1.0, 1.0, EXACT);

    let member = Member { axial_release: [true, false], ..Member::beam(0, 1, EI, EA) };
    let mut loads = LoadCase::default();
    loads.distributed.push(DistributedLoad { member: 0, axis: Axis::LocalX, w1: 5.0, w2: 5.0, a: 0.0, b: l });
    let slides = solve(&beam(l, member, &[(0, FIXED), (1, FIXED)]), &loads);
    assert_close("no force at the sliding end", slides.axial_at(0, 0.0) + 1.0, 1.0, EXACT);
    assert_close("all at the other", slides.reaction(1).fx, -5.0 * l, EXACT);
    assert_close("moved", slides.along_at(0, 0.0), 5.0 * l * l / (2.0 * EA), EXACT);
}

#[test]
fn releases_that_leave_a_member_loose() {
    let loose = [
        Member { axial_release: [true; 2], ..Member::beam(0, 1, EI, EA) },
        Member { shear_release: [true; 2], ..Member::beam(0, 1, EI, EA) },
        Member { shear_release: [true, false], release_i: true, release_j: true, ..Member::beam(0, 1, EI, EA) },
    ];
    for member in loose {
        let error = beam(2.0, member, &[(0, FIXED), (1, FIXED)]).factorise().err();
        assert_eq!(error, Some(FrameError::LooseMember { member: 0 }));
    }
}

#[test]
fn arms_are_rigid_links() {
    // A bracket whose beam hangs 0.3 m below and ends 0.2 m short of the columns' axes, against stiff members.
    let nodes = [(0.0, 0.0), (0.0, 3.0), (4.0, 3.0), (4.0, 0.0)];
    let arms = [[0.2, -0.3], [-0.2, -0.3]];
    let column = |i, j| Member::beam(i, j, EI, EA);
    let with_arms = frame(
        &nodes,
        &[column(0, 1), Member { arms, ..Member::beam(1, 2, EI, EA) }, column(3, 2)],
        &[(0, PIN), (3, FIXED)],
    );
    let mut nodes = nodes.to_vec();
    nodes.extend([(0.2, 2.7), (3.8, 2.7)]);
    let stiff = |i, j| Member::beam(i, j, 1e8, 1e10);
    let members = [column(0, 1), Member::beam(4, 5, EI, EA), column(3, 2), stiff(1, 4), stiff(5, 2)];
    let with_links = frame(&nodes, &members, &[(0, PIN), (3, FIXED)]);
    let mut loads = uniform(1, 30.0, 3.6);
    loads.add(1.0, &nodal(1, 8.0, -60.0));
    loads.point.push(PointLoad { member: 1, axis: Axis::LocalX, p: 7.0, a: 0.5 });
    for second_order in [false, true] {
        let find = |frame: &Frame| {
            if second_order {
                frame.solve_second_order(&loads).expect("far from buckling")
            } else {
                solve(frame, &loads)
            }
        };
        let (a, b) = (find(&with_arms), find(&with_links));
        for node in 0..4 {
            assert_close("shift", a.displacement(node).ux + 1.0, b.displacement(node).ux + 1.0, 1e-5);
            assert_close("reaction", a.reaction(node).mz + 100.0, b.reaction(node).mz + 100.0, 1e-5);
        }
        assert_close("moment", a.extremes(1).moment_max.0, b.extremes(1).moment_max.0, 1e-4);
        assert_close("moment", a.extremes(1).moment_min.0, b.extremes(1).moment_min.0, 1e-4);
    }
    let factor = |frame: &Frame| frame.lowest_buckling_factor(&loads).expect("stands").factor;
    assert_close("critical", factor(&with_arms), factor(&with_links), 1e-4);
}

#[test]
fn an_inline_arm_counts_in_buckling() {
    // A column on a rigid arm of length e above a rotational spring k: against its transcendental equation,
    // solved by bisection: (k − N·e)·(kappa·L) = ... here by a stiff short member instead.
    let (l, e, k) = (3.0, 0.4, 300.0);
    let column = |arm: bool| {
        let mut nodes = vec![(0.0, 0.0), (0.0, l + e)];
        let mut members = vec![Member { arms: [[0.0, e], [0.0, 0.0]], ..Member::beam(0, 1, EI, EA) }];
        if !arm {
            nodes.push((0.0, e));
            members = vec![Member::beam(2, 1, EI, EA), Member::beam(0, 2, 1e7, 1e9)];
        }
        let mut frame = frame(&nodes, &members, &[(0, PIN)]);
        frame.springs.push(Spring { node: 0, dof: Dof::Rz, k });
        frame.lowest_buckling_factor(&nodal(1, 0.0, -1.0)).expect("stands").factor
    };
    assert_close("critical", column(true), column(false), 1e-4);
}

#[test]
fn a_stepped_member_is_exact_in_each_part() {
    // Cantilever, 2·EI over the first 1.2 m of 2 m, force at the tip: P·(L³ + c³)/6EI with c = 0.8 m, by unit load.
    let (l, c, p) = (2.0_f64, 0.8_f64, 10.0);
    let mut stepped = frame(&[(0.0, 0.0), (l, 0.0)], &[], &[(0, FIXED)]);
    let section = |share, ei| Section { share, ei, ea: EA, ga: f64::INFINITY };
    let parts = stepped.add_stepped(Member::beam(0, 1, EI, EA), &[section(1.2, 2.0 * EI), section(0.8, EI)]);
    assert_eq!(parts, 0..2);
    let solution = solve(&stepped, &nodal(1, 0.0, -p));
    let tip = p * ((l.powi(3) - c.powi(3)) / (6.0 * EI) + c.powi(3) / (3.0 * EI));
    assert_close("tip", -solution.displacement(1).uy, tip, EXACT);
    assert_close("moment at the step", solution.moment_at(1, 0.0), -p * c, EXACT);
}

#[test]
fn settlement_temperature_and_lack_of_fit() {
    let (l, by) = (2.0, 0.01);
    let spans = |held: [[bool; 3]; 3]| {
        let nodes = [(0.0, 0.0), (l, 0.0), (2.0 * l, 0.0)];
        let members = [Member::beam(0, 1, EI, EA), Member::beam(1, 2, EI, EA)];
        frame(&nodes, &members, &[(0, held[0]), (1, held[1]), (2, held[2])])
    };
    let down = |node, by: f64| Settlement { node, dof: Dof::Uy, by: -by };
    let settled = LoadCase { settlements: vec![down(1, by)], ..LoadCase::default() };
    // Middle support sinks by δ: M = 3EIδ/L², R = 6EIδ/L³.
    let solution = solve(&spans([PIN, ROLLER, ROLLER]), &settled);
    assert_close("moment", solution.moment_at(0, l), 3.0 * EI * by / (l * l), EXACT);
    assert_close("reaction", solution.reaction(1).fy, -6.0 * EI * by / l.powi(3), EXACT);
    assert_close("moved", solution.displacement(1).uy, -by, EXACT);

    let mut sprung = spans([PIN, [false; 3], ROLLER]);
    sprung.springs.push(Spring { node: 1, dof: Dof::Uy, k: 800.0 });
    let solution = solve(&sprung, &settled);
    let k = 6.0 * EI / l.powi(3);
    assert_close("spring", solution.spring_force(0), -by * k * 800.0 / (k + 800.0), EXACT);

    // Held at both ends: N = −EA·ε; M = −EI·κ; free at one end: ε·L and κ·L²/2.
    let warm = LoadCase { strains: vec![Strain { member: 0, axial: 4e-4, curvature: 3e-3 }], ..LoadCase::default() };
    let member = Member::beam(0, 1, EI, EA);
    let held = solve(&beam(l, member, &[(0, FIXED), (1, FIXED)]), &warm);
    assert_close("force", held.axial_at(0, 0.7), -EA * 4e-4, EXACT);
    assert_close("moment", held.moment_at(0, 0.7), -EI * 3e-3, EXACT);
    let free = solve(&beam(l, member, &[(0, FIXED)]), &warm);
    assert_close("longer", free.displacement(1).ux, 4e-4 * l, EXACT);
    assert_close("bent", free.displacement(1).uy, 3e-3 * l * l / 2.0, EXACT);

    // A jack wound out by 2 mm under the middle of three legs that bear a beam: the beam is lifted against itself.
    let nodes = [(0.0, 3.0), (l, 3.0), (2.0 * l, 3.0), (0.0, 0.0), (l, 0.0), (2.0 * l, 0.0)];
    let mut members = vec![Member::beam(0, 1, EI, EA), Member::beam(1, 2, EI, EA)];
    members.extend((0..3).map(|leg| Member { release_j: true, ..Member::beam(3 + leg, leg, 1.0, 3e4) }));
    let jacked = frame(&nodes, &members, &[(3, PIN), (4, PIN), (5, PIN), (1, [true, false, false])]);
    let gap = Gap { member: 3, a: 1.0, along: 0.002, across: 0.0, turn: 0.0 };
    let solution = solve(&jacked, &LoadCase { gaps: vec![gap], ..LoadCase::default() });
    let (beam, leg) = (6.0 * EI / l.powi(3), 3e4 / 3.0);
    // In a row: the beam, the jacked leg, and two legs beside each other.
    let force = 0.002 / (1.0 / beam + 1.0 / leg + 0.5 / leg);
    assert_close("jack", -solution.axial_at(3, 0.0), force, EXACT);

    let nowhere = LoadCase { settlements: vec![down(1, by)], ..LoadCase::default() };
    let error = spans([FIXED, [false; 3], ROLLER]).factorise().expect("stands").solve(&nowhere).err();
    assert_eq!(error, Some(FrameError::NotHeld { index: 0, node: 1, dof: Dof::Uy }));
}

#[test]
fn self_weight_and_local_axes() {
    let sloping = Member { weight: 2.0, ..Member::beam(0, 1, EI, EA) };
    let mut rafter = frame(&[(0.0, 0.0), (3.0, 4.0)], &[sloping], &[(0, PIN), (1, ROLLER)]);
    rafter.add_node(3.0, 0.0);
    rafter.add_member(Member { weight: 0.5, ..Member::bar(0, 2, EA) });
    rafter.supports.push(Support { node: 2, ux: false, uy: true, rz: false });
    let solution = solve(&rafter, &rafter.self_weight(1.35));
    assert_close("weight", (0..3).map(|node| solution.reaction(node).fy).sum(), 1.35 * (10.0 + 1.5), EXACT);

    let across = DistributedLoad { member: 0, axis: Axis::LocalY, w1: -3.0, w2: -3.0, a: 0.0, b: 5.0 };
    let solution = solve(&rafter, &LoadCase { distributed: vec![across], ..LoadCase::default() });
    // Wind across 5 m: its parts along x and y are 4/5 and −3/5 of 15 kN.
    assert_close("x", solution.reaction(0).fx, -12.0, EXACT);
    assert_close("moment", solution.extremes(0).moment_max.0, 3.0 * 25.0 / 8.0, EXACT);
}

/// A panel with two diagonals that bear tension only.
fn panel() -> Frame {
    let nodes = [(0.0, 0.0), (2.0, 0.0), (0.0, 2.0), (2.0, 2.0)];
    let tie = |i, j| Member { acts: Acts::Tension, ..Member::bar(i, j, 2e4) };
    let members = [Member::bar(0, 2, EA), Member::bar(1, 3, EA), Member::bar(2, 3, EA), tie(0, 3), tie(1, 2)];
    frame(&nodes, &members, &[(0, PIN), (1, PIN)])
}

#[test]
fn the_pushed_diagonal_goes_slack() {
    let panel = panel();
    let factorised = panel.factorise().expect("stands");
    for (force, slack, tight) in [(10.0, 4, 3), (-10.0, 3, 4)] {
        let found = factorised.solve_one_sided(&nodal(2, force, 0.0)).expect("one diagonal is enough");
        assert_eq!(found.slack_members, [slack]);
        assert_close("tight", found.solution.axial_at(tight, 0.0), 10.0 * 2.0_f64.sqrt(), 1e-8);
        assert!(found.solution.axial_at(slack, 0.0).abs() < 1e-9);
        let mut without = panel.clone();
        without.members.remove(slack);
        let rebuilt = solve(&without, &nodal(2, force, 0.0));
        assert_close("sway", found.solution.displacement(3).ux, rebuilt.displacement(3).ux, 1e-9);
    }
}

/// A stiff beam on one-sided springs or blocks along its length.
fn on_contacts(k: f64) -> Frame {
    let mut beam = Frame::default();
    (0..9).for_each(|node| _ = beam.add_node(f64::from(node), 0.0));
    beam.contacts = (1..7).map(|node| Contact { k, ..Contact::rigid(node, Dof::Uy) }).collect();
    (0..8).for_each(|i| _ = beam.add_member(Member::beam(i, i + 1, EI, EA)));
    beam.supports.push(Support { node: 0, ux: true, uy: false, rz: false });
    beam
}

#[test]
fn supports_let_go() {
    for k in [f64::INFINITY, 900.0] {
        let beam = on_contacts(k);
        let mut loads = nodal(8, 0.0, -30.0);
        loads.add(1.0, &nodal(1, 0.0, -5.0));
        loads.add(1.0, &nodal(0, 0.0, -40.0));
        let found = beam.factorise().expect("stands").solve_one_sided(&loads).expect("rests on some");
        assert!(!found.open_contacts.is_empty(), "{k}");
        for (index, contact) in beam.contacts.iter().enumerate() {
            let node = contact.node;
            let (force, moved) = (found.solution.contact_force(index), found.solution.displacement(node).uy);
            let open = found.open_contacts.contains(&index);
            assert!(force >= -1e-9 && (open || k.is_finite() || moved.abs() < 1e-12), "{k} {node}: {force} {moved}");
            assert!(!open || (force.abs() < 1e-9 && moved > -1e-12), "{k} {node}: {force} {moved}");
            assert_close("reaction", found.solution.reaction(node).fy + 1.0, force + 1.0, 1e-9);
        }
        // The same with those contacts taken away.
        let mut rebuilt = beam.clone();
        rebuilt.contacts.retain(|contact| !found.open_contacts.contains(&(contact.node - 1)));
        let rebuilt = solve(&rebuilt, &loads);
        for node in 0..9 {
            let (a, b) = (found.solution.displacement(node).uy, rebuilt.displacement(node).uy);
            assert!((a - b).abs() < 1e-10, "{k} {node}: {a} {b}");
        }
    }
}

#[test]
fn what_lifts_off_altogether_is_a_mechanism() {
    let lifted = on_contacts(f64::INFINITY);
    let error = lifted.factorise().expect("stands").solve_one_sided(&nodal(3, 0.0, 20.0)).err();
    assert!(matches!(error, Some(FrameError::Mechanism { dof: Dof::Uy, .. })), "{error:?}");
    let twice = Contact { k: 5.0, ..Contact::rigid(0, Dof::Ux) };
    let mut held = on_contacts(1.0);
    held.contacts.push(twice);
    assert_eq!(held.factorise().err(), Some(FrameError::HeldTwice { node: 0, dof: Dof::Ux }));
}

#[test]
fn influence_lines_are_what_moving_loads_do() {
    let nodes = [(0.0, 0.0), (2.0, 0.3), (4.5, 0.0), (2.0, -2.0)];
    let leg = Member { release_j: true, ..Member::beam(3, 1, EI, EA) };
    let members = [Member::beam(0, 1, EI, EA), Member { ga: 3e3, ..Member::beam(1, 2, EI, EA) }, leg];
    let frame = frame(&nodes, &members, &[(0, PIN), (2, ROLLER), (3, FIXED)]);
    let factorised = frame.factorise().expect("stands");
    let effects = [
        Effect::Reaction { node: 2, dof: Dof::Uy },
        Effect::Reaction { node: 3, dof: Dof::Rz },
        Effect::Axial { member: 2, x: 0.4 },
        Effect::Shear { member: 0, x: 0.7 },
        Effect::Moment { member: 1, x: 1.1 },
    ];
    for effect in effects {
        let influence = factorised.influence(effect).expect("solves");
        for (member, a) in [(0, 0.3), (0, 1.4), (1, 0.2), (1, 1.9), (2, 0.9)] {
            for axis in [Axis::X, Axis::Y, Axis::LocalX, Axis::LocalY] {
                let load = PointLoad { member, axis, p: 1.0, a };
                let solution =
                    factorised.solve(&LoadCase { point: vec![load], ..LoadCase::default() }).expect("solves");
                let direct = match effect {
                    Effect::Reaction { node: 2, .. } => solution.reaction(2).fy,
                    Effect::Reaction { .. } => solution.reaction(3).mz,
                    Effect::Axial { member, x } => solution.axial_at(member, x),
                    Effect::Shear { member, x } => solution.shear_at(member, x),
                    Effect::Moment { member, x } => solution.moment_at(member, x),
                };
                let read = influence.on_member(member, axis, a);
                assert!((read - direct).abs() < 1e-10, "{effect:?} {member} {axis:?} {a}: {read} {direct}");
            }
        }
        let at_node = influence.at_node(1, Dof::Uy);
        let solution = factorised.solve(&nodal(1, 0.0, 1.0)).expect("solves");
        if let Effect::Moment { member, x } = effect {
            assert!((at_node - solution.moment_at(member, x)).abs() < 1e-10);
        }
    }
}

#[test]
fn envelopes_name_the_governing_case() {
    let spans = frame(
        &[(0.0, 0.0), (2.0, 0.0), (4.0, 0.0)],
        &[Member::beam(0, 1, EI, EA), Member::beam(1, 2, EI, EA)],
        &[(0, PIN), (1, ROLLER), (2, ROLLER)],
    );
    let factorised = spans.factorise().expect("stands");
    let (left, right) = (uniform(0, 10.0, 2.0), uniform(1, 10.0, 2.0));
    let mut both = left.clone();
    both.add(1.0, &right);
    let cases: Vec<Solution> = [&left, &right, &both].map(|case| factorised.solve(case).expect("solves")).into();
    let all = envelope(&cases);
    assert_eq!((all[0].moment_max.case, all[0].moment_min.case, all[1].moment_max.case), (0, 2, 1));
    assert_close("span", all[0].moment_max.value, cases[0].extremes(0).moment_max.0, EXACT);
    assert_close("support", all[0].moment_min.value, -10.0 * 4.0 / 8.0, EXACT);
    assert_eq!(all[0].deflection_max.case, 1);
}

#[test]
fn a_bowed_and_leaning_column_grows() {
    // Pinned column with bow e₀: parabola, so that M = 8Ne₀/(kL)²·(1/cos(kL/2) − 1).
    let (l, n, rise) = (3.0_f64, 200.0, 0.012);
    let column = frame(&[(0.0, 0.0), (0.0, l)], &[Member::beam(0, 1, EI, EA)], &[(0, PIN), (1, [true, false, false])]);
    let bowed = Imperfections { bows: vec![Bow { member: 0, rise }], ..Imperfections::default() };
    let solution = column.solve_imperfect(&nodal(1, 0.0, -n), &bowed).expect("below buckling");
    let kl = l * (n / EI).sqrt();
    let moment = 8.0 * n * rise / (kl * kl) * (1.0 / (0.5 * kl).cos() - 1.0);
    assert_close("bow", solution.extremes(0).moment_min.0, -moment, 1e-7);
    assert_close("no force from outside", solution.reaction(1).fx + 1.0, 1.0, 1e-9);

    // Cantilever that leans by φ: its tip moment is N·φ·tan(kL)/k, as if its top stood φ·L aside.
    let mast = frame(&[(0.0, 0.0), (0.0, l)], &[Member::beam(0, 1, EI, EA)], &[(0, FIXED)]);
    let sway = Imperfections { sway: 0.005, ..Imperfections::default() };
    let (n, k) = (60.0, (60.0 / EI).sqrt());
    let solution = mast.solve_imperfect(&nodal(1, 0.0, -n), &sway).expect("below buckling");
    assert_close("lean", solution.reaction(0).mz.abs(), n * 0.005 * (k * l).tan() / k, 1e-7);
    assert!(solution.displacement(1).ux > 0.0);
    let leaning = frame(&[(0.0, 0.0), (0.005 * l, l)], &[Member::beam(0, 1, EI, EA)], &[(0, FIXED)]);
    let drawn = leaning.solve_second_order(&nodal(1, 0.0, -n)).expect("below buckling");
    assert_close("as drawn", solution.reaction(0).mz, drawn.reaction(0).mz, 1e-4);

    // EN 1993-1-1, 5.3.2(3): h = 9 m, three columns.
    assert_close(
        "angle",
        Imperfections::sway_angle(0.005, 9.0, 3),
        0.005 * (2.0 / 3.0) * (2.0_f64 / 3.0).sqrt(),
        EXACT,
    );
}

#[test]
fn a_sway_portal_buckles_as_its_equation_says() {
    // Pinned feet, beam of EI_b and length b: kh·tan(kh) = 6·(EI_b/b)/(EI_c/h).
    let (h, b, beam) = (4.0, 6.0, 2.0 * EI);
    let nodes = [(0.0, 0.0), (0.0, h), (b, h), (b, 0.0)];
    let stiff = 1e9;
    let members = [Member::beam(0, 1, EI, stiff), Member::beam(1, 2, beam, stiff), Member::beam(3, 2, EI, stiff)];
    let portal = frame(&nodes, &members, &[(0, PIN), (3, PIN)]);
    let mut loads = nodal(1, 0.0, -1.0);
    loads.add(1.0, &nodal(2, 0.0, -1.0));
    let ratio = 6.0 * (beam / b) / (EI / h);
    let (mut low, mut high) = (0.0, PI / 2.0 - 1e-12);
    for _ in 0..80 {
        let middle: f64 = 0.5 * (low + high);
        *(if middle * middle.tan() < ratio { &mut low } else { &mut high }) = middle;
    }
    let critical = low * low * EI / (h * h);
    let factor = portal.lowest_buckling_factor(&loads).expect("stands").factor;
    assert_close("portal", factor, critical, 1e-5);
}

#[test]
fn a_braced_leg_buckles_between_its_lifts() {
    // Held at each of its levels, hinged nowhere: equal lifts buckle in waves of one lift; of unequal ones the long one
    // is helped by its neighbour: tan-type equation of two spans, solved by bisection.
    let leg = |lifts: &[f64]| {
        let mut leg = Frame::default();
        let mut y = 0.0;
        leg.add_node(0.0, y);
        leg.supports.push(Support { node: 0, ux: true, uy: true, rz: false });
        for (index, lift) in lifts.iter().enumerate() {
            y += lift;
            leg.add_node(0.0, y);
            leg.add_member(Member::beam(index, index + 1, EI, EA));
            leg.supports.push(Support { node: index + 1, ux: true, uy: false, rz: false });
        }
        leg.lowest_buckling_factor(&nodal(lifts.len(), 0.0, -1.0)).expect("stands").factor
    };
    assert_close("equal lifts", leg(&[1.5, 1.5, 1.5]), PI * PI * EI / (1.5 * 1.5), 1e-7);
    // Two spans: Σ (1/kL − cot kL)/k... with ψ(u) = (1/u)(1/u − cot u): L1·ψ(kL1) + L2·ψ(kL2) = 0.
    let (a, b) = (1.0, 2.0);
    let psi = |u: f64| (1.0 / u - 1.0 / u.tan()) / u;
    let (mut low, mut high) = (PI / b + 1e-9, PI / a - 1e-9);
    for _ in 0..100 {
        let k = 0.5 * (low + high);
        *(if a * psi(k * a) + b * psi(k * b) < 0.0 { &mut low } else { &mut high }) = k;
    }
    assert_close("unequal lifts", leg(&[a, b]), low * low * EI, 1e-6);
}

#[test]
fn a_member_with_hardly_any_stiffness_has_buckled_countless_times() {
    let nodes = [(0.0, 0.0), (0.0, 2.0), (1.0, 2.0), (1.0, 0.0)];
    let limp = |i, j| Member::beam(i, j, 1e-80, EA);
    let members = [limp(0, 1), limp(3, 2), Member::beam(1, 2, EI, EA)];
    let frame = frame(&nodes, &members, &[(0, FIXED), (3, FIXED), (1, PIN), (2, [false, true, false])]);
    let mut loads = nodal(1, 0.0, 0.0);
    loads.settlements.push(Settlement { node: 1, dof: Dof::Uy, by: -0.1 });
    loads.settlements.push(Settlement { node: 2, dof: Dof::Uy, by: -0.1 });
    assert_eq!(frame.solve_second_order(&loads).err(), Some(FrameError::Unstable));
}

#[test]
fn what_if_reports_a_mechanism() {
    let mut panel = panel();
    panel.members.iter_mut().for_each(|member| member.acts = Acts::Both);
    let factorised = panel.factorise().expect("stands");
    let both = Removal { members: vec![3, 4], ..Removal::default() };
    assert!(matches!(factorised.without(&both), Err(FrameError::Mechanism { node: 2 | 3, dof: Dof::Ux, .. })));
    let missing = Removal { members: vec![9], ..Removal::default() };
    assert!(matches!(factorised.without(&missing), Err(FrameError::UnknownMember { member: 9, .. })));
}
