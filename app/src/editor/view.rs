//! The views of the sheet: the section, a wall shutter in elevation, and soffit falsework in plan.
//!
//! On each view a [`Point`] is a place to the right and up: `x` and `z` on the section, `y` and `z` on the elevation, `x`
//! and `y` on the plan.

use falsewright_core::geometry::Point;
use falsewright_core::model::Face;
use falsewright_core::scheme::{Id, Scheme};

/// A view of the sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum View {
    /// Across the culvert.
    #[default]
    Section,
    /// One wall shutter from outside, over the length of a bay.
    Elevation,
    /// One soffit's falsework from above, over the length of a bay.
    Plan,
}

impl View {
    /// All, in the order they are shown.
    pub const ALL: [Self; 3] = [Self::Section, Self::Elevation, Self::Plan];

    /// A short name of its own.
    pub fn id(self) -> &'static str {
        match self {
            Self::Section => "section",
            Self::Elevation => "elevation",
            Self::Plan => "plan",
        }
    }

    /// Where a place `[x, y, z]` of the works is on the view.
    pub fn project(self, [x, y, z]: [f64; 3]) -> Point {
        match self {
            Self::Section => Point::new(x, z),
            Self::Elevation => Point::new(y, z),
            Self::Plan => Point::new(x, y),
        }
    }

    /// A movement on the view as far as the section shows it.
    pub fn in_section(self, by: Point) -> Point {
        match self {
            Self::Section => by,
            Self::Elevation => Point::new(0.0, by.z),
            Self::Plan => Point::new(by.x, 0.0),
        }
    }

    /// What is measured along the bay and what across it; nothing on the section.
    pub fn along_across(self, p: Point) -> Option<[f64; 2]> {
        match self {
            Self::Section => None,
            Self::Elevation => Some([p.x, p.z]),
            Self::Plan => Some([p.z, p.x]),
        }
    }

    /// The point at a place along the bay and one across it.
    pub fn at(self, along: f64, across: f64) -> Point {
        if self == Self::Plan { Point::new(across, along) } else { Point::new(along, across) }
    }
}

/// A view with what it shows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Seen {
    /// The view.
    pub view: View,
    /// The shutter of an elevation, the falsework of a plan; none on the section, and where there is none.
    pub subject: Option<Id>,
}

impl Seen {
    /// The section.
    pub const SECTION: Self = Self { view: View::Section, subject: None };

    /// Whether it is the section.
    pub fn is_section(self) -> bool {
        self.view == View::Section
    }

    /// Whether it is the elevation of this shutter.
    pub fn is_elevation_of(self, shutter: Id) -> bool {
        self.view == View::Elevation && self.subject == Some(shutter)
    }

    /// Whether it is the plan of this falsework.
    pub fn is_plan_of(self, falsework: Id) -> bool {
        self.view == View::Plan && self.subject == Some(falsework)
    }
}

/// An elevation goes down to what the wall stands on, if that is so near below the shutter, m.
const FLOOR_WITHIN_M: f64 = 1.5;
/// Else so far below the shutter, m.
const BELOW_M: f64 = 0.5;

/// Lower end of what an elevation shows of the concrete, and whether it is what the wall stands on.
pub fn lower_end(foot_m: f64, stands_on_m: f64) -> (f64, bool) {
    if (0.0..=FLOOR_WITHIN_M).contains(&(foot_m - stands_on_m)) {
        (stands_on_m, true)
    } else {
        (foot_m - BELOW_M, false)
    }
}

/// What a view shows: the wanted element if it is there, else the highest shutter that is tied, or the first falsework.
pub fn seen(view: View, wanted: Option<Id>, scheme: &Scheme, faces: &[Face]) -> Seen {
    let subject = match view {
        View::Section => None,
        View::Elevation => {
            let head = |of: Id| {
                let shutter = scheme.shutters.iter().find(|shutter| shutter.id == of)?;
                let face = faces.iter().find(|face| face.of == shutter.face)?;
                Some((scheme.ties.iter().any(|row| row.holds(of)), face.from.z.max(face.to.z)))
            };
            let all = scheme.shutters.iter().map(|shutter| shutter.id);
            let higher = |best: Option<(Id, (bool, f64))>, id: Id| match (best, head(id)) {
                (Some((_, most)), Some(of)) if of <= most => best,
                (_, Some(of)) => Some((id, of)),
                (best, None) => best,
            };
            let there = wanted.filter(|id| head(*id).is_some());
            there.or_else(|| all.fold(None, higher).map(|(id, _)| id))
        }
        View::Plan => {
            let mut all = scheme.falsework.iter().map(|falsework| falsework.id);
            wanted.filter(|id| all.clone().any(|other| other == *id)).or_else(|| all.next())
        }
    };
    Seen { view, subject }
}
