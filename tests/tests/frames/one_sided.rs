//! Frames with ties, props and feet that act one way only: against statics, closed forms, and against every set of parts
//! that may have let go, each built as a frame of its own.

use falsewright_core::analysis::{
    Acts, Contact, Dof, Frame, FrameError, Imperfections, LoadCase, Member, NodalLoad, OneSided, Solution, Spring,
    Support,
};
use falsewright_tests::assert_close;
use proptest::prelude::*;

/// Of members that hardly shorten, and of diagonals.
const STIFF: f64 = 1e8;
const EA: f64 = 5e3;
const HEIGHT: f64 = 3.0;

/// Two hinged columns 3 m high and 4 m apart with a beam across, braced by two ties: k = EA/L·cos²α = 640 kN/m each.
fn cross_braced() -> Frame {
    let mut frame = Frame::default();
    for (x, y) in [(0.0, 0.0), (4.0, 0.0), (0.0, HEIGHT), (4.0, HEIGHT)] {
        frame.add_node(x, y);
    }
    for (i, j) in [(0, 2), (1, 3), (2, 3)] {
        frame.add_member(Member::bar(i, j, STIFF));
    }
    for (i, j) in [(0, 3), (1, 2)] {
        frame.add_member(Member { acts: Acts::Tension, ..Member::bar(i, j, EA) });
    }
    frame.supports.extend([0, 1].map(|node| Support { node, ux: true, uy: true, rz: false }));
    frame
}

/// One of the ties as above.
const TIE_KN_M: f64 = EA / 5.0 * 0.8 * 0.8;

fn on_heads(fx: f64, fy: f64) -> LoadCase {
    let heads = [(2, fx), (3, 0.0)];
    LoadCase { nodal: heads.map(|(node, fx)| NodalLoad { node, fx, fy, mz: 0.0 }).to_vec(), ..LoadCase::default() }
}

/// P = 2·100 kN, k·h = 1920 kN: one tie holds the columns upright to α = 9.6, not both.
#[test]
fn one_tie_braces_against_buckling() {
    for force in [0.01, -0.01] {
        let mode = cross_braced().lowest_buckling_factor(&on_heads(force, -100.0)).expect("one tie is enough");
        assert_close("critical factor", mode.factor, TIE_KN_M * HEIGHT / 200.0, 1e-4);
    }
}

/// Sway of the heads with the one tie that is pulled. The columns shorten by δ, and the tie is pulled by the sway beyond
/// δ·tan α only: k·(Δ − δ·tan α) = H + P·Δ/h; with a lean φ, P·φ instead of H.
#[test]
fn one_tie_braces_against_sway() {
    let slackened = TIE_KN_M * 100.0 * HEIGHT / STIFF * 0.75;
    let sway = |force: f64| (force + slackened) / (TIE_KN_M - 200.0 / HEIGHT);
    for force in [0.01, -0.01] {
        let found = cross_braced().solve_second_order(&on_heads(force, -100.0)).expect("stands");
        assert_close("sway", found.displacement(3).ux, force.signum() * sway(force.abs()), 1e-3);
        let (tight, slack) = if force > 0.0 { (3, 4) } else { (4, 3) };
        assert!(found.axial_at(slack, 0.0).abs() < 1e-12);
        let tension = (force.abs() + 200.0 * sway(force.abs()) / HEIGHT) / 0.8;
        assert_close("tie", found.axial_at(tight, 0.0), tension, 1e-3);
    }
    let lean = Imperfections { sway: 1e-4, bows: Vec::new() };
    let found = cross_braced().solve_imperfect(&on_heads(0.0, -100.0), &lean).expect("stands");
    assert_close("lean", found.displacement(3).ux, sway(200.0 * 1e-4), 1e-3);
    assert!(found.axial_at(4, 0.0).abs() < 1e-12 && found.axial_at(3, 0.0) > 0.0);
}

/// A mast hinged at its foot between two ties that bear nothing while it stands upright: it leans to one side, where
/// one of them holds it, k·h = 60·4 = 240 kN. Props beside it instead would do the same.
#[test]
fn idle_parts_hold_one_way_each() {
    for acts in [Acts::Tension, Acts::Compression, Acts::Both] {
        let mut mast = Frame::default();
        for (x, y) in [(0.0, 0.0), (0.0, 4.0), (-2.0, 4.0), (2.0, 4.0)] {
            mast.add_node(x, y);
        }
        mast.add_member(Member::beam(0, 1, 1e5, STIFF));
        mast.add_member(Member { acts, ..Member::bar(2, 1, 120.0) });
        mast.add_member(Member { acts, ..Member::bar(1, 3, 120.0) });
        mast.supports.extend([0, 2, 3].map(|node| Support { node, ux: true, uy: true, rz: false }));
        let load = NodalLoad { node: 1, fx: 0.0, fy: -10.0, mz: 0.0 };
        let loads = LoadCase { nodal: vec![load], ..LoadCase::default() };
        let mode = mast.lowest_buckling_factor(&loads).expect("stands");
        let expected = if acts == Acts::Both { 48.0 } else { 24.0 };
        assert_close("critical factor", mode.factor, expected, 1e-2);
    }
}

/// A stiff portal that stands on two feet, V = 10 kN 1 m from the left one and H = 20 kN at 3 m: the left foot lifts, and
/// cannot hold the portal sideways any more. A spring against rotation at the right foot takes 20·3 − 10·3 = 30 kNm.
#[test]
fn a_lifted_foot_holds_nothing_sideways() {
    for grips in [true, false] {
        let mut portal = Frame::default();
        for (x, y) in [(0.0, 0.0), (0.0, 3.0), (1.0, 3.0), (4.0, 3.0), (4.0, 0.0)] {
            portal.add_node(x, y);
        }
        (0..4).for_each(|i| _ = portal.add_member(Member::beam(i, i + 1, 1e6, 1e7)));
        for node in [0, 4] {
            portal.supports.push(Support { node, ux: true, uy: false, rz: false });
            let grips = grips.then_some(Dof::Ux);
            portal.contacts.push(Contact { grips, ..Contact::rigid(node, Dof::Uy) });
        }
        portal.springs.push(Spring { node: 4, dof: Dof::Rz, k: 1e4 });
        let loads = [(1, 20.0, 0.0), (2, 0.0, -10.0)].map(|(node, fx, fy)| NodalLoad { node, fx, fy, mz: 0.0 });
        let loads = LoadCase { nodal: loads.to_vec(), ..LoadCase::default() };
        let found = portal.factorise().expect("stands").solve_one_sided(&loads).expect("the right foot is enough");
        assert_eq!(found.open_contacts, [0]);
        let small = |factor: f64| {
            let mut small = LoadCase::default();
            small.add(factor, &loads);
            small
        };
        let second_order = portal.solve_second_order(&small(1e-6)).expect("stands");
        for (solution, factor) in [(&found.solution, 1.0), (&second_order, 1e-6)] {
            let [left, right] = [0, 4].map(|node| solution.reaction(node));
            assert!(left.fy.abs() < 1e-9 * factor);
            assert_eq!(left.fx.abs() < 1e-9 * factor, grips);
            assert_close("right, upright", right.fy, 10.0 * factor, 1e-6);
            assert_close("sideways", right.fx + left.fx, -20.0 * factor, 1e-6);
            assert_close("right, moment", right.mz, 30.0 * factor, 1e-5);
        }
        // With all of it to the left foot's side, both stand.
        let back = LoadCase { nodal: vec![NodalLoad { fx: -1.0, ..loads.nodal[0] }, loads.nodal[1]], ..loads.clone() };
        let found = portal.factorise().expect("stands").solve_one_sided(&back).expect("both feet stand");
        assert!(found.open_contacts.is_empty() && found.solution.reaction(0).fx.abs() > 1e-3);
    }
}

/// Sense of the force with which a part works: that of tension, or along the positive direction.
#[derive(Clone, Copy, Debug)]
enum Part {
    Member(usize, f64),
    Contact(usize),
}

/// A chain of beams that rests on feet at both ends and between, held sideways at one node, with ties and props between
/// its nodes.
fn any_frame() -> impl Strategy<Value = Frame> {
    let nodes = prop::collection::vec((0.5..2.0, -1.0..1.0, 50.0..5e3), 2..6);
    let bars = prop::collection::vec((0..6usize, 0..6usize, 1e3..1e5, 0..3usize), 0..4);
    let feet = prop::collection::vec((1..6usize, any::<bool>(), prop::option::of(10.0..1e4)), 0..3);
    (nodes, bars, feet, 0..6usize).prop_map(|(steps, bars, feet, fixed)| {
        let mut frame = Frame::default();
        frame.add_node(0.0, 0.0);
        let mut x = 0.0;
        for (dx, y, ei) in steps {
            x += dx;
            let node = frame.add_node(x, y);
            frame.add_member(Member::beam(node - 1, node, ei, 1e5));
        }
        let count = frame.nodes.len();
        for (i, j, ea, kind) in bars {
            let (i, j) = (i % count, j % count);
            if i != j {
                let acts = [Acts::Both, Acts::Tension, Acts::Compression][kind];
                frame.add_member(Member { acts, ..Member::bar(i, j, ea) });
            }
        }
        let fixed = fixed % count;
        frame.supports.push(Support { node: fixed, ux: true, uy: false, rz: false });
        frame.contacts.extend([0, count - 1].map(|node| Contact::rigid(node, Dof::Uy)));
        for (node, up, k) in feet {
            let node = node % count;
            if frame.contacts.iter().all(|contact| contact.node != node) {
                let k = k.unwrap_or(f64::INFINITY);
                frame.contacts.push(Contact { pushes_positive: up, k, ..Contact::rigid(node, Dof::Uy) });
            }
        }
        frame
    })
}

fn any_loads() -> impl Strategy<Value = Vec<(usize, [f64; 3])>> {
    prop::collection::vec((0..6usize, [-20.0..20.0, -50.0..15.0, -5.0..5.0]), 1..5)
}

fn loads_on(frame: &Frame, seed: &[(usize, [f64; 3])]) -> LoadCase {
    let load = |&(node, [fx, fy, mz]): &(usize, [f64; 3])| NodalLoad { node: node % frame.nodes.len(), fx, fy, mz };
    LoadCase { nodal: seed.iter().map(load).collect(), ..LoadCase::default() }
}

fn parts(frame: &Frame) -> Vec<Part> {
    let sign = |acts: Acts| match acts {
        Acts::Both => None,
        Acts::Tension => Some(1.0),
        Acts::Compression => Some(-1.0),
    };
    let members = frame.members.iter().enumerate();
    let members = members.filter_map(|(member, data)| Some(Part::Member(member, sign(data.acts)?)));
    members.chain((0..frame.contacts.len()).map(Part::Contact)).collect()
}

/// The frame without the parts that let go, with ordinary members, supports and springs in place of those that work.
fn rebuilt(frame: &Frame, parts: &[Part], open: &[bool]) -> Frame {
    let mut rest = frame.clone();
    rest.contacts.clear();
    for (part, open) in parts.iter().zip(open).rev() {
        match (*part, open) {
            (Part::Member(member, _), true) => _ = rest.members.remove(member),
            (Part::Member(member, _), false) => rest.members[member].acts = Acts::Both,
            (Part::Contact(_), true) => {}
            (Part::Contact(contact), false) => {
                let Contact { node, dof, k, .. } = frame.contacts[contact];
                if k.is_finite() {
                    rest.springs.push(Spring { node, dof, k });
                } else {
                    rest.supports.push(Support { node, ux: false, uy: true, rz: false });
                }
            }
        }
    }
    rest
}

/// Force of each part where it works, and its gap where it has let go, by the rebuilt frame; both should be positive.
fn works(frame: &Frame, parts: &[Part], open: &[bool], rest: &Solution) -> (Vec<f64>, Vec<f64>) {
    let gone = |before: usize| {
        let open = parts.iter().zip(open).filter(|(_, open)| **open);
        open.filter(|(part, _)| matches!(part, Part::Member(member, _) if *member < before)).count()
    };
    let (mut forces, mut gaps) = (Vec::new(), Vec::new());
    for (part, open) in parts.iter().zip(open) {
        match (*part, open) {
            (Part::Member(member, sign), false) => forces.push(sign * rest.axial_at(member - gone(member), 0.0)),
            (Part::Member(member, sign), true) => {
                let Member { i, j, .. } = frame.members[member];
                let (from, to) = (frame.nodes[i], frame.nodes[j]);
                let length = (to.x - from.x).hypot(to.y - from.y);
                let (a, b) = (rest.displacement(i), rest.displacement(j));
                let longer = ((b.ux - a.ux) * (to.x - from.x) + (b.uy - a.uy) * (to.y - from.y)) / length;
                gaps.push(-sign * longer);
            }
            (Part::Contact(contact), open) => {
                let Contact { node, pushes_positive, .. } = frame.contacts[contact];
                let sign = if pushes_positive { 1.0 } else { -1.0 };
                if *open {
                    gaps.push(sign * rest.displacement(node).uy);
                } else {
                    forces.push(sign * rest.reaction(node).fy);
                }
            }
        }
    }
    (forces, gaps)
}

fn least(values: &[f64]) -> f64 {
    values.iter().copied().fold(0.0, f64::min)
}

/// Movements and reactions of all nodes.
fn values(frame: &Frame, solution: &Solution) -> [Vec<f64>; 2] {
    let nodes = 0..frame.nodes.len();
    let moved = nodes.clone().map(|node| solution.displacement(node)).flat_map(|by| [by.ux, by.uy, by.rz]);
    let reactions = nodes.map(|node| solution.reaction(node)).flat_map(|reaction| [reaction.fx, reaction.fy]);
    [moved.collect(), reactions.collect()]
}

fn greatest(values: &[f64]) -> f64 {
    values.iter().fold(0.0, |most: f64, value| most.max(value.abs()))
}

fn lets_go(parts: &[Part], found: &OneSided) -> Vec<bool> {
    let open = |part: &Part| match part {
        Part::Member(member, _) => found.slack_members.contains(member),
        Part::Contact(contact) => found.open_contacts.contains(contact),
    };
    parts.iter().map(open).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, failure_persistence: None, ..ProptestConfig::default() })]

    /// The solution is that of the one set of parts, of all sets, of which all that work bear a force and all others have
    /// a gap; and if there is none, the frame does not stand.
    #[test]
    fn the_set_that_fits_is_found(frame in any_frame(), seed in any_loads(), start in any::<u64>()) {
        let (loads, parts) = (loads_on(&frame, &seed), parts(&frame));
        let force = loads.nodal.iter().map(|load| load.fx.abs() + load.fy.abs() + load.mz.abs()).sum::<f64>();
        let sets = (0..1_u64 << parts.len()).map(|set| (0..parts.len()).map(|part| set >> part & 1 == 1).collect());
        let fit: Vec<(Vec<bool>, Solution)> = sets.filter_map(|open: Vec<bool>| {
            let solution = rebuilt(&frame, &parts, &open).factorise().ok()?.solve(&loads).ok()?;
            let (forces, gaps) = works(&frame, &parts, &open, &solution);
            let moved = greatest(&values(&frame, &solution)[0]);
            (least(&forces) >= -1e-7 * force && least(&gaps) >= -1e-7 * moved).then_some((open, solution))
        }).collect();

        let factorised = frame.factorise().expect("stands with all parts");
        let mut contacts = factorised.contacts();
        let found = match contacts.solve(&loads) {
            Ok(found) => found,
            Err(error) => {
                prop_assert!(matches!(error, FrameError::Mechanism { .. }), "{error}");
                prop_assert!(fit.is_empty(), "{error}, but {:?} fits", fit[0].0);
                return Ok(());
            }
        };
        let all = values(&frame, &found.solution);
        let near = |other: &Solution| {
            values(&frame, other).iter().zip(&all).all(|(other, found)| {
                let allowed = 1e-6 * greatest(found).max(greatest(other));
                other.iter().zip(found).all(|(a, b)| (a - b).abs() <= allowed)
            })
        };
        prop_assert!(fit.iter().any(|(_, solution)| near(solution)), "{:?} does not fit", lets_go(&parts, &found));

        // Complementarity of the solution itself.
        let open = lets_go(&parts, &found);
        for (part, open) in parts.iter().zip(&open) {
            let force_kn = match *part {
                Part::Member(member, sign) => sign * found.solution.axial_at(member, 0.0),
                Part::Contact(contact) => found.solution.contact_force(contact),
            };
            prop_assert!(force_kn >= -1e-8 * force, "{part:?}: {force_kn}");
            prop_assert!(!open || force_kn.abs() <= 1e-7 * force, "{part:?}: {force_kn}");
        }

        // Equilibrium of the whole.
        let (mut sum, mut sizes) = ([0.0; 3], 1e-9);
        let mut add = |node: usize, fx: f64, fy: f64, mz: f64| {
            let at = frame.nodes[node];
            let terms = [fx, fy, mz + at.x * fy - at.y * fx];
            sum.iter_mut().zip(terms).for_each(|(sum, term)| *sum += term);
            sizes += fx.abs() + fy.abs() + mz.abs() + (at.x * fy).abs() + (at.y * fx).abs();
        };
        loads.nodal.iter().for_each(|load| add(load.node, load.fx, load.fy, load.mz));
        for node in 0..frame.nodes.len() {
            let reaction = found.solution.reaction(node);
            add(node, reaction.fx, reaction.fy, reaction.mz);
        }
        prop_assert!(sum.iter().all(|sum| sum.abs() <= 1e-8 * sizes), "{sum:?} of {sizes}");

        // Any start.
        let goes = |part: usize| start >> part & 1 == 1;
        let mut like = OneSided { solution: found.solution.clone(), slack_members: vec![], open_contacts: vec![], sliding_contacts: vec![] };
        for (index, part) in parts.iter().enumerate().filter(|(index, _)| goes(*index)) {
            match *part {
                Part::Member(member, _) => like.slack_members.push(member),
                Part::Contact(contact) => like.open_contacts.push(contact),
            }
            let _ = index;
        }
        match contacts.solve_like(&like, &loads) {
            Ok(again) => prop_assert!(near(&again.solution), "from {:?}", lets_go(&parts, &like)),
            // A start that cannot stand at all.
            Err(_) => prop_assert!(rebuilt(&frame, &parts, &lets_go(&parts, &like)).factorise().is_err()),
        }
    }

    /// In second order the parts that have let go are those that would in the deflected frame: the solution is that of
    /// the frame without them, which leaves them a gap, and all others bear a force.
    #[test]
    fn second_order_is_consistent(frame in any_frame(), seed in any_loads(), part_of_critical in 0.01..0.6) {
        let (loads, parts) = (loads_on(&frame, &seed), parts(&frame));
        let Ok(mode) = frame.lowest_buckling_factor(&loads) else { return Ok(()) };
        let mut scaled = LoadCase::default();
        scaled.add(if mode.factor.is_finite() { part_of_critical * mode.factor } else { 1.0 }, &loads);
        let Ok(found) = frame.solve_second_order(&scaled) else { return Ok(()) };
        let force = scaled.nodal.iter().map(|load| load.fx.abs() + load.fy.abs() + load.mz.abs()).sum::<f64>();
        let bears = |part: &Part| match *part {
            Part::Member(member, _) => found.axial_at(member, 0.0).abs() > 1e-9 * force,
            Part::Contact(contact) => found.contact_force(contact).abs() > 1e-9 * force,
        };
        let open: Vec<bool> = parts.iter().map(|part| !bears(part)).collect();
        // A part that neither bears anything nor has a gap may count either way.
        let Ok(rest) = rebuilt(&frame, &parts, &open).solve_second_order(&scaled) else { return Ok(()) };
        let (forces, gaps) = works(&frame, &parts, &open, &rest);
        let [moved, reactions] = values(&frame, &rest);
        prop_assert!(least(&forces) >= -1e-6 * force, "{open:?}: {forces:?}");
        prop_assert!(least(&gaps) >= -1e-6 * greatest(&moved), "{open:?}: {gaps:?}");
        for (found, rest) in values(&frame, &found).iter().zip([moved, reactions]) {
            let allowed = 1e-5 * greatest(&rest);
            prop_assert!(found.iter().zip(&rest).all(|(a, b)| (a - b).abs() <= allowed), "{open:?}: {found:?} {rest:?}");
        }
    }
}
