//! Text to number: shape first, then unit. The text is whatever a planner typed.

use super::table::{UNITS, Unit, is_spelling};
use super::{Dimension, units_of};

/// Why a text is not the quantity that is due. Each variant says what to write instead.
#[derive(Clone, Debug, PartialEq)]
pub enum QuantityError {
    /// Nothing stands there.
    Empty,
    /// There is no number at the start: `about 30 bar`.
    NoNumber,
    /// A comma in a number; it may mean a decimal point or thousands.
    Comma,
    /// `1_000` or `1 000`.
    Grouping,
    /// `0123`: text that lost its quotes, or a typing error.
    LeadingZero,
    /// `.5` or `12.`.
    BarePoint,
    /// `1/3 in`, `9/8 in`: no inch fraction on any rule.
    Fraction,
    /// Too large or not a number.
    NotFinite,
    /// A number where a number with a unit is due.
    NoUnit {
        /// The unit to suggest.
        example: &'static str,
    },
    /// A unit nobody knows.
    UnknownUnit {
        /// As typed.
        unit: String,
        /// Units that would do.
        known: Vec<&'static str>,
    },
    /// A unit of another quantity.
    WrongQuantity {
        /// As typed.
        unit: String,
        /// What it measures.
        measures: &'static str,
        /// What is due.
        wanted: &'static str,
    },
}

/// Reads `text` as a quantity of `dimension` and returns its SI value.
pub fn parse_si(text: &str, dimension: Dimension) -> Result<f64, QuantityError> {
    let (number, unit) = split(text)?;
    if unit.is_empty() {
        return match dimension {
            Dimension::Ratio | Dimension::Count => Ok(number),
            _ => Err(QuantityError::NoUnit {
                example: units_of(dimension).next().map_or("", |unit| unit.name),
            }),
        };
    }
    let unit = find(unit, dimension)?;
    let value = number * unit.factor + unit.offset;
    if value.is_finite() {
        Ok(value)
    } else {
        Err(QuantityError::NotFinite)
    }
}

/// Reads a bare number: an optional sign, digits, an optional fraction and exponent.
pub fn parse_number(text: &str) -> Result<f64, QuantityError> {
    let (number, unit) = split(text)?;
    if unit.is_empty() {
        Ok(number)
    } else {
        Err(QuantityError::NoNumber)
    }
}

fn find(typed: &str, dimension: Dimension) -> Result<&'static Unit, QuantityError> {
    if let Some(unit) = units_of(dimension).find(|unit| is_spelling(unit, typed)) {
        return Ok(unit);
    }
    let elsewhere = UNITS.iter().find(|unit| is_spelling(unit, typed));
    Err(match elsewhere {
        Some(unit) => QuantityError::WrongQuantity {
            unit: typed.to_owned(),
            measures: unit.dimension.word(),
            wanted: dimension.word(),
        },
        None => QuantityError::UnknownUnit {
            unit: typed.to_owned(),
            known: units_of(dimension).map(|unit| unit.name).collect(),
        },
    })
}

/// Signs that may be typed for a plain one: spaces of all widths, the real minus, fraction glyphs.
fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            '\u{a0}' | '\u{2009}' | '\u{202f}' | '\u{2007}' | '\t' => plain.push(' '),
            '\u{2212}' => plain.push('-'),
            '\u{2044}' => plain.push('/'),
            '½' => plain.push_str(" 1/2"),
            '¼' => plain.push_str(" 1/4"),
            '¾' => plain.push_str(" 3/4"),
            '⅛' => plain.push_str(" 1/8"),
            '⅜' => plain.push_str(" 3/8"),
            '⅝' => plain.push_str(" 5/8"),
            '⅞' => plain.push_str(" 7/8"),
            other => plain.push(other),
        }
    }
    plain.trim().to_owned()
}

/// Splits `1 1/8 in` into 1.125 and `in`.
fn split(text: &str) -> Result<(f64, &str), QuantityError> {
    if text.trim().is_empty() {
        return Err(QuantityError::Empty);
    }
    let unit_start = unit_start(text);
    let number = plain(&text[..unit_start]);
    Ok((number_with_fraction(&number)?, text[unit_start..].trim()))
}

/// The unit begins at the first sign that cannot belong to a number. An `e` belongs to the number
/// only when digits follow it.
fn unit_start(text: &str) -> usize {
    let signs: Vec<(usize, char)> = text.char_indices().collect();
    for (index, &(at, sign)) in signs.iter().enumerate() {
        let after = |steps: usize| signs.get(index + steps).map(|&(_, sign)| sign);
        let exponent = matches!(sign, 'e' | 'E')
            && (after(1).is_some_and(|next| next.is_ascii_digit())
                || (matches!(after(1), Some('+' | '-'))
                    && after(2).is_some_and(|next| next.is_ascii_digit())));
        let numeric = sign.is_ascii_digit()
            || sign.is_whitespace()
            || "+-\u{2212}.,_/\u{2044}½¼¾⅛⅜⅝⅞".contains(sign);
        if !numeric && !exponent {
            return at;
        }
    }
    text.len()
}

fn number_with_fraction(text: &str) -> Result<f64, QuantityError> {
    if text.is_empty() {
        return Err(QuantityError::NoNumber);
    }
    if text.contains(',') {
        return Err(QuantityError::Comma);
    }
    if text.contains('_') {
        return Err(QuantityError::Grouping);
    }
    let Some(slash) = text.find('/') else {
        return decimal(text);
    };
    let (before, denominator) = (&text[..slash], &text[slash + 1..]);
    let (whole, numerator) = match before.rfind([' ', '-']).filter(|&at| at > 0) {
        Some(at) => (decimal(before[..at].trim())?, &before[at + 1..]),
        None => (0.0, before),
    };
    let numerator = decimal(numerator.trim())?;
    let denominator = decimal(denominator.trim())?;
    let on_a_rule = [2.0, 4.0, 8.0, 16.0, 32.0, 64.0]
        .iter()
        .any(|&part| same(part, denominator));
    if !on_a_rule
        || numerator <= 0.0
        || numerator >= denominator
        || !same(numerator, numerator.trunc())
    {
        return Err(QuantityError::Fraction);
    }
    Ok(whole + numerator / denominator)
}

/// Exact equality of two parsed whole numbers.
fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < f64::EPSILON
}

/// The shape is checked before `parse`, which would also take `inf`, `NaN`, `.5` and `12.`.
fn decimal(text: &str) -> Result<f64, QuantityError> {
    let digits = text.strip_prefix(['+', '-']).unwrap_or(text);
    if digits.contains(char::is_whitespace) {
        return Err(QuantityError::Grouping);
    }
    let mantissa = digits.split(['e', 'E']).next().unwrap_or_default();
    if mantissa.starts_with('.') || mantissa.ends_with('.') {
        return Err(QuantityError::BarePoint);
    }
    if !mantissa.starts_with(|sign: char| sign.is_ascii_digit()) {
        return Err(QuantityError::NoNumber);
    }
    if mantissa.len() > 1 && mantissa.starts_with('0') && !mantissa.starts_with("0.") {
        return Err(QuantityError::LeadingZero);
    }
    let value: f64 = text.parse().map_err(|_| QuantityError::NoNumber)?;
    if value.is_finite() {
        Ok(value)
    } else {
        Err(QuantityError::NotFinite)
    }
}
