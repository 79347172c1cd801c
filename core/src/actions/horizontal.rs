//! Horizontal loads that vertical ones bring with them.

/// Part of the vertical load in BS 5975; confirmed in print.
pub const LEAST_FRACTION: f64 = 0.025;
/// Part of the vertical load beside known horizontal forces in BS 5975 (structure of the rule confirmed in print).
pub const BESIDE_KNOWN: f64 = 0.01;

/// The two rules of BS 5975 for the horizontal force on falsework, kN.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeastLateral {
    /// A part of the vertical load, 2.5 % by default.
    pub of_vertical_kn: f64,
    /// Known forces and 1 % of the vertical load.
    pub known_and_more_kn: f64,
}

impl LeastLateral {
    /// From the vertical load and what is known to push sideways.
    pub fn new(fraction: f64, vertical_kn: f64, known_kn: f64) -> Self {
        Self { of_vertical_kn: fraction * vertical_kn, known_and_more_kn: known_kn.abs() + BESIDE_KNOWN * vertical_kn }
    }

    /// The greater.
    pub fn governing_kn(&self) -> f64 {
        self.of_vertical_kn.max(self.known_and_more_kn)
    }
}

/// Sway imperfection of EN 1993-1-1 5.3.2(3).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sway {
    /// For height.
    pub alpha_h: f64,
    /// For the number of columns in a row.
    pub alpha_m: f64,
    /// Lean, rad.
    pub phi: f64,
}

impl Sway {
    /// `φ = αh αm / 200`, `αh = 2 / √h` from 2/3 to 1, `αm = √(0.5 (1 + 1/m))`.
    pub fn en1993(height_m: f64, columns: f64) -> Self {
        let alpha_h = (2.0 / height_m.sqrt()).clamp(2.0 / 3.0, 1.0);
        let alpha_m = (0.5 * (1.0 + 1.0 / columns)).sqrt();
        Self { alpha_h, alpha_m, phi: alpha_h * alpha_m / 200.0 }
    }
}

/// `tan φ` of falsework, EN 12812 (from memory, low confidence): 0.01 up to 10 m high, `0.01 √(10 / h)` above.
pub fn sway_en12812(height_m: f64) -> f64 {
    0.01 * (10.0 / height_m).sqrt().min(1.0)
}

/// Lean of a prop within erection tolerances of BS 5975, rad: 1.5°.
pub const LEAN_TOLERANCE_RAD: f64 = 1.5 * std::f64::consts::PI / 180.0;

/// Eccentricity of load on a leg within erection tolerances of BS 5975, m; the basis of published safe loads of props.
pub const ECCENTRICITY_TOLERANCE_M: f64 = 0.025;
