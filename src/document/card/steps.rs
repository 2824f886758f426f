//! The steps under load and the order in which the fasteners come.

use serde::Serialize;

use super::{Head, Value};
use crate::document::width;

/// The table of passes or of release rounds.
#[derive(Clone, Debug, Serialize)]
pub struct Steps {
    /// Title and remark.
    pub head: Head,
    /// The boxes at the right of each row.
    pub columns: Vec<Column>,
    /// One row for each pass or round.
    pub rows: Vec<Step>,
    /// When the last one ends, one or two lines; may be empty.
    pub end: String,
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

/// The order strip.
#[derive(Clone, Debug, Serialize)]
pub struct Order {
    /// The word at the left.
    pub title: String,
    /// Cells of one row, so that the widest fits: see [`Order::new`].
    pub per_row: usize,
    /// The moves.
    pub entries: Vec<OrderEntry>,
    /// Where the full list stands when it is not here; may be empty.
    pub note: String,
}

/// One move.
#[derive(Clone, Debug, Serialize)]
pub struct OrderEntry {
    /// The letter of the move.
    pub letter: String,
    /// The studs of the move: `1·13`, `1–4`.
    pub studs: String,
}

impl Order {
    /// Room for the cells beside the title, in mm.
    const ROOM: f64 = 160.0;

    /// Lays the moves out in as few rows as their widest cell allows, evenly filled.
    pub fn new(
        title: impl Into<String>,
        entries: Vec<OrderEntry>,
        note: impl Into<String>,
    ) -> Self {
        let widest = entries
            .iter()
            .map(|entry| width::of(&entry.studs, 13.0).max(width::of(&entry.letter, 11.0)))
            .fold(0.0, f64::max);
        let fits = (1..=entries.len())
            .rev()
            .find(|count| cells(*count) * (widest + 1.6) <= Self::ROOM);
        let rows = entries.len().div_ceil(fits.unwrap_or(1)).max(1);
        let per_row = entries.len().div_ceil(rows).max(1);
        Self {
            title: title.into(),
            per_row,
            entries,
            note: note.into(),
        }
    }

    /// Rows of cells; a note alone takes one.
    pub fn rows(&self) -> usize {
        self.entries.len().div_ceil(self.per_row.max(1)) + usize::from(!self.note.is_empty())
    }
}

/// A count of cells as a factor of their width.
fn cells(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::INFINITY, f64::from)
}
