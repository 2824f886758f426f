//! The name of a quantity in a formula.

use crate::units::Dimension;

/// A quantity by name. Names are notation, the same in every language.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Symbol {
    /// Unique name: `F`, `d2`, `µ_th`, `R_p0.2`.
    pub name: &'static str,
    /// What it measures.
    pub dimension: Dimension,
    /// Key of the words that say what it is.
    pub meaning: &'static str,
}

impl Symbol {
    /// Names a quantity.
    pub const fn new(name: &'static str, dimension: Dimension, meaning: &'static str) -> Self {
        Self {
            name,
            dimension,
            meaning,
        }
    }

    /// Base and index as they are drawn: `µ_th` is µ with the index th, `d2` is d with the index 2.
    /// The index is empty where there is none.
    pub fn split(&self) -> (&'static str, &'static str) {
        if let Some((base, index)) = self.name.split_once('_') {
            return (base, index);
        }
        let base = self
            .name
            .trim_end_matches(|sign: char| sign.is_ascii_digit());
        if base.is_empty() {
            (self.name, "")
        } else {
            (base, &self.name[base.len()..])
        }
    }

    /// Base and index run together, for a line of plain text: `µth`, `d2`, `Rp0.2`.
    pub fn plain(&self) -> String {
        let (base, index) = self.split();
        format!("{base}{index}")
    }
}
