//! Named boxes.

use serde::Serialize;

use super::check::room_of;
use super::{Block, Checker, Fits, Head};
use crate::document::geometry::{Geometry, Mm};

/// Named boxes under one another, or side by side in some columns; the limit stands in front of the box.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct List {
    /// Title and remark.
    pub head: Head,
    /// The boxes.
    pub rows: Vec<Line>,
    /// How wide they are.
    pub boxes: BoxWidth,
    /// Columns, at least one.
    pub across: usize,
    /// Width of a box on the page; reckoned by the place.
    pub box_width: Mm,
}

/// A named box, or a row of them.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Line {
    /// Number for the radio.
    pub number: String,
    /// What is written into it; pass, stud or side in a table.
    pub name: String,
    /// The limit, the due date or the minimum; may be empty.
    pub limit: String,
}

impl Line {
    /// From number, name and limit.
    pub fn new(
        number: impl Into<String>,
        name: impl Into<String>,
        limit: impl Into<String>,
    ) -> Self {
        Self {
            number: number.into(),
            name: name.into(),
            limit: limit.into(),
        }
    }

    /// Number and limit as they stand below the name.
    pub(super) fn under(&self) -> String {
        if self.limit.is_empty() {
            self.number.clone()
        } else {
            format!("{} · {}", self.number, self.limit)
        }
    }

    /// The width that name, number and limit take.
    pub(super) fn needs(&self, g: &Geometry) -> Mm {
        room_of(&self.name, g.sizes.text).max(room_of(&self.under(), g.sizes.note))
    }

    pub(super) fn texts(&self, field: &'static str, room: Mm, g: &Geometry, check: &mut Checker) {
        check.line(field, &self.name, g.sizes.text, room);
        check.line(field, &self.under(), g.sizes.note, room);
    }
}

/// How wide a box is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BoxWidth {
    /// A square to tick.
    Tick,
    /// A time of day.
    Time,
    /// A number.
    #[default]
    Number,
    /// A batch, a serial number, a word.
    Wide,
    /// Strokes, one for each round.
    Strokes,
}

impl BoxWidth {
    /// Its width in a row of settings.
    pub(super) fn mm(self, g: &Geometry) -> Mm {
        match self {
            Self::Tick => g.boxes.tick,
            Self::Time => g.boxes.time,
            Self::Number => g.boxes.number,
            Self::Wide => g.list.wide,
            Self::Strokes => g.list.strokes,
        }
    }

    fn in_list(self, g: &Geometry) -> Mm {
        match self {
            Self::Number => g.list.number,
            other => other.mm(g),
        }
    }
}

impl List {
    /// Boxes under one another.
    pub fn new(head: Head, boxes: BoxWidth, rows: Vec<Line>) -> Self {
        Self {
            head,
            rows,
            boxes,
            across: 1,
            box_width: Mm::ZERO,
        }
    }

    fn has_head(&self) -> bool {
        !self.head.title.is_empty() || !self.head.note.is_empty()
    }

    fn top(&self, g: &Geometry) -> Mm {
        if self.has_head() {
            g.head.height
        } else {
            Mm::ZERO
        }
    }

    fn lines(&self) -> usize {
        self.rows.len().div_ceil(self.across.max(1))
    }
}

impl Fits for List {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        match self.lines() {
            0 => [Mm::ZERO; 2],
            lines => [self.top(g) + g.list.row.times(lines); 2],
        }
    }

    fn needs(&self, g: &Geometry) -> Mm {
        let across = self.across.max(1);
        let names = self
            .rows
            .iter()
            .map(|it| it.needs(g))
            .max()
            .unwrap_or_default();
        let column = names + g.list.gap + self.boxes.in_list(g);
        let head = room_of(&self.head.title, g.sizes.text)
            + room_of(&self.head.note, g.sizes.note)
            + Mm::new(1.0);
        head.max(column.times(across) + g.page.gutter.times(across - 1))
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        check.head("list.head", &self.head, width, g);
        let column = (width + g.page.gutter).over(self.across.max(1)) - g.page.gutter;
        for row in &self.rows {
            row.texts(
                "list.row",
                column - g.list.gap - self.boxes.in_list(g),
                g,
                check,
            );
        }
    }

    fn part(&mut self, _: Mm, height: Mm, g: &Geometry) -> Option<Block> {
        let kept = (height - self.top(g)).holds(g.list.row) * self.across.max(1);
        (kept > 0 && kept < self.rows.len()).then(|| {
            let rows = self.rows.split_off(kept);
            Block::List(Self {
                rows,
                ..self.clone()
            })
        })
    }

    fn settle(&mut self, _: Mm, _: Mm, g: &Geometry) {
        self.box_width = self.boxes.in_list(g);
    }
}
