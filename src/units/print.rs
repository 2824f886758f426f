//! Number to text, in one place, so that no two documents can disagree.

use serde::Serialize;

use super::{Dimension, Length, Quantity, Unit, unit_named, units_of};

/// A value exactly as it stands on paper.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize)]
pub struct Printed {
    /// Digits: real minus, decimal point, thin spaces above 9 999.
    pub value: String,
    /// The unit; empty for counts and bare ratios.
    pub unit: String,
}

impl Printed {
    /// `3950 N·m`, with a no-break space.
    pub fn joined(&self) -> String {
        if self.unit.is_empty() {
            self.value.clone()
        } else {
            format!("{}\u{a0}{}", self.value, self.unit)
        }
    }
}

/// Which unit leads for each quantity. A pack has one; a tool may be scaled in another.
#[derive(Clone, Debug, PartialEq)]
pub struct Units {
    /// The leading units, one for each dimension that has a choice.
    lead: Vec<&'static Unit>,
    /// The units in brackets, where the pack wants them.
    brackets: Vec<&'static Unit>,
}

const METRIC: &[(Dimension, &str)] = &[
    (Dimension::Length, "mm"),
    (Dimension::Area, "mm²"),
    (Dimension::Volume, "m³"),
    (Dimension::SectionModulus, "mm³"),
    (Dimension::Force, "kN"),
    (Dimension::Stress, "MPa"),
    (Dimension::Pressure, "bar"),
    (Dimension::Torque, "N·m"),
    (Dimension::Energy, "J"),
    (Dimension::Temperature, "°C"),
    (Dimension::Mass, "kg"),
    (Dimension::Compliance, "mm/kN"),
    (Dimension::ForcePerPressure, "kN/bar"),
];

const INCH: &[(Dimension, &str)] = &[
    (Dimension::Length, "in"),
    (Dimension::Area, "in²"),
    (Dimension::Volume, "ft³"),
    (Dimension::SectionModulus, "in³"),
    (Dimension::Force, "lbf"),
    (Dimension::Stress, "ksi"),
    (Dimension::Pressure, "psi"),
    (Dimension::Torque, "ft·lb"),
    (Dimension::Energy, "ft·lb"),
    (Dimension::Temperature, "°F"),
    (Dimension::Mass, "lb"),
    (Dimension::Compliance, "in/kip"),
    (Dimension::ForcePerPressure, "lbf/psi"),
];

fn named(choice: &[(Dimension, &str)]) -> Vec<&'static Unit> {
    choice
        .iter()
        .filter_map(|&(dimension, name)| unit_named(dimension, name))
        .collect()
}

impl Units {
    /// Metric units lead; no brackets.
    pub fn metric() -> Self {
        Self {
            lead: named(METRIC),
            brackets: Vec::new(),
        }
    }

    /// Inch units lead; no brackets.
    pub fn inch() -> Self {
        Self {
            lead: named(INCH),
            brackets: Vec::new(),
        }
    }

    /// The same with the other system in brackets behind torques.
    #[must_use]
    pub fn with_brackets(mut self) -> Self {
        let metric = self
            .of(Dimension::Torque)
            .is_some_and(|unit| unit.name == "N·m");
        self.brackets = named(if metric { INCH } else { METRIC })
            .into_iter()
            .filter(|unit| unit.dimension == Dimension::Torque)
            .collect();
        self
    }

    /// The same with `unit` leading for its dimension.
    #[must_use]
    pub fn leading(mut self, unit: &'static Unit) -> Self {
        self.lead.retain(|lead| lead.dimension != unit.dimension);
        self.lead.push(unit);
        self
    }

    /// The leading unit of `dimension`; `None` for counts and ratios, which are bare.
    pub fn of(&self, dimension: Dimension) -> Option<&'static Unit> {
        match dimension {
            Dimension::Count | Dimension::Ratio => None,
            _ => self
                .lead
                .iter()
                .copied()
                .find(|unit| unit.dimension == dimension)
                .or_else(|| units_of(dimension).next()),
        }
    }

    /// The unit in brackets for `dimension`, where one is wanted.
    pub fn bracket(&self, dimension: Dimension) -> Option<&'static Unit> {
        self.brackets
            .iter()
            .copied()
            .find(|unit| unit.dimension == dimension)
    }

    /// Prints a quantity in the leading unit.
    pub fn print<Q: Quantity>(&self, quantity: Q) -> Printed {
        self.print_si(quantity.si(), Q::DIMENSION)
    }

    /// Prints a nominal size as it stands on a tool: inch sizes as fractions, `1 5/8 in`.
    pub fn print_size(&self, size: Length) -> Printed {
        let printed = self.print(size);
        if printed.unit != "in" {
            return printed;
        }
        match fraction(size.to_inch()) {
            Some(value) => Printed {
                value,
                unit: printed.unit,
            },
            None => printed,
        }
    }

    /// Prints an SI value of `dimension` in the leading unit.
    pub fn print_si(&self, si: f64, dimension: Dimension) -> Printed {
        match self.of(dimension) {
            Some(unit) => unit.print_si(si),
            None => Printed {
                value: digits(si),
                unit: String::new(),
            },
        }
    }
}

impl Unit {
    /// Prints an SI value in this unit.
    pub fn print_si(&self, si: f64) -> Printed {
        Printed {
            value: digits(self.from_si(si)),
            unit: self.name.to_owned(),
        }
    }

    /// How many of this unit an SI value is.
    pub fn from_si(&self, si: f64) -> f64 {
        (si - self.offset) / self.factor
    }

    /// The SI value of `count` of this unit.
    pub fn to_si(&self, count: f64) -> f64 {
        count * self.factor + self.offset
    }
}

/// Inches as a whole number and a fraction of 64ths at most; `None` if it is no such size.
fn fraction(inches: f64) -> Option<String> {
    let parts =
        (0..=u32::from(u16::MAX)).find(|parts| (f64::from(*parts) / 64.0 - inches).abs() < 1e-6)?;
    let (whole, mut numerator, mut denominator) = (parts / 64, parts % 64, 64);
    while numerator > 0 && numerator % 2 == 0 {
        numerator /= 2;
        denominator /= 2;
    }
    Some(match (whole, numerator) {
        (whole, 0) => whole.to_string(),
        (0, numerator) => format!("{numerator}/{denominator}"),
        (whole, numerator) => format!("{whole} {numerator}/{denominator}"),
    })
}

/// Four significant digits, all digits before the point, no zeros at the end: enough to work the
/// next line of a calculation by hand, short enough to be read. The half is rounded away from zero
/// after the noise of the binary form (1e-12) is taken off, so that 2.5 steps never hang on one bit.
pub fn digits(value: f64) -> String {
    let magnitude = value.abs();
    let decimals = match magnitude {
        m if m >= 999.5 => 0,
        m if m >= 99.95 => 1,
        m if m >= 9.995 => 2,
        m if m >= 0.9995 => 3,
        m if m >= 0.099_95 => 4,
        m if m >= 0.009_995 => 5,
        m if m >= 0.000_999_5 => 6,
        m if m >= 0.000_099_95 => 7,
        m if m >= 0.000_009_995 => 8,
        // Beyond that a value is noise in any unit a pack prints; counting on would print the noise.
        _ => 9,
    };
    fixed(value, decimals)
}

/// `value` with at most `decimals` decimals, zeros at the end dropped.
fn fixed(value: f64, decimals: usize) -> String {
    let nudged = value * (1.0 + 1e-12);
    let mut text = format!("{nudged:.decimals$}");
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text
        .trim_start_matches('-')
        .chars()
        .all(|sign| sign == '0' || sign == '.')
    {
        return "0".to_owned();
    }
    match text.strip_prefix('-') {
        Some(magnitude) => format!("\u{2212}{}", group(magnitude)),
        None => group(&text),
    }
}

/// Thin spaces between thousands above 9 999, as on paper: `12 500`.
pub fn group(text: &str) -> String {
    let whole = text.find('.').unwrap_or(text.len());
    let start = usize::from(text.starts_with('-'));
    if whole - start < 5 {
        return text.to_owned();
    }
    let mut grouped = text[..start].to_owned();
    for (index, digit) in text[start..whole].chars().enumerate() {
        if index > 0 && (whole - start - index).is_multiple_of(3) {
            grouped.push('\u{202f}');
        }
        grouped.push(digit);
    }
    grouped.push_str(&text[whole..]);
    grouped
}

/// The digits of a printed value one by one, as keys for the words of a language: `455` gives
/// `4`, `5`, `5`; the point is a digit of its own, thin spaces are dropped.
pub fn words_of_digits(printed: &str) -> Vec<char> {
    printed
        .chars()
        .filter(|sign| sign.is_ascii_digit() || *sign == '.')
        .collect()
}
