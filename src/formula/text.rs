//! A formula on one line of plain text, with no more brackets than it needs.
//!
//! A solidus is never followed by another sign of multiplication or division at the same level
//! (ISO 80000-2:2019, 2-10.6): such a quotient stands in brackets.

use super::{Expression, Symbol, Term};
use crate::units::Printed;

/// How tightly a piece of text holds together; the loosest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Hold {
    /// `a + b`, `−a`.
    Sum,
    /// `a / b`, `a · b / c`.
    Quotient,
    /// `a · b`.
    Product,
    /// `a²`.
    Power,
    /// `48 mm`: needs brackets only under a power.
    Quantity,
    /// `a`, `f(a)`, `(…)`.
    Atom,
}

const MINUS: char = '\u{2212}';
const NO_BREAK: char = '\u{a0}';

/// The expression as a line, with symbols, or with the given inputs put in.
pub(super) fn line(expression: &Expression, numbers: Option<&[Printed]>) -> String {
    write(expression, numbers).0
}

/// A bare number as Rust's shortest exact form writes it: 0.577, 2, 0.938194.
pub(super) fn bare(value: f64) -> String {
    value.to_string().replace('-', "\u{2212}")
}

fn write(expression: &Expression, numbers: Option<&[Printed]>) -> (String, Hold) {
    match expression {
        Expression::Number(value) => printed(bare(*value), Hold::Atom),
        Expression::Pi => ("π".to_owned(), Hold::Atom),
        Expression::Degrees(value) => (format!("{}°", bare(*value)), Hold::Atom),
        Expression::Fixed { value, unit, .. } => {
            (format!("{value}{NO_BREAK}{unit}"), Hold::Quantity)
        }
        Expression::Input(symbol, place) => input(symbol, *place, numbers),
        Expression::Sum(terms) => (sum(terms, numbers), Hold::Sum),
        Expression::Product(factors) => product(factors, numbers),
        Expression::Quotient(over, under) => {
            let over = held(write(over, numbers), Hold::Product);
            let under = held(write(under, numbers), Hold::Power);
            (format!("{over} / {under}"), Hold::Quotient)
        }
        Expression::Square(of) => {
            let base = held(write(of, numbers), Hold::Atom);
            (format!("{base}²"), Hold::Power)
        }
        Expression::Root(of) => (
            format!("√{}", held(write(of, numbers), Hold::Atom)),
            Hold::Atom,
        ),
        Expression::CubeRoot(of) => (
            format!("∛{}", held(write(of, numbers), Hold::Atom)),
            Hold::Atom,
        ),
        Expression::Negative(of) => {
            let of = held(write(of, numbers), Hold::Quotient);
            (format!("{MINUS}{of}"), Hold::Sum)
        }
        Expression::Call(function, of) => {
            let of: Vec<String> = of.iter().map(|one| write(one, numbers).0).collect();
            (
                format!("{}({})", function.name(), of.join(", ")),
                Hold::Atom,
            )
        }
    }
}

/// Brackets, unless the text holds at least as tightly as wanted.
fn held((text, hold): (String, Hold), wanted: Hold) -> String {
    if hold >= wanted {
        text
    } else {
        format!("({text})")
    }
}

/// A number with a minus in front holds no tighter than a sum.
fn printed(text: String, hold: Hold) -> (String, Hold) {
    let hold = if text.starts_with(MINUS) {
        Hold::Sum
    } else {
        hold
    };
    (text, hold)
}

fn input(symbol: &Symbol, place: usize, numbers: Option<&[Printed]>) -> (String, Hold) {
    match numbers.and_then(|numbers| numbers.get(place)) {
        Some(number) if number.unit.is_empty() => printed(number.joined(), Hold::Atom),
        Some(number) => printed(number.joined(), Hold::Quantity),
        None => (symbol.plain(), Hold::Atom),
    }
}

fn sum(terms: &[Term], numbers: Option<&[Printed]>) -> String {
    let mut text = String::new();
    for (index, term) in terms.iter().enumerate() {
        let piece = write(&term.of, numbers);
        match (index, term.minus) {
            (0, false) => text.push_str(&piece.0),
            (0, true) => {
                text.push(MINUS);
                text.push_str(&held(piece, Hold::Quotient));
            }
            (_, minus) => {
                text.push_str(if minus { " \u{2212} " } else { " + " });
                text.push_str(&held(piece, Hold::Quotient));
            }
        }
    }
    text
}

fn product(factors: &[Expression], numbers: Option<&[Printed]>) -> (String, Hold) {
    let mut text = String::new();
    let mut hold = Hold::Product;
    for (index, factor) in factors.iter().enumerate() {
        let last = index + 1 == factors.len();
        let piece = write(factor, numbers);
        if index > 0 {
            let after_number = matches!(factors[index - 1], Expression::Number(_));
            // 2 π reads as one number; everything else is kept apart by a dot.
            if after_number && matches!(factor, Expression::Pi) {
                text.push(NO_BREAK);
            } else {
                text.push_str(" · ");
            }
        }
        if last && piece.1 == Hold::Quotient {
            hold = Hold::Quotient;
            text.push_str(&piece.0);
        } else {
            text.push_str(&held(piece, Hold::Product));
        }
    }
    (text, hold)
}
