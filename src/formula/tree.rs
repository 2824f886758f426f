//! A formula as a tree that a page can draw without knowing any rule: brackets are already in it.

use serde::Serialize;

use super::text::bare;
use super::{Expression, Function, Symbol};
use crate::units::Printed;

/// A piece of a drawn formula. Serialised with its kind: `{"kind": "fraction", "over": …, "under": …}`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Node {
    /// Digits, as printed.
    Number {
        /// The digits.
        text: String,
    },
    /// π.
    Pi,
    /// An angle in degrees; the sign is to be added.
    Degrees {
        /// The digits.
        text: String,
    },
    /// A symbol.
    Symbol {
        /// `µ`.
        base: &'static str,
        /// `th`, or empty.
        index: &'static str,
    },
    /// A value with its unit.
    Quantity {
        /// The digits.
        value: String,
        /// The unit; empty for counts and ratios.
        unit: String,
    },
    /// Terms with their signs.
    Sum {
        /// The terms.
        terms: Vec<SignedNode>,
    },
    /// Factors.
    Product {
        /// The factors.
        factors: Vec<Node>,
    },
    /// A fraction with a bar.
    Fraction {
        /// Above the bar.
        over: Box<Node>,
        /// Below the bar.
        under: Box<Node>,
    },
    /// A power.
    Power {
        /// The base.
        base: Box<Node>,
        /// The exponent's digits.
        exponent: String,
    },
    /// A root.
    Root {
        /// `3` for a cube root; empty for a square root.
        degree: &'static str,
        /// Under the sign.
        under: Box<Node>,
    },
    /// The opposite.
    Negative {
        /// Of what.
        of: Box<Node>,
    },
    /// Brackets.
    Group {
        /// What stands in them.
        inner: Box<Node>,
    },
    /// A function with its arguments.
    Function {
        /// `min`, `tan`, …
        name: &'static str,
        /// The arguments; brackets are to be added.
        arguments: Vec<Node>,
    },
}

/// A term of a drawn sum.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SignedNode {
    /// Whether a minus stands before it.
    pub minus: bool,
    /// The term.
    pub node: Node,
}

impl Symbol {
    /// The symbol alone, to be drawn.
    pub fn node(&self) -> Node {
        let (base, index) = self.split();
        Node::Symbol { base, index }
    }
}

/// The expression to be drawn, with symbols, or with the given inputs put in.
pub(super) fn draw(expression: &Expression, numbers: Option<&[Printed]>) -> Node {
    let inner = |of: &Expression| Box::new(draw(of, numbers));
    match expression {
        Expression::Number(value) => Node::Number { text: bare(*value) },
        Expression::Pi => Node::Pi,
        Expression::Degrees(value) => Node::Degrees { text: bare(*value) },
        Expression::Fixed { value, unit, .. } => Node::Quantity {
            value: (*value).to_owned(),
            unit: (*unit).to_owned(),
        },
        Expression::Input(symbol, place) => match numbers.and_then(|numbers| numbers.get(*place)) {
            Some(number) => Node::Quantity {
                value: number.value.clone(),
                unit: number.unit.clone(),
            },
            None => symbol.node(),
        },
        Expression::Sum(terms) => sum(terms, numbers),
        Expression::Product(factors) => Node::Product {
            factors: factors
                .iter()
                .map(|one| grouped(draw(one, numbers)))
                .collect(),
        },
        Expression::Quotient(over, under) => Node::Fraction {
            over: inner(over),
            under: inner(under),
        },
        Expression::Square(of) => Node::Power {
            base: Box::new(base(draw(of, numbers))),
            exponent: "2".to_owned(),
        },
        Expression::Root(of) => Node::Root {
            degree: "",
            under: inner(of),
        },
        Expression::CubeRoot(of) => Node::Root {
            degree: "3",
            under: inner(of),
        },
        Expression::Negative(of) => Node::Negative {
            of: Box::new(grouped(draw(of, numbers))),
        },
        Expression::Call(function, of) => call(*function, of, numbers),
    }
}

fn sum(terms: &[super::Term], numbers: Option<&[Printed]>) -> Node {
    let signed = terms.iter().enumerate().map(|(index, term)| {
        let node = draw(&term.of, numbers);
        SignedNode {
            minus: term.minus,
            node: if index == 0 && !term.minus {
                node
            } else {
                grouped(node)
            },
        }
    });
    Node::Sum {
        terms: signed.collect(),
    }
}

fn call(function: Function, of: &[Expression], numbers: Option<&[Printed]>) -> Node {
    Node::Function {
        name: function.name(),
        arguments: of.iter().map(|one| draw(one, numbers)).collect(),
    }
}

fn in_brackets(node: Node) -> Node {
    Node::Group {
        inner: Box::new(node),
    }
}

fn is_negative(text: &str) -> bool {
    text.starts_with('\u{2212}')
}

/// Brackets around what would otherwise run into a neighbour: sums and negative values.
fn grouped(node: Node) -> Node {
    match &node {
        Node::Sum { .. } | Node::Negative { .. } => in_brackets(node),
        Node::Number { text } | Node::Quantity { value: text, .. } if is_negative(text) => {
            in_brackets(node)
        }
        _ => node,
    }
}

/// Brackets under an exponent around everything but a single sign.
fn base(node: Node) -> Node {
    match &node {
        Node::Symbol { .. } | Node::Pi => node,
        Node::Number { text } if !is_negative(text) => node,
        Node::Quantity { value, unit } if unit.is_empty() && !is_negative(value) => node,
        _ => in_brackets(node),
    }
}
