//! The texts of the program: each can be said with what the code gives, and is as short and as
//! measurable as a crew needs it.
//!
//! Source of the style rules (imperative, at most 15 words a step, one action, measured criterion,
//! no vague words): common practice for work instructions, no source.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use studbook::report::{FileId, Finding, Severity};
use studbook::rules;
use studbook::wording::{Override, Values, Wording};

/// Words of a step that is read with a tool in the hands.
const STEP_WORDS: usize = 15;

fn english() -> Wording {
    Wording::embedded("en").expect("English is embedded")
}

static SAMPLES: LazyLock<BTreeMap<String, serde_yaml::Value>> = LazyLock::new(|| {
    serde_yaml::from_str(include_str!("wording/samples.yaml")).expect("samples are a map")
});

/// The samples that an id asks for. A name without a sample is a failure that names both.
fn values_for(wording: &Wording, id: &str) -> Values {
    let names = wording.variables(id).into_iter();
    names.fold(Values::new(), |values, name| {
        let sample = SAMPLES
            .get(&name)
            .unwrap_or_else(|| panic!("`{id}` asks for `{name}`, which has no sample"));
        // The names live as long as the test.
        let name: &'static str = Box::leak(name.into_boxed_str());
        match sample {
            serde_yaml::Value::Bool(flag) => values.with(name, *flag),
            serde_yaml::Value::Number(count) => {
                let count = count.as_u64().and_then(|count| u32::try_from(count).ok());
                values.with(name, count.expect("a sample number is a count"))
            }
            other => values.with(name, other.as_str().expect("a sample is a text")),
        }
    })
}

fn said(wording: &Wording, id: &str) -> Vec<String> {
    let values = values_for(wording, id);
    match wording.say(id, &values) {
        Ok(text) => vec![text],
        Err(_) => wording
            .list(id, &values)
            .unwrap_or_else(|error| panic!("{error}")),
    }
}

/// Words, where a number and its unit count as one.
fn words(text: &str) -> usize {
    let units = [
        "mm", "N·m", "bar", "h", "deg", "°C", "kN", "kg", "MPa", "%", "/", "m", "min",
    ];
    text.split_whitespace()
        .filter(|word| !units.contains(&word.trim_end_matches(['.', ',', ':', ';'])))
        .count()
}

#[test]
fn every_text_can_be_said() {
    let wording = english();
    for id in wording.ids() {
        for text in said(&wording, id) {
            let sound = !text.contains("  ") && text.trim() == text && !text.contains("{{");
            assert!(sound, "`{id}` reads `{text}`");
        }
    }
}

#[test]
fn no_text_asks_for_more_than_it_is_given() {
    let wording = english();
    for id in wording.ids() {
        let given = wording.given(id);
        for name in wording.variables(id) {
            assert!(given.contains(&name), "`{id}` is not given `{name}`");
        }
    }
}

#[test]
fn every_rule_says_what_it_found_why_and_what_to_do() {
    let wording = english();
    for rule in rules::all().map(|rule| rule.id) {
        for part in ["name", "condition", "found", "why", "fix", "source", "who"] {
            let id = format!("{rule}.{part}");
            let text = said(&wording, &id).concat();
            assert!(!text.is_empty(), "`{id}` is empty");
            let is_sentence = ["condition", "found", "why", "fix"].contains(&part);
            assert_eq!(text.ends_with('.'), is_sentence, "`{id}` reads `{text}`");
        }
        let title = said(&wording, &format!("{rule}.name")).concat();
        assert!(words(&title) <= 7, "{rule} is called `{title}`");
    }
}

#[test]
fn findings_are_told_even_with_values_missing() {
    let wording = english();
    let finding = Finding::rule("T10", Severity::Error, None)
        .on("E-310-CH-01")
        .with("tool", "HW-07");
    let told = wording.tell(&finding);
    assert_eq!(told.title, "HW-07 has no calibration points.");
    assert!(told.fix.contains("tools.HW-07.calibration.points"));
    let unknown = Finding::job("job.never_heard_of", None).with("key", "grip");
    assert_eq!(wording.tell(&unknown).title, "job.never_heard_of key=grip");
}

#[test]
fn a_rule_is_shown_without_a_case() {
    let wording = english();
    assert_eq!(
        wording.outline("L20.fix"),
        "Give `…`, or take the stretch out of the checks."
    );
    for rule in rules::all() {
        for part in ["why", "fix"] {
            let text = wording.outline(&format!("{}.{part}", rule.id));
            let sound = text.contains(' ') && !text.contains('{');
            assert!(sound, "{}: `{text}`", rule.id);
        }
    }
}

#[test]
fn steps_are_short_and_measurable() {
    let wording = english();
    let vague = [
        "be careful",
        "careful",
        "if necessary",
        "as required",
        "if required",
        "as needed",
        "ensure",
        "make sure",
        "properly",
        "adequate",
        "sufficient",
        "excessive",
        "as appropriate",
    ];
    for id in wording.ids() {
        let tells = ["isolation.", "work.step.", "work.hazard."];
        if !tells.iter().any(|group| id.starts_with(group)) {
            continue;
        }
        let is_sheet = id.starts_with("isolation.") && id.ends_with(".do");
        let is_card = id.starts_with("work.step.") && id.ends_with(".card");
        for text in said(&wording, id) {
            let small = text.to_lowercase();
            let parts: Vec<&str> = small.split(|sign: char| !sign.is_alphabetic()).collect();
            let small = format!(" {} ", parts.join(" "));
            for phrase in vague {
                assert!(
                    !small.contains(&format!(" {phrase} ")),
                    "`{id}` says `{phrase}`"
                );
            }
            if is_sheet || is_card {
                let count = words(&text);
                assert!(count <= STEP_WORDS, "`{id}` has {count} words: `{text}`");
            }
        }
    }
}

#[test]
fn signal_words_stand_on_cautions_only() {
    let wording = english();
    let signals = ["DANGER", "WARNING", "CAUTION", "NOTICE"];
    for id in wording.ids() {
        let is_signal = id.starts_with("signal.");
        for text in wording.sources(id) {
            let has = signals.iter().any(|word| text.contains(word));
            assert_eq!(has, is_signal, "`{id}`");
        }
    }
}

#[test]
fn cautions_close_with_what_goes_before_them() {
    let wording = english();
    let closing = wording.label("pack.cautions.closing");
    for word in ["law", "site", "permits", "maker", "authorised"] {
        assert!(
            closing.contains(word),
            "the closing line does not name {word}"
        );
    }
}

fn overriding(text: &str) -> Override {
    Override {
        file: FileId(0),
        text: text.to_owned(),
    }
}

#[test]
fn a_user_replaces_single_texts() {
    let file = overriding("card:\n  class_unknown: No class\nM01:\n  found: Ask {{ joint }}.\n");
    let wording = Wording::with_overrides("en", &[file]).expect("both texts are known");
    assert_eq!(wording.label("card.class_unknown"), "No class");
    let finding = Finding::rule("M01", Severity::Error, None).on("V-312-MW-01");
    assert_eq!(wording.tell(&finding).title, "Ask V-312-MW-01.");
    assert_eq!(wording.label("word.tighten"), "TIGHTEN");
}

#[test]
fn faults_of_overrides_are_told_all_at_once_with_their_places() {
    let ids_of = |text: &str| -> Vec<(&'static str, u32)> {
        let faults = Wording::with_overrides("en", &[overriding(text)]).err();
        let faults = faults.expect("the override is wrong");
        let line = |finding: &Finding| finding.place.map_or(0, |place| place.line);
        faults
            .iter()
            .map(|finding| (finding.id, line(finding)))
            .collect()
    };
    assert_eq!(
        ids_of("card:\n  klass: x\n  class_unknown: [a, b]\n"),
        [("wording.kind", 3), ("wording.unknown_id", 2)]
    );
    assert_eq!(
        ids_of("card:\n  class_unknown: 5\n"),
        [("wording.not_text", 2)]
    );
    assert_eq!(ids_of("card: [\n")[0].0, "wording.not_yaml");
    assert_eq!(
        ids_of("card:\n  class_unknown: '{{ x }}'\n"),
        [("wording.plain", 2)]
    );
    assert_eq!(
        ids_of("card:\n  class: '{{ class'\n"),
        [("wording.template", 2)]
    );
    assert_eq!(
        ids_of("M01:\n  found: 'x {{ join }}'\n"),
        [("wording.unknown_value", 2)]
    );
}

#[test]
fn a_text_that_never_ends_is_stopped() {
    // A hundred thousand turns of a loop are more than any text may take.
    let turn = "{% for a in [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] %}".repeat(5);
    let endless = format!("card:\n  class: '{turn}x{}'\n", "{% endfor %}".repeat(5));
    let wording = Wording::with_overrides("en", &[overriding(&endless)]).expect("it parses");
    let values = Values::new().with("class", "A");
    assert!(wording.say("card.class", &values).is_err());
}

#[test]
fn a_missing_value_names_itself() {
    let wording = english();
    let error = wording
        .say("card.class", &Values::new())
        .expect_err("no class is given");
    assert_eq!(error.id, "card.class");
    assert!(error.detail.contains("class"), "{error}");
    let error = wording
        .say("card.no_such", &Values::new())
        .expect_err("there is no such id");
    assert_eq!(error.detail, "");
}

#[test]
fn another_language_falls_back_to_english_and_says_so() {
    assert!(Wording::embedded("xx").is_err());
    let file = overriding("word:\n  tighten: ANZIEHEN\n");
    let wording = Wording::with_overrides("de", &[file]).expect("a text is known");
    assert_eq!(wording.label("word.tighten"), "ANZIEHEN");
    assert_eq!(wording.label("word.loosen"), "LOOSEN");
    assert_eq!(wording.notes()[0].id, "wording.not_translated");
}

#[test]
fn digits_lists_and_plurals_follow_the_language() {
    let wording = english();
    assert_eq!(wording.digits("455"), "four five five");
    assert_eq!(
        wording.digits("1\u{2009}250.5"),
        "one two five zero point five"
    );
    let words = |count: usize| -> String {
        let all = ["a", "b", "c"].map(str::to_owned);
        wording.join(&all[..count])
    };
    assert_eq!(
        [words(0), words(1), words(2), words(3)],
        ["", "a", "a and b", "a, b and c"]
    );
    let joints = |count: u32| {
        let values = Values::new().with("count", count);
        wording
            .say("pack.cover.joints", &values)
            .expect("the count is given")
    };
    assert_eq!(
        [joints(1), joints(2), joints(0)],
        ["joint", "joints", "joints"]
    );
}

#[test]
fn labels_of_a_group_come_as_a_whole() {
    let labels = english().labels("card");
    assert_eq!(labels["record.none"], "none");
    assert!(!labels.contains_key("record"));
}

fn rust_files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("the folder can be read") {
        let path = entry.expect("the entry can be read").path();
        if path.is_dir() {
            rust_files(&path, found);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            found.push(path);
        }
    }
}

/// The first string literal behind each `call` of a source text.
fn literals_behind(source: &str, call: &str) -> Vec<String> {
    source
        .split(call)
        .skip(1)
        .filter_map(|rest| rest.trim_start().strip_prefix('"'))
        .filter_map(|rest| rest.split_once('"'))
        .map(|(literal, _)| literal.to_owned())
        .collect()
}

/// Every string literal of a source text that is written as ids are: words joined by points, the
/// first of them a group of the wording. A part in braces is filled in when the program runs.
fn ids_in(source: &str, wording: &Wording) -> Vec<String> {
    let is_id = |text: &str| {
        let group = text.split('.').next().unwrap_or("");
        let signs = |sign: char| sign.is_ascii_lowercase() || "._{}0123456789".contains(sign);
        !group.is_empty()
            && text.contains('.')
            && !text.ends_with(".typ")
            && text.chars().all(signs)
            && !wording.children(group).is_empty()
    };
    let pieces = source.split('"').skip(1).step_by(2);
    pieces
        .filter(|text| is_id(text))
        .map(str::to_owned)
        .collect()
}

/// The sources below a folder without their unit tests, in which ids are made up.
#[allow(
    clippy::disallowed_methods,
    reason = "the test reads the sources of the program"
)]
fn sources(folder: &str) -> Vec<(String, String)> {
    let mut files = Vec::new();
    rust_files(
        &Path::new(env!("CARGO_MANIFEST_DIR")).join(folder),
        &mut files,
    );
    let read = |path: &PathBuf| {
        let text = fs::read_to_string(path).expect("the source can be read");
        text.split("#[cfg(test)]").next().unwrap_or("").to_owned()
    };
    files
        .iter()
        .map(|path| (path.display().to_string(), read(path)))
        .collect()
}

#[test]
fn every_finding_of_the_sources_has_wording() {
    let wording = english();
    for (file, source) in sources("src") {
        for call in [
            "Finding::job(",
            "Finding::rule(",
            "Complaint::new(",
            ".finding(",
        ] {
            for id in literals_behind(&source, call) {
                let there = wording.has(&format!("{id}.found"));
                assert!(there, "{file}: `{id}` has no wording");
            }
        }
    }
}

/// Builders of documents ask their context, commands ask the wording.
#[test]
fn every_id_of_builders_and_commands_has_wording() {
    let wording = english();
    let files = [sources("src/document"), sources("src/cli")].concat();
    let asks = |source: &str| source.contains("context.") || source.contains("wording.");
    for (file, source) in files.iter().filter(|(_, source)| asks(source)) {
        for id in ids_in(source, &wording) {
            let group = id.split('{').next().unwrap_or("").trim_end_matches('.');
            let there = wording.has(&id) || !wording.children(group).is_empty();
            assert!(there, "{file}: `{id}` has no wording");
        }
    }
}
