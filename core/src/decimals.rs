//! Numbers written with a fixed count of decimals, many times faster than the standard library writes floating ones:
//! at each move of a drag thousands are written.

use std::fmt::{Display, Formatter, Result};

/// Of more than this the standard library writes every figure.
const GREATEST: f64 = 1e15;
const MOST_PLACES: usize = 6;

/// A number to be written with a count of decimals.
#[derive(Clone, Copy, Debug)]
pub struct Decimals {
    value: f64,
    places: usize,
}

/// `value` with `places` decimals, as `{value:.places$}`; half goes to the even figure.
pub fn decimals(value: f64, places: usize) -> Decimals {
    Decimals { value, places }
}

impl Display for Decimals {
    fn fmt(&self, formatter: &mut Formatter) -> Result {
        let Self { value, places } = *self;
        let power = 10_u64.pow(places.min(MOST_PLACES) as u32);
        let scaled = (value.abs() * power as f64).round_ties_even();
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
        if value.is_sign_negative() {
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
    fn written_as_the_standard_library_does() {
        for value in [0.0, -0.0, 0.5, 1.5, -0.004, 0.125, 9.995, 1234.0, -1e-9, 1e14, 1e18, f64::INFINITY, f64::NAN] {
            for places in 0..8 {
                assert_eq!(decimals(value, places).to_string(), format!("{value:.places$}"), "{value} {places}");
            }
        }
    }

    proptest! {
        #[test]
        fn any_number_is_within_half_a_unit_of_its_last_place(value in -1e8..1e8_f64, places in 0_usize..=6) {
            let text = decimals(value, places).to_string();
            let read: f64 = text.parse().unwrap();
            let unit = 0.1_f64.powi(places as i32);
            // What is scaled is rounded once before.
            let rounding = value.abs() * f64::EPSILON;
            prop_assert!((read - value).abs() <= unit * 0.5 * (1.0 + 1e-7) + rounding, "{} as {}", value, text);
            prop_assert_eq!(text.len(), format!("{value:.places$}").len());
        }
    }

    #[test]
    fn shortest_as_the_standard_library_writes_it() {
        for value in [0.0, -0.0, 1.65, 0.8, -1.1, 0.1 + 0.2, 1e-5, 2.0, 1e16, 123.4567, f64::NAN, f64::NEG_INFINITY] {
            assert_eq!(shortest(value).to_string(), value.to_string());
        }
    }

    proptest! {
        #[test]
        fn shortest_of_any(value in proptest::num::f64::ANY, cents in -10_000_000_i64..10_000_000) {
            prop_assert_eq!(shortest(value).to_string(), value.to_string());
            let short = cents as f64 / 1e4;
            prop_assert_eq!(shortest(short).to_string(), short.to_string());
        }
    }
}
