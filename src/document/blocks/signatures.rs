//! What ends a record: the deviation with advice for the next time, signatures, lines for notes.

use serde::Serialize;

use super::check::room_of;
use super::{Block, Checker, Fits, Head, Line};
use crate::document::geometry::{Geometry, Mm};

/// None or yes with room for number and words; beside it lines for advice.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Deviation {
    /// Title and remark.
    pub head: Head,
    /// Number for the radio.
    pub number: String,
    /// The words of the two ticks.
    pub options: [String; 2],
    /// Title and remark of the advice.
    pub next: Head,
    /// Number for the radio.
    pub next_number: String,
}

impl Fits for Deviation {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        [g.deviation.height; 2]
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        check.head("deviation.head", &self.head, g.deviation.width, g);
        check.head("next_time.head", &self.next, width - g.deviation.at, g);
        let half = g.deviation.width.over(2);
        let [first, second] = &self.options;
        let room = half - g.boxes.tick - g.ticks.gap;
        check.line("deviation.option", first, g.sizes.text, room);
        let number = room_of(&self.number, g.sizes.note) + Mm::new(1.0);
        check.line("deviation.option", second, g.sizes.text, room - number);
    }
}

/// Hold and witness points, then those who hand over; two in a row.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Signatures {
    /// Title and remark.
    pub head: Head,
    /// In the order of the work.
    pub items: Vec<Signature>,
    /// The last tick: what is handed in; without a limit.
    pub last: Option<Line>,
    /// Distance of two rows; reckoned by the place.
    pub pitch: Mm,
    /// Where the second of a row begins; reckoned by the place.
    pub second_at: Mm,
}

/// A box for name and signature, one for the date and, where work stops, one for the time.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Signature {
    /// Number for the radio.
    pub number: String,
    /// Who; at a hold or witness point also the acceptance value.
    pub label: String,
    /// Whether work stops here: heavier outline and a box for the time.
    pub hold: bool,
}

impl Signatures {
    /// From its texts; the place is reckoned later.
    pub fn new(head: Head, items: Vec<Signature>, last: Option<Line>) -> Self {
        Self {
            head,
            items,
            last,
            ..Self::default()
        }
    }

    fn rows(&self) -> usize {
        (self.items.len() + usize::from(self.last.is_some())).div_ceil(2)
    }
}

impl Fits for Signatures {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        match self.rows() {
            0 => [Mm::ZERO; 2],
            rows => {
                let size = &g.signatures;
                [size.pitch, size.most_pitch].map(|pitch| size.head + pitch.times(rows))
            }
        }
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        check.head("signatures.head", &self.head, width, g);
        check.length("signatures", g.signatures.width.times(2), width);
        for it in &self.items {
            // Two spaces stand between number and label.
            let text = format!("{}  {}", it.number, it.label);
            check.line("signatures.label", &text, g.sizes.note, g.signatures.width);
        }
        if let Some(it) = &self.last {
            let number = room_of(&it.number, g.sizes.note) + Mm::new(1.0);
            let room = g.signatures.width - g.boxes.tick - g.ticks.gap - number;
            check.line("signatures.last", &it.name, g.sizes.text, room);
        }
    }

    fn part(&mut self, _: Mm, height: Mm, g: &Geometry) -> Option<Block> {
        let kept = (height - g.signatures.head).holds(g.signatures.pitch) * 2;
        (kept > 0 && kept < self.items.len()).then(|| {
            let items = self.items.split_off(kept);
            Block::Signatures(Self::new(self.head.clone(), items, self.last.take()))
        })
    }

    fn settle(&mut self, width: Mm, height: Mm, g: &Geometry) {
        let pitch = (height - g.signatures.head).over(self.rows());
        self.pitch = pitch.max(g.signatures.pitch).min(g.signatures.most_pitch);
        self.second_at = width - g.signatures.width;
    }
}

/// Empty lines under a title, as many as there is room for.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Notes {
    /// Title and remark.
    pub head: Head,
    /// Lines that are drawn; reckoned by the place.
    pub lines: usize,
}

impl Notes {
    /// Under this title.
    pub fn new(head: Head) -> Self {
        Self { head, lines: 0 }
    }
}

impl Fits for Notes {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        let least = g.head.height + g.notes.line.times(g.notes.least);
        [least, least.max(g.page.bottom)]
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        check.head("notes.head", &self.head, width, g);
    }

    fn settle(&mut self, _: Mm, height: Mm, g: &Geometry) {
        self.lines = (height - g.head.height).holds(g.notes.line);
    }
}
