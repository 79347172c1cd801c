//! The pens at the foot of the sheet.

/// What a press on the drawing does.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tool {
    /// Selects, moves, and takes typed dimensions.
    #[default]
    Select,
    /// Draws the outline, then cells in it, point by point.
    Outline,
    /// Puts construction joints.
    Joint,
    /// Puts shutters on wall faces.
    Shutter,
    /// Puts rows of ties on shutters.
    Ties,
    /// Puts falsework under soffits and leg lines in it.
    Legs,
    /// Keeps a way open through falsework.
    Opening,
    /// Moves the sheet.
    Hand,
}

impl Tool {
    /// All, in the order they are shown.
    pub const ALL: [Self; 8] =
        [Self::Select, Self::Outline, Self::Joint, Self::Shutter, Self::Ties, Self::Legs, Self::Opening, Self::Hand];

    /// The letter that takes it up.
    pub fn letter(self) -> char {
        match self {
            Self::Select => 'v',
            Self::Outline => 'l',
            Self::Joint => 'j',
            Self::Shutter => 's',
            Self::Ties => 't',
            Self::Legs => 'f',
            Self::Opening => 'o',
            Self::Hand => 'h',
        }
    }
}
