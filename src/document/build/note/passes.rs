//! The table of the stepped passes: what is set in each, and how it was found.

use crate::calc::{Basis, Id, Key, Ledger, PassKind, ids};
use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::joint::{Tool, Who};
use crate::methods::Computed;
use crate::units::{Pressure, Quantity, Torque, digits};
use crate::wording::Values;

use super::super::context::Context;
use super::inputs::origin_words;
use super::tables::CLOSE_ROW;

/// What is set in each stepped pass, and how it was found.
pub(super) fn passes(context: &Context<'_>, computed: &Computed) -> Table {
    let ledger = &computed.ledger;
    let by_pressure = ledger.entry(ids::SET_PRESSURE.key()).is_some();
    let columns = if by_pressure {
        let all = [
            ("pass", 10.0),
            ("share", 16.0),
            ("wanted", 24.0),
            ("between", 34.0),
            ("pressure", 24.0),
            ("set", 20.0),
            ("torque", 24.0),
            ("load", 24.0),
        ];
        columns(context, "pass", &all)
    } else {
        columns(
            context,
            "pass",
            &[
                ("pass", 10.0),
                ("share", 30.0),
                ("wanted", 46.0),
                ("set", 45.0),
                ("load", 45.0),
            ],
        )
    };
    let title = context.label("note_more.pass.title");
    let head = Head {
        title,
        note: context.label("note_more.pass.note"),
    };
    let mut table = Table {
        row_height: CLOSE_ROW,
        ..Table::new(head, columns)
    };
    let stepped = computed
        .passes
        .iter()
        .filter(|pass| pass.kind == PassKind::Stepped);
    let row = |number| pass_row(context, ledger, number, by_pressure);
    table.rows = stepped.map(|pass| row(pass.number)).collect();
    table.notes = pass_notes(context, ledger);
    table.notes.extend(calibrations(context, computed));
    table
}

fn pass_row(context: &Context<'_>, ledger: &Ledger, number: u16, by_pressure: bool) -> Vec<Cell> {
    let value = |key: Key| cell(context, ledger, key);
    let share = ledger
        .get(ids::PASS_SHARE.at(number))
        .map(|share| digits(share.si()));
    let mut row = vec![
        Cell::Strong(format!("P{number}")),
        Cell::text(share.unwrap_or_default()),
        value(ids::PASS_TORQUE_EXACT.at(number).key()),
    ];
    if by_pressure {
        let exact = ids::PASS_PRESSURE_EXACT.at(number).key();
        row.push(Cell::text(between(context, ledger, number)));
        row.push(value(exact));
        row.push(value(ids::PASS_PRESSURE.at(number).key()));
    }
    row.push(value(ids::PASS_TORQUE.at(number).key()));
    row.push(value(ids::PASS_LOAD.at(number).key()));
    row
}

/// The two calibration points that a pass lies between.
fn between(context: &Context<'_>, ledger: &Ledger, number: u16) -> String {
    let point = |id: Id<Pressure>| context.of(ledger, id.at(number));
    match (point(ids::LOW_PRESSURE), point(ids::HIGH_PRESSURE)) {
        (Some(low), Some(high)) => {
            let values = Values::new().with("low", low).with("high", high);
            context.say("note_more.pass.points", &values)
        }
        _ => String::new(),
    }
}

/// A value, nothing where the pass has none of that kind, or a box where something is missing.
fn cell(context: &Context<'_>, ledger: &Ledger, key: Key) -> Cell {
    match (ledger.entry(key), context.of_key(ledger, key)) {
        (_, Some(printed)) => Cell::text(printed.joined()),
        (Some(entry), None) => {
            let who = entry.value.err().map_or(Who::Engineer, |lack| lack.who);
            Cell::Box(context.say1("missing.short", "who", context.who(who)))
        }
        (None, None) => Cell::text(""),
    }
}

/// A formula in one line, for rows that all use the same.
pub(super) fn formula_in_words(context: &Context<'_>, ledger: &Ledger, key: Key) -> Option<String> {
    let Basis::Formula(formula, _) = ledger.entry(key)?.basis else {
        return None;
    };
    let source = context.wording.source(formula.source, formula.confirmed);
    let (symbol, text) = (formula.symbol.plain(), formula.text());
    Some(format!("{symbol} = {text} [{source}]"))
}

/// The formulas of the passes, once, and where the shares come from.
fn pass_notes(context: &Context<'_>, ledger: &Ledger) -> Vec<String> {
    let keys = [
        ids::PASS_TORQUE_EXACT.at(1).key(),
        ids::PASS_PRESSURE_EXACT.at(1).key(),
        ids::PASS_TORQUE.at(1).key(),
        ids::PASS_LOAD.at(1).key(),
    ];
    let formulas: Vec<String> = keys
        .into_iter()
        .filter_map(|key| formula_in_words(context, ledger, key))
        .collect();
    let shares = match ledger
        .entry(ids::PASS_SHARE.at(1).key())
        .map(|entry| entry.basis)
    {
        Some(Basis::Input(origin)) => Some(context.say1(
            "note_more.pass.shares",
            "origin",
            origin_words(context, origin),
        )),
        _ => None,
    };
    let formulas = (!formulas.is_empty()).then(|| format!("{}.", formulas.join("; ")));
    formulas.into_iter().chain(shares).collect()
}

/// All calibration points of each wrench, with its certificate.
fn calibrations(context: &Context<'_>, computed: &Computed) -> Vec<String> {
    let tools = computed
        .chosen
        .turning
        .iter()
        .filter(|tool| !tool.points.is_empty());
    let line = |tool: &Tool| {
        let point = |(pressure, torque): &(Pressure, Torque)| {
            format!("{} {}", context.text(*pressure), context.text(*torque))
        };
        let points: Vec<String> = tool.points.iter().map(point).collect();
        let values = Values::new()
            .with("tool", tool.name.as_str())
            .with("origin", certificate(context, tool))
            .with("list", points.join("; "));
        context.say("note_more.calibration", &values)
    };
    tools.map(|tool| line(tool)).collect()
}

fn columns(context: &Context<'_>, group: &str, columns: &[(&str, f64)]) -> Vec<Column> {
    let column = |&(key, width): &(&str, f64)| {
        Column::new(context.label(&format!("note_more.{group}.{key}")), width).right()
    };
    columns.iter().map(column).collect()
}

/// The certificate of a tool and the day on which it falls due.
pub(super) fn certificate(context: &Context<'_>, tool: &Tool) -> String {
    let due = tool.due.value();
    let values = Values::new()
        .with(
            "certificate",
            tool.certificate.get().map_or("?", String::as_str),
        )
        .with(
            "date",
            due.map_or_else(|| "?".to_owned(), |due| due.to_string()),
        );
    context.say("note_more.certificate_short", &values)
}
