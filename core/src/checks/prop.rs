//! Adjustable telescopic steel props.

use super::divisor::Divisor;
use crate::scheme::Basis;

/// Classes of EN 1065.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PropClass {
    /// `51 lmax / l²`, at most 44 kN (from memory).
    A,
    /// `68 lmax / l²` (confirmed in print), at most 51 kN (from memory).
    B,
    /// `102 lmax / l²`, at most 59.5 kN (from memory).
    C,
    /// 34 kN at every extension (confirmed in print).
    D,
    /// 51 kN at every extension (from memory).
    E,
}

impl PropClass {
    /// The class of this letter.
    pub fn named(name: &str) -> Option<Self> {
        Some(match name {
            "A" => Self::A,
            "B" => Self::B,
            "C" => Self::C,
            "D" => Self::D,
            "E" => Self::E,
            _ => return None,
        })
    }

    /// Nominal characteristic strength `Ry,k` at an extension, kN; none beyond the greatest length.
    pub fn characteristic_kn(self, greatest_m: f64, extension_m: f64) -> Option<f64> {
        let possible = extension_m > 0.0 && extension_m <= greatest_m * (1.0 + 1e-9) && greatest_m.is_finite();
        let slender = |rate: f64, cap: f64| (rate * greatest_m / (extension_m * extension_m)).min(cap);
        possible.then(|| match self {
            Self::A => slender(51.0, 44.0),
            Self::B => slender(68.0, 51.0),
            Self::C => slender(102.0, 59.5),
            Self::D => 34.0,
            Self::E => 51.0,
        })
    }

    /// What a basis allows, kN: `Ry,k` by 1.1 and the factor of the basis, which is 1.65 for working loads.
    pub fn allowed_kn(self, basis: Basis, greatest_m: f64, extension_m: f64) -> Option<f64> {
        let divisor = Divisor::new(basis, super::divisor::gamma::STEEL).value();
        self.characteristic_kn(greatest_m, extension_m).map(|kn| kn / divisor)
    }
}

/// Sizes of older props of BS 4074.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OldProp {
    /// Sizes 0 to 3.
    Sizes0To3,
    /// Size 4.
    Size4,
}

/// Height m, eccentric kN, concentric kN.
type Row = (f64, f64, f64);

/// CIRIA Technical Note 79 (1977) as reproduced in a public table, 1.5° out of plumb, load 25 mm off the axis or on it.
const SIZES_0_TO_3: [Row; 9] = [
    (1.75, 17.0, 32.0),
    (2.0, 17.0, 32.0),
    (2.25, 17.0, 32.0),
    (2.5, 17.0, 26.0),
    (2.75, 17.0, 23.0),
    (3.0, 15.0, 19.0),
    (3.25, 13.0, 17.0),
    (3.5, 11.0, 15.0),
    (3.75, 10.0, 13.0),
];
const SIZE_4: [Row; 7] = [
    (3.25, 17.0, 24.0),
    (3.5, 14.0, 19.0),
    (3.75, 11.0, 15.0),
    (4.0, 10.0, 12.0),
    (4.25, 9.0, 11.0),
    (4.5, 8.0, 10.0),
    (4.75, 7.0, 9.0),
];

impl OldProp {
    /// Published safe load at a height, kN, at the next height of the table; none above it. `eccentric`: 25 mm off.
    pub fn safe_kn(self, height_m: f64, eccentric: bool) -> Option<f64> {
        let rows: &[Row] = match self {
            Self::Sizes0To3 => &SIZES_0_TO_3,
            Self::Size4 => &SIZE_4,
        };
        let row = rows.iter().find(|row| height_m <= row.0 + 1e-9)?;
        Some(if eccentric { row.1 } else { row.2 })
    }
}
