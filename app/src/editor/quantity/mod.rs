//! Typed lengths: `3.6`, `450`, `450 mm`, `1,2 m`, `12'-6 1/2"`, `2*300+1200`.
//!
//! A number with a unit is in that unit. Without one it is in the unit of the field; on the drawing of a metric page 20
//! or more is millimetres and less is metres: no section of a culvert is 20 m, and no part of it 20 mm, as people write
//! them. A factor has no unit: in `2*300` and `300*2` the 2 multiplies, and if neither side has a unit the second number
//! is the length, unless it is guessed at and only the first is 20 or more. A hyphen behind a foot mark joins the inches
//! to the feet; with `ft` and `in` it subtracts.

mod measure;
#[cfg(test)]
mod tests;

use crate::units::{self, FOOT_M, INCH_M};
use std::fmt;

/// Why a typed length is not understood.
#[derive(Clone, Debug, PartialEq)]
pub enum QuantityError {
    /// Nothing typed.
    Empty,
    /// A character that belongs in no length.
    Character(char),
    /// Digits that make no number.
    Number(String),
    /// Letters that are no unit.
    Unit(String),
    /// Something missing at the end or between signs.
    Missing(Gap),
    /// One length where a point needs two.
    OneLength,
    /// Length by length.
    Area,
    /// Something divided by a length or by nothing.
    Divisor,
    /// Endless or absurd, m.
    Range(f64),
}

/// Where something is missing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gap {
    /// A number at the end.
    AtEnd,
    /// A number between two signs.
    BetweenSigns,
    /// A sign between two numbers.
    BetweenNumbers,
}

impl fmt::Display for QuantityError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let metric = units::system() == units::System::Metric;
        f.write_str(&match self {
            Self::Empty if metric => say!("Type a length, such as 3.6, 450 mm or 2*300+1200."),
            Self::Empty => say!("Type a length, such as 12'-6 1/2\", 8 ft, 16 in or 2*8+1.5."),
            Self::Character(character) => {
                say!(
                    "“{}” does not belong in a length; use digits, + − * / and the units mm, cm, m, ft and in.",
                    character
                )
            }
            Self::Number(text) => say!("“{}” is no number.", text),
            Self::Unit(text) => say!("“{}” is no unit here; use mm, cm, m, ft or in.", text),
            Self::Missing(Gap::AtEnd) => say!("A number is missing at the end."),
            Self::Missing(Gap::BetweenSigns) => say!("A number is missing between two signs."),
            Self::Missing(Gap::BetweenNumbers) => say!("A sign is missing between two numbers."),
            Self::OneLength => say!("A second length is missing after a semicolon, as in 450; 500."),
            Self::Area => say!("Two lengths cannot be multiplied; one of the numbers needs to be without a unit."),
            Self::Divisor => say!("A length can only be divided by a number that is not 0."),
            Self::Range(metres) => {
                let (typed, most) = (units::quantity(*metres, "m", 0), units::quantity(LONGEST_M, "m", 0));
                say!("{} is out of range; lengths go up to {}.", typed, most)
            }
        })
    }
}

impl std::error::Error for QuantityError {}

/// Greatest length, m.
const LONGEST_M: f64 = 1000.0;

/// From this on, a number without a unit that is guessed at is millimetres.
const MILLIMETRES_FROM: f64 = 20.0;

/// What a number without a unit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bare {
    /// Metres or millimetres, by its size.
    Guessed,
    /// Millimetres.
    Millimetres,
    /// Metres.
    Metres,
    /// Inches.
    Inches,
    /// Feet.
    Feet,
}

impl Bare {
    /// On the drawing.
    fn of_drawing() -> Self {
        match units::system() {
            units::System::Metric => Self::Guessed,
            units::System::Customary => Self::Feet,
        }
    }

    fn metres(self, value: f64) -> f64 {
        match self {
            Self::Guessed if value >= MILLIMETRES_FROM => value / 1000.0,
            Self::Millimetres => value / 1000.0,
            Self::Guessed | Self::Metres => value,
            Self::Inches => value * INCH_M,
            Self::Feet => value * FOOT_M,
        }
    }
}

/// Reads a length typed on the drawing in metres, which may be negative.
pub fn parse_length(text: &str) -> Result<f64, QuantityError> {
    parse_length_in(text, Bare::of_drawing())
}

/// The same where it is known what a number without a unit is.
pub fn parse_length_in(text: &str, bare: Bare) -> Result<f64, QuantityError> {
    let tokens = tokens(text)?;
    if tokens.is_empty() {
        return Err(QuantityError::Empty);
    }
    let mut reader = Reader { tokens: &tokens, bare };
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
            _ if is_dash(first) => Some('-'),
            '×' => Some('*'),
            '÷' => Some('/'),
            _ => None,
        };
        if let Some(sign) = sign {
            tokens.push(Token::Sign(sign));
            rest = rest[first.len_utf8()..].trim_start();
        } else if starts_number(first) {
            let (token, after) = measure::read(rest)?;
            tokens.push(token);
            rest = after.trim_start();
        } else {
            return Err(QuantityError::Character(first));
        }
    }
    Ok(tokens)
}

fn is_dash(character: char) -> bool {
    matches!(character, '-' | '−' | '–')
}

fn starts_number(character: char) -> bool {
    character.is_ascii_digit() || matches!(character, '.' | ',')
}

struct Reader<'a> {
    tokens: &'a [Token],
    bare: Bare,
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
                None => return Err(QuantityError::Missing(Gap::BetweenNumbers)),
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
                    (value, unit) = (self.bare.metres(value), true);
                }
                value /= next;
                continue;
            }
            (value, unit) = match (unit, next_unit) {
                (true, true) => return Err(QuantityError::Area),
                (false, false)
                    if self.bare == Bare::Guessed && value >= MILLIMETRES_FROM && next < MILLIMETRES_FROM =>
                {
                    (self.bare.metres(value) * next, true)
                }
                (false, false) => (value * self.bare.metres(next), true),
                _ => (value * next, true),
            };
        }
        Ok(if unit { value } else { self.bare.metres(value) })
    }

    fn number(&mut self) -> Result<(f64, bool), QuantityError> {
        match self.tokens.first() {
            Some(&Token::Number { value, unit }) => {
                self.tokens = &self.tokens[1..];
                Ok((value, unit))
            }
            Some(Token::Sign(_)) => Err(QuantityError::Missing(Gap::BetweenSigns)),
            None => Err(QuantityError::Missing(Gap::AtEnd)),
        }
    }
}
