//! The ids of results are the interface by which others check the program: none is renamed, none changes what it
//! measures. A new one is entered in `tests/result_ids.csv`.

mod sources;

use std::collections::BTreeMap;

use sources::{rust_files, without_comments};

/// Path and quantity of an entry such as `LOAD: Force = "target.load";`.
fn entry(line: &str) -> Option<(String, String)> {
    let (_, rest) = line.trim().split_once(": ")?;
    let (quantity, rest) = rest.split_once(" = \"")?;
    let id = rest.strip_suffix("\";")?;
    let is_word = quantity.chars().all(|sign| sign.is_ascii_alphanumeric());
    is_word.then(|| (id.to_owned(), quantity.to_owned()))
}

#[test]
fn ids_are_those_of_the_list() {
    let files = rust_files("src");
    let tables = files.iter().filter(|(path, _)| path.ends_with("/ids.rs"));
    let ids: BTreeMap<String, String> = tables
        .flat_map(|(_, text)| {
            without_comments(text)
                .lines()
                .filter_map(entry)
                .collect::<Vec<_>>()
        })
        .collect();
    let list: BTreeMap<String, String> = include_str!("result_ids.csv")
        .lines()
        .skip(1)
        .filter_map(|line| line.split_once(','))
        .map(|(id, quantity)| (id.to_owned(), quantity.to_owned()))
        .collect();
    assert!(ids.len() > 200, "the tables were read: {}", ids.len());
    assert_eq!(ids, list);
}
