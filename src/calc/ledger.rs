//! The ledger of one joint: every value that the calculation gave, was given or lacks, in order.
//!
//! An entry has a stable id (the interface by which others check the program), its SI value or the
//! key that would give it, and how it came about. Documents print entries; nothing else turns a
//! number of the calculation into text.

use std::marker::PhantomData;

use crate::formula::Formula;
use crate::joint::{Fact, Origin, Who};
use crate::units::{Dimension, Quantity};

/// The id of a result: a path of words, with a number in place of `#` for passes and rounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key {
    /// `tighten.pass.#.pressure`.
    pub path: &'static str,
    /// The number, from 1; 0 where the path has none.
    pub number: u16,
}

impl std::fmt::Display for Key {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.path.replace('#', &self.number.to_string()))
    }
}

/// A typed id: what may be stored under it is known to the compiler.
pub struct Id<Q> {
    key: Key,
    quantity: PhantomData<Q>,
}

impl<Q> Clone for Id<Q> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<Q> Copy for Id<Q> {}

impl<Q> Id<Q> {
    /// An id with this path.
    pub const fn new(path: &'static str) -> Self {
        Self {
            key: Key { path, number: 0 },
            quantity: PhantomData,
        }
    }

    /// The same for pass or round `number`.
    #[must_use]
    pub const fn at(self, number: u16) -> Self {
        Self {
            key: Key {
                path: self.key.path,
                number,
            },
            quantity: PhantomData,
        }
    }

    /// Without its type.
    pub const fn key(self) -> Key {
        self.key
    }
}

/// How a value came about.
#[derive(Clone, Debug)]
pub enum Basis {
    /// Given, tabulated or defaulted.
    Input(Origin),
    /// By a formula, from these entries in the order of its inputs.
    Formula(&'static Formula, Vec<Key>),
    /// Rounded to what the tool can be set to.
    Rounded(Key),
    /// Chosen among these entries: the least or the greatest.
    Chosen(Vec<Key>),
    /// Summed from building blocks (hours).
    Sum,
    /// Worked out step by step by the simulation of a plan, from these entries.
    Simulated(Vec<Key>),
}

/// One line of the ledger.
#[derive(Clone, Debug)]
pub struct Entry {
    /// Its id.
    pub key: Key,
    /// What it measures.
    pub dimension: Dimension,
    /// SI value, or what is missing.
    pub value: Result<f64, Lack>,
    /// How it came about.
    pub basis: Basis,
}

/// What is missing and who must give it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lack {
    /// The key of the job that would give it.
    pub key: &'static str,
    /// Who must give it.
    pub who: Who,
}

/// What a formula lacks whose inputs lie outside its domain: another target.
const OUTSIDE: Lack = Lack {
    key: "target",
    who: Who::Engineer,
};

/// All entries of one joint, in the order in which they arose. Thousands of ledgers are in memory at once,
/// so they are found through a list of places instead of a map.
#[derive(Clone, Debug, Default)]
pub struct Ledger {
    entries: Vec<Entry>,
    /// Their places, in the order of the keys.
    by_key: Vec<u16>,
}

impl Ledger {
    /// The entries in order.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The entry of a key.
    pub fn entry(&self, key: Key) -> Option<&Entry> {
        let at = self.find(key).ok().and_then(|rank| self.by_key.get(rank))?;
        self.entries.get(usize::from(*at))
    }

    /// The rank of a key among all, or the one that it would have.
    fn find(&self, key: Key) -> Result<usize, usize> {
        let key_at = |at: u16| self.entries.get(usize::from(at)).map(|entry| entry.key);
        self.by_key
            .binary_search_by(|&at| key_at(at).cmp(&Some(key)))
    }

    /// Gives back the room for entries that did not come.
    pub(super) fn close(&mut self) {
        self.entries.shrink_to_fit();
        self.by_key.shrink_to_fit();
    }

    /// The value of an id, if it is there and known.
    pub fn get<Q: Quantity>(&self, id: Id<Q>) -> Option<Q> {
        let value = self.entry(id.key())?.value.as_ref().ok()?;
        Some(Q::from_si(*value))
    }

    /// What an id lacks, if it lacks something.
    pub fn lack<Q>(&self, id: Id<Q>) -> Option<Lack> {
        self.entry(id.key())?.value.as_ref().err().copied()
    }

    fn push(&mut self, key: Key, dimension: Dimension, value: Result<f64, Lack>, basis: Basis) {
        let rank = self.find(key);
        debug_assert!(rank.is_err(), "{key} is entered twice");
        let (Err(rank), Ok(at)) = (rank, u16::try_from(self.entries.len())) else {
            return;
        };
        self.by_key.insert(rank, at);
        self.entries.push(Entry {
            key,
            dimension,
            value,
            basis,
        });
    }

    /// Enters a fact of the joint.
    pub fn input<Q: Quantity>(&mut self, id: Id<Q>, fact: &Fact<Q>) {
        let (value, origin) = match fact {
            Fact::Known { value, origin } => (Ok(value.si()), origin.clone()),
            Fact::Missing { key, who } => (Err(Lack { key, who: *who }), Origin::Computed),
        };
        self.push(id.key(), Q::DIMENSION, value, Basis::Input(origin));
    }

    /// Enters a value under another basis than a formula.
    pub fn enter<Q: Quantity>(&mut self, id: Id<Q>, value: Result<Q, Lack>, basis: Basis) {
        self.push(id.key(), Q::DIMENSION, value.map(Quantity::si), basis);
    }

    /// Applies a formula. `inputs` says under which key each symbol of the formula stands, in any
    /// order. If one of them is missing, so is the result, for the same reason.
    pub fn apply<Q: Quantity>(
        &mut self,
        id: Id<Q>,
        formula: &'static Formula,
        inputs: &[(&str, Key)],
    ) {
        debug_assert_eq!(
            formula.dimension().exponents(),
            Q::DIMENSION.exponents(),
            "{}",
            id.key()
        );
        let keys = arrange(formula, inputs);
        // A formula outside its domain (a stud already past its limit) yields no number.
        let value = self.values(&keys).and_then(|values| {
            let value = formula.value(&values);
            if value.is_finite() {
                Ok(value)
            } else {
                Err(OUTSIDE)
            }
        });
        self.push(id.key(), Q::DIMENSION, value, Basis::Formula(formula, keys));
    }

    fn values(&self, inputs: &[Key]) -> Result<Vec<f64>, Lack> {
        inputs
            .iter()
            .map(|key| match self.entry(*key) {
                Some(entry) => entry.value,
                None => Err(Lack {
                    key: key.path,
                    who: Who::Engineer,
                }),
            })
            .collect()
    }
}

/// The keys in the order of the formula's inputs.
fn arrange(formula: &Formula, inputs: &[(&str, Key)]) -> Vec<Key> {
    formula.arrange(|symbol| {
        let named = inputs.iter().find(|(name, _)| *name == symbol.name);
        debug_assert!(named.is_some(), "{} needs {}", formula.id, symbol.name);
        named.map_or(
            Key {
                path: symbol.name,
                number: 0,
            },
            |&(_, key)| key,
        )
    })
}
