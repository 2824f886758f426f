//! A formula is written once. From that one writing come the number, the check of its dimensions,
//! the line of text with symbols or with the numbers put in, and the tree that a page draws.
//!
//! Everything inside is SI and radians. The numbers put into a line are whatever the pack prints:
//! four significant digits with their units, so that a reader repeats the line on a pocket calculator.

mod build;
mod expression;
mod symbol;
#[cfg(test)]
mod tests;
mod text;
mod tree;

pub use build::{arctan, cos, cube_root, degrees, fixed, ln, max, min, number, pi, sqrt, tan};
pub use expression::{Expression, Function, Term};
pub use symbol::Symbol;
pub use tree::{Node, SignedNode};

use std::hash::{Hash, Hasher};

use crate::units::{Dimension, Printed};

/// One formula of one document.
///
/// Formulas are made once, in a `LazyLock`, and live as long as the program.
#[derive(Clone, Debug)]
pub struct Formula {
    /// Where it stands in this program: the file of its document, then what it yields (`iso_16047.torque`).
    pub id: &'static str,
    /// What it yields.
    pub symbol: Symbol,
    /// What goes in, in the order in which it first appears in the expression.
    pub inputs: Vec<Symbol>,
    /// How to get there.
    pub expression: Expression,
    /// Document, edition and clause: a name, printed as it stands in every language.
    pub source: &'static str,
    /// Key of the sentence in the wording that says where the formula holds.
    pub validity: &'static str,
    /// Whether the formula was read in its document or a restatement of it, or reproduces a published table.
    /// A formula from memory alone is printed as not confirmed.
    pub confirmed: bool,
}

/// A formula is written once, so its id says which one it is.
impl PartialEq for Formula {
    fn eq(&self, other: &Self) -> bool {
        self.id == other.id
    }
}

impl Eq for Formula {}

impl Hash for Formula {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.id.hash(state);
    }
}

impl Formula {
    /// A confirmed formula; its inputs are found in the expression.
    pub fn new(
        id: &'static str,
        symbol: Symbol,
        expression: impl Into<Expression>,
        source: &'static str,
        validity: &'static str,
    ) -> Self {
        let mut expression = expression.into();
        let inputs = expression.bind();
        Self {
            id,
            symbol,
            inputs,
            expression,
            source,
            validity,
            confirmed: true,
        }
    }

    /// The same, marked as written from memory.
    #[must_use]
    pub fn from_memory(mut self) -> Self {
        self.confirmed = false;
        self
    }

    /// What the result measures.
    pub const fn dimension(&self) -> Dimension {
        self.symbol.dimension
    }

    /// The result in SI. `values` are in SI and in the order of `inputs`; one that is missing makes the result NaN.
    pub fn value(&self, values: &[f64]) -> f64 {
        self.expression.value(values)
    }

    /// The result in SI from named values, in any order; names that the formula does not use are ignored,
    /// one that is missing makes the result NaN.
    pub fn value_with(&self, values: &[(Symbol, f64)]) -> f64 {
        let ordered = self.arrange(|symbol| {
            let named = values.iter().find(|(name, _)| name.name == symbol.name);
            named.map_or(f64::NAN, |&(_, value)| value)
        });
        self.value(&ordered)
    }

    /// Calls `find` for each input, in the order that [`Formula::value`] and the printing want.
    pub fn arrange<T>(&self, find: impl FnMut(&Symbol) -> T) -> Vec<T> {
        self.inputs.iter().map(find).collect()
    }

    /// The right-hand side with symbols, on one line: `F · (P / (2 π) + …)`.
    pub fn text(&self) -> String {
        text::line(&self.expression, None)
    }

    /// The right-hand side with the printed inputs put in, in the order of `inputs`.
    pub fn text_with_numbers(&self, numbers: &[Printed]) -> String {
        text::line(&self.expression, Some(numbers))
    }

    /// The right-hand side with symbols, to be drawn.
    pub fn tree(&self) -> Node {
        tree::draw(&self.expression, None)
    }

    /// The right-hand side with the printed inputs put in, to be drawn.
    pub fn tree_with_numbers(&self, numbers: &[Printed]) -> Node {
        tree::draw(&self.expression, Some(numbers))
    }

    /// Whether the expression yields what the symbol measures. The error names the formula and the place.
    pub fn check_dimensions(&self) -> Result<(), String> {
        let found = self
            .expression
            .exponents()
            .map_err(|why| format!("{}: {why}", self.id))?;
        let wanted = self.dimension().exponents();
        if found == wanted {
            Ok(())
        } else {
            Err(format!(
                "{}: yields {found:?} instead of {wanted:?} (m, kg, s, K)",
                self.id
            ))
        }
    }
}
