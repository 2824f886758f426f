//! Metric designations: `M48x5`, `M20`, `M64×4-6g`.

use super::iso_261;
use super::threads::{Series, Thread, ThreadError, decimal, names, same, unknown_size};
use crate::units::{Length, digits};

fn metric_thread(diameter: f64, pitch: f64, series: Series) -> Thread {
    Thread {
        designation: format!("M{}×{}", digits(diameter), digits(pitch)),
        series,
        diameter: Length::mm(diameter),
        pitch: Length::mm(pitch),
    }
}

pub(super) fn metric_threads(row: &iso_261::Row) -> Vec<Thread> {
    let coarse = row
        .coarse
        .map(|pitch| metric_thread(row.diameter, pitch, Series::MetricCoarse));
    let fine = row
        .fine
        .iter()
        .map(|&pitch| metric_thread(row.diameter, pitch, Series::MetricFine));
    coarse.into_iter().chain(fine).collect()
}

pub(super) fn metric(text: &str, rest: &str) -> Result<Thread, ThreadError> {
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
