//! Reads a file of cases and works its rows.

use std::collections::{BTreeMap, BTreeSet};

use serde::Deserialize;
use studbook::formula::{Formula, Symbol};
use studbook::standards::{self, Thread, mechanics, symbols, vdi_2230};
use studbook::units::{Dimension, Quantity, Unit, parse_si, unit_named};

const PROVENANCE: [&str; 4] = ["read", "memory high", "memory middle", "computed"];

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct CaseFile {
    tables: Vec<Table>,
    left_out: Vec<LeftOut>,
}

/// Figures that were at hand and are not held against a formula, and why.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct LeftOut {
    figures: String,
    because: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    about: String,
    source: String,
    provenance: String,
    /// Inputs of all rows: names of symbols, then a quantity. `grade` may stand here too.
    #[serde(default)]
    given: BTreeMap<String, String>,
    /// Ids of formulas; `thread` is all geometry of the thread and, with a grade, its strength.
    steps: Vec<String>,
    /// `figure`, `thread`, `grade`, `F kN` for an input, `= F kN` for what is expected.
    columns: Vec<String>,
    /// Tolerance for each expected symbol.
    within: BTreeMap<String, String>,
    rows: Vec<Vec<String>>,
}

/// What is known while a row is worked.
#[derive(Default)]
struct Work {
    values: Vec<(Symbol, f64)>,
    used: BTreeSet<&'static str>,
}

impl Work {
    fn set(&mut self, symbol: Symbol, value: f64) {
        self.values.retain(|(known, _)| *known != symbol);
        self.values.push((symbol, value));
    }

    fn get(&self, symbol: Symbol) -> Option<f64> {
        let found = self.values.iter().find(|(known, _)| *known == symbol);
        found.map(|&(_, value)| value)
    }

    fn apply(&mut self, formula: &'static Formula) -> Result<(), String> {
        for input in &formula.inputs {
            if self.get(*input).is_none() {
                return Err(format!("{} wants {}", formula.id, input.name));
            }
        }
        let value = formula.value_with(&self.values);
        self.used.insert(formula.id);
        self.set(formula.symbol, value);
        Ok(())
    }

    fn thread(&mut self, thread: &Thread) -> Result<(), String> {
        self.set(symbols::DIAMETER, thread.diameter.si());
        self.set(symbols::PITCH, thread.pitch.si());
        self.apply(thread.pitch_diameter_formula())?;
        self.apply(thread.root_diameter_formula())?;
        self.apply(thread.stress_area_formula())?;
        self.apply(&mechanics::ROOT_AREA_OF)?;
        self.apply(&mechanics::NOMINAL_AREA_OF)?;
        self.apply(&vdi_2230::STRESS_DIAMETER_OF)?;
        self.apply(&vdi_2230::COMBINED_AREA_OF)
    }

    fn strength(&mut self, grade: &str, thread: &Thread) -> Result<(), String> {
        let found = standards::strength(grade, thread).map_err(|why| format!("{why:?}"))?;
        self.set(symbols::TENSILE, found.tensile.si());
        self.set(symbols::YIELD, found.yield_strength.si());
        if let Some(proof) = found.proof {
            self.set(symbols::PROOF, proof.si());
        }
        Ok(())
    }
}

fn symbol(name: &str) -> Result<Symbol, String> {
    let found = symbols::ALL.iter().find(|symbol| symbol.name == name);
    found.copied().ok_or_else(|| format!("no symbol {name}"))
}

/// `F kN` or `µ_th µ_b`: the symbols and the unit, empty for ratios.
fn header(text: &str) -> Result<(Vec<Symbol>, &str), String> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let first = symbol(words.first().ok_or("an empty column")?)?;
    match words[..] {
        [_, unit] if unit_named(first.dimension, unit).is_some() => Ok((vec![first], unit)),
        _ => Ok((
            words
                .iter()
                .map(|name| symbol(name))
                .collect::<Result<_, _>>()?,
            "",
        )),
    }
}

fn quantity(text: &str, dimension: Dimension) -> Result<f64, String> {
    parse_si(text.trim(), dimension).map_err(|why| format!("{text}: {why:?}"))
}

/// Works one row and says what does not agree.
fn work_row(table: &Table, row: &[String], work: &mut Work) -> Result<(), String> {
    if row.len() != table.columns.len() {
        return Err("another count of cells than of columns".to_owned());
    }
    let mut thread = None;
    let mut grade = table.given.get("grade").cloned();
    let mut expected = Vec::new();
    for (name, text) in table.given.iter().filter(|(name, _)| *name != "grade") {
        for symbol in header(name)?.0 {
            work.set(symbol, quantity(text, symbol.dimension)?);
        }
    }
    for (column, cell) in table.columns.iter().zip(row) {
        match (column.as_str(), column.strip_prefix("= ")) {
            ("figure", _) => {}
            ("thread", _) => thread = Some(Thread::parse(cell).map_err(|why| format!("{why:?}"))?),
            ("grade", _) => grade = Some(cell.clone()),
            (_, Some(wanted)) => expected.push((header(wanted)?, cell)),
            (input, None) => {
                let (names, unit) = header(input)?;
                for symbol in names {
                    work.set(
                        symbol,
                        quantity(&format!("{cell} {unit}"), symbol.dimension)?,
                    );
                }
            }
        }
    }
    if let (Some(grade), Some(thread)) = (&grade, &thread) {
        work.strength(grade, thread)?;
    }
    for step in &table.steps {
        match (step.as_str(), &thread) {
            ("thread", Some(thread)) => work.thread(thread)?,
            ("strength", Some(_)) if grade.is_some() => {}
            (id, _) => work.apply(standards::formula(id).ok_or(format!("no formula {id}"))?)?,
        }
    }
    if expected.is_empty() {
        return Err("nothing is expected".to_owned());
    }
    let wrong: Vec<String> = expected
        .into_iter()
        .filter_map(|((names, unit), cell)| agree(table, work, (names[0], unit), cell).err())
        .collect();
    if wrong.is_empty() {
        Ok(())
    } else {
        Err(wrong.join("; "))
    }
}

/// Holds one result against its printed figure.
fn agree(
    table: &Table,
    work: &Work,
    (symbol, unit): (Symbol, &str),
    cell: &str,
) -> Result<(), String> {
    let got = work
        .get(symbol)
        .ok_or(format!("{} was not computed", symbol.name))?;
    let unit = unit_named(symbol.dimension, unit);
    let got = unit.map_or(got, |unit| unit.from_si(got));
    let printed: f64 = cell.parse().map_err(|_| format!("{cell} is no number"))?;
    let within = table
        .within
        .get(symbol.name)
        .ok_or(format!("no tolerance for {}", symbol.name))?;
    if is_within(within, (got, printed), cell, (symbol, unit))? {
        Ok(())
    } else {
        Err(format!(
            "{} expected {cell}, got {got} (within {within})",
            symbol.name
        ))
    }
}

fn is_within(
    within: &str,
    (got, printed): (f64, f64),
    cell: &str,
    (symbol, unit): (Symbol, Option<&Unit>),
) -> Result<bool, String> {
    if within == "rounded" {
        let decimals = cell
            .split_once('.')
            .map_or(0, |(_, decimals)| decimals.len());
        // The half goes up, whatever the last bit of the binary form is.
        let rounded = format!("{:.decimals$}", got * (1.0 + 1e-12));
        return Ok((rounded.parse::<f64>().unwrap() - printed).abs() < 1e-9 * printed.abs());
    }
    if let Some(by) = within.strip_prefix("does not reproduce, ") {
        let by = quantity(by, Dimension::Ratio)?;
        return Ok(((printed / got - 1.0).abs() - by).abs() < 0.0005);
    }
    let mut limit: f64 = 0.0;
    for part in within.split(" or ") {
        let absolute = if part.ends_with('%') {
            printed.abs() * quantity(part, Dimension::Ratio)?
        } else {
            let si = quantity(part, symbol.dimension)?;
            unit.map_or(si, |unit| si / unit.factor)
        };
        limit = limit.max(absolute);
    }
    Ok((got - printed).abs() <= limit)
}

fn read(name: &str, text: &str) -> CaseFile {
    serde_yaml::from_str(text).unwrap_or_else(|why| panic!("{name}: {why}"))
}

/// Runs a file. Returns how many rows, which formulas were used, and what failed.
pub(crate) fn run(name: &str, text: &str) -> (usize, BTreeSet<&'static str>, Vec<String>) {
    let file = read(name, text);
    let mut failures = Vec::new();
    let mut used = BTreeSet::new();
    let mut count = 0;
    for left in &file.left_out {
        if left.figures.is_empty() || left.because.is_empty() {
            failures.push("a figure is left out without a reason".to_owned());
        }
    }
    for table in &file.tables {
        if table.source.is_empty() || !PROVENANCE.contains(&table.provenance.as_str()) {
            failures.push(format!("{}: no source or no provenance", table.about));
        }
        for row in &table.rows {
            count += 1;
            let mut work = Work::default();
            if let Err(why) = work_row(table, row, &mut work) {
                failures.push(format!("{} ({}): {why}", row[0], table.about));
            }
            used.append(&mut work.used);
        }
    }
    (count, used, failures)
}
