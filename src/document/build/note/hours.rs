//! The table of hours: building blocks in minutes, sums in hours.

use crate::calc::labour::{Block, Labour, Line, Span};
use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::methods::Computed;
use crate::units::{Duration, Quantity, digits};
use crate::wording::Values;

use super::super::context::Context;
use super::tables::{CLOSE_ROW, SMALL_ROW};

/// Widths of the columns in mm: the block, then count, low, typical and high of either card; and the
/// height of a row.
pub(super) struct Widths {
    block: f64,
    numbers: [f64; 4],
    row: f64,
}

/// The table alone in its row.
pub(super) const WHOLE_WIDTH: Widths = Widths {
    block: 64.0,
    numbers: [11.0, 15.0, 15.0, 15.0],
    row: CLOSE_ROW,
};
/// The table with the members at its side.
pub(super) const BESIDE_MEMBERS: Widths = Widths {
    block: 49.0,
    numbers: [11.0, 10.5, 12.5, 10.5],
    row: SMALL_ROW,
};

/// Building blocks of both cards, then their sums.
pub(super) fn hours(context: &Context<'_>, computed: &Computed, widths: Widths) -> Table {
    let label = |key: &str| context.label(&format!("note_more.hours.{key}"));
    let mut columns = vec![Column::new(label("block"), widths.block)];
    for _ in 0..2 {
        let heads = ["count", "low", "typical", "high"];
        let heads = heads.into_iter().zip(widths.numbers);
        columns.extend(heads.map(|(key, width)| Column::new(label(key), width).right()));
    }
    let head = Head {
        title: label("title"),
        note: label("note"),
    };
    let mut table = Table {
        row_height: widths.row,
        ..Table::new(head, columns)
    };
    let (tighten, loosen) = (&computed.tighten_labour, &computed.loosen_labour);
    for block in blocks(tighten, loosen) {
        let name = Cell::text(context.label(&format!("note_more.block.{}", block.key())));
        let cells = [tighten, loosen]
            .into_iter()
            .flat_map(|labour| minutes(labour, block));
        table
            .rows
            .push(std::iter::once(name).chain(cells).collect());
    }
    for (key, span) in [
        ("elapsed", elapsed as fn(&Labour) -> Span),
        ("labour", crew),
    ] {
        let sums = [tighten, loosen]
            .into_iter()
            .flat_map(|labour| total(context, span(labour)));
        table.rows.push(
            std::iter::once(Cell::Strong(label(key)))
                .chain(sums)
                .collect(),
        );
    }
    table.notes.extend(by_hand_alone(context, computed));
    table.notes.extend(recheck(context, computed));
    table
}

/// What the same joint takes without its driver, and from when on the driver pays.
fn by_hand_alone(context: &Context<'_>, computed: &Computed) -> Option<String> {
    let (by_hand, pays) = (
        computed.plan.by_hand_labour()?,
        computed.plan.driver_pays()?,
    );
    let values = Values::new()
        .with("by_hand", context.text(by_hand.elapsed.to_print().typical))
        .with("labour", context.text(by_hand.labour.to_print().typical))
        .with(
            "pays_from",
            pays.from.map(|from| from.to_string()).unwrap_or_default(),
        );
    Some(context.say("note_more.hours.by_hand_alone", &values))
}

/// What the later look at the joint takes, where it has one.
fn recheck(context: &Context<'_>, computed: &Computed) -> Option<String> {
    let hours = computed.recheck_labour.as_ref()?;
    let values = Values::new()
        .with("elapsed", context.text(hours.elapsed.to_print().typical))
        .with("labour", context.text(hours.labour.to_print().typical));
    Some(context.say("note_more.hours.recheck", &values))
}

fn elapsed(labour: &Labour) -> Span {
    labour.elapsed
}

fn crew(labour: &Labour) -> Span {
    labour.labour
}

/// The blocks of both cards in the order of the work, each once.
fn blocks(tighten: &Labour, loosen: &Labour) -> Vec<Block> {
    let mut blocks: Vec<Block> = tighten
        .lines
        .iter()
        .chain(&loosen.lines)
        .map(|line| line.block)
        .collect();
    blocks.sort_unstable();
    blocks.dedup();
    blocks
}

fn minutes(labour: &Labour, block: Block) -> [Cell; 4] {
    let whole = |time: Duration| Cell::text(digits((time.si() / 60.0).round()));
    match labour.lines.iter().find(|line| line.block == block) {
        Some(Line { count, time, .. }) => [
            Cell::text(count.to_string()),
            whole(time.low),
            whole(time.typical),
            whole(time.high),
        ],
        None => [(); 4].map(|()| Cell::text("")),
    }
}

fn total(context: &Context<'_>, span: Span) -> [Cell; 4] {
    let span = span.to_print();
    let hours = |time: Duration| Cell::Strong(context.text(time));
    [
        Cell::text(""),
        hours(span.low),
        hours(span.typical),
        hours(span.high),
    ]
}
