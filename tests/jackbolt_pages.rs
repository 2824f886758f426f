//! The laid-out cards for multi-jackbolt tensioners: everything that holds for other cards, and what
//! the crew needs for its rounds.
//!
//! Fields are those of the trade's practice for tensioners of this kind (common practice, no open
//! source): two conditions that end the rounds, largest and mean turn of each round, stud end, release
//! by equal small angles.

mod sample;

use std::sync::LazyLock;

use sample::jackbolts::{Make, longest, make, tightening};
use sample::release::loosening;
use sample::{checks, lay_out, upright};
use studbook::document::card::{Card, Rounds};
use studbook::typeset::Typeset;

fn with_positions(jackbolts: usize, positions: usize) -> Card {
    tightening(Make {
        positions: Some(positions),
        ..make(jackbolts, 1)
    })
}

fn by_hand(jackbolts: usize, studs: usize, least: usize) -> Card {
    tightening(Make {
        positions: None,
        least,
        ..make(jackbolts, studs)
    })
}

fn all_cards() -> Vec<Card> {
    let mut cards = Vec::new();
    for jackbolts in [4, 12, 32] {
        for studs in [1, 4, 16, 32] {
            cards.push(tightening(make(jackbolts, studs)));
            cards.push(loosening(make(jackbolts, studs), 7));
            cards.push(loosening(make(jackbolts, studs), Rounds::MOST));
        }
    }
    cards.extend([
        with_positions(16, 2),
        with_positions(32, 4),
        by_hand(16, 1, 3),
        by_hand(24, 8, 14),
        loosening(make(16, 4), 10),
        loosening(make(16, 4), 11),
        longest(),
    ]);
    cards
}

/// Laid out once for all tests.
static ALL: LazyLock<Typeset> = LazyLock::new(|| lay_out(all_cards()));

#[test]
fn a_card_is_two_pages_for_every_count_and_for_the_longest_texts() {
    let count = all_cards().len();
    assert_eq!(ALL.page_count(), 2 * count);
    let heads: Vec<usize> = (0..count).map(|card| 2 * card + 1).collect();
    assert_eq!(ALL.pages_of("card"), heads);
}

#[test]
fn type_has_the_sizes_of_the_scale_and_none_below() {
    checks::sizes_of_type(&ALL);
}

#[test]
fn boxes_are_large_enough_for_gloves() {
    checks::boxes_for_gloves(&ALL);
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

/// Side, and words that must stand on it.
const FIELDS: [(usize, &[&str]); 2] = [
    (
        1,
        &[
            "PR-02-TR",
            "TIGHTEN",
            "DANGER",
            "Full value",
            "315",
            "Seat",
            "Driver MD-2",
            "never above 280",
            "4 × 12 × M20",
            "C0",
            "D1",
            "C3",
            "62–77",
            "predicted",
            "largest turn",
            "Stop when both are true",
            "at least",
            "20",
            "call the engineer",
            "Seen from above",
            "numbers clockwise",
            "stud end above body",
            "limit 0 to 3 mm",
            "Order",
        ],
    ),
    (
        2,
        &[
            "largest",
            "mean",
            "done by",
            "C10",
            "at least 5 rounds and largest below 20",
            "spindles turned",
            "reversal check",
            "second person",
            "accept stretch",
            "above body",
            "Deviation",
            "HOLD H3",
            "WITNESS W2",
            "assembled by",
            "supervisor",
            "inspector",
            "client",
        ],
    ),
];

#[test]
fn every_field_of_the_rounds_is_on_its_side() {
    let pages = lay_out(vec![tightening(make(12, 4))]);
    for (side, words) in FIELDS {
        let text = pages.text(side).replace('\u{a0}', " ");
        for word in words {
            assert!(text.contains(word), "side {side}: no {word:?} in {text}");
        }
    }
}

#[test]
fn each_jackbolt_has_its_number_and_only_one() {
    for count in [4, 5, 12, 16, 24, 25, 32] {
        let pages = lay_out(vec![tightening(make(count, 1))]);
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
    let pages = lay_out(vec![with_positions(16, 2)]);
    let text = |words: &str| {
        upright(&pages, 1)
            .into_iter()
            .find(|it| it.text == words)
            .cloned()
    };
    let (x, y) = (
        text("X").expect("position X"),
        text("Y").expect("position Y"),
    );
    let one = text("1").expect("the first number");
    assert!(
        (x.region.x + x.region.width / 2.0 - one.region.x - one.region.width / 2.0).abs() < 0.5
    );
    assert!(x.region.y < one.region.y && y.region.x > x.region.x);
}

#[test]
fn every_release_round_has_its_dial_its_angle_and_its_tick() {
    for (count, ticks) in [(7, 6), (10, 6), (11, 4), (22, 4)] {
        let pages = lay_out(vec![loosening(make(16, 1), count)]);
        let text = pages.text(1);
        for round in 1..=count {
            assert!(
                text.contains(&format!("R{round}")),
                "R{round} of {count}: {text}"
            );
        }
        let found = pages.boxes("tick").iter().filter(|it| it.page == 1).count();
        assert_eq!(found, count + ticks, "{count} rounds");
        assert_eq!(text.matches("flat").count(), count);
        assert!(text.contains("load left") && text.contains("last jackbolt"));
    }
}

#[test]
fn more_release_rounds_than_a_card_holds_are_found() {
    let card = loosening(make(16, 1), Rounds::MOST + 1);
    let fields: Vec<&str> = card.over_budget().iter().map(|it| it.field).collect();
    assert!(fields.contains(&"jackbolts.rounds"), "{fields:?}");
}

#[test]
fn many_studs_have_small_boxes_and_few_have_lines() {
    let last = |studs: usize| {
        let pages = lay_out(vec![tightening(make(12, studs))]);
        let ticks = pages.boxes("tick").into_iter().filter(|it| it.page == 2);
        (
            ticks.count(),
            pages.text(2).contains("largest turn of each stud"),
        )
    };
    // Three ticks stand on every side two: deviation none and yes, stub of the tag.
    assert_eq!(last(4), (3, false));
    assert_eq!(last(16), (3 + 16, true));
    assert_eq!(last(32), (3 + 32, true));
}

#[test]
fn rounds_beyond_the_columns_are_counted_by_strokes() {
    let pages = lay_out(vec![by_hand(24, 8, 14)]);
    let text = pages.text(2);
    assert!(
        text.contains("one stroke for each") && text.contains("at least 14"),
        "{text}"
    );
    let tally = pages
        .boxes("box")
        .into_iter()
        .find(|it| it.page == 2 && it.width > 80.0);
    assert!(tally.is_some(), "a wide box");
}

/// What the program counts and what the templates draw must agree: the fullest card that is let
/// through is laid out whole.
#[test]
fn the_fullest_card_that_fits_is_whole() {
    let fullest = |mut card: Card, more: &dyn Fn(&mut Card)| {
        loop {
            let mut next = card.clone();
            more(&mut next);
            if next
                .over_budget()
                .iter()
                .any(|it| it.field.starts_with("side"))
            {
                break card;
            }
            card = next;
        }
    };
    let more_rounds = |card: &mut Card| {
        if let Some(work) = &mut card.jackbolts {
            let row = work.rounds.rows[1].clone();
            work.rounds.rows.insert(1, row);
        }
    };
    let more_lines = |card: &mut Card| {
        if let Some(work) = &mut card.jackbolts {
            work.rounds.rows.extend(work.rounds.rows.last().cloned());
        }
    };
    let more_measured = |card: &mut Card| {
        if let Some(grid) = card
            .record
            .jackbolts
            .as_mut()
            .and_then(|it| it.measured.as_mut())
        {
            grid.rows.extend(grid.rows.last().cloned());
        }
    };
    let more_cells = |card: &mut Card| {
        if let Some(cells) = card
            .record
            .jackbolts
            .as_mut()
            .and_then(|it| it.studs.as_mut())
        {
            cells.rows.extend(cells.rows.last().cloned());
        }
    };
    let cards = vec![
        fullest(tightening(make(12, 1)), &more_rounds),
        fullest(tightening(make(32, 16)), &more_lines),
        fullest(tightening(make(4, 1)), &more_measured),
        fullest(loosening(make(12, 1), 7), &more_measured),
        fullest(tightening(make(12, 16)), &more_cells),
    ];
    let counts = |card: &Card| card.free_height();
    for card in &cards {
        assert!(
            counts(card).iter().any(|free| *free < 10.2),
            "{:?}",
            counts(card)
        );
    }
    let pages = lay_out(cards);
    checks::boxes_for_gloves(&pages);
    checks::inside_the_text_area(&pages);
    checks::boxes_apart(&pages);
    checks::texts_apart(&pages);
}

#[test]
fn a_full_card_does_without_what_stands_elsewhere() {
    let mut card = tightening(make(12, 4));
    if let Some(work) = &mut card.jackbolts {
        let last = work.rounds.rows.last().cloned();
        for _ in 0..20 {
            work.rounds.rows.extend(last.clone());
        }
    }
    assert!(card.free_height()[0] < 0.0);
    let card = card.giving_way();
    let work = card.jackbolts.as_deref().expect("a card for jackbolts");
    let further = work
        .rounds
        .rows
        .iter()
        .filter(|row| row.value.is_none())
        .count();
    assert!(
        card.free_height()[0] >= 0.0 && further > 1 && further < 22,
        "{further}"
    );
    assert!(work.studs.is_none(), "the strip of the order says the same");
    let last = work.rounds.rows.last().map(|row| row.name.as_str());
    assert_eq!(last, Some("C7"), "the last round stays");
}

#[test]
fn words_too_long_for_their_place_are_found_before_the_layout() {
    let mut card = tightening(make(12, 1));
    if let Some(work) = &mut card.jackbolts {
        work.values[0].label = "Seat with the small wrench TW-09".into();
        work.rounds.rows[0].line = "seat with 10 % in the order 1 7 4 10".into();
        work.circle.legend[0] = "bar: reaction on the frame pad beside the ladder, north".into();
        work.measured[0].name = "stud end above the body's top".into();
    }
    let fields: Vec<&str> = card.over_budget().iter().map(|it| it.field).collect();
    let wanted = [
        "jackbolts.values.label",
        "jackbolts.circle.legend",
        "jackbolts.measured",
        "jackbolts.rounds.line",
    ];
    assert_eq!(fields, wanted);
}
