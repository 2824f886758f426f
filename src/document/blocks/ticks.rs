//! Ticks with their texts, as many in a row as the width holds.

use serde::Serialize;

use super::{Block, Checker, Fits, Head};
use crate::document::geometry::{Geometry, Mm};

/// What must be true before work goes on.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Ticks {
    /// Title and remark.
    pub head: Head,
    /// In the order of the work.
    pub items: Vec<Tick>,
    /// Ticks in a row; reckoned by the place.
    pub across: usize,
    /// Distance of two rows; reckoned by the place.
    pub pitch: Mm,
}

impl Ticks {
    /// From the head and the ticks; the place is reckoned later.
    pub fn new(head: Head, items: Vec<Tick>) -> Self {
        Self {
            head,
            items,
            ..Self::default()
        }
    }

    fn rows(&self, width: Mm, g: &Geometry) -> usize {
        self.items.len().div_ceil(across(width, g))
    }
}

/// A tick.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Tick {
    /// What is ticked.
    pub text: String,
    /// The point at which work stops until it is signed, such as `H1`; may be empty.
    pub hold: String,
    /// When it may go, see [`Fits::spare`]; none if it must stand.
    #[serde(skip)]
    pub spare: Option<u8>,
}

fn across(width: Mm, g: &Geometry) -> usize {
    let gutter = g.page.gutter;
    (width + gutter).holds(g.ticks.least + gutter).max(1)
}

impl Fits for Ticks {
    fn heights(&self, width: Mm, g: &Geometry) -> [Mm; 2] {
        match self.rows(width, g) {
            0 => [Mm::ZERO; 2],
            rows => {
                [g.ticks.pitch, g.ticks.most_pitch].map(|pitch| g.head.height + pitch.times(rows))
            }
        }
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        check.head("ticks.head", &self.head, width, g);
        let column = (width + g.page.gutter).over(across(width, g)) - g.page.gutter;
        let room = column - g.boxes.tick - g.ticks.gap;
        for it in &self.items {
            let text = match it.hold.as_str() {
                "" => it.text.clone(),
                hold => format!("{hold} {}", it.text),
            };
            check.lines("ticks.item", &text, (g.sizes.text, room), g.ticks.lines);
        }
    }

    fn spare(&self) -> Option<u8> {
        self.items.iter().filter_map(|it| it.spare).max()
    }

    fn let_go(&mut self, rank: u8) {
        if let Some(at) = self.items.iter().rposition(|it| it.spare == Some(rank)) {
            self.items.remove(at);
        }
    }

    fn part(&mut self, width: Mm, height: Mm, g: &Geometry) -> Option<Block> {
        let rows = (height - g.head.height).holds(g.ticks.pitch);
        let kept = rows * across(width, g);
        (kept > 0 && kept < self.items.len()).then(|| {
            let rest = self.items.split_off(kept);
            Block::Ticks(Self::new(self.head.clone(), rest))
        })
    }

    fn settle(&mut self, width: Mm, height: Mm, g: &Geometry) {
        self.across = across(width, g);
        let pitch = (height - g.head.height).over(self.rows(width, g));
        self.pitch = pitch.max(g.ticks.pitch).min(g.ticks.most_pitch);
    }
}
