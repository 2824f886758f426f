//! Our reader against another one: every text is read twice, by us and by `serde_yaml`, and the two
//! trees must be equal. Random and damaged bytes must end in findings, never in a panic.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on must stop"
)]

use proptest::prelude::*;
use serde::Deserialize;
use serde_yaml::Value;
use unicode_normalization::UnicodeNormalization;

use studbook::report::{FileId, Sources, Style, Told, Words, draw};
use studbook::units::{Length, Ratio, Torque};
use studbook::yaml::{At, Id, Named, Prose, Text, Tree, View, decode, open, read};

/// Whether our node means what the referee read.
fn same(tree: &Tree, id: Id, value: &Value) -> bool {
    match (tree.view(id), value) {
        (View::Null, Value::Null) => true,
        (View::Text(text), Value::String(other)) => text == other.nfc().collect::<String>(),
        // The referee decides on a type while reading; we keep the text that was typed.
        (View::Text(text), Value::Number(_) | Value::Bool(_)) => {
            serde_yaml::from_str::<Value>(text).is_ok_and(|again| again == *value)
        }
        (View::List(items), Value::Sequence(others)) => {
            items.len() == others.len()
                && items
                    .iter()
                    .zip(others)
                    .all(|(&item, other)| same(tree, item, other))
        }
        (View::Map(pairs), Value::Mapping(others)) => {
            pairs.len() == others.len()
                && pairs.iter().all(|&(key, value)| {
                    let known = others
                        .iter()
                        .find(|(other, _)| same(tree, key, other))
                        .map(|(_, other)| other);
                    known.is_some_and(|other| same(tree, value, other))
                })
        }
        _ => false,
    }
}

fn check(text: &str) {
    let mut referee: Value = serde_yaml::from_str(text).unwrap_or_else(|e| panic!("{e}\n{text}"));
    referee.apply_merge().unwrap();
    let tree = read(text.as_bytes(), FileId(0));
    assert!(tree.findings().is_empty(), "{:?}\n{text}", tree.findings());
    assert!(
        same(&tree, tree.root().unwrap(), &referee),
        "{referee:?}\n{text}"
    );
}

const DOCUMENTS: &[&str] = &[
    // Block and flow, comments, quotes of both kinds.
    "a: 1\nb: [x, 'it''s', \"tab\\there\", {c: d}]\n# comment\ne:\n  - f # behind\n  - g: h\n    i: j\n",
    // Block scalars with every kind of ending.
    "keep: |+\n  one\n\n  two\n\nstrip: >-\n  folded\n  line\n\n  next\nclip: |\n  text # not a comment\nlast: >\n  a\n   b\n",
    // Texts that run over lines.
    "plain: one\n  two\n  three\nquoted: \"one\n  two\\\n  three\n\n  four\"\nsingle: 'a\n\n  b'\n",
    // Anchors, aliases and merge keys, one and several, with overrides.
    "base: &base {x: 1, y: 2}\nmore: &more\n  y: 3\n  z: [4]\nuse:\n  <<: *base\n  y: 5\nboth: {<<: [*base, *more], w: *more}\nscalar: &s text\nagain: *s\n",
    // Words that other readers turn into something else.
    "a: no\nb: on\nc: 12:30\nd: 3E2\ne: 1_000\nf: ~\ng:\nh: null\ni: 0123\nj: true\nk: '~'\n",
    // Signs of other scripts, and accents in two ways of writing.
    "ключ: значение\n\"e\u{301}\": caf\u{e9}\nrtl: שלום\nwide: 中文\n",
    // Line ends of another system.
    "a: b\r\nc:\r\n  - d\r\n  - e\r\n",
    // Explicit start and end.
    "---\na: b\n...\n",
    // Nothing much.
    "a: {}\nb: []\nc: ''\n",
    // Odd but legal forms.
    "? a\n: b\n\"c\": [a: b, c]\nlist:\n- x\n- - y\n  - z\n-key: -1\nurl: http://x/y#z\n",
];

#[test]
fn written_documents_are_read_as_the_referee_reads_them() {
    for text in DOCUMENTS {
        check(text);
    }
}

/// What the referee refuses, we must not read in silence.
#[test]
fn what_is_no_yaml_for_the_referee_is_none_for_us() {
    for text in [
        "d: - e\n",
        "a: [1, 2\nb: 3\n",
        "a: \"b\n",
        "a: b: c\n",
        "a:\n\t- b\n",
        "a: @b\n",
        "a: *b\n",
        "a: 1\n  b: 2\n",
        "a: }\n",
        "a: \"\\q\"\n",
        "- a\nb: c\n",
    ] {
        assert!(serde_yaml::from_str::<Value>(text).is_err(), "{text}");
        let tree = read(text.as_bytes(), FileId(0));
        assert!(!tree.findings().is_empty(), "{text}");
    }
}

/// A text of the kind that breaks readers: signs of meaning, spaces at the ends, line breaks.
fn awkward_text() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-z0-9]{1,8}",
        "[-#:,{}\\[\\]&*!|>'\"%@`? a-z0-9.]{0,12}",
        "[a-z \\n]{0,20}",
        // These two break lines in YAML 1.1, which the referee writes, and not in YAML 1.2 (5.4).
        "\\PC{0,10}".prop_map(|text| text.replace(['\u{2028}', '\u{2029}'], "")),
        Just("no".to_owned()),
        Just("0x1F".to_owned()),
        Just("<".to_owned()),
    ]
}

fn tree_of_values() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        4 => awkward_text().prop_map(Value::String),
        1 => any::<i64>().prop_map(|number| Value::Number(number.into())),
        1 => any::<bool>().prop_map(Value::Bool),
        1 => Just(Value::Null),
    ];
    leaf.prop_recursive(5, 60, 6, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..6).prop_map(Value::Sequence),
            prop::collection::btree_map("[a-z#: é]{1,9}", inner, 0..6).prop_map(|map| {
                let pairs = map
                    .into_iter()
                    .map(|(key, value)| (Value::String(key), value));
                Value::Mapping(pairs.collect())
            }),
        ]
    })
}

#[derive(Debug, Deserialize)]
#[expect(dead_code, reason = "the fields are there to be decoded")]
struct Job {
    studbook: At<u32>,
    tools: Named<Tool>,
    joints: Vec<At<Joint>>,
}

type Point = (At<Length>, At<Torque>);

#[derive(Debug, Deserialize)]
#[expect(dead_code, reason = "the fields are there to be decoded")]
struct Tool {
    points: Option<At<Vec<At<Point>>>>,
    hand: Option<At<bool>>,
}

#[derive(Debug, Deserialize)]
#[expect(dead_code, reason = "the fields are there to be decoded")]
struct Joint {
    tag: At<Text<32>>,
    length: At<Length>,
    share: Option<At<Ratio>>,
    note: Option<At<Prose<400>>>,
}

const SAMPLE: &str = "studbook: 1\ntools:\n  HW-07: {points: [[1 mm, 5 N·m], [2 mm, 9 N·m]], hand: true}\njoints:\n  - &a\n    tag: E-310 # first\n    length: 1 1/8 in\n    share: 60 %\n    note: |\n      Two lines\n      of \"prose\".\n  - {<<: *a, tag: 'E-311', length: 430 mm}\n";

/// Reads and decodes whatever it is, and draws every finding in every style.
fn survive(bytes: &[u8]) {
    let mut sources = Sources::default();
    let tree = open("job.yaml", bytes, &mut sources);
    let (job, findings) = decode::<Job>(&tree);
    assert!(job.is_some() || !findings.is_empty());
    for finding in findings.iter().take(50) {
        if let Some(place) = finding.place {
            let range = usize::try_from(place.start).unwrap()..usize::try_from(place.end).unwrap();
            assert!(tree.text().get(range).is_some(), "{finding:?}");
        }
        for style in [Style::Plain, Style::Styled, Style::Short] {
            let told = Told {
                title: format!("{:?}", finding.values),
                ..Told::default()
            };
            draw(finding, &told, &Words::default(), &sources, style);
        }
    }
}

#[test]
fn the_sample_is_clean() {
    let (job, findings) = decode::<Job>(&read(SAMPLE.as_bytes(), FileId(0)));
    assert!(findings.is_empty(), "{findings:?}");
    assert_eq!(job.unwrap().joints.len(), 2);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn generated_documents_are_read_as_the_referee_reads_them(value in tree_of_values()) {
        check(&serde_yaml::to_string(&value).unwrap());
        // JSON is YAML in brackets.
        check(&serde_json::to_string(&value).unwrap());
    }

    #[test]
    fn random_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        survive(&bytes);
    }

    #[test]
    fn random_signs_never_panic(text in "([-#:,{}\\[\\]&*!|>'\"%@`?<\\\\a~ \t\n]|\\PC){0,120}") {
        survive(text.as_bytes());
    }

    #[test]
    fn damaged_documents_never_panic(
        cuts in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>(), 0..3_u8), 1..8)
    ) {
        let mut bytes = SAMPLE.as_bytes().to_vec();
        for (index, byte, kind) in cuts {
            let at = index.index(bytes.len());
            match kind {
                0 => bytes[at] = byte,
                1 => bytes.insert(at, byte),
                _ => { bytes.remove(at); }
            }
        }
        survive(&bytes);
    }
}
