//! Inputs with their origin, and the steps: symbol = formula = numbers = result [source].

use crate::calc::{Basis, Entry, Key, Ledger};
use crate::document::card::Head;
use crate::document::note::{FormulaStep, FormulaSteps, Input, Inputs, Sign, StepGroup};
use crate::formula::{Formula, Node, Symbol};
use crate::joint::{Level, Origin};
use crate::units::Printed;
use crate::wording::Values;

use super::super::context::Context;

/// The symbol under which an entry stands in the formulas: as a result of its own formula, else as
/// the input of the first formula that uses it.
fn symbol_of(ledger: &Ledger, key: Key) -> Option<Symbol> {
    let own = ledger.entry(key).and_then(|entry| match &entry.basis {
        Basis::Formula(formula, _) => Some(formula.symbol),
        Basis::Rounded(from) if *from != key => symbol_of(ledger, *from),
        _ => None,
    });
    own.or_else(|| {
        ledger
            .entries()
            .iter()
            .find_map(|entry| match &entry.basis {
                Basis::Formula(formula, keys) => keys
                    .iter()
                    .position(|used| *used == key)
                    .and_then(|at| formula.inputs.get(at))
                    .copied(),
                _ => None,
            })
    })
}

/// Everything that was given, tabulated or defaulted and that a formula uses.
pub(super) fn inputs(context: &Context<'_>, ledger: &Ledger) -> Inputs {
    let mut groups: Vec<(String, Vec<Input>)> = Vec::new();
    for entry in ledger.entries() {
        let Basis::Input(origin) = &entry.basis else {
            continue;
        };
        let Some(symbol) = symbol_of(ledger, entry.key) else {
            continue;
        };
        let (base, index) = symbol.split();
        let input = Input {
            symbols: vec![Sign {
                base: base.to_owned(),
                index: index.to_owned(),
            }],
            meaning: meaning(context, entry.key, &symbol),
            value: printed(context, entry)
                .map(|printed| printed.joined())
                .unwrap_or_default(),
            origin: origin_words(context, entry, origin),
        };
        let group = group_key(entry.key);
        match groups.last_mut() {
            Some((last, list)) if *last == group => list.push(input),
            _ => groups.push((group, vec![input])),
        }
    }
    let label = |key: &str| context.label(&format!("note.inputs.{key}"));
    Inputs {
        head: Head {
            title: label("title"),
            note: label("note"),
        },
        columns: ["symbol", "meaning", "value", "origin"].map(label),
        groups: groups.into_iter().map(|(_, inputs)| inputs).collect(),
    }
}

/// What an entry is, with the pass it belongs to.
fn meaning(context: &Context<'_>, key: Key, symbol: &Symbol) -> String {
    let own = format!("entry.{}", key.path.replace('#', "n"));
    let words = if context.wording.has(&own) {
        context.label(&own)
    } else {
        context.label(&format!("symbol.{}", symbol.meaning))
    };
    if key.number > 0 && key.path.starts_with("tighten.pass") {
        format!("P{}, {words}", key.number)
    } else {
        words
    }
}

fn printed(context: &Context<'_>, entry: &Entry) -> Option<Printed> {
    entry
        .value
        .as_ref()
        .ok()
        .map(|value| context.units.print_si(*value, entry.dimension))
}

fn origin_words(context: &Context<'_>, entry: &Entry, origin: &Origin) -> String {
    if let Err(lack) = &entry.value {
        let values = Values::new()
            .with("who", context.who(lack.who))
            .with("key", lack.key);
        return context.say("note.origin.missing", &values);
    }
    match origin {
        Origin::Job { place, level } => {
            let level = match level {
                Level::Joint => "note.origin.level_joint",
                Level::Family => "note.origin.level_family",
                Level::Shared => "note.origin.level_pack",
            };
            let values = Values::new()
                .with("level", context.label(level))
                .with("file", context.file_name(*place))
                .with("line", place.line.to_string());
            context.say("note.origin.job_level", &values)
        }
        Origin::Table { row, confirmed } => {
            let table = context.say1("note.origin.table", "table", row.as_str());
            if *confirmed {
                table
            } else {
                format!("{table}; {}", context.label("source.not_confirmed"))
            }
        }
        Origin::Default { key } => context.say1("note.origin.default", "key", *key),
        Origin::Computed => context.label("note_more.fixed"),
    }
}

/// The part of an id by which inputs and steps are grouped.
fn group_key(key: Key) -> String {
    let first = key.path.split('.').next().unwrap_or_default();
    match first {
        "stud" | "thread" | "nut" | "bearing" => "geometry".to_owned(),
        "friction" | "target" => "load".to_owned(),
        other => other.to_owned(),
    }
}

/// All steps in the order in which they arose.
pub(super) fn steps(context: &Context<'_>, ledger: &Ledger) -> FormulaSteps {
    let mut groups: Vec<(String, StepGroup)> = Vec::new();
    let mut number = 0u32;
    for entry in ledger.entries() {
        let Some(step) = step(context, ledger, entry, number + 1) else {
            continue;
        };
        number += 1;
        let group = group_key(entry.key);
        match groups.last_mut() {
            Some((last, list)) if *last == group => list.steps.push(step),
            _ => {
                let title = context.label(&format!("note_more.group.{group}"));
                groups.push((
                    group,
                    StepGroup {
                        title,
                        steps: vec![step],
                    },
                ));
            }
        }
    }
    FormulaSteps {
        head: Head {
            title: context.label("note.steps.title"),
            note: context.label("note.steps.note"),
        },
        groups: groups.into_iter().map(|(_, group)| group).collect(),
    }
}

fn step(context: &Context<'_>, ledger: &Ledger, entry: &Entry, number: u32) -> Option<FormulaStep> {
    let symbol = symbol_of(ledger, entry.key);
    match &entry.basis {
        Basis::Formula(formula, keys) => Some(formula_step(
            context,
            ledger,
            entry,
            (formula, keys),
            number,
        )),
        Basis::Rounded(from) => rounded_step(context, ledger, entry, (*from, symbol?), number),
        _ => None,
    }
}

fn formula_step(
    context: &Context<'_>,
    ledger: &Ledger,
    entry: &Entry,
    (formula, keys): (&'static Formula, &[Key]),
    number: u32,
) -> FormulaStep {
    let numbers: Option<Vec<Printed>> = keys
        .iter()
        .map(|key| ledger.entry(*key).and_then(|input| printed(context, input)))
        .collect();
    let result = printed(context, entry);
    let remark = match (&entry.value, formula.confirmed) {
        (Err(lack), _) => {
            let values = Values::new()
                .with("key", lack.key)
                .with("who", context.who(lack.who));
            context.say("note.steps.waits", &values)
        }
        (Ok(_), false) => context.label("note.steps.not_confirmed"),
        (Ok(_), true) => String::new(),
    };
    let source = if formula.source == crate::standards::practice::SOURCE {
        context.label("source.common_practice")
    } else {
        formula.source.to_owned()
    };
    FormulaStep {
        number: number.to_string(),
        name: meaning(context, entry.key, &formula.symbol),
        symbol: formula.symbol.node(),
        formula: formula.tree(),
        numbers: numbers.map(|numbers| formula.tree_with_numbers(&numbers)),
        result: result
            .as_ref()
            .map(|it| it.value.clone())
            .unwrap_or_default(),
        unit: result.map(|it| it.unit).unwrap_or_default(),
        remark,
        source,
        alt: format!("{} = {}", formula.symbol.plain(), formula.text()),
    }
}

/// What is set or read: the exact value and the rounded one.
fn rounded_step(
    context: &Context<'_>,
    ledger: &Ledger,
    entry: &Entry,
    (from, symbol): (Key, Symbol),
    number: u32,
) -> Option<FormulaStep> {
    let exact = ledger
        .entry(from)
        .and_then(|exact| printed(context, exact))?;
    let result = printed(context, entry)?;
    // Another wrench on the same pump, or the full-value pass that repeats the setting.
    if ledger
        .entry(from)
        .is_some_and(|exact| exact.dimension != entry.dimension)
    {
        return None;
    }
    Some(FormulaStep {
        number: number.to_string(),
        name: meaning(context, entry.key, &symbol),
        symbol: symbol.node(),
        formula: Node::Quantity {
            value: exact.value.clone(),
            unit: exact.unit.clone(),
        },
        numbers: None,
        result: result.value,
        unit: result.unit,
        remark: context.label("note.origin.rounded"),
        source: String::new(),
        alt: format!("{} = {}", symbol.plain(), exact.joined()),
    })
}
