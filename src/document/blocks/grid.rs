//! Tables of boxes.

use serde::Serialize;

use super::check::room_of;
use super::{Block, Checker, Fits, Head, Line};
use crate::document::geometry::{Geometry, Mm};

/// A table of boxes, names at the left. Where there are more columns than the width holds, they stand in bands under
/// one another, each with all rows.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Grid {
    /// Title and remark.
    pub head: Head,
    /// Heads of the columns.
    pub columns: Vec<String>,
    /// Rows, each with the number of its first box.
    pub rows: Vec<Line>,
    /// What is written into a box.
    pub cell: Cell,
    /// Width of the names; reckoned by the place.
    pub names: Mm,
    /// Width of a box; reckoned by the place.
    pub cell_width: Mm,
    /// Columns in a band; reckoned by the place.
    pub per_band: usize,
    /// Where the boxes of the first band begin, and of each next one below it; reckoned by the place.
    pub top: Mm,
}

/// What is written into a box.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Cell {
    /// A stroke.
    Tick,
    /// A number.
    #[default]
    Number,
}

impl Grid {
    /// From its texts; the place is reckoned later.
    pub fn new(head: Head, columns: Vec<String>, rows: Vec<Line>, cell: Cell) -> Self {
        Self {
            head,
            columns,
            rows,
            cell,
            ..Self::default()
        }
    }

    fn names(&self, g: &Geometry) -> Mm {
        let widest = self
            .rows
            .iter()
            .map(|it| it.needs(g))
            .max()
            .unwrap_or_default();
        g.grid.names.max(widest + g.grid.gap)
    }

    /// The least width of a box: for what is written into it, and for the word above it.
    fn least_cell(&self, g: &Geometry) -> Mm {
        let cell = match self.cell {
            Cell::Tick => g.grid.tick,
            Cell::Number => g.grid.number,
        };
        let heads = self
            .columns
            .iter()
            .map(|it| room_of(it, g.sizes.text) + Mm::new(1.0));
        heads.max().unwrap_or_default().max(cell)
    }

    fn per_band(&self, width: Mm, g: &Geometry) -> usize {
        let most = (width - self.names(g)).holds(self.least_cell(g)).max(1);
        // Bands as even as they come.
        let bands = self.columns.len().div_ceil(most).max(1);
        self.columns.len().div_ceil(bands).max(1)
    }

    fn bands(&self, width: Mm, g: &Geometry) -> usize {
        self.columns.len().div_ceil(self.per_band(width, g))
    }

    /// Title alone where the heads of the columns can stand in its line.
    fn top(&self, g: &Geometry) -> Mm {
        if self.head.note.is_empty() && room_of(&self.head.title, g.sizes.text) <= self.names(g) {
            g.head.height
        } else {
            g.head.two_lines
        }
    }

    fn rows_height(&self, g: &Geometry) -> Mm {
        g.grid.row.times(self.rows.len())
    }
}

impl Fits for Grid {
    fn heights(&self, width: Mm, g: &Geometry) -> [Mm; 2] {
        if self.rows.is_empty() || self.columns.is_empty() {
            return [Mm::ZERO; 2];
        }
        let bands = self.bands(width, g);
        let further = g.grid.band.times(bands.saturating_sub(1));
        [self.top(g) + self.rows_height(g).times(bands) + further; 2]
    }

    fn needs(&self, g: &Geometry) -> Mm {
        let head = room_of(&self.head.title, g.sizes.text)
            + room_of(&self.head.note, g.sizes.note)
            + Mm::new(1.0);
        head.max(self.names(g) + self.least_cell(g).times(self.columns.len()))
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        check.head("grid.head", &self.head, width, g);
        let names = self.names(g);
        check.length("grid", names + self.least_cell(g), width);
        for row in &self.rows {
            row.texts("grid.row", names, g, check);
        }
    }

    /// A table in bands is parted between two of them, one band between two rows.
    fn part(&mut self, width: Mm, height: Mm, g: &Geometry) -> Option<Block> {
        let room = height - self.top(g);
        let (band, per_band) = (self.rows_height(g) + g.grid.band, self.per_band(width, g));
        if self.bands(width, g) > 1 {
            let kept = (room + g.grid.band).holds(band) * per_band;
            return (kept > 0 && kept < self.columns.len()).then(|| {
                let columns = self.columns.split_off(kept);
                Block::Grid(Self {
                    columns,
                    ..self.clone()
                })
            });
        }
        let kept = room.holds(g.grid.row);
        (kept > 1 && kept < self.rows.len()).then(|| {
            let rows = self.rows.split_off(kept);
            Block::Grid(Self {
                rows,
                ..self.clone()
            })
        })
    }

    fn settle(&mut self, width: Mm, _: Mm, g: &Geometry) {
        self.per_band = self.per_band(width, g);
        self.cell_width = (width - self.names(g)).over(self.per_band);
        self.names = width - self.cell_width.times(self.per_band);
        self.top = self.top(g);
    }
}
