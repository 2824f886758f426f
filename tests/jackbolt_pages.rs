//! The laid-out cards for multi-jackbolt tensioners: everything that holds for other cards, and what
//! the crew needs for its rounds.
//!
//! Fields are those of the trade's practice for tensioners of this kind (common practice, no open
//! source): two conditions that end the rounds, largest and mean turn of each round, stud end, release
//! by equal small angles.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use std::sync::LazyLock;

use built::cards::{cards, index_of, lay_out_cards, loosening, overruns, points, tightening};
use built::checks::{self, upright};
use built::flanges::{change, words};
use built::tensioners::{Anchors, anchors};
use built::{text_of, with_job};
use studbook::document::blocks::{Block, Card};
use studbook::typeset::{Printed, Region, Typeset};

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
    for of in [
        anchors(12, 1),
        anchors(12, 16),
        with_peak(32, 16, 1.5),
        anchors(4, 1),
    ] {
        // More than one sheet holds: a card takes as many as it needs.
        jobs.push(with_checks(of, 40));
        jobs.push(with_points(of, 20));
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

/// Laid out once for all tests, with the sides of each card.
static ALL: LazyLock<(Typeset, Vec<usize>)> = LazyLock::new(|| {
    let cards = all_cards();
    let sides = cards.iter().map(|card| card.sides.len()).collect();
    (lay_out_cards(cards), sides)
});

/// The words of the sides to do or of those to record: odd pages, or even ones.
fn text_of_sides(pages: &Typeset, first: usize) -> String {
    let sides = (first..=pages.page_count()).step_by(2);
    let texts: Vec<String> = sides.map(|side| text_of(pages, side)).collect();
    texts.join(" ")
}

/// A card begins on a new sheet and takes whole ones, whatever its job asks for.
#[test]
fn a_card_is_whole_sheets_for_every_count_and_for_the_longest_texts() {
    let (pages, sides) = &*ALL;
    let mut next = 1;
    let mut heads = Vec::new();
    for count in sides {
        assert_eq!(count % 2, 0);
        heads.push(next);
        next += count;
    }
    assert_eq!(pages.pages_of("card"), heads);
    assert_eq!(pages.page_count() + 1, next);
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

/// What is printed where the circle of the jackbolts stands, which has a name in its middle; the studs, drawn in small,
/// stand in a block of their own.
fn circle<'a>(card: &Card, pages: &'a Typeset) -> Vec<&'a Printed> {
    let mut sides = card.sides.iter().enumerate();
    let found = sides.find_map(|(side, it)| {
        let mut blocks = it.blocks.iter();
        let picture = blocks.find(|it| matches!(it.block, Block::Picture(_)))?;
        Some((side + 1, picture))
    });
    let (page, place) = found.expect("a circle on each card");
    let (left, top) = (20.0 + place.x.mm(), place.y.mm());
    let (right, bottom) = (left + place.width.mm(), top + place.height.mm());
    let mut texts = upright(pages, page);
    texts.retain(|it| {
        let (x, y) = (it.region.x, it.region.y);
        (left..right).contains(&x) && (top..bottom).contains(&y)
    });
    texts
}

#[test]
fn each_jackbolt_has_its_number_and_only_one() {
    for count in [4, 5, 12, 16, 24, 25, 32] {
        let cards = tightening(&anchors(count, 1).job());
        let pages = lay_out_cards(cards.clone());
        let numbers = circle(&cards[0], &pages).into_iter();
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
        let text = text_of_sides(&pages, 1);
        let ticks = pages.boxes("tick");
        let sides = (1..=pages.page_count()).step_by(2);
        let printed: Vec<&Printed> = sides.flat_map(|side| upright(&pages, side)).collect();
        for round in 1..=count {
            let name = format!("R{round}");
            let row = printed
                .iter()
                .find(|it| it.text == name)
                .unwrap_or_else(|| panic!("{name} of {count}: {text}"))
                .region;
            let beside = ticks.iter().filter(|tick| {
                let off = tick.x - row.x;
                tick.page == row.page
                    && (0.0..176.0).contains(&off)
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
fn many_studs_have_a_box_each_for_the_last_round_and_few_have_none() {
    let last = |studs: usize| {
        let cards = tightening(&anchors(12, studs).job());
        let pages = lay_out_cards(cards.clone());
        let boxes = pages.boxes("box");
        let sides = cards[0].sides.iter().enumerate();
        let blocks =
            sides.flat_map(|(side, it)| it.blocks.iter().map(move |block| (side + 1, block)));
        let tables = blocks.filter(|(_, it)| match &it.block {
            Block::Grid(grid) => grid.head.title.contains("largest turn of each stud"),
            _ => false,
        });
        let counts = tables.map(|(page, it)| {
            let (top, bottom) = (it.y.mm(), it.y.mm() + it.height.mm());
            let (left, right) = (20.0 + it.x.mm(), 20.0 + it.x.mm() + it.width.mm());
            let inside = |of: &&Region| {
                of.page == page && (left..right).contains(&of.x) && (top..bottom).contains(&of.y)
            };
            boxes.iter().filter(inside).count()
        });
        counts.collect::<Vec<usize>>()
    };
    assert_eq!(last(4), Vec::<usize>::new());
    assert_eq!(last(16), [16]);
    assert_eq!(last(32), [32]);
}

#[test]
fn rounds_beyond_the_columns_are_counted_by_strokes() {
    let pages = lay_out_cards(tightening(&by_hand(24, 8).job()));
    let text = text_of_sides(&pages, 2);
    assert!(text.contains("one stroke each"), "{text}");
    let tally = pages
        .boxes("box")
        .into_iter()
        .find(|it| it.page % 2 == 0 && it.width > 80.0);
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
    let side_to_do = |cards| text_of_sides(&lay_out_cards(cards), 1);
    let (tighten, loosen) = (side_to_do(tightening(&job)), side_to_do(loosening(&job)));
    assert!(
        tighten.contains(&format!("C{last}")),
        "the last round stays: {tighten}"
    );
    assert!(!tighten.contains(&format!("C{} ", last / 2)), "{tighten}");
    assert!(tighten.contains("Order"), "{tighten}");
    assert!(loosen.contains("1 north east"), "{loosen}");
    assert!(!tighten.contains("1 north east"), "{tighten}");
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
    // A tick has two lines and the tools of the record a list as wide as their names.
    assert_eq!(fields("TW-31", wrench), ["facts.value", "keys.label"]);
}

/// Points that hold the work have a name, a signature, a date and a time, as with nuts.
#[test]
fn points_of_class_a_are_signed() {
    let job = change(&anchors(12, 16).job(), "class: B", "class: A");
    let pages = lay_out_cards(tightening(&job));
    let text = text_of_sides(&pages, 2);
    for point in ["HOLD H3", "WITNESS W2", "HOLD H4"] {
        assert!(text.contains(point), "{point}: {text}");
    }
    let times = pages.boxes("time");
    assert_eq!(times.iter().filter(|it| it.page % 2 == 0).count(), 3);
}
