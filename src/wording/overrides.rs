//! The user's own texts: merged over ours, with every fault of theirs told at once.

use std::collections::BTreeSet;

use super::Wording;
use super::entries::{EMBEDDED, Entries, Fault, Text};
use crate::report::{FileId, Finding, Place, Severity, near};

/// The language that every text falls back to.
const FALLBACK: &str = "en";

/// One file of the user's wording, as data.
#[derive(Clone, Debug)]
pub struct Override {
    /// Under which file its places are shown.
    pub file: FileId,
    /// Its YAML.
    pub text: String,
}

/// The entries of a language with the overrides in place, and what the user should know about it.
pub(super) fn assemble(
    language: &str,
    overrides: &[Override],
) -> Result<(Entries, Vec<Finding>), Vec<Finding>> {
    let mut entries = embedded(FALLBACK).unwrap_or_default();
    let mut own = BTreeSet::new();
    if language != FALLBACK {
        match embedded(language) {
            Some(translated) => {
                own.extend(translated.ids().map(str::to_owned));
                entries.replace(translated);
            }
            None if overrides.is_empty() => return Err(vec![unknown_language(language)]),
            None => {}
        }
    }
    let mut findings = Vec::new();
    for each in overrides {
        match Entries::read(&each.text) {
            Ok(read) => {
                findings.extend(check_ids(each, &read, &entries));
                own.extend(read.ids().map(str::to_owned));
                entries.replace(read);
            }
            Err(faults) => findings.extend(faults.into_iter().map(|fault| tell(each, fault))),
        }
    }
    if !findings.is_empty() {
        return Err(findings);
    }
    let notes = if language == FALLBACK {
        Vec::new()
    } else {
        not_translated(language, &entries, &own)
    };
    Ok((entries, notes))
}

fn embedded(language: &str) -> Option<Entries> {
    let (_, files) = EMBEDDED.iter().find(|(code, _)| *code == language)?;
    let mut entries = Entries::default();
    for (_, text) in *files {
        // A test reads our own files one by one and finds no fault in them.
        entries.add(text);
    }
    Some(entries)
}

fn unknown_language(language: &str) -> Finding {
    let known: Vec<&str> = EMBEDDED.iter().map(|(code, _)| *code).collect();
    Finding::job("wording.unknown_language", None)
        .with("language", language)
        .with("known", known.join(", "))
}

fn not_translated(language: &str, entries: &Entries, own: &BTreeSet<String>) -> Vec<Finding> {
    let missing = entries.ids().filter(|id| !own.contains(*id)).count();
    if missing == 0 {
        return Vec::new();
    }
    let mut finding = Finding::job("wording.not_translated", None)
        .with("language", language)
        .with("count", missing.to_string());
    finding.severity = Severity::Note;
    vec![finding]
}

/// Ids that nobody asks for, and texts where a list is due or the other way round.
fn check_ids(file: &Override, read: &Entries, entries: &Entries) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (id, text) in read.texts() {
        match (entries.text(id), text) {
            (Some(Text::One(_)), Text::One(_)) | (Some(Text::Many(_)), Text::Many(_)) => {}
            (Some(_), _) => findings.push(at("wording.kind", file, id)),
            (None, _) => {
                let near = near(id, entries.ids()).unwrap_or_default();
                findings.push(at("wording.unknown_id", file, id).with("near", near));
            }
        }
    }
    findings
}

/// Templates of the overrides that do not parse, that ask for what nobody gives, or that stand
/// where a text is taken as it is.
pub(super) fn faults(wording: &Wording, overrides: &[Override]) -> Vec<Finding> {
    let mut findings = Vec::new();
    if overrides.is_empty() {
        return findings;
    }
    let Ok(ours) = Wording::embedded(FALLBACK) else {
        return findings;
    };
    for each in overrides {
        let Ok(read) = Entries::read(&each.text) else {
            continue;
        };
        for (id, _) in read.texts() {
            findings.extend(faults_of(wording, &ours, id).into_iter().map(|fault| {
                let place = place_of(each, id);
                Finding { place, ..fault }.with("id", id)
            }));
        }
    }
    findings
}

fn faults_of(wording: &Wording, ours: &Wording, id: &str) -> Vec<Finding> {
    let names = wording.template_names(id);
    if names.is_empty() {
        return Vec::new();
    }
    if ours.template_names(id).is_empty() {
        return vec![Finding::job("wording.plain", None)];
    }
    let given = ours.given(id);
    let mut findings = Vec::new();
    for name in names {
        match wording.engine.variables(&name) {
            Err(fault) => {
                findings.push(Finding::job("wording.template", None).with("detail", fault.detail));
            }
            Ok(asked) => findings.extend(asked.difference(&given).map(|name| {
                let near = near(name, given.iter().map(String::as_str)).unwrap_or_default();
                Finding::job("wording.unknown_value", None)
                    .with("name", name.as_str())
                    .with("near", near)
            })),
        }
    }
    findings
}

fn tell(file: &Override, fault: Fault) -> Finding {
    match fault {
        Fault::Syntax { message, at } => {
            let place = at.map(|(byte, line, column)| Place {
                file: file.file,
                line: narrow(line),
                column: narrow(column),
                start: narrow(byte),
                end: narrow(byte + 1),
            });
            Finding::job("wording.not_yaml", place).with("detail", message)
        }
        Fault::NotText(id) => at("wording.not_text", file, &id),
        Fault::Twice(id) => at("wording.twice", file, &id),
    }
}

fn at(finding: &'static str, file: &Override, id: &str) -> Finding {
    Finding::job(finding, place_of(file, id)).with("id", id)
}

/// Where an id stands: its keys one after the other, each at the head of a line.
fn place_of(file: &Override, id: &str) -> Option<Place> {
    let mut keys = id.split('.').peekable();
    let mut start = 0_usize;
    for (number, line) in file.text.split_inclusive('\n').enumerate() {
        let key = *keys.peek()?;
        let head = line.trim_start();
        let indent = line.len() - head.len();
        let is_key = head
            .trim_start_matches(['"', '\''])
            .strip_prefix(key)
            .is_some_and(|rest| rest.trim_start_matches(['"', '\'']).starts_with(':'));
        if is_key {
            keys.next();
            if keys.peek().is_none() {
                return Some(Place {
                    file: file.file,
                    line: narrow(number + 1),
                    column: narrow(indent + 1),
                    start: narrow(start + indent),
                    end: narrow(start + indent + key.len()),
                });
            }
        }
        start += line.len();
    }
    None
}

fn narrow(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}
