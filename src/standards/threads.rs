//! A thread by its designation: what it is, what there is instead, and its geometry.

use super::symbols::{DIAMETER, PITCH, PITCH_DIAMETER, ROOT_DIAMETER};
use super::{asme_b1_1, iso_261, iso_724, iso_898_1, mechanics};
use crate::formula::Formula;
use crate::units::{Area, Length, Quantity, digits};

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

    const fn suffix(self) -> &'static str {
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

// Metric.

fn metric_thread(diameter: f64, pitch: f64, series: Series) -> Thread {
    Thread {
        designation: format!("M{}×{}", digits(diameter), digits(pitch)),
        series,
        diameter: Length::mm(diameter),
        pitch: Length::mm(pitch),
    }
}

fn metric_threads(row: &iso_261::Row) -> Vec<Thread> {
    let coarse = row
        .coarse
        .map(|pitch| metric_thread(row.diameter, pitch, Series::MetricCoarse));
    let fine = row
        .fine
        .iter()
        .map(|&pitch| metric_thread(row.diameter, pitch, Series::MetricFine));
    coarse.into_iter().chain(fine).collect()
}

fn names(threads: &[Thread]) -> Vec<String> {
    threads
        .iter()
        .map(|thread| thread.designation.clone())
        .collect()
}

fn metric(text: &str, rest: &str) -> Result<Thread, ThreadError> {
    let unreadable = || ThreadError::Unreadable {
        text: text.to_owned(),
    };
    let size = without_tolerance(rest);
    let mut parts = size.split(['x', 'X', '×', '*']);
    let diameter = parts.next().and_then(decimal).ok_or_else(unreadable)?;
    let pitch = match parts.next() {
        Some(part) => Some(decimal(part).ok_or_else(unreadable)?),
        None => None,
    };
    if parts.next().is_some() {
        return Err(unreadable());
    }
    let Some(row) = iso_261::ROWS
        .iter()
        .find(|row| same(row.diameter, diameter))
    else {
        let all = Thread::all()
            .into_iter()
            .filter(|thread| thread.series.is_metric());
        return Err(unknown_size(text, all, Length::mm(diameter)));
    };
    let threads = metric_threads(row);
    match pitch {
        Some(pitch) => {
            let wanted = |thread: &&Thread| same(thread.pitch.to_mm(), pitch);
            threads
                .iter()
                .find(wanted)
                .cloned()
                .ok_or_else(|| ThreadError::UnknownPitch {
                    text: text.to_owned(),
                    known: names(&threads),
                })
        }
        None => {
            let coarse = |thread: &&Thread| thread.series == Series::MetricCoarse;
            threads
                .iter()
                .find(coarse)
                .cloned()
                .ok_or_else(|| ThreadError::PitchMissing {
                    text: text.to_owned(),
                    known: names(&threads),
                })
        }
    }
}

/// Cuts a tolerance class off: `48x5-6g`, `48x5 - 6H`.
fn without_tolerance(size: &str) -> &str {
    match size.split_once('-') {
        Some((size, class)) if class.trim().ends_with(['g', 'h', 'e', 'f', 'G', 'H']) => size,
        _ => size,
    }
}

/// A plain decimal number above zero; `inf`, signs and exponents are no sizes.
fn decimal(text: &str) -> Option<f64> {
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

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

/// The threads of the two or three nearest diameters, coarse ones and 8UN first by their order in the tables.
fn unknown_size(text: &str, all: impl Iterator<Item = Thread>, diameter: Length) -> ThreadError {
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

// Inch.

/// `1 1/8` from eighteen sixteenths.
fn inch_size(sixteenths: u32) -> String {
    let (whole, part) = (sixteenths / 16, sixteenths % 16);
    if part == 0 {
        return whole.to_string();
    }
    let mut fraction = (part, 16);
    while fraction.0.is_multiple_of(2) {
        fraction = (fraction.0 / 2, fraction.1 / 2);
    }
    let whole = if whole == 0 {
        String::new()
    } else {
        format!("{whole} ")
    };
    format!("{whole}{}/{}", fraction.0, fraction.1)
}

fn inch_thread(sixteenths: u32, per_inch: f64, series: Series) -> Thread {
    let size = inch_size(sixteenths);
    let half = if same(per_inch, 4.5) {
        "4 1/2".to_owned()
    } else {
        digits(per_inch)
    };
    let designation = match series {
        // 8UN says its count already.
        Series::EightUn => format!("{size}-8UN"),
        _ => format!("{size}-{half} {}", series.suffix()),
    };
    Thread {
        designation,
        series,
        diameter: Length::inch(f64::from(sixteenths) / 16.0),
        pitch: Length::inch(1.0 / per_inch),
    }
}

fn inch_threads() -> impl Iterator<Item = Thread> {
    let series = |rows: &'static [asme_b1_1::Row], series| {
        rows.iter()
            .map(move |&(size, per_inch)| inch_thread(size, per_inch, series))
    };
    let eight = (1..=96).filter(|&size| asme_b1_1::has_eight_thread(size));
    series(asme_b1_1::UNC, Series::Unc)
        .chain(series(asme_b1_1::UNF, Series::Unf))
        .chain(eight.map(|size| inch_thread(size, 8.0, Series::EightUn)))
}

/// What an inch designation says.
struct InchText {
    diameter: f64,
    per_inch: Option<f64>,
    series: Option<Series>,
}

fn inch(text: &str, plain: &str) -> Result<Thread, ThreadError> {
    let said = inch_text(plain).ok_or_else(|| ThreadError::Unreadable {
        text: text.to_owned(),
    })?;
    let threads: Vec<Thread> = inch_threads()
        .filter(|thread| same(thread.diameter.to_inch(), said.diameter))
        .collect();
    if threads.is_empty() {
        return Err(unknown_size(
            text,
            inch_threads(),
            Length::inch(said.diameter),
        ));
    }
    let fits = |thread: &&Thread| {
        said.per_inch
            .is_none_or(|count| same(1.0 / thread.pitch.to_inch(), count))
            && said.series.is_none_or(|series| series == thread.series)
    };
    // 1-8 alone is UNC and 8UN at once, the same thread: the first is taken.
    let found = threads.iter().find(fits).cloned();
    match (found, said.per_inch.is_none() && said.series.is_none()) {
        (Some(thread), false) => Ok(thread),
        (_, true) => Err(ThreadError::PitchMissing {
            text: text.to_owned(),
            known: names(&threads),
        }),
        (None, false) => Err(ThreadError::UnknownPitch {
            text: text.to_owned(),
            known: names(&threads),
        }),
    }
}

/// Reads `1 1/8-8UN`, `1-1/8 8 UN`, `3/4-10 UNC-2A`, `2-4 1/2`, `1.5-6`, `3/4 in UNC`.
fn inch_text(plain: &str) -> Option<InchText> {
    let words = words(plain);
    let is_number = |word: &&String| word.starts_with(|sign: char| sign.is_ascii_digit());
    let numbers: Vec<&String> = words
        .iter()
        .take_while(|word| is_number(word) || is_inch(word))
        .collect();
    let rest = &words[numbers.len()..];
    let mut numbers = numbers.into_iter().filter(is_number).peekable();
    let diameter = mixed(&mut numbers)?;
    let per_inch = match numbers.peek() {
        Some(_) => Some(mixed(&mut numbers)?),
        None => None,
    };
    if numbers.next().is_some() {
        return None;
    }
    let series = match rest.first().map(|word| word.to_ascii_uppercase()) {
        None => None,
        Some(word) => match word.as_str() {
            "UNC" | "UNRC" | "NC" => Some(Series::Unc),
            "UNF" | "UNRF" | "NF" => Some(Series::Unf),
            "UN" | "UNR" if per_inch.is_some_and(|count| same(count, 8.0)) => Some(Series::EightUn),
            _ => return None,
        },
    };
    let class_only = rest.iter().skip(1).all(|word| word.len() == 1);
    class_only.then_some(InchText {
        diameter,
        per_inch,
        series,
    })
}

fn is_inch(word: &str) -> bool {
    matches!(word, "in" | "inch" | "\"")
}

/// Runs of digits (with their point and stroke), and runs of letters; everything else separates.
fn words(text: &str) -> Vec<String> {
    let kind = |sign: char| match sign {
        '0'..='9' | '.' | '/' | '\u{2044}' => 1,
        '"' => 2,
        letter if letter.is_alphabetic() => 3,
        _ => 0,
    };
    let mut words: Vec<String> = Vec::new();
    let mut last = 0;
    for sign in text.chars() {
        let this = kind(sign);
        if this != 0 {
            if this != last {
                words.push(String::new());
            }
            if let Some(word) = words.last_mut() {
                word.push(if sign == '\u{2044}' { '/' } else { sign });
            }
        }
        last = this;
    }
    words
}

/// A whole or decimal number, with a fraction after it where there is one.
fn mixed<'a>(numbers: &mut std::iter::Peekable<impl Iterator<Item = &'a String>>) -> Option<f64> {
    let first = numbers.next()?;
    if first.contains('/') {
        return fraction(first);
    }
    let whole = decimal(first)?;
    match numbers.next_if(|word| word.contains('/')) {
        Some(part) => Some(whole + fraction(part)?),
        None => Some(whole),
    }
}

fn fraction(text: &str) -> Option<f64> {
    let (over, under) = text.split_once('/')?;
    let value = decimal(over)? / decimal(under)?;
    (value < 1.0).then_some(value)
}
