//! Numbers and steps of a calculation note, read back from what is printed.

#![allow(
    clippy::panic,
    clippy::disallowed_methods,
    reason = "a test that cannot go on must stop; a referee works with the functions of the standard library"
)]

use studbook::document::desk::Cell;
use studbook::document::note::{FormulaStep, Note};
use studbook::formula::Node;

pub(crate) fn steps(note: &Note) -> Vec<&FormulaStep> {
    note.steps
        .groups
        .iter()
        .flat_map(|group| &group.steps)
        .collect()
}

/// SI value of a printed unit, by the definitions named above.
pub(crate) fn unit(name: &str) -> f64 {
    let (inch, pound_force) = (0.0254, 0.453_592_37 * 9.806_65);
    let psi = pound_force / (inch * inch);
    match name {
        "" | "N·m" | "J" => 1.0,
        "mm" => 1e-3,
        "mm²" => 1e-6,
        "mm³" => 1e-9,
        "kN" => 1e3,
        "MPa" => 1e6,
        "bar" => 1e5,
        "mm/kN" => 1e-6,
        "deg" => std::f64::consts::PI / 180.0,
        "in" => inch,
        "in²" => inch * inch,
        "in³" => inch * inch * inch,
        "lbf" => pound_force,
        "ksi" => 1e3 * psi,
        "psi" => psi,
        "ft·lb" => 0.3048 * pound_force,
        "in/kip" => inch / (1e3 * pound_force),
        other => panic!("a unit that this test does not know: {other}"),
    }
}

pub(crate) fn number(digits: &str) -> f64 {
    let plain: String = digits
        .chars()
        .filter(|sign| !sign.is_whitespace())
        .collect();
    plain
        .replace('\u{2212}', "-")
        .parse()
        .unwrap_or_else(|_| panic!("no number: {digits:?}"))
}

/// The value of a drawn line, worked out plainly from its printed digits.
pub(crate) fn value(node: &Node) -> f64 {
    match node {
        Node::Number { text } => number(text),
        Node::Pi => std::f64::consts::PI,
        Node::Degrees { text } => number(text) * unit("deg"),
        Node::Symbol { base, index } => panic!("{base}{index} has no number"),
        Node::Quantity { value, unit: name } => number(value) * unit(name),
        Node::Sum { terms } => {
            let signed = terms.iter().map(|term| {
                if term.minus {
                    -value(&term.node)
                } else {
                    value(&term.node)
                }
            });
            signed.sum()
        }
        Node::Product { factors } => factors.iter().map(value).product(),
        Node::Fraction { over, under } => value(over) / value(under),
        Node::Power { base, exponent } => value(base).powf(number(exponent)),
        Node::Root { degree, under } => {
            value(under).powf(if *degree == "3" { 1.0 / 3.0 } else { 0.5 })
        }
        Node::Negative { of } => -value(of),
        Node::Group { inner } => value(inner),
        Node::Function { name, arguments } => {
            let arguments: Vec<f64> = arguments.iter().map(value).collect();
            match *name {
                "min" => arguments.iter().copied().fold(f64::INFINITY, f64::min),
                "max" => arguments.iter().copied().fold(f64::NEG_INFINITY, f64::max),
                "tan" => arguments[0].tan(),
                "cos" => arguments[0].cos(),
                "arctan" => arguments[0].atan(),
                other => panic!("a function that this test does not know: {other}"),
            }
        }
    }
}

/// Half of the last printed digit, or a thousandth: the inputs are rounded to four digits too.
pub(crate) fn tolerance(digits: &str) -> f64 {
    let decimals = digits
        .split_once('.')
        .map_or(0, |(_, decimals)| decimals.len());
    let last = 10f64.powi(-i32::try_from(decimals).expect("few digits"));
    (last / 2.0).max(number(digits).abs() * 1e-3)
}

pub(crate) fn text(cell: &Cell) -> &str {
    match cell {
        Cell::Text(text) | Cell::Strong(text) => text,
        _ => "",
    }
}

pub(crate) fn leading_number(cell: &Cell) -> f64 {
    number(text(cell).split('\u{a0}').next().unwrap_or_default())
}
