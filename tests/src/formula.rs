//! An independent reading of the formulas that checks print: `… symbols = numbers with units = ratio`.

use std::iter::Peekable;
use std::vec::IntoIter;

/// The ratio that the printed numbers of a formula give, units and all; none where they cannot be read.
pub fn ratio_of(formula: &str) -> Option<f64> {
    evaluate(formula.rsplit(" = ").nth(1)?)
}

/// Every `symbols = numbers = value unit` of a formula whose parts are set off by `; `: what the numbers give, and the value
/// printed, both in kPa.
pub fn pressures(formula: &str) -> Vec<(f64, f64)> {
    let read = |part: &str| {
        let mut pieces = part.rsplit(" = ");
        let (printed, numbers) = (pieces.next()?, pieces.next()?);
        pieces.next()?;
        let scale = if numbers.contains("m³ × ") { 1e-3 } else { 1.0 };
        let printed: f64 = printed.strip_suffix(" kPa")?.parse().ok()?;
        Some((evaluate(numbers)? * scale, printed))
    };
    formula.split("; ").filter_map(read).collect()
}

/// The ratio that a formula ends in.
pub fn printed_ratio(formula: &str) -> Option<f64> {
    formula.rsplit(" = ").next()?.parse().ok()
}

/// Value of an expression in SI units.
pub fn evaluate(text: &str) -> Option<f64> {
    let mut reader = Reader { tokens: tokens(text).into_iter().peekable() };
    let value = reader.sum()?;
    reader.tokens.next().is_none().then_some(value)
}

#[derive(Clone, Debug, PartialEq)]
enum Token {
    Number(f64),
    Unit(f64),
    Mark(char),
    Least,
    Greatest,
}

fn unit(word: &str) -> Option<f64> {
    Some(match word {
        "m" | "m²" | "m³" | "N" | "°C" => 1.0,
        "mm" => 1e-3,
        "cm" => 1e-2,
        "mm²" => 1e-6,
        "cm²" => 1e-4,
        "cm³" | "cm³/m" => 1e-6,
        "mm³" => 1e-9,
        "kN" | "kNm" | "kPa" | "kN/m" | "kNm/m" | "kN/m³" => 1e3,
        "N/mm²" => 1e6,
        _ => return None,
    })
}

/// Numbers, units and marks; words that are neither say what a number is and are passed over.
fn tokens(text: &str) -> Vec<Token> {
    let mut all = Vec::new();
    let plain = text
        .replace("least of (", "least (")
        .replace("greatest of (", "greatest (")
        .replace('[', "(")
        .replace(']', ")");
    for word in plain.split_whitespace() {
        let opened = word.trim_start_matches(['(', '√']);
        all.extend(word[..word.len() - opened.len()].chars().map(Token::Mark));
        let inner = match opened.find(')') {
            Some(end) => &opened[..end],
            None => opened.trim_end_matches(','),
        };
        match (inner, inner.parse::<f64>(), unit(inner)) {
            ("least", ..) => all.push(Token::Least),
            ("greatest", ..) => all.push(Token::Greatest),
            ("+" | "−" | "×" | "/", ..) => all.extend(inner.chars().map(Token::Mark)),
            (_, Ok(number), _) => all.push(Token::Number(number)),
            (_, _, Some(factor)) => all.push(Token::Unit(factor)),
            _ => {}
        }
        all.extend(opened[inner.len()..].chars().map(Token::Mark));
    }
    all
}

struct Reader {
    tokens: Peekable<IntoIter<Token>>,
}

impl Reader {
    fn took(&mut self, mark: char) -> bool {
        self.tokens.next_if_eq(&Token::Mark(mark)).is_some()
    }

    fn sum(&mut self) -> Option<f64> {
        let mut value = self.product()?;
        loop {
            if self.took('+') {
                value += self.product()?;
            } else if self.took('−') {
                value -= self.product()?;
            } else {
                return Some(value);
            }
        }
    }

    fn product(&mut self) -> Option<f64> {
        let mut value = self.factor()?;
        loop {
            if self.took('×') {
                value *= self.factor()?;
            } else if self.took('/') {
                value /= self.factor()?;
            } else {
                return Some(value);
            }
        }
    }

    fn factor(&mut self) -> Option<f64> {
        let value = match self.tokens.next()? {
            Token::Mark('√') => self.factor()?.sqrt(),
            Token::Mark('(') => self.closed()?,
            Token::Mark('−') => -self.factor()?,
            Token::Least => self.of_list(f64::min)?,
            Token::Greatest => self.of_list(f64::max)?,
            Token::Number(number) => match self.tokens.next_if(|token| matches!(token, Token::Unit(_))) {
                Some(Token::Unit(unit)) => number * unit,
                _ => number,
            },
            _ => return None,
        };
        Some(if self.took('²') { value * value } else { value })
    }

    fn of_list(&mut self, choose: fn(f64, f64) -> f64) -> Option<f64> {
        let open = self.took('(');
        let mut chosen = self.sum()?;
        while self.took(',') {
            chosen = choose(chosen, self.sum()?);
        }
        (open && self.took(')')).then_some(chosen)
    }

    fn closed(&mut self) -> Option<f64> {
        let value = self.sum()?;
        self.took(')').then_some(value)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn expressions_by_hand() {
        for (text, expected) in [
            ("12.00 kN / (2 × (3.000 mm)² / (1.1 × 1.5))", 12e3 / (2.0 * 9e-6 / 1.65)),
            ("45.00 kN / least of (1.000 × 90.00 kN, 80.00 kN / 2)", 45.0 / 40.0),
            ("3.600 m / (4.200 − 2 × 0.250 guards − 0.050 tolerance)", 3.6 / 3.65),
            ("1.000 kN / 4.000 kN + 2 × (1.000 kN × 0.5000 m + 1.000 kNm) / 6.000 kNm", 0.75),
            ("25.0 × [1.00 × √4.000 + greatest of ((1.00 + 2.00) × 3.000, 5)]", 275.0),
            ("10.00 kN / (2.000 mm² × 5.000 N/mm² / √3)", 3f64.sqrt() * 1e3),
        ] {
            let got = evaluate(text).expect(text);
            assert!((got / expected - 1.0).abs() < 1e-12, "{text}: {got}");
        }
        assert_eq!(evaluate("1.0 kN / (2.0"), None);
        assert_eq!(ratio_of("a; b = c = 3.0 kN / 2.0 kN = 1.500"), Some(1.5));
        assert_eq!(printed_ratio("b = 3.0 kN / 2.0 kN = 1.500"), Some(1.5));
    }
}
