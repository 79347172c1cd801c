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
    /// In the words of the trade; no two values of one item share them.
    pub name: &'static str,
}

use Meaning::{Characteristic, Mean, Size, Weight, Word, Working};

const fn field(key: &'static str, unit: &'static str, meaning: Meaning, name: &'static str) -> Field {
    Field { key, unit, meaning, name }
}

/// Every value that an item can have, in the order of columns.
pub const FIELDS: [Field; 78] = [
    field("code", "", Word, "code"),
    field("name", "", Word, "name"),
    field("source", "", Word, "source"),
    field("kind", "", Word, "kind"),
    field("class", "", Word, "strength class"),
    field("grade", "", Word, "steel grade"),
    field("curve", "", Word, "buckling curve"),
    field("material", "", Word, "material"),
    field("section.shape", "", Word, "shape"),
    field("section.h_mm", "mm", Size, "depth"),
    field("section.b_mm", "mm", Size, "flange breadth"),
    field("section.tw_mm", "mm", Size, "web thickness"),
    field("section.tf_mm", "mm", Size, "flange thickness"),
    field("section.r_mm", "mm", Size, "root radius"),
    field("section.d_mm", "mm", Size, "diameter"),
    field("section.t_mm", "mm", Size, "wall thickness"),
    field("side_by_side", "", Size, "sections side by side"),
    field("breadth_m", "m", Size, "breadth"),
    field("depth_m", "m", Size, "depth"),
    field("notch.left_m", "m", Size, "depth left at the notch"),
    field("notch.from_support_m", "m", Size, "start of the notch from its support"),
    field("notch.taper", "", Size, "taper of the notch, length by depth"),
    field("width_m", "m", Size, "width across the culvert"),
    field("length_m", "m", Size, "length along the culvert"),
    field("thickness_m", "m", Size, "thickness"),
    field("diameter_m", "m", Size, "diameter"),
    field("wall_m", "m", Size, "wall thickness"),
    field("area_m2", "m²", Size, "steel area"),
    field("footprint_m", "m", Size, "half the size of head and base"),
    field("stem_m", "m", Size, "size of what stands on it"),
    field("projection_m", "m", Size, "rod beyond both shutters"),
    field("sheet_m.0", "m", Size, "sheet length"),
    field("sheet_m.1", "m", Size, "sheet width"),
    field("modulus_m3_m", "m³/m", Size, "section modulus"),
    field("yield_mpa", "N/mm²", Characteristic, "yield strength"),
    field("bending_mpa", "N/mm²", Characteristic, "bending strength"),
    field("shear_mpa", "N/mm²", Characteristic, "rolling shear strength"),
    field("moment_knm", "kNm", Characteristic, "moment resistance"),
    field("shear_kn", "kN", Characteristic, "shear resistance"),
    field("bearing_kn", "kN", Characteristic, "bearing resistance"),
    field("breaking_kn", "kN", Characteristic, "breaking force"),
    field("rating.class", "", Word, "class of EN 1065"),
    field("rating.greatest_m", "m", Size, "greatest length"),
    field("plate.length_m", "m", Size, "length of the nut plate"),
    field("plate.width_m", "m", Size, "width of the nut plate"),
    field("plate.thickness_m", "m", Size, "thickness of the nut plate"),
    field("plate.nut_m", "m", Size, "size of the nut"),
    field("plate.yield_mpa", "N/mm²", Characteristic, "yield strength of the nut plate"),
    field("stack.standards_m.0", "m", Size, "first length of standards"),
    field("stack.standards_m.1", "m", Size, "second length of standards"),
    field("stack.standards_m.2", "m", Size, "third length of standards"),
    field("stack.standards_m.3", "m", Size, "fourth length of standards"),
    field("stack.standards_m.4", "m", Size, "fifth length of standards"),
    field("stack.standards_m.5", "m", Size, "sixth length of standards"),
    field("stack.head_jack_m.0", "m", Size, "least extension of the head jack"),
    field("stack.head_jack_m.1", "m", Size, "greatest extension of the head jack"),
    field("stack.base_jack_m.0", "m", Size, "least extension of the base jack"),
    field("stack.base_jack_m.1", "m", Size, "greatest extension of the base jack"),
    field("stack.whole_to_m", "m", Size, "extension with the whole working load"),
    field("stack.part_at_greatest", "", Size, "part of it at the greatest extension"),
    field("stack.spigot.spigot_m", "m", Size, "diameter of the spigot"),
    field("stack.spigot.lap_m", "m", Size, "lap of the spigot"),
    field("moment_working_knm", "kNm", Working, "working moment"),
    field("shear_working_kn", "kN", Working, "working shear"),
    field("bearing_working_kn", "kN", Working, "working force at a support"),
    field("working_kn", "kN", Working, "working load"),
    field("jack_working_kn", "kN", Working, "working load of its jacks"),
    field("coupler_working_kn", "kN", Working, "safe slip load of its couplers"),
    field("stiffness_knm2", "kNm²", Mean, "bending stiffness"),
    field("stiffness_knm2_m", "kNm²/m", Mean, "bending stiffness"),
    field("axial_kn", "kN", Mean, "axial stiffness"),
    field("modulus_kpa", "kPa", Mean, "modulus of elasticity"),
    field("coupler_stiffness_kn_m", "kN/m", Mean, "stiffness of one coupler"),
    field("mass_kg", "kg", Weight, "mass"),
    field("mass_kg_m", "kg/m", Weight, "mass"),
    field("mass_kg_m2", "kg/m²", Weight, "mass"),
    field("ends_kg", "kg", Weight, "mass of its end fittings"),
    field("coupler_kg", "kg", Weight, "mass of one coupler"),
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

    /// The field of a key, or of the last part of one, such as `h_mm`.
    pub fn of_key(key: &str) -> Option<&'static Field> {
        let ends = |field: &&Field| field.key.split('.').any(|part| part == key);
        FIELDS.iter().find(|field| field.key == key).or_else(|| FIELDS.iter().find(ends))
    }

    /// The words that it can be; empty for numbers and free text.
    pub fn choices(&self) -> &'static [&'static str] {
        match self.key {
            "class" => &["C16", "C18", "C24", "C27", "C30"],
            "grade" => &["S235", "S275", "S355"],
            "curve" => &["a0", "a", "b", "c", "d"],
            "material" => &["steel", "timber"],
            "rating.class" => &["A", "B", "C", "D", "E"],
            _ => &[],
        }
    }

    /// Whether it names the item or says what kind it is, rather than what it measures or bears.
    pub fn is_identity(&self) -> bool {
        matches!(self.key, "code" | "name" | "source" | "kind" | "section.shape")
    }

    /// A number with its unit in a sentence: lengths in mm, to six figures, as what a change of unit leaves beyond them
    /// is no information.
    pub fn written(&self, number: f64) -> String {
        let (number, unit) = if self.unit == "m" { (number * 1e3, "mm") } else { (number, self.unit) };
        let rounded: f64 = format!("{number:.5e}").parse().unwrap_or(number);
        format!("{rounded} {unit}").trim_end().to_owned()
    }

    /// The field that a heading names; what follows in brackets must agree if it is there.
    pub fn of_heading(heading: &str) -> Option<&'static Field> {
        let heading = heading.trim();
        FIELDS.iter().find(|field| field.key == heading || field.heading() == heading)
    }
}
