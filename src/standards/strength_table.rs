//! The shape of a strength table: rows with a grade, a diameter band and strengths.

use super::Thread;
use crate::units::{Stress, digits};

/// In which unit a document gives its diameters, and with it its strengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum System {
    Metric,
    Inch,
}

/// The diameters for which a row holds: over one, up to and with the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Band {
    system: System,
    over: Option<f64>,
    to: Option<f64>,
    pub(super) known: bool,
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
    pub(super) fn holds(&self, thread: &Thread) -> bool {
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
    pub(super) fn text(&self) -> String {
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
    pub(super) standard: &'static str,
    pub(super) grade: &'static str,
    pub(super) band: Band,
    pub(super) system: System,
    pub(super) tensile: Stress,
    pub(super) yield_strength: Stress,
    pub(super) proof: Option<Stress>,
    pub(super) source: &'static str,
    pub(super) confirmed: bool,
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
    pub(super) fn designation(&self) -> String {
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

    /// Every spelling that means this row, folded: `B7`, `A193 B7`, `ASTM A193M-B7`, `SA-193 B7`, `ISO 898-1 8.8`.
    pub(super) fn spellings(&self) -> Vec<String> {
        let (body, number) = self.body_and_number();
        let grade = self.grade;
        [
            grade.to_owned(),
            format!("{number} {grade}"),
            format!("{number}M {grade}"),
            format!("{body} {number} {grade}"),
            format!("{body} {number}M {grade}"),
            format!("S{number} {grade}"),
            format!("ASME S{number} {grade}"),
        ]
        .map(|spelling| fold(&spelling))
        .to_vec()
    }
}

/// Letters, digits and points in capitals; `Cl. 2`, `Class 2`, `class2` all become `CLASS2`, and the word grade goes.
pub(super) fn fold(text: &str) -> String {
    let kept = |sign: &char| sign.is_alphanumeric() || *sign == '.';
    let text: String = text.to_uppercase().chars().filter(kept).collect();
    let text = text.replace("GRADE", "").replace("GR.", "");
    if text.contains("CLASS") {
        text
    } else {
        text.replace("CL.", "CLASS")
            .replace("CL", "CLASS")
            .replace("CLASSASS", "CLASS")
    }
}
