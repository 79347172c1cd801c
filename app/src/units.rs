//! Values as they are written on the drawing.

/// A length in whole millimetres, as dimensions are.
pub fn millimetres(metres: f64) -> String {
    format!("{:.0}", metres * 1e3)
}

/// A number with up to this many decimals and no trailing zeros.
pub fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// A number as typed: comma or point.
pub fn parse(text: &str) -> Option<f64> {
    text.trim().replace(',', ".").parse().ok().filter(|value: &f64| value.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zeros_are_trimmed_only_behind_the_point() {
        assert_eq!(trimmed(1200.0, 0), "1200");
        assert_eq!(trimmed(0.25, 3), "0.25");
        assert_eq!(trimmed(3.0, 2), "3");
    }

    #[test]
    fn a_comma_is_a_point_and_words_are_nothing() {
        assert_eq!(parse(" 0,45 "), Some(0.45));
        assert_eq!(parse("inf"), None);
        assert_eq!(parse("a lot"), None);
    }
}
