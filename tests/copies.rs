//! A page that went through a copier: 150 dots per inch, every dot black or white.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use built::bitmap::Bitmap;
use built::cards::{cards, lay_out_cards, loosening, tightening};
use built::checks::upright;
use built::flanges::{flanges, unknown};
use built::tensioners::{Anchors, anchors};
use studbook::typeset::{Region, Typeset};

/// Flanges and anchors, known and unknown, with few rounds of release and with many.
fn pages() -> Typeset {
    let known = flanges(&[24, 36]);
    let many_rounds = Anchors {
        peak: 1.4,
        ..anchors(12, 4)
    };
    let cards = [
        cards(&known),
        tightening(&unknown(&known)),
        tightening(&anchors(32, 16).job()),
        loosening(&many_rounds.job()),
        loosening(&anchors(4, 1).job()),
    ];
    lay_out_cards(cards.concat())
}

fn outline_points(region: &Region) -> Vec<(f64, f64)> {
    let Region {
        x,
        y,
        width,
        height,
        ..
    } = *region;
    (0..=40)
        .flat_map(|step| {
            let part = f64::from(step) / 40.0;
            [
                (x + part * width, y),
                (x + part * width, y + height),
                (x, y + part * height),
                (x + width, y + part * height),
            ]
        })
        .collect()
}

#[test]
fn every_box_keeps_its_outline() {
    let pages = &pages();
    for page in 1..=pages.page_count() {
        let bitmap = Bitmap::of(pages, page);
        for outline in pages
            .outlines()
            .iter()
            .filter(|outline| outline.region.page == page)
        {
            let points = outline_points(&outline.region);
            let inked = points
                .iter()
                .filter(|(x, y)| bitmap.is_inked(*x, *y))
                .count();
            assert!(
                inked * 10 >= points.len() * 9,
                "{inked} of {}: {outline:?}",
                points.len()
            );
        }
    }
}

#[test]
fn the_code_is_still_read() {
    let pages = &pages();
    for page in 1..=pages.page_count() {
        let bitmap = Bitmap::of(pages, page);
        // A camera is held over the corner of the code, not over the rings of the picture.
        let (left, top) = (bitmap.width * 3 / 4, bitmap.height() * 9 / 10);
        let (wide, high) = (bitmap.width - left, bitmap.height() - top);
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(wide, high, |x, y| {
            if bitmap.is_dark(left + x, top + y) {
                0
            } else {
                255
            }
        });
        let read = image
            .detect_grids()
            .into_iter()
            .filter_map(|code| code.decode().ok());
        let contents: Vec<String> = read.map(|(_, content)| content).collect();
        let [content] = contents.as_slice() else {
            panic!("page {page}: {contents:?}");
        };
        // Number, revision, and the code that the footer prints.
        let text = pages.text(page).replace('\u{a0}', " ");
        let parts: Vec<&str> = content.split(' ').collect();
        assert_eq!(parts.len(), 3, "{content}");
        for part in parts {
            assert!(text.contains(part), "page {page}: {part} in {text}");
        }
    }
}

#[test]
fn light_type_stands_on_dark_only() {
    let pages = &pages();
    let mut light = 0;
    for page in 1..=pages.page_count() {
        let bitmap = Bitmap::of(pages, page);
        for text in upright(pages, page)
            .into_iter()
            .filter(|text| text.lightness > 0.5)
        {
            light += 1;
            assert!(text.size > 13.9, "white type below 14 pt: {text:?}");
            let Region {
                x,
                y,
                width,
                height,
                ..
            } = text.region;
            // Around the word, half a millimetre outside, everything is dark.
            let around = Region {
                page,
                x: x - 0.6,
                y: y - 0.6,
                width: width + 1.2,
                height: height + 1.2,
            };
            assert!(
                outline_points(&around)
                    .iter()
                    .all(|(x, y)| bitmap.is_inked(*x, *y)),
                "{text:?}"
            );
        }
    }
    assert!(light >= 6, "the words of the sides are white on dark");
}
