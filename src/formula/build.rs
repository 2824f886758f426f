//! How an expression is written in Rust: `LOAD * (PITCH / (2.0 * pi()) + …)`.

use std::ops::{Add, Div, Mul, Neg, Sub};

use super::Symbol;
use super::expression::{Expression, Function, Term};
use crate::units::Dimension;

/// A bare number.
pub fn number(value: f64) -> Expression {
    Expression::Number(value)
}

/// The ratio of a circle.
pub fn pi() -> Expression {
    Expression::Pi
}

/// A fixed angle.
pub fn degrees(value: f64) -> Expression {
    Expression::Degrees(value)
}

/// A fixed quantity: as printed, and in SI.
pub fn fixed(value: &'static str, unit: &'static str, si: f64, dimension: Dimension) -> Expression {
    Expression::Fixed {
        value,
        unit,
        si,
        dimension,
    }
}

/// Square root.
pub fn sqrt(of: impl Into<Expression>) -> Expression {
    Expression::Root(Box::new(of.into()))
}

/// Cube root.
pub fn cube_root(of: impl Into<Expression>) -> Expression {
    Expression::CubeRoot(Box::new(of.into()))
}

/// The smaller of two.
pub fn min(a: impl Into<Expression>, b: impl Into<Expression>) -> Expression {
    Expression::Call(Function::Min, vec![a.into(), b.into()])
}

/// The greater of two.
pub fn max(a: impl Into<Expression>, b: impl Into<Expression>) -> Expression {
    Expression::Call(Function::Max, vec![a.into(), b.into()])
}

/// Tangent.
pub fn tan(of: impl Into<Expression>) -> Expression {
    Expression::Call(Function::Tan, vec![of.into()])
}

/// Cosine.
pub fn cos(of: impl Into<Expression>) -> Expression {
    Expression::Call(Function::Cos, vec![of.into()])
}

/// Arc tangent.
pub fn arctan(of: impl Into<Expression>) -> Expression {
    Expression::Call(Function::Arctan, vec![of.into()])
}

/// Natural logarithm.
pub fn ln(of: impl Into<Expression>) -> Expression {
    Expression::Call(Function::Ln, vec![of.into()])
}

impl From<Symbol> for Expression {
    fn from(symbol: Symbol) -> Self {
        // Bound when the formula is made; until then no value has this place.
        Self::Input(symbol, usize::MAX)
    }
}

impl From<f64> for Expression {
    fn from(value: f64) -> Self {
        Self::Number(value)
    }
}

impl Symbol {
    /// The square.
    pub fn square(self) -> Expression {
        Expression::from(self).square()
    }
}

impl Expression {
    /// The square.
    #[must_use]
    pub fn square(self) -> Self {
        Self::Square(Box::new(self))
    }

    fn added(self, minus: bool, of: Self) -> Self {
        let mut terms = match self {
            Self::Sum(terms) => terms,
            first => vec![Term {
                minus: false,
                of: first,
            }],
        };
        match of {
            // a + (b − c) is written a + b − c; a − (b − c) keeps its brackets.
            Self::Sum(more) if !minus => terms.extend(more),
            of => terms.push(Term { minus, of }),
        }
        Self::Sum(terms)
    }

    fn times(self, other: Self) -> Self {
        let mut factors = match self {
            Self::Product(factors) => factors,
            first => vec![first],
        };
        match other {
            Self::Product(more) => factors.extend(more),
            one => factors.push(one),
        }
        Self::Product(factors)
    }
}

macro_rules! operators {
    ($($left:ty, $right:ty;)*) => { $(
        impl Add<$right> for $left {
            type Output = Expression;
            fn add(self, other: $right) -> Expression {
                Expression::from(self).added(false, other.into())
            }
        }
        impl Sub<$right> for $left {
            type Output = Expression;
            fn sub(self, other: $right) -> Expression {
                Expression::from(self).added(true, other.into())
            }
        }
        impl Mul<$right> for $left {
            type Output = Expression;
            fn mul(self, other: $right) -> Expression {
                Expression::from(self).times(other.into())
            }
        }
        impl Div<$right> for $left {
            type Output = Expression;
            fn div(self, other: $right) -> Expression {
                Expression::Quotient(Box::new(self.into()), Box::new(other.into()))
            }
        }
    )* };
}

operators! {
    Expression, Expression;
    Expression, Symbol;
    Expression, f64;
    Symbol, Expression;
    Symbol, Symbol;
    Symbol, f64;
    f64, Expression;
    f64, Symbol;
}

impl Neg for Expression {
    type Output = Self;
    fn neg(self) -> Self {
        Self::Negative(Box::new(self))
    }
}

impl Neg for Symbol {
    type Output = Expression;
    fn neg(self) -> Expression {
        -Expression::from(self)
    }
}
