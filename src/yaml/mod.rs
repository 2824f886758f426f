//! The reader of everything that people type: text to a tree with places, and the tree to typed
//! values, with all errors of a file in one run.
//!
//! A scalar has no type until a Rust type asks for one, so `0123`, `no`, `12:30` and `3E2` stay the
//! text that was typed where text is due. Names, keys and texts are NFC-normalised. Hostile input
//! is bounded in depth, size and repetition. This is the only module that names the YAML parser.
//!
//! House rules for a type that is decoded here: every field is `At<T>`, `Option<At<T>>`,
//! `Vec<At<T>>` or [`Named<T>`] (a bare field's error jumps to the nearest `At` above it); no
//! `#[serde(default)]`, `alias`, `flatten` or `untagged`; choices are enums of plain words.

mod access;
mod at;
mod blame;
mod check;
mod decode;
mod events;
mod fault;
mod ids;
mod leaf;
mod lines;
mod mend;
mod merge;
mod nodes;
mod slot;
mod syntax;
mod tree;

pub use at::{At, Named, OneOrMany, entries, items};
pub use fault::Complaint;
pub use ids::{IDS, LABELS};
pub use leaf::{Prose, Text};
pub use tree::{Id, Tree, View};

use std::sync::Arc;

use serde::de::DeserializeOwned;

use crate::report::{FileId, Finding, Place, Sources, sort};

/// Levels of lists and maps in one another.
pub const DEEPEST: u8 = 64;
/// Bytes of one file.
pub const LARGEST: usize = 64 << 20;

/// Adds a file to the sources and reads it.
pub fn open(name: &str, bytes: &[u8], sources: &mut Sources) -> Tree {
    let file = sources.add(name, "");
    let tree = read(bytes, file);
    sources.set_text(file, Arc::clone(tree.text()));
    tree
}

/// Reads the bytes of a file to a tree. Never fails and never panics: what is wrong stands in the
/// tree's findings, and what could be read is there. Places count in [`Tree::text`].
pub fn read(bytes: &[u8], file: FileId) -> Tree {
    let (text, findings) = lines::text_of(bytes, file);
    let refused = findings
        .iter()
        .any(|finding| matches!(finding.id, "yaml.too_large" | "yaml.nul"));
    if refused {
        let mut tree = Tree::new(file, text);
        tree.findings = findings;
        tree.damaged = true;
        return tree;
    }
    mend::read(&text.into(), file, findings)
}

/// Decodes the tree of a file to `T` and returns all findings, those of the reading included,
/// sorted by place. The value may be there although there are findings: its `At`s are empty where
/// something is wrong, so that later checks can speak in the same run.
pub fn decode<T: DeserializeOwned>(tree: &Tree) -> (Option<T>, Vec<Finding>) {
    let mut findings = tree.findings.clone();
    let value = match tree.root() {
        Some(root) if matches!(tree.view(root), View::Map(_)) => {
            let (value, mut own) = decode::run(tree, root);
            // What was blanked for a syntax error is missing for that reason alone.
            if tree.damaged {
                own.retain(|finding| !finding.id.starts_with("job.missing_"));
            }
            findings.append(&mut own);
            value
        }
        Some(root) if !tree.damaged => {
            let found = match tree.view(root) {
                View::Null => None,
                View::List(_) => Some("list"),
                _ => Some("text"),
            };
            let place = tree.place(root);
            findings.push(match found {
                Some(found) => Finding::job("yaml.not_a_map", place).with("found", found),
                None => Finding::job("yaml.empty", place),
            });
            None
        }
        None if !tree.damaged => {
            findings.push(Finding::job("yaml.empty", tree.start()));
            None
        }
        _ => None,
    };
    sort(&mut findings);
    (value, findings)
}

/// Decodes one text that does not stand in a YAML file, such as a cell of a table, by the same
/// rules. `key` is the name by which messages call it.
pub fn decode_text<T: DeserializeOwned>(
    text: &str,
    place: Place,
    key: &'static str,
) -> (At<T>, Vec<Finding>) {
    let mut tree = Tree::new(place.file, "");
    let node = tree.add_text(place, text);
    let (value, findings) = decode::run_leaf(&tree, node, key);
    (value.unwrap_or_else(|| At::empty(place)), findings)
}
