//! Every text against its room, every side against its height.

use super::{Head, Side};
use crate::document::geometry::{Geometry, Mm};
use crate::document::width;

/// What an [`Overrun`] counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Characters of one text.
    Characters,
    /// Items of one list.
    Items,
    /// Millimetres of a block or a side.
    Millimetres,
}

/// Something that does not fit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Overrun {
    /// Block and field, such as `ticks.item`.
    pub field: &'static str,
    /// The text; empty when a list or a side is too long.
    pub text: String,
    /// How much there is.
    pub got: usize,
    /// How much fits.
    pub limit: usize,
    /// Of what.
    pub measure: Measure,
}

/// Collects what does not fit.
#[derive(Debug, Default)]
pub struct Checker {
    found: Vec<Overrun>,
}

impl Checker {
    pub(super) fn into_found(self) -> Vec<Overrun> {
        self.found
    }

    /// A text of one line at a size in pt.
    pub fn line(&mut self, field: &'static str, text: &str, size: f64, room: Mm) {
        self.lines(field, text, (size, room), 1);
    }

    /// A text of some lines in a column: size in pt and width.
    pub fn lines(&mut self, field: &'static str, text: &str, (size, room): (f64, Mm), most: usize) {
        let room = room.mm();
        if width::lines(text, size, room).is_none_or(|count| count > most) {
            self.found.push(Overrun {
                field,
                text: text.to_owned(),
                got: text.chars().count(),
                limit: width::characters_that_fit(text, size, room, most),
                measure: Measure::Characters,
            });
        }
    }

    /// Texts of several sizes in one line, with the gaps between them.
    pub fn joined(&mut self, field: &'static str, parts: &[(&str, f64)], gaps: Mm, room: Mm) {
        if joined_width(parts) + gaps.mm() <= room.mm() {
            return;
        }
        let texts: Vec<&str> = parts.iter().map(|(text, _)| *text).collect();
        let text = texts.join(" ");
        // What fits is counted as if all of it had the size of the largest.
        let size = parts
            .iter()
            .fold(0.0, |most: f64, (_, size)| most.max(*size));
        self.found.push(Overrun {
            field,
            got: text.chars().count(),
            limit: width::characters_that_fit(&text, size, (room - gaps).mm(), 1),
            text,
            measure: Measure::Characters,
        });
    }

    /// Title and remark in one line.
    pub fn head(&mut self, field: &'static str, head: &Head, width: Mm, g: &Geometry) {
        let parts = [(&*head.title, g.sizes.text), (&*head.note, g.sizes.note)];
        self.joined(field, &parts, Mm::new(1.0), width);
    }

    /// A list against the most that it may hold.
    pub fn items(&mut self, field: &'static str, got: usize, limit: usize) {
        if got > limit {
            self.found.push(Overrun {
                field,
                text: String::new(),
                got,
                limit,
                measure: Measure::Items,
            });
        }
    }

    /// A length against its room.
    pub fn length(&mut self, field: &'static str, used: Mm, room: Mm) {
        if used > room {
            let whole = Mm::new(1.0);
            self.found.push(Overrun {
                field,
                text: String::new(),
                got: (used + Mm::new(0.99)).holds(whole),
                limit: room.holds(whole),
                measure: Measure::Millimetres,
            });
        }
    }
}

/// Width of texts of several sizes side by side, in mm.
pub(super) fn joined_width(parts: &[(&str, f64)]) -> f64 {
    parts
        .iter()
        .map(|(text, size)| width::of(text, *size))
        .sum()
}

/// The least length that holds a text at a size in pt.
pub(super) fn room_of(text: &str, size: f64) -> Mm {
    Mm::at_least(width::of(text, size))
}

/// Everything of a side that does not fit its place; empty when the side can be printed.
pub fn overruns(side: &Side, g: &Geometry) -> Vec<Overrun> {
    let mut check = Checker::default();
    check.line("sheet", &side.sheet, g.sizes.text, g.identity.badge);
    for it in &side.blocks {
        it.block.fits().texts(it.width, g, &mut check);
        let least = it.block.fits().heights(it.width, g)[0];
        check.length("block", least, it.height);
        check.length("side", it.y + it.height, g.page.bottom);
    }
    check.found
}
