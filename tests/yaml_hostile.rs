//! Files that are no job at all, or want to do harm: each gets a clear message.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on must stop"
)]

mod reader;

use serde::Deserialize;

use studbook::report::{FileId, Sources, Style, Told, Words, cap, draw};
use studbook::yaml::{At, Text, decode, open, read};

use reader::{Job, job};

#[test]
fn after_twenty_syntax_errors_it_says_so() {
    let text = "studbook: 1\njoints:\n".to_owned() + &"  - tag: a: b\n".repeat(30);
    let (_, findings) = job(&text);
    let count = |id| findings.iter().filter(|one| one.id == id).count();
    assert_eq!(count("yaml.colon"), 20);
    assert_eq!(count("yaml.gave_up"), 1);
}

/// The id of the first finding.
fn first(bytes: &[u8]) -> &'static str {
    let (_, findings) = decode::<Job>(&read(bytes, FileId(0)));
    findings.first().map_or("clean", |finding| finding.id)
}

#[test]
fn hostile_files_get_a_clear_message() {
    assert_eq!(first(b""), "yaml.empty");
    assert_eq!(first(b"\xef\xbb\xbf# only a comment\n"), "yaml.empty");
    assert_eq!(first(b"---\n"), "yaml.empty");
    assert_eq!(first(b"- a\n- b\n"), "yaml.not_a_map");
    assert_eq!(first(b"dear colleague\n"), "yaml.not_a_map");
    assert_eq!(first(b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n"), "yaml.not_utf8");
    assert_eq!(first(b"studbook: 1\0\njoints: []\n"), "yaml.nul");
    assert_eq!(first(&[0xff, 0xfe, b's', 0, b't', 0]), "yaml.nul");
    assert_eq!(
        first(b"studbook: 1\njoints: []\n---\nstudbook: 1\n"),
        "yaml.second_document"
    );
    assert_eq!(first(b"studbook: .nan\njoints: []\n"), "quantity.no_number");
    assert_eq!(
        first("joints: []\nstudbook: \u{202e}1\n".as_bytes()),
        "quantity.no_number"
    );
    assert_eq!(first(b"studbook: 1\n? [a]\n: b\n"), "yaml.key_not_text");
    assert_eq!(first(b"studbook: 1\n: b\n"), "yaml.key_not_text");
    assert_eq!(first(b"studbook: 1\n<<: 5\n"), "yaml.merge_shape");
    assert_eq!(
        first(b"studbook: 1\njoints: &j [*j]\n"),
        "yaml.recursive_alias"
    );
}

#[test]
fn a_sign_that_is_no_utf8_is_told_once_and_the_rest_is_read() {
    let bytes = b"studbook: 1\njoints:\n  - { tag: K\xfchler, critical: yes, studs: { count: 1, thread: M8, length: 1 mm } }\n";
    let tree = read(bytes, FileId(0));
    let (_, findings) = decode::<Job>(&tree);
    let ids: Vec<_> = findings.iter().map(|finding| finding.id).collect();
    assert_eq!(ids, ["yaml.not_utf8", "job.not_true_or_false"]);
    assert_eq!(findings[0].place.unwrap().column, 13);
}

#[test]
fn a_hundred_thousand_levels_end_at_sixty_four() {
    for text in [
        "- ".repeat(100_000),
        "[".repeat(100_000),
        format!("joints: {}", "{a: ".repeat(100_000)),
        (0..2_000).map(|depth| " ".repeat(depth) + "a:\n").collect(),
    ] {
        assert_eq!(first(text.as_bytes()), "yaml.too_deep");
    }
    // The same depth by aliases of aliases.
    let mut text = "a0: &a0 [x]\n".to_owned();
    for level in 1..200 {
        text += &format!("a{level}: &a{level} [*a{}]\n", level - 1);
    }
    let tree = read(text.as_bytes(), FileId(0));
    assert_eq!(tree.findings()[0].id, "yaml.too_deep");
}

#[test]
fn sixty_three_levels_are_read() {
    let text = format!("a: {}{}\n", "[".repeat(62), "]".repeat(62));
    assert!(read(text.as_bytes(), FileId(0)).findings().is_empty());
}

#[test]
fn a_bomb_of_aliases_costs_nothing_to_read_and_ends_in_decoding() {
    #[derive(Debug, Deserialize)]
    #[expect(dead_code, reason = "the field is there to be decoded")]
    struct Deep {
        i: At<L8>,
    }
    type L1 = Vec<At<Text<8>>>;
    type L2 = Vec<At<L1>>;
    type L3 = Vec<At<L2>>;
    type L4 = Vec<At<L3>>;
    type L5 = Vec<At<L4>>;
    type L6 = Vec<At<L5>>;
    type L7 = Vec<At<L6>>;
    type L8 = Vec<At<L7>>;
    let mut text = "a: &a [x, x, x, x, x, x, x, x, x]\n".to_owned();
    for pair in ["ab", "bc", "cd", "de", "ef", "fg", "gh", "hi"] {
        let (from, to) = pair.split_at(1);
        text += &format!("{to}: &{to} [{}]\n", vec![format!("*{from}"); 9].join(", "));
    }
    let tree = read(text.as_bytes(), FileId(0));
    assert!(tree.findings().is_empty());
    assert!(tree.len() < 100);
    let (_, findings) = decode::<Deep>(&tree);
    assert!(
        findings.iter().any(|one| one.id == "yaml.alias_budget"),
        "{findings:?}"
    );
}

#[test]
fn a_bomb_of_merge_keys_ends() {
    let keys: Vec<String> = (0..2_000).map(|key| format!("k{key}: 1")).collect();
    let mut text = format!("a: &a {{{}}}\nb:\n", keys.join(", "));
    text += &"  - {<<: *a}\n".repeat(2_000);
    let tree = read(text.as_bytes(), FileId(0));
    assert_eq!(tree.findings()[0].id, "yaml.alias_budget");
}

#[test]
fn texts_print_whatever_is_typed_but_nothing_unseen() {
    let read = |text: &str| -> Vec<&'static str> {
        let quoted = serde_json::to_string(text).unwrap();
        let text = format!(
            "studbook: 1\njoints:\n  - {{ tag: {quoted}, studs: {{ count: 1, thread: M8, length: 1 mm }} }}\n"
        );
        let (_, findings) = job(&text);
        findings.iter().map(|finding| finding.id).collect()
    };
    let clean: &[&str] = &[];
    assert_eq!(read("#[]{}$\\*_<>"), clean);
    assert_eq!(read("שלום-310"), clean);
    assert_eq!(read("e\u{301}tage"), clean);
    assert_eq!(read(&"x".repeat(500)), ["text.too_long"]);
    assert_eq!(read("a\u{200b}b"), ["text.hidden_character"]);
    assert_eq!(read("a\u{7}b"), ["text.hidden_character"]);
    assert_eq!(read("a\tb"), ["text.tab"]);
    assert_eq!(read("a\nb"), ["text.line_break"]);
    assert_eq!(read("a\u{2067}b"), ["text.direction"]);
    assert_eq!(read(" "), ["text.empty"]);
}

#[test]
fn two_ways_of_typing_an_accent_are_one_name() {
    let (_, findings) = job(
        "studbook: 1\njoints: []\ntools:\n  \u{e9}: { kind: hand torque wrench }\n  e\u{301}: { kind: hand torque wrench }\n",
    );
    assert_eq!(findings[0].id, "job.duplicate_key");
}

#[test]
fn a_drawing_obeys_nothing_that_stands_in_the_file() {
    let text = "studbook: 1\njoints: []\n\u{1b}[31mred\u{9b}31m: \u{1b}]0;title\u{7}\n";
    let mut sources = Sources::default();
    let tree = open("job\u{1b}[2J.yaml", text.as_bytes(), &mut sources);
    let (_, findings) = decode::<Job>(&tree);
    assert!(!findings.is_empty());
    for finding in &findings {
        let told = Told {
            title: format!(
                "unknown {}",
                finding
                    .values
                    .iter()
                    .map(|(_, value)| value)
                    .collect::<String>()
            ),
            ..Told::default()
        };
        for style in [Style::Plain, Style::Short] {
            let drawn = draw(finding, &told, &Words::default(), &sources, style);
            let control = drawn
                .chars()
                .find(|sign| sign.is_control() && *sign != '\n');
            assert_eq!(control, None, "{drawn:?}");
        }
    }
}

#[test]
fn a_hundred_findings_are_shown_and_the_rest_counted() {
    let text = "studbook: 1\njoints:\n".to_owned() + &"  - [x]\n".repeat(137);
    let (_, findings) = job(&text);
    let (shown, more) = cap(&findings);
    assert_eq!((shown.len(), more), (100, 37));
    assert!(shown.windows(2).all(|pair| pair[0].place <= pair[1].place));
}
