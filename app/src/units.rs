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

/// A number with six significant figures at most and no trailing zeros.
pub fn figures(value: f64) -> String {
    let before = if value == 0.0 { 0 } else { libm::floor(libm::log10(value.abs())) as i32 + 1 };
    trimmed(value, (6 - before).clamp(0, 12) as usize)
}

/// A text with a capital at its head.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let head: String = letters.next().into_iter().flat_map(char::to_uppercase).collect();
    head + letters.as_str()
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
}
