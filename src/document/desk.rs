//! What all documents read at a desk are made of: parts with their page furniture, tables, panels,
//! the title block. Everything is text that is ready to print; widths are in mm.

use serde::Serialize;

use super::blocks::{Card, Head, Running};
use super::isolation::IsolationSheet;
use super::note::Note;
use super::pack::{Cover, Deviations, Photos, Sections};
use super::register::RegisterSheet;

/// One PDF: what `pack.typ` reads. A work pack has many parts, an isolation sheet or a register that
/// is issued alone has one.
#[derive(Clone, Debug, Serialize)]
pub struct Document {
    /// Two letters, after ISO 639, such as `en`.
    pub language: String,
    /// In the order of the pages.
    pub parts: Vec<Part>,
}

impl Document {
    /// A document of these parts.
    pub fn new(language: impl Into<String>, parts: Vec<Part>) -> Self {
        Self {
            language: language.into(),
            parts,
        }
    }
}

/// A part of a document.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Part {
    /// Page one of a pack.
    Cover(Box<Cover>),
    /// Scope, index, plan, people, inspection and test plan...
    Sections(Sections),
    /// The crew cards of one joint.
    Cards(Box<CardsOfJoint>),
    /// An isolation and pressure-release sheet.
    Isolation(Box<IsolationSheet>),
    /// A calculation note.
    Note(Box<Note>),
    /// A register, or one of several when it is long.
    Register(Box<RegisterSheet>),
    /// Blank deviation sheets.
    Deviations(Deviations),
    /// Photos, four a page.
    Photos(Photos),
}

/// The cards of one joint inside a pack, under one bookmark.
#[derive(Clone, Debug, Serialize)]
pub struct CardsOfJoint {
    /// Its bookmark: tag and place.
    pub bookmark: String,
    /// By which [`Page::At`] refers to it.
    pub label: String,
    /// Each with two pages or more.
    pub cards: Vec<Card>,
}

/// What stands on the edges of every page of a part.
#[derive(Clone, Debug, Serialize)]
pub struct Furniture {
    /// The line at the top edge.
    pub running: Running,
    /// Number, revision and status, or date.
    pub number: String,
    /// The word in front of the code.
    pub code_label: String,
    /// The content code.
    pub code: String,
    /// Pages of this part, `page 1 of 3`, when it counts its own; none when it counts with the pack.
    pub own_pages: Option<PageWords>,
    /// Pages of the whole PDF.
    pub pages: PageWords,
    /// The word across the page while the document may not be used.
    pub draft: Option<String>,
}

/// The words around two page numbers: `page `, ` of `, and what may follow.
#[derive(Clone, Debug, Serialize)]
pub struct PageWords {
    /// Before the page.
    pub before: String,
    /// Between the page and the number of pages.
    pub between: String,
    /// Behind, such as ` · volume 1 of 1`.
    pub after: String,
}

/// A page that is referred to.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Page {
    /// The page of a label of the same PDF; its number is known when the pages are laid out.
    At(String),
    /// A page of another volume, or nothing.
    Given(String),
}

/// A table.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Table {
    /// Its head; without a title there is none.
    pub head: Head,
    /// Its columns; their widths add up to 176 mm, or 265 mm on a landscape page.
    pub columns: Vec<Column>,
    /// Its rows, each with one cell for each column.
    pub rows: Vec<Vec<Cell>>,
    /// Least height of a row in mm; 6 where nobody writes.
    pub row_height: f64,
    /// At most so many rows a page; 0 for as many as fit.
    pub rows_a_page: usize,
    /// What is printed instead when there is no row.
    pub none: String,
    /// Lines below the table: definitions, remarks.
    pub notes: Vec<String>,
}

impl Table {
    /// An empty table of rows 6 mm high.
    pub fn new(head: Head, columns: Vec<Column>) -> Self {
        Self {
            head,
            columns,
            row_height: 6.0,
            ..Self::default()
        }
    }

    /// Keeps the first `most` rows and returns how many were left out; the head says where they are.
    pub fn keep_first(&mut self, most: usize) -> usize {
        let left_out = self.rows.len().saturating_sub(most);
        self.rows.truncate(most);
        left_out
    }

    /// Keeps the last `most` rows and returns how many were left out.
    pub fn keep_last(&mut self, most: usize) -> usize {
        let left_out = self.rows.len().saturating_sub(most);
        self.rows.drain(..left_out);
        left_out
    }
}

/// A column of a [`Table`].
#[derive(Clone, Debug, Default, Serialize)]
pub struct Column {
    /// What stands over it.
    pub head: String,
    /// In mm.
    pub width: f64,
    /// Where its text stands.
    pub align: Align,
    /// Whether it is bold.
    pub strong: bool,
}

impl Column {
    /// A column of plain text at the left.
    pub fn new(head: impl Into<String>, width: f64) -> Self {
        Self {
            head: head.into(),
            width,
            ..Self::default()
        }
    }

    /// The same, bold.
    #[must_use]
    pub fn strong(mut self) -> Self {
        self.strong = true;
        self
    }

    /// The same with numbers that end at its right edge.
    #[must_use]
    pub fn right(mut self) -> Self {
        self.align = Align::Right;
        self
    }

    /// The same with single letters or boxes in its middle.
    #[must_use]
    pub fn middle(mut self) -> Self {
        self.align = Align::Center;
        self
    }
}

/// Where the text of a column stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Align {
    /// At its left edge.
    #[default]
    Left,
    /// At its right edge.
    Right,
    /// In its middle.
    Center,
}

/// A cell of a [`Table`].
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Cell {
    /// Text.
    Text(String),
    /// Text that stands out of its column.
    Strong(String),
    /// A line and a smaller one below.
    Two([String; 2]),
    /// A page.
    Page(Page),
    /// An empty box as large as the cell; the words say who fills it, or stand empty.
    Box(String),
}

impl Cell {
    /// Text.
    pub fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into())
    }
}

/// A short text under a head.
#[derive(Clone, Debug, Serialize)]
pub struct Paragraphs {
    /// Its head; without a title there is none.
    pub head: Head,
    /// Its paragraphs.
    pub texts: Vec<String>,
}

/// The title block after ISO 7200:2004: 176 mm by 36 mm.
#[derive(Clone, Debug, Serialize)]
pub struct TitleBlock {
    /// Responsible department.
    pub department: Field,
    /// Technical reference.
    pub reference: Field,
    /// Document type.
    pub document_type: Field,
    /// Created by.
    pub prepared: Field,
    /// Checked by.
    pub checked: Field,
    /// Approved by.
    pub approved: Field,
    /// Title.
    pub title: Field,
    /// Supplementary title.
    pub subtitle: String,
    /// Legal owner.
    pub owner: Field,
    /// Identification number.
    pub number: Field,
    /// Revision index.
    pub revision: Field,
    /// Date of issue.
    pub date: Field,
}

/// A field of the title block.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Field {
    /// Its name.
    pub label: String,
    /// What it says; empty when it is not known yet.
    pub value: String,
}

impl Field {
    /// A field.
    pub fn new(label: impl Into<String>, value: impl Into<String>) -> Self {
        Self {
            label: label.into(),
            value: value.into(),
        }
    }
}

/// A value that the eye finds first.
#[derive(Clone, Debug, Serialize)]
pub struct BigValue {
    /// What it is.
    pub label: String,
    /// The number, or a short word.
    pub value: String,
    /// Its unit; may be empty.
    pub unit: String,
    /// One line below; may be empty.
    pub line: String,
}
