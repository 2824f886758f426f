//! Several syntax errors in one run: the item that holds one is blanked, and the text is read again.

use std::sync::Arc;

use super::events;
use super::syntax::Failure;
use super::tree::Tree;
use crate::report::{FileId, Finding};

/// Syntax errors that are told of one file.
const MOST: usize = 20;
/// Bytes that are read again for the sake of further errors.
const BYTES: usize = 256 << 20;
/// How far a hole grows: the line, its list item, its outermost key, all that follows.
const WIDEST: u8 = 3;

/// Reads a text, blanking what is no YAML until the rest is. `findings` are those of its bytes.
pub(super) fn read(text: &Arc<str>, file: FileId, mut findings: Vec<Finding>) -> Tree {
    let lossy = !findings.is_empty();
    let mut damaged = lossy;
    let mut patient = Patient::new(text);
    let mut told = 0;
    let rounds = (BYTES / text.len().max(1)).clamp(2, 4 * MOST);
    for _ in 0..rounds {
        match events::build(&patient.source, text, file, lossy) {
            Ok(mut tree) => {
                tree.damaged = damaged;
                findings.append(&mut tree.findings);
                tree.findings = findings;
                return tree;
            }
            Err(failure) => {
                damaged = true;
                // No slip of the pen is this deep; such a file is not worth the time of a mending.
                if failure.finding.id == "yaml.too_deep" {
                    findings.push(failure.finding);
                    break;
                }
                match patient.blank(&failure) {
                    Blanked::New => findings.push(failure.finding),
                    Blanked::Wider => continue,
                    Blanked::Nothing => break,
                }
                told += 1;
                if told == MOST {
                    break;
                }
            }
        }
    }
    if told == MOST {
        findings.push(Finding::job("yaml.gave_up", None).with("count", MOST.to_string()));
    }
    let mut tree = Tree::new(file, Arc::clone(text));
    tree.findings = findings;
    tree.damaged = true;
    tree
}

/// What became of a failure.
enum Blanked {
    /// It is another error.
    New,
    /// It follows from the last hole, which was made wider.
    Wider,
    /// No hole helps.
    Nothing,
}

/// The text under treatment.
struct Patient {
    source: String,
    /// Start of each line, and the end of the text.
    starts: Vec<usize>,
    hole: Option<Hole>,
}

/// Lines that were blanked for one error.
struct Hole {
    /// First line, from 0.
    first: usize,
    /// The line behind the hole.
    behind: usize,
    /// How deep the first line stood before it was blanked.
    depth: usize,
    level: u8,
}

impl Patient {
    fn new(text: &str) -> Self {
        let breaks = text.bytes().enumerate().filter(|&(_, byte)| byte == b'\n');
        let starts = std::iter::once(0)
            .chain(breaks.map(|(at, _)| at + 1))
            .chain(std::iter::once(text.len()))
            .collect();
        Self {
            source: text.to_owned(),
            starts,
            hole: None,
        }
    }

    fn lines(&self) -> usize {
        self.starts.len() - 1
    }

    fn line(&self, index: usize) -> &str {
        match (self.starts.get(index), self.starts.get(index + 1)) {
            (Some(&start), Some(&end)) => self.source.get(start..end).unwrap_or_default(),
            _ => "",
        }
    }

    /// Columns before the first sign of a line; `None` for an empty line or a comment.
    fn indent(&self, index: usize) -> Option<usize> {
        let line = self.line(index);
        let rest = line.trim_start();
        if rest.is_empty() || rest.starts_with('#') {
            return None;
        }
        let space = &line[..line.len() - rest.len()];
        Some(
            space
                .chars()
                .map(|sign| if sign == '\t' { 8 } else { 1 })
                .sum(),
        )
    }

    fn is_item(&self, index: usize) -> bool {
        let rest = self.line(index).trim();
        rest == "-" || rest.starts_with("- ")
    }

    fn blank(&mut self, failure: &Failure) -> Blanked {
        let line = self.filled_at_or_before(usize::try_from(failure.line).unwrap_or(1) - 1);
        let follows = self
            .hole
            .as_ref()
            .is_some_and(|hole| self.follows(hole, line));
        let (hole, outcome) = match self.hole.take() {
            Some(hole) if follows && hole.level >= WIDEST => return Blanked::Nothing,
            Some(hole) if follows => (self.widened(hole), Blanked::Wider),
            _ => {
                let bracket = failure
                    .bracket
                    .and_then(|place| usize::try_from(place.line).ok());
                let from = bracket.map_or(line, |at| at.saturating_sub(1).min(line));
                let behind = self.end_of(from, line);
                let hole = Hole {
                    first: from,
                    behind,
                    depth: self.indent(from).unwrap_or(0),
                    level: 0,
                };
                (hole, Blanked::New)
            }
        };
        self.fill(hole.first, hole.behind);
        self.hole = Some(hole);
        outcome
    }

    /// Whether a failure at `line` comes from the hole itself: it stands in it, or in what the hole
    /// has cut off from its beginning.
    fn follows(&self, hole: &Hole, line: usize) -> bool {
        let next = (hole.behind..self.lines()).find(|&at| self.indent(at).is_some());
        let Some(next) = next else { return true };
        let cut_off = self.indent(next) == Some(hole.depth) && !self.is_item(next);
        line < next || (line == next && cut_off)
    }

    fn filled_at_or_before(&self, line: usize) -> usize {
        let last = line.min(self.lines().saturating_sub(1));
        (0..=last)
            .rev()
            .find(|&at| self.indent(at).is_some())
            .unwrap_or(last)
    }

    /// The line behind everything that belongs to `first`: all that is indented deeper, brackets
    /// that close at the same depth, and in any case line `last`.
    fn end_of(&self, first: usize, last: usize) -> usize {
        let depth = self.indent(first).unwrap_or(0);
        let belongs = |at: usize| match self.indent(at) {
            None => true,
            Some(indent) if indent > depth => true,
            Some(indent) => indent == depth && self.line(at).trim_start().starts_with([']', '}']),
        };
        let mut behind = last + 1;
        while behind < self.lines() && belongs(behind) {
            behind += 1;
        }
        behind
    }

    /// The same hole one level wider.
    fn widened(&self, hole: Hole) -> Hole {
        let level = hole.level + 1;
        let first = match level {
            1 => (0..hole.first)
                .rev()
                .find(|&at| self.is_item(at) && self.indent(at).is_some_and(|at| at < hole.depth)),
            2 => (0..hole.first).rev().find(|&at| self.indent(at) == Some(0)),
            _ => None,
        };
        let (first, behind) = match first {
            Some(first) => (first, self.end_of(first, hole.behind - 1)),
            None if level == WIDEST => (hole.first, self.lines()),
            None => (hole.first, hole.behind),
        };
        Hole {
            first: first.min(hole.first),
            behind: behind.max(hole.behind),
            level,
            ..hole
        }
    }

    /// Overwrites lines with spaces, byte for byte, so that every other place stays where it is.
    fn fill(&mut self, first: usize, behind: usize) {
        let start = self.starts[first.min(self.lines())];
        let end = self.starts[behind.min(self.lines())];
        let blank: String = self.source[start..end]
            .bytes()
            .map(|byte| {
                if matches!(byte, b'\n' | b'\r') {
                    char::from(byte)
                } else {
                    ' '
                }
            })
            .collect();
        self.source.replace_range(start..end, &blank);
    }
}
