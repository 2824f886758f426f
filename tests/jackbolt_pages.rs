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
use sample::{checks, lay_out};
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
