//! The laid-out pages of crew cards, read back: sizes, places, overlaps, mandatory fields, room.
//!
//! Limits are those of the trade's rules for paper on site, not of the templates: ticks of 10 mm, number
//! boxes of 20 mm (common practice for gloved hands, no open source), type above 8 pt on permits
//! (a regulator's guidance on permits, from memory), QR modules of 0.6 mm (common practice).

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use std::sync::LazyLock;

use built::cards::{cards, lay_out_cards, overruns, rows, tightening};
use built::checks::{self, upright};
use built::flanges::{change, channel, flange, flanges, unknown, with_joints, words};
use built::text_of;
use studbook::document::blocks::Card;
use studbook::typeset::Typeset;

const COUNTS: [usize; 10] = [1, 4, 5, 8, 24, 32, 36, 48, 64, 96];

/// Every count tightened, loosened and as a draft, and the longest texts; laid out once for all tests.
static ALL: LazyLock<(Typeset, Vec<usize>)> = LazyLock::new(|| {
    let cards = all_cards();
    let sides = cards.iter().map(|it| it.sides.len()).collect();
    (lay_out_cards(cards), sides)
});

fn all_cards() -> Vec<Card> {
    let counts = flanges(&COUNTS);
    [
        cards(&counts),
        tightening(&unknown(&counts)),
        cards(&longest()),
        cards(&widest()),
    ]
    .concat()
}

/// The example with one flange whose texts of the job are as long as their places on the card.
fn longest() -> String {
    longest_of("E-310A-CH-01/NORTH-UPPER-SIDE-22", words)
}

/// The same in the widest letters.
fn widest() -> String {
    let wide = |count: usize| {
        "WM "
            .chars()
            .cycle()
            .take(count * 7 / 10)
            .collect::<String>()
    };
    longest_of(&"WM".repeat(12), |count| wide(count).trim().to_owned())
}

fn longest_of(tag: &str, words: impl Fn(usize) -> String) -> String {
    let names = [
        ("BS-75", words(14)),
        ("spiral 905-935", words(26)),
        ("Drive seated and its lock pin in", words(38)),
        ("Arm on the printed side and locked", words(37)),
        ("effluent cooler", words(40)),
        ("first: top", format!("first: {}", words(15))),
        (
            "seen_from: the nut side",
            format!("seen_from: {}", words(12)),
        ),
        ("on: neighbouring nut", format!("on: {}", words(14))),
    ];
    let text = names
        .iter()
        .fold(channel(), |text, (from, to)| change(&text, from, to));
    let joint = flange(24).replace("E-310-CH-24", tag);
    let joint = change(
        &joint,
        "\"north channel, +6 m platform\"",
        &format!("\"{}\", danger: \"{}\"", words(60), words(52)),
    );
    with_joints(&text, [joint])
}

/// A card is one sheet, or two where one does not hold it, and begins on an odd page.
#[test]
fn a_card_is_whole_sheets_for_every_count_and_for_the_longest_texts() {
    let (pages, sides) = &*ALL;
    assert!(sides.iter().all(|it| [2, 4].contains(it)), "{sides:?}");
    assert_eq!(pages.page_count(), sides.iter().sum::<usize>());
    let heads = sides.iter().scan(1, |next, sides| {
        let head = *next;
        *next += sides;
        Some(head)
    });
    assert_eq!(pages.pages_of("card"), heads.collect::<Vec<_>>());
}

#[test]
fn type_has_the_sizes_of_the_scale_and_none_below() {
    checks::sizes_of_type(&ALL.0);
}

#[test]
fn boxes_are_large_enough_for_gloves() {
    checks::boxes_for_gloves(&ALL.0);
    for label in ["tick", "time", "box", "wanted", "sign", "date"] {
        assert!(!ALL.0.boxes(label).is_empty(), "no <{label}> on any card");
    }
}

#[test]
fn nothing_stands_outside_the_text_area() {
    checks::inside_the_text_area(&ALL.0);
}

#[test]
fn boxes_do_not_overlap_and_no_text_runs_into_them() {
    checks::boxes_apart(&ALL.0);
}

#[test]
fn texts_do_not_run_into_one_another() {
    checks::texts_apart(&ALL.0);
}

/// To do or to record, words, and boxes with their number.
type Zone = (Sides, &'static str, &'static [(&'static str, usize)]);

/// The pages of one kind of side of a card of two sheets: what the first side does not hold stands on the next one.
type Sides = [usize; 2];
const DO: Sides = [1, 3];
const RECORD: Sides = [2, 4];

/// The mandatory zones of a crew card, each with words and boxes that prove it. The first seven stand on the sides
/// to do, the others on the sides to record.
///
/// By hand from the certificate of HW-07: 455 bar give 3660 + 55 × 1385 / 150 = 4168 N·m; 30 % of that are 1250 N·m,
/// at 100 + 345 × 150 / 1375 = 138 bar, set in steps of 5 bar.
const ZONES: [Zone; 19] = [
    // Identity strip.
    (
        DO,
        "E-310-CH-01|E-310 · effluent cooler|north channel, +6 m platform|HL-31-M-2104 rev 3|class A",
        &[],
    ),
    // Stop line.
    (
        DO,
        "DANGER|Hydrogen-rich gas, 92 bar and 310 °C|isolation certificate|zero pressure seen at|time|initials",
        &[],
    ),
    // Big numbers.
    (
        DO,
        "24 × M48×5|455 bar|4168 N·m|grey paste|75 mm|HW-07",
        &[],
    ),
    // Joint picture.
    (
        DO,
        "From the nut side|1: top|top|clockwise|bolt circle 1085 mm|in the way|keep hands out",
        &[],
    ),
    // Pass table. Times: one for each of the six passes.
    (
        DO,
        "P0|P1|P2|P3|P4|P5|by hand|140|30 %|Order|1·13",
        &[("time", 6)],
    ),
    // Before-start ticks: nine, and one for each of the six passes.
    (
        DO,
        "Tag read|barrier, way out free|Zero shown here|own lock on|Make-up: every box on side 2 ticked",
        &[("tick", 15)],
    ),
    // Footer.
    (
        DO,
        "HL-31-WP-007|revision B|content|2027-03-08|page 1 of 4|Not a controlled copy",
        &[],
    ),
    // Making up is ticked beside what is written down of it.
    (
        RECORD,
        "Seats clean|Gasket new|nut runs by hand|Washer|Numbers clockwise",
        &[],
    ),
    // Tools used.
    (
        RECORD,
        "Tools used|HW-07 s/n 7731|due 2027-09-01|changed to",
        &[],
    ),
    // Materials used.
    (RECORD, "gasket|studs|nuts|lubricant|batch or heat", &[]),
    // Alignment as found.
    (
        RECORD,
        "centreline|1.5 mm or less|parallel|0.8 mm or less|hole offset|3 mm or less|free gap|9 mm or less",
        &[],
    ),
    // Gap readings.
    // Boxes: 3 × 8 here, 4 tools, 4 materials, 4 as found, 4 × 3 of the stretch, 2 of the last round, 2 × 2 protrusions.
    (
        RECORD,
        "Gap, mm|P0|P1|P2|22|0.25 mm or less",
        &[("box", 54)],
    ),
    // Final check.
    (RECORD, "nuts that turned|none|rounds made", &[]),
    // Stretch.
    (RECORD, "Stretch, mm|before|after|difference", &[]),
    // Protrusion.
    (RECORD, "Thread past nut|least|most|5 to 15 mm", &[]),
    // Hold and witness points: three with a time; two fitters, the supervisor, the inspector and the client without.
    (
        RECORD,
        "HOLD H3|WITNESS W2|no nut turns at 455 bar|HOLD H4",
        &[("sign", 8), ("date", 8), ("time", 3)],
    ),
    // Deviations.
    (RECORD, "Deviation|none|yes|number, what", &[]),
    // Handover. Ticks: seven of the making up, three at the end, two of the deviation and the stub.
    (
        RECORD,
        "assembled by|supervisor|client|tag stub torn off",
        &[("tick", 13)],
    ),
    // Next time.
    (RECORD, "For next time", &[]),
];

#[test]
fn every_mandatory_zone_is_on_its_side() {
    let pages = &lay_out_cards(tightening(&channel())[..1].to_vec());
    assert_eq!(pages.page_count(), 4);
    for (sides, words, boxes) in ZONES {
        let text = sides.map(|side| text_of(pages, side)).join(" ");
        for word in words.split('|') {
            assert!(text.contains(word), "no {word:?} in {text}");
        }
        for (label, count) in boxes {
            let boxes = pages.boxes(label);
            let found = boxes.iter().filter(|it| sides.contains(&it.page)).count();
            assert_eq!(found, *count, "<{label}> on sides {sides:?}");
        }
    }
    for side in 1..=4 {
        assert!(
            pages.text(side).contains("E-310-CH-01"),
            "the tag stands on every side"
        );
    }
}

fn of_unknown_values() -> Typeset {
    lay_out_cards(tightening(&unknown(&flanges(&[24]))))
}

#[test]
fn a_draft_says_so_in_the_badge_the_footer_and_across_both_sides() {
    let pages = &of_unknown_values();
    for side in [1, 2] {
        let texts = pages.texts(side);
        let says = |upright| {
            let mut texts = texts.iter();
            texts.any(|it| it.text == "DRAFT" && it.upright == upright)
        };
        assert!(says(true), "badge of side {side}");
        assert!(says(false), "watermark of side {side}");
        assert!(text_of(pages, side).contains("DRAFT, not for use: "));
    }
    let issued = lay_out_cards(tightening(&channel())[..1].to_vec());
    assert!(!issued.text(1).contains("DRAFT"));
}

#[test]
fn a_value_that_nobody_gave_is_an_empty_box_with_a_name() {
    let pages = &of_unknown_values();
    let text = text_of(pages, 1);
    let found = text.matches("to be given by tool store").count();
    // The target, and the five passes that turn by a pressure; each names who gives it.
    assert_eq!(found, 1 + 5, "{text}");
    let boxes = pages.boxes("wanted");
    assert_eq!(boxes.iter().filter(|it| it.page == 1).count(), 1 + 5);
    let large = upright(pages, 1)
        .into_iter()
        .filter(|text| (text.size - 34.0).abs() < 0.1);
    let words: Vec<&str> = large.map(|text| text.text.as_str()).collect();
    assert_eq!(
        words,
        ["E-310-CH-24"],
        "no number stands in for the missing one"
    );
}

/// What does not fit is named with its field and with how much would fit.
#[test]
fn a_text_too_long_for_its_place_is_found_before_the_layout() {
    let at = |place: String| {
        let joint = flange(24).replace("north channel, +6 m platform", &place);
        overruns(&with_joints(&channel(), [joint]))
    };
    let found = at("W".repeat(60));
    assert_eq!(found.len(), 2, "both cards of the joint: {found:?}");
    for (field, got, limit) in found {
        assert_eq!((field.as_str(), got), ("identity.place", 60));
        assert!(limit > 10 && limit < got, "{limit}");
        assert_eq!(at("W".repeat(limit)), []);
    }
}

/// Nothing is told as too much and nothing is lost: a second sheet takes it.
#[test]
fn what_a_side_does_not_hold_stands_on_a_second_sheet() {
    let of = |text: &str| tightening(text).swap_remove(0);
    let names = |card: &Card| -> Vec<String> {
        let rows = rows(card).into_iter();
        rows.map(|it| it.name).filter(|it| it != "P0").collect()
    };
    let unknown = "studbook: 1
pack: { title: Nothing is known }
joints:
  - { tag: X-1, hazards: [toxic, flammable], tighten: { method: hydraulic torque wrench, passes: [10 %, 40 %, 70 %, 100 %], repeat_after: 4 h } }
";
    // The passes of the job, the round that ends the work and the one after four hours.
    let full = of(unknown);
    assert_eq!(full.sides.len(), 4);
    assert_eq!(names(&full), ["P1", "P2", "P3", "P4", "P5", "P6"]);
    let one = of(&change(unknown, "[10 %, 40 %, 70 %, 100 %]", "[100 %]"));
    assert_eq!(one.sides.len(), 2);
    assert_eq!(names(&one), ["P1", "P2", "P3"]);
    let more = "place: north channel, hold_points: [{ point: H6, text: faces seen, by: client }]";
    let joint = format!("tag: E-310-CH-01, family: channel flange, {more}");
    let pages = lay_out_cards(vec![of(&with_joints(&channel(), [joint]))]);
    assert_eq!(pages.page_count(), 4);
    assert!(
        RECORD
            .iter()
            .any(|side| text_of(&pages, *side).contains("H6")),
        "the point of the client is signed"
    );
}

#[test]
fn a_tag_takes_the_largest_form_that_fits() {
    let forms: [(&str, f64, &[&str]); 3] = [
        ("E-310-CH-01", 34.0, &["E-310-CH-01"]),
        ("HL-31-E-2104A-CH-03", 20.0, &["HL-31-E-2104A-CH-03"]),
        (
            "E-310A-CH-01/NORTH-UPPER-SIDE-22",
            20.0,
            &["E-310A-CH-01/", "NORTH-UPPER-SIDE-22"],
        ),
    ];
    for (tag, size, lines) in forms {
        let joint = flange(24).replace("E-310-CH-24", tag);
        let pages = lay_out_cards(tightening(&with_joints(&channel(), [joint])));
        let texts = upright(&pages, 1);
        for line in lines {
            let printed = texts.iter().find(|text| text.text == *line);
            let printed = printed.unwrap_or_else(|| panic!("no {line} in {}", pages.text(1)));
            assert!((printed.size - size).abs() < 0.01, "{printed:?}");
        }
    }
}
