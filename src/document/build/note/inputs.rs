//! The inputs of a note with their origin: every value that a printed step uses and that no step
//! yields.

use std::collections::BTreeSet;

use crate::calc::{Basis, Entry, Key, Ledger};
use crate::document::blocks::Head;
use crate::document::note::{Input, Inputs, Sign};
use crate::document::width;
use crate::formula::Symbol;
use crate::joint::{Level, Origin};
use crate::methods::Computed;
use crate::wording::Values;

use super::super::context::Context;
use super::notation::{group_of, is_of_a_pass, meaning, printed, symbol_of};

/// What decides whether two symbols share a row: type in pt, room in mm.
struct Room {
    size: f64,
    meaning: f64,
    value: f64,
}

/// One table over the whole width.
const WIDE: Room = Room {
    size: 9.5,
    meaning: 52.0,
    value: 32.0,
};
/// Two rows side by side.
const HALF: Room = Room {
    size: 8.0,
    meaning: 29.0,
    value: 18.0,
};
/// Symbols that may share a row.
const SHARED: usize = 2;

/// A row with what decides whether the next one may join it.
struct Row {
    group: &'static str,
    input: Input,
}

/// How the table is laid out: wide rows that each say their file, or short ones beside each other,
/// whose head says once in which file the lines are counted.
struct Layout<'a> {
    room: Room,
    file: Option<&'a str>,
}

/// The table of inputs. Calibration points stand whole below the table of the passes. The many
/// inputs of studs with jackbolts stand in short rows.
pub(super) fn inputs(context: &Context<'_>, computed: &Computed) -> Inputs {
    let ledger = &computed.ledger;
    let used = used(ledger);
    let is_short = computed.plan.jackbolts().is_some();
    let layout = Layout {
        room: if is_short { HALF } else { WIDE },
        file: first_file(context, ledger).filter(|_| is_short),
    };
    let mut rows: Vec<Row> = Vec::new();
    for entry in ledger.entries().filter(|entry| used.contains(&entry.key)) {
        let Basis::Input(origin) = entry.basis else {
            continue;
        };
        if entry.key.path.starts_with("tighten.calibration") || is_of_a_pass(entry.key) {
            continue;
        }
        let origin = origin_of(context, &entry, origin, layout.file);
        push(
            &mut rows,
            row(context, ledger, &entry, origin),
            &layout.room,
        );
    }
    let label = |key: &str| context.label(&format!("note.inputs.{key}"));
    Inputs {
        head: Head {
            title: label("title"),
            note: match layout.file {
                Some(file) => context.say1("note_more.inputs_of_file", "file", file),
                None => label("note"),
            },
        },
        columns: ["symbol", "meaning", "value", "origin"].map(label),
        groups: grouped(rows),
    }
}

/// The file of the first input that the job gives.
fn first_file<'a>(context: &'a Context<'_>, ledger: &Ledger) -> Option<&'a str> {
    ledger.entries().find_map(|entry| match entry.basis {
        Basis::Input(Origin::Job { place, .. }) => Some(context.file_name(*place)),
        _ => None,
    })
}

/// Every key that a formula takes in, or of which the least is chosen.
fn used(ledger: &Ledger) -> BTreeSet<Key> {
    let mut used = BTreeSet::new();
    for entry in ledger.entries() {
        match entry.basis {
            Basis::Formula(_, keys) | Basis::Chosen(keys) => used.extend(keys.iter().copied()),
            _ => {}
        }
    }
    used
}

fn row(context: &Context<'_>, ledger: &Ledger, entry: &Entry<'_>, origin: String) -> Row {
    let symbol = symbol_of(ledger, entry.key);
    let input = Input {
        symbols: symbol.as_ref().map(sign).into_iter().collect(),
        meaning: meaning(context, entry.key, symbol.as_ref()),
        value: printed(context, entry)
            .map(|printed| printed.joined())
            .unwrap_or_default(),
        origin,
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
fn push(rows: &mut Vec<Row>, row: Row, room: &Room) {
    if let Some(last) = rows.last_mut().filter(|last| may_share(last, &row, room)) {
        last.input.symbols.extend(row.input.symbols);
        last.input.meaning = format!("{}, {}", last.input.meaning, row.input.meaning);
        last.input.value = format!("{}, {}", last.input.value, row.input.value);
    } else {
        rows.push(row);
    }
}

fn may_share(last: &Row, row: &Row, room: &Room) -> bool {
    let fits = |a: &str, b: &str, most: f64| width::of(&format!("{a}, {b}"), room.size) <= most;
    let (a, b) = (&last.input, &row.input);
    last.group == row.group
        && a.origin == b.origin
        && !a.value.is_empty()
        && !b.value.is_empty()
        && (1..SHARED).contains(&a.symbols.len())
        && b.symbols.len() == 1
        && fits(&a.meaning, &b.meaning, room.meaning)
        && fits(&a.value, &b.value, room.value)
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

/// Where a value comes from; in few words where the head names the file.
fn origin_of(
    context: &Context<'_>,
    entry: &Entry<'_>,
    origin: &Origin,
    file: Option<&str>,
) -> String {
    match &entry.value {
        Err(lack) => {
            let values = Values::new()
                .with("who", context.who(lack.who))
                .with("key", lack.key);
            context.say("note.origin.missing", &values)
        }
        Ok(_) => match (origin, file) {
            (Origin::Job { place, .. }, Some(file)) if context.file_name(*place) == file => {
                origin_in_short(context, origin)
            }
            (Origin::Default { key }, Some(_)) => {
                context.say1("note_more.default_short", "key", *key)
            }
            _ => origin_words(context, origin),
        },
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
            let table = context.say1("note.origin.table", "table", &**row);
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
