use crate::geometry::Point;
use crate::scheme::Id;
use std::sync::Arc;

/// Parts that overlap by no more only touch, m.
pub const TOUCHING_M: f64 = 1e-3;

/// A physical item in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its mark on drawing and schedule, shared by equal parts of one element.
    pub mark: Arc<str>,
    /// The element of the scheme that it belongs to.
    pub owner: Id,
    /// What it does.
    pub role: Role,
    /// Its catalogue code.
    pub item: Arc<str>,
    /// Items of this kind here, side by side.
    pub count: u32,
    /// Its shape.
    pub solid: Solid,
}

impl Part {
    /// How far along the bay from the middle of all items here the axis of each of them is, m.
    pub fn abreast_m(&self) -> impl Iterator<Item = f64> + use<> {
        let breadth_m = if let Solid::Bar { breadth_m, .. } = self.solid { breadth_m } else { 0.0 };
        let middle = f64::from(self.count.saturating_sub(1)) / 2.0;
        (0..self.count).map(move |item| (f64::from(item) - middle) * breadth_m)
    }

    /// From where to where along the bay all items here reach together, m.
    pub fn along_bay_m(&self) -> [f64; 2] {
        match self.solid {
            Solid::Bar { from, to, breadth_m, .. } => {
                let half = f64::from(self.count) * breadth_m / 2.0;
                [from[1].min(to[1]) - half, from[1].max(to[1]) + half]
            }
            Solid::Sheet { length_m, .. } => [0.0, length_m],
            Solid::Plate { centre, length_m, .. } => [centre[1] - length_m / 2.0, centre[1] + length_m / 2.0],
        }
    }
}

/// What a part does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// Touches the concrete.
    Facing,
    /// Carries the facing.
    Secondary,
    /// Carries secondaries.
    Primary,
    /// Holds two shutters together.
    Tie,
    /// Holds a shutter from outside or two apart.
    Prop,
    /// Stands on the floor.
    Leg,
    /// Stands on transfer beams.
    Stub,
    /// Leg of a trestle beside an opening.
    Trestle,
    /// Carries stubs across an opening.
    Transfer,
    /// Diagonal of a bent.
    Brace,
    /// Level tube between legs.
    Ledger,
    /// Spreads a leg's force.
    Base,
}

impl Role {
    /// How checks and notes name a member of this role, behind its mark.
    pub fn name(self) -> &'static str {
        match self {
            Self::Facing => "facing",
            Self::Secondary => "secondary",
            Self::Primary => "primary",
            Self::Tie => "tie",
            Self::Prop => "prop",
            Self::Leg => "leg",
            Self::Stub => "stub",
            Self::Trestle => "trestle leg",
            Self::Transfer => "transfer beam",
            Self::Brace => "diagonal",
            Self::Ledger => "level tube",
            Self::Base => "base",
        }
    }
}

/// The shape of a part: drawn, measured and counted from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Solid {
    /// A bar with a straight axis.
    Bar {
        /// Start of its axis `[x, y, z]`.
        from: [f64; 3],
        /// End of its axis.
        to: [f64; 3],
        /// Its size in the section plane, across its axis; seen end-on, its size along `x` and `z`.
        size_m: [f64; 2],
        /// Its size along the bay; of a bar that runs along it, nought.
        breadth_m: f64,
    },
    /// A board along the bay.
    Sheet {
        /// Start of the face that touches the concrete, in the section.
        from: Point,
        /// End of it.
        to: Point,
        /// Side of the board: +1 to the right of the concrete, −1 to its left or below.
        outward: f64,
        /// From the concrete outward.
        thickness_m: f64,
        /// Length along the bay.
        length_m: f64,
    },
    /// A plate on the floor, its top at `centre`.
    Plate {
        /// Middle of its top `[x, y, z]`.
        centre: [f64; 3],
        /// Across the culvert.
        width_m: f64,
        /// Along the culvert.
        length_m: f64,
        /// Thickness.
        thickness_m: f64,
    },
}

impl Solid {
    /// The corners of what it takes up in the section, drawn in by `inset_m` on all sides.
    pub fn outline(&self, inset_m: f64) -> [Point; 4] {
        let (from, to, [right, left]) = match *self {
            Self::Bar { from, to, size_m: [across, up], .. } => {
                let (start, end) = (Point::new(from[0], from[2]), Point::new(to[0], to[2]));
                if (end - start).length() > 1e-6 {
                    (start, end, [-across / 2.0, across / 2.0])
                } else {
                    let half = Point::new(across / 2.0, 0.0);
                    (start - half, start + half, [-up / 2.0, up / 2.0])
                }
            }
            Self::Sheet { from, to, outward, thickness_m, .. } => {
                let left = (to - from).left();
                let way = if left.x.abs() > 1e-9 * left.length() { left.x } else { left.z };
                (from, to, if way * outward < 0.0 { [-thickness_m, 0.0] } else { [0.0, thickness_m] })
            }
            Self::Plate { centre, width_m, thickness_m, .. } => {
                let (top, half) = (Point::new(centre[0], centre[2]), Point::new(width_m / 2.0, 0.0));
                (top - half, top + half, [-thickness_m, 0.0])
            }
        };
        let along = (to - from).unit();
        let (from, to) = (from + along * inset_m, to - along * inset_m);
        let (right, left) = (along.left() * (right + inset_m), along.left() * (left - inset_m));
        [from + right, to + right, to + left, from + left]
    }

    /// Length of a bar, of a sheet across the bay, of a plate across the culvert.
    pub fn length_m(&self) -> f64 {
        match *self {
            Self::Bar { from, to, .. } => {
                let squares = (0..3).map(|i| (to[i] - from[i]) * (to[i] - from[i]));
                squares.sum::<f64>().sqrt()
            }
            Self::Sheet { from, to, .. } => (to - from).length(),
            Self::Plate { width_m, .. } => width_m,
        }
    }
}
