//! What holds for every page of every card.

use studbook::typeset::{Printed, Region, Typeset};

/// Upright text; a watermark lies across the page and under everything.
pub(crate) fn upright(pages: &Typeset, page: usize) -> Vec<&Printed> {
    pages
        .texts(page)
        .into_iter()
        .filter(|text| text.upright)
        .collect()
}

/// A card is two pages and begins on an odd one.
pub(crate) fn two_pages_a_card(pages: &Typeset, cards: usize) {
    assert_eq!(pages.page_count(), 2 * cards);
    let heads: Vec<usize> = (0..cards).map(|card| 2 * card + 1).collect();
    assert_eq!(pages.pages_of("card"), heads);
}

/// Sizes of the scale, none below the least.
pub(crate) fn sizes_of_type(pages: &Typeset) {
    for page in 1..=pages.page_count() {
        let smallest = pages.smallest_text(page).expect("a page has text");
        assert!(smallest > 8.49, "page {page}: {smallest} pt");
        for text in upright(pages, page) {
            let scale = [8.5, 11.0, 13.0, 20.0, 34.0];
            assert!(
                scale.iter().any(|size| (size - text.size).abs() < 0.01),
                "{text:?}"
            );
        }
    }
}

/// Every box has a known kind and at least its size.
pub(crate) fn boxes_for_gloves(pages: &Typeset) {
    let least = [
        ("tick", 10.0, 10.0),
        ("time", 20.0, 10.0),
        ("number", 20.0, 10.0),
        ("box", 20.0, 10.0),
        ("wanted", 30.0, 10.0),
        ("sign", 36.0, 10.0),
        ("date", 28.0, 10.0),
    ];
    for outline in pages.outlines() {
        let kind = least.iter().find(|(label, ..)| *label == outline.label);
        assert!(kind.is_some(), "a box of unknown kind: {outline:?}");
        let (width, height) = kind.map_or((0.0, 0.0), |(_, width, height)| (*width, *height));
        let Region {
            width: wide,
            height: high,
            ..
        } = outline.region;
        assert!(wide > width - 0.01 && high > height - 0.01, "{outline:?}");
    }
}

/// Binding and clip edge stay white.
pub(crate) fn inside_the_text_area(pages: &Typeset) {
    for page in 1..=pages.page_count() {
        let (paper_width, paper_height) = pages.page_size(page);
        assert!((paper_width - 210.0).abs() < 0.1 && (paper_height - 297.0).abs() < 0.1);
        let texts = upright(pages, page)
            .into_iter()
            .map(|text| (text.region, text.text.clone()));
        let shapes = pages.shapes().iter().filter(|shape| shape.page == page);
        for (region, what) in texts.chain(shapes.map(|shape| (*shape, String::from("shape")))) {
            let Region {
                x,
                y,
                width,
                height,
                ..
            } = region;
            // Binding edge 20 mm; clip edge: only the running line stands above 15 mm.
            assert!(x > 19.9 && x + width < 196.1, "{what} {region:?}");
            assert!(y > 8.0 && y + height < 291.1, "{what} {region:?}");
        }
    }
}

/// No box lies over another one or over words.
pub(crate) fn boxes_apart(pages: &Typeset) {
    let outlines = pages.outlines();
    for (index, outline) in outlines.iter().enumerate() {
        for other in &outlines[index + 1..] {
            assert!(
                !outline.region.overlaps(&other.region, 0.02),
                "{outline:?} {other:?}"
            );
        }
    }
    for page in 1..=pages.page_count() {
        for text in upright(pages, page) {
            // The words in a box that somebody must fill name that somebody.
            let into = outlines.iter().filter(|outline| outline.label != "wanted");
            for outline in into {
                assert!(
                    !text.region.overlaps(&outline.region, 0.02),
                    "{text:?} {outline:?}"
                );
            }
        }
    }
}

/// No words lie over others.
pub(crate) fn texts_apart(pages: &Typeset) {
    // A large word in the place of a number has a tail that numbers do not have.
    let has_tail = |text: &Printed| text.size > 19.9 && text.text.contains('y');
    for page in 1..=pages.page_count() {
        let texts = upright(pages, page);
        for (index, text) in texts.iter().enumerate() {
            for other in &texts[index + 1..] {
                let tail = if has_tail(text) { 0.5 } else { 0.1 };
                assert!(
                    !text.region.overlaps(&other.region, tail),
                    "page {page}: {text:?} {other:?}"
                );
            }
        }
    }
}
