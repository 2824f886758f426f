//! A thread by its designation: what it is, what there is instead, and its geometry.

use super::symbols::{DIAMETER, PITCH, PITCH_DIAMETER, ROOT_DIAMETER};
use super::threads_inch::{inch, inch_threads};
use super::threads_metric::{metric, metric_threads};
use super::{asme_b1_1, iso_261, iso_724, iso_898_1, mechanics};
use crate::formula::Formula;
use crate::units::{Area, Length, Quantity};

/// The family a thread belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Series {
    /// ISO metric with its coarse pitch.
    MetricCoarse,
    /// ISO metric with another pitch.
    MetricFine,
    /// Unified coarse.
    Unc,
    /// Unified fine.
    Unf,
    /// Eight threads per inch at every diameter.
    EightUn,
}

impl Series {
    /// Whether sizes are in mm.
    pub const fn is_metric(self) -> bool {
        matches!(self, Self::MetricCoarse | Self::MetricFine)
    }

    /// The document that lists the series.
    pub const fn source(self) -> &'static str {
        if self.is_metric() {
            "ISO 261:1998"
        } else {
            "ASME B1.1-2003"
        }
    }

    pub(super) const fn suffix(self) -> &'static str {
        match self {
            Self::MetricCoarse | Self::MetricFine => "",
            Self::Unc => "UNC",
            Self::Unf => "UNF",
            Self::EightUn => "8UN",
        }
    }
}

/// A thread that a standard lists.
#[derive(Clone, Debug, PartialEq)]
pub struct Thread {
    /// The one spelling that is printed: `M48×5`, `3/4-10 UNC`, `1 1/8-8UN`.
    pub designation: String,
    /// Its family.
    pub series: Series,
    /// Nominal diameter.
    pub diameter: Length,
    /// Pitch.
    pub pitch: Length,
}

/// Why a text is no thread. Each variant holds what could be written instead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ThreadError {
    /// The text has not the shape of a designation.
    Unreadable {
        /// As typed.
        text: String,
    },
    /// No thread has this diameter.
    UnknownSize {
        /// As typed.
        text: String,
        /// Threads of the nearest diameters.
        near: Vec<String>,
    },
    /// The diameter is known, but not with this pitch.
    UnknownPitch {
        /// As typed.
        text: String,
        /// The threads of this diameter.
        known: Vec<String>,
    },
    /// The diameter is known, but has no pitch of its own: it must be written.
    PitchMissing {
        /// As typed.
        text: String,
        /// The threads of this diameter.
        known: Vec<String>,
    },
}

impl Thread {
    /// Reads a designation: `M48x5`, `M20`, `3/4-10 UNC`, `1 1/8-8UN`, `2 1/2 8UN`. Tolerance classes (`-6g`, `-2A`)
    /// are read over.
    pub fn parse(text: &str) -> Result<Self, ThreadError> {
        let plain = text.trim().replace(['\u{a0}', '\u{202f}', '\u{2009}'], " ");
        match plain.strip_prefix(['M', 'm']) {
            Some(rest) => metric(text, rest),
            None => inch(text, &plain),
        }
    }

    /// Every thread that is known, metric first, by diameter.
    pub fn all() -> Vec<Self> {
        let metric = iso_261::ROWS.iter().flat_map(metric_threads);
        metric.chain(inch_threads()).collect()
    }

    /// The formula of the pitch diameter (`d2` from `d`, `P`).
    pub fn pitch_diameter_formula(&self) -> &'static Formula {
        if self.series.is_metric() {
            &iso_724::PITCH_DIAMETER_OF
        } else {
            &asme_b1_1::PITCH_DIAMETER_OF
        }
    }

    /// The formula of the root diameter (`d3` from `d`, `P`).
    pub fn root_diameter_formula(&self) -> &'static Formula {
        if self.series.is_metric() {
            &iso_724::ROOT_DIAMETER_OF
        } else {
            &asme_b1_1::ROOT_DIAMETER_OF
        }
    }

    /// The formula of the tensile stress area (`A_s` from `d`, `P`).
    pub fn stress_area_formula(&self) -> &'static Formula {
        if self.series.is_metric() {
            &iso_898_1::STRESS_AREA_OF
        } else {
            &asme_b1_1::STRESS_AREA_OF
        }
    }

    fn compute(&self, formula: &Formula) -> f64 {
        formula.value_with(&[(DIAMETER, self.diameter.si()), (PITCH, self.pitch.si())])
    }

    /// Pitch diameter.
    pub fn pitch_diameter(&self) -> Length {
        Length::from_si(self.compute(self.pitch_diameter_formula()))
    }

    /// Root diameter.
    pub fn root_diameter(&self) -> Length {
        Length::from_si(self.compute(self.root_diameter_formula()))
    }

    /// Tensile stress area.
    pub fn stress_area(&self) -> Area {
        Area::from_si(self.compute(self.stress_area_formula()))
    }

    /// Root area.
    pub fn root_area(&self) -> Area {
        let root = self.root_diameter().si();
        Area::from_si(mechanics::ROOT_AREA_OF.value_with(&[(ROOT_DIAMETER, root)]))
    }

    /// Pitch diameter and the other inputs that every torque formula takes from the thread.
    pub fn inputs(&self) -> [(crate::formula::Symbol, f64); 3] {
        [
            (DIAMETER, self.diameter.si()),
            (PITCH, self.pitch.si()),
            (PITCH_DIAMETER, self.pitch_diameter().si()),
        ]
    }
}

pub(super) fn names(threads: &[Thread]) -> Vec<String> {
    threads
        .iter()
        .map(|thread| thread.designation.clone())
        .collect()
}

/// A plain decimal number above zero; `inf`, signs and exponents are no sizes.
pub(super) fn decimal(text: &str) -> Option<f64> {
    let text = text.trim();
    let digits_only = text
        .chars()
        .all(|sign| sign.is_ascii_digit() || sign == '.');
    if !digits_only || !text.starts_with(|sign: char| sign.is_ascii_digit()) {
        return None;
    }
    text.parse()
        .ok()
        .filter(|value: &f64| value.is_finite() && *value > 0.0)
}

pub(super) fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

/// The threads of the two or three nearest diameters, coarse ones and 8UN first by their order in the tables.
pub(super) fn unknown_size(
    text: &str,
    all: impl Iterator<Item = Thread>,
    diameter: Length,
) -> ThreadError {
    let distance = |thread: &Thread| (thread.diameter.to_mm() - diameter.to_mm()).abs();
    let mut threads: Vec<Thread> = all.collect();
    threads.sort_by(|a, b| distance(a).total_cmp(&distance(b)));
    threads.dedup_by(|a, b| same(a.diameter.to_mm(), b.diameter.to_mm()));
    threads.truncate(3);
    threads.sort_by(|a, b| a.diameter.to_mm().total_cmp(&b.diameter.to_mm()));
    ThreadError::UnknownSize {
        text: text.to_owned(),
        near: names(&threads),
    }
}
