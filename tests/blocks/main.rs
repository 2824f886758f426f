//! Blocks in their places: what is reckoned is what is drawn, what must stand stands, what does not fit is told.
//!
//! Limits are those of the trade's rules for paper on site, not of the templates: ticks of 10 mm, number boxes of
//! 20 mm (common practice for gloved hands, no source), type above 8 pt. What blocks must do comes from the
//! specification of this program.

#[allow(dead_code, reason = "a check for whole cards is not of single blocks")]
#[path = "../built/checks.rs"]
mod checks;
mod sample;
mod sides;

use std::sync::LazyLock;

use studbook::document::blocks::{Block, Card, Placed};
use studbook::document::geometry::Geometry;
use studbook::typeset::{Overrides, Printed, Region, Typeset};

/// Upright text; a watermark lies across the page and under everything.
fn upright(pages: &Typeset, page: usize) -> Vec<&Printed> {
    pages
        .texts(page)
        .into_iter()
        .filter(|it| it.upright)
        .collect()
}

static CARDS: LazyLock<Vec<Card>> = LazyLock::new(|| sample::cards(Geometry::ours()));
static PAGES: LazyLock<Typeset> =
    LazyLock::new(|| sample::lay_out(CARDS.clone(), &Overrides::new()));

#[test]
fn every_side_is_one_page_and_nothing_is_too_long() {
    for card in CARDS.iter() {
        assert_eq!(card.overruns(Geometry::ours()), []);
    }
    let sides: usize = CARDS.iter().map(|it| it.sides.len()).sum();
    assert_eq!(PAGES.page_count(), sides);
    assert_eq!(PAGES.pages_of("card").len(), CARDS.len());
}

#[test]
fn pages_keep_the_rules_of_every_card() {
    checks::sizes_of_type(&PAGES);
    checks::boxes_for_gloves(&PAGES);
    checks::inside_the_text_area(&PAGES);
    checks::boxes_apart(&PAGES);
    checks::texts_apart(&PAGES);
}

/// Everything drawn on a page below the head and above the footer stands in exactly one block, and what a block ends
/// with stands where its height says.
#[test]
fn what_is_drawn_is_as_high_as_was_reckoned() {
    let g = Geometry::ours();
    let sides = CARDS.iter().flat_map(|it| &it.sides);
    for (side, page) in sides.zip(1..) {
        let texts = upright(&PAGES, page).into_iter().map(|it| it.region);
        let shapes = PAGES.shapes().iter().filter(|it| it.page == page).copied();
        let drawn: Vec<Region> = texts.chain(shapes).collect();
        for it in &side.blocks {
            let [left, top] = [20.0 + it.x.mm(), it.y.mm()];
            let [right, bottom] = [left + it.width.mm(), top + it.height.mm()];
            let inside = drawn.iter().filter(|region| {
                let (x, y) = (
                    region.x + region.width / 2.0,
                    region.y + region.height / 2.0,
                );
                (left..right).contains(&x) && (top - 0.05..bottom + 0.05).contains(&y)
            });
            let mut end = top;
            for region in inside {
                let fits = region.y > top - 0.1 && region.y + region.height < bottom + 0.1;
                assert!(fits, "page {page}: {region:?} leaves {}", told(it));
                end = end.max(region.y + region.height);
            }
            let ends_in_a_line = matches!(
                it.block,
                Block::Danger(_)
                    | Block::Cautions(_)
                    | Block::Stop(_)
                    | Block::List(_)
                    | Block::Grid(_)
                    | Block::Deviation(_)
            );
            // An outline of 1.2 mm ends half of its width inside.
            assert!(
                !ends_in_a_line || end > bottom - 0.7,
                "page {page}: {end} {}",
                told(it)
            );
        }
        for region in drawn
            .iter()
            .filter(|it| it.y > g.page.top.mm() + 26.0 && it.y < g.page.bottom.mm())
        {
            let middle = region.y + region.height / 2.0;
            let is_in_a_block = side.blocks.iter().any(|it| {
                let (top, bottom) = (it.y.mm() - 0.1, (it.y + it.height).mm() + 0.1);
                (top..bottom).contains(&middle)
            });
            assert!(
                is_in_a_block,
                "page {page}: {region:?} stands between blocks"
            );
        }
    }
}

/// Blocks that share a part of the width do not share a part of the height.
#[test]
fn blocks_do_not_lie_over_one_another() {
    for side in CARDS.iter().flat_map(|it| &it.sides) {
        for (index, one) in side.blocks.iter().enumerate() {
            for other in &side.blocks[index + 1..] {
                let across = (one.x + one.width).min(other.x + other.width) > one.x.max(other.x);
                let down = (one.y + one.height).min(other.y + other.height) > one.y.max(other.y);
                assert!(!(across && down), "{} over {}", told(one), told(other));
            }
        }
    }
}

/// What a block is and where it stands, short.
fn told(it: &Placed) -> String {
    let kind = serde_json::to_value(&it.block).expect("plain data")["block"].clone();
    format!("{kind} at {} + {} mm", it.y.mm(), it.height.mm())
}
