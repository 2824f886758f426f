//! A page that went through a copier: 150 dots per inch, every dot black or white.

mod sample;

use sample::bitmap::Bitmap;
use sample::jackbolts::make;
use sample::{draft, jackbolts, lay_out, loosening, release, tightening, upright};
use studbook::typeset::Region;

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
    let pages = &lay_out(vec![
        tightening(24),
        loosening(36),
        draft(24),
        jackbolts::tightening(make(32, 16)),
        release::loosening(make(32, 1), 22),
    ]);
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
    let pages = &lay_out(vec![
        tightening(24),
        draft(64),
        jackbolts::tightening(make(32, 16)),
        release::loosening(make(16, 4), 22),
    ]);
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
        assert_eq!(contents, ["HL-31-WP-007/B/XA7HCFDY"], "page {page}");
    }
}

#[test]
fn light_type_stands_on_dark_only() {
    let pages = &lay_out(vec![tightening(24), loosening(24), draft(24)]);
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
