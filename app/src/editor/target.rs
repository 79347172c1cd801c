//! What can be pointed at and selected.

use super::DimensionKey;
use crate::language::key;
use falsewright_core::scheme::{FaceRef, Id};

/// Something on the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Target {
    /// A corner of a ring.
    Corner(Id),
    /// A haunch or chamfer, by its corner.
    Cut(Id),
    /// The handle by which a haunch or chamfer is pulled out of a corner.
    Haunch(Id),
    /// The handle by which an end of an edge is pulled sideways: a batter or a fall.
    EdgeEnd {
        /// Start of the edge.
        edge: Id,
        /// The corner at this end.
        corner: Id,
    },
    /// The handle by which the middle of an edge is pulled out or in: a crown.
    EdgeMiddle(Id),
    /// The part of an edge in one pour; its edge is `corner` of the reference.
    Face(FaceRef),
    /// A construction joint.
    Joint(Id),
    /// A wall shutter.
    Shutter(Id),
    /// The upper or lower end of a shutter.
    ShutterEnd(Id, Side),
    /// The hinge of a shutter.
    Hinge(Id),
    /// The handle by which a hinged shutter is swung.
    Swing(Id),
    /// A row of ties or props.
    TieRow(Id),
    /// Soffit falsework.
    Falsework(Id),
    /// A line of legs.
    LegLine(Id),
    /// An opening, inside its clear way.
    Opening(Id),
    /// An edge of an opening's clear way: left, right or top.
    OpeningEdge(Id, Side),
    /// The transfer beams of an opening.
    Transfer(Id),
    /// A dimension line.
    Dimension(DimensionKey),
}

impl Target {
    /// The thing as a whole, not the end or edge of it that was touched.
    pub fn whole(self) -> Self {
        match self {
            Self::Haunch(corner) => Self::Corner(corner),
            Self::ShutterEnd(id, _) | Self::Hinge(id) | Self::Swing(id) => Self::Shutter(id),
            Self::OpeningEdge(id, _) | Self::Transfer(id) => Self::Opening(id),
            other => other,
        }
    }

    /// What things of its kind are called: one, and several.
    pub fn kind(self) -> [&'static str; 2] {
        match self {
            Self::Corner(_) | Self::Haunch(_) => [key("corner"), key("corners")],
            Self::EdgeEnd { .. } | Self::EdgeMiddle(_) => [key("edge"), key("edges")],
            Self::Cut(_) => [key("haunch or chamfer"), key("haunches or chamfers")],
            Self::Face(_) => [key("face"), key("faces")],
            Self::Joint(_) => [key("construction joint"), key("construction joints")],
            Self::Shutter(_) | Self::ShutterEnd(..) => [key("shutter"), key("shutters")],
            Self::Hinge(_) | Self::Swing(_) => [key("hinge"), key("hinges")],
            Self::TieRow(_) => [key("row of ties"), key("rows of ties")],
            Self::Falsework(_) => [key("soffit falsework"), key("soffit falseworks")],
            Self::LegLine(_) => [key("leg line"), key("leg lines")],
            Self::Opening(_) | Self::OpeningEdge(..) | Self::Transfer(_) => [key("opening"), key("openings")],
            Self::Dimension(_) => [key("dimension"), key("dimensions")],
        }
    }

    /// The element of the scheme that it belongs to; a dimension belongs to none.
    pub fn element(&self) -> Option<Id> {
        match *self {
            Self::Haunch(id) | Self::EdgeMiddle(id) | Self::EdgeEnd { edge: id, .. } => Some(id),
            Self::Corner(id) | Self::Cut(id) | Self::Joint(id) | Self::Shutter(id) | Self::ShutterEnd(id, _) => {
                Some(id)
            }
            Self::Hinge(id) | Self::Swing(id) => Some(id),
            Self::TieRow(id) | Self::Falsework(id) | Self::LegLine(id) => Some(id),
            Self::Opening(id) | Self::OpeningEdge(id, _) | Self::Transfer(id) => Some(id),
            Self::Face(face) => Some(face.corner),
            Self::Dimension(_) => None,
        }
    }
}

/// A side of something.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// Smaller x.
    Left,
    /// Greater x.
    Right,
    /// Greater z.
    Top,
    /// Smaller z.
    Bottom,
}

/// The one thing that is selected, if it is one.
pub type Selection = Option<Target>;

/// How many there are of each kind, such as `2 shutters and 1 row of ties`.
pub fn counted(targets: &[Target]) -> String {
    let mut kinds: Vec<([&str; 2], usize)> = Vec::new();
    for target in targets {
        match kinds.iter_mut().find(|(kind, _)| *kind == target.kind()) {
            Some((_, count)) => *count += 1,
            None => kinds.push((target.kind(), 1)),
        }
    }
    let words: Vec<String> =
        kinds.iter().map(|([one, many], count)| format!("{count} {}", if *count == 1 { one } else { many })).collect();
    match words.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
        None => String::new(),
    }
}
