//! Shutters joined by ties and props, solved together in the section plane.

use super::chain::{BeamLoad, Chain};
use super::line::Envelope;
use crate::analysis::{Axis, Frame, FrameError, LoadCase, Member, Solution, Support};
use crate::results::Station;

/// Modulus of elasticity of steel, kPa.
pub const STEEL_KPA: f64 = 210e6;

/// One upright line of a shutter: a soldier, or an upright secondary.
pub struct Upright {
    /// Place of its foot in the section, m; any that differs from the others.
    pub x_m: f64,
    /// How far it goes in `x` for each metre up.
    pub lean: f64,
    /// +1 where the concrete pushes it to the right, −1 to the left.
    pub outward: f64,
    pub bottom_m: f64,
    pub top_m: f64,
    pub ei_knm2: f64,
    pub ea_kn: f64,
    pub foot_held: bool,
    /// Its own weight and what it carries, by its length, kN/m.
    pub weight_kn_m: f64,
    /// Loads along it from its bottom up, square to it, outward positive.
    pub loads: Vec<BeamLoad>,
}

impl Upright {
    /// Its length by its height.
    fn stretch(&self) -> f64 {
        (1.0 + self.lean * self.lean).sqrt()
    }

    fn length_m(&self) -> f64 {
        (self.top_m - self.bottom_m) * self.stretch()
    }

    /// Distance of a level along it from its foot.
    fn offset_m(&self, z_m: f64) -> f64 {
        (z_m - self.bottom_m) * self.stretch()
    }

    fn point(&self, offset_m: f64) -> (f64, f64) {
        let up = offset_m / self.stretch();
        (self.x_m + self.lean * up, self.bottom_m + up)
    }
}

/// A tie or prop between two uprights, or from one to something fixed.
pub struct Link {
    pub from: usize,
    pub to: Option<usize>,
    pub z_m: f64,
    /// Axial stiffness that falls to one upright, kN/m.
    pub stiffness_kn_m: f64,
    /// Pulls (tie) or pushes (prop).
    pub is_tie: bool,
    /// Works the other way too.
    pub both_ways: bool,
    /// Level length and fall to its fixed end, m.
    pub run_m: f64,
    pub below_m: f64,
}

impl Link {
    /// Level part of its force.
    fn level_part(&self) -> f64 {
        if self.below_m == 0.0 { 1.0 } else { self.run_m / libm::hypot(self.run_m, self.below_m) }
    }
}

/// Forces in a group of uprights.
pub struct GroupResult {
    /// Greatest effects on each upright.
    pub envelopes: Vec<Envelope>,
    /// Forces and shape along each upright, from its foot.
    pub stations: Vec<Vec<Station>>,
    /// Force that holds each foot against moving outward, kN.
    pub feet: Vec<f64>,
    /// Force that holds each foot down, kN.
    pub lifts: Vec<f64>,
    /// Level part of the force of each link where it works, kN; zero where it has gone slack.
    pub links: Vec<f64>,
    /// What would have to hold the group upright, where nothing fixed does.
    pub missing_prop: Option<MissingProp>,
}

/// A prop that is not there.
pub struct MissingProp {
    pub upright: usize,
    pub z_m: f64,
    /// Against moving outward, kN.
    pub force_kn: f64,
}

/// Axial stiffness of a steel member, kN/m.
pub fn steel_stiffness(area_m2: f64, length_m: f64) -> f64 {
    STEEL_KPA * area_m2 / length_m
}

/// A group that cannot be solved.
pub struct Unsolved {
    pub error: FrameError,
    pub frame: Frame,
}

/// Solves the group. Links that would have to push (ties) or pull (props) drop out. Shutters tied only to each other
/// can lean over together: the solution then holds the highest link, and says what that takes.
///
/// A loop of its own, not the one-sided solution of the frame: what is held, and the spans of the uprights, follow from
/// the links that work.
pub fn solve(uprights: &[Upright], links: &[Link]) -> Result<GroupResult, Box<Unsolved>> {
    let mut working: Vec<bool> = vec![true; links.len()];
    loop {
        let group = Group::build(uprights, links, &working);
        let solution = match group.frame.factorise().and_then(|stands| stands.solve(&group.loads)) {
            Ok(solution) => solution,
            Err(error) => return Err(Box::new(Unsolved { error, frame: group.frame })),
        };
        let forces = group.link_forces(&solution, links);
        let one_way = forces.iter().enumerate().filter(|(index, _)| !links[*index].both_ways);
        match one_way.min_by(|a, b| a.1.total_cmp(b.1)) {
            Some((index, &force)) if force < -1e-9 => working[index] = false,
            _ => return Ok(group.read(&solution, uprights, forces)),
        }
    }
}

struct Group {
    frame: Frame,
    loads: LoadCase,
    /// One for each upright, measured from its bottom.
    chains: Vec<Chain>,
    /// Member of each link that works.
    link_members: Vec<Option<usize>>,
    /// Upright, level and node that are held in place of a missing prop.
    held: Option<(usize, f64, usize)>,
}

impl Group {
    fn build(uprights: &[Upright], links: &[Link], working: &[bool]) -> Self {
        let mut group = Self {
            frame: Frame::default(),
            loads: LoadCase::default(),
            chains: Vec::new(),
            link_members: vec![None; links.len()],
            held: None,
        };
        for (index, upright) in uprights.iter().enumerate() {
            let at_work = links.iter().zip(working).filter(|(_, working)| **working).map(|(link, _)| link);
            let holds = |link: &&Link| link.from == index || link.to == Some(index);
            let mut supports: Vec<f64> = at_work.filter(holds).map(|link| upright.offset_m(link.z_m)).collect();
            if upright.foot_held {
                supports.push(0.0);
            }
            group.add_upright(upright, &supports);
        }
        for (index, link) in links.iter().enumerate().filter(|(index, _)| working[*index]) {
            group.link_members[index] = group.add_link(link, uprights);
        }
        let at_work = links.iter().zip(working).filter(|(_, working)| **working).map(|(link, _)| link);
        if at_work.clone().all(|link| link.to.is_some())
            && let Some(highest) = at_work.max_by(|a, b| a.z_m.total_cmp(&b.z_m))
        {
            group.hold(highest, uprights);
        }
        group
    }

    fn add_upright(&mut self, upright: &Upright, supports_m: &[f64]) {
        let ends = [0.0, upright.length_m()];
        let point = |offset| upright.point(offset);
        let member = |i, j| Member::beam(i, j, upright.ei_knm2, upright.ea_kn);
        let chain = Chain::build(&mut self.frame, &ends, supports_m, point, member);
        self.frame.supports.push(Support { node: chain.first_node, ux: upright.foot_held, uy: true, rz: false });
        let stretch = upright.stretch();
        chain.load(&upright.loads, Axis::X, upright.outward / stretch, &mut self.loads);
        if upright.lean != 0.0 {
            chain.load(&upright.loads, Axis::Y, -upright.lean * upright.outward / stretch, &mut self.loads);
        }
        if upright.weight_kn_m != 0.0 {
            let weight =
                BeamLoad::Line { a: 0.0, b: upright.length_m(), w1: upright.weight_kn_m, w2: upright.weight_kn_m };
            chain.load(&[weight], Axis::Y, -1.0, &mut self.loads);
        }
        self.chains.push(chain);
    }

    fn add_link(&mut self, link: &Link, uprights: &[Upright]) -> Option<usize> {
        let node_of = |upright: usize| {
            let chain = &self.chains[upright];
            chain.node_at(uprights[upright].offset_m(link.z_m))
        };
        let from = node_of(link.from)?;
        let to = match link.to {
            Some(upright) => node_of(upright)?,
            None => {
                let near = &uprights[link.from];
                let side = if link.is_tie { -near.outward } else { near.outward };
                let x = near.point(near.offset_m(link.z_m)).0;
                let node = self.frame.add_node(x + side * link.run_m, link.z_m - link.below_m);
                self.frame.supports.push(Support { node, ux: true, uy: true, rz: true });
                node
            }
        };
        let [a, b] = [from, to].map(|node| self.frame.nodes[node]);
        let length = libm::hypot(b.x - a.x, b.y - a.y);
        Some(self.frame.add_member(Member::bar(from, to, link.stiffness_kn_m * length)))
    }

    /// Holds the near end of a link in place of a missing prop.
    fn hold(&mut self, link: &Link, uprights: &[Upright]) {
        let offset = uprights[link.from].offset_m(link.z_m);
        let Some(node) = self.chains[link.from].node_at(offset) else { return };
        self.frame.supports.push(Support { node, ux: true, uy: false, rz: false });
        self.held = Some((link.from, link.z_m, node));
    }

    /// Level part of the force of each link, positive where it works as it should.
    fn link_forces(&self, solution: &Solution, links: &[Link]) -> Vec<f64> {
        let force = |(link, member): (&Link, &Option<usize>)| {
            let tension = member.map_or(0.0, |member| solution.axial_at(member, 0.0)) * link.level_part();
            if link.is_tie { tension } else { -tension }
        };
        links.iter().zip(&self.link_members).map(force).collect()
    }

    fn read(&self, solution: &Solution, uprights: &[Upright], links: Vec<f64>) -> GroupResult {
        let foot = |(chain, upright): (&Chain, &Upright)| -solution.reaction(chain.first_node).fx * upright.outward;
        GroupResult {
            envelopes: self.chains.iter().map(|chain| chain.envelope(solution)).collect(),
            stations: self.chains.iter().map(|chain| chain.stations(solution)).collect(),
            feet: self.chains.iter().zip(uprights).map(foot).collect(),
            lifts: self.chains.iter().map(|chain| -solution.reaction(chain.first_node).fy).collect(),
            links,
            missing_prop: self.held.map(|(upright, z_m, node)| MissingProp {
                upright,
                z_m,
                force_kn: -solution.reaction(node).fx * uprights[upright].outward,
            }),
        }
    }
}
