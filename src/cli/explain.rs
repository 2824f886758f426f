//! `studbook explain`.

use std::path::Path;

use crate::calc::{Basis, Entry, Key, Ledger};
use crate::document::results::origin_text;
use crate::units::{Printed, Units};
use crate::wording::Values;

use super::Exit;
use super::args::{Format, Overrides};
use super::load::{Loaded, load};
use super::output::{exit_of, print, print_json, say};
use super::show::{find, of_joint};

/// Prints the calculation of one joint, formula by formula.
pub(super) fn run(
    job: &Path,
    tag: &str,
    format: Format,
    overrides: &Overrides,
) -> Result<Exit, Exit> {
    let loaded = load(job, overrides)?;
    let sound = loaded.sound()?;
    let index = find(&loaded, tag)?;
    match format {
        Format::Json => print_json(&of_joint(&loaded, index))?,
        Format::Text => {
            let group = loaded
                .plan
                .of(index)
                .expect("the plan holds every joint that was resolved");
            let units = sound.units();
            let ledger = &group.computed.ledger;
            let lines: Vec<String> = ledger
                .entries()
                .map(|entry| line(&loaded, &entry, ledger, &units))
                .collect();
            print(&format!("{tag} · {}\n\n{}", group.name, lines.join("\n")))?;
        }
    }
    Ok(exit_of(&loaded.findings))
}

fn line(loaded: &Loaded, entry: &Entry<'_>, ledger: &Ledger, units: &Units) -> String {
    let result = match entry.value {
        Ok(value) => units.print_si(value, entry.dimension).joined(),
        Err(lack) => say(
            &loaded.wording,
            "cli.explain_missing",
            &Values::new().with("key", lack.key),
        ),
    };
    let worded = |id: &str, key: &'static str, value: String| {
        say(&loaded.wording, id, &Values::new().with(key, value))
    };
    let names = |keys: &[Key]| {
        keys.iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
            .join(", ")
    };
    let basis = match entry.basis {
        Basis::Input(origin) if entry.value.is_ok() => worded(
            "cli.explain_given",
            "origin",
            origin_text(origin, &loaded.sources),
        ),
        Basis::Input(_) => String::new(),
        Basis::Formula(formula, keys) => {
            let numbers: Vec<Printed> = keys
                .iter()
                .map(|key| match ledger.entry(*key) {
                    Some(Entry {
                        value: Ok(value),
                        dimension,
                        ..
                    }) => units.print_si(value, dimension),
                    _ => Printed {
                        value: "?".to_owned(),
                        unit: String::new(),
                    },
                })
                .collect();
            return format!(
                "{}\n    {} = {}\n    {} = {} = {result}\n    [{}]",
                entry.key,
                formula.symbol.plain(),
                formula.text(),
                formula.symbol.plain(),
                formula.text_with_numbers(&numbers),
                loaded.wording.source(formula.source, formula.confirmed),
            );
        }
        Basis::Rounded(key) => worded("cli.explain_rounded", "from", key.to_string()),
        Basis::Chosen(keys) => worded("cli.explain_chosen", "from", names(keys)),
        Basis::Simulated(keys) => worded("cli.explain_simulated", "from", names(keys)),
        Basis::Sum => loaded.wording.label("cli.explain_sum").to_owned(),
    };
    format!("{}\n    {result}\n    {basis}", entry.key)
        .trim_end()
        .to_owned()
}
