use super::{FaceRef, FixedEnd, Hinge, Id, SlabAge};
use crate::json::tagged;
use serde::{Deserialize, Serialize};

/// Where repeated members stand over a length: one at `edge_m` from each end, the others equally apart.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spacing {
    /// From each end to the first member.
    pub edge_m: f64,
    /// No two neighbours stand further apart than this.
    pub max_m: f64,
}

impl Spacing {
    /// The positions over `length_m`, from its start. Fewer than two fit: one in the middle.
    pub fn positions(&self, length_m: f64) -> Vec<f64> {
        let between = length_m - 2.0 * self.edge_m;
        if between <= 1e-6 {
            return vec![length_m / 2.0];
        }
        let gaps = (between / self.max_m - 1e-6).ceil().max(1.0);
        (0..=gaps as usize).map(|i| self.edge_m + between * i as f64 / gaps).collect()
    }
}

/// How a wall shutter is built up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Arrangement {
    /// Level secondaries on upright primaries (soldiers); ties stand on the soldiers.
    UprightPrimaries,
    /// Upright secondaries on level primaries (walings); a waling runs along each row of ties.
    LevelPrimaries,
}

/// A shutter on one wall face, over the whole bay.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shutter {
    /// Names the shutter.
    pub id: Id,
    /// The face that it forms.
    pub face: FaceRef,
    /// How it is built up.
    pub arrangement: Arrangement,
    /// Catalogue code of the board.
    pub facing: String,
    /// Catalogue code of the secondaries.
    pub secondary: String,
    /// Where the secondaries stand: over the height (upright primaries) or along the bay (level primaries).
    pub secondaries: Spacing,
    /// Catalogue code of the primaries.
    pub primary: String,
    /// Where upright primaries stand along the bay. Level primaries follow the ties.
    pub primaries: Spacing,
    /// How far the shutter reaches below its face, lapping earlier concrete.
    pub below_m: f64,
    /// How far it stands above its face.
    pub above_m: f64,
    /// Whether its foot is held against moving to either side.
    pub foot_held: bool,
    /// What holds each upright line down, at its own permissible or design value, kN.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hold_down_kn: Option<f64>,
    /// How it is swung off its concrete, if it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hinge: Option<Hinge>,
}

impl Shutter {
    /// Where the ties or props of one of its rows stand along the bay: on upright primaries one at each of them.
    pub fn ties_along(&self, row: &TieRow) -> Spacing {
        match self.arrangement {
            Arrangement::UprightPrimaries => self.primaries,
            Arrangement::LevelPrimaries => row.spacing,
        }
    }
}

/// A row of ties or props at one level.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TieRow {
    /// Names the row.
    pub id: Id,
    /// The shutter at one end.
    pub shutter: Id,
    /// What is at the other end.
    pub to: TieEnd,
    /// Level of the row.
    pub z_m: f64,
    /// Catalogue code of the tie or prop.
    pub item: String,
    /// Where ties stand along level primaries. On upright primaries one stands at each primary.
    pub spacing: Spacing,
    /// What holds its end if that is fixed; none: not told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub held: Option<FixedEnd>,
}

impl TieRow {
    /// Whether one of its ends is at this shutter.
    pub fn holds(&self, shutter: Id) -> bool {
        self.shutter == shutter || self.to == TieEnd::Shutter { id: shutter }
    }
}

/// The far end of a tie or prop.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "end", rename_all = "snake_case")]
pub enum TieEnd {
    /// Another shutter: across a wall for a tie, across a cell for a prop.
    Shutter {
        /// The shutter at the other end.
        id: Id,
    },
    /// Something outside the drawing that does not move: an anchor or a thrust block.
    Fixed {
        /// Length from the shutter to it.
        length_m: f64,
    },
}

tagged! { TieEnd, "end", |fields| {
    "shutter" => TieEnd::Shutter { id: fields.take("id")? },
    "fixed" => TieEnd::Fixed { length_m: fields.take("length_m")? },
} }

/// The way that the primaries of soffit falsework run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Direction {
    /// Across the culvert, one at each bent.
    Across,
    /// Along the culvert, one at each leg line.
    Along,
}

/// What takes the horizontal load of soffit falsework.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Lateral {
    /// Diagonals in the gaps that are marked as braced.
    Braced,
    /// Walls cast earlier, which the user says are there and strong enough.
    HeldByWalls,
}

/// What the bases stand on.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "on", rename_all = "snake_case")]
pub enum Bearing {
    /// Concrete cast earlier.
    Slab {
        /// Its cylinder strength on the day of the pour.
        strength_mpa: f64,
    },
    /// The ground of the scheme.
    Ground,
}

tagged! { Bearing, "on", |fields| {
    "slab" => Bearing::Slab { strength_mpa: fields.take("strength_mpa")? },
    "ground" => Bearing::Ground,
} }

/// Falsework under one soffit and the slopes that adjoin it, over the whole bay.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Falsework {
    /// Names the falsework.
    pub id: Id,
    /// The soffit that it carries.
    pub soffit: FaceRef,
    /// The way that the primaries run.
    pub direction: Direction,
    /// Catalogue code of the board.
    pub facing: String,
    /// Catalogue code of the secondaries.
    pub secondary: String,
    /// Where secondaries stand: over the soffit's width (across) or along the bay (along).
    pub secondaries: Spacing,
    /// Catalogue code of the primaries.
    pub primary: String,
    /// Catalogue code of the legs.
    pub leg: String,
    /// Catalogue code of the bases.
    pub base: String,
    /// Catalogue code of the diagonals.
    pub brace: String,
    /// Lines of legs, from left to right.
    pub leg_lines: Vec<LegLine>,
    /// Where the bents stand along the bay.
    pub bents: Spacing,
    /// Height between levels at which legs are held by bracing.
    pub lift_m: f64,
    /// What takes the horizontal load.
    pub lateral: Lateral,
    /// What the bases stand on.
    pub bearing: Bearing,
    /// Age of a slab that the bases stand on, if it is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slab: Option<SlabAge>,
}

/// A line of legs along the culvert.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LegLine {
    /// Names the line.
    pub id: Id,
    /// Where it stands.
    pub x_m: f64,
    /// Whether diagonals fill the gap to the next line on the right.
    #[serde(default)]
    pub braced: bool,
}

/// A way kept open through falsework, along the culvert.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Opening {
    /// Names the opening.
    pub id: Id,
    /// The falsework that it passes through.
    pub falsework: Id,
    /// Left edge of the clear way.
    pub left_m: f64,
    /// Clear width to be kept.
    pub width_m: f64,
    /// Clear height to be kept above the floor.
    pub height_m: f64,
    /// Width at each side for guards, between the clear way and the nearest member.
    pub guard_m: f64,
    /// Underside of the transfer beams above the floor.
    pub beam_underside_m: f64,
    /// Catalogue code of the transfer beams.
    pub transfer: String,
    /// Transfer beams side by side in each bent.
    pub transfers: u32,
    /// Greatest distance between lateral restraints of the transfer beams; none: the whole span.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub restraint_m: Option<f64>,
    /// Catalogue code of the trestle legs, two at each side.
    pub trestle: String,
    /// Distance between the two legs of a trestle.
    pub trestle_m: f64,
    /// Between what stands at both sides, measured on site; none before that.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub built_width_m: Option<f64>,
    /// From the floor to what is lowest over the way, measured on site before concreting; none before that.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub built_height_m: Option<f64>,
}
