//! The laid-out cards for multi-jackbolt tensioners: everything that holds for other cards, and what
//! the crew needs for its rounds.
//!
//! Fields are those of the trade's practice for tensioners of this kind (common practice, no open
//! source): two conditions that end the rounds, largest and mean turn of each round, stud end, release
//! by equal small angles.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use std::sync::LazyLock;

use built::cards::{
    cards, fullest, index_of, lay_out_cards, loosening, overruns, points, tightening,
};
use built::checks::{self, upright};
use built::flanges::{change, words};
use built::tensioners::{Anchors, anchors};
use built::{text_of, with_job};
use studbook::document::blocks::Card;
use studbook::typeset::Typeset;

const fn with_spindles(jackbolts: usize, spindles: usize) -> Anchors {
    Anchors {
        spindles: Some(spindles),
        ..anchors(jackbolts, 1)
    }
}

const fn by_hand(jackbolts: usize, studs: usize) -> Anchors {
    Anchors {
        spindles: None,
        ..anchors(jackbolts, studs)
    }
}

const fn with_peak(jackbolts: usize, studs: usize, peak: f64) -> Anchors {
    Anchors {
        peak,
        ..anchors(jackbolts, studs)
    }
}

/// Anchors whose release takes so many rounds.
const RELEASES: [(usize, Anchors); 7] = [
    (6, anchors(4, 1)),
    (8, anchors(5, 1)),
    (10, with_peak(8, 1, 1.5)),
    (11, with_peak(8, 1, 1.4)),
    (17, with_peak(12, 1, 1.4)),
    (20, anchors(12, 1)),
    (22, anchors(26, 1)),
];

fn all_cards() -> Vec<Card> {
    let mut jobs: Vec<String> = Vec::new();
    for studs in [1, 4, 16, 32] {
        let counts = [
            anchors(4, studs),
            anchors(12, studs),
            with_peak(32, studs, 1.5),
        ];
        jobs.extend(counts.map(Anchors::job));
    }
    let others = [
        with_spindles(16, 8),
        by_hand(16, 1),
        by_hand(16, 4),
        by_hand(24, 8),
    ];
    jobs.extend(others.map(Anchors::job));
    jobs.extend(RELEASES.map(|(_, anchors)| anchors.job()));
    jobs.push(longest());
    for fullest_of in [
        anchors(12, 1),
        anchors(12, 16),
        with_peak(32, 16, 1.5),
        anchors(4, 1),
    ] {
        jobs.push(fullest(|count| with_checks(fullest_of, count)));
        jobs.push(fullest(|count| with_points(fullest_of, count)));
    }
    jobs.iter().flat_map(|job| cards(job)).collect()
}

/// Every text of the job as long as its place on the card.
fn longest() -> String {
    let changes = [
        (
            "PR-120-AN-01",
            "E-310A-CH-01/NORTH-UPPER-SIDE-22".to_owned(),
        ),
        ("baling press", words(40)),
        (
            "\"frame feet, floor level\"",
            format!("\"{}\", danger: \"{}\"", words(60), words(52)),
        ),
        ("All spindles turn freely", words(38)),
        ("Direction lever on the side that is printed", words(37)),
    ];
    changes
        .iter()
        .fold(anchors(12, 4).job(), |text, (from, to)| {
            change(&text, from, to)
        })
}

fn with_checks(anchors: Anchors, count: usize) -> String {
    let checks: Vec<String> = (1..=count)
        .map(|it| format!("Part {it} is whole"))
        .collect();
    let ours = "checks: [All spindles turn freely, Direction lever on the side that is printed]";
    change(
        &anchors.job(),
        ours,
        &format!("checks: [{}]", checks.join(", ")),
    )
}

fn with_points(anchors: Anchors, count: usize) -> String {
    let start = "start: 2027-05-17";
    let points = format!("{start}, hold_points: {}", points(count));
    change(&anchors.job(), start, &points)
}

/// Laid out once for all tests, with the number of cards.
static ALL: LazyLock<(Typeset, usize)> = LazyLock::new(|| {
    let cards = all_cards();
    let count = cards.len();
    (lay_out_cards(cards), count)
});

#[test]
fn a_card_is_two_pages_for_every_count_and_for_the_longest_texts() {
    checks::two_pages_a_card(&ALL.0, ALL.1);
}

#[test]
fn type_has_the_sizes_of_the_scale_and_none_below() {
    checks::sizes_of_type(&ALL.0);
}

#[test]
fn boxes_are_large_enough_for_gloves() {
    checks::boxes_for_gloves(&ALL.0);
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

#[test]
fn each_jackbolt_has_its_number_and_only_one() {
    for count in [4, 5, 12, 16, 24, 25, 32] {
        let pages = lay_out_cards(tightening(&anchors(count, 1).job()));
        // The circle stands at the right, beside the rounds.
        let numbers = upright(&pages, 1)
            .into_iter()
            .filter(|text| text.region.x > 131.0);
        let mut found: Vec<usize> = numbers.filter_map(|text| text.text.parse().ok()).collect();
        found.sort_unstable();
        assert_eq!(found, (1..=count).collect::<Vec<usize>>());
    }
}

#[test]
fn the_driver_shows_where_its_mark_points() {
    let pages = lay_out_cards(tightening(&with_spindles(16, 8).job()));
    let text = |words: &str| {
        let found = upright(&pages, 1).into_iter().find(|it| it.text == words);
        found.unwrap_or_else(|| panic!("no {words}")).region
    };
    let (x, y, one) = (text("X"), text("Y"), text("1"));
    assert!((x.x + x.width / 2.0 - one.x - one.width / 2.0).abs() < 0.5);
    assert!(x.y < one.y && y.x > x.x);
}

/// The tick of a round stands in its row.
#[test]
fn every_release_round_has_its_dial_its_angle_and_its_tick() {
    for (count, anchors) in RELEASES {
        let pages = lay_out_cards(loosening(&anchors.job()));
        let text = text_of(&pages, 1);
        let ticks = pages.boxes("tick");
        for round in 1..=count {
            let name = format!("R{round}");
            let printed = upright(&pages, 1).into_iter().find(|it| it.text == name);
            let row = printed
                .unwrap_or_else(|| panic!("{name} of {count}: {text}"))
                .region;
            let beside = ticks.iter().filter(|tick| {
                let off = tick.x - row.x;
                tick.page == 1
                    && (0.0..108.0).contains(&off)
                    && tick.y < row.y + row.height
                    && row.y < tick.y + tick.height
            });
            assert!(beside.count() > 0, "no tick beside {name} of {count}");
        }
        assert!(!text.contains(&format!("R{}", count + 1)), "{text}");
        // The last round lets the jackbolts go, whatever is left.
        assert!(text.contains(&format!("R{count} loose")), "{text}");
        assert_eq!(text.matches("flat ·").count(), count - 1, "{text}");
        assert!(text.contains("load left, %") && text.contains("last one, %"));
    }
}

/// A stud that would take more rounds than a card holds has no rounds of ours.
#[test]
fn a_release_without_a_plan_is_a_box_with_a_name() {
    let pages = lay_out_cards(loosening(&with_peak(12, 1, 1.15).job()));
    let text = text_of(&pages, 1);
    assert!(text.contains("R1") && !text.contains("R2"), "{text}");
    assert!(text.contains("to be given by engineer"), "{text}");
    let boxes = pages.boxes("wanted");
    assert_eq!(boxes.iter().filter(|it| it.page == 1).count(), 1);
}

#[test]
fn many_studs_have_small_boxes_and_few_have_lines() {
    let last = |studs: usize| {
        let pages = lay_out_cards(tightening(&anchors(12, studs).job()));
        let ticks = pages.boxes("tick").into_iter().filter(|it| it.page == 2);
        let words = "largest turn of each stud";
        (ticks.count(), text_of(&pages, 2).contains(words))
    };
    // Three ticks stand on every side two: deviation none and yes, stub of the tag.
    assert_eq!(last(4), (3, false));
    assert_eq!(last(16), (3 + 16, true));
    assert_eq!(last(32), (3 + 32, true));
}

#[test]
fn rounds_beyond_the_columns_are_counted_by_strokes() {
    let pages = lay_out_cards(tightening(&by_hand(24, 8).job()));
    let text = text_of(&pages, 2);
    assert!(text.contains("one stroke for each"), "{text}");
    let tally = pages
        .boxes("box")
        .into_iter()
        .find(|it| it.page == 2 && it.width > 80.0);
    assert!(tally.is_some(), "a wide box");
}

/// By hand the plan has many rounds: those between the first and the last of their kind give way, and
/// the drawing of the studs, because the strip of the order says the same.
#[test]
fn a_full_card_does_without_what_stands_elsewhere() {
    let job = by_hand(16, 4).job();
    let last = with_job("job.yaml", &job, |context| {
        let group = context.plan.of(index_of(context, "PR-120-AN-01"));
        let plan = group.and_then(|group| group.computed.plan.jackbolts());
        plan.expect("a plan").full_rounds
    });
    let pages = lay_out_cards(cards(&job));
    let (tighten, loosen) = (text_of(&pages, 1), text_of(&pages, 3));
    assert!(
        tighten.contains(&format!("C{last}")),
        "the last round stays: {tighten}"
    );
    assert!(!tighten.contains(&format!("C{} ", last / 2)), "{tighten}");
    assert!(tighten.contains("Order"), "{tighten}");
    assert!(loosen.contains("1 north east") && !tighten.contains("1 north east"));
}

#[test]
fn words_too_long_for_their_place_are_found_before_the_layout() {
    let fields = |from: &str, to: &str| -> Vec<String> {
        let found = overruns(&change(&anchors(12, 4).job(), from, to));
        let mut fields: Vec<String> = found.into_iter().map(|(field, ..)| field).collect();
        fields.sort();
        fields
    };
    let wrench = "wrench of the press house north";
    assert_eq!(
        fields("TW-31", wrench),
        [
            "record.tools",
            "target.facts.value",
            "target.label",
            "ticks.items"
        ]
    );
}

/// Points that hold the work have a name, a signature, a date and a time, as with nuts.
#[test]
fn points_of_class_a_are_signed() {
    let job = change(&anchors(12, 16).job(), "class: B", "class: A");
    let pages = lay_out_cards(tightening(&job));
    let text = text_of(&pages, 2);
    for point in ["HOLD H3", "WITNESS W2", "HOLD H4"] {
        assert!(text.contains(point), "{point}: {text}");
    }
    let times = pages.boxes("time");
    assert_eq!(times.iter().filter(|it| it.page == 2).count(), 3);
}
