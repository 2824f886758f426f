//! Side two: what was used, found, measured and signed. Boxes carry numbers for the radio.

use serde::Serialize;

use super::{ColumnKind, Head, Ticks};

/// The record side.
#[derive(Clone, Debug, Serialize)]
pub struct Record {
    /// Serial and due date, with a box for what it was changed to.
    pub tools: RecordList,
    /// Batch or heat of what was fitted, or the condition of what came off.
    pub materials: RecordList,
    /// Alignment as found with its limits, or other readings before the first step.
    pub as_found: RecordList,
    /// Positions across, passes down.
    pub gaps: Option<Grid>,
    /// Studs down, lengths across.
    pub stretch: Option<Grid>,
    /// What the last round showed, each with what is accepted.
    pub last_round: RecordList,
    /// Thread past the nuts.
    pub protrusion: Option<Grid>,
    /// What the rounds of a tensioner showed, in place of gaps, stretch and last round.
    pub jackbolts: Option<JackboltRecord>,
    /// None or yes, with room for number and words.
    pub deviation: Choice,
    /// Room for advice.
    pub next_time: Lines,
    /// Title and remark of the signatures.
    pub signed: Head,
    /// Hold and witness points, then those who hand over; two in a row.
    pub signatures: Vec<Signature>,
    /// The last tick: what is handed in.
    pub stub: Option<RecordRow>,
}

/// Named boxes under one another.
#[derive(Clone, Debug, Default, Serialize)]
pub struct RecordList {
    /// Title and remark.
    pub head: Head,
    /// The boxes.
    pub rows: Vec<RecordRow>,
}

/// A named box.
#[derive(Clone, Debug, Serialize)]
pub struct RecordRow {
    /// Number for the radio.
    pub number: String,
    /// What is written into it.
    pub name: String,
    /// The limit, the due date or the minimum, in front of the box; may be empty.
    pub limit: String,
}

/// A table of boxes.
#[derive(Clone, Debug, Serialize)]
pub struct Grid {
    /// Title and remark.
    pub head: Head,
    /// Heads of the columns.
    pub columns: Vec<String>,
    /// Rows, each with the number of its first box.
    pub rows: Vec<GridRow>,
}

/// What was found on the jackbolts, and what the crew did to them.
#[derive(Clone, Debug, Default, Serialize)]
pub struct JackboltRecord {
    /// Rounds across, at most eight: largest turn, mean turn and by whom down, or one line per stud.
    pub rounds: Option<Grid>,
    /// A wide box for strokes where there are more rounds than columns: `round __ of at least 14`.
    pub tally: Option<RecordRow>,
    /// Stud by stud, where the studs are too many for lines of their own.
    pub studs: Option<Cells>,
    /// Stretch and stud end, stud by stud; or the jackbolts that were seized.
    pub measured: Option<Grid>,
    /// Driver, reversal check and second person: beside what was measured.
    pub checks: RecordList,
    /// Ticks before the driver runs that side one has no room for.
    pub before_driver: Option<Ticks>,
    /// Run-out and inspection, at most nine.
    pub ticks: Option<Ticks>,
}

/// Small boxes for many studs, in as many bands as the width asks for.
#[derive(Clone, Debug, Serialize)]
pub struct Cells {
    /// Title and remark.
    pub head: Head,
    /// Ticks: sixteen studs in a band. Numbers: eight.
    pub kind: ColumnKind,
    /// The numbers of the studs.
    pub columns: Vec<String>,
    /// Rounds, or `last` alone.
    pub rows: Vec<CellRow>,
}

impl Cells {
    /// Width of the names, in mm.
    pub const NAMES: f64 = 16.0;

    /// Studs in one band.
    pub fn per_band(&self) -> usize {
        match self.kind {
            ColumnKind::Tick => 16,
            ColumnKind::Time | ColumnKind::Number => 8,
        }
    }

    /// Bands that the studs take.
    pub fn bands(&self) -> usize {
        self.columns.len().div_ceil(self.per_band())
    }
}

/// A row of small boxes.
#[derive(Clone, Debug, Serialize)]
pub struct CellRow {
    /// `C1`, `last`.
    pub name: String,
    /// Number for the radio.
    pub number: String,
}

/// A row of boxes.
#[derive(Clone, Debug, Serialize)]
pub struct GridRow {
    /// Pass, stud or side.
    pub name: String,
    /// Number for the radio.
    pub number: String,
    /// What is accepted; may be empty.
    pub limit: String,
}

/// Two ticks and a line.
#[derive(Clone, Debug, Serialize)]
pub struct Choice {
    /// Title and remark.
    pub head: Head,
    /// Number for the radio.
    pub number: String,
    /// The words of the two ticks.
    pub options: [String; 2],
}

/// Empty lines under a title.
#[derive(Clone, Debug, Serialize)]
pub struct Lines {
    /// Title and remark.
    pub head: Head,
    /// Number for the radio.
    pub number: String,
}

/// A box for name and signature, one for the date and, at a hold point, one for the time.
#[derive(Clone, Debug, Serialize)]
pub struct Signature {
    /// Number for the radio.
    pub number: String,
    /// Who; at a hold or witness point also the acceptance value.
    pub label: String,
    /// Whether work stops here: heavier outline and a box for the time.
    pub hold: bool,
}
