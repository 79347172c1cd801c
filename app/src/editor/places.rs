//! Where the elements of a scheme stand on the section: from the model where it has them, else from the faces.

use super::Bounds;
use falsewright_core::geometry::{Edge, Point, Side};
use falsewright_core::model::{Face, FaceKind, Model, Part, Role, Solid};
use falsewright_core::scheme::edit::soffit_extent;
use falsewright_core::scheme::{Falsework, Id, LegLine, Opening, Scheme, Shutter, TieEnd, TieRow};

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
}

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

    /// Around a shutter with all its members.
    pub fn shutter_bounds(&self, shutter: &Shutter) -> Option<Bounds> {
        let [foot, head] = self.board(shutter)?;
        let out = self.shutter_face(shutter)?.normal * SHUTTER_M;
        self.parts(shutter.id, |_| true).or_else(|| Bounds::around([foot, head, foot + out, head + out]))
    }

    /// A row from end to end.
    pub fn row_line(&self, row: &TieRow) -> Option<[Point; 2]> {
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
        self.soffit(falsework).map(|soffit| self.room(soffit))
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

    /// A leg line from foot to head; over an opening it stands on the transfer beams.
    pub fn leg(&self, falsework: &Falsework, line: &LegLine) -> Option<[Point; 2]> {
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
        let floor = self.floor(self.soffit(self.falsework(opening.falsework)?)?);
        let min = Point::new(opening.left_m, floor);
        Some(Bounds { min, max: min + Point::new(opening.width_m, opening.height_m) })
    }

    /// Around the transfer beams of an opening.
    pub fn transfer(&self, opening: &Opening) -> Option<Bounds> {
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

/// Lower and upper level of a face.
pub fn levels(face: &Face) -> [f64; 2] {
    [face.from.z.min(face.to.z), face.from.z.max(face.to.z)]
}

fn ends(part: &Part) -> [Point; 2] {
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
