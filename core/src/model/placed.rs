use super::Face;
use crate::catalogue::Item;
use crate::geometry::{Motion, Point};
use crate::scheme::{Arrangement, Bearing, Direction, FixedEnd, HeldBy, Hinge, Id, Lateral, Opening, SlabAge};

/// A shutter on its face.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedShutter {
    /// Names it.
    pub id: Id,
    /// Such as `S1`.
    pub mark: String,
    /// The pour that it holds.
    pub pour: Id,
    /// The face that it forms.
    pub face: Face,
    /// +1 where the concrete pushes it to the right, −1 to the left.
    pub outward: f64,
    /// How it is built up.
    pub arrangement: Arrangement,
    /// Lower edge of the board.
    pub bottom_m: f64,
    /// Upper edge of the board.
    pub top_m: f64,
    /// The board.
    pub facing: Item,
    /// The secondaries.
    pub secondary: Item,
    /// Levels of level secondaries, or places along the bay of upright ones.
    pub secondaries_m: Vec<f64>,
    /// The primaries.
    pub primary: Item,
    /// Places along the bay of upright primaries, or levels of level ones.
    pub primaries_m: Vec<f64>,
    /// Whether its foot is held to either side.
    pub foot_held: bool,
    /// What holds each upright line down, as the user says, kN.
    pub hold_down_kn: f64,
    /// How it is swung off its concrete, if it is.
    pub hinge: Option<Hinge>,
}

impl PlacedShutter {
    /// Square to its face, out of the concrete: along `x` and up.
    pub fn square(&self) -> [f64; 2] {
        let stretch = self.face.stretch();
        [self.outward / stretch, -self.face.lean() * self.outward / stretch]
    }

    /// Where a hinge of it lies.
    pub fn hinge_at(&self, hinge: &Hinge) -> Point {
        let z = self.top_m + hinge.above_top_m;
        Point::new(self.face.x_at(z) + self.outward * hinge.off_m, z)
    }

    /// How it turns about a hinge: what is longer of it, below the hinge or above, goes off the concrete.
    pub fn turn(&self, hinge: &Hinge) -> Motion {
        let way = if self.hangs_from(hinge) { self.outward } else { -self.outward };
        Motion::Turn { about: self.hinge_at(hinge), way }
    }

    /// The end of its board that is farther from a hinge.
    pub fn far_end(&self, hinge: &Hinge) -> Point {
        let z = if self.hangs_from(hinge) { self.bottom_m } else { self.top_m };
        Point::new(self.face.x_at(z), z)
    }

    fn hangs_from(&self, hinge: &Hinge) -> bool {
        2.0 * (self.top_m + hinge.above_top_m) >= self.bottom_m + self.top_m
    }
}

/// A row of ties or props.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedTieRow {
    /// Names it.
    pub id: Id,
    /// Such as `T1`.
    pub mark: String,
    /// The shutter at one end.
    pub shutter: Id,
    /// The shutter at the other end, if it is not fixed there.
    pub to: Option<Id>,
    /// Its level.
    pub z_m: f64,
    /// Length between the shutters' primaries, or to the fixed end.
    pub length_m: f64,
    /// Tie (tension) or leg (compression).
    pub item: Item,
    /// Places along the bay.
    pub places_m: Vec<f64>,
    /// What holds its fixed end.
    pub held: Option<FixedEnd>,
}

impl PlacedTieRow {
    /// How far its fixed end lies below it.
    pub fn below_m(&self) -> f64 {
        self.held.map_or(0.0, |held| held.below_m)
    }

    /// Whether it can pull as well as push: a tube whose end is held against both. Props of EN 1065 only push.
    pub fn pulls_and_pushes(&self) -> bool {
        let two_way = self.held.is_some_and(|held| held.by != HeldBy::Thrust);
        two_way && self.item.leg().is_some_and(|leg| leg.rating.is_none())
    }

    /// Its level length, from the shutter to its fixed end seen from above.
    pub fn run_m(&self) -> f64 {
        let below_m = self.below_m();
        if below_m == 0.0 { self.length_m } else { (self.length_m * self.length_m - below_m * below_m).max(0.0).sqrt() }
    }
}

/// Falsework under one soffit.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedFalsework {
    /// Names it.
    pub id: Id,
    /// Such as `F1`.
    pub mark: String,
    /// The pour that it carries.
    pub pour: Id,
    /// The soffit and its slopes, from left to right.
    pub faces: Vec<Face>,
    /// The way that primaries run.
    pub direction: Direction,
    /// The board.
    pub facing: Item,
    /// The secondaries.
    pub secondary: Item,
    /// Places of secondaries: `x` (across) or `y` (along).
    pub secondaries_m: Vec<f64>,
    /// The primaries.
    pub primary: Item,
    /// Underside of the primaries: heads of legs and stubs.
    pub head_m: f64,
    /// Places of the bents along the bay.
    pub bents_m: Vec<f64>,
    /// Legs, trestles and stubs of one bent, from left to right.
    pub legs: Vec<Leg>,
    /// Item of ordinary legs and stubs.
    pub leg: Item,
    /// Item of bases.
    pub base: Item,
    /// Item of diagonals.
    pub brace: Item,
    /// Levels above the floor at which legs are held.
    pub lift_m: f64,
    /// Pairs of neighbouring `legs` on the floor with level tubes between, by index.
    pub tied: Vec<(usize, usize)>,
    /// Those of `tied` with diagonals as well.
    pub braced: Vec<(usize, usize)>,
    /// What takes the horizontal load.
    pub lateral: Lateral,
    /// What bases stand on.
    pub bearing: Bearing,
    /// Age of a slab that they stand on.
    pub slab: Option<SlabAge>,
    /// Level that the bases stand on.
    pub floor_m: f64,
    /// The way through it.
    pub opening: Option<PlacedOpening>,
}

/// A leg of a bent.
#[derive(Clone, Debug, PartialEq)]
pub struct Leg {
    /// The leg line, or the opening for a trestle.
    pub owner: Id,
    /// Such as `L3`, `L4s` for a stub, `A1t2` for a trestle leg.
    pub mark: String,
    /// Where it stands.
    pub x_m: f64,
    /// What it does.
    pub kind: LegKind,
    /// Lower end.
    pub foot_m: f64,
    /// Upper end.
    pub head_m: f64,
}

/// What a leg does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LegKind {
    /// From floor to primary.
    Leg,
    /// From transfer beam to primary.
    Stub,
    /// From floor to transfer beam, with a post on to the primary.
    Trestle,
}

/// An opening with what carries the falsework over it.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedOpening {
    /// As drawn.
    pub drawn: Opening,
    /// Such as `A1`.
    pub mark: String,
    /// The transfer beams.
    pub transfer: Item,
    /// The trestle legs.
    pub trestle: Item,
    /// Places of the four trestle legs, from left to right.
    pub trestles_m: [f64; 4],
    /// Left and right end of the transfer beams.
    pub beam_m: [f64; 2],
    /// Underside of the transfer beams.
    pub underside_m: f64,
}

impl PlacedFalsework {
    /// The elements that its parts belong to: itself, its lines of legs and its opening.
    pub fn owners(&self) -> impl Iterator<Item = Id> {
        let opening = self.opening.iter().map(|opening| opening.drawn.id);
        std::iter::once(self.id).chain(self.legs.iter().map(|leg| leg.owner)).chain(opening)
    }

    /// The item that a leg is made of.
    pub fn item_of(&self, leg: &Leg) -> &Item {
        match (&self.opening, leg.kind) {
            (Some(opening), LegKind::Trestle) => &opening.trestle,
            _ => &self.leg,
        }
    }

    /// Where primaries are carried, from left to right: heads of legs, stubs and posts.
    pub fn head_lines(&self) -> impl Iterator<Item = f64> + '_ {
        self.legs.iter().filter(|leg| leg.kind != LegKind::Trestle).map(|leg| leg.x_m)
    }

    /// Levels at which a leg that stands on the floor is held, its foot and head included.
    pub fn held_levels(&self, leg: &Leg) -> Vec<f64> {
        let mut levels = vec![leg.foot_m];
        let mut level = self.floor_m + self.lift_m;
        while level < leg.head_m - 0.1 {
            if level > leg.foot_m + 0.1 {
                levels.push(level);
            }
            level += self.lift_m;
        }
        levels.push(leg.head_m);
        levels
    }

    /// Horizontal and diagonal tubes of one bent.
    pub fn bracing(&self) -> Vec<BracingBar> {
        let mut bars = Vec::new();
        for &(a, b) in &self.tied {
            let (left, right) = (&self.legs[a], &self.legs[b]);
            let (on_left, on_right) = (self.held_levels(left), self.held_levels(right));
            let common = on_left.len().min(on_right.len());
            let bar = |from: f64, to: f64, diagonal| BracingBar {
                legs: (a, b),
                from: Point::new(left.x_m, from),
                to: Point::new(right.x_m, to),
                diagonal,
            };
            for level in 1..common - 1 {
                bars.push(bar(on_left[level], on_right[level], false));
            }
            if self.braced.contains(&(a, b)) {
                for lift in 0..common - 1 {
                    let (low, high) = (on_left[lift], on_left[lift + 1]);
                    let (low_right, high_right) = (on_right[lift], on_right[lift + 1]);
                    bars.push(if lift % 2 == 0 { bar(low, high_right, true) } else { bar(high, low_right, true) });
                }
            }
        }
        bars
    }
}

/// A tube between two legs of a bent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BracingBar {
    /// The legs that it joins, by index.
    pub legs: (usize, usize),
    /// Its end on the left leg.
    pub from: Point,
    /// Its end on the right leg.
    pub to: Point,
    /// A diagonal, or level.
    pub diagonal: bool,
}
