//! How the project is written: short files, short functions, no leftovers, sentences where they
//! belong. Source: the project's own design.

#![allow(
    clippy::disallowed_methods,
    reason = "the test reads the sources of the program"
)]

mod sources;

use std::collections::BTreeMap;

use sources::{files, literals, repository, rust_files, without_comments, without_tests};

/// Lines of a file.
const FILE: usize = 400;
/// Lines of a function, without blank ones and comments.
const FUNCTION: usize = 70;

/// Files that are longer, with the most lines that each may have. This list only shrinks: a file in
/// it does not grow, and one that has become short enough leaves it.
const LONG_FILES: &[(&str, usize)] = &[("tests/wording.rs", 493)];

fn of_src_and_tests() -> Vec<(String, String)> {
    ["src", "tests"].into_iter().flat_map(rust_files).collect()
}

#[test]
fn no_file_is_too_long() {
    let lines: BTreeMap<String, usize> = of_src_and_tests()
        .into_iter()
        .map(|(path, text)| (path, text.lines().count()))
        .collect();
    let mut wrong = Vec::new();
    for (path, count) in &lines {
        let listed = LONG_FILES
            .iter()
            .find(|(long, _)| long == path)
            .map(|(_, most)| *most);
        if *count > listed.unwrap_or(FILE) {
            wrong.push(format!(
                "{path} has {count} lines, {} are the most",
                listed.unwrap_or(FILE)
            ));
        }
    }
    for (path, _) in LONG_FILES {
        if lines.get(*path).is_none_or(|count| *count <= FILE) {
            wrong.push(format!(
                "{path} is short enough or gone: take it off the list"
            ));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// The functions of a source by name, each with its lines of code. A function ends at the first line
/// that is indented as its first one is and closes a brace, as the formatter writes it.
fn functions(text: &str) -> Vec<(String, usize)> {
    let lines: Vec<&str> = text.lines().collect();
    let mut found = Vec::new();
    for (index, line) in lines.iter().enumerate() {
        let trimmed = line.trim_start();
        let words: Vec<&str> = trimmed.split_whitespace().take(5).collect();
        let Some(at) = words.iter().position(|word| *word == "fn") else {
            continue;
        };
        let is_head = words[..at].iter().all(|word| {
            word.starts_with("pub") || ["const", "async", "unsafe", "super)", "in"].contains(word)
        });
        if !is_head || line.trim_end().ends_with([';', '}']) {
            continue;
        }
        let indent = line.len() - trimmed.len();
        let closes = |line: &&str| {
            line.trim_start().starts_with('}') && line.len() - line.trim_start().len() == indent
        };
        let opens = |line: &&str| line.trim_end().ends_with('{');
        let head = lines[index..].iter().position(opens).unwrap_or(0);
        let rest = &lines[index + head + 1..];
        let length = rest.iter().position(closes).unwrap_or(rest.len());
        let is_code =
            |line: &&&str| !line.trim().is_empty() && !line.trim_start().starts_with("//");
        let name = words
            .get(at + 1)
            .unwrap_or(&"")
            .split(['(', '<'])
            .next()
            .unwrap_or("");
        found.push((
            name.to_owned(),
            rest[..length].iter().filter(is_code).count(),
        ));
    }
    found
}

#[test]
fn no_function_is_too_long() {
    let mut wrong = Vec::new();
    let mut seen = 0;
    // Long fixtures in tests are plain lists of texts; the linter looks at the other tests.
    for (path, text) in rust_files("src") {
        for (name, lines) in functions(&text) {
            seen += 1;
            if lines > FUNCTION {
                wrong.push(format!("{path}: {name} has {lines} lines"));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
    assert!(seen > 500, "the functions were found: {seen}");
}

#[test]
fn the_length_of_a_function_is_counted() {
    let text = "pub(super) fn a<T>(\n    x: T,\n) -> T {\n    // why\n\n    x\n}\nfn b() { 1 }\n";
    assert_eq!(functions(text), [("a".to_owned(), 1)]);
    let text = "    pub const fn c() {\n        if x {\n        }\n    }\n";
    assert_eq!(functions(text), [("c".to_owned(), 2)]);
}

#[test]
fn no_leftover_stands_in_a_source() {
    // Written in two parts, so that this file does not find itself.
    let marks = [
        concat!("to", "do!"),
        concat!("db", "g!"),
        concat!("unimple", "mented!"),
        concat!("FIX", "ME"),
        concat!("TO", "DO"),
        concat!("XX", "X"),
    ];
    let mut wrong = Vec::new();
    let mut all = of_src_and_tests();
    all.extend(files("templates", &["yaml", "typ"]));
    all.extend(files("jobs", &["yaml"]));
    for (path, text) in all {
        for (number, line) in (1..).zip(text.lines()) {
            for mark in marks.into_iter().filter(|mark| line.contains(mark)) {
                wrong.push(format!("{path}:{number} holds {mark}"));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// Files whose literals are data about standards and defaults: names of documents, rows, validity.
/// They print as they stand in every language, as the titles of documents do.
const DATA: &[&str] = &["src/standards/", "src/joint/limits.rs", "src/cli/args.rs"];

/// Literals that no reader of paper sees: reasons for the linter, invariants, the words of errors
/// that mark a fault of the program. The mark stands on the line or just before it.
const NOT_FOR_READERS: &[&str] = &[
    "expect(",
    "reason =",
    "assert",
    "write_str(",
    "write!(",
    "custom(",
    "Fault::without_place(",
    "PackageError::Other(",
];

/// Four words in a row without a capital, a digit or a sign between them.
fn is_sentence(literal: &str) -> bool {
    let is_word = |word: &&str| {
        word.len() > 1
            && word
                .chars()
                .all(|sign| sign.is_ascii_lowercase() || ",.;'".contains(sign))
    };
    let words: Vec<&str> = literal.split_whitespace().collect();
    words.windows(4).any(|four| four.iter().all(is_word))
}

#[test]
fn sentences_for_readers_stand_in_the_wording() {
    let mut wrong = Vec::new();
    for (path, text) in rust_files("src") {
        let is_data = DATA.iter().any(|data| path.starts_with(data)) || path.ends_with("tests.rs");
        if is_data {
            continue;
        }
        let code = without_tests(&text);
        let before = |line: &str| -> String {
            let at = code.find(line).unwrap_or(0);
            code[..at].trim_end().lines().rev().take(2).collect()
        };
        for (literal, line) in literals(code) {
            let context = format!("{}{line}", before(&line));
            let hidden = NOT_FOR_READERS.iter().any(|mark| context.contains(mark));
            if is_sentence(&literal) && !hidden {
                wrong.push(format!("{path}: \"{literal}\""));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn a_sentence_is_told_from_data() {
    assert!(is_sentence("The joint stops after its first pass."));
    assert!(!is_sentence("hydraulic torque wrench"));
    assert!(!is_sentence("VDI 2230, table of 1986"));
    assert_eq!(literals("a(\"b\\\"c\", 'd') // \"e\"\n")[0].0, "b c");
}

#[test]
fn no_path_of_a_machine_stands_in_the_project() {
    let marks = [
        "/home/",
        "/root/",
        "/Users/",
        "/work/",
        "C:\\\\",
        "/tmp/",
        "localhost",
    ];
    let mut wrong = Vec::new();
    let mut all = of_src_and_tests();
    for folder in ["templates", "jobs", ".ci", ".cargo"] {
        all.extend(files(folder, &["yaml", "typ", "toml", "md", "sh", ""]));
    }
    for name in ["README.md", "DEVELOPERS.md", "Cargo.toml", ".gitignore"] {
        let folder = repository().join(name);
        all.extend(
            std::fs::read_to_string(folder)
                .ok()
                .map(|text| (name.to_owned(), text)),
        );
    }
    for (path, text) in all.into_iter().filter(|(path, _)| path != "tests/tidy.rs") {
        for (number, line) in (1..).zip(text.lines()) {
            for mark in marks.into_iter().filter(|mark| line.contains(mark)) {
                wrong.push(format!("{path}:{number} holds {mark}"));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// The map of the project names every module, so that a newcomer finds the place of a thing.
#[test]
fn the_map_names_every_module() {
    let map = std::fs::read_to_string(repository().join("DEVELOPERS.md"));
    let map = map.expect("the project has a DEVELOPERS.md");
    let root = std::fs::read_to_string(repository().join("src/lib.rs")).expect("the root");
    let root = without_comments(&root);
    let modules = root
        .lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'));
    let missing: Vec<&str> = modules
        .filter(|module| !map.contains(&format!("`{module}`")))
        .collect();
    assert!(
        missing.is_empty(),
        "DEVELOPERS.md does not name {missing:?}"
    );
}
