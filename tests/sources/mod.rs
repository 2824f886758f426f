//! The project's own files as text, for tests that look at how it is written.

#![allow(dead_code, reason = "each test file uses a part of it")]
#![allow(
    clippy::disallowed_methods,
    reason = "the tests read the sources of the program"
)]

use std::path::{Path, PathBuf};

/// The folder of the project.
pub(crate) fn repository() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn walk(folder: &Path, found: &mut Vec<PathBuf>) {
    let Ok(entries) = std::fs::read_dir(folder) else {
        return;
    };
    for entry in entries {
        let path = entry.expect("an entry of a folder can be read").path();
        if path.is_dir() {
            walk(&path, found);
        } else {
            found.push(path);
        }
    }
}

/// The files below a folder of the project whose names end in one of these, with their texts, by
/// their paths inside the project.
pub(crate) fn files(folder: &str, endings: &[&str]) -> Vec<(String, String)> {
    let mut paths = Vec::new();
    walk(&repository().join(folder), &mut paths);
    paths.sort();
    paths
        .into_iter()
        .filter(|path| {
            let ending = path
                .extension()
                .and_then(|ending| ending.to_str())
                .unwrap_or("");
            endings.contains(&ending)
        })
        .map(|path| {
            let inside = path.strip_prefix(repository()).expect("below the project");
            let text = std::fs::read_to_string(&path).expect("a text file");
            (inside.to_string_lossy().replace('\\', "/"), text)
        })
        .collect()
}

/// The Rust files below a folder.
pub(crate) fn rust_files(folder: &str) -> Vec<(String, String)> {
    files(folder, &["rs"])
}

/// A source without its line comments. Two slashes in a string, as in an address, are kept.
pub(crate) fn without_comments(text: &str) -> String {
    let strip = |line: &str| {
        let mut in_string = false;
        let mut before = ' ';
        for (at, sign) in line.char_indices() {
            match sign {
                '"' if before != '\\' && before != '\'' => in_string = !in_string,
                '/' if before == '/' && !in_string => return line[..at - 1].to_owned(),
                _ => {}
            }
            before = sign;
        }
        line.to_owned()
    };
    text.lines().map(strip).collect::<Vec<_>>().join("\n")
}

/// A source without the unit tests at its end.
pub(crate) fn without_tests(text: &str) -> &str {
    text.split("#[cfg(test)]").next().unwrap_or("")
}

/// The string literals of a source without comments, each with the text of its line.
pub(crate) fn literals(text: &str) -> Vec<(String, String)> {
    let mut literals = Vec::new();
    let mut open: Option<(String, String)> = None;
    for line in without_comments(text).lines() {
        let mut signs = line.chars();
        let mut before = ' ';
        while let Some(sign) = signs.next() {
            match (&mut open, sign) {
                (Some((literal, _)), '\\') => {
                    literal.push(' ');
                    signs.next();
                }
                (Some(_), '"') => literals.extend(open.take()),
                (Some((literal, _)), other) => literal.push(other),
                (None, '"') if before != '\'' => open = Some((String::new(), line.to_owned())),
                (None, _) => {}
            }
            before = sign;
        }
    }
    literals
}
