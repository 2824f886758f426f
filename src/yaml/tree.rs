//! The tree of a file: an arena of nodes with places. An alias is the same node again, so a bomb of
//! aliases costs nothing to read.

use std::sync::Arc;

use unicode_normalization::{IsNormalized, UnicodeNormalization, is_nfc_quick};

use super::nodes::Nodes;
use crate::report::{FileId, Finding, Place};

/// A node of a [`Tree`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(pub(super) u32);

/// What stands at a node.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View<'t> {
    /// Nothing: `~`, `null` or an empty place. It means the same as leaving the key out.
    Null,
    /// Text, NFC-normalised.
    Text(&'t str),
    /// A list.
    List(&'t [Id]),
    /// A map in the order of the file; each key is a text node, no key stands twice.
    Map(&'t [(Id, Id)]),
    /// Something that could not be read and is reported already.
    Bad,
}

/// A text: where it stands in the file, or, if that differs from what it means, its own.
#[derive(Clone, Debug)]
enum Stored {
    Slice(u32, u32),
    Owned(Box<str>),
}

#[derive(Clone, Debug)]
pub(super) enum Kind {
    Null,
    Text(StoredText),
    List(Box<[Id]>),
    Map(Box<[(Id, Id)]>),
    Bad,
}

#[derive(Clone, Debug)]
pub(super) struct StoredText(Stored);

#[derive(Clone, Debug)]
pub(super) struct Node {
    pub(super) place: Place,
    pub(super) kind: Kind,
    /// Written with dashes and indents rather than brackets.
    pub(super) block: bool,
    /// Typed without quotes.
    pub(super) plain: bool,
    /// Levels of lists and maps from here down.
    pub(super) height: u8,
}

/// A file as it was typed.
#[derive(Clone, Debug)]
pub struct Tree {
    file: FileId,
    text: Arc<str>,
    nodes: Nodes,
    root: Option<Id>,
    pub(super) findings: Vec<Finding>,
    pub(super) damaged: bool,
}

impl Tree {
    /// An empty tree over a text; nodes can be added, as a reader of tables does.
    pub fn new(file: FileId, text: impl Into<Arc<str>>) -> Self {
        Self {
            file,
            text: text.into(),
            nodes: Nodes::default(),
            root: None,
            findings: Vec::new(),
            damaged: false,
        }
    }

    /// The file it came from.
    pub fn file(&self) -> FileId {
        self.file
    }

    /// The text that places count in: without a byte-order mark, and with U+FFFD where bytes were
    /// not UTF-8.
    pub fn text(&self) -> &Arc<str> {
        &self.text
    }

    /// The outermost node.
    pub fn root(&self) -> Option<Id> {
        self.root
    }

    /// What was wrong in reading.
    pub fn findings(&self) -> &[Finding] {
        &self.findings
    }

    /// Whether parts of the file could not be read, so that nothing may be concluded from what is
    /// missing: no "key is missing", no "no such name".
    pub fn is_damaged(&self) -> bool {
        self.damaged
    }

    /// How many nodes there are.
    pub fn len(&self) -> usize {
        self.nodes.len()
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The first byte of the file.
    pub fn start(&self) -> Place {
        Place {
            file: self.file,
            line: 1,
            column: 1,
            start: 0,
            end: 0,
        }
    }

    /// Where a node stands.
    pub fn place(&self, id: Id) -> Place {
        self.node(id)
            .map_or_else(|| self.start(), |node| node.place)
    }

    /// What stands at a node.
    pub fn view(&self, id: Id) -> View<'_> {
        match self.node(id).map(|node| &node.kind) {
            Some(Kind::Null) => View::Null,
            Some(Kind::Text(text)) => View::Text(self.stored(text)),
            Some(Kind::List(items)) => View::List(items),
            Some(Kind::Map(pairs)) => View::Map(pairs),
            Some(Kind::Bad) | None => View::Bad,
        }
    }

    /// The text of a node; empty if it is none.
    pub fn text_at(&self, id: Id) -> &str {
        match self.view(id) {
            View::Text(text) => text,
            _ => "",
        }
    }

    /// The value of a key of a map.
    pub fn value_of(&self, map: Id, key: &str) -> Option<Id> {
        match self.view(map) {
            View::Map(pairs) => pairs
                .iter()
                .find(|&&(name, _)| self.text_at(name) == key)
                .map(|&(_, value)| value),
            _ => None,
        }
    }

    /// Adds a text.
    pub fn add_text(&mut self, place: Place, text: &str) -> Id {
        let text = StoredText(Stored::Owned(composed(text).into()));
        self.push(place, Kind::Text(text))
    }

    /// Adds a list.
    pub fn add_list(&mut self, place: Place, items: Vec<Id>) -> Id {
        self.push(place, Kind::List(items.into()))
    }

    /// Adds a map; keys are text nodes and differ.
    pub fn add_map(&mut self, place: Place, pairs: Vec<(Id, Id)>) -> Id {
        self.push(place, Kind::Map(pairs.into()))
    }

    /// Sets the outermost node.
    pub fn set_root(&mut self, id: Id) {
        self.root = Some(id);
    }

    pub(super) fn push(&mut self, place: Place, kind: Kind) -> Id {
        self.nodes.push(Node {
            place,
            kind,
            block: false,
            plain: false,
            height: 0,
        })
    }

    pub(super) fn node(&self, id: Id) -> Option<&Node> {
        self.nodes.get(id)
    }

    pub(super) fn node_mut(&mut self, id: Id) -> Option<&mut Node> {
        self.nodes.get_mut(id)
    }

    /// Stores a text that was read at `place`: as a slice of the file where that is the same.
    pub(super) fn store(&self, read: &str, place: Place) -> StoredText {
        let normal = read.is_ascii() || is_nfc_quick(read.chars()) == IsNormalized::Yes;
        let inside = |start: u32, end: u32| {
            let range = usize::try_from(start).ok()?..usize::try_from(end).ok()?;
            (normal && self.text.get(range) == Some(read)).then_some(Stored::Slice(start, end))
        };
        StoredText(
            inside(place.start, place.end)
                // Quotes stand around the text.
                .or_else(|| inside(place.start + 1, place.end.saturating_sub(1)))
                .unwrap_or_else(|| Stored::Owned(composed(read).into())),
        )
    }

    fn stored<'t>(&'t self, text: &'t StoredText) -> &'t str {
        match &text.0 {
            Stored::Owned(own) => own,
            Stored::Slice(start, end) => {
                let range = usize::try_from(*start)
                    .ok()
                    .zip(usize::try_from(*end).ok())
                    .map(|(start, end)| start..end);
                range
                    .and_then(|range| self.text.get(range))
                    .unwrap_or_default()
            }
        }
    }

    /// The place of bytes `part` of a node's text, if the text stands in the file as it is.
    pub(super) fn part_of(&self, id: Id, part: (usize, usize)) -> Option<Place> {
        let node = self.node(id)?;
        let Kind::Text(StoredText(Stored::Slice(start, _))) = &node.kind else {
            return None;
        };
        let text = self.text_at(id);
        let before = text.get(..part.0)?;
        text.get(part.0..part.1)?;
        if text.contains(['\n', '\r']) {
            return None;
        }
        let quote = start - node.place.start;
        let characters = u32::try_from(before.chars().count()).ok()?;
        Some(Place {
            column: node.place.column + quote + characters,
            start: start + u32::try_from(part.0).ok()?,
            end: start + u32::try_from(part.1).ok()?,
            ..node.place
        })
    }
}

/// Composed form (NFC), so that an umlaut typed as two signs is the same name as one typed as one.
pub(super) fn composed(text: &str) -> String {
    text.nfc().collect()
}
