//! The laid-out pages of crew cards, read back: sizes, places, overlaps, mandatory fields, a 1-bit copy.
//!
//! Limits are those of the trade's rules for paper on site, not of the templates: ticks of 10 mm, number
//! boxes of 20 mm (common practice for gloved hands, no open source), type above 8 pt on permits
//! (a regulator's guidance on permits, from memory), QR modules of 0.6 mm (common practice).

mod sample;

use std::sync::LazyLock;

use sample::{draft, longest, loosening, request, tightening, volume};
use studbook::document::card::Card;
use studbook::typeset::{Overrides, Printed, Region, Typeset, typeset};

const COUNTS: [usize; 9] = [1, 4, 5, 8, 24, 32, 36, 48, 64];

fn lay_out(cards: Vec<Card>) -> Typeset {
    for card in &cards {
        let overruns = card.over_budget();
        assert!(
            overruns.is_empty(),
            "{}: {overruns:?}",
            card.identity.tag.text
        );
    }
    let overrides = Overrides::new();
    typeset(&request(&volume(cards), &overrides)).expect("the embedded templates have no fault")
}

/// Every count tightened, loosened and as a draft, and the longest texts; laid out once for all tests.
static ALL: LazyLock<Typeset> = LazyLock::new(|| lay_out(all_cards()));

fn all_cards() -> Vec<Card> {
    let tall = COUNTS
        .iter()
        .flat_map(|count| [tightening(*count), loosening(*count), draft(*count)]);
    tall.chain([longest(24), longest(8)]).collect()
}

/// Upright text; a watermark lies across the page and under everything.
fn upright(pages: &Typeset, page: usize) -> Vec<&Printed> {
    pages
        .texts(page)
        .into_iter()
        .filter(|text| text.upright)
        .collect()
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
    let pages = &*ALL;
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

#[test]
fn boxes_are_large_enough_for_gloves() {
    let pages = &*ALL;
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
        let (_, width, height) = least
            .into_iter()
            .find(|(label, ..)| *label == outline.label)
            .unwrap_or_else(|| panic!("a box of unknown kind: {outline:?}"));
        let Region {
            width: wide,
            height: high,
            ..
        } = outline.region;
        assert!(wide > width - 0.01 && high > height - 0.01, "{outline:?}");
    }
    for label in ["tick", "time", "box", "wanted", "sign", "date"] {
        assert!(!pages.boxes(label).is_empty(), "no <{label}> on any card");
    }
}

#[test]
fn nothing_stands_outside_the_text_area() {
    let pages = &*ALL;
    for page in 1..=pages.page_count() {
        let (paper_width, paper_height) = pages.page_size(page);
        assert!((paper_width - 210.0).abs() < 0.1 && (paper_height - 297.0).abs() < 0.1);
        let texts = upright(pages, page)
            .into_iter()
            .map(|text| (text.region, text.text.clone()));
        let shapes = pages
            .shapes()
            .into_iter()
            .filter(|shape| shape.page == page);
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

#[test]
fn boxes_do_not_overlap_and_no_text_runs_into_them() {
    let pages = &*ALL;
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

#[test]
fn texts_do_not_run_into_one_another() {
    let pages = &*ALL;
    for page in 1..=pages.page_count() {
        let texts = upright(pages, page);
        for (index, text) in texts.iter().enumerate() {
            for other in &texts[index + 1..] {
                assert!(
                    !text.region.overlaps(&other.region, 0.1),
                    "page {page}: {text:?} {other:?}"
                );
            }
        }
    }
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
        let text = pages.text(side);
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

mod copy {
    //! A page that went through a copier: 150 dots per inch, black or white.
    use super::*;

    struct Bitmap {
        width: usize,
        dark: Vec<bool>,
    }

    const DOTS: f64 = 150.0 / 25.4;

    impl Bitmap {
        fn of(pages: &Typeset, page: usize) -> Self {
            let options = typst_render::RenderOptions {
                pixel_per_pt: (150.0 / 72.0).into(),
                ..Default::default()
            };
            let picture = typst_render::render(&pages.document().pages()[page - 1], &options);
            let dark = picture.pixels().iter().map(|pixel| {
                let grey = (u32::from(pixel.red()) * 299
                    + u32::from(pixel.green()) * 587
                    + u32::from(pixel.blue()) * 114)
                    / 1000;
                grey < 128
            });
            Self {
                width: picture.width() as usize,
                dark: dark.collect(),
            }
        }

        fn height(&self) -> usize {
            self.dark.len() / self.width
        }

        fn is_dark(&self, x: usize, y: usize) -> bool {
            self.dark.get(y * self.width + x).copied().unwrap_or(false)
        }

        /// Whether a dot within one of the point (in mm) is dark.
        fn is_inked(&self, x: f64, y: f64) -> bool {
            let (x, y) = ((x * DOTS) as usize, (y * DOTS) as usize);
            (x.saturating_sub(1)..=x + 1)
                .any(|x| (y.saturating_sub(1)..=y + 1).any(|y| self.is_dark(x, y)))
        }
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
        let pages = &lay_out(vec![tightening(24), loosening(36), draft(24)]);
        for page in 1..=pages.page_count() {
            let bitmap = Bitmap::of(pages, page);
            for outline in pages
                .outlines()
                .into_iter()
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
        let pages = &lay_out(vec![tightening(24), draft(64)]);
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
}
