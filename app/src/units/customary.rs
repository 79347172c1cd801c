//! US customary units.

use super::{System, system};

/// Factors of NIST Special Publication 811 (2008), appendix B.8, exact: metres to a foot and an inch, newtons to a
/// pound-force (its standard pound by standard gravity), kilograms to a pound.
pub const FOOT_M: f64 = 0.3048;
/// Metres to an inch.
pub const INCH_M: f64 = 0.0254;
const POUND_FORCE_N: f64 = 4.448_221_615_260_5;
const POUND_KG: f64 = 0.453_592_37;
/// 5280 ft in an hour.
const MILE_M: f64 = 5280.0 * FOOT_M;

/// A unit in place of one of SI.
#[derive(Clone, Copy, Debug)]
pub struct Customary {
    si: &'static str,
    /// What it is called.
    pub name: &'static str,
    /// Its size in the unit of SI.
    pub size: f64,
    /// What nought of it is in the unit of SI.
    pub zero: f64,
    /// Decimals more than in SI, so that a value is shown about as closely.
    more: i8,
}

const fn unit(si: &'static str, name: &'static str, size: f64, more: i8) -> Customary {
    Customary { si, name, size, zero: 0.0, more }
}

const KIP_KN: f64 = POUND_FORCE_N;
const SQUARE_FOOT_M2: f64 = FOOT_M * FOOT_M;
const CUBIC_YARD_M3: f64 = 27.0 * FOOT_M * SQUARE_FOOT_M2;
/// 2000 lb.
const SHORT_TON_T: f64 = 2.0 * POUND_KG;
const SQUARE_INCH_MM2: f64 = INCH_M * INCH_M * 1e6;

const UNITS: [Customary; 30] = [
    unit("m", "ft", FOOT_M, 0),
    unit("mm", "in", INCH_M * 1e3, 2),
    unit("m²", "ft²", SQUARE_FOOT_M2, -1),
    unit("m³", "yd³", CUBIC_YARD_M3, 0),
    unit("m³/h", "yd³/h", CUBIC_YARD_M3, 0),
    unit("m/h", "ft/h", FOOT_M, 0),
    unit("m/s", "mph", MILE_M / 3600.0, 0),
    unit("mm²", "in²", SQUARE_INCH_MM2, 3),
    unit("cm³/m", "in³/ft", INCH_M * INCH_M * INCH_M / FOOT_M * 1e6, 2),
    unit("kN", "kip", KIP_KN, 1),
    unit("kN/m", "kip/ft", KIP_KN / FOOT_M, 1),
    unit("kNm", "kip·ft", KIP_KN * FOOT_M, 0),
    unit("kNm/m", "kip·ft/ft", KIP_KN, 1),
    unit("kNm²", "kip·ft²", KIP_KN * SQUARE_FOOT_M2, 0),
    unit("kNm²/m", "kip·ft²/ft", KIP_KN * FOOT_M, 0),
    unit("kPa", "psf", POUND_FORCE_N / SQUARE_FOOT_M2 * 1e-3, -1),
    unit("kN/m²", "psf", POUND_FORCE_N / SQUARE_FOOT_M2 * 1e-3, -1),
    unit("kN/m³", "pcf", POUND_FORCE_N / (FOOT_M * SQUARE_FOOT_M2) * 1e-3, -1),
    unit("N/mm²", "psi", POUND_FORCE_N / SQUARE_INCH_MM2, -2),
    unit("MPa", "psi", POUND_FORCE_N / SQUARE_INCH_MM2, -2),
    unit("kg", "lb", POUND_KG, 0),
    unit("kg/m", "lb/ft", POUND_KG / FOOT_M, 0),
    unit("kg/m²", "lb/ft²", POUND_KG / SQUARE_FOOT_M2, 0),
    unit("K", "°F", 5.0 / 9.0, 0),
    Customary { zero: -160.0 / 9.0, ..unit("°C", "°F", 5.0 / 9.0, 0) },
    unit("kN/mm", "kip/in", KIP_KN / (INCH_M * 1e3), 0),
    unit("mm/m", "in/ft", INCH_M * 1e3 / FOOT_M, 2),
    unit("cm", "in", INCH_M * 1e2, 1),
    unit("/m²", "/ft²", 1.0 / SQUARE_FOOT_M2, 0),
    unit("/t", "/ton", 1.0 / SHORT_TON_T, 0),
];

/// What stands for a unit of SI; none where the page is metric, or where both systems share the unit.
pub fn customary(si: &str) -> Option<&'static Customary> {
    (system() == System::Customary).then(|| UNITS.iter().find(|unit| unit.si == si))?
}

impl Customary {
    /// A value in SI in this unit.
    pub fn shown(&self, value: f64) -> f64 {
        (value - self.zero) / self.size
    }

    /// A value in this unit in SI.
    pub fn meant(&self, value: f64) -> f64 {
        value * self.size + self.zero
    }

    /// Decimals for a value that has so many in SI.
    pub fn decimals(&self, in_si: usize) -> usize {
        in_si.saturating_add_signed(isize::from(self.more))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{quantity, set_system};

    /// Values of NIST SP 811, appendix B.9: seven digits of each factor; temperatures by its B.8.
    #[test]
    fn factors_are_those_of_the_handbook() {
        for (si, value, expected) in [
            ("m", 0.3048, 1.0),
            ("mm", 25.4, 1.0),
            ("m³", 7.645_549e-1, 1.0),
            ("m²", 9.290_304e-2, 1.0),
            ("kN", 4.448_222, 1.0),
            ("kN/m", 1.459_390e1, 1.0),
            ("kNm", 1.355_818, 1.0),
            ("kPa", 4.788_026e-2, 1.0),
            ("N/mm²", 6.894_757e-3, 1.0),
            ("kN/m³", 1.570_875e-1, 1.0),
            ("kg", 4.535_924e-1, 1.0),
            ("kg/m", 1.488_164, 1.0),
            ("kg/m²", 4.882_428, 1.0),
            ("m/s", 4.470_4e-1, 1.0),
            ("/m²", 1.0, 9.290_304e-2),
            ("/t", 1.0, 9.071_847e-1),
            ("°C", 100.0, 212.0),
            ("°C", -40.0, -40.0),
            ("K", 10.0, 18.0),
        ] {
            let unit = UNITS.iter().find(|unit| unit.si == si).expect("a unit");
            assert!((unit.shown(value) - expected).abs() < 5e-7 * expected.abs(), "{si}: {}", unit.shown(value));
            assert!((unit.meant(unit.shown(value)) - value).abs() < 1e-12 * value.abs(), "{si}");
        }
    }

    #[test]
    fn values_are_shown_about_as_closely_as_in_si() {
        set_system(System::Customary);
        for (value, si, decimals, shown) in [
            (60.0, "kPa", 1, "1253 psf"),
            (12.3, "kN", 1, "2.77 kip"),
            (-3.456, "kNm", 2, "-2.55 kip·ft"),
            (3.2, "mm", 1, "0.126 in"),
            (20.0, "m³", 1, "26.2 yd³"),
            (2.0, "m/h", 2, "6.56 ft/h"),
            (15.0, "°C", 1, "59.0 °F"),
            (10.0, "K", 0, "18 °F"),
            (25.0, "N/mm²", 1, "3626 psi"),
            (7.0, "days", 1, "7.0 days"),
            (0.5, "", 2, "0.50"),
        ] {
            assert_eq!(quantity(value, si, decimals), shown);
        }
        set_system(System::Metric);
    }
}
