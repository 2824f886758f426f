//! The table of keys: its paths lead to its keys, the reference job explains all of them and nothing else, and each
//! printed text is held against the fonts.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::disallowed_methods,
    unreachable_pub,
    reason = "a test stops at the first thing that is not as it should be, and reads the project's own files"
)]

mod support;

use std::collections::{BTreeMap, BTreeSet};

use serde_yaml::Value as Yaml;
use studbook::job::Job;
use studbook::job::table::{Field, Kind};

use support::Bench;

/// Every line of the table by the way that leads to it. What families and joints both may say stands once, without
/// `families` or `joints` in front.
fn table() -> BTreeMap<String, &'static Field> {
    let mut found = BTreeMap::new();
    below(Kind::Group(Job::fields), "", &mut found);
    found
}

fn below(kind: Kind, before: &str, found: &mut BTreeMap<String, &'static Field>) {
    match kind {
        Kind::Value => {}
        Kind::List(kind) => below(*kind, before, found),
        Kind::Named(kind) => below(*kind, &format!("{before}*."), found),
        Kind::Group(fields) => {
            for field in fields() {
                let way = way(before, field.name());
                below(field.kind, &format!("{way}."), found);
                found.insert(way, field);
            }
        }
    }
}

fn way(before: &str, name: &str) -> String {
    let whole = format!("{before}{name}");
    let shared = whole.strip_prefix("families.*.");
    shared
        .or_else(|| whole.strip_prefix("joints."))
        .unwrap_or(&whole)
        .to_owned()
}

/// Walks a text along the table; a key that the table does not hold goes to `strange`.
fn walk(
    value: &Yaml,
    kind: Kind,
    before: &str,
    seen: &mut BTreeSet<String>,
    strange: &mut Vec<String>,
) {
    match (kind, value) {
        (Kind::List(kind), Yaml::Sequence(items)) => {
            for item in items {
                walk(item, *kind, before, seen, strange);
            }
        }
        (Kind::List(kind), _) => walk(value, *kind, before, seen, strange),
        (Kind::Named(kind), Yaml::Mapping(entries)) => {
            for entry in entries.values() {
                walk(entry, *kind, &format!("{before}*."), seen, strange);
            }
        }
        (Kind::Group(fields), Yaml::Mapping(entries)) => {
            for (key, value) in entries {
                let name = key.as_str().unwrap();
                let way = way(before, name);
                match fields().into_iter().find(|field| field.name() == name) {
                    Some(field) => walk(value, field.kind, &format!("{way}."), seen, strange),
                    None => strange.push(way.clone()),
                }
                seen.insert(way);
            }
        }
        _ => {}
    }
}

/// Whether a comment beside a key of the same group names this one: where only one of them may stand, the others are
/// told there.
fn beside_another(way: &str, table: &BTreeMap<String, &'static Field>, text: &str) -> bool {
    let parted = |way: &str| -> (String, String) {
        let (group, name) = way.rsplit_once('.').unwrap_or(("", way));
        (group.to_owned(), name.to_owned())
    };
    let (group, name) = parted(way);
    let others: Vec<String> = table
        .keys()
        .map(|other| parted(other))
        .filter(|(other, _)| *other == group)
        .map(|(_, other)| format!("{other}:"))
        .collect();
    text.lines()
        .filter_map(|line| line.split_once('#'))
        .filter(|(keys, _)| others.iter().any(|other| keys.contains(other.as_str())))
        .any(|(_, comment)| {
            let mut words = comment.split(|sign: char| !sign.is_ascii_lowercase() && sign != '_');
            words.any(|word| word == name)
        })
}

#[test]
fn the_reference_job_holds_every_key_and_nothing_else() {
    let path = support::repository().join("jobs/reference.yaml");
    let text = std::fs::read_to_string(path).unwrap();
    let job: Yaml = serde_yaml::from_str(&text).unwrap();
    let (mut seen, mut strange) = (BTreeSet::new(), Vec::new());
    walk(&job, Kind::Group(Job::fields), "", &mut seen, &mut strange);
    assert!(strange.is_empty(), "not in the table: {strange:?}");
    let table = table();
    let lacking: Vec<&String> = table
        .keys()
        .filter(|way| !seen.contains(*way) && !beside_another(way, &table, &text))
        .collect();
    assert!(lacking.is_empty(), "not in the reference job: {lacking:#?}");
    assert!(table.len() > 250, "the table was walked: {}", table.len());
}

/// A path is written into findings, boxes and the list of assumptions as what the user must type.
#[test]
fn the_path_of_each_key_leads_to_it() {
    let table = table();
    for (way, field) in &table {
        let at_path = table.get(field.path).map(|other| other.path);
        assert_eq!(at_path, Some(field.path), "reached by {way}");
    }
}

/// Keys with a list name a list that the job has.
#[test]
fn the_list_of_each_name_is_a_key_of_the_job() {
    let lists: Vec<&str> = Job::fields()
        .iter()
        .filter(|field| matches!(field.kind, Kind::Named(_)))
        .map(|field| field.name())
        .collect();
    for field in table().values() {
        if let Some(list) = field.list {
            // The words of methods are a list of the program.
            let is_known = lists.contains(&list) || list == "methods";
            assert!(is_known, "{}: {list}", field.path);
        }
    }
}

/// What no font can draw is refused by `check`, at its text, for every key that is printed; else `issue` would fail in
/// the typesetter.
#[test]
fn each_printed_text_is_held_against_the_fonts() {
    let cases = [
        ("lift: hoist above the deck", "lift: hoist 漢 above"),
        ("washer_hardness: 45 HRC", "washer_hardness: 45 漢"),
        ("  JT-64:", "  JT-64漢:"),
        ("prepared: R. Olsen", "prepared: R. 漢"),
    ];
    for (old, new) in cases {
        let bench = Bench::new();
        let path = bench.example("reference.yaml");
        let text = std::fs::read_to_string(&path).unwrap();
        assert!(text.contains(old), "the reference job lacks `{old}`");
        std::fs::write(&path, text.replacen(old, new, 1)).unwrap();
        let run = bench.run(&["check", "reference.yaml"]);
        assert!(run.out.contains("U+6F22"), "{new}: {}", run.out);
        assert_eq!(run.code, Some(2), "{new}: {}", run.out);
    }
}

/// Where a job has no people, whoever signs is named without an entry, and the name itself is looked at.
#[test]
fn a_name_without_a_list_is_held_against_the_fonts() {
    let bench = Bench::new();
    let path = bench.example("smallest.yaml");
    let text = std::fs::read_to_string(&path).unwrap();
    let pack = "pack: {";
    assert!(text.contains(pack) && !text.contains("people:"), "{text}");
    let signed = "pack: { revisions: [{ revision: A, date: 2027-06-01, prepared: R. 漢 }],";
    std::fs::write(&path, text.replacen(pack, signed, 1)).unwrap();
    let run = bench.run(&["check", "smallest.yaml"]);
    assert!(run.out.contains("U+6F22"), "{}", run.out);
}
