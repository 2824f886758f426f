//! Leaves: texts, numbers, words, quantities, dates. Each check says what to write instead.

use std::fmt;
use std::ops::Deref;

use serde::de::{Deserializer, Error, Visitor};
use serde::{Deserialize, Serialize};

use super::check;
use super::fault::Complaint;
use super::tree::composed;
use crate::report::near_or_list;
use crate::units::{
    self, ClockTime, Date, DateError, Dimension, Quantity, QuantityError, units_of,
};

/// The name by which a leaf asks our reader for its text as it was typed.
pub(super) const RAW: &str = "\0raw";

/// One line of text of at most `MAX` characters.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Text<const MAX: usize>(String);

/// Text of several lines, at most `MAX` characters. Whatever is typed prints literally.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Prose<const MAX: usize>(String);

impl<const MAX: usize> Text<MAX> {
    /// The printed maximum in characters.
    pub const MAX: usize = MAX;

    /// Takes a text that fits.
    pub fn new(text: &str) -> Result<Self, Complaint> {
        check::single_line(text)?;
        check::no_longer_than(text, MAX)?;
        Ok(Self(composed(text)))
    }
}

impl<const MAX: usize> Prose<MAX> {
    /// The printed maximum in characters.
    pub const MAX: usize = MAX;

    /// Takes a text that fits.
    pub fn new(text: &str) -> Result<Self, Complaint> {
        let text = text.replace("\r\n", "\n");
        check::several_lines(&text)?;
        check::no_longer_than(&text, MAX)?;
        Ok(Self(composed(&text)))
    }
}

macro_rules! like_a_str {
    ($name:ident, $marker:ident) => {
        impl<const MAX: usize> $name<MAX> {
            /// The text itself.
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl<const MAX: usize> Deref for $name<MAX> {
            type Target = str;
            fn deref(&self) -> &str {
                &self.0
            }
        }

        impl<const MAX: usize> fmt::Display for $name<MAX> {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.pad(&self.0)
            }
        }

        impl<'de, const MAX: usize> Deserialize<'de> for $name<MAX> {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                deserializer.deserialize_newtype_struct($marker, Parsed(Self::new))
            }
        }
    };
}

like_a_str!(Text, RAW);
like_a_str!(Prose, RAW);

/// A leaf that is made of a text: our reader hands over the text as it was typed, and the check
/// that comes with the type says what is wrong with it.
struct Parsed<T>(fn(&str) -> Result<T, Complaint>);

impl<'de, T> Visitor<'de> for Parsed<T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("text")
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<T, E> {
        (self.0)(text).map_err(E::custom)
    }

    /// Other readers, such as that of the tables that ship inside, know no raw text.
    fn visit_newtype_struct<D: Deserializer<'de>>(self, inner: D) -> Result<T, D::Error> {
        let text = String::deserialize(inner)?;
        (self.0)(&text).map_err(D::Error::custom)
    }
}

macro_rules! quantities {
    ($($name:ident)*) => { $(
        impl<'de> Deserialize<'de> for units::$name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                deserializer.deserialize_newtype_struct(RAW, Parsed(quantity::<Self>))
            }
        }
    )* };
}

quantities! {
    Ratio Length Area Volume Force Stress Pressure Torque Energy Angle Temperature Mass Duration
    Compliance ForcePerPressure Noise Acceleration Flow
}

impl<'de> Deserialize<'de> for Date {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let read = |text: &str| {
            Self::parse(text).map_err(|error| match error {
                DateError::Form { write } => Complaint::new("date.form")
                    .with("text", text)
                    .with("write", write),
                DateError::NoSuch => Complaint::new("date.no_such").with("text", text),
            })
        };
        deserializer.deserialize_newtype_struct(RAW, Parsed(read))
    }
}

impl<'de> Deserialize<'de> for ClockTime {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let read = |text: &str| {
            Self::parse(text).map_err(|error| match error {
                DateError::Form { write } => Complaint::new("time.form")
                    .with("text", text)
                    .with("write", write),
                DateError::NoSuch => Complaint::new("time.no_such").with("text", text),
            })
        };
        deserializer.deserialize_newtype_struct(RAW, Parsed(read))
    }
}

fn quantity<Q: Quantity>(text: &str) -> Result<Q, Complaint> {
    Q::parse(text).map_err(|error| complaint(text, Q::DIMENSION, &error))
}

/// The complaint for a quantity or number that could not be read, with what to write instead.
pub(super) fn complaint(text: &str, dimension: Dimension, error: &QuantityError) -> Complaint {
    let example = units_of(dimension).next().map_or("", |unit| unit.name);
    let about = |id| {
        Complaint::new(id)
            .with("text", text)
            .with("wanted", dimension.word())
            .with("example", example)
    };
    let unit_part = |complaint: Complaint, unit: &str| match text.rfind(unit) {
        Some(start) => complaint.narrow(start, start + unit.len()),
        None => complaint,
    };
    match error {
        QuantityError::Empty => about("text.empty"),
        QuantityError::NoNumber => about("quantity.no_number"),
        QuantityError::Comma => about("quantity.comma").with("write", text.replace(',', ".")),
        QuantityError::Grouping => about("quantity.grouping").with("write", joined(text)),
        QuantityError::LeadingZero => about("quantity.leading_zero"),
        QuantityError::BarePoint if !text.contains(|sign: char| sign.is_ascii_digit()) => {
            about("quantity.no_number")
        }
        QuantityError::BarePoint => about("quantity.bare_point"),
        QuantityError::Fraction => about("quantity.fraction"),
        QuantityError::NotFinite => about("quantity.not_finite"),
        QuantityError::NoUnit { .. } => {
            about("quantity.no_unit").with("write", format!("{} {example}", text.trim()))
        }
        QuantityError::UnknownUnit { unit, known } => {
            let (near, known) = near_or_list(unit, known);
            let found = about("quantity.unknown_unit")
                .with("unit", unit.as_str())
                .with("near", near)
                .with("known", known);
            unit_part(found, unit)
        }
        QuantityError::WrongQuantity { unit, measures, .. } => {
            let found = about("quantity.wrong_quantity")
                .with("unit", unit.as_str())
                .with("measures", *measures);
            unit_part(found, unit)
        }
    }
}

/// `1 000 N` and `1_000 N` with the digits together.
fn joined(text: &str) -> String {
    let signs: Vec<char> = text.chars().collect();
    let digit = |index: usize| signs.get(index).is_some_and(char::is_ascii_digit);
    let kept = signs.iter().enumerate().filter(|&(index, sign)| {
        let between = index > 0 && digit(index - 1) && digit(index + 1);
        !(between && (*sign == '_' || sign.is_whitespace()))
    });
    kept.map(|(_, sign)| sign).collect()
}
