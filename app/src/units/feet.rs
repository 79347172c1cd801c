//! Feet, inches and sixteenths.

use super::customary::INCH_M;

/// Parts of an inch that are written.
const PARTS: u64 = 16;

/// A length in whole sixteenths of an inch, and whether it is negative.
fn sixteenths(metres: f64) -> (bool, u64) {
    // Rounded as one number: inches never come to twelve.
    let parts = (metres.abs() / INCH_M * PARTS as f64).round() as u64;
    (metres < 0.0 && parts > 0, parts)
}

/// Such as `9 3/4`.
fn in_inches(parts: u64) -> String {
    let (whole, part) = (parts / PARTS, parts % PARTS);
    if part == 0 {
        return whole.to_string();
    }
    let common = 1 << part.trailing_zeros();
    let fraction = format!("{}/{}", part / common, PARTS / common);
    if whole == 0 { fraction } else { format!("{whole} {fraction}") }
}

/// Such as `11′-9 3/4″`, `9 3/4″` below a foot, and `−6″`.
pub fn feet_and_inches(metres: f64) -> String {
    let (negative, parts) = sixteenths(metres);
    let (feet, rest) = (parts / (12 * PARTS), parts % (12 * PARTS));
    let sign = if negative { "−" } else { "" };
    match (feet, rest / PARTS) {
        (0, _) => format!("{sign}{}″", in_inches(rest)),
        // A fraction alone could be read as a part of the feet.
        (_, 0) if rest > 0 => format!("{sign}{feet}′-0 {}″", in_inches(rest)),
        _ => format!("{sign}{feet}′-{}″", in_inches(rest)),
    }
}

/// A length in inches alone, such as `47 1/4`, without the mark.
pub fn inches(metres: f64) -> String {
    let (negative, parts) = sixteenths(metres);
    format!("{}{}", if negative { "−" } else { "" }, in_inches(parts))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::editor::{Bare, parse_length_in};
    use crate::units::customary::FOOT_M;
    use proptest::prelude::*;

    #[test]
    fn lengths_are_written_as_on_drawings() {
        for (metres, shown) in [
            (3.6, "11′-9 3/4″"),
            (12.5 * FOOT_M, "12′-6″"),
            (0.0, "0″"),
            (-0.0001, "0″"),
            (0.45, "1′-5 11/16″"),
            (-0.1524, "−6″"),
            (-1.2, "−3′-11 1/4″"),
            (FOOT_M, "1′-0″"),
            (12.0 * FOOT_M + 0.375 * INCH_M, "12′-0 3/8″"),
            (0.0127, "1/2″"),
            // A hair below: carried into the foot.
            (12.0 * FOOT_M - 1e-4, "12′-0″"),
            (12.0 * FOOT_M - INCH_M / 33.0, "12′-0″"),
            (12.0 * FOOT_M - INCH_M / 31.0, "11′-11 15/16″"),
        ] {
            assert_eq!(feet_and_inches(metres), shown);
        }
        assert_eq!(inches(1.2), "47 1/4");
    }

    proptest! {
        #[test]
        fn what_is_written_is_read_back_within_half_a_sixteenth(metres in -900.0..900.0_f64) {
            let half = INCH_M / 32.0 + 1e-9;
            let shown = feet_and_inches(metres);
            let back = parse_length_in(&shown, Bare::Feet).expect("a length");
            prop_assert!((back - metres).abs() <= half, "{metres}: {shown}, {back}");
            let back = parse_length_in(&inches(metres), Bare::Inches).expect("a length");
            prop_assert!((back - metres).abs() <= half, "{metres}: {back}");
        }

        #[test]
        fn inches_stay_below_twelve_and_sixteenths_below_sixteen(metres in -300.0..300.0_f64) {
            let shown = feet_and_inches(metres);
            let rest = shown.rsplit('-').next().unwrap_or(&shown).trim_start_matches('−');
            let whole: u64 = rest.split([' ', '″', '/']).next().and_then(|digits| digits.parse().ok()).expect("inches");
            prop_assert!(whole < 16 && (rest.contains('/') && !rest.contains(' ') || whole < 12), "{shown}");
            prop_assert!(!shown.contains("/1″") && !shown.contains("0/"), "{shown}");
        }
    }
}
