//! The laid-out pages of crew cards, read back: sizes, places, overlaps, mandatory fields, room.
//!
//! Limits are those of the trade's rules for paper on site, not of the templates: ticks of 10 mm, number
//! boxes of 20 mm (common practice for gloved hands, no open source), type above 8 pt on permits
//! (a regulator's guidance on permits, from memory), QR modules of 0.6 mm (common practice).

mod sample;

use std::sync::LazyLock;

use sample::{checks, draft, lay_out, longest, loosening, tightening, upright};
use studbook::document::card::{Card, Entry, Measure, Tag};
use studbook::typeset::Typeset;

const COUNTS: [usize; 9] = [1, 4, 5, 8, 24, 32, 36, 48, 64];

/// Every count tightened, loosened and as a draft, and the longest texts; laid out once for all tests.
static ALL: LazyLock<Typeset> = LazyLock::new(|| lay_out(all_cards()));

fn all_cards() -> Vec<Card> {
    let tall = COUNTS
        .iter()
        .flat_map(|count| [tightening(*count), loosening(*count), draft(*count)]);
    tall.chain([longest(24), longest(8)]).collect()
}

#[test]
fn a_card_is_two_pages_for_every_count_and_for_the_longest_texts() {
    let pages = &*ALL;
    let count = all_cards().len();
    assert_eq!(pages.page_count(), 2 * count);
    let heads: Vec<usize> = (0..count).map(|card| 2 * card + 1).collect();
    assert_eq!(pages.pages_of("card"), heads);
}

#[test]
fn type_has_the_sizes_of_the_scale_and_none_below() {
    checks::sizes_of_type(&ALL);
}

#[test]
fn boxes_are_large_enough_for_gloves() {
    checks::boxes_for_gloves(&ALL);
    for label in ["tick", "time", "box", "wanted", "sign", "date"] {
        assert!(!ALL.boxes(label).is_empty(), "no <{label}> on any card");
    }
}

#[test]
fn nothing_stands_outside_the_text_area() {
    checks::inside_the_text_area(&ALL);
}

#[test]
fn boxes_do_not_overlap_and_no_text_runs_into_them() {
    checks::boxes_apart(&ALL);
}

#[test]
fn texts_do_not_run_into_one_another() {
    checks::texts_apart(&ALL);
}

/// The mandatory zones of a crew card, each with words or boxes that prove it: side, words, boxes.
/// Zones 1 to 7 stand on the side to do, 8 to 18 on the side to record.
type Zone = (
    u8,
    &'static str,
    usize,
    &'static [&'static str],
    &'static [(&'static str, usize)],
);

const ZONES: [Zone; 18] = [
    (
        1,
        "identity strip",
        1,
        &[
            "E-310-CH-01",
            "Effluent cooler, channel flange",
            "north channel, +6 m platform",
            "drawing HL-31-M-2104 rev 3",
            "class A",
        ],
        &[],
    ),
    (
        2,
        "stop line",
        1,
        &[
            "DANGER",
            "Hydrogen-rich gas, 92 bar, 310 °C",
            "isolation certificate",
            "zero pressure seen at",
            "time",
            "initials",
        ],
        &[],
    ),
    (
        3,
        "big numbers",
        1,
        &[
            "24 × M48×5",
            "455",
            "bar",
            "4150",
            "N·m",
            "grey paste",
            "75 mm",
            "HW-07",
        ],
        &[],
    ),
    (
        4,
        "joint picture",
        1,
        &[
            "From the nut side",
            "facing south",
            "top",
            "clockwise",
            "circle 1120 mm",
            "bracket",
            "no hands",
        ],
        &[],
    ),
    (
        5,
        "pass table",
        1,
        &[
            "P0", "P1", "P2", "P3", "P4", "snug", "135", "30 %", "Order", "1·13",
        ],
        &[("time", 6)],
    ),
    (
        6,
        "before-start ticks",
        1,
        &[
            "Seats clean",
            "Gasket new",
            "Nuts run by hand",
            "Washers",
            "calibration",
            "People clear",
        ],
        &[("tick", 15)],
    ),
    (
        7,
        "footer",
        1,
        &[
            "HL-31-WP-007",
            "revision B",
            "XA7H-CFDY",
            "2027-03-08",
            "page 1 of 2",
            "Uncontrolled",
        ],
        &[],
    ),
    (
        8,
        "tools used",
        2,
        &[
            "Tools used",
            "HW-07 s/n 7731",
            "due 2027-09-01",
            "changed to",
        ],
        &[],
    ),
    (
        9,
        "materials used",
        2,
        &["gasket", "studs", "nuts", "paste", "batch or heat"],
        &[],
    ),
    (
        10,
        "alignment as found",
        2,
        &[
            "centreline",
            "limit 1.5",
            "parallel",
            "limit 0.8",
            "hole offset",
            "limit 3",
            "free gap",
            "limit 9",
        ],
        &[],
    ),
    (
        11,
        "gap readings",
        2,
        &["Gap at eight studs", "P0", "P1", "P2", "22", "above 0.25"],
        &[("box", 54)],
    ),
    (
        12,
        "final check",
        2,
        &["nuts that turned", "of 24", "rounds made", "at least 2"],
        &[],
    ),
    (
        13,
        "stretch",
        2,
        &[
            "Stretch",
            "before",
            "after",
            "difference",
            "accept 0.52 to 0.63",
        ],
        &[],
    ),
    (
        14,
        "protrusion",
        2,
        &["Thread past nut", "least", "most", "accept 1 to 3 turns"],
        &[],
    ),
    (
        15,
        "hold and witness points",
        2,
        &["HOLD H3", "WITNESS W2", "no nut turns at 455 bar"],
        &[("sign", 7), ("date", 7), ("time", 2)],
    ),
    (
        16,
        "deviations",
        2,
        &["Deviation", "none", "yes", "number, what"],
        &[],
    ),
    (
        17,
        "handover",
        2,
        &[
            "assembled by",
            "supervisor",
            "inspector",
            "client",
            "tag stub torn off",
        ],
        &[("tick", 3)],
    ),
    (18, "next time", 2, &["For next time"], &[]),
];

#[test]
fn every_mandatory_zone_is_on_its_side() {
    let pages = &lay_out(vec![tightening(24)]);
    for (zone, name, side, words, boxes) in ZONES {
        let text = pages.text(side).replace('\u{a0}', " ");
        for word in words {
            assert!(
                text.contains(word),
                "zone {zone}, {name}: no {word:?} in {text}"
            );
        }
        for (label, count) in boxes {
            let found = pages
                .boxes(label)
                .into_iter()
                .filter(|region| region.page == side)
                .count();
            assert_eq!(found, *count, "zone {zone}, {name}: <{label}>");
        }
    }
    assert!(
        pages.text(2).contains("E-310-CH-01"),
        "the tag stands on both sides"
    );
}

#[test]
fn a_draft_says_so_in_the_badge_the_footer_and_across_both_sides() {
    let pages = &lay_out(vec![draft(24)]);
    for side in [1, 2] {
        let texts = pages.texts(side);
        assert!(
            texts
                .iter()
                .any(|text| text.text == "DRAFT" && text.upright),
            "badge of side {side}"
        );
        assert!(
            texts
                .iter()
                .any(|text| text.text == "DRAFT" && !text.upright),
            "watermark of side {side}"
        );
        assert!(
            pages
                .text(side)
                .contains("not for use on site: 2 errors stand")
        );
    }
    assert!(!lay_out(vec![tightening(24)]).text(1).contains("DRAFT"));
}

#[test]
fn a_value_that_nobody_gave_is_an_empty_box_with_a_name() {
    let pages = &lay_out(vec![draft(24)]);
    let text = pages.text(1);
    assert!(
        text.contains("TO BE GIVEN BY THE ENGINEER")
            && text.contains("TO BE GIVEN BY THE TOOL STORE")
    );
    assert_eq!(pages.boxes("wanted").len(), 3);
    let large = pages
        .texts(1)
        .into_iter()
        .filter(|text| (text.size - 34.0).abs() < 0.1 && text.upright);
    let words: Vec<String> = large.map(|text| text.text.clone()).collect();
    assert_eq!(
        words,
        ["E-310-CH-01"],
        "no number stands in for the missing one"
    );
}

/// What does not fit is named with its field and with how much would fit.
#[test]
fn a_text_too_long_for_its_place_is_found_before_the_layout() {
    let mut card = tightening(24);
    card.identity.place = "north channel beside the stairway ".repeat(4);
    card.steps.rows[1].line = "thirty per cent in the order A to M".into();
    let overruns = card.over_budget();
    let fields: Vec<&str> = overruns.iter().map(|overrun| overrun.field).collect();
    assert_eq!(fields, ["identity.place", "steps.line"]);
    for overrun in overruns {
        assert_eq!(overrun.measure, Measure::Characters);
        assert!(
            overrun.limit > 10 && overrun.limit < overrun.got,
            "{overrun:?}"
        );
        let fitting: String = overrun.text.chars().take(overrun.limit).collect();
        let mut shorter = tightening(24);
        match overrun.field {
            "identity.place" => shorter.identity.place = fitting,
            _ => shorter.steps.rows[1].line = fitting,
        }
        assert!(shorter.over_budget().is_empty());
    }
}

#[test]
fn too_many_lines_are_found_before_the_layout() {
    let mut card = longest(24);
    card.ticks.items = vec!["one".into(); 12];
    card.target.facts[3].value = Entry::Missing("TO BE GIVEN BY THE PLANNER".into());
    let fields: Vec<&str> = card
        .over_budget()
        .iter()
        .map(|overrun| overrun.field)
        .collect();
    assert_eq!(fields, ["ticks.items", "side 1"]);
    let mut card = tightening(24);
    let row = card.record.tools.rows[0].clone();
    card.record.tools.rows.extend([row.clone(), row]);
    let overruns = card.over_budget();
    assert_eq!((overruns.len(), overruns[0].field), (1, "side 2"));
    assert_eq!(overruns[0].measure, Measure::Millimetres);
}

/// Whatever the words, a card with an empty list of overruns is laid out in its places: the widest
/// letters in every text that a planner writes.
#[test]
fn wide_letters_fit_when_the_measure_says_so() {
    let mut card = tightening(24);
    card.identity.tag = Tag::new("WM".repeat(12));
    card.identity.equipment = "WM".repeat(13);
    card.identity.place = "MW".repeat(15);
    card.danger.hazard = "WMMW ".repeat(6).trim().into();
    card.ticks.items = vec!["WMWM MWMW MMWW".into(); 9];
    card.target.facts[3].value = Entry::Given("WMWMWMWMWMWMWM".into());
    let pages = lay_out(vec![card]);
    let texts = upright(&pages, 1);
    for (index, text) in texts.iter().enumerate() {
        assert!(text.region.x + text.region.width < 196.1, "{text:?}");
        for other in &texts[index + 1..] {
            assert!(
                !text.region.overlaps(&other.region, 0.1),
                "{text:?} {other:?}"
            );
        }
    }
}

#[test]
fn a_tag_takes_the_largest_form_that_fits() {
    let forms = [
        "E-310-CH-01",
        "HL-31-E-2104A-CH-03",
        "E-310A-CH-01/NORTH-UPPER-SIDE-22",
    ];
    let tags = forms.map(Tag::new);
    assert!(tags[0].large && tags[0].lines == ["E-310-CH-01"]);
    assert!(!tags[1].large && tags[1].lines == ["HL-31-E-2104A-CH-03"]);
    assert!(!tags[2].large && tags[2].lines == ["E-310A-CH-01/", "NORTH-UPPER-SIDE-22"]);
}
