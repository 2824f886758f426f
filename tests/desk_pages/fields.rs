//! Every field that a part must have.

use crate::desk_sample as desk;
use studbook::document::card::Draft;
use studbook::document::desk::Part;
use studbook::document::isolation::STEPS_ROOM;

use super::{isolation, lay_out, note, text_of};

#[test]
fn cover_fields_are_there() {
    let text = text_of(&lay_out(vec![Part::Cover(Box::new(desk::cover(false)))]), 1);
    for field in [
        "responsible department",
        "technical reference",
        "document type",
        "title, supplementary title",
        "owner",
        "identification number",
        "rev",
        "date of issue",
        "prepared",
        "checked",
        "approved",
        "Equipment",
        "Contents",
        "Open findings",
        "Revisions",
        "Approvals",
        "client stamp",
        "FOR APPROVAL",
        "joints",
        "studs",
        "content 3A99-14D0",
        "page 1 of 1",
        "uncontrolled",
        "Language",
    ] {
        assert!(text.contains(field), "{field}: {text}");
    }
}

#[test]
fn a_draft_says_why_on_its_cover() {
    let pages = lay_out(vec![Part::Cover(Box::new(desk::cover(true)))]);
    assert_eq!(pages.page_count(), 1, "a full cover is one page");
    let text = text_of(&pages, 1);
    for field in [
        "DRAFT",
        "2 errors stand. Not for use on site.",
        "L08",
        "load left in service 352 kN",
        "I01",
    ] {
        assert!(text.contains(field), "{field}: {text}");
    }
    assert!(
        pages
            .texts(1)
            .iter()
            .any(|text| text.text == "DRAFT" && !text.upright)
    );
}

#[test]
fn a_draft_of_an_isolation_sheet_says_so_on_every_page() {
    let mut sheet = desk::isolation(8);
    sheet.draft = Some(Draft {
        word: "DRAFT".into(),
        reason: "DRAFT, not for use on site: 2 errors stand".into(),
    });
    let pages = lay_out(vec![Part::Isolation(Box::new(sheet))]);
    for page in 1..=3 {
        let texts = pages.texts(page);
        let words = texts.iter().filter(|text| text.text == "DRAFT").count();
        assert_eq!(words, 2, "badge and watermark of page {page}");
        assert!(text_of(&pages, page).contains("not for use on site: 2 errors stand"));
    }
}

#[test]
fn fields_of_the_isolation_sheet_are_there() {
    let pages = lay_out(vec![isolation(8)]);
    assert_eq!(pages.page_count(), 3);
    let fields: [&[&str]; 3] = [
        &[
            "I-04",
            "ISOLATE",
            "class A",
            "permit no.",
            "isolation certificate no.",
            "lock box no.",
            "flow diagram",
            "Contents and energy",
            "310 °C",
            "14 m³",
            "66 kN per bar",
            "0.1 bar = 680 kg",
            "0.665 m²",
            "Boundary",
            "Points",
            "lock no.",
            "tag no.",
            "fitted",
            "verified",
            "removed",
            "HV-3101",
            "gate valve",
            "shut, locked",
        ],
        &[
            "PROVE",
            "Tell everybody",
            "Shut down",
            "vent",
            "drain",
            "Purge",
            "surface",
            "joint side",
            "Hold test",
            "Other energy",
            "Try to start",
            "gas",
            "HOLD",
            "First crack",
            "Prove again",
        ],
        &[
            "RETURN",
            "Spades out",
            "Locks and tags removed",
            "Leak test",
            "E-310-CH-04",
            "Lock box",
            "never replaces",
        ],
    ];
    for (index, fields) in fields.iter().enumerate() {
        let text = text_of(&pages, index + 1);
        for field in *fields {
            assert!(text.contains(field), "page {}: {field}: {text}", index + 1);
        }
    }
    assert_eq!(pages.boxes("point").len(), 8 * 5);
    // Boxes of a hold: name, signature, date, time.
    assert!(
        text_of(&pages, 2).contains("name signature date time"),
        "{}",
        text_of(&pages, 2)
    );
}

#[test]
fn steps_are_never_higher_than_was_counted() {
    let sheet = desk::isolation(8);
    assert!(
        sheet.proof.height() <= STEPS_ROOM,
        "{} mm",
        sheet.proof.height()
    );
    let pages = lay_out(vec![isolation(8)]);
    let boxes = pages
        .boxes("box")
        .into_iter()
        .filter(|region| region.page == 2);
    let foot = boxes
        .map(|region| region.y + region.height)
        .fold(0.0, f64::max);
    assert!(foot <= 272.1, "the last box ends at {foot} mm");
}

#[test]
fn a_missing_opening_is_a_box_with_a_name() {
    let mut sheet = desk::isolation(3);
    sheet.force.per_pressure = String::new();
    sheet.force.opening = "TO BE GIVEN BY THE ENGINEER: opening".into();
    let pages = lay_out(vec![Part::Isolation(Box::new(sheet))]);
    assert_eq!(pages.boxes("wanted").len(), 1);
    assert!(text_of(&pages, 1).contains("TO BE GIVEN BY THE ENGINEER"));
    assert!(
        !text_of(&pages, 1).contains("per bar"),
        "no number stands in for the missing one"
    );
}

#[test]
fn fields_of_the_note_are_there() {
    let pages = lay_out(vec![note()]);
    let all: Vec<String> = (1..=pages.page_count())
        .map(|page| text_of(&pages, page))
        .collect();
    let text = all.join(" ");
    for field in [
        "Target load",
        "508",
        "Valid only for",
        "Load in one stud, kN",
        "needed in service",
        "where it comes from",
        "default, key studs.bearing_diameter",
        "Check by hand in five lines",
        "Steps",
        "ISO 898-1:2013",
        "1473",
        "4146",
        "Limits",
        "FAIL",
        "pass",
        "not known",
        "Not checked here",
        "Members of the group",
        "E-310-CH-02",
    ] {
        assert!(text.contains(field), "{field}: {text}");
    }
    assert!(pages.page_count() <= 4, "a note is at most four pages");
    assert_eq!(pages.boxes("wanted").len(), 2, "one input, one result");
}

/// The line of a formula reads as symbol, formula, numbers, result from left to right.
#[test]
fn a_step_reads_symbol_formula_numbers_result() {
    let pages = lay_out(vec![note()]);
    let text = (1..=pages.page_count())
        .map(|page| text_of(&pages, page))
        .collect::<Vec<_>>()
        .join(" ");
    let at = text.find("F2 ").expect("the second step");
    let step: String = text[at..]
        .chars()
        .filter(|sign| !sign.is_whitespace())
        .take(60)
        .collect();
    assert!(step.contains("=σ⋅"), "{step}");
    assert!(step.contains("=345MPa⋅1473mm²=508kN"), "{step}");
}
