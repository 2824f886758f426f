//! How high the parts of a card for jackbolts are: the same sums that `jackbolts.typ` and `record.typ`
//! make, in mm.

use super::heights::{LINE, count, grid, list};
use super::{
    Cells, Circle, Entry, Fact, JackboltRecord, Jackbolts, Round, Rounds, StudRing, Target,
};

/// Height of a round that is turned, and of one that is only expected.
const ROUND: f64 = 10.2;
const FURTHER: f64 = 5.4;
/// The rule that ends the rounds, with a gap before it.
const STOP: f64 = 21.0 + 2.0;
/// A value beside the one number.
const SIDE_VALUE: f64 = 17.4;

/// Values above the ticks' width: the one number, others, facts.
pub(super) fn values(target: &Target, work: &Jackbolts) -> f64 {
    let facts: f64 = target.facts.iter().map(fact).sum();
    one_number(target)
        .max(SIDE_VALUE * count(work.values.len()))
        .max(3.4 + facts)
}

fn one_number(target: &Target) -> f64 {
    if target.second.is_some() { 31.0 } else { 23.0 }
}

fn fact(fact: &Fact) -> f64 {
    match fact.value {
        Entry::Missing(_) => 11.0,
        Entry::Given(_) => 5.2,
    }
}

/// Rounds and their end beside the circle with what belongs to it.
pub(super) fn work(work: &Jackbolts) -> f64 {
    let left = rounds(&work.rounds) + if work.stop.is_some() { STOP } else { 0.0 };
    left.max(circle_column(work))
}

/// Values and ticks beside the circle, rounds in two columns below, without cautions and order.
pub(super) fn two_columns(card: &super::Card, work: &Jackbolts) -> f64 {
    let rows = work.rounds.rows.len().div_ceil(2);
    let table = head(&work.rounds) + ROUND * count(rows) + end(&work.rounds);
    let beside = one_number(&card.target)
        .max(SIDE_VALUE * count(work.values.len()) + LINE * count(card.target.facts.len()) + 1.0);
    let ticks = match card.ticks.items.len().div_ceil(2) {
        0 => 0.0,
        rows => 2.0 + 6.4 + 10.8 * count(rows),
    };
    (beside + ticks).max(circle_column(work)) + 2.0 + table
}

fn head(rounds: &Rounds) -> f64 {
    if rounds.expected.iter().any(|it| !it.under.is_empty()) {
        9.2
    } else {
        6.4
    }
}

fn end(rounds: &Rounds) -> f64 {
    LINE * count(rounds.end.len()) + 0.6
}

fn rounds(rounds: &Rounds) -> f64 {
    head(rounds) + rounds.rows.iter().map(row).sum::<f64>() + end(rounds)
}

fn row(row: &Round) -> f64 {
    if row.value.is_some() { ROUND } else { FURTHER }
}

fn circle_column(work: &Jackbolts) -> f64 {
    6.4 + least_circle(&work.circle)
        + 3.8 * count(work.circle.legend.len())
        + 10.6 * count(work.measured.len())
        + work.studs.as_ref().map_or(0.0, studs)
        + work
            .key
            .as_ref()
            .map_or(0.0, |key| (LINE * count(key.words.len()) + 2.0).max(19.0))
}

/// The radius below which the numbers of a circle run into one another.
fn least_edge(circle: &Circle) -> f64 {
    (0.86 * count(circle.jackbolts.len()) - 4.4).max(16.0)
}

/// The least circle with the white around it.
fn least_circle(circle: &Circle) -> f64 {
    let has_marks = !circle.positions.is_empty() || circle.reaction.is_some();
    let outside = match circle.jackbolts.len() {
        _ if has_marks => 23.8,
        25.. => 14.2,
        _ => 16.4,
    };
    2.0 * least_edge(circle) + outside
}

/// The width that the least circle takes with the marks of the driver at its sides.
pub(super) fn circle_width(circle: &Circle) -> f64 {
    // A side that is leaned on reaches furthest at an end or where it crosses a side of the picture.
    let reaction = circle.reaction.iter().flat_map(|it| {
        let across = [90.0, 270.0, 450.0, 630.0].map(|side: f64| side.clamp(it.from, it.to));
        across.into_iter().chain([it.from, it.to])
    });
    let marks = circle.positions.iter().map(|mark| mark.angle);
    let edge = least_edge(circle);
    marks
        .chain(reaction)
        .map(|angle| 2.0 * (edge + 14.4) * libm::sin(angle.to_radians()).abs())
        .fold(2.0 * (edge + 7.0), f64::max)
}

/// Width and height of the small ring of studs: numbers in circles up to eight, outside dots above.
pub(super) fn studs_width(studs: usize) -> f64 {
    match studs {
        0 => 0.0,
        1..=8 => 2.0 * (count(studs) * 1.25).max(7.0) + 7.0,
        _ => 2.0 * (count(studs) * 0.92).max(11.0) + 5.6,
    }
}

fn studs(ring: &StudRing) -> f64 {
    studs_width(ring.studs.len()).max(LINE * count(ring.words.len())) + 2.0
}

/// Least gap behind a part of the record.
pub(super) const RECORD_GAP: f64 = 2.0;

/// Rounds, studs, measured beside checks, ticks: each with the least gap behind it.
pub(super) fn record(record: &JackboltRecord) -> f64 {
    let tally = if record.tally.is_some() { 11.0 } else { 0.0 };
    let rounds = record
        .rounds
        .as_ref()
        .map_or(0.0, |it| grid(it) + tally + RECORD_GAP);
    let studs = record
        .studs
        .as_ref()
        .map_or(0.0, |it| cells(it) + RECORD_GAP);
    let checks = if record.checks.rows.is_empty() {
        0.0
    } else {
        list(&record.checks)
    };
    let side = record.measured.as_ref().map_or(0.0, grid).max(checks);
    let side = if side > 0.0 { side + RECORD_GAP } else { 0.0 };
    let blocks = [&record.before_driver, &record.ticks].into_iter().flatten();
    let ticks: f64 = blocks
        .map(|it| 5.6 + RECORD_GAP + 10.8 * count(it.items.len().div_ceil(3)))
        .sum();
    rounds + studs + side + ticks
}

fn cells(cells: &Cells) -> f64 {
    6.4 + count(cells.bands()) * (4.6 + 10.0 * count(cells.rows.len()))
}
