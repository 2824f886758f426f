//! What a formula is made of, its value and its dimension.

use std::f64::consts::PI;

use super::Symbol;
use crate::units::Dimension;

/// A node of a formula. Built with `+ - * /` and functions such as [`super::sqrt`].
#[derive(Clone, Debug)]
pub enum Expression {
    /// A bare number, printed as the document writes it.
    Number(f64),
    /// The ratio of a circle.
    Pi,
    /// A fixed angle in degrees.
    Degrees(f64),
    /// A fixed quantity with its unit, printed as the document writes it.
    Fixed {
        /// As printed: `1/8`.
        value: &'static str,
        /// As printed: `in`.
        unit: &'static str,
        /// In SI.
        si: f64,
        /// What it measures.
        dimension: Dimension,
    },
    /// An input, and its place among the inputs once the formula is made.
    Input(Symbol, usize),
    /// A sum of signed terms.
    Sum(Vec<Term>),
    /// A product.
    Product(Vec<Expression>),
    /// One thing over another.
    Quotient(Box<Expression>, Box<Expression>),
    /// The square.
    Square(Box<Expression>),
    /// The square root.
    Root(Box<Expression>),
    /// The cube root.
    CubeRoot(Box<Expression>),
    /// The opposite.
    Negative(Box<Expression>),
    /// A function.
    Call(Function, Vec<Expression>),
}

/// A term of a sum.
#[derive(Clone, Debug)]
pub struct Term {
    /// Whether it is taken off.
    pub minus: bool,
    /// What is added or taken off.
    pub of: Expression,
}

/// The functions that a formula may use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Function {
    /// The least of its arguments.
    Min,
    /// The greatest of its arguments.
    Max,
    /// Tangent of an angle.
    Tan,
    /// Cosine of an angle.
    Cos,
    /// The angle whose tangent is given.
    Arctan,
    /// Natural logarithm of a ratio.
    Ln,
}

impl Function {
    /// As printed.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Min => "min",
            Self::Max => "max",
            Self::Tan => "tan",
            Self::Cos => "cos",
            Self::Arctan => "arctan",
            Self::Ln => "ln",
        }
    }

    fn value(self, of: &[f64]) -> f64 {
        let first = of.first().copied().unwrap_or(f64::NAN);
        match self {
            Self::Min => of.iter().copied().fold(first, least),
            Self::Max => of.iter().copied().fold(first, |a, b| -least(-a, -b)),
            Self::Tan => libm::tan(first),
            Self::Cos => libm::cos(first),
            Self::Arctan => libm::atan(first),
            Self::Ln => libm::log(first),
        }
    }
}

/// The smaller of two; NaN when either is, unlike `f64::min`, so that a missing input is never hidden.
fn least(a: f64, b: f64) -> f64 {
    if a.is_nan() || a < b { a } else { b }
}

impl Expression {
    /// Gives each symbol its place and returns them in order of first appearance.
    pub(super) fn bind(&mut self) -> Vec<Symbol> {
        let mut inputs = Vec::new();
        self.each_input(&mut |symbol, place| {
            let known = inputs.iter().position(|known| known == symbol);
            *place = known.unwrap_or(inputs.len());
            if known.is_none() {
                inputs.push(*symbol);
            }
        });
        inputs
    }

    fn each_input(&mut self, see: &mut impl FnMut(&Symbol, &mut usize)) {
        match self {
            Self::Number(_) | Self::Pi | Self::Degrees(_) | Self::Fixed { .. } => {}
            Self::Input(symbol, place) => see(symbol, place),
            Self::Sum(terms) => terms.iter_mut().for_each(|term| term.of.each_input(see)),
            Self::Product(parts) | Self::Call(_, parts) => {
                parts.iter_mut().for_each(|part| part.each_input(see));
            }
            Self::Quotient(over, under) => {
                over.each_input(see);
                under.each_input(see);
            }
            Self::Square(of) | Self::Root(of) | Self::CubeRoot(of) | Self::Negative(of) => {
                of.each_input(see);
            }
        }
    }

    /// The value in SI, given the inputs in order; NaN when one is missing.
    pub fn value(&self, inputs: &[f64]) -> f64 {
        match self {
            Self::Number(value) => *value,
            Self::Pi => PI,
            Self::Degrees(value) => value * PI / 180.0,
            Self::Fixed { si, .. } => *si,
            Self::Input(_, place) => inputs.get(*place).copied().unwrap_or(f64::NAN),
            Self::Sum(terms) => terms.iter().fold(0.0, |sum, term| {
                let value = term.of.value(inputs);
                if term.minus { sum - value } else { sum + value }
            }),
            Self::Product(factors) => factors.iter().fold(1.0, |all, one| all * one.value(inputs)),
            Self::Quotient(over, under) => over.value(inputs) / under.value(inputs),
            Self::Square(of) => {
                let value = of.value(inputs);
                value * value
            }
            Self::Root(of) => of.value(inputs).sqrt(),
            Self::CubeRoot(of) => libm::cbrt(of.value(inputs)),
            Self::Negative(of) => -of.value(inputs),
            Self::Call(function, of) => {
                let values: Vec<f64> = of.iter().map(|one| one.value(inputs)).collect();
                function.value(&values)
            }
        }
    }

    /// Exponents of metre, kilogram, second and kelvin of the value.
    pub fn exponents(&self) -> Result<[i8; 4], String> {
        const NONE: [i8; 4] = [0; 4];
        match self {
            Self::Number(_) | Self::Pi | Self::Degrees(_) => Ok(NONE),
            Self::Fixed { dimension, .. } => Ok(dimension.exponents()),
            Self::Input(symbol, _) => Ok(symbol.dimension.exponents()),
            Self::Sum(terms) => alike(terms.iter().map(|term| &term.of)),
            Self::Product(factors) => factors
                .iter()
                .try_fold(NONE, |all, one| Ok(combine(all, one.exponents()?, 1))),
            Self::Quotient(over, under) => Ok(combine(over.exponents()?, under.exponents()?, -1)),
            Self::Square(of) => {
                let of = of.exponents()?;
                Ok(combine(of, of, 1))
            }
            Self::Root(of) => divided(of.exponents()?, 2),
            Self::CubeRoot(of) => divided(of.exponents()?, 3),
            Self::Negative(of) => of.exponents(),
            Self::Call(Function::Min | Function::Max, of) => alike(of.iter()),
            Self::Call(function, of) => match alike(of.iter())? {
                NONE => Ok(NONE),
                other => Err(format!("{} of {other:?}", function.name())),
            },
        }
    }
}

fn combine(mut a: [i8; 4], b: [i8; 4], sign: i8) -> [i8; 4] {
    for (a, b) in a.iter_mut().zip(b) {
        *a += sign * b;
    }
    a
}

fn divided(of: [i8; 4], degree: i8) -> Result<[i8; 4], String> {
    if of.iter().any(|exponent| exponent % degree != 0) {
        return Err(format!("root {degree} of {of:?}"));
    }
    Ok(of.map(|exponent| exponent / degree))
}

fn alike<'a>(mut of: impl Iterator<Item = &'a Expression>) -> Result<[i8; 4], String> {
    let first = of.next().map_or(Ok([0; 4]), Expression::exponents)?;
    for other in of {
        let other = other.exponents()?;
        if other != first {
            return Err(format!("{first:?} beside {other:?}"));
        }
    }
    Ok(first)
}
