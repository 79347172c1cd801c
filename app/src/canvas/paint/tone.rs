//! How a ratio looks: ten steps of one blue up to 1.00, then the mark of excess.

use crate::units;
use falsewright_core::model::Part;
use falsewright_core::results::{Check, Results};

/// Style class of a ratio.
pub fn tone(ratio: f64) -> &'static str {
    const STEPS: [&str; 10] =
        ["tone-0", "tone-1", "tone-2", "tone-3", "tone-4", "tone-5", "tone-6", "tone-7", "tone-8", "tone-9"];
    if exceeds(ratio) { "tone-over" } else { STEPS[((ratio * 10.0) as usize).min(9)] }
}

/// Whether a ratio is above 1, however little, or not a number.
pub fn exceeds(ratio: f64) -> bool {
    ratio.is_nan() || ratio > 1.0
}

/// A ratio as printed: two decimals, a wedge before it where it is above 1, and a third decimal
/// where two would print an excess as 1.00.
pub fn printed(ratio: f64) -> String {
    match ratio {
        r if r.is_nan() || r >= 99.995 => "▲ > 99".to_owned(),
        r if !exceeds(r) => units::number(r, 2),
        r if r < 1.005 => format!("▲ {}", units::number(r.max(1.001), 3)),
        r => format!("▲ {}", units::number(r, 2)),
    }
}

/// The greatest check of the parts of one mark and role.
pub fn governing<'r>(results: &'r Results, part: &Part) -> Option<&'r Check> {
    let of_mark = |member: &str| member.strip_prefix(&*part.mark).is_some_and(|rest| rest.starts_with(' '));
    results
        .checks
        .iter()
        .filter(|check| check.owner == part.owner && of_mark(&check.member) && check.member.ends_with(part.role.name()))
        .max_by(|a, b| a.ratio.total_cmp(&b.ratio))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_is_no_excess_and_a_little_more_never_prints_as_one() {
        assert_eq!((tone(1.0), printed(1.0).as_str()), ("tone-9", "1.00"));
        assert_eq!((tone(1.0001), printed(1.0001).as_str()), ("tone-over", "▲ 1.001"));
        assert_eq!((tone(1.066), printed(1.066).as_str()), ("tone-over", "▲ 1.07"));
    }

    #[test]
    fn a_member_without_resistance_stands_out() {
        assert_eq!(tone(f64::INFINITY), "tone-over");
        assert_eq!(tone(f64::NAN), "tone-over");
        assert_eq!(printed(f64::INFINITY), "▲ > 99");
    }
}
