//! Units of fields.

use super::customary::customary;
use super::{System, feet, figures, parse, system, trimmed};
use crate::editor::{Bare, QuantityError, parse_length_in};

/// How a number is shown and typed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// Of SI, or of its own.
    name: &'static str,
    /// Size of the unit in the value's own unit.
    size: f64,
    /// Decimals shown.
    decimals: usize,
    /// How a length is shown where the page is not metric.
    length: Length,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Length {
    /// By its unit.
    Plain,
    /// Inches and sixteenths.
    Inches,
    /// Feet, inches and sixteenths.
    Feet,
}

impl Unit {
    /// Metres shown as millimetres, or as inches: spacings and sizes of equipment.
    pub const MM: Self = Self { length: Length::Inches, ..Self::scaled("mm", 1e-3, 0) };
    /// Metres shown as millimetres, or as feet and inches: places and clear sizes.
    pub const SPAN: Self = Self { length: Length::Feet, ..Self::scaled("mm", 1e-3, 0) };
    /// Metres shown as millimetres, or as inches with decimals: what sixteenths are too coarse for.
    pub const FINE: Self = Self::scaled("mm", 1e-3, 0);
    /// Metres, or feet and inches.
    pub const M: Self = Self { length: Length::Feet, ..Self::scaled("m", 1.0, 3) };
    /// A plain number.
    pub const NONE: Self = Self::of("", 3);

    /// A unit that is the value's own.
    pub const fn of(name: &'static str, decimals: usize) -> Self {
        Self::scaled(name, 1.0, decimals)
    }

    /// A unit of this size in the value's own.
    pub const fn scaled(name: &'static str, size: f64, decimals: usize) -> Self {
        Self { name, size, decimals, length: Length::Plain }
    }

    /// Written behind the number.
    pub fn name(self) -> &'static str {
        match (system(), self.length) {
            (System::Metric, _) | (_, Length::Plain) => super::unit(self.name),
            (_, Length::Inches) => "in",
            // The value has its marks.
            (_, Length::Feet) => "",
        }
    }

    /// Metres to the value's own unit, for a length.
    fn own_m(self) -> Option<f64> {
        match self.name {
            "m" => Some(1.0 / self.size),
            "mm" => Some(1e-3 / self.size),
            _ => None,
        }
    }

    /// A value as its field shows it.
    pub fn written(self, value: f64) -> String {
        match (system(), self.length, self.own_m()) {
            (System::Customary, Length::Inches, Some(own_m)) => feet::inches(value * own_m),
            (System::Customary, Length::Feet, Some(own_m)) => feet::feet_and_inches(value * own_m),
            _ => match customary(self.name) {
                Some(shown) => trimmed(shown.shown(value / self.size), shown.decimals(self.decimals)),
                None => trimmed(value / self.size, self.decimals),
            },
        }
    }

    /// A value with six significant figures at most, for what is stated so.
    pub fn to_figures(self, value: f64) -> String {
        let in_unit = value / self.size;
        figures(customary(self.name).map_or(in_unit, |unit| unit.shown(in_unit)))
    }

    /// The value that was typed; none where it is none. A length may have a unit of its own.
    pub fn read(self, text: &str) -> Option<f64> {
        let Some(own_m) = self.own_m() else {
            let number = parse(text)?;
            return Some(customary(self.name).map_or(number, |shown| shown.meant(number)) * self.size);
        };
        match parse_length_in(text, self.bare()) {
            Ok(metres) | Err(QuantityError::Range(metres)) => Some(metres / own_m).filter(|value| value.is_finite()),
            Err(_) => None,
        }
    }

    /// What a number without a unit is.
    fn bare(self) -> Bare {
        match (system(), self.length, self.name) {
            (System::Metric, _, "m") => Bare::Metres,
            (System::Metric, ..) => Bare::Millimetres,
            (_, Length::Feet, _) | (_, Length::Plain, "m") => Bare::Feet,
            _ => Bare::Inches,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::set_system;

    #[test]
    fn fields_read_what_they_show() {
        for system in System::ALL {
            set_system(system);
            for (unit, value, within) in [
                (Unit::MM, 1.2, 0.8e-3),
                (Unit::SPAN, 2.745, 0.8e-3),
                // Half a hundredth of an inch.
                (Unit::FINE, 0.017, 0.13e-3),
                (Unit::M, 11.999, 0.8e-3),
                (Unit::of("mm", 0), 150.0, 0.13),
                (Unit::of("kPa", 2), 1.5, 1e-2),
                (Unit::of("°C", 1), 12.0, 0.05),
                (Unit::of("kN/m³", 2), 25.0, 0.01),
                (Unit::scaled("%", 1e-2, 2), 0.025, 1e-9),
                (Unit::of("m/s", 1), 18.0, 0.03),
            ] {
                let shown = unit.written(value);
                let back = unit.read(&shown).expect("a number");
                assert!((back - value).abs() <= within, "{shown} {}: {back}", unit.name());
            }
        }
        set_system(System::Metric);
    }

    #[test]
    fn a_length_is_read_in_any_unit_and_with_arithmetic() {
        let metres = |unit: Unit, text: &str| unit.read(text).expect("a length");
        assert_eq!(metres(Unit::MM, "450"), 0.45);
        assert!((metres(Unit::MM, "6 in + 2*300") - 0.7524).abs() < 1e-12);
        assert_eq!(metres(Unit::M, "7200 mm"), 7.2);
        assert_eq!(metres(Unit::MM, "5000000"), 5000.0, "what is absurd is for the scheme to refuse");
        assert_eq!(Unit::MM.read("a lot"), None);
        set_system(System::Customary);
        assert!((metres(Unit::MM, "16") - 0.4064).abs() < 1e-12);
        assert!((metres(Unit::SPAN, "8") - 2.4384).abs() < 1e-12);
        assert!((metres(Unit::SPAN, "2.4 m") - 2.4).abs() < 1e-12);
        set_system(System::Metric);
    }
}
