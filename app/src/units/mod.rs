//! Values as they are written on the page: in the units of the page and with the decimal sign of its language.
//!
//! Schemes, results and worked formulas are in SI whatever the page shows.

mod customary;
mod feet;
mod field;

pub use customary::{FOOT_M, INCH_M};
pub use field::Unit;

use crate::language;
use customary::customary;
use falsewright_core::decimals::{Bound, decimals};
use falsewright_core::sentence::space_before;
use std::cell::Cell;

/// Units of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum System {
    /// SI, lengths of drawings in mm.
    #[default]
    Metric,
    /// US customary, lengths of drawings in feet and inches.
    Customary,
}

impl System {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Metric, Self::Customary];

    /// What it is kept as.
    pub fn code(self) -> &'static str {
        match self {
            Self::Metric => "si",
            Self::Customary => "us",
        }
    }
}

thread_local! {
    static SYSTEM: Cell<System> = const { Cell::new(System::Metric) };
}

/// The units of the page.
pub fn system() -> System {
    SYSTEM.get()
}

/// Shows values in other units from now on.
pub fn set_system(system: System) {
    SYSTEM.set(system);
}

/// A number with so many decimals.
pub fn number(value: f64, places: usize) -> String {
    with_sign(decimals(value, places).to_string())
}

/// Values as they are written with a point, with the decimal sign of the language.
pub fn written(values: &impl ToString) -> String {
    with_sign(values.to_string())
}

fn with_sign(text: String) -> String {
    match language::spoken().decimal_sign() {
        '.' => text,
        sign => text.replace('.', sign.encode_utf8(&mut [0; 4])),
    }
}

/// A number with up to this many decimals and no trailing zeros.
pub fn trimmed(value: f64, decimals: usize) -> String {
    let text = number(value, decimals);
    let sign = language::spoken().decimal_sign();
    if text.contains(sign) { text.trim_end_matches('0').trim_end_matches(sign).to_owned() } else { text }
}

/// A number with six significant figures at most and no trailing zeros.
pub fn figures(value: f64) -> String {
    let before = if value == 0.0 { 0 } else { libm::floor(libm::log10(value.abs())) as i32 + 1 };
    trimmed(value, (6 - before).clamp(0, 12) as usize)
}

/// What a unit of SI is called as the page shows it.
pub fn unit(si: &'static str) -> &'static str {
    customary(si).map_or(si, |shown| shown.name)
}

/// A value in a unit of SI as the page shows it, without its unit; `decimals` are those in SI.
pub fn amount(value: f64, si: &str, decimals: usize) -> String {
    let (value, decimals) = shown(value, si, decimals);
    number(value, decimals)
}

/// The same without trailing zeros.
pub fn amount_trimmed(value: f64, si: &str, decimals: usize) -> String {
    let (value, decimals) = shown(value, si, decimals);
    trimmed(value, decimals)
}

/// A value with its unit.
pub fn quantity(value: f64, si: &'static str, decimals: usize) -> String {
    with_unit(amount(value, si, decimals), si)
}

/// A value and its decimals in the unit that it is shown in.
fn shown(value: f64, si: &str, decimals: usize) -> (f64, usize) {
    customary(si).map_or((value, decimals), |unit| (unit.shown(value), unit.decimals(decimals)))
}

fn with_unit(amount: String, si: &'static str) -> String {
    let unit = unit(si);
    format!("{amount}{}{unit}", space_before(unit))
}

/// A value in a text, which stays on one line with its unit.
pub fn unbroken(value: String) -> String {
    value.replace(' ', "\u{a0}")
}

/// What must not be passed or must be reached, with its unit, rounded to that side in the unit that it is shown in.
pub fn limit(value: f64, si: &'static str, decimals: usize, to: Bound) -> String {
    let (value, decimals) = shown(value, si, decimals);
    with_unit(number(to.of(value, decimals), decimals), si)
}

/// What something may be at most, without its unit.
pub fn at_most(value: f64, si: &str, decimals: usize) -> String {
    let (value, decimals) = shown(value, si, decimals);
    number(Bound::Lower.of(value, decimals), decimals)
}

/// A length as dimensions say it: whole millimetres without their unit, or feet and inches.
pub fn dimension(metres: f64) -> String {
    match system() {
        System::Metric => number(metres * 1e3, 0),
        System::Customary => feet::feet_and_inches(metres),
    }
}

/// The name of what [`dimension`] says, with its unit if that does not say it itself.
pub fn of_dimension(name: &str) -> String {
    match system() {
        System::Metric => format!("{name}, mm"),
        System::Customary => name.to_owned(),
    }
}

/// Steps that a pointer is drawn to, from the finest, m.
pub fn steps_m() -> [f64; 7] {
    match system() {
        System::Metric => [0.005, 0.01, 0.05, 0.1, 0.5, 1.0, 5.0],
        System::Customary => [0.25, 0.5, 1.0, 3.0, 6.0, 12.0, 60.0].map(|inches| inches * INCH_M),
    }
}

/// One nudge, and a large one, m.
pub fn nudges_m() -> [f64; 2] {
    match system() {
        System::Metric => [0.005, 0.05],
        System::Customary => [0.25, 2.0].map(|inches| inches * INCH_M),
    }
}

/// Distances of the fine and the coarse lines of the sheet, from the closest, m.
pub fn lines_m() -> [[f64; 2]; 4] {
    match system() {
        System::Metric => [0.01, 0.1, 1.0, 10.0].map(|fine| [fine, fine * 10.0]),
        System::Customary => [[1.0, 12.0], [12.0, 120.0], [120.0, 1200.0], [1200.0, 12_000.0]]
            .map(|lines| lines.map(|inches| inches * INCH_M)),
    }
}

/// Lengths of a scale bar, m.
pub fn scale_m() -> [f64; 7] {
    match system() {
        System::Metric => [0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0],
        System::Customary => [2.0, 4.0, 12.0, 24.0, 60.0, 120.0, 240.0].map(|inches| inches * INCH_M),
    }
}

/// The length of a scale bar.
pub fn scale(metres: f64) -> String {
    match system() {
        System::Metric => format!("{} m", trimmed(metres, 2)),
        System::Customary => feet::feet_and_inches(metres),
    }
}

/// A length as dimensions say it, with its unit.
pub fn size(metres: f64) -> String {
    length(metres, true, 0)
}

/// A length in metres or millimetres with these decimals, or in feet and inches.
pub fn length(metres: f64, mm: bool, decimals: usize) -> String {
    match system() {
        System::Metric if mm => format!("{} mm", number(metres * 1e3, decimals)),
        System::Metric => format!("{} m", number(metres, decimals)),
        System::Customary => feet::feet_and_inches(metres),
    }
}

/// A level or another place to be set out, with its sign.
pub fn level(metres: f64) -> String {
    let text = match system() {
        System::Metric => number(metres, 3),
        System::Customary => quantity(metres, "m", 2),
    };
    if text.starts_with('-') { text } else { format!("+{text}") }
}

/// A text with a capital at its head.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let head: String = letters.next().into_iter().flat_map(char::to_uppercase).collect();
    head + letters.as_str()
}

/// A number as typed: comma or point.
pub fn parse(text: &str) -> Option<f64> {
    text.trim().replace(',', ".").replace('−', "-").parse().ok().filter(|value: &f64| value.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zeros_are_trimmed_only_behind_the_point() {
        assert_eq!(trimmed(1200.0, 0), "1200");
        assert_eq!(trimmed(0.25, 3), "0.25");
        assert_eq!(trimmed(3.0, 2), "3");
        assert_eq!(number(-0.001, 2), "0.00");
    }

    #[test]
    fn figures_are_six_at_most() {
        assert_eq!(figures(95.0), "95");
        assert_eq!(figures(0.015 * 1e3), "15");
        assert_eq!(figures(205e6 / 1e3), "205000");
        assert_eq!(figures(0.000_024_123_456_7), "0.0000241235");
        assert_eq!(figures(0.0), "0");
    }

    #[test]
    fn a_comma_is_a_point_and_words_are_nothing() {
        assert_eq!(parse(" 0,45 "), Some(0.45));
        assert_eq!(parse("inf"), None);
        assert_eq!(parse("a lot"), None);
    }

    #[test]
    fn german_has_a_decimal_comma() {
        language::speak(language::Language::German);
        assert_eq!((quantity(12.34, "kN", 1), trimmed(0.25, 3)), ("12,3 kN".to_owned(), "0,25".to_owned()));
        assert_eq!((trimmed(3.0, 2), level(-1.5)), ("3".to_owned(), "-1,500".to_owned()));
        language::speak(language::Language::English);
    }

    #[test]
    fn what_is_allowed_at_most_is_never_shown_greater() {
        assert_eq!(at_most(2.99, "m/h", 1), "2.9");
        set_system(System::Customary);
        for tenths in 1..400 {
            let rise_m_h = f64::from(tenths) * 0.037;
            let shown_ft_h: f64 = at_most(rise_m_h, "m/h", 1).parse().expect("a number");
            assert!(shown_ft_h * 0.3048 <= rise_m_h + 1e-12 && (rise_m_h - shown_ft_h * 0.3048) < 0.1 * 0.3048);
        }
        // 1.67 m/h is 5.479 ft/h, and 12 °C 53.6 °F.
        assert_eq!(limit(1.67, "m/h", 2, Bound::Lower), "5.47 ft/h");
        assert_eq!(limit(12.0, "°C", 0, Bound::Upper), "54 °F");
        set_system(System::Metric);
        assert_eq!(limit(0.1 + 0.2, "m/h", 1, Bound::Upper), "0.3 m/h");
    }
}
