//! The crew card: one joint, two sides, for tightening and for loosening by any method.
//!
//! Side one says what to do, side two holds what was done. Every word comes ready from the wording,
//! the labels too; the template only puts them in their places. What is not known is an [`Entry::Missing`]
//! and prints as an empty box with the person who must fill it.

mod budget;
mod fit;
mod fit_jackbolts;
mod give_way;
mod heights;
mod heights_jackbolts;
mod jackbolts;
mod picture;
mod record;
mod steps;

pub use budget::{BUDGETS, Budget, Measure, Overrun};
pub use jackbolts::{
    Circle, DialKey, Expected, Jackbolts, Round, Rounds, SideValue, StopPart, StopRule, StudRing,
};
pub use picture::{Mark, Picture, Sector, ToolMark};
pub use record::{
    CellRow, Cells, Choice, Grid, GridRow, JackboltRecord, Lines, Record, RecordList, RecordRow,
    Signature,
};
pub use steps::{Column, ColumnKind, Order, OrderEntry, Step, Steps};

use serde::Serialize;

use super::width;

/// A volume of cards: what `cards.typ` reads.
#[derive(Clone, Debug, Serialize)]
pub struct Cards {
    /// Two letters, after ISO 639, such as `en`.
    pub language: String,
    /// The cards in the order of their pages, two pages each.
    pub cards: Vec<Card>,
}

/// One crew card.
#[derive(Clone, Debug, Serialize)]
pub struct Card {
    /// The line at the very top of both sides.
    pub running: Running,
    /// Which joint, and what is done to it.
    pub identity: Identity,
    /// Set while the card may not be used.
    pub draft: Option<Draft>,
    /// What kills.
    pub danger: Danger,
    /// At most three, largest first.
    pub cautions: Vec<Caution>,
    /// What must be true before the first nut.
    pub ticks: Ticks,
    /// What to set.
    pub target: Target,
    /// Where.
    pub picture: Picture,
    /// In which steps.
    pub steps: Steps,
    /// In which order.
    pub order: Order,
    /// The work on multi-jackbolt tensioners, in place of picture and steps.
    pub jackbolts: Option<Box<Jackbolts>>,
    /// Side two.
    pub record: Record,
    /// Number, revision, code and page of both sides.
    pub footer: Footer,
}

/// The line at the top edge.
#[derive(Clone, Debug, Serialize)]
pub struct Running {
    /// Plant, unit and kind of document.
    pub left: String,
    /// Document number and revision.
    pub right: String,
}

/// The identity strip.
#[derive(Clone, Debug, Serialize)]
pub struct Identity {
    /// The tag of the joint.
    pub tag: Tag,
    /// Equipment and part.
    pub equipment: String,
    /// Position in words.
    pub place: String,
    /// Class and side, such as `class A · side 1, do`.
    pub class: String,
    /// Drawing and its revision; may be empty.
    pub drawing: String,
    /// The word of side one.
    pub badge: Badge,
    /// The word of side two.
    pub record_badge: Badge,
}

/// A tag in the largest form that fits.
#[derive(Clone, Debug, Serialize)]
pub struct Tag {
    /// The tag as it is.
    pub text: String,
    /// One line, or two when it is long.
    pub lines: Vec<String>,
    /// Whether it is set at the size of the target value; else one step smaller.
    pub large: bool,
}

impl Tag {
    /// Room for the tag beside the word of the card, in mm.
    const ROOM: f64 = 102.0;

    /// Chooses the form of a tag: large, else smaller, else in two lines.
    pub fn new(text: impl Into<String>) -> Self {
        let text = text.into();
        let large = width::of(&text, 34.0) <= Self::ROOM;
        let lines = if large || width::of(&text, 20.0) <= Self::ROOM {
            vec![text.clone()]
        } else {
            width::halves(&text)
        };
        Self { text, lines, large }
    }
}

/// The word of a side, told apart by shape across a yard.
#[derive(Clone, Debug, Serialize)]
pub struct Badge {
    /// In capitals.
    pub word: String,
    /// Outlined (loosen, isolate, draft) or solid (tighten, record).
    pub outlined: bool,
}

/// Why the card is a draft.
#[derive(Clone, Debug, Serialize)]
pub struct Draft {
    /// The word in the badge and across the page.
    pub word: String,
    /// One line for the footer: the word and the reason.
    pub reason: String,
}

/// The stop panel.
#[derive(Clone, Debug, Serialize)]
pub struct Danger {
    /// The signal word.
    pub word: String,
    /// What is behind the joint: bold.
    pub hazard: String,
    /// What must not happen before.
    pub stop: String,
    /// Labels of the four boxes: certificate, seen at, time, initials.
    pub boxes: [String; 4],
}

/// A caution, in front of the step it belongs to.
#[derive(Clone, Debug, Serialize)]
pub struct Caution {
    /// The signal word.
    pub word: String,
    /// Whether the alert triangle belongs to the word; it does not to a notice of damage only.
    pub triangle: bool,
    /// The sentences.
    pub text: String,
    /// Lines that the sentences take.
    pub lines: usize,
    /// The part of side one that it stands in front of.
    pub before: Before,
}

impl Caution {
    /// Counts the lines of the text.
    pub fn new(
        word: impl Into<String>,
        triangle: bool,
        text: impl Into<String>,
        before: Before,
    ) -> Self {
        let text = text.into();
        let lines = width::lines(&text, 11.0, budget::CAUTION_ROOM).unwrap_or(1);
        Self {
            word: word.into(),
            triangle,
            text,
            lines,
            before,
        }
    }
}

/// What a caution stands in front of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Before {
    /// The ticks before the first nut.
    Ticks,
    /// The steps under load.
    Steps,
}

/// Title and remark of a block.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Head {
    /// At the left, bold.
    pub title: String,
    /// At the right, small; may be empty.
    pub note: String,
}

/// The ticks before the first nut: at most [`Ticks::MOST`], before jackbolts [`Ticks::MOST_WITH_DRIVER`].
#[derive(Clone, Debug, Default, Serialize)]
pub struct Ticks {
    /// Title and remark.
    pub head: Head,
    /// Each at most two lines in its column.
    pub items: Vec<String>,
    /// What must be ticked too but has no room: a finding, no part of the page.
    #[serde(skip)]
    pub left_out: Vec<String>,
}

impl Ticks {
    /// Most ticks of a card.
    pub const MOST: usize = 9;
    /// Most ticks where a driver has ticks of its own.
    pub const MOST_WITH_DRIVER: usize = 18;
}

/// A text, or who must give it.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Entry {
    /// Known.
    Given(String),
    /// The words for the empty box: to be given by whom.
    Missing(String),
}

/// A number with its unit; a word has an empty unit.
#[derive(Clone, Debug, Serialize)]
pub struct Value {
    /// The number.
    pub number: Entry,
    /// The unit.
    pub unit: String,
}

/// What to set, or what never to exceed.
#[derive(Clone, Debug, Serialize)]
pub struct Target {
    /// What the large value is.
    pub label: String,
    /// The one number of the card.
    pub value: Value,
    /// Its digits in words, or a remark.
    pub words: String,
    /// The other unit, the torque of a pressure, or the range in which nuts are expected to move.
    pub second: Option<Second>,
    /// Studs first, then tools, pump, lubricant, socket: at most six.
    pub facts: Vec<Fact>,
}

/// The second value.
#[derive(Clone, Debug, Serialize)]
pub struct Second {
    /// The number or range.
    pub number: String,
    /// The unit.
    pub unit: String,
    /// What it is.
    pub words: String,
}

/// A line beside the target.
#[derive(Clone, Debug, Serialize)]
pub struct Fact {
    /// What.
    pub label: String,
    /// Which.
    pub value: Entry,
}

/// The foot of both sides; empty until the card has its code.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Footer {
    /// Document number and revision.
    pub number: String,
    /// The word in front of the code.
    pub code_label: String,
    /// The content code.
    pub code: String,
    /// Date of issue with its word.
    pub issued: String,
    /// The note of each side, at most three lines.
    pub notes: [String; 2],
    /// The page words of each side.
    pub pages: [String; 2],
    /// The code as a picture, from [`super::qr::svg`].
    pub qr: String,
}
