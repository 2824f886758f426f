//! The README is true: its jobs are the files it names, its commands run.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::disallowed_methods,
    unreachable_pub,
    reason = "a test stops at the first thing that is not as it should be, and reads what was written"
)]

mod support;

use support::{Bench, repository};

fn readme() -> String {
    std::fs::read_to_string(repository().join("README.md")).unwrap()
}

/// The fenced blocks of a language.
fn blocks(language: &str) -> Vec<String> {
    let text = readme();
    let fence = format!("```{language}\n");
    text.split(&fence)
        .skip(1)
        .map(|rest| rest.split("```").next().unwrap().to_owned())
        .collect()
}

#[test]
fn the_yaml_block_is_the_smallest_job() {
    let file = std::fs::read_to_string(repository().join("jobs/smallest.yaml")).unwrap();
    let body: String = file
        .lines()
        .filter(|line| !line.starts_with('#'))
        .map(|line| format!("{line}\n"))
        .collect();
    assert_eq!(blocks("yaml"), [body]);
    assert!(file.lines().count() <= 25);
}

#[test]
fn every_command_runs() {
    let bench = Bench::new();
    bench.example("effluent-cooler.yaml");
    let mut ran = 0;
    for line in blocks("sh").iter().flat_map(|block| block.lines()) {
        let command = line.split('#').next().unwrap().trim();
        let args = match command.strip_prefix("cargo run --release -- ") {
            Some(args) => args.replace("jobs/", ""),
            None => match command.strip_prefix("studbook ") {
                Some(args) => args.to_owned(),
                // The test command is the one that runs this.
                None => {
                    assert_eq!(command, "cargo test");
                    continue;
                }
            },
        };
        let args: Vec<&str> = args.split_whitespace().collect();
        let run = bench.run(&args);
        assert_eq!(run.code, Some(0), "{command}\n{}\n{}", run.out, run.err);
        ran += 1;
    }
    assert!(ran >= 9, "{ran}");
    let pack = bench.path().join("HL-31-WP-007_B");
    for file in [
        "HL-31-WP-007_B.pdf",
        "HL-31-WP-007_B_statement.pdf",
        "HL-31-WP-007_B_talk.pdf",
        "HL-31-WP-007_B_cards.pdf",
        "HL-31-WP-007_B_register.csv",
    ] {
        assert!(pack.join(file).exists(), "{file}");
    }
}

#[test]
fn the_files_that_it_names_are_there() {
    for part in readme().split("](").skip(1) {
        let path = part.split(')').next().unwrap();
        assert!(repository().join(path).exists(), "{path}");
    }
}
