//! The entries of a map: double keys, keys that are no text, and the merge key `<<`.

use std::collections::BTreeMap;

use super::tree::{Id, Tree, View};
use crate::report::Finding;

/// Entries that merge keys may copy in one file; thirty for each joint of the largest job there is,
/// ten times over.
pub(super) const MOST_MERGED: usize = 1_000_000;

/// A map in the making.
pub(super) struct Entries<'t> {
    tree: &'t Tree,
    seen: BTreeMap<&'t str, Id>,
    pub(super) pairs: Vec<(Id, Id)>,
    pub(super) findings: Vec<Finding>,
    /// Entries that may still be copied.
    pub(super) budget: usize,
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
        };
        let mut sources = Vec::new();
        for &(key, value) in typed {
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
