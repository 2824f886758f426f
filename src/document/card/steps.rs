//! The steps under load and the order in which the fasteners come.

use serde::Serialize;

use super::{Head, Value};
use crate::document::width;

/// The table of passes or of release rounds.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Steps {
    /// Title and remark.
    pub head: Head,
    /// The boxes at the right of each row.
    pub columns: Vec<Column>,
    /// One row for each pass or round.
    pub rows: Vec<Step>,
    /// When the last one ends, at most two lines.
    pub end: Vec<String>,
}

/// A column of boxes.
#[derive(Clone, Debug, Serialize)]
pub struct Column {
    /// The word above.
    pub head: String,
    /// The kind of box.
    pub kind: ColumnKind,
}

/// How wide the boxes of a column are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum ColumnKind {
    /// 10 x 10 mm.
    Tick,
    /// 20 x 10 mm.
    Time,
    /// 20 x 10 mm.
    Number,
}

/// One pass or round.
#[derive(Clone, Debug, Serialize)]
pub struct Step {
    /// `P1`, `R1`.
    pub name: String,
    /// The turn in degrees that a dial shows; anticlockwise when negative.
    pub dial: Option<f64>,
    /// What to set, or a word.
    pub value: Value,
    /// Order and readings.
    pub line: String,
    /// For each column, whether this row has its box.
    pub boxes: Vec<bool>,
}

/// The order strip, laid out: see [`Order::new`].
#[derive(Clone, Debug, Default, Serialize)]
pub struct Order {
    /// The word at the left.
    pub title: String,
    /// Rows of moves.
    pub rows: usize,
    /// The moves.
    pub entries: Vec<OrderEntry>,
    /// Where the full list stands when it is not here; may be empty.
    pub note: String,
}

/// One move in its place.
#[derive(Clone, Debug, Serialize)]
pub struct OrderEntry {
    /// The letter of the move.
    pub letter: String,
    /// The studs of the move: `1·13`, `1–4`.
    pub studs: String,
    /// Row, from 0.
    pub row: usize,
    /// Its middle in mm from the left end of the strip.
    pub x: f64,
}

impl Order {
    /// Room for the moves beside the title, in mm.
    const ROOM: f64 = 160.0;
    /// Least and greatest distance of two moves, in mm.
    const GAP: [f64; 2] = [2.0, 8.0];

    /// Lays the moves (letter, studs) out in as few rows as they fit, evenly filled, in columns.
    pub fn new(
        title: impl Into<String>,
        moves: &[(String, String)],
        note: impl Into<String>,
    ) -> Self {
        let [least, greatest] = Self::GAP;
        let even = |rows: usize| moves.len().div_ceil(rows).max(1);
        let fits = |columns: &[f64]| total(columns) + least * gaps(columns) <= Self::ROOM;
        let rows = (1..moves.len())
            .find(|rows| fits(&columns(moves, even(*rows))))
            .unwrap_or(1);
        let columns = columns(moves, even(rows));
        let gap = ((Self::ROOM - total(&columns)) / gaps(&columns).max(1.0)).min(greatest);
        let middles = middles(&columns, gap);
        let per_row = columns.len().max(1);
        let place = |(index, (letter, studs)): (usize, &(String, String))| OrderEntry {
            letter: letter.clone(),
            studs: studs.clone(),
            row: index / per_row,
            x: middles[index % per_row],
        };
        Self {
            title: title.into(),
            rows: moves.len().div_ceil(per_row),
            entries: moves.iter().enumerate().map(place).collect(),
            note: note.into(),
        }
    }
}

/// Width of each column when so many moves stand in a row, in mm.
fn columns(moves: &[(String, String)], per_row: usize) -> Vec<f64> {
    let mut widths = vec![0.0; per_row.min(moves.len())];
    for (index, (letter, studs)) in moves.iter().enumerate() {
        let widest: f64 = width::of(studs, 13.0).max(width::of(letter, 11.0));
        widths[index % per_row] = widest.max(widths[index % per_row]);
    }
    widths
}

fn total(columns: &[f64]) -> f64 {
    columns.iter().sum()
}

/// Number of gaps between columns.
fn gaps(columns: &[f64]) -> f64 {
    (super::heights::count(columns.len()) - 1.0).max(0.0)
}

/// The middle of each column; a hundredth of a millimetre is finer than any printer.
fn middles(columns: &[f64], gap: f64) -> Vec<f64> {
    let mut left = 0.0;
    let mut middles = Vec::with_capacity(columns.len());
    for width in columns {
        middles.push(((left + width / 2.0) * 100.0).round() / 100.0);
        left += width + gap;
    }
    middles
}
