/// What a value is, so that nobody takes one for another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meaning {
    /// Text.
    Word,
    /// A size or count.
    Size,
    /// Characteristic strength or resistance, for limit states; divided by its factors on either basis.
    Characteristic,
    /// Stated working value; a limit state takes it times 1.65 by γM 1.1.
    Working,
    /// Mean stiffness.
    Mean,
    /// Weight.
    Weight,
}

impl Meaning {
    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Self::Word => "text",
            Self::Size => "size",
            Self::Characteristic => "characteristic",
            Self::Working => "working",
            Self::Mean => "mean",
            Self::Weight => "weight",
        }
    }
}

/// A value of items: its key in files, its unit and what it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Field {
    /// Path in the item's JSON.
    pub key: &'static str,
    /// Unit; empty for text and counts.
    pub unit: &'static str,
    /// What it is.
    pub meaning: Meaning,
}

use Meaning::{Characteristic, Mean, Size, Weight, Word, Working};

const fn field(key: &'static str, unit: &'static str, meaning: Meaning) -> Field {
    Field { key, unit, meaning }
}

/// Every value that an item can have, in the order of columns.
pub const FIELDS: [Field; 78] = [
    field("code", "", Word),
    field("name", "", Word),
    field("source", "", Word),
    field("kind", "", Word),
    field("class", "", Word),
    field("grade", "", Word),
    field("curve", "", Word),
    field("material", "", Word),
    field("section.shape", "", Word),
    field("section.h_mm", "mm", Size),
    field("section.b_mm", "mm", Size),
    field("section.tw_mm", "mm", Size),
    field("section.tf_mm", "mm", Size),
    field("section.r_mm", "mm", Size),
    field("section.d_mm", "mm", Size),
    field("section.t_mm", "mm", Size),
    field("side_by_side", "", Size),
    field("breadth_m", "m", Size),
    field("depth_m", "m", Size),
    field("notch.left_m", "m", Size),
    field("notch.from_support_m", "m", Size),
    field("notch.taper", "", Size),
    field("width_m", "m", Size),
    field("length_m", "m", Size),
    field("thickness_m", "m", Size),
    field("diameter_m", "m", Size),
    field("wall_m", "m", Size),
    field("area_m2", "m²", Size),
    field("footprint_m", "m", Size),
    field("stem_m", "m", Size),
    field("projection_m", "m", Size),
    field("sheet_m.0", "m", Size),
    field("sheet_m.1", "m", Size),
    field("modulus_m3_m", "m³/m", Size),
    field("yield_mpa", "N/mm²", Characteristic),
    field("bending_mpa", "N/mm²", Characteristic),
    field("shear_mpa", "N/mm²", Characteristic),
    field("moment_knm", "kNm", Characteristic),
    field("shear_kn", "kN", Characteristic),
    field("bearing_kn", "kN", Characteristic),
    field("breaking_kn", "kN", Characteristic),
    field("rating.class", "", Word),
    field("rating.greatest_m", "m", Size),
    field("plate.length_m", "m", Size),
    field("plate.width_m", "m", Size),
    field("plate.thickness_m", "m", Size),
    field("plate.nut_m", "m", Size),
    field("plate.yield_mpa", "N/mm²", Characteristic),
    field("stack.standards_m.0", "m", Size),
    field("stack.standards_m.1", "m", Size),
    field("stack.standards_m.2", "m", Size),
    field("stack.standards_m.3", "m", Size),
    field("stack.standards_m.4", "m", Size),
    field("stack.standards_m.5", "m", Size),
    field("stack.head_jack_m.0", "m", Size),
    field("stack.head_jack_m.1", "m", Size),
    field("stack.base_jack_m.0", "m", Size),
    field("stack.base_jack_m.1", "m", Size),
    field("stack.whole_to_m", "m", Size),
    field("stack.part_at_greatest", "", Size),
    field("stack.spigot.spigot_m", "m", Size),
    field("stack.spigot.lap_m", "m", Size),
    field("moment_working_knm", "kNm", Working),
    field("shear_working_kn", "kN", Working),
    field("bearing_working_kn", "kN", Working),
    field("working_kn", "kN", Working),
    field("jack_working_kn", "kN", Working),
    field("coupler_working_kn", "kN", Working),
    field("stiffness_knm2", "kNm²", Mean),
    field("stiffness_knm2_m", "kNm²/m", Mean),
    field("axial_kn", "kN", Mean),
    field("modulus_kpa", "kPa", Mean),
    field("coupler_stiffness_kn_m", "kN/m", Mean),
    field("mass_kg", "kg", Weight),
    field("mass_kg_m", "kg/m", Weight),
    field("mass_kg_m2", "kg/m²", Weight),
    field("ends_kg", "kg", Weight),
    field("coupler_kg", "kg", Weight),
];

impl Field {
    /// Heading of its column: key, unit and meaning.
    pub fn heading(&self) -> String {
        match (self.meaning, self.unit) {
            (Word, _) => self.key.into(),
            (meaning, "") => format!("{} ({})", self.key, meaning.name()),
            (meaning, unit) => format!("{} ({unit}, {})", self.key, meaning.name()),
        }
    }

    /// The field that a heading names; what follows in brackets must agree if it is there.
    pub fn of_heading(heading: &str) -> Option<&'static Field> {
        let heading = heading.trim();
        FIELDS.iter().find(|field| field.key == heading || field.heading() == heading)
    }
}
