//! What a job says and cannot mean: a clear finding at the value itself, never a value that is
//! dropped without a word. The base job is that of the rules.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]
#![allow(
    clippy::disallowed_methods,
    reason = "the test reads its own data files"
)]

use std::collections::BTreeMap;

use serde::Deserialize;
use studbook::report::{Finding, Sources, Stage};
use studbook::wording::Wording;
use studbook::{job, methods, resolve};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    /// The finding, or nothing where the changed job is sound.
    finding: Option<String>,
    change: Vec<(String, String)>,
    /// The text above the caret.
    at: Option<String>,
    #[serde(default)]
    values: BTreeMap<String, String>,
}

fn cases() -> Vec<Case> {
    serde_yaml::from_str(include_str!("resolve/cases.yaml")).expect("the cases can be read")
}

/// What is found in a job before any rule looks at it, each with the text at its place.
fn findings(case: &Case) -> Vec<(Finding, String)> {
    let mut text = include_str!("rules/base.yaml").to_owned();
    for (old, new) in &case.change {
        assert_eq!(
            text.matches(old.as_str()).count(),
            1,
            "`{old}` must stand once"
        );
        text = text.replace(old.as_str(), new);
    }
    let mut sources = Sources::default();
    let (job, mut found) = job::open("job.yaml", text.as_bytes(), &mut sources);
    let job = job.unwrap_or_else(|| panic!("the job cannot be read: {found:?}"));
    let (joints, resolved) = resolve::resolve(&job);
    found.extend(resolved);
    // A job with errors is still worked out for `check`; it must not stop the program.
    assert_eq!(methods::calculate(&joints).group_of.len(), joints.len());
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

#[test]
fn each_impossible_value_is_found_where_it_stands() {
    let wording = Wording::embedded("en").expect("English is embedded");
    let mut failures = Vec::new();
    for case in cases() {
        let found = findings(&case);
        let change = case.change.last().map_or("", |(_, new)| new.as_str());
        let told: Vec<String> = found
            .iter()
            .map(|(finding, at)| format!("{} at `{at}` {:?}", finding.id, finding.values))
            .collect();
        let met = match (&case.finding, found.as_slice()) {
            (None, []) => true,
            (Some(id), [(finding, at)]) => {
                let spaced = |text: &str| text.replace(['\u{a0}', '\u{202f}', '\u{2009}'], " ");
                let says = |(key, wanted): (&String, &String)| {
                    finding
                        .values
                        .get(key.as_str())
                        .is_some_and(|got| spaced(got) == *wanted)
                };
                finding.id == id
                    && finding.stage == Stage::Job
                    && case.at.as_deref() == Some(at)
                    && case.values.iter().all(says)
            }
            _ => false,
        };
        if !met {
            failures.push(format!("{change}: {told:?}"));
        }
        for (finding, _) in &found {
            let told = wording.tell(finding);
            assert!(
                !told.title.starts_with(finding.id),
                "{} has no wording",
                finding.id
            );
            let whole = format!("{} {} {}", told.title, told.why, told.fix);
            let sound = !whole.contains("``") && !whole.contains("  ") && !whole.contains(" .");
            assert!(sound, "{}: {whole}", finding.id);
            assert_eq!(told.labels.len(), finding.related.len());
        }
    }
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}
