//! The work on multi-jackbolt tensioners: a circle of jackbolts in place of the bolt circle, rounds
//! with what they are expected to reach in place of passes, the rule that ends them.
//!
//! A card that carries [`Jackbolts`] draws them in place of its picture and its steps, which stay
//! empty; target, ticks, cautions, order of the studs and record are those of every card.

use serde::Serialize;

use super::{Column, Head, Mark, RecordRow, Sector, Value};

/// Side one below the stop panel.
#[derive(Clone, Debug, Serialize)]
pub struct Jackbolts {
    /// Beside the one number: seat torque, level of the driver, expected break-out; at most two.
    pub values: Vec<SideValue>,
    /// One tensioner, seen from above.
    pub circle: Circle,
    /// The studs of the joint in small; none where only one carries a tensioner.
    pub studs: Option<StudRing>,
    /// Rounds in the order of the work.
    pub rounds: Rounds,
    /// When the rounds end; none while loosening.
    pub stop: Option<StopRule>,
    /// How far a mark may move, in large; none while tightening.
    pub key: Option<DialKey>,
    /// Boxes under the circle for what is measured before the first turn: at most two.
    pub measured: Vec<RecordRow>,
}

/// A value beside the one number of the card.
#[derive(Clone, Debug, Serialize)]
pub struct SideValue {
    /// What it is: `Driver MD-2, limit`.
    pub label: String,
    /// Number or range, with its unit.
    pub value: Value,
    /// What goes with it: `80 %, never above 280`; may be empty.
    pub words: String,
}

/// The circle of jackbolts on one stud, to proportion: angles in degrees clockwise from its top.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Circle {
    /// From which side it is seen, and which way the numbers run.
    pub head: Head,
    /// Outside diameter of the body, any unit: the five lengths only scale one another.
    pub body: f64,
    /// Outside diameter of the washer; drawn broken where the body hides it.
    pub washer: f64,
    /// Diameter of the jackbolt circle.
    pub circle: f64,
    /// Outside diameter of a jackbolt's head, or across the corners of a hexagon.
    pub jackbolt: f64,
    /// Diameter of the stud.
    pub stud: f64,
    /// Angle of each jackbolt, the first one first: 4 to 32.
    pub jackbolts: Vec<f64>,
    /// The number of each.
    pub numbers: Vec<Mark>,
    /// Whether the numbers run clockwise.
    pub clockwise: bool,
    /// Words in the stud: at most two short lines, such as `stud` and `M100×6`.
    pub words: Vec<String>,
    /// Where the mark of the driver points in each of its positions, `X`, `Y`; empty when it has only one.
    pub positions: Vec<Mark>,
    /// The angles at which the driver has a spindle in its first position; empty when it has one at each.
    pub driven: Vec<f64>,
    /// What the driver leans on; it stands outside the numbers.
    pub reaction: Option<Sector>,
    /// Whether a paint line runs from each jackbolt over the body, as it is drawn before loosening.
    pub paint: bool,
    /// The signs explained: at most [`Circle::LEGEND`] lines.
    pub legend: Vec<String>,
}

impl Circle {
    /// Most lines that explain the signs.
    pub const LEGEND: usize = 4;
}

/// The studs of a joint in small, numbered, with words beside them.
#[derive(Clone, Debug, Serialize)]
pub struct StudRing {
    /// The studs at their angles; at most [`StudRing::MOST`], else empty: the words carry the order.
    pub studs: Vec<Mark>,
    /// At most four short lines: how many, where the first one is, in which order.
    pub words: Vec<String>,
}

impl StudRing {
    /// Most studs that are drawn.
    pub const MOST: usize = 16;
}

/// The rounds, in one table.
#[derive(Clone, Debug, Serialize)]
pub struct Rounds {
    /// Title and remark.
    pub head: Head,
    /// Heads of what is expected: at most two columns, each of one or two short lines.
    pub expected: Vec<Expected>,
    /// The boxes at the right of each row.
    pub columns: Vec<Column>,
    /// The rows.
    pub rows: Vec<Round>,
    /// Below the last row: at most two lines.
    pub end: Vec<String>,
}

impl Rounds {
    /// Most rows that stand in one column beside the circle; more stand in two columns below it.
    pub const ONE_COLUMN: usize = 10;
    /// Most release rounds that a card holds.
    pub const MOST: usize = 22;

    /// Whether the rows stand in two columns: more dials than one column holds.
    pub fn in_two_columns(&self) -> bool {
        self.rows.len() > Self::ONE_COLUMN && self.rows.iter().any(|row| row.dial.is_some())
    }
}

/// Two lines of what is expected, or of their heads.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Expected {
    /// Bold: `78 %`.
    pub main: String,
    /// Below: `70–84`; may be empty.
    pub under: String,
}

/// One round.
#[derive(Clone, Debug, Serialize)]
pub struct Round {
    /// `C0`, `C1`, `R1`.
    pub name: String,
    /// The turn in degrees that a dial shows; anticlockwise when negative.
    pub dial: Option<f64>,
    /// What to set or how far to turn; none in a row that only says what a further round of the
    /// kind above is expected to reach, which is a line high and has no boxes.
    pub value: Option<Value>,
    /// Share and order, or part of a flat and travel at the handle.
    pub line: String,
    /// For each column of the expected, what stands there.
    pub expected: Vec<Expected>,
    /// For each column of boxes, whether this row has its box.
    pub boxes: Vec<bool>,
}

/// The rule that ends the rounds: both parts must hold.
#[derive(Clone, Debug, Serialize)]
pub struct StopRule {
    /// That both must hold.
    pub title: String,
    /// At least so many rounds; and the largest turn below so much.
    pub parts: [StopPart; 2],
    /// The word between them.
    pub and: String,
    /// What to do when it does not end: `Not met after C8: stop, call the engineer.`
    pub after: String,
}

/// One of the two.
#[derive(Clone, Debug, Serialize)]
pub struct StopPart {
    /// The word in front of the number: `at least`, `below`.
    pub before: String,
    /// Number and unit, such as `5` without one and `20` with `deg`.
    pub value: Value,
    /// What it counts.
    pub words: String,
}

/// A dial large enough to explain the small ones.
#[derive(Clone, Debug, Serialize)]
pub struct DialKey {
    /// The turn that it shows, in degrees; anticlockwise when negative.
    pub angle: f64,
    /// At most four lines beside it.
    pub words: Vec<String>,
}
