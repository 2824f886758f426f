//! Each rule speaks where it must and keeps silent just inside its limit.
//!
//! `tests/rules/base.yaml` and `jackbolt-base.yaml` are jobs on which no rule speaks. A case changes as little of it as it can
//! and says which rule then speaks, where, how much it weighs and with which values. Where the limit
//! of a case comes from stands beside it; numbers are worked out by hand from the job, never copied
//! from a run.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]
#![allow(
    clippy::disallowed_methods,
    reason = "the test reads its own data files"
)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use serde::Deserialize;
use studbook::joint::LIMITS;
use studbook::report::{Finding, Severity, Sources, Stage};
use studbook::wording::Wording;
use studbook::{job, methods, resolve, rules};

/// A case of the data files.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    /// The rule that speaks.
    rule: Option<String>,
    /// The rule that keeps silent.
    silent: Option<String>,
    /// Where its limit comes from.
    source: String,
    /// The job that is changed, if not `base`.
    base: Option<String>,
    /// Texts of the base job with what takes their place.
    change: Vec<(String, String)>,
    /// Revisions that were issued before.
    #[serde(default)]
    issued: Vec<Issued>,
    /// Other rules that the same change makes speak.
    #[serde(default)]
    also: BTreeSet<String>,
    /// The text above the caret; none where the whole of a part is meant.
    at: Option<String>,
    severity: Option<String>,
    #[serde(default)]
    stage: Option<String>,
    joint: Option<String>,
    #[serde(default)]
    values: BTreeMap<String, String>,
}

#[derive(Deserialize)]
struct Issued {
    revision: String,
    date: String,
}

/// Rules that no job can make speak here, each with the place where it is tested instead.
const ELSEWHERE: &[(&str, &str)] = &[
    (
        "P03",
        "the order is the program's own; `tests/order.rs` checks it for every count",
    ),
    (
        "D14",
        "raised by the builders of cards, which know the room; a page test",
    ),
    (
        "P19",
        "the program sets the cautions of a card itself; `tests/pack.rs` looks where they stand",
    ),
];

fn folder() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/rules"))
}

/// The jobs on which no rule speaks.
const BASES: [&str; 3] = ["base", "jackbolt-base", "turn-base"];

fn base(name: &str) -> String {
    std::fs::read_to_string(folder().join(format!("{name}.yaml"))).expect("the base job is there")
}

fn cases() -> Vec<Case> {
    let mut cases = Vec::new();
    for name in [
        "documents",
        "load",
        "tools",
        "materials",
        "procedure",
        "jackbolts",
        "turn",
    ] {
        let text = std::fs::read_to_string(folder().join(format!("{name}.yaml"))).expect(name);
        let read: Vec<Case> =
            serde_yaml::from_str(&text).unwrap_or_else(|error| panic!("{name}: {error}"));
        cases.extend(read);
    }
    cases
}

/// Everything that is found in a job, with the text at the place of each finding.
fn findings(text: &str, issued: &[Issued]) -> Vec<(Finding, String)> {
    let mut sources = Sources::default();
    let (job, mut found) = job::open("job.yaml", text.as_bytes(), &mut sources);
    let job = job.unwrap_or_else(|| panic!("the job cannot be read: {found:?}"));
    let (joints, resolved) = resolve::resolve(&job);
    found.extend(resolved);
    let plan = methods::calculate(&joints);
    let issued: Vec<rules::IssuedRevision> = issued
        .iter()
        .map(|issued| rules::IssuedRevision {
            revision: issued.revision.clone(),
            date: issued.date.clone(),
            draft: false,
        })
        .collect();
    let subject = rules::Subject::new(&job, &joints, &plan, &issued);
    found.extend(rules::check(&subject, Vec::new()));
    let text_at = |finding: &Finding| {
        let place = finding
            .place
            .unwrap_or_else(|| panic!("{} has no place", finding.id));
        sources.text(place.file)[place.start as usize..place.end as usize].to_owned()
    };
    found
        .into_iter()
        .map(|finding| (finding.clone(), text_at(&finding)))
        .collect()
}

/// The base job with the changes of a case, each of which must fit one place and one only.
fn changed(case: &Case) -> String {
    let mut text = base(case.base.as_deref().unwrap_or(BASES[0]));
    for (old, new) in &case.change {
        assert_eq!(
            text.matches(old.as_str()).count(),
            1,
            "`{old}` must stand once"
        );
        text = text.replace(old.as_str(), new);
    }
    text
}

fn spaced(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

fn word(severity: Severity) -> &'static str {
    match severity {
        Severity::Error => "error",
        Severity::Accept => "accept",
        Severity::Note => "note",
    }
}

/// What differs between a finding and what a case expects; nothing if it is the one.
fn difference(case: &Case, finding: &Finding, at: &str) -> Option<String> {
    if case.at.as_deref().is_some_and(|wanted| wanted != at) {
        return Some(format!("stands at `{at}`"));
    }
    if case.severity.as_deref() != Some(word(finding.severity)) {
        return Some(format!("weighs {}", word(finding.severity)));
    }
    if case.joint.is_some() && case.joint != finding.joint {
        return Some(format!("is on {:?}", finding.joint));
    }
    let of_job = case.stage.as_deref() == Some("job");
    if of_job != (finding.stage == Stage::Job) {
        return Some("is of another stage".to_owned());
    }
    case.values.iter().find_map(|(key, wanted)| {
        let got = finding.values.get(key.as_str()).map(spaced);
        (got.as_ref() != Some(wanted)).then(|| format!("says {key} = {got:?}"))
    })
}

fn failure(case: &Case) -> Option<String> {
    let found = findings(&changed(case), &case.issued);
    let ids: BTreeSet<&str> = found.iter().map(|(finding, _)| finding.id).collect();
    let rule = case
        .rule
        .as_deref()
        .or(case.silent.as_deref())
        .unwrap_or("");
    // A pack for construction with an error is D08's, whatever the error is.
    let expected: BTreeSet<&str> = case
        .also
        .iter()
        .map(String::as_str)
        .chain(case.rule.as_deref())
        .collect();
    let spoke: BTreeSet<&str> = ids
        .iter()
        .copied()
        .filter(|id| *id != "D08" || rule == "D08")
        .collect();
    if spoke != expected {
        return Some(format!("{rule} ({}): spoke {spoke:?}", case.source));
    }
    case.rule.as_ref()?;
    let own: Vec<_> = found
        .iter()
        .filter(|(finding, _)| finding.id == rule)
        .collect();
    let differences: Vec<String> = own
        .iter()
        .filter_map(|(finding, at)| difference(case, finding, at))
        .collect();
    // With a joint named, the same rule may speak on another joint that shares the changed text.
    let alone = case.joint.is_none();
    let met = differences.len() < own.len() && (differences.is_empty() || !alone || rule == "D08");
    (!met).then(|| format!("{rule} ({}): {}", case.source, differences.join("; ")))
}

#[test]
fn the_base_jobs_are_without_a_finding() {
    for name in BASES {
        let found = findings(&base(name), &[]);
        assert!(found.is_empty(), "{name}: {found:#?}");
    }
}

#[test]
fn each_case_speaks_or_keeps_silent() {
    let failures: Vec<String> = cases().iter().filter_map(failure).collect();
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}

#[test]
fn each_case_names_one_rule_and_its_source() {
    for case in cases() {
        assert!(
            case.rule.is_some() != case.silent.is_some(),
            "{}",
            case.source
        );
        assert!(!case.source.is_empty());
        assert_eq!(
            case.rule.is_some(),
            case.severity.is_some(),
            "{}",
            case.source
        );
    }
}

#[test]
fn each_rule_has_a_case() {
    let tested: BTreeSet<String> = cases().into_iter().filter_map(|case| case.rule).collect();
    for rule in rules::all() {
        let elsewhere = ELSEWHERE.iter().any(|(id, _)| *id == rule.id);
        assert_ne!(
            tested.contains(rule.id),
            elsewhere,
            "{} has no case, or two homes",
            rule.id
        );
    }
}

/// The rule that a limit belongs to: `P01_soft` is P01's.
fn rule_of(limit: &str) -> &str {
    limit.split('_').next().unwrap_or(limit)
}

#[test]
fn each_limit_has_a_rule_and_a_silent_case() {
    let silent: BTreeSet<String> = cases().into_iter().filter_map(|case| case.silent).collect();
    for limit in LIMITS {
        assert!(
            rules::named(rule_of(limit.rule)).is_some(),
            "{} is no rule",
            limit.rule
        );
        assert!(
            silent.contains(limit.rule),
            "{} has no case just inside it",
            limit.rule
        );
    }
}

#[test]
fn each_finding_gives_what_its_wording_names() {
    let wording = Wording::embedded("en").expect("English is embedded");
    for case in cases() {
        for (finding, _) in findings(&changed(&case), &case.issued) {
            let named = wording.given(&format!("{}.found", finding.id));
            for (key, _) in finding.values.iter() {
                assert!(
                    named.contains(key),
                    "{} gives `{key}`, which no text names",
                    finding.id
                );
            }
            for name in named.iter().filter(|name| *name != "joint") {
                let given = finding.values.get(name.as_str()).is_some();
                assert!(given, "{} does not give `{name}`", finding.id);
            }
            let told = wording.tell(&finding);
            for text in [&told.title, &told.why, &told.fix] {
                let sound = !text.is_empty() && !text.contains("  ") && !text.contains("``");
                assert!(sound, "{}: `{text}`", finding.id);
            }
        }
    }
}

#[test]
fn each_worded_rule_is_a_rule() {
    let wording = Wording::embedded("en").expect("English is embedded");
    let is_rule = |id: &str| {
        let (letter, number) = id.split_at(1);
        letter.chars().all(|sign| sign.is_ascii_uppercase())
            && number.chars().all(|sign| sign.is_ascii_digit())
    };
    let groups: BTreeSet<&str> = wording
        .ids()
        .filter_map(|id| id.split('.').next())
        .collect();
    for id in groups.into_iter().filter(|id| is_rule(id)) {
        assert!(
            rules::named(id).is_some(),
            "{id} is worded, and no rule says it"
        );
    }
}
