//! The joint register: one row a joint, on paper and as CSV under the same headings.

use std::collections::BTreeMap;

use serde::Serialize;

use super::card::Running;
use super::desk::{Align, Furniture, Page};
use super::width;
use crate::units::digits;

/// Rows a page.
pub const ROWS_A_PAGE: usize = 25;
/// Rows a register; a longer one is split.
pub const MOST_ROWS: usize = 1000;
/// Size of the type in the table, in pt.
const SIZE: f64 = 8.0;
/// White at the right of each column, in mm.
const GUTTER: f64 = 1.4;

/// The columns with text, in the order of the CSV file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ColumnId {
    /// Tag of the joint.
    Tag,
    /// Equipment.
    Equipment,
    /// Unit of the plant.
    Unit,
    /// Location in words.
    Place,
    /// Flow diagram or drawing with its revision.
    Drawing,
    /// Type of joint.
    JointType,
    /// Size and class.
    Size,
    /// Number of studs and thread.
    Studs,
    /// Length of the studs.
    StudLength,
    /// Materials of stud and nut.
    Material,
    /// Gasket.
    Gasket,
    /// Lubricant.
    Lubricant,
    /// Method.
    Method,
    /// Target load with its unit in the heading.
    Load,
    /// Torque or pressure with its unit.
    Setting,
    /// Tools.
    Tool,
    /// Criticality class.
    Class,
    /// Isolation sheet.
    Isolation,
    /// Permit.
    Permit,
    /// Crew.
    Crew,
    /// Planned start.
    Start,
    /// Hours of labour, typical.
    Hours,
    /// Page of the card.
    CardPage,
    /// Revision of the card.
    Revision,
}

impl ColumnId {
    /// All columns in the order of the CSV file.
    pub const ALL: [Self; 24] = [
        Self::Tag,
        Self::Equipment,
        Self::Unit,
        Self::Place,
        Self::Drawing,
        Self::JointType,
        Self::Size,
        Self::Studs,
        Self::StudLength,
        Self::Material,
        Self::Gasket,
        Self::Lubricant,
        Self::Method,
        Self::Load,
        Self::Setting,
        Self::Tool,
        Self::Class,
        Self::Isolation,
        Self::Permit,
        Self::Crew,
        Self::Start,
        Self::Hours,
        Self::CardPage,
        Self::Revision,
    ];

    /// The key of its heading in the wording.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Tag => "register.tag",
            Self::Equipment => "register.equipment",
            Self::Unit => "register.unit",
            Self::Place => "register.place",
            Self::Drawing => "register.drawing",
            Self::JointType => "register.joint_type",
            Self::Size => "register.size",
            Self::Studs => "register.studs",
            Self::StudLength => "register.stud_length",
            Self::Material => "register.material",
            Self::Gasket => "register.gasket",
            Self::Lubricant => "register.lubricant",
            Self::Method => "register.method",
            Self::Load => "register.load",
            Self::Setting => "register.setting",
            Self::Tool => "register.tool",
            Self::Class => "register.class",
            Self::Isolation => "register.isolation",
            Self::Permit => "register.permit",
            Self::Crew => "register.crew",
            Self::Start => "register.start",
            Self::Hours => "register.hours",
            Self::CardPage => "register.card_page",
            Self::Revision => "register.revision",
        }
    }

    /// Width on paper in mm, where the column is printed; the rest stands in the CSV file only.
    const fn width_on_paper(self) -> Option<f64> {
        Some(match self {
            Self::Tag => 23.0,
            Self::Place => 29.2,
            Self::Studs => 21.0,
            Self::Gasket => 22.2,
            Self::Lubricant => 10.0,
            Self::Method => 14.6,
            Self::Load => 13.0,
            Self::Setting => 14.5,
            Self::Tool => 16.0,
            Self::Class => 8.0,
            Self::Crew => 7.5,
            Self::Isolation => 8.5,
            Self::Start => 17.8,
            Self::Hours => 7.2,
            Self::CardPage => 0.0,
            _ => return None,
        })
    }

    const fn is_number(self) -> bool {
        matches!(self, Self::Load | Self::Hours | Self::CardPage)
    }

    const fn is_strong(self) -> bool {
        matches!(self, Self::Tag | Self::Setting)
    }
}

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

/// The columns on paper with their widths: what is left of 265 mm goes to the page of the card.
fn printed_columns() -> impl Iterator<Item = (ColumnId, f64)> {
    let wide = ColumnId::ALL
        .iter()
        .filter_map(|column| column.width_on_paper());
    let page = 265.0 - BOX_WIDTH * 8.0 - wide.sum::<f64>();
    ColumnId::ALL.into_iter().filter_map(move |column| {
        let width = column.width_on_paper()?;
        Some((
            column,
            if column == ColumnId::CardPage {
                page
            } else {
                width
            },
        ))
    })
}

/// Width of a status box, in mm.
const BOX_WIDTH: f64 = 5.5;

fn printed_row(row: &JointRow) -> Vec<RegisterCell> {
    printed_columns()
        .map(|(column, width)| match (column, &row.card_page) {
            (ColumnId::CardPage, page) => RegisterCell::Page(page.clone()),
            _ => RegisterCell::Lines(two_lines(row.text(column), width - GUTTER)),
        })
        .collect()
}

/// A text in at most two lines of a width in mm: broken at a space, hyphen, slash or comma, else
/// where it must; what does not fit ends in an ellipsis. The whole text stands in the CSV file.
pub fn two_lines(text: &str, room: f64) -> Vec<String> {
    let fits = |text: &str| width::of(text, SIZE) <= room;
    if fits(text) {
        return vec![text.to_owned()];
    }
    let mut end = 0;
    let mut good_break = None;
    for (start, sign) in text.char_indices() {
        let next = start + sign.len_utf8();
        if !fits(text[..next].trim_end()) {
            break;
        }
        end = next;
        if " -/,·×".contains(sign) {
            good_break = Some(next);
        }
    }
    let at = good_break.unwrap_or(end.max(text.chars().next().map_or(0, char::len_utf8)));
    let (first, rest) = text.split_at(at);
    vec![
        first.trim_end().to_owned(),
        shortened(rest.trim_start(), &fits),
    ]
}

fn shortened(text: &str, fits: &impl Fn(&str) -> bool) -> String {
    if fits(text) {
        return text.to_owned();
    }
    let mut kept = String::new();
    for sign in text.chars() {
        if !fits(&format!("{kept}{sign}…")) {
            break;
        }
        kept.push(sign);
    }
    format!("{}…", kept.trim_end())
}

/// A piece of a name for sorting: digits as a number, before letters.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Piece {
    /// Value, then how it was written, so that 07 and 7 have an order.
    Number(u128, String),
    Letters(String),
}

fn natural(text: &str) -> Vec<Piece> {
    let mut pieces: Vec<Piece> = Vec::new();
    let signs: Vec<char> = text.chars().collect();
    for run in signs.chunk_by(|a, b| a.is_ascii_digit() == b.is_ascii_digit()) {
        let run: String = run.iter().collect();
        pieces.push(match run.parse() {
            Ok(number) => Piece::Number(number, run),
            Err(_) => Piece::Letters(run),
        });
    }
    pieces
}

/// A spreadsheet must not take a text of the job for a formula: such a text gets the apostrophe
/// that marks it as text.
fn no_formula(text: &str) -> String {
    let formula = text.starts_with(['=', '@', '\t', '\r'])
        || (text.starts_with(['+', '-']) && text.parse::<f64>().is_err());
    if formula {
        format!("'{text}")
    } else {
        text.to_owned()
    }
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
    fn long_texts_take_two_lines_and_no_more() {
        assert_eq!(two_lines("E-310-CH-01", 30.0), ["E-310-CH-01"]);
        let long = two_lines(
            "north channel, platform +6 m, behind the ladder of the stair tower",
            28.0,
        );
        assert_eq!(long.len(), 2);
        assert!(long[1].ends_with('…'));
        let solid = two_lines(&"W".repeat(500), 20.0);
        assert!(solid.iter().all(|line| width::of(line, SIZE) <= 20.0));
        assert_eq!(solid.len(), 2);
        assert!(two_lines("", 10.0)[0].is_empty());
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
