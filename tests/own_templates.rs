//! A user's own templates, through the program: written out, changed, used, broken. What is asked comes
//! from the specification of this program.

#![allow(
    clippy::unwrap_used,
    clippy::disallowed_methods,
    unreachable_pub,
    reason = "a test stops at the first thing that is not as it should be, and reads what was written"
)]

mod support;

use support::Bench;

const CARDS: [&str; 4] = ["issue", "smallest.yaml", "--only", "cards"];

/// The cards of the smallest job, made with these templates.
fn cards(bench: &Bench, templates: &[&str]) -> Vec<u8> {
    let run = bench.run(&[&CARDS[..], templates].concat());
    assert_eq!(run.code, Some(1), "a draft\n{}\n{}", run.out, run.err);
    std::fs::read(bench.path().join("SMALLEST_DRAFT/SMALLEST_cards.pdf")).unwrap()
}

fn change(bench: &Bench, file: &str, from: &str, to: &str) {
    let path = bench.path().join(file);
    let text = std::fs::read_to_string(&path).unwrap();
    assert!(text.contains(from), "{file} has no `{from}`");
    std::fs::write(path, text.replacen(from, to, 1)).unwrap();
}

#[test]
fn templates_are_written_out_changed_and_used() {
    let bench = Bench::new();
    bench.example("smallest.yaml");
    let write = ["templates", "--write", "mine"];
    assert_eq!(bench.run(&write).code, Some(0));
    let again = bench.run(&write);
    assert_eq!(again.code, Some(2), "no file of the user is overwritten");
    let mine = ["--templates", "mine"];
    let (ours, unchanged) = (cards(&bench, &[]), cards(&bench, &mine));
    assert_eq!(ours, unchanged, "the same templates make the same bytes");
    let thin = "#let thin = 0.35mm";
    change(&bench, "mine/layout/style.typ", thin, "#let thin = 0.5mm");
    let thicker = cards(&bench, &mine);
    assert_ne!(thicker, ours, "a changed layout changes the page");
    let word = "tighten: TIGHTEN";
    change(
        &bench,
        "mine/wording/en/labels.yaml",
        word,
        "tighten: FASTEN",
    );
    assert_ne!(cards(&bench, &mine), thicker, "and so does a changed word");
}

/// A fault of the user's own template is told at its place, and nothing is written.
#[test]
fn a_broken_template_is_told_at_its_place() {
    let bench = Bench::new();
    bench.example("smallest.yaml");
    bench.file("mine/layout/style.typ", "#let thin = \n");
    let run = bench.run(&[&CARDS[..], &["--templates", "mine"]].concat());
    assert_eq!(run.code, Some(2), "{}", run.err);
    assert!(run.err.contains("style.typ:1:"), "{}", run.err);
    assert!(!bench.path().join("SMALLEST_DRAFT").exists());
}

/// A measure that no sheet can have is told at its place; one that can be drawn changes the page.
#[test]
fn a_users_measures_are_checked_and_used() {
    let bench = Bench::new();
    bench.example("smallest.yaml");
    let ours = cards(&bench, &[]);
    bench.file("mine/geometry.yaml", "sizes:\n  note: 6\n");
    let run = bench.run(&[&CARDS[..], &["--templates", "mine"]].concat());
    assert_eq!(run.code, Some(2), "{}", run.err);
    assert!(run.err.contains("geometry.yaml:2:"), "{}", run.err);
    bench.file("mine/geometry.yaml", "page: { running: 10.5 }\n");
    assert_ne!(cards(&bench, &["--templates", "mine"]), ours);
}
