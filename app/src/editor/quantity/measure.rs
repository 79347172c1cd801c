//! One measure: a number with its unit, in feet and inches, or with a fraction.

use super::{QuantityError, Token, is_dash, starts_number};
use crate::units::{FOOT_M, INCH_M};

/// What stands behind a number.
#[derive(Clone, Copy, PartialEq)]
enum Unit {
    None,
    /// So many metres.
    Metres(f64),
    /// Inches, by letters or a mark.
    Inches,
    /// Feet, by letters.
    Feet,
    /// Feet, by a mark: inches may follow behind a hyphen.
    FootMark,
}

/// Reads a measure at the head of a text; with what follows it.
pub(super) fn read(text: &str) -> Result<(Token, &str), QuantityError> {
    let (value, unit, after) = part(text)?;
    Ok(match unit {
        Unit::None => (Token::Number { value, unit: false }, after),
        Unit::Metres(size) => (Token::Number { value: value * size, unit: true }, after),
        Unit::Inches => (Token::Number { value: value * INCH_M, unit: true }, after),
        Unit::Feet | Unit::FootMark => {
            let (inches, after) = inches_behind(after, unit)?;
            (Token::Number { value: value * FOOT_M + inches * INCH_M, unit: true }, after)
        }
    })
}

/// Inches that belong to the feet before them; none if something else follows.
fn inches_behind(text: &str, feet: Unit) -> Result<(f64, &str), QuantityError> {
    let mut rest = text.trim_start();
    if feet == Unit::FootMark {
        rest = rest.strip_prefix(is_dash).map_or(rest, str::trim_start);
    }
    if !rest.starts_with(starts_number) {
        return Ok((0.0, text));
    }
    let (value, unit, after) = part(rest)?;
    let joined = match unit {
        Unit::Inches => true,
        Unit::None => feet == Unit::FootMark && value < 12.0,
        _ => false,
    };
    Ok(if joined { (value, after) } else { (0.0, text) })
}

/// A number with its fraction and unit.
fn part(text: &str) -> Result<(f64, Unit, &str), QuantityError> {
    let (digits, after) = split(text, starts_number);
    let number = digits.replace(',', ".").parse::<f64>().map_err(|_| QuantityError::Number(digits.into()))?;
    if let Some((part, behind)) = fraction(after) {
        let (unit, behind) = unit(behind)?;
        return Ok((number + part, unit, behind));
    }
    // A half inch, where it is not a division.
    if let Some((of, behind)) = after.strip_prefix('/').and_then(whole)
        && let Ok((Unit::Inches, behind)) = unit(behind)
        && number < of
    {
        return Ok((number / of, Unit::Inches, behind));
    }
    let (unit, after) = unit(after)?;
    Ok((number, unit, after))
}

/// ` 1/2` behind a whole number: a proper fraction as rules and tapes have it.
fn fraction(text: &str) -> Option<(f64, &str)> {
    let (part, after) = whole(text.strip_prefix(' ')?.trim_start())?;
    let (of, after) = whole(after.strip_prefix('/')?)?;
    let halved = [2.0, 4.0, 8.0, 16.0, 32.0, 64.0].contains(&of);
    (halved && part < of).then_some((part / of, after))
}

fn whole(text: &str) -> Option<(f64, &str)> {
    let (digits, after) = split(text, |c| c.is_ascii_digit());
    Some((digits.parse().ok()?, after))
}

fn unit(text: &str) -> Result<(Unit, &str), QuantityError> {
    let rest = text.trim_start();
    let feet = |c: char| matches!(c, '\'' | '′' | '’' | '‘' | '´');
    let inches = |c: char| matches!(c, '"' | '″' | '”' | '“');
    if let Some(after) = rest.strip_prefix(inches) {
        return Ok((Unit::Inches, after));
    }
    if let Some(after) = rest.strip_prefix(feet) {
        return Ok(after.strip_prefix(feet).map_or((Unit::FootMark, after), |after| (Unit::Inches, after)));
    }
    let (letters, after) = split(rest, char::is_alphabetic);
    let unit = match letters.to_ascii_lowercase().as_str() {
        "" => return Ok((Unit::None, text)),
        "m" => Unit::Metres(1.0),
        "cm" => Unit::Metres(0.01),
        "mm" => Unit::Metres(0.001),
        "ft" | "feet" | "foot" => Unit::Feet,
        "in" | "inch" | "inches" => Unit::Inches,
        _ => return Err(QuantityError::Unit(letters.into())),
    };
    Ok((unit, after))
}

fn split(text: &str, of: impl Fn(char) -> bool) -> (&str, &str) {
    text.split_at(text.find(|c| !of(c)).unwrap_or(text.len()))
}
