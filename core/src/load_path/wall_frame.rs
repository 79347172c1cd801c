//! Shutters joined by ties and props, solved together in the section plane.

use super::beam::{BeamLoad, LineResult};
use crate::analysis::{Axis, DistributedLoad, Frame, FrameError, LoadCase, Member, PointLoad, Solution, Support};

/// Modulus of elasticity of steel, kPa.
const STEEL_KPA: f64 = 210e6;

/// One upright line of a shutter: a soldier, or an upright secondary.
pub struct Upright {
    /// Its place in the section, m; any that differs from the others.
    pub x_m: f64,
    /// +1 where the concrete pushes it to the right, −1 to the left.
    pub outward: f64,
    pub bottom_m: f64,
    pub top_m: f64,
    pub ei_knm2: f64,
    pub ea_kn: f64,
    pub foot_held: bool,
    /// Loads from its bottom up, outward positive.
    pub loads: Vec<BeamLoad>,
}

/// A tie or prop between two uprights, or from one to something fixed.
pub struct Link {
    pub from: usize,
    pub to: Option<usize>,
    pub z_m: f64,
    /// Axial stiffness that falls to one upright, kN/m.
    pub stiffness_kn_m: f64,
    /// Works in tension (tie) or in compression (prop), not both.
    pub is_tie: bool,
}

/// Forces in a group of uprights.
pub struct GroupResult {
    /// One for each upright.
    pub lines: Vec<LineResult>,
    /// Force that holds each foot against moving outward, kN.
    pub feet: Vec<f64>,
    /// Force of each link where it works, kN; zero where it has gone slack.
    pub links: Vec<f64>,
}

/// Axial stiffness of a steel member, kN/m.
pub fn steel_stiffness(area_m2: f64, length_m: f64) -> f64 {
    STEEL_KPA * area_m2 / length_m
}

/// Solves the group. Links that would have to push (ties) or pull (props) drop out.
pub fn solve(uprights: &[Upright], links: &[Link]) -> Result<GroupResult, FrameError> {
    let mut working: Vec<bool> = vec![true; links.len()];
    loop {
        let group = Group::build(uprights, links, &working);
        let solution = group.frame.factorise()?.solve(&group.loads)?;
        let forces = group.link_forces(&solution, links);
        let slack = forces.iter().position(|&force| force < -1e-9);
        match slack {
            Some(index) => working[index] = false,
            None => return Ok(group.read(&solution, uprights, forces)),
        }
    }
}

struct Group {
    frame: Frame,
    loads: LoadCase,
    /// Levels of the nodes of each upright.
    levels: Vec<Vec<f64>>,
    /// First node and first member of each upright.
    first: Vec<(usize, usize)>,
    /// Member of each link that works.
    link_members: Vec<Option<usize>>,
    /// Indices into `levels` that are supported.
    supported: Vec<Vec<usize>>,
}

impl Group {
    fn build(uprights: &[Upright], links: &[Link], working: &[bool]) -> Self {
        let mut group = Self {
            frame: Frame::default(),
            loads: LoadCase::default(),
            levels: Vec::new(),
            first: Vec::new(),
            link_members: vec![None; links.len()],
            supported: Vec::new(),
        };
        for (index, upright) in uprights.iter().enumerate() {
            let holds = |link: &&Link| link.from == index || link.to == Some(index);
            let mut levels: Vec<f64> = links.iter().filter(holds).map(|link| link.z_m).collect();
            levels.extend([upright.bottom_m, upright.top_m]);
            levels.sort_by(f64::total_cmp);
            levels.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
            group.add_upright(upright, levels);
        }
        for (index, link) in links.iter().enumerate().filter(|(index, _)| working[*index]) {
            group.add_link(index, link, uprights);
        }
        for levels in &mut group.supported {
            levels.sort_unstable();
            levels.dedup();
        }
        group
    }

    fn add_upright(&mut self, upright: &Upright, levels: Vec<f64>) {
        let first_node = self.frame.nodes.len();
        let first_member = self.frame.members.len();
        for &z in &levels {
            self.frame.add_node(upright.x_m, z);
        }
        for i in 1..levels.len() {
            self.frame.add_member(Member::beam(first_node + i - 1, first_node + i, upright.ei_knm2, upright.ea_kn));
        }
        self.frame.supports.push(Support { node: first_node, ux: upright.foot_held, uy: true, rz: false });
        for load in &upright.loads {
            self.add_load(load, upright, &levels, first_member);
        }
        self.supported.push(if upright.foot_held { vec![0] } else { Vec::new() });
        self.first.push((first_node, first_member));
        self.levels.push(levels);
    }

    fn add_load(&mut self, load: &BeamLoad, upright: &Upright, levels: &[f64], first_member: usize) {
        let spans = levels.windows(2).enumerate().map(|(index, pair)| {
            (first_member + index, pair[0] - upright.bottom_m, pair[1] - upright.bottom_m)
        });
        match *load {
            BeamLoad::Point { a, p } => {
                let Some((member, start, end)) = spans.clone().find(|span| a <= span.2 + 1e-9) else { return };
                let along = (a - start).clamp(0.0, end - start);
                self.loads.point.push(PointLoad { member, axis: Axis::X, p: p * upright.outward, a: along });
            }
            BeamLoad::Line { a, b, w1, w2 } => {
                for (member, start, end) in spans {
                    let (from, to) = (a.max(start), b.min(end));
                    if to - from > 1e-9 {
                        let w = |z: f64| (w1 + (w2 - w1) * (z - a) / (b - a)) * upright.outward;
                        self.loads.distributed.push(DistributedLoad {
                            member,
                            axis: Axis::X,
                            w1: w(from),
                            w2: w(to),
                            a: from - start,
                            b: to - start,
                        });
                    }
                }
            }
        }
    }

    fn add_link(&mut self, index: usize, link: &Link, uprights: &[Upright]) {
        let mut node_of = |upright: usize| {
            let level = self.levels[upright].iter().position(|z| (z - link.z_m).abs() < 1e-6).unwrap_or(0);
            self.supported[upright].push(level);
            self.first[upright].0 + level
        };
        let from = node_of(link.from);
        let to = match link.to {
            Some(upright) => node_of(upright),
            None => {
                let near = &uprights[link.from];
                let side = if link.is_tie { -near.outward } else { near.outward };
                let node = self.frame.add_node(near.x_m + side, link.z_m);
                self.frame.supports.push(Support { node, ux: true, uy: true, rz: true });
                node
            }
        };
        let length = (self.frame.nodes[to].x - self.frame.nodes[from].x).abs();
        self.link_members[index] =
            Some(self.frame.add_member(Member::bar(from, to, link.stiffness_kn_m * length)));
    }

    /// Force of each link, positive where it works as it should.
    fn link_forces(&self, solution: &Solution, links: &[Link]) -> Vec<f64> {
        let force = |(link, member): (&Link, &Option<usize>)| {
            let tension = member.map_or(0.0, |member| solution.axial_at(member, 0.0));
            if link.is_tie { tension } else { -tension }
        };
        links.iter().zip(&self.link_members).map(force).collect()
    }

    fn read(&self, solution: &Solution, uprights: &[Upright], links: Vec<f64>) -> GroupResult {
        let line = |index: usize| {
            let from_bottom: Vec<f64> = self.levels[index].iter().map(|z| z - self.levels[index][0]).collect();
            LineResult::read(solution, self.first[index].1, &from_bottom, &self.supported[index])
        };
        let foot = |index: usize| -solution.reaction(self.first[index].0).fx * uprights[index].outward;
        GroupResult {
            lines: (0..uprights.len()).map(line).collect(),
            feet: (0..uprights.len()).map(foot).collect(),
            links,
        }
    }
}
