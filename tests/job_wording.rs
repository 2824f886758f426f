//! Every finding of the reader has its sentences, and they name no value that the finding lacks.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on must stop"
)]

use std::collections::{BTreeMap, BTreeSet};

use minijinja::{AutoEscape, Environment, UndefinedBehavior, value};
use serde::Deserialize;

use studbook::standards::{jackbolts, practice, symbols, validity};
use studbook::wording::Wording;
use studbook::yaml::{IDS, LABELS};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Sentences {
    found: String,
    why: String,
    fix: String,
}

#[derive(Deserialize)]
struct File {
    labels: BTreeMap<String, String>,
    #[serde(flatten)]
    findings: BTreeMap<String, Sentences>,
}

fn file() -> File {
    serde_yaml::from_str(include_str!("../templates/wording/en/job-findings.yaml")).unwrap()
}

fn environment() -> Environment<'static> {
    let mut environment = Environment::new();
    environment.set_undefined_behavior(UndefinedBehavior::Strict);
    environment.set_auto_escape_callback(|_| AutoEscape::None);
    environment
}

#[test]
fn every_id_has_its_sentences_and_none_is_left_over() {
    let file = file();
    let written: BTreeSet<&str> = file.findings.keys().map(String::as_str).collect();
    let raised: BTreeSet<&str> = IDS.iter().map(|&(id, _)| id).collect();
    assert_eq!(written, raised);
    assert!(IDS.is_sorted(), "the table is searched by halving");
    let labels: BTreeSet<&str> = file.labels.keys().map(String::as_str).collect();
    assert_eq!(labels, LABELS.iter().copied().collect());
}

#[test]
fn sentences_name_only_values_that_the_finding_has() {
    let environment = environment();
    let file = file();
    for &(id, names) in IDS {
        let sentences = &file.findings[id];
        for text in [&sentences.found, &sentences.why, &sentences.fix] {
            let template = environment.template_from_str(text).unwrap();
            let named: BTreeSet<String> =
                template.undeclared_variables(false).into_iter().collect();
            for name in named {
                assert!(names.contains(&name.as_str()), "{id}: {name}");
            }
        }
    }
}

#[test]
fn sentences_render_with_all_values_and_with_none() {
    let environment = environment();
    let file = file();
    for &(id, names) in IDS {
        let sentences = &file.findings[id];
        for sample in ["", "sample"] {
            let values: BTreeMap<&str, &str> = names.iter().map(|&name| (name, sample)).collect();
            for text in [&sentences.found, &sentences.why, &sentences.fix] {
                let told = environment.render_str(text, value::Serde(&values)).unwrap();
                assert!(!told.trim().is_empty(), "{id}");
                assert!(
                    sample.is_empty() || !told.contains("  ") && !told.contains('\n'),
                    "{id}: {told}"
                );
            }
        }
    }
}

/// Every symbol and every condition that a formula may print has words.
#[test]
fn symbols_and_conditions_have_words() {
    let wording = Wording::embedded("en").expect("English is embedded");
    for symbol in symbols::ALL {
        let id = format!("symbol.{}", symbol.meaning);
        assert!(wording.has(&id), "{id}");
    }
    for condition in validity::ALL {
        let id = format!("validity.{condition}");
        assert!(wording.has(&id), "{id}");
    }
    for source in [practice::SOURCE, jackbolts::SOURCE] {
        assert!(wording.has(&format!("source.{source}")));
    }
}
