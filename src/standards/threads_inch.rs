//! Inch designations: `3/4-10 UNC`, `1 1/8-8UN`, `1-1/8 8 UN-2A`, `2-4 1/2`.

use super::asme_b1_1;
use super::threads::{Series, Thread, ThreadError, decimal, names, same, unknown_size};
use crate::units::{Length, digits};

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

pub(super) fn inch_threads() -> impl Iterator<Item = Thread> {
    inch_threads_of(|_| true)
}

/// The threads of the sizes that are wanted; only these are made.
fn inch_threads_of(wanted: impl Fn(u32) -> bool + Copy) -> impl Iterator<Item = Thread> {
    let series = move |rows: &'static [asme_b1_1::Row], series| {
        let rows = rows.iter().filter(move |row| wanted(row.0));
        rows.map(move |&(size, per_inch)| inch_thread(size, per_inch, series))
    };
    let eight = (1..=96).filter(move |&size| wanted(size) && asme_b1_1::has_eight_thread(size));
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

pub(super) fn inch(text: &str, plain: &str) -> Result<Thread, ThreadError> {
    let said = inch_text(plain).ok_or_else(|| ThreadError::Unreadable {
        text: text.to_owned(),
    })?;
    let size = |sixteenths: u32| same(f64::from(sixteenths) / 16.0, said.diameter);
    let threads: Vec<Thread> = inch_threads_of(size).collect();
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
