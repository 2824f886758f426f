//! A card as the layout reads it: its sides in the order of the pages, and what stands round them.

use serde::Serialize;

use super::{Checker, Overrun, Side, overruns};
use crate::document::geometry::{Geometry, Mm};

/// A volume of cards.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Volume {
    /// Two letters, after ISO 639, such as `en`.
    pub language: String,
    /// The cards in the order of their pages.
    pub cards: Vec<Card>,
}

/// One card.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Card {
    /// The tag of the joint, by which a pack finds the card again.
    pub tag: String,
    /// The line at the very top of every side.
    pub running: Running,
    /// Set while the card may not be used.
    pub draft: Option<Draft>,
    /// Two sides for each sheet, see [`interleave`].
    pub sides: Vec<Side>,
    /// Number, revision, code and pages.
    pub footer: Footer,
}

impl Card {
    /// Everything that does not fit its place; empty when the card can be printed. Call it before the card has its
    /// code: code and page words are the program's own and fit.
    pub fn overruns(&self, g: &Geometry) -> Vec<Overrun> {
        let mut check = Checker::default();
        let (note, frame) = (g.sizes.note, &g.frame);
        check.line("running.left", &self.running.left, note, frame.left);
        check.line("running.right", &self.running.right, note, frame.right);
        if let Some(it) = &self.draft {
            check.line(
                "draft.word",
                &it.word,
                g.sizes.step,
                g.identity.draft - Mm::new(4.0),
            );
            check.line("draft.reason", &it.reason, note, frame.reason);
        }
        check.line(
            "footer.number",
            &self.footer.number,
            g.sizes.text,
            frame.number,
        );
        check.line("footer.issued", &self.footer.issued, note, frame.number);
        for it in &self.footer.notes {
            check.lines("footer.notes", it, (note, frame.notes), 3);
        }
        let sides = self.sides.iter().flat_map(|it| overruns(it, g));
        check.into_found().into_iter().chain(sides).collect()
    }
}

/// The line at the top edge.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Running {
    /// Plant, unit and kind of document.
    pub left: String,
    /// Document number and revision.
    pub right: String,
}

/// Why the card is a draft.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Draft {
    /// The word in the badge and across the page.
    pub word: String,
    /// One line for the footer: the word and the reason.
    pub reason: String,
}

/// The foot of all sides; empty until the card has its code.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Footer {
    /// Document number and revision.
    pub number: String,
    /// The word in front of the code.
    pub code_label: String,
    /// The content code.
    pub code: String,
    /// Date of issue with its word.
    pub issued: String,
    /// The note of the odd and of the even sides, at most three lines.
    pub notes: [String; 2],
    /// The page words of each side.
    pub pages: Vec<String>,
    /// The code as a picture, from [`crate::document::qr::svg`].
    pub qr: String,
}

/// The sides in the order of the pages: the first to do, the first to record, then what is left of both; an odd side
/// too few is filled with `notes`. With more than one sheet each side says which one it is: `sheet` gives the words
/// for a number and how many there are.
pub fn interleave(
    front: Vec<Side>,
    back: Vec<Side>,
    notes: impl FnOnce() -> Side,
    sheet: impl Fn(usize, usize) -> String,
) -> Vec<Side> {
    let (mut front, mut back) = (front.into_iter(), back.into_iter());
    let mut sides: Vec<Side> = front.next().into_iter().chain(back.next()).collect();
    sides.extend(front.chain(back));
    if sides.len() % 2 == 1 {
        sides.push(notes());
    }
    let sheets = sides.len() / 2;
    if sheets > 1 {
        for (index, side) in sides.iter_mut().enumerate() {
            side.sheet = sheet(index / 2 + 1, sheets);
        }
    }
    sides
}
