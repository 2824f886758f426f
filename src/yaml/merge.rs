//! The entries of a map: double keys, keys that are no text, and the merge key `<<`.

use std::collections::BTreeMap;

use super::tree::{Id, Tree, View};
use crate::report::{Finding, Place};

/// Entries that merge keys may copy in one file: a hundred for each joint of the largest job there
/// is.
pub(super) const MOST_MERGED: usize = 300_000;

/// A map in the making.
pub(super) struct Entries<'t> {
    tree: &'t Tree,
    seen: BTreeMap<&'t str, Id>,
    pub(super) pairs: Vec<(Id, Id)>,
    pub(super) findings: Vec<Finding>,
    /// Entries that may still be copied.
    pub(super) budget: usize,
    /// Values that a decimal comma has cut in two.
    pub(super) cut: Vec<Id>,
}

impl<'t> Entries<'t> {
    /// Takes the pairs as they were typed.
    pub(super) fn new(tree: &'t Tree, typed: &[(Id, Id)], budget: usize) -> Self {
        let mut entries = Self {
            tree,
            seen: BTreeMap::new(),
            pairs: Vec::with_capacity(typed.len()),
            findings: Vec::new(),
            budget,
            cut: Vec::new(),
        };
        let mut sources = Vec::new();
        for (index, &(key, value)) in typed.iter().enumerate() {
            let before = index.checked_sub(1).and_then(|index| typed.get(index));
            if before.is_some_and(|&(_, before)| entries.is_cut(before, key, value)) {
                continue;
            }
            if entries.accepts(key) {
                if entries.is_merge(key) {
                    sources.push(value);
                } else {
                    entries.pairs.push((key, value));
                }
            }
        }
        for source in sources {
            entries.merge(source);
        }
        entries
    }

    /// `{ length: 12,5 mm }` is, to YAML, a length of 12 and a key `5 mm` without value. Nobody means
    /// that: it is a decimal comma.
    fn is_cut(&mut self, before: Id, key: Id, value: Id) -> bool {
        let (left, right) = (self.tree.text_at(before), self.tree.text_at(key));
        let (at, next) = (self.tree.place(before), self.tree.place(key));
        let digits = left.ends_with(|sign: char| sign.is_ascii_digit())
            && right.starts_with(|sign: char| sign.is_ascii_digit());
        let adjoining = at.end + 1 == next.start && at.line == next.line;
        if self.tree.view(value) != View::Null || !digits || !adjoining {
            return false;
        }
        let place = Place {
            end: next.end,
            ..at
        };
        let finding = Finding::job("quantity.comma", place)
            .with("text", format!("{left},{right}"))
            .with("write", format!("{left}.{right}"));
        self.findings.push(finding);
        self.cut.push(before);
        true
    }

    fn is_merge(&self, key: Id) -> bool {
        self.tree.text_at(key) == "<<" && self.tree.node(key).is_some_and(|node| node.plain)
    }

    /// Whether a key is a text that does not stand in the map already; reports it otherwise.
    fn accepts(&mut self, key: Id) -> bool {
        let place = self.tree.place(key);
        let name = match self.tree.view(key) {
            View::Text(name) => name,
            View::Bad => return false,
            _ => {
                self.findings.push(Finding::job("yaml.key_not_text", place));
                return false;
            }
        };
        let Some(&first) = self.seen.get(name) else {
            self.seen.insert(name, key);
            return true;
        };
        let first = self.tree.place(first);
        let finding = Finding::job("job.duplicate_key", place)
            .with("key", name)
            .with("first", first.line.to_string())
            .beside(first, "first");
        self.findings.push(finding);
        false
    }

    /// Adds the entries that `<<` names, where the map has no such key itself.
    fn merge(&mut self, source: Id) {
        match self.tree.view(source) {
            View::Map(pairs) => self.copy(pairs),
            View::List(items) => {
                for &item in items {
                    match self.tree.view(item) {
                        View::Map(pairs) => self.copy(pairs),
                        View::Bad => {}
                        _ => self.refuse(item),
                    }
                }
            }
            View::Bad => {}
            _ => self.refuse(source),
        }
    }

    fn refuse(&mut self, source: Id) {
        let place = self.tree.place(source);
        self.findings.push(Finding::job("yaml.merge_shape", place));
    }

    fn copy(&mut self, pairs: &'t [(Id, Id)]) {
        for &(key, value) in pairs {
            if self.budget == 0 {
                return;
            }
            self.budget -= 1;
            let name = self.tree.text_at(key);
            if !self.seen.contains_key(name) {
                self.seen.insert(name, key);
                self.pairs.push((key, value));
            }
        }
    }
}
