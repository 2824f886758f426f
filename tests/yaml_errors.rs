//! What people are told when a file is wrong: every error in one run, each at its place.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on must stop"
)]

mod reader;

use studbook::report::{FileId, Sources, Style, Told, ToldJson, Words, draw};
use studbook::units::{Date, Quantity};
use studbook::yaml::{At, decode, decode_text, open, read};

use reader::{Job, Kind, job};

/// `line:column id` and the text under the caret, one a line, as they would be shown.
fn told(text: &str) -> Vec<String> {
    let tree = read(text.as_bytes(), FileId(0));
    let (_, findings) = decode::<Job>(&tree);
    let lines = findings.iter().map(|finding| {
        let place = finding
            .place
            .expect("every finding of a reader has a place");
        let range = usize::try_from(place.start).unwrap()..usize::try_from(place.end).unwrap();
        let under = &tree.text()[range];
        format!("{}:{} {} `{under}`", place.line, place.column, finding.id)
    });
    lines.collect()
}

#[test]
fn a_clean_job_keeps_order_places_and_spelling() {
    let text = "\u{feff}studbook: 1\ntools:\n  TW-21: { kind: hand torque wrench, due: 2027-09-01, start: 07:30 }\n  HW-07: { kind: hydraulic torque wrench, points: [[100 bar, 905 N·m], [400 bar, 3660 Nm]] }\njoints:\n  - tag: 0123\n    studs: { count: 24, thread: no, length: 1 1/8 in }\n    critical: true\n    share: 15 %\n    note: |\n      one\n      two\n    passes: [30 %, 0.7, 1]\n";
    let (job, findings) = job(text);
    assert!(findings.is_empty(), "{findings:?}");
    let job = job.unwrap();
    assert_eq!(job.studbook.get(), Some(&1));
    let tools = job.tools.as_ref().and_then(At::get).unwrap();
    assert_eq!(tools.names().collect::<Vec<_>>(), ["TW-21", "HW-07"]);
    assert_eq!(tools.get("TW-21").unwrap().kind.get(), Some(&Kind::Hand));
    let wrench = tools.get("HW-07").unwrap();
    assert_eq!(wrench.kind.get(), Some(&Kind::Hydraulic));
    let points = wrench.points.as_ref().and_then(At::get).unwrap();
    let (pressure, torque) = points[1].get().unwrap();
    assert!((pressure.get().unwrap().si() - 400e5).abs() < 1e-6);
    assert!((torque.get().unwrap().si() - 3660.0).abs() < 1e-9);
    let joint = job.joints[0].get().unwrap();
    // What was typed is what is meant, whatever other readers make of `0123` and `no`.
    assert_eq!(&**joint.tag.get().unwrap(), "0123");
    let studs = joint.studs.get().unwrap();
    assert_eq!(&**studs.thread.get().unwrap(), "no");
    assert_eq!(studs.count.get(), Some(&24));
    assert!(studs.preload.is_none());
    assert_eq!(&**joint.note.as_ref().unwrap().get().unwrap(), "one\ntwo");
    assert_eq!(joint.passes.len(), 3);
    assert_eq!(joint.critical.as_ref().unwrap().get(), Some(&true));
    assert!((joint.share.as_ref().unwrap().get().unwrap().si() - 0.15).abs() < 1e-15);
    let place = studs.length.place();
    assert_eq!((place.line, place.column), (7, 45));
    assert_eq!(place.end - place.start, 8);
    let time = tools.get("TW-21").unwrap().start.as_ref().unwrap();
    assert_eq!(time.get().unwrap().minutes(), 450);
    let due = tools.get("TW-21").unwrap().due.as_ref().unwrap();
    assert_eq!(due.get().unwrap().to_string(), "2027-09-01");
}

#[test]
fn every_error_of_a_file_is_told_at_its_place() {
    let text = "studbook: 1
tools:
  HW-07: { kind: hydraulic torque wrench, points: [[100 bar, 905 N·m], [400 bar, 3660 kN], [1, 2, 3]], due: 29.03.2026, start: 7:30 }
  HW-08: { kind: hydraulic torque wrnch }
  HW-07: { kind: hand torque wrench }
  HW-09: *nobody
joints:
  - tag: E-310-CH-00000001
    studs: { count: 1_000, thread: M48x5, lenght: 12,5 mm }
    critical: yes
    share: 15 %
    passes: [30 %, 70%, 1.0]
  - tag: \"E-3\u{202e}10\"
    studs:
      count: 024
      thread: M48x5
      length: 430
      preload: 350 Nm2
    note: |
      a text
    passes: 30 %
  - studs:
      count: 4294967296
      thread:
      length: .inf mm
    share: NaN
    critical: on
  - [a, list]
  - !x { tag: A, studs: 5 }
colour: red
";
    let expected = [
        "3:87 quantity.wrong_quantity `kN`",
        "3:92 job.list_length `[1, 2, 3]`",
        "3:109 date.form `29.03.2026`",
        "3:128 time.form `7:30`",
        "4:18 job.unknown_word `hydraulic torque wrnch`",
        "5:3 job.duplicate_key `HW-07`",
        "6:10 yaml.unknown_anchor `*nobody`",
        "8:26 text.too_long `1`",
        "9:12 job.missing_key `{ count: 1_000, thread: M48x5, lenght: 12,5 mm }`",
        "9:21 quantity.grouping `1_000`",
        "9:43 job.unknown_key `lenght`",
        "9:51 quantity.comma `12,5 mm`",
        "10:15 job.not_true_or_false `yes`",
        "13:14 text.direction `\u{202e}`",
        "15:14 quantity.leading_zero `024`",
        "17:15 quantity.no_unit `430`",
        "18:20 quantity.unknown_unit `Nm2`",
        "21:13 job.wrong_shape `30 %`",
        "22:5 job.missing_key `studs`",
        "23:14 job.out_of_range `4294967296`",
        "24:7 job.missing_value `thread`",
        "25:15 quantity.no_number `.inf mm`",
        "26:12 quantity.no_number `NaN`",
        "27:15 job.not_true_or_false `on`",
        "28:5 job.wrong_shape `[a, list]`",
        "29:5 yaml.tag `!x`",
        "29:25 job.wrong_shape `5`",
        "30:1 job.unknown_key `colour`",
    ];
    assert_eq!(told(text), expected);
}

#[test]
fn findings_carry_what_their_wording_needs() {
    let (_, findings) = job(
        "studbook: 1\njoints:\n  - { tag: A, studs: { count: 4, thread: M8, lenght: 9 mm }, tag: B }\n",
    );
    let unknown = findings
        .iter()
        .find(|one| one.id == "job.unknown_key")
        .unwrap();
    assert_eq!(&unknown.values["near"], "length");
    assert_eq!(&unknown.values["within"], "studs");
    let missing = findings
        .iter()
        .find(|one| one.id == "job.missing_key")
        .unwrap();
    assert_eq!(&missing.values["key"], "length");
    assert_eq!(&missing.values["within"], "studs");
    let double = findings
        .iter()
        .find(|one| one.id == "job.duplicate_key")
        .unwrap();
    assert_eq!(&double.values["first"], "3");
    assert_eq!(double.related[0].0.column, 7);
}

#[test]
fn several_syntax_errors_are_told_in_one_run() {
    let text = "studbook: 1
joints:
  - tag: A
    studs: { count: 4, thread: M8, length: 10 mm
  - tag: \"B
    passes: []
  - tag: C: D
    studs: {count: 5, thread: M6, length: 5 mm}
  - tag: E
    studs: { count: 4x, thread: M8, length: 10 mm }
  - tag: F
\tpasses: [1]
  - tag: \"G\" x
    note: y
  - tag: H
    studs:
      count 24
      thread: M4
      length: 7
";
    let expected = [
        "4:12 yaml.bracket `{`",
        "5:10 yaml.unclosed_quote `\"`",
        "7:11 yaml.colon `:`",
        "10:21 job.not_whole `4x`",
        "12:1 yaml.tab `\t`",
        "13:14 yaml.after_quote `x`",
        "17:7 yaml.no_colon `count 24`",
        "19:15 quantity.no_unit `7`",
    ];
    assert_eq!(told(text), expected);
}

#[test]
fn syntax_errors_in_maps_are_told_one_by_one() {
    let text = "studbook: 1
tools:
  A:
    kind: hand: torque wrench
    due: 1.2.2027
  B:
    kind: @hand
    points:
      - [100 bar, 905 N·m]
      - [400 bar 3660 N·m: x: y]
      - [500 bar, 4000 kN]
joints: [ a, b
";
    let expected = [
        "4:15 yaml.colon `:`",
        "5:10 date.form `1.2.2027`",
        "7:11 yaml.character `@`",
        "10:29 yaml.separator `:`",
        "11:24 quantity.wrong_quantity `kN`",
        "12:9 yaml.bracket `[`",
    ];
    assert_eq!(told(text), expected);
}

#[test]
fn merge_keys_share_values_and_the_nearest_wins() {
    let text = "studbook: 1\njoints:\n  - &a { tag: A, share: 10 %, studs: { count: 4, thread: M8, length: 30 mm } }\n  - { <<: *a, tag: B }\n";
    let (job, findings) = job(text);
    assert!(findings.is_empty(), "{findings:?}");
    let job = job.unwrap();
    let second = job.joints[1].get().unwrap();
    assert_eq!(&**second.tag.get().unwrap(), "B");
    assert_eq!(second.studs.get().unwrap().count.get(), Some(&4));
    assert_eq!(second.share.as_ref().unwrap().place().line, 3);
}

#[test]
fn dates_are_read_strictly_and_other_forms_get_a_hint() {
    let place = read(b"", FileId(0)).start();
    let write = |text: &str| {
        let (date, findings) = decode_text::<Date>(text, place, "due");
        match findings.first() {
            None => date.get().unwrap().to_string(),
            Some(finding) => format!(
                "{} {}",
                finding.id,
                finding.values.get("write").unwrap_or_default()
            ),
        }
    };
    assert_eq!(write("2028-02-29"), "2028-02-29");
    assert_eq!(write("2026-02-29"), "date.no_such ");
    assert_eq!(write("29.03.2026"), "date.form 2026-03-29");
    assert_eq!(write("2026-3-9"), "date.form 2026-03-09");
    assert_eq!(write("20260329"), "date.form 2026-03-29");
    assert_eq!(write("2026-03-29T19:00"), "date.form 2026-03-29");
    // Day or month first? Nothing is offered.
    assert_eq!(write("03/04/2026"), "date.form ");
    assert_eq!(write("soon"), "date.form ");
}

#[test]
fn a_finding_is_drawn_under_the_text_it_is_about() {
    let text = "studbook: 1\njoints:\n  - { tag: A\u{e4}中, studs: { count: 4, thread: M8, lenght: 9 mm } }\n";
    let mut sources = Sources::default();
    let tree = open("job.yaml", text.as_bytes(), &mut sources);
    let (_, findings) = decode::<Job>(&tree);
    let finding = findings
        .iter()
        .find(|one| one.id == "job.unknown_key")
        .unwrap();
    let told = Told {
        title: "unknown key `lenght`".to_owned(),
        why: "It would be left out.".to_owned(),
        fix: "Did you mean `length`?".to_owned(),
        labels: Vec::new(),
    };
    let words = Words::default();
    let drawn = draw(finding, &told, &words, &sources, Style::Plain);
    let expected = "error[job.unknown_key]: unknown key `lenght`
 --> job.yaml:3:48
  |
3 |   - { tag: A\u{e4}中, studs: { count: 4, thread: M8, lenght: 9 mm } }
  |                                                 ^^^^^^
  |
  = why: It would be left out.
  = fix: Did you mean `length`?";
    assert_eq!(drawn, expected);
    let short = draw(finding, &told, &words, &sources, Style::Short);
    assert_eq!(short, "job.yaml:3:48: unknown key `lenght`");
    let json = serde_json::to_value(ToldJson::new(finding, &told, &sources)).unwrap();
    assert_eq!(json["file"], "job.yaml");
    assert_eq!(json["column"], 48);
    assert_eq!(json["severity"], "error");
}
