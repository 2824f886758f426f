//! A wrench with an adapter in line is set lower than the torque that the nut gets: every page says the
//! same setting, and the card says both.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use built::cards::{cards_of, end_lines, keys, rows};
use built::packs::pack_of;
use built::{example, with_job};
use serde_json::Value as Json;
use studbook::document::blocks::Amount;
use studbook::document::build::{CardPages, register};

/// A car service manual: 120 ft·lb with a wrench of 12 in and an extension of 2 in; the manual prints 103.
/// The passes by the same law of levers: 30 % is 36, of which 12/14 are 30.86; 70 % is 84, of which 72.
/// At 103 the nut gets 103 × 14 / 12 = 120.17. Of 90 ft·lb at most, 12/14 are 77.14, so 77 are never passed; it breaks
/// loose between 60 % of 103, which are 61.8, and less than 90 % of it, 92.7, which is more than 77.
const JOB: &str = "studbook: 1
pack: { title: Adapter }
lubricants: { paste: { thread_friction: 0.13, bearing_friction: 0.13 } }
tools:
  TW-1: { kind: hand torque wrench, range: [20 ft·lb, 250 ft·lb], scale: ft·lb, step: 1 ft·lb, adapter: { wrench_length: 12 in, extension: 2 in } }
joints:
  - tag: R-1
    studs: { count: 8, thread: 5/8-11 UNC, grade: A193 B7 }
    lubricant: paste
    target: { torque: 120 ft·lb }
    tighten: { with: TW-1, passes: [30 %, 70 %, 100 %] }
    loosen: { with: TW-1, never_exceed: 90 ft·lb, break_out: [0.6, 0.9] }
";

fn given(value: &Amount) -> String {
    match value {
        Amount::Given { number, unit } => format!("{number} {unit}"),
        Amount::Missing { by } => panic!("missing: {by}"),
    }
}

/// The section of a document with a label, in one text.
fn section(document: &Json, label: &str) -> Option<String> {
    match document {
        Json::Object(fields) if fields.get("label").and_then(Json::as_str) == Some(label) => {
            Some(document.to_string().replace('\u{a0}', " "))
        }
        Json::Object(fields) => fields.values().find_map(|value| section(value, label)),
        Json::Array(items) => items.iter().find_map(|value| section(value, label)),
        _ => None,
    }
}

fn procedures(name: &str, job: &str) -> String {
    let document = serde_json::to_value(pack_of(name, job)).unwrap_or_default();
    section(&document, "procedures").unwrap_or_else(|| panic!("no procedures"))
}

fn says(text: &str, right: &[&str], wrong: &[&str]) {
    for words in right {
        assert!(text.contains(words), "{words}: {text}");
    }
    for words in wrong {
        assert!(!text.contains(words), "{words}: {text}");
    }
}

#[test]
fn every_page_says_what_the_wrench_is_set_to() {
    with_job("adapter.yaml", JOB, |context| {
        let [card, loosen] = cards_of(context, 0);
        assert_eq!(given(&keys(&card).main.value), "103 ft·lb");
        let second = keys(&card)
            .main
            .second
            .as_ref()
            .unwrap_or_else(|| panic!("one value"));
        assert_eq!(
            (second.number.as_str(), second.words.as_str()),
            ("120.2", "at the nut")
        );
        let settings = format!("{:?}", rows(&card));
        says(
            &settings,
            &["\"31\"", "\"72\"", "\"103\""],
            &["\"36\"", "\"84\"", "\"120\""],
        );
        assert_eq!(given(&keys(&loosen).main.value), "77 ft·lb");
        let range = keys(&loosen)
            .main
            .second
            .as_ref()
            .map(|it| it.number.as_str());
        assert_eq!(range, Some("62 to 77"));
        let end = end_lines(&loosen).join(" ").replace('\u{a0}', " ");
        says(&end, &["77 ft·lb"], &["90", "89"]);
        let text = register(context, CardPages::Here).csv();
        let text = String::from_utf8_lossy(&text).replace('\u{a0}', " ");
        says(&text, &["103 ft·lb"], &["120 ft·lb"]);
    });
}

#[test]
fn the_procedures_say_what_the_card_says() {
    says(
        &procedures("adapter.yaml", JOB),
        &[
            "30 % of the target, 31 ft·lb",
            "70 % of the target, 72 ft·lb",
            "100 % of the target, 103 ft·lb",
            "A nut holds at 77 ft·lb: stop",
        ],
        &["36 ft·lb", "84 ft·lb", "120 ft·lb", "120.2", "90 ft·lb"],
    );
}

/// With 600 mm and 150 mm the wrench shows 0.8 of what a jackbolt gets: of 240 N·m 192, in steps of 5 it is set to 190,
/// and the jackbolt gets 237.5. A tenth of that, 23.75, is 19 on the wrench; at most 200 N·m are 160.
#[test]
fn jackbolts_are_set_through_the_adapter_too() {
    let mut job = example("tie-rods.yaml");
    for (old, new) in [
        (
            "square: 1/2 in, square_rating: 600 N·m, mass: 2.4 kg,",
            "square: 1/2 in, square_rating: 600 N·m, mass: 2.4 kg, adapter: { wrench_length: 600 mm, extension: 150 mm },",
        ),
        ("target: { stress: 300 MPa }", "target: { torque: 240 N·m }"),
        (
            "loosen: { with: TW-33, peak: 1.3 }",
            "loosen: { with: TW-31, peak: 1.3, never_exceed: 200 N·m }",
        ),
    ] {
        assert_eq!(job.matches(old).count(), 1, "{old}");
        job = job.replace(old, new);
    }
    with_job("tie-rods.yaml", &job, |context| {
        let anchors = context
            .joints
            .iter()
            .position(|joint| joint.family.as_deref() == Some("frame anchors"));
        let [tighten, loosen] = cards_of(context, anchors.unwrap_or_else(|| panic!("no anchors")));
        assert_eq!(given(&keys(&tighten).main.value), "190 N·m");
        let second = keys(&tighten)
            .main
            .second
            .as_ref()
            .map(|it| it.number.as_str());
        assert_eq!(second, Some("237.5"));
        let settings = rows(&tighten);
        // The driver has no adapter: 80 % of 237.5.
        let driver = keys(&tighten).others.last().map(|it| given(&it.value));
        assert_eq!(driver.as_deref(), Some("190 N·m"));
        let round = |name: &str| {
            let row = settings.iter().find(|row| row.name == name);
            row.and_then(|row| row.value.as_ref()).map(given)
        };
        assert_eq!(round("C0").as_deref(), Some("19 N·m"));
        assert_eq!(round("C1").as_deref(), Some("190 N·m"));
        assert_eq!(given(&keys(&loosen).main.value), "160 N·m");
    });
    // The rods stand aside, so that the procedures have numbers of the anchors alone.
    says(
        &procedures("tie-rods.yaml", &anchors_alone(&job)),
        &["all of them, at 19 N·m;", "190 N·m", "160 N·m"],
        &["237.5", "240 N·m", "23.75", "24 N·m", "200 N·m"],
    );
}

/// The job without the joints of its tie rods.
fn anchors_alone(job: &str) -> String {
    let (before, joints) = job
        .split_once("\njoints:\n")
        .unwrap_or_else(|| panic!("no joints"));
    let kept: Vec<&str> = joints
        .split_inclusive('\n')
        .filter(|line| !line.contains("family: tie rods"))
        .collect();
    format!("{before}\njoints:\n{}", kept.concat())
}
