//! The joint register: one row a joint, on paper and as CSV under the same headings.

mod columns;
mod text;

use std::collections::BTreeMap;

pub use columns::ColumnId;
pub use text::two_lines;

use columns::printed_columns;
use serde::Serialize;
use text::{Piece, natural, no_formula};

use super::blocks::Running;
use super::desk::{Align, Furniture, Page};
use crate::units::digits;

/// Rows a page.
pub const ROWS_A_PAGE: usize = 25;
/// Rows a register; a longer one is split.
pub const MOST_ROWS: usize = 1000;
/// White at the right of each column, in mm.
const GUTTER: f64 = 1.4;

/// One joint, as it stands in the register.
#[derive(Clone, Debug)]
pub struct JointRow {
    /// Equipment, by which the register is sorted first.
    pub equipment: String,
    /// Tag, by which it is sorted second.
    pub tag: String,
    /// The text of each column that has one.
    pub texts: BTreeMap<ColumnId, String>,
    /// Page of its card.
    pub card_page: Page,
    /// Number of studs, for the totals.
    pub studs: u32,
    /// Thread without length, such as `M48`, for the totals.
    pub thread: String,
    /// Hours as printed, for the totals.
    pub hours: f64,
}

impl JointRow {
    /// The text of a column; empty where there is none. The page of a card that is known only when
    /// the pages are laid out is empty here.
    pub fn text(&self, column: ColumnId) -> &str {
        match (column, &self.card_page) {
            (ColumnId::Tag, _) => &self.tag,
            (ColumnId::Equipment, _) => &self.equipment,
            (ColumnId::CardPage, Page::Given(page)) => page,
            _ => self.texts.get(&column).map_or("", String::as_str),
        }
    }
}

/// The words of a register.
#[derive(Clone, Debug)]
pub struct Words {
    /// The heading of a column.
    pub headings: BTreeMap<ColumnId, String>,
    /// The eight boxes: apart, cleaned, made up, at load, checked, proved, no leak, deviation.
    pub status: [String; 8],
    /// Title.
    pub title: String,
    /// What to do with the boxes.
    pub remark: String,
    /// `rows `, ` to `, ` of `.
    pub range: [String; 3],
    /// Behind the number of joints: `joints`.
    pub joints: String,
    /// Behind the number of studs: `studs`.
    pub studs: String,
}

/// The whole register, sorted.
#[derive(Clone, Debug)]
pub struct Register {
    words: Words,
    rows: Vec<JointRow>,
}

impl Register {
    /// Sorts by equipment, then by tag; digits count as numbers, so that 2 stands before 10.
    pub fn new(words: Words, mut rows: Vec<JointRow>) -> Self {
        rows.sort_by_cached_key(|row| (natural(&row.equipment), natural(&row.tag)));
        Self { words, rows }
    }

    /// The rows in their order.
    pub fn rows(&self) -> &[JointRow] {
        &self.rows
    }

    /// Heading and rows of the CSV file: all columns, then the status boxes, which are empty.
    pub fn csv_rows(&self) -> Vec<Vec<String>> {
        let heading = |column: &ColumnId| self.words.headings.get(column).cloned();
        let mut head: Vec<String> = ColumnId::ALL
            .iter()
            .map(|column| heading(column).unwrap_or_default())
            .collect();
        head.extend(self.words.status.iter().cloned());
        let rows = self.rows.iter().map(|row| {
            let texts = ColumnId::ALL
                .iter()
                .map(|column| no_formula(row.text(*column)));
            texts
                .chain(self.words.status.iter().map(|_| String::new()))
                .collect()
        });
        std::iter::once(head).chain(rows).collect()
    }

    /// The register as a CSV file (RFC 4180) in UTF-8.
    pub fn csv(&self) -> Vec<u8> {
        let mut writer = csv::Writer::from_writer(Vec::new());
        let written = self
            .csv_rows()
            .iter()
            .all(|row| writer.write_record(row).is_ok());
        debug_assert!(
            written,
            "memory takes every record, and all have the same length"
        );
        writer.into_inner().unwrap_or_default()
    }

    /// The printed registers: one for each thousand rows.
    pub fn sheets(&self, furniture: &Furniture, label: &str) -> Vec<RegisterSheet> {
        let parts = self.rows.chunks(MOST_ROWS).enumerate();
        let last = self.rows.len().div_ceil(MOST_ROWS).saturating_sub(1);
        parts
            .map(|(part, rows)| RegisterSheet {
                label: if part == 0 {
                    label.to_owned()
                } else {
                    format!("{label}-{}", part + 1)
                },
                furniture: furniture.clone(),
                running: furniture.running.clone(),
                title: self.words.title.clone(),
                remark: self.words.remark.clone(),
                columns: self.columns(),
                status: self.words.status.to_vec(),
                pages: self.pages(part * MOST_ROWS, rows),
                totals: (part == last).then(|| self.totals()),
            })
            .collect()
    }

    fn columns(&self) -> Vec<RegisterColumn> {
        printed_columns()
            .map(|(column, width)| RegisterColumn {
                head: self
                    .words
                    .headings
                    .get(&column)
                    .cloned()
                    .unwrap_or_default(),
                width,
                align: if column.is_number() {
                    Align::Right
                } else {
                    Align::Left
                },
                strong: column.is_strong(),
            })
            .collect()
    }

    fn pages(&self, before: usize, rows: &[JointRow]) -> Vec<RegisterPage> {
        let pages = rows.chunks(ROWS_A_PAGE).enumerate();
        pages
            .map(|(page, rows)| {
                let first = before + page * ROWS_A_PAGE;
                let [word, to, of] = &self.words.range;
                let (from, until) = (first + 1, first + rows.len());
                RegisterPage {
                    range: format!("{word}{from}{to}{until}{of}{}", self.rows.len()),
                    rows: rows.iter().map(printed_row).collect(),
                }
            })
            .collect()
    }

    fn totals(&self) -> Totals {
        let mut by_thread: BTreeMap<Vec<Piece>, (String, u32)> = BTreeMap::new();
        for row in &self.rows {
            let entry = by_thread.entry(natural(&row.thread));
            entry.or_insert_with(|| (row.thread.clone(), 0)).1 += row.studs;
        }
        let each: Vec<String> = by_thread
            .values()
            .rev()
            .map(|(thread, studs)| format!("{studs} {thread}"))
            .collect();
        let studs: u32 = self.rows.iter().map(|row| row.studs).sum();
        let hours: f64 = self.rows.iter().map(|row| row.hours).sum();
        Totals {
            joints: format!("{} {}", self.rows.len(), self.words.joints),
            studs: format!("{studs} {}: {}", self.words.studs, each.join(", ")),
            hours: digits((hours * 10.0).round() / 10.0),
        }
    }
}

fn printed_row(row: &JointRow) -> Vec<RegisterCell> {
    printed_columns()
        .map(|(column, width)| match (column, &row.card_page) {
            (ColumnId::CardPage, page) => RegisterCell::Page(page.clone()),
            _ => RegisterCell::Lines(two_lines(row.text(column), width - GUTTER)),
        })
        .collect()
}

/// A register as it is printed.
#[derive(Clone, Debug, Serialize)]
pub struct RegisterSheet {
    /// By which [`Page::At`] refers to it.
    pub label: String,
    /// Edges of the pages.
    pub furniture: Furniture,
    /// The line at the top edge.
    pub running: Running,
    /// Title.
    pub title: String,
    /// What to do with the boxes.
    pub remark: String,
    /// Columns with text.
    pub columns: Vec<RegisterColumn>,
    /// Heads of the boxes.
    pub status: Vec<String>,
    /// The pages with their rows.
    pub pages: Vec<RegisterPage>,
    /// The last row of the last register.
    pub totals: Option<Totals>,
}

/// A column of the printed register.
#[derive(Clone, Debug, Serialize)]
pub struct RegisterColumn {
    /// Heading.
    pub head: String,
    /// In mm.
    pub width: f64,
    /// Where its text stands.
    pub align: Align,
    /// Whether it is bold.
    pub strong: bool,
}

/// A page of the register.
#[derive(Clone, Debug, Serialize)]
pub struct RegisterPage {
    /// `rows 1 to 25 of 61`.
    pub range: String,
    /// At most [`ROWS_A_PAGE`].
    pub rows: Vec<Vec<RegisterCell>>,
}

/// A cell of the register.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum RegisterCell {
    /// At most two lines.
    Lines(Vec<String>),
    /// A page.
    Page(Page),
}

/// The totals row.
#[derive(Clone, Debug, Serialize)]
pub struct Totals {
    /// Number of joints.
    pub joints: String,
    /// Number of studs, by thread.
    pub studs: String,
    /// Hours.
    pub hours: String,
}

#[cfg(test)]
mod tests {
    use super::columns::BOX_WIDTH;
    use super::*;

    fn row(equipment: &str, tag: &str, studs: u32, thread: &str) -> JointRow {
        JointRow {
            equipment: equipment.into(),
            tag: tag.into(),
            texts: BTreeMap::new(),
            card_page: Page::Given("9".into()),
            studs,
            thread: thread.into(),
            hours: 1.25,
        }
    }

    fn words() -> Words {
        Words {
            headings: ColumnId::ALL
                .into_iter()
                .map(|id| (id, id.id().to_owned()))
                .collect(),
            status: std::array::from_fn(|index| format!("box {index}")),
            title: "Joint register".into(),
            remark: String::new(),
            range: ["rows ".into(), " to ".into(), " of ".into()],
            joints: "joints".into(),
            studs: "studs".into(),
        }
    }

    #[test]
    fn equipment_then_tag_with_numbers_as_numbers() {
        let rows = vec![
            row("V-10", "V-10-A", 4, "M20"),
            row("V-2", "V-2-J10", 4, "M20"),
            row("V-2", "V-2-J9", 4, "M20"),
        ];
        let register = Register::new(words(), rows);
        let tags: Vec<&str> = register.rows().iter().map(|row| row.tag.as_str()).collect();
        assert_eq!(tags, ["V-2-J9", "V-2-J10", "V-10-A"]);
    }

    #[test]
    fn totals_count_every_row_once() {
        let rows = vec![
            row("A", "1", 24, "M48"),
            row("A", "2", 4, "M100"),
            row("A", "3", 24, "M48"),
        ];
        let totals = Register::new(words(), rows).totals();
        assert_eq!(totals.joints, "3 joints");
        assert_eq!(totals.studs, "52 studs: 4 M100, 48 M48");
        assert_eq!(totals.hours, "3.8");
    }

    #[test]
    fn spreadsheets_get_no_formula() {
        let mut joint = row("=1+1", "@x", 1, "M20");
        joint.texts.insert(ColumnId::Place, "-6 m platform".into());
        joint.texts.insert(ColumnId::Hours, "-3.4".into());
        let rows = Register::new(words(), vec![joint]).csv_rows();
        assert_eq!(rows[0].len(), rows[1].len());
        assert_eq!(rows[1][..2], ["'@x", "'=1+1"]);
        assert_eq!(rows[1][3], "'-6 m platform");
        assert_eq!(rows[1][21], "-3.4");
        assert_eq!(rows[1][22], "9");
    }

    /// Quotes and line breaks of a text come back from a reader of RFC 4180 as they were.
    #[test]
    fn the_csv_file_reads_back_as_it_was_written() {
        let mut joint = row("V-1", "V-1-A", 4, "M20");
        joint
            .texts
            .insert(ColumnId::Place, "north, \"upper\" deck\nladder 3".into());
        let register = Register::new(words(), vec![joint]);
        let bytes = register.csv();
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .from_reader(bytes.as_slice());
        let read: Vec<Vec<String>> = reader
            .records()
            .map(|record| {
                record
                    .expect("a record")
                    .iter()
                    .map(str::to_owned)
                    .collect()
            })
            .collect();
        assert_eq!(read, register.csv_rows());
    }

    #[test]
    fn printed_columns_fill_the_page() {
        let sum: f64 = printed_columns().map(|(_, width)| width).sum();
        assert!((sum + 8.0 * BOX_WIDTH - 265.0).abs() < 1e-9);
        assert!(
            printed_columns()
                .last()
                .is_some_and(|(_, width)| width >= 7.0)
        );
    }
}
