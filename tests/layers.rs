//! The modules stand in layer order, and each outside crate of weight has one home.
//!
//! The order is that of `src/lib.rs`. Source of both rules: the project's own design.

#![allow(
    clippy::disallowed_methods,
    reason = "the test reads the sources of the program"
)]

mod sources;

use sources::{rust_files, without_comments};

/// Crates of weight, each with the only module that may name it.
const HOMES: &[(&str, &str)] = &[
    ("rayon", "parallel"),
    ("granit_parser", "yaml"),
    ("minijinja", "wording"),
    ("serde_yaml", "wording"),
    ("typst", "typeset"),
    ("typst_layout", "typeset"),
    ("typst_pdf", "typeset"),
    ("image", "photo"),
    ("annotate_snippets", "report"),
    ("csv", "document"),
    ("blake3", "document"),
    ("qrcodegen", "document"),
    ("clap", "cli"),
    ("indicatif", "cli"),
    ("ctrlc", "cli"),
];

/// The modules in their order.
fn order() -> Vec<String> {
    let root = std::fs::read_to_string(sources::repository().join("src/lib.rs")).expect("the root");
    root.lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'))
        .map(str::to_owned)
        .collect()
}

/// The module of a file below `src`: `src/calc/order.rs` and `src/photo.rs` are of `calc`, `photo`.
fn module_of(path: &str) -> &str {
    let rest = path.strip_prefix("src/").unwrap_or(path);
    let first = rest.split('/').next().unwrap_or(rest);
    first.strip_suffix(".rs").unwrap_or(first)
}

/// Every word that stands behind `before` as a path begins: `crate::calc::ids` gives `calc`.
fn words_behind<'a>(text: &'a str, before: &str) -> Vec<&'a str> {
    let is_word = |sign: char| sign.is_ascii_alphanumeric() || sign == '_';
    text.split(before)
        .skip(1)
        .map(|rest| &rest[..rest.find(|sign| !is_word(sign)).unwrap_or(rest.len())])
        .filter(|word| !word.is_empty())
        .collect()
}

/// The modules that a file uses, also those in braces: `use crate::{job, units::Date};`.
fn used(text: &str) -> Vec<String> {
    let mut modules: Vec<String> = words_behind(text, "crate::")
        .into_iter()
        .map(str::to_owned)
        .collect();
    for group in text.split("crate::{").skip(1) {
        let inside = group.split_once('}').map_or(group, |(inside, _)| inside);
        let names = inside
            .split(',')
            .map(|part| part.trim().split("::").next().unwrap_or(""));
        modules.extend(names.map(str::to_owned));
    }
    modules
}

#[test]
fn modules_use_only_those_above_them() {
    let order = order();
    let rank = |module: &str| order.iter().position(|name| name == module);
    let mut wrong = Vec::new();
    for (path, text) in rust_files("src") {
        let Some(own) = rank(module_of(&path)) else {
            assert!(
                ["src/lib.rs", "src/main.rs"].contains(&path.as_str()),
                "{path} is in no layer"
            );
            continue;
        };
        for module in used(&without_comments(&text)) {
            // A macro or a name of the crate's root is no layer.
            if rank(&module).is_some_and(|other| other > own) {
                wrong.push(format!("{path} uses {module}, which stands below it"));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
    assert!(
        order.len() > 10,
        "the order of the layers was read: {order:?}"
    );
}

/// Files outside `src/methods` that name one method. They print or judge what that method alone does; the number only
/// falls.
const FILES_THAT_NAME_A_METHOD: usize = 33;

/// The folders and files of single methods, as paths name them.
fn methods() -> Vec<String> {
    let table = sources::repository().join("src/methods/mod.rs");
    let table = std::fs::read_to_string(table).expect("the table of methods");
    let (_, list) = table
        .split_once("pub const METHODS: &[Method] = &[")
        .expect("the list of methods");
    let list = list.split("];").next().unwrap_or(list).split(',');
    list.filter_map(|entry| entry.trim().strip_suffix("::METHOD").map(str::to_owned))
        .collect()
}

#[test]
fn few_files_name_a_method_and_none_above_the_methods() {
    let order = order();
    let rank = |module: &str| order.iter().position(|name| name == module);
    let methods = methods();
    assert!(methods.len() >= 3, "the methods were found: {methods:?}");
    let mut named = Vec::new();
    for (path, text) in rust_files("src") {
        let text = without_comments(&text);
        let is_named = |method: &String| {
            text.contains(&format!("{method}::WORD"))
                || text.contains(&format!("methods::{method}"))
        };
        if module_of(&path) != "methods" && methods.iter().any(is_named) {
            assert!(
                rank(module_of(&path)) > rank("methods"),
                "{path} names a method"
            );
            named.push(path);
        }
    }
    assert!(
        named.len() <= FILES_THAT_NAME_A_METHOD,
        "{} files name a method:\n{}",
        named.len(),
        named.join("\n")
    );
}

/// Modules whose files must not use each other both ways; the root of the module counts as one of them.
const WITHOUT_CIRCLES: &[&str] = &["resolve"];

/// The files of a module that a file of it uses: by `super::name`, and by `name::` in the root, `mod`. What stands in
/// `super` itself is of the root.
fn siblings(own: &str, text: &str, files: &[&str]) -> Vec<String> {
    let mut named: Vec<&str> = words_behind(text, "super::");
    for group in text.split("super::{").skip(1) {
        let inside = group.split_once('}').map_or(group, |(inside, _)| inside);
        let parts = inside.split(',').map(str::trim);
        named.extend(parts.filter_map(|part| part.split("::").next()));
    }
    if own == "mod" {
        named = files.to_vec();
        named.retain(|file| names(text, file));
    }
    let of_root = |name: &str| if files.contains(&name) { name } else { "mod" }.to_owned();
    named.retain(|name| !name.is_empty());
    named.into_iter().map(of_root).collect()
}

#[test]
fn files_of_a_module_use_each_other_one_way() {
    let mut wrong = Vec::new();
    for module in WITHOUT_CIRCLES {
        let texts: Vec<(String, String)> = rust_files(&format!("src/{module}"))
            .into_iter()
            .filter_map(|(path, text)| {
                let name = path.rsplit('/').next()?.strip_suffix(".rs")?.to_owned();
                Some((name, without_comments(&text)))
            })
            .collect();
        let files: Vec<&str> = texts.iter().map(|(name, _)| name.as_str()).collect();
        assert!(files.contains(&"mod"), "{module} was read: {files:?}");
        let used = |file: &str| -> Vec<String> {
            let text = texts.iter().find(|(name, _)| name == file);
            text.map_or(Vec::new(), |(name, text)| siblings(name, text, &files))
        };
        for file in &files {
            let both = used(file).into_iter().filter(|other| {
                other.as_str() != *file && used(other).iter().any(|name| name == file)
            });
            wrong.extend(both.map(|other| format!("{module}: {file} and {other}")));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
    let files = ["mod", "layers", "tools"];
    let text = "use super::Catalog;\nuse super::layers::{Layers};";
    assert_eq!(siblings("tools", text, &files), ["mod", "layers"]);
    let root = "mod layers;\nmod tools;\nuse layers::Layers;";
    assert_eq!(siblings("mod", root, &files), ["layers"]);
}

#[test]
fn each_outside_crate_of_weight_has_one_home() {
    let mut wrong = Vec::new();
    for (path, text) in rust_files("src") {
        let text = without_comments(&text);
        for (name, home) in HOMES {
            if names(&text, name) && module_of(&path) != *home {
                wrong.push(format!("{path} names {name}, whose home is {home}"));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// Whether a text names a crate at the beginning of a path, and not a module of the same name.
fn names(text: &str, name: &str) -> bool {
    text.match_indices(&format!("{name}::")).any(|(at, _)| {
        let before = text[..at].chars().next_back();
        !before.is_some_and(|sign| sign.is_ascii_alphanumeric() || "_:".contains(sign))
    })
}

#[test]
fn the_look_for_paths_finds_them() {
    let text = "use crate::{job, units::Date};\nlet x = crate::calc::ids::LOAD;\n";
    assert_eq!(used(text), ["calc", "job", "units"]);
    assert!(names("use typst::foundations;", "typst"));
    assert!(!names(
        "use super::image::Photo; crate::image::x()",
        "image"
    ));
    assert_eq!(module_of("src/photo.rs"), "photo");
    assert_eq!(without_comments("a // crate::cli\nb"), "a \nb");
}
