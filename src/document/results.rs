//! The results of a joint for other programs: the interface by which others check this one.

use serde::Serialize;

use crate::calc::{Basis, Entry, Key, Ledger};
use crate::joint::{Joint, Origin};
use crate::methods::Group;
use crate::report::Sources;
use crate::units::Units;
use crate::wording::Wording;

/// All results of one joint.
#[derive(Clone, Debug, Serialize)]
pub struct JointResults {
    /// Tag.
    pub tag: String,
    /// Group of joints with equal inputs; the calculation note has its name.
    pub group: String,
    /// Order of the stepped passes: one list of studs for each move.
    pub order: Vec<Vec<usize>>,
    /// Tools that turn when tightening.
    pub tools: Vec<String>,
    /// Everything in the ledger, in the order in which it arose.
    pub results: Vec<ResultRow>,
}

/// One result.
#[derive(Clone, Debug, Serialize)]
pub struct ResultRow {
    /// Stable id.
    pub id: String,
    /// Value in SI (m, N, Pa, N·m, J, s, rad, K, or a ratio), unrounded; `null` if missing.
    pub value: Option<f64>,
    /// Exactly as on paper.
    pub printed: Option<String>,
    /// Exactly as on paper; empty for counts and bare ratios.
    pub unit: String,
    /// The key of the job that would give a missing value.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub missing: Option<&'static str>,
    /// How it came about: `input`, `formula`, `rounded`, `least of`, `sum`, `simulated`.
    pub basis: &'static str,
    /// The formula with symbols.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub formula: Option<String>,
    /// Document, edition, clause of the formula; row of the table; key of a default; place in the job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub source: Option<String>,
    /// What went in: symbol, id, and where that came from.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub inputs: Vec<InputRow>,
}

/// One input of a result.
#[derive(Clone, Debug, Serialize)]
pub struct InputRow {
    /// Symbol in the formula; empty where there is none.
    pub symbol: String,
    /// Id of the entry.
    pub id: String,
    /// Where it came from.
    pub origin: String,
}

/// In what the results of a joint are said.
#[derive(Clone, Copy)]
pub struct Terms<'a> {
    /// The pack's leading units.
    pub units: &'a Units,
    /// The files that origins name.
    pub sources: &'a Sources,
    /// The words for what is no document.
    pub wording: &'a Wording,
}

/// The results of a joint.
pub fn of_joint(joint: &Joint, group: &Group, terms: Terms<'_>) -> JointResults {
    let computed = &group.computed;
    let ledger = &computed.ledger;
    JointResults {
        tag: joint.tag.clone(),
        group: group.name.clone(),
        order: computed
            .order
            .as_ref()
            .map(|order| order.moves.clone())
            .unwrap_or_default(),
        tools: computed
            .chosen
            .turning
            .iter()
            .map(|tool| tool.name.clone())
            .collect(),
        results: ledger
            .entries()
            .map(|entry| row(entry, ledger, terms))
            .collect(),
    }
}

fn row(entry: Entry<'_>, ledger: &Ledger, terms: Terms<'_>) -> ResultRow {
    let Terms {
        units,
        sources,
        wording,
    } = terms;
    let printed = entry
        .value
        .ok()
        .map(|value| units.print_si(value, entry.dimension));
    let of_keys = |keys: &[Key]| -> Vec<InputRow> {
        keys.iter()
            .map(|key| input(String::new(), *key, ledger, sources))
            .collect()
    };
    let (basis, formula, source, inputs) = match entry.basis {
        Basis::Input(origin) => (
            "input",
            None,
            Some(origin_text(origin, sources)),
            Vec::new(),
        ),
        Basis::Formula(formula, keys) => {
            let rows = formula
                .inputs
                .iter()
                .zip(keys)
                .map(|(symbol, key)| input(symbol.plain(), *key, ledger, sources))
                .collect();
            let text = format!("{} = {}", formula.symbol.plain(), formula.text());
            let source = wording.source(formula.source, formula.confirmed);
            ("formula", Some(text), Some(source), rows)
        }
        Basis::Rounded(key) => (
            "rounded",
            None,
            None,
            vec![input(String::new(), key, ledger, sources)],
        ),
        Basis::Chosen(keys) => ("least of", None, None, of_keys(keys)),
        Basis::Sum => ("sum", None, None, Vec::new()),
        Basis::Simulated(keys) => ("simulated", None, None, of_keys(keys)),
    };
    ResultRow {
        id: entry.key.to_string(),
        value: entry.value.ok(),
        unit: printed
            .as_ref()
            .map(|printed| printed.unit.clone())
            .unwrap_or_default(),
        printed: printed.map(|printed| printed.value),
        missing: entry.value.err().map(|lack| lack.key),
        basis,
        formula,
        source,
        inputs,
    }
}

fn input(symbol: String, key: Key, ledger: &Ledger, sources: &Sources) -> InputRow {
    let origin = match ledger.entry(key).map(|entry| entry.basis) {
        Some(Basis::Input(origin)) => origin_text(origin, sources),
        _ => "computed".to_owned(),
    };
    InputRow {
        symbol,
        id: key.to_string(),
        origin,
    }
}

/// Where a value comes from, in the form that other programs read.
pub fn origin_text(origin: &Origin, sources: &Sources) -> String {
    match origin {
        Origin::Job { place, .. } => format!("job {}", sources.name_place(*place)),
        Origin::Table {
            row,
            confirmed: true,
        } => format!("table {row}"),
        Origin::Table {
            row,
            confirmed: false,
        } => format!("table {row} (not confirmed)"),
        Origin::Default { key } => format!("default {key}"),
        Origin::Computed => "computed".to_owned(),
    }
}
