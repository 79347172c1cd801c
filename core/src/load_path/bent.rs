//! One bent as a plane frame: primary, legs, stubs, transfer beams and bracing.

use super::chain::{BeamLoad, Chain};
use super::wall_frame::STEEL_KPA;
use crate::actions::KN_PER_KG;
use crate::analysis::{Axis, Dof, Frame, LoadCase, Member, NodalLoad, Reaction, Removal, Solution, Support};
use crate::catalogue::Item;
use crate::model::{BracingBar, LegKind, PlacedFalsework};
use crate::scheme::{Direction, Lateral};

/// A bent ready to be loaded.
pub struct Bent<'a> {
    pub falsework: &'a PlacedFalsework,
    pub frame: Frame,
    /// What carries the heads: the primary, or the level chain of heads.
    pub top: Chain,
    pub transfer: Option<Chain>,
    /// Node of each leg at each of its held levels; of a stub, its foot and head.
    pub legs: Vec<Vec<usize>>,
    /// First member of each leg.
    pub first_member: Vec<usize>,
    pub braces: Vec<(BracingBar, usize)>,
}

/// Own weight of one bent, kN.
#[derive(Clone, Copy, Debug, Default)]
pub struct OwnWeight {
    /// Of the primary and what hangs at its level.
    pub on_heads_kn: f64,
    /// Of everything lower.
    pub below_kn: f64,
}

impl<'a> Bent<'a> {
    /// Builds the frame. The primary, where it runs across, reaches between `ends_m`.
    pub fn build(falsework: &'a PlacedFalsework, ends_m: [f64; 2]) -> Self {
        let mut frame = Frame::default();
        let level = |z: f64| move |x: f64| (x, z);
        let heads: Vec<f64> = falsework.head_lines().collect();
        let top = match falsework.direction {
            Direction::Across => {
                let (ei, ea) = stiffness(&falsework.primary, 1.0);
                Chain::build(&mut frame, &ends_m, &heads, level(falsework.head_m), |i, j| Member::beam(i, j, ei, ea))
            }
            Direction::Along => {
                let (_, ea) = stiffness(&falsework.secondary, 1.0);
                Chain::build(&mut frame, &[], &heads, level(falsework.head_m), |i, j| Member::bar(i, j, ea))
            }
        };
        let transfer = falsework.opening.as_ref().map(|opening| {
            let (ei, ea) = stiffness(&opening.transfer, f64::from(opening.drawn.transfers));
            let stubs = falsework.legs.iter().filter(|leg| leg.kind == LegKind::Stub).map(|leg| leg.x_m);
            let places: Vec<f64> = stubs.collect();
            let beam = |i, j| Member::beam(i, j, ei, ea);
            Chain::build(&mut frame, &places, &opening.trestles_m, level(opening.underside_m), beam)
        });
        let mut bent =
            Self { falsework, frame, top, transfer, legs: Vec::new(), first_member: Vec::new(), braces: Vec::new() };
        bent.add_legs();
        bent.add_braces();
        if falsework.lateral == Lateral::HeldByWalls {
            let ends = [bent.top.first_node, bent.top.last_node()];
            bent.frame.supports.extend(ends.map(|node| Support { node, ux: true, uy: false, rz: false }));
        }
        bent
    }

    fn add_legs(&mut self) {
        for leg in &self.falsework.legs {
            let carrier = |chain: &Option<Chain>| chain.as_ref().and_then(|chain| chain.node_at(leg.x_m));
            let (foot, levels, head) = match leg.kind {
                LegKind::Stub => (carrier(&self.transfer), vec![leg.foot_m, leg.head_m], self.top.node_at(leg.x_m)),
                LegKind::Leg => (None, self.falsework.held_levels(leg), self.top.node_at(leg.x_m)),
                LegKind::Trestle => (None, self.falsework.held_levels(leg), carrier(&self.transfer)),
            };
            let foot = foot.unwrap_or_else(|| {
                let node = self.frame.add_node(leg.x_m, leg.foot_m);
                self.frame.supports.push(Support { node, ux: true, uy: true, rz: false });
                node
            });
            let mut nodes = vec![foot];
            for &z in &levels[1..levels.len() - 1] {
                nodes.push(self.frame.add_node(leg.x_m, z));
            }
            nodes.push(head.unwrap_or(foot));
            let tube = self.falsework.item_of(leg).leg();
            let (ei, ea) = tube.map_or((0.0, 0.0), |tube| (STEEL_KPA * tube.inertia_m4(), STEEL_KPA * tube.area_m2()));
            self.first_member.push(self.frame.members.len());
            for (index, pair) in nodes.windows(2).enumerate() {
                let pinned = index + 2 == nodes.len();
                self.frame.add_member(Member { release_j: pinned, ..Member::beam(pair[0], pair[1], ei, ea) });
            }
            self.legs.push(nodes);
        }
    }

    fn add_braces(&mut self) {
        let Some(tube) = self.falsework.brace.brace() else { return };
        let tube_ea = STEEL_KPA * tube.area_m2();
        for bar in self.falsework.bracing() {
            let node = |leg: usize, z: f64| {
                let levels = self.falsework.held_levels(&self.falsework.legs[leg]);
                let index = levels.iter().position(|level| (level - z).abs() < 1e-6).unwrap_or(0);
                self.legs[leg][index]
            };
            let (i, j) = (node(bar.legs.0, bar.from.z), node(bar.legs.1, bar.to.z));
            let length = (bar.to - bar.from).length();
            let softness = length / tube_ea + 2.0 / tube.coupler_stiffness_kn_m;
            let member = self.frame.add_member(Member::bar(i, j, length / softness));
            self.braces.push((bar, member));
        }
    }

    /// What lets these legs off their bases. One that no tube holds below its head hangs plumb.
    pub fn bases(&self, lifted: &[usize]) -> Removal {
        let tubed = |leg: usize| {
            let below_head = &self.legs[leg][..self.legs[leg].len() - 1];
            self.braces.iter().any(|&(_, member)| {
                let Member { i, j, .. } = self.frame.members[member];
                below_head.contains(&i) || below_head.contains(&j)
            })
        };
        let mut supports = Vec::with_capacity(2 * lifted.len());
        for &leg in lifted {
            let foot = self.legs[leg][0];
            supports.push((foot, Dof::Uy));
            if tubed(leg) {
                supports.push((foot, Dof::Ux));
            }
        }
        Removal { supports, ..Removal::default() }
    }

    /// The primary, where it runs across.
    pub fn primary(&self) -> Option<&Chain> {
        (self.falsework.direction == Direction::Across).then_some(&self.top)
    }

    /// Adds the own weight of one bent: primary, legs, transfer beams, bracing.
    pub fn own_weight(&self, case: &mut LoadCase) -> OwnWeight {
        let mut own = OwnWeight::default();
        let line = |chain: &Chain, kn_m: f64, case: &mut LoadCase| {
            let load = BeamLoad::Line { a: chain.start_m(), b: chain.end_m(), w1: kn_m, w2: kn_m };
            chain.load(&[load], Axis::Y, -1.0, case);
            load.total_kn()
        };
        if let Some(primary) = self.primary() {
            own.on_heads_kn += line(primary, weight_kn_m(&self.falsework.primary), case);
        }
        if let (Some(chain), Some(opening)) = (&self.transfer, &self.falsework.opening) {
            let kn_m = weight_kn_m(&opening.transfer) * f64::from(opening.drawn.transfers);
            own.below_kn += line(chain, kn_m, case);
            let [left, right] = opening.beam_m;
            let ends = [(chain.first_node, chain.start_m() - left), (chain.last_node(), right - chain.end_m())];
            for (node, beyond_m) in ends {
                case.nodal.push(NodalLoad { node, fx: 0.0, fy: -kn_m * beyond_m, mz: 0.0 });
                own.below_kn += kn_m * beyond_m;
            }
        }
        let mut hang = |node: usize, kg: f64| {
            let kn = kg * KN_PER_KG;
            case.nodal.push(NodalLoad { node, fx: 0.0, fy: -kn, mz: 0.0 });
            *(if self.in_top(node) { &mut own.on_heads_kn } else { &mut own.below_kn }) += kn;
        };
        for (leg, nodes) in self.falsework.legs.iter().zip(&self.legs) {
            if let (Some(tube), Some(&head)) = (self.falsework.item_of(leg).leg(), nodes.last()) {
                hang(head, tube.mass_kg_m() * (leg.head_m - leg.foot_m) + tube.ends_kg);
            }
        }
        if let Some(tube) = self.falsework.brace.brace() {
            for (bar, member) in &self.braces {
                let kg = tube.mass_kg_m() * (bar.to - bar.from).length() + 2.0 * tube.coupler_kg;
                hang(self.frame.members[*member].i, kg / 2.0);
                hang(self.frame.members[*member].j, kg / 2.0);
            }
        }
        own
    }

    pub fn in_top(&self, node: usize) -> bool {
        (self.top.first_node..=self.top.last_node()).contains(&node)
    }

    /// Downward loads on the primary or on the heads.
    pub fn vertical(&self, loads: &[BeamLoad], case: &mut LoadCase) {
        self.top.load(loads, Axis::Y, -1.0, case);
    }

    /// Greatest compression in each leg, kN; negative where it is pulled all along.
    pub fn compressions(&self, solution: &Solution) -> Vec<f64> {
        let of = |index: usize| {
            let members = self.first_member[index]..self.first_member[index] + self.legs[index].len() - 1;
            members.map(|member| -solution.axial_at(member, 0.0)).fold(f64::NEG_INFINITY, f64::max)
        };
        (0..self.legs.len()).map(of).collect()
    }

    /// Greatest bending moment in each leg, kNm; in a stub that at the top of the transfer beams.
    pub fn leg_moments(&self, solution: &Solution) -> Vec<f64> {
        let of = |index: usize| {
            let leg = &self.falsework.legs[index];
            let first = self.first_member[index];
            if leg.kind == LegKind::Stub {
                let foot = self.frame.nodes[self.legs[index][0]].y;
                return solution.moment_at(first, leg.foot_m - foot).abs();
            }
            let members = first..first + self.legs[index].len() - 1;
            members.map(|member| solution.moment_at(member, 0.0).abs()).fold(0.0, f64::max)
        };
        (0..self.legs.len()).map(of).collect()
    }

    /// Upward reaction under each leg, kN; zero for stubs.
    pub fn reactions(&self, at_foot: impl Fn(usize) -> Reaction) -> Vec<f64> {
        let of = |index: usize| match self.falsework.legs[index].kind {
            LegKind::Stub => 0.0,
            _ => at_foot(self.legs[index][0]).fy,
        };
        (0..self.legs.len()).map(of).collect()
    }

    /// What the primary hands to legs, stubs and diagonals at its level, kN in all.
    pub fn heads_kn(&self, solution: &Solution) -> f64 {
        let legs: f64 = (0..self.legs.len())
            .filter(|&index| self.legs[index].last().is_some_and(|&head| self.in_top(head)))
            .map(|index| {
                let last = self.first_member[index] + self.legs[index].len() - 2;
                -solution.axial_at(last, 0.0)
            })
            .sum();
        let diagonals: f64 = self
            .braces
            .iter()
            .map(|(bar, member)| {
                let rise = (bar.to.z - bar.from.z) / (bar.to - bar.from).length();
                let tension = solution.axial_at(*member, 0.0);
                let Member { i, j, .. } = self.frame.members[*member];
                if self.in_top(j) {
                    -tension * rise
                } else if self.in_top(i) {
                    tension * rise
                } else {
                    0.0
                }
            })
            .sum();
        legs + diagonals
    }

    /// Axial force of each bracing tube, tension positive.
    pub fn brace_forces<'s>(&'s self, solution: &'s Solution) -> impl Iterator<Item = (&'s BracingBar, f64)> {
        self.braces.iter().map(|(bar, member)| (bar, solution.axial_at(*member, 0.0)))
    }
}

fn stiffness(item: &Item, count: f64) -> (f64, f64) {
    item.beam().map_or((0.0, 0.0), |beam| (beam.ei_knm2 * count, beam.ea_kn * count))
}

/// Own weight of a beam item, kN/m.
pub fn weight_kn_m(item: &Item) -> f64 {
    item.beam().map_or(0.0, |beam| beam.mass_kg_m * KN_PER_KG)
}
