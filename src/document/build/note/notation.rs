//! How an entry of the ledger is named on a note: its symbol, its meaning, its group, its digits.

use crate::calc::{Basis, Entry, Key, Ledger};
use crate::formula::Symbol;
use crate::units::Printed;

use super::super::context::Context;

/// The symbol under which an entry stands in the formulas: as a result of its own formula, else as
/// the input of the first formula that uses it.
pub(super) fn symbol_of(ledger: &Ledger, key: Key) -> Option<Symbol> {
    let own = ledger.entry(key).and_then(|entry| match entry.basis {
        Basis::Formula(formula, _) => Some(formula.symbol),
        Basis::Rounded(from) if from != key && has_dimension_of(ledger, &entry, from) => {
            symbol_of(ledger, from)
        }
        _ => None,
    });
    own.or_else(|| {
        ledger.entries().find_map(|entry| match entry.basis {
            Basis::Formula(formula, keys) => keys
                .iter()
                .position(|used| *used == key)
                .and_then(|at| formula.inputs.get(at))
                .copied(),
            _ => None,
        })
    })
}

/// Whether two entries measure the same, so that one can be the other rounded.
pub(super) fn has_dimension_of(ledger: &Ledger, entry: &Entry<'_>, other: Key) -> bool {
    ledger
        .entry(other)
        .is_some_and(|other| other.dimension == entry.dimension)
}

/// What an entry is, in words: its own where an id needs them, else those of its symbol.
pub(super) fn meaning(context: &Context<'_>, key: Key, symbol: Option<&Symbol>) -> String {
    let own = format!("entry.{}", key.path.replace('#', "n"));
    match symbol {
        Some(symbol) if !context.wording.has(&own) => {
            context.label(&format!("symbol.{}", symbol.meaning))
        }
        _ => context.label(&own),
    }
}

/// The value of an entry as it is printed, if it is known.
pub(super) fn printed(context: &Context<'_>, entry: &Entry<'_>) -> Option<Printed> {
    entry
        .value
        .ok()
        .map(|value| context.units.print_si(value, entry.dimension))
}

/// Values of a stepped pass and the points they lie between stand in the table of the passes.
pub(super) fn is_of_a_pass(key: Key) -> bool {
    key.number > 0
        && ["tighten.pass.", "tighten.calibration.", "loosen.release."]
            .iter()
            .any(|start| key.path.starts_with(start))
}

/// The part of an id by which inputs and steps are grouped.
pub(super) fn group_of(key: Key) -> &'static str {
    let starts = |start: &str| key.path.starts_with(start);
    let lengths = [
        "stud.engagement",
        "stud.protrusion",
        "stud.stored_energy",
        "turn",
        "stretch",
    ];
    let geometry = ["stud", "thread", "nut", "bearing"];
    if lengths.into_iter().any(starts) {
        "lengths"
    } else if geometry.into_iter().any(starts) {
        "geometry"
    } else if starts("loosen") || starts("jackbolt.break_out") {
        "loosen"
    } else if starts("jackbolt") {
        "jackbolts"
    } else {
        "load"
    }
}
