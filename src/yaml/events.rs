//! Parser events to a tree.

use std::collections::BTreeMap;
use std::sync::Arc;

use granit_parser::{Event, Parser, ScalarStyle, Span, StructureStyle};

use super::merge::{Entries, MOST_MERGED};
use super::syntax::{self, Failure};
use super::tree::{Id, Kind, Tree};
use super::{DEEPEST, LARGEST};
use crate::report::{FileId, Finding, Place, near};

/// Builds the tree of `text`, or tells the first syntax error. What is parsed is `source`: the same
/// text, byte for byte, but for the parts that were blanked because they could not be read.
pub(super) fn build(
    source: &str,
    text: &Arc<str>,
    file: FileId,
    lossy: bool,
) -> Result<Tree, Box<Failure>> {
    let mut builder = Builder {
        source,
        tree: Tree::new(file, Arc::clone(text)),
        open: Vec::new(),
        anchors: BTreeMap::new(),
        names: Vec::new(),
        documents: 0,
        to_merge: MOST_MERGED,
        lossy,
    };
    let options = granit_parser::options! {
        emit_unresolved_aliases: true,
        emit_anchor_events: true,
        simple_key_max_lookahead: LARGEST,
        flow_nesting_limit: 2 * usize::from(DEEPEST),
        block_nesting_limit: 2 * usize::from(DEEPEST),
    };
    for next in Parser::new_from_str_with_options(source, options) {
        let (event, span) =
            next.map_err(|error| syntax::failure(&error, source, file, builder.flow_start()))?;
        if !builder.take(event, span)? {
            break;
        }
    }
    Ok(builder.tree)
}

/// A list or map that is not closed yet.
struct Open {
    id: Id,
    flow: bool,
    place: Place,
    map: bool,
    /// In a map: the key that waits for its value.
    key: Option<Id>,
    items: Vec<Id>,
    pairs: Vec<(Id, Id)>,
    height: u8,
}

struct Builder<'t> {
    source: &'t str,
    tree: Tree,
    open: Vec<Open>,
    /// What each anchor stands for; absent while its own content is still being read.
    anchors: BTreeMap<usize, Id>,
    /// Names of the anchors so far, for near names.
    names: Vec<String>,
    documents: usize,
    /// Entries that merge keys may still copy.
    to_merge: usize,
    /// Some bytes of the file were no text and are U+FFFD now.
    lossy: bool,
}

impl Builder<'_> {
    /// Takes one event; `false` ends the reading.
    fn take(&mut self, event: Event<'_>, span: Span) -> Result<bool, Box<Failure>> {
        let place = self.place(&span);
        if let (Some(tag), Some(at)) = (event.tag(), span.tag_span()) {
            let finding = Finding::job("yaml.tag", self.place(&at)).with("tag", tag.original());
            self.tree.findings.push(finding);
        }
        match event {
            Event::DocumentStart(..) => {
                self.documents += 1;
                if self.documents > 1 {
                    let finding = Finding::job("yaml.second_document", place);
                    self.tree.findings.push(finding);
                    return Ok(false);
                }
            }
            Event::Scalar(text, style, anchor, _) => self.scalar(&text, style, anchor, place),
            Event::SequenceStart(style, anchor, _) => self.begin(false, style, anchor, place)?,
            Event::MappingStart(style, anchor, _) => self.begin(true, style, anchor, place)?,
            Event::SequenceEnd | Event::MappingEnd => self.end(place),
            Event::Alias(anchor) => self.alias(anchor, place),
            Event::UnresolvedAlias(name) => {
                let near = near(&name, self.names.iter().map(String::as_str)).unwrap_or_default();
                let finding = Finding::job("yaml.unknown_anchor", place)
                    .with("near", near)
                    .with("name", name);
                self.tree.findings.push(finding);
                self.bad(place);
            }
            Event::Anchor(_, name) => self.names.push(name.into_owned()),
            _ => {}
        }
        Ok(true)
    }

    fn place(&self, span: &Span) -> Place {
        let whole = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
        let start = span.start.byte_offset().unwrap_or_default();
        let end = span.end.byte_offset().unwrap_or(start).max(start);
        Place {
            file: self.tree.file(),
            line: whole(span.start.line()),
            column: whole(span.start.col() + 1),
            start: whole(start),
            end: whole(end),
        }
    }

    /// Where the innermost open bracket stands.
    fn flow_start(&self) -> Option<Place> {
        self.open
            .last()
            .filter(|open| open.flow)
            .map(|open| open.place)
    }

    fn scalar(&mut self, text: &str, style: ScalarStyle, anchor: usize, place: Place) {
        let plain = style == ScalarStyle::Plain;
        let nothing = plain && matches!(text, "" | "~" | "null" | "Null" | "NULL");
        let kind = if nothing {
            Kind::Null
        } else if self.lossy && text.contains('\u{fffd}') {
            // Reported once for the file; nothing else can be said about them.
            Kind::Bad
        } else {
            Kind::Text(self.tree.store(text, place))
        };
        let id = self.tree.push(place, kind);
        if let Some(node) = self.tree.node_mut(id) {
            node.plain = plain;
        }
        if anchor > 0 {
            self.anchors.insert(anchor, id);
        }
        self.attach(id, 0);
    }

    fn bad(&mut self, place: Place) {
        let id = self.tree.push(place, Kind::Bad);
        self.attach(id, 0);
    }

    fn alias(&mut self, anchor: usize, place: Place) {
        match self.anchors.get(&anchor).copied() {
            Some(id) if !self.open.iter().any(|open| open.id == id) => {
                let height = self.tree.node(id).map_or(0, |node| node.height);
                self.attach(id, height);
            }
            _ => {
                let range = self.source.get(
                    usize::try_from(place.start).unwrap_or_default()
                        ..usize::try_from(place.end).unwrap_or_default(),
                );
                let name = range.unwrap_or_default().trim_start_matches('*');
                let finding = Finding::job("yaml.recursive_alias", place).with("name", name);
                self.tree.findings.push(finding);
                self.bad(place);
            }
        }
    }

    fn begin(
        &mut self,
        map: bool,
        style: StructureStyle,
        anchor: usize,
        place: Place,
    ) -> Result<(), Box<Failure>> {
        if self.open.len() >= usize::from(DEEPEST) {
            return Err(syntax::too_deep(place, self.flow_start()));
        }
        let id = self.tree.push(place, Kind::Bad);
        if anchor > 0 {
            self.anchors.insert(anchor, id);
        }
        self.open.push(Open {
            id,
            flow: style == StructureStyle::Flow,
            place,
            map,
            key: None,
            items: Vec::new(),
            pairs: Vec::new(),
            height: 0,
        });
        Ok(())
    }

    fn end(&mut self, end: Place) {
        let Some(open) = self.open.pop() else {
            return;
        };
        let first = open.pairs.first().map(|&(key, _)| key);
        let place = if open.flow {
            Place {
                end: end.end.max(open.place.end),
                ..open.place
            }
        } else {
            // A block has no bracket to point at: its first key stands for it.
            first.map_or(open.place, |key| self.tree.place(key))
        };
        let kind = if open.map {
            self.entries(&open.pairs, place)
        } else {
            Kind::List(open.items.into())
        };
        let height = open.height + 1;
        let deep = height > DEEPEST;
        if deep {
            // Aliases of aliases can stand deeper in one another than any bracket.
            let finding = Finding::job("yaml.too_deep", place).with("limit", DEEPEST.to_string());
            self.tree.findings.push(finding);
        }
        if let Some(node) = self.tree.node_mut(open.id) {
            node.place = place;
            node.block = !open.flow;
            if !deep {
                node.kind = kind;
                node.height = height;
            }
        }
        self.attach(open.id, if deep { 0 } else { height });
    }

    /// Hands a finished node to what is open around it.
    fn attach(&mut self, id: Id, height: u8) {
        match self.open.last_mut() {
            None => self.tree.set_root(id),
            Some(open) => {
                open.height = open.height.max(height);
                if !open.map {
                    open.items.push(id);
                } else if let Some(key) = open.key.take() {
                    open.pairs.push((key, id));
                } else {
                    open.key = Some(id);
                }
            }
        }
    }

    /// The entries of a map, merge keys applied.
    fn entries(&mut self, typed: &[(Id, Id)], place: Place) -> Kind {
        let Entries {
            pairs,
            mut findings,
            budget,
            cut,
            ..
        } = Entries::new(&self.tree, typed, self.to_merge);
        if budget == 0 && self.to_merge > 0 {
            findings.push(Finding::job("yaml.alias_budget", place));
        }
        for value in cut {
            if let Some(node) = self.tree.node_mut(value) {
                node.kind = Kind::Bad;
            }
        }
        self.to_merge = budget;
        self.tree.findings.append(&mut findings);
        Kind::Map(pairs.into())
    }
}
