//! Strength by grade and diameter band, over all documents that have one.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use super::near::near_names;
use super::strength_table::{Row, System, fold};
use super::{Thread, astm_a193, astm_a320, astm_a453, astm_a540, en_10269, iso_898_1, iso_3506_1};
use crate::units::Stress;

/// Strength of a stud as a table gives it.
#[derive(Clone, Debug, PartialEq)]
pub struct Strength {
    /// The grade in its printed spelling: `A193 B7`, `8.8`.
    pub grade: String,
    /// The document and table as printed.
    pub source: &'static str,
    /// The diameter band of the row: `2.5 in < d ≤ 4 in`; empty for all diameters.
    pub band: String,
    /// Least tensile strength.
    pub tensile: Stress,
    /// Least yield strength (0.2 %).
    pub yield_strength: Stress,
    /// Proof strength, where the document has one.
    pub proof: Option<Stress>,
    /// An inch row was used for an M size, or the other way: the document's own row for it is not known here.
    pub converted: bool,
    /// The document limits the diameters of this row, but the limits are not known here.
    pub limits_unknown: bool,
    /// Whether the row agrees with a second source. Never true when converted or when limits are unknown.
    pub confirmed: bool,
}

/// Why there is no strength.
#[derive(Clone, Debug, PartialEq)]
pub enum MaterialError {
    /// Nobody knows the grade.
    UnknownGrade {
        /// As typed.
        grade: String,
        /// Near names.
        near: Vec<String>,
    },
    /// The name fits several grades: `B8` without a class.
    Ambiguous {
        /// As typed.
        grade: String,
        /// The grades that it may mean.
        choices: Vec<String>,
    },
    /// The grade is not made in this diameter.
    OutsideBands {
        /// The grade in its printed spelling.
        grade: String,
        /// The thread in its printed spelling.
        thread: String,
        /// The bands it is made in.
        bands: Vec<String>,
    },
}

fn tables() -> impl Iterator<Item = &'static Row> {
    [
        iso_898_1::ROWS,
        astm_a193::ROWS,
        astm_a320::ROWS,
        astm_a453::ROWS,
        astm_a540::ROWS,
        iso_3506_1::ROWS,
        en_10269::ROWS,
    ]
    .into_iter()
    .flatten()
}

/// The rows by each folded spelling of their grade, made once: a job of thousands of joints asks again and again.
static BY_SPELLING: LazyLock<BTreeMap<String, Vec<&'static Row>>> = LazyLock::new(|| {
    let mut by_spelling: BTreeMap<String, Vec<&'static Row>> = BTreeMap::new();
    for row in tables() {
        for spelling in row.spellings() {
            by_spelling.entry(spelling).or_default().push(row);
        }
    }
    by_spelling
});

/// Every grade that has a row, in its printed spelling, without repeats.
pub fn grades() -> Vec<String> {
    let mut grades = Vec::new();
    for row in tables() {
        let grade = row.designation();
        if !grades.contains(&grade) {
            grades.push(grade);
        }
    }
    grades
}

/// Strength of `grade` in the diameter of `thread`. An M size takes the metric table of the document where it has
/// one, else the inch row, marked as converted.
pub fn strength(grade: &str, thread: &Thread) -> Result<Strength, MaterialError> {
    let rows = meant_rows(grade)?;
    let own = if thread.series.is_metric() {
        System::Metric
    } else {
        System::Inch
    };
    let has_own = rows.iter().any(|row| row.system == own);
    let usable = rows.iter().filter(|row| !has_own || row.system == own);
    let Some(row) = usable.clone().find(|row| row.band.holds(thread)) else {
        return Err(MaterialError::OutsideBands {
            grade: rows
                .first()
                .map(|row| row.designation())
                .unwrap_or_default(),
            thread: thread.designation.clone(),
            bands: usable.map(|row| row.band.text()).collect(),
        });
    };
    let converted = row.system != own;
    Ok(Strength {
        grade: row.designation(),
        source: row.source,
        band: row.band.text(),
        tensile: row.tensile,
        yield_strength: row.yield_strength,
        proof: row.proof,
        converted,
        limits_unknown: !row.band.known,
        confirmed: row.confirmed && !converted && row.band.known,
    })
}

/// The rows of the one grade that the typed name means.
fn meant_rows(grade: &str) -> Result<&'static [&'static Row], MaterialError> {
    let typed = fold(grade);
    if let Some(rows) = BY_SPELLING.get(&typed) {
        return Ok(rows);
    }
    let choices = with_a_class(&typed);
    if choices.len() > 1 {
        return Err(MaterialError::Ambiguous {
            grade: grade.to_owned(),
            choices,
        });
    }
    let known = grades();
    Err(MaterialError::UnknownGrade {
        grade: grade.to_owned(),
        near: near_names(grade, known.iter().map(String::as_str)),
    })
}

/// The grades that the typed name means once a class is added: `B8` gives `A193 B8 Class 1` and `A193 B8 Class 2`.
fn with_a_class(typed: &str) -> Vec<String> {
    let begin = format!("{typed}CLASS");
    let mut choices: Vec<String> = Vec::new();
    let spellings = BY_SPELLING.range(begin.clone()..);
    for (_, rows) in spellings.take_while(|(spelling, _)| spelling.starts_with(&begin)) {
        for designation in rows.iter().map(|row| row.designation()) {
            if !choices.contains(&designation) {
                choices.push(designation);
            }
        }
    }
    choices
}

/// How many rows of a grade hold a thread, for the test that bands never overlap.
#[cfg(test)]
pub(super) fn rows_holding(grade: &str, thread: &Thread, metric: bool) -> usize {
    let system = if metric { System::Metric } else { System::Inch };
    let rows = BY_SPELLING.get(&fold(grade)).map_or(&[][..], Vec::as_slice);
    let holding = |row: &&&Row| row.system == system && row.band.holds(thread);
    rows.iter().filter(holding).count()
}
