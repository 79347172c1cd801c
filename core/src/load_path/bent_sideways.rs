//! What pushes a bent sideways, and what it hands on of that.

use super::bent::Bent;
use super::soffit_wind::Exposure;
use crate::actions::thermal::STEEL_EXPANSION;
use crate::analysis::{Axis, DistributedLoad, LoadCase, Member, NodalLoad, Solution, Strain};
use crate::catalogue::{Item, Kind};
use crate::geometry::Point;
use crate::model::LegKind;
use crate::scheme::{Direction, Lateral};

impl Bent<'_> {
    /// A horizontal force to the right at the level of the heads, shared equally by them.
    pub fn lateral(&self, force_kn: f64, case: &mut LoadCase) {
        let share = force_kn / self.top.supports.len() as f64;
        case.nodal.extend(self.top.support_nodes().map(|node| NodalLoad { node, fx: share, fy: 0.0, mz: 0.0 }));
    }

    /// A clockwise moment at the level of the heads, as a pair of forces on the outer ones.
    pub fn tilt(&self, moment_knm: f64, case: &mut LoadCase) {
        let heads: Vec<usize> = self.top.support_nodes().collect();
        if let [left, .., right] = heads[..] {
            let force = moment_knm / (self.frame.nodes[right].x - self.frame.nodes[left].x);
            case.nodal.extend([(left, force), (right, -force)].map(|(node, fy)| NodalLoad {
                node,
                fx: 0.0,
                fy,
                mz: 0.0,
            }));
        }
    }

    /// Wind of one kPa to the right: on every leg and diagonal above what shelters it, and on the edges that it carries.
    pub fn wind(&self, exposure: &Exposure, width_m: f64, case: &mut LoadCase) {
        for ((leg, nodes), first) in self.falsework.legs.iter().zip(&self.legs).zip(&self.first_member) {
            let Some(tube) = self.falsework.item_of(leg).leg() else { continue };
            let w = exposure.coefficient * tube.diameter_m;
            for (index, pair) in nodes.windows(2).enumerate() {
                let (low, high) = (self.frame.nodes[pair[0]].y, self.frame.nodes[pair[1]].y);
                let a = (exposure.sheltered_m - low).max(0.0);
                if a < high - low - 1e-9 {
                    let member = first + index;
                    case.distributed.push(DistributedLoad { member, axis: Axis::X, w1: w, w2: w, a, b: high - low });
                }
            }
        }
        if let Some(tube) = self.falsework.brace.brace() {
            for (bar, member) in &self.braces {
                let (low, high) = (bar.from.z.min(bar.to.z), bar.from.z.max(bar.to.z));
                let fx = exposure.coefficient * tube.diameter_m * (high - low.max(exposure.sheltered_m)).max(0.0) / 2.0;
                let Member { i, j, .. } = self.frame.members[*member];
                case.nodal.extend([i, j].map(|node| NodalLoad { node, fx, fy: 0.0, mz: 0.0 }));
            }
        }
        for [low, high] in &exposure.edges_m {
            let force = exposure.coefficient * (high - low) * width_m;
            self.lateral(force, case);
            self.tilt(force * ((low + high) / 2.0 - self.falsework.head_m), case);
        }
    }

    /// One kelvin more in every steel beam across the culvert. Whether there is any.
    pub fn warming(&self, case: &mut LoadCase) -> bool {
        let steel = |item: &Item| matches!(item.kind, Kind::Steel(_));
        let primary =
            (self.falsework.direction == Direction::Across && steel(&self.falsework.primary)).then_some(&self.top);
        let transfer =
            self.falsework.opening.as_ref().filter(|opening| steel(&opening.transfer)).and(self.transfer.as_ref());
        for chain in primary.into_iter().chain(transfer) {
            let members = chain.first_member..chain.first_member + chain.nodes_m.len() - 1;
            case.strains.extend(members.map(|member| Strain { member, axial: STEEL_EXPANSION, curvature: 0.0 }));
        }
        !case.strains.is_empty()
    }

    /// The loads of a case as forces to the right and up, each at its place.
    pub fn forces<'c>(&'c self, case: &'c LoadCase) -> impl Iterator<Item = (Point, [f64; 2])> + 'c {
        let turned = |axis: Axis, force: f64| if axis == Axis::X { [force, 0.0] } else { [0.0, force] };
        let on_member = |member: usize, along: f64| {
            let Member { i, j, .. } = self.frame.members[member];
            let [from, to] = [i, j].map(|node| Point::new(self.frame.nodes[node].x, self.frame.nodes[node].y));
            from.lerp(to, along / (to - from).length())
        };
        let nodal = case.nodal.iter().map(|load| {
            let node = &self.frame.nodes[load.node];
            (Point::new(node.x, node.y), [load.fx, load.fy])
        });
        let point = case.point.iter().map(move |load| (on_member(load.member, load.a), turned(load.axis, load.p)));
        let lines = case.distributed.iter().map(move |load| {
            let sum = load.w1 + load.w2;
            let length = load.b - load.a;
            let centre = if sum == 0.0 { length / 2.0 } else { length * (load.w1 + 2.0 * load.w2) / (3.0 * sum) };
            (on_member(load.member, load.a + centre), turned(load.axis, sum / 2.0 * length))
        });
        nodal.chain(point).chain(lines)
    }

    /// What of a case acts to the right on the heads and the primary between them, kN.
    pub fn sideways_on_top_kn(&self, case: &LoadCase) -> f64 {
        case.nodal.iter().filter(|load| self.in_top(load.node)).map(|load| load.fx).sum()
    }

    /// What the primary or the heads hand to legs, stubs, diagonals and walls, kN to the right.
    pub fn heads_sideways_kn(&self, solution: &Solution) -> f64 {
        let from_legs: f64 = (0..self.legs.len())
            .filter(|&index| self.legs[index].last().is_some_and(|&head| self.in_top(head)))
            .map(|index| {
                let last = self.first_member[index] + self.legs[index].len() - 2;
                let Member { i, j, .. } = self.frame.members[last];
                solution.shear_at(last, self.frame.nodes[j].y - self.frame.nodes[i].y)
            })
            .sum();
        let from_braces: f64 = self
            .braces
            .iter()
            .map(|(bar, member)| {
                let run = (bar.to.x - bar.from.x) / (bar.to - bar.from).length();
                let pull = solution.axial_at(*member, 0.0) * run;
                let Member { i, j, .. } = self.frame.members[*member];
                f64::from(u8::from(self.in_top(j))) * pull - f64::from(u8::from(self.in_top(i))) * pull
            })
            .sum();
        from_legs + from_braces + self.walls_kn(solution)
    }

    /// What bases and walls hold, kN to the left.
    pub fn ground_sideways_kn(&self, solution: &Solution) -> f64 {
        let bases = self.falsework.legs.iter().zip(&self.legs).filter(|(leg, _)| leg.kind != LegKind::Stub);
        self.walls_kn(solution) - bases.map(|(_, nodes)| solution.reaction(nodes[0]).fx).sum::<f64>()
    }

    /// What walls hold at the ends of the primary, kN to the left.
    fn walls_kn(&self, solution: &Solution) -> f64 {
        if self.falsework.lateral != Lateral::HeldByWalls {
            return 0.0;
        }
        -[self.top.first_node, self.top.last_node()].map(|node| solution.reaction(node).fx).iter().sum::<f64>()
    }
}
