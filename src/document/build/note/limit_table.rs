//! The limits in words: ratio and verdict of each.

use crate::document::blocks::Head;
use crate::document::note::{LimitRow, Limits};

use super::super::context::Context;
use super::limits::Row;

/// Above this a ratio is printed as being above it.
const MOST_RATIO: f64 = 9.0;
/// Rounding of the last digits must not fail a value that is equal to its limit.
const SLACK: f64 = 1e-9;

/// A ratio to two decimals, as a reader compares it with 1.
pub(super) fn ratio_text(ratio: f64) -> String {
    if ratio > MOST_RATIO {
        format!("> {MOST_RATIO:.0}")
    } else {
        format!("{:.2}", ratio * (1.0 + 1e-12))
    }
}

/// The limits as a table; the one with the greatest ratio stands out.
pub(super) fn table(context: &Context<'_>, rows: Vec<Row>) -> Limits {
    let label = |key: &str| context.label(&format!("note.limits.{key}"));
    let worst = rows.iter().filter_map(|row| row.ratio).fold(0.0, f64::max);
    let worded = |row: Row| {
        let fails = row.ratio.is_some_and(|ratio| ratio > 1.0 + SLACK);
        let verdict = match row.ratio {
            None => label("unknown"),
            Some(_) if fails => label("fail"),
            Some(_) => label("pass"),
        };
        LimitRow {
            strong: fails || row.ratio.is_some_and(|ratio| ratio >= worst - 1e-12),
            quantity: row.quantity,
            value: row.value.unwrap_or_default(),
            limit: row.limit,
            ratio: row.ratio.map(ratio_text).unwrap_or_default(),
            verdict,
            source: row.source,
            fails,
        }
    };
    Limits {
        head: Head {
            title: label("title"),
            note: label("note"),
        },
        columns: ["quantity", "value", "limit", "ratio", "verdict", "source"].map(label),
        rows: rows.into_iter().map(worded).collect(),
    }
}
