//! The ledger of one joint: every value that the calculation gave, was given or lacks, in order.
//!
//! An entry has a stable id (the interface by which others check the program), its SI value or the
//! key that would give it, and how it came about. Documents print entries; nothing else turns a
//! number of the calculation into text.

mod form;

use std::marker::PhantomData;
use std::sync::Arc;

use super::common::Kept;
use crate::formula::Formula;
use crate::joint::{Fact, Lack, Origin, Who};
use crate::units::{Dimension, Quantity};
use form::{Line, Way};

pub(super) use form::Form;

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
#[derive(Clone, Copy, Debug)]
pub enum Basis<'a> {
    /// Given, tabulated or defaulted.
    Input(&'a Origin),
    /// By a formula, from these entries in the order of its inputs.
    Formula(&'static Formula, &'a [Key]),
    /// Rounded to what the tool can be set to.
    Rounded(Key),
    /// Chosen among these entries: the least or the greatest.
    Chosen(&'a [Key]),
    /// Summed from building blocks (hours).
    Sum,
    /// Worked out step by step by the simulation of a plan, from these entries.
    Simulated(&'a [Key]),
}

/// One line of the ledger.
#[derive(Clone, Copy, Debug)]
pub struct Entry<'a> {
    /// Its id.
    pub key: Key,
    /// What it measures.
    pub dimension: Dimension,
    /// SI value, or what is missing.
    pub value: Result<f64, Lack>,
    /// How it came about.
    pub basis: Basis<'a>,
}

/// What a formula lacks whose inputs lie outside its domain: another target.
const OUTSIDE: Lack = Lack {
    key: "target",
    who: Who::Engineer,
};

/// All entries of one joint, in the order in which they arose.
#[derive(Clone, Debug, Default)]
pub struct Ledger {
    form: Arc<Form>,
    /// The value of each line; of no meaning where it lacks something.
    values: Vec<f64>,
    /// What lines lack, by their place.
    lacks: Vec<(u16, Lack)>,
    /// Where the given values come from.
    origins: Vec<Origin>,
}

impl Ledger {
    /// The entries in order.
    pub fn entries(&self) -> impl Iterator<Item = Entry<'_>> {
        (0..self.values.len()).filter_map(|at| self.entry_at(at))
    }

    /// The entry of a key.
    pub fn entry(&self, key: Key) -> Option<Entry<'_>> {
        self.entry_at(usize::from(self.form.place(key)?))
    }

    fn entry_at(&self, at: usize) -> Option<Entry<'_>> {
        let line = self.form.lines.get(at)?;
        Some(Entry {
            key: line.key,
            dimension: line.dimension,
            value: self.value_at(at)?,
            basis: self.basis(line.way),
        })
    }

    fn value_at(&self, at: usize) -> Option<Result<f64, Lack>> {
        let value = self.values.get(at)?;
        Some(self.lack_at(at).map_or(Ok(*value), Err))
    }

    fn lack_at(&self, at: usize) -> Option<Lack> {
        let place = |(place, _): &(u16, Lack)| usize::from(*place);
        let rank = self.lacks.binary_search_by_key(&at, place).ok()?;
        self.lacks.get(rank).map(|(_, lack)| *lack)
    }

    fn basis(&self, way: Way) -> Basis<'_> {
        match way {
            Way::Input(number) => {
                let origin = self.origins.get(usize::from(number));
                Basis::Input(origin.unwrap_or(&Origin::Computed))
            }
            Way::Formula(formula, run) => Basis::Formula(formula, self.form.keys(run)),
            Way::Rounded(key) => Basis::Rounded(key),
            Way::Chosen(run) => Basis::Chosen(self.form.keys(run)),
            Way::Sum => Basis::Sum,
            Way::Simulated(run) => Basis::Simulated(self.form.keys(run)),
        }
    }

    /// Gives back the room for entries that did not come, and takes the form that like ledgers have.
    pub(super) fn close(&mut self, forms: &Kept<Form>) {
        self.form = forms.share(Arc::clone(&self.form));
        self.values.shrink_to_fit();
        self.lacks.shrink_to_fit();
        self.origins.shrink_to_fit();
    }

    /// The value of an id, if it is there and known.
    pub fn get<Q: Quantity>(&self, id: Id<Q>) -> Option<Q> {
        self.known(id.key()).map(Q::from_si)
    }

    /// The SI value of a key, if it is there and known.
    fn known(&self, key: Key) -> Option<f64> {
        self.value_at(usize::from(self.form.place(key)?))?.ok()
    }

    /// What an id lacks, if it lacks something.
    pub fn lack<Q>(&self, id: Id<Q>) -> Option<Lack> {
        self.lack_at(usize::from(self.form.place(id.key())?))
    }

    fn push(&mut self, key: Key, dimension: Dimension, value: Result<f64, Lack>, basis: Basis<'_>) {
        let form = Arc::make_mut(&mut self.form);
        let origin = u16::try_from(self.origins.len()).unwrap_or(u16::MAX);
        let way = match basis {
            Basis::Input(_) => Way::Input(origin),
            Basis::Formula(formula, keys) => Way::Formula(formula, form.keep(keys)),
            Basis::Rounded(from) => Way::Rounded(from),
            Basis::Chosen(keys) => Way::Chosen(form.keep(keys)),
            Basis::Sum => Way::Sum,
            Basis::Simulated(keys) => Way::Simulated(form.keep(keys)),
        };
        if !form.push(Line {
            key,
            dimension,
            way,
        }) {
            return;
        }
        if let Basis::Input(origin) = basis {
            self.origins.push(origin.clone());
        }
        if let (Err(lack), Ok(at)) = (value, u16::try_from(self.values.len())) {
            self.lacks.push((at, lack));
        }
        self.values.push(value.unwrap_or(f64::NAN));
    }

    /// Enters a fact of the joint.
    pub fn input<Q: Quantity>(&mut self, id: Id<Q>, fact: &Fact<Q>) {
        let (value, origin) = match fact {
            Fact::Known { value, origin } => (Ok(value.si()), origin),
            Fact::Missing { key, who } => (Err(Lack { key, who: *who }), &Origin::Computed),
        };
        self.push(id.key(), Q::DIMENSION, value, Basis::Input(origin));
    }

    /// Enters a value under another basis than a formula.
    pub fn enter<Q: Quantity>(&mut self, id: Id<Q>, value: Result<Q, Lack>, basis: Basis<'_>) {
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
        self.push(
            id.key(),
            Q::DIMENSION,
            value,
            Basis::Formula(formula, &keys),
        );
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
