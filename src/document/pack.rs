//! The work pack: its cover, the sections behind it, deviation sheets and photos.

use serde::Serialize;

use super::blocks::{Badge, Head};
use super::desk::{BigValue, Furniture, Page, Paragraphs, Table, TitleBlock};
use super::width;

pub use crate::work::Signal;

/// Equipment that the cover names; the rest stands in the index.
pub const EQUIPMENT_ON_COVER: usize = 5;
/// Findings that the cover names; all stand behind it.
pub const FINDINGS_ON_COVER: usize = 4;
/// Revisions that the cover names, the latest ones.
pub const REVISIONS_ON_COVER: usize = 3;
/// Lines of the contents on the cover.
pub const CONTENTS_ON_COVER: usize = 6;
/// Height of a row on the cover, in mm.
pub const COVER_ROW: f64 = 5.2;
/// Rows a page of the index of joints.
pub const INDEX_ROWS: usize = 25;

/// The first page of a pack.
#[derive(Clone, Debug, Serialize)]
pub struct Cover {
    /// Edges of the page.
    pub furniture: Furniture,
    /// What kind of document this is.
    pub document_type: String,
    /// Title.
    pub title: String,
    /// Supplementary title.
    pub subtitle: String,
    /// Six totals, in two rows.
    pub totals: Vec<BigValue>,
    /// Where the totals come from.
    pub totals_note: String,
    /// The status: solid, or DRAFT outlined.
    pub status: Badge,
    /// Words in the box for a stamp.
    pub stamp: String,
    /// Equipment with its joints and studs.
    pub equipment: Table,
    /// What stands on which page.
    pub contents: Contents,
    /// The findings that are open; boxed while an error stands.
    pub findings: Findings,
    /// The revisions.
    pub revisions: Table,
    /// Who signs: three boxes.
    pub approvals: Approvals,
    /// Units, printed copies, distribution: small lines.
    pub notes: Vec<String>,
    /// The title block.
    pub title_block: TitleBlock,
}

/// What stands on which page.
#[derive(Clone, Debug, Serialize)]
pub struct Contents {
    /// Title and the word over the pages.
    pub head: Head,
    /// The parts of the pack.
    pub entries: Vec<ContentsEntry>,
}

/// A line of the contents.
#[derive(Clone, Debug, Serialize)]
pub struct ContentsEntry {
    /// What.
    pub title: String,
    /// Where.
    pub page: Page,
}

/// The open findings as the cover has them.
#[derive(Clone, Debug, Serialize)]
pub struct Findings {
    /// Title and counts by severity.
    pub head: Head,
    /// While an error stands: the sentence that says so. The box around the findings comes with it.
    pub stop: Option<String>,
    /// The findings, most severe first.
    pub table: Table,
}

/// Boxes for names and signatures.
#[derive(Clone, Debug, Serialize)]
pub struct Approvals {
    /// Title and how to fill the boxes in.
    pub head: Head,
    /// Who signs: three of them stand in a row.
    pub labels: Vec<String>,
}

/// Sections that flow one after the other.
#[derive(Clone, Debug, Serialize)]
pub struct Sections {
    /// Edges of the pages.
    pub furniture: Furniture,
    /// Whether the pages lie on their side.
    pub landscape: bool,
    /// The sections.
    pub sections: Vec<Section>,
}

/// One section: a bookmark and what stands under it.
#[derive(Clone, Debug, Serialize)]
pub struct Section {
    /// By which [`Page::At`] refers to it.
    pub label: String,
    /// Its title.
    pub title: String,
    /// One line under the title; may be empty.
    pub line: String,
    /// Whether it begins on a new page.
    pub new_page: bool,
    /// What stands in it.
    pub blocks: Vec<Block>,
}

/// A piece of a section.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Block {
    /// Text.
    Text(Paragraphs),
    /// A table.
    Table(Table),
    /// Panels with signal words.
    Cautions(Cautions),
}

/// The cautions that apply to a pack: one page at most.
#[derive(Clone, Debug, Serialize)]
pub struct Cautions {
    /// The panels, the gravest first.
    pub panels: Vec<Panel>,
    /// Below them: how many more stand on the cards, and the closing line.
    pub notes: Vec<String>,
}

/// A panel with a signal word.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Panel {
    /// How grave.
    pub signal: Signal,
    /// The signal word as printed.
    pub word: String,
    /// The sentences.
    pub text: String,
}

impl Panel {
    /// Width of its text, in mm.
    const COLUMN: f64 = 130.0;
    /// Size of its text, in pt.
    const SIZE: f64 = 11.0;
    /// Step of its lines, in mm.
    const STEP: f64 = 4.6;
    /// Least height, and what stands above and below its text, in mm.
    const LEAST: f64 = 10.0;
    const PADDING: f64 = 3.2;

    /// Height with the white below it, in mm.
    pub fn height(&self) -> f64 {
        let lines = width::lines(&self.text, Self::SIZE, Self::COLUMN).unwrap_or(12);
        let lines = f64::from(u32::try_from(lines).unwrap_or(u32::MAX));
        (lines * Self::STEP + Self::PADDING).max(Self::LEAST) + 1.6
    }
}

/// Sorts panels, the gravest first and otherwise as they came, and takes as many as one page holds.
/// The second value is how many were left out: they stand on their cards all the same.
pub fn one_page_of_panels(mut panels: Vec<Panel>) -> (Vec<Panel>, usize) {
    /// Height of a page below the title of the section and above two lines of notes, in mm.
    const ROOM: f64 = 224.0;
    panels.sort_by_key(|panel| panel.signal);
    let mut used = 0.0;
    let fitting = panels
        .iter()
        .take_while(|panel| {
            used += panel.height();
            used <= ROOM
        })
        .count();
    let left_out = panels.split_off(fitting).len();
    (panels, left_out)
}

/// Blank deviation sheets, one a page.
#[derive(Clone, Debug, Serialize)]
pub struct Deviations {
    /// Edges of the pages.
    pub furniture: Furniture,
    /// By which [`Page::At`] refers to the first.
    pub label: String,
    /// Title and one line beside it.
    pub head: Head,
    /// How many.
    pub count: usize,
    /// Labels of the boxes of the first rows: number, joint, card, date, found by...
    pub boxes: Vec<Vec<WriteIn>>,
    /// Rooms to write or draw in, one below the other.
    pub rooms: Vec<Room>,
    /// What may be decided, each with a tick box.
    pub decisions: Vec<String>,
    /// The head over the decisions.
    pub decision_head: Head,
    /// Who signs, each with date.
    pub signatures: Vec<String>,
}

/// A box with its label above.
#[derive(Clone, Debug, Serialize)]
pub struct WriteIn {
    /// What goes in.
    pub label: String,
    /// Its width in mm; those of a row add up to at most 176 with 2 between them.
    pub width: f64,
}

/// A room to write in, with lines, or to draw in, without.
#[derive(Clone, Debug, Serialize)]
pub struct Room {
    /// Title and remark.
    pub head: Head,
    /// Lines 9 mm apart.
    pub lines: usize,
    /// Whether the lines are left out.
    pub blank: bool,
}

/// How many blank deviation sheets a pack holds: 5 % of the joints, at least 3. Source: common
/// practice, no source.
pub const fn deviation_sheets(joints: usize) -> usize {
    let share = joints.div_ceil(20);
    if share < 3 { 3 } else { share }
}

/// Photos of the site, four a page.
#[derive(Clone, Debug, Serialize)]
pub struct Photos {
    /// Edges of the pages.
    pub furniture: Furniture,
    /// By which [`Page::At`] refers to the first page.
    pub label: String,
    /// Title and remark.
    pub head: Head,
    /// In the order of the joints.
    pub photos: Vec<PhotoEntry>,
}

/// A photo and what it shows.
#[derive(Clone, Debug, Serialize)]
pub struct PhotoEntry {
    /// Name of its file among the files of the request, such as `picture-1.jpg`.
    pub file: String,
    /// The joint.
    pub tag: String,
    /// Its place in words.
    pub caption: String,
}
