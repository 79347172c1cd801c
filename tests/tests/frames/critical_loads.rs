//! Critical loads that lie where a member has a whole number of half waves, so that the search comes upon them to the
//! last figure and rounding must not change what it counts.

use falsewright_core::analysis::{Frame, LoadCase, Member, NodalLoad, Support};
use falsewright_tests::assert_close;
use std::f64::consts::PI;

fn factors(frame: &Frame, loads: &LoadCase, count: usize) -> Vec<f64> {
    frame.buckling_modes(loads, count).expect("stands").into_iter().map(|mode| mode.factor).collect()
}

/// A frame found at random. Its first member is clamped at both ends and buckles in two half waves.
fn bent() -> (Frame, LoadCase) {
    let mut frame = Frame::default();
    for (x, y) in [
        (0.0, 0.0),
        (1.6973845293278873, -1.1990871205419433),
        (2.1973845293278873, -0.1301891055446633),
        (3.8752757914661893, 0.2666674101833459),
        (4.439314845724843, 1.125375740057751),
        (5.979034769089335, -0.018096373932069396),
    ] {
        frame.add_node(x, y);
    }
    for (i, j, ei, ea) in [
        (0, 1, 1453.3966327893527, 986946.3466123022),
        (1, 2, 1312.4963219694714, 719374.1160282362),
        (2, 3, 1491.2799754487467, 701340.762603177),
        (3, 4, 3308.5467832501777, 508869.78136982216),
        (4, 5, 159.89316551398554, 614698.255832606),
        (5, 4, 2113.5247852480543, 20000.0),
    ] {
        frame.add_member(Member { release_i: i == 5, ..Member::beam(i, j, ei, ea) });
    }
    frame.supports = vec![
        Support { node: 0, ux: true, uy: true, rz: true },
        Support { node: 1, ux: false, uy: true, rz: true },
        Support { node: 3, ux: true, uy: false, rz: true },
    ];
    let nodal = vec![
        NodalLoad { node: 2, fx: -7.853146701340577, fy: 47.46717081424331, mz: -1.3518784532796535 },
        NodalLoad { node: 1, fx: -14.395490407049632, fy: 0.0, mz: 0.0 },
        NodalLoad { node: 4, fx: 15.443904543259402, fy: -25.811624478213037, mz: -7.796857579510037 },
    ];
    (frame, LoadCase { nodal, ..LoadCase::default() })
}

fn with_joint(frame: &Frame, member: usize, t: f64) -> Frame {
    let mut frame = frame.clone();
    let whole = frame.members[member];
    let (from, to) = (frame.nodes[whole.i], frame.nodes[whole.j]);
    let middle = frame.add_node(from.x + t * (to.x - from.x), from.y + t * (to.y - from.y));
    frame.members[member] = Member { j: middle, release_j: false, ..whole };
    frame.add_member(Member { i: middle, release_i: false, ..whole });
    frame
}

/// Eigenvalues of NumPy with cubic elements and their geometric stiffness, 16 and 32 to a member, whose error falls with
/// the fourth power of their number: carried on to none.
#[test]
fn a_joint_more_leaves_the_second_factor() {
    let (frame, loads) = bent();
    let expected = [(306.35560906, 306.34620248), (308.66064293, 308.66003509), (590.61215017, 590.61207871)]
        .map(|(coarse, fine)| fine + (fine - coarse) / 15.0);
    let frames = [frame.clone(), with_joint(&frame, 2, 0.33319685471181293), with_joint(&frame, 4, 0.5)];
    for frame in frames {
        for (factor, expected) in factors(&frame, &loads, 3).into_iter().zip(expected) {
            assert_close("factor", factor, expected, 1e-7);
        }
    }
}

/// Two legs clamped at foot and head, one twice as long as the other, so that the short one's first critical load is the
/// long one's third. Source: Timoshenko and Gere, 2nd ed. 1961, section 2.7: N·L²/EI = (2π)², (2·4.4934)², (4π)², …
#[test]
fn legs_in_step_keep_all_their_factors() {
    let ei = 450.0;
    for (long, short) in [(2.0, 1.0), (3.0, 1.5), (5.3, 2.65), (4.2, 2.1)] {
        let mut frame = Frame::default();
        let mut loads = LoadCase::default();
        for (x, length) in [(0.0, long), (1.0, short)] {
            let (foot, head) = (frame.add_node(x, 0.0), frame.add_node(x, length));
            frame.add_member(Member::beam(foot, head, ei, 1e5));
            frame.supports.push(Support { node: foot, ux: true, uy: true, rz: true });
            frame.supports.push(Support { node: head, ux: true, uy: false, rz: true });
            loads.nodal.push(NodalLoad { node: head, fx: 0.0, fy: -1.0, mz: 0.0 });
        }
        // ψ = L/2·√(N/EI) of the long leg: multiples of π, roots of tan ψ = ψ, and twice as much in the short one.
        let psi = [PI, 4.493_409_458, 2.0 * PI, 2.0 * PI, 7.725_251_837, 2.0 * 4.493_409_458];
        for (factor, psi) in factors(&frame, &loads, psi.len()).into_iter().zip(psi) {
            assert_close("factor", factor, ei * (2.0 * psi / long) * (2.0 * psi / long), 2e-8);
        }
    }
}
