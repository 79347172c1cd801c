/// Strengths of one class of softwood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimberClass {
    /// Name in EN 338.
    pub name: &'static str,
    /// Characteristic values for limit states.
    pub characteristic: Strengths,
    /// Grade stresses for permissible-stress design, dry and long-term.
    pub grade: Strengths,
    /// Mean modulus of elasticity along the grain.
    pub modulus_mpa: f64,
}

/// Strengths of solid timber.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strengths {
    /// Bending.
    pub bending_mpa: f64,
    /// Shear.
    pub shear_mpa: f64,
    /// Compression across the grain.
    pub bearing_mpa: f64,
}

/// Density of sawn softwood as soaked on site; common practice.
pub const TIMBER_KG_M3: f64 = 500.0;

/// Characteristic values: EN 338:2016, whose shear strengths go with kcr = 0.67. Grade stresses: BS 5268-2:2002
/// (from memory), bearing with wane.
const CLASSES: [TimberClass; 2] = [
    TimberClass {
        name: "C16",
        characteristic: Strengths { bending_mpa: 16.0, shear_mpa: 3.2, bearing_mpa: 2.2 },
        grade: Strengths { bending_mpa: 5.3, shear_mpa: 0.67, bearing_mpa: 1.7 },
        modulus_mpa: 8000.0,
    },
    TimberClass {
        name: "C24",
        characteristic: Strengths { bending_mpa: 24.0, shear_mpa: 4.0, bearing_mpa: 2.5 },
        grade: Strengths { bending_mpa: 7.5, shear_mpa: 0.71, bearing_mpa: 1.9 },
        modulus_mpa: 11000.0,
    },
];

impl TimberClass {
    /// The class of this name, if it is known.
    pub fn named(name: &str) -> Option<Self> {
        CLASSES.into_iter().find(|class| class.name == name)
    }
}
