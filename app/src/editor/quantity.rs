//! Typed lengths: `3.6`, `450`, `450 mm`, `1,2 m`, `2*300+1200`.
//!
//! A number with a unit is in that unit. Without one, 20 or more is millimetres and less is metres: no section of a
//! culvert is 20 m, and no part of it 20 mm, as people write them. A factor has no unit: in `2*300` and `300*2` the 2
//! multiplies, and if neither side has a unit the second number is the length, unless only the first is 20 or more.

/// Why a typed length is not understood.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum QuantityError {
    /// Nothing typed.
    #[error("Type a length, such as 3.6, 450 mm or 2*300+1200.")]
    Empty,
    /// A character that belongs in no length.
    #[error("“{0}” does not belong in a length; use digits, + − * / and the units mm, cm and m.")]
    Character(char),
    /// Digits that make no number.
    #[error("“{0}” is no number.")]
    Number(String),
    /// Letters that are no unit.
    #[error("“{0}” is no unit here; use mm, cm or m.")]
    Unit(String),
    /// Something missing at the end or between signs.
    #[error("A number is missing {0}.")]
    Missing(&'static str),
    /// Length by length.
    #[error("Two lengths cannot be multiplied; one of the numbers needs to be without a unit.")]
    Area,
    /// Something divided by a length or by nothing.
    #[error("A length can only be divided by a number that is not 0.")]
    Divisor,
    /// Endless or absurd.
    #[error("{0} m is out of range; lengths go up to 1000 m.")]
    Range(f64),
}

/// Greatest length, m.
const LONGEST_M: f64 = 1000.0;

/// From this on, a number without a unit is millimetres.
const MILLIMETRES_FROM: f64 = 20.0;

/// Reads a length in metres, which may be negative.
pub fn parse_length(text: &str) -> Result<f64, QuantityError> {
    let tokens = tokens(text)?;
    if tokens.is_empty() {
        return Err(QuantityError::Empty);
    }
    let mut reader = Reader { tokens: &tokens };
    let length = reader.sum()?;
    if !(-LONGEST_M..=LONGEST_M).contains(&length) {
        return Err(QuantityError::Range(length));
    }
    Ok(length)
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Token {
    /// A number, in metres if it had a unit.
    Number {
        value: f64,
        unit: bool,
    },
    Sign(char),
}

fn tokens(text: &str) -> Result<Vec<Token>, QuantityError> {
    let mut tokens = Vec::new();
    let mut rest = text.trim();
    while let Some(first) = rest.chars().next() {
        let sign = match first {
            '+' | '*' | '/' => Some(first),
            '-' | '−' | '–' => Some('-'),
            '×' => Some('*'),
            '÷' => Some('/'),
            _ => None,
        };
        if let Some(sign) = sign {
            tokens.push(Token::Sign(sign));
            rest = rest[first.len_utf8()..].trim_start();
        } else if first.is_ascii_digit() || first == '.' || first == ',' {
            let (number, after) = split(rest, |c| c.is_ascii_digit() || c == '.' || c == ',');
            let (unit, after) = split(after.trim_start(), char::is_alphabetic);
            let value = number.replace(',', ".").parse::<f64>().map_err(|_| QuantityError::Number(number.into()))?;
            let factor = match unit.to_ascii_lowercase().as_str() {
                "" | "m" => 1.0,
                "cm" => 0.01,
                "mm" => 0.001,
                _ => return Err(QuantityError::Unit(unit.into())),
            };
            tokens.push(Token::Number { value: value * factor, unit: !unit.is_empty() });
            rest = after.trim_start();
        } else {
            return Err(QuantityError::Character(first));
        }
    }
    Ok(tokens)
}

fn split(text: &str, of: impl Fn(char) -> bool) -> (&str, &str) {
    text.split_at(text.find(|c| !of(c)).unwrap_or(text.len()))
}

struct Reader<'a> {
    tokens: &'a [Token],
}

impl Reader<'_> {
    fn sign(&mut self, among: &[char]) -> Option<char> {
        match self.tokens.first() {
            Some(Token::Sign(sign)) if among.contains(sign) => {
                self.tokens = &self.tokens[1..];
                Some(*sign)
            }
            _ => None,
        }
    }

    fn sum(&mut self) -> Result<f64, QuantityError> {
        let mut negative = self.sign(&['+', '-']) == Some('-');
        let mut total = 0.0;
        loop {
            let term = self.product()?;
            total += if negative { -term } else { term };
            match self.sign(&['+', '-']) {
                Some(sign) => negative = sign == '-',
                None if self.tokens.is_empty() => return Ok(total),
                None => return Err(QuantityError::Missing("a sign before it")),
            }
        }
    }

    /// A product in metres.
    fn product(&mut self) -> Result<f64, QuantityError> {
        let (mut value, mut unit) = self.number()?;
        while let Some(sign) = self.sign(&['*', '/']) {
            let (next, next_unit) = self.number()?;
            if sign == '/' {
                if next_unit || next == 0.0 {
                    return Err(QuantityError::Divisor);
                }
                if !unit {
                    (value, unit) = (metres(value), true);
                }
                value /= next;
                continue;
            }
            (value, unit) = match (unit, next_unit) {
                (true, true) => return Err(QuantityError::Area),
                (false, false) if value >= MILLIMETRES_FROM && next < MILLIMETRES_FROM => (metres(value) * next, true),
                (false, false) => (value * metres(next), true),
                _ => (value * next, true),
            };
        }
        Ok(if unit { value } else { metres(value) })
    }

    fn number(&mut self) -> Result<(f64, bool), QuantityError> {
        match self.tokens.first() {
            Some(&Token::Number { value, unit }) => {
                self.tokens = &self.tokens[1..];
                Ok((value, unit))
            }
            Some(Token::Sign(_)) => Err(QuantityError::Missing("between two signs")),
            None => Err(QuantityError::Missing("at the end")),
        }
    }
}

fn metres(value: f64) -> f64 {
    if value >= MILLIMETRES_FROM { value / 1000.0 } else { value }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_read_as_they_are_written() {
        let cases = [
            ("3.6+0.45", 4.05),
            ("450", 0.45),
            ("450mm", 0.45),
            ("450 mm", 0.45),
            ("1,2 m", 1.2),
            ("2*300+1200", 1.8),
            ("300*2", 0.6),
            ("20", 0.02),
            ("19.5", 19.5),
            ("7200/4", 1.8),
            ("7.2/2", 3.6),
            ("3 600 mm - 1.2m", f64::NAN),
            ("3600 mm - 1.2m", 2.4),
            ("−0.2", -0.2),
            ("25 cm", 0.25),
            ("2 × 1.2 m", 2.4),
            (".5", 0.5),
        ];
        for (text, expected) in cases {
            match parse_length(text) {
                Ok(length) => assert!((length - expected).abs() < 1e-12, "{text}: {length}"),
                Err(error) => assert!(expected.is_nan(), "{text}: {error}"),
            }
        }
    }

    #[test]
    fn what_is_not_understood_is_said() {
        assert_eq!(parse_length("  "), Err(QuantityError::Empty));
        assert_eq!(parse_length("4 ft"), Err(QuantityError::Unit("ft".into())));
        assert_eq!(parse_length("1.2.3"), Err(QuantityError::Number("1.2.3".into())));
        assert_eq!(parse_length("3+"), Err(QuantityError::Missing("at the end")));
        assert_eq!(parse_length("3**2"), Err(QuantityError::Missing("between two signs")));
        assert_eq!(parse_length("2m*3m"), Err(QuantityError::Area));
        assert_eq!(parse_length("3/0"), Err(QuantityError::Divisor));
        assert_eq!(parse_length("(3)"), Err(QuantityError::Character('(')));
        assert!(matches!(parse_length("99999999 m"), Err(QuantityError::Range(_))));
        assert!(matches!(parse_length(&"9".repeat(400)), Err(QuantityError::Range(_))));
    }
}
