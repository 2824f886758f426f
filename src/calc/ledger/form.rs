//! What the ledgers of like joints have in common: which values stand in them, and how each came about.

use super::Key;
use crate::formula::Formula;
use crate::units::Dimension;

/// A run of keys in the list of a form.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct Run {
    first: u16,
    count: u16,
}

/// How a value came about, without the keys and origins themselves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum Way {
    /// Given: the number of its origin in the ledger.
    Input(u16),
    /// By a formula.
    Formula(&'static Formula, Run),
    /// Rounded.
    Rounded(Key),
    /// The least or the greatest of these.
    Chosen(Run),
    /// Summed.
    Sum,
    /// Simulated from these.
    Simulated(Run),
}

/// One line of a form.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub(super) struct Line {
    pub(super) key: Key,
    pub(super) dimension: Dimension,
    pub(super) way: Way,
}

/// The lines of a ledger in the order in which they arose, without their values and origins.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub(in crate::calc) struct Form {
    pub(super) lines: Vec<Line>,
    /// Their places, sorted by [`rank_of`] their keys.
    by_key: Vec<u16>,
    /// What their runs are cut from.
    keys: Vec<Key>,
}

impl Form {
    /// Where a key stands.
    pub(super) fn place(&self, key: Key) -> Option<u16> {
        self.rank(key)
            .ok()
            .and_then(|rank| self.by_key.get(rank).copied())
    }

    /// The rank of a key among all, or the one that it would have.
    fn rank(&self, key: Key) -> Result<usize, usize> {
        let wanted = Some(rank_of(&key));
        let rank_at = |at: u16| {
            self.lines
                .get(usize::from(at))
                .map(|line| rank_of(&line.key))
        };
        self.by_key.binary_search_by(|&at| rank_at(at).cmp(&wanted))
    }

    /// Adds a line; `false` if its key stands already.
    pub(super) fn push(&mut self, line: Line) -> bool {
        let rank = self.rank(line.key);
        debug_assert!(rank.is_err(), "{} is entered twice", line.key);
        let (Err(rank), Ok(at)) = (rank, u16::try_from(self.lines.len())) else {
            return false;
        };
        self.by_key.insert(rank, at);
        self.lines.push(line);
        true
    }

    /// Keeps some keys; they are found again by their run.
    pub(super) fn keep(&mut self, keys: &[Key]) -> Run {
        let run = Run {
            first: u16::try_from(self.keys.len()).unwrap_or(u16::MAX),
            count: u16::try_from(keys.len()).unwrap_or(u16::MAX),
        };
        self.keys.extend_from_slice(keys);
        run
    }

    /// The keys of a run.
    pub(super) fn keys(&self, run: Run) -> &[Key] {
        let first = usize::from(run.first);
        self.keys
            .get(first..first + usize::from(run.count))
            .unwrap_or_default()
    }
}

/// What keys are sorted by to be found: most differ in their length, and few texts need to be compared.
fn rank_of(key: &Key) -> (usize, u16, &'static str) {
    (key.path.len(), key.number, key.path)
}
