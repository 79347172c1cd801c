//! Numbers written with a fixed count of decimals, many times faster than the standard library writes floating ones:
//! at each move of a drag thousands are written.

use std::fmt::{Display, Formatter, Result};

/// Of more than this the standard library writes every figure.
const GREATEST: f64 = 1e15;
const MOST_PLACES: usize = 12;

/// By how much of itself, and of a unit of its last place, a number may lie below a half that is meant: the rounding of
/// sums.
const HAIR: f64 = 1e-12;
const HAIR_OF_UNIT: f64 = 1e-4;

/// Rounding of sums, by the last place that is written, that takes nothing past a limit.
const HAIR_OF_PLACE: f64 = 1e-9;

/// The way to which a limit is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// Down: what must not be passed.
    Lower,
    /// Up: what must be reached.
    Upper,
}

impl Bound {
    /// The number with `places` decimals on this side of a value, but for what rounding left of it.
    pub fn of(self, value: f64, places: usize) -> f64 {
        let power = 10_u64.pow(places.min(MOST_PLACES) as u32) as f64;
        let scaled = value * power;
        match self {
            Self::Lower => (scaled + HAIR_OF_PLACE).floor() / power,
            Self::Upper => (scaled - HAIR_OF_PLACE).ceil() / power,
        }
    }
}

/// A number to be written with a count of decimals.
#[derive(Clone, Copy, Debug)]
pub struct Decimals {
    value: f64,
    places: usize,
}

/// `value` with `places` decimals. A half goes away from nought, also where the rounding of a sum has left it a hair below,
/// so that 55.625 reads 55.63 by whatever way it was worked out. What rounds to nought has no sign.
pub fn decimals(value: f64, places: usize) -> Decimals {
    Decimals { value, places }
}

impl Display for Decimals {
    fn fmt(&self, formatter: &mut Formatter) -> Result {
        let Self { value, places } = *self;
        let power = 10_u64.pow(places.min(MOST_PLACES) as u32);
        let exact = value.abs() * power as f64;
        let scaled = (exact + (exact * HAIR).min(HAIR_OF_UNIT)).round();
        if places > MOST_PLACES || !scaled.is_finite() || scaled >= GREATEST {
            return write!(formatter, "{value:.places$}");
        }
        let mut text = [b'0'; 24];
        let mut start = text.len();
        let mut rest = scaled as u64;
        let mut written = 0;
        while rest > 0 || written <= places {
            if written == places && places > 0 {
                start -= 1;
                text[start] = b'.';
            }
            start -= 1;
            text[start] = b'0' + (rest % 10) as u8;
            rest /= 10;
            written += 1;
        }
        if value < 0.0 && scaled > 0.0 {
            start -= 1;
            text[start] = b'-';
        }
        formatter.write_str(std::str::from_utf8(&text[start..]).unwrap_or_default())
    }
}

/// A number written with no more decimals than it has, as `{value}`.
#[derive(Clone, Copy, Debug)]
pub struct Shortest(f64);

/// `value` as `{value}`.
pub fn shortest(value: f64) -> Shortest {
    Shortest(value)
}

/// Decimals up to which a short number is looked for.
const SHORT: usize = 4;

impl Display for Shortest {
    fn fmt(&self, formatter: &mut Formatter) -> Result {
        let Self(value) = *self;
        let mut power = 1.0;
        for places in 0..=SHORT {
            let scaled = (value * power).round();
            if scaled / power == value && scaled.abs() < GREATEST {
                return decimals(value, places).fmt(formatter);
            }
            power *= 10.0;
        }
        value.fmt(formatter)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn halves_go_away_from_nought_however_they_came_about() {
        for value in [55.625, 55.62500000000016, 55.62499999999984] {
            assert_eq!(decimals(value, 2).to_string(), "55.63", "{value}");
            assert_eq!(decimals(-value, 2).to_string(), "-55.63", "{value}");
        }
        assert_eq!(decimals(55.6249, 2).to_string(), "55.62");
        assert_eq!(decimals(9.995, 2).to_string(), "10.00");
        assert_eq!(decimals(0.5, 0).to_string(), "1");
    }

    #[test]
    fn nought_has_no_sign() {
        for value in [-0.0, -0.004, -1e-9, 0.0] {
            assert_eq!(decimals(value, 2).to_string(), "0.00", "{value}");
        }
        assert_eq!(decimals(-0.006, 2).to_string(), "-0.01");
    }

    #[test]
    fn otherwise_as_the_standard_library_writes_it() {
        for value in [0.0, 0.3, -1.7, 0.123456, 1234.0, 1e14, 1e18, f64::INFINITY, f64::NAN] {
            for places in 0..8 {
                assert_eq!(decimals(value, places).to_string(), format!("{value:.places$}"), "{value} {places}");
            }
        }
    }

    proptest! {
        #[test]
        fn any_number_is_within_half_a_unit_of_its_last_place(value in -1e8..1e8_f64, places in 0_usize..=MOST_PLACES) {
            let text = decimals(value, places).to_string();
            let read: f64 = text.parse().unwrap();
            let unit = 0.1_f64.powi(places as i32);
            // What is scaled is rounded once before.
            let rounding = value.abs() * f64::EPSILON;
            prop_assert!((read - value).abs() <= unit * (0.5 + HAIR_OF_UNIT) * (1.0 + 1e-7) + rounding, "{} as {}", value, text);
            let shown = format!("{read:.places$}");
            prop_assert_eq!(&text, shown.strip_prefix('-').filter(|_| read == 0.0).unwrap_or(&shown));
        }
    }

    #[test]
    fn shortest_as_the_standard_library_writes_it() {
        for value in
            [0.0, -0.0, 1.65, 0.8, -1.1, 0.1 + 0.2, 1e-5, 2.0, 1e16, -57984721308264.3, f64::NAN, f64::NEG_INFINITY]
        {
            assert_eq!(shortest(value).to_string(), (value + 0.0).to_string());
        }
    }

    proptest! {
        #[test]
        fn shortest_of_any(value in proptest::num::f64::ANY, cents in -10_000_000_i64..10_000_000) {
            // Nought has no sign.
            prop_assert_eq!(shortest(value).to_string(), (value + 0.0).to_string());
            let short = cents as f64 / 1e4;
            prop_assert_eq!(shortest(short).to_string(), short.to_string());
        }
    }
}
