//! How high the two sides of a card are: the same sums that `cards.typ` makes, in mm.

use super::heights_jackbolts as jackbolts;
use super::{Before, Card, Column, ColumnKind, Entry, Grid, RecordList};

/// Body of a side, from below the running line to above the footer.
pub(super) const SIDE: f64 = 256.0;

/// Identity strip and stop panel with the gap behind it.
const ABOVE: f64 = 27.0 + 30.0 + 3.0;
/// A row of steps: a box for a gloved hand, and a little air.
const STEP: f64 = 10.2;
/// Step of two lines of 11 pt type.
pub(super) const LINE: f64 = 4.7;

/// A count as a factor of lengths.
pub(super) fn count(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::INFINITY, f64::from)
}

/// Width of the boxes of a column.
pub(super) fn column(kind: ColumnKind) -> f64 {
    match kind {
        ColumnKind::Tick => 10.0,
        ColumnKind::Time | ColumnKind::Number => 20.0,
    }
}

/// Width of all columns with the gaps in front of them.
pub(super) fn columns(columns: &[Column]) -> f64 {
    columns.iter().map(|it| column(it.kind) + 2.0).sum()
}

pub(super) use jackbolts::{circle_width, studs_width};

/// Least height of side one.
pub(super) fn side_one(card: &Card) -> f64 {
    if let Some(work) = &card.jackbolts {
        if work.rounds.in_two_columns() {
            return ABOVE
                + jackbolts::two_columns(card, work)
                + cautions(card, Before::Ticks)
                + cautions(card, Before::Steps)
                + order(card);
        }
        return ABOVE
            + cautions(card, Before::Ticks)
            + ticks(card)
            + jackbolts::values(&card.target, work)
            + 2.0
            + cautions(card, Before::Steps)
            + jackbolts::work(work)
            + 1.0
            + order(card);
    }
    let steps =
        6.4 + STEP * count(card.steps.rows.len()) + LINE * count(card.steps.end.len()) + 0.6;
    ABOVE
        + cautions(card, Before::Ticks)
        + ticks(card)
        + target(card)
        + 2.0
        + cautions(card, Before::Steps)
        + steps.max(picture(card))
        + 1.0
        + order(card)
}

/// The least picture in which numbers, letters and words keep clear of one another: a flange of
/// 23 mm radius, more when more letters stand in it.
fn picture(card: &Card) -> f64 {
    let radius = (0.83 * count(card.picture.letters.len())).max(23.0);
    2.0 * radius + 18.6 + 3.8 * count(card.picture.legend.len())
}

fn cautions(card: &Card, before: Before) -> f64 {
    let panels = card.cautions.iter().filter(|it| it.before == before);
    let height: f64 = panels.map(|it| 2.2 + LINE * count(it.lines)).sum();
    if height > 0.0 { height + 3.0 } else { 0.0 }
}

fn ticks(card: &Card) -> f64 {
    match card.ticks.items.len().div_ceil(3) {
        0 => 0.0,
        rows => 6.4 + 10.8 * count(rows) + 2.0,
    }
}

fn target(card: &Card) -> f64 {
    let facts = card
        .target
        .facts
        .iter()
        .enumerate()
        .map(|(index, fact)| match fact.value {
            Entry::Missing(_) => 11.6,
            Entry::Given(_) if index == 0 => 6.0,
            Entry::Given(_) => 5.4,
        });
    let value = if card.target.second.is_some() {
        31.0
    } else {
        23.0
    };
    (3.0 + facts.sum::<f64>()).max(value)
}

fn order(card: &Card) -> f64 {
    let order = &card.order;
    match (order.rows, order.note.is_empty()) {
        (0, true) => 0.0,
        (rows, no_note) => 1.6 + 9.4 * count(rows) + if no_note { 0.0 } else { 5.0 },
    }
}

/// Least height of side two: signatures with 10 mm boxes.
pub(super) fn side_two(card: &Card) -> f64 {
    let record = &card.record;
    let signatures = (record.signatures.len() + usize::from(record.stub.is_some())).div_ceil(2);
    let lists = [&record.tools, &record.materials, &record.as_found].map(list);
    let readings = if record.last_round.rows.is_empty() {
        0.0
    } else {
        21.0
    } + 3.0;
    let right = readings + record.protrusion.as_ref().map_or(0.0, |it| grid(it) + 3.0);
    let left = record.stretch.as_ref().map_or(0.0, grid) + 3.0;
    let middle = match &record.jackbolts {
        Some(it) => jackbolts::record(it),
        None => right.max(left),
    };
    let gap = match record.jackbolts {
        Some(_) => jackbolts::RECORD_GAP,
        None => 3.0,
    };
    17.0 + lists.into_iter().fold(0.0, f64::max)
        + gap
        + record.gaps.as_ref().map_or(0.0, |it| grid(it) + 3.0)
        + middle
        + 27.0
        + 6.0
        + 14.2 * count(signatures)
}

pub(super) fn list(list: &RecordList) -> f64 {
    6.4 + 10.0 * count(list.rows.len())
}

pub(super) fn grid(grid: &Grid) -> f64 {
    let head = if grid.head.note.is_empty() { 6.4 } else { 10.8 };
    head + 10.0 * count(grid.rows.len())
}
