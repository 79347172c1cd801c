use super::Stack;
use crate::json::{Fault, Fields, tagged};
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize};

/// One kind of equipment.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Item {
    /// Names the item in schemes.
    pub code: String,
    /// Names it on drawings.
    pub name: String,
    /// Where its values come from.
    pub source: String,
    /// What it is and what it can bear.
    #[serde(flatten)]
    pub kind: Kind,
}

impl<'de> Deserialize<'de> for Item {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        fn of(mut fields: Fields) -> Result<Item, Fault> {
            let (code, name, source) = (fields.take("code")?, fields.take("name")?, fields.take("source")?);
            Ok(Item { code, name, source, kind: fields.rest()? })
        }
        of(Fields::read(from)?).map_err(D::Error::custom)
    }
}

/// What an item is.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Kind {
    /// Sheets that face the concrete.
    Board(Board),
    /// Sawn timber.
    Timber(Timber),
    /// Timber formwork beam with tested resistances.
    TimberBeam(TimberBeam),
    /// Beam known by its stated working values, such as one of aluminium.
    RatedBeam(RatedBeam),
    /// Rolled steel section, one or several side by side.
    Steel(Steel),
    /// Tie rod with its nuts and plates.
    Tie(Tie),
    /// Upright tube of falsework, or strut between shutters.
    Leg(Leg),
    /// Diagonal tube with its couplers.
    Brace(Brace),
    /// Base or sole plate.
    Plate(Plate),
}

tagged! { Kind, "kind", others ignored, |fields| {
    "board" => Kind::Board(fields.rest()?),
    "timber" => Kind::Timber(fields.rest()?),
    "timber_beam" => Kind::TimberBeam(fields.rest()?),
    "rated_beam" => Kind::RatedBeam(fields.rest()?),
    "steel" => Kind::Steel(fields.rest()?),
    "tie" => Kind::Tie(fields.rest()?),
    "leg" => Kind::Leg(fields.rest()?),
    "brace" => Kind::Brace(fields.rest()?),
    "plate" => Kind::Plate(fields.rest()?),
} }

/// A board. Values per metre of width, bending about the weaker or stronger way as laid.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Board {
    /// Thickness.
    pub thickness_m: f64,
    /// Bending stiffness in the span direction.
    pub stiffness_knm2_m: f64,
    /// Section modulus.
    pub modulus_m3_m: f64,
    /// Characteristic bending strength.
    pub bending_mpa: f64,
    /// Characteristic rolling (planar) shear strength.
    pub shear_mpa: f64,
    /// Weight.
    pub mass_kg_m2: f64,
    /// Sheet size.
    pub sheet_m: [f64; 2],
}

/// Sawn timber, bending about its stronger axis.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Timber {
    /// Breadth.
    pub breadth_m: f64,
    /// Depth in bending.
    pub depth_m: f64,
    /// Strength class of EN 338.
    pub class: String,
    /// Its notch at each support, if it is notched there on its lower side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notch: Option<EndNotch>,
}

/// Notch of a timber at a support.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct EndNotch {
    /// Depth that it leaves.
    pub left_m: f64,
    /// From the middle of the support to its corner.
    pub from_support_m: f64,
    /// Slope of its end: length along the grain for one across; 0 for a square notch.
    #[serde(default)]
    pub taper: f64,
}

/// Timber formwork beam, with the characteristic values of its class in EN 13377.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TimberBeam {
    /// Flange breadth.
    pub breadth_m: f64,
    /// Depth.
    pub depth_m: f64,
    /// Bending stiffness.
    pub stiffness_knm2: f64,
    /// Characteristic bending resistance.
    pub moment_knm: f64,
    /// Characteristic shear resistance.
    pub shear_kn: f64,
    /// Characteristic bearing resistance at a support.
    pub bearing_kn: f64,
    /// Weight.
    pub mass_kg_m: f64,
}

/// Beam with working values stated by its supplier.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RatedBeam {
    /// Breadth.
    pub breadth_m: f64,
    /// Depth.
    pub depth_m: f64,
    /// Bending stiffness.
    pub stiffness_knm2: f64,
    /// Axial stiffness.
    pub axial_kn: f64,
    /// Working moment.
    pub moment_working_knm: f64,
    /// Working shear.
    pub shear_working_kn: f64,
    /// Working force at a support.
    pub bearing_working_kn: f64,
    /// Weight.
    pub mass_kg_m: f64,
}

/// Rolled steel section.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Steel {
    /// Its dimensions.
    pub section: Section,
    /// Grade, such as S275.
    pub grade: String,
    /// Sections side by side in one member, with a gap between.
    pub side_by_side: u32,
    /// Overall breadth of the member.
    pub breadth_m: f64,
}

/// Dimensions of a rolled or hollow section, mm, bending about its stronger axis.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "shape", rename_all = "snake_case")]
pub enum Section {
    /// Parallel-flange I or H.
    I {
        /// Depth.
        h_mm: f64,
        /// Breadth.
        b_mm: f64,
        /// Web thickness.
        tw_mm: f64,
        /// Flange thickness.
        tf_mm: f64,
        /// Root radius.
        r_mm: f64,
    },
    /// Parallel-flange channel.
    Channel {
        /// Depth.
        h_mm: f64,
        /// Breadth.
        b_mm: f64,
        /// Web thickness.
        tw_mm: f64,
        /// Flange thickness.
        tf_mm: f64,
        /// Root radius.
        r_mm: f64,
    },
    /// Hot-finished rectangular or square hollow section.
    Hollow {
        /// Depth.
        h_mm: f64,
        /// Breadth.
        b_mm: f64,
        /// Wall thickness.
        t_mm: f64,
    },
    /// Round hollow section.
    Round {
        /// Outside diameter.
        d_mm: f64,
        /// Wall thickness.
        t_mm: f64,
    },
}

tagged! { Section, "shape", others ignored, |fields| {
    "i" => Section::I {
        h_mm: fields.take("h_mm")?,
        b_mm: fields.take("b_mm")?,
        tw_mm: fields.take("tw_mm")?,
        tf_mm: fields.take("tf_mm")?,
        r_mm: fields.take("r_mm")?,
    },
    "channel" => Section::Channel {
        h_mm: fields.take("h_mm")?,
        b_mm: fields.take("b_mm")?,
        tw_mm: fields.take("tw_mm")?,
        tf_mm: fields.take("tf_mm")?,
        r_mm: fields.take("r_mm")?,
    },
    "hollow" => Section::Hollow {
        h_mm: fields.take("h_mm")?,
        b_mm: fields.take("b_mm")?,
        t_mm: fields.take("t_mm")?,
    },
    "round" => Section::Round { d_mm: fields.take("d_mm")?, t_mm: fields.take("t_mm")? },
} }

/// Tie rod with nuts and plates, or another tension member across a wall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Tie {
    /// Rod diameter.
    pub diameter_m: f64,
    /// Steel area.
    pub area_m2: f64,
    /// Characteristic breaking force.
    pub breaking_kn: f64,
    /// Stated working load.
    pub working_kn: f64,
    /// Modulus of elasticity of the rod.
    pub modulus_kpa: f64,
    /// Weight of rod by length.
    pub mass_kg_m: f64,
    /// Weight of two nuts and plates.
    pub ends_kg: f64,
    /// Rod beyond the shutter's primaries, both ends together.
    pub projection_m: f64,
    /// Plate under each nut; none: not told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plate: Option<NutPlate>,
}

/// Steel plate between the nut of a tie and a primary.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct NutPlate {
    /// Along the primary.
    pub length_m: f64,
    /// Across it.
    pub width_m: f64,
    /// Thickness.
    pub thickness_m: f64,
    /// Diameter of the nut's flange that presses on it.
    pub nut_m: f64,
    /// Yield strength.
    pub yield_mpa: f64,
}

/// Round tube in compression.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Leg {
    /// Outside diameter.
    pub diameter_m: f64,
    /// Wall thickness.
    pub wall_m: f64,
    /// Yield strength.
    pub yield_mpa: f64,
    /// Buckling curve of EN 1993-1-1: a0, a, b, c or d.
    pub curve: String,
    /// Greatest working load of its head and base jacks.
    pub jack_working_kn: f64,
    /// Half the size of its head and base in plan.
    pub footprint_m: f64,
    /// Weight of head and base jacks.
    pub ends_kg: f64,
    /// Its rating, if it is an adjustable prop.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rating: Option<PropRating>,
    /// What it is put together from, if that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stack: Option<Stack>,
}

/// Rating of an adjustable prop by EN 1065, which counts instead of its tube.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PropRating {
    /// A, B, C, D or E.
    pub class: String,
    /// Greatest length.
    pub greatest_m: f64,
}

/// Diagonal tube.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Brace {
    /// Outside diameter.
    pub diameter_m: f64,
    /// Wall thickness.
    pub wall_m: f64,
    /// Yield strength.
    pub yield_mpa: f64,
    /// Buckling curve of EN 1993-1-1.
    pub curve: String,
    /// Safe slip load of its couplers.
    pub coupler_working_kn: f64,
    /// Axial stiffness of one coupler.
    pub coupler_stiffness_kn_m: f64,
    /// Weight of one coupler.
    pub coupler_kg: f64,
}

/// Plate that spreads a leg's force.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Plate {
    /// Across the culvert.
    pub width_m: f64,
    /// Along the culvert.
    pub length_m: f64,
    /// Thickness.
    pub thickness_m: f64,
    /// Weight.
    pub mass_kg: f64,
    /// What it is made of.
    #[serde(default)]
    pub material: PlateMaterial,
    /// Size of what stands on it: diameter of a tube on steel, side of a base plate on timber. Nought if unknown.
    #[serde(default)]
    pub stem_m: f64,
}

/// What a plate is made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PlateMaterial {
    /// S235.
    #[default]
    Steel,
    /// Softwood C16, its grain along the longer side.
    Timber,
}

/// What bending analysis needs of a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beam {
    /// Bending stiffness.
    pub ei_knm2: f64,
    /// Axial stiffness.
    pub ea_kn: f64,
    /// Depth in bending.
    pub depth_m: f64,
    /// Breadth.
    pub breadth_m: f64,
    /// Weight.
    pub mass_kg_m: f64,
}
