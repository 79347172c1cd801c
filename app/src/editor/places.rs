//! Where the elements of a scheme stand on a view: on the section from the model where it has them, else from the faces;
//! along the bay from the spacings that the model is placed by.

use super::{Bounds, Seen, View, lower_end};
use falsewright_core::geometry::{Edge, Point, Side};
use falsewright_core::layout::{stands_on, walls_beside};
use falsewright_core::model::{Face, FaceKind, Model, Part, Role, Solid};
use falsewright_core::scheme::edit::soffit_extent;
use falsewright_core::scheme::{Falsework, Id, Joint, LegLine, Opening, Scheme, Shutter, TieEnd, TieRow};

/// Depth of a shutter whose build-up is not placed yet, m.
const SHUTTER_M: f64 = 0.37;
/// Depth of transfer beams that are not placed yet, m.
const TRANSFER_M: f64 = 0.3;

/// A scheme with its faces and, where computed, its placed parts.
#[derive(Clone, Copy)]
pub struct Places<'a> {
    /// The scheme.
    pub scheme: &'a Scheme,
    /// Its faces.
    pub faces: &'a [Face],
    /// What is placed.
    pub model: &'a Model,
    /// The view that they are on.
    pub seen: Seen,
}

/// Depth of the hatch under a floor, m.
pub const FLOOR_DEPTH_M: f64 = 0.25;
/// Joints can be taken hold of this far outside the concrete, m.
const JOINT_PAST_M: f64 = 0.3;

impl<'a> Places<'a> {
    /// Around the whole section; none on a blank sheet.
    pub fn section(&self) -> Option<Bounds> {
        Bounds::around(self.scheme.section.edges().iter().map(|edge| edge.line.from))
    }

    /// The shutter of this id.
    pub fn shutter(&self, id: Id) -> Option<&'a Shutter> {
        self.scheme.shutters.iter().find(|shutter| shutter.id == id)
    }

    /// The row of this id.
    pub fn row(&self, id: Id) -> Option<&'a TieRow> {
        self.scheme.ties.iter().find(|row| row.id == id)
    }

    /// The opening of this id.
    pub fn opening(&self, id: Id) -> Option<&'a Opening> {
        self.scheme.openings.iter().find(|opening| opening.id == id)
    }

    /// The falsework of this id.
    pub fn falsework(&self, id: Id) -> Option<&'a Falsework> {
        self.scheme.falsework.iter().find(|falsework| falsework.id == id)
    }

    /// The leg line of this id and its falsework.
    pub fn leg_line(&self, id: Id) -> Option<(&'a Falsework, &'a LegLine)> {
        let lines = self.scheme.falsework.iter().flat_map(|f| f.leg_lines.iter().map(move |line| (f, line)));
        lines.into_iter().find(|(_, line)| line.id == id)
    }

    /// The face that a shutter forms.
    pub fn shutter_face(&self, shutter: &Shutter) -> Option<&'a Face> {
        self.faces.iter().find(|face| face.of == shutter.face)
    }

    /// A shutter's board: from foot to head on the concrete's side.
    pub fn board(&self, shutter: &Shutter) -> Option<[Point; 2]> {
        let face = self.shutter_face(shutter)?;
        let [foot, head] = levels(face);
        let at = |z: f64, held: f64| Point::new(Edge::new(face.from, face.to).x_at(held), z);
        Some([at(foot - shutter.below_m, foot), at(head + shutter.above_m, head)])
    }

    /// Length of a bay.
    pub fn bay_m(&self) -> f64 {
        self.scheme.bays.length_m
    }

    /// The shutter or falsework that the view is of.
    pub fn subject(&self) -> Option<Bounds> {
        let id = self.seen.subject?;
        match self.seen.view {
            View::Section => None,
            View::Elevation => self.shutter_bounds(self.shutter(id)?),
            View::Plan => self.falsework_bounds(self.falsework(id)?),
        }
    }

    /// Around the section with its shutters, ties and props, and the ground under them.
    fn works(&self) -> Option<Bounds> {
        let section = self.section()?;
        let shutters = self.scheme.shutters.iter().filter_map(|shutter| self.shutter_bounds(shutter));
        let rows = self.scheme.ties.iter().filter_map(|row| self.row_line(row)).flatten();
        let corners = std::iter::once(section).chain(shutters).flat_map(|bounds| [bounds.min, bounds.max]);
        let mut bounds = Bounds::around(corners.chain(rows))?;
        bounds.min.z = bounds.min.z.min(self.scheme.ground.level_m) - FLOOR_DEPTH_M;
        Some(bounds)
    }

    /// Around all that the view shows: a section with its equipment and the ground, an elevation with the concrete below
    /// the shutter, a plan with the walls.
    pub fn drawn(&self) -> Option<Bounds> {
        let mut bounds = if self.seen.is_section() { self.works()? } else { self.subject()? };
        let id = self.seen.subject;
        if let Some(shutter) = id.and_then(|id| self.shutter(id))
            && let Some(face) = self.shutter_face(shutter)
        {
            let floor = stands_on(face, &self.scheme.section.boundary(), self.scheme.ground.level_m);
            bounds.min.z = bounds.min.z.min(lower_end(levels(face)[0], floor).0 - FLOOR_DEPTH_M);
        }
        if let Some(soffit) = id.and_then(|id| self.falsework(id)).and_then(|falsework| self.soffit(falsework)) {
            let middle = (soffit.from.z + self.floor(soffit)) / 2.0;
            let walls = walls_beside(&self.scheme.section.boundary(), [bounds.min.x, bounds.max.x], middle);
            for [left, right] in walls {
                (bounds.min.x, bounds.max.x) = (bounds.min.x.min(left), bounds.max.x.max(right));
            }
        }
        Some(bounds)
    }

    /// A construction joint from end to end; on an elevation where it is near the shutter.
    pub fn joint_line(&self, joint: &Joint) -> Option<[Point; 2]> {
        let past = Point::new(JOINT_PAST_M, 0.0);
        let bounds = match self.seen.view {
            View::Section => self.section()?,
            View::Elevation => {
                let bounds = self.subject()?;
                let near = bounds.min.z - JOINT_PAST_M..=bounds.max.z + JOINT_PAST_M;
                near.contains(&joint.z_m).then_some(bounds)?
            }
            View::Plan => return None,
        };
        let [left, right] = [bounds.min.x, bounds.max.x].map(|x| Point::new(x, joint.z_m));
        Some([left - past, right + past])
    }

    /// Around a shutter with all its members.
    pub fn shutter_bounds(&self, shutter: &Shutter) -> Option<Bounds> {
        let [foot, head] = self.board(shutter)?;
        if !self.seen.is_section() {
            let bounds = Bounds { min: Point::new(0.0, foot.z), max: Point::new(self.bay_m(), head.z) };
            return self.seen.is_elevation_of(shutter.id).then_some(bounds);
        }
        let out = self.shutter_face(shutter)?.normal * SHUTTER_M;
        self.parts(shutter.id, |_| true).or_else(|| Bounds::around([foot, head, foot + out, head + out]))
    }

    /// A row from end to end; on an elevation from its first tie to its last.
    pub fn row_line(&self, row: &TieRow) -> Option<[Point; 2]> {
        if !self.seen.is_section() {
            let shutter = self.shutter(self.seen.subject?).filter(|of| row.holds(of.id))?;
            let places = shutter.ties_along(row).positions(self.bay_m());
            return ends_of(&places).map(|ends| ends.map(|y| Point::new(y, row.z_m)));
        }
        let is_tie = |part: &&Part| part.owner == row.id && matches!(part.role, Role::Tie | Role::Prop);
        if let Some(part) = self.model.parts.iter().find(is_tie) {
            return Some(ends(part));
        }
        let outside = |shutter: &Shutter, past: f64| {
            let face = self.shutter_face(shutter)?;
            let [foot, head] = levels(face);
            let x = Edge::new(face.from, face.to).x_at(row.z_m.clamp(foot, head));
            Some(x + face.normal.x.signum() * past)
        };
        let shutter = self.shutter(row.shutter)?;
        let near = Point::new(outside(shutter, SHUTTER_M)?, row.z_m);
        let far = match row.to {
            TieEnd::Shutter { id } => Point::new(outside(self.shutter(id)?, SHUTTER_M)?, row.z_m),
            TieEnd::Fixed { length_m } => {
                let below_m = row.held.map_or(0.0, |held| held.below_m);
                let run_m = (length_m * length_m - below_m * below_m).max(0.0).sqrt();
                Point::new(outside(shutter, SHUTTER_M + run_m)?, row.z_m - below_m)
            }
        };
        Some([near, far])
    }

    /// The soffit of falsework.
    pub fn soffit(&self, falsework: &Falsework) -> Option<&'a Face> {
        self.faces.iter().find(|face| face.of == falsework.soffit)
    }

    /// Left and right end of a soffit with the slopes that adjoin it.
    pub fn extent(&self, soffit: &Face) -> [f64; 2] {
        soffit_extent(self.faces, soffit)
    }

    /// Level on which falsework under a soffit stands.
    pub fn floor(&self, soffit: &Face) -> f64 {
        let middle = soffit.from.lerp(soffit.to, 0.5) - Point::new(0.0, 1e-3);
        let below = self.scheme.section.boundary().floor_below(middle, Side::Before);
        below.unwrap_or(self.scheme.ground.level_m)
    }

    /// The room under a soffit.
    pub fn room(&self, soffit: &Face) -> Bounds {
        let [left, right] = self.extent(soffit);
        Bounds { min: Point::new(left, self.floor(soffit)), max: Point::new(right, soffit.from.z) }
    }

    /// The room that falsework stands in.
    pub fn falsework_bounds(&self, falsework: &Falsework) -> Option<Bounds> {
        let soffit = self.soffit(falsework)?;
        if self.seen.is_section() {
            return Some(self.room(soffit));
        }
        let [left, right] = self.extent(soffit);
        let bounds = Bounds { min: Point::new(left, 0.0), max: Point::new(right, self.bay_m()) };
        self.seen.is_plan_of(falsework.id).then_some(bounds)
    }

    /// The bents of falsework on its plan, from side to side.
    pub fn bent_lines(&self, falsework: &Falsework) -> Vec<[Point; 2]> {
        let Some(room) = self.falsework_bounds(falsework).filter(|_| self.seen.view == View::Plan) else {
            return Vec::new();
        };
        let line = |y: f64| [room.min.x, room.max.x].map(|x| Point::new(x, y));
        falsework.bents.positions(self.bay_m()).into_iter().map(line).collect()
    }

    /// The lowest soffit straight above a point with nothing between.
    pub fn soffit_above(&self, at: Point) -> Option<&'a Face> {
        if self.scheme.section.boundary().contains(at) {
            return None;
        }
        let above = self.faces.iter().filter(|face| {
            let (low, high) = (face.from.x.min(face.to.x), face.from.x.max(face.to.x));
            low < at.x && at.x < high && Edge::new(face.from, face.to).z_at(at.x) > at.z
        });
        let level = |face: &Face| Edge::new(face.from, face.to).z_at(at.x);
        let lowest = above.min_by(|a, b| level(a).total_cmp(&level(b)))?;
        match lowest.kind {
            FaceKind::Soffit => Some(lowest),
            FaceKind::SlopeUnder => {
                let mut soffits = self.faces.iter().filter(|face| face.kind == FaceKind::Soffit);
                soffits.find(|face| {
                    let [left, right] = self.extent(face);
                    face.of.pour == lowest.of.pour && left < at.x && at.x < right
                })
            }
            _ => None,
        }
    }

    /// A leg line from foot to head; over an opening it stands on the transfer beams. On a plan from the first bent to
    /// the last.
    pub fn leg(&self, falsework: &Falsework, line: &LegLine) -> Option<[Point; 2]> {
        if !self.seen.is_section() {
            let bents = falsework.bents.positions(self.bay_m());
            let ends = ends_of(&bents).filter(|_| self.seen.is_plan_of(falsework.id));
            return ends.map(|ends| ends.map(|y| Point::new(line.x_m, y)));
        }
        let upright = |role| matches!(role, Role::Leg | Role::Stub);
        let bounds = self.parts(line.id, upright).or_else(|| {
            let mut room = self.falsework_bounds(falsework)?;
            let over = self.scheme.openings.iter().filter(|opening| opening.falsework == falsework.id);
            for beams in over.filter_map(|opening| self.transfer(opening)) {
                if (beams.min.x..=beams.max.x).contains(&line.x_m) {
                    room.min.z = beams.max.z;
                }
            }
            Some(room)
        })?;
        Some([Point::new(line.x_m, bounds.min.z), Point::new(line.x_m, bounds.max.z)])
    }

    /// The clear way of an opening.
    pub fn way(&self, opening: &Opening) -> Option<Bounds> {
        if !self.seen.is_section() {
            let (left, right) = (opening.left_m, opening.left_m + opening.width_m);
            let way = Bounds { min: Point::new(left, 0.0), max: Point::new(right, self.bay_m()) };
            return self.seen.is_plan_of(opening.falsework).then_some(way);
        }
        let floor = self.floor(self.soffit(self.falsework(opening.falsework)?)?);
        let min = Point::new(opening.left_m, floor);
        Some(Bounds { min, max: min + Point::new(opening.width_m, opening.height_m) })
    }

    /// Around the transfer beams of an opening on the section.
    pub fn transfer(&self, opening: &Opening) -> Option<Bounds> {
        if !self.seen.is_section() {
            return None;
        }
        let placed = self.parts(opening.id, |role| role == Role::Transfer);
        placed.or_else(|| {
            let way = self.way(opening)?;
            let out = opening.guard_m + opening.trestle_m;
            let underside = way.min.z + opening.beam_underside_m;
            let min = Point::new(way.min.x - out, underside);
            Some(Bounds { min, max: Point::new(way.max.x + out, underside + TRANSFER_M) })
        })
    }

    fn parts(&self, owner: Id, role: impl Fn(Role) -> bool) -> Option<Bounds> {
        let own = self.model.parts.iter().filter(|part| part.owner == owner && role(part.role));
        Bounds::around(own.flat_map(ends))
    }
}

/// The first and last of several places.
fn ends_of(places: &[f64]) -> Option<[f64; 2]> {
    Some([*places.first()?, *places.last()?])
}

/// Lower and upper level of a face.
pub fn levels(face: &Face) -> [f64; 2] {
    [face.from.z.min(face.to.z), face.from.z.max(face.to.z)]
}

/// Both ends of a part on the section.
pub fn ends(part: &Part) -> [Point; 2] {
    match part.solid {
        Solid::Bar { from, to, .. } => [Point::new(from[0], from[2]), Point::new(to[0], to[2])],
        Solid::Sheet { from, to, .. } => [from, to],
        Solid::Plate { centre, width_m, .. } => {
            let half = Point::new(width_m / 2.0, 0.0);
            let centre = Point::new(centre[0], centre[2]);
            [centre - half, centre + half]
        }
    }
}
