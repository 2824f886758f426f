//! The typesetter from outside: what it refuses, what it says, and that it repeats itself byte for byte.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use built::cards::{request, tightening};
use built::example;
use built::flanges::change;
use studbook::document::blocks::Card;
use studbook::document::width;
use studbook::typeset::{Fault, Overrides, make_pdf, missing_characters, typeset};

fn with(name: &str, text: &str) -> Overrides {
    Overrides::from([(name.to_owned(), text.as_bytes().to_vec())])
}

/// The card of the smallest job.
fn smallest() -> Vec<Card> {
    tightening(&example("smallest.yaml"))
}

/// The first fault of a card volume with one template replaced.
fn fault_of(name: &str, text: &str) -> Fault {
    let overrides = with(name, text);
    let faults = typeset(&request(smallest(), &overrides)).expect_err("a broken template");
    faults.into_iter().next().expect("at least one fault")
}

#[test]
fn a_fault_names_file_line_and_column() {
    let fault = fault_of(
        "cards.typ",
        "#let data = json(\"/data.json\")\n\n  #data.missing\n",
    );
    assert_eq!(
        (fault.file.as_deref(), fault.line, fault.column),
        (Some("cards.typ"), 3, 9)
    );
    assert!(fault.message.contains("missing"), "{fault}");
    let fault = fault_of("blocks.typ", "#let head = (1 +\n");
    assert_eq!(fault.file.as_deref(), Some("blocks.typ"));
}

#[test]
fn a_warning_is_a_fault() {
    let fault = fault_of("cards.typ", "#set text(font: \"No Such Family\")\nword");
    assert!(
        fault.message.starts_with("warning: ") && fault.message.contains("no such family"),
        "{fault}"
    );
}

#[test]
fn a_template_reaches_nothing_outside_its_document() {
    for text in [
        "#import \"@preview/any:0.1.0\": x",
        "#read(\"/etc/passwd\")",
        "#read(\"../../secret\")",
        "#image(\"/elsewhere/picture.png\")",
        "#datetime.today()",
    ] {
        let fault = fault_of("cards.typ", text);
        assert_eq!(fault.file.as_deref(), Some("cards.typ"), "{text}: {fault}");
        assert!(!fault.to_string().contains("--root"), "{fault}");
    }
}

#[test]
fn an_endless_template_is_stopped() {
    fault_of("cards.typ", "#let f(x) = f(x + 1)\n#f(0)");
    fault_of("cards.typ", "#{ let i = 0\n while i < 1 { i = i * 1 } }");
}

#[test]
fn a_template_sees_other_files_of_its_document() {
    let mut overrides = with("cards.typ", "#include \"more.typ\"");
    overrides.insert("more.typ".into(), b"from the other file".to_vec());
    let pages = typeset(&request(Vec::new(), &overrides)).expect("two good templates");
    assert_eq!(pages.text(1), "from the other file");
}

/// What a user types prints as it was typed.
#[test]
fn data_is_text_and_never_markup() {
    let hostile = r##"#[]{}$\*_"<a>@b~-- // /* `x`"##;
    let tag = "tag: D-101-CV-01\n";
    let place = format!("{tag}    place: '{hostile}'\n");
    let job = change(&example("smallest.yaml"), tag, &place);
    let overrides = Overrides::new();
    let pages = typeset(&request(tightening(&job), &overrides)).expect("text is no fault");
    assert!(
        pages.texts(1).iter().any(|text| text.text == hostile),
        "{}",
        pages.text(1)
    );
}

#[test]
fn the_same_request_gives_the_same_bytes() {
    let overrides = Overrides::new();
    let make = || make_pdf(&request(smallest(), &overrides)).expect("a good card");
    let (first, second) = (make(), make());
    assert_eq!((first.pages, second.pages), (2, 2));
    assert!(first.bytes == second.bytes);
}

/// ISO 19005-2:2011, 6.6.4: the identification stands in the metadata, which is not compressed.
#[test]
fn a_pdf_is_of_the_archive_kind_and_carries_its_properties() {
    let overrides = Overrides::new();
    let pdf = make_pdf(&request(smallest(), &overrides)).expect("a good card");
    let text = String::from_utf8_lossy(&pdf.bytes);
    for part in [
        "<pdfaid:part>2<",
        "<pdfaid:conformance>U<",
        "HL-31-WP-007",
        "R. Olsen",
        "revision B",
        "2027-03-08",
        "Studbook 0.",
    ] {
        assert!(text.contains(part), "{part}");
    }
    assert!(text.starts_with("%PDF-1.7"));
}

#[test]
fn characters_without_a_glyph_are_named_before_the_layout() {
    let printable = "Zażółć gęślą jaźń, ΔL ≤ 0.5 mm, Фланец № 3, ⌀ 48 ✓ ⚠";
    assert!(missing_characters(printable).is_empty());
    assert_eq!(
        missing_characters("tag 漢字漢\u{202e}\u{0}"),
        vec!['漢', '字', '\u{202e}', '\u{0}']
    );
}

/// Every character of the house face, in both weights, is no wider than the estimate.
#[test]
fn no_character_is_wider_than_its_estimate() {
    let template = "#set text(font: \"IBM Plex Sans\", size: 100pt, number-width: \"tabular\", slashed-zero: false)\n\
        #set page(width: auto, height: auto)\n\
        #for c in json(\"/data.json\").cards { box(text(weight: 500, c)) \n h(1em) \n box(text(weight: 700, c)) \n linebreak() }";
    let overrides = with("cards.typ", template);
    let characters: Vec<char> = ('!'..='~')
        .chain('\u{a1}'..='\u{24f}')
        .chain('\u{370}'..='\u{4ff}')
        .chain("–—‘’“”…‰−≤≥√∞≈µ′″×·".chars())
        .collect();
    let printable: Vec<String> = characters
        .into_iter()
        .filter(|character| {
            character.is_alphanumeric()
                || character.is_ascii_punctuation()
                || "–—‘’“”…‰−≤≥√∞≈µ′″×·±°".contains(*character)
        })
        .map(String::from)
        .filter(|character| missing_characters(character).is_empty())
        .collect();
    assert!(printable.len() > 500);
    let mut wanted = request(Vec::new(), &overrides);
    wanted.data =
        serde_json::to_vec(&serde_json::json!({ "cards": printable })).expect("plain data");
    let pages = typeset(&wanted).expect("one page");
    for text in pages.texts(1) {
        let estimate = width::of(&text.text, 100.0);
        assert!(
            text.region.width <= estimate * 1.002,
            "{}: {} mm, estimate {estimate}",
            text.text,
            text.region.width
        );
    }
}
