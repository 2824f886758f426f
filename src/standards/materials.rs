//! Strength by grade and diameter band, over all documents that have one.

use super::near::near_names;
use super::{Thread, astm_a193, astm_a320, astm_a453, astm_a540, en_10269, iso_898_1, iso_3506_1};
use crate::units::{Stress, digits};

/// In which unit a document gives its diameters, and with it its strengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum System {
    Metric,
    Inch,
}

/// The diameters for which a row holds: over one, up to and with the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Band {
    system: System,
    over: Option<f64>,
    to: Option<f64>,
    known: bool,
}

impl Band {
    pub(super) const fn mm(over: f64, to: f64) -> Self {
        Self {
            system: System::Metric,
            over: Some(over),
            to: Some(to),
            known: true,
        }
    }
    pub(super) const fn up_to_mm(to: f64) -> Self {
        Self {
            system: System::Metric,
            over: None,
            to: Some(to),
            known: true,
        }
    }
    pub(super) const fn inch(over: f64, to: f64) -> Self {
        Self {
            system: System::Inch,
            over: Some(over),
            to: Some(to),
            known: true,
        }
    }
    pub(super) const fn up_to_inch(to: f64) -> Self {
        Self {
            system: System::Inch,
            over: None,
            to: Some(to),
            known: true,
        }
    }
    /// Every diameter.
    pub(super) const fn all() -> Self {
        Self {
            system: System::Inch,
            over: None,
            to: None,
            known: true,
        }
    }
    /// The document has limits that are not known here.
    pub(super) const fn unknown() -> Self {
        Self {
            system: System::Inch,
            over: None,
            to: None,
            known: false,
        }
    }

    /// Whether the thread's diameter lies in the band. The upper edge belongs to it.
    fn holds(&self, thread: &Thread) -> bool {
        // A thousandth of a millimetre: 2 1/2 in is 63.5 mm exactly, whatever way it was computed.
        const EDGE: f64 = 1e-3;
        let mm = thread.diameter.to_mm();
        let over = self
            .over
            .is_none_or(|over| mm > self.edge_mm(over, thread) + EDGE);
        let to = self
            .to
            .is_none_or(|to| mm <= self.edge_mm(to, thread) + EDGE);
        over && to
    }

    /// An edge in mm. For an M size the edge of an inch row is the M size that stands for it.
    fn edge_mm(&self, edge: f64, thread: &Thread) -> f64 {
        match self.system {
            System::Metric => edge,
            System::Inch if thread.series.is_metric() => metric_edge(edge),
            System::Inch => edge * 25.4,
        }
    }

    /// As notation: `2.5 in < d ≤ 4 in`; empty where there is no limit.
    fn text(&self) -> String {
        let unit = match self.system {
            System::Metric => "mm",
            System::Inch => "in",
        };
        match (self.over, self.to) {
            (Some(over), Some(to)) => {
                format!("{} {unit} < d ≤ {} {unit}", digits(over), digits(to))
            }
            (None, Some(to)) => format!("d ≤ {} {unit}", digits(to)),
            (Some(over), None) => format!("d > {} {unit}", digits(over)),
            (None, None) => String::new(),
        }
    }
}

/// The M size that ASTM's metric tables set for an inch edge (from memory, as far as known; else the nearest mm).
fn metric_edge(inch: f64) -> f64 {
    const EDGES: &[(f64, f64)] = &[
        (0.75, 20.0),
        (1.0, 24.0),
        (1.25, 30.0),
        (1.5, 36.0),
        (2.5, 64.0),
        (4.0, 100.0),
        (6.0, 150.0),
        (7.0, 180.0),
        (8.0, 200.0),
    ];
    let known = EDGES.iter().find(|edge| (edge.0 - inch).abs() < 1e-9);
    known.map_or(inch * 25.4, |edge| edge.1)
}

/// One row of a strength table.
#[derive(Clone, Copy, Debug)]
pub(super) struct Row {
    standard: &'static str,
    grade: &'static str,
    band: Band,
    system: System,
    tensile: Stress,
    yield_strength: Stress,
    proof: Option<Stress>,
    source: &'static str,
    confirmed: bool,
}

impl Row {
    /// A confirmed row in MPa: tensile strength, yield strength.
    pub(super) const fn mpa(
        standard: &'static str,
        grade: &'static str,
        band: Band,
        [tensile, yield_strength]: [f64; 2],
        source: &'static str,
    ) -> Self {
        Self {
            standard,
            grade,
            band,
            system: System::Metric,
            tensile: Stress::mpa(tensile),
            yield_strength: Stress::mpa(yield_strength),
            proof: None,
            source,
            confirmed: true,
        }
    }

    /// A confirmed row in ksi: tensile strength, yield strength.
    pub(super) const fn ksi(
        standard: &'static str,
        grade: &'static str,
        band: Band,
        [tensile, yield_strength]: [f64; 2],
        source: &'static str,
    ) -> Self {
        Self {
            standard,
            grade,
            band,
            system: System::Inch,
            tensile: Stress::ksi(tensile),
            yield_strength: Stress::ksi(yield_strength),
            proof: None,
            source,
            confirmed: true,
        }
    }

    /// With the proof strength in MPa.
    pub(super) const fn with_proof(mut self, mpa: f64) -> Self {
        self.proof = Some(Stress::mpa(mpa));
        self
    }

    /// From memory alone.
    pub(super) const fn unconfirmed(mut self) -> Self {
        self.confirmed = false;
        self
    }

    /// `A193 B7`, `8.8`: the grade as it is printed. ISO classes and EN steels stand alone.
    fn designation(&self) -> String {
        match self.body_and_number() {
            ("ASTM", number) => format!("{number} {}", self.grade),
            _ => self.grade.to_owned(),
        }
    }

    fn body_and_number(&self) -> (&'static str, &'static str) {
        let (body, number) = self.standard.split_once(' ').unwrap_or(("", self.standard));
        // A193M is the metric half of A193: one grade, one name.
        (body, number.trim_end_matches('M'))
    }

    /// Whether the typed grade means this row: `B7`, `A193 B7`, `ASTM A193M-B7`, `SA-193 B7`, `ISO 898-1 8.8`.
    fn is_meant_by(&self, typed: &str) -> bool {
        let (body, number) = self.body_and_number();
        let grade = fold(self.grade);
        let prefixes = [
            String::new(),
            fold(number),
            fold(&format!("{number}M")),
            fold(&format!("{body} {number}")),
            fold(&format!("{body} {number}M")),
            fold(&format!("S{number}")),
            fold(&format!("ASME S{number}")),
        ];
        prefixes
            .iter()
            .any(|prefix| typed.strip_prefix(prefix.as_str()) == Some(&grade))
    }
}

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

/// Letters, digits and points in capitals; `Cl. 2`, `Class 2`, `class2` all become `CLASS2`.
fn fold(text: &str) -> String {
    let kept = |sign: &char| sign.is_alphanumeric() || *sign == '.';
    let text: String = text.to_uppercase().chars().filter(kept).collect();
    if text.contains("CLASS") {
        text
    } else {
        text.replacen("CL.", "CLASS", 1)
            .replacen("CL", "CLASS", usize::from(!text.contains("CL.")))
    }
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
fn meant_rows(grade: &str) -> Result<Vec<&'static Row>, MaterialError> {
    let typed = fold(grade);
    let rows: Vec<&Row> = tables().filter(|row| row.is_meant_by(&typed)).collect();
    if !rows.is_empty() {
        return Ok(rows);
    }
    let without_class = format!("{typed}CLASS");
    let begins = |name: &String| {
        let name = fold(name);
        !typed.is_empty()
            && (name.starts_with(&without_class) || name.contains(&format!("3{without_class}")))
    };
    let choices: Vec<String> = grades().into_iter().filter(begins).collect();
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
