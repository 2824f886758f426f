//! The isolation and pressure-release sheet: make it safe, prove it, give it back.
//!
//! It supports the site's own isolation certificate and never replaces it. It is read at the joint,
//! so its type and its boxes are those of a card.

use serde::Serialize;

use super::blocks::{Badge, Draft, Head, Running};
use super::desk::PageWords;
use super::width;

/// Room for the steps of a page between its head and its foot, in mm.
pub const STEPS_ROOM: f64 = 228.0;

/// One isolation boundary: three pages, more when there are more points than fit.
#[derive(Clone, Debug, Serialize)]
pub struct IsolationSheet {
    /// By which [`super::desk::Page::At`] refers to it.
    pub label: String,
    /// Its bookmark.
    pub bookmark: String,
    /// The line at the top edge.
    pub running: Running,
    /// The foot of every page.
    pub footer: IsolationFooter,
    /// Set while the sheet may not be used.
    pub draft: Option<Draft>,
    /// Number, boundary, joints.
    pub identity: IsolationIdentity,
    /// Permit, certificate, lock box, date: boxes in one row.
    pub papers: Vec<Labelled>,
    /// What is inside and what else moves, falls or burns.
    pub contents: ContentsAndEnergy,
    /// What the pressure pushes.
    pub force: Force,
    /// One line of the points, or a picture that the job gives.
    pub sketch: Sketch,
    /// The points.
    pub points: Points,
    /// Page two.
    pub proof: Steps,
    /// Page three.
    pub return_to_service: Return,
}

/// A box with a label above.
#[derive(Clone, Debug, Serialize)]
pub struct Labelled {
    /// Number of the box, for the radio; may be empty.
    pub number: String,
    /// What goes in; a limit stands here, in front of the box.
    pub label: String,
    /// Width in mm.
    pub width: f64,
    /// The unit behind the box; may be empty.
    pub unit: String,
}

/// Number and words of the boundary.
#[derive(Clone, Debug, Serialize)]
pub struct IsolationIdentity {
    /// `I-04`.
    pub number: String,
    /// The boundary in words.
    pub boundary: String,
    /// Joints behind it, and its drawing with revision.
    pub line: String,
    /// ISOLATE, PROVE, RETURN: the word of each page, outlined.
    pub badges: [Badge; 3],
    /// The class.
    pub class: String,
    /// What each page is for, with the page: `page 1, make it safe`.
    pub pages: [String; 3],
    /// The same for a page on which the points go on.
    pub continued: String,
}

/// A block of named facts.
#[derive(Clone, Debug, Serialize)]
pub struct ContentsAndEnergy {
    /// Title and remark.
    pub head: Head,
    /// At most six: what, which, and a limit or temperature.
    pub facts: Vec<[String; 3]>,
}

/// What the pressure pushes on the largest opening.
#[derive(Clone, Debug, Serialize)]
pub struct Force {
    /// Title and remark.
    pub head: Head,
    /// Force for one unit of pressure; empty while the opening is not known.
    pub per_pressure: String,
    /// Its unit in words: `kN per bar`.
    pub unit: String,
    /// What a tenth of that pressure weighs: `0.1 bar = 680 kg`.
    pub little: String,
    /// The opening, or who must give it.
    pub opening: String,
    /// The sentence below.
    pub warning: String,
}

/// The sketch.
#[derive(Clone, Debug, Serialize)]
pub struct Sketch {
    /// Title and legend.
    pub head: Head,
    /// Name of the file of a picture that the job gives; without it the line of points is drawn.
    pub picture: Option<String>,
    /// What the picture shows, for a reader that cannot see it.
    pub alt: String,
    /// What stands at the two ends of the line of points.
    pub ends: [String; 2],
}

/// What a point is, for its symbol.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PointKind {
    /// A valve that is shut.
    ValveShut,
    /// A valve that is open.
    ValveOpen,
    /// A spade or blind between flanges.
    Spade,
    /// A pipe taken apart, with a gap.
    Gap,
    /// A vent, upwards.
    Vent,
    /// A drain, downwards.
    Drain,
    /// A pressure gauge.
    Gauge,
    /// A motor or another drive.
    Motor,
    /// Anything else that is locked: a switch, a pin, a block.
    Lock,
    /// A point that is still to be given: it has a line in the table and no symbol.
    Unknown,
}

/// The table of points.
#[derive(Clone, Debug, Serialize)]
pub struct Points {
    /// Title and remark.
    pub head: Head,
    /// Heads of the text columns: number, tag, position wanted.
    pub columns: [String; 3],
    /// Heads of the five boxes: lock, tag, fitted, verified, removed.
    pub boxes: [String; 5],
    /// The points in the order in which they are made.
    pub rows: Vec<Point>,
    /// The words of the remark on a page on which the points go on.
    pub continued: String,
}

/// A point of isolation.
#[derive(Clone, Debug, Serialize)]
pub struct Point {
    /// `1`, `2`...
    pub number: String,
    /// What it is.
    pub kind: PointKind,
    /// Its tag.
    pub tag: String,
    /// Type and location in words.
    pub place: String,
    /// What it must be: `shut, locked`.
    pub make: String,
}

/// Release and proof of zero.
#[derive(Clone, Debug, Serialize)]
pub struct Steps {
    /// Title and remark.
    pub head: Head,
    /// The steps in their order.
    pub steps: Vec<ProofStep>,
}

impl Steps {
    /// Height of the steps on paper in mm, never less than the page will need; more than
    /// [`STEPS_ROOM`] does not fit on page two.
    pub fn height(&self) -> f64 {
        self.steps.iter().map(ProofStep::height).sum()
    }
}

impl ProofStep {
    /// Height on paper with the least white below it, in mm. A word wider than its column breaks
    /// where it must and counts as the lines that it fills.
    fn height(&self) -> f64 {
        let boxes: f64 = self.boxes.iter().map(Labelled::room).sum();
        let room = 166.0 - if self.hold { 0.0 } else { boxes + 1.0 };
        let lines = |text: &str, size: f64| {
            let broken = (width::of(text, size) / room).ceil();
            width::lines(text, size, room).map_or(broken, to_f64)
        };
        // Lines of capitals and the white between them, for 11 pt and for 8.5 pt below it.
        let accept = if self.accept.is_empty() {
            0.0
        } else {
            0.2 + lines(&self.accept, 8.5) * 3.9
        };
        let words = lines(&self.text, 11.0) * 4.52 - 1.8 + accept;
        let labels = if self.boxes.iter().all(Labelled::is_bare) {
            0.0
        } else {
            3.9
        };
        let above = if self.hold { words + 2.6 } else { 0.0 };
        let boxes = if self.boxes.is_empty() {
            0.0
        } else {
            labels + 10.0 * (1.0 + to_f64(self.again)) + above
        };
        boxes.max(words + 4.0) + 0.4
    }
}

impl Labelled {
    fn room(&self) -> f64 {
        self.width + 3.0 + if self.unit.is_empty() { 0.0 } else { 8.0 }
    }

    fn is_bare(&self) -> bool {
        self.label.is_empty() && self.number.is_empty()
    }
}

/// Counts of lines and rows are small.
fn to_f64(count: usize) -> f64 {
    f64::from(u32::try_from(count).unwrap_or(u32::MAX))
}

/// One step with what is accepted and where it is written.
#[derive(Clone, Debug, Serialize)]
pub struct ProofStep {
    /// `8`.
    pub number: String,
    /// What is done.
    pub text: String,
    /// What is accepted: stands before the boxes.
    pub accept: String,
    /// At most four boxes.
    pub boxes: Vec<Labelled>,
    /// Work stops here until it is signed.
    pub hold: bool,
    /// Further rows of the same boxes, for what is read again and again.
    pub again: usize,
}

/// Page three.
#[derive(Clone, Debug, Serialize)]
pub struct Return {
    /// Title and remark.
    pub head: Head,
    /// What must be true, in order, each with its boxes.
    pub steps: Vec<ProofStep>,
    /// The joints behind the boundary, each to be signed.
    pub joints: SignList,
    /// Handovers of the lock box between shifts.
    pub handover: Grid,
    /// The closing line of every document.
    pub closing: String,
}

/// Names with a box each.
#[derive(Clone, Debug, Serialize)]
pub struct SignList {
    /// Title and remark.
    pub head: Head,
    /// The names; the first 12 are printed and the rest counted by the last line.
    pub names: Vec<String>,
    /// The line for those that do not fit; empty when all fit.
    pub more: String,
}

/// Empty rows under heads.
#[derive(Clone, Debug, Serialize)]
pub struct Grid {
    /// Title and remark.
    pub head: Head,
    /// Head and width in mm of each column.
    pub columns: Vec<Labelled>,
    /// Rows.
    pub rows: usize,
}

/// The foot of every page of the sheet.
#[derive(Clone, Debug, Serialize)]
pub struct IsolationFooter {
    /// Document number and revision.
    pub number: String,
    /// The word in front of the code.
    pub code_label: String,
    /// The content code.
    pub code: String,
    /// Date of issue with its word.
    pub issued: String,
    /// Printed copies, permit: at most three lines.
    pub note: String,
    /// Pages of this sheet.
    pub own_pages: PageWords,
    /// Pages of the pack, in small print; none when the sheet is issued alone.
    pub pages: Option<PageWords>,
    /// The code as a picture, from [`super::qr::svg`].
    pub qr: String,
}
