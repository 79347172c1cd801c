//! The falsework bent that is timed: a row of legs under a spliced primary, with an access opening that a transfer beam
//! spans from one pair of tower legs to the other.

use falsewright_core::analysis::{Axis, DistributedLoad, Frame, LoadCase, Member, NodalLoad, Support};

const STEEL: f64 = 210e6;
const SPACING: f64 = 1.2;
const HEIGHT: f64 = 4.2;
const OPENING: f64 = 4.4;
/// Between the two legs of a tower.
const PAIR: f64 = 0.7;
const TRANSFER: f64 = 3.4;
const STUBS: usize = 3;
/// From a leg to a splice of the primary.
const SPLICE: f64 = 0.3;
/// Downwards on the primary, kN/m, and the part of it that acts sideways.
const LOAD: f64 = 28.0;
const LATERAL: f64 = 0.025;

/// Lets the allocator keep what is freed, as it does in any program that has run for a while: the GNU allocator gives the
/// top of its heap back to the system until a large block has once been freed.
pub fn warm_heap() {
    drop(std::hint::black_box(vec![0_u8; 8 << 20]));
}

/// A bent and its loads.
pub struct Bent {
    pub frame: Frame,
    pub loads: LoadCase,
    /// Members of the primary with start and length along x.
    #[allow(dead_code)]
    pub primary: Vec<(usize, f64, f64)>,
}

impl Bent {
    /// A bent of this many legs, 6 or more.
    pub fn new(legs: usize) -> Self {
        let leg = |i, j| Member { release_j: true, ..Member::beam(i, j, STEEL * 9.2e-7, STEEL * 14.9e-4) };
        let transfer = |i, j| Member::beam(i, j, STEEL * 11_690e-8, STEEL * 97.3e-4);
        let mut frame = Frame::default();

        // Towers stand at both sides of the opening.
        let left = legs / 2;
        let tower = left - 2..left + 2;
        let (mut x, mut at) = (0.0, Vec::with_capacity(legs));
        for index in 0..legs {
            at.push(x);
            x += match index + 1 {
                next if next == left => OPENING,
                next if next == left - 1 || next == left + 1 => PAIR,
                _ => SPACING,
            };
        }
        let (mut feet, mut heads, mut capitals) = (Vec::new(), Vec::new(), Vec::new());
        for (index, &x) in at.iter().enumerate() {
            let foot = frame.add_node(x, 0.0);
            frame.supports.push(Support { node: foot, ux: true, uy: true, rz: false });
            let capital = tower.contains(&index).then(|| frame.add_node(x, TRANSFER));
            let head = frame.add_node(x, HEIGHT);
            match capital {
                Some(capital) => {
                    frame.add_member(leg(foot, capital));
                    frame.add_member(Member { release_i: true, ..leg(capital, head) });
                }
                None => _ = frame.add_member(leg(foot, head)),
            }
            feet.push(foot);
            heads.push((x, head));
            capitals.push(capital);
        }

        let mut chain: Vec<usize> = capitals[left - 2..left].iter().flatten().copied().collect();
        let mut tops = heads.clone();
        for stub in 1..=STUBS {
            let x = at[left - 1] + OPENING * stub as f64 / (STUBS + 1) as f64;
            let (low, high) = (frame.add_node(x, TRANSFER), frame.add_node(x, HEIGHT));
            frame.add_member(leg(low, high));
            chain.push(low);
            tops.insert(left + stub - 1, (x, high));
        }
        chain.extend(capitals[left..left + 2].iter().flatten());
        for pair in chain.windows(2) {
            frame.add_member(transfer(pair[0], pair[1]));
        }

        let brace =
            |i, j| Member { release_i: true, release_j: true, ..Member::beam(i, j, STEEL * 1e-8, STEEL * 4.53e-4) };
        for gap in (0..legs - 1).filter(|&gap| gap != left - 1) {
            match (capitals[gap], capitals[gap + 1]) {
                (Some(low), Some(high)) => {
                    frame.add_member(brace(feet[gap], high));
                    frame.add_member(brace(low, heads[gap + 1].1));
                    frame.add_member(brace(low, feet[gap + 1]));
                }
                _ if gap % 3 == 0 => _ = frame.add_member(brace(feet[gap], heads[gap + 1].1)),
                _ => {}
            }
        }
        let mut bent = Self { frame, loads: LoadCase::default(), primary: Vec::new() };
        bent.add_primary(&tops);
        bent.loads = bent.front(0.0, x);
        let total: f64 = LOAD * (at[legs - 1] - at[0]);
        let share = |&(_, node): &(f64, usize)| NodalLoad { node, fx: LATERAL * total / legs as f64, fy: 0.0, mz: 0.0 };
        bent.loads.nodal = heads.iter().map(share).collect();
        bent
    }

    /// The primary over its supports, hinged at a splice in every eighth gap.
    fn add_primary(&mut self, tops: &[(f64, usize)]) {
        for (gap, pair) in tops.windows(2).enumerate() {
            let [from, to] = [pair[0], pair[1]];
            if gap % 8 == 1 && to.0 - from.0 > 2.5 * SPLICE {
                let splice = (from.0 + SPLICE, self.frame.add_node(from.0 + SPLICE, HEIGHT));
                self.add_span(from, splice, false);
                self.add_span(splice, to, true);
            } else {
                self.add_span(from, to, false);
            }
        }
    }

    fn add_span(&mut self, from: (f64, usize), to: (f64, usize), hinged: bool) {
        let beam = Member::beam(from.1, to.1, 11e6 * 2.0 * 46.1e-6, 11e6 * 2.0 * 80e-4);
        let member = self.frame.add_member(Member { release_i: hinged, ..beam });
        self.primary.push((member, from.0, to.0 - from.0));
    }

    /// Fresh concrete on the primary between two places.
    pub fn front(&self, from: f64, to: f64) -> LoadCase {
        let mut loads = LoadCase::default();
        for &(member, start, length) in &self.primary {
            let (a, b) = ((from - start).max(0.0), (to - start).min(length));
            if a < b {
                loads.distributed.push(DistributedLoad { member, axis: Axis::Y, w1: -LOAD, w2: -LOAD, a, b });
            }
        }
        loads
    }
}
