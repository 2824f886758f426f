//! Settings one under the other: passes, rounds, release steps.

use serde::Serialize;

use super::check::{joined_width, room_of};
use super::{Amount, Block, BoxWidth, Checker, Fits, Head};
use crate::document::geometry::{Geometry, Mm};

/// A table of settings in the order of the work.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Rows {
    /// Title and remark; the remark has room only where nothing is expected and no box has a head.
    pub head: Head,
    /// Heads of what is expected: at most two columns.
    pub expected: Vec<Expected>,
    /// The boxes at the right of each row.
    pub boxes: Vec<BoxColumn>,
    /// The rows.
    pub rows: Vec<Row>,
    /// Below the last row, one line each: when it ends, what to do after a break.
    pub end: Vec<String>,
    /// How many of the last of these lines may go, at rank 1; see [`Fits::spare`].
    #[serde(skip)]
    pub end_spare: usize,
    /// Distance of two rows; reckoned by the place.
    pub pitch: Mm,
    /// Where the first row begins; reckoned by the place.
    pub first_at: Mm,
}

/// A column of boxes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BoxColumn {
    /// The word above.
    pub head: String,
    /// How wide its boxes are.
    pub width: BoxWidth,
}

/// Two lines of what is expected, or of their heads.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Expected {
    /// Bold: `78 %`.
    pub main: String,
    /// Below: `70–84`; may be empty.
    pub under: String,
}

/// One pass or round.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Row {
    /// `P1`, `R1`, `C0`.
    pub name: String,
    /// The turn in degrees that a dial shows; anticlockwise when negative.
    pub dial: Option<f64>,
    /// What to set; none in a row that only says what a further round of the kind above is expected to reach, which
    /// is a line high and has no boxes.
    pub value: Option<Amount>,
    /// Share, order and readings.
    pub line: String,
    /// For each column of the expected, what stands there.
    pub expected: Vec<Expected>,
    /// For each column of boxes, whether this row has its box.
    pub boxes: Vec<bool>,
    /// The point at which work stops before this row, such as `H3`; may be empty.
    pub hold: String,
    /// When it may go, see [`Fits::spare`]; none if it must stand.
    #[serde(skip)]
    pub spare: Option<u8>,
}

impl Rows {
    /// Width of all boxes.
    fn boxes_width(&self, g: &Geometry) -> Mm {
        self.boxes
            .iter()
            .map(|it| it.width.mm(g) + g.rows.gap)
            .sum()
    }

    fn beside_words(&self, g: &Geometry) -> Mm {
        self.boxes_width(g) + g.rows.expected.times(self.expected.len())
    }

    fn top(&self, g: &Geometry) -> Mm {
        if self.expected.iter().any(|it| !it.under.is_empty()) {
            g.rows.two_lines
        } else {
            g.head.height
        }
    }

    fn around(&self, g: &Geometry) -> Mm {
        self.top(g) + g.sizes.line.times(self.end.len()) + g.rows.foot
    }

    fn without_end(&mut self) -> Vec<String> {
        std::mem::take(&mut self.end)
    }
}

fn height(row: &Row, pitch: Mm, g: &Geometry) -> Mm {
    if row.value.is_some() {
        pitch
    } else {
        g.rows.further
    }
}

/// Left of the words of a row.
fn words_at(row: &Row, g: &Geometry) -> Mm {
    if row.dial.is_some() && row.value.is_some() {
        g.rows.name + g.rows.dial
    } else {
        g.rows.name
    }
}

/// Number, unit and mark of a point, side by side.
fn value_width(row: &Row, g: &Geometry) -> Mm {
    let hold = if row.hold.is_empty() {
        Mm::ZERO
    } else {
        room_of(&row.hold, g.sizes.step) + Mm::new(2.0)
    };
    let value = match &row.value {
        Some(Amount::Given { number, unit }) => {
            Mm::at_least(joined_width(&[
                (number, g.sizes.head),
                (unit, g.sizes.step),
            ])) + Mm::new(2.0)
        }
        Some(Amount::Missing { by }) => room_of(by, g.sizes.note) + Mm::new(4.2),
        None => Mm::ZERO,
    };
    value + hold
}

/// Size of the line of a row in pt: small below the words of an empty box.
fn line_size(row: &Row, g: &Geometry) -> f64 {
    match row.value {
        Some(Amount::Missing { .. }) => g.sizes.note,
        _ => g.sizes.text,
    }
}

fn line_width(row: &Row, g: &Geometry) -> Mm {
    let inset = match row.value {
        Some(Amount::Missing { .. }) => Mm::new(4.2),
        _ => Mm::new(0.6),
    };
    room_of(&row.line, line_size(row, g)) + inset
}

impl Fits for Rows {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        if self.rows.is_empty() && self.end.is_empty() {
            return [Mm::ZERO; 2];
        }
        [g.rows.pitch, g.rows.most_pitch]
            .map(|pitch| self.around(g) + self.rows.iter().map(|it| height(it, pitch, g)).sum())
    }

    fn needs(&self, g: &Geometry) -> Mm {
        let wide = |it: &Row| words_at(it, g) + line_width(it, g).max(value_width(it, g));
        let rows = self.rows.iter().map(wide).max().unwrap_or_default();
        let title = room_of(&self.head.title, g.sizes.text);
        let end = self
            .end
            .iter()
            .map(|it| room_of(it, g.sizes.text))
            .max()
            .unwrap_or_default();
        (rows.max(title) + self.beside_words(g)).max(end)
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        let room = width - self.beside_words(g);
        check.head("rows.head", &self.head, room, g);
        check.items("rows.expected", self.expected.len(), 2);
        for it in &self.expected {
            for text in [&it.main, &it.under] {
                check.line(
                    "rows.expected",
                    text,
                    g.sizes.note,
                    g.rows.expected - Mm::new(1.5),
                );
            }
        }
        for it in &self.boxes {
            check.line(
                "rows.boxes",
                &it.head,
                g.sizes.note,
                it.width.mm(g) + g.rows.gap,
            );
        }
        for row in &self.rows {
            let words = room - words_at(row, g);
            check.line(
                "rows.name",
                &row.name,
                g.sizes.step,
                g.rows.name - Mm::new(0.5),
            );
            check.line(
                "rows.line",
                &row.line,
                line_size(row, g),
                words - line_width(row, g) + room_of(&row.line, line_size(row, g)),
            );
            if value_width(row, g) > words {
                let (number, unit) = match &row.value {
                    Some(Amount::Given { number, unit }) => (&**number, &**unit),
                    Some(Amount::Missing { by }) => (&**by, ""),
                    None => ("", ""),
                };
                let parts = [
                    (number, g.sizes.head),
                    (unit, g.sizes.step),
                    (&*row.hold, g.sizes.step),
                ];
                check.joined("rows.value", &parts, Mm::new(4.0), words);
            }
            for it in &row.expected {
                check.line(
                    "rows.expected",
                    &it.main,
                    g.sizes.text,
                    g.rows.expected - Mm::new(1.5),
                );
                check.line(
                    "rows.expected",
                    &it.under,
                    g.sizes.text,
                    g.rows.expected - Mm::new(1.5),
                );
            }
        }
        for line in &self.end {
            check.line("rows.end", line, g.sizes.text, width);
        }
    }

    fn spare(&self) -> Option<u8> {
        let end = (self.end_spare > 0).then_some(1);
        let rows = self.rows.iter().filter_map(|it| it.spare);
        rows.chain(end).max()
    }

    /// The middle one of those that may go: the first and the last tell most.
    fn let_go(&mut self, rank: u8) {
        if rank == 1 && self.end_spare > 0 {
            self.end.pop();
            self.end_spare -= 1;
            return;
        }
        let rows = self.rows.iter().enumerate();
        let spare: Vec<usize> = rows
            .filter(|(_, it)| it.spare == Some(rank))
            .map(|(at, _)| at)
            .collect();
        if let Some(at) = spare.get(spare.len() / 2) {
            self.rows.remove(*at);
        }
    }

    fn part(&mut self, _: Mm, room: Mm, g: &Geometry) -> Option<Block> {
        let mut used = self.top(g) + g.rows.foot;
        let fits = |row: &&Row| {
            let bottom = used + height(row, g.rows.pitch, g);
            let has_room = bottom <= room;
            if has_room {
                used = bottom;
            }
            has_room
        };
        let kept = self.rows.iter().take_while(fits).count();
        let end = g.sizes.line.times(self.end.len());
        let is_all = kept == self.rows.len() && used + end <= room;
        (kept > 0 && !is_all).then(|| {
            let rest = self.rows.split_off(kept);
            let end = self.without_end();
            Block::Rows(Self {
                rows: rest,
                end,
                ..self.clone()
            })
        })
    }

    fn settle(&mut self, width: Mm, room: Mm, g: &Geometry) {
        let full = self.rows.iter().filter(|it| it.value.is_some()).count();
        let spare = room - self.heights(width, g)[0];
        self.first_at = self.top(g);
        self.pitch = (g.rows.pitch + spare.over(full)).min(g.rows.most_pitch);
    }
}
