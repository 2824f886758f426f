//! The tables behind the limits: passes, members, hours, long orders.

use crate::calc::labour::{Block, Labour, Line, Span};
use crate::calc::{Basis, Computed, Group, Id, Key, Ledger, PassKind, ids};
use crate::document::card::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::joint::{Joint, Tool, Who};
use crate::units::{Duration, Pressure, Quantity, Torque, digits};
use crate::wording::Values;

use super::super::context::Context;
use super::inputs::origin_words;
use super::steps::source;

/// Fasteners up to which the picture of a card numbers every one.
const NUMBERED: f64 = 32.0;
/// Height of a row that nobody writes in and that few read, in mm.
const CLOSE_ROW: f64 = 4.4;
/// Moves in a row of a long order.
const MOVES: usize = 8;

/// All tables of a group.
pub(super) fn tables(context: &Context<'_>, joint: &Joint, group: &Group) -> Vec<Table> {
    let mut tables =
        vec![passes(context, &group.computed), members(context, group), hours(context, &group.computed)];
    let fasteners = joint.mechanics.studs.count.value().map_or(0.0, Quantity::si);
    if fasteners > NUMBERED {
        tables.push(order(context, group));
    }
    tables.retain(|table| !table.rows.is_empty());
    tables
}

fn columns(context: &Context<'_>, group: &str, columns: &[(&str, f64)]) -> Vec<Column> {
    let column = |&(key, width): &(&str, f64)| {
        Column::new(context.label(&format!("note_more.{group}.{key}")), width).right()
    };
    columns.iter().map(column).collect()
}

/// What is set in each stepped pass, and how it was found.
fn passes(context: &Context<'_>, computed: &Computed) -> Table {
    let ledger = &computed.ledger;
    let by_pressure = ledger.entry(ids::SET_PRESSURE.key()).is_some();
    let columns = if by_pressure {
        let all = [
            ("pass", 10.0), ("share", 16.0), ("wanted", 24.0), ("between", 34.0),
            ("pressure", 24.0), ("set", 20.0), ("torque", 24.0), ("load", 24.0),
        ];
        columns(context, "pass", &all)
    } else {
        columns(context, "pass", &[("pass", 10.0), ("share", 30.0), ("wanted", 46.0), ("set", 45.0), ("load", 45.0)])
    };
    let title = context.label("note_more.pass.title");
    let head = Head { title, note: context.label("note_more.pass.note") };
    let mut table = Table { row_height: CLOSE_ROW, ..Table::new(head, columns) };
    let stepped = computed.passes.iter().filter(|pass| pass.kind == PassKind::Stepped);
    let row = |number| pass_row(context, ledger, number, by_pressure);
    table.rows = stepped.map(|pass| row(pass.number)).collect();
    table.notes = pass_notes(context, ledger);
    table.notes.extend(calibrations(context, computed));
    table
}

fn pass_row(context: &Context<'_>, ledger: &Ledger, number: u16, by_pressure: bool) -> Vec<Cell> {
    let value = |key: Key| cell(context, ledger, key);
    let share = ledger.get(ids::PASS_SHARE.at(number)).map(|share| digits(share.si()));
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
            let who = entry.value.as_ref().err().map_or(Who::Engineer, |lack| lack.who);
            Cell::Box(context.say1("missing.short", "who", context.who(who)))
        }
        (None, None) => Cell::text(""),
    }
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
        .filter_map(|key| match &ledger.entry(key)?.basis {
            Basis::Formula(formula, _) => {
                let source = source(context, formula);
                Some(format!("{} = {} [{source}]", formula.symbol.plain(), formula.text()))
            }
            _ => None,
        })
        .collect();
    let shares = match ledger.entry(ids::PASS_SHARE.at(1).key()).map(|entry| &entry.basis) {
        Some(Basis::Input(origin)) => {
            Some(context.say1("note_more.pass.shares", "origin", origin_words(context, origin)))
        }
        _ => None,
    };
    let formulas = (!formulas.is_empty()).then(|| format!("{}.", formulas.join("; ")));
    formulas.into_iter().chain(shares).collect()
}

/// All calibration points of each wrench, with its certificate.
fn calibrations(context: &Context<'_>, computed: &Computed) -> Vec<String> {
    let tools = computed.chosen.turning.iter().filter(|tool| !tool.points.is_empty());
    let line = |tool: &Tool| {
        let point = |(pressure, torque): &(Pressure, Torque)| {
            format!("{} {}", context.text(*pressure), context.text(*torque))
        };
        let points: Vec<String> = tool.points.iter().map(point).collect();
        let certificate = Values::new()
            .with("certificate", tool.certificate.get().map_or("?", String::as_str))
            .with("date", tool.due.value().map_or_else(|| "?".to_owned(), |due| due.to_string()));
        let values = Values::new()
            .with("tool", tool.name.as_str())
            .with("origin", context.say("note_more.certificate_short", &certificate))
            .with("list", points.join("; "));
        context.say("note_more.calibration", &values)
    };
    tools.map(|tool| line(tool)).collect()
}

/// Tag and place of every joint of the group, two joints a row.
fn members(context: &Context<'_>, group: &Group) -> Table {
    let label = |key: &str| context.label(&format!("register.{key}"));
    let head = Head { title: context.label("note.tables.members"), note: String::new() };
    let pair = || [Column::new(label("tag"), 34.0).strong(), Column::new(label("place"), 54.0)];
    let columns = [pair(), pair()].into_iter().flatten().collect();
    let mut table = Table { row_height: CLOSE_ROW, ..Table::new(head, columns) };
    let joints: Vec<&Joint> =
        group.members.iter().filter_map(|&index| context.joints.get(index)).collect();
    let cells = |joint: Option<&&Joint>| {
        let tag = joint.map(|joint| joint.tag.clone()).unwrap_or_default();
        let place = joint.and_then(|joint| joint.identity.location.get()).cloned();
        [Cell::text(tag), Cell::text(place.unwrap_or_default())]
    };
    table.rows = joints
        .chunks(2)
        .map(|pair| [cells(pair.first()), cells(pair.get(1))].into_iter().flatten().collect())
        .collect();
    table
}

/// Building blocks of both cards, then their sums.
fn hours(context: &Context<'_>, computed: &Computed) -> Table {
    let label = |key: &str| context.label(&format!("note_more.hours.{key}"));
    let mut columns = vec![Column::new(label("block"), 64.0)];
    for _ in 0..2 {
        let heads = [("count", 11.0), ("low", 15.0), ("typical", 15.0), ("high", 15.0)];
        columns.extend(heads.map(|(key, width)| Column::new(label(key), width).right()));
    }
    let head = Head { title: label("title"), note: label("note") };
    let mut table = Table { row_height: CLOSE_ROW, ..Table::new(head, columns) };
    let (tighten, loosen) = (&computed.tighten_labour, &computed.loosen_labour);
    for block in blocks(tighten, loosen) {
        let name = Cell::text(context.label(&format!("note_more.block.{}", key_of(block))));
        let cells = [tighten, loosen].into_iter().flat_map(|labour| minutes(labour, block));
        table.rows.push(std::iter::once(name).chain(cells).collect());
    }
    for (key, span) in [("elapsed", elapsed as fn(&Labour) -> Span), ("labour", crew)] {
        let sums = [tighten, loosen].into_iter().flat_map(|labour| total(context, span(labour)));
        table.rows.push(std::iter::once(Cell::Strong(label(key))).chain(sums).collect());
    }
    table
}

fn elapsed(labour: &Labour) -> Span {
    labour.elapsed
}

fn crew(labour: &Labour) -> Span {
    labour.labour
}

/// The blocks of both cards in the order of the work, each once.
fn blocks(tighten: &Labour, loosen: &Labour) -> Vec<Block> {
    let mut blocks: Vec<Block> = tighten.lines.iter().chain(&loosen.lines).map(|line| line.block).collect();
    blocks.sort_unstable();
    blocks.dedup();
    blocks
}

fn minutes(labour: &Labour, block: Block) -> [Cell; 4] {
    let whole = |time: Duration| Cell::text(digits((time.si() / 60.0).round()));
    match labour.lines.iter().find(|line| line.block == block) {
        Some(Line { count, time, .. }) => {
            [Cell::text(count.to_string()), whole(time.low), whole(time.typical), whole(time.high)]
        }
        None => [(); 4].map(|()| Cell::text("")),
    }
}

fn total(context: &Context<'_>, span: Span) -> [Cell; 4] {
    let span = span.to_print();
    let hours = |time: Duration| Cell::Strong(context.text(time));
    [Cell::text(""), hours(span.low), hours(span.typical), hours(span.high)]
}

const fn key_of(block: Block) -> &'static str {
    match block {
        Block::PermitAndBrief => "permit",
        Block::SetUpPump => "pump",
        Block::CleanFaces => "faces",
        Block::LubricateStud => "lubricate",
        Block::GasketIn => "gasket",
        Block::Snug => "snug",
        Block::TorqueByHand => "by_hand",
        Block::TorqueByMultiplier => "by_multiplier",
        Block::TorqueByHydraulicWrench => "by_hydraulic",
        Block::CheckRound => "check",
        Block::LoosenByHand => "loosen_by_hand",
        Block::LoosenByHydraulicWrench => "loosen_by_hydraulic",
        Block::Gaps => "gaps",
        Block::Stretch => "stretch",
        Block::Hold => "hold",
        Block::Record => "record",
        Block::ClearArea => "clear",
    }
}

/// The whole order, eight moves a row; above 32 fasteners the picture numbers groups only.
fn order(context: &Context<'_>, group: &Group) -> Table {
    let head = Head { title: context.label("note.tables.order"), note: String::new() };
    let mut table = Table::new(head, (0..MOVES).map(|_| Column::new("", 22.0)).collect());
    let Some(order) = &group.computed.order else { return table };
    let moves: Vec<String> = order
        .lettered()
        .map(|(letter, studs)| {
            let studs: Vec<String> = studs.iter().map(ToString::to_string).collect();
            format!("{letter}  {}", studs.join("·"))
        })
        .collect();
    table.rows = moves
        .chunks(MOVES)
        .map(|row| {
            let empty = std::iter::repeat_with(String::new);
            row.iter().cloned().chain(empty).take(MOVES).map(Cell::text).collect()
        })
        .collect();
    table
}
