//! Round places for what was drawn by hand: outer sizes on whole steps, thicknesses on 50 mm from the faces already
//! there, opposite thicknesses equal where they nearly are, floors and soffits of cells in one line.

use super::members::{Bend, Member, Members};
use falsewright_core::geometry::{Boundary, Edge, Point};
use falsewright_core::scheme::{Cut, Section};

/// Steps of outer sizes, m; the finest that a hand can draw is taken.
const STEPS_M: [f64; 5] = [0.1, 0.2, 0.5, 1.0, 5.0];

/// Steps of thicknesses and haunches, m.
const THICKNESS_M: f64 = 0.05;

/// No wall or slab is meant thinner, m; common practice for cast in place concrete with two layers of bars.
const THINNEST_M: f64 = 0.2;

/// Opposite walls that differ by no more than so many hand-widths were meant equal; base and roof.
const SAME_WALLS: f64 = 2.5;
const SAME_SLABS: f64 = 1.2;

/// Cells whose floors or soffits differ by no more than so many hand-widths were meant in line.
const IN_LINE: f64 = 2.0;

/// What is on the sheet already.
pub struct Sheet<'a> {
    /// The section, or nothing yet.
    pub section: &'a Section,
}

/// A member of a new ring beside an edge that is there.
struct Beside {
    /// Which member.
    index: usize,
    /// Where the edge is.
    edge_m: f64,
    /// The member from it, along the axis.
    off_m: f64,
}

impl Sheet<'_> {
    /// Moves members to round places.
    pub fn round(&self, members: &mut Members, finest_m: f64) {
        let Some(step) = STEPS_M.into_iter().find(|step| *step >= 0.8 * finest_m).or(STEPS_M.last().copied()) else {
            return;
        };
        let points = members.points();
        let beside = self.inside(&points) || self.enclosed_by(&points);
        for member in &mut members.list {
            if let Some(value) = value_mut(member) {
                *value = stepped(*value, if beside { THICKNESS_M } else { step });
            } else if let Member::Slant(from, to) = member {
                (*from, *to) = (on_grid(*from), on_grid(*to));
            }
        }
        if beside {
            self.round_thicknesses(members, &points, true, SAME_WALLS * finest_m);
            self.round_thicknesses(members, &points, false, SAME_SLABS * finest_m);
            self.line_up(members, finest_m);
        }
    }

    fn inside(&self, ring: &[Point]) -> bool {
        !self.section.outline.is_empty() && ring.iter().all(|p| self.section.boundary().contains(*p))
    }

    /// Whether the outline that is there lies inside a ring: its corners, then the void.
    pub fn enclosed_by(&self, ring: &[Point]) -> bool {
        let next = ring.iter().cycle().skip(1);
        let around = Boundary { edges: ring.iter().zip(next).map(|(from, to)| Edge::new(*from, *to)).collect() };
        let outline = &self.section.outline;
        !outline.is_empty() && outline.iter().all(|corner| around.contains(corner.point()))
    }

    /// Round thicknesses between upright (or level) members and the faces beside them.
    fn round_thicknesses(&self, members: &mut Members, points: &[Point], upright: bool, same_m: f64) {
        let count = points.len();
        let mut beside: Vec<Beside> = Vec::new();
        for (index, member) in members.list.iter().enumerate() {
            let value_m = match *member {
                Member::Upright(x) if upright => x,
                Member::Level(z) if !upright => z,
                _ => continue,
            };
            let ends = [points[index % count], points[(index + 1) % count]].map(|p| if upright { p.z } else { p.x });
            if let Some(edge_m) = self.nearest_face(upright, value_m, ends) {
                beside.push(Beside { index, edge_m, off_m: value_m - edge_m });
            }
        }
        for one in &mut beside {
            one.off_m = stepped(one.off_m.abs(), THICKNESS_M).max(THINNEST_M).copysign(one.off_m);
        }
        if let [a, b] = beside.as_mut_slice()
            && a.off_m.signum() != b.off_m.signum()
            && (a.off_m.abs() - b.off_m.abs()).abs() <= same_m
        {
            let mean = stepped((a.off_m.abs() + b.off_m.abs()) / 2.0, THICKNESS_M);
            (a.off_m, b.off_m) = (mean.copysign(a.off_m), mean.copysign(b.off_m));
        }
        for one in beside {
            if let Some(value) = members.list.get_mut(one.index).and_then(value_mut) {
                *value = one.edge_m + one.off_m;
            }
        }
    }

    /// The upright (or level) face beside a stretch of the other axis that is nearest to a place.
    fn nearest_face(&self, upright: bool, value_m: f64, [a, b]: [f64; 2]) -> Option<f64> {
        let of = |p: Point| if upright { [p.x, p.z] } else { [p.z, p.x] };
        let faces = self.section.edges().into_iter().filter_map(|edge| {
            let ([from, c], [to, d]) = (of(edge.line.from), of(edge.line.to));
            let beside = c.min(d) < a.max(b) && a.min(b) < c.max(d);
            (!edge.cut && (from - to).abs() < 1e-6 && beside).then_some(from)
        });
        faces.min_by(|a, b| (a - value_m).abs().total_cmp(&(b - value_m).abs()))
    }

    /// Floors and soffits at those of the other cells.
    fn line_up(&self, members: &mut Members, finest_m: f64) {
        let levels: Vec<f64> =
            self.section.cells.iter().flat_map(|cell| &cell.corners).map(|corner| corner.z_m).collect();
        for member in &mut members.list {
            if let Member::Level(z) = member {
                let nearest = levels.iter().min_by(|a, b| (*a - *z).abs().total_cmp(&(*b - *z).abs()));
                *z = nearest.copied().filter(|level| (level - *z).abs() <= IN_LINE * finest_m).unwrap_or(*z);
            }
        }
    }
}

fn value_mut(member: &mut Member) -> Option<&mut f64> {
    match member {
        Member::Level(value) | Member::Upright(value) => Some(value),
        Member::Slant(..) => None,
    }
}

/// The nearest whole multiple, without the dust of binary fractions.
fn stepped(value: f64, step: f64) -> f64 {
    (((value / step).round() * step) * 1e6).round() / 1e6
}

/// Haunches, and what of a ring's corners no level or upright member decides, on whole steps.
pub fn round_bends(bends: Vec<Bend>, members: &Members) -> Vec<Bend> {
    let leg = |leg_m: f64| stepped(leg_m, THICKNESS_M).max(THICKNESS_M);
    let decided = |member: Member| members.list.contains(&member);
    let round = |bend: Bend| {
        let (p, grid) = (bend.at, on_grid(bend.at));
        let x = if decided(Member::Upright(p.x)) { p.x } else { grid.x };
        let z = if decided(Member::Level(p.z)) { p.z } else { grid.z };
        let cut = bend.cut.map(|cut| Cut { before_m: leg(cut.before_m), after_m: leg(cut.after_m) });
        Bend { at: Point::new(x, z), cut }
    };
    bends.into_iter().map(round).collect()
}

fn on_grid(p: Point) -> Point {
    Point::new(stepped(p.x, THICKNESS_M), stepped(p.z, THICKNESS_M))
}
