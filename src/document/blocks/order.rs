//! The moves in their order.

use serde::Serialize;

use super::check::room_of;
use super::{Checker, Fits};
use crate::document::geometry::{Geometry, Mm};

/// The strip of moves, in as few rows as they fit, evenly filled, in columns.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Order {
    /// The word at the left.
    pub title: String,
    /// The moves.
    pub moves: Vec<OrderEntry>,
    /// Where the full list stands when it is not here; may be empty.
    pub note: String,
    /// Rows of moves; reckoned by the place.
    pub rows: usize,
}

/// One move.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OrderEntry {
    /// The letter of the move.
    pub letter: String,
    /// The studs of the move: `1·13`, `1–4`.
    pub studs: String,
    /// Row, from 0; reckoned by the place.
    pub row: usize,
    /// Its middle from the left end of the strip; reckoned by the place.
    pub x: Mm,
}

impl Order {
    /// From the moves as letter and studs.
    pub fn new(
        title: impl Into<String>,
        moves: Vec<(String, String)>,
        note: impl Into<String>,
    ) -> Self {
        let entry = |(letter, studs)| OrderEntry {
            letter,
            studs,
            ..OrderEntry::default()
        };
        Self {
            title: title.into(),
            moves: moves.into_iter().map(entry).collect(),
            note: note.into(),
            rows: 0,
        }
    }

    /// Width of each column when so many moves stand in a row.
    fn columns(&self, per_row: usize, g: &Geometry) -> Vec<Mm> {
        let mut widths = vec![Mm::ZERO; per_row.min(self.moves.len())];
        for (index, it) in self.moves.iter().enumerate() {
            let widest = room_of(&it.studs, g.sizes.step).max(room_of(&it.letter, g.sizes.text));
            widths[index % per_row] = widest.max(widths[index % per_row]);
        }
        widths
    }

    /// The columns of the fewest rows that fit.
    fn fewest_rows(&self, width: Mm, g: &Geometry) -> Vec<Mm> {
        let room = width - g.order.at;
        let even = |rows: usize| self.columns(self.moves.len().div_ceil(rows).max(1), g);
        let fits = |columns: &Vec<Mm>| {
            let gaps = g.order.least_gap.times(columns.len().saturating_sub(1));
            columns.iter().copied().sum::<Mm>() + gaps <= room
        };
        (1..self.moves.len())
            .map(even)
            .find(fits)
            .unwrap_or_else(|| even(self.moves.len().max(1)))
    }

    fn row_count(&self, width: Mm, g: &Geometry) -> usize {
        self.moves
            .len()
            .div_ceil(self.fewest_rows(width, g).len().max(1))
    }
}

impl Fits for Order {
    fn heights(&self, width: Mm, g: &Geometry) -> [Mm; 2] {
        if self.moves.is_empty() && self.note.is_empty() {
            return [Mm::ZERO; 2];
        }
        let note = if self.note.is_empty() {
            Mm::ZERO
        } else {
            g.order.note
        };
        [g.order.pad + g.order.row.times(self.row_count(width, g)) + note; 2]
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        let room = width - g.order.at;
        check.line(
            "order.title",
            &self.title,
            g.sizes.text,
            g.order.at - Mm::new(1.0),
        );
        check.line("order.note", &self.note, g.sizes.text, room);
        for it in &self.moves {
            check.line("order.studs", &it.studs, g.sizes.step, room);
        }
    }

    fn settle(&mut self, width: Mm, _: Mm, g: &Geometry) {
        let columns = self.fewest_rows(width, g);
        let used = columns.iter().copied().sum::<Mm>();
        let gap = (width - g.order.at - used)
            .over(columns.len().saturating_sub(1))
            .min(g.order.most_gap);
        let mut left = g.order.at;
        let mut middles = Vec::with_capacity(columns.len());
        for column in &columns {
            middles.push(left + column.over(2));
            left += *column + gap;
        }
        let per_row = columns.len().max(1);
        for (index, it) in self.moves.iter_mut().enumerate() {
            it.row = index / per_row;
            it.x = middles[index % per_row];
        }
        self.rows = self.moves.len().div_ceil(per_row);
    }
}
