//! The inputs of a note with their origin: every value that a printed step uses and that no step
//! yields.

use std::collections::BTreeSet;

use crate::calc::{Basis, Entry, Key, Ledger};
use crate::document::card::Head;
use crate::document::note::{Input, Inputs, Sign};
use crate::document::width;
use crate::formula::Symbol;
use crate::joint::{Level, Origin};
use crate::wording::Values;

use super::super::context::Context;
use super::notation::{group_of, is_of_a_pass, meaning, printed, symbol_of};

/// Size of the table in pt, and the room of its columns in mm.
const SIZE: f64 = 9.5;
const MEANING_ROOM: f64 = 52.0;
const VALUE_ROOM: f64 = 32.0;
/// Symbols that may share a row.
const SHARED: usize = 2;

/// A row with what decides whether the next one may join it.
struct Row {
    group: &'static str,
    input: Input,
}

/// The table of inputs. Calibration points stand whole below the table of the passes.
pub(super) fn inputs(context: &Context<'_>, ledger: &Ledger) -> Inputs {
    let used = used(ledger);
    let mut rows: Vec<Row> = Vec::new();
    for entry in ledger
        .entries()
        .iter()
        .filter(|entry| used.contains(&entry.key))
    {
        let Basis::Input(origin) = &entry.basis else {
            continue;
        };
        if entry.key.path.starts_with("tighten.calibration") || is_of_a_pass(entry.key) {
            continue;
        }
        push(&mut rows, row(context, ledger, entry, origin));
    }
    let label = |key: &str| context.label(&format!("note.inputs.{key}"));
    Inputs {
        head: Head {
            title: label("title"),
            note: label("note"),
        },
        columns: ["symbol", "meaning", "value", "origin"].map(label),
        groups: grouped(rows),
    }
}

/// Every key that a formula takes in, or of which the least is chosen.
fn used(ledger: &Ledger) -> BTreeSet<Key> {
    let mut used = BTreeSet::new();
    for entry in ledger.entries() {
        match &entry.basis {
            Basis::Formula(_, keys) | Basis::Chosen(keys) => used.extend(keys.iter().copied()),
            _ => {}
        }
    }
    used
}

fn row(context: &Context<'_>, ledger: &Ledger, entry: &Entry, origin: &Origin) -> Row {
    let symbol = symbol_of(ledger, entry.key);
    let input = Input {
        symbols: symbol.as_ref().map(sign).into_iter().collect(),
        meaning: meaning(context, entry.key, symbol.as_ref()),
        value: printed(context, entry)
            .map(|printed| printed.joined())
            .unwrap_or_default(),
        origin: origin_of(context, entry, origin),
    };
    Row {
        group: group_of(entry.key),
        input,
    }
}

fn sign(symbol: &Symbol) -> Sign {
    let (base, index) = symbol.split();
    Sign {
        base: base.to_owned(),
        index: index.to_owned(),
    }
}

/// Adds a row, or joins it to the last one where both come from the same place and have the room.
fn push(rows: &mut Vec<Row>, row: Row) {
    if let Some(last) = rows.last_mut().filter(|last| may_share(last, &row)) {
        last.input.symbols.extend(row.input.symbols);
        last.input.meaning = format!("{}, {}", last.input.meaning, row.input.meaning);
        last.input.value = format!("{}, {}", last.input.value, row.input.value);
    } else {
        rows.push(row);
    }
}

fn may_share(last: &Row, row: &Row) -> bool {
    let fits = |a: &str, b: &str, room: f64| width::of(&format!("{a}, {b}"), SIZE) <= room;
    let (a, b) = (&last.input, &row.input);
    last.group == row.group
        && a.origin == b.origin
        && !a.value.is_empty()
        && !b.value.is_empty()
        && (1..SHARED).contains(&a.symbols.len())
        && b.symbols.len() == 1
        && fits(&a.meaning, &b.meaning, MEANING_ROOM)
        && fits(&a.value, &b.value, VALUE_ROOM)
}

fn grouped(rows: Vec<Row>) -> Vec<Vec<Input>> {
    let mut groups: Vec<(&str, Vec<Input>)> = Vec::new();
    for row in rows {
        match groups.last_mut() {
            Some((last, list)) if *last == row.group => list.push(row.input),
            _ => groups.push((row.group, vec![row.input])),
        }
    }
    groups.into_iter().map(|(_, inputs)| inputs).collect()
}

fn origin_of(context: &Context<'_>, entry: &Entry, origin: &Origin) -> String {
    match &entry.value {
        Err(lack) => {
            let values = Values::new()
                .with("who", context.who(lack.who))
                .with("key", lack.key);
            context.say("note.origin.missing", &values)
        }
        Ok(_) => origin_words(context, origin),
    }
}

/// Where a known value comes from.
pub(super) fn origin_words(context: &Context<'_>, origin: &Origin) -> String {
    match origin {
        Origin::Job { place, level } => {
            let values = Values::new()
                .with("level", level_words(context, *level))
                .with("file", context.file_name(*place))
                .with("line", place.line.to_string());
            context.say("note.origin.job_level", &values)
        }
        Origin::Table { row, confirmed } => {
            let table = context.say1("note.origin.table", "table", row.as_str());
            if *confirmed {
                table
            } else {
                format!("{table}; {}", context.label("source.not_confirmed"))
            }
        }
        Origin::Default { key } => context.say1("note.origin.default", "key", *key),
        Origin::Computed => context.label("note_more.fixed"),
    }
}

/// The same in few words, for a narrow column.
pub(super) fn origin_in_short(context: &Context<'_>, origin: &Origin) -> String {
    match origin {
        Origin::Job { place, level } => {
            let values = Values::new()
                .with("level", level_words(context, *level))
                .with("line", place.line.to_string());
            context.say("note_more.origin_short", &values)
        }
        Origin::Default { .. } => context.label("note.limits.default_limit"),
        other => origin_words(context, other),
    }
}

fn level_words(context: &Context<'_>, level: Level) -> String {
    context.label(match level {
        Level::Joint => "note.origin.level_joint",
        Level::Family => "note.origin.level_family",
        Level::Shared => "note.origin.level_pack",
    })
}
